// SPDX-License-Identifier: MIT
// Words of looks and stuffs that say something else where they stand so. Private to the room.
#ifndef NOTES_IDIOMS_H
#define NOTES_IDIOMS_H

#include "notes/things.h"

// "Mint condition", "crystal clear", "china cabinet": none says what its first word says alone. `n` tokens
// from `i` on, taken for a word of `use`.
bool value_is_idiom(const struct note *note, size_t i, size_t n, enum word_use use);

bool theme_is_idle(const struct note *note, size_t i); // idle_themes.c

#endif
