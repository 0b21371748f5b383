// SPDX-License-Identifier: MIT
// One small function a key type; the table decides which. Offsets come from the schema, so a field is named
// once.
#include "rules/bind.h"

#include <string.h>

#include "text/hint.h"
#include "rules/model.h"
#include "text/order.h"

struct binder {
    struct arena *arena;
    struct diags *diags;
    bool fine;
};

static void fault(struct binder *b, enum code code, struct place at, const char *hint, const char *message) {
    b->fine = false;
    diags_add(b->diags, code, at, hint, "%s", message);
}

static void wrong_type(struct binder *b, const struct key_spec *key, const struct node *node,
                       const char *want) {
    b->fine = false;
    diags_add(b->diags, CODE_RULE_TYPE, node->at, NULL, "'%s' wants %s, not %s", key->name, want,
              node_kind_name(node));
}

static bool is_text(const struct node *node) {
    return node->kind == NODE_TEXT || node->kind == NODE_NUMBER;
}

static void bind_text(struct binder *b, const struct key_spec *key, const struct node *node, void *field) {
    if (!is_text(node)) {
        wrong_type(b, key, node, "text");
        return;
    }
    if (!node->size && !text_same(key->name, "title"))
        fault(b, CODE_RULE_VALUE, node->at, NULL, "empty text");
    *(const char **)field = arena_copy(b->arena, node->text, node->size);
}

static void bind_texts(struct binder *b, const struct key_spec *key, const struct node *node, void *field) {
    struct texts *texts = field;
    if (is_text(node)) {
        texts->at = arena_array(b->arena, 1, sizeof *texts->at);
        texts->at[texts->count++] = arena_copy(b->arena, node->text, node->size);
        return;
    }
    if (node->kind != NODE_LIST) {
        wrong_type(b, key, node, "a list of texts");
        return;
    }
    texts->at = arena_array(b->arena, node->count + 1, sizeof *texts->at);
    for (size_t i = 0; i < node->count; i++) {
        const struct node *item = node->members[i].value;
        if (!is_text(item))
            wrong_type(b, key, item, "texts in its list");
        else if (!item->size)
            fault(b, CODE_RULE_VALUE, item->at, NULL, "empty text");
        else
            texts->at[texts->count++] = arena_copy(b->arena, item->text, item->size);
    }
}

static bool whole(const struct node *node, int least, int most, int *value) {
    double number;
    if (!node_number(node, &number) || number < least || number > most || number != (double)(int)number)
        return false;
    *value = (int)number;
    return true;
}

static void bind_whole(struct binder *b, const struct key_spec *key, const struct node *node, void *field) {
    if (whole(node, 0, 1000, field)) return;
    b->fine = false;
    diags_add(b->diags, CODE_RULE_TYPE, node->at, NULL, "'%s' wants a whole number from 0 to 1000",
              key->name);
}

static void bind_year(struct binder *b, const struct key_spec *key, const struct node *node, void *field) {
    if (whole(node, 1000, 2999, field)) return;
    b->fine = false;
    diags_add(b->diags, CODE_RULE_TYPE, node->at, NULL, "'%s' wants a year of four digits", key->name);
}

static void bind_yes_no(struct binder *b, const struct key_spec *key, const struct node *node, void *field) {
    if (!node_bool(node, field)) wrong_type(b, key, node, "true or false");
}

static void bind_choice(struct binder *b, const struct key_spec *key, const struct node *node, void *field) {
    if (!is_text(node) && node->kind != NODE_BOOL) {
        wrong_type(b, key, node, "one of its words");
        return;
    }
    struct nearest nearest = nearest_start(node->text);
    struct buf words = buf_start(b->arena);
    for (int i = 0; key->choices[i]; i++) {
        if (text_same(key->choices[i], node->text)) {
            *(int *)field = key->first + i;
            return;
        }
        nearest_offer(&nearest, key->choices[i]);
        buf_format(&words, "%s%s", i ? ", " : "", key->choices[i]);
    }
    const char *hint = nearest_hint(b->arena, &nearest);
    if (!hint) hint = arena_format(b->arena, "it takes one of: %s", words.at);
    b->fine = false;
    diags_add(b->diags, CODE_RULE_VALUE, node->at, hint, "'%s' cannot be '%s'", key->name, node->text);
}

static bool slot_or_fault(struct binder *b, const char *word, struct place at, enum slot *slot) {
    if (slot_of_name(word, slot)) return true;
    struct nearest nearest = nearest_start(word);
    for (int i = 0; i < SLOT_COUNT; i++) nearest_offer(&nearest, slot_name((enum slot)i));
    b->fine = false;
    diags_add(b->diags, CODE_RULE_VALUE, at, nearest_hint(b->arena, &nearest), "there is no slot '%s'", word);
    return false;
}

