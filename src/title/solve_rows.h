// SPDX-License-Identifier: MIT
// Rows of a model: for one want and one stem, "the wordings that cannot do without this stem are at most as
// many as the entries chosen that bring it". A want is paid for one wording, so one row holds all its
// wordings that need the stem, and also those that need another stem which only comes with it.
#ifndef TITLE_SOLVE_ROWS_H
#define TITLE_SOLVE_ROWS_H

#include "title/solve_model.h"

// Fills rows, row_stem and row_count, and the rows of each wording.
void solve_rows_build(struct arena *arena, struct solve_model *model);

#endif
