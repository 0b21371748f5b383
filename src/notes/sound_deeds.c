// SPDX-License-Identifier: MIT
// A part that does what it is for: "popper works", "shutter fires at every speed", "wick goes up and down",
// "valves return every time". It denies that it is stuck or does not hold, of that part alone; what a machine
// does by it is not tried.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_kind(const struct flaw *kind, const char *id) {
    return kind && text_same(kind->rule.id, id);
}

// How many tokens from `i` say that a part of `kind` does its work.
static size_t deed_at(const struct tokens *tokens, size_t i, const struct flaw *kind) {
    static const char *const works[] = {"works", "work", "in working order", "still works", "still work"};
    static const char *const holds[] = {"closes",      "close",      "latches",
                                        "latch",       "locks",      "lock",
                                        "snaps",       "snap",       "fasten",
                                        "fastens",     "clicks",     "click",
                                        "catches",     "does up",    "do up",
                                        "holds",       "hold",       "opens and closes",
                                        "clicks shut", "snaps shut", "locks and unlocks",
                                        "clips shut",  "engages",    "shuts",
                                        "shut"};
    static const char *const moves[] = {"fires",
                                        "fire",
                                        "returns",
                                        "return",
                                        "returns every time",
                                        "return every time",
                                        "come back up",
                                        "comes back up",
                                        "spring back",
                                        "springs back",
                                        "goes up and down",
                                        "go up and down",
                                        "goes in and out",
                                        "go in and out",
                                        "winds up and down",
                                        "wind up and down",
                                        "winds in and out",
                                        "turns up and down",
                                        "turn up and down",
                                        "racks in and out",
                                        "opens and closes",
                                        "open and close",
                                        "opens and shuts",
                                        "open and shut",
                                        "winds",
                                        "wind",
                                        "moves",
                                        "move",
                                        "slides",
                                        "slide",
                                        "runs",
                                        "run",
                                        "runs in and out",
                                        "run in and out",
                                        "slides in and out",
                                        "pulls",
                                        "pull",
                                        "pulls out",
                                        "pull out",
                                        "swings",
                                        "swing",
                                        "swivels",
                                        "swivel",
                                        "rotates",
                                        "rotate",
                                        "turns",
                                        "turn",
                                        "turns up",
                                        "turn up",
                                        "goes round",
                                        "go round",
                                        "go down and come up",
                                        "goes down and springs back",
                                        "goes down and comes back up",
                                        "goes down and comes up",
                                        "moves and springs back",
                                        "moves and returns",
                                        "turns both ways",
                                        "turn both ways",
                                        "works both ways"};
    if (is_kind(kind, "seized")) {
        size_t n = token_longest(tokens, i, moves, COUNT(moves));
        return n ? n : token_longest(tokens, i, works, COUNT(works));
    }
    size_t n = token_longest(tokens, i, holds, COUNT(holds));
    return n ? n : token_longest(tokens, i, works, COUNT(works));
}

// "With a good click", "with a snap you can hear".
static size_t with_click(const struct tokens *tokens, size_t i) {
    static const char *const goods[] = {"good",  "nice",  "satisfying", "proper",   "firm",
                                        "loud",  "solid", "sharp",      "positive", "healthy",
                                        "crisp", "real",  "lovely",     "sure"};
    size_t at = i + 2;
    if (!token_phrase(tokens, i, "with a")) return 0;
    if (token_among(tokens, at, goods, COUNT(goods))) at++;
    if (!ANY(tokens, at, "click", "snap", "clunk", "thunk", "clack", "thud", "clonk")) return 0;
    at++;
    return at - i + (token_phrase(tokens, at, "you can hear") ? 3 : 0);
}

