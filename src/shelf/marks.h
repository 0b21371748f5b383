// SPDX-License-Identifier: MIT
// Which of 64 bytes are quotes, delimiters or line ends, as the bits of one number: all that reading CSV has
// to look at. Sixteen bytes at a time where the processor can, else one by one, with the same result.
#ifndef SHELF_MARKS_H
#define SHELF_MARKS_H

#include <stddef.h>
#include <stdint.h>

#ifdef __SSE2__
#include <emmintrin.h>
#endif

enum { MARKS_SPAN = 64 };

static inline uint64_t marks_one_by_one(const char *bytes, char delimiter) {
    uint64_t marks = 0;
    for (size_t i = 0; i < MARKS_SPAN; i++) {
        char c = bytes[i];
        uint64_t is = c == '"' || c == delimiter || c == '\n' || c == '\r';
        marks |= is << i;
    }
    return marks;
}

// `bytes` has MARKS_SPAN bytes that may be read.
static inline uint64_t marks_of(const char *bytes, char delimiter) {
#ifdef __SSE2__
    const __m128i quote = _mm_set1_epi8('"'), cut = _mm_set1_epi8(delimiter), feed = _mm_set1_epi8('\n'),
                  carriage = _mm_set1_epi8('\r');
    uint64_t marks = 0;
    for (size_t i = 0; i < MARKS_SPAN; i += 16) {
        __m128i b = _mm_loadu_si128((const __m128i *)(const void *)(bytes + i));
        __m128i cells = _mm_or_si128(_mm_cmpeq_epi8(b, quote), _mm_cmpeq_epi8(b, cut));
        __m128i lines = _mm_or_si128(_mm_cmpeq_epi8(b, feed), _mm_cmpeq_epi8(b, carriage));
        marks |= (uint64_t)(unsigned)_mm_movemask_epi8(_mm_or_si128(cells, lines)) << i;
    }
    return marks;
#else
    return marks_one_by_one(bytes, delimiter);
#endif
}

// The place of the lowest bit of a number that has one.
static inline unsigned marks_lowest(uint64_t marks) {
#ifdef __GNUC__
    return (unsigned)__builtin_ctzll(marks);
#else
    unsigned at = 0;
    for (; !(marks & 1); marks >>= 1) at++;
    return at;
#endif
}

#endif
