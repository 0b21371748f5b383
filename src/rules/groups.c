// SPDX-License-Identifier: MIT
// A group that is misspelt in a pattern, or a member that no note can hold, would be silent for ever: both are
// told when the rules are loaded.
#include "rules/groups.h"

#include <string.h>

#include "text/hint.h"

static void check_name(struct arena *arena, const struct ruleset *rules, const struct rule *rule,
                       const char *name, size_t size, struct diags *diags) {
    if (ruleset_group(rules, name, size)) return;
    struct nearest nearest = nearest_start(arena_copy(arena, name, size));
    for (size_t i = 0; i < rules->group_count; i++) nearest_offer(&nearest, rules->groups[i]->rule.id);
    diags_add(diags, CODE_RULE_UNKNOWN_ID, rule->at, nearest_hint(arena, &nearest),
              "'%s' names the group '%.*s', which no pack holds", rule->id, (int)size, name);
}

static void check_patterns(struct arena *arena, const struct ruleset *rules, const struct rule *rule,
                           const struct texts *patterns, struct diags *diags) {
    for (size_t i = 0; i < patterns->count; i++)
        for (const char *at = patterns->at[i]; (at = strchr(at, '@')) != NULL;) {
            size_t size = strcspn(++at, "| \n");
            check_name(arena, rules, rule, at, size, diags);
            at += size;
        }
}

size_t group_spellings(const char *member) {
    size_t spellings = 1, places = 0;
    bool word = false; // one that may not be skipped
    for (const char *at = member; *at; at += strspn(at, " \n")) {
        size_t size = strcspn(at, " \n"), choices = 0;
        bool skipped = false;
        for (size_t k = 0; k < size; choices++) {
            size_t n = 0;
            while (k + n < size && at[k + n] != '|') n++;
            bool none = n == 1 && at[k] == '-';
            if (!none && (!n || strspn(at + k, "abcdefghijklmnopqrstuvwxyz0123456789'") < n)) return 0;
            skipped |= none;
            k += n + 1;
        }
        word |= !skipped;
        spellings *= choices;
        if (++places > GROUP_WORDS_MOST || spellings > GROUP_SPELLINGS_MOST) return 0;
        at += size;
    }
    return word ? spellings : 0;
}

static void check_group(struct arena *arena, const struct ruleset *rules, const struct word_group *group,
                        struct diags *diags) {
    for (size_t i = 0; i < group->are.count; i++)
        if (!group_spellings(group->are.at[i]))
            diags_add(diags, CODE_RULE_VALUE, group->rule.at,
                      arena_format(arena,
                                   "up to %d words in small letters without hyphens, of which one stands for "
                                   "certain, and up to %d spellings",
                                   GROUP_WORDS_MOST, GROUP_SPELLINGS_MOST),
                      "'%s' cannot be a member of the group '%s'", group->are.at[i], group->rule.id);
    for (size_t i = 0; i < group->with.count; i++) {
        const char *id = group->with.at[i];
        check_name(arena, rules, &group->rule, id, strlen(id), diags);
        const struct word_group *other = ruleset_group(rules, id, strlen(id));
        if (other && other->with.count)
            diags_add(diags, CODE_RULE_VALUE, group->rule.at, "name those groups themselves",
                      "the group '%s' has 'with' itself", id);
    }
}

void groups_check(struct arena *arena, const struct ruleset *rules, struct diags *diags) {
    for (size_t i = 0; i < rules->group_count; i++) check_group(arena, rules, rules->groups[i], diags);
    for (size_t i = 0; i < rules->flaw_count; i++) {
        const struct flaw *flaw = rules->flaws[i];
        check_patterns(arena, rules, &flaw->rule, &flaw->spoken, diags);
        check_patterns(arena, rules, &flaw->rule, &flaw->spoken_on, diags);
    }
}
