// SPDX-License-Identifier: MIT
// What goods that do something do wrong, in a verb of their own: "skips stitches", "chain jumps", "reads two
// ounces light", "won't inflate", "center column sinks", "out of beat". Asked of goods that work by power, by
// clockwork or by hand, and only where the clause says it of the thing or of a part. Read after what the
// rules find.
#include <string.h>

#include "notes/any.h"
#include "notes/of_use.h"
#include "notes/stuff.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum wrong {
    FAILS,  // it does not do its work, or badly
    SLACK,  // it does not stay where it is put
    STICKS, // it hardly moves
    JAMS,   // of a part, that it hardly moves; of the whole, that it does not work well
    ROUGH,  // it moves badly: only of what turns or slides
    HALTS,  // the same, but a thing that stops may be meant to: only where it is said to run before
    FACULTY // only of what is regulated: "the strike is out"
};

static const struct {
    const char *phrase;
    enum wrong wrong;
} predicates[] = {
    {"hums", FAILS},
    {"whistles", FAILS},
    {"slips", FAILS},
    {"slips off", SLACK},
    {"slip", FAILS},
    {"jumps", FAILS},
    {"skips stitches", FAILS},
    {"drops stitches", FAILS},
    {"misses stitches", FAILS},
    {"skips", FAILS},
    {"drifts", FAILS},
    {"stalls", FAILS},
    {"smokes", FAILS},
    {"sparks", FAILS},
    {"clatters", FAILS},
    {"clack", FAILS},
    {"clacks", FAILS},
    {"judders", FAILS},
    {"shudders", FAILS},
    {"wheezes", FAILS},
    {"wheeze", FAILS},
    {"squeaks", FAILS},
    {"squeak", FAILS},
    {"squeals", FAILS},
    {"whines", FAILS},
    {"slows", FAILS},
    {"slows down", FAILS},
    {"but slow", FAILS},
    {"prints light", FAILS},
    {"print light", FAILS},
    {"print faint", FAILS},
    {"catches", ROUGH},
    {"growls", FAILS},
    {"growl", FAILS},
    {"groans", FAILS},
    {"groan", FAILS},
    {"grumbles", FAILS},
    {"graunches", FAILS},
    {"stays cold", FAILS},
    {"stay cold", FAILS},
    {"stays dark", FAILS},
    {"stay dark", FAILS},
    {"stays dead", FAILS},
    {"stays silent", FAILS},
    {"overheats", FAILS},
    {"misfires", FAILS},
    {"backfires", FAILS},
    {"eats tapes", FAILS},
    {"chews tapes", FAILS},
    {"records faintly", FAILS},
    {"double exposes", FAILS},
    {"rubs", STICKS},
    {"sticks", STICKS},
    {"sticks down", STICKS},
    {"stick down", STICKS},
    {"freewheels", FAILS},
    {"free wheels", FAILS},
    {"skates across", FAILS},
    {"jams", JAMS},
    {"binds", JAMS},
    {"drains", FAILS},
    {"stops overnight", FAILS},
    {"reads wrong", FAILS},
    {"reads high", FAILS},
    {"reads low", FAILS},
    {"reads heavy", FAILS},
    {"reads light", FAILS},
    {"weighs wrong", FAILS},
    {"counts wrong", FAILS},
    {"always says", FAILS},
    {"always reads", FAILS},
    {"sounds warbly", FAILS},
    {"sounds on its own", FAILS},
    {"comes on by itself", FAILS},
    {"goes by itself", FAILS},
    {"runs by itself", FAILS},
    {"starts by itself", FAILS},
    {"goes off when", FAILS},
    {"pulls to one side", FAILS},
    {"not accurate", FAILS},
    {"isn't accurate", FAILS},
    {"inaccurate", FAILS},
    {"not reading right", FAILS},
    {"out of beat", FAILS},
    {"needs tuning", FAILS},
    {"needs setting up", FAILS},
    {"needs regulating", FAILS},
    {"needs adjusting", FAILS},
    {"needs calibrating", FAILS},
    {"needs balancing", FAILS},
    {"at the wrong speed", FAILS},
    {"at wrong speed", FAILS},
    {"has to be tapped", FAILS},
    {"has to be shaken", FAILS},
    {"has to be started", FAILS},
    {"has to be pushed", FAILS},
    {"only goes flat out", FAILS},
    {"can't hear anyone", FAILS},
    {"slides down", SLACK},
    {"sinks", SLACK},
    {"sags", SLACK},
    {"slipping", FAILS},
    {"hangs on", STICKS},
    {"hangs at", STICKS},
    {"hangs below", STICKS},
    {"hangs open", STICKS},
    {"only hisses", FAILS},
    {"just hisses", FAILS},
    {"only hums", FAILS},
    {"just hums", FAILS},
    {"only buzzes", FAILS},
    {"just buzzes", FAILS},
    {"only crackles", FAILS},
    {"just crackles", FAILS},
    {"only clicks", FAILS},
    {"just clicks", FAILS},
    {"plays slow", FAILS},
    {"plays fast", FAILS},
    {"takes ages to", FAILS},
    {"takes a while to", FAILS},
    {"noisy", FAILS},
    {"hunts", FAILS},
    {"hunts up and down", FAILS},
    {"slows", FAILS},
    {"vibrates", FAILS},
    {"vibrates badly", FAILS},
    {"gets very hot", FAILS},
    {"gets hot after", FAILS},
    {"runs very hot", FAILS},
    {"needs a service", FAILS},
    {"needs servicing", FAILS},
    {"wants a service", FAILS},
    {"wants servicing", FAILS},
    {"could do with a service", FAILS},
    {"at the wrong time", FAILS},
    {"at wrong times", FAILS},
    {"creeps", SLACK},
    {"grind", FAILS},
    {"grinds", FAILS},
    {"rumble", FAILS},
    {"rumbles", FAILS},
    {"skip", FAILS},
    {"buzz", FAILS},
    {"buzzes", FAILS},
    {"hums", FAILS},
    {"wanders", FAILS},
    {"lose air", FAILS},
    {"loses air", FAILS},
    {"lose pressure", FAILS},
    {"loses pressure", FAILS},
    {"blows cold", FAILS},
    {"nothing but static", FAILS},
    {"just static", FAILS},
    {"only static", FAILS},
    {"is slow to", FAILS},
    {"slow to", FAILS},
    {"are slow to", FAILS},
    {"is rough", ROUGH},
    {"feels rough", ROUGH},
    {"runs rough", ROUGH},
    {"is gritty", ROUGH},
    {"feels gritty", ROUGH},
    {"is lumpy", ROUGH},
    {"is notchy", ROUGH},
    {"is graunchy", ROUGH},
    {"are rough", ROUGH},
    {"are gritty", ROUGH},
    {"are dry", ROUGH},
    {"droops", SLACK},
    {"creeps down", SLACK},
    {"drops", SLACK},
    {"swings about", SLACK},
    {"doesn't grip", SLACK},
    {"is off", FACULTY},
    {"is out", FACULTY},
    {"are off", FACULTY},
    {"are out", FACULTY},
    {"is wrong", FACULTY},
    {"is slow", FACULTY},
    {"is weak", FACULTY},
    {"is poor", FACULTY},
    {"is dim", FACULTY},
    {"is faint", FACULTY},
    {"is low", FACULTY},
    {"is noisy", FAILS},
    {"are noisy", FAILS},
    {"is muffled", FACULTY},
    {"are flat", FACULTY},
    {"is flat", FACULTY},
    {"is uneven", FACULTY},
    {"are uneven", FACULTY},
    {"are weak", FACULTY},
    {"smells", FACULTY},
    {"stops", HALTS},
    {"cuts out", HALTS},
    {"dies", HALTS},
    {"quits", HALTS},
};

