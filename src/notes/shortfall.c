// SPDX-License-Identifier: MIT
// How many should be there and how many are: "should be seven weights, there's six", "two knobs, should be
// three", "27 of the 28 are here", "nine pegs and the bag says ten". What lacks is missing, with its number.
#include "notes/faults.h"
#include "notes/things.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// Before the number that belongs to the whole.
static const char *const wholes[] = {"should be",
                                     "supposed to be",
                                     "meant to be",
                                     "ought to be",
                                     "should have been",
                                     "should have",
                                     "meant to have",
                                     "supposed to have",
                                     "used to be",
                                     "box says",
                                     "bag says",
                                     "label says",
                                     "lid says",
                                     "list says",
                                     "it says",
                                     "says there should be",
                                     "originally",
                                     "made for",
                                     "was",
                                     "were",
                                     "holds"};

struct amount {
    size_t at; // token of the number
    int value;
};

// The next number from `i` on, before `end`; its value is 0 if there is none.
static struct amount number_from(const struct fault_reader *r, size_t i, size_t end) {
    const struct tokens *tokens = &r->note->tokens;
    for (; i < end && i < tokens->count; i++) {
        int value = degrees_number(tokens, i);
        bool other = (token_is(tokens, i + 1, "of") && !token_is(tokens, i + 2, "them")) ||
                     r->note->taken[i] == TAKEN_MEASURE || r->note->taken[i] == TAKEN_MARK ||
                     r->note->taken[i] == TAKEN_ASIDE;
        if (value && !other) return (struct amount){i, value};
    }
    return (struct amount){end, 0};
}

// The noun behind a number: "six blue plates" to behind "plates"; empty where none stands there.
static size_t noun_behind(const struct fault_reader *r, size_t i, size_t *from) {
    enum { ADJECTIVES_MOST = 2 };
    const struct tokens *tokens = &r->note->tokens;
    struct noun_found noun;
    for (size_t at = i + 1; at < tokens->count && at <= i + 1 + ADJECTIVES_MOST; at++) {
        if (tokens->at[at].stop != STOP_NONE || r->scope.fault[at]) return 0;
        size_t parts = absent_part(r, at);
        *from = at;
        if (parts) return at + parts;
        if (noun_at(r->note, at, &noun)) return noun.to;
    }
    return 0;
}

static void tell_lack(struct fault_reader *r, const struct amount *whole, const struct amount *here,
                      size_t cue_from, size_t cue_to) {
    struct note *note = r->note;
    size_t from = 0, to = noun_behind(r, here->at, &from);
    if (!to) to = noun_behind(r, whole->at, &from);
    const char *part = to ? fault_words(note, from, to) : NULL;
    const struct flaw *kind = part ? absent_kind(note->arena, note->rules, part) : NULL,
                      *pieces = ruleset_flaw(note->rules, "missing-pieces");
    if (!kind || kind == ruleset_flaw(note->rules, "missing-accessory")) kind = pieces;
    if (!kind) return;
    struct item_flaw *flaw = fault_add(r, kind, kind == pieces ? NULL : part, NULL, cue_from, cue_to);
    flaw->count = whole->value - here->value;
    flaw->of = 0;
    note_take(note, here->at, here->at + 1, TAKEN_FLAW);
    note_take(note, whole->at, whole->at + 1, TAKEN_FLAW);
    if (to) note_take(note, from, to, TAKEN_PART);
}

static bool is_number_said(const struct tokens *tokens, size_t i) {
    static const char *const articles[] = {"a", "an", "the", "there"};
    size_t skip = token_among(tokens, i, articles, COUNT(articles)) ? 1 : 0;
    return degrees_number(tokens, i + skip) > 0;
}

// "Should be seven weights, there's six", "two knobs, should be three".
static void read_should(struct fault_reader *r, size_t i) {
    enum { FAR = 9 };
    const struct tokens *tokens = &r->note->tokens;
    size_t n = 0;
    for (size_t k = 0; k < COUNT(wholes) && !n; k++) n = token_phrase(tokens, i, wholes[k]);
    bool ends = tokens->count > i + n + 1 && tokens->at[i + n + 1].kind == TOKEN_SIGN;
    bool were = token_is(tokens, i, "was") || token_is(tokens, i, "were"); // "eleven, was a dozen"
    if (!n || !is_number_said(tokens, i + n) || (were && !ends && !token_is(tokens, i + n + 1, "dozen")))
        return;
    struct amount whole = number_from(r, i + n, i + n + 2), here = {0, 0};
    size_t start = i > FAR ? i - FAR : 0, sentence = scope_sentence_start(&r->scope, i);
    for (size_t at = start > sentence ? start : sentence; at < i; at++) {
        struct amount before = number_from(r, at, i);
        if (before.value) here = before;
    }
    if (!here.value || here.value >= whole.value) {
        struct amount behind = number_from(r, whole.at + 1, whole.at + FAR);
        if (behind.value) here = behind;
    }
    if (whole.value && here.value && here.value < whole.value) tell_lack(r, &whole, &here, i, i + n);
}

// "Only 27 of the 28 are here", "five of six left".
static void read_of(struct fault_reader *r, size_t i) {
    static const char *const stays[] = {"here",      "left",    "present", "remain",
                                        "remaining", "survive", "there",   "surviving"};
    static const char *const determiners[] = {"the", "its", "original", "a"};
    enum { FAR = 5 };
    const struct tokens *tokens = &r->note->tokens;
    int value = degrees_number(tokens, i);
    if (!value || !token_is(tokens, i + 1, "of")) return;
    size_t at = i + 2;
    while (at < i + 5 && token_among(tokens, at, determiners, COUNT(determiners))) at++;
    struct amount here = {i, value}, whole = {at, degrees_number(tokens, at)};
    if (whole.value <= value) return;
    bool stayed = i > 0 && (token_is(tokens, i - 1, "only") || token_is(tokens, i - 1, "just"));
    size_t cue = i - (stayed ? 1 : 0);
    for (size_t k = at + 1; k < at + FAR && k < tokens->count && !stayed; k++) {
        if (tokens->at[k].stop != STOP_NONE || r->scope.fault[k]) break;
        stayed = token_among(tokens, k, stays, COUNT(stays));
    }
    for (size_t k = at + 1; k < at + FAR && k < tokens->count && tokens->at[k].stop == STOP_NONE; k++)
        if (r->scope.fault[k]) return; // "only two of the six are chipped"
    if (stayed) tell_lack(r, &whole, &here, cue, i + 2);
}

void read_shortfall(struct fault_reader *r) {
    for (size_t i = 0; i < r->note->tokens.count; i++) {
        read_should(r, i);
        read_of(r, i);
    }
}
