// SPDX-License-Identifier: MIT
// "He said there were no cracks", "hopefully no worm", "no chips when I bought it": told by another, hoped,
// or so at another time. Whoever says so has not found it, so nothing that is denied there is told as not
// there.
#include "notes/any.h"
#include "notes/faults.h"
#include "notes/scope.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

// Governs the clause behind the words, or the statement before them; TOLD: behind them, by somebody else.
enum { AHEAD, BACK, TOLD };

static const struct cue cues[] = {
    {"according to", TOLD},     {"advert said", TOLD},    {"allegedly", TOLD},       {"always claimed", TOLD},
    {"always said", TOLD},      {"always swore", TOLD},   {"apparently", TOLD},      {"assured me", TOLD},
    {"at the time", BACK},      {"back then", BACK},      {"box says", AHEAD},       {"claimed", TOLD},
    {"claims", TOLD},           {"don't believe", AHEAD}, {"don't think", AHEAD},    {"dont think", AHEAD},
    {"fingers crossed", AHEAD}, {"he reckoned", TOLD},    {"he reckons", TOLD},      {"he said", TOLD},
    {"he says", TOLD},          {"he swears", TOLD},      {"he swore", TOLD},        {"he told", TOLD},
    {"here's hoping", AHEAD},   {"hopefully", AHEAD},     {"hoping", AHEAD},         {"i assume", AHEAD},
    {"i doubt", AHEAD},         {"i expect", AHEAD},      {"i gather", TOLD},        {"i hope", AHEAD},
    {"i imagine", AHEAD},       {"i presume", AHEAD},     {"i suppose", AHEAD},      {"i trust", AHEAD},
    {"i was told", TOLD},       {"i'd assume", AHEAD},    {"i'd expect", AHEAD},     {"i'd hope", AHEAD},
    {"i'm hoping", AHEAD},      {"i'm told", TOLD},       {"im told", TOLD},         {"in theory", AHEAD},
    {"is said", TOLD},          {"label says", AHEAD},    {"last autumn", BACK},     {"last month", BACK},
    {"last spring", BACK},      {"last summer", BACK},    {"last time", BACK},       {"last winter", BACK},
    {"last year", BACK},        {"listing said", TOLD},   {"may not", AHEAD},        {"maybe", AHEAD},
    {"meant to be", AHEAD},     {"might not", AHEAD},     {"must not", AHEAD},       {"nobody said", AHEAD},
    {"ought not", AHEAD},       {"ought to be", AHEAD},   {"ought to have", AHEAD},  {"oughtn't", AHEAD},
    {"perhaps", AHEAD},         {"possibly", AHEAD},      {"presumably", AHEAD},     {"probably", AHEAD},
    {"reckoned", TOLD},         {"reportedly", TOLD},     {"said to be", TOLD},      {"said to have", TOLD},
    {"says it has", TOLD},      {"says there", TOLD},     {"seller said", TOLD},     {"she reckoned", TOLD},
    {"she reckons", TOLD},      {"she said", TOLD},       {"she says", TOLD},        {"she swears", TOLD},
    {"she swore", TOLD},        {"should be", AHEAD},     {"should have", AHEAD},    {"should not", AHEAD},
    {"shouldn't", AHEAD},       {"shouldn't be", AHEAD},  {"shouldn't have", AHEAD}, {"supposed to be", TOLD},
    {"supposed to have", TOLD}, {"supposedly", TOLD},     {"swore", TOLD},           {"tag says", AHEAD},
    {"they reckon", TOLD},      {"they said", TOLD},      {"they say", TOLD},        {"they swore", TOLD},
    {"they told", TOLD},        {"told me", TOLD},        {"told my", TOLD},         {"told us", TOLD},
    {"was told", TOLD},         {"when bought", BACK},    {"when i bought", BACK},   {"when i got", BACK},
    {"when i had it", BACK},    {"when it came", BACK},   {"when it went", BACK},    {"when new", BACK},
    {"when packed", BACK},      {"when put away", BACK},  {"when we bought", BACK},  {"when we got", BACK},
    {"with any luck", AHEAD},   {"with luck", AHEAD},     {"years ago", BACK}};

// "No rust, should be stored dry", "my aunt said so, no cracks that I can see": a comma ends what another
// told, for what follows is the seller's own.
static size_t ahead_end(const struct scope *s, size_t i) {
    static const char *const own[] = {"but", "and i", "though", "so i"};
    const struct tokens *tokens = &s->note->tokens;
    size_t to = scope_clause_end(s, i);
    for (size_t at = i; at < to; at++)
        if (tokens->at[at].stop != STOP_NONE || (at > i && token_longest(tokens, at, own, COUNT(own))))
            return at;
    return to;
}

