// SPDX-License-Identifier: MIT
// A group that is misspelt in a pattern, or a member that no note can hold, would be silent for ever: both
// are told when the rules are loaded.
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

// Its words, or 0 where one is none.
static size_t words_of_place(const char *text, size_t size, bool *skipped) {
    size_t words = 0;
    *skipped = false;
    for (size_t at = 0, n; at < size; at += n + 1) {
        n = 0;
        while (at + n < size && text[at + n] != '|') n++;
        bool none = n == 1 && text[at] == '-';
        if (!none && (!n || strspn(text + at, "abcdefghijklmnopqrstuvwxyz0123456789'") < n)) return 0;
        *skipped |= none;
        words += !none;
    }
    return words;
}

bool group_member_fits(const char *member) {
    size_t places = 0, first = 0, seconds = 0;
    bool second = true; // what comes may be the second word
    for (const char *at = member + strspn(member, " \n"); *at; at += strspn(at, " \n"), places++) {
        size_t size = strcspn(at, " \n");
        bool skipped;
        size_t words = words_of_place(at, size, &skipped);
        if (!words || places == GROUP_WORDS_MOST || (!places && skipped)) return false;
        if (!places)
            first = words;
        else if (second)
            seconds += words;
        second = !places || (second && skipped);
        at += size;
    }
    return places && first * (seconds ? seconds : 1) <= GROUP_STARTS_MOST;
}

static void check_group(struct arena *arena, const struct ruleset *rules, const struct word_group *group,
                        struct diags *diags) {
    for (size_t i = 0; i < group->are.count; i++)
        if (!group_member_fits(group->are.at[i]))
            diags_add(
                diags, CODE_RULE_VALUE, group->rule.at,
                arena_format(arena,
                             "up to %d words in small letters without hyphens, of which the first stands "
                             "for certain, and up to %d beginnings of two words",
                             GROUP_WORDS_MOST, GROUP_STARTS_MOST),
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
