// SPDX-License-Identifier: MIT
// The solver against GLPK on full-size problems: equal worth every time.
#include <check.h>
#include <stdlib.h>

#include "support_cases.h"
#include "support_glpk.h"

enum { CASES = 240 };

struct seen {
    size_t musts, rollups, infeasible;
};

static void count_kind(const struct title_problem *problem, bool feasible, struct seen *seen) {
    bool must = false, rollup = false;
    for (size_t p = 0; p < problem->phrase_count; p++) {
        must |= problem->phrases[p].must;
        rollup |= problem->phrases[p].must && problem->phrases[p].rollup >= 0;
    }
    seen->musts += must;
    seen->rollups += rollup;
    seen->infeasible += !feasible;
}

static void compare_case(struct arena *arena, const struct case_shape *shape, uint64_t seed,
                         struct seen *seen) {
    const struct title_problem *problem = case_make(arena, shape, seed);
    struct title_choice choice = title_solve(arena, problem);
    struct title_program *program = glpk_program_new(problem);
    int64_t worth = 0, checked;
    size_t length;
    bool feasible = glpk_program_solve(program, false, &worth);
    glpk_program_free(program);
    ck_assert_msg(choice.optimal, "case %ju ran out of steps", (uintmax_t)seed);
    ck_assert_msg(choice.feasible == feasible, "case %ju: feasible %d, GLPK %d", (uintmax_t)seed,
                  choice.feasible, feasible);
    count_kind(problem, feasible, seen);
    if (!feasible) return;
    ck_assert_msg(choice.worth == worth, "case %ju: worth %jd, GLPK %jd", (uintmax_t)seed,
                  (intmax_t)choice.worth, (intmax_t)worth);
    ck_assert_int_eq(choice.bound, choice.worth);
    ck_assert(title_worth(problem, choice.spelling, choice.rollup, &checked, &length));
    ck_assert(checked == choice.worth && length == choice.length);
}

static void run_full_size(struct arena *arena, void *context) {
    struct case_shape shape = case_full_size();
    for (uint64_t seed = 1; seed <= CASES; seed++) compare_case(arena, &shape, seed, context);
}

// Many musts that share words and roll-ups under a limit that often is too tight.
static void run_tight(struct arena *arena, void *context) {
    struct case_shape shape = case_full_size();
    shape.musts = 9;
    shape.rollups = 3;
    shape.sharing = 30;
    for (uint64_t seed = 1; seed <= CASES / 2; seed++) {
        shape.limit = 12 + seed % 40;
        compare_case(arena, &shape, 1000 + seed, context);
    }
}

static struct seen run(void (*cases)(struct arena *, void *)) {
    struct seen seen = {0};
    struct arena *arena = arena_new(NULL);
    ck_assert_ptr_nonnull(arena);
    ck_assert(arena_try(arena, cases, &seen));
    arena_free(arena);
    return seen;
}

START_TEST(earns_what_glpk_earns) {
    struct seen seen = run(run_full_size);
    ck_assert_uint_ge(seen.musts, CASES / 2);
    ck_assert_uint_ge(seen.rollups, CASES / 5);
}
END_TEST

START_TEST(earns_what_glpk_earns_with_many_musts) {
    struct seen seen = run(run_tight);
    ck_assert_uint_ge(seen.rollups, CASES / 5);
    ck_assert_uint_ge(seen.infeasible, CASES / 20);
    ck_assert_uint_le(seen.infeasible, CASES / 3);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("title/solve: GLPK");
    TCase *group = tcase_create("worth");
    tcase_set_timeout(group, 300);
    tcase_add_test(group, earns_what_glpk_earns);
    tcase_add_test(group, earns_what_glpk_earns_with_many_musts);
    suite_add_tcase(suite, group);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed == 0 ? EXIT_SUCCESS : EXIT_FAILURE;
}
