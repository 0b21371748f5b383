// SPDX-License-Identifier: MIT
// The search for the best pick of a model (title/solve_model.h).
#ifndef TITLE_SOLVE_SEARCH_H
#define TITLE_SOLVE_SEARCH_H

#include "title/solve_model.h"

struct solve_found {
    bool any;     // some pick keeps the laws
    size_t *pick; // entry per group
    int64_t value;
    int64_t bound;  // no pick is worth more; INT64_MIN when none exists
    bool finished;  // within the budget: the pick is the best one, or there is none
    uint64_t steps; // measures taken
};

// `start` may be NULL, or a lawful pick to improve on. Only titles of model->least or more are looked for.
void solve_search(struct arena *arena, const struct solve_model *model, const size_t *start, uint64_t budget,
                  struct solve_found *found);

#endif
