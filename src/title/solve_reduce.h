// SPDX-License-Identifier: MIT
// Takes out of a model what no best choice holds (title/solve_model.h).
#ifndef TITLE_SOLVE_REDUCE_H
#define TITLE_SOLVE_REDUCE_H

#include "title/solve_model.h"

void solve_reduce_wordings(struct arena *arena, struct solve_model *model);
// Hands a want that a single group answers to the entries of that group, and forgets stems that nothing needs
// then.
void solve_reduce_wants(struct arena *arena, struct solve_model *model);
void solve_reduce_entries(struct arena *arena, struct solve_model *model);
// Takes out of `alive` entries that no title of a value of `least` or more holds.
void solve_reduce_above(const struct solve_model *model, int64_t least, uint64_t *alive);
// What every title of model->least or more has is worth no more than it takes to be needed afterwards: large
// values would make for large prices, which take long to settle. Returns how much less all such titles, and
// model->least, are worth then. Rows that solve_reduce_above() settles are taken out.
int64_t solve_reduce_sure(struct solve_model *model);
// Fills `clash` and `bar`.
void solve_reduce_pairs(struct arena *arena, struct solve_model *model);

#endif
