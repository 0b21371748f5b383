// SPDX-License-Identifier: MIT
// What a cell says, and how a text is put into one. Owner: the arena.
#ifndef SHELF_CELL_H
#define SHELF_CELL_H

#include "shelf/sheet.h"
#include "text/buf.h"

// The text of a cell in UTF-8, without quotes. NULL when it cannot be told: `*why` says so.
const char *cell_text(struct arena *arena, const struct dialect *dialect, const struct sheet_row *row,
                      size_t column, const char **why);
// The same without copying, for a cell of nothing but ASCII and without quotes inside: as most are. False for
// any other, whatever is in it.
bool cell_plain(const struct sheet_row *row, size_t column, const char **text, size_t *size);
// Nothing but the printing characters of ASCII.
bool cell_is_printing(const char *bytes, size_t size);
// A text as a cell of that dialect, with quotes where `quoted` or where it needs them. NULL when the dialect
// has no letter for it; the text itself where it is a cell as it is.
const char *cell_bytes(struct arena *arena, const struct dialect *dialect, const char *text, bool quoted,
                       size_t *size);
// Do those bytes, as a cell of that dialect, say that text?
bool cell_says(struct arena *arena, const struct dialect *dialect, const char *bytes, size_t size,
               const char *text);
// Would a spreadsheet run it?
bool cell_is_formula(const char *text);
// Adds a text as a cell of a comma-separated file.
void cell_write(struct buf *out, const char *text, bool last);
// One line of a text, for a message: line ends and tabs as spaces, control characters dropped.
const char *cell_line(struct arena *arena, const char *text);

#endif
