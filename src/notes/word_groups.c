// SPDX-License-Identifier: MIT
// A member with "a|b" is spelled out once here, so that a note is compared with plain words only.
#include "notes/word_groups.h"

#include <stdlib.h>
#include <string.h>

#include "notes/cut.h"
#include "rules/groups.h"

struct words_of_group {
    const struct word_group *rule; // NULL: the last, without members
    struct group_member *at;
    size_t count, room, longest;
};

struct head {
    uint64_t key;
    const struct group_member *first;
};

struct word_groups {
    struct arena *arena;
    struct words_of_group *at;
    size_t count, mask;
    struct head *heads;
};

uint64_t word_groups_hash(const char *word, size_t size) {
    enum { ROOM = 64 };
    char plain[ROOM];
    size_t n = 0;
    for (size_t i = 0; i < size && n < ROOM; i++)
        if (word[i] != '\'') plain[n++] = word[i];
    return token_hash(plain, n) | 1;
}

static void add_spelling(struct arena *arena, struct words_of_group *group, const uint64_t *words,
                         size_t count) {
    uint64_t *own = arena_array(arena, count + 1, sizeof *own);
    memcpy(own, words, count * sizeof *own);
    group->at = arena_grow(arena, group->at, group->count, &group->room, sizeof *group->at);
    group->at[group->count++] = (struct group_member){own, count, NULL};
    if (count > group->longest) group->longest = count;
}

// "gone|went its -|own way": every choice of the next place behind what was chosen so far.
static void spell(struct arena *arena, struct words_of_group *group, const char *rest, uint64_t *words,
                  size_t count) {
    rest += strspn(rest, " \n");
    if (!*rest) {
        add_spelling(arena, group, words, count);
        return;
    }
    size_t size = strcspn(rest, " \n");
    for (size_t at = 0; at < size;) {
        size_t n = 0;
        while (at + n < size && rest[at + n] != '|') n++;
        bool none = n == 1 && rest[at] == '-';
        if (!none) words[count] = word_groups_hash(rest + at, n);
        spell(arena, group, rest + size, words, count + !none);
        at += n + 1;
    }
}

static void add_members(struct arena *arena, struct words_of_group *group, const struct texts *are) {
    uint64_t words[GROUP_WORDS_MOST];
    for (size_t i = 0; i < are->count; i++)
        if (group_spellings(are->at[i])) spell(arena, group, are->at[i], words, 0);
}

static uint64_t key_of(size_t number, uint64_t first) {
    return (first ^ (number + 1) * 0x9E3779B97F4A7C15u) | 1;
}

static struct head *head_of(const struct word_groups *g, uint64_t key) {
    size_t at = (size_t)(key >> 9) & g->mask;
    while (g->heads[at].first && g->heads[at].key != key) at = (at + 1) & g->mask;
    return &g->heads[at];
}

static int shorter_first(const void *a, const void *b) {
    const struct group_member *x = a, *y = b;
    return (x->count > y->count) - (x->count < y->count);
}

static void chain_members(struct word_groups *g, size_t number) {
    struct words_of_group *group = &g->at[number];
    if (group->count) qsort(group->at, group->count, sizeof *group->at, shorter_first);
    for (size_t i = 0; i < group->count; i++) {
        struct group_member *member = &group->at[i];
        uint64_t key = key_of(number, member->words[0]);
        struct head *head = head_of(g, key);
        member->next = head->first;
        *head = (struct head){key, member};
    }
}

struct word_groups *word_groups_new(struct arena *arena, const struct ruleset *rules) {
    struct word_groups *g = arena_alloc(arena, sizeof *g);
    g->arena = arena;
    g->count = rules->group_count;
    g->at = arena_array(arena, g->count + 1, sizeof *g->at);
    size_t members = 0;
    for (size_t i = 0; i < g->count; i++) {
        const struct word_group *rule = g->at[i].rule = rules->groups[i];
        add_members(arena, &g->at[i], &rule->are);
        for (size_t k = 0; k < rule->with.count; k++) {
            const struct word_group *other = ruleset_group(rules, rule->with.at[k], strlen(rule->with.at[k]));
            if (other) add_members(arena, &g->at[i], &other->are);
        }
        members += g->at[i].count;
    }
    g->mask = 15;
    while (g->mask < members * 2) g->mask = g->mask * 2 + 1;
    g->heads = arena_array(arena, g->mask + 1, sizeof *g->heads);
    for (size_t i = 0; i < g->count; i++) chain_members(g, i);
    return g;
}

size_t word_groups_number(const struct word_groups *g, const char *id, size_t size) {
    size_t i = 0;
    while (i < g->count && (strncmp(g->at[i].rule->rule.id, id, size) || g->at[i].rule->rule.id[size])) i++;
    return i;
}

struct group_members word_groups_members(const struct word_groups *g, size_t number) {
    return (struct group_members){g->at[number].at, g->at[number].count};
}

const struct group_member *word_groups_find(const struct word_groups *g, size_t number, uint64_t first) {
    return head_of(g, key_of(number, first))->first;
}

size_t word_groups_longest(const struct word_groups *g, size_t number) {
    return g->at[number].longest;
}
