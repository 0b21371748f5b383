// SPDX-License-Identifier: MIT
// The best pick of a model without wants and lengths (title/solve_model.h): what holds every must in the
// fewest characters. Musts are few, so that going through them costs less than one bound.
#ifndef TITLE_SOLVE_LEAST_H
#define TITLE_SOLVE_LEAST_H

#include "title/solve_search.h"

// What solve_search() finds; false, with nothing in `found`, where there are too many ways to go through.
bool solve_least(struct arena *arena, const struct solve_model *model, struct solve_found *found);

#endif
