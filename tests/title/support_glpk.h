// SPDX-License-Identifier: MIT
// The title problem as an integer program for GLPK: a second opinion from a solver that shares nothing with
// ours.
#ifndef TITLE_SUPPORT_GLPK_H
#define TITLE_SUPPORT_GLPK_H

#include "title/problem.h"

// Columns: one per spelling and roll-up, one per wording, one per must that a roll-up may cover. False: no
// title.
struct title_program;
struct title_program *glpk_program_new(const struct title_problem *problem);
bool glpk_program_solve(struct title_program *program, bool cuts, int64_t *worth);
void glpk_program_free(struct title_program *program);

#endif
