// SPDX-License-Identifier: MIT
// Fills the struct of a rule from its tree, checked against the schema. Reports every fault, not only the
// first.
#ifndef RULES_BIND_H
#define RULES_BIND_H

#include "format/tree.h"
#include "rules/schema.h"
#include "text/diag.h"

// `map` is the whole rule; keys named in `besides` (the kind's own key) are passed over. False when a fault
// was found. The struct's texts point into the tree: both live in the same arena.
bool bind_keys(struct arena *arena, const struct key_spec *keys, const struct node *map, const char *besides,
               void *to, struct diags *diags);

#endif
