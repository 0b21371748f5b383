// SPDX-License-Identifier: MIT
// Words of age outside of a note. Owner: static texts.
#ifndef NOTES_AGE_H
#define NOTES_AGE_H

#include <stdbool.h>

#include "text/arena.h"

struct date_words {
    int from, to; // 0: no years
    const char *because;
};

// The years of words of age ("late 19th century", "c. 1890"), where there are such words in the text.
bool date_words(struct arena *arena, const char *text, struct date_words *words);

#endif
