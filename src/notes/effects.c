// SPDX-License-Identifier: MIT
// How bad a fault is by what comes of it: "enough to clear the shed", "that weak it falls to bits", "you
// could put your fist through it", "comes off with a wipe", "won't wash out", "could be bent back by hand".
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

// "Enough to catch a nail" is felt; enough to do more is much.
static enum severity enough_at(const struct tokens *tokens, size_t i) {
    if (!token_is(tokens, i, "enough")) return SEVERITY_UNKNOWN;
    size_t to = i + 1;
    if (i > 0 && ANY(tokens, i - 1, "small", "light", "little", "cheap", "handy", "compact", "simple", "easy",
                     "good", "sound", "strong", "sturdy", "clean", "old", "nice", "fair", "decent"))
        return SEVERITY_UNKNOWN; // "small enough to post": of the thing
    if (token_is(tokens, to, "that")) return SEVERITY_HEAVY;
    if (!token_is(tokens, to, "to")) return SEVERITY_UNKNOWN;
    if (i > 0 && ANY(tokens, i - 1, "not", "isn't", "hardly", "barely", "never")) return SEVERITY_LIGHT;
    bool denied = i > 1 && ANY(tokens, i - 2, "not", "isn't", "hardly", "barely", "never", "nothing");
    if (denied) return SEVERITY_LIGHT;
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
// What goes in takes an article, its owner's or a number: "a tractor", "your fist", "two fingers".
static enum severity fits_at(const struct tokens *tokens, size_t i, size_t to) {
    enum { FAR = 7 };
    if (i == 0 ||
        !ANY(tokens, i - 1, "could", "can", "you'd", "'d", "would", "almost", "nearly", "to", "you", "just"))
        return SEVERITY_UNKNOWN;
    if (!ANY(tokens, i, "get", "put", "fit", "set", "sink", "stick", "poke", "push", "slide", "lose", "slip",
             "see", "shove", "pass", "drop", "lay", "drive", "climb", "post", "run", "throw", "walk", "sail",
             "ride", "park", "hide", "march", "feed", "rest", "stand", "hang", "catch", "lodge", "tuck",
             "read", "wave", "crawl", "fly", "roll", "steer", "squeeze", "insert", "thread"))
        return SEVERITY_UNKNOWN;
    bool thin = false, into = false, thing = false, light = false;
    for (size_t k = i + 1; k < to && k <= i + FAR && tokens->at[k - 1].stop == STOP_NONE; k++) {
        thing |= ANY(tokens, k - 1, "a", "an", "my", "your", "two", "three", "the") &&
                 tokens->at[k].kind == TOKEN_WORD &&
                 !ANY(tokens, k, "gap", "hole", "crack", "picture", "photo", "pictures", "photos", "post");
        light |= ANY(tokens, k, "daylight", "light", "sky");
        thin |= ANY(tokens, k, "fingernail", "nail", "paper", "card", "thumbnail", "hair", "thread", "pin",
                    "needle");
        into |= ANY(tokens, k, "on") && ANY(tokens, i, "hang", "rest", "stand") &&
                (k + 1 >= to || tokens->at[k + 1].stop != STOP_NONE);
        into |=
            ANY(tokens, k, "through", "thru", "in", "into", "under", "behind", "between", "inside", "down") &&
            (k + 1 >= tokens->count || tokens->at[k].stop != STOP_NONE || k + 1 >= to ||
             tokens->at[k + 1].stop != STOP_NONE || thin || light ||
             ANY(tokens, k + 1, "it", "them", "there", "the", "and", "one", "this", "but", "so"));
    }
    if (!into || !(thin || thing || light)) return SEVERITY_UNKNOWN;
    return thin ? SEVERITY_MODERATE : SEVERITY_HEAVY;
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
        if (text_same(kind->rule.id, ids[i])) return true;
    return false;
}

static bool is_cleaning(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "wipe", "wipes", "wiped", "rub", "rubs", "rubbed", "brush", "brushes", "brushed",
               "wash", "washes", "washed", "polish", "polishes", "polished", "buff", "buffs", "buffed",
               "sponge", "sponges", "sponged", "clean", "cleans", "cleaned", "dust", "dusts", "dusted",
               "scrub", "scrubs", "scrubbed", "clear", "clears", "come", "comes", "came", "coming", "shift",
               "shifts", "budge", "lift", "lifts", "soak", "rinse", "rinses", "air", "airs", "go", "bleach",
               "fade", "fades", "vacuum", "shake", "shakes", "peel", "peels", "sand", "sands", "move",
               "moves");
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
    bool bare = ANY(tokens, i, "shift", "budge", "move", "fade", "clear", "clears"); // need no "off"
    bool away = bare, by = false;
    for (size_t k = i + 1; k < to && k <= i + FAR && tokens->at[k].stop == STOP_NONE; k++) {
        away |= is_away(tokens, k) && !ANY(tokens, k + 1, "of", "from");
        by |= ANY(tokens, k, "with", "easily", "easy", "dry", "clean", "right", "straight", "under", "mostly",
                  "nearly", "largely");
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

// "Scratched down to the wood", "worn through to the brass": the finish is gone there.
static bool is_bare(const struct tokens *tokens, const struct flaw *kind, size_t i) {
    bool down = ANY(tokens, i, "down", "through") && token_is(tokens, i + 1, "to");
    if (!down && !token_is(tokens, i, "to")) return false;
    size_t at = i + (down ? 2 : 1);
    while (ANY(tokens, at, "the", "bare", "white", "base", "raw")) at++;
    if (!ANY(tokens, at, "metal", "wood", "iron", "brass", "steel", "copper", "primer", "alloy", "timber",
             "suede", "hide", "canvas", "board", "boards", "cloth", "weave", "backing", "plaster", "gesso",
             "card", "fibre", "foam", "cord", "cords"))
        return false;
    if (!down && !(i > 0 && ANY(tokens, i - 1, "worn", "rubbed", "scuffed", "scraped", "scratched", "back")))
        return false;
    return text_same(kind->rule.id, "scratches") || text_same(kind->rule.id, "wear-rub") ||
           text_same(kind->rule.id, "finish-crackle") || text_same(kind->rule.id, "coating-worn");
}

// "Catches your sleeve": it is felt.
static bool is_catching(const struct tokens *tokens, size_t i) {
    if (!ANY(tokens, i, "catches", "snags", "catch", "snag")) return false;
    size_t at = i + (ANY(tokens, i + 1, "on", "at") ? 2 : 1);
    at += ANY(tokens, at, "your", "my", "a", "the") ? 1 : 0;
    return ANY(tokens, at, "sleeve", "sleeves", "nail", "fingernail", "cloth", "duster", "finger", "tights",
               "clothes", "thumbnail");
}

static bool is_fast(const struct tokens *tokens, size_t i) {
    static const char *const cues[] = {
        "there for good",    "there to stay",      "here to stay",       "set in",
        "there for life",    "won't come out",     "tried everything",   "been through the wash twice",
        "nothing shifts it", "nothing touches it", "nothing will shift", "nothing gets it out",
        "for keeps",         "baked on",           "ingrained",          "soaked in",
        "no amount of",      "bedded in",          "burnt on",           "burned on"};
    // "The fold lines have set in": those, and not the spot told before them
    if (i > 1 && ANY(tokens, i, "set") && ANY(tokens, i - 1, "have", "has") &&
        ANY(tokens, i - 2, "lines", "line", "folds", "creases", "crease", "fold", "rot", "damp"))
        return false;
    return token_longest(tokens, i, cues, sizeof cues / sizeof *cues) > 0;
}

// "Nothing to shout about", "nothing you'd lose sleep over".
static bool is_nothing(const struct tokens *tokens, size_t i) {
    if (!token_is(tokens, i, "nothing")) return false;
    for (size_t k = i + 1; k < i + 5 && k < tokens->count && tokens->at[k].stop == STOP_NONE; k++)
        if (ANY(tokens, k, "won't", "wouldn't", "wont", "wouldnt", "can't", "couldn't")) return true;
    if (token_is(tokens, i + 1, "to"))
        return !ANY(tokens, i + 2, "do", "hold", "stop", "fix", "test", "be", "keep", "play", "show",
                    "compare", "suggest", "say");
    if (token_is(tokens, i + 1, "out")) return token_is(tokens, i + 2, "of"); // "nothing out of the way"
    return ANY(tokens, i + 1, "you'd", "anyone", "anybody", "a", "that") &&
           !ANY(tokens, i + 2, "works", "fits", "shows", "moves", "lights");
}

// "Neither worth losing sleep over", "hardly worth a mention".
static bool is_unworthy(const struct tokens *tokens, size_t i) {
    if (!token_is(tokens, i, "worth") || i == 0) return false;
    size_t at = i - 1;
    while (at > 0 && ANY(tokens, at, "really", "even", "of", "which", "them", "is", "are", "it", "that"))
        at--;
    return ANY(tokens, at, "not", "neither", "none", "hardly", "barely", "scarcely", "isn't", "aren't",
               "never", "nothing") &&
           !ANY(tokens, i + 1, "it", "repairing", "fixing", "mending", "restoring", "saving", "the", "doing");
}

// "As you'd expect", "no worse than you'd expect", "the sort you get", "par for the course".
static bool is_expected(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "you'd expect",       "you would expect",  "to be expected",    "par for the course",
        "normal for",         "usual for",         "typical for",       "typical of",
        "consistent with",    "commensurate with", "goes with age",     "comes with age",
        "given its age",      "given the age",     "sort you get",      "kind you get",
        "only natural",       "as they all do",    "they all do",       "like they all",
        "same as any",        "in line with",      "one would expect",  "you might expect",
        "what you get",       "could be expected", "in keeping with",   "age appropriate",
        "might be expected",  "i've seen worse",   "seen much worse",   "seen a lot worse",
        "seen far worse",     "could be worse",    "nothing odd",       "you can expect",
        "nothing unexpected", "nothing to fret",   "no worse than any", "as is normal"};
    return token_longest(tokens, i, words, sizeof words / sizeof *words) > 0;
}

// "Rust on the lid, just a bloom", "…, only flecks really": whatever small thing that is.
static bool is_merely(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (!ANY(tokens, i, "just", "only", "merely", "mere") || i == 0) return false;
    if (tokens->at[i - 1].stop == STOP_NONE &&
        !ANY(tokens, i - 1, "but", "though", "it's", "they're", "and", "is", "are", "that's"))
        return false;
    size_t at = i + 1;
    while (ANY(tokens, at, "a", "an", "some", "few", "couple", "of", "the", "odd", "very", "little")) at++;
    if (at >= tokens->count || tokens->at[at].kind != TOKEN_WORD || tokens->at[at].stop != STOP_NONE)
        return false;
    bool one = ANY(tokens, at - 1, "a", "an", "odd");
    const char *word = tokens->at[at].fold;
    size_t size = strlen(word);
    bool many = size > 3 && word[size - 1] == 's' && word[size - 2] != 's';
    if (!one && !many) return false;
    if (r->part[at] || r->note->taken[at] == TAKEN_TYPE || degree_names_part(r, at)) return false;
    if (ANY(tokens, at, "has", "needs", "was", "is", "does", "wants", "works", "mess", "wreck", "shell",
            "pair", "one", "ones", "shame", "fraction", "pity", "minutes", "hours", "days", "weeks", "years"))
        return false;
    size_t end = at + 1;
    while (ANY(tokens, end, "really", "though", "tho", "mind", "you", "honestly")) end++;
    return end >= tokens->count || tokens->at[end].stop != STOP_NONE;
}

// "I could straighten it by hand", "easily bent back", "wants a drop of oil, that's all".
static bool is_put_right(const struct tokens *tokens, size_t i) {
    if (ANY(tokens, i, "would", "will", "should", "might", "'ll", "you'll", "it'd", "that'd", "could") &&
        ANY(tokens, i + 1, "do", "sort", "fix", "cure", "see") &&
        ANY(tokens, i + 2, "it", "that", "them", "to"))
        return true; // "a tiny screw would do it"
    if (token_is(tokens, i, "not") && token_is(tokens, i + 1, "where")) return true; // "not where you look"
    if (!ANY(tokens, i, "could", "can", "would", "should", "easily", "might", "will")) return false;
    size_t at = i + 1;
    while (ANY(tokens, at, "easily", "be", "probably", "just", "you", "i", "anyone", "likely")) at++;
    return ANY(tokens, at, "straighten", "straightened", "unbent", "tightened", "tighten", "pushed", "bent",
               "eased", "knocked", "popped", "pop", "bend", "ease", "nip") &&
           !ANY(tokens, at + 1, "through", "over");
}

// "Right across", "clean down to the foot", "from corner to corner", "the length of the blade".
static bool is_across(const struct tokens *tokens, size_t i) {
    if (ANY(tokens, i, "right", "clean", "straight", "clear"))
        return ANY(tokens, i + 1, "down", "across", "through", "thru", "along", "round", "around", "up",
                   "over") &&
               !ANY(tokens, i + 2, "near", "against");
    if (token_is(tokens, i, "from") && i + 3 < tokens->count && token_is(tokens, i + 2, "to"))
        return text_same(tokens->at[i + 1].fold, tokens->at[i + 3].fold) ||
               (ANY(tokens, i + 1, "top", "rim", "edge", "lip", "neck", "one", "head") &&
                ANY(tokens, i + 3, "bottom", "foot", "base", "toe", "heel", "edge", "tail"));
    if (token_is(tokens, i, "from") && ANY(tokens, i + 1, "the", "one", "its") && i > 0 &&
        ANY(tokens, i - 1, "running", "runs", "goes", "going", "right", "way", "ran", "extending",
            "stretching"))
        for (size_t k = i + 2; k < i + 6 && k < tokens->count && tokens->at[k].stop == STOP_NONE; k++)
            if (token_is(tokens, k, "to")) return true; // "running from the strap to the edge"
    if (token_is(tokens, i, "the") && ANY(tokens, i + 1, "length", "width", "height", "depth", "breadth") &&
        token_is(tokens, i + 2, "of") && i > 0 &&
        ANY(tokens, i - 1, "runs", "run", "running", "goes", "going", "down", "for", "along", "ran", "up"))
        return true; // "runs the length of the blade"
    bool same = i + 2 < tokens->count && token_is(tokens, i + 1, "to") && tokens->at[i].kind == TOKEN_WORD &&
                text_same(tokens->at[i].fold, tokens->at[i + 2].fold);
    if (same) return true; // "corner to corner"
    if (ANY(tokens, i, "half", "most") && (ANY(tokens, i + 1, "its", "the") || token_is(tokens, i + 1, "of")))
        for (size_t k = i + 2; k < i + 4; k++)
            if (ANY(tokens, k, "length", "width", "depth", "height", "way")) return true;
    return ANY(tokens, i, "full", "whole", "entire") &&
           ANY(tokens, i + 1, "length", "width", "height", "depth", "way", "front", "face", "back", "side",
               "circumference", "surface");
}

static bool is_to_bits(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "to", "into") && i > 0 &&
           ANY(tokens, i + 1, "buggery", "blazes", "smithereens", "high", "bits", "pieces", "powder", "dust",
               "crumbs", "shreds", "ribbons", "rags", "nothing", "flakes", "tatters", "splinters", "holes",
               "glory") &&
           !ANY(tokens, i - 1, "due", "next", "down", "used", "take", "taken", "cut");
}

