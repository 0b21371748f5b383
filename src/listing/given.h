// SPDX-License-Identifier: MIT
// The words of a given title before its record: which nothing accounts for, which stand twice, which state
// what is not certain. Owner: the arena.
#ifndef LISTING_GIVEN_H
#define LISTING_GIVEN_H

#include "listing/listing.h"

enum { GIVEN_NAMED_MOST = 12 }; // of one kind, by name

struct given_words {
    struct arena *arena;
    const struct listing *listing;
    struct given *given;
    struct given_reading *reading; // of the whole title
    struct given_reading shown;    // of the title without what is private
    const char **stems;            // per word, as the record may have it: "2.5" of "2.5in"
    bool *known;                   // per word: accounted for
};

struct given_words given_words_start(struct arena *arena, const struct listing *listing, struct given *given);
// True when the text stands in the title and no phrase that the record backs holds all of it there.
bool given_stands_loose(struct given_words *words, const char *text);
// True when all words of the text stand in the title without what is private.
bool given_may_print(struct given_words *words, const char *text);
// Marks the words of the title that stand in the text too, in either number.
void given_account(struct given_words *words, const char *text);
// Values and faults that the seller is not certain of, told without a word of doubt.
struct texts given_unsure(struct given_words *words);
// Content words that stand more than once, but for those of names and marks.
struct texts given_twice(struct given_words *words);
// Words that stand nowhere in the record and in nothing that its rules say of it.
struct texts given_foreign(struct given_words *words);
// Words all in capitals that stand so in nothing that the record names.
struct texts given_shouted(struct given_words *words);

#endif