// What may follow without taking it back.
static size_t manner_end(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"fine",
                                        "well",
                                        "ok",
                                        "okay",
                                        "properly",
                                        "perfectly",
                                        "both ways",
                                        "every time",
                                        "as it should",
                                        "as they should",
                                        "freely",
                                        "smoothly",
                                        "nicely",
                                        "sweetly",
                                        "all right",
                                        "tight",
                                        "firmly",
                                        "easily",
                                        "all the way",
                                        "no problem",
                                        "its full height",
                                        "first time",
                                        "on its key",
                                        "with its key",
                                        "with the key",
                                        "at every speed",
                                        "at all speeds",
                                        "on every speed",
                                        "at both speeds",
                                        "end to end",
                                        "from end to end",
                                        "free",
                                        "in both directions",
                                        "in its track",
                                        "in and out",
                                        "right round",
                                        "all the way round",
                                        "by hand",
                                        "up and down",
                                        "without sticking",
                                        "and stop"};
    size_t n;
    while ((n = token_longest(tokens, i, words, COUNT(words))) > 0 || (n = with_click(tokens, i)) > 0) i += n;
    return i;
}

static bool ends(const struct tokens *tokens, size_t i) {
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE ||
           ANY(tokens, i, "and", "no", "so", "too", "as");
}

static bool is_taken_back(const struct tokens *tokens, size_t i) {
    size_t at = i < tokens->count && tokens->at[i].stop == STOP_COMMA ? i + 1 : i;
    if (ANY(tokens, at, "the") &&
        ANY(tokens, at + 1, "other", "others", "third", "fourth", "fifth", "last", "rest"))
        return true; // "two catches work, the third is bent"
    return ANY(tokens, at, "but", "except", "bar", "only", "just", "though", "when", "if", "slow", "slowly",
               "stiffly", "until", "apart", "?", "sort", "mostly", "most", "sometimes", "some", "eventually",
               "with", "after");
}

static bool is_governed(const struct fault_reader *r, size_t from, size_t to) {
    static const uint16_t mask = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_PAST | STANCE_UNKNOWN |
                                 STANCE_WITHDRAWN | STANCE_OTHER | STANCE_PLANNED | STANCE_DOUBT |
                                 STANCE_LIMITED | STANCE_HEARD;
    for (size_t i = from; i < to; i++)
        if ((r->scope.stance[i] & mask) || r->note->taken[i] == TAKEN_MARK ||
            r->note->taken[i] == TAKEN_ASIDE)
            return true;
    return false;
}

static bool is_told(const struct fault_reader *r, const struct flaw *kind, const char *part) {
    for (size_t i = 0; i < r->note->record->flaw_count; i++) {
        const struct item_flaw *flaw = &r->note->record->flaws[i];
        if (flaw->kind == kind && (!flaw->part || !part || text_same(flaw->part, part))) return true;
    }
    for (size_t i = 0; i < r->note->record->clear_count; i++) {
        const struct item_clear *clear = &r->note->record->clear[i];
        if (clear->kind == kind && clear->part && text_same(clear->part, part)) return true;
    }
    return false;
}

// The subject opens its clause, behind articles and words of number alone.
static bool opens(const struct fault_reader *r, size_t i, size_t *from) {
    static const char *const small[] = {"the",   "its",  "both", "all",   "every", "each", "and",
                                        "also",  "two",  "four", "three", "still", "with", "main",
                                        "front", "back", "left", "right", "top"};
    const struct tokens *tokens = &r->note->tokens;
    *from = i;
    while (*from > 0 && tokens->at[*from - 1].stop == STOP_NONE && r->part[*from - 1] &&
           r->note->taken[*from - 1] != TAKEN_TYPE && !r->scope.fault[*from - 1])
        --*from;
    size_t at = *from;
    while (at > 0 && tokens->at[at - 1].stop == STOP_NONE && token_among(tokens, at - 1, small, COUNT(small)))
        at--;
    return at == 0 || tokens->at[at - 1].stop != STOP_NONE;
}

