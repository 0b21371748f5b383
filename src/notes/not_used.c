// SPDX-License-Identifier: MIT
// Not tried, said by the use that was not made of it: "didn't stand on it", "never been launched", "wasn't
// going to plug that in", "I can't play, so". A verb of use counts with what it takes ("ran it", "sat in it")
// and only at the end of what is said of it: "not ridden it hard" tells something else.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static size_t negation_at(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"didn't",    "did not",  "didnt",    "haven't",    "have not",
                                        "havent",    "hasn't",   "has not",  "hasnt",      "not",
                                        "never",     "nobody's", "no one's", "nobody has", "couldn't",
                                        "could not", "couldnt",  "can't",    "unable to"};
    if (i > 0 && token_is(tokens, i, "not") &&
        ANY(tokens, i - 1, "would", "i'd", "you'd", "we'd", "should", "better", "do", "must", "id"))
        return 0; // "I'd not cook in it": advice
    return token_longest(tokens, i, words, COUNT(words));
}

// What keeps one from it: "wasn't going to", "don't like to", "not game to".
static size_t reluctance_at(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"wasn't going to",
                                        "not going to",
                                        "wasn't about to",
                                        "not about to",
                                        "don't like to",
                                        "didn't like to",
                                        "wouldn't like to",
                                        "don't want to",
                                        "didn't want to",
                                        "don't fancy",
                                        "didn't fancy",
                                        "wouldn't fancy",
                                        "not keen to",
                                        "not keen on",
                                        "rather not",
                                        "not game to",
                                        "not risking",
                                        "didn't risk",
                                        "wouldn't risk",
                                        "don't trust it to",
                                        "afraid to",
                                        "scared to",
                                        "too scared to",
                                        "nervous to",
                                        "daren't",
                                        "didn't dare",
                                        "didn't dare to",
                                        "don't dare",
                                        "wouldn't dare",
                                        "not brave enough to",
                                        "wasn't brave enough to",
                                        "reluctant to",
                                        "not willing to",
                                        "wasn't willing to",
                                        "refuse to",
                                        "i won't",
                                        "won't be",
                                        "not prepared to",
                                        "wouldn't like",
                                        "not comfortable"};
    return token_longest(tokens, i, words, COUNT(words));
}

static size_t fillers_at(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"been", "yet",    "actually", "ever",      "even",
                                        "had",  "to",     "got",      "have",      "really",
                                        "be",   "myself", "tried to", "personally"};
    size_t from = i, n;
    while ((n = token_longest(tokens, i, words, COUNT(words))) != 0) i += n;
    return i - from;
}

static bool ends(const struct tokens *tokens, size_t i) {
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE ||
           ANY(tokens, i, "so", "and", "but", "myself", "yet", "since", "because", "as", "either", "though",
               "to", "here", "nor", "or", "for", "cos", "anyway", "sorry", "just");
}

// Verbs that take the thing itself: "ran it", "been launched".
static const char *const takes_it[] = {
    "run",       "ran",        "start",     "started",  "crank",    "cranked", "fire",     "fired",
    "light",     "lit",        "wind",      "wound",    "play",     "played",  "blow",     "blown",
    "boil",      "boiled",     "ride",      "ridden",   "rode",     "sail",    "sailed",   "launch",
    "launched",  "float",      "floated",   "pitch",    "pitched",  "erect",   "erected",  "inflate",
    "inflated",  "charge",     "charged",   "spin",     "spun",     "thread",  "threaded", "fly",
    "flown",     "flew",       "ring",      "rang",     "climb",    "climbed", "cast",     "plumb",
    "plumbed",   "string",     "prime",     "primed",   "drive",    "driven",  "drove",    "rig",
    "rigged",    "connect",    "connected", "operate",  "operated", "hit",     "tow",      "towed",
    "calibrate", "calibrated", "ignite",    "ignited",  "paddle",   "paddled", "row",      "rowed",
    "pedal",     "pedalled",   "pedaled",   "shoot",    "starting", "running", "lighting", "winding",
    "firing",    "riding",     "launching", "climbing", "cranking", "playing", "spinning", "inflating",
    "charging",  "power",      "powered"};

