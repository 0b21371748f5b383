// SPDX-License-Identifier: MIT
// How bad a fault is by what comes of it: "enough to clear the shed", "that weak it falls to bits", "you
// could put your fist through it", "comes off with a wipe", "won't wash out", "could be bent back by hand".
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"

// "Enough to catch a nail" is felt; enough to do more is much.
static enum severity enough_at(const struct tokens *tokens, size_t i) {
    if (!token_is(tokens, i, "enough")) return SEVERITY_UNKNOWN;
    size_t to = i + 1;
    if (token_is(tokens, to, "that")) return SEVERITY_HEAVY;
    if (!token_is(tokens, to, "to")) return SEVERITY_UNKNOWN;
    if (i > 0 && ANY(tokens, i - 1, "not", "isn't", "hardly", "barely", "never")) return SEVERITY_LIGHT;
    bool not = i > 1 && ANY(tokens, i - 2, "not", "isn't", "hardly", "barely", "never", "nothing");
    if (not ) return SEVERITY_LIGHT;
    bool felt = ANY(tokens, to + 1, "catch", "feel", "notice", "see", "annoy", "snag", "mention", "show",
                    "be", "bother");
    return felt ? SEVERITY_MODERATE : SEVERITY_HEAVY;
}

// "So stiff it needs two hands", "that rusty you can't": the fault's own word between.
static bool is_so_much(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t i = hit->near ? hit->to - 1 : hit->from; // "the cloth is that weak"
    if (i == 0 || !degree_is_state(r, hit) || !ANY(tokens, i - 1, "so", "that")) return false;
    if (i > 1 && ANY(tokens, i - 2, "not", "isn't", "aren't", "all", "never", "but")) return false;
    return hit->to >= tokens->count || tokens->at[hit->to].stop != STOP_NONE ||
           ANY(tokens, hit->to, "it", "that", "you", "they", "i", "the");
}

static bool is_so_bad(const struct tokens *tokens, size_t i) {
    if (!ANY(tokens, i, "so", "that")) return false;
    if (i > 0 && ANY(tokens, i - 1, "not", "isn't", "aren't", "all", "never", "don't", "doesn't", "isnt"))
        return false;
    return ANY(tokens, i + 1, "bad", "badly", "much", "deep", "far", "hard", "heavily", "strong", "many",
               "big") &&
           ANY(tokens, i + 2, "it", "that", "you", "they", "i", "the", "its", "it's");
}

// "Rusty, and I mean rusty".
static bool is_meant(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "i") && token_is(tokens, i + 1, "mean") &&
           (i == 0 || ANY(tokens, i - 1, "and", "when", ",") || tokens->at[i - 1].stop != STOP_NONE) &&
           tokens->at[i + 1].stop == STOP_NONE;
}

// "You could get a finger in it", "hole I can poke a pencil through".
static enum severity fits_at(const struct tokens *tokens, size_t i, size_t to) {
    enum { FAR = 6 };
    if (!ANY(tokens, i, "get", "put", "fit", "stick", "poke", "push", "slide", "lose", "slip", "see", "shove",
             "pass", "drop", "lay", "drive", "climb", "post", "run"))
        return SEVERITY_UNKNOWN;
    if (i == 0 ||
        !ANY(tokens, i - 1, "could", "can", "you'd", "'d", "would", "almost", "nearly", "to", "you"))
        return SEVERITY_UNKNOWN;
    bool thin = false, thick = false, into = false;
    for (size_t k = i + 1; k < to && k <= i + FAR && tokens->at[k].stop == STOP_NONE; k++) {
        thin |= ANY(tokens, k, "fingernail", "nail", "paper", "card", "thumbnail", "hair");
        thick |= ANY(tokens, k, "finger", "fingers", "thumb", "fist", "hand", "foot", "arm", "coin", "pencil",
                     "knife", "daylight", "leg", "light", "ruler", "cat", "spoon", "penny", "boot", "head",
                     "screwdriver", "pound", "matchstick", "apple", "orange", "mouse", "sky");
        into |=
            ANY(tokens, k, "through", "thru", "in", "into", "under", "behind", "between", "inside", "down");
    }
    if (!into || !(thin || thick)) return SEVERITY_UNKNOWN;
    return thick ? SEVERITY_HEAVY : SEVERITY_MODERATE;
}

