// SPDX-License-Identifier: MIT
// What was not looked at, where no rule has a word for it: "the motor or the gearbox", "whether all the keys
// work", "if it holds air". Each area of a list stands alone, without the words that only lead to it.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool leads(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "the",    "a",        "an",      "it",      "its",       "it's",   "any",        "for",       "of",
        "them",   "if",       "whether", "that",    "this",      "those",  "about",      "out",       "em",
        "they",   "they're",  "there",   "there's", "is",        "are",    "all",        "every",     "you",
        "can",    "still",    "be",      "has",     "these",     "his",    "her",        "my",        "their",
        "on",     "either",   "each",    "at",      "into",      "both",   "to",         "there",     "will",
        "would",  "actually", "really",  "how",     "been",      "well",   "good",       "far",       "how's",
        "also",   "isn't",    "doesn't", "in",      "inside of", "under",  "underneath", "condition", "state",
        "behind", "starting", "using",   "running", "i've",      "through"};
    return token_among(tokens, i, words, COUNT(words));
}

static bool parts_list(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"and", "or", "nor", "&", "plus"};
    return tokens->at[i].stop == STOP_COMMA || token_among(tokens, i, words, COUNT(words));
}

static bool ends_area(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "because",   "so",       "as",    "since",   "but",        "when",   "until", "without",  "though",
        "myself",    "here",     "yet",   "closely", "thoroughly", "either", "with",  "properly", "anymore",
        "at all",    "work",     "works", "working", "is",         "are",    "runs",  "run",      "still",
        "functions", "function", "goes",  "i",       "before",     "while",  "due",   "function", "where",
        "which",     "that",     "was",   "were",    "would",      "will",   "sorry", "if"};
    return tokens->at[i].stop != STOP_NONE || token_among(tokens, i, words, COUNT(words));
}

// What a thing is, and whose it was, are no areas of its condition.
static bool is_identity(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "what",   "who",    "which",   "where",   "when",       "old",    "why",
        "much",   "make",   "maker",   "what's",  "whats",      "whos",   "many",
        "whose",  "model",  "age",     "brand",   "value",      "worth",  "history",
        "artist", "date",   "year",    "origin",  "provenance", "author", "manufacturer",
        "cause",  "reason", "mileage", "pattern", "vintage",    "price"};
    return token_among(tokens, i, words, COUNT(words));
}

static bool is_vain(const struct tokens *tokens, size_t from, size_t to) {
    static const char *const words[] = {
        "anywhere",   "otherwise", "obviously", "sadly", "unfortunately", "sorry", "further", "properly",
        "yet",        "it",        "more",      "fully", "work",          "works", "myself",  "anything",
        "everything", "one",       "ones",      "thing", "too",           "rest",  "others",  "all",
        "either",     "now",       "today",     "right", "closely",       "this",  "item",    "works"};
    return from + 1 == to && token_among(tokens, from, words, COUNT(words));
}

// "Haven't tried to run it", "not dared light them": told as untested already.
static bool is_of_trial(const struct fault_reader *r, size_t from, size_t to) {
    static const char *const verbs[] = {
        "run",  "start", "wind", "power", "light", "fire", "play", "switch",  "use", "work",   "plug",
        "turn", "get",   "set",  "make",  "crank", "try",  "test", "operate", "fly", "launch", "sail"};
    const struct tokens *tokens = &r->note->tokens;
    if (to > from + 3 || to < from + 2 || !token_among(tokens, from, verbs, COUNT(verbs)) ||
        !ANY(tokens, from + 1, "it", "them", "either", "this", "one"))
        return false;
    for (size_t i = 0; i < r->note->record->flaw_count; i++)
        if (text_same(r->note->record->flaws[i].kind->rule.id, "untested")) return true;
    return false;
}

