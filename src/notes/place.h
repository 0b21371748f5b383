// SPDX-License-Identifier: MIT
// Phrases that say where on a thing something is: "on the base", "inside the lid", "underneath", "lower
// right".
#ifndef NOTES_PLACE_H
#define NOTES_PLACE_H

#include "notes/note.h"

// The tokens that a place phrase takes from `i` on; 0 where there is none. `where`: its words without "on
// the" and the like; "inside", "under" and "near" stay.
size_t place_at(const struct note *note, size_t i, const char **where);
// A noun for a place: "base", "back", "label", or any part.
bool place_noun(const struct note *note, size_t i);

#endif