// Verbs that take it with a word of place: "stood on it", "sewn with it".
static const char *const takes_place[] = {
    "stand",         "stood",    "standing", "sit",     "sat",     "sitting",    "sleep",
    "slept",         "sleeping", "type",     "typed",   "sew",     "sewn",       "sewed",
    "cook",          "cooked",   "bake",     "baked",   "fish",    "fished",     "drive",
    "driven",        "ride",     "ridden",   "climb",   "climbed", "shoot",      "shot",
    "print",         "printed",  "weigh",    "weighed", "iron",    "ironed",     "knit",
    "knitted",       "weave",    "woven",    "lie",     "lain",    "lean",       "leaned",
    "leant",         "swing",    "work",     "worked",  "mow",     "mowed",      "mown",
    "dig",           "dug",      "saw",      "sawn",    "drill",   "drilled",    "grind",
    "ground",        "paint",    "painted",  "sail",    "sailed",  "paddle",     "row",
    "rowed",         "skate",    "skated",   "ski",     "skied",   "put weight", "put any weight",
    "put my weight", "anything"};

// What is done to it with a word behind it: "plug it in", "pump it up".
static const char *const takes_particle[] = {
    "plug",   "plugged", "plugging", "pump",     "pumped",  "blow",    "blown",     "blew",    "set",
    "rig",    "rigged",  "put",      "hook",     "hooked",  "fire",    "fired",     "wire",    "wired",
    "turn",   "turned",  "switch",   "switched", "start",   "started", "power",     "powered", "load",
    "loaded", "fill",    "filled",   "string",   "strung",  "turning", "switching", "putting", "wind",
    "wound",  "light",   "lit",      "screw",    "screwed", "connect", "connected"};

static size_t it_at(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "it", "them", "this", "that", "these", "those", "her", "him", "one", "either",
               "any");
}

static size_t place_at(const struct tokens *tokens, size_t i) {
    size_t n = ANY(tokens, i, "on", "in", "with", "up", "through", "off", "upon");
    if (!n) return 0;
    if (it_at(tokens, i + 1)) return 2;
    return ends(tokens, i + 1) ? 1 : 0; // "never been sat on"
}

// "In the water", "on the road", "upright on its own": where it was not.
static size_t element_at(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "in the water", "in water",    "on the water", "on water",    "on the road", "in the river",
        "on the river", "in the sea",  "on the lake",  "in the lake", "on the pond", "in the pond",
        "afloat",       "in the air",  "on the ice",   "on ice",      "on snow",     "on the snow",
        "under load",   "under power", "under steam",  "in steam",    "on the grass"};
    return token_longest(tokens, i, words, COUNT(words));
}

// "Put film through it", "run water through": what it takes to try it, up to its end; 0 where it is none.
static size_t fed_at(const struct tokens *tokens, size_t i) {
    static const char *const fed[] = {"film through",    "a film through", "water through", "power through",
                                      "current through", "ink through",    "tape through",  "paper through",
                                      "film in",         "a film in",      "water in",      "oil in",
                                      "fuel in",         "gas in",         "a battery in",  "batteries in",
                                      "a record on",     "a tape in",      "a disc in",     "any power to"};
    if (i > 0 && ANY(tokens, i - 1, "had", "got")) i--; // which may be read as filling already
    if (!ANY(tokens, i, "put", "run", "ran", "passed", "had", "fed", "got")) return 0;
    size_t n = token_longest(tokens, i + 1, fed, COUNT(fed));
    if (!n) return 0;
    return i + 1 + n + (it_at(tokens, i + 1 + n) ? 1 : 0);
}

// What follows the negation at `i`, up to its end; 0 where it is no use.
static size_t use_at(const struct tokens *tokens, size_t i, bool been) {
    size_t n = token_longest(tokens, i, takes_it, COUNT(takes_it)), m;
    if (n && it_at(tokens, i + n) && (ends(tokens, i + n + 1) || element_at(tokens, i + n + 1)))
        return i + n + 1;
    if (n && been && (ends(tokens, i + n) || ANY(tokens, i + n, "by", "in", "since", "while"))) return i + n;
    n = token_longest(tokens, i, takes_place, COUNT(takes_place));
    if (n && (m = place_at(tokens, i + n)) != 0 && ends(tokens, i + n + m)) return i + n + m;
    n = token_longest(tokens, i, takes_particle, COUNT(takes_particle));
    m = n ? it_at(tokens, i + n) : 0;
    if (m && ANY(tokens, i + n + m, "in", "up", "on", "together", "going") && ends(tokens, i + n + m + 1))
        return i + n + m + 1;
    n = fed_at(tokens, i);
    if (n && ends(tokens, n)) return n;
    m = it_at(tokens, i) ? 1 : 0;
    n = m || been ? element_at(tokens, i + m) : 0;
    return n && ends(tokens, i + m + n) ? i + m + n : 0;
}

