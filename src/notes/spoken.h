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
    size_t flaw;     // number in the rule set
    size_t from, to; // words
    bool gated;      // counts only for a thing that the flaw occurs on
};

// What most words around its first rule out at a look: which may stand two behind it, and which can fill two
// of the other places, each among some words near it. A word is two bits, each of a number of its own.
enum { SPOKEN_REACH = 8, SPOKEN_NEEDS = 2 };
_Static_assert(SPOKEN_REACH + 0 <= PHRASE_WORDS_BEHIND + 0 && SPOKEN_REACH + 0 <= PHRASE_WORDS_BEFORE + 0,
               "words are looked at without asking where they end");
struct spoken_bits {
    uint64_t one, other;
};
struct spoken_window {
    int8_t from;   // words from the one that it is looked for by on, or before it
    uint8_t count; // 0: nothing is needed
};
struct spoken_gate {
    uint64_t third; // `one` alone
    struct spoken_bits needs[SPOKEN_NEEDS];
    struct spoken_window windows[SPOKEN_NEEDS];
    uint32_t places[SPOKEN_NEEDS]; // that are needed
};
static inline uint64_t spoken_bit(uint64_t hash) {
    return (uint64_t)1 << (hash >> 16) % 64;
}
static inline uint64_t spoken_other_bit(uint64_t hash) {
    return (uint64_t)1 << (hash >> 40) % 64;
}
static inline bool spoken_may_be(const struct spoken_bits *bits, uint64_t hash) {
    return bits->one >> (hash >> 16) % 64 & 1 && bits->other >> (hash >> 40) % 64 & 1;
}
// One an opening.
const struct spoken_gate *spoken_gates(const struct spoken *spoken);

// Tells which two words each opening of a pattern may begin with (of a pattern with groups: is looked for
// by), the last opening first; `second` is 0 where any may follow. The same pair may be told twice. Patterns
// with groups and those without are told apart.
typedef void spoken_told(void *context, uint64_t first, uint64_t second, size_t opening);
void spoken_tell_openings(const struct spoken *spoken, bool grouped, spoken_told *tell, void *context);

// Members of a group at a word: many patterns begin with one. Zeros before the first is asked for.
enum { SPOKEN_FOUND_MOST = 8 };
struct spoken_found {
    size_t group; // + 1
    size_t word, count;
    struct spoken_member {
        uint32_t start, end; // words
    } at[SPOKEN_FOUND_MOST];
};

// Does the pattern stand around word `i`, by which it is looked for? Its gate is not asked again.
// Of one that names groups the hit begins at the word that it is looked for by.
bool spoken_stands(const struct spoken *spoken, size_t opening, const struct phrase_word *words, size_t count,
                   size_t i, struct spoken_found *found, struct spoken_hit *hit);

// Words of the longest hit there can be.
size_t spoken_longest(const struct spoken *spoken);

#endif
