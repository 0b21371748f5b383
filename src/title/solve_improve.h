// SPDX-License-Identifier: MIT
// Betters a pick by single changes: one entry in, and out with what clashes and with what it earns least by
// length.
#ifndef TITLE_SOLVE_IMPROVE_H
#define TITLE_SOLVE_IMPROVE_H

#include "title/solve_model.h"

struct solve_improve {
    size_t *trial, *order; // order: groups that may be left out, the least earning by length first
    int64_t *earns;        // per group: what leaving it out costs
    uint64_t *room;
};

void solve_improve_init(struct arena *arena, const struct solve_model *model, struct solve_improve *improve);
// `pick` keeps the laws before and after, and `value` is its value. False when no single change betters it.
bool solve_improve_pick(const struct solve_model *model, struct solve_improve *improve, size_t *pick,
                        int64_t *value);

#endif
