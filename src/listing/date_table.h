// SPDX-License-Identifier: MIT
// All that is known of the years of marks and of words of age, with its sources.
#ifndef LISTING_DATE_TABLE_H
#define LISTING_DATE_TABLE_H

#include "format/tree.h"
#include "rules/ruleset.h"
#include "text/buf.h"

void date_table_text(struct buf *out, const struct ruleset *rules);
struct node *date_table_tree(struct arena *arena, const struct ruleset *rules);

#endif
