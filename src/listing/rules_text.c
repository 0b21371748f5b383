// SPDX-License-Identifier: MIT
// Everything here is read off the schema table or off the rule's own file; nothing is written down a second
// time.
#include "listing/rules_text.h"

#include <string.h>

#include "format/write.h"
#include "text/hint.h"
#include "text/order.h"
#include "rules/schema.h"

static double share(size_t part, size_t whole) {
    return whole ? (double)part / (double)whole : 1.0;
}

void rules_summary(struct buf *out, const struct proof_counts *c, bool broken, bool statistics) {
    buf_format(out,
               "%s: %zu flaws, %zu families, %zu claims, %zu bounds, %zu cautions; %zu hits, %zu misses, %zu "
               "gaps, %zu "
               "examples run\n",
               broken ? "not well" : "all well", c->flaws, c->families, c->claims, c->bounds, c->cautions,
               c->hits, c->misses, c->gaps, c->examples);
    if (!statistics) return;
    buf_format(out, "things named by the families: %zu\nchecks: %zu\n", c->things, c->checks);
    buf_format(out, "misses that hold a word of their rule: %zu of %zu (%.3f)\n", c->misses_with_word,
               c->misses_weighed, share(c->misses_with_word, c->misses_weighed));
    buf_format(out, "families most alike by their checks: %s and %s share %.3f\n",
               c->alike[0] ? c->alike[0] : "none", c->alike[1] ? c->alike[1] : "none", c->likeness);
}

// --- show ---

static void show_lines(struct buf *out, const struct rule *rule, const char *kind) {
    const struct source *source = rule->at.source;
    struct line_column where = source_locate(source, rule->at.from);
    buf_format(out, "%s:%zu: %s %s, pack %s\n", source->name, where.line, kind, rule->id, rule->pack);
    size_t end = where.line_to;
    // A rule ends where the next line begins at the margin.
    while (end < source->size &&
           !(end + 1 < source->size && source->text[end] == '\n' && source->text[end + 1] != ' ' &&
             source->text[end + 1] != '\n' && source->text[end + 1] != '\r'))
        end++;
    buf_add(out, source->text + where.line_from, end - where.line_from);
    buf_byte(out, '\n');
}

bool rules_show(struct arena *arena, const struct ruleset *rules, const char *id, struct buf *out,
                struct diags *diags) {
    const char *space = strchr(id, ' ');
    const char *kind = space ? arena_copy(arena, id, (size_t)(space - id)) : NULL;
    const char *name = space ? space + 1 : id;
    struct nearest nearest = nearest_start(name);
    bool found = false;
#define SHOW(list, number, word)                                                                             \
    for (size_t i = 0; i < rules->number; i++) {                                                             \
        const struct rule *rule = &rules->list[i]->rule;                                                     \
        nearest_offer(&nearest, rule->id);                                                                   \
        if ((kind && !text_same(kind, word)) || !text_same(rule->id, name)) continue;                        \
        show_lines(out, rule, word);                                                                         \
        found = true;                                                                                        \
    }
    SHOW(packs, pack_count, "pack")
    SHOW(flaws, flaw_count, "flaw")
    SHOW(families, family_count, "family")
    SHOW(claims, claim_count, "claim")
    SHOW(bounds, bound_count, "bound")
    SHOW(cautions, caution_count, "caution")
    SHOW(groups, group_count, "group")
#undef SHOW
    if (!found)
        diags_add(diags, CODE_USAGE, (struct place){NULL, 0, 0}, nearest_hint(arena, &nearest),
                  "there is no rule '%s'", id);
    return found;
}

// --- describe ---

static const char *type_words(const struct key_spec *key) {
    switch (key->type) {
    case KEY_TEXT:
        return "text";
    case KEY_TEXTS:
        return "texts";
    case KEY_WHOLE:
        return "whole number";
    case KEY_YEAR:
        return "year";
    case KEY_YES_NO:
        return "true or false";
    case KEY_CHOICE:
        return "one of";
    case KEY_SLOTS:
        return "list of slots";
    case KEY_TELLS:
        return "map of slot to number";
    case KEY_GROUP:
        return "map";
    case KEY_ITEMS:
        return "list of maps";
    case KEY_PAIRS:
        return "map of text to text";
    case KEY_RECORD:
        return "an item record";
    }
    return "";
}

static void describe_keys(struct buf *out, const struct key_spec *keys, int depth) {
    for (const struct key_spec *key = keys; key->name; key++) {
        buf_format(out, "%*s%s: %s", 2 * depth, "", key->name, type_words(key));
        for (int i = 0; key->type == KEY_CHOICE && key->choices[i]; i++)
            buf_format(out, " %s", key->choices[i]);
        buf_format(out, "%s - %s\n", key->required ? " (required)" : "", key->help);
        if (key->keys) describe_keys(out, key->keys, depth + 1);
    }
}

