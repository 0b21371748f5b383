// SPDX-License-Identifier: MIT
// The lists of a record: flaws, clear, includes, measurements, marks, fits, photos. In each a plain text may
// stand for the map's first key, as people write by hand.
#include "item/lists.h"

#include <string.h>

#include "text/order.h"

#define TEXT_FIELD(function, type, field)                                                                    \
    static void function(struct reader *r, const struct node *node, void *to) {                              \
        ((struct type *)to)->field = read_text(r, node, #field);                                             \
    }
#define COUNT_FIELD(function, type, field)                                                                   \
    static void function(struct reader *r, const struct node *node, void *to) {                              \
        ((struct type *)to)->field = read_whole(r, node, #field, 1);                                         \
    }
#define SPAN_FIELD(function, type)                                                                           \
    static void function(struct reader *r, const struct node *node, void *to) {                              \
        ((struct type *)to)->span = read_span(r, node);                                                      \
    }
#define SURE_FIELD(function, type)                                                                           \
    static void function(struct reader *r, const struct node *node, void *to) {                              \
        ((struct type *)to)->sure = read_sure(r, node);                                                      \
    }

static bool wants_map(struct reader *r, const struct node *node, const char *what) {
    if (node->kind == NODE_MAP) return true;
    reader_fault(r, CODE_TYPE, node->at, NULL, "each of '%s' wants a map, not %s", what,
                 node_kind_name(node));
    return false;
}

static bool is_plain(const struct node *node) {
    return node->kind == NODE_TEXT || node->kind == NODE_NUMBER;
}

// A key that is there and says nothing is as good as none: an entry without it must not vanish.
static bool says_nothing(const struct node *map, const char *key) {
    const struct node *value = node_get(map, key);
    return !value || value->kind == NODE_NULL;
}

// --- flaws ---

static void flaw_kind(struct reader *r, const struct node *node, void *to) {
    ((struct item_flaw *)to)->kind = read_flaw_id(r, node);
}
TEXT_FIELD(flaw_where, item_flaw, where)
TEXT_FIELD(flaw_part, item_flaw, part)
TEXT_FIELD(flaw_photo, item_flaw, photo)
COUNT_FIELD(flaw_count, item_flaw, count)
COUNT_FIELD(flaw_of, item_flaw, of)
SURE_FIELD(flaw_sure, item_flaw)
SPAN_FIELD(flaw_span, item_flaw)

static void flaw_size(struct reader *r, const struct node *node, void *to) {
    struct item_flaw *flaw = to;
    static const struct field keys[] = {
        {"value", NULL}, {"unit", NULL}, {"mm", NULL}, {"about", NULL}, {NULL, NULL}};
    if (node->kind != NODE_MAP) {
        reader_fault(r, CODE_TYPE, node->at, "size: {value: 3, unit: mm}", "'size' wants a map, not %s",
                     node_kind_name(node));
        return;
    }
    fields_read(r, keys, node, NULL);
    flaw->has_size = read_figure(r, node, "size", &flaw->size);
}

static void flaw_severity(struct reader *r, const struct node *node, void *to) {
    for (int i = SEVERITY_LIGHT; i <= SEVERITY_HEAVY; i++)
        if (node->kind == NODE_TEXT && text_same(node->text, severity_name((enum severity)i))) {
            ((struct item_flaw *)to)->severity = (enum severity)i;
            return;
        }
    reader_fault(r, CODE_VALUE, node->at, "light, moderate or heavy; leave it out where it is not known",
                 "'severity' cannot be this");
}

static const struct field flaw_fields[] = {
    {"kind", flaw_kind},         {"where", flaw_where}, {"part", flaw_part},
    {"count", flaw_count},       {"of", flaw_of},       {"size", flaw_size},
    {"severity", flaw_severity}, {"sure", flaw_sure},   {"photo", flaw_photo},
    {"span", flaw_span},         {NULL, NULL}};

void list_flaws(struct reader *r, const struct node *node, void *to) {
    struct record *record = to;
    record->flaws = arena_array(r->arena, read_items(node) + 1, sizeof *record->flaws);
    for (size_t i = 0; i < read_items(node); i++) {
        const struct node *item = read_item(node, i);
        struct item_flaw *flaw = &record->flaws[record->flaw_count];
        *flaw = (struct item_flaw){.at = item->at};
        if (is_plain(item))
            flaw->kind = read_flaw_id(r, item);
        else if (wants_map(r, item, "flaws")) {
            fields_read(r, flaw_fields, item, flaw);
            if (says_nothing(item, "kind"))
                reader_fault(r, CODE_REQUIRED, item->at, "name the flaw: kind: chip",
                             "a flaw without its kind");
        }
        if (flaw->of && flaw->count > flaw->of)
            reader_fault(r, CODE_VALUE, item->at, NULL, "%d of %d: more pieces than there are", flaw->count,
                         flaw->of);
        record->flaw_count += flaw->kind != NULL;
    }
}

// --- clear ---

static void clear_kind(struct reader *r, const struct node *node, void *to) {
    ((struct item_clear *)to)->kind = read_flaw_id(r, node);
}
TEXT_FIELD(clear_where, item_clear, where)
TEXT_FIELD(clear_part, item_clear, part)
SPAN_FIELD(clear_span, item_clear)

static void clear_how(struct reader *r, const struct node *node, void *to) {
    bool seen = node->kind == NODE_TEXT && text_same(node->text, "none-seen");
    if (!seen && (node->kind != NODE_TEXT || !text_same(node->text, "denied")))
        reader_fault(r, CODE_VALUE, node->at, "denied (said not to be there) or none-seen (looked for)",
                     "'how' cannot be this");
    ((struct item_clear *)to)->none_seen = seen;
}

static const struct field clear_fields[] = {{"kind", clear_kind}, {"where", clear_where},
                                            {"part", clear_part}, {"how", clear_how},
                                            {"span", clear_span}, {NULL, NULL}};

void list_clear(struct reader *r, const struct node *node, void *to) {
    struct record *record = to;
    record->clear = arena_array(r->arena, read_items(node) + 1, sizeof *record->clear);
    for (size_t i = 0; i < read_items(node); i++) {
        const struct node *item = read_item(node, i);
        struct item_clear *clear = &record->clear[record->clear_count];
        *clear = (struct item_clear){.at = item->at};
        if (is_plain(item))
            clear->kind = read_flaw_id(r, item);
        else if (wants_map(r, item, "clear")) {
            fields_read(r, clear_fields, item, clear);
            if (says_nothing(item, "kind"))
                reader_fault(r, CODE_REQUIRED, item->at, "name the flaw: kind: chip",
                             "a clear entry without its kind");
        }
        record->clear_count += clear->kind != NULL;
    }
}

// --- includes ---

TEXT_FIELD(included_what, item_included, what)
COUNT_FIELD(included_count, item_included, count)
static const struct field included_fields[] = {
    {"what", included_what}, {"count", included_count}, {NULL, NULL}};

void list_includes(struct reader *r, const struct node *node, void *to) {
    struct record *record = to;
    record->includes = arena_array(r->arena, read_items(node) + 1, sizeof *record->includes);
    for (size_t i = 0; i < read_items(node); i++) {
        const struct node *item = read_item(node, i);
        struct item_included *included = &record->includes[record->include_count];
        *included = (struct item_included){.at = item->at};
        if (is_plain(item))
            included->what = read_text(r, item, "includes");
        else if (wants_map(r, item, "includes")) {
            fields_read(r, included_fields, item, included);
            if (says_nothing(item, "what"))
                reader_fault(r, CODE_REQUIRED, item->at, "what: lid",
                             "an entry of 'includes' without 'what'");
        }
        record->include_count += included->what != NULL;
    }
}

// --- measurements ---

TEXT_FIELD(measure_dimension, measurement, dimension)
TEXT_FIELD(measure_of, measurement, of)
SPAN_FIELD(measure_span, measurement)
static void measure_from(struct reader *r, const struct node *node, void *to) {
    read_number(r, node, "from", &((struct measurement *)to)->from);
}
static void measure_to(struct reader *r, const struct node *node, void *to) {
    read_number(r, node, "to", &((struct measurement *)to)->to);
}
static const struct field measure_fields[] = {{"dimension", measure_dimension},
                                              {"of", measure_of},
                                              {"span", measure_span},
                                              {"from", measure_from},
                                              {"to", measure_to},
                                              {"value", NULL},
                                              {"unit", NULL},
                                              {"mm", NULL},
                                              {"g", NULL},
                                              {"ml", NULL},
                                              {"about", NULL},
                                              {NULL, NULL}};

static bool read_range(struct reader *r, const struct node *item, struct measurement *measure) {
    const struct node *unit = node_get(item, "unit");
    const char *name = unit ? read_text(r, unit, "unit") : "mm";
    measure->figure.unit = name ? say_unit(name, r->locale) : NULL;
    if (!measure->figure.unit || measure->to < measure->from) {
        reader_fault(r, CODE_VALUE, item->at, "from and to in one unit, the smaller first",
                     "this range cannot be read");
        return false;
    }
    const struct node *about = node_get(item, "about");
    if (about) measure->figure.about = read_yes_no(r, about, "about");
    measure->range = true;
    return true;
}

void list_measurements(struct reader *r, const struct node *node, void *to) {
    struct record *record = to;
    record->measurements = arena_array(r->arena, read_items(node) + 1, sizeof *record->measurements);
    for (size_t i = 0; i < read_items(node); i++) {
        const struct node *item = read_item(node, i);
        struct measurement *measure = &record->measurements[record->measurement_count];
        *measure = (struct measurement){.at = item->at};
        if (!wants_map(r, item, "measurements")) continue;
        fields_read(r, measure_fields, item, measure);
        bool fine = node_get(item, "from") || node_get(item, "to")
                        ? read_range(r, item, measure)
                        : read_figure(r, item, measure->dimension ? measure->dimension : "measurements",
                                      &measure->figure);
        if (!measure->dimension)
            reader_fault(r, CODE_REQUIRED, item->at,
                         "height, width, depth, length, diameter, weight, capacity …",
                         "a measurement without its dimension");
        record->measurement_count += fine && measure->dimension;
    }
}

// --- marks, fits, photos ---

TEXT_FIELD(mark_text, mark, text)
TEXT_FIELD(mark_where, mark, where)
static const struct field mark_fields[] = {{"text", mark_text}, {"where", mark_where}, {NULL, NULL}};

void list_marks(struct reader *r, const struct node *node, void *to) {
    struct record *record = to;
    record->marks = arena_array(r->arena, read_items(node) + 1, sizeof *record->marks);
    for (size_t i = 0; i < read_items(node); i++) {
        const struct node *item = read_item(node, i);
        struct mark *mark = &record->marks[record->mark_count];
        *mark = (struct mark){.at = item->at};
        if (is_plain(item))
            mark->text = read_text(r, item, "marks");
        else if (wants_map(r, item, "marks")) {
            fields_read(r, mark_fields, item, mark);
            if (says_nothing(item, "text"))
                reader_fault(r, CODE_REQUIRED, item->at, "copy the mark letter by letter: text: No 4",
                             "a mark without its text");
        }
        record->mark_count += mark->text != NULL;
    }
}

TEXT_FIELD(fit_brand, fit, brand)
TEXT_FIELD(fit_model, fit, model)
SURE_FIELD(fit_sure, fit)
SPAN_FIELD(fit_span, fit)
static const struct field fit_fields[] = {
    {"brand", fit_brand}, {"model", fit_model}, {"sure", fit_sure}, {"span", fit_span}, {NULL, NULL}};

void list_fits(struct reader *r, const struct node *node, void *to) {
    struct record *record = to;
    record->fits = arena_array(r->arena, read_items(node) + 1, sizeof *record->fits);
    for (size_t i = 0; i < read_items(node); i++) {
        const struct node *item = read_item(node, i);
        struct fit *fit = &record->fits[record->fit_count];
        *fit = (struct fit){.at = item->at};
        if (is_plain(item))
            fit->model = read_text(r, item, "fits");
        else if (wants_map(r, item, "fits")) {
            fields_read(r, fit_fields, item, fit);
            if (says_nothing(item, "brand") && says_nothing(item, "model"))
                reader_fault(r, CODE_REQUIRED, item->at, "give brand, model or both",
                             "an entry of 'fits' that names nothing");
        }
        record->fit_count += fit->brand || fit->model;
    }
}

TEXT_FIELD(photo_file, photo, file)
TEXT_FIELD(photo_shows, photo, shows)
static const struct field photo_fields[] = {{"file", photo_file}, {"shows", photo_shows}, {NULL, NULL}};

void list_photos(struct reader *r, const struct node *node, void *to) {
    struct record *record = to;
    record->photos = arena_array(r->arena, read_items(node) + 1, sizeof *record->photos);
    for (size_t i = 0; i < read_items(node); i++) {
        const struct node *item = read_item(node, i);
        struct photo *photo = &record->photos[record->photo_count];
        *photo = (struct photo){NULL, NULL};
        if (is_plain(item))
            photo->file = read_text(r, item, "photos");
        else if (wants_map(r, item, "photos")) {
            fields_read(r, photo_fields, item, photo);
            if (says_nothing(item, "file") && says_nothing(item, "shows"))
                reader_fault(r, CODE_REQUIRED, item->at, "give file, shows or both",
                             "a photo that names nothing");
        }
        record->photo_count += photo->file || photo->shows;
    }
}
