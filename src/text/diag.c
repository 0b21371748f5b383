// SPDX-License-Identifier: MIT
// The only printer of messages about a text. The excerpt is copied when a message is added, in a window of
// bounded size, so that the record it came from may be dropped before anything is printed.
#include "text/diag.h"

#include <stdlib.h>
#include <string.h>

#include "text/utf8.h"

enum {
    WINDOW = 100,
    LEAD = 60
}; // columns of a long line that are shown, and how many of them stand before the caret

struct diags diags_start(struct arena *arena) {
    struct diags diags = {.arena = arena};
    return diags;
}

// A terminal must not obey the user's bytes, and one bad byte must not shift the caret: each is shown as
// U+FFFD.
static void add_shown(struct buf *out, const char *text, size_t size) {
    size_t at = 0;
    while (at < size) {
        size_t good = utf8_check(text + at, size - at);
        while (good) {
            size_t run = utf8_unwanted(text + at, good, false);
            buf_add(out, text + at, run);
            at += run;
            good -= run;
            if (!good) break;
            size_t next = at;
            bool tab = utf8_next(text, at + good, &next) == '\t';
            buf_text(out, tab ? " " : "\xEF\xBF\xBD");
            good -= next - at;
            at = next;
        }
        if (at >= size) break;
        buf_text(out, "\xEF\xBF\xBD");
        for (at++; at < size && ((unsigned char)text[at] & 0xC0) == 0x80; at++) {
        }
    }
}

// Steps over code points, forwards; continuation bytes without a lead count with what stands before them.
static size_t step_points(const char *text, size_t at, size_t end, size_t points) {
    while (points > 0 && at < end) {
        for (at++; at < end && ((unsigned char)text[at] & 0xC0) == 0x80; at++) {
        }
        points--;
    }
    return at;
}

static size_t step_back(const char *text, size_t at, size_t start, size_t points) {
    while (points > 0 && at > start) {
        for (at--; at > start && ((unsigned char)text[at] & 0xC0) == 0x80; at--) {
        }
        points--;
    }
    return at;
}

static struct excerpt excerpt_make(struct arena *arena, struct place at) {
    struct excerpt shown = {0};
    const struct source *source = at.source;
    if (!source) return shown;
    shown.name = arena_string(arena, source->name ? source->name : "-");
    if (!source->text) return shown;
    shown.placed = true;
    struct line_column where = source_locate(source, at.from);
    shown.line = where.line;
    shown.column = where.column;
    size_t caret = at.from < where.line_from ? where.line_from
                   : at.from > where.line_to ? where.line_to
                                             : at.from;
    size_t caret_to = at.to < caret ? caret : at.to > where.line_to ? where.line_to : at.to;
    size_t from = where.line_from, to = where.line_to;
    if (step_points(source->text, from, to, WINDOW) < to) {
        size_t first = step_back(source->text, caret, from, LEAD);
        from = step_points(source->text, from, first, WINDOW - LEAD) < first ? first : from;
        to = step_points(source->text, from, to, WINDOW);
    }
    if (caret_to > to) caret_to = to;
    struct buf text = buf_start(arena);
    bool cut = from > where.line_from || (source->columns_before && where.line == source->first_line);
    if (cut) buf_text(&text, "…");
    add_shown(&text, source->text + from, caret - from);
    shown.indent = utf8_width(text.at, text.n);
    size_t before = text.n;
    add_shown(&text, source->text + caret, caret_to - caret);
    shown.width = utf8_width(text.at + before, text.n - before);
    if (!shown.width) shown.width = 1;
    add_shown(&text, source->text + caret_to, to - caret_to);
    if (to < where.line_to) buf_text(&text, "…");
    shown.text = text.at;
    return shown;
}

static const char *message_make(struct arena *arena, const char *text) {
    struct buf out = buf_start(arena);
    add_shown(&out, text, strlen(text));
    return out.at;
}

void diags_add(struct diags *diags, enum code code, struct place at, const char *hint, const char *format,
               ...) {
    int status = code_entry(code)->status;
    if (status > diags->status) diags->status = status;
    if (diags->count >= DIAGS_MOST) {
        diags->dropped++;
        return;
    }
    struct buf message = buf_start(diags->arena);
    va_list arguments;
    va_start(arguments, format);
    buf_vformat(&message, format, arguments);
    va_end(arguments);
    struct diag one = {.code = code, .at = at};
    one.message = message_make(diags->arena, message.at);
    one.hint = hint ? message_make(diags->arena, hint) : NULL;
    one.shown = excerpt_make(diags->arena, at);
    diags->items = arena_grow(diags->arena, diags->items, diags->count, &diags->room, sizeof *diags->items);
    diags->items[diags->count++] = one;
}

static int compare_sizes(size_t left, size_t right) {
    return (left > right) - (left < right);
}

static int compare_places(const struct diag *left, const struct diag *right) {
    const struct excerpt *a = &left->shown, *b = &right->shown;
    if (!a->name || !b->name) return (a->name != NULL) - (b->name != NULL);
    int order = strcmp(a->name, b->name);
    if (!order) order = compare_sizes(a->line, b->line);
    return order ? order : compare_sizes(a->column, b->column);
}

// By insertion: stable, and there are at most DIAGS_MOST.
static void sort_items(struct diag *items, size_t count) {
    for (size_t i = 1; i < count; i++) {
        struct diag one = items[i];
        size_t k = i;
        for (; k > 0 && compare_places(&items[k - 1], &one) > 0; k--) items[k] = items[k - 1];
        items[k] = one;
    }
}

static void print_level(struct buf *out, enum code_level level, bool color) {
    static const char *const WORDS[] = {"error", "warning", "note"};
    static const char *const SGR[] = {"\033[1;31m", "\033[1;33m", "\033[1;36m"};
    if (color) buf_text(out, SGR[level]);
    buf_text(out, WORDS[level]);
    if (color) buf_text(out, "\033[0m");
}

static void print_item(const struct diag *item, struct buf *out, bool color) {
    const struct excerpt *shown = &item->shown;
    const char *name = shown->name ? shown->name : "asfound";
    buf_text(out, name);
    if (shown->placed) buf_format(out, ":%zu:%zu", shown->line, shown->column);
    buf_text(out, ": ");
    print_level(out, code_entry(item->code)->level, color);
    buf_format(out, ": %s [%s]\n", item->message, code_entry(item->code)->name);
    if (!shown->placed) {
        if (item->hint) buf_format(out, "%s: hint: %s\n", name, item->hint);
        return;
    }
    buf_format(out, "%5zu |  %s\n      |  ", shown->line, shown->text);
    for (size_t i = 0; i < shown->indent; i++) buf_byte(out, ' ');
    for (size_t i = 0; i < shown->width; i++) buf_byte(out, '^');
    if (item->hint) buf_format(out, " hint: %s", item->hint);
    buf_byte(out, '\n');
}

void diags_print(struct diags *diags, struct buf *out, bool color) {
    sort_items(diags->items, diags->count);
    for (size_t i = 0; i < diags->count; i++) print_item(&diags->items[i], out, color);
    if (diags->dropped) buf_format(out, "asfound: %zu more not shown\n", diags->dropped);
}
