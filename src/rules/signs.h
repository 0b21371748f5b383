// SPDX-License-Identifier: MIT
// Signs: words that name a hazard only together, as sellers tell it: "copper" and "wire" in one sentence, or
// a toy in one and an eye by a thread in another. An index from a word to the groups it stands in. Immutable;
// part of the rule set.
#ifndef RULES_SIGNS_H
#define RULES_SIGNS_H

#include "rules/model.h"

struct sign_group {
    size_t section;
    bool bars; // none of its words may stand there
};

struct sign {
    const struct caution *caution;
    size_t first, count;
};

// A word or phrase of a group, its words folded and parted by single spaces.
struct sign_word {
    const char *words;
    size_t size;  // of its first word
    size_t whole; // of all
    size_t group; // in the order of all groups
    size_t alike; // once closed: how many from here on begin with the same word
};

struct signs {
    struct sign *signs;
    size_t count, room;
    struct sign_group *groups;
    size_t group_count, group_room;
    struct sign_word *words; // in order, once closed
    size_t word_count, word_room;
    size_t rule_count; // one above the highest number
    const struct index *firsts;
};

// Is it about a state of the thing, which is there whatever the thing shows: mold on a picture of a mushroom?
bool caution_is_state(const struct caution *caution);

struct signs *signs_new(struct arena *arena);
void signs_add(struct arena *arena, struct signs *signs, const struct caution *caution);
// No signs_add() after it.
void signs_close(struct arena *arena, struct signs *signs);
// The first of the words that begin with this one; signs->word_count where there is none.
size_t signs_first(const struct signs *signs, const char *word, size_t size);

// The next word of `text` from `*at`: letters and digits, in small letters, its apostrophes left out. 0:
// there is none. `*from`: where it begins; `*at` ends behind it. What does not fit into `to` is cut.
size_t sign_word_next(const char *text, size_t size, size_t *at, size_t *from, char *to, size_t room);

#endif
