// SPDX-License-Identifier: MIT
// Is the record of more than one thing, though it may not say of how many?
#ifndef ITEM_SEVERAL_H
#define ITEM_SEVERAL_H

#include "item/record.h"

// More than one by its count, or by the notes: a "tin of buttons" holds buttons.
bool record_is_several(struct arena *arena, const struct record *record);

#endif
