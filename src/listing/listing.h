// SPDX-License-Identifier: MIT
// The one pipeline: record -> listing. A pure function of (record, options, rules): no clock, no locale, no
// global state. Owner: the arena given to listing_draft(); the listing points into it and into the record.
#ifndef LISTING_LISTING_H
#define LISTING_LISTING_H

#include "disclosure/disclosure.h"
#include "evidence/cautions.h"
#include "evidence/claims.h"
#include "evidence/dating.h"
#include "evidence/grade.h"
#include "format/tree.h"
#include "title/given.h"
#include "title/plan.h"

struct title_word {
    const char *text;
    enum slot slot;
    int64_t worth; // what the title would lose without it
    const char *because;
    struct note_span span;
    struct texts answers; // searches that it helps to answer
};

struct left_out {
    const char *text;
    int64_t worth; // what it would add beside the words chosen
    size_t needs;  // characters it wants, its space included; 0 where room is not the reason
    const char *why;
};

struct finding {
    const char *level; // must, should, could
    const char *code, *message;
    struct note_span span;
};

struct withheld {
    const char *what, *why;
    const char *told; // the sentence that stands for it in the description, or NULL
};

// A title that the record carries or the user gave, beside the drafted one.
struct given {
    struct given_title score;
    const char *text;  // without what is private
    const char **less; // named deductions
    size_t less_count, less_room;
};

struct listing {
    const struct record *record;
    struct title_options options;
    bool title_only; // neither disclosure, description, questions, photos nor what else a title could be
    const char *title;
    size_t title_length;
    int64_t worth, bound;
    bool optimal;
    uint64_t steps;
    struct title_word *words;
    size_t word_count;
    struct left_out *left_out;
    size_t left_count;
    const char **alternates;
    size_t alternate_count;
    struct disclosure disclosure;
    const char *description;
    struct grading grading;
    struct questions questions;
    struct photo_list photos;
    const struct claims *claims;
    const struct dating *dating; // the years of its marks
    const struct cautions *cautions;
    struct finding *findings;
    size_t finding_count, finding_room;
    const char **less; // named deductions of the score
    size_t less_count, less_room;
    struct withheld *withheld;
    size_t withheld_count, withheld_room;
    const struct title_plan *plan;
    struct title_choice choice;
    const struct given *given;  // NULL where no title was given
    struct note_window *window; // what listing_note() looked through last
};

struct spelling;
struct drafter {
    const struct ruleset *rules;
    const struct variants *variants;
    struct scanner *scanner;
    struct spelling *spelling; // NULL: nothing is looked over
    const struct day *today;   // NULL: words of age are not settled
};

struct listing *listing_draft(struct arena *arena, const struct drafter *drafter, const struct record *record,
                              const struct title_options *options);
// The same with nothing but what titles are made of and judged by: for stock of which only titles change.
struct listing *listing_draft_title(struct arena *arena, const struct drafter *drafter,
                                    const struct record *record, const struct title_options *options);
// The family of a record that names none, by its noun; `*known` says how many families know it.
const struct family *listing_family(struct arena *arena, const struct ruleset *rules,
                                    const struct record *record, size_t *known);
bool listing_has_must(const struct listing *listing);
void listing_find(struct arena *arena, struct listing *listing, const char *level, const char *code,
                  const char *message, struct note_span span);

// withhold.c: what is kept back. `record` is the listing's own copy; what is private is taken out of it, so
// that nothing which is made of it can tell it. Notes stay whole: listing_note() gives a span of them to
// print.
void listing_withhold(struct arena *arena, struct listing *listing, const char *what, const char *why,
                      const char *told);
void listing_withhold_private(struct arena *arena, struct listing *listing, struct record *record);
struct note_window *listing_window(struct arena *arena);
const char *listing_note(struct arena *arena, const struct listing *listing, struct note_span span);

// qualified.c: writes the words of claims that want a qualifier with it in the listing's own copy.
void listing_qualify(struct arena *arena, const struct claims *claims, struct record *record);

// unclaim.c: takes claims without evidence out of the places, extras and pictures of the listing's own copy.
void listing_unclaim(struct arena *arena, const struct ruleset *rules, const struct claims *claims,
                     struct record *record);

// hold.c: empties what would sell goods that a caution stops; why goes to `withheld` and to the findings.
void listing_hold(struct arena *arena, struct listing *listing);

// describe.c: the whole text to paste.
const char *listing_describe(struct arena *arena, const struct drafter *drafter,
                             const struct listing *listing);
// What the thing is, as a noun phrase: "Amber glass pitcher with vertical panels".
const char *listing_noun_phrase(struct arena *arena, const struct drafter *drafter,
                                const struct listing *listing);

// choose.c: solves the plan and fills title, words, left_out and alternates.
void listing_choose(struct arena *arena, struct listing *listing, const struct title_plan *plan);

// The title that a choice of the plan makes, in pieces, before the capital that every title begins with and
// with no wording turned. Returns how many.
struct title_piece {
    const char *text;
    enum slot slot;
};
size_t listing_pieces(struct arena *arena, const struct title_plan *plan, const struct title_choice *choice,
                      struct title_piece **pieces);

// given.c: scores the title that the record carries; `raw` is that title before anything private was taken
// out.
void listing_score_given(struct arena *arena, const struct drafter *drafter, struct listing *listing,
                         const char *raw);
// "the search Green Jug (maker, 46)"; NULL for a must, which a deduction names.
const char *given_miss_text(struct arena *arena, const struct given_miss *miss);
// "12 of 80 characters; earned 61 of 74".
const char *given_score_text(struct arena *arena, const struct listing *listing);

// Outputs. tree.c: by the contract's keys. card.c: for people. page.c: HTML. explain.c: why.
struct node *listing_tree(struct arena *arena, const struct listing *listing);
void listing_card(struct arena *arena, const struct listing *listing, struct buf *out, bool color);
// linked.c: the thing as schema.org data, by its names alone; NULL when there is nothing to offer.
struct node *listing_linked_data(struct arena *arena, const struct listing *listing);
void page_begin(struct buf *out);
void listing_page(struct arena *arena, const struct listing *listing, struct buf *out);
void page_end(struct buf *out);
void listing_explain(struct arena *arena, const struct listing *listing, struct buf *out, bool color);
struct node *listing_explain_tree(struct arena *arena, const struct listing *listing);

// proof.c: runs every rule's own examples; adds what fails to `diags`. describe_rules.c: documents the keys.
struct proof_counts {
    size_t flaws, families, claims, bounds, cautions, hits, misses, misses_weighed, misses_with_word, gaps,
        examples, things, checks;
    double likeness;      // largest share of checks that two families have in common
    const char *alike[2]; // which two
};
void proof_run(struct arena *arena, const struct drafter *drafter, struct proof_counts *counts,
               struct diags *diags);

#endif
