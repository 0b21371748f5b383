// SPDX-License-Identifier: MIT
// The rules' groups of words, as the hashes that notes are compared by. Private to the room. Owner: the arena.
#ifndef NOTES_WORD_GROUPS_H
#define NOTES_WORD_GROUPS_H

#include "notes/phrase_words.h"
#include "rules/ruleset.h"

struct word_groups;

struct group_member {
    const uint64_t *words;
    size_t count;
    const struct group_member *next; // of the same group and first word, never longer
};

struct group_members {
    const struct group_member *at;
    size_t count;
};

struct word_groups *word_groups_new(struct arena *arena, const struct ruleset *rules);
// The number of a group; that of one without members where no pack holds it.
size_t word_groups_number(const struct word_groups *groups, const char *id, size_t size);
struct group_members word_groups_members(const struct word_groups *groups, size_t number);
// The longest of its members that begin with that word; NULL if none do.
const struct group_member *word_groups_find(const struct word_groups *groups, size_t number, uint64_t first);
// Words of its longest member.
size_t word_groups_longest(const struct word_groups *groups, size_t number);

// As in the words of a note: without apostrophes.
uint64_t word_groups_hash(const char *word, size_t size);

#endif
