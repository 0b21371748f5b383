// SPDX-License-Identifier: MIT
// A part and what the record says of it, as one bound phrase: "green glass shade". Title and description both
// take it from here, so that a part's color can never become the thing's.
#ifndef ITEM_PARTS_H
#define ITEM_PARTS_H

#include "item/record.h"

enum { PART_WORDS_MOST = 8 };

struct part_words {
    const char *part;
    const struct value *words[PART_WORDS_MOST]; // stated values in the order of English adjectives
    size_t count;
    struct note_span span;
};

// The next part after `*at` (start with 0) that has stated attributes; false when there is none left.
bool parts_next(const struct record *record, size_t *at, struct part_words *part);

#endif
