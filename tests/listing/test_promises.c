// SPDX-License-Identifier: MIT
// What a listing may promise, over ten thousand made-up records with claims, faults and marks: no claim
// without evidence in any text for a buyer, no grade above the lowest cap, years that marks only narrow, and
// a draft that drafting again leaves as it is. And no word that no rule may print, in anything that is
// written.
#include "../rules/records.h"

#include "../rules/flaws.h"
#include "forbidden.h"
#include "item/write.h"
#include "listing/dates.h"
#include "listing/sheet.h"
#include "text/utf8.h"

enum { RECORDS = 10000, CHUNKS = 20 };

struct trial {
    struct arena *arena;
    struct drafter *drafter;
    struct dice dice;
    const struct node *tree;
    const struct record *record;
    const struct listing *listing;
    size_t *counts; // of what was put to the test
};

enum { BARRED, DATED, NARROWED, AGAIN, COUNTS };

#define HOLDS(t, condition, ...)                                                                             \
    do {                                                                                                     \
        if (!(condition))                                                                                    \
            ck_abort_msg("%.900s\n%.2400s", arena_format((t)->arena, __VA_ARGS__),                           \
                         yaml_of((t)->arena, (t)->tree));                                                    \
    } while (0)

static const struct listing *drafted(const struct trial *t, const struct record *record) {
    struct title_options options = {80, COUNT_GRAPHEMES, LOCALE_US, t->drafter->variants};
    return listing_draft(t->arena, t->drafter, record, &options);
}

// Marks of the bounds' own examples, as they would be read off a thing.
static void put_marks(struct trial *t, struct node *tree, uint32_t count) {
    const struct ruleset *rules = t->drafter->rules;
    struct node *marks = (struct node *)(uintptr_t)node_get(tree, "marks");
    if (!marks) {
        marks = node_list(t->arena);
        node_put(t->arena, tree, "marks", marks);
    }
    for (; count; count--) {
        const struct bound *bound = rules->bounds[dice_roll(&t->dice, (uint32_t)rules->bound_count)];
        const char *hit = bound->rule.hits.at[dice_roll(&t->dice, (uint32_t)bound->rule.hits.count)];
        struct buf mark = buf_start(t->arena);
        for (; *hit; hit++)
            if (*hit != '[' && *hit != ']') buf_byte(&mark, *hit);
        node_push(t->arena, marks, node_text(t->arena, mark.at));
    }
}

// --- claims ---

// "Not fully tested" claims nothing.
static bool is_denied(const char *text, const char *at) {
    return at >= text + 4 && !strncmp(at - 4, "not ", 4);
}

static bool stands_in(const char *text, const char *word) {
    size_t n = strlen(word);
    for (const char *at = text; (at = strstr(at, word)); at++)
        if ((at == text || !is_letter(at[-1])) && !is_letter(at[n]) && !is_denied(text, at)) return true;
    return false;
}

// Folded; a mark in a title stands without quotes, in the title's case.
static const char *without_marks(const struct trial *t, const char *text) {
    const char *folded = utf8_fold(t->arena, text);
    char *copy = arena_copy(t->arena, folded, strlen(folded));
    for (size_t i = 0; i < t->record->mark_count; i++) {
        const char *mark = utf8_fold(t->arena, t->record->marks[i].text);
        for (char *at = copy; *mark && (at = strstr(at, mark));) memset(at, '.', strlen(mark));
    }
    // So does a part that the flaw's own rule names: the pearl that is missing.
    for (size_t i = 0; i < t->record->flaw_count; i++) {
        const struct item_flaw *flaw = &t->record->flaws[i];
        const char *places[] = {flaw->part, flaw->where};
        for (size_t k = 0; k < 2; k++)
            if (claims_leave(flaw->kind, places[k]))
                for (char *at = copy; (at = strstr(at, places[k]));) memset(at, '.', strlen(places[k]));
    }
    return copy;
}

// A word that is told with its qualifier may stand in that wording, and nowhere else.
static const char *without_written(const struct trial *t, const char *text, const char *written) {
    if (!written) return text;
    const char *words = utf8_fold(t->arena, written);
    char *copy = arena_copy(t->arena, text, strlen(text));
    for (char *at = copy; (at = strstr(at, words));) memset(at, '.', strlen(words));
    return copy;
}

