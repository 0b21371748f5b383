// SPDX-License-Identifier: MIT
// The title problem of one record together with what its numbers stand for. Owner: the arena.
#ifndef TITLE_PLAN_H
#define TITLE_PLAN_H

#include "evidence/claims.h"
#include "item/record.h"
#include "text/utf8.h"
#include "title/problem.h"
#include "title/turned.h"
#include "title/vocabulary.h"

struct plan_spelling {
    const char *text;
    int32_t tells, cost;
    enum word_turn turn; // its other form, for a title that has its small word already
    uint8_t lead;        // words of degree and number that stay in front of it
};

struct plan_phrase {
    enum slot slot;
    struct plan_spelling *spellings;
    size_t count;
    bool must;
    enum rollup rollup;
    bool name;           // a name or mark: its words may stand again
    const char *because; // rule and key it comes from: "family glassware, color"
    struct note_span span;
    size_t rank;      // place within its slot
    bool after_type;  // stands behind the type, wherever the family puts its slot
    bool before_type; // never behind it
};

// What never got as far as the choice, and why.
struct plan_barred {
    const char *text, *why;
};

struct plan_search {
    size_t want, wording;
    const char *text; // "green glass pitcher"
};

struct title_plan {
    struct plan_phrase *phrases; // in title order
    size_t count, room;
    const char *rollup_text[ROLLUP_COUNT];
    int rollup_index[ROLLUP_COUNT]; // into problem.rollups, -1 where unused
    struct plan_barred *barred;
    size_t barred_count, barred_room;
    const char **want_ids;
    const char ***searches; // per want and wording, its words
    struct vocabulary words, stems;
    struct title_problem problem;
};

struct title_options {
    size_t limit;
    enum count_unit unit;
    enum locale locale;
    const struct variants *variants;
};

// Everything a title of this record may say, as a problem for title_solve(). `claims` holds the verdicts on
// its words.
struct title_plan *title_plan(struct arena *arena, const struct record *record, const struct claims *claims,
                              const struct title_options *options);

// --- private to title/ ---
struct phrase_maker {
    struct arena *arena;
    const struct record *record;
    const struct claims *claims;
    const struct title_options *options;
    struct title_plan *plan;
    const struct thing *thing; // what the type is in its family; NULL when no rule knows it
    int tells[SLOT_COUNT];
};

// A new phrase in `slot`; spellings are added to it in order, best first. NULL when the family gives the slot
// no place.
struct plan_phrase *phrase_add(struct phrase_maker *m, enum slot slot, const char *because,
                               struct note_span span);
// `text` is put into title case and the locale's spelling here.
void spelling_add(struct phrase_maker *m, struct plan_phrase *phrase, const char *text, int tells, int cost);
// The same for a name or mark, whose letters stay as they are.
void spelling_keep(struct phrase_maker *m, struct plan_phrase *phrase, const char *text, int tells, int cost);
void phrase_bar(struct phrase_maker *m, const char *text, const char *why);
// What stands for all faults of one roll-up.
const char *rollup_words(enum rollup rollup);
// A phrase without spellings, or one that no longer has a place, goes again.
void phrase_drop(struct phrase_maker *m, struct plan_phrase *phrase);

void make_facts(struct phrase_maker *m);   // facts.c: names, attributes, parts, includes, fits
void make_figures(struct phrase_maker *m); // figures.c: count, size, measures, age
void make_flaws(struct phrase_maker *m);   // faults.c
void make_wants(struct phrase_maker *m);   // wants.c
// Is it a noun that stays as it is however many pieces there are ("flatware", "socket set")?
bool noun_is_collective(const char *noun);

#endif
