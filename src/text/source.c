// SPDX-License-Identifier: MIT
// Lines end at LF, CR LF or a lone CR, as in YAML; stream.c counts them the same way.
#include "text/source.h"

#include <stdbool.h>
#include <string.h>

static bool line_ends_at(const struct source *source, size_t i) {
    const char *text = source->text;
    return text[i] == '\n' || (text[i] == '\r' && (i + 1 >= source->size || text[i + 1] != '\n'));
}

static size_t count_points(const char *text, size_t from, size_t to) {
    size_t count = 0;
    for (size_t i = from; i < to; i++) count += ((unsigned char)text[i] & 0xC0u) != 0x80u;
    return count;
}

struct line_column source_locate(const struct source *source, size_t offset) {
    struct line_column place = {source->first_line ? source->first_line : 1, 1, 0, 0};
    if (!source->text) return place;
    if (offset > source->size) offset = source->size;
    size_t from = 0;
    // A byte-order mark takes no column: editors do not show it.
    if (source->size >= 3 && memcmp(source->text, "\xEF\xBB\xBF", 3) == 0) from = 3;
    if (offset < from) offset = from;
    size_t before = source->columns_before;
    for (size_t i = from; i < offset; i++) {
        if (!line_ends_at(source, i)) continue;
        place.line++;
        from = i + 1;
        before = 0;
    }
    size_t to = offset;
    while (to < source->size && source->text[to] != '\n' && source->text[to] != '\r') to++;
    // The offset may stand on the LF of a CR LF pair.
    if (to > from && to == offset && source->text[to - 1] == '\r') to--;
    place.column = before + count_points(source->text, from, offset < to ? offset : to) + 1;
    place.line_from = from;
    place.line_to = to;
    return place;
}
