// SPDX-License-Identifier: MIT
// Notes to item records: what a seller scribbled or dictated, put under the keys of the record, each fact
// with its bytes in the note and the rule behind it. A pure function of (note, rules, word book, locale).
// Owner: the arena given.
#ifndef NOTES_READ_H
#define NOTES_READ_H

#include "item/record.h"
#include "notes/note.h"

struct note_reader {
    const struct ruleset *rules;
    const struct phrases *phrases; // phrases_new() of those rules
    const struct wordbook *book;
    struct scanner *scanner;
    enum locale locale;
    unsigned off; // phenomena left unread, bits of enum phenomenon: for tests that ask what each is worth
};

struct note_read {
    struct record record;
    const struct reading *readings; // in the order of the note
    size_t reading_count;
};

struct notes_read {
    struct note_read *items; // one a thing of the note
    size_t count;
};

// `given` holds id and notes, and may hold more: what a person wrote as keys stands, the note only adds to
// it.
struct notes_read notes_read(struct arena *arena, const struct note_reader *reader,
                             const struct record *given);

#endif
