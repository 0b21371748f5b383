// SPDX-License-Identifier: MIT
// One pass from mark to mark: what lies between two of them is never looked at. Cells are kept as offsets
// within the row, because the row moves in the buffer while more of it is read.
#include "shelf/sheet.h"

#include <string.h>

#include "shelf/marks.h"

enum { READ_SIZE = 256 << 10 };

struct sheet {
    struct arena *arena;
    sheet_get *get;
    void *context;
    sheet_gone *gone;
    void *gone_context;
    struct dialect dialect;
    char *bytes;
    size_t room, row, at, end; // bytes[row, at) is what was scanned of the row at hand
    uint64_t base;             // where bytes[0] stands in the file
    uint64_t row_at;
    size_t line;
    struct sheet_cell *cells;
    size_t count, cell_room;
    bool huge; // the row is too long: only its places are kept
    bool finished, failed;
    uint64_t marks;      // those not yet met of the span that begins at `span`
    size_t span, behind; // `behind`: where the next span begins
};

// Looks for marks from `at` on, after bytes were moved or added.
static void look_anew(struct sheet *s) {
    s->marks = 0;
    s->span = s->behind = s->at;
}

// Lets go of the bytes before `from`; what is open of the row begins anew at the first byte that is left.
static void let_go(struct sheet *s, size_t from) {
    if (s->gone && from) s->gone(s->gone_context, s->bytes, from);
    memmove(s->bytes, s->bytes + from, s->end - from);
    s->base += from;
    s->at -= from;
    s->end -= from;
    s->row = 0;
}

static bool fill(struct sheet *s) {
    if (s->finished) return false;
    let_go(s, s->huge ? s->at : s->row);
    if (s->room - s->end < READ_SIZE / 2) {
        if (s->room >= SHEET_ROW_MOST) {
            s->huge = true;
            let_go(s, s->at);
        } else {
            char *more = arena_array(s->arena, 2 * s->room + MARKS_SPAN, 1);
            memcpy(more, s->bytes, s->end);
            s->bytes = more;
            s->room *= 2;
        }
    }
    size_t got = s->get(s->context, s->bytes + s->end, s->room - s->end);
    s->failed = got == (size_t)-1;
    s->finished = s->failed || !got;
    if (!s->failed) s->end += got;
    look_anew(s);
    return !s->finished;
}

struct sheet *sheet_open(struct arena *arena, sheet_get *get, void *context) {
    struct sheet *s = arena_alloc(arena, sizeof *s);
    *s = (struct sheet){.arena = arena, .get = get, .context = context, .line = 1};
    s->room = 2 * READ_SIZE;
    s->bytes = arena_array(arena, s->room + MARKS_SPAN, 1);
    while (s->end < SHEET_LOOK_MOST && fill(s)) continue;
    s->dialect = dialect_find(s->bytes, s->end, s->finished);
    if (s->dialect.bom) s->row = s->at = 3;
    look_anew(s);
    return s;
}

const struct dialect *sheet_dialect(const struct sheet *sheet) {
    return &sheet->dialect;
}

void sheet_pass_on(struct sheet *sheet, sheet_gone *gone, void *context) {
    sheet->gone = gone;
    sheet->gone_context = context;
}

bool sheet_failed(const struct sheet *sheet) {
    return sheet->failed;
}

static bool more(struct sheet *s) {
    return s->at < s->end || fill(s);
}

// The next span that has marks, from where scanning stands. False at the end of the file, with `at` there.
static bool next_span(struct sheet *s) {
    while (!s->marks) {
        if (s->behind >= s->end) {
            s->at = s->end;
            if (!fill(s)) return false;
            continue;
        }
        s->span = s->behind;
        s->behind += MARKS_SPAN;
        s->marks = marks_of(s->bytes + s->span, s->dialect.delimiter);
        if (s->behind > s->end) s->marks &= ~(uint64_t)0 >> (s->behind - s->end);
    }
    return true;
}

// LF behind CR is one line end with it.
static void end_line(struct sheet *s, char mark) {
    s->line++;
    if (mark != '\r' || !more(s) || s->bytes[s->at] != '\n') return;
    s->at++;
    if (s->marks)
        s->marks &= s->marks - 1;
    else
        look_anew(s);
}

// A cell that is open: where it begins and where its closing quote stands, in the row.
struct open_cell {
    size_t from, closed;
    enum { PLAIN, QUOTED, CLOSED } state;
};

static void end_cell(struct sheet *s, const struct open_cell *c, size_t to) {
    if (s->huge) return;
    if (s->count == s->cell_room)
        s->cells = arena_grow(s->arena, s->cells, s->count, &s->cell_room, sizeof *s->cells);
    s->cells[s->count++] =
        (struct sheet_cell){c->from, to, c->state != PLAIN, c->state == CLOSED && c->closed + 1 != to};
}

static void take_quote(struct open_cell *c, size_t place) {
    if (c->state == QUOTED) {
        c->state = CLOSED;
        c->closed = place;
    } else if (c->state == CLOSED ? c->closed + 1 == place : c->from == place)
        c->state = QUOTED; // the second of two, or the one that opens the cell
}

static void scan_row(struct sheet *s, struct sheet_row *row) {
    const char delimiter = s->dialect.delimiter;
    struct open_cell cell = {0, 0, PLAIN};
    while (next_span(s)) {
        const char *bytes = s->bytes + s->span;
        // Where the span stands in the row, also when the beginning of the row was let go.
        size_t span = (size_t)(s->base + s->span - row->at);
        uint64_t marks = s->marks;
        for (; marks; marks &= marks - 1) {
            unsigned at = marks_lowest(marks);
            char mark = bytes[at];
            if (mark == '"')
                take_quote(&cell, span + at);
            else if (cell.state == QUOTED)
                s->line += mark == '\n';
            else if (mark == delimiter) {
                end_cell(s, &cell, span + at);
                cell = (struct open_cell){span + at + 1, 0, PLAIN};
            } else {
                if (span + at) end_cell(s, &cell, span + at);
                s->at = s->span + at + 1;
                s->marks = marks & (marks - 1);
                end_line(s, mark);
                return;
            }
        }
        s->marks = 0;
    }
    row->unclosed = cell.state == QUOTED;
    end_cell(s, &cell, (size_t)(s->base + s->at - row->at));
}

bool sheet_next(struct sheet *s, struct sheet_row *row) {
    *row = (struct sheet_row){0};
    s->row = s->at;
    s->huge = false;
    s->count = 0;
    if (!more(s)) {
        let_go(s, s->at);
        return false;
    }
    row->at = s->base + s->at;
    row->line = s->line;
    scan_row(s, row);
    row->size = s->base + s->at - row->at;
    row->cells = s->cells;
    row->count = s->huge ? 0 : s->count;
    row->bytes = s->huge ? NULL : s->bytes + s->row;
    return !s->failed;
}
