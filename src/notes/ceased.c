// SPDX-License-Identifier: MIT
// It worked and does so no more: "worked until we moved", "used to go, doesn't now", "was running last year,
// not any more". And the answer to whether it works: "Working? No.", "Tested: no".
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

static const char *const went[] = {
    "worked",      "ran",          "did go",        "did work",        "did run",       "was working",
    "was running", "was going",    "used to work",  "used to go",      "used to run",   "used to play",
    "went",        "used to tick", "used to light", "played",          "ticked",        "started",
    "would run",   "would go",     "has worked",    "used to come on", "used to start", "used to spin"};
static const char *const ends[] = {
    "not any more", "not anymore",     "not now",      "no longer",        "doesn't now",
    "isn't now",    "won't now",       "hasn't since", "not since",        "now it doesn't",
    "now it won't", "now doesn't",     "now won't",    "doesn't any more", "doesn't anymore",
    "nothing now",  "it doesn't now",  "it isn't now", "it won't now",     "now nothing",
    "but doesn't",  "but not today",   "now it isn't", "now it's not",     "now it does nothing",
    "no more",      "now it just sits"};
static const char *const untils[] = {"until", "till", "til", "up until", "up to when"};

static void tell(struct fault_reader *r, const char *id, size_t from, size_t to) {
    const struct flaw *kind = ruleset_flaw(r->note->rules, id);
    if (kind) fault_add(r, kind, NULL, NULL, from, to);
}

// "Ran it until dusk": who used it stopped, and not the thing.
static bool is_of_thing(const struct fault_reader *r, size_t i, size_t n) {
    static const char *const objects[] = {"it", "the", "this", "them", "a", "on", "for", "with", "in"};
    static const char *const people[] = {"i", "he", "she", "we", "they", "who", "dad", "mum"};
    const struct tokens *tokens = &r->note->tokens;
    bool did = i > 0 && AMONG(tokens, i - 1, people);
    static const char *const bare[] = {"went", "played", "started", "ticked", "ran", "would go"};
    static const char *const well[] = {"until", "till", "til",       "fine",   "well",
                                       "ok",    "okay", "perfectly", "lovely", "great",
                                       "good",  "last", "once",      "for",    "beautifully"};
    if (token_longest(tokens, i, bare, COUNT(bare)) && !AMONG(tokens, i + n, well)) return false;
    return !did && !(n == 1 && AMONG(tokens, i + n, objects) && !token_is(tokens, i, "worked"));
}

static bool read_once(struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    size_t n = token_longest(tokens, i, went, COUNT(went));
    if (!n || !is_of_thing(r, i, n)) return false;
    if (r->scope.stance[i] & (STANCE_WITHDRAWN | STANCE_OTHER | STANCE_UNKNOWN)) return false;
    static const char *const mends[] = {"fixed", "replaced", "changed", "repaired", "again", "put", "fitted"};
    size_t end = scope_sentence_end(&r->scope, i), over = 0;
    for (size_t at = i + n; at < end; at++) {
        if (AMONG(tokens, at, mends)) return false;
        size_t found = token_longest(tokens, at, ends, COUNT(ends));
        if (!found) found = token_longest(tokens, at, untils, COUNT(untils));
        if (found && !over) over = at + found;
    }
    if (!over) return false;
    tell(r, "not-working", i, over);
    return true;
}