// "Shedding bits", "light pours in".
static bool is_coming_through(const struct tokens *tokens, size_t i) {
    if (ANY(tokens, i, "shedding", "sheds", "dropping", "drops", "leaving", "leaves", "spilling", "losing",
            "loses"))
        return ANY(tokens, i + 1, "bits", "flakes", "crumbs", "dust", "powder", "pieces", "strands", "grit",
                   "chunks", "stuffing", "filling", "straw", "feathers");
    return ANY(tokens, i, "light", "daylight", "water", "rain", "wind", "sand") &&
           ANY(tokens, i + 1, "pours", "comes", "gets", "shines", "shows", "leaks", "runs", "pouring",
               "coming", "getting", "showing", "gushes", "drips") &&
           ANY(tokens, i + 2, "in", "through", "out", "straight", "right");
}

static bool is_nearly_gone(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "nearly", "almost", "practically", "virtually") &&
           ANY(tokens, i + 1, "through", "off", "gone", "out", "away", "apart", "severed", "snapped", "all",
               "in");
}

// "Cat hair, loads": a quantity alone.
static bool is_heap(const struct tokens *tokens, size_t i) {
    if (ANY(tokens, i, "half", "most", "all", "every") && i > 0 && tokens->at[i - 1].stop == STOP_COMMA)
        return (token_is(tokens, i + 1, "of") && ANY(tokens, i + 2, "them", "it", "'em")) ||
               (token_is(tokens, i, "every") && ANY(tokens, i + 1, "one", "last", "single"));
    if (!ANY(tokens, i, "loads", "lots", "plenty", "masses", "heaps", "tons", "oodles", "piles", "dozens",
             "hundreds", "stacks", "bags"))
        return false;
    if (i == 0 || (tokens->at[i - 1].stop == STOP_NONE && !ANY(tokens, i - 1, "and", "absolutely", "but")))
        return false;
    return i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE ||
           (token_is(tokens, i + 1, "of") && ANY(tokens, i + 2, "it", "them", "the", "'em", "em"));
}

