// SPDX-License-Identifier: MIT
// What must hold of the solver on any problem, and problems made to be hard for it.
#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "support_cases.h"

enum { PHRASES = 60, WANTS = 400 };

static void run(void (*body)(struct arena *, void *)) {
    struct arena *arena = arena_new(NULL);
    ck_assert_ptr_nonnull(arena);
    ck_assert(arena_try(arena, body, NULL));
    arena_free(arena);
}

static void check_lawful(const struct title_problem *problem, const struct title_choice *choice) {
    int64_t worth;
    size_t length;
    ck_assert(choice->feasible);
    ck_assert(title_worth(problem, choice->spelling, choice->rollup, &worth, &length));
    ck_assert(worth == choice->worth && length == choice->length);
    ck_assert(choice->bound >= choice->worth);
    if (choice->optimal) ck_assert(choice->bound == choice->worth);
}

static void raise_limits(struct arena *arena, void *context) {
    (void)context;
    struct case_shape shape = case_full_size();
    size_t grew = 0;
    for (uint64_t seed = 1; seed <= 20; seed++) {
        struct title_problem *problem = case_make(arena, &shape, seed);
        int64_t before = INT64_MIN;
        size_t shortest = 0;
        for (problem->limit = 5; problem->limit <= 110; problem->limit += 7) {
            struct title_choice choice = title_solve(arena, problem);
            ck_assert(choice.optimal);
            ck_assert(problem->limit == 5 || choice.shortest == shortest);
            shortest = choice.shortest;
            ck_assert(choice.feasible == (shortest <= problem->limit));
            if (!choice.feasible) continue;
            check_lawful(problem, &choice);
            ck_assert_msg(choice.worth >= before, "case %ju at %zu", (uintmax_t)seed, problem->limit);
            grew += choice.worth > before;
            before = choice.worth;
        }
    }
    ck_assert_uint_gt(grew, 200);
}

START_TEST(a_higher_limit_never_earns_less) {
    run(raise_limits);
}
END_TEST

static void shuffle_wants(struct title_problem *problem, struct title_want *wants, uint64_t seed) {
    struct case_random random = {seed};
    memcpy(wants, problem->wants, problem->want_count * sizeof *wants);
    for (size_t k = problem->want_count; k > 1; k--) {
        size_t other = case_below(&random, k);
        struct title_want want = wants[other];
        wants[other] = wants[k - 1];
        wants[k - 1] = want;
    }
    problem->wants = wants;
}

static void reorder_wants(struct arena *arena, void *context) {
    (void)context;
    for (uint64_t seed = 1; seed <= 60; seed++) {
        struct case_shape shape = case_full_size();
        shape.flat = seed % 2 == 0;
        struct title_problem *problem = case_make(arena, &shape, seed);
        struct title_choice one = title_solve(arena, problem);
        shuffle_wants(problem, arena_array(arena, problem->want_count, sizeof(struct title_want)), seed);
        struct title_choice other = title_solve(arena, problem);
        ck_assert(one.optimal && other.optimal);
        ck_assert(one.worth == other.worth && one.length == other.length);
        ck_assert_mem_eq(one.spelling, other.spelling, problem->phrase_count * sizeof(int));
    }
}

START_TEST(the_order_of_wants_does_not_matter) {
    run(reorder_wants);
}
END_TEST

static void cut_budgets(struct arena *arena, void *context) {
    (void)context;
    static const uint64_t budgets[] = {1, 2, 5, 20, 60, 90, 150, 400};
    size_t cut = 0;
    for (uint64_t seed = 1; seed <= 40; seed++) {
        struct case_shape shape = case_full_size();
        struct title_problem *problem = case_make(arena, &shape, seed);
        struct title_choice best = title_solve(arena, problem);
        ck_assert(best.optimal);
        for (size_t i = 0; i < sizeof budgets / sizeof *budgets; i++) {
            problem->steps = budgets[i];
            struct title_choice choice = title_solve(arena, problem);
            check_lawful(problem, &choice);
            ck_assert(choice.worth <= best.worth && choice.bound >= best.worth);
            ck_assert(!choice.optimal ||
                      !memcmp(choice.spelling, best.spelling, shape.phrases * sizeof(int)));
            cut += !choice.optimal;
        }
    }
    ck_assert_uint_gt(cut, 100);
}

