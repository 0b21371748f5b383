// SPDX-License-Identifier: MIT
// A value that other words of the record say already, and more closely.
#ifndef ITEM_NARROWER_H
#define ITEM_NARROWER_H

#include "item/record.h"

// "Engraved" of an engraving that is told as such; "wood" beside "beech", or of a "wooden jigsaw": true, and
// no news to anybody who reads the other word.
bool value_said_narrower(const struct record *record, const struct value *value);

#endif
