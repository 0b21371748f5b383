// SPDX-License-Identifier: MIT
// "Low and medium light up but high does not", "AM comes in but not FM": of the settings, speeds or burners
// of one thing some do their work and some do not, so it works in part.
#include "notes/any.h"
#include "notes/faults.h"
#include "notes/number.h"
#include "notes/traces.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

// What one thing can be set to, or has more than one of.
static const char *const ways[] = {
    "low",     "medium", "med",       "high",   "slow",     "fast",   "am",     "fm",       "hot",
    "cold",    "warm",   "cool",      "first",  "second",   "third",  "fourth", "forward",  "reverse",
    "left",    "right",  "front",     "rear",   "top",      "bottom", "upper",  "lower",    "middle",
    "bright",  "dim",    "shortwave", "stir",   "mix",      "whip",   "beat",   "chop",     "blend",
    "liquefy", "puree",  "radio",     "tape",   "cassette", "phono",  "record", "rewind",   "wash",
    "spin",    "broil",  "bake",      "steam",  "dry",      "inner",  "outer",  "one",      "other",
    "others",  "back",   "uv",        "stereo", "battery",  "mains",  "zigzag", "straight", "heat",
    "fan",     "light",  "alarm",     "chime",  "strike",   "full",   "half"};

static const char *const works[] = {"works", "work",  "light",  "lights", "comes",  "come",   "runs",  "run",
                                    "blows", "blow",  "heats",  "heat",   "plays",  "play",   "spins", "goes",
                                    "go",    "do",    "does",   "burn",   "burns",  "turn",   "turns", "glow",
                                    "glows", "sew",   "sews",   "worked", "heated", "stayed", "get",   "gets",
                                    "fire",  "fires", "sounds", "sews"};

static const char *const nots[] = {"doesn't", "don't", "won't", "didn't", "does", "do", "will", "did"};

static bool is_way(const struct tokens *tokens, size_t i) {
    return AMONG(tokens, i, ways) || (i < tokens->count && tokens->at[i].kind == TOKEN_FIGURE);
}

// Does something in [from, to) name a way and say that it works?
static bool some_work(const struct fault_reader *r, size_t from, size_t to) {
    const struct tokens *tokens = &r->note->tokens;
    bool way = false, does = false;
    for (size_t i = from; i < to; i++) {
        if (ANY(tokens, i, "not", "no", "nothing", "neither", "never") || r->scope.stance[i] & STANCE_DENIED)
            return false;
        size_t taken = 0;
        way |= is_way(tokens, i) || number_whole(tokens, i, &taken) > 0;
        does |= AMONG(tokens, i, works);
    }
    return way && does;
}

// Behind the way at `i`: "does not", "doesn't", "is dead", each at the end of its clause; the token after it,
// or 0.
static size_t idle_behind(const struct tokens *tokens, size_t i) {
    size_t at = i + 1;
    while (at < tokens->count &&
           ANY(tokens, at, "one", "speed", "setting", "burner", "side", "band", "heat", "ones"))
        at++;
    if (at >= tokens->count || tokens->at[at - 1].stop != STOP_NONE) return 0;
    if (AMONG(tokens, at, nots)) {
        at++;
        size_t last = at - 1;
        if (token_is(tokens, at, "not") && tokens->at[last].stop == STOP_NONE)
            at++;
        else if (ANY(tokens, last, "does", "do", "will", "did"))
            return 0;
        if (at < tokens->count && tokens->at[at - 1].stop == STOP_NONE &&
            ANY(tokens, at, "work", "light", "come", "go", "heat", "run", "play"))
            at++;
        if (at < tokens->count && tokens->at[at - 1].stop == STOP_NONE &&
            ANY(tokens, at, "on", "up", "in", "at"))
            at++;
    } else if (ANY(tokens, at, "is", "are") && ANY(tokens, at + 1, "dead")) {
        at += 2;
    } else {
        return 0;
    }
    return at >= tokens->count || tokens->at[at].stop != STOP_NONE ||
                   ANY(tokens, at, "and", "but", "so", "any", "anymore")
               ? at
               : 0;
}

static bool is_told(const struct fault_reader *r, size_t from, size_t to) {
    const struct tokens *tokens = &r->note->tokens;
    const struct record *record = r->note->record;
    for (size_t i = 0; i < record->flaw_count; i++) {
        const struct item_flaw *flaw = &record->flaws[i];
        const char *id = flaw->kind->rule.id;
        if (flaw->span.from >= tokens->at[from].from && flaw->span.to <= tokens->at[to - 1].to &&
            (text_same(id, "partly-working") || text_same(id, "not-working")))
            return true;
    }
    return false;
}

void read_some_ways(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    const struct flaw *kind = ruleset_flaw(r->note->rules, "partly-working");
    for (size_t i = 1; kind && i < tokens->count; i++) {
        if (!is_way(tokens, i) || r->note->taken[i] == TAKEN_ASIDE) continue;
        size_t lead = i - (ANY(tokens, i - 1, "the", "on") && i > 1), to = 0;
        if (token_is(tokens, lead - 1, "not") && lead > 1 && ANY(tokens, lead - 2, "but", ",", "and")) {
            to = i + 1; // "low works but not high"
            while (to < tokens->count && ANY(tokens, to, "speed", "setting", "one", "burner")) to++;
            if (to < tokens->count && tokens->at[to].stop == STOP_NONE && !ANY(tokens, to, "and", "or"))
                continue;
            lead--;
        } else {
            to = idle_behind(tokens, i);
        }
        if (!to) continue;
        size_t from = scope_sentence_start(&r->scope, i);
        if (!some_work(r, from, lead) || is_told(r, from, to)) continue;
        fault_add(r, kind, NULL, NULL, from, to);
        part_close(r, from, to);
    }
}
