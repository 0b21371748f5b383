// SPDX-License-Identifier: MIT
// What is said of something else beside the thing: what it is compared with, "quicker than my electric one",
// and how somebody has grown.
#include "notes/any.h"
#include "notes/note.h"

static size_t leave(struct note *note, size_t from, size_t to) {
    if (to <= from || !note_free(note, from, to)) return from + 1;
    for (size_t k = from; k < to; k++)
        if (note->fault_word[k]) return from + 1; // "worse than the other one, which is cracked"
    note_reading(note, from, to, "aside", "not about the thing");
    note_aside(note, from, to);
    return to;
}

// "Than" at token `i` with another's thing behind it; "bigger than a dime" tells a size.
static bool compares(const struct tokens *tokens, size_t i) {
    enum { WORDS_MOST = 4 };
    if (!ANY(tokens, i, "than") || i == 0) return false;
    if (ANY(tokens, i + 1, "my", "our", "his", "her", "their", "most", "any", "anything")) return true;
    bool better =
        ANY(tokens, i - 1, "faster", "quicker", "better", "nicer", "prettier", "stronger", "sturdier",
            "quieter", "louder", "tougher", "heavier", "lighter", "older", "newer", "warmer", "softer");
    if (!better || !ANY(tokens, i + 1, "the", "a", "an", "new", "modern")) return false;
    if (ANY(tokens, i + 1, "a", "an"))
        return ANY(tokens, i - 1, "faster", "quicker", "better", "nicer", "quieter");
    for (size_t k = i + 2; k <= i + 1 + WORDS_MOST && k < tokens->count; k++)
        if (ANY(tokens, k, "one", "ones", "kind", "sort")) return true;
    return false;
}

// "She shot up two inches", "he grew four inches": of the child.
static bool grows(const struct tokens *tokens, size_t i) {
    if (!ANY(tokens, i, "she", "he", "they", "kid", "boy", "girl", "son", "daughter")) return false;
    size_t at = i + 1 + (ANY(tokens, i + 1, "has", "had", "then", "soon") ? 1 : 0);
    return ANY(tokens, at, "grew", "grown", "gained", "lost") ||
           (ANY(tokens, at, "shot", "shoots") && ANY(tokens, at + 1, "up")) ||
           (ANY(tokens, at, "put") && ANY(tokens, at + 1, "on"));
}

void read_asides_beside(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i < tokens->count;)
        i = compares(tokens, i) || grows(tokens, i) ? leave(note, i, note_clause_to(note, i, STOP_COMMA))
                                                    : i + 1;
}
