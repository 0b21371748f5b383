// SPDX-License-Identifier: MIT
// The delimiter is the one that cuts the first rows into the same number of cells, of more than one; of two
// that do the one with more cells, then the more usual one.
#include <string.h>

#include "shelf/sheet.h"
#include "text/utf8.h"

enum { ROWS_MOST = 40 };

static const char DELIMITERS[] = ",;\t|";

// Cells of each of the first rows; how many whole rows there are.
static size_t count_cells(const char *bytes, size_t size, bool whole, char delimiter,
                          size_t cells[ROWS_MOST]) {
    size_t rows = 0, count = 1;
    bool quoted = false, first = true, filled = false;
    for (size_t i = 0; i < size && rows < ROWS_MOST; i++) {
        char c = bytes[i];
        bool end = !quoted && (c == '\n' || c == '\r');
        if (end && filled) cells[rows++] = count;
        if (end) {
            count = 1;
            first = true;
            filled = false;
            continue;
        }
        filled = true;
        if (c == '"' && (first || quoted))
            quoted = !quoted;
        else if (c == delimiter && !quoted)
            count++;
        // A doubled quote closes and opens again.
        first = (c == delimiter && !quoted) || (c == '"' && !quoted && i + 1 < size && bytes[i + 1] == '"');
    }
    if (whole && filled && rows < ROWS_MOST) cells[rows++] = count;
    return rows;
}

static char find_delimiter(const char *bytes, size_t size, bool whole) {
    char best = ',';
    size_t best_score = 0;
    for (const char *d = DELIMITERS; *d; d++) {
        size_t cells[ROWS_MOST], same = 0;
        size_t rows = count_cells(bytes, size, whole, *d, cells);
        if (!rows || cells[0] < 2) continue;
        for (size_t i = 0; i < rows; i++) same += cells[i] == cells[0];
        size_t width = cells[0] < 50 ? cells[0] : 50;
        size_t score = 1 + same * 1000 / rows * 100 + width;
        if (score > best_score) {
            best = *d;
            best_score = score;
        }
    }
    return best;
}

static bool is_utf8(const char *bytes, size_t size, bool whole) {
    size_t good = utf8_check(bytes, size);
    // The last letter may be cut in two.
    return good == size || (!whole && size - good < 4);
}

struct dialect dialect_find(const char *bytes, size_t size, bool whole) {
    struct dialect d = {.delimiter = ','};
    const unsigned char *b = (const unsigned char *)bytes;
    if (size >= 2 && ((b[0] == 0xFF && b[1] == 0xFE) || (b[0] == 0xFE && b[1] == 0xFF))) {
        d.refused = "this is UTF-16; save it as CSV in UTF-8";
        return d;
    }
    if (size >= 4 && !memcmp(bytes, "PK\3\4", 4)) {
        d.refused = "this is a workbook, not CSV; save it as CSV in UTF-8";
        return d;
    }
    d.bom = size >= 3 && !memcmp(bytes, "\xEF\xBB\xBF", 3);
    size_t from = d.bom ? 3 : 0;
    d.windows = !d.bom && !is_utf8(bytes, size, whole);
    d.delimiter = find_delimiter(bytes + from, size - from, whole);
    return d;
}

const char *dialect_delimiter_name(const struct dialect *dialect) {
    switch (dialect->delimiter) {
    case ';':
        return "semicolon";
    case '\t':
        return "tab";
    case '|':
        return "bar";
    default:
        return "comma";
    }
}
