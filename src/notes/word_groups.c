// SPDX-License-Identifier: MIT
// A member is kept as places, each one of some words: spelled out, "a|b c|d|-" would be many. It always
// stands under the words of its first place, which may not be skipped, and once more under those of its
// rarest one: what begins with "a bit" or "on the" would be looked at in every note.
#include "notes/word_groups.h"

#include <limits.h>
#include <stdlib.h>
#include <string.h>

#include "notes/cut.h"
#include "rules/groups.h"

struct member_place {
    const uint64_t *words;
    size_t count;
    bool skipped; // it may be
    bool denies;  // a word of it is a denial: it has to stay in what is found
    int common;   // how often such words are met, roughly
};

struct member_words {
    struct member_place *places;
    size_t count, least; // least: places that may not be skipped
    size_t rare;         // the place to look for; none before it may be skipped
};

struct group_member {
    const struct member_words *words;
    const struct group_member *next; // of the same group and first word
};

struct pair {
    uint64_t rare, second; // second: 0 for any
};

struct words_of_group {
    const struct word_group *rule;
    struct member_words *at;
    struct pair *pairs; // each once
    size_t count, room, longest, spellings, lone, pair_count, pair_room;
};

struct head {
    uint64_t key;
    const struct group_member *first;
};

enum { ALONE = 20 }; // a word that stands for a member by itself is met more often than any two

struct word_groups {
    struct arena *arena;
    struct words_of_group *at;
    size_t count, words, mask;
    struct head *heads; // of two tables in one: by the first word, and by the rarest
};

uint64_t word_groups_hash(const char *word, size_t size) {
    enum { ROOM = 64 };
    char plain[ROOM];
    size_t n = 0;
    for (size_t i = 0; i < size && n < ROOM; i++)
        if (word[i] != '\'') plain[n++] = word[i];
    return token_hash(plain, n) | 1;
}

static bool is_listed(const char *text, size_t size, const char *const *list) {
    for (; *list; list++)
        if (!strncmp(*list, text, size) && !(*list)[size]) return true;
    return false;
}

static int common_of(const char *text, size_t size) {
    static const char *const small[] = {
        "a",    "an",    "the",  "of",    "to",    "in",    "on",   "at",   "it",  "its",  "is",
        "are",  "was",   "has",  "have",  "had",   "been",  "be",   "you",  "can", "and",  "or",
        "with", "for",   "from", "by",    "that",  "as",    "if",   "when", "one", "like", "some",
        "no",   "not",   "all",  "where", "this",  "them",  "they", "out",  "up",  "off",  "just",
        "bit",  "their", "your", "my",    "would", "could", NULL};
    static const char *const usual[] = {
        "come",  "came",   "comes", "coming", "gone",  "going", "lost",    "let",    "go",    "away",
        "down",  "little", "good",  "needs",  "wants", "only",  "got",     "over",   "left",  "through",
        "half",  "two",    "three", "inside", "old",   "won't", "doesn't", "longer", "worn",  "takes",
        "loose", "small",  "few",   "goes",   "works", "back",  "brown",   "line",   "top",   "bottom",
        "side",  "edge",   "end",   "corner", "front", "lid",   "base",    "hand",   "hands", "find",
        "see",   "side",   "then",  "did",    "do",    "will",  "never",   "isn't",  NULL};
    return is_listed(text, size, small) ? 4 : is_listed(text, size, usual) ? 1 : 0;
}

static bool is_denial(const char *text, size_t size) {
    static const char *const others[] = {"no",      "not",    "never", "without", "nothing", "none",
                                         "wont",    "cannot", "cant",  "hardly",  "barely",  "nowhere",
                                         "refuses", "little", "dont",  "didnt",   NULL};
    return (size > 3 && !memcmp(text + size - 3, "n't", 3)) || is_listed(text, size, others);
}

static struct member_place place_of(struct arena *arena, const char *text, size_t size) {
    struct member_place place = {.count = 0};
    uint64_t *words = arena_array(arena, size + 1, sizeof *words);
    for (size_t at = 0; at < size;) {
        size_t n = 0;
        while (at + n < size && text[at + n] != '|') n++;
        if (n == 1 && text[at] == '-')
            place.skipped = true;
        else {
            int common = common_of(text + at, n);
            if (common > place.common) place.common = common;
            place.denies |= is_denial(text + at, n);
            words[place.count++] = word_groups_hash(text + at, n);
        }
        at += n + 1;
    }
    place.words = words;
    return place;
}

