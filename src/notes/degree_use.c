// SPDX-License-Identifier: MIT
// How bad a fault is by what it does to the use of the thing: "so faint you can't read it", "no longer
// shuts", "needs a good shove", "sticks now and again", "held on with string", "keeps the rain out".
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

static bool is_failing(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "can't", "cant", "cannot", "won't", "wont", "doesn't", "doesnt", "couldn't",
               "don't", "wouldn't", "isn't", "aren't", "hardly", "barely", "nothing", "nobody");
}

// "Worn so faint you can't read it", "too stiff to use": whatever it is called, it is too much.
enum severity degree_of_too_much(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { FAR = 9, BETWEEN = 8 };
    const struct tokens *tokens = &r->note->tokens;
    size_t i = hit->from > 0 && ANY(tokens, hit->from - 1, "so", "too", "that") ? hit->from - 1 : hit->from;
    for (; i < tokens->count && i < hit->to + FAR && tokens->at[i].stop < STOP_CLAUSE; i++) {
        if (i >= hit->to && r->scope.fault[i] && !r->part[i]) break;
        if (!ANY(tokens, i, "so", "too", "that") || i + 2 >= tokens->count) continue;
        if (i > 0 && ANY(tokens, i - 1, "not", "isn't", "aren't", "never", "nothing", "all", "is", "do") &&
            !ANY(tokens, i - 1, "is"))
            continue;
        if (tokens->at[i].stop != STOP_NONE || tokens->at[i + 1].stop != STOP_NONE) continue;
        bool too = ANY(tokens, i, "too");
        if (too && token_is(tokens, i + 2, "to") &&
            !ANY(tokens, i + 3, "see", "notice", "matter", "mention", "feel", "photograph", "worry", "show",
                 "bother"))
            return SEVERITY_HEAVY;
        for (size_t k = i + 2;
             !too && k < i + BETWEEN && k < tokens->count && tokens->at[k].stop == STOP_NONE; k++)
            if (is_failing(tokens, k) &&
                ANY(tokens, k - 1, "it", "you", "they", "i", "lid", "door", "drawer"))
                return ANY(tokens, k + 1, "see", "notice", "really", "tell", "feel", "spot", "show", "find",
                           "matter", "know", "identify", "explain", "name", "place", "account", "understand")
                           ? SEVERITY_UNKNOWN
                           : SEVERITY_HEAVY;
    }
    return SEVERITY_UNKNOWN;
}

// "Dent in the ring so filters won't screw on": what it stops, though it is a fault by itself.
static bool stops_use(const struct tokens *tokens, size_t so) {
    enum { FAR = 5 };
    for (size_t k = so + 1; k < so + FAR && k < tokens->count && tokens->at[k - 1].stop == STOP_NONE; k++)
        if (ANY(tokens, k, "won't", "wont", "doesn't", "doesnt", "can't", "cannot", "cant", "don't"))
            return !ANY(tokens, k + 1, "show", "matter", "affect", "notice", "see", "know", "say", "tell",
                        "be", "test", "check", "try", "look", "really", "get", "spoil", "feel", "think",
                        "quite", "always", "close", "shut", "sit", "find", "ship", "post") ||
                   (ANY(tokens, k + 1, "close", "shut", "sit") &&
                    (k + 2 >= tokens->count || tokens->at[k + 2].stop != STOP_NONE));
    return false;
}

enum severity degree_of_stopping(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { FAR = 9 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = hit->to; i < tokens->count && i < hit->to + FAR && tokens->at[i].stop < STOP_CLAUSE;
         i++) {
        if (r->scope.fault[i] && !r->part[i]) break;
        if (token_is(tokens, i, "so") && stops_use(tokens, i)) return SEVERITY_HEAVY;
    }
    return SEVERITY_UNKNOWN;
}

static bool is_working(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "close", "closes", "shut", "shuts", "open", "opens", "sit", "sits", "stand",
               "stands", "hold", "holds", "fit", "fits", "turn", "turns", "move", "moves", "lock", "locks",
               "latch", "latches", "play", "plays", "run", "runs", "work", "works", "lift", "lifts", "slide",
               "slides", "seal", "seals", "stay", "stays", "fasten", "fastens", "spin", "spins", "fold",
               "folds", "read", "grip", "grips", "cut", "cuts", "engage", "engages", "lie", "lies", "go",
               "goes", "swing", "swings", "line", "used", "worn", "played", "closed", "shut", "opened",
               "catch", "catches", "snap", "snaps", "reach", "reaches", "meet", "clip", "screw", "start",
               "stop");
}

