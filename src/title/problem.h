// SPDX-License-Identifier: MIT
// The title problem: choose phrases and their spellings for the greatest worth within the limit.
//
//   worth = sum over wants of the largest weight among their answered wordings + sum over chosen spellings of
//   (tells - cost)
//
// A wording is answered when all its stems are among the stems of what was chosen. Chosen spellings of one
// phrase: at most one; of a must: exactly one, or the roll-up that it names. No two chosen texts share a word
// (law 1: same inflection; free words are not listed). Length = sum of lengths + one separator between
// neighbours <= limit. Ties: greater worth, then shorter, then the choice that takes earlier phrases (and
// earlier spellings) first; a must's own spellings come before its roll-up.
#ifndef TITLE_PROBLEM_H
#define TITLE_PROBLEM_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "text/arena.h"

// Words and stems are small numbers, dense from 0.
struct title_spelling {
    size_t length; // in the unit of the limit; at least 1
    int32_t tells, cost;
    const uint16_t *words; // each at most once in a title
    size_t word_count;
    const uint16_t *stems; // what searches see
    size_t stem_count;
};

struct title_phrase {
    const struct title_spelling *spellings; // best first; at least one
    size_t count;
    bool must;
    int rollup; // index into rollups, or -1: may stand in for this phrase when it is a must
};

struct title_wording {
    const uint16_t *stems;
    size_t count;
    int32_t weight; // > 0
};

struct title_want {
    const struct title_wording *wordings;
    size_t count;
};

struct title_problem {
    const struct title_phrase *phrases; // in title order
    size_t phrase_count;
    const struct title_spelling *rollups; // shared by several musts; in the title once, or not at all
    size_t rollup_count;
    const struct title_want *wants;
    size_t want_count;
    size_t word_count, stem_count; // numbers in use
    size_t limit;
    uint64_t
        steps; // budget for the best choice, 0 takes the default; whether the musts fit is settled without it
};

// What was chosen.
struct title_choice {
    int *spelling;        // per phrase: index of its spelling, -1 left out, -2 covered by its roll-up
    bool *rollup;         // per roll-up: stands in the title
    int64_t worth, bound; // bound >= worth; equal when proved
    bool feasible;        // false: the musts do not fit (then `shortest` says what would)
    bool optimal;
    size_t length;   // of the choice
    size_t shortest; // least length that holds every must; SIZE_MAX when they exclude each other
    uint64_t steps;  // taken
};

// Solves exactly, or to a proven gap when the budget ends. Deterministic: same problem, same choice on any
// machine.
struct title_choice title_solve(struct arena *arena, const struct title_problem *problem);

// The same among titles of worth `floor` or more, found sooner; `feasible` is false where there is none, and
// `shortest` is not looked for.
struct title_choice title_solve_above(struct arena *arena, const struct title_problem *problem,
                                      int64_t floor);

// Worth of a given choice by the definition above, written apart from the solver (title/worth.c). Returns
// false when the choice breaks a law (word twice, must missing, too long).
bool title_worth(const struct title_problem *problem, const int *spelling, const bool *rollup, int64_t *worth,
                 size_t *length);

#endif
