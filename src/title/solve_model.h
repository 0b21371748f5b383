// SPDX-License-Identifier: MIT
// The title problem as the search sees it.
//
// Every phrase and every roll-up is a group, and a title takes exactly one entry of each group: one spelling,
// or the last entry, which leaves the group out (for a must: which has its roll-up stand in). Groups stand in
// phrase order, roll-ups after them; entries stand best first, so comparing entry numbers group by group is
// the tie rule. Values join worth and length into one number, (worth * (room + 1) - length) * SOLVE_GRAIN,
// and so settle the first two steps of the tie rule; the grain leaves whole numbers between two values for
// prices. Everything lives in the arena given to solve_model_build().
#ifndef TITLE_SOLVE_MODEL_H
#define TITLE_SOLVE_MODEL_H

#include "title/problem.h"

struct solve_entry {
    size_t group;
    size_t length; // separator included; 0 when left out
    int64_t value;
    int spelling;            // -1 when left out
    uint32_t *stems, *words; // lists; only stems that a wording needs, only words that meet in two groups
    size_t stem_count, word_count;
    uint64_t *stem_set, *word_set;
};

struct solve_wording {
    size_t want;
    int64_t weight;
    uint32_t *stems, *rows;
    size_t stem_count, row_count;
    uint64_t *stem_set;
};

struct solve_model {
    size_t phrase_count, group_count, entry_count;
    size_t *first; // entries of group g: first[g] up to first[g + 1]
    size_t widest; // entries of the largest group
    struct solve_entry *entries;
    bool *may_skip;  // per group: its last entry leaves it out
    size_t **covers; // per roll-up: the entries it can stand in for
    size_t *cover_count;
    struct solve_wording *wordings; // by want, the heaviest first
    size_t wording_count, want_count;
    size_t row_count; // a row is one stem of one want, and has a price: title/solve_rows.h
    uint32_t *row_stem;
    size_t stem_count, word_count;
    size_t stem_cells, word_cells, entry_cells;
    uint64_t *clash;      // per entry: entries that the laws keep out of the same title
    uint64_t *bar;        // the same and entries that no best title holds beside it
    size_t room;          // longest title, one separator after each text
    int64_t least, span;  // no title's value is below `least` nor above `least + span`
    int64_t scale, grain; // value = (worth * scale - length) * grain
    bool possible;        // false: a must has no entry left
};

// With `lengths_only` the limit, the wants and all phrases but musts are left out, and value is minus length.
void solve_model_build(struct arena *arena, const struct title_problem *problem, bool lengths_only,
                       struct solve_model *model);

// Value of one entry per group; false when the pick breaks a law or the limit. `room` holds a set of stems or
// of entries.
bool solve_model_value(const struct solve_model *model, const size_t *pick, uint64_t *room, int64_t *value);

// True when pick `a` takes earlier phrases and spellings first than pick `b`.
bool solve_model_earlier(const struct solve_model *model, const size_t *a, const size_t *b);

#endif
