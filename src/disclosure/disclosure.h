// SPDX-License-Identifier: MIT
// The paragraph that tells every fault of a record, and nothing that the record does not hold. Owner: the
// arena.
#ifndef DISCLOSURE_DISCLOSURE_H
#define DISCLOSURE_DISCLOSURE_H

#include "item/record.h"

struct sentence {
    const char *text;
    const char *because; // "flaw chip", "unchecked", "clear"
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
// One flaw as one sentence (disclosure/sentence.c).
const char *flaw_sentence(struct arena *arena, const struct item_flaw *flaw, enum locale locale);

// What to look at before listing, most telling first.
struct question {
    const char *ask, *kind, *because;
};
struct questions {
    struct question *items;
    size_t count;
    size_t asked, answered; // checks of the family, and how many the record answers
};
enum { QUESTIONS_MOST = 7 };
struct questions questions_ask(struct arena *arena, const struct record *record);

struct photo_entry {
    const char *shows, *because;
    const char *file; // which picture of the record shows it, or NULL
};
struct photo_list {
    struct photo_entry *items;
    size_t count;
};
struct photo_list photos_wish(struct arena *arena, const struct record *record);

#endif
