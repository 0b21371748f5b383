// SPDX-License-Identifier: MIT
// Where a fault is by what bears it or what it is called: "the carrying case has a broken latch", "the foot
// has a rough place, I'd call it a flea bite".
#include <string.h>

#include "notes/any.h"
#include "notes/beside.h"

// "One white bishop has a broken tip", "the shepherd has a chipped arm": a piece or a figure that no list
// has.
static bool is_figure(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i;
    if (!spot_plain_noun(r, i) || r->note->taken[i] == TAKEN_TYPE) return false;
    if (at > 1 && tokens->at[at - 1].kind == TOKEN_WORD && !r->scope.fault[at - 1] && !r->part[at - 1] &&
        tokens->at[at - 1].stop == STOP_NONE && !ANY(tokens, at - 1, "the", "one", "another"))
        at--;
    return at > 0 && ANY(tokens, at - 1, "the", "one", "another") && tokens->at[at - 1].stop == STOP_NONE;
}

// The part that ends before token `i` and begins its clause; not the thing itself.
static bool subject_ends(const struct fault_reader *r, size_t i, size_t *from, size_t *to) {
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i;
    enum { WORDS_MOST = 3 };
    while (at > 0 && i - at < WORDS_MOST && tokens->at[at - 1].kind == TOKEN_WORD &&
           tokens->at[at - 1].stop == STOP_NONE && !spot_article(tokens, at - 1) &&
           (r->part[at - 1] || at < i || is_figure(r, at - 1)) && !spot_preposition(tokens, at - 1) &&
           !ANY(tokens, at - 1, "and", "but", "also", "its", "few", "couple", "some", "one", "of"))
        at--;
    *from = at;
    *to = i;
    if (at == i || r->note->taken[i - 1] == TAKEN_TYPE || spot_adverb(tokens, i - 1) ||
        spot_side(tokens, i - 1))
        return false;
    while (at > 0 && (spot_article(tokens, at - 1) ||
                      ANY(tokens, at - 1, "its", "but", "and", "few", "couple", "some", "of")))
        at--;
    return at == 0 || tokens->at[at - 1].stop != STOP_NONE;
}

// "Broken latch": its last word is the part, and not what the fault itself is called, "coffee ring".
static bool has_own_noun(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct flaw *kind = hit->kinds[0];
    if (hit->to < hit->from + 2 || !r->part[hit->to - 1]) return false;
    const char *word = r->note->tokens.at[hit->to - 1].one;
    const char *last = kind->noun ? strrchr(kind->noun, ' ') : NULL;
    bool named = kind->noun && !strcmp(last ? last + 1 : kind->noun, word);
    return !spot_is_no_part(word) && !named && (hit->near || r->scope.fault[hit->from]);
}

// "The carrying case has a broken latch": on which part the broken one is.
bool spot_bearer(const struct fault_reader *r, const struct fault_hit *hit, const struct spot *spot,
                 size_t *from, size_t *to) {
    const struct tokens *tokens = &r->note->tokens;
    bool part = spot->part_to > spot->part_from, own = has_own_noun(r, hit);
    if (part && spot->where_to == spot->where_from && spot->part_from > 2 && spot->part_from <= hit->from &&
        ANY(tokens, spot->part_from - 1, "its", "her", "his", "their") &&
        ANY(tokens, spot->part_from - 2, "has", "have", "had"))
        return subject_ends(r, spot->part_from - 2, from, to); // "one knight has its ear glued"
    if (spot->where_to > spot->where_from || (!own && (!part || spot->part_from < hit->from))) return false;
    size_t at = hit->from;
    while (at > 0 && tokens->at[at - 1].stop == STOP_NONE &&
           (spot_article(tokens, at - 1) || degrees_number(tokens, at - 1)))
        at--;
    return at > 1 && ANY(tokens, at - 1, "has", "have", "had") && tokens->at[at - 1].stop == STOP_NONE &&
           subject_ends(r, at - 1, from, to) &&
           !(part && spot->part_from < hit->from && spot->part_to != *to);
}

// "The edge has one rough spot, I'd call it a flea bite": what has the fault that is then given its name.
bool spot_called(const struct fault_reader *r, const struct fault_hit *hit, size_t *from, size_t *to) {
    enum { FAR = 14 };
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->from, start = scope_sentence_start(&r->scope, hit->from);
    while (at > start && (spot_article(tokens, at - 1) || ANY(tokens, at - 1, "tiny", "small", "little")))
        at--;
    if (at > start + 3 && ANY(tokens, at - 1, "those", "these", "they") && ANY(tokens, at - 2, "so", "and"))
        for (size_t i = start + 1; i + 2 < at && i < start + FAR; i++) // "corners let go so those are loose"
            if (ANY(tokens, i, "have", "has", "let", "came", "are")) return subject_ends(r, i, from, to);
    if (at > start && ANY(tokens, at - 1, "it", "that", "this")) at--;
    if (at <= start || !ANY(tokens, at - 1, "call", "called", "calls") || at > start + FAR) return false;
    for (size_t i = start + 1; i + 1 < at; i++)
        if (ANY(tokens, i, "has", "have", "had")) return subject_ends(r, i, from, to);
    return false;
}

// "Outside is dark and needs a polish", "the handles are black and want polishing": what the plain word
// before the "and" was said of.
bool spot_of_plain_state(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    const struct tokens *tokens = &r->note->tokens;
    size_t i = hit->from;
    if (i < 4 || !ANY(tokens, i, "needs", "need", "wants", "want", "could", "wanting", "needing") ||
        !ANY(tokens, i - 1, "and", "so") || tokens->at[i - 2].kind != TOKEN_WORD || r->part[i - 2] ||
        tokens->at[i - 2].stop != STOP_NONE || !ANY(tokens, i - 3, "is", "are", "looks", "look"))
        return false;
    size_t noun = i - 4;
    bool side = ANY(tokens, noun, "outside", "inside", "bottom", "top", "back", "front", "underside");
    size_t first = noun > 0 && spot_article(tokens, noun - 1) ? noun - 1 : noun;
    if (side && (first == 0 || tokens->at[first - 1].stop != STOP_NONE)) {
        spot->where_from = noun;
        spot->where_to = noun + 1;
        return true;
    }
    return subject_ends(r, i - 3, &spot->part_from, &spot->part_to) ||
           (spot->part_from = spot->part_to = 0, false);
}
