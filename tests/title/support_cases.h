// SPDX-License-Identifier: MIT
// Seeded title problems that look like real ones: phrases of one to three words in up to three spellings,
// each shorter and telling less; words of neighbouring phrases shared now and then; wants whose wordings are
// drawn from one neighbourhood of the title, most of them with the type word.
#ifndef TITLE_SUPPORT_CASES_H
#define TITLE_SUPPORT_CASES_H

#include "title/problem.h"

struct case_shape {
    size_t phrases, wordings, wants, limit;
    size_t musts, rollups; // at most; musts without a roll-up count too
    unsigned sharing;      // of 100 words, how many are taken from a neighbour
    bool flat;             // all weights and lengths from two or three values, so that ties abound
};

struct case_random {
    uint64_t state;
};

uint64_t case_next(struct case_random *random);
// Even over 0 .. below - 1.
size_t case_below(struct case_random *random, size_t below);

// The full-size shape: 24 phrases, 100 wordings of 12 wants, 80 characters.
struct case_shape case_full_size(void);
struct title_problem *case_make(struct arena *arena, const struct case_shape *shape, uint64_t seed);

#endif
