// SPDX-License-Identifier: MIT
// How bad a fault is by how far it reaches or how many there are: "too many to count", "on every corner",
// "the whole of one side", "you could count them on one hand", "at the tips and no more", "in places". What
// an extent amounts to is the kind's own: crazing all over is plain crazing, rust all over is much rust.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

static const struct cue counted[] = {
    {"beyond counting", SEVERITY_HEAVY},
    {"by the dozen", SEVERITY_HEAVY},
    {"by the hundred", SEVERITY_HEAVY},
    {"by the score", SEVERITY_HEAVY},
    {"countless", SEVERITY_HEAVY},
    {"gave up counting", SEVERITY_HEAVY},
    {"given up counting", SEVERITY_HEAVY},
    {"i can count", SEVERITY_HEAVY},
    {"i could count", SEVERITY_HEAVY},
    {"innumerable", SEVERITY_HEAVY},
    {"lost count", SEVERITY_HEAVY},
    {"more than a few", SEVERITY_HEAVY},
    {"no two inches", SEVERITY_HEAVY},
    {"stopped counting", SEVERITY_HEAVY},
    {"than you can count", SEVERITY_HEAVY},
    {"to count", SEVERITY_HEAVY},
    {"too many to", SEVERITY_HEAVY},
    {"too numerous", SEVERITY_HEAVY},
    {"umpteen", SEVERITY_HEAVY},
    {"wall to wall", SEVERITY_HEAVY},
    {"without number", SEVERITY_HEAVY},
};

// "You could count them on one hand": a few.
static bool is_handful(const struct tokens *tokens, size_t i) {
    enum { FAR = 6 };
    if (!ANY(tokens, i, "count", "counted", "counting"))
        return ANY(tokens, i, "handful") && i > 0 && ANY(tokens, i - 1, "a", "only", "mere");
    for (size_t k = i + 1; k < i + FAR && k < tokens->count && tokens->at[k].stop == STOP_NONE; k++)
        if (ANY(tokens, k, "hand", "fingers") && ANY(tokens, k - 1, "one", "a", "the", "my", "your"))
            return true;
    return false;
}

// "On every corner", "each and every page"; but "every so often", and "every other" one of two.
static enum severity every_at(const struct tokens *tokens, size_t i) {
    if (!ANY(tokens, i, "every") || i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE)
        return SEVERITY_UNKNOWN;
    if (ANY(tokens, i + 1, "so", "now", "time", "day", "week", "year", "bit", "reason", "confidence", "thing",
            "home", "sign"))
        return SEVERITY_UNKNOWN;
    return ANY(tokens, i + 1, "other", "second", "third") ? SEVERITY_MODERATE : SEVERITY_HEAVY;
}

// "On all four corners", "at both ends".
static bool is_all_round(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (i == 0 || !spot_preposition(tokens, i - 1)) return false;
    size_t at = i + 1;
    if (token_is(tokens, i, "all")) {
        while (ANY(tokens, at, "the", "of", "its", "three", "four", "six", "eight", "3", "4", "6", "8")) at++;
        return at > i + 1 && at < tokens->count && r->part[at];
    }
    return false;
}

static bool is_measured_part(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "length", "width", "depth", "height", "way", "side", "face", "front", "back",
               "surface", "page", "pages", "edge", "rim", "circumference", "top", "seat", "lid", "panel",
               "thing", "lot", "area", "base", "cover", "spine", "body", "blade", "bottom", "inside",
               "outside", "seam", "border", "face", "picture", "sheet", "book", "cloth", "piece", "it",
               "them", "leaf", "lens", "dial", "handle", "frame", "floor", "sole", "skin", "coat", "finish");
}

// "The whole of one side", "half the rim", "the best part of the lid", "a third of it".
static enum severity share_at(const struct tokens *tokens, size_t i) {
    enum { FAR = 5 };
    enum severity found = SEVERITY_UNKNOWN;
    size_t at = i + 1;
    if (ANY(tokens, i, "half", "most", "much", "whole", "entire", "thirds", "quarters"))
        found = SEVERITY_HEAVY;
    if (ANY(tokens, i, "best", "better", "bulk", "majority", "part", "greater", "good") &&
        ANY(tokens, i + 1, "part", "of", "half") && i > 0 && ANY(tokens, i - 1, "the", "a"))
        found =
            token_is(tokens, i, "part") || token_is(tokens, i, "good") ? SEVERITY_UNKNOWN : SEVERITY_HEAVY;
    if (ANY(tokens, i, "third", "quarter") && token_is(tokens, i + 1, "of") && i > 0 &&
        ANY(tokens, i - 1, "a", "one"))
        found = SEVERITY_MODERATE;
    if (!found) return found;
    if (ANY(tokens, i, "half") && i > 0 && ANY(tokens, i - 1, "in")) // "frayed nearly in half"
        return SEVERITY_HEAVY;
    bool of = false;
    while (at < i + FAR && ANY(tokens, at, "of", "the", "its", "one", "part", "half", "a", "this", "that",
                               "whole", "left", "right", "front", "back")) {
        of |= ANY(tokens, at, "of", "the", "its", "one");
        at++;
    }
    bool whole = ANY(tokens, i, "whole", "entire");
    return (of || whole) && (is_measured_part(tokens, at) || is_measured_part(tokens, at - 1)) &&
                   !(i > 0 && ANY(tokens, i - 1, "not", "nowhere", "but", "overall"))
               ? found
               : SEVERITY_UNKNOWN;
}

