// SPDX-License-Identifier: MIT
// Where one record ends and the next begins, byte by byte, so that it does not matter how the bytes arrive.
// Room-internal.
#ifndef FORMAT_CUT_H
#define FORMAT_CUT_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "format/stream.h"

enum cut_kind { CUT_RECORD, CUT_OPEN, CUT_COMMA, CUT_CLOSE }; // the last three in a JSON list only

// The record is the first `length` bytes; `skip` bytes after them belong to no record.
struct cut {
    size_t length, skip;
    enum cut_kind kind;
};

enum json_where { JSON_BEFORE, JSON_LIST, JSON_SINGLE, JSON_AFTER };

struct cutter {
    enum form form;
    char delimiter;        // CSV: NUL while the first line has not been seen
    enum json_where where; // JSON: kept from record to record
    // Of the record at hand; cutter_restart() clears the rest.
    size_t seen;
    size_t line, column; // offset of the line at hand, bytes of it seen
    char marker;         // the line so far is only this, '-' or '.'
    bool content, opened, ending, comment, full;
    bool quoted, escaped, cell_begun, after_quote, after_return;
    uint64_t brackets; // one bit a level, 1 for a map
    unsigned depth;
};

void cutter_restart(struct cutter *cutter);
// Looks at the next byte; true when a record ends, which may be before this byte: then scanning restarts
// after the cut.
bool cutter_step(struct cutter *cutter, char byte, struct cut *cut);

#endif
