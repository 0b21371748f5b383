// SPDX-License-Identifier: MIT
// What some part of a machine does not do, whatever its name: "the day wheel doesn't change", "nothing
// records", "drawer pings open, won't stay shut", "strike side plays but the time side doesn't". The rest of
// the machine is not dead by that.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

static const char *const acts[] = {"stop",
                                   "change",
                                   "clamp",
                                   "record",
                                   "rewind",
                                   "register",
                                   "engage",
                                   "respond",
                                   "tune",
                                   "track",
                                   "level",
                                   "tilt",
                                   "flip",
                                   "beep",
                                   "freeze",
                                   "cool",
                                   "brew",
                                   "mix",
                                   "inflate",
                                   "deflate",
                                   "reset",
                                   "zero",
                                   "count",
                                   "grind",
                                   "shred",
                                   "staple",
                                   "erase",
                                   "scan",
                                   "copy",
                                   "dial",
                                   "transmit",
                                   "receive",
                                   "turn itself off",
                                   "switch itself off",
                                   "turn off",
                                   "switch off",
                                   "shut off",
                                   "stay closed",
                                   "stay shut",
                                   "stay down",
                                   "stay up",
                                   "stay on",
                                   "stay in",
                                   "stay put",
                                   "pop up",
                                   "pop out",
                                   "show anything",
                                   "show up",
                                   "warm up",
                                   "come up",
                                   "come down",
                                   "go up",
                                   "go down",
                                   "go back",
                                   "go off",
                                   "read",
                                   "align",
                                   "lock",
                                   "latch",
                                   "rise",
                                   "raise",
                                   "lower",
                                   "sound",
                                   "strike",
                                   "flash",
                                   "blink",
                                   "heat",
                                   "spin",
                                   "turn",
                                   "move",
                                   "catch",
                                   "grip",
                                   "feed",
                                   "print",
                                   "advance",
                                   "close",
                                   "focus",
                                   "oscillate",
                                   "swing",
                                   "rotate",
                                   "reach",
                                   "light",
                                   "light up",
                                   "come on",
                                   "work",
                                   "open",
                                   "shut",
                                   "charge",
                                   "whistle",
                                   "growl",
                                   "squeak",
                                   "buzz",
                                   "ring",
                                   "chime",
                                   "sing",
                                   "tick",
                                   "blow",
                                   "click",
                                   "pump",
                                   "return",
                                   "wind"};

static const char *const done[] = {"records",   "prints", "comes out", "comes through",
                                   "registers", "shows",  "moves",     "reaches",
                                   "plays",     "lights", "spins",     "prints out"};

static const char *const nobody[] = {
    "i",      "you",   "we",     "he",      "she",   "they",     "who",   "people",  "nobody", "dad",
    "mum",    "mom",   "wife",   "husband", "kids",  "granddad", "but",   "and",     "so",     "just",
    "really", "still", "also",   "now",     "that",  "which",    "these", "those",   "this",   "what",
    "paint",  "color", "colour", "box",     "label", "chip",     "crack", "scratch", "stain",  "rust",
    "smell",  "marks", "ones",   "it",      "them",  "or",       "nor",   "if"};

static bool is_off(const struct fault_reader *r, size_t i) {
    return r->scope.stance[i] &
           (STANCE_PAST | STANCE_UNKNOWN | STANCE_WITHDRAWN | STANCE_OTHER | STANCE_PLANNED);
}

// The word that is its subject: right before it, or the first of the statement before the comma.
static bool subject_of(const struct fault_reader *r, size_t i, size_t *at) {
    enum { OPENS = 4 };
    const struct tokens *tokens = &r->note->tokens;
    if (i == 0) return false;
    if (tokens->at[i - 1].stop == STOP_NONE) {
        *at = i - 1;
        return tokens->at[i - 1].kind == TOKEN_WORD && !AMONG(tokens, i - 1, nobody) &&
               (r->note->taken[i - 1] == TAKEN_NOT || r->note->taken[i - 1] == TAKEN_PART);
    }
    if (tokens->at[i - 1].stop != STOP_COMMA) return false;
    size_t from = i - 1;
    while (from > 0 && tokens->at[from - 1].stop == STOP_NONE) from--;
    for (size_t k = from; k < from + OPENS && k + 1 < i; k++) {
        if (AMONG(tokens, k, nobody)) return false;
        if (!function_kind(r, k) || r->note->taken[k] == TAKEN_TYPE) continue;
        *at = k;
        return true;
    }
    return false;
}

