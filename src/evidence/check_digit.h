// SPDX-License-Identifier: MIT
// Check digits of book numbers and of the numbers under bar codes.
#ifndef EVIDENCE_CHECK_DIGIT_H
#define EVIDENCE_CHECK_DIGIT_H

#include <stdbool.h>
#include <stddef.h>

// Figures of `text`, spaces and hyphens left out, X as a last figure kept; 0 when there are more than `room`
// or something else stands among them.
size_t check_digits(const char *text, char *to, size_t room);
// The last figure that those before it ask for: 9 to 17 figures of a bar code, 9 of a book number ('X' is
// ten). `count` counts the last one in.
char check_digit_bar_code(const char *digits, size_t count);
char check_digit_book(const char *digits);

// NULL when the number is well formed; else what is wrong with it. Book numbers have 9, 10 or 13 figures, bar
// codes 8, 12, 13 or 14.
struct arena;
const char *check_book_number(struct arena *arena, const char *text);
const char *check_bar_code(struct arena *arena, const char *text);

#endif
