// SPDX-License-Identifier: MIT
// What rules say of groups of words: "@closures" in a pattern names the group of that id.
#ifndef RULES_GROUPS_H
#define RULES_GROUPS_H

#include "rules/ruleset.h"
#include "text/diag.h"

enum {
    GROUP_WORDS_MOST = 10,     // of a member
    GROUP_SPELLINGS_MOST = 64, // that a member with "a|b" stands for
};

// How many spellings a member stands for; 0 where it can be no member.
size_t group_spellings(const char *member);

// Tells of groups that no pack holds and of members that can never be found.
void groups_check(struct arena *arena, const struct ruleset *rules, struct diags *diags);

#endif
