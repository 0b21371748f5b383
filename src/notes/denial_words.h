// SPDX-License-Identifier: MIT
// The words that deny. Private to the room.
#ifndef NOTES_DENIAL_WORDS_H
#define NOTES_DENIAL_WORDS_H

#include "notes/scope.h"

enum { DENIES, LOOKED_FOR }; // kinds of the cues

// The longest cue at token `i`, before what it denies or behind it, and how many tokens it takes; NULL if
// none.
const struct cue *denial_before(const struct scope *scope, size_t i, size_t *taken);
const struct cue *denial_behind(const struct scope *scope, size_t i, size_t *taken);
// "That I can see", "as far as I can tell": a denial with a look behind it.
const struct cue *denial_look(const struct scope *scope, size_t i, size_t *taken);
// of_a_look.c: the same, as people put it together: "that I've come across"; how many tokens.
size_t look_words(const struct tokens *tokens, size_t i);
// The same file, before what was looked for: "wasn't able to make out", "failed to find".
size_t look_denied(const struct tokens *tokens, size_t i);
// What words at `i` deny of [from, to), the stances of a denial: `plain`, but STANCE_BOUNDED beside it where
// less than all is denied, and 0 where nothing is.
unsigned denial_bound(const struct scope *scope, size_t i, size_t from, size_t to, unsigned plain);
// A look that is taken back, "but it was dark": what was not seen is not known.
void scope_vain(struct scope *scope);

#endif
