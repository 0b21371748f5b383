// SPDX-License-Identifier: MIT
// What is private or claimed without evidence stays out of the record here too: a sheet goes to the buyer.
// The text stands unbroken between its marks, so that anyone can take its digest again.
#include "listing/sheet.h"

#include <string.h>

#include "format/write.h"
#include "item/write.h"
#include "text/digest.h"
#include "text/order.h"

struct row {
    const char *name, *text;
};

struct sheet {
    const char *heading, *dated, *text, *digest;
    const char **care, **reasons, **photos;
    size_t care_count, reason_count, photo_count;
    struct row *rows;
    size_t row_count;
};

static const char digest_covers[] = "SHA-256 of the text above (UTF-8, no line end behind it)";
static const char digest_shows[] =
    "It shows that the text is unchanged; it proves neither date nor delivery.";

const char *sheet_statement(struct arena *arena, const struct listing *l) {
    if (!*l->description) return l->disclosure.text ? l->disclosure.text : "";
    return *l->title ? arena_format(arena, "%s\n\n%s", l->title, l->description) : l->description;
}

// --- the record, a line a key ---

static void flat(struct arena *arena, const struct listing *l, const struct node *node, size_t depth,
                 struct buf *out);

static bool leads(const char *key) {
    static const char *const keys[] = {"value", "kind", "text", "what", "dimension", "file"};
    for (size_t i = 0; i < sizeof keys / sizeof *keys; i++)
        if (text_same(key, keys[i])) return true;
    return false;
}

// "green (of lens)": what a map is about, then the rest of it.
static void flat_map(struct arena *arena, const struct listing *l, const struct node *node, size_t depth,
                     struct buf *out) {
    bool led = false, first = true;
    for (size_t i = 0; i < node->count; i++) {
        const struct member *m = &node->members[i];
        if (text_same(m->key, "span")) continue;
        bool leader = i == 0 && leads(m->key);
        buf_text(out, leader ? "" : led && first ? " (" : first ? "" : ", ");
        if (!leader) buf_format(out, "%s ", m->key);
        flat(arena, l, m->value, depth + 1, out);
        if (!leader) first = false;
        led |= leader;
    }
    if (led && !first) buf_byte(out, ')');
}

static void flat(struct arena *arena, const struct listing *l, const struct node *node, size_t depth,
                 struct buf *out) {
    if (node->kind == NODE_MAP) {
        flat_map(arena, l, node, depth, out);
    } else if (node->kind == NODE_LIST) {
        for (size_t i = 0; i < node->count; i++) {
            if (i) buf_text(out, depth ? " and " : "; ");
            flat(arena, l, node->members[i].value, depth + 1, out);
        }
    } else if (node->kind == NODE_TEXT) {
        bool barred = claims_bar(l->claims, node->text) != NULL;
        buf_text(out, barred ? "(kept out: nothing in the record shows it)" : node->text);
    } else {
        json_write(out, node);
    }
}

// Seller's words, keys of the seller's own and what is offered elsewhere are not the buyer's. Pictures have
// their own list.
static bool is_kept(const char *key) {
    static const char *const left[] = {"id", "notes", "asides", "unread", "own", "listing", "photos"};
    for (size_t i = 0; i < sizeof left / sizeof *left; i++)
        if (text_same(key, left[i])) return false;
    return true;
}

static void put_rows(struct arena *arena, const struct listing *l, struct sheet *s) {
    const struct node *tree = record_tree(arena, l->record);
    s->rows = arena_array(arena, tree->count + 1, sizeof *s->rows);
    for (size_t i = 0; i < tree->count; i++) {
        if (!is_kept(tree->members[i].key)) continue;
        struct buf out = buf_start(arena);
        flat(arena, l, tree->members[i].value, 0, &out);
        s->rows[s->row_count++] = (struct row){tree->members[i].key, out.at};
    }
}

// --- the parts ---

static void put_photos(struct arena *arena, const struct listing *l, struct sheet *s) {
    const struct record *r = l->record;
    s->photos = arena_array(arena, r->photo_count + 1, sizeof *s->photos);
    for (size_t i = 0; i < r->photo_count; i++)
        s->photos[s->photo_count++] =
            r->photos[i].shows ? arena_format(arena, "%s: %s", r->photos[i].file, r->photos[i].shows)
                               : r->photos[i].file;
    if (!r->photo_count) s->photos[s->photo_count++] = "none";
}

