// SPDX-License-Identifier: MIT
// The solver against trying every choice, on small problems of every kind: same worth, same choice, same
// shortest.
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "support_cases.h"

enum { CASES = 6000, PHRASES = 6, ROLLUPS = 2 };

struct truth {
    bool feasible;
    int64_t worth;
    size_t length, shortest, equals; // equals: choices with the best worth and length
    int spelling[PHRASES];
    bool rollup[ROLLUPS];
};

struct shares {
    size_t musts, three, shared, ties, rollups, tight, covered;
};

// Spellings in order, then the roll-up, then left out: -2 and -1 become the greatest two.
static unsigned rank(int spelling) {
    return spelling >= 0 ? (unsigned)spelling : 1000u + (unsigned)(spelling + 2);
}

static bool comes_first(const int *a, const int *b, size_t count) {
    for (size_t p = 0; p < count; p++)
        if (a[p] != b[p]) return rank(a[p]) < rank(b[p]);
    return false;
}

static void try_choice(const struct title_problem *problem, const int *spelling, struct truth *truth) {
    struct title_problem wide = *problem;
    bool rollup[ROLLUPS] = {false};
    int64_t worth;
    size_t length;
    wide.limit = SIZE_MAX;
    for (size_t p = 0; p < problem->phrase_count; p++)
        if (spelling[p] == -2) rollup[problem->phrases[p].rollup] = true;
    if (!title_worth(&wide, spelling, rollup, &worth, &length)) return;
    if (length < truth->shortest) truth->shortest = length;
    if (!title_worth(problem, spelling, rollup, &worth, &length)) return;
    bool same = truth->feasible && worth == truth->worth && length == truth->length;
    bool better =
        !truth->feasible || worth > truth->worth || (worth == truth->worth && length < truth->length);
    truth->equals = better ? 1 : truth->equals + same;
    if (!better && !(same && comes_first(spelling, truth->spelling, problem->phrase_count))) return;
    truth->feasible = true;
    truth->worth = worth;
    truth->length = length;
    memcpy(truth->spelling, spelling, problem->phrase_count * sizeof *spelling);
    memcpy(truth->rollup, rollup, sizeof rollup);
}

static void try_all(const struct title_problem *problem, int *spelling, size_t from, struct truth *truth) {
    if (from == problem->phrase_count) {
        try_choice(problem, spelling, truth);
        return;
    }
    const struct title_phrase *phrase = &problem->phrases[from];
    for (int s = phrase->must && phrase->rollup >= 0 ? -2 : -1; s < (int)phrase->count; s++) {
        if (s == -1 && phrase->must) continue;
        spelling[from] = s;
        try_all(problem, spelling, from + 1, truth);
    }
}

static bool shares_a_word(const struct title_spelling *a, const struct title_spelling *b) {
    for (size_t i = 0; i < a->word_count; i++)
        for (size_t j = 0; j < b->word_count; j++)
            if (a->words[i] == b->words[j]) return true;
    return false;
}

static void count_shares(const struct title_problem *problem, const struct truth *truth,
                         struct shares *shares) {
    bool must = false, three = false, shared = false, rollup = false, covered = false;
    for (size_t p = 0; p < problem->phrase_count; p++) {
        const struct title_phrase *phrase = &problem->phrases[p];
        must |= phrase->must;
        three |= phrase->count == 3;
        rollup |= phrase->must && phrase->rollup >= 0;
        covered |= truth->feasible && truth->spelling[p] == -2;
        for (size_t q = 0; q < p; q++)
            shared |= shares_a_word(phrase->spellings, problem->phrases[q].spellings);
    }
    shares->musts += must;
    shares->three += three;
    shares->shared += shared;
    shares->rollups += rollup;
    shares->covered += covered;
    shares->ties += truth->feasible && truth->equals > 1;
    shares->tight += !truth->feasible;
}

static void compare(const struct title_problem *problem, const struct title_choice *got,
                    const struct truth *truth, uint64_t seed) {
    int64_t worth;
    size_t length;
    ck_assert_msg(got->optimal, "case %ju ran out of steps", (uintmax_t)seed);
    ck_assert_msg(got->feasible == truth->feasible, "case %ju feasible", (uintmax_t)seed);
    ck_assert_msg(got->shortest == truth->shortest, "case %ju shortest %zu, not %zu", (uintmax_t)seed,
                  got->shortest, truth->shortest);
    if (!truth->feasible) return;
    ck_assert_msg(got->worth == truth->worth, "case %ju worth %jd, not %jd", (uintmax_t)seed,
                  (intmax_t)got->worth, (intmax_t)truth->worth);
    ck_assert_msg(got->bound == got->worth && got->length == truth->length, "case %ju length",
                  (uintmax_t)seed);
    for (size_t p = 0; p < problem->phrase_count; p++)
        ck_assert_msg(got->spelling[p] == truth->spelling[p], "case %ju phrase %zu: %d, not %d",
                      (uintmax_t)seed, p, got->spelling[p], truth->spelling[p]);
    for (size_t r = 0; r < problem->rollup_count; r++)
        ck_assert_msg(got->rollup[r] == truth->rollup[r], "case %ju roll-up %zu", (uintmax_t)seed, r);
    ck_assert(title_worth(problem, got->spelling, got->rollup, &worth, &length));
    ck_assert(worth == got->worth && length == got->length);
}

static struct case_shape small_shape(struct case_random *random) {
    struct case_shape shape = {.phrases = 2 + case_below(random, PHRASES - 1),
                               .musts = case_below(random, 5)};
    shape.flat = case_below(random, 2) == 0;
    shape.wordings = 1 + case_below(random, shape.flat ? 5 : 14);
    shape.wants = 1 + case_below(random, shape.wordings < 5 ? shape.wordings : 5);
    shape.limit =
        case_below(random, 4) == 0 ? case_below(random, 12) : 8 + case_below(random, shape.flat ? 18 : 50);
    shape.rollups = shape.musts > 0 ? case_below(random, ROLLUPS + 1) : 0;
    shape.sharing = (unsigned)case_below(random, 60);
    return shape;
}

static void run_cases(struct arena *arena, void *context) {
    struct shares *shares = context;
    for (uint64_t seed = 1; seed <= CASES; seed++) {
        struct case_random random = {seed};
        struct case_shape shape = small_shape(&random);
        const struct title_problem *problem = case_make(arena, &shape, seed);
        struct truth truth = {.shortest = SIZE_MAX};
        int spelling[PHRASES];
        try_all(problem, spelling, 0, &truth);
        struct title_choice got = title_solve(arena, problem);
        compare(problem, &got, &truth, seed);
        count_shares(problem, &truth, shares);
    }
}

START_TEST(finds_what_trying_everything_finds) {
    struct shares shares = {0};
    struct arena *arena = arena_new(NULL);
    ck_assert(arena_try(arena, run_cases, &shares));
    ck_assert_uint_ge(shares.musts, CASES / 10);
    ck_assert_uint_ge(shares.three, CASES / 10);
    ck_assert_uint_ge(shares.shared, CASES / 10);
    ck_assert_uint_ge(shares.ties, CASES / 10);
    ck_assert_uint_ge(shares.rollups, CASES / 10);
    ck_assert_uint_ge(shares.tight, CASES / 10);
    ck_assert_uint_ge(shares.covered, CASES / 50);
    arena_free(arena);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("title/solve: every choice");
    TCase *group = tcase_create("all");
    tcase_set_timeout(group, 300);
    tcase_add_test(group, finds_what_trying_everything_finds);
    suite_add_tcase(suite, group);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
