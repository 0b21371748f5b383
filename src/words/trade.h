// SPDX-License-Identifier: MIT
// Words of the trade that general dictionaries lack: one a line in small letters, sorted, each once; '#'
// starts a comment line. The regular plural of each word is known with it. Owner: all in the arena given.
// Read once, it may be shared by the spellers of several workers.
#ifndef WORDS_TRADE_H
#define WORDS_TRADE_H

#include <stdbool.h>
#include <stddef.h>

#include "text/diag.h"

enum { TRADE_LONGEST = 40 };

struct trade_word {
    const char *word;
    size_t size;
};

struct trade {
    struct trade_word *words;
    size_t count;
};

// Lines that are no such word are told as CODE_DICT and left out; never NULL.
const struct trade *trade_read(struct arena *arena, const struct source *source, struct diags *diags);
// `word` in small letters.
bool trade_knows(const struct trade *trade, const char *word, size_t size);

#endif
