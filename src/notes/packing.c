// SPDX-License-Identifier: MIT
// "The box is torn, the radio inside is fine": a fault of the packing is one of the packing. Where the box
// itself is what is sold, or is missing, this does not apply.
#include "notes/scope.h"
#include "text/order.h"

#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const char *const words[] = {"box",    "carton",  "packaging", "package",
                                    "sleeve", "blister", "case box",  "outer box"};

static bool is_packing(const struct scope *s, size_t i) {
    const struct family *family = s->note->record->family;
    bool worn = family && (text_same(family->rule.id, "clothing") || text_same(family->rule.id, "linens"));
    if (token_is(&s->note->tokens, i + 1, "of")) return false;         // "a box of 14 valves"
    if (worn && token_is(&s->note->tokens, i, "sleeve")) return false; // a coat's
    return token_among(&s->note->tokens, i, words, COUNT(words));
}

static bool is_type(const struct scope *s, size_t i) {
    const char *type = s->note->record->type.value;
    return s->note->taken[i] == TAKEN_TYPE || (type && strstr(type, s->note->tokens.at[i].fold));
}

// A sound box, a tool box, a letter box: no packing.
static bool is_kind_of_box(const struct scope *s, size_t i) {
    static const char *const before[] = {"the",    "its",   "original", "in",   "no",        "with", "and",
                                         "a",      "outer", "my",       "but",  "cardboard", "card", "one",
                                         "carton", "their", "this",     "that", "old"};
    const struct tokens *tokens = &s->note->tokens;
    return i > 0 && tokens->at[i - 1].stop == STOP_NONE && tokens->at[i - 1].kind == TOKEN_WORD &&
           !token_among(tokens, i - 1, before, COUNT(before));
}

// "In a fitted wooden box": what was made to last is no packing, whatever it is called after that.
bool packing_is_made(const struct note *note, size_t box) {
    static const char *const stuffs[] = {
        "wooden", "wood",  "oak",     "mahogany", "pine",       "walnut",    "teak",     "fitted",
        "metal",  "steel", "leather", "plywood",  "dovetailed", "ply",       "iron",     "lined",
        "bound",  "brass", "deal",    "rosewood", "ash",        "aluminium", "aluminum", "tin"};
    const struct tokens *tokens = &note->tokens;
    const char *name = tokens->at[box].one;
    for (size_t i = 1; i <= box; i++)
        if (token_among(tokens, i - 1, stuffs, sizeof stuffs / sizeof *stuffs) &&
            tokens->at[i - 1].stop == STOP_NONE && text_same(tokens->at[i].one, name))
            return true;
    return false;
}

// The packing is the subject: first noun of its clause, with nothing of the thing before it.
void scope_packing(struct scope *s) {
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        if (!is_packing(s, i) || is_type(s, i) || is_kind_of_box(s, i) || packing_is_made(s->note, i))
            continue;
        size_t from = scope_clause_start(s, i);
        for (size_t at = from; at < i; at++) // "tin kettle, box shabby"
            if (tokens->at[at].stop == STOP_COMMA) from = at + 1;
        bool first = i - from <= 3;
        for (size_t at = from; at < i; at++) first &= !s->fault[at] && s->note->taken[at] != TAKEN_TYPE;
        size_t to = scope_clause_end(s, i);
        for (size_t at = i + 1; at < to; at++) // "box torn, lid chipped"
            if (tokens->at[at].stop == STOP_COMMA && at + 2 < to &&
                (s->note->taken[at + 1] == TAKEN_PART || token_is(tokens, at + 2, "have") ||
                 token_is(tokens, at + 2, "has") || token_is(tokens, at + 2, "of")))
                to = at; // ", two have chips"
        if (first) scope_mark(s, i, to, STANCE_PACKING, i);
    }
}
