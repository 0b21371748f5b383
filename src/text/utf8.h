// SPDX-License-Identifier: MIT
// UTF-8: checking, walking, normal form, case, and counting. The only includer of utf8proc is utf8.c and
// count.c. No system locale is consulted anywhere.
#ifndef TEXT_UTF8_H
#define TEXT_UTF8_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "text/arena.h"

// Offset of the first byte that is not valid UTF-8, or `size` when all is well.
size_t utf8_check(const char *bytes, size_t size);
// Decodes the code point at `*at`, moves past it. The text must be valid.
uint32_t utf8_next_wide(const char *text, size_t size, size_t *at);
static inline uint32_t utf8_next(const char *text, size_t size, size_t *at) {
    unsigned char lead = (unsigned char)text[*at];
    if (lead >= 0x80) return utf8_next_wide(text, size, at);
    ++*at;
    return lead;
}
// Bytes of one code point appended at `to` (room for 4); returns how many.
size_t utf8_put(uint32_t point, char *to);
// Offset of the first control, bidirectional-override or other invisible format character that must not stand
// in a value (tab and newline excepted when `lines`), or `size`.
size_t utf8_unwanted(const char *text, size_t size, bool lines);
// NFC copy; the same pointer when the text already is in NFC.
const char *utf8_nfc(struct arena *arena, const char *text);
// Case-folded copy (full folding), for comparing words.
const char *utf8_fold(struct arena *arena, const char *text);
bool utf8_is_letter_wide(uint32_t point); // these of points beyond ASCII
bool utf8_is_digit_wide(uint32_t point);
bool utf8_is_space_wide(uint32_t point);
uint32_t utf8_upper_wide(uint32_t point);
uint32_t utf8_lower_wide(uint32_t point);

// Nearly all text is ASCII, which needs no table and no call.
static inline bool utf8_is_letter(uint32_t point) {
    return point < 0x80 ? (point | 0x20) >= 'a' && (point | 0x20) <= 'z' : utf8_is_letter_wide(point);
}
static inline bool utf8_is_digit(uint32_t point) {
    return point < 0x80 ? point >= '0' && point <= '9' : utf8_is_digit_wide(point);
}
static inline bool utf8_is_space(uint32_t point) {
    return point < 0x80 ? point == ' ' || (point >= '\t' && point <= '\r') : utf8_is_space_wide(point);
}
static inline uint32_t utf8_upper(uint32_t point) {
    if (point >= 0x80) return utf8_upper_wide(point);
    return point >= 'a' && point <= 'z' ? point - ('a' - 'A') : point;
}
static inline uint32_t utf8_lower(uint32_t point) {
    if (point >= 0x80) return utf8_lower_wide(point);
    return point >= 'A' && point <= 'Z' ? point + ('a' - 'A') : point;
}
// Terminal columns of a text, for carets and tables.
size_t utf8_width(const char *text, size_t size);

enum count_unit { COUNT_GRAPHEMES, COUNT_UTF16, COUNT_BYTES };
// How long a text is in `unit`: extended grapheme clusters of UAX #29, UTF-16 code units, or bytes.
size_t count_text(const char *text, size_t size, enum count_unit unit);
const char *count_unit_name(enum count_unit unit);

#endif
