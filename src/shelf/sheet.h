// SPDX-License-Identifier: MIT
// A stock file as it stands in bytes: rows and cells are places in the file, so that what nobody changes is
// copied and never written anew. Read as a stream: memory holds one row, however long the file.
//
// Owner: the arena that sheet_open() was given; a row is valid until the next one is read. Rules of reading:
// a quote opens a cell only as its first byte; doubled inside it is itself; what follows the closing quote up
// to the delimiter belongs to the cell. Rows end at LF, CR LF or a lone CR outside quotes.
#ifndef SHELF_SHEET_H
#define SHELF_SHEET_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "text/arena.h"

enum {
    SHEET_CELL_MOST = 1 << 20,  // a cell above this is passed through unread
    SHEET_ROW_MOST = 4 << 20,   // so is a row above this
    SHEET_LOOK_MOST = 256 << 10 // of the beginning, to tell the dialect by
};

struct dialect {
    char delimiter;
    bool bom;
    bool windows;        // Windows-1252; else UTF-8
    const char *refused; // why it is no such file (UTF-16 ...); NULL when it is
};

// Tells the dialect by the beginning of a file; `whole` when that is all of it.
struct dialect dialect_find(const char *bytes, size_t size, bool whole);
const char *dialect_delimiter_name(const struct dialect *dialect);

struct sheet_cell {
    size_t from, to; // bytes of the row, quotes included
    bool quoted;
    bool odd; // something stands behind the closing quote
};

struct sheet_row {
    const char *bytes; // of the whole row, its end included; NULL when it was too long to keep
    uint64_t at, size; // in the file
    size_t line;       // of its first byte, from 1
    const struct sheet_cell *cells;
    size_t count;  // 0 for an empty line
    bool unclosed; // a quote is open at the end of the file
};

// As asfound_get: bytes given, 0 at the end, (size_t)-1 when reading failed.
typedef size_t sheet_get(void *context, char *to, size_t room);

struct sheet;
// Inside arena_try(). Reads ahead to find the dialect. A failure shows in sheet_failed().
struct sheet *sheet_open(struct arena *arena, sheet_get *get, void *context);
const struct dialect *sheet_dialect(const struct sheet *sheet);
// Every byte of the file once, in order, when it is no more needed: after the row it belongs to was read.
// Said before the first row is.
typedef void sheet_gone(void *context, const char *bytes, size_t size);
void sheet_pass_on(struct sheet *sheet, sheet_gone *gone, void *context);
// False at the end, or when reading failed.
bool sheet_next(struct sheet *sheet, struct sheet_row *row);
bool sheet_failed(const struct sheet *sheet);

#endif
