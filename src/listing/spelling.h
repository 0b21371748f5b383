// SPDX-License-Identifier: MIT
// The seller's words and every output of a draft are looked over for spelling. What is known without opening
// a dictionary is asked first (words of the shipped rules, trade words, the word book), so that most single
// drafts open none. What is found in a record depends on that record alone.
// Owner: the arena that spelling_new() was given; one a worker.
#ifndef LISTING_SPELLING_H
#define LISTING_SPELLING_H

#include "listing/listing.h"
#include "listing/spelling_lists.h"
#include "words/speller.h"

struct spelling_options {
    enum locale locale;
    const char *dictionaries; // folder; NULL: where Debian puts them
    const struct trade *trade;
    const struct spelling_lists *lists;
    const struct ruleset *rules;
};

struct spelling;

// `diags` is told once when a dictionary that is needed cannot be used.
struct spelling *spelling_new(struct arena *arena, const struct spelling_options *options,
                              struct diags *diags);

// Adds to the listing's findings: `spelling.word` for a word of the seller's that is not known, with what may
// have been meant; `spelling.output` where an output holds one that the seller did not write.
void listing_spell(struct arena *arena, struct listing *listing, struct spelling *spelling);

#endif
