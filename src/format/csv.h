// SPDX-License-Identifier: MIT
// CSV records. A header cell is a path into the record: `type`, `attributes.color`, `flaws.1.kind`,
// `own.bin`, `measurements.height`; an empty cell is left out. `map_csv_row` builds the tree of one row;
// cells stay plain text. Delimiter (comma, semicolon, tab), byte-order mark and line ends are found from the
// first line.
#ifndef FORMAT_CSV_H
#define FORMAT_CSV_H

#include "format/tree.h"
#include "text/diag.h"

struct csv_cell {
    const char *text; // unquoted, NUL-ended
    size_t size;
    struct place at; // the raw bytes, quotes included
};

struct csv_row {
    struct csv_cell *cells;
    size_t count;
};

// Splits one row of text (its line end aside).
struct csv_row csv_split(struct arena *arena, const struct source *source, char delimiter,
                         struct diags *diags);
char csv_find_delimiter(const char *line, size_t size);
// A tree from a header and a row: dots nest, whole numbers count list places from 1. A row wider or narrower
// than the header is a fault with its place.
struct node *csv_tree(struct arena *arena, const struct csv_row *header, const struct csv_row *row,
                      struct diags *diags);

// Writing one cell by RFC 4180; a cell that a spreadsheet would run as a formula (= + - @ tab, return first)
// is refused.
bool csv_write_cell(struct buf *out, const char *text, char delimiter);

#endif
