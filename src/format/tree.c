// SPDX-License-Identifier: MIT
// Looking into trees and building them. Invariant: the members array of a map or list of n members has room
// for the next power of two (at least four), so that a node needs no field for its room.
#include "format/tree.h"

#include <string.h>

#include "format/check.h"
#include "text/order.h"

enum { MEMBERS_FIRST = 4 };

struct node *node_copy(struct arena *arena, const struct node *node) {
    struct node *copy = arena_alloc(arena, sizeof *copy);
    *copy = *node;
    if (node->text) copy->text = arena_copy(arena, node->text, node->size);
    size_t room = MEMBERS_FIRST;
    while (room < node->count) room *= 2;
    copy->members = node->count ? arena_array(arena, room, sizeof *copy->members) : NULL;
    for (size_t i = 0; i < node->count; i++) {
        const struct member *member = &node->members[i];
        copy->members[i] = *member;
        if (member->key) copy->members[i].key = arena_string(arena, member->key);
        copy->members[i].value = node_copy(arena, member->value);
    }
    return copy;
}

const struct node *node_get(const struct node *map, const char *key) {
    if (!map || map->kind != NODE_MAP) return NULL;
    for (size_t i = 0; i < map->count; i++) {
        if (strcmp(map->members[i].key, key) == 0) return map->members[i].value;
    }
    return NULL;
}

static bool same_word(const char *text, const char *word) {
    for (; *word; text++, word++) {
        char low = *text >= 'A' && *text <= 'Z' ? (char)(*text + ('a' - 'A')) : *text;
        if (low != *word) return false;
    }
    return !*text;
}

bool node_bool(const struct node *node, bool *value) {
    if (node->kind != NODE_BOOL && !(node->kind == NODE_TEXT && node->plain)) return false;
    bool yes = same_word(node->text, "true") || same_word(node->text, "yes");
    if (!yes && !same_word(node->text, "false") && !same_word(node->text, "no")) return false;
    *value = yes;
    return true;
}

const char *node_kind_name(const struct node *node) {
    static const char *const NAMES[] = {"nothing", "true or false", "a number", "text", "a list", "a map"};
    return NAMES[node ? node->kind : NODE_NULL];
}

static struct node *node_new(struct arena *arena, enum node_kind kind, const char *text, size_t size) {
    struct node *node = arena_room(arena, sizeof *node);
    *node = (struct node){.kind = kind, .text = text, .size = size};
    return node;
}

struct node *node_text(struct arena *arena, const char *text) {
    size_t size = strlen(text);
    return node_new(arena, NODE_TEXT, arena_copy(arena, text, size), size);
}

struct node *node_whole(struct arena *arena, long long value) {
    enum { DIGITS_MOST = 20 };
    char digits[DIGITS_MOST + 1];
    char *at = digits + DIGITS_MOST;
    unsigned long long left = value < 0 ? 0 - (unsigned long long)value : (unsigned long long)value;
    do {
        *--at = (char)('0' + left % 10);
        left /= 10;
    } while (left);
    if (value < 0) *--at = '-';
    size_t size = (size_t)(digits + DIGITS_MOST - at);
    return node_new(arena, NODE_NUMBER, arena_copy(arena, at, size), size);
}

struct node *node_bool_new(struct arena *arena, bool value) {
    return node_new(arena, NODE_BOOL, value ? "true" : "false", value ? 4 : 5);
}

struct node *node_list(struct arena *arena) {
    return node_new(arena, NODE_LIST, NULL, 0);
}

struct node *node_map(struct arena *arena) {
    return node_new(arena, NODE_MAP, NULL, 0);
}

void node_put_at(struct arena *arena, struct node *into, const char *key, struct place key_at,
                 struct node *value) {
    size_t count = into->count;
    bool full = count == 0 || (count >= MEMBERS_FIRST && (count & (count - 1)) == 0);
    if (full) {
        size_t room = count; // from nothing, arena_grow() makes room for four
        into->members = arena_grow(arena, into->members, count, &room, sizeof *into->members);
    }
    struct member member = {key, key_at, value};
    into->members[into->count++] = member;
}

void node_push(struct arena *arena, struct node *list, struct node *value) {
    struct place nowhere = {0};
    node_put_at(arena, list, NULL, nowhere, value);
}

void node_put(struct arena *arena, struct node *map, const char *key, struct node *value) {
    for (size_t i = 0; i < map->count; i++) {
        if (!text_same(map->members[i].key, key)) continue;
        map->members[i].value = value; // a map never holds a key twice
        return;
    }
    struct place nowhere = {0};
    node_put_at(arena, map, arena_string(arena, key), nowhere, value);
}
