// SPDX-License-Identifier: MIT
// The note's own book-keeping: who took which token, and the growing lists of the record.
#include "notes/note.h"

#include <stdint.h>
#include <string.h>

#include "notes/plain_looks.h"
#include "notes/things.h"
#include "text/buf.h"
#include "text/order.h"

static bool has_size(const struct flaw *flaw) {
    return flaw->class == CLASS_DAMAGE || flaw->class == CLASS_DIRT || flaw->class == CLASS_REPAIR;
}

static void mark_hits(struct note *note) {
    for (size_t i = 0; i < note->hits.count; i++) {
        const struct phrase_hit *hit = &note->hits.at[i];
        unsigned char how = has_size(hit->flaw) ? FAULT_WORD_SIZED : FAULT_WORD;
        if (hit->flaw->class == CLASS_STATUS || hit->flaw->class == CLASS_FEATURE) continue;
        size_t from = hit->from; // "disc, scuffed": the name before the comma is no word of it
        for (size_t k = hit->from; hit->near && k < hit->to; k++)
            if (note->tokens.at[k].stop == STOP_COMMA) from = k + 1;
        for (size_t k = from; k < hit->to; k++)
            if (note->fault_word[k] < how) note->fault_word[k] = how;
    }
}

void note_mark_fault_words(struct note *note) {
    if (!note->phrases) return;
    note->hits = phrases_find(note->arena, note->phrases, &note->tokens);
    mark_hits(note);
}

// "Split oak basket": a way of making.
static bool is_split_wood(const struct note *note, const struct phrase_hit *hit) {
    static const char *const woods[] = {"oak", "ash", "cane", "willow", "hickory", "bamboo", "reed"};
    return token_is(&note->tokens, hit->from, "split") &&
           token_among(&note->tokens, hit->from + 1, woods, sizeof woods / sizeof *woods);
}

// "Old box with a dent": where nothing else is named the box is no packing.
static bool is_lone_box(const struct note *note, const struct phrase_hit *hit) {
    if (strcmp(hit->flaw->rule.id, "box-wear") != 0 || hit->from > 1 ||
        !token_is(&note->tokens, hit->from + 1, "with"))
        return false;
    for (size_t i = 0; i < note->tokens.count; i++) {
        struct noun_found noun;
        if (i >= hit->from && i < hit->to) continue;
        if (noun_at(note, i, &noun) && noun.thing && !(noun.uses & (1u << USE_GATED))) return false;
    }
    return true;
}

static void drop_looks(struct note *note) {
    size_t kept = 0;
    for (size_t i = 0; i < note->hits.count; i++)
        if (!is_split_wood(note, &note->hits.at[i]) && !is_lone_box(note, &note->hits.at[i]) &&
            !look_is_plain(note, &note->hits.at[i]))
            note->hits.at[kept++] = note->hits.at[i];
    if (kept == note->hits.count) return;
    note->hits.count = kept;
    memset(note->fault_word, 0, note->tokens.count);
    mark_hits(note);
}

// "Post hole digger": no hole, though the word of one is in the name.
static void clear_names(struct note *note) {
    struct noun_found noun;
    for (size_t i = 0; note->rules && i < note->tokens.count; i++) {
        if (!noun_at(note, i, &noun) || !(noun.thing || noun.uses & (1u << USE_THING)) || noun.to < i + 2)
            continue;
        bool whole = true;
        for (size_t k = i; k < noun.to; k++) whole &= note->fault_word[k] != 0;
        if (!whole && !note->fault_word[noun.to - 1]) memset(note->fault_word + i, 0, noun.to - i);
        i = noun.to - 1;
    }
}

void note_start(struct note *note, const char *text, size_t size) {
    note->tokens = tokens_cut(note->arena, text, size);
    note->tokens.asked = note->asked;
    note_write_out(note);
    note_drop_conversions(note);
    note_part_clauses(note);
    note_name_again(note);
    note->taken = arena_array(note->arena, note->tokens.count + 1, sizeof *note->taken);
    note->nouns = noun_memos(note->arena, note->tokens.count);
    note->words = arena_array(note->arena, note->tokens.count + 1, sizeof *note->words);
    note->fault_word = arena_array(note->arena, note->tokens.count + 1, sizeof *note->fault_word);
    note_mend_confused(note);
    note_mend_trials(note);
    note_mark_fault_words(note);
    note_mend_slips(note);
    drop_looks(note);
    clear_names(note);
}

