// SPDX-License-Identifier: MIT
// "Didn't check for moth", "no idea if it runs", "haven't looked inside": not looked at, which is neither
// there nor not.
#include "notes/faults.h"
#include "notes/any.h"
#include "notes/scope.h"
#include "text/order.h"

#include <string.h>

bool fault_is_virtue(const struct flaw *kind) {
    return text_same(kind->rule.id, "working-tested") || text_same(kind->rule.id, "complete-counted");
}

// Kinds that nobody denies: what was not tried is not looked for as a fault is.
bool fault_is_silent(const struct flaw *kind) {
    static const char *const ids[] = {"untested",
                                      "completeness-unknown",
                                      "inside-not-inspected",
                                      "authenticity-unverified",
                                      "timekeeping-unverified",
                                      "impact-history-unknown",
                                      "powers-on-only",
                                      "patina"};
    bool silent = fault_is_virtue(kind);
    for (size_t i = 0; i < sizeof ids / sizeof *ids; i++) silent |= text_same(kind->rule.id, ids[i]);
    return silent;
}

// governs what follows, the clause before it, the list of faults before it, what is only supposed, or the few
// words before it
enum { AHEAD, BACK, UNTOLD, SUPPOSED, LEFT };

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct cue cues[] = {{"are beyond me", LEFT},
                                  {"can't answer for", AHEAD},
                                  {"can't be certain if", AHEAD},
                                  {"can't be sure if", AHEAD},
                                  {"can't be sure whether", AHEAD},
                                  {"can't check", AHEAD},
                                  {"can't judge", AHEAD},
                                  {"can't make out if", AHEAD},
                                  {"can't rule out", AHEAD},
                                  {"can't say how", AHEAD},
                                  {"can't say if", AHEAD},
                                  {"can't say that", AHEAD},
                                  {"can't say what it's like", AHEAD},
                                  {"can't say whether", AHEAD},
                                  {"can't see if", AHEAD},
                                  {"can't see whether", AHEAD},
                                  {"can't speak to", AHEAD},
                                  {"can't tell if", AHEAD},
                                  {"can't tell what it's like", AHEAD},
                                  {"can't test", AHEAD},
                                  {"can't try", AHEAD},
                                  {"can't vouch for", AHEAD},
                                  {"cannot check", AHEAD},
                                  {"cannot say if", AHEAD},
                                  {"cannot tell if", AHEAD},
                                  {"cannot test", AHEAD},
                                  {"cannot vouch for", AHEAD},
                                  {"cant tell if", AHEAD},
                                  {"cant test", AHEAD},
                                  {"couldn't check", AHEAD},
                                  {"couldn't get in to see", AHEAD},
                                  {"couldn't judge", AHEAD},
                                  {"couldn't make out if", AHEAD},
                                  {"couldn't rule out", AHEAD},
                                  {"couldn't say if", AHEAD},
                                  {"couldn't say whether", AHEAD},
                                  {"couldn't see if", AHEAD},
                                  {"couldn't see whether", AHEAD},
                                  {"couldn't tell if", AHEAD},
                                  {"couldn't tell whether", AHEAD},
                                  {"couldn't tell you if", AHEAD},
                                  {"couldn't test", AHEAD},
                                  {"couldn't try", AHEAD},
                                  {"couldn't vouch for", AHEAD},
                                  {"couldnt test", AHEAD},
                                  {"did not check", AHEAD},
                                  {"did not count", AHEAD},
                                  {"did not look", AHEAD},
                                  {"did not look for", AHEAD},
                                  {"did not test", AHEAD},
                                  {"didn't check", AHEAD},
                                  {"didn't count", AHEAD},
                                  {"didn't examine", AHEAD},
                                  {"didn't get to", AHEAD},
                                  {"didn't inspect", AHEAD},
                                  {"didn't look", AHEAD},
                                  {"didn't look for", AHEAD},
                                  {"didn't test", AHEAD},
                                  {"didn't try", AHEAD},
                                  {"didnt check", AHEAD},
                                  {"didnt look", AHEAD},
                                  {"didnt test", AHEAD},
                                  {"don't ask me about", AHEAD},
                                  {"don't ask me if", AHEAD},
                                  {"don't ask me whether", AHEAD},
                                  {"don't know about", AHEAD},
                                  {"don't know how", AHEAD},
                                  {"don't know if", AHEAD},
                                  {"don't know that", AHEAD},
                                  {"don't know the condition of", AHEAD},
                                  {"don't know the state of", AHEAD},
                                  {"don't know what", AHEAD},
                                  {"don't know what it's like", AHEAD},
                                  {"don't know what the state of", AHEAD},
                                  {"don't know whether", AHEAD},
                                  {"dont know how", AHEAD},
                                  {"dont know if", AHEAD},
                                  {"dont know what", AHEAD},
                                  {"dont know what it's like", AHEAD},
                                  {"hard to say if", AHEAD},
                                  {"hard to say whether", AHEAD},
                                  {"hard to tell if", AHEAD},
                                  {"hasn't been tested for", AHEAD},
                                  {"have not checked", AHEAD},
                                  {"have not counted", AHEAD},
                                  {"have not gone over", AHEAD},
                                  {"have not looked", AHEAD},
                                  {"have not tested", AHEAD},
                                  {"haven't a clue", BACK},
                                  {"haven't a clue if", AHEAD},
                                  {"haven't been able to check", AHEAD},
                                  {"haven't been tested for", AHEAD},
                                  {"haven't checked", AHEAD},
                                  {"haven't counted", AHEAD},
                                  {"haven't examined", AHEAD},
                                  {"haven't gone over", AHEAD},
                                  {"haven't inspected", AHEAD},
                                  {"haven't looked", AHEAD},
                                  {"haven't looked at", AHEAD},
                                  {"haven't looked for", AHEAD},
                                  {"haven't tested", AHEAD},
                                  {"haven't tried", AHEAD},
                                  {"haven't yet looked", AHEAD},
                                  {"havent checked", AHEAD},
                                  {"havent tested", AHEAD},
                                  {"i can't answer for", LEFT},
                                  {"i can't be sure", BACK},
                                  {"i can't be sure of", LEFT},
                                  {"i can't comment on", LEFT},
                                  {"i can't get at", LEFT},
                                  {"i can't get to", LEFT},
                                  {"i can't rule out", LEFT},
                                  {"i can't say", BACK},
                                  {"i can't see", LEFT},
                                  {"i can't speak for", LEFT},
                                  {"i can't speak to", LEFT},
                                  {"i can't swear to", LEFT},
                                  {"i can't tell", BACK},
                                  {"i can't tell you", LEFT},
                                  {"i can't test", LEFT},
                                  {"i can't vouch for", LEFT},
                                  {"i cannot say", BACK},
                                  {"i cannot tell", BACK},
                                  {"i cant say", BACK},
                                  {"i could not say", BACK},
                                  {"i could not tell", BACK},
                                  {"i couldn't be sure", BACK},
                                  {"i couldn't check", BACK},
                                  {"i couldn't get at", LEFT},
                                  {"i couldn't get to", LEFT},
                                  {"i couldn't look at", LEFT},
                                  {"i couldn't rule out", LEFT},
                                  {"i couldn't say", BACK},
                                  {"i couldn't see", LEFT},
                                  {"i couldn't swear to", LEFT},
                                  {"i couldn't tell", BACK},
                                  {"i couldn't tell you", LEFT},
                                  {"i couldn't test", LEFT},
                                  {"i couldn't try", LEFT},
                                  {"i couldn't vouch for", LEFT},
                                  {"i didn't check", BACK},
                                  {"i didn't look", BACK},
                                  {"i didn't see", LEFT},
                                  {"i didn't test", BACK},
                                  {"i didn't try", LEFT},
                                  {"i didnt check", BACK},
                                  {"i didnt look", BACK},
                                  {"i didnt test", BACK},
                                  {"i don't know", BACK},
                                  {"i have no idea", BACK},
                                  {"i have not checked", BACK},
                                  {"i have not looked", BACK},
                                  {"i have not tested", BACK},
                                  {"i haven't checked", BACK},
                                  {"i haven't looked", BACK},
                                  {"i haven't seen", LEFT},
                                  {"i haven't tested", BACK},
                                  {"i haven't tried", LEFT},
                                  {"i know nothing about", LEFT},
                                  {"i know nothing of", LEFT},
                                  {"i leave it to you to check", AHEAD},
                                  {"i leave to you", LEFT},
                                  {"i never checked", BACK},
                                  {"i never looked", BACK},
                                  {"i never looked to see", BACK},
                                  {"i never saw", LEFT},
                                  {"i never tested", BACK},
                                  {"i never tried", LEFT},
                                  {"i took on trust", LEFT},
                                  {"i won't vouch for", LEFT},
                                  {"i wouldn't know", BACK},
                                  {"i wouldn't swear to", LEFT},
                                  {"i wouldn't vouch for", LEFT},
                                  {"i'll leave to somebody", LEFT},
                                  {"i'm not sure about", LEFT},
                                  {"i'm not sure of", LEFT},
                                  {"i've no idea about", LEFT},
                                  {"i've not checked", BACK},
                                  {"i've not looked", BACK},
                                  {"i've not looked at", LEFT},
                                  {"i've not seen", LEFT},
                                  {"i've not tested", AHEAD},
                                  {"i've not tried", LEFT},
                                  {"if it had", SUPPOSED},
                                  {"if it had been", SUPPOSED},
                                  {"if it has", SUPPOSED},
                                  {"if it is", SUPPOSED},
                                  {"if it leaks", SUPPOSED},
                                  {"if it was", SUPPOSED},
                                  {"if it were", SUPPOSED},
                                  {"if it's", SUPPOSED},
                                  {"if its", SUPPOSED},
                                  {"if there are", SUPPOSED},
                                  {"if there is", SUPPOSED},
                                  {"if there was", SUPPOSED},
                                  {"if there were", SUPPOSED},
                                  {"if there's", SUPPOSED},
                                  {"if they are", SUPPOSED},
                                  {"if they were", SUPPOSED},
                                  {"if they're", SUPPOSED},
                                  {"in case it is", SUPPOSED},
                                  {"in case it's", SUPPOSED},
                                  {"in case there is", SUPPOSED},
                                  {"in case there's", SUPPOSED},
                                  {"is anybody's guess", BACK},
                                  {"is anyone's guess", BACK},
                                  {"is beyond me", LEFT},
                                  {"may or may not", AHEAD},
                                  {"might or might not", AHEAD},
                                  {"n/c on", AHEAD},
                                  {"needs checking for", AHEAD},
                                  {"never been checked for", AHEAD},
                                  {"never been tested for", AHEAD},
                                  {"never checked", AHEAD},
                                  {"never looked for", AHEAD},
                                  {"never tested", AHEAD},
                                  {"no clue", BACK},
                                  {"no clue about", AHEAD},
                                  {"no clue how", AHEAD},
                                  {"no clue if", AHEAD},
                                  {"no clue what", AHEAD},
                                  {"no clue what it's like", AHEAD},
                                  {"no clue whether", AHEAD},
                                  {"no idea", BACK},
                                  {"no idea about", AHEAD},
                                  {"no idea how", AHEAD},
                                  {"no idea if", AHEAD},
                                  {"no idea of the condition of", AHEAD},
                                  {"no idea of the state of", AHEAD},
                                  {"no idea what", AHEAD},
                                  {"no idea what it's like", AHEAD},
                                  {"no idea whether", AHEAD},
                                  {"no knowing how", AHEAD},
                                  {"no knowing if", AHEAD},
                                  {"no knowing whether", AHEAD},
                                  {"no means of checking", AHEAD},
                                  {"no means of testing", AHEAD},
                                  {"no means to test", AHEAD},
                                  {"no opinion on", AHEAD},
                                  {"no saying if", AHEAD},
                                  {"no saying whether", AHEAD},
                                  {"no telling if", AHEAD},
                                  {"no telling whether", AHEAD},
                                  {"no way of knowing if", AHEAD},
                                  {"no way of knowing whether", AHEAD},
                                  {"no way of telling if", AHEAD},
                                  {"no way to check", AHEAD},
                                  {"no way to know if", AHEAD},
                                  {"no way to know whether", AHEAD},
                                  {"no way to tell if", AHEAD},
                                  {"nobody checked", AHEAD},
                                  {"not been able to check", AHEAD},
                                  {"not been checked for", AHEAD},
                                  {"not been tested for", AHEAD},
                                  {"not been through it for", AHEAD},
                                  {"not been tried", LEFT},
                                  {"not certain whether", AHEAD},
                                  {"not checked", AHEAD},
                                  {"not checked for", AHEAD},
                                  {"not counted", AHEAD},
                                  {"not described", UNTOLD},
                                  {"not given", UNTOLD},
                                  {"not gone over", AHEAD},
                                  {"not gone over it for", AHEAD},
                                  {"not had a look", AHEAD},
                                  {"not inspected for", AHEAD},
                                  {"not looked at", AHEAD},
                                  {"not looked for", AHEAD},
                                  {"not looked over", LEFT},
                                  {"not mentioned", UNTOLD},
                                  {"not noted", UNTOLD},
                                  {"not seen", LEFT},
                                  {"not stated", UNTOLD},
                                  {"not sure about", AHEAD},
                                  {"not sure how", AHEAD},
                                  {"not sure what", AHEAD},
                                  {"not sure whether", AHEAD},
                                  {"not tested", AHEAD},
                                  {"not tested for", AHEAD},
                                  {"still have to check", AHEAD},
                                  {"still need to check", AHEAD},
                                  {"taken on trust", LEFT},
                                  {"too dark to check for", AHEAD},
                                  {"too dark to look for", AHEAD},
                                  {"too dim to look for", AHEAD},
                                  {"unchecked for", AHEAD},
                                  {"unseen", LEFT},
                                  {"unsure about", AHEAD},
                                  {"unsure if", AHEAD},
                                  {"unsure whether", AHEAD},
                                  {"untested for", AHEAD},
                                  {"untried", LEFT},
                                  {"wasn't checked", AHEAD},
                                  {"wasn't examined", AHEAD},
                                  {"wasn't gone over", AHEAD},
                                  {"wasn't inspected", AHEAD},
                                  {"wasn't looked at", AHEAD},
                                  {"wasn't looked over", AHEAD},
                                  {"weren't checked", AHEAD},
                                  {"weren't examined", AHEAD},
                                  {"weren't gone over", AHEAD},
                                  {"weren't inspected", AHEAD},
                                  {"weren't looked at", AHEAD},
                                  {"weren't looked over", AHEAD},
                                  {"who knows", BACK},
                                  {"won't know if", AHEAD},
                                  {"won't know till", AHEAD},
                                  {"won't know whether", AHEAD},
                                  {"won't vouch for", AHEAD},
                                  {"worth checking", AHEAD},
                                  {"would know if", SUPPOSED},
                                  {"would need checking for", AHEAD},
                                  {"wouldn't know about", AHEAD},
                                  {"wouldn't know if", AHEAD},
                                  {"wouldn't know whether", AHEAD},
                                  {"wouldn't rule out", AHEAD},
                                  {"wouldn't vouch for", AHEAD},
                                  {"yet to check", AHEAD},
                                  {"yet to look", AHEAD},
                                  {"yet to try", AHEAD},
                                  {"you'd have to check", LEFT},
                                  {"you'd want to check", AHEAD},
                                  {"you'll have to check", LEFT},
                                  {"you'll want to check", AHEAD},
                                  {"your guess is as good as mine", BACK}};

