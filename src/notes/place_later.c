// SPDX-License-Identifier: MIT
// Where a fault is by a statement of its own behind it: "a chip, it's on the rim", "One crack. It runs down
// from the rim.", "Two chips. Both on the foot."
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { CLAUSE_MOST = 5, LINKS_MOST = 6 };

// The words that stand for the fault and say that it is somewhere; where they end, `i` if there are none.
static size_t behind_links(const struct tokens *tokens, size_t i) {
    size_t at = i;
    if (!ANY(tokens, at, "it", "it's", "its", "they", "they're", "that's", "both", "all", "mostly", "mainly",
             "this"))
        return i;
    at++;
    while (at < i + LINKS_MOST &&
           ANY(tokens, at, "is", "are", "was", "were", "both", "all", "just", "mostly", "mainly", "only",
               "right", "runs", "run", "goes", "go", "starts", "start", "begins", "begin", "sits", "sit",
               "down", "up", "out", "one", "two"))
        at++;
    return at;
}

// "Just a few specks", "worst", "most of them", behind a question "one": how much of it is where it is.
static size_t behind_share(const struct tokens *tokens, size_t i) {
    static const char *const opens[] = {
        "only",       "just",       "mostly",       "mainly",     "chiefly",     "largely",
        "worst",      "heaviest",   "especially",   "most",       "few",         "a few",
        "mind you",   "the worst",  "particularly", "worse",      "a couple",    "nearly all",
        "almost all", "most of it", "most of them", "some of it", "principally", "more so"};
    static const char *const more[] = {
        "only",   "just",     "a",       "few",    "couple", "of",     "them",  "it",    "mostly",
        "mainly", "the",      "small",   "tiny",   "little", "specks", "spots", "marks", "bits",
        "dots",   "freckles", "patches", "places", "lines",  "faint",  "light", "odd",   "is",
        "are",    "being",    "really",  "one",    "ones",   "right",  "down",  "two",   "again",
        "so",     "speck",    "spot",    "mark",   "patch",  "touch",  "bit",   "old",   "though"};
    enum { WORDS_MOST = 7 };
    bool asked = i > 0 && token_is(tokens, i - 1, "?");
    size_t n = token_longest(tokens, i, opens, sizeof opens / sizeof *opens);
    if (asked && ANY(tokens, i, "one", "two", "three", "yes", "a", "some")) {
        n = 1;
        if (tokens->at[i + n].stop == STOP_COMMA) n++;
    }
    if (!n) return i;
    size_t at = i + n;
    while (at < i + WORDS_MOST && token_among(tokens, at, more, sizeof more / sizeof *more)) at++;
    while (at > i + 1 && ANY(tokens, at - 1, "down", "right", "the", "a")) at--;
    if (asked && tokens->at[at].stop == STOP_COMMA) at++;
    return at;
}

// "It's in the box", "it's on the shelf at home": where the thing is, and not the fault.
static bool is_keeping(const struct tokens *tokens, size_t from, size_t to) {
    for (size_t i = from; i < to; i++)
        if (ANY(tokens, i, "box", "case", "bag", "tin", "sleeve", "wall", "shelf", "stand", "drawer", "frame",
                "pouch", "packet", "cupboard", "original"))
            return true;
    return false;
}

// The end of such words where a place follows at once and nothing else of its own; `i` if not.
static size_t share_end(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    size_t end = behind_share(tokens, i), from;
    for (size_t k = i; k < end; k++)
        if (r->part[k]) return i; // "only the lid"
    return end > i && (spot_preposition(tokens, end) || spot_adverb(tokens, end)) &&
                   spot_place_at(r, end, &from)
               ? end
               : i;
}

