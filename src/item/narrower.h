// SPDX-License-Identifier: MIT
// A material that is said already by a narrower one.
#ifndef ITEM_NARROWER_H
#define ITEM_NARROWER_H

#include "item/record.h"

// "Wood" beside "beech", or of a "wooden jigsaw": true, and no news to anybody who reads the other word.
bool value_said_narrower(const struct record *record, const struct value *value);

#endif