// "Whether it was dropped I can't say": nothing stands behind the cue in its clause.
static bool ends_clause(const struct scope *s, size_t i) {
    return i >= s->note->tokens.count || s->note->tokens.at[i].stop != STOP_NONE ||
           token_is(&s->note->tokens, i, "and"); // "hasn't been checked and the focus is stiff"
}

// "Plate wear, capacity and size not described": the list, and no statement before it ("some are broken,
// number not given"). An area that is not described is no answer to whether it was looked at.
static void read_untold(struct scope *s, size_t i) {
    static const char *const verbs[] = {"is", "are", "has",  "have", "was", "were", "shows", "with", "on",
                                        "in", "at",  "near", "a",    "an",  "one",  "two",   "some"};
    const struct tokens *tokens = &s->note->tokens;
    size_t from = scope_clause_start(s, i), comma = from;
    bool states = false, fault = false;
    for (size_t k = from; k < i; k++) {
        states |= token_among(tokens, k, verbs, COUNT(verbs));
        if (tokens->at[k].stop == STOP_COMMA) comma = k + 1;
    }
    if (states) from = comma;
    for (size_t k = from; k < i; k++) fault |= s->fault[k];
    if (fault) scope_mark(s, from, i, STANCE_UNKNOWN, i);
}

// "Chips not checked", "foxing: not looked for": the fault by its noun, and nothing else before the cue.
static bool is_sought(const struct scope *s, size_t to) {
    static const char *const masses[] = {"rust", "foxing", "worm", "woodworm", "mold",  "mould",
                                         "moth", "damp",   "wear", "crazing",  "damage"};
    static const char *const small[] = {"any", "or", "and", "for", "moth", "inner"};
    const struct tokens *tokens = &s->note->tokens;
    if (to == 0 || !s->fault[to - 1]) return false;
    const struct token *last = &tokens->at[to - 1];
    if (last->one == last->fold && !token_among(tokens, to - 1, masses, COUNT(masses))) return false;
    while (to > 0 && (s->fault[to - 1] || token_among(tokens, to - 1, small, COUNT(small)))) to--;
    return to == 0 || tokens->at[to - 1].stop != STOP_NONE;
}

