// SPDX-License-Identifier: MIT
// A named piece of input and the places in it. Offsets are bytes; lines and columns are worked out when a
// message is printed.
#ifndef TEXT_SOURCE_H
#define TEXT_SOURCE_H

#include <stddef.h>

// Owner: the caller keeps `name` and `text` alive as long as any place points here.
struct source {
    const char *name; // as the user gave it; "-" is standard input
    const char *text;
    size_t size;
    size_t first_line; // line number of the first byte, from 1: a piece of a longer file knows where it stood
    size_t columns_before; // code points on that line before the first byte, for a piece cut out of the
                           // middle of a line
};

// Half-open byte range [from, to). A place with no source (NULL) prints as the program alone.
struct place {
    const struct source *source;
    size_t from, to;
};

struct line_column {
    size_t line, column;       // both from 1; a column is a code point
    size_t line_from, line_to; // the bytes of the whole line, without its end
};

struct line_column source_locate(const struct source *source, size_t offset);

#endif
