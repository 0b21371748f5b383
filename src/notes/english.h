// SPDX-License-Identifier: MIT
// Is a word English, or may it be a name? Private to the room.
#ifndef NOTES_ENGLISH_H
#define NOTES_ENGLISH_H

#include "notes/note.h"

// Is the word at token `i` one that the word book knows, in any inflection? Without a word book: true.
bool english_at(const struct note *note, size_t i);

#endif
