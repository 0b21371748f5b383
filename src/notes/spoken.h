// SPDX-License-Identifier: MIT
// Patterns of words that rules give for notes: "not|isn't -|quite as white as". Each place of a pattern holds
// one of some words, or is skipped ("-" among them), or is up to three words of any kind ("~"). Private to
// the room. Owner: the arena.
#ifndef NOTES_SPOKEN_H
#define NOTES_SPOKEN_H

#include "notes/phrase_words.h"
#include "rules/ruleset.h"

struct spoken;

struct spoken *spoken_new(struct arena *arena, const struct ruleset *rules);

struct spoken_hit {
    size_t flaw;  // number in the rule set
    size_t count; // words
    bool gated;   // counts only for a thing that the flaw occurs on
};

// The patterns that begin with word `i`, one a call: `*entry` is 0 before the first. False at the end.
bool spoken_next(const struct spoken *spoken, const struct phrase_word *words, size_t count, size_t i,
                 size_t *entry, struct spoken_hit *hit);

// Words of the longest hit there can be.
size_t spoken_longest(const struct spoken *spoken);

#endif