// "The seams not checked": the few words before, up to the clause's start, a comma or a verb.
static void read_left(struct scope *s, size_t i) {
    static const char *const links[] = {"is",   "are",  "was",  "were",  "has",
                                        "have", "been", "also", "still", "but"};
    static const char *const others[] = {"i",    "it",    "they",      "just", "sold",    "and", "we",
                                         "this", "these", "otherwise", "so",   "because", "as",  "since"};
    static const char *const ands[] = {"and", "or"};
    enum { WORDS_MOST = 5 };
    const struct tokens *tokens = &s->note->tokens;
    size_t to = i;
    while (to > 0 && token_among(tokens, to - 1, links, COUNT(links))) to--;
    bool entry = to > 1 && to == i && tokens->at[to - 1].stop == STOP_CLAUSE &&
                 (token_is(tokens, to - 1, "-") || token_is(tokens, to - 1, ":")); // "wiring - not checked"
    if (entry) to--;
    size_t from = to;
    bool named = token_is(tokens, i, "i") || // "moth I can't rule out": the fault itself
                 is_sought(s, to);
    while (from > 0 && tokens->at[from - 1].stop == STOP_NONE && to - from < WORDS_MOST &&
           !token_among(tokens, from - 1, others, COUNT(others)) && (named || !s->fault[from - 1]))
        from--;
    while (named && from > 1 && token_among(tokens, from - 1, ands, COUNT(ands)) && s->fault[from - 2])
        from -= 2;
    if (from < to && s->note->taken[to - 1] != TAKEN_TYPE && to - from < WORDS_MOST)
        scope_mark(s, from, to, STANCE_UNKNOWN, i);
}

