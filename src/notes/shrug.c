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
        bool story = at > i && tokens->at[at].stop == STOP_COMMA && is_story(tokens, at - 1);
        if (s->fault[at] && !is_story(tokens, at) && !story) {
            size_t comma = at;
            while (comma < to && tokens->at[comma].stop == STOP_NONE && s->fault[comma]) comma++;
            if (comma >= to || tokens->at[comma].stop != STOP_COMMA || !is_story(tokens, comma - 1))
                return to;
        }
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

// "Could be chips under the dirt, can't tell": how many tokens, 0 if none.
size_t scope_shrug(struct scope *s, size_t i) {
    static const char *const words[] = {"can't tell",  "can't say",    "cannot tell",  "cannot say",
                                        "cant tell",   "cant say",     "couldn't say", "couldn't tell",
                                        "hard to say", "hard to tell", "not looked",   "not checked",
                                        "didn't look", "not sure",     "no telling",   "who knows"};
    const struct tokens *tokens = &s->note->tokens;
    size_t n = token_longest(tokens, i, words, COUNT(words)), end = i + n;
    if (!n || i == 0 || tokens->at[i - 1].stop == STOP_NONE) return 0;
    if (end < tokens->count && tokens->at[end].stop == STOP_NONE) return 0;
    scope_shrug_back(s, i);
    return n;
}

// The guess that ends right before `i`, in the same sentence or the one before it.
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
