// SPDX-License-Identifier: MIT
// Every limit in one place, each with its reason.
#ifndef TEXT_LIMITS_H
#define TEXT_LIMITS_H

#include <stddef.h>

enum {
    LIMIT_DEPTH = 16,              // records and rules nest at most five deep; more is a mistake or an attack
    LIMIT_TITLE_LONGEST = 1000,    // a title limit above this is no title; keeps the solver's arrays small
    LIMIT_PATTERN_STEPS = 1000000, // PCRE2 match limit: a bad pattern ends in about 10 ms instead of hanging
    LIMIT_EXAMPLE_STEPS = 20000,   // the same while a rule's own examples run, so a slow pattern shows early
};

static const size_t LIMIT_RECORD_BYTES = (size_t)16 << 20;   // one record; 10 MB of notes must still pass
static const size_t LIMIT_NOTE_BYTES = (size_t)128 << 10;    // notes of one thing; some 20,000 words
static const size_t LIMIT_RULE_FILE_BYTES = (size_t)1 << 20; // a rule file larger than this is not one

#endif
