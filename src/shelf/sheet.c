// SPDX-License-Identifier: MIT
// One pass over the bytes with a table of the few that matter. Cells are kept as offsets within the row,
// because the row moves in the buffer while more of it is read.
#include "shelf/sheet.h"

#include <string.h>

enum { READ_SIZE = 256 << 10 };

struct sheet {
    struct arena *arena;
    sheet_get *get;
    void *context;
    struct dialect dialect;
    char *bytes;
    size_t room, row, at, end; // bytes[row, at) is what was scanned of the row at hand
    uint64_t base;             // where bytes[0] stands in the file
    uint64_t row_at;
    size_t line;
    struct sheet_cell *cells;
    size_t count, cell_room;
    size_t cell_from; // of the cell at hand, in the row
    bool huge;        // the row is too long: only its places are kept
    bool finished, failed;
    bool ends[256]; // bytes that end an unquoted cell
};

static bool fill(struct sheet *s) {
    if (s->finished) return false;
    if (s->huge && s->at == s->end) {
        s->base += s->at;
        s->row = s->at = s->end = 0;
    } else if (s->row) {
        memmove(s->bytes, s->bytes + s->row, s->end - s->row);
        s->base += s->row;
        s->at -= s->row;
        s->end -= s->row;
        s->row = 0;
    }
    if (s->room - s->end < READ_SIZE / 2) {
        if (s->room >= SHEET_ROW_MOST) {
            s->huge = true; // what was scanned is let go
            s->base += s->at;
            memmove(s->bytes, s->bytes + s->at, s->end - s->at);
            s->end -= s->at;
            s->row = s->at = 0;
        } else {
            char *more = arena_array(s->arena, 2 * s->room, 1);
            memcpy(more, s->bytes, s->end);
            s->bytes = more;
            s->room *= 2;
        }
    }
    size_t got = s->get(s->context, s->bytes + s->end, s->room - s->end);
    s->failed = got == (size_t)-1;
    s->finished = s->failed || !got;
    if (!s->failed) s->end += got;
    return !s->finished;
}

struct sheet *sheet_open(struct arena *arena, sheet_get *get, void *context) {
    struct sheet *s = arena_alloc(arena, sizeof *s);
    *s = (struct sheet){.arena = arena, .get = get, .context = context, .line = 1};
    s->room = 2 * READ_SIZE;
    s->bytes = arena_array(arena, s->room, 1);
    while (s->end < SHEET_LOOK_MOST && fill(s)) continue;
    s->dialect = dialect_find(s->bytes, s->end, s->finished);
    s->ends[(unsigned char)s->dialect.delimiter] = s->ends['\n'] = s->ends['\r'] = true;
    if (s->dialect.bom) s->row = s->at = 3;
    return s;
}

const struct dialect *sheet_dialect(const struct sheet *sheet) {
    return &sheet->dialect;
}

bool sheet_failed(const struct sheet *sheet) {
    return sheet->failed;
}

static bool more(struct sheet *s) {
    return s->at < s->end || fill(s);
}

static void end_cell(struct sheet *s, bool quoted, bool odd) {
    if (!s->huge) {
        s->cells = arena_grow(s->arena, s->cells, s->count, &s->cell_room, sizeof *s->cells);
        s->cells[s->count++] = (struct sheet_cell){s->cell_from, s->at - s->row, quoted, odd};
    }
}

// Behind the opening quote; ends behind the closing one. False when there is none.
static bool skip_quoted(struct sheet *s) {
    for (; more(s); s->at++) {
        const char *from = s->bytes + s->at;
        const char *quote = memchr(from, '"', s->end - s->at);
        size_t plain = quote ? (size_t)(quote - from) : s->end - s->at;
        for (const char *c = from; c < from + plain; c++) {
            c = memchr(c, '\n', (size_t)(from + plain - c));
            if (!c) break;
            s->line++;
        }
        s->at += plain;
        if (!quote) {
            s->at--;
            continue;
        }
        s->at++;
        if (!more(s) || s->bytes[s->at] != '"') return true;
    }
    return false;
}

static void skip_plain(struct sheet *s) {
    while (more(s)) {
        const bool *ends = s->ends;
        const char *c = s->bytes + s->at, *end = s->bytes + s->end;
        while (c < end && !ends[(unsigned char)*c]) c++;
        s->at = (size_t)(c - s->bytes);
        if (c < end) return;
    }
}

// True when another cell follows.
static bool scan_cell(struct sheet *s, struct sheet_row *row) {
    bool quoted = more(s) && s->bytes[s->at] == '"';
    size_t behind = 0;
    if (quoted) {
        s->at++;
        row->unclosed = !skip_quoted(s);
        behind = s->at;
    }
    uint64_t place = s->base + behind;
    skip_plain(s);
    end_cell(s, quoted, quoted && s->base + s->at != place);
    if (!more(s) || s->bytes[s->at] != s->dialect.delimiter) return false;
    s->at++;
    s->cell_from = s->at - s->row;
    return true;
}

bool sheet_next(struct sheet *s, struct sheet_row *row) {
    *row = (struct sheet_row){0};
    s->row = s->at;
    s->huge = false;
    s->count = s->cell_from = 0;
    if (!more(s)) return false;
    row->at = s->base + s->at;
    row->line = s->line;
    bool empty = s->bytes[s->at] == '\n' || s->bytes[s->at] == '\r';
    if (!empty)
        while (scan_cell(s, row)) continue;
    if (s->failed) return false;
    if (more(s)) {
        bool carriage = s->bytes[s->at] == '\r';
        s->at++;
        if (carriage && more(s) && s->bytes[s->at] == '\n') s->at++;
        s->line++;
    }
    row->size = s->base + s->at - row->at;
    row->cells = s->cells;
    row->count = s->huge ? 0 : s->count;
    row->bytes = s->huge ? NULL : s->bytes + s->row;
    return !s->failed;
}
