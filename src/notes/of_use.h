// SPDX-License-Identifier: MIT
// Words of a fault that tell what a thing is made to do, or what was done with it. Private to the room.
#ifndef NOTES_OF_USE_H
#define NOTES_OF_USE_H

#include "notes/faults.h"

bool fault_is_of_use(const struct fault_reader *r, const struct fault_hit *hit);
// Do the tokens [from, to) or the one behind name a battery, a bulb or another thing that is used up?
bool use_is_consumable(const struct tokens *tokens, size_t from, size_t to);
// effect_idle.c: what comes of a fault told before, and what a part is for.
bool use_is_effect(const struct fault_reader *r, const struct fault_hit *hit);
// Takes from the spot what the thing was only tried with.
void fault_drop_means(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot);

#endif