// "Didn't count the pieces" is told as that already.
static bool is_of_count(const struct fault_reader *r, size_t from, size_t to) {
    static const char *const words[] = {"pieces", "cards", "parts", "bits", "them", "number", "total"};
    bool all = from + 1 == to && token_among(&r->note->tokens, from, words, COUNT(words));
    for (size_t i = 0; i < r->note->record->flaw_count; i++) {
        const struct item_flaw *flaw = &r->note->record->flaws[i];
        if (!text_same(flaw->kind->rule.id, "completeness-unknown")) continue;
        if (all || (flaw->part && text_same(flaw->part, note_words(r->note, from, to)))) return true;
    }
    return false;
}

// "How long it runs", "how hot it gets" stays whole.
static bool asks_measure(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"long", "hot", "fast", "loud", "often", "bright", "deep", "strong"};
    return token_is(tokens, i, "how") && (token_among(tokens, i + 1, words, COUNT(words)) ||
                                          ANY(tokens, i + 2, "it", "they")); // "how accurate it is"
}

// "If it's been lit in years", "whether they weigh true": the token of the pronoun, where the clause speaks
// of the thing itself; `to` where it does not.
static size_t clause_of_it(const struct tokens *tokens, size_t from, size_t to) {
    size_t at = from;
    while (at < to && ANY(tokens, at, "if", "whether")) at++;
    bool it = at < to && ANY(tokens, at, "it", "it's", "they", "they're");
    bool asked = at > 0 && ANY(tokens, at - 1, "if", "whether");
    return it && asked && at + 1 < to ? at : to;
}