size_t spot_said_later(const struct fault_reader *r, const struct fault_hit *hit, size_t *from) {
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->to;
    while (at < tokens->count && at < hit->to + CLAUSE_MOST && tokens->at[at].stop == STOP_NONE &&
           !r->scope.fault[at] && !r->part[at] && !ANY(tokens, at, "and", "but"))
        at++;
    if (at + 2 >= tokens->count || r->scope.fault[at] || r->part[at]) return 0;
    bool sentence = tokens->at[at].stop >= STOP_SENTENCE;
    if (tokens->at[at].stop == STOP_NONE && !ANY(tokens, at, "and", "but")) return 0;
    at++;
    if (!sentence && ANY(tokens, at, "and", "but")) at++;
    size_t link = behind_links(tokens, at);
    if (link == at) link = share_end(r, at);
    bool alone = link == at; // "A chip. Inside the foot."
    if (alone && !(sentence && spot_preposition(tokens, at))) return 0;
    size_t to = spot_place_at(r, link, from);
    bool set = token_is(tokens, link, "from") && ANY(tokens, link - 1, "all", "both"); // "All from one set"
    if (!to || set || is_keeping(tokens, *from, to)) return 0;
    if (alone) return to >= tokens->count || tokens->at[to].stop >= STOP_SENTENCE ? to : 0;
    for (size_t i = to; i < tokens->count && tokens->at[i].stop < STOP_CLAUSE; i++)
        if (r->scope.fault[i]) return 0; // "It's on the rim that it is cracked"
    return to;
}

// "About half of the rim", "most of the top": where such a share of a place begins, behind the words that
// say how sure; 0 if there is none.
size_t spot_share_of(const struct tokens *tokens, size_t i) {
    static const char *const nearly[] = {"about", "around",  "roughly", "nearly",  "almost",
                                         "maybe", "perhaps", "over",    "at",      "least",
                                         "well",  "good",    "a",       "probably"};
    static const char *const shares[] = {"half", "most", "third", "quarter", "much", "part", "thirds"};
    enum { WORDS_MOST = 4 };
    size_t at = i;
    while (at < i + WORDS_MOST && (token_among(tokens, at, nearly, COUNT(nearly)) ||
                                   (token_is(tokens, at + 1, "thirds") && ANY(tokens, at, "two"))))
        at++;
    if (!token_among(tokens, at, shares, COUNT(shares))) return 0;
    size_t behind = at + (token_is(tokens, at + 1, "of") ? 2 : 1);
    bool the = ANY(tokens, behind, "the", "its", "each", "one", "both");
    return the && (behind > at + 1 || token_is(tokens, at, "half")) ? at : 0;
}

// What is done to write a name into a thing: behind the name it is no fault of its own.
bool spot_inscribes(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"engraved", "carved",      "stamped",     "scratched",  "inked",
                                        "stitched", "embroidered", "penciled",    "pencilled",  "written",
                                        "burned",   "burnt",       "stenciled",   "stencilled", "painted",
                                        "cut",      "etched",      "monogrammed", "sewn",       "worked"};
    return token_among(tokens, i, words, COUNT(words));
}

// "It has not been tested (motor)".
size_t place_in_brackets(const struct fault_reader *r, size_t i, size_t *from) {
    enum { WORDS_MOST = 5 };
    static const char *const degrees[] = {"light", "moderate", "heavy"};
    const struct tokens *tokens = &r->note->tokens;
    while (i < tokens->count && !token_is(tokens, i, "(") && tokens->at[i].stop < STOP_SENTENCE &&
           !r->scope.fault[i])
        i++;
    if (!token_is(tokens, i, "(")) return 0;
    *from = i + 1;
    while (spot_article(tokens, *from)) ++*from;
    size_t to = *from;
    while (to < tokens->count && to < *from + WORDS_MOST && !token_is(tokens, to, ")")) to++;
    bool degree = to == *from + 1 && token_among(tokens, *from, degrees, COUNT(degrees)), part = degree;
    for (size_t k = *from; k < to; k++) {
        if (ANY(tokens, k, "is", "are", "has", "have", "was", "it's", "i", "can", "will", "but", "spare",
                "spares", "included", "needs", "not"))
            return 0; // "one button gone (spare is in the pocket)"
        part |= r->part[k];
    }
    if (!part) return 0; // "brace is loose (buzzes)"
    if (degree) return place_in_brackets(r, to + 1, from);
    return token_is(tokens, to, ")") && to > *from ? to : 0;
}
