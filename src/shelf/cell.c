// SPDX-License-Identifier: MIT
// Windows-1252 is a table of 32 code points; the five bytes that it leaves free are no text.
#include "shelf/cell.h"

#include <string.h>

#include "text/utf8.h"

static const uint16_t WINDOWS[32] = {0x20AC, 0,      0x201A, 0x0192, 0x201E, 0x2026, 0x2020, 0x2021,
                                     0x02C6, 0x2030, 0x0160, 0x2039, 0x0152, 0,      0x017D, 0,
                                     0,      0x2018, 0x2019, 0x201C, 0x201D, 0x2022, 0x2013, 0x2014,
                                     0x02DC, 0x2122, 0x0161, 0x203A, 0x0153, 0,      0x017E, 0x0178};

static const char *from_windows(struct arena *arena, const char *text) {
    struct buf out = buf_start(arena);
    for (; *text; text++) {
        unsigned char byte = (unsigned char)*text;
        uint32_t point = byte;
        if (byte >= 0x80 && byte < 0xA0) point = WINDOWS[byte - 0x80];
        if (!point) return NULL;
        char to[4];
        buf_add(&out, to, utf8_put(point, to));
    }
    return out.at;
}

static const char *to_windows(struct arena *arena, const char *text) {
    struct buf out = buf_start(arena);
    size_t size = strlen(text);
    for (size_t at = 0; at < size;) {
        uint32_t point = utf8_next(text, size, &at);
        int byte = point < 0x80 || (point >= 0xA0 && point < 0x100) ? (int)point : -1;
        for (int i = 0; byte < 0 && i < 32; i++)
            if (WINDOWS[i] && WINDOWS[i] == point) byte = 0x80 + i;
        if (byte < 0) return NULL;
        buf_byte(&out, (char)byte);
    }
    return out.at;
}

static char *unquote(struct arena *arena, const char *from, const char *to) {
    char *text = arena_alloc(arena, (size_t)(to - from) + 1);
    size_t n = 0;
    bool open = true;
    for (from++; from < to; from++) {
        if (open && *from == '"') {
            open = from + 1 < to && from[1] == '"';
            if (open)
                from++;
            else
                continue;
        }
        text[n++] = *from;
    }
    text[n] = '\0';
    return text;
}

bool cell_is_printing(const char *bytes, size_t size) {
    unsigned other = 0;
    for (size_t i = 0; i < size; i++) other |= (unsigned char)(bytes[i] - ' ') >= 0x7F - ' ';
    return !other;
}

bool cell_plain(const struct sheet_row *row, size_t column, const char **text, size_t *size) {
    if (!row->bytes || column >= row->count || row->unclosed) return false;
    const struct sheet_cell *cell = &row->cells[column];
    if (cell->to - cell->from > SHEET_CELL_MOST) return false;
    size_t from = cell->from + cell->quoted, to = cell->to - cell->quoted;
    if (cell->odd || from > to) return false;
    *text = row->bytes + from;
    *size = to - from;
    return cell_is_printing(*text, *size) && !(cell->quoted && memchr(*text, '"', *size));
}

const char *cell_text(struct arena *arena, const struct dialect *dialect, const struct sheet_row *row,
                      size_t column, const char **why) {
    if (!row->bytes || column >= row->count) {
        *why = "is not there";
        return NULL;
    }
    const struct sheet_cell *cell = &row->cells[column];
    const char *plain;
    size_t size;
    if (cell_plain(row, column, &plain, &size)) return arena_copy(arena, plain, size);
    const char *from = row->bytes + cell->from, *to = row->bytes + cell->to;
    if (cell->to - cell->from > SHEET_CELL_MOST)
        *why = "is over 1 MiB, and was not read";
    else if (memchr(from, 0, cell->to - cell->from))
        *why = "holds a zero byte";
    else {
        const char *text =
            cell->quoted ? unquote(arena, from, to) : arena_copy(arena, from, cell->to - cell->from);
        if (dialect->windows) text = from_windows(arena, text);
        if (text && utf8_check(text, strlen(text)) == strlen(text)) return text;
        *why = dialect->windows ? "holds a byte that is no letter of Windows-1252"
                                : "holds bytes that are not UTF-8";
    }
    return NULL;
}

const char *cell_bytes(struct arena *arena, const struct dialect *dialect, const char *text, bool quoted,
                       size_t *size) {
    if (dialect->windows) text = to_windows(arena, text);
    if (!text) return NULL;
    size_t n = strlen(text);
    for (const char *c = text; *c; c++)
        quoted |= *c == dialect->delimiter || *c == '"' || *c == '\n' || *c == '\r';
    quoted |= n && (text[0] == ' ' || text[n - 1] == ' ');
    *size = n;
    if (!quoted) return text;
    struct buf out = buf_start(arena);
    buf_byte(&out, '"');
    for (const char *c = text; *c; c++) {
        if (*c == '"') buf_byte(&out, '"');
        buf_byte(&out, *c);
    }
    buf_byte(&out, '"');
    *size = out.n;
    return out.at;
}

bool cell_says(struct arena *arena, const struct dialect *dialect, const char *bytes, size_t size,
               const char *text) {
    bool quoted = size && bytes[0] == '"';
    struct sheet_cell cell = {0, size, quoted, false};
    struct sheet_row row = {.bytes = bytes, .size = size, .cells = &cell, .count = 1};
    size_t i = quoted;
    if (quoted)
        while (i < size && (bytes[i] != '"' || (i + 1 < size && bytes[i + 1] == '"')))
            i += bytes[i] == '"' ? 2 : 1;
    else
        while (i < size && bytes[i] != dialect->delimiter && bytes[i] != '\n' && bytes[i] != '\r') i++;
    if (i + quoted != size) return false;
    const char *why, *said = cell_text(arena, dialect, &row, 0, &why);
    return said && !strcmp(said, text);
}

bool cell_is_formula(const char *text) {
    static const char *const wide[] = {"\xEF\xBC\x9D", "\xEF\xBC\x8B", "\xEF\xBC\x8D", "\xEF\xBC\xA0"};
    const char *first = text + strspn(text, " ");
    if (*text == '\t' || *text == '\r' || *text == '\n') return true;
    if (*first && strchr("=+-@", *first)) return true;
    for (size_t i = 0; i < sizeof wide / sizeof *wide; i++)
        if (!strncmp(first, wide[i], 3)) return true;
    return false;
}

void cell_write(struct buf *out, const char *text, bool last) {
    static const struct dialect plain = {.delimiter = ','};
    size_t size = 0;
    const char *bytes = cell_bytes(out->arena, &plain, text, false, &size);
    buf_add(out, bytes, size);
    buf_byte(out, last ? '\n' : ',');
}

const char *cell_line(struct arena *arena, const char *text) {
    char *line = arena_string(arena, text);
    for (char *c = line; *c; c++)
        if ((unsigned char)*c < ' ' || *c == 0x7F) *c = ' ';
    return line;
}
