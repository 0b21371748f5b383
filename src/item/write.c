// SPDX-License-Identifier: MIT
// A value that says nothing but itself is written plainly ("color: [green]"), any other as a map.
#include "item/write.h"

#include <math.h>
#include <stdint.h>
#include <string.h>

#include "text/order.h"

static void put(struct arena *arena, struct node *map, const char *key, const char *text) {
    if (text) node_put(arena, map, key, node_text(arena, text));
}

static void put_list(struct arena *arena, struct node *map, const char *key, struct node *list) {
    if (list->count) node_put(arena, map, key, list);
}

static void put_whole(struct arena *arena, struct node *map, const char *key, long long value) {
    if (value) node_put(arena, map, key, node_whole(arena, value));
}

static void put_span(struct arena *arena, struct node *map, struct note_span span) {
    if (!span.to) return;
    struct node *list = node_list(arena);
    node_push(arena, list, node_whole(arena, (long long)span.from));
    node_push(arena, list, node_whole(arena, (long long)span.to));
    node_put(arena, map, "span", list);
}

static struct node *text_list(struct arena *arena, const struct texts *texts) {
    struct node *list = node_list(arena);
    for (size_t i = 0; i < texts->count; i++) node_push(arena, list, node_text(arena, texts->at[i]));
    return list;
}

static struct node *value_node(struct arena *arena, const struct value *value, const struct texts *others) {
    bool plain = value->sure == SURE_STATED && !value->span.to && !value->of && !value->because &&
                 !(others && others->count);
    if (plain) return node_text(arena, value->value);
    struct node *map = node_map(arena);
    put(arena, map, "value", value->value);
    if (value->sure != SURE_STATED) put(arena, map, "sure", sure_name(value->sure));
    put(arena, map, "of", value->of);
    put(arena, map, "because", value->because);
    if (others) put_list(arena, map, "others", text_list(arena, others));
    put_span(arena, map, value->span);
    return map;
}

static void put_attributes(struct arena *arena, struct node *record, const struct record *r) {
    struct node *map = node_map(arena);
    for (size_t i = 0; i < r->attribute_count; i++) {
        const struct value *value = &r->attributes[i];
        struct node *list = (struct node *)(uintptr_t)node_get(map, value->name);
        if (!list) {
            list = node_list(arena);
            node_put(arena, map, value->name, list);
        }
        node_push(arena, list, value_node(arena, value, NULL));
    }
    if (map->count) node_put(arena, record, "attributes", map);
}

// A product of two decimals has digits behind that nobody measured: 14 in are 355.6 mm.
static double rounded(double value) {
    return fabs(value) < 1e9 ? round(value * 1e6) / 1e6 : value;
}

// What the figure is in the base unit of its kind, so that no reader has to convert it.
static void put_base(struct arena *arena, struct node *map, const struct figure *figure) {
    if (figure->unit && figure->unit->kind)
        node_put(arena, map, figure->unit->kind, node_real(arena, rounded(figure->base)));
}

static void put_figure(struct arena *arena, struct node *map, const struct figure *figure) {
    node_put(arena, map, "value", node_real(arena, figure->value));
    if (figure->unit) put(arena, map, "unit", figure->unit->name);
    put_base(arena, map, figure);
    if (figure->about) node_put(arena, map, "about", node_bool_new(arena, true));
}

static struct node *flaw_node(struct arena *arena, const struct item_flaw *flaw) {
    struct node *map = node_map(arena);
    put(arena, map, "kind", flaw->kind->rule.id);
    put(arena, map, "part", flaw->part);
    put(arena, map, "where", flaw->where);
    put_whole(arena, map, "count", flaw->count);
    put_whole(arena, map, "of", flaw->of);
    if (flaw->has_size) {
        struct node *size = node_map(arena);
        put_figure(arena, size, &flaw->size);
        node_put(arena, map, "size", size);
    }
    if (flaw->severity) put(arena, map, "severity", severity_name(flaw->severity));
    if (flaw->sure != SURE_STATED) put(arena, map, "sure", sure_name(flaw->sure));
    put(arena, map, "photo", flaw->photo);
    put_span(arena, map, flaw->span);
    return map->count == 1 ? node_text(arena, flaw->kind->rule.id) : map;
}

static struct node *clear_node(struct arena *arena, const struct item_clear *clear) {
    struct node *map = node_map(arena);
    put(arena, map, "kind", clear->kind->rule.id);
    put(arena, map, "part", clear->part);
    put(arena, map, "where", clear->where);
    put(arena, map, "how", clear->none_seen ? "none-seen" : "denied");
    put_span(arena, map, clear->span);
    return map;
}

