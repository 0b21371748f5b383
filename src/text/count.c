// SPDX-License-Identifier: MIT
// How long a text is. Graphemes are walked in order with a state, as UAX #29 asks; flags and family emoji
// need it.
#include "text/utf8.h"

#include <utf8proc.h>

struct walk {
    utf8proc_int32_t before; // -1 at the start of the text
    utf8proc_int32_t state;
};

static bool starts_cluster(struct walk *walk, uint32_t point) {
    utf8proc_int32_t now = (utf8proc_int32_t)point, before = walk->before;
    walk->before = now;
    if (before < 0) return true;
    if (before < 0x80 && now < 0x80) {
        walk->state = 0;
        return before != '\r' || now != '\n';
    }
    return utf8proc_grapheme_break_stateful(before, now, &walk->state);
}

size_t count_text(const char *text, size_t size, enum count_unit unit) {
    if (unit == COUNT_BYTES) return size;
    struct walk walk = {-1, 0};
    size_t count = 0, at = 0;
    while (at < size) {
        uint32_t point = utf8_next(text, size, &at);
        if (unit == COUNT_UTF16)
            count += point > 0xFFFF ? 2 : 1;
        else
            count += starts_cluster(&walk, point);
    }
    return count;
}

const char *count_unit_name(enum count_unit unit) {
    static const char *const NAMES[] = {"graphemes", "utf16", "bytes"};
    return NAMES[unit];
}

// A cluster is as wide as its widest code point; the emoji selector makes it two wide.
size_t utf8_width(const char *text, size_t size) {
    struct walk walk = {-1, 0};
    size_t total = 0, cluster = 0, at = 0;
    while (at < size) {
        uint32_t point = utf8_next(text, size, &at);
        if (starts_cluster(&walk, point)) {
            total += cluster;
            cluster = 0;
        }
        int wide = utf8proc_charwidth((utf8proc_int32_t)point);
        size_t width = point == 0xFE0F && cluster ? 2 : wide > 0 ? (size_t)wide : 0;
        if (width > cluster) cluster = width;
    }
    return total + cluster;
}
