// SPDX-License-Identifier: MIT
// Faults that are said in two words with others between: "smells a bit like cigarettes", "paint's mostly
// gone", "won't the clasp catch". A rule's `near` gives two groups of words; one of each within a few words
// of one clause is the fault. Private to the room. Owner: the arena.
#ifndef NOTES_NEAR_H
#define NOTES_NEAR_H

#include "notes/phrases.h"

struct near;

struct near *near_new(struct arena *arena, const struct ruleset *rules);

struct near_hit {
    bool listed; // one of the two is a word of denial: the other counts only where it is denied
    bool gated;  // counts only for a thing that such a kind occurs on
    const struct flaw *flaw;
    size_t from, to; // tokens, both words in it
};
// The first pair at or after token `*i`; false at the end. `*i` moves behind its first word.
bool near_next(const struct near *near, const struct tokens *tokens, size_t *i, size_t *entry,
               struct near_hit *hit);

#endif
