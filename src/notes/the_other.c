// SPDX-License-Identifier: MIT
// Parts whose name stands only once: "one strap is missing, the other perished", "left handle loose and the
// right one cracked" speak of another of that name.
#include "notes/any.h"
#include "notes/faults.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// "The other", "the right one is": its first token before `i`, or `i`.
static size_t other_before(const struct tokens *tokens, size_t i) {
    static const char *const links[] = {"is",   "are",   "has",      "have",   "was",  "a",     "bit",
                                        "very", "badly", "one's",    "been",   "some", "quite", "also",
                                        "one",  "ones",  "had",      "got",    "just", "both",  "an",
                                        "only", "not",   "slightly", "rather", "isn't"};
    static const char *const others[] = {
        "the other", "the others",   "other",       "the rest",    "the second", "the right", "the left",
        "others",    "the smallest", "the largest", "the biggest", "the middle", "the next",  "the other's",
        "a third",   "another",      "a second",    "the third",   "the last",   "a fourth"};
    enum { LINKS_MOST = 4 };
    size_t at = i;
    while (at > 0 && i - at < LINKS_MOST && token_among(tokens, at - 1, links, COUNT(links))) at--;
    if (at > 1 && degrees_number(tokens, at - 1) > 1 && ANY(tokens, at - 2, "other"))
        at--; // "the other three are"
    for (size_t n = 1; n <= 2 && n <= at; n++) {
        size_t from = at - n;
        bool bare =
            n == 1 && ANY(tokens, from, "left", "right") && ANY(tokens, from + 1, "one", "ones", "one's");
        if (!bare && token_longest(tokens, from, others, COUNT(others)) != n) continue;
        if (n == 1 && from > 0 && !token_is(tokens, from, "another") &&
            ANY(tokens, from - 1, "the", "an", "no", "any", "each"))
            continue;
        bool opens = from > 0 &&
                     (tokens->at[from - 1].stop != STOP_NONE || ANY(tokens, from - 1, "and", "but", "while"));
        if (opens) return from;
    }
    return i;
}

// Parts of which one was told apart, "one leather handle is gone", "the left strap", in [start, end).
static bool one_of_parts(const struct fault_reader *r, size_t start, size_t end, size_t *from, size_t *to) {
    static const char *const firsts[] = {"one",    "left",  "right", "first", "top",
                                         "bottom", "front", "back",  "two",   "three"};
    enum { STUFFS_MOST = 2 };
    bool found = false;
    const struct tokens *tokens = &r->note->tokens;
    for (size_t at = start; at + 1 < end; at++) {
        if (!token_among(tokens, at, firsts, COUNT(firsts)) || tokens->at[at].stop != STOP_NONE) continue;
        size_t last = at + 1;
        if (token_is(tokens, last, "of") && ANY(tokens, last + 1, "the", "its", "their")) last += 2;
        if (last > at + 1 && degrees_number(tokens, last) > 1) last++; // "one of the four feet"
        for (size_t n = 0; n < STUFFS_MOST && !r->part[last] && r->note->taken[last] == TAKEN_VALUE; n++)
            last++; // "one leather handle"
        size_t part = last;
        while (last < end && r->part[last] && r->note->taken[last] != TAKEN_TYPE &&
               !(last > part &&
                 ANY(tokens, last, "slide", "lock", "catch", "ring", "pull"))) // "two draws slide"
            last++;
        if (last == part) continue;
        *from = part;
        *to = last; // the nearest of them
        found = true;
    }
    return found;
}

// "Two leather handles.", "Both handles are there.": parts of which there are several, in a sentence that
// says no more of them.
static bool several_parts(const struct fault_reader *r, size_t start, size_t end, size_t *from, size_t *to) {
    enum { WORDS_MOST = 3 };
    const struct tokens *tokens = &r->note->tokens;
    size_t at = start;
    if (ANY(tokens, at, "has", "with", "it")) at += ANY(tokens, at + 1, "has") ? 2 : 1;
    if (!ANY(tokens, at, "both", "all", "pair", "the") && degrees_number(tokens, at) < 2) return false;
    for (at++; at < end && !r->part[at] && at < start + WORDS_MOST + 1;) at++;
    size_t part = at;
    while (at < end && r->part[at] && !r->scope.fault[at] && r->note->taken[at] != TAKEN_TYPE) at++;
    if (at == part || tokens->at[at - 1].one == tokens->at[at - 1].fold) return false;
    for (size_t i = at; i < end; i++)
        if (r->scope.fault[i]) return false;
    *from = part;
    *to = at;
    return true;
}

// "One has broken off" as the head of its sentence: where it begins; `i` where it does not.
static size_t one_before(const struct tokens *tokens, size_t i) {
    static const char *const links[] = {"is",       "has", "a",    "bit",   "very", "badly", "been",
                                        "slightly", "of",  "them", "quite", "got",  "had",   "was"};
    enum { LINKS_MOST = 4 };
    size_t at = i;
    while (at > 0 && i - at < LINKS_MOST && token_among(tokens, at - 1, links, COUNT(links))) at--;
    if (at < 2 || !ANY(tokens, at - 1, "one", "one's") || tokens->at[at - 2].stop < STOP_CLAUSE) return i;
    return at - 1;
}

static bool several_before(const struct fault_reader *r, size_t start, size_t *from, size_t *to) {
    return start > 1 && several_parts(r, scope_sentence_start(&r->scope, start - 1), start, from, to);
}

bool spot_other(const struct fault_reader *r, size_t i, struct spot *spot) {
    const struct tokens *tokens = &r->note->tokens;
    size_t other = other_before(tokens, i), start = scope_sentence_start(&r->scope, i);
    size_t *from = &spot->part_from, *to = &spot->part_to;
    bool several = r->note->record->count > 1 ||
                   (r->scope.stance[i] & (STANCE_DENIED | STANCE_NONE_SEEN)); // of this sentence alone
    if (other == i) {
        size_t one = one_before(tokens, i);
        spot->which = "";
        return one != i && !several && several_before(r, start, from, to);
    }
    size_t which = ANY(tokens, other, "the", "a") ? other + 1 : other;
    spot->which = ANY(tokens, which, "other", "left", "right", "smallest", "largest", "biggest", "middle",
                      "second", "next", "third", "last", "fourth")
                      ? tokens->at[which].fold
                  : ANY(tokens, which, "other's") ? "other"
                                                  : NULL;
    if (ANY(tokens, which, "others") ||
        (ANY(tokens, which, "other") && degrees_number(tokens, which + 1) > 1))
        spot->which = "others";
    if (other > start)
        return one_of_parts(r, start, other, from, to) ||
               (!several && ANY(tokens, start, "one") && several_before(r, start, from, to));
    if (several || start < 2) return false;
    size_t before =
        scope_sentence_start(&r->scope, start - 1); // "Left eyecup is cracked. The right one is bent."
    return one_of_parts(r, before, start, from, to) ||
           (ANY(tokens, before, "one") && several_before(r, before, from, to));
}