// "No idea if complete, box split": a part and its state, at the end of what is said.
static bool states_part(const struct scope *s, size_t i) {
    static const char *const states[] = {"split", "torn", "bent",  "loose", "broken", "missing",
                                         "gone",  "worn", "stuck", "dirty", "rusty",  "stained"};
    const struct tokens *tokens = &s->note->tokens;
    if (i + 1 >= tokens->count || tokens->at[i].stop != STOP_NONE) return false;
    bool ends = i + 2 >= tokens->count || tokens->at[i + 2].stop >= STOP_COMMA;
    size_t size = strlen(tokens->at[i + 1].fold);
    bool done = size > 4 && text_same(tokens->at[i + 1].fold + size - 2, "ed");
    return ends && s->fault[i + 1] && (done || token_among(tokens, i + 1, states, COUNT(states)));
}

static bool states_done(const struct scope *s, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    if (i >= tokens->count || !s->fault[i]) return false;
    size_t size = strlen(tokens->at[i].fold);
    return size > 4 && text_same(tokens->at[i].fold + size - 2, "ed");
}

// "Not tried as there's no gong", "not tested because the cord is cut": the reason is there.
static bool gives_reason(const struct tokens *tokens, size_t i) {
    static const char *const joints[] = {"as", "because", "since", "cos", "cause"};
    static const char *const subjects[] = {"there's", "theres", "there", "the", "its", "it's", "one"};
    return token_among(tokens, i, joints, COUNT(joints)) &&
           token_among(tokens, i + 1, subjects, COUNT(subjects)) && !token_is(tokens, i + 1, "it");
}

