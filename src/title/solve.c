// SPDX-License-Identifier: MIT
// Solves the title problem in two searches: first the shortest title that holds every must, which also says
// whether any title is possible; then, from there, the best one.
#include "title/problem.h"
#include "title/solve_least.h"
#include "title/solve_model.h"
#include "title/solve_reach.h"
#include "title/solve_reduce.h"
#include "title/solve_search.h"

// Ends within about a second at 60 phrases, 400 wordings and 200 characters.
static const uint64_t DEFAULT_STEPS = 100000;

static int64_t divide_down(int64_t a, int64_t b) {
    return a / b - (a % b < 0 ? 1 : 0);
}

// A choice as the entries of a model of the problem, which may lack some: false then.
static bool carry_over(const int *spelling, const struct solve_model *to, size_t *carried) {
    for (size_t g = 0; g < to->group_count; g++) {
        size_t e = to->first[g];
        while (e < to->first[g + 1] && to->entries[e].spelling != spelling[g]) e++;
        if (e == to->first[g + 1]) return false;
        carried[g] = e;
    }
    return true;
}

static void spellings_of(const struct solve_model *model, const size_t *pick, int *spelling) {
    for (size_t g = 0; g < model->group_count; g++) spelling[g] = model->entries[pick[g]].spelling;
}

// `spelling`: of each phrase and roll-up.
static void report(const struct title_problem *problem, const int *spelling, struct title_choice *choice) {
    for (size_t p = 0; p < problem->phrase_count; p++)
        choice->spelling[p] = spelling[p] < 0 && problem->phrases[p].must ? -2 : spelling[p];
    for (size_t r = 0; r < problem->rollup_count; r++)
        choice->rollup[r] = spelling[problem->phrase_count + r] >= 0;
    (void)title_worth(problem, choice->spelling, choice->rollup, &choice->worth, &choice->length);
}

// A value is at most worth * scale in grains, less a length that is at most the room.
static int64_t worth_bound(const struct solve_model *model, int64_t bound) {
    return divide_down(divide_down(bound, model->grain) + (int64_t)model->room, model->scale);
}

// The shortest title, as solve_least() gives it; false when there is none.
static bool find_least(struct arena *arena, const struct title_problem *problem, int *spelling,
                       size_t *length, struct title_choice *choice) {
    struct solve_model musts;
    struct solve_found least;
    if (solve_least(arena, problem, spelling, length)) return true;
    solve_model_build(arena, problem, true, &musts);
    solve_search(arena, &musts, NULL, DEFAULT_STEPS, &least);
    choice->steps = least.steps;
    choice->optimal = least.finished;
    if (!least.any) return false;
    spellings_of(&musts, least.pick, spelling);
    *length = (size_t)-least.value;
    return true;
}

static void solve(struct arena *arena, const struct title_problem *problem, struct title_choice *choice) {
    struct solve_model model;
    struct solve_found best;
    uint64_t budget = problem->steps == 0 ? DEFAULT_STEPS : problem->steps;
    size_t length, groups = problem->phrase_count + problem->rollup_count;
    int *spelling = arena_array(arena, groups, sizeof *spelling);
    if (!find_least(arena, problem, spelling, &length, choice)) return;
    choice->shortest = length == 0 ? 0 : length - 1;
    if (choice->shortest > problem->limit) return;
    choice->feasible = true;
    solve_model_build(arena, problem, false, &model);
    size_t *start = arena_array(arena, groups, sizeof *start);
    bool carried = carry_over(spelling, &model, start);
    solve_search(arena, &model, carried ? start : NULL, budget, &best);
    choice->steps += best.steps;
    // The budget may end before the search finds any title; the shortest one is a title too.
    if (best.any) spellings_of(&model, best.pick, spelling);
    report(problem, spelling, choice);
    choice->optimal = choice->optimal && best.finished;
    choice->bound = worth_bound(&model, best.bound);
    if (choice->optimal || choice->bound < choice->worth) choice->bound = choice->worth;
}

// A title worth the floor has at least the value of that worth less its greatest length.
static void solve_above(struct arena *arena, const struct title_problem *problem, int64_t floor,
                        struct title_choice *choice) {
    struct solve_model model;
    struct solve_found best;
    if (!reach_floor(arena, problem, floor)) return;
    solve_model_build(arena, problem, false, &model);
    int64_t least = (floor * model.scale - (int64_t)model.room) * model.grain;
    if (least > model.least) model.least = least;
    int64_t less = solve_reduce_sure(&model);
    solve_search(arena, &model, NULL, problem->steps == 0 ? DEFAULT_STEPS : problem->steps, &best);
    choice->steps = best.steps;
    int *spelling = arena_array(arena, model.group_count, sizeof *spelling);
    if (best.any) {
        spellings_of(&model, best.pick, spelling);
        report(problem, spelling, choice);
    }
    choice->feasible = best.any && choice->worth >= floor;
    choice->optimal = best.finished;
    choice->bound = best.finished ? choice->worth : worth_bound(&model, best.bound + less);
}

static struct title_choice start_choice(struct arena *arena, const struct title_problem *problem) {
    struct title_choice choice = {.shortest = SIZE_MAX, .optimal = true};
    choice.spelling = arena_array(arena, problem->phrase_count, sizeof *choice.spelling);
    choice.rollup = arena_array(arena, problem->rollup_count, sizeof *choice.rollup);
    for (size_t p = 0; p < problem->phrase_count; p++) choice.spelling[p] = -1;
    return choice;
}

struct title_choice title_solve(struct arena *arena, const struct title_problem *problem) {
    struct title_choice choice = start_choice(arena, problem);
    struct arena_mark mark = arena_mark(arena);
    solve(arena, problem, &choice);
    arena_release(arena, &mark);
    return choice;
}

struct title_choice title_solve_above(struct arena *arena, const struct title_problem *problem,
                                      int64_t floor) {
    struct title_choice choice = start_choice(arena, problem);
    struct arena_mark mark = arena_mark(arena);
    solve_above(arena, problem, floor, &choice);
    arena_release(arena, &mark);
    return choice;
}