// Of two words the rarer one tells most: "the top" is met as often as "top".
static int common_pair(int first, int second) {
    return first < second ? 2 * first + second : 2 * second + first;
}

static size_t rarest(const struct member_words *member) {
    size_t rare = 0;
    int least = INT_MAX;
    for (size_t k = 0; k < member->count && !member->places[k].skipped; k++) {
        const struct member_place *place = &member->places[k];
        bool last = k + 1 == member->count || place[1].skipped; // it may have to do alone
        int common = last ? ALONE + place->common : common_pair(place->common, place[1].common);
        if (common < least) {
            least = common;
            rare = k;
        }
        if (place->denies) break;
    }
    return rare;
}

// "came|come adrift|-"
static void add_member(struct word_groups *g, struct words_of_group *group, const char *text) {
    if (!group_member_fits(text)) return; // told when the rules were loaded
    struct member_words member = {.places = arena_array(g->arena, GROUP_WORDS_MOST, sizeof *member.places)};
    for (const char *at = text; *at; at += strspn(at, " \n")) {
        size_t size = strcspn(at, " \n");
        member.places[member.count] = place_of(g->arena, at, size);
        member.least += !member.places[member.count++].skipped;
        at += size;
    }
    member.rare = rarest(&member);
    g->words += member.places[0].count + member.places[member.rare].count;
    group->spellings += member.places[0].count;
    group->lone += member.least == 1 ? member.places[0].count : 0;
    if (member.count > group->longest) group->longest = member.count;
    group->at = arena_grow(g->arena, group->at, group->count, &group->room, sizeof *group->at);
    group->at[group->count++] = member;
}

static void add_members(struct word_groups *g, struct words_of_group *group, const struct texts *are) {
    for (size_t i = 0; i < are->count; i++) add_member(g, group, are->at[i]);
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
    const struct member_words *x = a, *y = b;
    return (x->least > y->least) - (x->least < y->least);
}

static void add_pair(struct word_groups *g, struct words_of_group *group, uint64_t rare, uint64_t second) {
    group->pairs =
        arena_grow(g->arena, group->pairs, group->pair_count, &group->pair_room, sizeof *group->pairs);
    group->pairs[group->pair_count++] = (struct pair){rare, second};
}

static void pair_up(struct word_groups *g, struct words_of_group *group, const struct member_words *member,
                    uint64_t rare) {
    for (size_t k = member->rare + 1; k < member->count; k++) {
        const struct member_place *second = &member->places[k];
        for (size_t i = 0; i < second->count; i++) add_pair(g, group, rare, second->words[i]);
        if (!second->skipped) return;
    }
    add_pair(g, group, rare, 0);
}

static int pair_order(const void *a, const void *b) {
    const struct pair *x = a, *y = b;
    if (x->rare != y->rare) return x->rare < y->rare ? -1 : 1;
    return (x->second > y->second) - (x->second < y->second);
}

static void pair_members(struct word_groups *g, struct words_of_group *group) {
    for (size_t i = 0; i < group->count; i++) {
        const struct member_place *rare = &group->at[i].places[group->at[i].rare];
        for (size_t k = 0; k < rare->count; k++) pair_up(g, group, &group->at[i], rare->words[k]);
    }
    if (!group->pair_count) return;
    qsort(group->pairs, group->pair_count, sizeof *group->pairs, pair_order);
    size_t kept = 1;
    for (size_t i = 1; i < group->pair_count; i++)
        if (pair_order(&group->pairs[i], &group->pairs[kept - 1])) group->pairs[kept++] = group->pairs[i];
    group->pair_count = kept;
}

static void chain_under(struct word_groups *g, size_t table, const struct member_words *words, size_t place) {
    const struct member_place *by = &words->places[place];
    struct group_member *members = arena_array(g->arena, by->count + 1, sizeof *members);
    for (size_t k = 0; k < by->count; k++) {
        uint64_t key = key_of(table, by->words[k]);
        struct head *head = head_of(g, key);
        members[k] = (struct group_member){words, head->first};
        *head = (struct head){key, &members[k]};
    }
}

