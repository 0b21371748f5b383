// SPDX-License-Identifier: MIT
// Rules in words: what `rules check`, `rules show` and `rules describe` print.
#ifndef LISTING_RULES_TEXT_H
#define LISTING_RULES_TEXT_H

#include "listing/listing.h"

void rules_summary(struct buf *out, const struct proof_counts *counts, bool broken, bool statistics);
// The rule's own lines from its file, with place and pack. False (and a message with the nearest id) when
// there is none.
bool rules_show(struct arena *arena, const struct ruleset *rules, const char *id, struct buf *out,
                struct diags *diags);
// Every kind and key from the schema table.
void rules_describe(struct arena *arena, struct buf *out);
// The same as a JSON Schema (draft 2020-12) for editors.
void rules_schema_json(struct arena *arena, struct buf *out);

#endif