void rules_describe(struct arena *arena, struct buf *out) {
    (void)arena;
    buf_text(
        out,
        "A rule file is a list of rules. A rule is a map whose first key is its kind and gives its id.\n");
    for (int i = 0; i < RULE_KIND_COUNT; i++) {
        const struct kind_spec *kind = schema_kind((enum rule_kind)i);
        buf_format(out, "\n%s: %s\n", kind->name, kind->help);
        describe_keys(out, kind->keys, 1);
    }
    buf_text(out, "\nslots, for order, tells and wants:\n");
#define X(symbol, name, help) buf_text(out, "  " name ": " help "\n");
#include "rules/slots.def"
#undef X
}

// --- JSON Schema ---

static struct node *schema_of_keys(struct arena *arena, const struct key_spec *keys, const char *kind);

static struct node *typed(struct arena *arena, const char *type) {
    struct node *map = node_map(arena);
    node_put(arena, map, "type", node_text(arena, type));
    return map;
}

static struct node *list_of(struct arena *arena, struct node *items) {
    struct node *map = typed(arena, "array");
    node_put(arena, map, "items", items);
    return map;
}

static struct node *slot_schema(struct arena *arena) {
    struct node *map = typed(arena, "string"), *names = node_list(arena);
    for (int i = 0; i < SLOT_COUNT; i++) node_push(arena, names, node_text(arena, slot_name((enum slot)i)));
    node_put(arena, map, "enum", names);
    return map;
}

static struct node *choice_schema(struct arena *arena, const struct key_spec *key) {
    struct node *map = typed(arena, "string"), *names = node_list(arena);
    for (int i = 0; key->choices[i]; i++) node_push(arena, names, node_text(arena, key->choices[i]));
    node_put(arena, map, "enum", names);
    return map;
}

static struct node *texts_schema(struct arena *arena) {
    struct node *map = node_map(arena), *either = node_list(arena);
    node_push(arena, either, typed(arena, "string"));
    node_push(arena, either, list_of(arena, typed(arena, "string")));
    node_put(arena, map, "anyOf", either);
    return map;
}

static struct node *map_of(struct arena *arena, struct node *values) {
    struct node *map = typed(arena, "object");
    node_put(arena, map, "additionalProperties", values);
    return map;
}

static struct node *key_schema(struct arena *arena, const struct key_spec *key) {
    switch (key->type) {
    case KEY_TEXT:
        return typed(arena, "string");
    case KEY_TEXTS:
        return texts_schema(arena);
    case KEY_WHOLE:
    case KEY_YEAR:
        return typed(arena, "integer");
    case KEY_YES_NO:
        return typed(arena, "boolean");
    case KEY_CHOICE:
        return choice_schema(arena, key);
    case KEY_SLOTS:
        return list_of(arena, slot_schema(arena));
    case KEY_TELLS:
        return map_of(arena, typed(arena, "integer"));
    case KEY_GROUP:
        return schema_of_keys(arena, key->keys, NULL);
    case KEY_ITEMS:
        return list_of(arena, schema_of_keys(arena, key->keys, NULL));
    case KEY_PAIRS:
        return map_of(arena, typed(arena, "string"));
    case KEY_RECORD:
        return typed(arena, "object");
    }
    return node_map(arena);
}

static struct node *schema_of_keys(struct arena *arena, const struct key_spec *keys, const char *kind) {
    struct node *map = typed(arena, "object"), *properties = node_map(arena), *required = node_list(arena);
    if (kind) {
        struct node *id = typed(arena, "string");
        node_put(arena, id, "pattern", node_text(arena, "^[a-z0-9-]+$"));
        node_put(arena, properties, kind, id);
        node_push(arena, required, node_text(arena, kind));
    }
    for (const struct key_spec *key = keys; key->name; key++) {
        struct node *schema = key_schema(arena, key);
        node_put(arena, schema, "description", node_text(arena, key->help));
        node_put(arena, properties, key->name, schema);
        if (key->required) node_push(arena, required, node_text(arena, key->name));
    }
    node_put(arena, map, "properties", properties);
    node_put(arena, map, "required", required);
    node_put(arena, map, "additionalProperties", node_bool_new(arena, false));
    return map;
}

void rules_schema_json(struct arena *arena, struct buf *out) {
    struct node *schema = node_map(arena), *kinds = node_list(arena), *items = node_map(arena);
    node_put(arena, schema, "$schema", node_text(arena, "https://json-schema.org/draft/2020-12/schema"));
    node_put(arena, schema, "title", node_text(arena, "asfound rule file"));
    node_put(arena, schema, "type", node_text(arena, "array"));
    for (int i = 0; i < RULE_KIND_COUNT; i++) {
        const struct kind_spec *kind = schema_kind((enum rule_kind)i);
        struct node *one = schema_of_keys(arena, kind->keys, kind->name);
        node_put(arena, one, "description", node_text(arena, kind->help));
        node_push(arena, kinds, one);
    }
    node_put(arena, items, "oneOf", kinds);
    node_put(arena, schema, "items", items);
    json_write_pretty(out, schema);
    buf_byte(out, '\n');
}
