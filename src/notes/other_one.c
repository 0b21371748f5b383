// SPDX-License-Identifier: MIT
// Faults of what is not for sale: "the old one had busted its crank, I bought this instead", "ours got run
// over, this came from the neighbor", "my sister got one with a nick, this one is whole". And what is meant
// so: "they rattle, that's the point".
#include "notes/any.h"
#include "notes/scope.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// "This one is whole", "this came from": the thing itself, set against what was said before.
static bool turns_to_this(const struct tokens *tokens, size_t i) {
    if (!ANY(tokens, i, "this", "mine", "these") || i == 0) return false;
    size_t at = i + 1 + ANY(tokens, i + 1, "one", "pair", "set", "ones");
    if (ANY(tokens, i - 1, "bought", "got", "have", "use", "kept") && ANY(tokens, at, "instead")) return true;
    bool apart = tokens->at[i - 1].stop != STOP_NONE || ANY(tokens, i - 1, "but", "and", "while", "so");
    return apart &&
           ANY(tokens, at, "is", "was", "has", "came", "isn't", "never", "are", "hasn't", "one's", "still");
}

// "The old one", "ours", "my sister got one": another of its sort, between the two tokens.
static bool names_another(const struct tokens *tokens, size_t from, size_t to) {
    for (size_t i = from; i < to; i++) {
        if (ANY(tokens, i, "ours", "hers", "theirs") || token_phrase(tokens, i, "old one") ||
            token_phrase(tokens, i, "last one") || token_phrase(tokens, i, "first one") ||
            token_phrase(tokens, i, "other one i") || token_phrase(tokens, i, "our own"))
            return true;
        if (ANY(tokens, i, "got", "had", "has", "bought") && ANY(tokens, i + 1, "one", "hers", "his") &&
            i > from &&
            ANY(tokens, i - 1, "sister", "brother", "mother", "mom", "mum", "dad", "friend", "neighbor",
                "neighbour", "aunt", "uncle", "she", "he", "daughter", "son", "wife", "husband", "cousin"))
            return true;
    }
    return false;
}

static void read_turn(struct scope *s, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    if (!turns_to_this(tokens, i)) return;
    size_t from = scope_sentence_start(s, i);
    if (i > from && names_another(tokens, from, i)) scope_mark(s, from, i, STANCE_OTHER, i);
}

static void read_point(struct scope *s, size_t i) {
    static const char *const said[] = {"that's the point",    "thats the point",     "that is the point",
                                       "which is the point",  "that's the idea",     "thats the idea",
                                       "that is the idea",    "that's what they do", "that's what it does",
                                       "that's how it works", "that's what it's for"};
    if (!token_first(&s->note->tokens, i, said, COUNT(said))) return;
    scope_mark(s, scope_sentence_start(s, i), i, STANCE_OTHER, i);
}

// "For shoes that are dry or starting to crack", of a cream: what it is used on.
static void read_used_on(struct scope *s, size_t i) {
    static const char *const stuffs[] = {"cream", "polish",      "wax",     "glue",   "filler",
                                         "putty", "conditioner", "dubbin",  "balm",   "oil",
                                         "paste", "kit",         "cleaner", "remover"};
    const struct tokens *tokens = &s->note->tokens;
    enum { HEAD = 8 };
    if (i == 0 || !token_is(tokens, i, "for") || tokens->at[i - 1].stop < STOP_COMMA ||
        !(ANY(tokens, i + 2, "that", "which", "with") || ANY(tokens, i + 3, "that", "which", "with")))
        return;
    bool stuff = false;
    for (size_t k = 0; k < HEAD && k < i; k++) stuff |= token_among(tokens, k, stuffs, COUNT(stuffs));
    if (stuff) scope_mark(s, i, scope_sentence_end(s, i), STANCE_OTHER, i);
}

// "New veneer laid where it was lifting", "soles stitched back on, they had been flapping": mended since.
static void read_before_mend(struct scope *s, size_t i) {
    static const char *const mends[] = {"new",        "fresh",    "replaced",  "relaid",   "laid",
                                        "restitched", "stitched", "mended",    "repaired", "reglued",
                                        "resoled",    "rewired",  "recovered", "patched",  "refinished",
                                        "tightened",  "replated", "relined"};
    const struct tokens *tokens = &s->note->tokens;
    bool where = ANY(tokens, i, "where") && ANY(tokens, i + 1, "it", "they") &&
                 ANY(tokens, i + 2, "was", "were", "had", "used");
    bool had = ANY(tokens, i, "they", "it") && ANY(tokens, i + 1, "had") &&
               ANY(tokens, i + 2, "been", "come", "gone");
    if (!where && !had) return;
    for (size_t k = scope_sentence_start(s, i); k < i; k++)
        if (token_among(tokens, k, mends, COUNT(mends))) {
            scope_mark(s, i + 1, scope_clause_end(s, i + 1), STANCE_PAST, i);
            return;
        }
}

void scope_other_one(struct scope *s) {
    for (size_t i = 0; i < s->note->tokens.count; i++) {
        read_turn(s, i);
        read_point(s, i);
        read_used_on(s, i);
        read_before_mend(s, i);
    }
}
