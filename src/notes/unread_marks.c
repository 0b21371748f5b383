// SPDX-License-Identifier: MIT
// A mark that is there and cannot be read: "a stamp under the base but I can't read it", "hallmarks too
// rubbed to make out", "backstamp, blurred". It is told of the mark, so that it does not stand in for what
// else is not certain of maker or age. Read before the faults, as what wore a mark away is no fault of the
// thing.
#include "notes/any.h"
#include "notes/traces.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

static const char *const nouns[] = {"mark",     "marks",     "stamp",     "stamps",     "backstamp",
                                    "hallmark", "hallmarks", "signature", "signatures", "inscription",
                                    "script",   "trademark", "maker's",   "signed"};

static size_t reads(const struct tokens *tokens, size_t i) {
    if (ANY(tokens, i, "read", "decipher", "see", "identify") && !ANY(tokens, i + 1, "any", "a", "one"))
        return (size_t)(1 + ANY(tokens, i + 1, "it", "them", "all", "what"));
    if (!ANY(tokens, i, "make", "made")) return 0;
    size_t at = i + 1;
    while (ANY(tokens, at, "it", "them", "any", "all", "of")) at++;
    return token_is(tokens, at, "out") ? at + 1 - i : 0;
}

// "Can't read it", "too worn to make out", "illegible": how many tokens.
static size_t unread_at(const struct tokens *tokens, size_t i) {
    static const char *const blurs[] = {"illegible", "unreadable", "indecipherable", "indistinct",
                                        "blurred",   "smudged",    "smeared",        "blurry"};
    static const char *const worn[] = {"worn",       "faint",     "rubbed",     "faded",    "blurred",
                                       "smudged",    "dirty",     "indistinct", "far",      "light",
                                       "small",      "weak",      "rusty",      "hard",     "difficult",
                                       "impossible", "tarnished", "crude",      "corroded", "thick"};
    size_t at = i;
    if (AMONG(tokens, i, blurs))
        return i > 0 && ANY(tokens, i - 1, "not", "isn't", "never", "or", "a", "no") ? 0 : 1;
    if (ANY(tokens, i, "can't", "cannot", "couldn't", "cant", "can")) {
        at++;
        if (token_is(tokens, i, "can") && !token_is(tokens, at++, "not")) return 0;
        while (ANY(tokens, at, "quite", "really", "be", "properly", "actually", "for", "get", "to")) at++;
    } else if (ANY(tokens, i, "too", "hard", "difficult", "impossible")) {
        at += token_is(tokens, i, "too");
        if (!AMONG(tokens, at, worn)) return 0;
        at++;
        while (ANY(tokens, at, "gone", "down", "away", "for", "me", "now", "or", "and", "rubbed", "faint",
                   "worn"))
            at++;
        if (!token_is(tokens, at++, "to")) return 0;
        at += token_is(tokens, at, "be");
    } else {
        return 0;
    }
    if (ANY(tokens, at, "say", "tell") && ANY(tokens, at + 1, "who", "whose", "what", "which"))
        return at + 2 - i; // "worn so I can't say who"
    size_t n = reads(tokens, at);
    return n ? at + n - i : 0;
}

// From the noun on: in its sentence, or at the head of the next, "Can't read it."
static size_t unread_behind(const struct fault_reader *r, size_t i) {
    enum { FAR = 12, NEXT = 3 };
    const struct tokens *tokens = &r->note->tokens;
    size_t end = scope_sentence_end(&r->scope, i);
    for (size_t at = i + 1; at < end && at < i + FAR; at++) {
        if (AMONG(tokens, at, nouns)) return 0;
        size_t n = unread_at(tokens, at);
        if (n) return at + n;
    }
    for (size_t at = end + 1; at < end + NEXT && at < tokens->count; at++) {
        size_t n = unread_at(tokens, at);
        bool whole = n && (at + n >= tokens->count || tokens->at[at + n].stop >= STOP_CLAUSE);
        if (whole && ANY(tokens, at + n - 1, "it", "them", "out", "illegible", "read")) return at + n;
        if (!ANY(tokens, at, "i", "but", "just", "we")) return 0;
    }
    return 0;
}

static void tell(struct fault_reader *r, size_t from, size_t to) {
    const struct flaw *kind = ruleset_flaw(r->note->rules, "authenticity-unverified");
    static const uint16_t off =
        STANCE_DENIED | STANCE_PAST | STANCE_WITHDRAWN | STANCE_OTHER | STANCE_PLANNED;
    if (!kind || r->scope.stance[from] & off) return;
    size_t noun = from;
    struct fault_hit hit = {.from = noun, .to = to, .kinds = {kind}, .kind_count = 1};
    struct spot spot = spot_of_hit(r, &hit);
    const char *where = fault_place(r->note, spot.where_from, spot.where_to);
    bool signs = ANY(&r->note->tokens, noun, "signed", "maker's");
    fault_tell(r, &hit, kind, signs ? "mark" : fault_place(r->note, noun, noun + 1), where);
    part_close(r, noun, to);
}

void read_unread_marks(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        if (!AMONG(tokens, i, nouns) || r->note->taken[i] == TAKEN_ASIDE) continue;
        if (i > 0 &&
            ANY(tokens, i - 1, "no", "not", "without", "rust", "water", "burn", "glue", "ring", "knife"))
            continue;
        size_t to = unread_behind(r, i);
        if (!to) continue;
        tell(r, i, to);
        i = to - 1;
    }
}
