// SPDX-License-Identifier: MIT
// From a word to the rules that could match there: a text is walked once, its words are looked up, and PCRE2
// is asked only about candidates. Immutable; part of the rule set.
#ifndef RULES_TRIGGER_H
#define RULES_TRIGGER_H

#include "rules/model.h"

struct triggers;

// One entry for two neighbors or one word of every `said` phrase, and for each word of `match_on`, where
// "a|b + c|d" asks for a word of each side somewhere in the text;
// a finder with patterns and without such words is always a candidate.
struct triggers *triggers_new(struct arena *arena);
void triggers_add(struct arena *arena, struct triggers *triggers, const struct finder *finder);
// Sorts and indexes the table; no triggers_add() after it.
void triggers_close(struct arena *arena, struct triggers *triggers);

// Why a finder is a candidate: a phrase of `said` stands there, or what announces its patterns does. A phrase
// among ASCII letters stands there for sure, though a phrase of `unless` may hold it.
enum { TRIGGER_SAID = 1, TRIGGER_MATCH = 2 };

// Marks in `wanted` (finder_count entries) every finder that could match somewhere in the text, by why.
void triggers_mark(const struct triggers *triggers, const char *text, unsigned char *wanted);

#endif