void note_take(struct note *note, size_t from, size_t to, enum taken how) {
    if (to > from) memset(note->taken + from, (int)how, to - from);
}

bool note_free(const struct note *note, size_t from, size_t to) {
    if (to > note->tokens.count) return false;
    for (size_t i = from; i < to; i++)
        if (note->taken[i] != TAKEN_NOT) return false;
    return true;
}

struct note_span note_span_of(const struct note *note, size_t from, size_t to) {
    if (to <= from) return (struct note_span){0, 0};
    return (struct note_span){note->tokens.at[from].from, note->tokens.at[to - 1].to};
}

const char *note_words(const struct note *note, size_t from, size_t to) {
    struct buf out = buf_start(note->arena);
    for (size_t i = from; i < to; i++) {
        const struct token *token = &note->tokens.at[i];
        if (token->stop == STOP_LINE || token->fold[0] == '\n') continue;
        if (out.n && !token->joined) buf_byte(&out, ' ');
        buf_add(&out, note->tokens.text + token->from, token->to - token->from);
    }
    return out.at;
}

const char *note_meant(const struct note *note, size_t from, size_t to) {
    if (!note_slipped(note, from, to)) return note_words(note, from, to);
    struct buf out = buf_start(note->arena);
    for (size_t i = from; i < to; i++) {
        const struct token *token = &note->tokens.at[i];
        buf_format(&out, "%s%s", out.n && !token->joined ? " " : "",
                   token->slip ? token->fold : note_words(note, i, i + 1));
    }
    return out.at;
}

void note_reading(struct note *note, size_t from, size_t to, const char *what, const char *because) {
    struct note_span span = note_span_of(note, from, to);
    note->readings = arena_grow(note->arena, note->readings, note->reading_count, &note->reading_room,
                                sizeof *note->readings);
    note->readings[note->reading_count++] = (struct reading){span.from, span.to, what, because, NULL};
}

// A clause longer than this is no clause; the bound keeps readers linear on notes without a stop.
enum { CLAUSE_MOST = 80 };

size_t note_clause_from(const struct note *note, size_t i, enum token_stop least) {
    for (size_t n = 0; n < CLAUSE_MOST && i > 0 && note->tokens.at[i - 1].stop < least; n++) i--;
    return i;
}

size_t note_clause_to(const struct note *note, size_t i, enum token_stop least) {
    for (size_t n = 0; n < CLAUSE_MOST && i < note->tokens.count && note->tokens.at[i].stop < least; n++) i++;
    return i;
}

#define GROW(function, type, list, number, rooms)                                                            \
    type *function(struct note *note) {                                                                      \
        if (note->rooms < note->record->number) note->rooms = note->record->number; /* given by hand */      \
        note->record->list = arena_grow(note->arena, note->record->list, note->record->number, &note->rooms, \
                                        sizeof *note->record->list);                                         \
        type *entry = &note->record->list[note->record->number++];                                           \
        memset(entry, 0, sizeof *entry);                                                                     \
        return entry;                                                                                        \
    }
GROW(note_attribute, struct value, attributes, attribute_count, attribute_room)
GROW(note_flaw, struct item_flaw, flaws, flaw_count, flaw_room)
GROW(note_clear, struct item_clear, clear, clear_count, clear_room)
GROW(note_included, struct item_included, includes, include_count, include_room)
GROW(note_measurement, struct measurement, measurements, measurement_count, measurement_room)
GROW(note_mark, struct mark, marks, mark_count, mark_room)
GROW(note_fit, struct fit, fits, fit_count, fit_room)

void note_aside(struct note *note, size_t from, size_t to) {
    if (to <= from) return;
    note->asides =
        arena_grow(note->arena, note->asides, note->aside_count, &note->aside_room, sizeof *note->asides);
    note->asides[note->aside_count++] = note_span_of(note, from, to);
    note_take(note, from, to, TAKEN_ASIDE);
}

void note_unchecked(struct note *note, const char *what) {
    struct texts *list = &note->record->unchecked;
    for (size_t i = 0; i < list->count; i++)
        if (text_same(list->at[i], what)) return;
    if (note->unchecked_room < list->count) note->unchecked_room = list->count; // given by hand
    list->at = arena_grow(note->arena, (void *)(uintptr_t)list->at, list->count, &note->unchecked_room,
                          sizeof *list->at);
    list->at[list->count++] = what;
}
