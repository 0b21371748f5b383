// SPDX-License-Identifier: MIT
// What the notes say behind a fault.
#ifndef ITEM_TOLD_TAIL_H
#define ITEM_TOLD_TAIL_H

#include "item/record.h"

// "With a copper strip" of a mend, of a break that its piece is kept; NULL where the notes do not say it.
const char *told_with(struct arena *arena, const struct record *record, const struct item_flaw *flaw);

// "In the", "at the" where the notes have it before the place, of a state "into a" and the like too; else
// NULL.
const char *told_link(struct arena *arena, const struct record *record, const struct item_flaw *flaw);

// "Two scrolls on the back have snapped": does the place follow its part, before what is wrong with it?
bool told_of_part(struct arena *arena, const struct record *record, const struct item_flaw *flaw);
// Whether the size is that of the largest of several: "two chips, the biggest an inch long".
bool told_largest(struct arena *arena, const struct record *record, const struct item_flaw *flaw);

#endif
