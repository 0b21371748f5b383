// SPDX-License-Identifier: MIT
// Number of one word, without a look at its neighbours. Capitals are kept.
#ifndef SAY_INFLECT_H
#define SAY_INFLECT_H

#include <stdbool.h>
#include <stddef.h>

#include "text/arena.h"

// A word of at most this many bytes is looked up; a longer one is no word, and only takes or stays without an
// s.
enum { INFLECT_LONGEST = 60 };

// `word` has `size` bytes and no spaces. Both are their own fixed points.
const char *inflect_plural(struct arena *arena, const char *word, size_t size);
const char *inflect_singular(struct arena *arena, const char *word, size_t size);
bool inflect_is_plural(const char *word, size_t size);

#endif
