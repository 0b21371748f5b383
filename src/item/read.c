// SPDX-License-Identifier: MIT
// Tree to record: the table of the record's keys. `notes` is read first, because spans are checked against
// it.
#include <string.h>

#include "item/lists.h"
#include "item/told.h"
#include "text/hint.h"
#include "text/order.h"
#include "text/utf8.h"

static const char *const attribute_names[] = {
    "color",    "material", "brand",           "model",         "pattern",   "size",
    "mpn",      "gtin",     "countryOfOrigin", "audience",      "name",      "author",
    "byArtist", "isbn",     "productionDate",  "itemCondition", "technique", "theme",
    "shape",    "style",    "finish",          "age",           NULL};

static void id(struct reader *r, const struct node *node, void *to) {
    ((struct record *)to)->id = read_text(r, node, "id");
}

static void count(struct reader *r, const struct node *node, void *to) {
    ((struct record *)to)->count = read_whole(r, node, "count", 1);
}

static void family(struct reader *r, const struct node *node, void *to) {
    struct record *record = to;
    const char *word = read_text(r, node, "family");
    if (!word) return;
    record->family = ruleset_family(r->rules, word);
    if (record->family) return;
    const char *hint = ruleset_family_hint(r->arena, r->rules, word);
    struct buf all = buf_start(r->arena);
    if (!hint) {
        buf_text(&all, "one of: ");
        for (size_t i = 0; i < r->rules->family_count; i++)
            buf_format(&all, "%s%s", i ? " " : "", r->rules->families[i]->rule.id);
        hint = all.at;
    }
    reader_fault(r, CODE_UNKNOWN_FAMILY, node->at, hint, "there is no family '%s'", word);
}

static void texts(struct reader *r, const struct node *node, const char *what, struct texts *to) {
    to->at = arena_array(r->arena, read_items(node) + 1, sizeof *to->at);
    for (size_t i = 0; i < read_items(node); i++) {
        const char *text = read_text(r, read_item(node, i), what);
        if (text) to->at[to->count++] = text;
    }
}

static void unchecked(struct reader *r, const struct node *node, void *to) {
    texts(r, node, "unchecked", &((struct record *)to)->unchecked);
}

// --- a value with how sure it is ---

static void value_value(struct reader *r, const struct node *node, void *to) {
    ((struct value *)to)->value = read_text(r, node, "value");
}
static void value_sure(struct reader *r, const struct node *node, void *to) {
    ((struct value *)to)->sure = read_sure(r, node);
}
static void value_of(struct reader *r, const struct node *node, void *to) {
    ((struct value *)to)->of = read_text(r, node, "of");
}
static void value_because(struct reader *r, const struct node *node, void *to) {
    ((struct value *)to)->because = read_text(r, node, "because");
}
static void value_span(struct reader *r, const struct node *node, void *to) {
    ((struct value *)to)->span = read_span(r, node);
}

static const struct field value_fields[] = {{"value", value_value}, {"sure", value_sure},
                                            {"of", value_of},       {"because", value_because},
                                            {"span", value_span},   {NULL, NULL}};
// A type has no part of its own but may be one of several things.
static const struct field type_fields[] = {{"value", value_value},     {"sure", value_sure}, {"others", NULL},
                                           {"because", value_because}, {"span", value_span}, {NULL, NULL}};

static void one_value(struct reader *r, const struct node *node, const char *what, const struct field *fields,
                      struct value *value) {
    value->at = node->at;
    if (node->kind != NODE_MAP) {
        value->value = read_text(r, node, what);
        return;
    }
    fields_read(r, fields, node, value);
    const struct node *said = node_get(node, "value");
    if (!said || said->kind == NODE_NULL)
        reader_fault(r, CODE_REQUIRED, node->at, NULL, "'%s' is a map without 'value'", what);
}

static void type(struct reader *r, const struct node *node, void *to) {
    struct record *record = to;
    one_value(r, node, "type", type_fields, &record->type);
    const struct node *others = node_get(node, "others");
    if (others) texts(r, others, "others", &record->others);
}

static void attributes(struct reader *r, const struct node *node, void *to) {
    struct record *record = to;
    if (node->kind != NODE_MAP) {
        reader_fault(r, CODE_TYPE, node->at, NULL, "'attributes' wants a map, not %s", node_kind_name(node));
        return;
    }
    size_t room = 0;
    for (size_t i = 0; i < node->count; i++) room += read_items(node->members[i].value);
    record->attributes = arena_array(r->arena, room + 1, sizeof *record->attributes);
    for (size_t i = 0; i < node->count; i++) {
        const struct member *member = &node->members[i];
        struct nearest nearest = nearest_start(member->key);
        const char *known = NULL;
        for (size_t k = 0; attribute_names[k]; k++) {
            nearest_offer(&nearest, attribute_names[k]);
            if (text_same(attribute_names[k], member->key)) known = attribute_names[k];
        }
        if (!known) {
            reader_fault(r, CODE_UNKNOWN_KEY, member->key_at, nearest_hint(r->arena, &nearest),
                         "there is no attribute '%s'", member->key);
            continue;
        }
        if (member->value->kind == NODE_NULL) continue;
        for (size_t k = 0; k < read_items(member->value); k++) {
            struct value *value = &record->attributes[record->attribute_count];
            *value = (struct value){.name = known};
            one_value(r, read_item(member->value, k), known, value_fields, value);
            record->attribute_count += value->value != NULL;
        }
    }
}

