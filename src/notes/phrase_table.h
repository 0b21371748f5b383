// SPDX-License-Identifier: MIT
// The table of phrases that phrases.c builds and phrase_search.c looks into. Private to the two.
#ifndef NOTES_PHRASE_TABLE_H
#define NOTES_PHRASE_TABLE_H

#include "notes/near.h"
#include "notes/phrase_words.h"
#include "notes/phrases.h"
#include "notes/spoken.h"

struct phrase {
    uint32_t late;        // half of the hash of the word at `late_at`: the last that is looked at first
    uint32_t late_at : 8, // in the phrase
        count : 24;
    uint32_t first;     // of its words in `words`
    uint32_t flaw : 29; // number in the rule set
    uint32_t unless : 1;
    uint32_t gated : 1; // of `sound`, without "{any}", and of `alone`
    uint32_t alone : 1;
};

// Phrases by their first three words, or by all where they have fewer: a word like "no" begins hundreds, and
// "in the" dozens.
struct bucket {
    uint64_t key;
    uint32_t from, said, to;       // in `phrases`, those of `unless` and then the others, each longest first
    uint32_t has;                  // of phrases, as `enum bucket_has`
    uint32_t spoken, spoken_count; // in `openings`
    uint64_t third;                // of two words: a bit for each that is the third of a phrase
    uint64_t third_spoken;         // of one and two words: a bit for each that may be the third of a pattern
    uint64_t room[2];              // a power of two, so that where it stands is found without multiplying
};

// Of a pattern; what its gate asks first is copied from it, for some words lead to dozens.
struct bucket_opening {
    uint64_t third; // bits
    struct spoken_bits need;
    struct spoken_window window;
    uint32_t number;
};

enum bucket_has { HAS_UNLESS = 1, HAS_SAID = 2, HAS_SPOKEN = 4, HAS_BITS = 3 };

// Of 64 bits: small enough to stay near the processor.
enum { SIEVE_BITS = 14, SIEVE_OF_ONE_BITS = 10 }; // of the number of a cell

struct phrases {
    const struct ruleset *rules;
    uint64_t *words;
    size_t word_count, word_room;
    struct phrase *at;
    size_t count, room;
    struct bucket *buckets; // free where the key is 0
    size_t mask;
    struct bucket_opening *openings; // those of a bucket one behind the other
    size_t opening_count;
    uint64_t sieve[1 << SIEVE_BITS],
        sieve_of_one[1 << SIEVE_OF_ONE_BITS]; // a bit for the key of each bucket, of two
                                              // words and of one, and for what begins a pattern: most
                                              // words begin nothing
    size_t longest;                           // words of the longest phrase
    struct near *near;
    struct index *parts;    // of the flaws' rules
    struct phrases *sounds; // of the rules' `sound`, NULL in themselves
    struct phrases *groups; // what patterns with groups are looked for by; they are rarer than all others
    struct spoken *spoken;
    const struct spoken_gate *gates; // its own
    struct slip_words *slips;
};

static inline uint32_t upper_half(uint64_t hash) {
    return (uint32_t)(hash >> 32);
}

static inline uint64_t key_of_two(uint64_t first, uint64_t second) {
    return (first * 0x9E3779B97F4A7C15u) ^
           second; // both are odd, so that this is even and a single word's is not
}

static inline uint64_t key_of_three(uint64_t two, uint64_t third) {
    return key_of_two(two, third) & ~(uint64_t)1;
}

// The bucket of a key, or the free one where it belongs.
static inline struct bucket *bucket_of(const struct phrases *p, uint64_t key) {
    size_t at = (size_t)(key >> 7) & p->mask;
    while (p->buckets[at].key != key && p->buckets[at].key) at = (at + 1) & p->mask;
    return &p->buckets[at];
}

// Most keys have none, as one look at a sieve tells.
static inline bool passes(const uint64_t *sieve, int bits, uint64_t key) {
    return sieve[key >> (64 - bits)] >> (key >> 8) % 64 & 1;
}

#endif