// What such goods should do, where "won't" stands before it.
static const char *const faculties[] = {
    "move",          "inflate",   "feed",      "pick up",   "change gear", "change speed", "drive",
    "settle",        "zero",      "weigh",     "respond",   "retract",     "engage",       "hold air",
    "hold pressure", "hold tune", "hold time", "track",     "tighten",     "extend",       "rotate",
    "advance",       "transmit",  "receive",   "connect",   "pair",        "dial",         "load",
    "eject",         "heat",      "cool",      "freeze",    "suck",        "blow",         "spray",
    "mow",           "grind",     "mix",       "toast",     "stay on",     "stay lit",     "stay going",
    "screw in",      "line up",   "meet",      "stay out",  "track",       "rewind",       "record",
    "stop",          "trip",      "swing",     "balance",   "catch",       "go forward",   "go backward",
    "go back",       "steer",     "brake",     "freewheel", "turn over",   "idle",         "prime",
    "syphon",        "siphon",    "draw",      "vacuum",    "wind",        "return",       "reset",
    "calibrate",     "ratchet",   "reverse",   "oscillate", "click",       "spark"};

static const char *const denials[] = {"won't", "wont",  "doesn't", "doesnt",  "don't",
                                      "dont",  "can't", "cannot",  "refuses", "wouldn't"};

