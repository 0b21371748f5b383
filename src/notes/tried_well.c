// SPDX-License-Identifier: MIT
// A trial and how it went: "threaded a reel and the picture was bright and steady", "hooked it up to the tap
// and it goes from mist to a jet", "they all speak". What somebody did with it lately and what it then did
// well say that it works; neither does alone, unless the words are of working and of nothing else.
#include "notes/any.h"
#include "notes/beside.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

// Deeds by which goods are set to work; cleaning, buying and mending are none.
static const char *const deeds[] = {
    "let",      "threaded", "popped",  "hooked",    "wired",    "set",   "plugged", "turned",  "switched",
    "flipped",  "pushed",   "pressed", "filled",    "loaded",   "sent",  "spent",   "cut",     "ran",
    "typed",    "whipped",  "played",  "tried",     "tested",   "gave",  "fed",     "wound",   "lit",
    "listened", "watched",  "cooked",  "charged",   "cranked",  "shot",  "rode",    "drove",   "cast",
    "dropped",  "stuck",    "screwed", "connected", "fired",    "put",   "took",    "left",    "went",
    "had",      "used",     "made",    "ground",    "sewed",    "mowed", "blew",    "called",  "dialed",
    "weighed",  "pumped",   "sprayed", "printed",   "recorded", "hung",  "baked",   "drilled", "sanded",
    "trimmed",  "clipped",  "spun",    "started",   "pulled",   "timed", "checked"};

// What stands for the thing, or for what makes it go, in the clause of the deed.
static const char *const objects[] = {
    "it",   "this",   "them",   "one",         "battery", "batteries", "aa",     "aas",
    "aaa",  "cells",  "cell",   "bulb",        "reel",    "record",    "tape",   "film",
    "cd",   "disc",   "paper",  "button",      "switch",  "trigger",   "key",    "keys",
    "cord", "water",  "gas",    "load",        "side",    "sides",     "slides", "roll",
    "song", "letter", "page",   "boards",      "bread",   "coffee",    "outlet", "tap",
    "bag",  "weight", "thread", "peppercorns", "beans",   "corn",      "seam",   "lawn",
    "hour", "hours",  "cream",  "eggs",        "batter",  "tune",      "call"};

// By itself they tell of working.
static const char *const sure_signs[] = {"like it's supposed to",
                                         "like its supposed to",
                                         "like it is supposed to",
                                         "as it's supposed to",
                                         "the way it's supposed to",
                                         "the way it should",
                                         "like it should",
                                         "like it ought to",
                                         "as it ought to",
                                         "as it ought to be",
                                         "the way it ought to",
                                         "as they ought to",
                                         "off it went",
                                         "away it went",
                                         "off they went",
                                         "right on the dot",
                                         "right on the money",
                                         "they all speak",
                                         "they all sound",
                                         "they all play",
                                         "they all light",
                                         "they all ring",
                                         "plain as day",
                                         "loud and clear",
                                         "clear as a bell",
                                         "never missed a beat",
                                         "didn't miss a beat",
                                         "never skipped a beat",
                                         "didn't bog down",
                                         "never bogged down",
                                         "never bogs down",
                                         "didn't stall once",
                                         "didn't jam once",
                                         "didn't skip once",
                                         "comes out every hour",
                                         "comes out on the hour",
                                         "only a minute off",
                                         "not a minute off",
                                         "to the minute",
                                         "lost not a minute"};

// Behind a deed.
static const char *const good_signs[] = {"no trouble at all",
                                         "no trouble",
                                         "no problem",
                                         "no problems",
                                         "without a hitch",
                                         "without any trouble",
                                         "without trouble",
                                         "no fuss",
                                         "first try",
                                         "first time",
                                         "right away",
                                         "like new",
                                         "like a champ",
                                         "like a charm",
                                         "like a dream",
                                         "bright and steady",
                                         "sharp and clear",
                                         "nice and hot",
                                         "nice and warm",
                                         "good and hot",
                                         "got toasty",
                                         "got warm",
                                         "got hot",
                                         "gets hot",
                                         "gets warm",
                                         "cranks smooth",
                                         "reels smooth",
                                         "runs smooth",
                                         "drag holds",
                                         "strikes clean",
                                         "prints clean",
                                         "bell dings",
                                         "rang",
                                         "dings",
                                         "lit right up",
                                         "came right on",
                                         "fired right up",
                                         "started right up",
                                         "took right off",
                                         "took off",
                                         "came to life"};

static const char *const verbs[] = {"sounded", "sounds", "was",  "is",    "were",   "are",   "came", "comes",
                                    "ran",     "runs",   "went", "goes",  "played", "plays", "cut",  "cuts",
                                    "turned",  "turns",  "spun", "spins", "worked", "works"};
static const char *const well[] = {
    "lovely",  "great",  "good",   "fine",     "beautiful", "bright", "steady", "clear", "sharp",
    "perfect", "smooth", "strong", "loud",     "crisp",     "well",   "nice",   "sweet", "hot",
    "warm",    "even",   "quiet",  "smoothly", "nicely",    "true",   "easy",   "fast",  "straight"};

// "Grinds", "sprays": what goods of some kind do.
static const char *const works[] = {
    "grinds", "sprays", "pumps",   "blows",    "heats",  "toasts",   "plays",   "spins",  "cuts",   "sews",
    "prints", "types",  "rings",   "whistles", "brews",  "perks",    "records", "mixes",  "beats",  "whips",
    "lights", "shoots", "casts",   "reels",    "cranks", "clicks",   "ticks",   "runs",   "drills", "sands",
    "saws",   "mows",   "vacuums", "steams",   "boils",  "projects", "focuses", "shaves", "trims",  "weighs"};

