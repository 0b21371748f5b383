// SPDX-License-Identifier: MIT
// "Chip on the lid, no wait, on the base", "scratch that": what was said in that clause before is taken back,
// and what follows stands. "Scratch that" is an order to the page, not a scratch.
#include "notes/scope.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct cue cues[] = {
    {"actually no", 0}, {"correction", 0}, {"forget that", 0},     {"forget what i said", 0},
    {"i meant", 0},     {"make that", 0},  {"never mind that", 0}, {"no no", 0},
    {"no not", 0},      {"no sorry", 0},   {"no wait", 0},         {"nope", 0},
    {"oops", 0},        {"or rather", 0},  {"scratch that", 0},    {"sorry i mean", 0},
    {"strike that", 0}, {"wait no", 0},    {"wrong its", 0},
};

void scope_correction(struct scope *s) {
    for (size_t i = 0; i < s->note->tokens.count; i++) {
        size_t n;
        if (!cue_at(s, cues, COUNT(cues), i, &n)) continue;
        scope_mark(s, scope_clause_start(s, i), i, STANCE_WITHDRAWN, i);
        scope_mark(s, i, i + n, STANCE_OTHER, i); // the words of the cue are no fault themselves
        i += n - 1;
    }
}