static size_t read_one(struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    static const char *const firsts[] = {
        "works",  "work",  "in",     "still",   "closes",  "close", "latches", "latch",  "locks",   "lock",
        "snaps",  "snap",  "fasten", "fastens", "clicks",  "click", "catches", "does",   "do",      "holds",
        "hold",   "opens", "open",   "shuts",   "shut",    "clips", "engages", "fires",  "fire",    "returns",
        "return", "come",  "comes",  "spring",  "springs", "goes",  "go",      "winds",  "wind",    "turns",
        "turn",   "racks", "all",    "both",    "each",    "also",  "moves",   "move",   "slides",  "slide",
        "runs",   "run",   "pulls",  "pull",    "swings",  "swing", "swivels", "swivel", "rotates", "rotate"};
    if (!token_among(tokens, i + 1, firsts, COUNT(firsts)))
        return 0; // most words are followed by none of these
    const struct flaw *kind = function_kind(r, i);
    static const char *const movers[] = {"wick",   "wicks",   "rack",    "fence", "flap", "valves",
                                         "sheave", "sheaves", "bars",    "stage", "draw", "draws",
                                         "arm",    "arms",    "rollers", "gears"};
    static const char *const spun[] = {"reel",   "reels",   "turntable",
                                       "button", "buttons", "deck"}; // moved, not tried
    if ((!kind && token_among(tokens, i, movers, COUNT(movers))) ||
        (is_kind(kind, "partly-working") && token_among(tokens, i, spun, COUNT(spun)) &&
         !ANY(tokens, i + 1, "works", "work")))
        kind = ruleset_flaw(r->note->rules, "seized");
    const struct family *family = r->note->record->family;
    if (!kind && ANY(tokens, i, "frame") && family && text_same(family->rule.id, "bags"))
        kind = ruleset_flaw(r->note->rules, "clasp-fault"); // of a purse
    if (!is_kind(kind, "seized") && !is_kind(kind, "clasp-fault") && !is_kind(kind, "zip-fault")) return 0;
    size_t at = i + 1, from;
    while (ANY(tokens, at, "all", "both", "still", "each", "also")) at++;
    size_t n = deed_at(tokens, at, kind), to = n ? manner_end(tokens, at + n) : 0;
    if (!n || !ends(tokens, to) || is_taken_back(tokens, to) || is_governed(r, i, to) ||
        !opens(r, i, &from) || r->note->taken[i] == TAKEN_TYPE || r->note->taken[i] == TAKEN_FLAW)
        return 0;
    const char *part = fault_place(r->note, from, i + 1);
    if (is_told(r, kind, part)) return 0;
    clear_add(r, kind, part, NULL, false, from, to);
    return to;
}

// "Handle has a split but it's tight on the tang": the part that the fault before is said of.
static bool read_but_firm(struct fault_reader *r, size_t i) {
    static const char *const firm[] = {"tight", "firm", "solid", "secure", "rock solid"};
    static const char *const links[] = {"it's", "it",    "is",  "they're", "they",
                                        "are",  "still", "all", "both",    "feels"};
    const struct tokens *tokens = &r->note->tokens;
    if (!ANY(tokens, i, "but", "though") || i == 0) return false;
    size_t at = i + 1, end = tokens->at[i - 1].stop == STOP_COMMA ? i - 1 : i;
    while (token_among(tokens, at, links, COUNT(links))) at++;
    size_t n = token_longest(tokens, at, firm, COUNT(firm)), to = at + n;
    bool held = ANY(tokens, to, "on", "in", "to", "at") && ANY(tokens, to + 1, "the", "its") &&
                (to + 3 >= tokens->count || tokens->at[to + 3].stop != STOP_NONE);
    const struct flaw *kind = ruleset_flaw(r->note->rules, "loose-part");
    if (!n || !kind || (!held && to < tokens->count && tokens->at[to].stop == STOP_NONE) ||
        is_governed(r, at, to))
        return false;
    for (size_t h = 0; h < r->hit_count; h++) {
        if (r->hits[h].to != end || r->hits[h].kinds[0]->form != FAULT) continue;
        struct spot spot = spot_found(r, &r->hits[h]);
        const char *part = fault_place(r->note, spot.part_from, spot.part_to);
        if (!part || r->note->taken[spot.part_to - 1] == TAKEN_TYPE || is_told(r, kind, part)) return false;
        clear_add(r, kind, part, NULL, false, at, to);
        return true;
    }
    return false;
}

void read_sound_deeds(struct fault_reader *r) {
    for (size_t i = 0; i + 1 < r->note->tokens.count; i++) {
        if (r->note->tokens.at[i].kind != TOKEN_WORD) continue;
        size_t to = read_but_firm(r, i) ? 0 : read_one(r, i);
        if (to) i = to - 1;
    }
}
