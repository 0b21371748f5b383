// SPDX-License-Identifier: MIT
// What the shorthand of lists leaves for those who count. Private to the room.
#ifndef NOTES_SHORTHAND_H
#define NOTES_SHORTHAND_H

#include "notes/token.h"

// How many, by "x2" or "(2)" that left the tokens before token `i`; 0 where none did.
int shorthand_times(const struct tokens *tokens, size_t i);

#endif
