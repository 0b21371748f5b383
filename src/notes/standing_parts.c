// SPDX-License-Identifier: MIT
#include "notes/standing_parts.h"

#include "notes/any.h"
#include "notes/number.h"
#include "notes/standing.h"
#include "notes/things.h"
#include "text/order.h"
#include "text/utf8.h"

// "Velvet back", "pine sides", "brass corners": sides of the thing are parts of their own stuff.
bool standing_side(const struct note *note, size_t i) {
    static const char *const words[] = {"back",   "backs", "front",  "fronts",   "side",     "sides",
                                        "end",    "ends",  "corner", "corners",  "bottom",   "top",
                                        "tops",   "edge",  "edges",  "face",     "centre",   "center",
                                        "middle", "tip",   "tips",   "interior", "exterior", "bars",
                                        "slats",  "rungs", "rails",  "uprights", "panels",   "panel"};
    return token_among(&note->tokens, i, words, sizeof words / sizeof *words);
}

// "Red wooden handle" has a red handle.
const char *standing_part_words(const struct note *note, size_t from, size_t to) {
    struct word_entry entry;
    size_t n = to - from > 1 ? word_at(note, from, 1u << USE_MATERIAL, &entry) : 0;
    if (n && from + n < to) from += n;
    // "Case is mahogany": its capital is the sentence's
    const struct token *first = &note->tokens.at[from];
    const char *words = note_meant(note, from, to);
    return first->starts && !first->capitals ? utf8_fold(note->arena, words)
                                             : arena_string(note->arena, words);
}

const char *standing_part_before(const struct note *note,
                                 size_t i) { // "the lid is": the words before token i
    struct word_entry entry;
    for (size_t n = 3; n > 0; n--)
        if (i >= n && word_at(note, i - n, 1u << USE_PART, &entry) == n && !standing_is_type(note, i - 1))
            return standing_part_words(note, i - n, i);
    bool side = i > 0 && (standing_side(note, i - 1) || ANY(&note->tokens, i - 1, "inside", "outside"));
    bool opens = i == 1 ||
                 (i > 1 && (standing_is_stop(note, i - 2) || ANY(&note->tokens, i - 2, "the", "its", "and")));
    return side && opens ? standing_part_words(note, i - 1, i) : NULL; // "back is satin"
}

// "4 plates (melamine)": of what stands before the bracket.
const char *standing_bracketed_by(const struct note *note, size_t open) {
    enum { LIST_MOST = 12 };
    struct noun_found noun;
    struct word_entry entry;
    // "4 balls (blue, red, black)": behind a comma too
    for (size_t k = 0; k < LIST_MOST && open > 0 && token_is(&note->tokens, open, ","); k++) {
        size_t at = open - 1;
        while (at > 0 && open - at < LIST_MOST && !ANY(&note->tokens, at, "(", ")") &&
               !standing_is_stop(note, at))
            at--;
        open = at;
    }
    if (!token_is(&note->tokens, open, "(") || !open || standing_is_type(note, open - 1)) return NULL;
    bool part = word_at(note, open - 1, 1u << USE_PART, &entry) == 1;
    bool goods = noun_at(note, open - 1, &noun) && noun.to == open && (noun.thing || !noun.gated);
    size_t number; // "4 balls (blue, red)"
    bool counted = open > 1 && number_whole(&note->tokens, open - 2, &number) > 1;
    return part || goods || counted ? standing_part_words(note, open - 1, open) : NULL;
}

// "Drip tray inside is a later one, tin": what stands behind the comma is still of that part.
const char *standing_part_spoken_of(const struct note *note, size_t comma) {
    const struct tokens *tokens = &note->tokens;
    if (tokens->at[comma].stop != STOP_COMMA || !comma) return NULL;
    size_t from = note_clause_from(note, comma - 1, STOP_COMMA);
    if (!from || tokens->at[from - 1].stop < STOP_SENTENCE) return NULL;
    struct word_entry entry;
    bool later = false;
    for (size_t i = from; i < comma && !later; i++)
        later = ANY(tokens, i, "replacement", "later", "new", "newer", "replaced", "modern", "another",
                    "reproduction", "made");
    if (!later) return NULL;
    while (ANY(tokens, from, "the", "its", "a")) from++;
    enum { WORDS_MOST = 3 };
    for (size_t n = WORDS_MOST; n > 0; n--)
        if (from + n < comma && word_at(note, from + n - 1, 1u << USE_PART, &entry) == 1 &&
            ANY(tokens, from + n, "is", "was", "are", "has", "been", "replaced", "inside", "on", "looks"))
            return standing_part_words(note, from, from + n);
    return NULL;
}

const char *standing_subject(const struct note *note, size_t verb) {
    static const char *const whole[] = {
        "it",    "they",  "this",   "that",   "these", "those",  "which",   "who",   "all",
        "rest",  "whole", "thing",  "things", "both",  "one",    "ones",    "what",  "there",
        "i",     "he",    "she",    "we",     "you",   "piece",  "lot",     "set",   "pair",
        "else",  "other", "others", "item",   "body",  "size",   "date",    "maker", "smell",
        "guess", "think", "main",   "some",   "any",   "inside", "outside", "here",  "overall"};
    const struct tokens *tokens = &note->tokens;
    if (!verb || !ANY(tokens, verb, "is", "are", "was", "were") || tokens->at[verb - 1].stop != STOP_NONE)
        return NULL;
    size_t noun = verb - 1, open = noun;
    if (open > 0 && ANY(tokens, open - 1, "the", "its", "their")) open--;
    bool opens = open == 0 || standing_is_stop(note, open - 1) || ANY(tokens, open - 1, "and", "but");
    struct noun_found found;
    struct word_entry entry;
    const struct token *t = &tokens->at[noun];
    if (!opens || t->kind != TOKEN_WORD || token_among(tokens, noun, whole, sizeof whole / sizeof *whole) ||
        note->fault_word[noun] || (noun_at(note, noun, &found) && found.thing) ||
        word_at(note, noun, standing_uses, &entry))
        return NULL;
    const char *type = note->record->type.value;
    if (type && strstr(type, t->one ? t->one : t->fold)) return NULL; // the thing again
    return standing_part_words(note, noun, verb);
}

// "Map of the islands on linen", "print, on silk": a sheet, and what it is on.
bool standing_is_sheet(const struct note *note, size_t from, size_t on) {
    static const char *const sheets[] = {"map",      "chart",   "plan",       "print",   "picture",
                                         "painting", "drawing", "sampler",    "banner",  "diagram",
                                         "poster",   "scroll",  "rubbing",    "panel",   "icon",
                                         "rug",      "mat",     "embroidery", "tapestry"};
    const char *type = note->record->type.value, *last = type ? strrchr(type, ' ') : NULL;
    last = last ? last + 1 : type;
    bool sheet = false;
    for (size_t i = 0; last && i < sizeof sheets / sizeof *sheets; i++) sheet |= text_same(last, sheets[i]);
    if (!sheet || !standing_is_stop(note, from + 1)) return false;
    for (size_t i = note_clause_from(note, on, STOP_SENTENCE); i < on; i++)
        if (note->fault_word[i]) return false;
    return true;
}
