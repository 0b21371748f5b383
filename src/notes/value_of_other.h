// SPDX-License-Identifier: MIT
// Words of color and stuff that are not the thing's.
#ifndef NOTES_VALUE_OF_OTHER_H
#define NOTES_VALUE_OF_OTHER_H

#include "notes/note.h"

// The `n` tokens at `i` tell of what is written on the thing, of a mend or of a part at fault.
bool value_is_of_other(const struct note *note, size_t i, size_t n, enum word_use use);

// The noun `of` that the word at `i` stands before is no part of the thing: "on a flat stove".
bool value_is_elsewhere(const struct note *note, size_t i, const char *of);

// "In a japanned tin": what the thing lies in.
bool value_is_holder(const struct note *note, size_t i, size_t n);

// "Lace bobbins", "leather punch", "card table": what a tool or a table is for.
bool value_is_all_of_type(const struct note *note, size_t i, size_t n);
bool value_is_worked(const struct note *note, size_t i, size_t n);

// Of marks, of lettering or of a day: words that only look like those of the thing.
bool value_is_beside(const struct note *note, size_t i, size_t n);

// value_company.c: of what it goes with, was cleaned with or lay on.
bool value_is_of_company(const struct note *note, size_t i, size_t n);

// Is the look before token `glass` that of a pane, "clear glass" of a lamp?
bool value_is_of_pane(const struct note *note, size_t glass, const char *look);

#endif
