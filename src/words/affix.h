// SPDX-License-Identifier: MIT
// The forms of a dictionary's words: what an .aff file lets one make of each line of its .dic file.
// Only what English dictionaries use is read: one level of prefixes and suffixes named by one-byte flags. A
// file with another kind of flag gives no words at all: what must not be suggested could not be told from the
// rest. Owner: all in the arena; the texts given may go afterwards.
#ifndef WORDS_AFFIX_H
#define WORDS_AFFIX_H

#include <stdbool.h>
#include <stddef.h>

#include "text/arena.h"

struct affixes;

struct affixes *affixes_read(struct arena *arena, const char *text, size_t size);

struct affix_form {
    const char *word; // not NUL-ended; valid during the call
    size_t size;
    size_t richness; // flags on the stem's line: common words have more forms
    bool stem;       // the line's own word
    bool prefixed;
};

typedef void affix_taker(void *context, const struct affix_form *form);

// Hands every form of every line of a .dic text to `take`: no possessives, no words with digits or stops,
// none that the dictionary marks as not to be suggested.
void affixes_expand(const struct affixes *affixes, const char *text, size_t size, affix_taker *take,
                    void *context);

#endif
