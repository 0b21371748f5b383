// SPDX-License-Identifier: MIT
// The words that phrases are made of: parts of tokens between hyphens, without apostrophes, as hashes.
// Private to the room. Owner: the arena given.
#ifndef NOTES_PHRASE_WORDS_H
#define NOTES_PHRASE_WORDS_H

#include "notes/token.h"

// A function that is not to be made part of a loop that seldom calls it.
#define SELDOM __attribute__((noinline))

struct phrase_word {
    uint64_t hash;
    uint32_t from; // bytes: of its token where words are taken from tokens, else its own
    unsigned to : 30, starts : 1, ends : 1; // is it the first, the last of its token?
};

// Before the first and behind the last are some of zeros, so that who looks a few words around need not ask
// where they end.
enum { PHRASE_WORDS_BEFORE = 8, PHRASE_WORDS_BEHIND = 16 };

struct phrase_words {
    struct phrase_word *at; // NULL: not to be had
    size_t count;
};

// A hyphen that stands alone between two words is no word.
struct phrase_words phrase_words_of_tokens(struct arena *arena, const struct tokens *tokens);
// The same from the bytes themselves, in one pass, where what tokens they would be is plain to see: ASCII,
// and none of the signs and figures whose tokens depend on what stands around them.
struct phrase_words phrase_words_of_text(struct arena *arena, const char *text, size_t size);

#endif