// "You'd think someone had mopped an engine with it"; but "you'd think it was meant".
static bool is_hyperbole(const struct tokens *tokens, size_t i) {
    enum { FAR = 8 };
    if (ANY(tokens, i, "like") &&
        ANY(tokens, i + 1, "someone", "somebody", "something", "they'd", "it's", "he'd"))
        return ANY(tokens, i + 1, "someone", "somebody", "something") ||
               ANY(tokens, i + 2, "been", "had", "was", "sat",
                   "used");         // "like someone dropped it off a roof"
    if (ANY(tokens, i, "beyond")) { // "beyond all hope"
        size_t at = i + 1;
        while (ANY(tokens, at, "all", "any", "the", "point", "of")) at++;
        return ANY(tokens, at, "hope", "repair", "saving", "help", "recognition", "use", "redemption",
                   "belief", "measure", "restoration", "polishing", "cleaning", "mending", "salvation", "me",
                   "rescue") &&
               !(i > 0 && ANY(tokens, i - 1, "not", "nothing", "isn't"));
    }
    if (!ANY(tokens, i, "you'd", "you") ||
        !(ANY(tokens, i + 1, "think", "swear") || ANY(tokens, i + 2, "think", "swear")))
        return false;
    for (size_t k = i + 2; k < i + FAR && k < tokens->count; k++)
        if (ANY(tokens, k, "new", "meant", "perfect", "nothing", "deliberate", "intended", "part", "original",
                "made"))
            return false;
    return true;
}