static void no_refused_claim(const struct trial *t) {
    const struct listing *l = t->listing;
    struct buf texts = buf_start(t->arena);
    buf_format(&texts, "%s\n%s\n%s\n", l->title, l->description, l->disclosure.text);
    for (size_t i = 0; i < l->alternate_count; i++) buf_format(&texts, "%s\n", l->alternates[i]);
    const char *folded = without_marks(t, unquoted(t->arena, texts.at));
    for (size_t i = 0; i < l->claims->count; i++) {
        const struct claim_found *found = &l->claims->items[i];
        bool barred = found->verdict != VERDICT_ALLOW;
        t->counts[BARRED] += barred;
        const char *rest = without_written(t, folded, found->written);
        HOLDS(t, !barred || !stands_in(rest, utf8_fold(t->arena, found->word)), "'%s' (%s) is told",
              found->word, found->claim->rule.id);
    }
}

// --- the grade ---

static void grade_is_capped(const struct trial *t) {
    size_t lowest = 0;
    for (size_t i = 0; i < t->record->flaw_count; i++) {
        const struct item_flaw *flaw = &t->record->flaws[i];
        if (flaw->kind->class == CLASS_FEATURE || flaw->kind->class == CLASS_STATUS) continue;
        size_t degree = flaw->severity == SEVERITY_LIGHT ? 0 : flaw->severity == SEVERITY_HEAVY ? 2 : 1;
        for (size_t k = 0; k < EXPECTED_FLAW_COUNT; k++)
            if (!strcmp(EXPECTED_FLAWS[k].id, flaw->kind->rule.id) &&
                (size_t)(EXPECTED_FLAWS[k].caps[degree] - 'A') > lowest)
                lowest = (size_t)(EXPECTED_FLAWS[k].caps[degree] - 'A');
    }
    HOLDS(t, (size_t)t->listing->grading.grade >= lowest, "graded %s, above %c",
          grade_letter(t->listing->grading.grade), (char)('A' + lowest));
}

// --- marks ---

static const char *dates_of(const struct trial *t, const struct listing *l) {
    struct buf out = buf_start(t->arena);
    json_write(&out, dates_tree(t->arena, l->dating, true));
    return out.at;
}

static bool has_caution(const struct listing *l, const struct caution *caution) {
    for (size_t i = 0; i < l->cautions->count; i++)
        if (l->cautions->items[i].caution == caution) return true;
    return false;
}

static void marks_narrow(struct trial *t) {
    const struct listing *l = t->listing;
    struct record turned = *t->record;
    turned.marks = arena_array(t->arena, turned.mark_count + 1, sizeof *turned.marks);
    for (size_t i = 0; i < turned.mark_count; i++)
        turned.marks[i] = t->record->marks[turned.mark_count - 1 - i];
    const struct listing *back = drafted(t, &turned);
    HOLDS(t, !strcmp(dates_of(t, l), dates_of(t, back)), "the order of marks tells in their years");
    HOLDS(t, back->cautions->count == l->cautions->count && back->grading.grade == l->grading.grade,
          "the order of marks tells");
    // The same with one mark less.
    struct record fewer = *t->record;
    if (!fewer.mark_count) return;
    fewer.mark_count--;
    const struct listing *less = drafted(t, &fewer);
    const struct dating *inner = l->dating, *outer = less->dating;
    HOLDS(t, inner->from >= outer->from && (!outer->to || (inner->to && inner->to <= outer->to)),
          "one mark more widens %s to %s", dates_of(t, less), dates_of(t, l));
    HOLDS(t, outer->fits || !inner->fits, "one mark more mends a conflict");
    for (size_t i = 0; i < less->cautions->count; i++)
        HOLDS(t, has_caution(l, less->cautions->items[i].caution), "one mark more takes the caution %s away",
              less->cautions->items[i].caution->rule.id);
    t->counts[DATED] += l->dating->count > 0;
    t->counts[NARROWED] += inner->from > outer->from || inner->to != outer->to;
}

// --- once more ---

static void again_is_the_same(struct trial *t) {
    const struct listing *l = t->listing;
    struct record with = *t->record;
    with.has_listing = true;
    with.listing.title = *l->title ? l->title : NULL;
    with.listing.description = *l->description ? l->description : NULL;
    const struct record *record = read_made(t->arena, t->drafter->rules, record_tree(t->arena, &with));
    const struct listing *again = drafted(t, record);
    HOLDS(t, !strcmp(l->title, again->title), "'%s' became '%s'", l->title, again->title);
    HOLDS(t, !strcmp(l->description, again->description), "the description became\n%s", again->description);
    HOLDS(t, !strcmp(l->disclosure.text, again->disclosure.text), "the disclosure became\n%s",
          again->disclosure.text);
    HOLDS(t, l->grading.grade == again->grading.grade && l->worth == again->worth && l->bound == again->bound,
          "grade or worth have changed");
    HOLDS(t, l->cautions->count == again->cautions->count && l->claims->count == again->claims->count,
          "cautions or claims have changed");
    if (!*l->title) return;
    HOLDS(t, again->given && again->given->score.earned == l->worth, "the drafted title earns %lld of %lld",
          (long long)(again->given ? again->given->score.earned : -1), (long long)l->worth);
    t->counts[AGAIN]++;
}

