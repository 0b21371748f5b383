// SPDX-License-Identifier: MIT
// Units behind a number, told apart from words that look like them: "4 in base" but "4 in a box". Private to
// the room.
#ifndef NOTES_UNIT_H
#define NOTES_UNIT_H

#include "notes/figure.h"

// The unit at token `i`, right behind `number` (or in its tail, and then `taken` is 0). NULL: none.
const struct unit *unit_at(const struct note *note, size_t i, const struct number *number, size_t *taken);
// A dimension's letter there: "h", "w", "d", "l"; 0: none.
char dimension_letter(const struct note *note, size_t i);

// "A big 5 in cobalt on the front": a figure that is painted, and no inches.
bool unit_is_painted(const struct tokens *tokens, size_t figure);

#endif