static void tell(struct fault_reader *r, const struct flaw *kind, size_t part, size_t from, size_t to) {
    size_t first = part;
    while (first > 0 && r->part[first - 1] && r->note->tokens.at[first - 1].stop == STOP_NONE) first--;
    struct fault_hit hit = {.from = from, .to = to, .kinds = {kind}, .kind_count = 1, .own_no = true};
    fault_tell(r, &hit, kind, part < from ? fault_place(r->note, first, part + 1) : NULL, NULL);
}

// "Doesn't sweep all the way round", "won't seat properly": any verb, where what follows tells that it is
// done badly or not to the end. How many tokens from the verb on.
static size_t badly_at(const struct tokens *tokens, size_t i) {
    static const char *const others[] = {"fit",   "look",   "match",  "seem", "smell",  "know", "think",
                                         "want",  "need",   "show",   "feel", "appear", "have", "be",
                                         "go",    "affect", "leak",   "mind", "matter", "like", "photograph",
                                         "quite", "get",    "really", "even", "always", "been", "sit",
                                         "lie",   "stand",  "lay",    "hang"};
    static const char *const ways[] = {"up",      "down",     "round", "around", "in",   "out",
                                       "over",    "together", "back",  "on",     "home", "across",
                                       "through", "it",       "the",   "itself"};
    static const char *const badly[] = {
        "properly",    "right",        "fully",          "smoothly",       "evenly", "cleanly",
        "correctly",   "squarely",     "freely",         "straight",       "true",   "the whole way",
        "all the way", "as it should", "as they should", "like it should", "easily", "tightly",
        "completely",  "tight",        "far enough",     "very far"};
    static const char *const meets[] = {"meet",          "meet up",    "line up",     "come together",
                                        "close up",      "match up",   "quite meet",  "quite close",
                                        "quite line up", "quite shut", "really meet", "quite come together",
                                        "quite reach",   "all meet",   "all line up"};
    size_t meet = token_longest(tokens, i, meets, COUNT(meets));
    if (meet) return meet;
    if (i >= tokens->count || tokens->at[i].kind != TOKEN_WORD || AMONG(tokens, i, others)) return 0;
    size_t at = i + 1;
    while (at < i + 3 && tokens->at[at - 1].stop == STOP_NONE && AMONG(tokens, at, ways)) at++;
    if (tokens->at[at - 1].stop != STOP_NONE) return 0;
    size_t n = token_longest(tokens, at, badly, COUNT(badly));
    return n ? at + n - i : 0;
}

static size_t read_badly(struct fault_reader *r, const struct flaw *partly, size_t i) {
    static const char *const turns[] = {"turn", "rotate", "spin", "move", "wind", "swing", "slide", "travel"};
    const struct tokens *tokens = &r->note->tokens;
    size_t n = function_denial(tokens, i), act = n ? badly_at(tokens, i + n) : 0, part;
    if (!act || is_off(r, i) || fault_takes_any(r, i, i + n + act) || !subject_of(r, i, &part)) return 0;
    const struct flaw *own = function_kind(r, part);
    if ((!own && !r->part[part]) || r->note->taken[part] == TAKEN_TYPE) return 0;
    const struct family *family = r->note->record->family;
    bool doors = family && text_same(family->rule.id, "furniture"); // what does not line up there has sagged
    if (doors && ANY(tokens, i + n, "line", "meet", "close")) return 0;
    bool stuck = own && text_same(own->rule.id, "seized") && !AMONG(tokens, i + n, turns);
    tell(r, own && !stuck ? own : partly, part, i, i + n + act);
    return n + act;
}

