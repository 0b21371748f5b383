// SPDX-License-Identifier: MIT
// The rules' groups of words, as the hashes that notes are compared by. Private to the room. Owner: the
// arena.
#ifndef NOTES_WORD_GROUPS_H
#define NOTES_WORD_GROUPS_H

#include "notes/phrase_words.h"
#include "rules/ruleset.h"

struct word_groups;
struct group_member;

struct word_groups *word_groups_new(struct arena *arena, const struct ruleset *rules);
// The number of a group; that of one without members where no pack holds it.
size_t word_groups_number(const struct word_groups *groups, const char *id, size_t size);

// The first of its members that begin with that word, the longest first; NULL if none do.
const struct group_member *word_groups_find(const struct word_groups *groups, size_t number, uint64_t first);
const struct group_member *word_groups_next(const struct group_member *member);
// Where the member ends that begins at word `i`; 0 if it does not stand there.
size_t word_groups_end(const struct group_member *member, const struct phrase_word *words, size_t count,
                       size_t i);

// The same by a member's rarest word, and the one behind it: of "on its way out" that is "way". What stands
// before it is of fixed length; `*start` is where the member begins.
const struct group_member *word_groups_find_rare(const struct word_groups *groups, size_t number,
                                                 uint64_t rare);
size_t word_groups_around(const struct group_member *member, const struct phrase_word *words, size_t count,
                          size_t i, size_t *start);

// Words of its longest member.
size_t word_groups_longest(const struct word_groups *groups, size_t number);
// How many members it has, and how many of them are of one word; "a|b" counts as two.
size_t word_groups_count(const struct word_groups *groups, size_t number);
size_t word_groups_lone(const struct word_groups *groups, size_t number);

// Tells the rarest word of each member and the one behind it; `second` is 0 where that may be any.
typedef void word_groups_told(void *context, uint64_t first, uint64_t second);
void word_groups_tell(const struct word_groups *groups, size_t number, word_groups_told *tell, void *context);
// Tells the first word of each member.
typedef void word_groups_first(void *context, uint64_t first);
void word_groups_tell_firsts(const struct word_groups *groups, size_t number, word_groups_first *tell,
                             void *context);

// As in the words of a note: without apostrophes.
uint64_t word_groups_hash(const char *word, size_t size);

#endif
