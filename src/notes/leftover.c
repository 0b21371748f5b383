// SPDX-License-Identifier: MIT
// Words that are left beside a fault that was read and tell nothing more of it: the noun it stood before,
// what it makes the thing do, what nobody could tell.
#include "notes/any.h"
#include "notes/rest.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

// "Rust [spots]", "hairline [splits]", "a mended [tear]", "patched over a [hole]": its noun.
static bool is_noun_of_fault(const struct note *note, size_t i) {
    static const char *const nouns[] = {"spot",   "spots", "mark",  "marks",  "split",   "splits",  "crack",
                                        "cracks", "tear",  "tears", "hole",   "holes",   "patch",   "spotted",
                                        "rip",    "rips",  "break", "breaks", "patches", "scratch", "stain",
                                        "stains", "chip",  "chips", "dent",   "dents",   "damage"};
    const struct tokens *tokens = &note->tokens;
    if (i == 0 || !AMONG(tokens, i, nouns)) return false;
    size_t at = i;
    while (at > 0 && tokens->at[at - 1].stop == STOP_NONE &&
           ANY(tokens, at - 1, "over", "across", "the", "a", "an", "old", "of"))
        at--;
    return at > 0 && tokens->at[at - 1].stop == STOP_NONE && note->taken[at - 1] == TAKEN_FLAW;
}

// "A crack across the corner that's been filled": what was done to it was read.
static bool is_noun_of_mend(const struct note *note, size_t i) {
    enum { FAR = 8 };
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, i, "crack", "hole", "split", "tear", "chip", "break", "cracks", "holes", "splits",
             "tears", "chips"))
        return false;
    for (size_t k = i + 1; k < i + FAR && k + 1 < tokens->count && tokens->at[k].stop == STOP_NONE; k++) {
        if (!ANY(tokens, k, "that's", "that", "which", "thats")) continue;
        size_t at = k + 1;
        while (ANY(tokens, at, "has", "was", "have", "were", "is", "'s")) at++;
        return at < tokens->count && note->taken[at] == TAKEN_FLAW;
    }
    return false;
}

static bool fault_before(const struct note *note, size_t i) {
    while (i > 0 && note->tokens.at[i - 1].stop < STOP_SENTENCE)
        if (note->taken[--i] == TAKEN_FLAW) return true;
    return false;
}

// "One castor is gone so it rocks a little", "which makes the drawer drop when you pull it": what a fault
// that was read makes the thing do; how many tokens.
static size_t effect_at(const struct note *note, size_t i) {
    static const char *const moves[] = {
        "rocks",   "rock",   "tips",  "tip",    "leans",     "lean",  "wobbles", "wobble", "drops",   "drop",
        "droops",  "sags",   "tilts", "tilt",   "lists",     "lifts", "swings",  "slips",  "catches", "rubs",
        "rattles", "rattle", "sways", "slides", "tips over", "falls", "fall",    "flaps",  "spins"};
    static const char *const ways[] = {
        "a",       "little",    "bit",      "slightly", "over",  "back", "out",   "down",  "up",   "on",
        "off",     "to",        "the",      "one",      "side",  "when", "if",    "you",   "pull", "it",
        "forward", "backwards", "forwards", "left",     "right", "open", "floor", "hard",  "flat", "fill",
        "push",    "lift",      "about",    "around",   "touch", "sit",  "lean",  "table", "turn"};
    enum { SUBJECT_MOST = 3 };
    const struct tokens *tokens = &note->tokens;
    bool makes =
        ANY(tokens, i, "makes", "making", "make") && i > 0 && ANY(tokens, i - 1, "which", "that", ",");
    if (!makes && !ANY(tokens, i, "so")) return 0;
    size_t verb = i + 1;
    while (verb < i + 1 + SUBJECT_MOST && verb < tokens->count && tokens->at[verb].stop == STOP_NONE &&
           !AMONG(tokens, verb, moves))
        verb++;
    if (verb == i + 1 || !AMONG(tokens, verb, moves) || !fault_before(note, i)) return 0;
    size_t end = verb + 1;
    while (AMONG(tokens, end, ways)) end++;
    bool over = end >= tokens->count || tokens->at[end].stop != STOP_NONE || ANY(tokens, end, "and", "but");
    for (size_t k = i; k < end; k++) over &= note->taken[k] != TAKEN_FLAW;
    return over ? end - i : 0;
}

