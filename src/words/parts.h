// SPDX-License-Identifier: MIT
// What a speller is made of; for the files of this room alone.
#ifndef WORDS_PARTS_H
#define WORDS_PARTS_H

#include <stdint.h>

#include "words/dictionary.h"
#include "words/lexicon.h"
#include "words/speller.h"

// Answers of the dictionaries by the hash of the word, the lowest bit being the answer; a newer one takes the
// place of an older.
enum { PARTS_ANSWERS = 1 << 13 };

struct speller {
    struct arena *arena; // its own: it outlives the tasks that use it
    struct speller_options options;
    struct dictionary of[2];       // by English
    const struct lexicon *lexicon; // NULL before the first suggestion
    uint64_t *answers;
};

// `word` in the form that is looked up, NUL-ended: curly apostrophes made straight, outer ones taken off.
// Returns its size; 0 where it does not fit in PARTS_WORD bytes.
enum { PARTS_WORD = 128 };
size_t parts_plain(const char *word, size_t size, char plain[PARTS_WORD]);
// Known without a dictionary, in any case of letters.
bool parts_listed(const struct speller *speller, const char *word, size_t size);
// Takes apostrophes off both ends of a plain word; returns what is left of its size.
size_t parts_trim(char *plain, size_t size);
// Small letters a to z; others are left.
void parts_lower(char *word, size_t size);

#endif
