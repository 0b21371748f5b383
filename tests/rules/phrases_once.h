// SPDX-License-Identifier: MIT
// The words of the shipped flaws, made ready once a process: that takes longer than the reading of a note.
#ifndef TESTS_RULES_PHRASES_ONCE_H
#define TESTS_RULES_PHRASES_ONCE_H

#include "../rules/support.h"

#include "notes/phrases.h"

static inline void make_phrases(struct arena *arena, void *context) {
    *(const struct phrases **)context = phrases_new(arena, shipped_once()->rules);
}

static inline const struct phrases *phrases_once(void) {
    static const struct phrases *phrases;
    static struct arena *arena;
    if (!arena) {
        arena = arena_new(NULL);
        if (!arena_try(arena, make_phrases, &phrases)) abort();
    }
    return phrases;
}

#endif