// "A hole a mouse could get through".
static bool is_way_through(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "could", "can", "would") &&
           ANY(tokens, i + 1, "get", "go", "crawl", "walk", "fall", "climb", "fit", "pass", "swim", "drop") &&
           ANY(tokens, i + 2, "through", "in", "into", "out") && i > 1 &&
           !ANY(tokens, i - 1, "you", "i", "it", "they");
}

// "I lost a bit just moving it".
static bool is_just_by(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "just", "even") &&
           ANY(tokens, i + 1, "moving", "touching", "lifting", "looking", "picking", "handling", "carrying",
               "opening", "turning", "unfolding", "breathing") &&
           ANY(tokens, i + 2, "it", "at", "them", "the", "on", "up");
}

// "A shocker", "a right beast of a thing": a name for what is big or bad; and "a fair one".
static enum severity named_at(const struct tokens *tokens, size_t i) {
    if (!ANY(tokens, i, "a", "an", "some", "proper", "right", "real")) return SEVERITY_UNKNOWN;
    size_t at = i + 1;
    while (ANY(tokens, at, "right", "real", "proper", "great", "bit", "of", "a", "an", "absolute", "complete",
               "total"))
        at++;
    if (ANY(tokens, at, "shocker", "whopper", "corker", "belter", "beast", "monster", "brute", "horror",
            "doozy", "stinker", "shambles", "disgrace", "mess", "disaster", "catastrophe", "eyesore",
            "crater", "gash", "cracker", "humdinger", "biggie", "nightmare"))
        return SEVERITY_HEAVY;
    if (ANY(tokens, at, "shadow", "suggestion", "ghost", "whisper", "smidge", "smidgen", "suspicion",
            "fraction", "skin", "film", "dusting", "haze", "blush", "whisker", "trace", "touch", "hair",
            "speck", "fleck", "flake", "dimple", "pimple", "nibble", "freckle", "scratch", "graze"))
        return ANY(tokens, at, "scratch", "graze", "ghost") ? SEVERITY_UNKNOWN : SEVERITY_LIGHT;
    if (ANY(tokens, i + 2, "one", "ones") && token_is(tokens, i, "a")) { // "which is a big one"
        if (ANY(tokens, i + 1, "big", "bad", "nasty", "deep", "long", "large", "huge", "horrible", "serious",
                "heavy", "ugly", "wide"))
            return SEVERITY_HEAVY;
        if (ANY(tokens, i + 1, "small", "little", "tiny", "short", "minor", "light", "faint", "shallow",
                "wee", "fine"))
            return SEVERITY_LIGHT;
    }
    bool fair = ANY(tokens, i + 1, "fair", "decent", "reasonable", "good", "middling");
    return fair && ANY(tokens, i + 2, "one", "ones", "sized", "size")
               ? (token_is(tokens, i + 1, "good") ? SEVERITY_HEAVY : SEVERITY_MODERATE)
               : SEVERITY_UNKNOWN;
}

