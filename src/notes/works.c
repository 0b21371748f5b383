// SPDX-License-Identifier: MIT
// A title is a run of words with capitals, small ones between them allowed, in a note that speaks of a book,
// a record or a film; who made it stands behind "by" or "with".
#include "notes/works.h"

#include <string.h>

#include "notes/any.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum work { WORK_NONE, WORK_BOOK, WORK_RECORD };

static enum work work_at(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t no = i > 1 && token_is(tokens, i - 1, ".") ? i - 2 : i - 1;
    if (i > 0 && tokens->at[i].kind == TOKEN_FIGURE && ANY(tokens, no, "no", "number", "model", "type"))
        return WORK_NONE; // "Torwell No. 78 plane"
    static const char *const books[] = {"novel",      "paperback", "hardcover", "hardback",  "book",
                                        "cookbook",   "textbook",  "atlas",     "memoir",    "biography",
                                        "softcover",  "comic",     "thriller",  "anthology", "magazine",
                                        "paperbacks", "annual"};
    static const char *const records[] = {"lp",  "record", "album", "45",  "45s",   "cd",         "cassette",
                                          "vhs", "dvd",    "78",    "lps", "vinyl", "soundtrack", "ep"};
    if (token_among(&note->tokens, i, books, COUNT(books))) return WORK_BOOK;
    if (token_among(&note->tokens, i, records, COUNT(records))) return WORK_RECORD;
    if (token_phrase(&note->tokens, i, "copy of")) return WORK_BOOK;
    return WORK_NONE;
}

static bool is_capital(const struct note *note, size_t i) {
    if (i >= note->tokens.count || note->taken[i] != TAKEN_NOT) return false;
    const struct token *t = &note->tokens.at[i];
    return t->kind == TOKEN_WORD && t->capital && !note->tokens.shouts && work_at(note, i) == WORK_NONE &&
           !(t->fold[0] == 'i' && (!t->fold[1] || t->fold[1] == '\''));
}

// The run of capitals from `i`, with small words and initials inside.
static size_t run_end(const struct note *note, size_t i) {
    static const char *const inner[] = {"of",  "the", "a",  "an", "on",  "in", "from",
                                        "and", "&",   "at", "to", "for", "."};
    const struct tokens *tokens = &note->tokens;
    size_t end = i, at = i;
    while (at < tokens->count && at < i + 9) {
        if (is_capital(note, at) && (at == i || !tokens->at[at].starts))
            end = ++at;
        else if (at > i && token_among(tokens, at, inner, COUNT(inner)) && tokens->at[at].stop < STOP_COMMA)
            at++;
        else
            break;
    }
    return end;
}

static void add(struct note *note, const char *name, size_t from, size_t to) {
    struct value *value = note_attribute(note);
    *value = (struct value){.name = name,
                            .value = arena_string(note->arena, note_words(note, from, to)),
                            .span = note_span_of(note, from, to)};
    note_take(note, from, to, TAKEN_VALUE);
    note_reading(note, from, to, arena_format(note->arena, "%s %s", name, value->value), "title of a work");
}

static size_t maker_from(const struct note *note, size_t i, enum work work) {
    const struct tokens *tokens = &note->tokens;
    if (!token_is(tokens, i, "by") && !(work == WORK_RECORD && token_is(tokens, i, "with")))
        return tokens->count;
    i++;
    while (token_is(tokens, i, "the") || (token_is(tokens, i, "a") && !tokens->at[i].capital))
        i++; // but "by A. Corrigan"
    return i;
}

static enum work first_work(const struct note *note, size_t *at) {
    for (size_t i = 0; i < note->tokens.count && note->tokens.at[i].stop < STOP_SENTENCE; i++) {
        enum work work =
            note->taken[i] == TAKEN_NOT || note->taken[i] == TAKEN_COUNT ? work_at(note, i) : WORK_NONE;
        if (work == WORK_NONE) continue;
        *at = i;
        return work;
    }
    return WORK_NONE;
}

void read_works(struct note *note) {
    size_t at = 0;
    enum work work = first_work(note, &at);
    if (work == WORK_NONE) return;
    bool named = false, made = false;
    for (size_t i = 0; i < note->tokens.count && note->tokens.at[i].stop < STOP_SENTENCE; i++) {
        size_t maker = maker_from(note, i, work), end = i;
        if (!made && maker < note->tokens.count && (end = run_end(note, maker)) > maker) {
            add(note, work == WORK_BOOK ? "author" : "byArtist", maker, end);
            made = true;
            i = end - 1;
            continue;
        }
        if (named || !is_capital(note, i) || (note->tokens.at[i].starts && i <= at && i > 0)) continue;
        if (i == 0 && (end = run_end(note, i)) < 2) continue; // a capital that only begins the note
        if (i == 0 && end <= at && token_is(&note->tokens, end, "copy")) continue;
        end = run_end(note, i);
        if (i == 0 && end - i < 2) continue;
        add(note, "name", i, end);
        named = true;
        i = end - 1;
    }
}