// --- dates and the listing as it stands ---

static void year_from(struct reader *r, const struct node *node, void *to) {
    ((struct record *)to)->year_from = read_whole(r, node, "from", 1);
}
static void year_to(struct reader *r, const struct node *node, void *to) {
    ((struct record *)to)->year_to = read_whole(r, node, "to", 1);
}
static void year_because(struct reader *r, const struct node *node, void *to) {
    ((struct record *)to)->year_because = read_text(r, node, "because");
}
static const struct field date_fields[] = {
    {"from", year_from}, {"to", year_to}, {"because", year_because}, {NULL, NULL}};

static void dates(struct reader *r, const struct node *node, void *to) {
    struct record *record = to;
    if (node->kind != NODE_MAP) {
        reader_fault(r, CODE_TYPE, node->at, "dates: {from: 1958, to: 1958}", "'dates' wants a map, not %s",
                     node_kind_name(node));
        return;
    }
    fields_read(r, date_fields, node, record);
    if (record->year_to && record->year_from > record->year_to)
        reader_fault(r, CODE_VALUE, node->at, "the earlier year first", "'dates' ends before it begins");
}

#define LISTING_FIELD(field)                                                                                 \
    static void listing_##field(struct reader *r, const struct node *node, void *to) {                       \
        ((struct present_listing *)to)->field = read_text(r, node, #field);                                  \
    }
LISTING_FIELD(title)
LISTING_FIELD(description)
LISTING_FIELD(price)
LISTING_FIELD(currency)
LISTING_FIELD(listed)
LISTING_FIELD(where)
static const struct field listing_fields[] = {{"title", listing_title},
                                              {"description", listing_description},
                                              {"price", listing_price},
                                              {"currency", listing_currency},
                                              {"listed", listing_listed},
                                              {"where", listing_where},
                                              {NULL, NULL}};

static void listing(struct reader *r, const struct node *node, void *to) {
    struct record *record = to;
    if (node->kind != NODE_MAP) {
        reader_fault(r, CODE_TYPE, node->at, NULL, "'listing' wants a map, not %s", node_kind_name(node));
        return;
    }
    record->has_listing = true;
    fields_read(r, listing_fields, node, &record->listing);
}

static void asides(struct reader *r, const struct node *node, void *to) {
    (void)r;
    ((struct record *)to)->asides = node;
}
static void unread(struct reader *r, const struct node *node, void *to) {
    (void)r;
    ((struct record *)to)->unread = node;
}
static void own(struct reader *r, const struct node *node, void *to) {
    if (node->kind != NODE_MAP)
        reader_fault(r, CODE_TYPE, node->at, "own: {bin: A4}", "'own' wants a map, not %s",
                     node_kind_name(node));
    ((struct record *)to)->own = node;
}

static const struct field record_fields[] = {{"id", id},
                                             {"notes", NULL},
                                             {"type", type},
                                             {"family", family},
                                             {"attributes", attributes},
                                             {"flaws", list_flaws},
                                             {"clear", list_clear},
                                             {"unchecked", unchecked},
                                             {"includes", list_includes},
                                             {"count", count},
                                             {"measurements", list_measurements},
                                             {"marks", list_marks},
                                             {"fits", list_fits},
                                             {"dates", dates},
                                             {"listing", listing},
                                             {"photos", list_photos},
                                             {"asides", asides},
                                             {"unread", unread},
                                             {"own", own},
                                             {NULL, NULL}};

bool record_read(struct arena *arena, const struct ruleset *rules, const struct node *tree,
                 enum locale locale, size_t number, struct record *record, struct diags *diags) {
    struct reader r = {arena, rules, locale, diags, NULL, true};
    *record = (struct record){.tree = tree, .at = tree->at};
    if (tree->kind != NODE_MAP) {
        reader_fault(&r, CODE_TYPE, tree->at, "a record is a map of keys such as 'type' and 'flaws'",
                     "a record wants a map, not %s", node_kind_name(tree));
        return false;
    }
    const struct node *notes = node_get(tree, "notes");
    if (notes && notes->kind != NODE_NULL) {
        // The seller's own words are never rewritten: spans are offsets into them as they stand.
        if (notes->kind != NODE_TEXT)
            read_text(&r, notes, "notes");
        else
            record->notes = r.notes = notes->text;
    }
    fields_read(&r, record_fields, tree, record);
    told_set(arena, record);
    if (!record->id) record->id = arena_format(arena, "item-%zu", number);
    return r.fine;
}

const struct value *record_stated(const struct record *record, const char *name) {
    for (size_t i = 0; i < record->attribute_count; i++) {
        const struct value *value = &record->attributes[i];
        if (text_same(value->name, name) && !value->of && value->sure == SURE_STATED) return value;
    }
    return NULL;
}
