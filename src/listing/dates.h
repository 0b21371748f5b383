// SPDX-License-Identifier: MIT
// The years of marks, written: for people, and as a tree.
#ifndef LISTING_DATES_H
#define LISTING_DATES_H

#include "evidence/dating.h"
#include "format/tree.h"
#include "text/buf.h"

void dates_text(struct buf *out, const struct dating *dating);
// `alone`: with its findings, which a listing has among its own.
struct node *dates_tree(struct arena *arena, const struct dating *dating, bool alone);
// Is there anything to settle first: no year left, or a mark from the future?
bool dates_must(const struct dating *dating);

#endif
