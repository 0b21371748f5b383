// SPDX-License-Identifier: MIT
// The shortest title that holds every must, where it is plain to see.
#ifndef TITLE_SOLVE_LEAST_H
#define TITLE_SOLVE_LEAST_H

#include "title/problem.h"

// Fills the spelling of each phrase and, behind them, of each roll-up, -1 where it is left out, and the
// length with a separator behind each text. Of equals it is the first by the tie rule. False, with nothing to
// be read in either, where the shortest texts share a word, so that it takes a search.
bool solve_least(struct arena *arena, const struct title_problem *problem, int *spelling, size_t *length);

#endif