// "Couldn't check against a list": whether all of it is there.
static bool tell_uncollated(struct fault_reader *r, size_t from, size_t to) {
    static const char *const lists[] = {"list",    "anything", "picture", "catalogue", "catalog",
                                        "rules",   "lid",      "index",   "contents",  "inventory",
                                        "leaflet", "sheet",    "box",     "another",   "bibliography"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = from;
    while (at < to && !token_is(tokens, at, "against")) at++;
    bool list = false;
    for (size_t k = at; k < to; k++) list |= token_among(tokens, k, lists, COUNT(lists));
    const struct flaw *kind = list ? ruleset_flaw(r->note->rules, "completeness-unknown") : NULL;
    static const char *const wholes[] = {"all",   "complete", "pages", "leaves",    "pieces",
                                         "cards", "plates",   "parts", "everything"};
    bool whole = false;
    for (size_t k = scope_sentence_start(&r->scope, from); kind && k < to; k++)
        whole |= token_among(tokens, k, wholes, COUNT(wholes));
    if (!whole) return false;
    for (size_t i = 0; i < r->note->record->flaw_count; i++)
        if (r->note->record->flaws[i].kind == kind) return true;
    fault_add(r, kind, NULL, NULL, at, to);
    return true;
}

static void add_area(struct fault_reader *r, size_t from, size_t to) {
    enum { WORDS_MOST = 5 };
    struct note *note = r->note;
    const struct tokens *tokens = &note->tokens;
    size_t stated = to;
    size_t how = from, stated_from = from, clause = clause_of_it(tokens, from, to);
    while (how < to && leads(tokens, how) && !asks_measure(tokens, how)) how++;
    bool measure = asks_measure(tokens, how);
    while (from < to && leads(tokens, from) && !measure) from++;
    if (measure) from = how;
    static const char *const places[] = {"underneath", "behind"};
    if (from == to && from > stated_from && token_among(tokens, to - 1, places, COUNT(places))) from--;
    if (from > stated_from && token_is(tokens, from - 1, "the") && ANY(tokens, from + 1, "it", "they"))
        from--; // "the time it keeps"
    if (to > from + WORDS_MOST) to = from + WORDS_MOST;
    for (size_t k = to; k-- > from + 1 && !measure;)
        if (ends_area(tokens, k)) to = k;
    for (size_t k = from; k < stated; k++)
        if (r->scope.fault[k] && !r->part[k]) return;
    if (from + 1 == to && from > stated_from && token_is(tokens, from, "one") &&
        token_is(tokens, from - 1, "every"))
        from--; // "through every one"
    if (from >= to || is_vain(tokens, from, to) || is_of_count(r, from, to) || is_of_trial(r, from, to) ||
        is_identity(tokens, from))
        return;
    static const char *const means[] = {
        "with", "without", "since", "because", "until", "by",      "between",
        "from", "today",   "due",   "got",     "came",  "happened"}; // "how it got the dent"
    if (token_among(tokens, from, means, COUNT(means))) return;      // "not tried it with water"
    if (tell_uncollated(r, from, to)) return;
    if (ANY(tokens, from, "fault", "complaint", "criticism", "weakness", "flaw", "problem", "niggle",
            "quibble"))
        return; // "if there's a fault it's the zip"
    if (note->taken[from] == TAKEN_TYPE && from + 1 == to) return;
    size_t cue =
        r->scope.cue[from]; // "the plumber couldn't get at his tap": of a story, and not the seller's
    if (cue > 0 && cue < from && note->taken[cue] == TAKEN_ASIDE && note->taken[from] == TAKEN_ASIDE &&
        tokens->at[cue - 1].stop == STOP_NONE && !ANY(tokens, cue - 1, "i", "we", "you", "and", "so", "but"))
        return;
    for (size_t k = from; k < to; k++)
        if (note->taken[k] == TAKEN_FLAW || note->taken[k] == TAKEN_PART ||
            note->tokens.at[k].kind == TOKEN_SIGN)
            return;
    const char *words = fault_words(note, clause < from ? clause : from, to);
    note_unchecked(note, clause < from ? arena_format(note->arena, "whether %s", words) : words);
    note_take(note, from, to, TAKEN_SCOPE);
    note_reading(note, from, to, "unchecked area", "not looked at");
    enum { CUE_MOST = 6 };
    for (size_t k = r->scope.cue[from]; k < from && from - k <= CUE_MOST; k++) // "can't say if"
        if (note->taken[k] == TAKEN_NOT && tokens->at[k].kind == TOKEN_WORD)
            note_take(note, k, k + 1, TAKEN_SCOPE);
}

static bool has_area(const struct fault_reader *r, size_t from, size_t to) {
    for (size_t k = from; k < to; k++)
        if (!leads(&r->note->tokens, k)) return true;
    return false;
}

// "All there", "everything is there", "complete": not a place but whether any of it is missing.
static bool asks_complete(const struct fault_reader *r, size_t from, size_t to) {
    static const char *const words[] = {"all there",
                                        "all present",
                                        "all in there",
                                        "everything is there",
                                        "complete",
                                        "all here",
                                        "everything there",
                                        "everything's there",
                                        "full set",
                                        "whole set",
                                        "all of it",
                                        "all of them are there",
                                        "anything missing",
                                        "anything is missing",
                                        "bits missing",
                                        "pieces missing",
                                        "missing pieces",
                                        "are all in",
                                        "all the pieces",
                                        "all the bits",
                                        "everything it should",
                                        "every piece"};
    for (size_t i = from; i < to; i++)
        for (size_t k = 0; k < COUNT(words); k++) {
            size_t n = token_phrase(&r->note->tokens, i, words[k]);
            if (n && i + n <= to) return true;
        }
    return false;
}

// "The seams, the zip or the pegs": the comma goes on to an "or" of the same list.
static bool list_goes_on(const struct fault_reader *r, size_t comma, size_t end) {
    enum { WORDS_MOST = 4 };
    size_t words = 0;
    for (size_t i = comma + 1; i < end; i++) {
        if (ANY(&r->note->tokens, i, "or", "and", "nor")) return true;
        words = r->note->tokens.at[i].stop == STOP_COMMA ? 0 : words + 1;
        if (words > WORDS_MOST) return false;
    }
    return false;
}

// "What it's like inside": asks for no name.
static size_t likeness_at(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"what it's like",
                                        "what its like",
                                        "what it is like",
                                        "what it looks like",
                                        "what state",
                                        "what condition",
                                        "what they're like",
                                        "what's going on",
                                        "what's",
                                        "what is",
                                        "whats",
                                        "what it looks like",
                                        "what lies"};
    static const char *const places[] = {"inside",  "underneath", "behind", "under",
                                         "beneath", "within",     "in"};
    size_t n = 0;
    for (size_t k = 0; k < COUNT(words); k++) {
        size_t size = token_phrase(tokens, i, words[k]);
        if (size > n) n = size;
    }
    bool bare = n && n < 3 && !token_is(tokens, i + 1, "condition") && !token_is(tokens, i + 1, "state");
    return bare && !token_among(tokens, i + n, places, COUNT(places)) ? 0 : n; // "what it is"
}

