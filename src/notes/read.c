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

struct note_work {
    struct note note;
    struct note_read read;
    struct paragraph paragraph;
    const struct mixed *mixed;
    struct fault_reader *faults;
    size_t size, reach; // of the text, and what is read of it
    bool alien;         // no note in English: nothing is read of it
};

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

size_t notes_size(const struct notes *notes, size_t i) {
    if (notes->count > 1) return notes->pieces[i].to - notes->pieces[i].from;
    return notes->given->notes ? strlen(notes->given->notes) : 0;
}

struct note_work *notes_begin(struct arena *arena, const struct note_reader *reader,
                              const struct notes *notes, size_t i) {
    struct note_work *work = arena_alloc(arena, sizeof *work);
    struct record *record = &work->read.record;
    *record = *notes->given;
    const char *text = notes->given->notes ? notes->given->notes : "";
    record->notes = text;
    record->notes_are = notes->form;
    if (notes->count > 1) {
        const struct note_piece *piece = &notes->pieces[i];
        record->notes = arena_copy(arena, text + piece->from, piece->to - piece->from);
        if (record->id) record->id = arena_format(arena, "%s-%zu", record->id, i + 1);
    }
    work->note = (struct note){.arena = arena,
                               .rules = reader->rules,
                               .phrases = reader->phrases,
                               .book = reader->book,
                               .scanner = reader->scanner,
                               .asked = reader->asked,
                               .locale = reader->locale,
                               .off = reader->off,
                               .record = record};
    return work;
}

static void start(struct note_work *work) {
    struct record *record = &work->read.record;
    work->size = strlen(record->notes);
    work->reach = reach_of(record->notes, work->size);
    note_start(&work->note, record->notes, work->reach);
    if (!record->notes_are) record->notes_are = alien_words(&work->note);
    work->alien = record->notes_are != NULL;
    if (work->alien) leave_unread(&work->note);
}

static void read_one_paragraph(struct note_work *work) {
    work->paragraph = paragraph_read(&work->note);
}

static void read_lot(struct note_work *work) {
    work->mixed = read_mixed(&work->note);
}

static void begin_faults(struct note_work *work) {
    work->faults = faults_begin(&work->note);
}

static void settle_lot(struct note_work *work) {
    settle_mixed(&work->note, work->mixed);
}

static void keep_paragraph(struct note_work *work) {
    paragraph_keep(&work->note, &work->paragraph);
}

static void read_rest(struct note_work *work) {
    note_leftover(&work->note);
    note_rest(&work->note, says_nothing);
}

static void end(struct note_work *work) {
    if (work->note.one && !work->read.record.count) work->read.record.count = 1;
    if (work->reach < work->size) leave_rest(&work->note, work->reach, work->size);
    told_set(work->note.arena, &work->read.record);
    finish(&work->note, &work->read);
}

struct step {
    void (*reads)(struct note *note);
    void (*takes)(struct note_work *work);
};

static const struct step before_faults[] = {
    {read_alien, NULL},       {NULL, read_one_paragraph}, {read_title_case, NULL}, {read_owners, NULL},
    {read_persons, NULL},     {read_names_put, NULL},     {read_arrivals, NULL},   {read_writing, NULL},
    {read_asides, NULL},      {read_dates, NULL},         {read_measures, NULL},   {read_counts, NULL},
    {read_names, NULL},       {read_thing, NULL},         {read_type_whole, NULL}, {read_credits, NULL},
    {read_model_named, NULL}, {settle_measures, NULL},    {NULL, read_lot},        {read_included, NULL},
    {read_said_of, NULL},     {read_values, NULL},        {NULL, begin_faults}};
static const struct step behind_faults[] = {
    {kin_last, NULL},     {settle_failed_part, NULL}, {settle_stuff, NULL}, {NULL, settle_lot},
    {settle_alike, NULL}, {NULL, keep_paragraph},     {NULL, read_rest}};

static void take(struct note_work *const *works, size_t count, const struct step *step) {
    for (size_t i = 0; i < count; i++) {
        if (works[i]->alien) continue;
        if (step->reads) step->reads(&works[i]->note);
        if (step->takes) step->takes(works[i]);
    }
}

// As many as the nearer caches hold beside one reader and its tables.
enum { TOGETHER_MOST = 64 };

static void read_group(struct note_work *const *works, size_t count) {
    for (size_t i = 0; i < count; i++) start(works[i]);
    for (size_t k = 0; k < sizeof before_faults / sizeof *before_faults; k++)
        take(works, count, &before_faults[k]);
    for (size_t k = 0; k < fault_reader_count; k++)
        for (size_t i = 0; i < count; i++)
            if (!works[i]->alien) faults_read(works[i]->faults, k);
    for (size_t k = 0; k < sizeof behind_faults / sizeof *behind_faults; k++)
        take(works, count, &behind_faults[k]);
    for (size_t i = 0; i < count; i++) end(works[i]);
}

void notes_read_together(struct note_work *const *works, size_t count) {
    for (size_t from = 0; from < count; from += TOGETHER_MOST)
        read_group(works + from, count - from < TOGETHER_MOST ? count - from : TOGETHER_MOST);
}

struct note_read *notes_result(struct note_work *work) {
    return &work->read;
}

struct note_read *notes_read(struct arena *arena, const struct note_reader *reader, const struct notes *notes,
                             size_t i) {
    if (reader->asked) asked_begin(reader->asked);
    struct note_work *work = notes_begin(arena, reader, notes, i);
    notes_read_together(&work, 1);
    return notes_result(work);
}
