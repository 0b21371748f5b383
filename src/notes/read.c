// SPDX-License-Identifier: MIT
// The order of the readers: what has its own letters first (marks, quotes), then what is not about the thing,
// then figures, which would look like models, then names, the thing itself, what is said of it, and last what
// is wrong with it, for which kind a word of fault means depends on the thing. What nobody took is filler or
// stays unread.
#include "notes/read.h"

#include <stdlib.h>
#include <string.h>

#include "notes/measures.h"
#include "notes/things.h"

static bool is_filler(const struct note *note, size_t i) {
    const struct token *t = &note->tokens.at[i];
    struct word_entry entry;
    if (t->kind == TOKEN_SIGN) return true;
    return word_at(note, i, 1u << USE_FILLER, &entry) > 0;
}

static bool says_nothing(const struct note *note, size_t from, size_t to) {
    for (size_t i = from; i < to; i++)
        if (note->taken[i] == TAKEN_NOT && !is_filler(note, i)) return false;
    return true;
}

// Runs of tokens that no reader took, within a clause, filler at their ends left off.
static void gather_unread(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i < tokens->count;) {
        if (note->taken[i] != TAKEN_NOT || is_filler(note, i)) {
            i++;
            continue;
        }
        size_t to = i, last = i + 1;
        while (to < tokens->count && note->taken[to] == TAKEN_NOT && tokens->at[to].stop < STOP_CLAUSE) {
            if (!is_filler(note, to)) last = to + 1;
            to++;
        }
        if (!says_nothing(note, i, last)) {
            note->unread = arena_grow(note->arena, note->unread, note->unread_count, &note->unread_room,
                                      sizeof *note->unread);
            note->unread[note->unread_count++] = note_span_of(note, i, last);
        }
        i = to > i ? to : i + 1;
    }
}

static const struct node *span_list(struct note *note, const struct note_span *spans, size_t count) {
    if (!count) return NULL;
    struct node *list = node_list(note->arena);
    for (size_t i = 0; i < count; i++) {
        struct node *span = node_list(note->arena);
        node_push(note->arena, span, node_whole(note->arena, (long long)spans[i].from));
        node_push(note->arena, span, node_whole(note->arena, (long long)spans[i].to));
        node_push(note->arena, list, span);
    }
    return list;
}

static void read_one(struct note *note) {
    read_marks(note);
    read_asides(note);
    read_dates(note);
    read_measures(note);
    read_counts(note);
    read_names(note);
    read_thing(note);
    settle_measures(note);
    read_included(note);
    read_values(note);
    read_faults(note);
    gather_unread(note);
    if (!note->record->asides) note->record->asides = span_list(note, note->asides, note->aside_count);
    if (!note->record->unread) note->record->unread = span_list(note, note->unread, note->unread_count);
}

static int by_place(const void *a, const void *b) {
    const struct reading *x = a, *y = b;
    return (x->from > y->from) - (x->from < y->from);
}

struct notes_read notes_read(struct arena *arena, const struct note_reader *reader,
                             const struct record *given) {
    struct notes_read read = {.items = arena_array(arena, 1, sizeof *read.items), .count = 1};
    struct note_read *item = &read.items[0];
    item->record = *given;
    if (!given->notes) return read;
    struct note note = {.arena = arena,
                        .rules = reader->rules,
                        .phrases = reader->phrases,
                        .book = reader->book,
                        .scanner = reader->scanner,
                        .locale = reader->locale,
                        .record = &item->record};
    note_start(&note, given->notes, strlen(given->notes));
    read_one(&note);
    if (note.reading_count) qsort(note.readings, note.reading_count, sizeof *note.readings, by_place);
    item->readings = note.readings;
    item->reading_count = note.reading_count;
    return read;
}
