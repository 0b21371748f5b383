// SPDX-License-Identifier: MIT
// What the shipped pack must hold: every kind of flaw with its caps and duty, every family, and families that
// differ.
#include "flaws.h"
#include "support.h"

#include "say/say.h"

static void (*now)(struct arena *arena, const struct shipped *shipped);

static void with_shipped(struct arena *arena, void *context) {
    (void)context;
    struct shipped shipped = shipped_load(arena);
    now(arena, &shipped);
}

static void run(void (*test)(struct arena *arena, const struct shipped *shipped)) {
    now = test;
    within(with_shipped, NULL);
}

static void check_flaws(struct arena *arena, const struct shipped *shipped) {
    (void)arena;
    ck_assert_uint_eq(EXPECTED_FLAW_COUNT, 149);
    ck_assert_uint_eq(shipped->rules->flaw_count, EXPECTED_FLAW_COUNT);
    for (size_t i = 0; i < EXPECTED_FLAW_COUNT; i++) {
        const char *id = EXPECTED_FLAWS[i].id;
        ck_assert_msg(i == 0 || strcmp(EXPECTED_FLAWS[i - 1].id, id) < 0, "%s is out of order", id);
        const struct flaw *flaw = ruleset_flaw(shipped->rules, id);
        ck_assert_msg(flaw != NULL, "there is no flaw %s", id);
        for (int s = SEVERITY_LIGHT; s <= SEVERITY_HEAVY; s++)
            ck_assert_msg((int)flaw->cap[s] == EXPECTED_FLAWS[i].caps[s - SEVERITY_LIGHT] - 'A',
                          "%s: cap of degree %d", id, s);
        ck_assert_msg(flaw->cap[SEVERITY_UNKNOWN] == flaw->cap[SEVERITY_MODERATE],
                      "%s: cap of an unknown degree", id);
        ck_assert_msg(flaw->duty == EXPECTED_FLAWS[i].duty, "%s: duty", id);
    }
}

START_TEST(every_flaw_has_the_caps_and_duty_written_down) {
    run(check_flaws);
}
END_TEST

static void check_classes(struct arena *arena, const struct shipped *shipped) {
    (void)arena;
    static const size_t expected[CLASS_FEATURE + 1] = {
        [CLASS_FUNCTION] = 9, [CLASS_DAMAGE] = 86, [CLASS_MISSING] = 18, [CLASS_REPAIR] = 11,
        [CLASS_DIRT] = 8,     [CLASS_ODOR] = 8,    [CLASS_STATUS] = 4,   [CLASS_FEATURE] = 5};
    size_t found[CLASS_FEATURE + 1] = {0};
    for (size_t i = 0; i < shipped->rules->flaw_count; i++) found[shipped->rules->flaws[i]->class]++;
    for (int c = 0; c <= CLASS_FEATURE; c++)
        ck_assert_msg(found[c] == expected[c], "class %d: %zu", c, found[c]);
}

START_TEST(each_class_holds_as_many_as_were_counted) {
    run(check_classes);
}
END_TEST

static const char *const family_ids[] = {
    "bags",    "books",       "cameras",  "ceramics",  "clocks-watches", "clothing",  "crafts",
    "decor",   "electrical",  "footwear", "furniture", "games-puzzles",  "glassware", "holiday",
    "jewelry", "kitchenware", "lighting", "linens",    "media",          "metalware", "music",
    "other",   "paper",       "parts",    "sports",    "tools",          "toys"};
enum { FAMILY_COUNT = sizeof family_ids / sizeof *family_ids };

static void check_families(struct arena *arena, const struct shipped *shipped) {
    (void)arena;
    ck_assert_uint_eq(FAMILY_COUNT, 27);
    ck_assert_uint_eq(shipped->rules->family_count, FAMILY_COUNT);
    for (size_t i = 0; i < FAMILY_COUNT; i++) {
        const struct family *family = ruleset_family(shipped->rules, family_ids[i]);
        ck_assert_msg(family != NULL, "there is no family %s", family_ids[i]);
        size_t wordings = 0;
        for (size_t w = 0; w < family->want_count; w++) wordings += family->wants[w].count;
        ck_assert_msg(family->want_count >= 3 && wordings >= 8, "%s: wants", family_ids[i]);
        ck_assert_msg(family->thing_count >= 20, "%s: %zu things", family_ids[i], family->thing_count);
        ck_assert_msg(family->photo_count >= 6, "%s: photos", family_ids[i]);
        ck_assert_msg(family->measures.count >= 1 && family->short_count >= 4 && family->avoid.count >= 3,
                      "%s", family_ids[i]);
    }
}

