// SPDX-License-Identifier: MIT
// Patterns of words that rules give for notes: "not|isn't -|quite as white as". Each place of a pattern holds
// one of some words or a member of a group ("@closures"), or is skipped ("-" among them), or is up to three
// words of any kind ("~"). Private to the room. Owner: the arena.
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

// Tells which two words each opening of a pattern may begin with (of a pattern with groups: is looked for
// by), the last opening first; `second` is 0 where any may follow. The same pair may be told twice.
typedef void spoken_told(void *context, uint64_t first, uint64_t second, size_t opening);
void spoken_tell_openings(const struct spoken *spoken, spoken_told *tell, void *context);

// Does the pattern stand at word `i`, whose first word is known to be its own? Of one that names groups the
// hit begins at the word that it is looked for by.
bool spoken_stands(const struct spoken *spoken, size_t opening, const struct phrase_word *words, size_t count,
                   size_t i, struct spoken_hit *hit);

// Words of the longest hit there can be.
size_t spoken_longest(const struct spoken *spoken);

#endif