// --- words never printed ---

static void nothing_forbidden(const struct trial *t) {
    const struct listing *l = t->listing;
    struct buf out = buf_start(t->arena);
    sheet_text(t->arena, l, "2025-11-25", &out);
    for (size_t i = 0; i < l->alternate_count; i++) buf_format(&out, "%s\n", l->alternates[i]);
    for (size_t i = 0; i < l->finding_count; i++) buf_format(&out, "%s\n", l->findings[i].message);
    for (size_t i = 0; i < l->less_count; i++) buf_format(&out, "%s\n", l->less[i]);
    for (size_t i = 0; i < l->questions.count; i++)
        buf_format(&out, "%s %s\n", l->questions.items[i].ask, l->questions.items[i].because);
    for (size_t i = 0; i < l->photos.count; i++) buf_format(&out, "%s\n", l->photos.items[i].shows);
    for (size_t i = 0; i < l->withheld_count; i++) buf_format(&out, "%s\n", l->withheld[i].why);
    for (size_t i = 0; i < l->disclosure.count; i++)
        buf_format(&out, "%s\n", l->disclosure.sentences[i].text);
    const char *shown = without_marks(t, unquoted(t->arena, out.at)), *word = forbidden_in(t->arena, shown);
    const char *at = word ? strstr(shown, word) : NULL;
    while (at && at[-1] != '\n') at--;
    HOLDS(t, !word, "'%s' is printed in\n%.300s", word, at ? at : shown);
}

static void check_record(struct arena *arena, void *context) {
    struct trial *t = context;
    t->arena = arena;
    size_t number = dice_roll(&t->dice, 1000000);
    struct node *tree = random_record(arena, &t->dice, t->drafter->rules, number);
    put_marks(t, tree, dice_roll(&t->dice, 4));
    t->tree = tree;
    t->record = read_made(arena, t->drafter->rules, tree);
    t->listing = drafted(t, t->record);
    no_refused_claim(t);
    grade_is_capped(t);
    if (number % 3 == 0) marks_narrow(t); // each law of years has ten thousand sets of its own in evidence
    again_is_the_same(t);
    nothing_forbidden(t);
}

static void check_chunk(struct arena *arena, void *context) {
    size_t chunk = *(const size_t *)context, counts[COUNTS] = {0};
    struct drafter drafter = drafter_in(arena, shipped_once());
    struct trial t = {
        .drafter = &drafter, .dice = {UINT64_C(0xD1B54A32D192ED03) + 2 * chunk}, .counts = counts};
    struct arena *records = arena_new(NULL);
    for (size_t i = 0; i < RECORDS / CHUNKS; i++) {
        ck_assert(arena_try(records, check_record, &t));
        arena_reset(records);
    }
    arena_free(records);
    // A law that was never put to the test would pass too.
    ck_assert_msg(counts[BARRED] >= 50 && counts[DATED] >= 80 && counts[NARROWED] >= 40 &&
                      counts[AGAIN] >= 400,
                  "barred %zu, dated %zu, narrowed %zu, again %zu", counts[BARRED], counts[DATED],
                  counts[NARROWED], counts[AGAIN]);
}

START_TEST(listings_promise_no_more_than_their_records) {
    size_t chunk = (size_t)_i;
    within(check_chunk, &chunk);
}
END_TEST

static void check_forbidden(struct arena *arena, void *context) {
    (void)context;
    ck_assert_str_eq(forbidden_in(arena, "It is Safe."), "safe");
    ck_assert_str_eq(forbidden_in(arena, "a smoke-free home"), "smoke-free home");
    ck_assert_ptr_null(forbidden_in(arena, "tried safely; a rarely seen perfectionist"));
    ck_assert_str_eq(unquoted(arena, "a 'safe' lid, \"rare\" it's the seller's"),
                     "a  lid,  it's the seller's");
    ck_assert_str_eq(unquoted(arena, "3/8\" drive, 'left open"), "3/8\" drive, 'left open");
}

START_TEST(forbidden_words_are_found) {
    within(check_forbidden, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("listing.promises");
    TCase *tests = tcase_create("laws");
    tcase_set_timeout(tests, 300);
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_add_loop_test(tests, listings_promise_no_more_than_their_records, 0, CHUNKS);
    tcase_add_test(tests, forbidden_words_are_found);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
