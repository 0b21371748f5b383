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
    static const char *const others[] = {"the other", "the others", "other",  "the rest", "the second",
                                         "the right", "the left",   "others", "the next", "the other's"};
    enum { LINKS_MOST = 4 };
    size_t at = i;
    while (at > 0 && i - at < LINKS_MOST && token_among(tokens, at - 1, links, COUNT(links))) at--;
    for (size_t n = 1; n <= 2 && n <= at; n++) {
        size_t from = at - n;
        if (token_longest(tokens, from, others, COUNT(others)) != n) continue;
        if (n == 1 && from > 0 && ANY(tokens, from - 1, "the", "an", "no", "any", "each")) continue;
        bool opens = from > 0 && (tokens->at[from - 1].stop == STOP_COMMA ||
                                  ANY(tokens, from - 1, "and", "but", "while"));
        if (opens) return from;
    }
    return i;
}

bool spot_other(const struct fault_reader *r, size_t i, size_t *from, size_t *to) {
    static const char *const firsts[] = {"one",    "left",  "right", "first", "top",
                                         "bottom", "front", "back",  "two",   "three"};
    const struct tokens *tokens = &r->note->tokens;
    size_t other = other_before(tokens, i), start = scope_sentence_start(&r->scope, i);
    if (other == i) return false;
    for (size_t at = start; at + 1 < other; at++) {
        if (!token_among(tokens, at, firsts, COUNT(firsts)) || tokens->at[at].stop != STOP_NONE) continue;
        size_t end = at + 1;
        if (token_is(tokens, end, "of") && ANY(tokens, end + 1, "the", "its", "their")) end += 2;
        size_t part = end;
        while (end < other && r->part[end] && r->note->taken[end] != TAKEN_TYPE) end++;
        if (end == part) continue;
        *from = part;
        *to = end;
        return true;
    }
    return false;
}
