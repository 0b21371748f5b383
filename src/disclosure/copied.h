// SPDX-License-Identifier: MIT
// Which runs of five words stand in the seller's notes: the paragraph is to be its own words. Private to the
// room. Owner: the arena.
#ifndef DISCLOSURE_COPIED_H
#define DISCLOSURE_COPIED_H

#include <stdbool.h>

#include "text/arena.h"

enum { RUN_WORDS = 5 };

struct copied_runs;

// `notes` may be NULL.
const struct copied_runs *copied_runs_of(struct arena *arena, const char *notes);
// Does `text` hold a run of the notes?
bool copied_runs_in(const struct copied_runs *runs, const char *text);

#endif