// "Worse than it looks", "spoils it", "I won't pretend": and the other way about.
static enum severity judged_at(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (ANY(tokens, i, "worse")) {
        if (token_is(tokens, i + 1, "than") && i > 0 &&
            ANY(tokens, i - 1, "looks", "sounds", "look", "sound", "seems"))
            return SEVERITY_LIGHT; // "looks worse than it is"
        if (ANY(tokens, i + 1, "than") && !ANY(tokens, i - 1, "no", "not", "nothing")) return SEVERITY_HEAVY;
        return ANY(tokens, i + 1, "in") ? SEVERITY_LIGHT : SEVERITY_UNKNOWN;
    }
    if (ANY(tokens, i, "spoils", "spoiled", "spoilt", "ruins", "ruined", "mars", "wrecks", "disfigures") &&
        !(i > 0 && ANY(tokens, i - 1, "not", "hardly", "nothing", "isn't")))
        return SEVERITY_HEAVY;
    if (ANY(tokens, i, "spoil", "ruin", "detract", "bother", "matter", "worry", "affect", "hurt", "harm",
            "jump", "shout", "offend") &&
        i > 0 &&
        ANY(tokens, i - 1, "doesn't", "doesnt", "won't", "don't", "not", "wouldn't", "never", "hardly"))
        return SEVERITY_LIGHT;
    size_t n = 0;
    enum severity found = degree_word_effect(r, i, &n);
    bool end = token_is(tokens, i, "no") && token_is(tokens, i + 1, "end") && !token_is(tokens, i + 2, "of");
    return end ? SEVERITY_UNKNOWN : found;
}