// "I can't play so", "I don't fish myself": who could have tried it does not do such things.
static size_t unskilled_at(const struct tokens *tokens, size_t i) {
    static const char *const nots[] = {"i can't",  "i don't",  "i cant",   "i dont",     "i couldn't",
                                       "i do not", "we don't", "i cannot", "none of us", "nobody here"};
    static const char *const does[] = {
        "play",           "plays",    "play it", "sew",  "sews",   "fish", "shoot", "knit",  "sail",
        "play the thing", "plays it", "weave",   "type", "paddle", "row",  "ride",  "solder"};
    static const char *const people[] = {"i'm no",     "i'm not a", "im not a",    "im no",
                                         "i am not a", "i am no",   "not being a", "not a"};
    static const char *const trades[] = {"player",     "musician", "angler",    "fisherman", "sewer",
                                         "sailor",     "pianist",  "guitarist", "fiddler",   "drummer",
                                         "seamstress", "golfer",   "archer"};
    size_t n = token_longest(tokens, i, nots, COUNT(nots)), m;
    if (n && (m = token_longest(tokens, i + n, does, COUNT(does))) != 0 &&
        (i + n + m >= tokens->count || tokens->at[i + n + m].stop != STOP_NONE ||
         ANY(tokens, i + n + m, "so", "myself", "and", "but")))
        return i + n + m;
    n = token_longest(tokens, i, people, COUNT(people));
    m = n ? token_among(tokens, i + n, trades, COUNT(trades)) : 0;
    return m && ends(tokens, i + n + m) ? i + n + m : 0;
}

static bool is_governed(const struct fault_reader *r, size_t from, size_t to) {
    for (size_t i = from; i < to; i++)
        if (r->note->taken[i] == TAKEN_MARK || r->note->taken[i] == TAKEN_ASIDE ||
            r->note->taken[i] == TAKEN_FLAW || (r->scope.stance[i] & (STANCE_WITHDRAWN | STANCE_PAST)))
            return true;
    return false;
}

// Whether it works is told already, the one way or the other.
static bool is_told(const struct record *record) {
    static const char *const kinds[] = {"untested",    "working-tested", "powers-on-only",
                                        "not-working", "partly-working", "for-parts"};
    for (size_t i = 0; i < record->flaw_count; i++)
        for (size_t k = 0; k < COUNT(kinds); k++)
            if (text_same(record->flaws[i].kind->rule.id, kinds[k])) return true;
    return false;
}

void read_not_used(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    const struct flaw *kind = ruleset_flaw(r->note->rules, "untested");
    if (!kind || is_told(r->note->record)) return;
    for (size_t i = 0; i < tokens->count; i++) {
        size_t end = unskilled_at(tokens, i), n;
        if (!end && (n = reluctance_at(tokens, i)) != 0)
            end = use_at(tokens, i + n + fillers_at(tokens, i + n), false);
        bool advised = i > 0 && ANY(tokens, i - 1, "i'd", "would", "you'd", "should", "best", "better", "do");
        if (!end && !advised && (n = negation_at(tokens, i)) != 0) { // but "I'd not sit in it"
            size_t verb = i + n + fillers_at(tokens, i + n);
            if (ANY(tokens, verb, "work", "worked") && token_is(tokens, verb + 1, "on"))
                continue; // "a spot I didn't work on": with soap
            bool been = verb > i + n && ANY(tokens, verb - 1, "been");
            end = use_at(tokens, verb, been || (ANY(tokens, i, "never") && token_is(tokens, verb + 1, "by")));
        }
        if (!end) continue;
        if (!is_governed(r, i, end) && !is_told(r->note->record)) fault_add(r, kind, NULL, NULL, i, end);
        i = end - 1;
    }
}
