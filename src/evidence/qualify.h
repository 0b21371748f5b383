// SPDX-License-Identifier: MIT
// The wording with which a claim word may be told. Private to the room.
#ifndef EVIDENCE_QUALIFY_H
#define EVIDENCE_QUALIFY_H

#include "evidence/claims.h"

// Settles `written` of a word without evidence; `mark` is the one that its rule's `marked` finds, or NULL.
void qualify(struct arena *arena, struct claim_found *found, const char *mark);
// The next place of a whole word, one or many, in any case.
bool qualify_stands_at(const char *text, size_t from, const char *word, struct span *at);
// Does what stands at `at` stand inside the word with its qualifier?
bool qualify_is_written(const char *text, struct span at, const char *written);

#endif