// "Not tested, no leaks that I saw", "not checked for cracks, small chip on the lip": behind the comma stands
// what was looked at.
static size_t ahead_end(const struct scope *s, size_t i) {
    static const char *const opens[] = {"no",    "not",     "never",   "it",  "it's",
                                        "there", "there's", "without", "none"};
    const struct tokens *tokens = &s->note->tokens;
    size_t to = scope_shrug_end(s, i, scope_clause_end(s, i));
    for (size_t at = i; at + 1 < to; at++)
        if (gives_reason(tokens, at))
            return at;
        else if (tokens->at[at].stop == STOP_COMMA &&
                 (s->positive[at + 1] || states_part(s, at + 1) || states_done(s, at + 1) ||
                  scope_states_own(tokens, at + 1) || token_among(tokens, at + 1, opens, COUNT(opens))))
            return at;
        else if (token_is(tokens, at, "and") && at > i && !token_is(tokens, i - 1, "if") &&
                 states_done(s, at + 1))
            return at; // "not checked for leaks and stained inside"
    return to;
}

// "You'd have to check the seams".
static bool opens_area(const struct tokens *tokens, size_t i, size_t n) {
    static const char *const words[] = {"the", "its", "for", "if", "whether", "how"};
    return !token_is(tokens, i, "i") && token_among(tokens, i + n, words, COUNT(words));
}

