// SPDX-License-Identifier: MIT
// The words most likely meant by a misspelled one: all words within two edits (a letter more, less, other, or
// two swapped; three in long words), ranked by how likely the slip is and how common the word. No clock is
// looked at: the same word gives the same answer on every machine with the same dictionaries.
#ifndef WORDS_SUGGEST_H
#define WORDS_SUGGEST_H

#include "words/lexicon.h"
#include "words/weigh.h"

enum { SUGGEST_MOST = 16 };

struct rank_weights {
    int richness[LEXICON_RICHEST + 1]; // by the number of forms that the dictionary makes of its stem
    int capital;                       // a name, where the typed word has no capital
    int prefixed;                      // made with a prefix
    int one_dictionary;                // missing from the other English
    int other_only;                    // not of the English asked for
    int trade;                         // from the list of trade words, which is what is talked of here
};

extern const struct rank_weights RANK_WEIGHTS;

struct ranked {
    uint32_t id; // in the lexicon
    int cost;
};

// At most `most` (<= SUGGEST_MOST) into `out`, best first; returns how many. `typed` in small letters.
size_t suggest_rank(const struct lexicon *lexicon, const struct edit_weights *edits,
                    const struct rank_weights *ranks, const char *typed, size_t size, struct ranked *out,
                    size_t most);

#endif
