// SPDX-License-Identifier: MIT
// What any title of a record earns, on the scale of the drafted one. Owner: the arena.
//
// A given title is read as the phrases of the record's plan. A phrase is told where the words of one of its
// spellings stand next to each other, in this order and in either number; no word is read twice, and no
// content word tells two phrases. Of several readings one counts: that which tells the most of what has to be
// told, then accounts for the most words, letter for letter before in another inflection, then earns the
// most. So a title made of lawful phrases is read as lawful phrases, and what it earns is never above the
// best.
//
//   earned = for each want the heaviest wording all of whose words stand anywhere in the title (a search
//   finds
//            words in any order) + what the phrases told are worth (tells - cost); never less than 0
//
// Of a title over the limit the longest run of whole words from its start that fits is read: what is left
// when the rest is cut off.
#ifndef TITLE_GIVEN_H
#define TITLE_GIVEN_H

#include "title/plan.h"

struct given_word {
    const char *fold; // as searches see it; "and" for a lone "&"
    size_t from, to;  // bytes of the text
    uint16_t stem;    // of the reading's own vocabulary
    int phrase;       // of the plan, told here; -1 none
    bool told;        // part of a phrase or a roll-up that is told
    bool letters;     // holds a letter or a digit
};

struct given_reading {
    const char *text;
    struct given_word *words;
    size_t count;
    struct vocabulary stems; // those of the words come first
    size_t stem_count;       // how many are the words' own
    int *spelling;           // per phrase of the plan: what tells it; -1 nothing
    bool *rollup;
};

enum miss_kind { MISS_MUST, MISS_SEARCH, MISS_PHRASE };

// Something that the best title tells or answers and this one does not; of what has to be told all that is
// not.
struct given_miss {
    enum miss_kind kind;
    const char *text;
    const char *want; // id of a search's want, NULL elsewhere
    int64_t worth;    // what it would add by itself
    size_t phrase;    // of the plan, but for searches
};

struct given_title {
    const char *text;
    size_t length;  // of all of it, in the unit of the limit
    const char *at; // what counts: the text, or its beginning where that is over the limit
    bool cut;
    int64_t earned, best;
    struct given_miss *misses; // musts, then searches, then phrases
    size_t miss_count;
    struct given_reading reading; // of all of it, however long
};

// `best` is the plan's best choice. No more than GIVEN_BYTES_MOST of the text are read, whatever the limit.
enum { GIVEN_BYTES_MOST = 4000 };
struct given_title title_given(struct arena *arena, const struct title_plan *plan,
                               const struct title_choice *best, const struct title_options *options,
                               const char *text);
// The words of any text, for given_find(); nothing is told in it.
struct given_reading given_split(struct arena *arena, const char *text);
// True when the words of `phrase` stand next to each other at or behind word `*at`, in either number; `*at`
// is then the first of them and `*count` how many they are.
bool given_find(struct arena *arena, struct given_reading *reading, const char *phrase, size_t *at,
                size_t *count);
const char *miss_kind_name(enum miss_kind kind);

// --- private to title/ ---
struct given_reading given_read(struct arena *arena, const struct title_plan *plan, const char *text);

#endif
