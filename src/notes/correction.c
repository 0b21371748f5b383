// SPDX-License-Identifier: MIT
// "Chip on the lid, no wait, on the base", "scratch that": what was said before is taken back, and what
// follows stands. A cue that opens a sentence takes back the sentence before it. "Scratch that" is an order
// to the page, not a scratch; "make that three" corrects a number and leaves the fault. "I thought it was
// cracked but it's the glaze" takes back what was thought.
#include <string.h>

#include "notes/any.h"
#include "notes/scope.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct cue cues[] = {
    {"actually no", 0},      {"beg your pardon", 0},
    {"cancel that", 0},      {"check that", 0},
    {"correction", 0},       {"delete that", 0},
    {"forget that", 0},      {"forget the bit", 0},
    {"forget the part", 0},  {"forget what i said", 0},
    {"hang on no", 0},       {"hold on no", 0},
    {"i lied", 0},           {"i mean", 0},
    {"i meant", 0},          {"i stand corrected", 0},
    {"i take that back", 0}, {"i tell a lie", 0},
    {"ignore that", 0},      {"ignore the bit", 0},
    {"ignore the part", 0},  {"ignore what i said", 0},
    {"make that", 0},        {"my mistake", 0},
    {"never mind that", 0},  {"never mind what i said", 0},
    {"no hang on", 0},       {"no hold on", 0},
    {"no i lie", 0},         {"no i tell a lie", 0},
    {"no make that", 0},     {"no no", 0},
    {"no not", 0},           {"no sorry", 0},
    {"no wait", 0},          {"nope", 0},
    {"not so fast", 0},      {"oops", 0},
    {"or rather", 0},        {"scratch that", 0},
    {"sorry i mean", 0},     {"sorry no", 0},
    {"strike that", 0},      {"strike the bit", 0},
    {"strike the part", 0},  {"take back what i said", 0},
    {"tell a lie", 0},       {"that's wrong", 0},
    {"wait no", 0},          {"wrong its", 0},
};

// What was thought, up to "but": nothing of it is so.
static const struct cue thoughts[] = {
    {"at first i thought", 0}, {"i took it for", 0},       {"i was afraid it was", 0},
    {"i'd thought it was", 0}, {"looked like it was", 0},  {"looked like", 0},
    {"looked to be", 0},       {"thought he saw", 0},      {"thought i saw", 0},
    {"thought it had", 0},     {"thought it might be", 0}, {"thought it was", 0},
    {"thought that was", 0},   {"thought the", 0},         {"thought there was", 0},
    {"thought there were", 0}, {"thought these were", 0},  {"thought they were", 0},
    {"thought this was", 0},   {"took it for", 0},         {"took that for", 0},
};

static bool is_number(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"one", "two",   "three", "four", "five",
                                        "six", "seven", "eight", "nine", "ten"};
    return i < tokens->count &&
           (tokens->at[i].kind == TOKEN_FIGURE || token_among(tokens, i, words, COUNT(words)));
}

// "No, make that three": the fault before stands, its number changes.
static bool is_recount(const struct scope *s, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    return is_number(tokens, i) &&
           (i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE || token_is(tokens, i + 1, "of"));
}

// Without stops a clause has no beginning: what is taken back is the statement before token `i`, from its
// verb's subject on.
static size_t last_statement(const struct tokens *tokens, size_t from, size_t i) {
    enum { FAR = 8, SUBJECT = 2 };
    static const char *const verbs[] = {"is",      "are",    "was",   "were",   "has",   "have",    "isn't",
                                        "aren't",  "isnt",   "arent", "hasn't", "hasnt", "haven't", "havent",
                                        "doesn't", "doesnt", "won't", "wont",   "works", "runs"};
    if (i - from <= FAR) return from;
    for (size_t at = i; at > from + SUBJECT; at--)
        if (token_among(tokens, at - 1, verbs, COUNT(verbs))) return at - SUBJECT;
    return from;
}

// "The strap is torn, the left one, no wait, the right": of the fault before the cue at `i` only what is said
// again behind it, `n` words further on, is taken back.
static bool take_back_words(struct scope *s, size_t i, size_t n) {
    enum { FAR = 12 };
    const struct tokens *tokens = &s->note->tokens;
    size_t from, at = i;
    if (!i || !repair_words(s->note, s->fault, i + n, &from)) return false;
    if (tokens->at[i - 1].stop >= STOP_CLAUSE) at--; // "The front foot is cracked. No, wait. The back one."
    while (at > 0 && i - at < FAR && !s->fault[at - 1] && tokens->at[at - 1].stop < STOP_CLAUSE) at--;
    if (at == 0 || !s->fault[at - 1]) return false;
    while (at > 0 && s->fault[at - 1]) at--;
    scope_mark(s, at, i, STANCE_WITHDRAWN, i);
    scope_mark(s, i, i + n, STANCE_OTHER, i);
    return true;
}

