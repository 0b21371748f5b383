// SPDX-License-Identifier: MIT
// One tree for every input form (YAML, JSON, a CSV row), every value with its place in the user's own file.
// Owner: the arena it was read into. Map keys keep the order of the file; a duplicate key is an error of the
// reader.
#ifndef FORMAT_TREE_H
#define FORMAT_TREE_H

#include <stdbool.h>
#include <stddef.h>

#include "text/arena.h"
#include "text/source.h"

enum node_kind { NODE_NULL, NODE_BOOL, NODE_NUMBER, NODE_TEXT, NODE_LIST, NODE_MAP };

struct node {
    enum node_kind kind;
    bool plain; // an unquoted YAML scalar or a CSV cell: may be read as number or yes/no where the schema
                // wants one
    const char *text;       // scalars: the text as written after unescaping (a number as its own digits),
                            // NUL-ended, valid UTF-8
    size_t size;            // bytes of `text`
    struct member *members; // maps and lists; a list's members have no key
    size_t count;
    struct place at;
};

struct member {
    const char *key; // NULL in a list
    struct place key_at;
    struct node *value;
};

// The same tree in memory of its own.
struct node *node_copy(struct arena *arena, const struct node *node);

// NULL when the key is absent.
const struct node *node_get(const struct node *map, const char *key);
// Reads a number (NODE_NUMBER, or plain text that is one); false when it is none. Whole JSON number grammar,
// no locale.
bool node_number(const struct node *node, double *value);
// Reads true/false/yes/no; false when it is none.
bool node_bool(const struct node *node, bool *value);
// "a list", "text" …, for messages.
const char *node_kind_name(const struct node *node);

// Making trees by hand (outputs are built as trees, then written in any form).
struct node *node_text(struct arena *arena, const char *text);
struct node *node_whole(struct arena *arena, long long value);
struct node *node_real(struct arena *arena, double value); // shortest digits that read back the same
struct node *node_bool_new(struct arena *arena, bool value);
struct node *node_list(struct arena *arena);
struct node *node_map(struct arena *arena);
void node_push(struct arena *arena, struct node *list, struct node *value);
void node_put(struct arena *arena, struct node *map, const char *key, struct node *value);

#endif