static bool is_frail(const struct tokens *tokens, size_t i) {
    static const char *const cues[] = {
        "in your hand",       "in your hands",     "in my hand",        "in my hands",
        "if you breathe on",  "if you so much as", "if you look at it", "as soon as you touch",
        "when you touch",     "soon as you lift",  "wouldn't last",     "won't last",
        "one good tug",       "one more tug",      "one more winter",   "another winter",
        "held on by",         "hanging on by",     "hangs on by",       "hanging by",
        "by a thread",        "by one thread",     "by a few threads",  "by a whisker",
        "on its way out",     "not long for this", "had its day",       "has had it",
        "have had it",        "had its chips",     "is a goner",        "is toast",
        "given up the ghost", "past praying for",  "only fit for",      "beyond a joke",
        "i wouldn't trust",   "wouldn't trust it", "don't trust it",    "not safe",
        "wouldn't sit on",    "wouldn't use it",   "will need a new",   "needs a new",
        "wants a new",        "need a new",        "needs renewing",    "needs replacing",
        "needs redoing",      "wants redoing",     "wants renewing",    "write off",
        "write-off",          "no good to anyone", "a lost cause",      "dropping to bits",
        "drops to bits",      "comes to bits",     "comes to pieces",   "going to snap",
        "about to snap",      "ready to snap",     "ready to go",       "about to go",
        "about to give",      "ready to drop",     "about to drop",     "hang together"};
    return token_longest(tokens, i, cues, sizeof cues / sizeof *cues) > 0;
}

// Dirt and marks may be wiped away; what comes off of paint or leather is lost.
static bool may_come_off(const struct flaw *kind) {
    static const char *const ids[] = {
        "stain",          "rust",           "tarnish",       "verdigris",         "wear-rub",
        "yellowing",      "ring-mark",      "storage-spots", "sweat-stain",       "dye-bleed",
        "sticky-plastic", "writing-inside", "cloudy-glass",  "battery-corrosion", "album-residue",
        "owner-name",     "utensil-marks",  "scratches"};
    if (kind->class == CLASS_DIRT || kind->class == CLASS_ODOR) return true;
    for (size_t i = 0; i < sizeof ids / sizeof *ids; i++)
        if (!strcmp(kind->rule.id, ids[i])) return true;
    return false;
}

static bool is_cleaning(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "wipe", "wipes", "wiped", "rub", "rubs", "rubbed", "brush", "brushes", "brushed",
               "wash", "washes", "washed", "polish", "polishes", "polished", "buff", "buffs", "buffed",
               "sponge", "sponges", "sponged", "clean", "cleans", "cleaned", "dust", "dusts", "dusted",
               "scrub", "scrubs", "scrubbed", "come", "comes", "came", "coming", "shift", "shifts", "budge",
               "lift", "lifts", "soak", "rinse", "rinses", "air", "airs", "go", "bleach", "fade", "fades",
               "hoover", "vacuum", "shake", "shakes", "peel", "peels", "sand", "sands", "move", "moves");
}

static bool is_away(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "off", "out", "away", "up");
}

// "Wipes off", "should polish out", "came away with a rub"; and "won't wash out", "doesn't shift".
static enum severity cleaned_at(const struct tokens *tokens, size_t from, size_t i, size_t to) {
    enum { FAR = 5 };
    if (!is_cleaning(tokens, i)) return SEVERITY_UNKNOWN;
    bool no = false, may = false;
    for (size_t k = i; k > from && i - k < 4 && tokens->at[k - 1].stop == STOP_NONE; k--) {
        no |= ANY(tokens, k - 1, "won't", "wont", "doesn't", "doesnt", "don't", "can't", "cannot", "couldn't",
                  "never", "didn't", "not", "wouldn't", "refuses", "nothing", "hardly", "barely", "no");
        may |= ANY(tokens, k - 1, "should", "would", "will", "might", "may", "could", "can", "it'll",
                   "they'll", "easily", "just", "needs");
    }
    bool bare = ANY(tokens, i, "shift", "budge", "move", "fade"); // need no "off"
    bool away = bare, by = false;
    for (size_t k = i + 1; k < to && k <= i + FAR && tokens->at[k].stop == STOP_NONE; k++) {
        away |= is_away(tokens, k) && !ANY(tokens, k + 1, "of");
        by |= ANY(tokens, k, "with", "easily", "easy", "dry", "clean", "right", "straight", "under");
    }
    if (no) return away || by ? SEVERITY_HEAVY : SEVERITY_UNKNOWN;
    if (bare) return SEVERITY_UNKNOWN;
    bool goes = ANY(tokens, i, "come", "comes", "came", "coming", "go", "lift", "lifts", "move");
    bool hands = false;
    for (size_t k = i + 1; k < to && k <= i + FAR + 2 && tokens->at[k].stop == STOP_NONE; k++)
        hands |= ANY(tokens, k, "hand", "hands", "finger", "fingers", "clothes", "sheets", "chunks", "lumps");
    if (hands) return SEVERITY_UNKNOWN;
    return away && (!goes || by || may) ? SEVERITY_LIGHT : SEVERITY_UNKNOWN;
}

