// SPDX-License-Identifier: MIT
// What every reader refuses before and after parsing, whatever the form. Room-internal.
#ifndef FORMAT_CHECK_H
#define FORMAT_CHECK_H

#include <stdbool.h>

#include "format/tree.h"
#include "text/diag.h"

// The raw bytes: NUL, invalid UTF-8, control and invisible characters. True when there are none.
bool check_source(const struct source *source, struct diags *diags);
// A value after unescaping; `at` is its place. Line ends and tabs may stand in a value, not in a key.
bool check_value(const char *text, size_t size, struct place at, bool key, struct diags *diags);

// Finds duplicate keys of one map while it is read: a plain walk while small, a hash table beyond.
struct keys {
    size_t *slots;      // index of a member plus one
    size_t room, known; // members that are in the table
};
// The member of `map` that already has `key`, or NULL. Call before each single node_put_at() on the map.
const struct member *keys_find(struct keys *keys, struct arena *arena, const struct node *map,
                               const char *key);

// Adds to a list (`key` NULL) or map; all members arrays are grown here, so that their room follows from
// their count.
void node_put_at(struct arena *arena, struct node *into, const char *key, struct place key_at,
                 struct node *value);

#endif
