// SPDX-License-Identifier: MIT
// Clauses to sentences. Private to the room.
#ifndef DISCLOSURE_SENTENCE_H
#define DISCLOSURE_SENTENCE_H

#include "disclosure/clause.h"

// Adds the sentences of `clauses` (in the order of the paragraph).
void tell_clauses(struct disclosure_maker *maker, const struct clause *clauses, size_t count);

#endif
