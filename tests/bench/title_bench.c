// SPDX-License-Identifier: MIT
// How fast the title is chosen, as ratios measured in one run: against GLPK on the same problems, and as they
// grow. GLPK is timed for solving alone; ours for everything from the problem to the choice.
//   title_bench [cases]
#include <stdio.h>
#include <stdlib.h>
#include <time.h>

#include "support_cases.h"
#include "support_glpk.h"

struct bench {
    struct case_shape shape;
    size_t cases;
    bool with_glpk;
    double *ours, *glpk, *steps; // milliseconds; sorted in the end
    size_t proved, differ;
};

struct one_case {
    struct case_shape shape;
    uint64_t seed;
    const struct title_problem *problem;
    struct title_choice choice;
    double time;
};

static double milliseconds(void) {
    struct timespec now;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &now);
    return (double)now.tv_sec * 1e3 + (double)now.tv_nsec / 1e6;
}

static int compare_times(const void *a, const void *b) {
    double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

static double part_of(const double *sorted, size_t count, double part) {
    return sorted[(size_t)((double)(count - 1) * part + 0.5)];
}

static void make_case(struct arena *arena, void *context) {
    struct one_case *one = context;
    one->problem = case_make(arena, &one->shape, one->seed);
}

static void solve_case(struct arena *arena, void *context) {
    struct one_case *one = context;
    double start = milliseconds();
    one->choice = title_solve(arena, one->problem);
    one->time = milliseconds() - start;
}

static void must(bool done) {
    if (done) return;
    fputs("out of memory\n", stderr);
    exit(EXIT_FAILURE);
}

static void run_glpk(struct bench *bench, size_t i, const struct one_case *one) {
    struct title_program *program = glpk_program_new(one->problem);
    int64_t worth = 0;
    double start = milliseconds();
    bool feasible = glpk_program_solve(program, false, &worth);
    bench->glpk[i] = milliseconds() - start;
    glpk_program_free(program);
    bench->differ += feasible != one->choice.feasible || (feasible && worth != one->choice.worth);
}

static void run_bench(struct bench *bench) {
    struct arena *problems = arena_new(NULL), *solver = arena_new(NULL);
    bench->ours = calloc(bench->cases, sizeof(double));
    bench->glpk = calloc(bench->cases, sizeof(double));
    bench->steps = calloc(bench->cases, sizeof(double));
    must(problems != NULL && solver != NULL && bench->ours != NULL && bench->glpk != NULL &&
         bench->steps != NULL);
    for (size_t i = 0; i < bench->cases; i++) {
        struct one_case one = {.shape = bench->shape, .seed = i + 1};
        must(arena_try(problems, make_case, &one));
        must(arena_try(solver, solve_case, &one));
        bench->ours[i] = one.time;
        bench->steps[i] = (double)one.choice.steps;
        bench->proved += one.choice.optimal;
        if (bench->with_glpk) run_glpk(bench, i, &one);
        arena_reset(solver);
        arena_reset(problems);
    }
    arena_free(problems);
    arena_free(solver);
    qsort(bench->ours, bench->cases, sizeof(double), compare_times);
    qsort(bench->glpk, bench->cases, sizeof(double), compare_times);
    qsort(bench->steps, bench->cases, sizeof(double), compare_times);
}

static void free_bench(struct bench *bench) {
    free(bench->ours);
    free(bench->glpk);
    free(bench->steps);
}

static double against_glpk(size_t cases) {
    struct bench bench = {.shape = case_full_size(), .cases = cases, .with_glpk = true};
    run_bench(&bench);
    double ours = part_of(bench.ours, cases, 0.5), ours99 = part_of(bench.ours, cases, 0.99);
    double glpk = part_of(bench.glpk, cases, 0.5), glpk99 = part_of(bench.glpk, cases, 0.99);
    printf(
        "24 phrases, 100 wordings, 80 characters, %zu problems: proved %zu, worth differs from GLPK in %zu\n",
        cases, bench.proved, bench.differ);
    printf("  ours  median %8.3f ms  p99 %8.3f ms  p99/median %.1f  steps median %.0f\n", ours, ours99,
           ours99 / ours, part_of(bench.steps, cases, 0.5));
    printf("  GLPK  median %8.3f ms  p99 %8.3f ms  p99/median %.1f\n", glpk, glpk99, glpk99 / glpk);
    printf("  GLPK/ours at the median %.0f, at p99 %.0f\n\n", glpk / ours, glpk99 / ours99);
    free_bench(&bench);
    return ours;
}

static void grow(const char *name, struct case_shape shape, size_t cases, double unit) {
    struct bench bench = {.shape = shape, .cases = cases};
    run_bench(&bench);
    printf("  %-9s %3zu phrases %4zu wordings %4zu characters: median %7.2f  p90 %8.2f  proved %zu of %zu\n",
           name, shape.phrases, shape.wordings, shape.limit, part_of(bench.ours, cases, 0.5) / unit,
           part_of(bench.ours, cases, 0.9) / unit, bench.proved, cases);
    free_bench(&bench);
}

static void growth(size_t cases, double unit) {
    static const size_t phrases[] = {12, 24, 36, 48, 60}, wordings[] = {25, 50, 100, 200, 400};
    static const size_t limits[] = {40, 80, 120, 160, 200};
    struct case_shape shape = case_full_size();
    printf("times in medians of 24 phrases, 100 wordings, 80 characters\n");
    for (size_t i = 0; i < 5; i++, shape = case_full_size()) {
        shape.phrases = phrases[i];
        grow("phrases", shape, cases, unit);
    }
    for (size_t i = 0; i < 5; i++, shape = case_full_size()) {
        shape.wordings = wordings[i];
        shape.wants = wordings[i] / 8;
        grow("wordings", shape, cases, unit);
    }
    for (size_t i = 0; i < 5; i++, shape = case_full_size()) {
        shape.limit = limits[i];
        grow("limit", shape, cases, unit);
    }
    for (size_t i = 0; i < 5; i++, shape = case_full_size()) {
        shape.phrases = phrases[i];
        shape.wordings = wordings[i];
        shape.wants = wordings[i] / 8;
        shape.limit = limits[i];
        grow("all", shape, cases, unit);
    }
}

int main(int count, char **arguments) {
    long given = count > 1 ? strtol(arguments[1], NULL, 10) : 200;
    size_t cases = given > 0 ? (size_t)given : 200;
    double unit = against_glpk(cases);
    growth(cases < 40 ? cases : 40, unit);
    return EXIT_SUCCESS;
}