// "Can't tell", "couldn't say which": what somebody does not know is no failing of the thing.
static size_t ignorance_at(const struct note *note, size_t i) {
    static const char *const knows[] = {"tell",  "say",     "swear", "remember", "recall",  "think",  "prove",
                                        "vouch", "promise", "guess", "decide",   "imagine", "be sure"};
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, i, "can't", "cannot", "couldn't", "cant")) return 0;
    for (size_t k = i; k > 0 && tokens->at[k - 1].stop < STOP_SENTENCE; k--)
        if (note->fault_word[k - 1]) return 0; // of a fault it is a doubt
    size_t at = i + 1;
    while (ANY(tokens, at, "really", "honestly", "quite", "for", "even")) at++;
    return token_longest(tokens, at, knows, COUNT(knows)) ? at - i : 0;
}

// "A stain from a leaky bottle": what left it.
static size_t cause_at(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (i == 0 || !ANY(tokens, i, "from", "by") || note->taken[i - 1] != TAKEN_FLAW ||
        !ANY(tokens, i + 1, "a", "an", "some"))
        return 0;
    bool plain = i + 3 < tokens->count && note->taken[i + 2] == TAKEN_NOT &&
                 note->taken[i + 3] == TAKEN_NOT && tokens->at[i + 3].kind == TOKEN_WORD &&
                 tokens->at[i + 2].stop == STOP_NONE;
    return plain ? 4 : 0;
}

// "The lid is bent, sits but doesn't seal": what comes of it.
static size_t poor_seal_at(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    bool no = ANY(tokens, i, "doesn't", "won't", "not", "don't") &&
              ANY(tokens, i + 1, "seal", "quite", "really", "sealing");
    if (!no || !fault_before(note, i)) return 0;
    return ANY(tokens, i + 1, "seal", "sealing") ? 2 : ANY(tokens, i + 2, "seal") ? 3 : 0;
}

// "A firing crack that doesn't go through", "glued back, you can see the glue": how far a fault that was read
// goes, and how it shows.
static size_t extent_at(const struct note *note, size_t i) {
    static const char *const ways[] = {"go through",     "go all the way",   "show",  "move",   "matter",
                                       "go any further", "go right through", "catch", "spread", "get worse"};
    static const char *const signs[] = {"see the glue",      "feel the glue",  "see the join",
                                        "see the line",      "feel the join",  "just see the glue",
                                        "just see the join", "see the repair", "see where"};
    const struct tokens *tokens = &note->tokens;
    size_t n = 0;
    if (ANY(tokens, i, "doesn't", "don't", "didn't", "won't"))
        n = token_longest(tokens, i + 1, ways, COUNT(ways));
    else if (ANY(tokens, i, "can") && i > 0 && ANY(tokens, i - 1, "you"))
        n = token_longest(tokens, i + 1, signs, COUNT(signs));
    bool over = n && (i + n + 1 >= tokens->count || tokens->at[i + n + 1].stop != STOP_NONE ||
                      ANY(tokens, i + n + 1, "to", "on", "and", "but", "when", "if", "from", "it", "much"));
    return over && fault_before(note, i) ? n + 1 : 0;
}

void note_leftover(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        bool open =
            note->taken[i] == TAKEN_NOT || note->taken[i] == TAKEN_SCOPE || note->taken[i] == TAKEN_FILLER;
        if (tokens->at[i].kind != TOKEN_WORD || !open) continue; // what is a fact is none of these
        if (note->taken[i] == TAKEN_NOT && (is_noun_of_fault(note, i) || is_noun_of_mend(note, i)))
            note->taken[i] = TAKEN_FILLER;
        size_t n = effect_at(note, i);
        if (!n) n = poor_seal_at(note, i);
        if (!n) n = cause_at(note, i);
        if (!n) n = extent_at(note, i);
        if (!n && note->taken[i] == TAKEN_NOT) n = ignorance_at(note, i);
        for (size_t k = i; k < i + n; k++)
            if (note->taken[k] == TAKEN_NOT) note->taken[k] = TAKEN_FILLER;
    }
}