// What takes it back, or tells of a day long ago.
static bool spoils(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "not",    "isn't", "wasn't",  "won't",  "wouldn't",  "doesn't",    "don't", "can't",     "couldn't",
        "cannot", "stops", "stopped", "quit",   "quits",     "died",       "dies",  "until",     "except",
        "slow",   "weak",  "dim",     "faint",  "only",      "nothing",    "used",  "years",     "ago",
        "if",     "would", "should",  "unless", "hopefully", "supposedly", "kid",   "childhood", "told",
        "said",   "says",  "broke",   "broken", "smoke",     "smoked",     "smell", "hums",      "but"};
    return AMONG(tokens, i, words) ||
           (ANY(tokens, i, "when") && ANY(tokens, i + 1, "i", "we", "he", "she", "they"));
}

bool running_may(const struct fault_reader *r) {
    return r->note->record->family &&
           (running_can(r->note) ||
            kind_note_has(
                r,
                "electric heated motor battery batteries handheld electronic video console machine bulbs"));
}

// Is the first clause of the sentence a deed with it? `*to` is behind the clause's verb.
static size_t deed_at(const struct fault_reader *r, size_t from, size_t end) {
    enum { SUBJECT_MOST = 4, FAR = 14 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = from; i < end && i < from + SUBJECT_MOST; i++) {
        if (AMONG(tokens, i, deeds)) {
            for (size_t k = i + 1; k < end && k < i + FAR; k++)
                if (AMONG(tokens, k, objects)) return i + 1;
            return 0;
        }
        if (i == from && !ANY(tokens, i, "i", "we", "my", "our", "he", "she", "just", "then", "also"))
            return 0;
    }
    return 0;
}

// A sign of success at `i`, how many tokens; `deed` tells that a deed stands before.
static size_t sign_at(const struct tokens *tokens, size_t i, bool deed) {
    size_t n = token_longest(tokens, i, sure_signs, COUNT(sure_signs));
    if (n) return n;
    if (AMONG(tokens, i, works) && i > 0 && token_is(tokens, i - 1, "still"))
        return 1; // "still perks good coffee"
    if (!deed) return 0;
    n = token_longest(tokens, i, good_signs, COUNT(good_signs));
    if (n) return n;
    if (AMONG(tokens, i, verbs) && tokens->at[i].stop == STOP_NONE) {
        size_t at =
            i + 1 + (ANY(tokens, i + 1, "real", "very", "so", "just", "out", "up", "pretty", "nice") ? 1 : 0);
        if (AMONG(tokens, at, well)) return at + 1 - i;
    }
    bool it = i > 0 && ANY(tokens, i - 1, "it", "they", "still") && tokens->at[i - 1].stop == STOP_NONE;
    if (it && (AMONG(tokens, i, works) || (token_is(tokens, i, "goes") && token_is(tokens, i + 1, "from"))))
        return 1;
    if (ANY(tokens, i, "needle", "pointer", "dial") &&
        ANY(tokens, i + 1, "stopped", "landed", "went", "read", "pointed") &&
        ANY(tokens, i + 2, "on", "right", "to", "at"))
        return 3;
    if (ANY(tokens, i, "got", "heard") && ANY(tokens, i + 1, "a", "good", "nice") &&
        ANY(tokens, i + (token_is(tokens, i + 1, "a") ? 2 : 1), "nice", "good", "clear", "loud", "strong",
            "bright"))
        return 3;
    return 0;
}

static bool is_sentence_good(const struct fault_reader *r, size_t from, size_t end, size_t *at, size_t *to) {
    static const uint16_t off = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_UNKNOWN | STANCE_OTHER |
                                STANCE_WITHDRAWN | STANCE_DOUBT | STANCE_PLANNED | STANCE_HEARD | STANCE_PAST;
    const struct tokens *tokens = &r->note->tokens;
    size_t deed = deed_at(r, from, end);
    *to = 0;
    for (size_t i = from; i < end; i++) {
        size_t n = i >= deed ? sign_at(tokens, i, deed > 0) : 0;
        bool sure = n && token_longest(tokens, i, sure_signs, COUNT(sure_signs)) > 0;
        uint16_t mask = sure ? off & (uint16_t) ~(STANCE_DENIED | STANCE_PAST | STANCE_DOUBT) : off;
        if (n && !(r->scope.stance[i] & mask)) {
            if (!*to) *at = i, *to = i + n;
            i += n - 1;
            continue;
        }
        if (spoils(tokens, i)) return false;
    }
    return *to > 0;
}

void read_tried_well(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    const struct flaw *kind = ruleset_flaw(r->note->rules, "working-tested");
    if (!kind || !running_may(r) || running_is_told(r->note->record)) return;
    for (size_t from = 0; from < tokens->count;) {
        size_t end = from, at, to;
        while (end < tokens->count && tokens->at[end].stop < STOP_SENTENCE) end++;
        if (end > from && r->note->taken[from] != TAKEN_FLAW && is_sentence_good(r, from, end, &at, &to)) {
            fault_add(r, kind, NULL, NULL, at, to);
            return;
        }
        from = end + 1;
    }
}