static size_t back_start(const struct scope *s, size_t i) {
    size_t from = scope_clause_start(s, i);
    for (size_t at = i; at > from; at--)
        if (s->note->tokens.at[at - 1].stop != STOP_NONE) return at;
    return from;
}

// "Said no cracks": who speaks stands before, whatever it is called.
static size_t said_at(const struct tokens *tokens, size_t i) {
    static const char *const verbs[] = {"said",     "says",    "reckoned", "reckons",
                                        "insisted", "insists", "promised", "told"};
    static const char *const links[] = {"it", "there", "there's", "that", "they",
                                        "no", "the",   "a",       "one",  "its"};
    return i > 0 && token_among(tokens, i, verbs, COUNT(verbs)) &&
           token_among(tokens, i + 1, links, COUNT(links));
}

// "…, can't see any sign of it", "…, but it doesn't", "…, none": the seller looked, and what was told is not
// so. How many tokens from `i`, 0 if it is not said there; `*seen` where it was looked for.
static size_t refuted_at(const struct tokens *tokens, size_t i, bool *seen) {
    static const char *const nots[] = {"can't",  "couldn't", "cannot", "cant",    "couldnt",   "don't",
                                       "didn't", "haven't",  "never",  "can not", "could not", "did not"};
    static const char *const looks[] = {"see",  "find",    "feel",    "smell",  "found", "seen",
                                        "spot", "spotted", "noticed", "notice", "hear",  "tell"};
    static const char *const what[] = {"it",
                                       "them",
                                       "that",
                                       "one",
                                       "any",
                                       "any of it",
                                       "any sign of it",
                                       "any sign of that",
                                       "any sign",
                                       "any trace of it",
                                       "any sign of one",
                                       "a sign of it",
                                       "any trace",
                                       "anything",
                                       "where",
                                       "any sign of them",
                                       "any trace of that",
                                       "any evidence of it",
                                       "any evidence of that",
                                       "it myself",
                                       "it anywhere",
                                       "one anywhere"};
    static const char *const outs[] = {"no sign of it",
                                       "no sign of that",
                                       "no sign of any",
                                       "no trace of it",
                                       "see no sign of it",
                                       "see no sign of that",
                                       "saw no sign of it",
                                       "found none",
                                       "found nothing",
                                       "saw nothing",
                                       "see nothing",
                                       "saw none",
                                       "see none",
                                       "no sign",
                                       "no evidence of it",
                                       "no evidence of that",
                                       "see no evidence of it",
                                       "found no sign of it"};
    static const char *const facts[] = {
        "it doesn't",        "it isn't",         "it hasn't",        "they don't",     "they aren't",
        "it's not",          "there isn't",      "there isn't one",  "there's none",   "there are none",
        "there aren't any",  "it does not",      "it is not",        "not so",         "none",
        "it didn't",         "it wasn't",        "that's not so",    "it doesn't now", "not for me",
        "it doesn't for me", "it hasn't for me", "it didn't for me", "it hasn't yet",  "it hasn't since",
        "it never has",      "it never did",     "it won't"};
    static const char *const sounds[] = {"seems", "looks", "feels", "is",  "it's",
                                         "works", "runs",  "holds", "sits"};
    static const char *const goods[] = {"fine", "ok",       "okay",        "tight",        "solid",   "sound",
                                        "good", "firm",     "all right",   "alright",      "perfect", "clean",
                                        "dry",  "straight", "quite tight", "tight enough", "steady"};
    while (ANY(tokens, i, "but", "though", "i", "i've", "and", ",", "well", "honestly", "myself")) i++;
    size_t n = token_longest(tokens, i, outs, COUNT(outs)), not, look;
    *seen = true;
    if (!n && (not = token_longest(tokens, i, nots, COUNT(nots))) != 0 &&
        (look = token_longest(tokens, i + not, looks, COUNT(looks))) != 0) {
        n = token_longest(tokens, i + not +look, what, COUNT(what));
        if (n) n += not +look;
    }
    if (!n) {
        n = token_longest(tokens, i, facts, COUNT(facts));
        *seen = false;
    }
    if (!n) { // "but it seems tight to me"
        size_t at = i + ANY(tokens, i, "it", "they", "that"),
               verb = token_longest(tokens, at, sounds, COUNT(sounds));
        size_t good = verb ? token_longest(tokens, at + verb, goods, COUNT(goods)) : 0;
        n = good ? at + verb + good - i : 0;
        if (n && token_is(tokens, i + n, "to") && ANY(tokens, i + n + 1, "me", "us")) n += 2;
    }
    bool ends = i + n >= tokens->count || tokens->at[i + n].stop != STOP_NONE ||
                ANY(tokens, i + n, "and", "but", "though", "so", "myself", "anywhere");
    return n && ends ? i + n : 0;
}