// "Can't say what the back's like", "no idea what the seams are like": of a part that is named.
static void read_likeness(struct fault_reader *r, size_t i) {
    static const char *const heads[] = {"say", "tell", "know",  "idea", "clue",
                                        "you", "sure", "knows", "see",  "check"};
    enum { WORDS_MOST = 5 };
    const struct tokens *tokens = &r->note->tokens;
    if (!token_is(tokens, i, "what") || i == 0 || !token_among(tokens, i - 1, heads, COUNT(heads)) ||
        !ANY(tokens, i + 1, "the", "its", "their", "my", "his"))
        return;
    size_t from = i + 2, to = from;
    while (to < from + WORDS_MOST && to < tokens->count && tokens->at[to].kind == TOKEN_WORD &&
           !token_is(tokens, to, "like"))
        to++;
    if (to == from || !token_is(tokens, to, "like")) return;
    if (to > from + 1 && ANY(tokens, to - 1, "is", "are", "look", "looks", "was", "were")) to--;
    const char *words = fault_words(r->note, from, to);
    size_t size = strlen(words);
    if (size > 2 && (text_same(words + size - 2, "'s"))) size -= 2;
    note_unchecked(r->note, arena_format(r->note->arena, "%.*s", (int)size, words));
    note_reading(r->note, from, to, "unchecked area", "not looked at");
}

void read_areas(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 1; i < tokens->count; i++) read_likeness(r, i);
    for (size_t i = 0; i < tokens->count; i++) {
        if (!(r->scope.stance[i] & STANCE_UNKNOWN)) continue;
        i += likeness_at(tokens, i);
        size_t end = i, from = i;
        bool fault = false, told = false,
             identity = is_identity(tokens, i) ||
                        (i > 0 && is_identity(tokens, i - 1) && !likeness_at(tokens, i - 1));
        while (end < tokens->count && (r->scope.stance[end] & STANCE_UNKNOWN)) fault |= r->scope.fault[end++];
        if (!fault && asks_complete(r, i, end)) {
            const struct flaw *kind = ruleset_flaw(r->note->rules, "completeness-unknown");
            if (kind) fault_add(r, kind, NULL, NULL, i, end);
            told = true;
        }
        for (size_t at = i; at <= end && !told && !identity; at++) {
            if (at < end && !(parts_list(tokens, at) && has_area(r, from, at))) continue;
            add_area(r, from, at);
            if (at < end && tokens->at[at].stop == STOP_COMMA && !list_goes_on(r, at, end))
                break; // "not checked the seams, nice color": what follows is no list
            from = at + 1;
        }
        i = end > i ? end - 1 : i;
    }
}

static bool is_any(const char *id, const char *const *ids, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (text_same(id, ids[i])) return true;
    return false;
}

bool unknown_is_own(const struct flaw *kind) {
    static const char *const own[] = {"untested", "completeness-unknown", "inside-not-inspected",
                                      "timekeeping-unverified", "impact-history-unknown"};
    return is_any(kind->rule.id, own, COUNT(own));
}

const struct flaw *unknown_kind(const struct fault_reader *r, const struct fault_hit *hit,
                                const struct flaw *kind) {
    static const struct {
        const char *known, *unknown;
    } pairs[] = {{"working-tested", "untested"}, {"complete-counted", "completeness-unknown"}};
    for (size_t i = hit->from; i < hit->to && text_same(kind->rule.id, pairs[0].known); i++)
        if (token_is(&r->note->tokens, i, "time"))
            return ruleset_flaw(r->note->rules, "timekeeping-unverified");
    for (size_t i = 0; i < COUNT(pairs); i++)
        if (text_same(kind->rule.id, pairs[i].known)) return ruleset_flaw(r->note->rules, pairs[i].unknown);
    return unknown_is_own(kind) ? kind : NULL;
}
