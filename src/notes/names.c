// SPDX-License-Identifier: MIT
// Makers, patterns with names, models, and what a part fits. A name is a run of words with capitals where
// none is due, or words that a cue announces ("by", "made by", "pattern is"). In a note without capitals only
// cues count.
#include <string.h>

#include "notes/things.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_one_of(const struct tokens *tokens, size_t i, const char *const *words, size_t count) {
    for (size_t k = 0; k < count; k++)
        if (token_is(tokens, i, words[k])) return true;
    return false;
}

static bool is_plain_word(const struct note *note, size_t i) {
    struct word_entry entry;
    struct noun_found noun;
    uint32_t any = (1u << USE_COUNT) - 1;
    return word_at(note, i, any, &entry) || noun_at(note, i, &noun);
}

// Does token `i` look like part of a name?
static bool is_name_word(const struct note *note, size_t i) {
    static const char *const never[] = {
        "i",       "i'm",    "i've",   "it",       "it's",    "the",       "no",       "not",      "two",
        "three",   "four",   "one",    "japan",    "germany", "england",   "china",    "usa",      "u.s.a",
        "france",  "italy",  "made",   "monday",   "tuesday", "sunday",    "saturday", "friday",   "january",
        "march",   "april",  "june",   "july",     "august",  "september", "october",  "november", "december",
        "english", "german", "french", "japanese", "chinese", "american"};
    if (i >= note->tokens.count || note->taken[i] != TAKEN_NOT) return false;
    const struct token *t = &note->tokens.at[i];
    if (t->kind != TOKEN_WORD || !t->capital || note->tokens.shouts || note->fault_word[i]) return false;
    if (is_one_of(&note->tokens, i, never, COUNT(never))) return false;
    return !t->starts || !is_plain_word(note, i);
}

static size_t name_end(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t end = i;
    while (end < tokens->count && end < i + 5) {
        if (is_name_word(note, end) || (end > i && tokens->at[end].capital && note->taken[end] == TAKEN_NOT &&
                                        tokens->at[end].kind == TOKEN_WORD)) {
            end++;
        } else if (end > i && (token_is(tokens, end, "&") || token_is(tokens, end, "and")) &&
                   is_name_word(note, end + 1)) {
            end += 2;
        } else
            break;
    }
    return end;
}

static void add(struct note *note, const char *name, size_t from, size_t to, enum sure sure) {
    struct value *value = note_attribute(note);
    *value = (struct value){.name = name,
                            .value = arena_string(note->arena, note_words(note, from, to)),
                            .sure = sure,
                            .span = note_span_of(note, from, to)};
    note_take(note, from, to, TAKEN_VALUE);
    note_reading(note, from, to, arena_format(note->arena, "%s %s", name, value->value),
                 "a name by its capitals and cues");
}

static bool has(const struct note *note, const char *name) {
    for (size_t i = 0; i < note->record->attribute_count; i++)
        if (!strcmp(note->record->attributes[i].name, name)) return true;
    return false;
}

static bool in_doubt(const struct note *note, size_t from, size_t to) {
    static const char *const words[] = {"maybe", "might", "think",      "guess",   "possibly", "probably",
                                        "looks", "could", "supposedly", "perhaps", "believe"};
    const struct tokens *tokens = &note->tokens;
    for (size_t back = 1; back <= 5 && back <= from; back++) {
        if (tokens->at[from - back].stop >= STOP_CLAUSE) break;
        if (is_one_of(tokens, from - back, words, COUNT(words))) return true;
    }
    return token_is(tokens, to, "?") || token_phrase(tokens, to, "i think") ||
           token_phrase(tokens, to, "maybe");
}

// "Pattern is Fennel Gate", "the Brambleveil pattern".
static bool is_pattern(const struct note *note, size_t from, size_t to) {
    const struct tokens *tokens = &note->tokens;
    if (token_is(tokens, to, "pattern") || token_is(tokens, to, "design")) return true;
    static const char *const lead[] = {"pattern", "design", "called", "named"};
    for (size_t back = 1; back <= 3 && back <= from; back++) {
        if (token_is(tokens, from - back, "pattern") || token_is(tokens, from - back, "design")) return true;
        if (!is_one_of(tokens, from - back, lead, COUNT(lead)) && !token_is(tokens, from - back, "is") &&
            !token_is(tokens, from - back, "the") && !token_is(tokens, from - back, ":"))
            return false;
    }
    return false;
}

static bool fits_before(const struct note *note, size_t from) {
    static const char *const words[] = {"fits", "fit", "for", "suits"};
    const struct tokens *tokens = &note->tokens;
    size_t at = from;
    while (at > 0 && (token_is(tokens, at - 1, "a") || token_is(tokens, at - 1, "an") ||
                      token_is(tokens, at - 1, "the")))
        at--;
    return at > 0 && is_one_of(tokens, at - 1, words, COUNT(words));
}

static bool is_model(const struct token *t) {
    return t->kind == TOKEN_CODE && strlen(t->fold) < 16;
}

static void add_fit(struct note *note, size_t from, size_t to) {
    struct fit *fit = note_fit(note);
    fit->brand = arena_string(note->arena, note_words(note, from, to));
    if (to < note->tokens.count && is_model(&note->tokens.at[to])) {
        fit->model = arena_string(note->arena, note_words(note, to, to + 1));
        to++;
    }
    fit->span = note_span_of(note, from, to);
    note_take(note, from, to, TAKEN_FITS);
}

static void read_models(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        if (note->taken[i] != TAKEN_NOT) continue;
        bool led = i > 0 && (token_is(tokens, i - 1, "model") || token_is(tokens, i - 1, "mod") ||
                             (i > 1 && token_is(tokens, i - 2, "model") &&
                              (token_is(tokens, i - 1, "no") || token_is(tokens, i - 1, "number") ||
                               token_is(tokens, i - 1, "is") || token_is(tokens, i - 1, "."))));
        bool figure = tokens->at[i].kind == TOKEN_FIGURE && led;
        if (!is_model(&tokens->at[i]) && !figure) continue;
        if (fits_before(note, i)) {
            struct fit *fit = note_fit(note);
            fit->model = arena_string(note->arena, note_words(note, i, i + 1));
            fit->span = note_span_of(note, i, i + 1);
            note_take(note, i, i + 1, TAKEN_FITS);
        } else
            add(note, "model", i, i + 1, in_doubt(note, i, i + 1) ? SURE_GUESS : SURE_STATED);
    }
}

void read_names(struct note *note) {
    for (size_t i = 0; i < note->tokens.count; i++) {
        size_t end = name_end(note, i);
        if (end == i) continue;
        if (fits_before(note, i))
            add_fit(note, i, end);
        else if (is_pattern(note, i, end))
            add(note, "pattern", i, end, in_doubt(note, i, end) ? SURE_GUESS : SURE_STATED);
        else if (!has(note, "brand"))
            add(note, "brand", i, end, in_doubt(note, i, end) ? SURE_GUESS : SURE_STATED);
        i = end - 1;
    }
    read_models(note);
}
