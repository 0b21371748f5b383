// SPDX-License-Identifier: MIT
// Notes to item records: what a seller scribbled or dictated, put under the keys of the record, each fact
// with its bytes in the note and the rule behind it. A pure function of (note, rules, word book, locale).
// Owner: the arena given.
#ifndef NOTES_READ_H
#define NOTES_READ_H

#include "item/record.h"
#include "notes/note.h"
#include "notes/split.h"

struct note_reader {
    const struct ruleset *rules;
    const struct phrases *phrases; // phrases_new() of those rules
    const struct wordbook *book;
    struct scanner *scanner;
    struct asked *asked; // makes many notes quicker; NULL: nothing is kept
    enum locale locale;
    unsigned off; // phenomena left unread, bits of enum phenomenon: for tests that ask what each is worth
};

struct note_read {
    struct record record;
    const struct reading *readings; // in the order of the note
    size_t reading_count;
};

struct note_work; // a note that is being read

// Notes cut into one piece a thing, none of them read yet. `given` must live as long.
struct notes {
    const struct record *given;
    const struct note_piece *pieces;
    size_t count;     // at least 1
    const char *form; // as `notes_are` of a record
};

// `given` holds id and notes, and may hold more: what a person wrote as keys stands, the note only adds to
// it.
struct notes notes_open(struct arena *arena, const struct note_reader *reader, const struct record *given);
size_t notes_size(const struct notes *notes, size_t i); // of piece `i`, in bytes
// The thing of piece `i`. Each is read by itself, so that what one took can be given back before the next. Of
// a piece longer than LIMIT_NOTE_BYTES the rest is left unread.
struct note_read *notes_read(struct arena *arena, const struct note_reader *reader, const struct notes *notes,
                             size_t i);

// The same for many: each is begun, then all are read together, one reader after the other over all of them.
// That is quicker: the readers are more code and tables than the nearer caches of a processor hold. What is
// kept in `asked` is not forgotten here: asked_begin() before the first is begun. The works may be any that
// were begun and not read yet; each gives its result once it is read.
struct note_work *notes_begin(struct arena *arena, const struct note_reader *reader,
                              const struct notes *notes, size_t i);
void notes_read_together(struct note_work *const *works, size_t count);
struct note_read *notes_result(struct note_work *work);

// Does the word book know the word, case-folded, in any inflection? english.c
bool english_word(const struct wordbook *book, const char *fold);

#endif
