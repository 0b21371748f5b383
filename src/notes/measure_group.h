// SPDX-License-Identifier: MIT
// One measure as it was said, before it is kept. Private to the readers of measures.
#ifndef NOTES_MEASURE_GROUP_H
#define NOTES_MEASURE_GROUP_H

#include "notes/dimension.h"
#include "notes/measures.h"

enum { SIDES_MOST = 3 };

struct side {
    struct amount amount;
    struct dimension dimension; // name NULL: not said
};

struct group {
    struct side sides[SIDES_MOST];
    size_t count;
    size_t from, to; // tokens, with hedges and dimension words
    bool about;
    const char *of;
    bool follows; // right behind another measure: "27 inches by 19 and 11 deep"
    bool assumed; // inches that nobody said
};

// The part that the words from token `to` on name as measured ("6 in blade"); NULL if none.
const char *measure_part_behind(const struct note *note, size_t to, struct part *part, size_t *taken);

// Of what it is the measure, and what that alone says of the dimension. measure_parts.c
void measure_find_part(struct note *note, struct group *group);

// Ratings and powers ("40 watt", "8x30 field glasses") are kept as a size; false when it is none.
bool measure_keep_rating(struct note *note, const struct group *group);
bool measure_keep_glasses(struct note *note, const struct group *group);

// What it cost, which is told to nobody.
bool measure_is_price(struct note *note, const struct group *group);

// Is it the measure of somebody, or of something that is not the thing?
bool measure_is_other(const struct note *note, const struct group *group);

#endif
