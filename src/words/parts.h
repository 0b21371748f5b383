// SPDX-License-Identifier: MIT
// What a speller is made of; for the files of this room alone.
#ifndef WORDS_PARTS_H
#define WORDS_PARTS_H

#include "words/dictionary.h"
#include "words/lexicon.h"
#include "words/speller.h"

struct speller {
    struct arena *arena; // its own: it outlives the tasks that use it
    struct speller_options options;
    struct dictionary of[2];       // by English
    const struct lexicon *lexicon; // NULL before the first suggestion
};

// `word` in the form that is looked up, NUL-ended: curly apostrophes made straight, outer ones taken off.
// Returns its size; 0 where it does not fit in PARTS_WORD bytes.
enum { PARTS_WORD = 128 };
size_t parts_plain(const char *word, size_t size, char plain[PARTS_WORD]);
// Takes apostrophes off both ends of a plain word; returns what is left of its size.
size_t parts_trim(char *plain, size_t size);
// Small letters a to z; others are left.
void parts_lower(char *word, size_t size);

#endif