START_TEST(all_families_are_there_and_filled) {
    run(check_families);
}
END_TEST

// --- likeness: by the letters of the question, apart from the program's own comparison by stems ---

// Three-letter runs of a question in lower case, letters and spaces only.
static size_t runs_of(const char *text, char runs[][4], size_t most) {
    char plain[256];
    size_t n = 0, count = 0;
    for (; *text && n + 1 < sizeof plain; text++) {
        char c = *text >= 'A' && *text <= 'Z' ? (char)(*text + 32) : *text;
        if ((c >= 'a' && c <= 'z') || (n && plain[n - 1] != ' ')) plain[n++] = c >= 'a' && c <= 'z' ? c : ' ';
    }
    for (size_t i = 0; i + 3 <= n && count < most; i++, count++) snprintf(runs[count], 4, "%.3s", plain + i);
    return count;
}

static bool much_the_same(const char *a, const char *b) {
    char x[256][4], y[256][4];
    bool used[256] = {false};
    size_t n = runs_of(a, x, 256), m = runs_of(b, y, 256), shared = 0;
    for (size_t i = 0; i < n; i++)
        for (size_t j = 0; j < m; j++)
            if (!used[j] && !strcmp(x[i], y[j])) {
                used[j] = true;
                shared++;
                break;
            }
    return 2 * shared * 10 >= 7 * (n + m);
}

static void check_own_checks(struct arena *arena, const struct shipped *shipped) {
    (void)arena;
    ck_assert(much_the_same("Is the rim rough anywhere?", "Is the rim rough, anywhere?"));
    ck_assert(!much_the_same("Is the rim rough anywhere?", "Does the key turn in the lock?"));
    const struct ruleset *rules = shipped->rules;
    for (size_t f = 0; f < rules->family_count; f++) {
        const struct family *family = rules->families[f];
        size_t own = 0;
        for (size_t c = 0; c < family->check_count; c++) {
            bool elsewhere = false;
            for (size_t g = 0; g < rules->family_count; g++)
                for (size_t d = 0; g != f && d < rules->families[g]->check_count; d++)
                    elsewhere |= much_the_same(family->checks[c].ask, rules->families[g]->checks[d].ask);
            own += !elsewhere;
        }
        ck_assert_msg(own >= 8, "%s has only %zu checks of its own", family->rule.id, own);
    }
}

START_TEST(every_family_has_eight_checks_that_no_other_has) {
    run(check_own_checks);
}
END_TEST

static void check_likeness(struct arena *arena, const struct shipped *shipped) {
    (void)arena;
    const struct ruleset *rules = shipped->rules;
    for (size_t f = 0; f < rules->family_count; f++)
        for (size_t g = f + 1; g < rules->family_count; g++) {
            const struct family *a = rules->families[f], *b = rules->families[g];
            size_t shared = 0, fewer = a->check_count < b->check_count ? a->check_count : b->check_count;
            for (size_t i = 0; i < a->check_count; i++)
                for (size_t j = 0; j < b->check_count; j++)
                    if (much_the_same(a->checks[i].ask, b->checks[j].ask) ||
                        !strcmp(a->checks[i].id, b->checks[j].id)) {
                        shared++;
                        break;
                    }
            ck_assert_msg(2 * shared <= fewer, "%s and %s share %zu checks", a->rule.id, b->rule.id, shared);
        }
}

START_TEST(no_two_families_share_more_than_half_of_their_checks) {
    run(check_likeness);
}
END_TEST

