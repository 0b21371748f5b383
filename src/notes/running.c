// SPDX-License-Identifier: MIT
// A bare verb says that a thing works: "Lamp, rewired, works.", "radio working", "LP plays". And what is said
// to be dead of one part leaves the rest: "left speaker dead", "one ring doesn't heat".
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

static bool ends(const struct tokens *tokens, size_t i) {
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE;
}

// Goods of which somebody would say so.
bool running_can(const struct note *note) {
    static const char *const ids[] = {"electrical", "lighting", "tools",   "clocks-watches",
                                      "media",      "toys",     "cameras", "kitchenware",
                                      "music",      "sports",   "parts",   "other"};
    const struct family *family = note->record->family;
    for (size_t i = 0; family && i < COUNT(ids); i++)
        if (text_same(family->rule.id, ids[i])) return true;
    return false;
}

// "Hope it works", "should be working", "not working": no promise, or none for now.
static bool is_weak(const struct fault_reader *r, size_t i) {
    static const char *const words[] = {
        "if",       "whether",    "hope",       "hoping",  "think",    "should",    "may",     "might",
        "could",    "would",      "can't",      "doesn't", "not",      "never",     "said",    "says",
        "told",     "used",       "was",        "were",    "isn't",    "reckon",    "believe", "until",
        "when",     "as",         "like",       "must",    "supposed", "assume",    "nothing", "hardly",
        "barely",   "no",         "only",       "except",  "half",     "sometimes", "one",     "some",
        "probably", "presumably", "apparently", "nor",     "neither"};
    const struct tokens *tokens = &r->note->tokens;
    if (r->scope.stance[i] & (STANCE_DENIED | STANCE_NONE_SEEN | STANCE_UNKNOWN | STANCE_PAST | STANCE_OTHER |
                              STANCE_WITHDRAWN | STANCE_DOUBT | STANCE_PLANNED))
        return true;
    for (size_t at = i; at > 0 && tokens->at[at - 1].stop == STOP_NONE; at--)
        if (AMONG(tokens, at - 1, words)) return true;
    return false;
}

static bool leads(const struct note *note, size_t i) {
    static const char *const words[] = {"and", "it",  "still", "all", "they",  "both",   "everything", "also",
                                        "now", "but", "is",    "are", "which", "though", "does"};
    if (i == 0) return false;
    return note->tokens.at[i - 1].stop != STOP_NONE || note->taken[i - 1] == TAKEN_TYPE ||
           AMONG(&note->tokens, i - 1, words);
}

static bool has_kind(const struct record *record, const char *id) {
    for (size_t i = 0; i < record->flaw_count; i++)
        if (text_same(record->flaws[i].kind->rule.id, id)) return true;
    return false;
}

bool running_is_told(const struct record *record) {
    static const char *const ids[] = {"working-tested", "not-working", "partly-working",
                                      "powers-on-only", "untested",    "for-parts"};
    for (size_t k = 0; k < COUNT(ids); k++)
        if (has_kind(record, ids[k])) return true;
    return false;
}

// "Runs.", "ticks and strikes": a clock is seen to go, and no more is said of it. How well it keeps time is
// another matter, which nobody has told.
static void read_going(struct fault_reader *r) {
    static const char *const verbs[] = {"runs", "ticks", "goes", "running", "ticking"};
    static const char *const also[] = {"strikes", "chimes", "rings", "ticks", "striking"};
    const struct tokens *tokens = &r->note->tokens;
    const struct flaw *kind = ruleset_flaw(r->note->rules, "timekeeping-unverified");
    if (!kind || has_kind(r->note->record, "timekeeping-unverified")) return;
    for (size_t i = 0; i < tokens->count; i++) {
        if (!AMONG(tokens, i, verbs) || r->note->taken[i] == TAKEN_FLAW || r->note->taken[i] == TAKEN_TYPE ||
            r->note->taken[i] == TAKEN_ASIDE || is_weak(r, i))
            continue;
        size_t end = i + 1;
        if (!ends(tokens, end) && token_is(tokens, end, "and") && AMONG(tokens, end + 1, also)) end += 2;
        static const char *const movers[] = {"movement", "clock", "watch"};
        if (!ends(tokens, end) || !(leads(r->note, i) || (i > 0 && AMONG(tokens, i - 1, movers)))) continue;
        fault_add(r, kind, NULL, NULL, i, end);
        return;
    }
}