// "The weight slides a bit too easily", "the lid turns too freely": what should bind is loose.
static size_t read_too_easy(struct fault_reader *r, size_t i) {
    enum { BACK = 4 };
    const struct tokens *tokens = &r->note->tokens;
    const struct flaw *loose = ruleset_flaw(r->note->rules, "loose-part");
    if (!loose || i < 2 || !ANY(tokens, i + 1, "easily", "freely", "loosely", "easy") || is_off(r, i))
        return 0;
    size_t verb = i;
    while (verb > 0 && i - verb < BACK &&
           ANY(tokens, verb - 1, "a", "bit", "little", "rather", "far", "much", "all", "off", "round", "down",
               "out"))
        verb--;
    if (verb < 2 || tokens->at[verb - 2].stop != STOP_NONE || !r->part[verb - 2] ||
        r->note->taken[verb - 2] == TAKEN_TYPE || fault_takes_any(r, verb - 1, i + 2) ||
        !ANY(tokens, verb - 1, "slides", "slide", "turns", "turn", "moves", "move", "opens", "comes", "come",
             "swings", "lifts", "spins", "drops", "rocks", "slips"))
        return 0;
    tell(r, loose, verb - 2, verb - 1, i + 2);
    return 2;
}

static size_t read_denied(struct fault_reader *r, const struct flaw *partly, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    size_t n = function_denial(tokens, i), part;
    size_t act = n ? token_longest(tokens, i + n, acts, COUNT(acts)) : 0;
    if (act && token_is(tokens, i + n + act - 1, "catch") && token_is(tokens, i + n + act, "on"))
        return 0; // "the beaters don't catch on each other": they run free
    if (!act || function_of_crack(r, i + n, i + n + act) || is_off(r, i) ||
        fault_takes_any(r, i, i + n + act) || !subject_of(r, i, &part))
        return 0;
    const struct flaw *own = function_kind(r, part);
    if (!own && !r->part[part] && !running_can(r->note)) return 0;
    if (!own && !running_can(r->note)) return 0;
    static const char *const motions[] = {"turn", "move", "spin",  "rotate", "swing", "open",  "close",
                                          "shut", "rise", "raise", "lower",  "tilt",  "focus", "slide"};
    bool stuck = own && text_same(own->rule.id, "seized") && !AMONG(tokens, i + n, motions);
    tell(r, own && !stuck ? own : partly, part, i, i + n + act);
    return n + act;
}

// "Two light, one doesn't", "the strike side plays, the time side doesn't".
static size_t read_cut_short(struct fault_reader *r, const struct flaw *partly, size_t i) {
    static const char *const shorts[] = {"doesn't", "don't", "won't", "doesnt", "dont", "wont", "isn't"};
    static const char *const pronouns[] = {"it", "they", "i", "we", "you", "that", "this", "he", "she"};
    const struct tokens *tokens = &r->note->tokens;
    bool last = i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE;
    if (!last || i == 0 || !AMONG(tokens, i, shorts) || tokens->at[i - 1].stop != STOP_NONE ||
        AMONG(tokens, i - 1, pronouns) || is_off(r, i) || fault_takes_any(r, i - 1, i + 1))
        return 0;
    bool does = false;
    for (size_t at = scope_sentence_start(&r->scope, i); at + 1 < i; at++) does |= function_does(tokens, at);
    if (!does) return 0;
    bool part = (function_kind(r, i - 1) || r->part[i - 1]) && r->note->taken[i - 1] != TAKEN_TYPE;
    tell(r, partly, part ? i - 1 : i, i, i + 1);
    return 1;
}

void read_undone(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    const struct flaw *partly = ruleset_flaw(r->note->rules, "partly-working");
    bool can = running_can(r->note);
    for (size_t i = 0; partly && i < tokens->count; i++) {
        if (tokens->at[i].kind != TOKEN_WORD) continue;
        size_t n = read_denied(r, partly, i);
        if (!n) n = read_badly(r, partly, i);
        if (!n && token_is(tokens, i, "too")) n = read_too_easy(r, i);
        if (!n && can) n = read_cut_short(r, partly, i);
        size_t done_at =
            !n && can && token_is(tokens, i, "nothing") ? token_longest(tokens, i + 1, done, COUNT(done)) : 0;
        if (done_at && !is_off(r, i) && !fault_takes_any(r, i, i + 1 + done_at)) {
            tell(r, partly, i, i, i + 1 + done_at);
            n = done_at;
        }
        if (n) i += n - 1;
    }
}
