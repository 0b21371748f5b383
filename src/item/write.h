// SPDX-License-Identifier: MIT
// The record as a tree in the shape that records are read in: what is written here and read back is the same
// record. Owner: the arena.
#ifndef ITEM_WRITE_H
#define ITEM_WRITE_H

#include "format/tree.h"
#include "item/record.h"

struct node *record_tree(struct arena *arena, const struct record *record);

#endif