static const char works_of[] =
    " electrical clocks-watches cameras music tools sports lighting media kitchenware other "
    "parts crafts decor ";

static const char regulated[] =
    " count scale focus rangefinder meter tension timing strike chime speed balance "
    "alignment tracking pitch tuning action zero "
    "calibration intonation feed rewind note key beam picture sound volume "
    "signal charge suction pressure line bell "
    "channel mirror hub motor engine pendulum gear brake ringer light lamp "
    "display bass treble tone reed shutter trace image ";

static const char moving[] =
    " draw draws drawer drawers slide focus bearing bearings reel crank drag focuser winder wheel spindle "
    "action "
    "gear gears chain pulley headstock saddle carriage quill valve valves piston slides "
    "mechanism movement lever treadle hinge turntable pedal pedals zoom key keys ";

static bool works(const struct fault_reader *r) {
    const struct family *family = r->note->record->family;
    char padded[40];
    if (!family || strlen(family->rule.id) + 3 > sizeof padded) return false;
    padded[0] = ' ';
    memcpy(padded + 1, family->rule.id, strlen(family->rule.id));
    memcpy(padded + strlen(family->rule.id) + 1, " ", 2);
    return strstr(works_of, padded) != NULL;
}

static size_t predicate_at(const struct tokens *tokens, size_t i, enum wrong *wrong) {
    size_t most = 0;
    if (!token_may_open(tokens, i, predicates, COUNT(predicates), sizeof *predicates)) return 0;
    for (size_t k = 0; k < COUNT(predicates); k++) {
        size_t n = token_phrase(tokens, i, predicates[k].phrase);
        if (n <= most) continue;
        most = n;
        *wrong = predicates[k].wrong;
    }
    return most;
}

// "Won't inflate", "doesn't always feed".
static size_t denied_at(const struct tokens *tokens, size_t i, enum wrong *wrong) {
    static const char *const adverbs[] = {"always", "quite",    "fully", "really",
                                          "even",   "properly", "want",  "to"};
    if (!token_among(tokens, i, denials, COUNT(denials))) return 0;
    size_t at = i + 1;
    while (token_among(tokens, at, adverbs, COUNT(adverbs))) at++;
    size_t n = token_longest(tokens, at, faculties, COUNT(faculties));
    *wrong = FAILS;
    return n ? at + n - i : 0;
}

// A verb of one word goes on to where or what for where it is meant to do that: "slips off for cleaning".
static bool closes(const struct tokens *tokens, size_t i, size_t words) {
    static const char *const ends[] = {
        "and",       "but",    "when",     "if",      "under", "once",    "after",   "as",    "or",
        "unless",    "until",  "while",    "because", "so",    "now",     "every",   "badly", "all",
        "sometimes", "a",      "slightly", "about",   "half",  "halfway", "near",    "part",  "partway",
        "very",      "though", "too",      "still",   "again", "toward",  "towards", "i'd",   "i"};
    static const char *const more[] = {"small", "thin", "anything", "fine",   "at",  "in",
                                       "on",    "with", "some",     "from",   "the", "properly",
                                       "well",  "to",   "any",      "anymore"};
    if (i >= tokens->count || tokens->at[i].stop != STOP_NONE || token_among(tokens, i, ends, COUNT(ends)))
        return true;
    if (ANY(tokens, i - 1, "buzzes", "hums", "hisses", "distorts", "crackles") &&
        ANY(tokens, i, "at", "on", "above", "over", "in", "from"))
        return true; // "buzzes on bass notes", "hums at volume"
    return words > 1 && (token_is(tokens, i - 1, "says") || token_among(tokens, i, more, COUNT(more)));
}