// "Dent in the lid, no, the base", "the top hinge is bent, actually the bottom one": by a word that takes
// back no more than that.
static void take_back_aside(struct scope *s, size_t i) {
    static const char *const asides[] = {"no", "sorry", "actually", "hang on", "hold on", "wait"};
    static const char *const again[] = {"wait",    "sorry",     "hang on", "i mean",
                                        "i meant", "make that", "i lie"};
    const struct tokens *tokens = &s->note->tokens;
    if (i == 0 || (tokens->at[i - 1].stop == STOP_NONE && tokens->at[i - 1].kind != TOKEN_SIGN)) return;
    size_t n = token_longest(tokens, i, asides, COUNT(asides)), end = i + n;
    if (!n) return;
    bool comma = end < tokens->count && tokens->at[end].stop == STOP_COMMA;
    size_t more = comma ? token_longest(tokens, end + 1, again, COUNT(again)) : 0;
    if (token_is(tokens, i, "no") && !more) { // "no lid", "Any chips? No, the base"
        if (!comma && !ANY(tokens, end, "it's", "the", "on", "in")) return;
        if (tokens->at[i - 1].stop >= STOP_SENTENCE) return;
    }
    take_back_words(s, i, more ? n + 1 + more : n);
}

static void take_back(struct scope *s, size_t i, size_t n) {
    const struct tokens *tokens = &s->note->tokens;
    if (token_is(tokens, i, "scratch") && i > 0 && tokens->at[i - 1].stop == STOP_NONE && !tokens->flat)
        return; // "has a scratch that clicks"
    if (take_back_words(s, i, n)) return;
    size_t from = scope_clause_start(s, i);
    while (from < i && tokens->at[from].stop != STOP_NONE) from++;
    bool opens =
        from == i || (i == from + 1 && (token_is(tokens, from, "no") || token_is(tokens, from, "actually")));
    if (opens && from > 1) {
        size_t end = from - 1;
        while (end > 0 && tokens->at[end].stop != STOP_NONE) end--;
        from = scope_sentence_start(s, end);
    }
    scope_mark(s, last_statement(tokens, from, i), i, STANCE_WITHDRAWN, i);
    scope_mark(s, i, i + n, STANCE_OTHER, i); // the words of the cue are no fault themselves
}

// "I thought there was no rust but there is": what was thought is a denial, so the fault is there.
static bool was_denied(struct scope *s, size_t from, size_t turn) {
    const uint16_t denied = STANCE_DENIED | STANCE_NONE_SEEN;
    bool found = false;
    for (size_t i = from; i < turn; i++) found |= s->fault[i] && (s->stance[i] & denied);
    for (size_t i = from; found && i < turn; i++) s->stance[i] |= STANCE_DOUBLE;
    return found;
}

// Does the sentence go on with "but", "turned out": else it is a mere opinion, read as doubt.
static size_t turn_of(const struct scope *s, size_t i) {
    static const char *const turns[] = {"but", "turns", "turned", "however", "only"};
    const struct tokens *tokens = &s->note->tokens;
    for (size_t at = i; at < tokens->count && tokens->at[at].stop < STOP_SENTENCE; at++)
        if (token_among(tokens, at, turns, COUNT(turns))) return at;
    return 0;
}

// "… but it's old tack holes": it is something else, so what was thought is not there. "… but I'm not sure"
// leaves it open.
static bool tells_else(const struct tokens *tokens, size_t turn) {
    static const char *const its[] = {"it's",
                                      "its",
                                      "it is",
                                      "that's",
                                      "it was",
                                      "they're",
                                      "they are",
                                      "they were",
                                      "it isn't",
                                      "it's not",
                                      "they aren't",
                                      "it turned out to be",
                                      "it turns out to be",
                                      "turned out to be",
                                      "it's only",
                                      "it's just"};
    if (!token_is(tokens, turn, "but")) return false;
    size_t at = turn + 1, n = token_longest(tokens, at, its, COUNT(its));
    return n &&
           !ANY(tokens, at + n, "not", "hard", "still", "worse", "there", "possible", "maybe", "probably");
}

void scope_correction(struct scope *s) {
    const struct tokens *tokens = &s->note->tokens;
    scope_seeming(s);
    for (size_t i = 0; i < tokens->count; i++) {
        size_t n, turn;
        if (cue_at(s, thoughts, COUNT(thoughts), i, &n) && (turn = turn_of(s, i + n)) != 0) {
            size_t from = i; // "thought the dark patch was mold": the patch is there
            for (size_t k = i + n; token_is(tokens, i + n - 1, "the") && k < turn; k++)
                if (ANY(tokens, k, "was", "were", "is")) from = k;
            if (!was_denied(s, i + n, turn))
                scope_mark(s, from, turn, tells_else(tokens, turn) ? STANCE_DENIED : STANCE_OTHER, i);
            i += n - 1;
            continue;
        }
        if (!cue_at(s, cues, COUNT(cues), i, &n)) {
            take_back_aside(s, i);
            continue;
        }
        bool answer =
            token_is(tokens, i, "nope") && i > 0 && tokens->at[i - 1].stop < STOP_SENTENCE; // "cracks - nope"
        if (answer || (i > 0 && token_is(tokens, i - 1, "?"))) continue; // "any cracks? nope"
        bool said = ANY(tokens, i + 1, "mean") &&
                    (i + n >= tokens->count || tokens->at[i + n].stop != STOP_NONE) && i > 0 &&
                    tokens->at[i - 1].stop == STOP_NONE;
        if (said) continue; // "the top one I mean"
        bool stressed = i > 0 && token_is(tokens, i, "i") &&
                        (token_is(tokens, i - 1, "and") || token_is(tokens, i - 1, "when"));
        if (stressed && token_is(tokens, i + 1, "mean")) continue; // "rusty, and I mean rusty"
        if (!is_recount(s, i + n)) take_back(s, i, n);
        i += n - 1;
    }
}