// "Works? No.", "Tested: no", "Does it go? Yes".
static bool read_answer(struct fault_reader *r, size_t i) {
    static const char *const asked[] = {"work", "works", "working", "go",    "goes",
                                        "run",  "runs",  "play",    "plays", "working order"};
    static const char *const tried[] = {"tested", "tried"};
    static const char *const nos[] = {"no", "nope", "nah", "not", "n", "doesn't", "never"};
    static const char *const yeses[] = {"yes", "yep", "yup", "yeah", "y", "aye"};
    const struct tokens *tokens = &r->note->tokens;
    size_t n = token_longest(tokens, i, asked, COUNT(asked));
    bool test = !n && AMONG(tokens, i, tried);
    size_t at = i + (n ? n : 1);
    if ((!n && !test) || !(token_is(tokens, at, "?") || token_is(tokens, at, ":"))) return false;
    static const char *const unsure[] = {"don't know", "not sure",     "unknown",   "no idea",   "can't say",
                                         "dunno",      "couldn't say", "not by me", "who knows", "not yet"};
    size_t open = token_longest(tokens, at + 1, unsure, COUNT(unsure));
    if (open && !running_is_told(r->note->record)) {
        tell(r, "untested", i, at + 1 + open);
        return true;
    }
    bool no = AMONG(tokens, at + 1, nos), yes = AMONG(tokens, at + 1, yeses);
    bool last = at + 2 >= tokens->count || tokens->at[at + 2].stop != STOP_NONE;
    if ((!no && !yes) || !last) return false;
    struct record *record = r->note->record;
    struct note_span told = note_span_of(r->note, i, at + 2);
    size_t kept = 0;
    for (size_t k = 0; k < record->flaw_count; k++)
        if (record->flaws[k].span.from < told.from || record->flaws[k].span.to > told.to ||
            record->flaws[k].kind->class == CLASS_DAMAGE)
            record->flaws[kept++] = record->flaws[k];
    record->flaw_count = kept;
    if (running_is_told(record) && (test || yes)) return false;
    tell(r, no ? (test ? "untested" : "not-working") : "working-tested", i, at + 2);
    return true;
}

// "It don't go", "does not function", "wouldn't go when I tried it": the thing itself, and no more is said of
// it.
static bool read_dead(struct fault_reader *r, size_t i) {
    static const char *const cores[] = {"work", "working", "function", "functioning", "go",  "going",
                                        "run",  "running", "start",    "operate",     "play"};
    static const char *const more[] = {"when",   "any",       "anymore", "now",       "since",
                                       "and",    "at all",    "for me",  "so",        "though",
                                       "as far", "currently", "for now", "presently", "again"};
    static const char *const subjects[] = {"it", "she", "this", "they", "sadly", "unfortunately", "still"};
    static const char *const nots[] = {"ain't", "aint", "isnt", "didn't", "hasn't"};
    const struct tokens *tokens = &r->note->tokens;
    size_t n = function_denial(tokens, i);
    if (!n && AMONG(tokens, i, nots)) n = 1;
    if (!n || !AMONG(tokens, i + n, cores)) return false;
    if (ANY(tokens, i, "can't", "cannot", "cant") && ANY(tokens, i + n, "play", "operate"))
        return false; // "can't play so can't say": who sells it
    size_t to = i + n + 1;
    bool ends_here = to >= tokens->count || tokens->at[to].stop != STOP_NONE ||
                     token_longest(tokens, to, more, COUNT(more));
    bool thing = i == 0 || tokens->at[i - 1].stop != STOP_NONE || AMONG(tokens, i - 1, subjects) ||
                 r->note->taken[i - 1] == TAKEN_TYPE;
    if (!ends_here || !thing || r->note->taken[i] == TAKEN_ASIDE) return false;
    if (r->scope.stance[i] & (STANCE_UNKNOWN | STANCE_OTHER | STANCE_WITHDRAWN | STANCE_DOUBT)) return false;
    tell(r, "not-working", i, to);
    return true;
}

// "It may work", "might be working": nobody tried it.
static bool read_may(struct fault_reader *r, size_t i) {
    static const char *const mays[] = {"it may",   "it might",   "it could",
                                       "may well", "might well", "could well"};
    static const char *const cores[] = {"work", "be working", "go", "run", "still work", "be fine", "be ok"};
    const struct tokens *tokens = &r->note->tokens;
    size_t n = token_longest(tokens, i, mays, COUNT(mays));
    size_t core = n ? token_longest(tokens, i + n, cores, COUNT(cores)) : 0, to = i + n + core;
    if (!core || (to < tokens->count && tokens->at[to].stop == STOP_NONE)) return false;
    tell(r, "untested", i, to);
    return true;
}

void read_ceased(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    if (!running_can(r->note)) return;
    for (size_t i = 0; i < tokens->count; i++) {
        if (tokens->at[i].kind != TOKEN_WORD) continue;
        if (read_answer(r, i)) return;
        if (running_is_told(r->note->record)) continue;
        if (read_once(r, i) || read_dead(r, i) || read_may(r, i)) return;
    }
}
