// SPDX-License-Identifier: MIT
// "Takes pictures and the flash goes off, I tried both", "rings on time, tested it against the stove": what a
// thing does, in a sentence that says that somebody tried it. The verb alone may be what it is made for, and
// the trial alone may have failed.
#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

enum { FAR = 24 };

// "I tried both", "tested it", "ran a scrap through it"; but "tried it on", "haven't tested it".
static bool is_trial(const struct tokens *tokens, size_t i) {
    static const char *const tries[] = {"tried", "tested", "checked"};
    static const char *const whom[] = {"it",   "them",  "both", "all",  "everything",
                                       "each", "every", "this", "these"};
    static const char *const who[] = {"i",    "we",   "and",  "i've", "we've",
                                      "just", "been", "have", "dad",  "husband"};
    static const char *const other[] = {"on", "for", "to", "but", "and"};
    if (!AMONG(tokens, i, tries) || !AMONG(tokens, i + 1, whom) || tokens->at[i].stop != STOP_NONE)
        return false;
    bool led = i == 0 || tokens->at[i - 1].stop != STOP_NONE || AMONG(tokens, i - 1, who);
    bool goes_on =
        tokens->at[i + 1].stop == STOP_NONE && AMONG(tokens, i + 2, other) &&
        !(token_is(tokens, i + 2, "on") && ANY(tokens, i + 3, "a", "both", "all", "some", "my", "every"));
    return led && !goes_on;
}

// What goods that are in order do; those that are nouns or said of sound and looks as well need "it" or a
// part before them, or open their clause.
static size_t does_at(const struct tokens *tokens, size_t i) {
    static const char *const does[] = {"takes pictures",
                                       "takes photos",
                                       "takes a picture",
                                       "goes off",
                                       "go off",
                                       "comes on",
                                       "fires",
                                       "fire",
                                       "rings",
                                       "chimes",
                                       "strikes",
                                       "winds",
                                       "pops up",
                                       "pops",
                                       "browns",
                                       "toasts",
                                       "boils",
                                       "heats",
                                       "heat",
                                       "plays",
                                       "play",
                                       "types",
                                       "runs",
                                       "run",
                                       "turns on",
                                       "spins",
                                       "spin",
                                       "lights",
                                       "lights up",
                                       "sews",
                                       "stitches",
                                       "cuts",
                                       "prints",
                                       "weighs",
                                       "ticks",
                                       "grinds",
                                       "whips",
                                       "mixes",
                                       "blows",
                                       "steams",
                                       "sprays",
                                       "pumps",
                                       "toots",
                                       "honks",
                                       "projects",
                                       "shows a picture",
                                       "tunes",
                                       "sings",
                                       "walks",
                                       "beeps",
                                       "buzzes",
                                       "shaves",
                                       "vibrates",
                                       "drills",
                                       "sharpens",
                                       "freezes",
                                       "cools",
                                       "rewinds",
                                       "advances",
                                       "focuses",
                                       "zooms",
                                       "flashes",
                                       "charges",
                                       "dings",
                                       "brews",
                                       "drips",
                                       "perks",
                                       "whistles",
                                       "squeaks when",
                                       "reads right",
                                       "switches on",
                                       "comes up",
                                       "opens cans",
                                       "slices",
                                       "shreds",
                                       "juices",
                                       "spits out",
                                       "dispenses",
                                       "dials",
                                       "records",
                                       "punches",
                                       "staples",
                                       "inflates"};
    return token_longest(tokens, i, does, COUNT(does));
}

static bool opens(const struct fault_reader *r, size_t i) {
    static const char *const leads[] = {"it", "and", "still", "they", "both", "also", "all", "that", "which"};
    return i == 0 || r->note->tokens.at[i - 1].stop != STOP_NONE || AMONG(&r->note->tokens, i - 1, leads) ||
           (r->part[i - 1] && r->note->tokens.at[i - 1].kind == TOKEN_WORD) ||
           r->note->taken[i - 1] == TAKEN_TYPE ||
           ANY(&r->note->tokens, i - 1, "flash", "shutter", "motor", "light", "camera", "timer", "bell",
               "needle", "speeds", "sides");
}

static bool fails(const struct fault_reader *r, size_t from, size_t to) {
    static const char *const nots[] = {
        "not",    "nothing",  "neither", "won't", "doesn't",   "didn't",  "don't",    "no",    "only",
        "never",  "wouldn't", "except",  "but",   "dead",      "hardly",  "barely",   "half",  "if",
        "stops",  "quits",    "none",    "slow",  "slowly",    "should",  "used",     "might", "until",
        "unless", "smokes",   "sparks",  "weak",  "sometimes", "without", "couldn't", "can't"};
    for (size_t k = from; k < to; k++)
        if (AMONG(&r->note->tokens, k, nots)) return true;
    return false;
}

void read_tried_it(struct fault_reader *r) {
    static const uint16_t off = STANCE_DENIED | STANCE_UNKNOWN | STANCE_PAST | STANCE_OTHER |
                                STANCE_WITHDRAWN | STANCE_DOUBT | STANCE_PLANNED | STANCE_HEARD;
    const struct tokens *tokens = &r->note->tokens;
    const struct flaw *kind = ruleset_flaw(r->note->rules, "working-tested");
    if (!kind || !running_can(r->note)) return;
    for (size_t i = 0; i < tokens->count; i++) {
        if (tokens->at[i].kind != TOKEN_WORD || !is_trial(tokens, i) || r->scope.stance[i] & off) continue;
        size_t from = i, to = i + 1;
        while (from > 0 && i - from < FAR && (tokens->at[from - 1].stop < STOP_SENTENCE || i - from < 2))
            from--; // "The flash goes off. I tried it."
        while (to < tokens->count && to - i < FAR && tokens->at[to - 1].stop < STOP_SENTENCE) to++;
        if (fails(r, from, to) || running_is_told(r->note->record)) continue;
        size_t n = 0;
        for (size_t k = from; k < to && !n; k++)
            if (tokens->at[k].kind == TOKEN_WORD && !(r->scope.stance[k] & off) &&
                r->note->taken[k] != TAKEN_FLAW && r->note->taken[k] != TAKEN_ASIDE && opens(r, k))
                n = does_at(tokens, k);
        if (!n) continue;
        struct fault_hit hit = {.from = i, .to = i + 2, .kinds = {kind}, .kind_count = 1};
        fault_tell(r, &hit, kind, NULL, NULL);
        return;
    }
}