// Verbs that say by themselves what goods do that are in order; the second list has those that are nouns as
// well, and count behind "it", "still" or another of them.
static const char *const verbs[] = {"works",   "working", "runs",   "functioning", "functional",
                                    "plays",   "rewinds", "boils",  "heats",       "rings",
                                    "dials",   "toasts",  "brews",  "steams",      "oscillates",
                                    "charges", "pumps",   "sprays", "chimes",      "projects"};
static const char *const nouns[] = {"records", "prints",  "types",     "cuts",  "grinds",
                                    "fires",   "lights",  "flashes",   "mixes", "tunes",
                                    "spins",   "strikes", "transmits", "cools", "blows"};

// "Fine", "on both speeds", "at every setting", "loud and clear": how well it does so; how many tokens.
static size_t manner_at(const struct tokens *tokens, size_t i) {
    static const char *const manners[] = {"well",
                                          "fine",
                                          "good",
                                          "great",
                                          "strong",
                                          "nicely",
                                          "smooth",
                                          "smoothly",
                                          "quiet",
                                          "quietly",
                                          "perfectly",
                                          "ok",
                                          "okay",
                                          "as it should",
                                          "as they should",
                                          "every time",
                                          "first time",
                                          "up",
                                          "strongly",
                                          "loud",
                                          "loud and clear",
                                          "clear",
                                          "clearly",
                                          "back",
                                          "both ways",
                                          "evenly",
                                          "on both sides",
                                          "in both directions",
                                          "both directions",
                                          "all day",
                                          "hot"};
    static const char *const all[] = {"all", "both", "every", "each", "high", "low", "any"};
    enum { WORDS_MOST = 6 };
    size_t n = token_longest(tokens, i, manners, COUNT(manners));
    if (n || !ANY(tokens, i, "on", "at") || tokens->at[i].stop != STOP_NONE || !AMONG(tokens, i + 1, all))
        return n;
    size_t at = i + 1; // "on low and high", "at all three speeds"
    while (at < i + WORDS_MOST && at < tokens->count && tokens->at[at].kind == TOKEN_WORD &&
           tokens->at[at].stop == STOP_NONE && !ANY(tokens, at, "but", "the", "with", "it", "except"))
        at++;
    return ends(tokens, at) ? at - i : 0;
}

// "Plays and rewinds", "heats and pops up", "runs strong on both speeds", from its first verb at `i`: the
// token behind; `i` where something else is said.
static size_t deeds_end(const struct tokens *tokens, size_t i) {
    static const char *const others[] = {"pops", "feeds", "shuts", "cycles", "keeps"};
    enum { DEEDS_MOST = 4 };
    size_t at = i;
    for (size_t n = 0; n < DEEDS_MOST; n++) {
        bool verb = AMONG(tokens, at, verbs) || AMONG(tokens, at, nouns);
        bool more = n > 0 && AMONG(tokens, at, others) && ANY(tokens, at + 1, "up", "off");
        if (!verb && !more) return i;
        at += more ? 2 : 1;
        for (size_t how; tokens->at[at - 1].stop == STOP_NONE && (how = manner_at(tokens, at)) != 0;)
            at += how;
        if (at >= tokens->count) return at;
        size_t comma = tokens->at[at].stop == STOP_COMMA, and = at + comma;
        if (ANY(tokens, and, "and", "&")) and++;
        bool next = and > at && and < tokens->count &&
                    (AMONG(tokens, and, verbs) || AMONG(tokens, and, nouns) || AMONG(tokens, and, others));
        if (!next) return ends(tokens, at) ? at : i;
        at = and;
    }
    return i;
}

