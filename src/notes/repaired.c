// SPDX-License-Identifier: MIT
// What a seller takes back in passing: "the left one, no wait, the right", "dent in the lid, no, the base".
// Only a place, a part or a side is said again, so that the fault stands and that word is another.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/place.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// Which of two or more.
static bool is_side(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"left",  "right",  "top",   "bottom",    "front",   "back",
                                        "rear",  "upper",  "lower", "inner",     "outer",   "first",
                                        "third", "second", "big",   "bigger",    "smaller", "larger",
                                        "small", "other",  "large", "underside", "near",    "far"};
    return token_among(tokens, i, words, COUNT(words));
}

size_t repair_words(const struct note *note, const bool *fault, size_t i, size_t *from) {
    static const char *const leads[] = {"it's", "its", "it", "is", "was", "that's", "in", "on", "at", "to"};
    enum { LEADS_MOST = 3, WORDS_MOST = 4 };
    const struct tokens *tokens = &note->tokens;
    size_t at = i;
    for (size_t n = 0; n < LEADS_MOST && at < tokens->count; n++)
        if ((tokens->at[at].stop != STOP_NONE && tokens->at[at].stop != STOP_LINE) ||
            token_is(tokens, at, "-") || token_among(tokens, at, leads, COUNT(leads)))
            at++;
    bool article = ANY(tokens, at, "the", "its", "one");
    if (article) at++;
    size_t start = at;
    while (at < tokens->count && at < start + WORDS_MOST && tokens->at[at].stop == STOP_NONE && !fault[at] &&
           (is_side(tokens, at) || place_noun(note, at) ||
            (at > start && (ANY(tokens, at, "one", "ones", "side", "hand")))))
        at++;
    bool ends = at >= tokens->count || tokens->at[at].stop != STOP_NONE;
    if (at == start || !ends || (at < tokens->count && fault[at])) return 0;
    *from = start;
    return at;
}

// The words [from, to) without "one": "right one" is the right.
static size_t without_one(const struct tokens *tokens, size_t from, size_t to) {
    return to > from + 1 && ANY(tokens, to - 1, "one", "ones") ? to - 1 : to;
}

// "Left strap" and "right": the side is another, and the noun is the same.
static const char *turned(const struct fault_reader *r, size_t from, size_t to, size_t side, size_t side_to) {
    const struct tokens *tokens = &r->note->tokens;
    size_t noun = from;
    while (noun < to && is_side(tokens, noun)) noun++;
    const char *which = fault_words(r->note, side, side_to);
    if (noun == to) return which; // "on the front", and now the back
    return arena_format(r->note->arena, "%s %s", which, fault_words(r->note, noun, to));
}

bool fault_tell_moved(struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind,
                      const struct spot *spot) {
    const struct tokens *tokens = &r->note->tokens;
    size_t cue = r->scope.cue[hit->from], first = cue, from = 0;
    while (cue < tokens->count && (r->scope.stance[cue] & STANCE_OTHER)) cue++;
    bool placed = spot->where_to > spot->where_from, parted = spot->part_to > spot->part_from;
    size_t to = repair_words(r->note, r->scope.fault, cue, &from), end = to;
    if (to) to = without_one(tokens, from, to);
    bool sides = to > from;
    for (size_t i = from; to && i < to; i++) sides &= is_side(tokens, i);
    if (to && (parted || placed) && (sides || !spot_preposition(tokens, from - 1))) {
        const char *part = fault_place(r->note, spot->part_from, spot->part_to),
                   *where = fault_place(r->note, spot->where_from, spot->where_to);
        bool of_part = parted && (!placed || (sides && !is_side(tokens, spot->where_from)));
        if (of_part)
            part =
                sides ? turned(r, spot->part_from, spot->part_to, from, to) : fault_words(r->note, from, to);
        else
            where = sides ? turned(r, spot->where_from, spot->where_to, from, to)
                          : fault_words(r->note, from, to);
        note_take(r->note, first, from, TAKEN_SCOPE);
        note_take(r->note, from, end, TAKEN_PART);
        fault_tell(r, hit, kind, part, where);
        return true;
    }
    to = spot_place_at(r, cue, &from);
    if (!to) return false;
    if (to < tokens->count && tokens->at[to].stop == STOP_NONE) return false; // more is said than a place
    fault_tell(r, hit, kind, NULL, fault_place(r->note, from, to));
    return true;
}

// "Two chips on the rim. No, make that three."
int count_said_again(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { FAR = 16 };
    static const char *const cues[] = {"make that", "no wait", "i mean", "i tell a lie", "no sorry"};
    static const char *const asides[] = {"no", "sorry", "actually", "wait"};
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = hit->to; i < tokens->count && i < hit->to + FAR; i++) {
        if (r->scope.fault[i] && !r->part[i]) return 0;
        size_t cue = token_longest(tokens, i, cues, COUNT(cues));
        bool comma = tokens->at[i - 1].stop == STOP_COMMA; // "two dents, no, three"
        if (!cue && comma && token_among(tokens, i, asides, COUNT(asides))) cue = 1;
        if (!cue) continue;
        size_t at = i + cue;
        if (at < tokens->count && tokens->at[at].stop == STOP_COMMA) at++;
        int n = degrees_number(tokens, at);
        bool ends =
            at + 1 >= tokens->count || tokens->at[at + 1].stop != STOP_NONE || token_is(tokens, at + 1, "of");
        if (n && ends) return n;
    }
    return 0;
}
