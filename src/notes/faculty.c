// SPDX-License-Identifier: MIT
// One of the things that it should do, and does not: "no strike", "no rewind", "drags on 45", "it won't
// oscillate". The rest of it may work; where nothing else is said it works partly.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

// What a machine gives; without a stop behind them some are words of other things.
static const char *const gifts[] = {
    "strike", "chime",   "tune",      "picture", "reverse",  "rewind",  "treble",   "bass",    "volume",
    "spark",  "suction", "heat",      "drive",   "ring",     "ringing", "tone",     "charge",  "signal",
    "steam",  "alarm",   "reception", "sound",   "playback", "speed",   "pressure", "vibrato", "sustain",
    "light",  "flash",   "display",   "output",  "response", "pulse",   "click",    "grip",    "flame"};

// How it goes where it goes badly.
static const char *const falters[] = {
    "jams",     "dips",      "wheezes",    "drops out",  "fades",     "lags",      "drags",    "groans",
    "grinds",   "struggles", "labors",     "labours",    "slips",     "stalls",    "dies",     "hisses",
    "skips",    "jumps",     "sticks",     "crackles",   "screeches", "squeals",   "cuts out", "trips",
    "wavers",   "wobbles",   "fails",      "gives up",   "stops",     "hesitates", "stutters", "surges",
    "shudders", "goes dead", "goes quiet", "goes silent"};
static const char *const modes[] = {"low",   "high",    "medium",    "full",   "reverse", "fast",  "slow",
                                    "first", "second",  "third",     "top",    "bottom",  "fm",    "am",
                                    "mains", "battery", "batteries", "max",    "maximum", "one",   "two",
                                    "three", "side",    "playback",  "record", "loud",    "heavy", "load"};

// What it would not do if asked, by itself no sign that it is dead.
static const char *const duties[] = {
    "oscillate",     "rewind",     "record",     "reverse", "strike",  "chime",    "pop up",
    "eject",         "print",      "focus",      "drain",   "wind on", "advance",  "index",
    "self start",    "switch off", "turn off",   "go off",  "stay on", "stay lit", "keep time",
    "hold pressure", "auto stop",  "read discs", "feed",    "swivel",  "zoom",     "recline"};
static const char *const denials[] = {"doesn't", "won't", "doesnt", "wont", "can't", "wouldn't"};

static bool is_off(const struct fault_reader *r, size_t i) {
    static const uint16_t off =
        STANCE_PAST | STANCE_UNKNOWN | STANCE_WITHDRAWN | STANCE_OTHER | STANCE_PLANNED;
    return r->scope.stance[i] & off;
}

static bool is_open(const struct fault_reader *r, size_t from, size_t to) {
    for (size_t i = from; i < to; i++)
        if (r->note->taken[i] != TAKEN_NOT && r->note->taken[i] != TAKEN_SCOPE &&
            r->note->taken[i] != TAKEN_FILLER && r->note->taken[i] != TAKEN_PART &&
            r->note->taken[i] != TAKEN_OPEN)
            return false;
    return true;
}

// "No strike.", "no heat on low", not "no light scratches".
static size_t no_gift(const struct fault_reader *r, size_t i) {
    static const char *const nos[] = {"no", "without", "lost"}, *const the[] = {"any", "its", "the"};
    static const char *const more[] = {"on",     "from",   "at",  "in", "when", "but", "and",
                                       "at all", "though", "out", "to", "so",   "or"};
    const struct tokens *tokens = &r->note->tokens;
    if (!AMONG(tokens, i, nos)) return 0;
    size_t at = i + 1;
    if (AMONG(tokens, at, the)) at++;
    if (!AMONG(tokens, at, gifts)) return 0;
    at++;
    bool ends = at >= tokens->count || tokens->at[at].stop != STOP_NONE || AMONG(tokens, at, more);
    return ends ? at - i : 0;
}