// "The motor runs", "both burners light", "all the keys strike": what works is what drives it, or all of some
// parts. Where it begins; `i` where it is neither.
static size_t all_before(const struct fault_reader *r, size_t i) {
    static const char *const wholes[] = {"motor", "engine", "machine", "unit", "set"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i;
    if (at > 0 && AMONG(tokens, at - 1, wholes)) {
        at--;
        if (at > 0 && ANY(tokens, at - 1, "the", "its") && tokens->at[at - 1].stop == STOP_NONE) at--;
        return at == 0 || tokens->at[at - 1].stop != STOP_NONE ? at : i;
    }
    const struct flaw *moved = at > 0 && ANY(tokens, i, "work") ? function_kind(r, at - 1) : NULL;
    if (moved && !text_same(moved->rule.id, "partly-working")) return i; // "both knobs work"
    while (at > 0 && i - at < 3 && r->part[at - 1] && tokens->at[at - 1].stop == STOP_NONE) at--;
    if (at == i || tokens->at[i - 1].one == tokens->at[i - 1].fold) return i;
    if (at > 0 && ANY(tokens, at - 1, "the", "its", "three", "four", "of")) at--;
    if (at > 1 && token_is(tokens, at - 1, "of")) at--;
    bool all = at > 0 && ANY(tokens, at - 1, "all", "both", "every") && tokens->at[at - 1].stop == STOP_NONE;
    return all && (at == 1 || tokens->at[at - 2].stop != STOP_NONE) ? at - 1 : i;
}

// A bell rings, whatever its state.
static bool is_driven(const struct note *note) {
    static const char *const ids[] = {"electrical", "lighting", "tools", "media", "cameras", "kitchenware"};
    for (size_t i = 0; i < COUNT(ids); i++)
        if (text_same(note->record->family->rule.id, ids[i])) return true;
    return false;
}

// The first token of a statement that the thing works, of which `i` is the verb, and `*to` the one behind it.
static size_t working_from(const struct fault_reader *r, size_t i, size_t *to) {
    static const char *const theirs[] = {"light", "strike", "type", "fire",  "heat", "glow",
                                         "play",  "sound",  "ring", "print", "work", "speak"};
    static const char *const plain[] = {"works", "working", "runs", "functioning", "functional", "plays"};
    const struct note *note = r->note;
    const struct tokens *tokens = &note->tokens;
    size_t first = i;
    *to = 0;
    if (AMONG(tokens, i, theirs)) {
        static const char *const holders[] = {"latches", "catches", "clasps", "locks",   "hinges",
                                              "zips",    "buckles", "snaps",  "drawers", "doors"};
        if (i > 0 && AMONG(tokens, i - 1, holders)) return i;
        first = all_before(r, i);
        size_t how = manner_at(tokens, i + 1);
        if (first < i && tokens->at[first].kind == TOKEN_WORD && ends(tokens, i + 1 + how)) *to = i + 1 + how;
        return first;
    }
    bool noun = AMONG(tokens, i, nouns);
    if (!noun && !AMONG(tokens, i, verbs)) return i;
    if (!AMONG(tokens, i, plain) && !is_driven(note)) return i;
    size_t end = deeds_end(tokens, i);
    if (end == i) return i;
    bool led = leads(note, i) && !(noun && (i == 0 || !ANY(tokens, i - 1, "it", "still", "and", "also")));
    first = led ? i : all_before(r, i);
    if (!led && first == i && !(i == 0 && !noun)) return i;
    if (led && !AMONG(tokens, i, plain) && token_is(tokens, i - 1, "and")) return i; // "dings and rings"
    *to = end;
    return first;
}

// "Coffee grinder. Grinds fine": what it is made to do, by the name it has.
static void read_own_work(struct fault_reader *r) {
    static const char *const well[] = {"ok",     "okay",      "fine",  "well",
                                       "nicely", "perfectly", "great", "alright"};
    static const uint16_t off = STANCE_DENIED | STANCE_PAST | STANCE_DOUBT | STANCE_HEARD | STANCE_WITHDRAWN |
                                STANCE_OTHER | STANCE_UNKNOWN | STANCE_PLANNED;
    enum { STEM = 4 };
    const struct tokens *tokens = &r->note->tokens;
    const char *type = r->note->record->type.value, *head = type ? strrchr(type, ' ') : NULL;
    const struct flaw *kind = ruleset_flaw(r->note->rules, "working-tested");
    const char *maker = head ? head + 1 : type;
    if (!type || !kind || running_is_told(r->note->record)) return;
    for (size_t i = 1; i + 1 < tokens->count; i++) {
        const struct token *token = &tokens->at[i];
        size_t size = strlen(token->fold);
        if (token->kind != TOKEN_WORD || size <= STEM || token->fold[size - 1] != 's' ||
            strncmp(token->fold, maker, STEM) != 0 || !AMONG(tokens, i + 1, well) || !ends(tokens, i + 2) ||
            !leads(r->note, i) || r->note->taken[i] != TAKEN_NOT || (r->scope.stance[i] & off))
            continue;
        fault_add(r, kind, NULL, NULL, i, i + 2);
        return;
    }
}

void read_running(struct fault_reader *r) {
    static const char *const going[] = {"runs", "plays"}; // a clock that runs may not keep time
    struct note *note = r->note;
    const struct tokens *tokens = &note->tokens;
    const struct flaw *kind = ruleset_flaw(note->rules, "working-tested");
    read_own_work(r);
    if (!kind || !running_can(note) || running_is_told(note->record)) return;
    bool clock = text_same(note->record->family->rule.id, "clocks-watches");
    if (clock) read_going(r);
    for (size_t i = 0; i < tokens->count; i++) {
        if ((clock && AMONG(tokens, i, going)) || note->taken[i] == TAKEN_FLAW ||
            note->taken[i] == TAKEN_TYPE || note->taken[i] == TAKEN_ASIDE)
            continue;
        static const char *const takers[] = {"but", "except", "apart", "bar", "though", "although", "only"};
        size_t to, from = working_from(r, i, &to);
        if (!to || AMONG(tokens, to + 1, takers) || is_weak(r, i) || function_is_of_faulty(r, from)) continue;
        fault_add(r, kind, NULL, NULL, from, to);
        return;
    }
}

// "Lights come on but it won't play", "won't play 45s": one of the things it does is not all of them. "Dead"
// and "doesn't work" stay what they are, whatever else is said.
static bool does_something(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const ids[] = {"powers-on-only", "partly-working", "working-tested"};
    static const uint16_t off =
        STANCE_DENIED | STANCE_NONE_SEEN | STANCE_PAST | STANCE_UNKNOWN | STANCE_OTHER;
    const struct tokens *tokens = &r->note->tokens;
    static const char *const one_of_several[] = {"play",   "fire",   "heat",  "ring",  "print",
                                                 "record", "strike", "chime", "charge"};
    static const char *const measures[] = {"more than", "for more than", "longer than", "past", "beyond"};
    bool short_of = token_first(tokens, hit->to, measures, COUNT(measures)); // "it runs … won't go more than"
    if (!short_of && !AMONG(tokens, hit->to - 1, one_of_several)) return false;
    if (tokens->at[hit->to - 1].stop == STOP_NONE && hit->to < tokens->count &&
        tokens->at[hit->to].kind == TOKEN_FIGURE && token_is(tokens, hit->to - 1, "play"))
        return true;
    for (size_t i = 0; i < r->hit_count; i++)
        for (size_t k = 0; k < COUNT(ids); k++)
            if (text_same(r->hits[i].kinds[0]->rule.id, ids[k]) && !(r->scope.stance[r->hits[i].from] & off))
                return true;
    return false;
}

// "Repeat doesn't work": one word that begins the sentence, which names neither the thing nor what drives it.
static bool is_of_some_noun(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const wholes[] = {
        "it",         "they",      "this",   "these",     "that",     "those",      "motor",   "engine",
        "movement",   "mechanism", "works",  "thing",     "set",      "unit",       "machine", "item",
        "still",      "also",      "now",    "but",       "and",      "one",        "both",    "otherwise",
        "which",      "sadly",     "just",   "currently", "probably", "apparently", "unit's",  "mostly",
        "mains",      "battery",   "power",  "nothing",   "none",     "neither",    "two",     "all",
        "some",       "most",      "though", "it's",      "so",       "i",          "we",      "what",
        "everything", "electrics"};
    const struct tokens *tokens = &r->note->tokens;
    if (hit->from == 0 || hit->near || !ANY(tokens, hit->from, "doesn't", "does", "doesnt") ||
        !ANY(tokens, hit->to - 1, "work"))
        return false;
    size_t i = hit->from - 1, start = scope_sentence_start(&r->scope, hit->from);
    if (tokens->at[i].kind != TOKEN_WORD || tokens->at[i].stop != STOP_NONE ||
        r->note->taken[i] == TAKEN_TYPE || AMONG(tokens, i, wholes) || strstr(tokens->at[i].fold, "'"))
        return false;
    size_t size = strlen(tokens->at[i].fold);
    if (size < 4 || text_same(tokens->at[i].fold + size - 2, "ly") ||
        text_same(tokens->at[i].fold + size - 2, "ed"))
        return false; // "tested, doesn't work"
    return i == start || (i == start + 1 && ANY(tokens, start, "the", "its"));
}

// "The figure turns but there's no sound": some of it still goes.
static bool moves_but_is_mute(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const moves[] = {
        "turns", "moves",    "swings", "comes", "spins", "beats", "goes", "rotates", "dances", "revolve",
        "lift",  "revolves", "turn",   "move",  "swing", "come",  "spin", "lights",  "winds",  "runs",
        "ticks", "blows",    "light",  "nods",  "blow",  "hums",  "run",  "steams"};
    const struct tokens *tokens = &r->note->tokens;
    if (!ANY(tokens, hit->from, "no", "without") ||
        !ANY(tokens, hit->to - 1, "sound", "picture", "tone", "music", "note", "tune", "heat", "warmth"))
        return false;
    for (size_t i = scope_sentence_start(&r->scope, hit->from); i < hit->from; i++)
        if (AMONG(tokens, i, moves) && !(r->scope.stance[i] & (STANCE_DENIED | STANCE_PAST | STANCE_UNKNOWN)))
            return true;
    return false;
}

// "Two clips, one is broken", "the lid stay is there but broken": of a piece "broken" says that it is in two.
static bool is_of_a_piece(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const heres[] = {"there", "here", "present", "with", "included"};
    const struct tokens *tokens = &r->note->tokens;
    if (hit->to != hit->from + 1 || !ANY(tokens, hit->from, "broken", "bust", "busted")) return false;
    size_t at = hit->from;
    while (at > 0 && ANY(tokens, at - 1, "is", "are", "it's", "its", "it", "they're", "also", "now")) at--;
    if (at == 0) return false;
    if (r->note->record->count < 2 &&
        (ANY(tokens, at - 1, "one", "one's", "another") || degrees_number(tokens, at - 1) > 1))
        return true;
    if (at < 3 || !ANY(tokens, at - 1, "but", "though") || !AMONG(tokens, at - 2, heres)) return false;
    for (size_t i = at - 2; i > 0 && tokens->at[i - 1].stop == STOP_NONE; i--)
        if (r->part[i - 1] && r->note->taken[i - 1] != TAKEN_TYPE) {
            const struct flaw *works = function_kind(r, i - 1);
            return !works || !text_same(works->rule.id, "partly-working");
        }
    return false;
}

// "Leather has a split by the hinge and is stiff", "the bellows have no holes but they're stiff": what gives
// when it is sound has dried out, and no part is stuck. What begins the sentence is what is said to be so.
static const struct flaw *stiff_stuff(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const lead[] = {"the", "its", "a", "all", "both", "old"};
    static const char *const hides[] = {"leather", "leathers"}, *const others[] = {"bellows", "rubber",
                                                                                   "rubbers"};
    const struct tokens *tokens = &r->note->tokens;
    if (hit->to != hit->from + 1 || !token_is(tokens, hit->from, "stiff")) return NULL;
    size_t at = scope_sentence_start(&r->scope, hit->from);
    while (AMONG(tokens, at, lead)) at++;
    if (at + 1 < hit->from && r->part[at + 1] && tokens->at[at].stop == STOP_NONE)
        return NULL; // "leather strap"
    for (size_t i = at + 1; i < hit->from; i++)
        if (r->part[i] && (i == 0 || !ANY(tokens, i - 1, "the", "a", "by", "at", "on", "in", "near", "of")) &&
            (tokens->at[i - 1].stop != STOP_NONE || ANY(tokens, i - 1, "and", "but")))
            return NULL; // a subject of its own
    const char *id = AMONG(tokens, at, hides)    ? "leather-crack"
                     : AMONG(tokens, at, others) ? "rubber-perished"
                                                 : NULL;
    return id ? ruleset_flaw(r->note->rules, id) : NULL;
}

// Of one part or some of several.
const struct flaw *running_partly(const struct fault_reader *r, const struct fault_hit *hit,
                                  const struct flaw *kind) {
    static const char *const some[] = {"one",    "some",   "half", "left", "right", "two",    "three",
                                       "second", "bottom", "top",  "rear", "front", "several"};
    static const char *const parts[] = {
        "oscillation", "pickup",  "backlight", "thermostat", "brake",     "igniter",  "speed", "digit",
        "segment",     "side",    "light",     "speaker",    "speakers",  "ring",     "rings", "burner",
        "burners",     "element", "timer",     "clock",      "alarm",     "strike",   "chime", "dial",
        "display",     "screen",  "tuner",     "channel",    "headlight", "horn",     "bell",  "fan",
        "blower",      "fuse",    "switch",    "lever",      "button",    "buttons",  "key",   "keys",
        "setting",     "band",    "heater",    "reverse",    "rewind",    "cassette", "fm",    "am",
        "flash",       "meter",   "tape",      "lamp",       "bulb",      "knob",     "knobs", "control",
        "controls",    "trigger", "function",  "functions",  "socket",    "gauge",    "pedal", "sensor",
        "indicator",   "buzzer",  "lights",    "dials",      "switches",  "timers",   "port",  "ports"};
    const struct tokens *tokens = &r->note->tokens;
    enum { BACK = 5 };
    bool dead = text_same(kind->rule.id, "not-working") || text_same(kind->rule.id, "partly-working");
    static const char *const wonts[] = {"won't", "wont", "doesn't", "doesnt", "don't", "wouldn't"};
    bool plain = (token_is(tokens, hit->from, "not") && token_is(tokens, hit->to - 1, "working")) ||
                 (AMONG(tokens, hit->from, wonts) && token_is(tokens, hit->to - 1, "hold"));
    size_t end = hit->from;
    while (end > 0 && ANY(tokens, end - 1, "is", "are", "both", "still")) end--;
    const struct flaw *shuts = dead && plain && end > 0 ? function_kind(r, end - 1) : NULL;
    if (shuts && (text_same(shuts->rule.id, "clasp-fault") || text_same(shuts->rule.id, "zip-fault")))
        return shuts; // "lock not working"
    const struct flaw *stuff = text_same(kind->rule.id, "seized") ? stiff_stuff(r, hit) : NULL;
    if (stuff) return stuff;
    bool key = false; // "no key and it's locked" of a box
    for (size_t k = 0; k < tokens->count && !key; k++) key = ANY(tokens, k, "key", "keys");
    if (text_same(kind->rule.id, "locked-device") && key && ANY(tokens, hit->to - 1, "locked"))
        return ruleset_flaw(r->note->rules, "inside-not-inspected");
    if (!text_same(kind->rule.id, "not-working")) return kind;
    for (size_t k = hit->from; k < hit->to; k++)
        if (ANY(tokens, k, "keep", "stay") &&
            ANY(tokens, k + 1, "going", "running", "ticking", "on", "lit", "playing"))
            return ruleset_flaw(r->note->rules, "partly-working"); // "won't keep going"
    if (is_of_a_piece(r, hit)) return ruleset_flaw(r->note->rules, "broken-part");
    for (size_t at = hit->to; at < hit->to + 3 && at < tokens->count && tokens->at[at - 1].stop == STOP_NONE;
         at++)
        if (ANY(tokens, at, "unless", "until"))
            return ruleset_flaw(r->note->rules, "partly-working"); // "doesn't start unless you push it"
    static const char *const times[] = {"sometimes",  "occasionally",  "now and then",   "at times",
                                        "every time", "first time",    "at first",       "always",
                                        "when cold",  "when it's hot", "when it's cold", "when warm",
                                        "when hot"};
    for (size_t at = hit->from > 3 ? hit->from - 3 : 0; at < hit->to + 3 && at < tokens->count; at++)
        if (token_first(tokens, at, times, COUNT(times)) &&
            at >= scope_sentence_start(&r->scope, hit->from) && at < scope_sentence_end(&r->scope, hit->from))
            return ruleset_flaw(r->note->rules, "partly-working"); // "sometimes it won't start"
    static const char *const shorts[] = {"doesn't", "won't", "don't", "isn't", "dead", "nothing"};
    bool other = false; // "light works, motor doesn't"
    for (size_t at = scope_sentence_start(&r->scope, hit->from); at < hit->from; at++)
        other |= ANY(tokens, at, "works", "work", "runs", "run");
    for (size_t at = hit->from, back = 0; r->note->record->count > 1 && other && at > 0 && back < BACK;
         at--, back++) {
        if (tokens->at[at - 1].stop != STOP_NONE) break;
        if (ANY(tokens, at - 1, "one", "other", "another", "second"))
            return kind; // "black one works, grey one does nothing" of two lamps
    }
    if (other && AMONG(tokens, hit->to - 1, shorts)) return ruleset_flaw(r->note->rules, "partly-working");
    size_t from, to; // "the switch is cracked and doesn't work"
    if (spot_joined_before(r, hit->from, &from, &to)) return ruleset_flaw(r->note->rules, "partly-working");
    if (does_something(r, hit) || is_of_some_noun(r, hit) || moves_but_is_mute(r, hit))
        return ruleset_flaw(r->note->rules, "partly-working");
    size_t own = hit->to > hit->from + 1 && r->part[hit->from] ? 1 : 0; // "buttons do nothing"
    for (size_t at = hit->from + own, back = 0; at > 0 && back < BACK; at--, back++) {
        if (tokens->at[at - 1].stop != STOP_NONE || token_is(tokens, at - 1, "and") ||
            r->note->taken[at - 1] == TAKEN_TYPE)
            break;
        bool part = AMONG(tokens, at - 1, parts);
        static const char *const ones[] = {"one", "third", "second", "fourth", "other"}; // "third is dead"
        bool few = (AMONG(tokens, at - 1, some) && at < hit->from && r->part[at]) ||
                   (at == hit->from && AMONG(tokens, at - 1, ones) && r->note->record->count < 2);
        if (part || few) return ruleset_flaw(r->note->rules, "partly-working");
    }
    return kind;
}

// "Works but the case is cracked": it works, and what is wrong with it is no matter of its working.
bool running_is_sound(const struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind) {
    static const char *const limits[] = {"won't",  "doesn't",   "can't",   "not",  "only",   "needs",
                                         "wants",  "never",     "nothing", "slow", "slowly", "don't",
                                         "didn't", "hardly",    "barely",  "no",   "stops",  "dies",
                                         "quits",  "sometimes", "must",    "weak", "isn't",  "aren't",
                                         "wont",   "doesnt",    "silent",  "dead"};
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(kind->rule.id, "partly-working") || !token_is(tokens, hit->to - 1, "but")) return false;
    size_t end = scope_sentence_end(&r->scope, hit->to);
    for (size_t i = hit->to; i < end && i < tokens->count; i++) {
        for (size_t k = 0; k < r->hit_count; k++)
            if (r->hits[k].from == i) return r->hits[k].kinds[0]->class != CLASS_FUNCTION;
        if (token_among(tokens, i, limits, COUNT(limits))) return false;
    }
    return false;
}
