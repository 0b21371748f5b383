// SPDX-License-Identifier: MIT
// What a rule must hold beyond the types of its keys, and what the rules of a set must hold together.
#ifndef RULES_FINISH_H
#define RULES_FINISH_H

#include "rules/ruleset.h"
#include "rules/schema.h"

// False when the rule cannot be used as it is.
bool finish_rule(struct arena *arena, enum rule_kind kind, struct rule *rule, struct diags *diags);
// Numbers the finders, builds the tables for finding by name, checks every id that one rule names of another.
void finish_set(struct arena *arena, struct ruleset *rules, struct diags *diags);

#endif
