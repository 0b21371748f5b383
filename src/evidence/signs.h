// SPDX-License-Identifier: MIT
// Which cautions a text calls for by words that stand together. Owner: the arena.
#ifndef EVIDENCE_SIGNS_H
#define EVIDENCE_SIGNS_H

#include "rules/scan.h"
#include "rules/signs.h"

// Fills `at` (signs->rule_count entries) with where each rule's sign stands in the text; what has no sign
// there stays empty. `own`: the same text with dots for what is not about the thing: the first words of a
// sign stand outside of that.
void signs_find(struct arena *arena, const struct signs *signs, const char *text, const char *own,
                size_t size, struct span *at);

#endif
