// SPDX-License-Identifier: MIT
// How people say that a part is not there. Private to the room.
#ifndef NOTES_LACKING_H
#define NOTES_LACKING_H

#include "notes/scope.h"

// How many tokens from `i` say that what stands before them is not there; 0 if none.
size_t lacking_behind(const struct tokens *tokens, size_t i);
// How many tokens from `i`, with words of number, say that the part behind them is not there; 0 if none.
size_t lacking_before(const struct tokens *tokens, size_t i);
// Is it (one) an extra that goods of many kinds have?
bool lacking_extra(const char *noun);
// The same, or a whole phrase that says it ("is long gone", "came without its"); `*n` is how many tokens.
size_t lacking_said_behind(const struct scope *scope, size_t i, size_t *n);
size_t lacking_said_before(const struct scope *scope, size_t i, size_t *n);
// The id of the kind for a missing part (one, small letters) of a thing of that family, which may be NULL;
// NULL where the parts of the rules decide.
const char *lacking_kind(const char *part, const char *family);

// "One is missing off the left sleeve", "two gone from the front": the place behind token `i`; NULL for none.
const char *lacking_place_behind(struct fault_reader *reader, size_t i);

#endif
