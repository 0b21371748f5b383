// SPDX-License-Identifier: MIT
// Faults that are said in two words with others between: "smells a bit like cigarettes", "paint's mostly
// gone", "won't the clasp catch". A rule's `near` gives two groups of words; one of each within a few words
// of one clause is the fault. Private to the room. Owner: the arena.
#ifndef NOTES_NEAR_H
#define NOTES_NEAR_H

#include "notes/phrases.h"

struct near;

#define NEAR_BAR " / "   // between the two groups of a pair
#define NEAR_ANY "{any}" // of `sound`: counts for any thing, and not only where the flaw occurs

// Of the rules' `near`, or of the pairs among their `sound`.
struct near *near_new(struct arena *arena, const struct ruleset *rules, bool sound);

struct near_hit {
    bool listed; // one of the two is a word of denial: the other counts only where it is denied
    bool gated;  // counts only for a thing that such a kind occurs on
    const struct flaw *flaw;
    size_t from, to; // tokens, both words in it
};
enum { NEAR_MOST_TOKENS = 13 }; // from the first word to the second, of any weight

// A walk through one note.
struct near_search {
    const struct near *near;
    const struct tokens *tokens;
    uint32_t *heads;                    // where the entries of each token begin, 0 for most
    size_t i, entry;                    // the first word, and its entry that was found last
    size_t others[NEAR_MOST_TOKENS];    // tokens behind it that may be the second
    size_t rest[NEAR_MOST_TOKENS];      // what of their entries is not yet looked at
    size_t other_count, unlisted_count; // the latter: those before any comma
};
struct near_search near_start(struct arena *arena, const struct near *near, const struct tokens *tokens);
// The next pair; false at the end.
bool near_next(struct near_search *search, struct near_hit *hit);

#endif