// "Rubbed at the tips and no more", "one corner, nowhere else".
static bool is_bounded(const struct tokens *tokens, size_t i) {
    static const char *const ends[] = {
        "and no more",       "and no further",  "no further than", "nowhere else",   "and nothing more",
        "and that's it",     "that's about it", "but that's it",   "and that's all", "but that's all",
        "but no more",       "not beyond",      "and only there",  "just there",     "and not beyond",
        "no more than that", "confined to",     "restricted to",   "limited to",     "in one spot",
        "in one place",      "just the one",    "only the one",    "just one spot"};
    size_t n = token_longest(tokens, i, ends, sizeof ends / sizeof *ends);
    if (!n) return false;
    return !token_is(tokens, i + 1, "one") || i + n >= tokens->count || tokens->at[i + n].stop != STOP_NONE ||
           ANY(tokens, i + n, "on", "at", "by", "near");
}

enum severity degree_of_tell(const struct flaw *kind, const char *word) {
    for (int d = SEVERITY_HEAVY; d > SEVERITY_UNKNOWN; d--)
        for (size_t k = 0; k < kind->tells[d].count; k++)
            if (text_same(kind->tells[d].at[k], word)) return (enum severity)d;
    return SEVERITY_UNKNOWN;
}

enum severity degree_of_whole(const struct flaw *kind) {
    return degree_of_tell(kind, "all over");
}

bool degree_is_whole(const struct tokens *tokens, size_t i, size_t n) {
    bool every = false, of_it = false;
    for (size_t k = i; k < i + n; k++) {
        every |= ANY(tokens, k, "all", "whole", "entire", "end", "top", "full", "everywhere", "throughout");
        of_it |= ANY(tokens, k, "gone", "off", "away", "to", "hell", "heck", "of") &&
                 !ANY(tokens, k + 1, "bottom", "end");
    }
    return every && !of_it;
}

// "Gone in places", "in patches": where the scale says nothing of patches it is little.
static enum severity in_places(const struct flaw *kind, const struct tokens *tokens, size_t i) {
    if (!ANY(tokens, i, "in") || !ANY(tokens, i + 1, "places", "patches", "parts", "spots"))
        return SEVERITY_UNKNOWN;
    enum severity own = degree_of_tell(kind, "patches");
    if (!own) own = degree_of_tell(kind, "in patches");
    if (!own) own = degree_of_tell(kind, "in places");
    return own ? own : SEVERITY_LIGHT;
}

enum severity degree_of_extent(const struct fault_reader *r, const struct flaw *kind,
                               const struct around *span) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = span->from; i < span->to; i++) {
        size_t n;
        if (is_handful(tokens, i)) {
            enum { HANDFUL = 4 };
            enum severity few = degree_of_number(kind, HANDFUL);
            return few ? few : SEVERITY_MODERATE;
        }
        const struct cue *cue = cue_at(&r->scope, counted, sizeof counted / sizeof *counted, i, &n);
        if (cue) return (enum severity)cue->kind;
        if (is_bounded(tokens, i)) return SEVERITY_LIGHT;
        if (is_all_round(r, i)) return SEVERITY_MODERATE;
        enum severity found = every_at(tokens, i);
        if (!found) found = share_at(tokens, i);
        if (found == SEVERITY_HEAVY && ANY(tokens, i, "half") && degree_of_tell(kind, "half"))
            return degree_of_tell(kind, "half");
        if (found == SEVERITY_HEAVY && degree_of_whole(kind)) found = degree_of_whole(kind);
        if (found) return found;
    }
    for (size_t i = span->from; i < span->to; i++) {
        enum severity found = in_places(kind, tokens, i);
        if (found) return found;
    }
    return SEVERITY_UNKNOWN;
}
