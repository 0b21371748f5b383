// SPDX-License-Identifier: MIT
// Notes that make it hard: they contradict themselves, say a thing ten times, deny everything, praise only,
// quote within quotes, change the language, or never end. Nothing is lost and nothing is made up.
#include "support_book.h"

#include <stdlib.h>

enum { MANY = 1000, TEN = 10 };

static void within(void (*body)(struct arena *arena, void *context)) {
    struct arena *arena = arena_new(NULL);
    bool fine = arena_try(arena, body, NULL);
    arena_free(arena);
    ck_assert(fine);
}

static bool is_kind(const struct flaw *kind, const char *id) {
    return kind && !strcmp(kind->rule.id, id);
}

static size_t flaws_of(const struct record *r, const char *id) {
    size_t count = 0;
    for (size_t i = 0; i < r->flaw_count; i++) count += is_kind(r->flaws[i].kind, id);
    return count;
}

static size_t clears_of(const struct record *r, const char *id) {
    size_t count = 0;
    for (size_t i = 0; i < r->clear_count; i++) count += is_kind(r->clear[i].kind, id);
    return count;
}

// Does an unread span hold these words?
static bool is_unread(struct arena *arena, const struct record *r, const char *words) {
    for (size_t i = 0; r->unread && i < r->unread->count; i++) {
        double from, to;
        const struct node *span = r->unread->members[i].value;
        if (!node_number(span->members[0].value, &from) || !node_number(span->members[1].value, &to))
            continue;
        if (strstr(arena_copy(arena, r->notes + (size_t)from, (size_t)(to - from)), words)) return true;
    }
    return false;
}

static void both_are_kept(struct arena *arena, void *context) {
    (void)context;
    const struct record *r = support_read(arena, "Crock. The lid is cracked. The lid is not cracked.");
    ck_assert_uint_eq(flaws_of(r, "crack-through"), 1);
    ck_assert_uint_eq(clears_of(r, "crack-through"), 1);
    ck_assert_str_eq(r->flaws[0].part, r->clear[0].part);
    r = support_read(arena, "Crock. No chips on the rim. There is a chip on the rim.");
    ck_assert_uint_eq(flaws_of(r, "chip"), 1);
    ck_assert_uint_eq(clears_of(r, "chip"), 1);
    r = support_read(arena, "Crock. No chips. Chip on the foot."); // the one place is the exception
    ck_assert_uint_eq(flaws_of(r, "chip"), 1);
    ck_assert_uint_eq(clears_of(r, "chip"), 0);
    r = support_read(arena, "Radio works fine. Radio does not work.");
    ck_assert_uint_eq(flaws_of(r, "not-working"), 1);
    ck_assert_uint_eq(flaws_of(r, "working-tested"), 0);
    ck_assert(is_unread(arena, r, "works fine"));
}

START_TEST(what_contradicts_itself_is_kept) {
    within(both_are_kept);
}
END_TEST

static void said_ten_times(struct arena *arena, void *context) {
    (void)context;
    const char *note = "Stone jar.";
    for (int i = 0; i < TEN; i++) note = arena_format(arena, "%s There is a chip on the rim.", note);
    const struct record *r = support_read(arena, note);
    ck_assert_uint_eq(r->flaw_count, 1);
    ck_assert_uint_eq(flaws_of(r, "chip"), 1);
    ck_assert_str_eq(r->flaws[0].where ? r->flaws[0].where : r->flaws[0].part, "rim");
    note = "Stone jar.";
    for (int i = 0; i < TEN; i++) note = arena_format(arena, "%s No cracks.", note);
    r = support_read(arena, note);
    ck_assert_uint_eq(r->flaw_count, 0);
    ck_assert_uint_eq(r->clear_count, 1);
}

START_TEST(said_ten_times_it_stands_once) {
    within(said_ten_times);
}
END_TEST

static void a_thousand(struct arena *arena, void *context) {
    (void)context;
    static const char *const faults[] = {"chip", "dent",  "scratch", "stain",
                                         "tear", "crack", "hole",    "scuff"};
    static const char *const places[] = {"rim",  "lid",  "base", "handle", "spout",
                                         "foot", "neck", "side", "back"};
    enum { FAULTS = sizeof faults / sizeof *faults, PLACES = sizeof places / sizeof *places };
    struct buf out = buf_start(arena);
    buf_format(&out, "Churn.");
    for (size_t i = 0; i < MANY; i++)
        buf_format(&out, " There is a %s on the %s.", faults[i % FAULTS], places[i % PLACES]);
    const struct record *r = support_read(arena, out.at);
    ck_assert_uint_ge(r->flaw_count, FAULTS * PLACES / 2); // of 72 pairs each stands once
    ck_assert_uint_le(r->flaw_count, FAULTS * PLACES);
    ck_assert_uint_ge(flaws_of(r, "dent-bend"), PLACES / 2);
    ck_assert_uint_eq(r->clear_count, 0);
    ck_assert(!r->unread || !r->unread->count);
}

