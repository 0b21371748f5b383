// SPDX-License-Identifier: MIT
// The thing as schema.org/Product, for the page. Only what the record states and no claim rule bars; a figure
// without a property of its own there stands as a named one. Unit codes are those of UN/CEFACT's list that
// schema.org asks for; a unit without a code here is given by its name.
#include <string.h>

#include "listing/listing.h"
#include "text/order.h"

struct linker {
    struct arena *arena;
    const struct listing *listing;
    const struct record *record;
    struct node *product;
};

static struct node *typed(struct arena *arena, const char *type) {
    struct node *map = node_map(arena);
    node_put(arena, map, "@type", node_text(arena, type));
    return map;
}

static void put(struct arena *arena, struct node *map, const char *key, const char *text) {
    if (text && *text) node_put(arena, map, key, node_text(arena, text));
}

// One value, or a list where the record has several.
static void put_values(struct linker *k, const char *name, const char *type) {
    struct node *list = node_list(k->arena);
    for (size_t i = 0; i < k->record->attribute_count; i++) {
        const struct value *value = &k->record->attributes[i];
        if (!text_same(value->name, name) || value->of || value->sure != SURE_STATED) continue;
        if (claims_bar(k->listing->claims, value->value)) continue;
        struct node *node = node_text(k->arena, value->value);
        if (type) {
            node = typed(k->arena, type);
            put(k->arena, node, "name", value->value);
        }
        node_push(k->arena, list, node);
    }
    if (list->count) node_put(k->arena, k->product, name, list->count == 1 ? list->members[0].value : list);
}

static const char *unit_code(const struct unit *unit) {
    static const char *const codes[][2] = {{"in", "INH"}, {"cm", "CMT"}, {"mm", "MMT"}, {"g", "GRM"},
                                           {"kg", "KGM"}, {"lb", "LBR"}, {"oz", "ONZ"}};
    for (size_t i = 0; i < sizeof codes / sizeof *codes; i++)
        if (text_same(unit->name, codes[i][0])) return codes[i][1];
    return NULL;
}

static void put_figure(struct linker *k, struct node *map, const struct measurement *m) {
    if (m->range) {
        node_put(k->arena, map, "minValue", node_real(k->arena, m->from));
        node_put(k->arena, map, "maxValue", node_real(k->arena, m->to));
    } else
        node_put(k->arena, map, "value", node_real(k->arena, m->figure.value));
    const char *code = unit_code(m->figure.unit);
    put(k->arena, map, code ? "unitCode" : "unitText", code ? code : m->figure.unit->name);
    if (m->figure.about) put(k->arena, map, "description", "about");
}

static bool is_property(const struct measurement *m) {
    static const char *const names[] = {"height", "width", "depth", "weight"};
    for (size_t i = 0; !m->of && i < sizeof names / sizeof *names; i++)
        if (text_same(m->dimension, names[i])) return true;
    return false;
}

static void put_measures(struct linker *k) {
    struct node *others = node_list(k->arena);
    for (size_t i = 0; i < k->record->measurement_count; i++) {
        const struct measurement *m = &k->record->measurements[i];
        bool own = is_property(m) && !node_get(k->product, m->dimension);
        struct node *map = typed(k->arena, own ? "QuantitativeValue" : "PropertyValue");
        if (!own)
            put(k->arena, map, "name",
                m->of ? arena_format(k->arena, "%s of %s", m->dimension, m->of) : m->dimension);
        put_figure(k, map, m);
        if (own)
            node_put(k->arena, k->product, m->dimension, map);
        else
            node_push(k->arena, others, map);
    }
    if (others->count) node_put(k->arena, k->product, "additionalProperty", others);
}

static void put_fits(struct linker *k) {
    struct node *list = node_list(k->arena);
    for (size_t i = 0; i < k->record->fit_count; i++) {
        const struct fit *fit = &k->record->fits[i];
        if (fit->sure != SURE_STATED) continue;
        struct node *map = typed(k->arena, "Product");
        const char *space = fit->brand && fit->model ? " " : "";
        put(k->arena, map, "name",
            arena_format(k->arena, "%s%s%s", fit->brand ? fit->brand : "", space,
                         fit->model ? fit->model : ""));
        if (fit->brand) {
            struct node *brand = typed(k->arena, "Brand");
            put(k->arena, brand, "name", fit->brand);
            node_put(k->arena, map, "brand", brand);
        }
        put(k->arena, map, "model", fit->model);
        node_push(k->arena, list, map);
    }
    if (list->count)
        node_put(k->arena, k->product, "isAccessoryOrSparePartFor",
                 list->count == 1 ? list->members[0].value : list);
}

static void put_offer(struct linker *k, const char *condition) {
    const struct present_listing *now = &k->record->listing;
    if (!k->record->has_listing || !now->price) return;
    // schema.org wants the price as a bare number; "make an offer" is none.
    struct node price = {.kind = NODE_TEXT, .plain = true, .text = now->price, .size = strlen(now->price)};
    double value = 0;
    if (!node_number(&price, &value) || value <= 0) return;
    struct node *offer = typed(k->arena, "Offer");
    put(k->arena, offer, "price", now->price);
    put(k->arena, offer, "priceCurrency", now->currency);
    put(k->arena, offer, "itemCondition", condition);
    node_put(k->arena, k->product, "offers", offer);
}

struct node *listing_linked_data(struct arena *arena, const struct listing *listing) {
    if (!*listing->title || !*listing->description) return NULL;
    struct linker k = {arena, listing, listing->record, node_map(arena)};
    put(arena, k.product, "@context", "https://schema.org");
    put(arena, k.product, "@type", "Product");
    put(arena, k.product, "sku", listing->record->id);
    put(arena, k.product, "name", listing->title);
    put(arena, k.product, "description", listing->description);
    put_values(&k, "brand", "Brand");
    static const char *const names[] = {"model", "mpn", "gtin", "material", "color", "pattern", "size"};
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) put_values(&k, names[i], NULL);
    put_measures(&k);
    const char *condition = arena_format(arena, "https://schema.org/%s", listing->grading.schema_org);
    put(arena, k.product, "itemCondition", condition);
    put_fits(&k);
    put_offer(&k, condition);
    return k.product;
}
