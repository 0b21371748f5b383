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

// --- private: keep.c ---

struct kept_word {
    size_t from, to; // bytes of the old title
    bool must;       // stays in any new title
    bool unknown;    // no rule understood it
};

struct kept_words {
    const char *title;
    struct kept_word *items;
    size_t count;
};

// Which words of the old title stay whatever happens. `read` is of notes that begin with that title.
struct kept_words keep_words(struct arena *arena, const struct proposer *proposer,
                             const struct listing *listing, const struct note_read *read, const char *title);
// `base` with those words to stay that it lacks, before it and behind it.
const char *keep_join(struct arena *arena, const struct kept_words *kept, const char *base);
// Does `title` hold all words to stay?
bool keep_holds(struct arena *arena, const struct kept_words *kept, const char *title);
// Words of `a` that are not in `b`, parted by spaces.
const char *words_beyond(struct arena *arena, const char *a, const char *b);

#endif