// "So it no longer shuts", "won't sit flat": what it does no more, or not all the way.
static enum severity fails_at(const struct tokens *tokens, size_t i) {
    bool longer = token_is(tokens, i, "no") && token_is(tokens, i + 1, "longer");
    bool no = longer || ANY(tokens, i, "won't", "wont", "doesn't", "doesnt", "can't", "cannot", "cant",
                            "don't", "refuses");
    if (token_is(tokens, i, "will") && token_is(tokens, i + 1, "not")) no = longer = true;
    size_t at = i + (longer || ANY(tokens, i, "refuses") ? 2 : 1);
    while (ANY(tokens, at, "be", "quite", "even", "always", "really", "fully")) at++;
    if (!no || !is_working(tokens, at)) return SEVERITY_UNKNOWN;
    if (ANY(tokens, at - 1, "quite", "always", "really", "fully")) return SEVERITY_MODERATE;
    if (at + 1 < tokens->count && tokens->at[at + 1].stop == STOP_NONE &&
        ANY(tokens, at + 1, "properly", "fully", "right", "all", "flush", "flat", "well", "easily", "unless",
            "without", "every", "always", "first", "square", "smoothly", "freely", "first", "straight",
            "true", "far", "quite", "tight"))
        return SEVERITY_MODERATE;
    return SEVERITY_HEAVY;
}

// "Needs a good shove", "turns if you put some muscle into it", "a pig to get going".
static bool is_forced(const struct tokens *tokens, size_t i) {
    enum { FAR = 5 };
    if (!ANY(tokens, i, "needs", "takes", "wants", "need", "take", "put", "with", "use", "needing", "taking",
             "give", "after", "till", "until"))
        return ANY(tokens, i, "a") &&
               ANY(tokens, i + 1, "pig", "swine", "devil", "job", "struggle", "fight", "battle", "pain") &&
               ANY(tokens, i + 2, "to", ".", ",");
    for (size_t k = i + 1; k < i + FAR && k < tokens->count && tokens->at[k].stop == STOP_NONE; k++)
        if (ANY(tokens, k, "shove", "push", "thump", "tug", "yank", "pull", "twist", "kick", "wrench",
                "pliers", "force", "muscle", "effort", "persuasion", "persuading", "coaxing", "elbow",
                "heave", "knock", "whack", "tap", "jiggle", "wiggle", "wiggling", "jiggling", "hammer",
                "mole", "grips", "strength", "thumping", "encouragement", "bang", "nudge", "poke", "prod",
                "help", "hand"))
            return true;
    return false;
}

// "Now and again", "once in a while": not always.
static bool is_seldom(const struct tokens *tokens, size_t i) {
    static const char *const seldom[] = {
        "now and again",  "now and then",  "once in a while", "from time to time", "occasionally",
        "sometimes",      "once or twice", "every so often",  "at times",          "every now and",
        "intermittently", "on occasion",   "one time in",     "once every"};
    return token_longest(tokens, i, seldom, sizeof seldom / sizeof *seldom) > 0;
}

// "Held on with string".
bool degree_is_tied(const struct tokens *tokens, size_t i) {
    enum { FAR = 6 };
    if (!ANY(tokens, i, "held", "holds", "hold", "kept", "tied", "fixed", "holding", "propped", "wedged"))
        return false;
    bool by = false;
    for (size_t k = i + 1; k < i + FAR && k < tokens->count && tokens->at[k].stop == STOP_NONE; k++) {
        by |= ANY(tokens, k, "with", "by");
        if (by && ANY(tokens, k, "string", "tape", "band", "bands", "wire", "pin", "pins", "nail", "twine",
                      "rope", "thread", "threads", "rivet", "stitch", "stitches", "elastic", "cable", "hope",
                      "glue", "blobs", "clip", "hair", "matchstick", "bootlace", "peg", "gravity", "sliver",
                      "luck", "faith"))
            return true;
    }
    return false;
}

// "Straightens with the fingers", "pushes back".
static bool is_undone(const struct tokens *tokens, size_t i) {
    if (ANY(tokens, i, "straightens", "bends", "pushes", "presses", "pops", "tightens", "eases", "frees",
            "nips"))
        return ANY(tokens, i + 1, "with", "by", "back", "out", "up", "easily", "in");
    return false;
}

// "Keeps the rain out", "holds water": it does what it is for.
// "Easy to bend back", "simple enough to sort".
bool degree_is_easy(const struct tokens *tokens, size_t i) {
    if (!ANY(tokens, i, "easy", "simple", "easily", "quick", "cheap")) return false;
    size_t at = i + 1 + (ANY(tokens, i + 1, "enough", "job", "thing") ? 1 : 0);
    if (token_is(tokens, i, "easily") || !token_is(tokens, at, "to")) return false;
    return at + 1 < tokens->count && tokens->at[at + 1].kind == TOKEN_WORD &&
           !ANY(tokens, at + 1, "see", "spot", "miss", "find", "notice", "use", "carry", "break", "tell",
                "clean", "feel", "hold", "read", "lift", "post", "store", "overlook", "play");
}