static struct sheet sheet_of(struct arena *arena, const struct listing *l, const char *today) {
    struct sheet s = {0};
    s.heading = arena_format(arena, "Disclosure sheet: %s", l->record->id);
    s.dated = arena_format(arena, "dated %s", today);
    s.text = sheet_statement(arena, l);
    s.digest = digest_sha256(arena, s.text, strlen(s.text));
    s.care = arena_array(arena, l->cautions->count + 1, sizeof *s.care);
    for (size_t i = 0; i < l->cautions->count; i++) {
        const struct caution *caution = l->cautions->items[i].caution;
        s.care[s.care_count++] = arena_format(
            arena, "%s%s", l->cautions->items[i].stop ? "Not to be listed: " : "", caution->text);
    }
    s.reasons = arena_array(arena, l->grading.count + 1, sizeof *s.reasons);
    s.reasons[s.reason_count++] =
        arena_format(arena, "%s (%s)", grade_letter(l->grading.grade), grade_word(l->grading.grade));
    for (size_t i = 0; i < l->grading.count; i++) s.reasons[s.reason_count++] = l->grading.reasons[i];
    put_rows(arena, l, &s);
    put_photos(arena, l, &s);
    return s;
}

// --- written ---

static void text_list(struct buf *out, const char *name, const char *const *items, size_t count) {
    if (!count) return;
    buf_format(out, "\n%s\n", name);
    for (size_t i = 0; i < count; i++) buf_format(out, "  - %s\n", items[i]);
}

void sheet_text(struct arena *arena, const struct listing *l, const char *today, struct buf *out) {
    struct sheet s = sheet_of(arena, l, today);
    buf_format(out, "%s, %s\n\n----- text -----\n%s\n----- end of text -----\n", s.heading, s.dated, s.text);
    text_list(out, "Take care", s.care, s.care_count);
    text_list(out, "Grade", s.reasons, s.reason_count);
    buf_text(out, "\nRecord\n");
    for (size_t i = 0; i < s.row_count; i++) buf_format(out, "  %s: %s\n", s.rows[i].name, s.rows[i].text);
    text_list(out, "Photos", s.photos, s.photo_count);
    buf_format(out, "\n%s:\n  %s\n%s\n\n", digest_covers, s.digest, digest_shows);
}

static void page_list(struct html *html, const char *name, const char *const *items, size_t count) {
    if (!count) return;
    html_line(html, "h3", name);
    html_open(html, "ul", NULL, NULL);
    for (size_t i = 0; i < count; i++) html_line(html, "li", items[i]);
    html_close(html, "ul");
}

// The more there is, the smaller it is set, to stay on one page of paper.
static const char *size_class(const struct sheet *s) {
    size_t n = strlen(s->text);
    const struct {
        const char *const *items;
        size_t count;
    } lists[] = {{s->care, s->care_count}, {s->reasons, s->reason_count}, {s->photos, s->photo_count}};
    for (size_t k = 0; k < sizeof lists / sizeof *lists; k++)
        for (size_t i = 0; i < lists[k].count; i++) n += strlen(lists[k].items[i]) + 60;
    for (size_t i = 0; i < s->row_count; i++) n += strlen(s->rows[i].text) + 60;
    return n < 2500 ? "sheet" : n < 5000 ? "sheet small" : "sheet smallest";
}

void sheet_page(struct arena *arena, const struct listing *l, const char *today, struct buf *out) {
    struct sheet s = sheet_of(arena, l, today);
    struct html html = {out};
    html_open(&html, "article", "class", size_class(&s));
    html_line(&html, "h2", s.heading);
    html_line(&html, "p", s.dated);
    html_line(&html, "pre", s.text);
    page_list(&html, "Take care", s.care, s.care_count);
    page_list(&html, "Grade", s.reasons, s.reason_count);
    html_line(&html, "h3", "Record");
    html_open(&html, "ul", NULL, NULL);
    for (size_t i = 0; i < s.row_count; i++)
        html_line(&html, "li", arena_format(arena, "%s: %s", s.rows[i].name, s.rows[i].text));
    html_close(&html, "ul");
    page_list(&html, "Photos", s.photos, s.photo_count);
    html_line(&html, "h3", digest_covers);
    html_line(&html, "p", s.digest);
    html_line(&html, "p", digest_shows);
    html_close(&html, "article");
}
