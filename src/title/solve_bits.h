// SPDX-License-Identifier: MIT
// Sets of small numbers as arrays of 64-bit cells; the caller knows how many cells.
#ifndef TITLE_SOLVE_BITS_H
#define TITLE_SOLVE_BITS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

static inline size_t bits_cells(size_t count) {
    return count / 64 + 1;
}

static inline bool bits_has(const uint64_t *set, size_t i) {
    return (set[i / 64] >> (i % 64) & 1) != 0;
}

static inline void bits_add(uint64_t *set, size_t i) {
    set[i / 64] |= (uint64_t)1 << (i % 64);
}

static inline void bits_drop(uint64_t *set, size_t i) {
    set[i / 64] &= ~((uint64_t)1 << (i % 64));
}

static inline bool bits_within(const uint64_t *inner, const uint64_t *outer, size_t cells) {
    uint64_t outside = 0;
    for (size_t c = 0; c < cells; c++) outside |= inner[c] & ~outer[c];
    return outside == 0;
}

static inline bool bits_meet(const uint64_t *a, const uint64_t *b, size_t cells) {
    uint64_t both = 0;
    for (size_t c = 0; c < cells; c++) both |= a[c] & b[c];
    return both != 0;
}

static inline void bits_join(uint64_t *into, const uint64_t *from, size_t cells) {
    for (size_t c = 0; c < cells; c++) into[c] |= from[c];
}

static inline void bits_remove(uint64_t *from, const uint64_t *what, size_t cells) {
    for (size_t c = 0; c < cells; c++) from[c] &= ~what[c];
}

static inline void bits_copy(uint64_t *into, const uint64_t *from, size_t cells) {
    memcpy(into, from, cells * sizeof *into);
}

#endif
