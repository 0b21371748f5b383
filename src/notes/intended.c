// SPDX-License-Identifier: MIT
// "The crackle is on purpose", "ripped at the knees from the factory", "that's how it was thrown": the look
// is meant, and no fault. What merely excuses a fault ("just patina", "from storage") takes nothing away.
#include "notes/scope.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct cue cues[] = {
    {"as designed", 0},
    {"by design", 0},
    {"for effect", 0},
    {"for the look", 0},
    {"from new", 0},
    {"from the factory", 0},
    {"from the shop", 0},
    {"is meant to be", 0},
    {"is supposed to be", 0},
    {"is the design", 0},
    {"is the look", 0},
    {"is the style", 0},
    {"made that way", 0},
    {"meant to look", 0},
    {"on purpose", 0},
    {"painted on", 0},
    {"part of the design", 0},
    {"printed on", 0},
    {"supposed to look", 0},
    {"that's how it was made", 0},
    {"that's how it was thrown", 0},
    {"that's the style", 0},
};

void scope_intended(struct scope *s) {
    for (size_t i = 0; i < s->note->tokens.count; i++) {
        size_t n;
        if (!cue_at(s, cues, COUNT(cues), i, &n)) continue;
        scope_mark(s, scope_clause_start(s, i), i + n, STANCE_OTHER, i);
        i += n - 1;
    }
}