// "To the point you can't read it", "dried up so it doesn't lift": what it does no more.
static bool is_stopping(const struct tokens *tokens, size_t i) {
    enum { FAR = 5 };
    if (token_is(tokens, i, "to") && token_is(tokens, i + 1, "the") &&
        ANY(tokens, i + 2, "point", "extent", "stage"))
        return true;
    if (!token_is(tokens, i, "so") || i == 0) return false;
    for (size_t k = i + 1; k < i + FAR && k < tokens->count && tokens->at[k].stop == STOP_NONE; k++)
        if (ANY(tokens, k, "won't", "doesn't", "can't", "cannot", "wouldn't", "couldn't", "wont", "doesnt"))
            return !ANY(tokens, k + 1, "show", "matter", "affect", "notice", "see", "know", "say", "tell",
                        "be", "test", "check", "try", "look", "really", "get", "spoil");
    return false;
}

static bool is_much(const struct tokens *tokens, size_t i) {
    if (is_stopping(tokens, i)) return true;
    return is_so_bad(tokens, i) || is_meant(tokens, i) || is_across(tokens, i) || is_to_bits(tokens, i) ||
           is_nearly_gone(tokens, i) || is_heap(tokens, i) || is_way_through(tokens, i) ||
           is_just_by(tokens, i) || is_coming_through(tokens, i) || is_hyperbole(tokens, i) ||
           degree_is_tied(tokens, i);
}

