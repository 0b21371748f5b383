// SPDX-License-Identifier: MIT
// "Maybe a hairline", "looks like rust", "is that a crack?": there as far as the seller can tell. Doubt is no
// denial.
#include "notes/any.h"
#include "notes/scope.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct cue cues[] = {
    {"apparently", 0},    {"appears to", 0},      {"can't tell if", 0}, {"could be", 0},
    {"could have", 0},    {"could've", 0},        {"guess", 0},         {"i believe", 0},
    {"i guess", 0},       {"i imagine", 0},       {"i suppose", 0},     {"i suspect", 0},
    {"i think", 0},       {"i want to say", 0},   {"i'd guess", 0},     {"i'd say", 0},
    {"is it", 0},         {"is that", 0},         {"likely", 0},        {"look like", 0},
    {"looks like", 0},    {"looks to be", 0},     {"may be", 0},        {"may have", 0},
    {"may've", 0},        {"maybe", 0},           {"might be", 0},      {"might have", 0},
    {"might've", 0},      {"most likely", 0},     {"must be", 0},       {"must have", 0},
    {"must've", 0},       {"not certain", 0},     {"not sure if", 0},   {"not sure if that's", 0},
    {"or is it", 0},      {"perhaps", 0},         {"possible", 0},      {"possibly", 0},
    {"pretty sure", 0},   {"probably", 0},        {"seems", 0},         {"seems like", 0},
    {"seems to", 0},      {"supposedly", 0},      {"they said", 0},     {"think it", 0},
    {"think it's", 0},    {"think its", 0},       {"think the", 0},     {"think there", 0},
    {"think there's", 0}, {"what looks like", 0}, {"wonder if", 0},
};

static bool is_number(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"one",   "two",   "three", "four", "five",   "six",
                                        "seven", "eight", "nine",  "ten",  "twelve", "twenty"};
    return i < tokens->count &&
           (tokens->at[i].kind == TOKEN_FIGURE || token_among(tokens, i, words, COUNT(words)));
}

// "The baize is torn, hinges are original I think", "a bit of rust, I think": what stands last before it.
// "Two bits are snapped and the roll has holes from mice I suppose": what caused the holes, and no more.
static size_t fact_before(const struct tokens *tokens, size_t from, size_t i) {
    enum { CAUSE = 4 };
    static const char *const verbs[] = {"is", "are", "has", "have", "was", "were", "looks", "seems"};
    while (i > from && tokens->at[i - 1].stop == STOP_COMMA) i--;
    for (size_t k = i; k > from && k + CAUSE > i; k--)
        if (ANY(tokens, k - 1, "from", "by", "due", "because", "where", "when")) return k - 1;
    bool verb = false;
    while (i > from && tokens->at[i - 1].stop != STOP_COMMA) {
        if (verb && token_is(tokens, i - 1, "and")) break;
        verb |= token_among(tokens, i - 1, verbs, COUNT(verbs));
        i--;
    }
    return i;
}

// "Paint flaking, might be lead": what is in doubt behind the comma is what it says itself.
static bool is_of_its_own(const struct tokens *tokens, size_t i, size_t from, size_t to) {
    return i > 0 && tokens->at[i - 1].stop == STOP_COMMA && from + 1 == to &&
           tokens->at[from].kind == TOKEN_WORD &&
           !ANY(tokens, from, "so", "it", "that", "this", "is", "too", "anyway", "though", "there", "not");
}

void scope_doubt(struct scope *s) {
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        size_t n;
        if (token_is(tokens, i, "?")) {
            size_t from = scope_clause_start(s, i); // "spine taped, price clipped?": the last of a list
            for (size_t at = from; at < i; at++)
                if (tokens->at[at].stop == STOP_COMMA && at + 1 < i) from = at + 1;
            scope_mark(s, from, i, STANCE_DOUBT, i);
            continue;
        }
        if (!cue_at(s, cues, COUNT(cues), i, &n)) continue;
        if (is_number(tokens, i + n)) continue; // "maybe ten": the number is in doubt, not the fault
        if (ANY(tokens, i + n, "that's", "thats", "that", "this", "which") &&
            ANY(tokens, i + n + 1 + ANY(tokens, i + n + 1, "is"), "why"))
            continue; // "maybe that's why": what brought it about, which is no fault
        size_t to = scope_clause_end(s, i + n);
        for (size_t at = i + n; at < to; at++)
            if (tokens->at[at].stop == STOP_COMMA) to = at;
        scope_mark(s, i + n, to, STANCE_DOUBT, i);
        // "a hairline I think": behind its fact at the end of the clause
        if (to <= i + n + 1 && !is_of_its_own(tokens, i, i + n, to))
            scope_mark(s, fact_before(tokens, scope_clause_start(s, i), i), i, STANCE_DOUBT, i);
        i += n - 1;
    }
}
