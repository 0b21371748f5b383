// SPDX-License-Identifier: MIT
// An upper bound on what the open groups of a node can still bring, and the pick that reaches it.
//
// Every stem that a want still misses has a price. The want pays the prices of its best wording's missing
// stems, an entry is paid the prices of the stems it brings; a word that two groups could say has a price
// that each entry with it pays and the bound gets back once. Whatever the prices (none below 0), what the
// wants have left over plus the best pick by length alone is never below the true best: prices only relax "a
// wording needs all its stems" and "a word stands once". Better prices make it tighter; bound_tighten() looks
// for them. Whole numbers throughout, so the same everywhere.
#ifndef TITLE_BOUND_H
#define TITLE_BOUND_H

#include "title/solve_model.h"

// A part of the search tree: some entries taken out, the rest alive. Filled by bound_open() but for alive and
// price.
struct bound_node {
    uint64_t *alive;   // entries
    double *price;     // rows, then words; whole numbers, 0 where nothing waits for the row
    uint64_t *covered; // stems of the groups that have one entry left
    size_t *groups;    // open groups: more than one entry left
    size_t group_count;
    uint32_t *entries;   // alive ones of the open groups, group by group
    uint32_t *entry_end; // per open group: where its entries end in that list
    uint32_t *wordings;  // that can still add something, want by want
    double *gain;        // per such wording: how much
    uint32_t *want_end;  // per want with such wordings: where they end in that list
    size_t want_count;
    int64_t base; // value of what is settled
    size_t room;  // for the open groups
    int64_t bound;
    int64_t *limits; // kept while the node is split, per entry of one group
};

// Room to work in, one per search.
struct bound_work {
    const struct solve_model *model;
    double *stem_price, *entry_price;
    double *value; // per entry
    int32_t *ahead,
        *behind; // best value by length, over the open groups before and after one; in units of 1 << shift
    const int32_t **ahead_row, **behind_row; // per open group; a group best left out shares its neighbour's
    int32_t *coarse;                         // per entry: its price in these units, rounded up
    unsigned shift;
    size_t *pick;   // per group: the bound's own choice
    int64_t *limit; // per entry: bound when it is taken (bound_limits)
    double *best_price;
    double *slope;     // per row: how often a thing is asked for beyond how often it is there
    double *trend;     // per row: where the slopes have pointed of late
    double *open;      // per row: 1 where it may have a price, else 0
    size_t price_room; // rows and words, in whole blocks
    uint64_t *stems;
    uint32_t *chosen; // the wordings that wants pay for
    size_t chosen_count;
    size_t *word_group, *least;
    uint32_t *brought; // per stem, then per word: how often the pick has it
};

void bound_work_init(struct arena *arena, const struct solve_model *model, struct bound_work *work);
void bound_node_init(struct arena *arena, const struct solve_model *model, struct bound_node *node);
// Shares out each wording's weight over its stems: a fair first price.
void bound_first_prices(const struct solve_model *model, double *price);
// Settles the groups with one entry left and drops entries that cannot stand any more; false when no title is
// left.
bool bound_open(struct bound_work *work, struct bound_node *node);
// One bound with the node's prices; leaves pick and slopes in `work`.
int64_t bound_measure(struct bound_work *work, const struct bound_node *node);
// After a measure: moves the prices along the slopes of late, `pace` of the way to where the bound would be
// `gap` lower if it were flat. `fresh` forgets what was before. False when nothing is left to move.
bool bound_move_prices(struct bound_work *work, struct bound_node *node, int64_t gap, double pace,
                       bool fresh);
// After a measure with the prices in question: the bound for each alive entry of the open groups.
void bound_limits(struct bound_work *work, const struct bound_node *node, int64_t bound);

#endif