START_TEST(a_small_budget_gives_a_true_bound) {
    run(cut_budgets);
}
END_TEST

static void raise_floors(struct arena *arena, void *context) {
    (void)context;
    static const int64_t under[] = {0, 1, 7, 40};
    struct case_shape shape = case_full_size();
    size_t held = 0;
    for (uint64_t seed = 1; seed <= 40; seed++) {
        struct title_problem *problem = case_make(arena, &shape, seed);
        struct title_choice best = title_solve(arena, problem);
        if (!best.feasible) continue;
        for (size_t i = 0; i < sizeof under / sizeof *under; i++) {
            struct title_choice choice = title_solve_above(arena, problem, best.worth - under[i]);
            check_lawful(problem, &choice);
            ck_assert(choice.optimal && choice.worth == best.worth && choice.length == best.length);
            ck_assert_mem_eq(choice.spelling, best.spelling, problem->phrase_count * sizeof(int));
            held++;
        }
        ck_assert(!title_solve_above(arena, problem, best.worth + 1).feasible);
    }
    ck_assert_uint_gt(held, 100);
}

START_TEST(a_floor_below_the_best_changes_nothing_and_one_above_leaves_none) {
    run(raise_floors);
}
END_TEST

// Phrases of one stem and one word each, all worth the same; `same_word`: they all say the same word.
static struct title_problem *make_equals(struct arena *arena, bool same_word) {
    struct title_problem *problem = arena_alloc(arena, sizeof *problem);
    struct title_phrase *phrases = arena_array(arena, PHRASES, sizeof *phrases);
    struct title_want *wants = arena_array(arena, WANTS, sizeof *wants);
    struct title_wording *wordings = arena_array(arena, WANTS, sizeof *wordings);
    struct title_spelling *texts = arena_array(arena, PHRASES, sizeof *texts);
    uint16_t *numbers = arena_array(arena, PHRASES, sizeof *numbers);
    for (uint16_t p = 0; p < PHRASES; p++) {
        numbers[p] = p;
        texts[p] = (struct title_spelling){.length = 7, .tells = 1, .words = &numbers[same_word ? 0 : p]};
        texts[p].word_count = 1;
        texts[p].stems = &numbers[p];
        texts[p].stem_count = 1;
        phrases[p] = (struct title_phrase){.spellings = &texts[p], .count = 1, .rollup = -1};
    }
    for (size_t k = 0; k < WANTS; k++) {
        wordings[k] = (struct title_wording){.stems = &numbers[k % PHRASES], .count = 1, .weight = 10};
        wants[k] = (struct title_want){.wordings = &wordings[k], .count = 1};
    }
    *problem = (struct title_problem){.phrases = phrases, .phrase_count = PHRASES, .wants = wants};
    problem->want_count = WANTS - WANTS % PHRASES;
    problem->word_count = problem->stem_count = PHRASES;
    problem->limit = 200;
    return problem;
}

static void solve_equals(struct arena *arena, void *context) {
    (void)context;
    const struct title_problem *problem = make_equals(arena, false);
    struct title_choice choice = title_solve(arena, problem);
    check_lawful(problem, &choice);
    ck_assert(choice.optimal);
    ck_assert_int_eq(choice.worth, 25 * 61); // (200 + 1) / (7 + 1) phrases, each answering six wants of 10
    for (size_t p = 0; p < PHRASES; p++) ck_assert_int_eq(choice.spelling[p], p < 25 ? 0 : -1);
}

START_TEST(of_equals_the_first_are_taken) {
    run(solve_equals);
}
END_TEST

static void solve_one_word(struct arena *arena, void *context) {
    (void)context;
    struct title_problem *problem = make_equals(arena, true);
    struct title_choice choice = title_solve(arena, problem);
    check_lawful(problem, &choice);
    ck_assert(choice.optimal);
    ck_assert_int_eq(choice.worth, 61);
    ck_assert_int_eq(choice.spelling[0], 0);
    struct title_phrase *phrases = arena_array(arena, PHRASES, sizeof *phrases);
    memcpy(phrases, problem->phrases, PHRASES * sizeof *phrases);
    phrases[3].must = phrases[50].must = true;
    problem->phrases = phrases;
    choice = title_solve(arena, problem);
    ck_assert(choice.optimal && !choice.feasible);
    ck_assert_uint_eq(choice.shortest, SIZE_MAX);
}