// "Not filled it to see if it leaks", "haven't lifted the seat to see what's under": whatever was not done,
// it was to find that out. How many tokens up to what was to be found out; 0 if none.
static size_t purpose_at(const struct tokens *tokens, size_t i) {
    static const char *const nots[] = {"not",      "haven't", "didn't", "never",  "couldn't", "can't",
                                       "without",  "havent",  "didnt",  "cannot", "couldnt",  "nothing",
                                       "nobody's", "hasn't",  "no",     "won't",  "nobody"};
    static const char *const aims[] = {
        "to see if",       "to see whether",  "to see what's", "to see how",       "to tell if",
        "to tell whether", "to find out if",  "to check if",   "to check whether", "to find out whether",
        "to see what",     "to check for",    "to look for",   "to see about",     "to check it for",
        "to know if",      "to know whether", "to say if",     "to say whether",   "to count the",
        "to look at the",  "to check the",    "to see the"};
    enum { FAR = 14 };
    if (!token_among(tokens, i, nots, COUNT(nots))) return 0;
    for (size_t at = i + 1; at < tokens->count && at < i + FAR && tokens->at[at].stop == STOP_NONE; at++) {
        if (token_is(tokens, at, "but") || token_is(tokens, at, "so")) return 0;
        size_t n = token_is(tokens, at, "to") ? token_longest(tokens, at, aims, COUNT(aims)) : 0;
        if (n) return at + n - i;
    }
    return 0;
}

