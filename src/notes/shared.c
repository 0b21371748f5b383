// SPDX-License-Identifier: MIT
// A degree that a list shares: "light scratches and dents", "badly cracked and stained", "rust and pitting
// all over". Nothing may stand between the faults but what joins them: an article or another degree begins
// anew.
#include "notes/faults.h"

static bool joint_at(const struct tokens *tokens, size_t i, bool *last) {
    static const char *const words[] = {"and", "or", "&", "plus", "n"};
    bool and = token_among(tokens, i, words, sizeof words / sizeof *words);
    *last |= and;
    return and || tokens->at[i].stop == STOP_COMMA || token_is(tokens, i, "/");
}

// Do the two hits stand side by side in a list? `*last`: the list ends there with its "and".
static bool are_joined(const struct fault_reader *r, const struct fault_hit *a, const struct fault_hit *b,
                       bool *last) {
    if (a->to >= b->from || b->from - a->to > 2) return false;
    for (size_t i = a->to; i < b->from; i++)
        if (!joint_at(&r->note->tokens, i, last)) return false;
    static const uint16_t gone = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_UNKNOWN | STANCE_PAST;
    return ((fault_stance(r, a) ^ fault_stance(r, b)) & gone) == 0;
}

static size_t index_of(const struct fault_reader *r, const struct fault_hit *hit) {
    for (size_t i = 0; i < r->hit_count; i++)
        if (r->hits[i].from == hit->from && r->hits[i].to == hit->to) return i;
    return r->hit_count;
}

// A comma alone joins nothing: somewhere in the list there is an "and".
static bool ends_with_and(const struct fault_reader *r, size_t i) {
    bool last = false;
    while (i + 1 < r->hit_count && !last && are_joined(r, &r->hits[i], &r->hits[i + 1], &last)) i++;
    return last;
}

enum severity degree_shared(const struct fault_reader *r, const struct fault_hit *hit) {
    size_t at = index_of(r, hit);
    if (at == r->hit_count) return SEVERITY_UNKNOWN;
    bool last = false;
    for (size_t i = at; i > 0 && are_joined(r, &r->hits[i - 1], &r->hits[i], &last); i--) {
        enum severity found = degree_before(r, &r->hits[i - 1]);
        if (found) return ends_with_and(r, i - 1) ? found : SEVERITY_UNKNOWN;
    }
    last = false;
    for (size_t i = at; i + 1 < r->hit_count && are_joined(r, &r->hits[i], &r->hits[i + 1], &last); i++) {
        enum severity found = last ? degree_after(r, &r->hits[i + 1]) : SEVERITY_UNKNOWN;
        if (found) return found;
    }
    return SEVERITY_UNKNOWN;
}