// "Runs but stops", "ticks a while, then stops": what stops was going.
static bool ran_before(const struct fault_reader *r, size_t i) {
    static const char *const runs[] = {"runs",   "run",   "goes",  "ticks",   "plays", "works",
                                       "starts", "spins", "turns", "strikes", "fires", "lights",
                                       "heats",  "ran",   "start", "going"};
    enum { BACK = 9 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t at = i; at > 0 && i - at < BACK && tokens->at[at - 1].stop < STOP_SENTENCE; at--)
        if (token_among(tokens, at - 1, runs, COUNT(runs))) return true;
    return false;
}

// Of the thing itself: nothing before it in its clause, or a pronoun.
static bool is_of_whole(const struct fault_reader *r, size_t i) {
    static const char *const words[] = {"they",  "so",      "it",     "this", "and",   "but",       "also",
                                        "just",  "now",     "that",   "then", "which", "sometimes", "though",
                                        "plays", "runs",    "only",   "goes", "ticks", "starts",    "it's",
                                        "works", "strikes", "always", "soon"};
    const struct tokens *tokens = &r->note->tokens;
    if (token_is(tokens, i, "but") ||
        (i > 1 && ANY(tokens, i - 1, "it", "they") && ANY(tokens, i - 2, "but", "so")))
        return true; // "turns but slow", "but they growl"
    if (i > 0 && token_is(tokens, i - 1, "then") && ran_before(r, i))
        return true; // "goes a minute then slows"
    while (i > 0 && token_among(tokens, i - 1, words, COUNT(words))) i--;
    return i > 0 && (tokens->at[i - 1].stop != STOP_NONE ||
                     (ANY(tokens, i, "but", "though", "so") &&
                      r->note->taken[i - 1] == TAKEN_FLAW)); // "lights up but hums"
}

static const struct flaw *kind_of(const struct fault_reader *r, enum wrong wrong, size_t part) {
    if ((wrong == FACULTY || (wrong == HALTS && part)) &&
        (!part || !stuff_among(regulated, &r->note->tokens.at[part - 1])))
        return NULL;
    if (wrong == ROUGH && (!part || !stuff_among(moving, &r->note->tokens.at[part - 1]))) return NULL;
    bool sticks = wrong == STICKS || wrong == ROUGH || (wrong == JAMS && part);
    return ruleset_flaw(r->note->rules, wrong == SLACK ? "loose-part" : sticks ? "seized" : "partly-working");
}

// "One draw is dented and sticks": what was said before the "and" is of the same part.
static size_t subject_of(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (r->part[i - 1] && tokens->at[i - 1].stop == STOP_NONE) return i;
    if (!ANY(tokens, i - 1, "and", "but", "or")) return stuff_subject(r, i);
    size_t at = i - 1;
    while (at > 0 && tokens->at[at - 1].stop == STOP_NONE &&
           ((r->scope.fault[at - 1] && !r->part[at - 1]) ||
            ANY(tokens, at - 1, "is", "are", "has", "have", "was")))
        at--;
    return at > 0 && at + 1 < i && r->part[at - 1] && tokens->at[at - 1].stop == STOP_NONE ? at : 0;
}

// "One buzzes", "the left one hums": of several things one, and which; 0 if none.
static size_t one_before(const struct fault_reader *r, size_t i) {
    static const char *const adverbs[] = {"just", "only", "now", "also", "sometimes"};
    const struct tokens *tokens = &r->note->tokens;
    while (i > 0 && token_among(tokens, i - 1, adverbs, COUNT(adverbs))) i--;
    if (r->note->record->count < 2 || i == 0 || !ANY(tokens, i - 1, "one", "other")) return 0;
    size_t at = i - 1;
    while (at > 0 && tokens->at[at - 1].stop == STOP_NONE &&
           (spot_side(tokens, at - 1) || token_is(tokens, at - 1, "the") ||
            r->note->taken[at - 1] == TAKEN_VALUE))
        at--;
    bool opens = at == 0 || tokens->at[at - 1].stop != STOP_NONE || ANY(tokens, at - 1, "and", "but");
    return opens ? (ANY(tokens, at, "the") ? at + 1 : at) + 1 : 0;
}