// By its grammar, where no cue of the list stands: how many tokens it takes.
static size_t read_grammar(struct scope *s, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    scope_shrug(s, i);
    size_t left = scope_left_unlooked(tokens, i);
    if (left) {
        read_left(s, i);
        return left;
    }
    size_t head, n = scope_unlooked(tokens, i), unsure = scope_unsure(tokens, i, &head);
    if (unsure > n) n = unsure;
    size_t purpose = purpose_at(tokens, i);
    if (purpose > n) n = purpose;
    size_t from = i + (n == unsure ? head : n); // "how well it keeps time" begins with words of its own
    if (n && !ends_clause(s, i + n)) scope_mark(s, from, ahead_end(s, i + n), STANCE_UNKNOWN, i);
    if (n && ends_clause(s, i + n)) {
        if (is_sought(s, i))
            read_left(s, i); // "chips not looked for"
        else
            scope_shrug_back(s, i);
    }
    return n == unsure ? head : n;
}

// "If it was cracked I'd have seen it", "in case it's chipped": only supposed. "Even if", "as if" suppose
// nothing, and "if it's rust it is light" speaks of what is there.
static void read_supposed(struct scope *s, size_t i, size_t n) {
    static const char *const before[] = {"even", "as", "not", "only"};
    static const char *const ends[] = {"i",  "i'd",  "i'll", "you",  "you'd",
                                       "we", "then", "it",   "it's", "it'd"};
    const struct tokens *tokens = &s->note->tokens;
    if (i > 0 && token_among(tokens, i - 1, before, COUNT(before))) return;
    size_t to = scope_clause_end(s, i + n);
    for (size_t at = i + n; at < to; at++)
        if (tokens->at[at].stop != STOP_NONE || token_among(tokens, at, ends, COUNT(ends))) to = at;
    bool fault = false, does = false; // "runs eight days if it's dead level"
    for (size_t at = i + n; at < to; at++) fault |= s->fault[at];
    for (size_t at = scope_clause_start(s, i); at < i; at++)
        does |=
            ANY(tokens, at, "runs", "works", "keeps", "goes", "plays", "ticks", "stays", "holds", "stands",
                "closes", "fits", "turns", "comes", "lights", "sits", "shuts", "latches", "opens", "sounds");
    if (does && !fault) return;
    scope_mark(s, i + n, to, STANCE_UNKNOWN, i);
}

void scope_unknown(struct scope *s) {
    for (size_t i = 0; i < s->note->tokens.count; i++) {
        size_t n, grammar = read_grammar(s, i);
        const struct cue *cue = cue_at(s, cues, COUNT(cues), i, &n);
        if (grammar > n || (grammar && !cue) || (grammar && cue->kind != BACK)) {
            i += grammar - 1;
            continue;
        }
        if (!cue) continue;
        if (cue->kind == UNTOLD)
            read_untold(s, i);
        else if (cue->kind == SUPPOSED)
            read_supposed(s, i, n);
        else if (cue->kind == BACK && ends_clause(s, i + n) && scope_clause_start(s, i) == i)
            scope_shrug_back(s, i);
        else if (cue->kind == LEFT && ends_clause(s, i + n))
            read_left(s, i);
        else if (cue->kind == BACK && ends_clause(s, i + n))
            scope_mark(s, scope_clause_start(s, i), i, STANCE_UNKNOWN, i);
        else if (cue->kind == LEFT && !opens_area(&s->note->tokens, i, n))
            continue; // "I can't see any chips"; the words behind "I" may be a cue of their own
        else
            scope_mark(s, i + n, ahead_end(s, i + n), STANCE_UNKNOWN, i);
        i += n - 1;
    }
}
