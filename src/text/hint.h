// SPDX-License-Identifier: MIT
// "did you mean …?": the nearest known word, when one is near enough to be meant.
#ifndef TEXT_HINT_H
#define TEXT_HINT_H

#include <stddef.h>

#include "text/arena.h"

struct nearest {
    const char *word; // as typed
    const char *best; // NULL until a near one was offered
    size_t distance;
};

struct nearest nearest_start(const char *word);
// Keeps `known` when it is nearer than what was offered before: at most a third of the letters may differ.
void nearest_offer(struct nearest *nearest, const char *known);
// "did you mean 'x'?", or NULL.
const char *nearest_hint(struct arena *arena, const struct nearest *nearest);

#endif