START_TEST(of_phrases_with_one_word_one_is_taken) {
    run(solve_one_word);
}
END_TEST

static void solve_large(struct arena *arena, void *context) {
    (void)context;
    size_t proved = 0;
    for (uint64_t seed = 1; seed <= 8; seed++) {
        struct case_shape shape = {.phrases = PHRASES, .wordings = 400, .wants = 50, .limit = 200};
        shape.musts = 5;
        shape.rollups = 2;
        shape.sharing = 15;
        const struct title_problem *problem = case_make(arena, &shape, seed);
        struct title_choice choice = title_solve(arena, problem);
        check_lawful(problem, &choice);
        ck_assert_msg((choice.bound - choice.worth) * 8 <= choice.worth, "case %ju: gap", (uintmax_t)seed);
        proved += choice.optimal;
    }
    ck_assert_uint_ge(proved, 1);
}

START_TEST(the_largest_problems_end) {
    run(solve_large);
}
END_TEST

static void solve_extremes(struct arena *arena, void *context) {
    (void)context;
    struct title_problem *problem = make_equals(arena, false);
    struct title_wording *wordings = arena_array(arena, PHRASES, sizeof *wordings);
    struct title_want want = {.wordings = wordings, .count = PHRASES};
    for (size_t i = 0; i < PHRASES; i++) {
        wordings[i] = problem->wants[i].wordings[0];
        wordings[i].weight = INT32_MAX - (int32_t)i;
    }
    problem->wants = &want;
    problem->want_count = 1;
    problem->limit = 7;
    struct title_choice choice = title_solve(arena, problem);
    check_lawful(problem, &choice);
    ck_assert(choice.optimal && choice.worth == (int64_t)INT32_MAX + 1);
    problem->limit = SIZE_MAX;
    choice = title_solve(arena, problem);
    check_lawful(problem, &choice);
    ck_assert(choice.optimal && choice.worth == (int64_t)INT32_MAX + PHRASES);
    *problem = (struct title_problem){.limit = 80};
    choice = title_solve(arena, problem);
    ck_assert(choice.feasible && choice.optimal && choice.worth == 0 && choice.length == 0 &&
              choice.shortest == 0);
}

START_TEST(extreme_numbers_are_fine) {
    run(solve_extremes);
}
END_TEST

// The first phrase adds 15 to a want that pays 5 whatever the title says, the second adds 18; one of them
// fits.
static void solve_free_pay(struct arena *arena, void *context) {
    (void)context;
    struct title_problem *problem = make_equals(arena, false);
    const struct title_wording *of = problem->wants[0].wordings;
    struct title_wording first[] = {{.weight = 5}, {.stems = of[0].stems, .count = 1, .weight = 20}};
    struct title_wording second[] = {{.stems = of[1].stems, .count = 1, .weight = 18}};
    struct title_want wants[] = {{.wordings = first, .count = 2}, {.wordings = second, .count = 1}};
    problem->wants = wants;
    problem->want_count = 2;
    problem->limit = 7;
    struct title_choice choice = title_solve(arena, problem);
    check_lawful(problem, &choice);
    ck_assert_int_eq(choice.worth, 5 + 18 + 1);
    ck_assert_int_eq(choice.spelling[1], 0);
}

START_TEST(what_any_title_answers_is_no_gain) {
    run(solve_free_pay);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("title/solve: laws");
    TCase *group = tcase_create("laws");
    tcase_set_timeout(group, 300);
    tcase_add_test(group, a_higher_limit_never_earns_less);
    tcase_add_test(group, the_order_of_wants_does_not_matter);
    tcase_add_test(group, a_small_budget_gives_a_true_bound);
    tcase_add_test(group, a_floor_below_the_best_changes_nothing_and_one_above_leaves_none);
    tcase_add_test(group, of_equals_the_first_are_taken);
    tcase_add_test(group, of_phrases_with_one_word_one_is_taken);
    tcase_add_test(group, the_largest_problems_end);
    tcase_add_test(group, extreme_numbers_are_fine);
    tcase_add_test(group, what_any_title_answers_is_no_gain);
    suite_add_tcase(suite, group);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