static void chain_members(struct word_groups *g, size_t number) {
    struct words_of_group *group = &g->at[number];
    if (group->count) qsort(group->at, group->count, sizeof *group->at, shorter_first);
    for (size_t i = 0; i < group->count; i++) {
        chain_under(g, 2 * number, &group->at[i], 0);
        chain_under(g, 2 * number + 1, &group->at[i], group->at[i].rare);
    }
}

struct word_groups *word_groups_new(struct arena *arena, const struct ruleset *rules) {
    struct word_groups *g = arena_alloc(arena, sizeof *g);
    g->arena = arena;
    g->count = rules->group_count;
    g->at = arena_array(arena, g->count + 1, sizeof *g->at);
    for (size_t i = 0; i < g->count; i++) {
        const struct word_group *rule = g->at[i].rule = rules->groups[i];
        add_members(g, &g->at[i], &rule->are);
        for (size_t k = 0; k < rule->with.count; k++) {
            const struct word_group *other = ruleset_group(rules, rule->with.at[k], strlen(rule->with.at[k]));
            if (other) add_members(g, &g->at[i], &other->are);
        }
    }
    g->mask = 15;
    while (g->mask < g->words * 2) g->mask = g->mask * 2 + 1;
    g->heads = arena_array(arena, g->mask + 1, sizeof *g->heads);
    for (size_t i = 0; i < g->count; i++) {
        chain_members(g, i);
        pair_members(g, &g->at[i]);
    }
    return g;
}

size_t word_groups_number(const struct word_groups *g, const char *id, size_t size) {
    size_t i = 0;
    while (i < g->count && (strncmp(g->at[i].rule->rule.id, id, size) != 0 || g->at[i].rule->rule.id[size]))
        i++;
    return i;
}

const struct group_member *word_groups_find(const struct word_groups *g, size_t number, uint64_t first) {
    return head_of(g, key_of(2 * number, first))->first;
}

const struct group_member *word_groups_next(const struct group_member *member) {
    return member->next;
}

static bool is_of(const struct member_place *place, uint64_t hash) {
    for (size_t i = 0; i < place->count; i++)
        if (place->words[i] == hash) return true;
    return false;
}

// Where the places from `place` on end if they stand at word `i`; 0 if they do not.
static size_t end_of(const struct member_words *member, size_t place, const struct phrase_word *words,
                     size_t count, size_t i) {
    if (place == member->count) return i;
    const struct member_place *here = &member->places[place];
    size_t end = 0;
    if (i < count && is_of(here, words[i].hash)) end = end_of(member, place + 1, words, count, i + 1);
    return end || !here->skipped ? end : end_of(member, place + 1, words, count, i);
}

size_t word_groups_end(const struct group_member *member, const struct phrase_word *words, size_t count,
                       size_t i) {
    return end_of(member->words, 1, words, count, i + 1);
}

const struct group_member *word_groups_find_rare(const struct word_groups *g, size_t number, uint64_t rare) {
    return head_of(g, key_of(2 * number + 1, rare))->first;
}

size_t word_groups_around(const struct group_member *member, const struct phrase_word *words, size_t count,
                          size_t i, size_t *start) {
    const struct member_words *own = member->words;
    if (own->rare > i) return 0;
    *start = i - own->rare;
    for (size_t k = 0; k < own->rare; k++)
        if (!is_of(&own->places[k], words[*start + k].hash)) return 0;
    return end_of(own, own->rare + 1, words, count, i + 1);
}

size_t word_groups_longest(const struct word_groups *g, size_t number) {
    return g->at[number].longest;
}

size_t word_groups_count(const struct word_groups *g, size_t number) {
    return g->at[number].spellings;
}

size_t word_groups_lone(const struct word_groups *g, size_t number) {
    return g->at[number].lone;
}

void word_groups_tell(const struct word_groups *g, size_t number, word_groups_told *tell, void *context) {
    const struct words_of_group *group = &g->at[number];
    for (size_t i = 0; i < group->pair_count; i++)
        tell(context, group->pairs[i].rare, group->pairs[i].second);
}

void word_groups_tell_firsts(const struct word_groups *g, size_t number, word_groups_first *tell,
                             void *context) {
    const struct words_of_group *group = &g->at[number];
    for (size_t i = 0; i < group->count; i++)
        for (size_t k = 0; k < group->at[i].places[0].count; k++)
            tell(context, group->at[i].places[0].words[k]);
}
