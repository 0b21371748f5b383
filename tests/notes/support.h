// SPDX-License-Identifier: MIT
// A note through chosen readers, and what they understood as one line of text to compare.
#ifndef TESTS_NOTES_SUPPORT_H
#define TESTS_NOTES_SUPPORT_H

#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "notes/measures.h"
#include "notes/note.h"
#include "rules/ruleset.h"
#include "text/arena.h"
#include "text/buf.h"
#include "text/diag.h"

struct notes_case {
    const char *note, *wants;
};

// Arena of the test program, with the shipped rules and their phrases; freed by support_end().
struct support {
    struct arena *arena;
    const struct ruleset *rules;
    const struct phrases *phrases;
};
extern struct support support;

void support_begin(void);
void support_end(void);
// Tokens cut and flaw words marked, nothing read.
struct note *support_note(struct arena *arena, const char *text, enum locale locale);
// Runs `read` over every note and compares `tell` of it; all differences are printed before the test fails.
void support_cases(const struct notes_case *cases, size_t count, enum locale locale,
                   void (*read)(struct note *note), const char *(*tell)(const struct note *note));
int support_main(Suite *suite);

#endif