static size_t falters_at(const struct tokens *tokens, size_t i) {
    static const char *const how[] = {"on", "at", "in", "under", "above", "past"};
    static const char *const the[] = {"the", "a", "its"};
    size_t n = token_longest(tokens, i, falters, COUNT(falters)), at = i + n;
    static const char *const often[] = {"every few",     "every so often", "every other", "often",
                                        "sometimes",     "occasionally",   "at times",    "now and then",
                                        "now and again", "once in a while"};
    size_t times = n ? token_longest(tokens, at, often, COUNT(often)) : 0;
    if (times) return n + times;
    if (!n || !AMONG(tokens, at, how)) return 0;
    at++;
    if (AMONG(tokens, at, the)) at++;
    bool mode = at < tokens->count && (tokens->at[at].kind == TOKEN_FIGURE || AMONG(tokens, at, modes));
    return mode ? at + 1 - i : 0;
}

// "About 4 lb out", "runs 5 mins over": by how much it reads or goes wrong.
static size_t astray_at(const struct tokens *tokens, size_t i, size_t *verb) {
    enum { FAR = 5 };
    static const char *const by[] = {"out", "off", "over", "under", "fast", "slow", "heavy", "light", "high"};
    static const char *const reads[] = {"reads",   "weighs", "weigh", "runs",  "read",  "it's",
                                        "they're", "is",     "are",   "gains", "loses", "about"};
    static const char *const units[] = {
        "lb",     "lbs", "oz",   "pound",   "pounds", "ounces", "ounce", "g",     "kg",      "degrees",
        "degree", "min", "mins", "minutes", "minute", "grams",  "psi",   "volts", "percent", "points"};
    if (!AMONG(tokens, i, units) || !AMONG(tokens, i + 1, by) || i == 0) return 0;
    if (i + 2 < tokens->count && tokens->at[i + 2].kind == TOKEN_FIGURE) return 0;
    for (size_t back = 1; back <= FAR && back <= i && tokens->at[i - back].stop == STOP_NONE; back++)
        if (AMONG(tokens, i - back, reads)) return *verb = i - back, 2;
    return 0;
}

static size_t duty_at(const struct tokens *tokens, size_t i) {
    if (!AMONG(tokens, i, denials)) return 0;
    size_t n = token_longest(tokens, i + 1, duties, COUNT(duties));
    return n ? n + 1 : 0;
}

static bool is_dead(const struct record *record) {
    for (size_t i = 0; i < record->flaw_count; i++)
        if (text_same(record->flaws[i].kind->rule.id, "not-working") && !record->flaws[i].part) return true;
    return false;
}

void read_faculties(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    const struct flaw *kind = ruleset_flaw(r->note->rules, "partly-working");
    if (!kind || !running_can(r->note)) return;
    for (size_t i = 0; i < tokens->count; i++) {
        if (tokens->at[i].kind != TOKEN_WORD) continue;
        size_t n = no_gift(r, i);
        if (!n) n = falters_at(tokens, i);
        if (!n) n = duty_at(tokens, i);
        size_t verb = i, wrong = n ? 0 : astray_at(tokens, i, &verb);
        if (wrong) n = wrong;
        if (!n || is_off(r, i) || (!wrong && !is_open(r, i, i + n)) || is_dead(r->note->record)) continue;
        if (wrong && r->note->taken[i] == TAKEN_FLAW) continue; // told already
        if (wrong && ANY(tokens, verb, "reads", "weighs")) n += i - verb, i = verb;
        struct fault_hit hit = {.from = i, .to = i + n, .kinds = {kind}, .kind_count = 1, .own_no = true};
        size_t part = 0;
        bool of_part = i > 0 && function_part(r, i, &part) && r->note->taken[part] != TAKEN_TYPE;
        fault_tell(r, &hit, kind, of_part ? fault_place(r->note, part, part + 1) : NULL, NULL);
        i += n - 1;
    }
}
