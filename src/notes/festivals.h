// SPDX-License-Identifier: MIT
// Days that people keep: what they say of the goods, and where they tell only when. Private to the room.
#ifndef NOTES_FESTIVALS_H
#define NOTES_FESTIVALS_H

#include "notes/note.h"

// The tokens of a kept day that begins at token `i`; 0 where none does.
size_t festival_at(const struct tokens *tokens, size_t i);
bool festival_covers(const struct tokens *tokens, size_t i); // is token `i` one of them?
// Does the day at tokens [from, to) tell when something was done, and not what the goods are for?
bool festival_is_when(const struct note *note, size_t from, size_t to);

#endif
