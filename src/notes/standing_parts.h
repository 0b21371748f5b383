// SPDX-License-Identifier: MIT
// The part of which a look or a stuff is said, from the words before it. Private to the readers of values.
#ifndef NOTES_STANDING_PARTS_H
#define NOTES_STANDING_PARTS_H

#include "notes/note.h"

// A side of the thing: "back", "corners".
bool standing_side(const struct note *note, size_t i);
// The words from token `from` to `to` as the name of a part.
const char *standing_part_words(const struct note *note, size_t from, size_t to);
// The part that ends before token `i`; before the bracket or behind the comma at it. NULL where none is.
const char *standing_part_before(const struct note *note, size_t i);
const char *standing_bracketed_by(const struct note *note, size_t open);
const char *standing_part_spoken_of(const struct note *note, size_t comma);

// "Pile is wool", "the columns are ash": the noun that a clause begins with, before its verb at token `verb`;
// NULL where none is.
const char *standing_subject(const struct note *note, size_t verb);

// "Map of the islands on linen": is the thing a sheet, and the stuff at token `from` what it is on?
bool standing_is_sheet(const struct note *note, size_t from, size_t on);

#endif
