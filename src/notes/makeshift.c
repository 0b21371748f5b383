// SPDX-License-Identifier: MIT
// What a part is, where that is none of its own: "is a bolt somebody hung in there", "is just a nut", "is a
// modern screw one".
#include "notes/any.h"
#include "notes/traces.h"

enum { WORDS_MOST = 5 };

static bool is_somebody(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "somebody", "someone", "he", "they", "dad", "grandad", "we", "i");
}

static bool goes_on(const struct tokens *tokens, size_t i) {
    return i < tokens->count && tokens->at[i].stop == STOP_NONE;
}

size_t part_made_at(const struct tokens *tokens, size_t i) {
    size_t at = i + (ANY(tokens, i, "just", "only") ? 1 : 0), to = at + 1;
    bool article = ANY(tokens, at, "a", "an");
    while (article && to < i + WORDS_MOST && goes_on(tokens, to) && !is_somebody(tokens, to) &&
           !ANY(tokens, to, "but", "and", "so"))
        to++;
    if (article && to > at + 1 && is_somebody(tokens, to) && goes_on(tokens, to + 1) &&
        !ANY(tokens, to + 1, "think", "reckon", "believe", "guess", "can", "can't", "don't", "couldn't",
             "didn't", "missed", "noticed", "saw", "see", "spotted", "hadn't", "hate", "like", "love",
             "mentioned", "mention", "felt", "feel", "thought", "show", "will", "would", "haven't"))
        return to + 1;
    if (article && to < i + WORDS_MOST &&
        ANY(tokens, to - 1, "nut", "nail", "bolt", "screw", "stick", "matchstick", "pin", "paperclip",
            "washer", "cork", "twig"))
        return to;
    size_t first = i + (token_is(tokens, i, "a") ? 1 : 0);
    if (!ANY(tokens, first, "modern", "newer", "later", "new", "replacement", "different", "reproduction",
             "odd"))
        return 0;
    for (to = first + 1; to < i + WORDS_MOST && goes_on(tokens, to); to++)
        if (ANY(tokens, to, "one", "ones")) return to + 1;
    return 0;
}