static void bind_slots(struct binder *b, const struct key_spec *key, const struct node *node, void *field) {
    struct slots *slots = field;
    if (node->kind != NODE_LIST) {
        wrong_type(b, key, node, "a list of slots");
        return;
    }
    bool seen[SLOT_COUNT] = {false};
    for (size_t i = 0; i < node->count; i++) {
        const struct node *item = node->members[i].value;
        enum slot slot;
        if (!is_text(item))
            wrong_type(b, key, item, "names of slots");
        else if (slot_or_fault(b, item->text, item->at, &slot)) {
            if (seen[slot])
                fault(b, CODE_RULE_VALUE, item->at, NULL, "this slot stands twice in the list");
            else
                slots->at[slots->count++] = slot;
            seen[slot] = true;
        }
    }
}

static void bind_tells(struct binder *b, const struct key_spec *key, const struct node *node, void *field) {
    int *tells = field;
    if (node->kind != NODE_MAP) {
        wrong_type(b, key, node, "a map from slot to number");
        return;
    }
    for (size_t i = 0; i < node->count; i++) {
        enum slot slot;
        const struct member *member = &node->members[i];
        if (slot_or_fault(b, member->key, member->key_at, &slot))
            bind_whole(b, key, member->value, &tells[slot]);
    }
}

static void bind_group(struct binder *b, const struct key_spec *key, const struct node *node, void *base) {
    if (node->kind != NODE_MAP)
        wrong_type(b, key, node, "a map");
    else if (!bind_keys(b->arena, key->keys, node, NULL, base, b->diags))
        b->fine = false;
}

static void bind_items(struct binder *b, const struct key_spec *key, const struct node *node, char *base) {
    if (node->kind != NODE_LIST) {
        wrong_type(b, key, node, "a list of maps");
        return;
    }
    char *items = arena_array(b->arena, node->count + 1, key->size);
    size_t count = 0;
    for (size_t i = 0; i < node->count; i++) {
        const struct node *item = node->members[i].value;
        if (item->kind != NODE_MAP)
            wrong_type(b, key, item, "maps in its list");
        else if (bind_keys(b->arena, key->keys, item, NULL, items + count * key->size, b->diags))
            count++;
        else
            b->fine = false;
    }
    *(void **)(base + key->offset) = items;
    memcpy(base + key->count_offset, &count, sizeof count);
}

static void bind_pairs(struct binder *b, const struct key_spec *key, const struct node *node, char *base) {
    if (node->kind != NODE_MAP) {
        wrong_type(b, key, node, "a map of texts");
        return;
    }
    const char **pairs = arena_array(b->arena, node->count + 1, key->size);
    for (size_t i = 0; i < node->count; i++) {
        pairs[2 * i] = arena_string(b->arena, node->members[i].key);
        bind_text(b, key, node->members[i].value, &pairs[2 * i + 1]);
    }
    *(const char ***)(base + key->offset) = pairs;
    memcpy(base + key->count_offset, &node->count, sizeof node->count);
}

static void bind_one(struct binder *b, const struct key_spec *key, const struct node *node, char *base) {
    char *field = base + key->offset;
    switch (key->type) {
    case KEY_TEXT:
        bind_text(b, key, node, field);
        break;
    case KEY_TEXTS:
        bind_texts(b, key, node, field);
        break;
    case KEY_WHOLE:
        bind_whole(b, key, node, field);
        break;
    case KEY_YEAR:
        bind_year(b, key, node, field);
        break;
    case KEY_YES_NO:
        bind_yes_no(b, key, node, field);
        break;
    case KEY_CHOICE:
        bind_choice(b, key, node, field);
        break;
    case KEY_SLOTS:
        bind_slots(b, key, node, field);
        break;
    case KEY_TELLS:
        bind_tells(b, key, node, field);
        break;
    case KEY_GROUP:
        bind_group(b, key, node, base);
        break;
    case KEY_ITEMS:
        bind_items(b, key, node, base);
        break;
    case KEY_PAIRS:
        bind_pairs(b, key, node, base);
        break;
    case KEY_RECORD:
        if (node->kind != NODE_MAP) wrong_type(b, key, node, "an item record");
        *(const struct node **)field = node_copy(b->arena, node);
        break;
    }
}

static void unknown_key(struct binder *b, const struct key_spec *keys, const struct member *member) {
    struct nearest nearest = nearest_start(member->key);
    for (const struct key_spec *key = keys; key->name; key++) nearest_offer(&nearest, key->name);
    b->fine = false;
    diags_add(b->diags, CODE_RULE_KEY, member->key_at, nearest_hint(b->arena, &nearest), "unknown key '%s'",
              member->key);
}

bool bind_keys(struct arena *arena, const struct key_spec *keys, const struct node *map, const char *besides,
               void *to, struct diags *diags) {
    struct binder b = {arena, diags, true};
    for (size_t i = 0; i < map->count; i++) {
        const struct member *member = &map->members[i];
        if (besides && text_same(member->key, besides)) continue;
        const struct key_spec *key = keys;
        while (key->name && !text_same(key->name, member->key)) key++;
        if (key->name)
            bind_one(&b, key, member->value, to);
        else
            unknown_key(&b, keys, member);
    }
    for (const struct key_spec *key = keys; key->name; key++)
        if (key->required && !node_get(map, key->name)) {
            b.fine = false;
            diags_add(diags, CODE_RULE_REQUIRED, map->at, key->help, "the key '%s' is missing", key->name);
        }
    return b.fine;
}
