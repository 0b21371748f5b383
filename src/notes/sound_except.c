// SPDX-License-Identifier: MIT
// "Stitching good apart from two inches near the lace", "legs solid except the back left": a part that was
// found to be right, and where it is not. What is wrong there has no name; it is what is asked of such a
// part.
#include "notes/any.h"
#include "notes/faults.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

size_t sound_excepts(const struct tokens *tokens, size_t i) {
    static const char *const cues[] = {"except",    "except for", "apart from",   "aside from", "other than",
                                       "bar",       "barring",    "save for",     "but for",    "all but",
                                       "except on", "except at",  "except where", "except in",  "save"};
    size_t at = i + (i < tokens->count && tokens->at[i].stop == STOP_COMMA);
    size_t n = token_longest(tokens, at, cues, COUNT(cues));
    if (!n) return 0;
    return ANY(tokens, at + n - 1, "on", "at", "in") ? at + n - 1 : at + n;
}

// The place that is all that the words from `i` on say: "the back left", "one corner", "two inches near it".
static size_t place_from(const struct fault_reader *r, size_t i, size_t *from) {
    static const char *const words[] = {"left",   "right",  "back",  "front", "top",
                                        "bottom", "rear",   "inner", "outer", "upper",
                                        "lower",  "middle", "last",  "first", "hand"};
    enum { WORDS_MOST = 4 };
    const struct tokens *tokens = &r->note->tokens;
    size_t end = i;
    while (end < tokens->count && tokens->at[end].stop == STOP_NONE) {
        if (r->scope.fault[end] && !r->part[end]) return 0; // a rule has its name
        end++;
    }
    for (size_t at = i; at < end; at++) {
        size_t to = spot_place_at(r, at, from);
        if (to) return to;
    }
    size_t at = i;
    while (ANY(tokens, at, "the", "a", "an", "one", "its", "two")) at++;
    for (*from = at; at < end; at++)
        if (!r->part[at] && !token_among(tokens, at, words, COUNT(words))) return 0;
    return at > *from && at - *from <= WORDS_MOST ? at : 0;
}

bool sound_tell_except(struct fault_reader *r, const struct flaw *kind, const char *part, size_t i,
                       size_t behind) {
    size_t from, to = place_from(r, behind, &from);
    if (!to) return false;
    struct item_flaw *flaw = fault_add(r, kind, part, fault_place(r->note, from, to), i, to);
    flaw->sure = SURE_LIKELY; // what exactly is wrong was not said
    return true;
}
