// SPDX-License-Identifier: MIT
// Records as lines of text, every field named, so that two can be compared and a difference read.
#ifndef TEST_ITEM_SUPPORT_H
#define TEST_ITEM_SUPPORT_H

#include "../rules/support.h"

#include "format/write.h"

static inline void dump_text(struct buf *out, const char *key, const char *value) {
    if (value) buf_format(out, " %s=<%s>", key, value);
}

static inline void dump_span(struct buf *out, struct note_span span) {
    if (span.to) buf_format(out, " span=%zu..%zu", span.from, span.to);
}

static inline void dump_figure(struct buf *out, const struct figure *figure) {
    buf_format(out, " %.6g %s base=%.6g%s", figure->value, figure->unit->name, figure->base,
               figure->about ? " about" : "");
}

static inline void dump_value(struct buf *out, const char *key, const struct value *value) {
    if (!value->value) return;
    buf_format(out, "%s %s", key, sure_name(value->sure));
    dump_text(out, "name", value->name);
    dump_text(out, "value", value->value);
    dump_text(out, "of", value->of);
    dump_text(out, "because", value->because);
    dump_span(out, value->span);
    buf_byte(out, '\n');
}

static inline void dump_flaws(struct buf *out, const struct record *r) {
    for (size_t i = 0; i < r->flaw_count; i++) {
        const struct item_flaw *f = &r->flaws[i];
        buf_format(out, "flaw %s %s %s %d/%d", f->kind->rule.id, severity_name(f->severity),
                   sure_name(f->sure), f->count, f->of);
        dump_text(out, "where", f->where);
        dump_text(out, "part", f->part);
        dump_text(out, "photo", f->photo);
        if (f->has_size) dump_figure(out, &f->size);
        dump_span(out, f->span);
        buf_byte(out, '\n');
    }
    for (size_t i = 0; i < r->clear_count; i++) {
        buf_format(out, "clear %s %s", r->clear[i].kind->rule.id,
                   r->clear[i].none_seen ? "none-seen" : "denied");
        dump_text(out, "where", r->clear[i].where);
        dump_text(out, "part", r->clear[i].part);
        dump_span(out, r->clear[i].span);
        buf_byte(out, '\n');
    }
    for (size_t i = 0; i < r->unchecked.count; i++) buf_format(out, "unchecked <%s>\n", r->unchecked.at[i]);
}

static inline void dump_lists(struct buf *out, const struct record *r) {
    for (size_t i = 0; i < r->include_count; i++)
        buf_format(out, "includes %d <%s>\n", r->includes[i].count, r->includes[i].what);
    for (size_t i = 0; i < r->measurement_count; i++) {
        const struct measurement *m = &r->measurements[i];
        buf_format(out, "measure <%s>", m->dimension);
        if (m->range)
            buf_format(out, " %.6g..%.6g %s%s", m->from, m->to, m->figure.unit->name,
                       m->figure.about ? " about" : "");
        else
            dump_figure(out, &m->figure);
        dump_text(out, "of", m->of);
        dump_span(out, m->span);
        buf_byte(out, '\n');
    }
    for (size_t i = 0; i < r->mark_count; i++) {
        buf_text(out, "mark");
        dump_text(out, "text", r->marks[i].text);
        dump_text(out, "where", r->marks[i].where);
        buf_byte(out, '\n');
    }
    for (size_t i = 0; i < r->fit_count; i++) {
        buf_format(out, "fits %s", sure_name(r->fits[i].sure));
        dump_text(out, "brand", r->fits[i].brand);
        dump_text(out, "model", r->fits[i].model);
        dump_span(out, r->fits[i].span);
        buf_byte(out, '\n');
    }
    for (size_t i = 0; i < r->photo_count; i++) {
        buf_text(out, "photo");
        dump_text(out, "file", r->photos[i].file);
        dump_text(out, "shows", r->photos[i].shows);
        buf_byte(out, '\n');
    }
}

// A scalar by its text alone: CSV has no types.
static inline void dump_tree(struct buf *out, const struct node *node) {
    if (node->kind != NODE_LIST && node->kind != NODE_MAP) {
        buf_format(out, "<%s>", node->text ? node->text : "");
        return;
    }
    buf_byte(out, node->kind == NODE_LIST ? '[' : '{');
    for (size_t i = 0; i < node->count; i++) {
        if (node->kind == NODE_MAP) buf_format(out, "%s:", node->members[i].key);
        dump_tree(out, node->members[i].value);
    }
    buf_byte(out, node->kind == NODE_LIST ? ']' : '}');
}

static inline const char *dump_record(struct arena *arena, const struct record *r) {
    struct buf out = buf_start(arena);
    dump_text(&out, "id", r->id);
    dump_text(&out, "notes", r->notes);
    buf_format(&out, " family=%s count=%d\n", r->family ? r->family->rule.id : "none", r->count);
    dump_value(&out, "type", &r->type);
    for (size_t i = 0; i < r->others.count; i++) buf_format(&out, "other <%s>\n", r->others.at[i]);
    for (size_t i = 0; i < r->attribute_count; i++) dump_value(&out, "attribute", &r->attributes[i]);
    dump_flaws(&out, r);
    dump_lists(&out, r);
    if (r->year_from || r->year_to) buf_format(&out, "years %d..%d", r->year_from, r->year_to);
    dump_text(&out, "because", r->year_because);
    if (r->has_listing) {
        buf_text(&out, "\nlisting");
        dump_text(&out, "title", r->listing.title);
        dump_text(&out, "description", r->listing.description);
        dump_text(&out, "price", r->listing.price);
        dump_text(&out, "currency", r->listing.currency);
        dump_text(&out, "listed", r->listing.listed);
        dump_text(&out, "where", r->listing.where);
    }
    const struct node *const trees[] = {r->asides, r->unread, r->own};
    for (size_t i = 0; i < 3; i++)
        if (trees[i]) {
            buf_format(&out, "\ntree %zu ", i);
            dump_tree(&out, trees[i]);
        }
    return out.at;
}

#endif
