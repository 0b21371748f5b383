// SPDX-License-Identifier: MIT
// The paragraph that tells every fault of a record, and nothing that the record does not hold. Owner: the
// arena.
#ifndef DISCLOSURE_DISCLOSURE_H
#define DISCLOSURE_DISCLOSURE_H

#include "item/record.h"

struct sentence {
    const char *text;
    const char *because; // "flaw chip, flaw rust", "unchecked", "clear"
    struct note_span span;
};

struct disclosure {
    struct sentence *sentences;
    size_t count, room;
    const char *text; // the sentences joined by spaces; empty when there is nothing to tell
};

struct disclosure disclosure_write(struct arena *arena, const struct ruleset *rules,
                                   const struct record *record, enum locale locale,
                                   const struct variants *variants);

// --- private to the room ---
struct copied_runs;
struct disclosure_maker {
    struct arena *arena;
    const struct record *record;
    const struct copied_runs *runs; // of the seller's notes
    const struct ruleset *rules;
    enum locale locale;
    struct disclosure *made;
};
// Takes a sentence without its full stop and with a small first letter.
void disclosure_add(struct disclosure_maker *maker, const char *text, const char *because,
                    struct note_span span);

// What to look at before listing, the one that changes title or grade most first.
struct question {
    const char *id; // what --answer calls it: a check of the family, a kind of flaw, "type"
    const char *ask, *kind, *because;
    enum check_yes yes; // what a yes says, where a yes or no answers it
    int worth;          // steps of the grade count a hundred each, words of the title what they earn
    size_t order;
    enum grade lowers_to; // what the answer may lower the grade to; GRADE_A: it does not
    enum slot adds;       // what of the title it adds; SLOT_COUNT: nothing
};
struct questions {
    struct question *items;
    size_t count;
    size_t asked, answered; // checks of the family, and how many the record answers
};
enum { QUESTIONS_MOST = 7 };
// What the record is concerned with, for the two that follow: its words, folded and singular, each between
// two spaces.
const char *concerns_words(struct arena *arena, const struct record *record);
struct questions questions_ask(struct arena *arena, const struct ruleset *rules, const struct record *record,
                               const char *words);

struct photo_entry {
    const char *shows, *because;
    const char *file;  // which picture of the record shows it, or NULL
    const char *where; // the places of the flaws that it is for, or NULL
};
struct photo_list {
    struct photo_entry *items;
    size_t count;
    size_t unshown; // flaws that no picture shows
};
struct photo_list photos_wish(struct arena *arena, const struct record *record, const char *words);

#endif