static void check_proof(struct arena *arena, const struct shipped *shipped) {
    struct diags diags = diags_start(arena);
    struct proof_counts counts;
    proof_run(arena, &shipped->drafter, &counts, &diags);
    ck_assert_msg(!diags.count, "%s", printed(arena, &diags));
    ck_assert_uint_eq(counts.flaws, 149);
    ck_assert_uint_eq(counts.families, 27);
    ck_assert_uint_eq(counts.examples, 27);
    ck_assert_uint_eq(counts.claims, shipped->rules->claim_count);
    ck_assert_uint_ge(counts.claims, 60);
    ck_assert_uint_eq(counts.bounds, shipped->rules->bound_count);
    ck_assert_uint_ge(counts.bounds, 60);
    ck_assert_uint_eq(counts.cautions, shipped->rules->caution_count);
    ck_assert_uint_ge(counts.cautions, 50);
    ck_assert_msg(counts.misses_with_word * 100 >= counts.misses_weighed * 80,
                  "only %zu of %zu misses hold a word of their rule", counts.misses_with_word,
                  counts.misses_weighed);
    ck_assert_uint_ge(counts.misses_weighed, 3 * 149);
    ck_assert(counts.likeness <= 0.5);
    for (size_t i = 0; i < shipped->rules->flaw_count; i++) {
        const struct rule *rule = &shipped->rules->flaws[i]->rule;
        ck_assert_msg(rule->hits.count >= 3 && rule->misses.count >= 3, "%s shows too little", rule->id);
    }
}

START_TEST(the_shipped_pack_proves_itself) {
    run(check_proof);
}
END_TEST

// A question must not send anyone into danger, nor ask for what spoils the thing.
static void check_questions(struct arena *arena, const struct shipped *shipped) {
    static const char *const never[] = {"scrape off", "scrape the",      "burn a", "taste it",
                                        "lick it",    "sniff it",        "acid",   "a flame",
                                        " lighter",   "unscrew the back"};
    const struct ruleset *rules = shipped->rules;
    for (size_t i = 0; i < rules->flaw_count; i++)
        for (size_t k = 0; k < rules->flaws[i]->ask.count; k++)
            for (size_t n = 0; n < sizeof never / sizeof *never; n++)
                ck_assert_msg(!strstr(utf8_fold(arena, rules->flaws[i]->ask.at[k]), never[n]), "%s: %s",
                              rules->flaws[i]->rule.id, rules->flaws[i]->ask.at[k]);
    for (size_t i = 0; i < rules->family_count; i++)
        for (size_t k = 0; k < rules->families[i]->check_count; k++)
            for (size_t n = 0; n < sizeof never / sizeof *never; n++)
                ck_assert_msg(!strstr(utf8_fold(arena, rules->families[i]->checks[k].ask), never[n]),
                              "%s: %s", rules->families[i]->rule.id, rules->families[i]->checks[k].ask);
}

START_TEST(no_question_sends_anyone_into_danger) {
    run(check_questions);
}
END_TEST

static void check_things(struct arena *arena, const struct shipped *shipped) {
    const struct ruleset *rules = shipped->rules;
    for (size_t i = 0; i < rules->family_count; i++)
        for (size_t k = 0; k < rules->families[i]->thing_count; k++) {
            const struct thing *thing = &rules->families[i]->things[k];
            size_t count = 0;
            const struct thing *const *found = ruleset_things(rules, utf8_fold(arena, thing->noun), &count);
            bool here = false;
            for (size_t n = 0; n < count; n++) here |= found[n] == thing;
            ck_assert_msg(here, "%s is not found by its name", thing->noun);
            for (size_t n = 0; n + 1 < count; n++) ck_assert_ptr_ne(found[n], found[n + 1]);
        }
    size_t none = 1;
    ck_assert_ptr_null(ruleset_things(rules, "no such thing", &none));
    ck_assert_uint_eq(none, 0);
}

START_TEST(every_thing_is_found_by_its_noun) {
    run(check_things);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("rules.core");
    TCase *tests = tcase_create("shipped pack");
    tcase_set_timeout(tests, 120);
    tcase_add_test(tests, every_flaw_has_the_caps_and_duty_written_down);
    tcase_add_test(tests, each_class_holds_as_many_as_were_counted);
    tcase_add_test(tests, all_families_are_there_and_filled);
    tcase_add_test(tests, every_family_has_eight_checks_that_no_other_has);
    tcase_add_test(tests, no_two_families_share_more_than_half_of_their_checks);
    tcase_add_test(tests, the_shipped_pack_proves_itself);
    tcase_add_test(tests, no_question_sends_anyone_into_danger);
    tcase_add_test(tests, every_thing_is_found_by_its_noun);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
