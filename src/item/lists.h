// SPDX-License-Identifier: MIT
// Readers of a record's lists, for the table of keys in read.c. `to` is the struct record.
#ifndef ITEM_LISTS_H
#define ITEM_LISTS_H

#include "item/fields.h"

void list_flaws(struct reader *r, const struct node *node, void *to);
void list_clear(struct reader *r, const struct node *node, void *to);
void list_includes(struct reader *r, const struct node *node, void *to);
void list_measurements(struct reader *r, const struct node *node, void *to);
void list_marks(struct reader *r, const struct node *node, void *to);
void list_fits(struct reader *r, const struct node *node, void *to);
void list_photos(struct reader *r, const struct node *node, void *to);

#endif
