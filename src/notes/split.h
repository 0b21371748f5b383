// SPDX-License-Identifier: MIT
// Where one note speaks of several things.
#ifndef NOTES_SPLIT_H
#define NOTES_SPLIT_H

#include "notes/token.h"
#include "rules/ruleset.h"

struct note_piece {
    size_t from, to; // bytes of the note, without the words that part it from its neighbors
};

// At least one piece. "Okay, next one" begins a new thing; so does each entry of a list in which every entry
// is the name of one.
struct note_piece *note_split(struct arena *arena, const struct ruleset *rules, const char *text, size_t size,
                              size_t *count);

#endif
