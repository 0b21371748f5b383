// SPDX-License-Identifier: MIT
// A reading inside another one is told and not marked: marks do not nest on a page that is read aloud.
#include "listing/readings.h"

#include <string.h>

#include "format/write.h"

// With a listing its private words are kept back.
static const char *words_of(struct arena *arena, const struct note_read *read, const struct listing *l,
                            const struct reading *r) {
    if (l) return listing_note(arena, l, (struct note_span){r->from, r->to});
    char *copy = arena_copy(arena, read->record.notes + r->from, r->to - r->from);
    for (char *c = copy; *c; c++)
        if (*c == '\n' || *c == '\r' || *c == '\t') *c = ' ';
    return copy;
}

static const char *why(struct arena *arena, const struct reading *r) {
    return r->stopped ? arena_format(arena, "not taken: %s", r->stopped) : r->because;
}

void readings_text(struct arena *arena, const struct note_read *read, const struct listing *l,
                   struct buf *out, bool color) {
    if (!read->reading_count) return;
    buf_format(out, "%sIn the notes%s\n", color ? "\x1b[1m" : "", color ? "\x1b[0m" : "");
    for (size_t i = 0; i < read->reading_count; i++) {
        const struct reading *r = &read->readings[i];
        buf_format(out, "  \"%s\": %s (%s)\n", words_of(arena, read, l, r), r->what, why(arena, r));
    }
    buf_byte(out, '\n');
}

struct node *readings_tree(struct arena *arena, const struct note_read *read, const struct listing *l) {
    struct node *list = node_list(arena);
    for (size_t i = 0; i < read->reading_count; i++) {
        const struct reading *r = &read->readings[i];
        struct node *map = node_map(arena), *span = node_list(arena);
        node_put(arena, map, "words", node_text(arena, words_of(arena, read, l, r)));
        node_push(arena, span, node_whole(arena, (long long)r->from));
        node_push(arena, span, node_whole(arena, (long long)r->to));
        node_put(arena, map, "span", span);
        node_put(arena, map, "what", node_text(arena, r->what));
        node_put(arena, map, "because", node_text(arena, r->because));
        if (r->stopped) node_put(arena, map, "stopped", node_text(arena, r->stopped));
        node_push(arena, list, map);
    }
    return list;
}

static void plain(struct html *html, struct arena *arena, const char *note, size_t from, size_t to) {
    if (to > from) html_text(html, arena_copy(arena, note + from, to - from));
}

static void number(struct html *html, struct arena *arena, size_t i) {
    html_open(html, "sup", NULL, NULL);
    html_text(html, arena_format(arena, "%zu", i + 1));
    html_close(html, "sup");
}

// The style of a mark goes by what it is; its number tells the same without color.
static const char *class_of(const struct reading *r) {
    static const char *const names[] = {"flaw", "clear", "unchecked", "no flaw"};
    static const char *const classes[] = {"fault", "clear", "open", "clear"};
    for (size_t i = 0; i < sizeof names / sizeof *names; i++)
        if (!strncmp(r->what, names[i], strlen(names[i]))) return classes[i];
    return "fact";
}

static void marked_note(struct html *html, struct arena *arena, const struct note_read *read) {
    const char *note = read->record.notes;
    size_t done = 0;
    html_open(html, "p", "class", "notes");
    for (size_t i = 0; i < read->reading_count; i++) {
        const struct reading *r = &read->readings[i];
        if (r->from < done || r->to <= r->from) continue;
        plain(html, arena, note, done, r->from);
        html_open(html, "mark", "class", class_of(r));
        plain(html, arena, note, r->from, r->to);
        html_close(html, "mark");
        number(html, arena, i);
        done = r->to;
    }
    plain(html, arena, note, done, strlen(note));
    html_close(html, "p");
}

static void not_understood(struct html *html, struct arena *arena, const struct note_read *read) {
    const struct node *unread = read->record.unread;
    if (!unread || !unread->count) return;
    html_line(html, "h3", "Not understood");
    html_open(html, "ul", NULL, NULL);
    for (size_t i = 0; i < unread->count; i++) {
        const struct node *span = unread->members[i].value;
        double from, to;
        if (span->count == 2 && node_number(span->members[0].value, &from) &&
            node_number(span->members[1].value, &to))
            html_line(html, "li",
                      arena_copy(arena, read->record.notes + (size_t)from, (size_t)to - (size_t)from));
    }
    html_close(html, "ul");
}

void readings_page(struct arena *arena, const struct note_read *read, struct buf *out) {
    struct html html = {out};
    html_open(&html, "article", "id", read->record.id);
    html_line(&html, "h2", read->record.id);
    marked_note(&html, arena, read);
    html_open(&html, "ol", NULL, NULL);
    for (size_t i = 0; i < read->reading_count; i++) {
        const struct reading *r = &read->readings[i];
        html_line(&html, "li",
                  arena_format(arena, "\xE2\x80\x9C%s\xE2\x80\x9D: %s (%s)", words_of(arena, read, NULL, r),
                               r->what, why(arena, r)));
    }
    html_close(&html, "ol");
    not_understood(&html, arena, read);
    html_close(&html, "article");
}