// "Runs the length of it but closed up tight": far, and not bad.
static enum severity eased(const struct fault_reader *r, const struct around *span, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (!is_across(tokens, i)) return SEVERITY_HEAVY;
    for (size_t k = i + 1; k < span->to; k++)
        if (is_nothing(tokens, k) || is_unworthy(tokens, k) || is_expected(tokens, k) || is_merely(r, k) ||
            judged_at(r, k) == SEVERITY_LIGHT ||
            ANY(tokens, k, "tight", "stable", "shallow", "solid", "firm"))
            return SEVERITY_MODERATE;
    return SEVERITY_HEAVY;
}

enum severity degree_of_effect(const struct fault_reader *r, const struct fault_hit *hit,
                               const struct flaw *kind, const struct around *span) {
    const struct tokens *tokens = &r->note->tokens;
    if (is_so_much(r, hit)) return SEVERITY_HEAVY;
    bool marks = may_come_off(kind);
    for (size_t i = span->from; i < span->to; i++) {
        enum severity found = enough_at(tokens, i);
        if (!found) found = fits_at(tokens, i, span->to);
        if (!found) found = named_at(tokens, i);
        if (found == SEVERITY_HEAVY && kind->class == CLASS_REPAIR && ANY(tokens, i + 1, "good", "decent"))
            found = SEVERITY_LIGHT; // "a repair, a good one"
        if (!found) found = judged_at(r, i);
        if (ANY(tokens, i, "hear", "heard", "sounds", "sings")) break; // a bell "right across the yard"
        if (!found && (is_much(tokens, i) || is_bare(tokens, kind, i)) && !degree_is_short(tokens, i))
            found = eased(r, span, i);
        if (!found && is_catching(tokens, i)) found = SEVERITY_MODERATE;
        if (!found && marks) found = cleaned_at(tokens, span->from, i, span->to);
        if (!found && marks && is_fast(tokens, i)) found = SEVERITY_HEAVY;
        bool little = is_put_right(tokens, i) || is_nothing(tokens, i) || is_unworthy(tokens, i) ||
                      is_expected(tokens, i) || is_merely(r, i) ||
                      (token_is(tokens, i, "nowhere") && token_is(tokens, i + 1, "near")) ||
                      token_phrase(tokens, i, "long way off");
        if (!found && little) found = SEVERITY_LIGHT;
        if (found) return found;
    }
    return SEVERITY_UNKNOWN;
}