// What [from, to) was told: denied where the words behind it, or the next sentence, refute it.
static void read_refuted(struct scope *s, size_t from, size_t to) {
    enum { FAR = 24 };
    const struct tokens *tokens = &s->note->tokens;
    size_t stops = 0;
    for (size_t i = to; i < tokens->count && i < to + FAR; i++) {
        bool joint = i == to || tokens->at[i].stop != STOP_NONE || ANY(tokens, i, "but", "though", "and");
        bool seen;
        if (joint && refuted_at(tokens, tokens->at[i].stop != STOP_NONE ? i + 1 : i, &seen)) {
            for (size_t at = from; at < to; at++) {
                s->stance[at] &= (uint16_t) ~(STANCE_HEARD | STANCE_DOUBT);
                s->stance[at] |= (uint16_t)(seen ? STANCE_NONE_SEEN : STANCE_DENIED);
            }
            return;
        }
        if (i > to && s->fault[i]) return;
        stops += tokens->at[i].stop >= STOP_SENTENCE;
        if (stops > 1) return;
    }
}

// That something is there is told, too, by who has not found it: as likely.
static void read_told(struct scope *s, size_t from, size_t to) {
    static const uint16_t no = STANCE_DENIED | STANCE_NONE_SEEN;
    bool there = false, none = false;
    for (size_t at = from; at < to; at++) {
        there |= s->fault[at] && !(s->stance[at] & no);
        none |= (s->stance[at] & no) != 0;
    }
    if (!there || none) return;
    for (size_t at = from; at < to; at++) s->stance[at] |= STANCE_DOUBT;
    read_refuted(s, from, to);
}

// "I get asked whether it needs a wash", "people ask me if it leaks": a question of others, and no finding at
// all. The token behind the words that lead to it; 0 where there is none.
static size_t asked_at(const struct tokens *tokens, size_t i) {
    static const char *const asks[] = {"ask", "asks", "asked", "asking", "wonder", "wonders"};
    static const char *const people[] = {
        "people", "everybody", "everyone", "customers", "buyers",   "they", "you",
        "you'll", "folks",     "somebody", "someone",   "visitors", "get",  "gets",
        "got",    "getting",   "been",     "kids",      "friends",  "he",   "she"};
    static const char *const between[] = {"always", "often", "all",     "sometimes", "will",  "may",  "might",
                                          "keep",   "keeps", "usually", "do",        "would", "never"};
    static const char *const behind[] = {"me",   "us",  "every", "week", "day",
                                         "time", "all", "a",     "lot",  "often"};
    enum { BEFORE = 3, FAR = 4 };
    if (!AMONG(tokens, i, asks)) return 0;
    size_t at = i, to = i + 1;
    while (at > 0 && i - at < BEFORE && tokens->at[at - 1].stop == STOP_NONE &&
           AMONG(tokens, at - 1, between))
        at--;
    if (at == 0 || tokens->at[at - 1].stop != STOP_NONE || !AMONG(tokens, at - 1, people)) return 0;
    while (to < i + FAR && tokens->at[to - 1].stop == STOP_NONE && AMONG(tokens, to, behind)) to++;
    return tokens->at[to - 1].stop == STOP_NONE && ANY(tokens, to, "if", "whether", "about") ? to + 1 : 0;
}

void scope_heard(struct scope *s) {
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        size_t n;
        size_t asked = asked_at(tokens, i);
        if (asked) {
            scope_mark(s, asked - 1, ahead_end(s, asked), STANCE_OTHER, i);
            continue;
        }
        const struct cue *cue = cue_at(s, cues, COUNT(cues), i, &n);
        if (!cue && !said_at(tokens, i)) continue;
        bool ahead = !cue || cue->kind != BACK, told = !cue || cue->kind == TOLD;
        if (!cue) n = 1;
        size_t from = ahead ? i + n : back_start(s, i), to = ahead ? ahead_end(s, i + n) : i;
        if (ahead && to <= i + n + 1) { // "no worm, hopefully", "no cracks, he said"
            to = i;
            from = scope_sentence_start(s, i);
            told = false;
        }
        for (size_t at = from; at < to; at++) s->stance[at] |= STANCE_HEARD;
        if (told) read_told(s, from, to);
        i += n - 1;
    }
}

size_t heard_doubt(const struct note *note, size_t to) {
    enum { FAR = 6 };
    static const char *const doubts[] = {"don't know",  "wouldn't know", "can't say",        "couldn't say",
                                         "not sure",    "can't prove",   "no proof",         "can't be sure",
                                         "can't vouch", "have no idea",  "couldn't tell you"};
    if (note->taken[to - 1] != TAKEN_ASIDE) return to; // the doubt is a word of it
    for (size_t i = to; i < to + FAR && i < note->tokens.count && note->tokens.at[i].stop < STOP_SENTENCE;
         i++) {
        size_t n = token_first(&note->tokens, i, doubts, COUNT(doubts));
        if (n) return i + n;
    }
    return 0;
}
