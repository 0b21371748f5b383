// SPDX-License-Identifier: MIT
// Faults that any reader may tell of words that are innocent: what happens as it should, and what says once
// more what was told.
#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// "Gold has worn off the handle and it's patchy at the spout": more of the same wear.
static bool is_wear_again(const struct fault_reader *r, size_t from) {
    static const char *const ids[] = {"gilt-wear", "plate-wear", "decoration-wear", "paint-flaking",
                                      "finish-crackle"};
    if (!ANY(&r->note->tokens, from, "patchy")) return false;
    size_t start = scope_sentence_start(&r->scope, from);
    for (size_t i = 0; i < r->hit_count; i++)
        for (size_t k = 0; k < COUNT(ids) && r->hits[i].from >= start && r->hits[i].to <= from; k++)
            if (text_same(r->hits[i].kinds[0]->rule.id, ids[k])) return true;
    return false;
}

// "The thermostat cuts out as it should".
static bool is_as_it_should(const struct fault_reader *r, const struct flaw *kind, size_t from, size_t to) {
    static const char *const shoulds[] = {
        "as it should", "like it should", "when it should", "as they should", "as intended",
        "as designed",  "as it's meant",  "as it is meant", "as they ought",  "as it ought"};
    const struct tokens *tokens = &r->note->tokens;
    bool works = text_same(kind->rule.id, "partly-working") || text_same(kind->rule.id, "not-working");
    if (!works || to >= tokens->count || tokens->at[to - 1].stop != STOP_NONE) return false;
    for (size_t i = from; i < to; i++)
        if (ANY(tokens, i, "not", "never", "only", "nothing", "doesn't", "don't", "won't", "isn't"))
            return false;
    return token_longest(tokens, to, shoulds, COUNT(shoulds)) > 0;
}

// "The jacket is torn at the foot of the spine with a piece gone": of the jacket, and not of the binding.
static bool is_of_jacket(const struct fault_reader *r, const struct flaw *kind, size_t from) {
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(kind->rule.id, "binding-weak")) return false;
    for (size_t i = from, start = scope_clause_start(&r->scope, from); i > start; i--)
        if (ANY(tokens, i - 1, "jacket", "wrapper") && r->note->taken[i - 1] != TAKEN_TYPE) return true;
    return false;
}

bool fault_is_told_idly(const struct fault_reader *r, const struct flaw *kind, size_t from, size_t to) {
    return is_of_jacket(r, kind, from) || is_as_it_should(r, kind, from, to) || is_wear_again(r, from);
}

bool fault_is_more_of(const struct note *note, const struct item_flaw *known, const struct flaw *kind,
                      const char *part, size_t from, size_t to) {
    if (known->kind == kind && !known->part && !known->where && text_same(kind->rule.id, "size-changed"))
        return true; // "it went in a hot wash and the sleeves shrank"
    if (!known->part) return false;
    if (known->kind == kind && text_same(kind->rule.id, "rubber-perished"))
        return text_same(say_singular(note->arena, known->part), say_singular(note->arena, part));
    return kind->form == ABSENCE && text_same(known->part, part) && // "the wheel is snapped off and lost"
           text_same(known->kind->rule.id, "broken-part") && known->span.from >= note->tokens.at[from].from &&
           known->span.to == note->tokens.at[to - 1].to;
}
