// SPDX-License-Identifier: MIT
// What rules say of groups of words: "@closures" in a pattern names the group of that id.
#ifndef RULES_GROUPS_H
#define RULES_GROUPS_H

#include "rules/ruleset.h"
#include "text/diag.h"

enum {
    GROUP_WORDS_MOST = 12,   // of a member
    GROUP_STARTS_MOST = 400, // pairs of words that a member may begin with
};

// Can it be a member? It has words in small letters, of which the first may not be skipped.
bool group_member_fits(const char *member);

// Tells of groups that no pack holds and of members that can never be found.
void groups_check(struct arena *arena, const struct ruleset *rules, struct diags *diags);

#endif
