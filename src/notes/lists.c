// SPDX-License-Identifier: MIT
// One fault of several parts: "rim, foot and handle all chipped", "rust on the hinges, the lock and the
// catch", "no splits in the top or the sides". Each part of the list has the fault, or is without it.
#include "notes/faults.h"

#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { PART_WORDS_MOST = 3 };

static bool article_at(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"the", "its", "a", "an", "their", "both", "one"};
    return token_among(tokens, i, words, COUNT(words));
}

static bool joint_at(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"and", "or", "nor", "&", "plus"};
    return token_among(tokens, i, words, COUNT(words));
}

static bool side_at(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"left", "right", "upper", "lower", "front",  "back", "rear",
                                        "top",  "inner", "outer", "first", "second", "big",  "small"};
    return token_among(tokens, i, words, COUNT(words));
}

// "And the handle …" is no list where its first part has a fault, a verb or a preposition of its own before
// it.
static bool opens_list(const struct fault_reader *r, size_t i) {
    static const char *const openers[] = {"both", "but", "though", "also", "that", "so", "however"};
    const struct tokens *tokens = &r->note->tokens;
    size_t noun = i;
    while (i > 0 && article_at(tokens, i - 1)) i--;
    if (i == 0 || tokens->at[i - 1].stop >= STOP_COMMA) return true;
    if (i == noun && token_is(tokens, i - 1, "but") && tokens->at[i].one == tokens->at[i].fold)
        return false; // "castors squeak but roll, and a screw drops out": a verb
    return token_among(tokens, i - 1, openers, COUNT(openers));
}

// The part that ends before token `i`; where it begins, `i` if none.
static size_t part_before(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    size_t from = i;
    while (from > 0 && i - from < PART_WORDS_MOST && r->part[from - 1] && !r->scope.fault[from - 1]) from--;
    if (from == i) return i;
    while (from > 0 && i - from < PART_WORDS_MOST && side_at(tokens, from - 1)) from--;
    return from;
}

static size_t subjects(const struct fault_reader *r, const struct spot *spot, struct spot *more) {
    const struct tokens *tokens = &r->note->tokens;
    size_t n = 0, at = spot->part_from;
    for (bool first = true; n < LIST_MOST; first = false) {
        while (at > 0 && article_at(tokens, at - 1)) at--;
        size_t to = at;
        bool joined = to > 0 && joint_at(tokens, to - 1);
        if (joined) to--;
        bool comma = to > 0 && tokens->at[to - 1].stop == STOP_COMMA;
        if (comma) to--;
        if (first ? !joined : !(joined || comma)) break;
        at = part_before(r, to);
        if (at == to && n && comma)
            break; // "pitcher, rim, foot and handle": the list begins behind the thing
        if (at == to) return 0;
        more[n++] = (struct spot){.part_from = at, .part_to = to};
    }
    return n && opens_list(r, more[n - 1].part_from) ? n : 0;
}

// Where the part that begins at `i` ends: "the bottom edge"; `i` if none stands there.
static size_t part_end(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    size_t to = i;
    while (to < tokens->count && to - i < PART_WORDS_MOST && tokens->at[to].stop == STOP_NONE &&
           (side_at(tokens, to) || r->part[to]) && !r->scope.fault[to])
        to++;
    return to > i && r->part[to - 1] ? to : i;
}

// Behind the last part nothing but the end of the clause: "the lid is gone" is a statement of its own.
static bool closes_list(const struct fault_reader *r, size_t i) {
    static const char *const words[] = {"and", "but", "though", "too", "as", "except", "apart", "with"};
    const struct tokens *tokens = &r->note->tokens;
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE ||
           token_among(tokens, i, words, COUNT(words));
}

// "Along the base", "at the front of the seat": a place with words of its own; where it ends, 0 if none.
static size_t place_apart(const struct fault_reader *r, size_t i, size_t *from) {
    static const char *const ways[] = {"along", "round", "under", "across", "down",  "over", "behind",
                                       "at",    "on",    "in",    "below",  "above", "near", "inside"};
    size_t to = token_among(&r->note->tokens, i, ways, COUNT(ways)) ? spot_place_at(r, i, from) : 0;
    for (size_t k = i; k < to; k++)
        if (r->scope.fault[k] && !r->part[k]) return 0;
    return to && r->part[to - 1] && closes_list(r, to) ? to : 0;
}

static size_t places(const struct fault_reader *r, const struct spot *spot, struct spot *more) {
    static const char *const prepositions[] = {"on", "in",   "at",     "to",    "of",
                                               "by", "near", "inside", "around"};
    const struct tokens *tokens = &r->note->tokens;
    size_t n = 0, sure = 0, at = spot->where_to;
    while (n < LIST_MOST) {
        bool comma = at < tokens->count && tokens->at[at].stop == STOP_COMMA;
        if (comma) at++;
        bool joined = joint_at(tokens, at);
        if (joined) at++;
        if (!comma && !joined) break;
        bool own = token_among(tokens, at, prepositions, COUNT(prepositions));
        size_t start = own ? at + 1 : at;
        while (article_at(tokens, start)) start++;
        size_t to = part_end(r, start), from = 0;
        size_t apart = joined ? place_apart(r, at, &from) : 0; // "on the lid and down the left side"
        if (apart) start = from, to = apart;
        if (to == start || (joined && !closes_list(r, to)) ||
            (!joined && tokens->at[to].stop == STOP_NONE && !joint_at(tokens, to)))
            break;
        more[n++] = (struct spot){.where_from = start, .where_to = to};
        if (joined) sure = n; // a list ends in "and"
        at = to;
    }
    return sure;
}

// "Neither the clasp nor the hinge is broken": the words of the fault stand on both sides of the list.
static size_t inside(const struct fault_reader *r, const struct fault_hit *hit, const struct spot *spot,
                     struct spot *more) {
    const struct tokens *tokens = &r->note->tokens;
    size_t n = 0, at = spot->part_to;
    while (n < LIST_MOST && at + 1 < hit->to) {
        size_t start = at;
        if (tokens->at[start].stop == STOP_COMMA) start++;
        if (joint_at(tokens, start)) start++;
        if (start == at) break;
        while (article_at(tokens, start)) start++;
        size_t to = start;
        for (; to + 1 < hit->to && to - start < PART_WORDS_MOST && r->part[to];) to++;
        if (to == start) break;
        more[n++] = (struct spot){.part_from = start, .part_to = to};
        at = to;
    }
    return n;
}

size_t spots_listed(const struct fault_reader *r, const struct fault_hit *hit, const struct spot *spot,
                    struct spot *more) {
    if (hit->near && spot->part_from == hit->from && spot->part_to > spot->part_from) {
        size_t n = inside(r, hit, spot, more);
        if (n) return n;
    }
    if (spot->part_to > spot->part_from && spot->part_to <= r->note->tokens.count) {
        size_t n = subjects(r, spot, more);
        bool placed = n == 0 && spot->part_to <= hit->to && spot->where_from >= hit->to;
        if (placed) n = places(r, spot, more); // "plate worn on the handle and the rim"
        for (size_t i = 0; placed && i < n; i++)
            more[i].part_from = spot->part_from, more[i].part_to = spot->part_to;
        return n;
    }
    return spot->where_to > spot->where_from ? places(r, spot, more) : 0;
}