static bool is_fast(const struct tokens *tokens, size_t i) {
    static const char *const cues[] = {
        "there for good",    "there to stay",      "here to stay",       "set in",
        "there for life",    "won't come out",     "tried everything",   "been through the wash twice",
        "nothing shifts it", "nothing touches it", "nothing will shift", "nothing gets it out",
        "for keeps",         "baked on",           "ingrained",          "soaked in",
        "no amount of",      "bedded in",          "burnt on",           "burned on"};
    return token_longest(tokens, i, cues, sizeof cues / sizeof *cues) > 0;
}

// "Nothing to shout about", "nothing you'd lose sleep over".
static bool is_nothing(const struct tokens *tokens, size_t i) {
    if (!token_is(tokens, i, "nothing")) return false;
    if (token_is(tokens, i + 1, "to"))
        return !ANY(tokens, i + 2, "do", "hold", "stop", "fix", "test", "be", "keep", "play", "show",
                    "compare", "suggest", "say");
    return ANY(tokens, i + 1, "you'd", "anyone", "anybody", "a", "that") &&
           !ANY(tokens, i + 2, "works", "fits", "shows", "moves", "lights");
}

// "I could straighten it by hand", "easily bent back", "wants a drop of oil, that's all".
static bool is_put_right(const struct tokens *tokens, size_t i) {
    static const char *const cues[] = {
        "a drop of oil", "drop of oil",     "a dab of",           "five minute job",   "two minute job",
        "minute's work", "minutes work",    "easy enough to fix", "easy to put right", "easily put right",
        "quick fix",     "easy fix",        "nothing a",          "bit of oil",        "dab of glue",
        "spot of glue",  "spot of oil",     "squirt of oil",      "quick polish",      "quick wipe",
        "a quick clean", "a bit of polish", "a good polish",      "damp cloth",        "lick of polish"};
    if (token_longest(tokens, i, cues, sizeof cues / sizeof *cues)) return true;
    if (!ANY(tokens, i, "could", "can", "would", "should", "easily", "might", "will")) return false;
    size_t at = i + 1;
    while (ANY(tokens, at, "easily", "be", "probably", "just", "you", "i", "anyone", "likely")) at++;
    return ANY(tokens, at, "straighten", "straightened", "unbent", "tightened", "tighten", "pushed", "bent",
               "eased", "knocked", "popped", "pop", "bend", "ease", "nip") &&
           !ANY(tokens, at + 1, "through", "over");
}

enum severity degree_of_effect(const struct fault_reader *r, const struct fault_hit *hit,
                               const struct flaw *kind, const struct around *span) {
    const struct tokens *tokens = &r->note->tokens;
    if (is_so_much(r, hit)) return SEVERITY_HEAVY;
    bool marks = may_come_off(kind);
    for (size_t i = span->from; i < span->to; i++) {
        enum severity found = enough_at(tokens, i);
        if (!found) found = fits_at(tokens, i, span->to);
        if (!found && (is_so_bad(tokens, i) || is_meant(tokens, i) || is_frail(tokens, i)))
            found = SEVERITY_HEAVY;
        if (!found && marks) found = cleaned_at(tokens, span->from, i, span->to);
        if (!found && marks && is_fast(tokens, i)) found = SEVERITY_HEAVY;
        if (!found && (is_put_right(tokens, i) || is_nothing(tokens, i))) found = SEVERITY_LIGHT;
        if (found) return found;
    }
    return SEVERITY_UNKNOWN;
}
