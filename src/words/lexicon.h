// SPDX-License-Identifier: MIT
// The words that may be suggested, side by side for a quick look at all of them.
// A word's mask has two bits a letter: stands in it at least once, at least twice. One edit changes at most
// two bits, a swap of letters none, so words that are too far away fall out by a few operations each. That
// takes the place of an index of deletions: such an index of 250,000 words has millions of entries and is
// slow to build, which would cost the person who asks for one suggestion far more than it gives back. Owner:
// all in the arena. Order and numbering depend on the texts given alone.
#ifndef WORDS_LEXICON_H
#define WORDS_LEXICON_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "text/arena.h"
#include "words/affix.h"

enum { LEXICON_LONGEST = 40, LEXICON_RICHEST = 9 };

enum lexicon_trait {
    LEXICON_MAIN = 1,     // stands in the dictionary of the English asked for
    LEXICON_OTHER = 2,    // stands in the other one
    LEXICON_TRADE = 4,    // stands in the list of trade words, or is often said of goods
    LEXICON_CAPITAL = 8,  // is written with a capital
    LEXICON_PREFIXED = 16 // was made with a prefix
};

struct lexicon_word {
    uint32_t at; // in `letters`
    uint8_t size, traits;
    uint8_t richness; // most flags of a line that makes it, at most LEXICON_RICHEST
};

struct lexicon_class { // the words of one length
    uint64_t *masks;
    uint32_t *ids;
    size_t count;
};

struct lexicon {
    char *letters;
    struct lexicon_word *words;
    size_t count;
    struct lexicon_class of_length[LEXICON_LONGEST + 1];
    uint32_t *slots; // hash table of ids plus one
    size_t slot_count;
};

struct lexicon_build;

struct lexicon_build *lexicon_start(struct arena *arena);
void lexicon_add_dictionary(struct lexicon_build *build, const struct affixes *affixes, const char *text,
                            size_t size, enum lexicon_trait trait);
void lexicon_add_word(struct lexicon_build *build, const char *word, size_t size, enum lexicon_trait trait);
// A word of the dictionaries that is as likely as one of the trade; others are passed over.
void lexicon_favor(struct lexicon_build *build, const char *word, size_t size);
const struct lexicon *lexicon_finish(struct lexicon_build *build);

// NULL when it is not there as written.
const struct lexicon_word *lexicon_find(const struct lexicon *lexicon, const char *word, size_t size);
// Letters a to z of either case; all others share what is left of the mask.
uint64_t lexicon_mask(const char *word, size_t size);

#endif
