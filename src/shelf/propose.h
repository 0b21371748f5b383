// SPDX-License-Identifier: MIT
// One stale row through the same pipeline as a draft: what its title earns, what is weak in it, and a title
// that earns more and keeps every word that no rule understood. Owner: the arena.
#ifndef SHELF_PROPOSE_H
#define SHELF_PROPOSE_H

#include "listing/listing.h"
#include "notes/read.h"

// What a search that the old title answered for that many days without a sale is worth when choosing:
// weight * FADE_DAYS / (FADE_DAYS + days). Half after half a year; scores are never faded.
enum { FADE_DAYS = 180 };

// One a worker.
struct proposer {
    const struct ruleset *rules;
    const struct wordbook *book;
    const struct phrases *phrases;
    struct asked *asked; // one a thread, as the drafter
    struct drafter drafter;
    struct title_options options;
};

struct shelf_row {
    const char *id, *title;
    const char *description, *brand, *model, *material, *color; // NULL where not told
    long days;                                                  // since it was listed; -1 where not known
    double price;                                               // -1 where not known
    long photos;                                                // -1 where not known
};

enum weakness { WEAK_LENGTH, WEAK_SEARCH, WEAK_SPELLING, WEAK_REPEATED, WEAK_CLAIM, WEAK_FLAW, WEAK_COUNT };
const char *weakness_name(enum weakness weakness);

struct proposal {
    bool scored;
    int64_t old_earned, new_earned, best;
    const char *new_title;                      // NULL: none
    const char *adds, *drops, *why, *attention; // "" where there is nothing to say
    unsigned weak;                              // bits 1 << enum weakness
};

void propose(struct arena *arena, const struct proposer *proposer, const struct shelf_row *row,
             struct proposal *proposal);

// --- private: calm.c ---

// The title, the description, with small letters where capitals tell nothing. As many bytes as before.
// `*capitals`: the title had them everywhere.
const char *calm_title(struct arena *arena, const struct proposer *proposer, const char *title,
                       bool *capitals);
const char *calm_description(struct arena *arena, const struct proposer *proposer, const char *text);

// --- private: keep.c, turns.c ---

// What stays together: a word, or "No. 12", "14 lb", "Fenn & Dale", "not Grenholt", "brass effect".
struct kept_word {
    size_t from, to;     // bytes of the old title
    bool must;           // stays in any new title
    bool unknown;        // no rule understood it
    bool read;           // a rule understood it
    bool name;           // a name or a mark
    bool bound;          // to the next one
    bool leans;          // on the one before
    bool soft;           // gives way where there is no room: a rule knows it
    bool barred;         // a claim, or what a fault takes back
    bool stuff;          // a material or a color
    bool type;           // of what the thing is
    const char *instead; // what the rule makes of it; NULL: nothing else
    bool several;        // more than one word, which stand together
    bool turns;          // holds a word that makes another one mean something else
    bool denies;         // begins with a word that does so: "not Grenholt"
    bool phrase;         // several words were read as one thing
};

struct folds;
struct kept_words {
    const char *title; // calm
    struct kept_word *items;
    size_t count;
    const struct folds *folds; // of each item; NULL while the items change
    size_t gives_way;          // as many of the last items do, where they are soft
    const struct variants *variants;
    enum locale locale;
    const char *doubtful; // a word that may be a claim or part of a name; NULL: none
};

// Which words of the old title stay whatever happens. `read` is of notes that begin with that title;
// `capitals`: it had them everywhere.
struct kept_words keep_words(struct arena *arena, const struct proposer *proposer,
                             const struct listing *listing, const struct note_read *read, const char *title,
                             bool capitals);
// Joins words that mean something else alone into one item each.
void keep_turns(struct arena *arena, const struct note_read *read, const char *claims,
                struct kept_words *kept);
// Does `title` hold all words to stay?
bool keep_holds(struct arena *arena, const struct kept_words *kept, const char *title);

// --- private: folds.c ---

// The words of a text for comparing, a unit behind its figure in one form: "14in" and "14 inches" are 14, in.
struct folds {
    const char **at;
    size_t count;
};
struct folds folds_of(struct arena *arena, const char *text);
bool folds_hold(const struct folds *folds, const char *word);
// Do they stand in it side by side, in this order?
bool folds_run(const struct folds *folds, const struct folds *run);
bool fold_is_figure(const char *fold);
bool fold_is_unit(const char *fold);
struct folds kept_folds(struct arena *arena, const struct kept_words *kept, size_t i);
// Is item `i` to stay, and not told by those folds?
bool kept_is_missing(struct arena *arena, const struct kept_words *kept, size_t i, const struct folds *folds);

// --- private: join.c ---

// The chosen pieces with those words to stay that they lack, each beside what it stood beside.
const char *keep_join(struct arena *arena, const struct kept_words *kept, const struct title_piece *pieces,
                      size_t count);
// The phrases of the plan, those made costly that would tell again, or wrongly, what stays anyway.
const struct title_phrase *keep_steer(struct arena *arena, const struct kept_words *kept,
                                      const struct record *record, const struct title_plan *plan);
// Words of `a` that are not in `b`, parted by spaces.
const char *words_beyond(struct arena *arena, const char *a, const char *b);

#endif
