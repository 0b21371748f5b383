// SPDX-License-Identifier: MIT
// The readers in their order. Writing on the thing first, because a mark may hold any word; then what is not
// about the thing, so that no price becomes a measure; then years before other figures, measures before
// counts. Then names, the thing itself and what is said of it; last what is wrong with it, for which kind a
// word of fault means depends on the thing. What nobody took is sorted at the end.
#include "notes/read.h"

#include <stdlib.h>
#include <string.h>

#include "item/told.h"
#include "notes/alien.h"
#include "notes/kin.h"
#include "notes/measures.h"
#include "notes/paragraph.h"
#include "notes/rest.h"
#include "notes/split.h"
#include "notes/title_case.h"
#include "text/limits.h"

static bool says_nothing(const struct note *note, size_t i) {
    if (rest_is_small(note, i)) return true;
    const struct token *token = &note->tokens.at[i];
    if (!note->book || token->kind != TOKEN_WORD) return false;
    struct word_entry entry;
    return wordbook_find(note->book, token->fold, strlen(token->fold), &entry) &&
           (entry.uses & (1u << USE_FILLER));
}

static int by_place(const void *a, const void *b) {
    const struct reading *x = a, *y = b;
    if (x->from != y->from) return x->from < y->from ? -1 : 1;
    return (x->to > y->to) - (x->to < y->to);
}

static int span_order(const void *a, const void *b) {
    const struct note_span *x = a, *y = b;
    return (x->from > y->from) - (x->from < y->from);
}

struct note_half {
    struct note note;
    struct note_read read;
    struct paragraph paragraph;
    const struct mixed *mixed;
    size_t size, reach; // of the text, and what is read of it
    bool alien;         // no note in English: nothing is read of it
};

static void read_thing_and_said(struct note_half *half) {
    struct note *note = &half->note;
    read_alien(note);
    half->paragraph = paragraph_read(note);
    read_title_case(note);
    read_owners(note);
    read_persons(note);
    read_writing(note);
    read_asides(note);
    read_dates(note);
    read_measures(note);
    read_counts(note);
    read_names(note);
    read_thing(note);
    read_credits(note);
    read_model_named(note);
    settle_measures(note);
    half->mixed = read_mixed(note);
    read_included(note);
    read_said_of(note);
    read_values(note);
}

static void read_wrong_and_rest(struct note_half *half) {
    struct note *note = &half->note;
    read_faults(note);
    kin_last(note);
    settle_stuff(note);
    settle_mixed(note, half->mixed);
    settle_alike(note);
    paragraph_keep(note, &half->paragraph);
    note_leftover(note);
    note_rest(note, says_nothing);
}

// Of what is no note in English nothing is guessed.
static void leave_unread(struct note *note) {
    if (!note->tokens.count) return;
    note->unread =
        arena_grow(note->arena, note->unread, note->unread_count, &note->unread_room, sizeof *note->unread);
    note->unread[note->unread_count++] = note_span_of(note, 0, note->tokens.count);
}

static void finish(struct note *note, struct note_read *read) {
    if (note->reading_count) qsort(note->readings, note->reading_count, sizeof *note->readings, by_place);
    if (note->aside_count) qsort(note->asides, note->aside_count, sizeof *note->asides, span_order);
    struct record *record = &read->record;
    if (!record->asides) record->asides = note_spans_tree(note, note->asides, note->aside_count);
    if (!record->unread) record->unread = note_spans_tree(note, note->unread, note->unread_count);
    read->readings = note->readings;
    read->reading_count = note->reading_count;
}

// What is read of a note that is too long: up to the last line or sentence that ends within the limit.
static size_t reach_of(const char *text, size_t size) {
    if (size <= LIMIT_NOTE_BYTES) return size;
    size_t reach = LIMIT_NOTE_BYTES, least = LIMIT_NOTE_BYTES / 2;
    while (reach > least && text[reach - 1] != '\n' && (text[reach - 1] != ' ' || text[reach - 2] != '.'))
        reach--;
    if (reach > least) return reach;
    for (reach = LIMIT_NOTE_BYTES; ((unsigned char)text[reach] & 0xC0) == 0x80;) reach--;
    return reach;
}

static void leave_rest(struct note *note, size_t from, size_t to) {
    note->unread =
        arena_grow(note->arena, note->unread, note->unread_count, &note->unread_room, sizeof *note->unread);
    note->unread[note->unread_count++] = (struct note_span){from, to};
    note->record->notes_read = from;
}

// Keys that a person wrote speak of one thing.
static bool is_bare(const struct record *given) {
    return !given->type.value && !given->family && !given->attribute_count && !given->flaw_count &&
           !given->clear_count && !given->measurement_count && !given->mark_count && !given->count &&
           !given->include_count;
}

struct notes notes_open(struct arena *arena, const struct note_reader *reader, const struct record *given) {
    const char *text = given->notes ? given->notes : "";
    struct notes notes = {.given = given, .count = 1, .form = alien_form(text)};
    if (!notes.form && is_bare(given))
        notes.pieces = note_split(arena, reader->rules, text, strlen(text), &notes.count);
    return notes;
}

struct note_half *notes_read_thing(struct arena *arena, const struct note_reader *reader,
                                   const struct notes *notes, size_t i) {
    struct note_half *half = arena_alloc(arena, sizeof *half);
    struct record *record = &half->read.record;
    *record = *notes->given;
    const char *text = notes->given->notes ? notes->given->notes : "";
    record->notes = text;
    record->notes_are = notes->form;
    if (notes->count > 1) {
        const struct note_piece *piece = &notes->pieces[i];
        record->notes = arena_copy(arena, text + piece->from, piece->to - piece->from);
        if (record->id) record->id = arena_format(arena, "%s-%zu", record->id, i + 1);
    }
    half->note = (struct note){.arena = arena,
                               .rules = reader->rules,
                               .phrases = reader->phrases,
                               .book = reader->book,
                               .scanner = reader->scanner,
                               .asked = reader->asked,
                               .locale = reader->locale,
                               .off = reader->off,
                               .record = record};
    half->size = strlen(record->notes);
    half->reach = reach_of(record->notes, half->size);
    note_start(&half->note, record->notes, half->reach);
    if (!record->notes_are) record->notes_are = alien_words(&half->note);
    half->alien = record->notes_are != NULL;
    if (half->alien)
        leave_unread(&half->note);
    else
        read_thing_and_said(half);
    return half;
}

struct note_read *notes_read_wrong(struct note_half *half) {
    struct record *record = &half->read.record;
    if (!half->alien) read_wrong_and_rest(half);
    if (half->reach < half->size) leave_rest(&half->note, half->reach, half->size);
    told_set(half->note.arena, record);
    finish(&half->note, &half->read);
    return &half->read;
}

struct note_read *notes_read(struct arena *arena, const struct note_reader *reader, const struct notes *notes,
                             size_t i) {
    if (reader->asked) asked_begin(reader->asked);
    return notes_read_wrong(notes_read_thing(arena, reader, notes, i));
}