static struct node *measurement_node(struct arena *arena, const struct measurement *m) {
    struct node *map = node_map(arena);
    put(arena, map, "dimension", m->dimension);
    if (m->range) {
        node_put(arena, map, "from", node_real(arena, m->from));
        node_put(arena, map, "to", node_real(arena, m->to));
        if (m->figure.unit) put(arena, map, "unit", m->figure.unit->name);
        if (m->figure.about) node_put(arena, map, "about", node_bool_new(arena, true));
    } else
        put_figure(arena, map, &m->figure);
    put(arena, map, "of", m->of);
    put_span(arena, map, m->span);
    return map;
}

static void put_condition(struct arena *arena, struct node *map, const struct record *r) {
    struct node *flaws = node_list(arena), *clear = node_list(arena);
    for (size_t i = 0; i < r->flaw_count; i++) node_push(arena, flaws, flaw_node(arena, &r->flaws[i]));
    for (size_t i = 0; i < r->clear_count; i++) node_push(arena, clear, clear_node(arena, &r->clear[i]));
    put_list(arena, map, "flaws", flaws);
    put_list(arena, map, "clear", clear);
    put_list(arena, map, "unchecked", text_list(arena, &r->unchecked));
}

static void put_lists(struct arena *arena, struct node *map, const struct record *r) {
    struct node *includes = node_list(arena), *measures = node_list(arena), *marks = node_list(arena),
                *fits = node_list(arena), *photos = node_list(arena);
    for (size_t i = 0; i < r->include_count; i++) {
        struct node *entry = node_map(arena);
        put(arena, entry, "what", r->includes[i].what);
        put_whole(arena, entry, "count", r->includes[i].count);
        node_push(arena, includes, entry);
    }
    for (size_t i = 0; i < r->measurement_count; i++)
        node_push(arena, measures, measurement_node(arena, &r->measurements[i]));
    for (size_t i = 0; i < r->mark_count; i++) {
        struct node *entry = node_map(arena);
        put(arena, entry, "text", r->marks[i].text);
        put(arena, entry, "where", r->marks[i].where);
        node_push(arena, marks, entry);
    }
    for (size_t i = 0; i < r->fit_count; i++) {
        struct node *entry = node_map(arena);
        put(arena, entry, "brand", r->fits[i].brand);
        put(arena, entry, "model", r->fits[i].model);
        if (r->fits[i].sure != SURE_STATED) put(arena, entry, "sure", sure_name(r->fits[i].sure));
        put_span(arena, entry, r->fits[i].span);
        node_push(arena, fits, entry);
    }
    for (size_t i = 0; i < r->photo_count; i++) {
        struct node *entry = node_map(arena);
        put(arena, entry, "file", r->photos[i].file);
        put(arena, entry, "shows", r->photos[i].shows);
        node_push(arena, photos, entry);
    }
    put_list(arena, map, "includes", includes);
    put_whole(arena, map, "count", r->count);
    put_list(arena, map, "measurements", measures);
    put_list(arena, map, "marks", marks);
    put_list(arena, map, "fits", fits);
    put_list(arena, map, "photos", photos);
}

static void put_rest(struct arena *arena, struct node *map, const struct record *r) {
    if (r->year_from || r->year_to) {
        struct node *dates = node_map(arena);
        put_whole(arena, dates, "from", r->year_from);
        put_whole(arena, dates, "to", r->year_to);
        put(arena, dates, "because", r->year_because);
        node_put(arena, map, "dates", dates);
    }
    if (r->has_listing) {
        const struct present_listing *l = &r->listing;
        const struct {
            const char *key, *text;
        } keys[] = {{"title", l->title},       {"description", l->description}, {"price", l->price},
                    {"currency", l->currency}, {"listed", l->listed},           {"where", l->where}};
        struct node *listing = node_map(arena);
        for (size_t i = 0; i < sizeof keys / sizeof *keys; i++)
            put(arena, listing, keys[i].key, keys[i].text);
        node_put(arena, map, "listing", listing);
    }
    const struct {
        const char *key;
        const struct node *node;
    } kept[] = {{"asides", r->asides}, {"unread", r->unread}, {"own", r->own}};
    for (size_t i = 0; i < sizeof kept / sizeof *kept; i++)
        if (kept[i].node) node_put(arena, map, kept[i].key, (struct node *)(uintptr_t)kept[i].node);
}

struct node *record_tree(struct arena *arena, const struct record *r) {
    struct node *map = node_map(arena);
    put(arena, map, "id", r->id);
    put(arena, map, "notes", r->notes);
    if (r->type.value) node_put(arena, map, "type", value_node(arena, &r->type, &r->others));
    if (r->family) put(arena, map, "family", r->family->rule.id);
    put_attributes(arena, map, r);
    put_condition(arena, map, r);
    put_lists(arena, map, r);
    put_rest(arena, map, r);
    return map;
}

bool record_years_are_era(const struct record *record) {
    return record->year_because && text_same(record->year_because, YEARS_OF_ERA);
}
