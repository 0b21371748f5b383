// SPDX-License-Identifier: MIT
// What a bound reads out of the words that it found. For dating.c only.
#ifndef EVIDENCE_DATING_READ_H
#define EVIDENCE_DATING_READ_H

#include "evidence/dating.h"

// Fills years, `told`, `wrong` and `counts` of a mark whose bound and words are set.
void dating_read(struct arena *arena, struct dated_mark *mark);

#endif
