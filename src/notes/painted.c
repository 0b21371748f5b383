// SPDX-License-Identifier: MIT
// What the seller tells of the thing in a turn of speech: what it was painted in, and where it was made.
#include <string.h>

#include "notes/any.h"
#include "notes/things.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static void tell(struct note *note, const char *name, const char *print, size_t from, size_t to) {
    const struct record *r = note->record;
    for (size_t i = 0; i < r->attribute_count; i++)
        if (!strcmp(r->attributes[i].name, name) && !r->attributes[i].of) return;
    struct value *value = note_attribute(note);
    *value = (struct value){.name = name, .value = print, .span = note_span_of(note, from, to)};
    note_reading(note, from, to, arena_format(note->arena, "%s %s", name, print), "as it is told");
}

// "Painted in matt cream", "repainted in gloss black paint": what color it has now.
static void read_painted(struct note *note) {
    static const char *const cues[] = {"painted",   "repainted", "lacquered",
                                       "enamelled", "enameled",  "finished"};
    static const char *const before[] = {"was", "been", "is",   "has", "it",   "and",
                                         "i",   "we",   "then", "now", "they", "had"};
    static const char *const looks[] = {"flat", "matt", "matte",    "gloss", "glossy", "satin",
                                        "a",    "some", "eggshell", "high",  "old"};
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i + 2 < tokens->count; i++) {
        if (!token_among(tokens, i, cues, COUNT(cues)) || tokens->at[i].stop != STOP_NONE) continue;
        bool whole = i == 0 || tokens->at[i - 1].stop != STOP_NONE || note->taken[i - 1] == TAKEN_TYPE ||
                     token_among(tokens, i - 1, before, COUNT(before));
        size_t at = i + 1;
        while (ANY(tokens, at, "over", "up", "all") && tokens->at[at].stop == STOP_NONE) at++;
        if (!whole || !token_is(tokens, at, "in")) continue;
        for (at++; token_among(tokens, at, looks, COUNT(looks)) && tokens->at[at].stop == STOP_NONE;) at++;
        struct word_entry color;
        size_t n = at < tokens->count && note->taken[at] == TAKEN_NOT
                       ? word_at(note, at, 1u << USE_COLOR, &color)
                       : 0;
        if (!n) continue;
        size_t end = at + n;
        bool ends =
            end >= tokens->count || tokens->at[end - 1].stop != STOP_NONE ||
            tokens->at[end].stop != STOP_NONE ||
            ANY(tokens, end, "paint", "enamel", "lacquer", "by", "at", "some", "and", "but", "over", "all");
        if (!ends) continue; // "painted in red letters"
        tell(note, "color", color.print, at, end);
        note_take(note, at, end, TAKEN_VALUE);
    }
}

// "Made in Sweden", on a plate or told: the mark stays as it is.
static void read_origin(struct note *note) {
    static const char *const lands[] = {
        "italy",   "germany", "france",         "england",    "japan",    "china",    "portugal",
        "spain",   "sweden",  "norway",         "denmark",    "finland",  "poland",   "austria",
        "hungary", "belgium", "holland",        "ireland",    "scotland", "wales",    "switzerland",
        "india",   "mexico",  "brazil",         "canada",     "usa",      "u.s.a",    "taiwan",
        "korea",   "russia",  "czechoslovakia", "yugoslavia", "romania",  "bulgaria", "britain",
        "turkey",  "greece",  "thailand",       "vietnam",    "indonesia"};
    static const char *const doubts[] = {"not",     "maybe",  "possibly",   "might",  "think", "probably",
                                         "isn't",   "says",   "never",      "guess",  "if",    "or",
                                         "perhaps", "claims", "supposedly", "wasn't", "were"};
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i + 2 < tokens->count; i++) {
        if (!token_is(tokens, i, "made") || !token_is(tokens, i + 1, "in")) continue;
        if (!token_among(tokens, i + 2, lands, COUNT(lands)) || !tokens->at[i + 2].capital) continue;
        bool marked = note->taken[i + 2] == TAKEN_MARK, doubt = false;
        if (!marked && note->taken[i + 2] != TAKEN_NOT) continue;
        for (size_t k = i; !marked && k > 0 && i - k < 4 && tokens->at[k - 1].stop == STOP_NONE; k--)
            doubt |= token_among(tokens, k - 1, doubts, COUNT(doubts));
        if (doubt || token_is(tokens, i + 3, "?")) continue;
        tell(note, "countryOfOrigin", arena_string(note->arena, note_words(note, i + 2, i + 3)), i + 2,
             i + 3);
        if (!marked) note_take(note, i, i + 3, TAKEN_VALUE);
    }
}

void read_said_of(struct note *note) {
    if (note->book) read_painted(note);
    read_origin(note);
}
