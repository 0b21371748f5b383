// SPDX-License-Identifier: MIT
// What sellers tell by the way, as against what names and describes the thing. Private to the room.
#ifndef NOTES_TALK_H
#define NOTES_TALK_H

#include "notes/note.h"

// Is the sentence that begins at token `first` the one that names the thing? No word stands before it, but
// for the mark of a list ("- Field glasses, Halden") or one sentence of talk.
bool talk_heading(const struct note *note, size_t first);

// Is the look or stuff at [from, to) said in a clause of the seller's own doings ("we had plastic ones", "I
// cut lemons with it"), and of nothing that the thing has?
bool talk_value(const struct note *note, size_t from, size_t to);

#endif
