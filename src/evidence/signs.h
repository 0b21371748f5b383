// SPDX-License-Identifier: MIT
// Which cautions a text calls for by words that stand together. Owner: the arena.
#ifndef EVIDENCE_SIGNS_H
#define EVIDENCE_SIGNS_H

#include "rules/scan.h"
#include "rules/signs.h"

// Fills `at` (signs->rule_count entries) with where each rule's sign stands in the text; what has no sign
// there stays empty.
void signs_find(struct arena *arena, const struct signs *signs, const char *text, size_t size,
                struct span *at);

#endif