// "The dent doesn't stop it", "doesn't stop the draws": of what it does no harm to.
static bool is_harmless(const struct tokens *tokens, size_t end) {
    return (token_is(tokens, end - 1, "catch") && token_is(tokens, end, "on")) || // "don't catch on the bowl"
           (ANY(tokens, end - 1, "stop", "catch") &&
            ANY(tokens, end, "the", "it", "its", "you", "them", "any"));
}

void read_misbehaves(struct fault_reader *r) {
    static const uint16_t off =
        STANCE_NONE_SEEN | STANCE_PAST | STANCE_WITHDRAWN | STANCE_OTHER | STANCE_UNKNOWN | STANCE_PLANNED;
    const struct tokens *tokens = &r->note->tokens;
    if (!works(r)) return;
    for (size_t i = 1; i < tokens->count; i++) {
        enum wrong wrong = FAILS;
        if (tokens->at[i].kind != TOKEN_WORD) continue;
        if (ANY(tokens, i, "slips", "drops", "skips") && r->part[i]) continue; // "cover slips"
        size_t n = denied_at(tokens, i, &wrong), told = n;
        if (!n) n = predicate_at(tokens, i, &wrong);
        uint16_t against = told ? (uint16_t)(off & ~STANCE_PAST) : off; // "doesn't retract any more"
        if (!n || !closes(tokens, i + n, told || wrong != FACULTY ? n : 1) || r->scope.stance[i] & against)
            continue;
        if (!told && r->scope.stance[i] & STANCE_DENIED && !(r->scope.cue[i] >= i && r->scope.cue[i] < i + n))
            continue;
        bool free = true;
        for (size_t k = i; k < i + n; k++)
            free &= note_free(r->note, k, k + 1) || r->note->taken[k] == TAKEN_SCOPE ||
                    r->note->taken[k] == TAKEN_PART;
        size_t part = subject_of(r, i);
        if (part && ANY(tokens, part - 1, "turns", "runs", "winds", "goes", "plays"))
            part = 0; // they are verbs
        size_t one = part ? 0 : one_before(r, i);
        if (told && (is_harmless(tokens, i + n) || function_of_crack(r, i + n - 1, i + n))) continue;
        if (part && ANY(tokens, i, "drops") && ANY(tokens, part - 1, "glass", "crystal", "prism")) continue;
        if (!free || (!part && !one && !is_of_whole(r, i)) || (!part && wrong == HALTS && !ran_before(r, i)))
            continue;
        if (part && r->note->taken[part - 1] == TAKEN_FLAW) continue;
        const char *type = r->note->record->type.value;
        if (ANY(tokens, i, "grinds") && type &&
            (strstr(type, "grind") || strstr(type, "mill") || strstr(type, "minc")))
            continue; // it is made to
        if (ANY(tokens, i, "hums") && i > 2 && ANY(tokens, i - 2, "on", "up") &&
            tokens->at[i - 1].stop <= STOP_COMMA &&
            ANY(tokens, i - 3, "comes", "lights", "powers", "turns", "fires", "starts", "switches"))
            continue; // "comes on, hums": how it sounds when it does
        const struct flaw *kind = kind_of(r, wrong, part);
        if (!kind) continue;
        size_t from = part ? part - 1 : 0;
        while (part && from > 0 && r->part[from - 1]) from--;
        struct fault_hit hit = {.from = i, .to = i + n, .kinds = {kind}, .kind_count = 1};
        if (fault_is_of_use(r, &hit)) continue;
        const char *name = part             ? fault_place(r->note, from, part)
                           : one && one < i ? fault_place(r->note, one - 1, i)
                                            : NULL;
        bool loud = ANY(tokens, i + n, "at", "on") && ANY(tokens, i + n + 1, "volume", "full", "high", "low");
        fault_tell(r, &hit, kind, name, loud ? NULL : stuff_where(r, &hit)); // "buzzes at volume"
        struct record *record = r->note->record;
        if (one) {
            record->flaws[record->flaw_count - 1].count = 1;
            record->flaws[record->flaw_count - 1].of = record->count;
        }
        i += n - 1;
    }
}