START_TEST(a_thousand_faults_are_read) {
    within(a_thousand);
}
END_TEST

static void denied_and_praised(struct arena *arena, void *context) {
    (void)context;
    const struct record *r = support_read(
        arena, "Crock, no chips, no cracks, no stains, no wear, no crazing, no repairs, no rust.");
    static const char *const ids[] = {"chip", "stain", "wear-unspecified", "crazing", "glued-repair", "rust"};
    ck_assert_uint_eq(r->flaw_count, 0);
    for (size_t i = 0; i < sizeof ids / sizeof *ids; i++) ck_assert_uint_eq(clears_of(r, ids[i]), 1);
    ck_assert_uint_eq(clears_of(r, "hairline"), 0); // what nobody spoke of is not denied
    r = support_read(arena, "Crock. Gorgeous! Stunning, rare, mint, perfect, the best you will ever see.");
    ck_assert_uint_eq(r->flaw_count + r->clear_count + r->attribute_count, 0);
}

START_TEST(denials_of_everything_and_praise_only) {
    within(denied_and_praised);
}
END_TEST

static void quoted(struct arena *arena, void *context) {
    (void)context;
    const struct record *r = support_read(
        arena,
        "Crock. The label says \"the lady said 'no chips' but 'it has a crack'\" inside. Dent on the lid.");
    ck_assert_uint_eq(r->flaw_count, 1);
    ck_assert_uint_eq(flaws_of(r, "dent-bend"), 1);
    ck_assert_uint_eq(r->clear_count, 0);
    ck_assert_uint_eq(r->mark_count, 1);
    ck_assert_str_eq(r->marks[0].text, "the lady said 'no chips' but 'it has a crack'");
    r = support_read(arena, "Crock. Somebody wrote \"chipped \"and\" cracked\" on it. \"");
    ck_assert_uint_eq(r->clear_count, 0);
    ck_assert(r->mark_count > 0 || r->flaw_count > 0 || (r->unread && r->unread->count > 0));
}

START_TEST(quotes_within_quotes) {
    within(quoted);
}
END_TEST

static void foreign(struct arena *arena, void *context) {
    (void)context;
    static const struct {
        const char *note, *unread;
    } notes[] = {{"Crock with a chip on the rim. El asa esta rota y tiene una grieta.", "tiene una grieta"},
                 {"Crock with a chip on the rim. Der Henkel ist gebrochen und geklebt.", "Der Henkel ist"},
                 {"Crock with a chip on the rim. L'anse est cassee, il manque le couvercle.", "manque le"}};
    for (size_t i = 0; i < sizeof notes / sizeof *notes; i++) {
        const struct record *r = support_read(arena, notes[i].note);
        ck_assert_ptr_null(r->notes_are);
        ck_assert_uint_eq(r->flaw_count, 1);
        ck_assert_uint_eq(flaws_of(r, "chip"), 1);
        ck_assert_uint_eq(r->attribute_count, 0);
        ck_assert_msg(is_unread(arena, r, notes[i].unread), "%s", notes[i].note);
    }
    const struct record *r = support_read(arena, "Tin, the label reads Fleur de la Roche. No dents.");
    ck_assert_uint_eq(clears_of(r, "dent-bend"), 1); // a name of another language makes no foreign sentence
}

START_TEST(a_sentence_in_another_language) {
    within(foreign);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("notes: hard on faults");
    TCase *tests = tcase_create("faults");
    tcase_set_timeout(tests, 120);
    tcase_add_test(tests, what_contradicts_itself_is_kept);
    tcase_add_test(tests, said_ten_times_it_stands_once);
    tcase_add_test(tests, a_thousand_faults_are_read);
    tcase_add_test(tests, denials_of_everything_and_praise_only);
    tcase_add_test(tests, quotes_within_quotes);
    tcase_add_test(tests, a_sentence_in_another_language);
    suite_add_tcase(suite, tests);
    return support_main(suite);
}
