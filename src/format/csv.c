// SPDX-License-Identifier: MIT
// CSV by RFC 4180. Spaces belong to a cell; a quote inside an unquoted cell is a fault, because every reader
// of such a file takes it differently.
#include "format/csv.h"

#include <string.h>

struct splitter {
    struct arena *arena;
    const struct source *source;
    struct diags *diags;
    char delimiter;
    size_t at;
};

char csv_find_delimiter(const char *line, size_t size) {
    static const char DELIMITERS[] = ",;\t";
    size_t counts[3] = {0};
    bool quoted = false;
    for (size_t i = 0; i < size; i++) {
        if (line[i] == '"') quoted = !quoted;
        const char *one = quoted || !line[i] ? NULL : strchr(DELIMITERS, line[i]);
        if (one) counts[one - DELIMITERS]++;
    }
    size_t best = 0;
    for (size_t i = 1; i < 3; i++) best = counts[i] > counts[best] ? i : best;
    return DELIMITERS[best];
}

static void fault(struct splitter *splitter, size_t at, const char *hint, const char *message) {
    struct place place = {splitter->source, at, at + 1};
    diags_add(splitter->diags, CODE_CSV, place, hint, "%s", message);
}

static struct csv_cell read_quoted(struct splitter *splitter) {
    const char *text = splitter->source->text;
    size_t size = splitter->source->size, from = splitter->at++;
    struct buf out = buf_start(splitter->arena);
    for (;;) {
        size_t run = splitter->at;
        while (run < size && text[run] != '"') run++;
        buf_add(&out, text + splitter->at, run - splitter->at);
        splitter->at = run < size ? run + 1 : size;
        if (run >= size) {
            fault(splitter, from, "the closing quote is missing; a quote inside a cell is doubled",
                  "a cell that never ends");
            break;
        }
        if (splitter->at >= size || text[splitter->at] != '"') break;
        buf_byte(&out, '"');
        splitter->at++;
    }
    if (splitter->at < size && text[splitter->at] != splitter->delimiter) {
        fault(splitter, splitter->at, "a quote inside a quoted cell is doubled: \"\"",
              "text after the closing quote");
        while (splitter->at < size && text[splitter->at] != splitter->delimiter) splitter->at++;
    }
    struct csv_cell cell = {out.at, out.n, {splitter->source, from, splitter->at}};
    return cell;
}

static struct csv_cell read_bare(struct splitter *splitter) {
    const char *text = splitter->source->text;
    size_t size = splitter->source->size, from = splitter->at;
    while (splitter->at < size && text[splitter->at] != splitter->delimiter) {
        if (text[splitter->at] == '"') {
            fault(splitter, splitter->at, "put the whole cell in quotes and double this one: \"5\"\" wide\"",
                  "a quote inside a cell without quotes");
        }
        splitter->at++;
    }
    const char *copy = arena_copy(splitter->arena, text + from, splitter->at - from);
    struct csv_cell cell = {copy, splitter->at - from, {splitter->source, from, splitter->at}};
    return cell;
}

struct csv_row csv_split(struct arena *arena, const struct source *source, char delimiter,
                         struct diags *diags) {
    struct splitter splitter = {arena, source, diags, delimiter, 0};
    struct csv_row row = {NULL, 0};
    size_t room = 0;
    for (;;) {
        bool quoted = splitter.at < source->size && source->text[splitter.at] == '"';
        struct csv_cell cell = quoted ? read_quoted(&splitter) : read_bare(&splitter);
        row.cells = arena_grow(arena, row.cells, row.count, &room, sizeof *row.cells);
        row.cells[row.count++] = cell;
        if (splitter.at >= source->size) return row;
        splitter.at++; // the delimiter
    }
}

bool csv_write_cell(struct buf *out, const char *text, char delimiter) {
    if (*text && strchr("=+-@\t\r", *text)) return false;
    size_t size = strlen(text);
    bool edge = size && (text[0] == ' ' || text[size - 1] == ' ');
    if (!edge && !strpbrk(text, "\"\r\n") && !strchr(text, delimiter)) {
        buf_add(out, text, size);
        return true;
    }
    buf_byte(out, '"');
    for (const char *at = text; *at; at++) {
        if (*at == '"') buf_byte(out, '"');
        buf_byte(out, *at);
    }
    buf_byte(out, '"');
    return true;
}
