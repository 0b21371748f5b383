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

// An example of each form, for people: the years that date_words() reads in it, and whose custom they are.
struct age_row {
    const char *words;
    int from, to; // 0: open, or a style
    const char *custom;
};
enum { AGE_ROWS = 46 };
extern const struct age_row age_table[AGE_ROWS];

// The years of words of age ("late 19th century", "c. 1890"), where there are such words in the text.
bool date_words(struct arena *arena, const char *text, struct date_words *words);

#endif
