// SPDX-License-Identifier: MIT
// The words of every flaw in one table, looked up token by token: a hash of the first word leads to all
// phrases that begin with it. Built once a rule set, never changed, shared by all notes. Owner: the arena
// given.
//
// A phrase matches whole words, whatever their case; hyphens count as spaces and apostrophes may be missing.
// A phrase of `unless` covers what it holds: no word of the same flaw matches inside it.
#ifndef NOTES_PHRASES_H
#define NOTES_PHRASES_H

#include "notes/slip_words.h"
#include "notes/token.h"
#include "rules/ruleset.h"

struct phrases;

struct phrase_hit {
    const struct flaw *flaw;
    size_t from, to;  // tokens, half open
    uint32_t pattern; // the number of what leads to a `spoken` pattern, + 1; 0 of all others
    bool near;        // two words of the rule's `near`, with others between
    bool denied;      // counts only where it is denied
    bool gated;       // counts only for a thing that the flaw occurs on
    bool alone;       // counts only where it is all that its clause says
};

// A word of a flaw that an `unless` of it covers.
struct phrase_barred {
    const struct flaw *flaw;
    size_t from, to;               // the word, in tokens
    size_t unless_from, unless_to; // what covers it
};

struct phrase_hits {
    struct phrase_hit *at;
    size_t count;
    struct phrase_barred *barred;
    size_t barred_count;
};

const struct phrases *phrases_new(struct arena *arena, const struct ruleset *rules);
// Every hit, by `from`; of one flaw's phrases only the longest that begin at a token and none inside another.
// One pass: the time grows with the tokens and with what is found.
struct phrase_hits phrases_find(struct arena *arena, const struct phrases *phrases,
                                const struct tokens *tokens);

// The same of what the rules' `sound` says: each hit denies its flaw.
struct phrase_hits phrases_find_sound(struct arena *arena, const struct phrases *phrases,
                                      const struct tokens *tokens);

// How many phrases stand in a text, found from its bytes alone, as phrases_find() finds them before it looks
// for pairs; SIZE_MAX where the bytes do not tell its words.
size_t phrases_scan(struct arena *arena, const struct phrases *phrases, const char *text, size_t size);

// Is it a part that some rule of a flaw names? `word` in small letters.
bool phrases_is_part(const struct phrases *phrases, const char *word);

// What a misspelt word of a fault may have been; NULL without phrases.
const struct slip_words *phrases_slips(const struct phrases *phrases);

#endif
