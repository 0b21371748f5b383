// SPDX-License-Identifier: MIT
// "I didn't see the chip until I got home", "not sure how it got the dent": who speaks of the fault with an
// article, of seeing it or of how it came, does not say that it is not there.
#include "notes/scope.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// "Not sure when it got cracked": but "how to check for cracks" asks for a way, and "how it burns" for a
// degree.
static bool is_of_its_story(const struct tokens *tokens, size_t cue, size_t i) {
    static const char *const asks[] = {"how", "when", "why", "where", "who"};
    for (size_t at = cue + 1; at < i; at++)
        if (token_among(tokens, at, asks, COUNT(asks)))
            return !token_is(tokens, at + 1, "to") && !(at + 2 == i && token_is(tokens, at + 1, "it"));
    return false;
}

static bool is_spoken_of(const struct tokens *tokens, size_t cue, size_t i) {
    static const char *const articles[] = {"the", "that", "this"};
    if (is_of_its_story(tokens, cue, i)) return true;
    static const char *const verbs[] = {
        "mind",     "notice",  "noticed",   "see",     "seen",      "spot",   "spotted",
        "hide",     "how",     "when",      "why",     "know",      "got",    "came",
        "miss",     "fix",     "fixed",     "mend",    "mended",    "repair", "glue",
        "clean",    "cleaned", "remove",    "removed", "get",       "gets",   "shift",
        "shifts",   "sort",    "sorted",    "replace", "replaced",  "bother", "bothers",
        "brushing", "rubbing", "scrubbing", "washing", "polishing", "airing"};
    if (!token_among(tokens, i - 1, articles, COUNT(articles))) return false;
    for (size_t at = cue; at + 1 < i; at++)
        if (token_among(tokens, at, verbs, COUNT(verbs))) return true;
    return false;
}

void scope_presupposed(struct scope *s) {
    static const uint16_t denied = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_UNKNOWN;
    static const char *const verbal[] = {"don't",    "didn't", "never",   "can't",  "couldn't",
                                         "cannot",   "won't",  "haven't", "not",    "no",
                                         "wouldn't", "dunno",  "nothing", "doesn't"};
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = 1; i < tokens->count; i++) {
        size_t cue = s->cue[i];
        if (!s->fault[i] || s->fault[i - 1] || !(s->stance[i] & denied) || cue >= i) continue;
        if (!token_among(tokens, cue, verbal, COUNT(verbal)) || !is_spoken_of(tokens, cue, i)) continue;
        for (size_t k = i; k < tokens->count && s->cue[k] == cue; k++) s->stance[k] &= (uint16_t)~denied;
    }
}
