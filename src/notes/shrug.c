// SPDX-License-Identifier: MIT
// How far "no idea" reaches, and what "haven't looked" points back to: "no idea of its age, chip on the rim"
// has a chip; "might be cracked, I haven't looked" has nothing that anybody saw.
#include "notes/scope.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// What a seller does not know of a thing's past or price: no fault is meant, and behind the comma stands what
// was seen.
static bool is_story(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "age",     "old",    "maker",   "makers",   "made",    "who",     "whose",      "year",    "date",
        "dates",   "era",    "period",  "decade",   "worth",   "value",   "price",      "origin",  "history",
        "from",    "came",   "model",   "pattern",  "name",    "brand",   "make",       "country", "when",
        "where",   "called", "used",    "for",      "artist",  "author",  "provenance", "story",   "it",
        "antique", "real",   "genuine", "original", "vintage", "factory", "potter",     "weaver",  "price"};
    return token_among(tokens, i, words, COUNT(words));
}

size_t scope_shrug_end(const struct scope *s, size_t i, size_t to) {
    const struct tokens *tokens = &s->note->tokens;
    for (size_t at = i; at + 1 < to; at++) {
        if (s->fault[at]) return to;
        if (tokens->at[at].stop == STOP_COMMA)
            return at > i && is_story(tokens, at - 1) && !token_is(tokens, at + 1, "or") ? at : to;
    }
    return to;
}

// Words of a guess in [from, to), or a question.
static bool is_guess(const struct tokens *tokens, size_t from, size_t to) {
    static const char *const words[] = {"might", "may", "maybe", "could", "possibly", "perhaps", "?"};
    for (size_t at = from; at < to; at++)
        if (token_among(tokens, at, words, COUNT(words))) return true;
    return false;
}

// The first token of the guess that ends right before `i`, in the same sentence or the one before it.
void scope_shrug_back(struct scope *s, size_t i) {
    static const char *const links[] = {"i", "i've", "ive", "but", "and", "we", "just", "honestly", "though"};
    const struct tokens *tokens = &s->note->tokens;
    size_t end = i;
    while (end > 0 && token_among(tokens, end - 1, links, COUNT(links))) end--;
    if (end < 2 || tokens->at[end - 1].stop == STOP_NONE) return;
    while (end > 1 && tokens->at[end - 2].stop != STOP_NONE) end--; // ", but": of two stops the first
    size_t from = scope_sentence_start(s, end - 1), comma = from;
    for (size_t at = from; at < end; at++) // of several statements the last
        if (tokens->at[at].stop >= STOP_COMMA && at + 1 < end) comma = at + 1;
    if (is_guess(tokens, comma, end))
        scope_mark(s, comma, end, STANCE_UNKNOWN, i);
    else if (is_guess(tokens, from, comma) && comma > from && s->fault[end - 1])
        scope_mark(s, from, end, STANCE_UNKNOWN, i); // "might be chips, cracks, haven't looked"
}
