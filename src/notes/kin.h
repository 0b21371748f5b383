// SPDX-License-Identifier: MIT
// Which family a thing belongs to. Private to the room.
#ifndef NOTES_KIN_H
#define NOTES_KIN_H

#include "notes/things.h"

// Of the families that know the noun, the one that material and the note's other words point to; NULL when
// nothing tells. `toy`: the noun's own run says that it is one.
const struct family *kin_family(const struct note *note, const struct noun_found *found, bool toy);

// The family of what no rule places, once the faults are read.
void kin_last(struct note *note);

#endif