static bool is_serving(const struct tokens *tokens, size_t i) {
    if (ANY(tokens, i, "keeps", "kept"))
        return ANY(tokens, i + 1, "the", "you", "out", "time", "its", "water") &&
               ANY(tokens, i + 2, "rain", "water", "dry", "wet", "wind", "weather", "warm", "edge", "well",
                   "good", "out", "cold");
    if (ANY(tokens, i, "holds", "hold"))
        return ANY(tokens, i + 1, "water", "air", "pressure", "its", "oil") &&
               !(i > 0 && ANY(tokens, i - 1, "doesn't", "won't", "not", "longer", "can't"));
    if (ANY(tokens, i, "hasn't", "haven't", "not", "never", "hasnt") &&
        ANY(tokens, i + 1, "moved", "spread", "grown", "changed", "worsened", "shifted", "lengthened"))
        return true; // "hasn't moved in thirty years"
    if (ANY(tokens, i, "never", "doesn't", "doesnt", "hasn't", "didn't", "don't"))
        return ANY(tokens, i + 1, "leak", "leaks", "leaked", "leaking", "drip", "dripped", "weep", "wept");
    if (ANY(tokens, i, "watertight", "serviceable", "weatherproof", "rideable", "readable", "legible",
            "playable", "wearable", "drinkable"))
        return !(i > 0 &&
                 ANY(tokens, i - 1, "not", "hardly", "barely", "isn't", "longer", "scarcely", "once"));
    return false;
}

// "Dented so it sits proud", "bent so that the lid rubs": what comes of it.
static bool is_result(const struct tokens *tokens, size_t i) {
    enum { FAR = 4 };
    if (!token_is(tokens, i, "so")) return false;
    for (size_t k = i + 2; k < i + 2 + FAR && k < tokens->count && tokens->at[k - 1].stop == STOP_NONE; k++)
        if (ANY(tokens, k, "sits", "rocks", "leans", "catches", "rubs", "droops", "sags", "binds", "drags",
                "slips", "wobbles", "hangs", "flops", "rattles", "leaks", "drips", "jams", "lists", "tilts",
                "scrapes", "squeaks", "swings", "slopes", "bulges", "gapes", "stands", "sticks", "tips",
                "pulls"))
            return !ANY(tokens, k + 1, "fine", "flat", "well", "ok", "level", "straight", "nicely");
    return false;
}

// "Won't catch unless you press hard": it does, with pains.
bool degree_is_bound(const struct tokens *tokens, const struct around *span) {
    for (size_t i = span->from; i + 2 < span->to; i++)
        if (ANY(tokens, i, "unless", "without") &&
            (ANY(tokens, i + 2, "press", "push", "pull", "force", "hold", "lift", "lean", "squeeze", "jiggle",
                 "wiggle", "tap", "hit", "really", "thump", "pinch", "tie", "wedge", "prop", "turn",
                 "twist") ||
             ANY(tokens, i + 1, "pressing", "pushing", "pulling", "forcing", "holding", "lifting",
                 "squeezing", "jiggling", "help", "persuasion")))
            return true;
    return false;
}

enum severity degree_of_failing(const struct fault_reader *r, const struct flaw *kind,
                                const struct around *span) {
    const struct tokens *tokens = &r->note->tokens;
    bool stuck = text_same(kind->rule.id, "seized") || kind->class == CLASS_FUNCTION;
    enum severity worst = SEVERITY_UNKNOWN;
    for (size_t i = span->from; i < span->to; i++) { // "pushes back in but won't stay"
        if (ANY(tokens, i + 1, "reach", "extend", "spread"))
            continue; // "a hairline that doesn't reach the grooves"
        if (i + 2 < span->to && ANY(tokens, i + 1, "go", "run", "come", "goes") &&
            ANY(tokens, i + 2, "through", "right", "all", "clean", "straight", "far", "deep", "past"))
            continue; // "a split that doesn't go right through": of the split itself
        enum severity found = kind->form == FAULT && !stuck ? fails_at(tokens, i) : SEVERITY_UNKNOWN;
        if (!found && (is_undone(tokens, i) || is_seldom(tokens, i))) found = SEVERITY_LIGHT;
        if (!found && is_forced(tokens, i)) found = stuck ? SEVERITY_MODERATE : SEVERITY_LIGHT;
        if (!found && is_result(tokens, i)) found = SEVERITY_MODERATE;
        if (!found && is_serving(tokens, i)) found = degree_still_good(kind);
        if (found > worst) worst = found;
    }
    return worst;
}
