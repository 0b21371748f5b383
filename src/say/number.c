// SPDX-License-Identifier: MIT
// Counts in words up to twelve, where a reader still takes the word in at a glance; digits in groups of three
// above.
#include "say/say.h"
#include "text/buf.h"

static const char *const small[] = {"zero",  "one",   "two",  "three", "four",   "five",  "six",
                                    "seven", "eight", "nine", "ten",   "eleven", "twelve"};

const char *say_number(struct arena *arena, long count) {
    if (count >= 0 && count <= 12) return small[count];
    unsigned long left = count < 0 ? 0UL - (unsigned long)count : (unsigned long)count;
    char text[40];
    size_t at = sizeof text;
    text[--at] = '\0';
    for (size_t digits = 0; left; digits++, left /= 10) {
        if (digits && digits % 3 == 0) text[--at] = ',';
        text[--at] = (char)('0' + left % 10);
    }
    if (count < 0) text[--at] = '-';
    return arena_string(arena, text + at);
}

const char *say_number_title(struct arena *arena, long count) {
    return say_sentence_case(arena, say_number(arena, count));
}
