// SPDX-License-Identifier: MIT
// The grammar of not having looked: a negation, words that only fill, a verb of looking, its pronoun, and
// what it was looked at for. "I haven't actually had a chance to go over it for cracks", "never got round to
// checking the wiring", "couldn't swear to the seams", "not convinced it's complete".
#include "notes/any.h"
#include "notes/scope.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static size_t negation_at(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "didn't",    "did not",     "didnt",      "haven't",      "have not",      "havent",    "hasn't",
        "has not",   "hadn't",      "not",        "never",        "couldn't",      "could not", "couldnt",
        "can't",     "cannot",      "cant",       "unable to",    "yet to",        "still to",  "still need",
        "need to",   "needs to",    "nobody has", "no one has",   "nobody's",      "nobody",    "no one",
        "without",   "forgot to",   "meant to",   "no chance to", "no time to",    "no way to", "no means to",
        "no way of", "no means of", "won't",      "will not",     "wasn't able to"};
    return token_longest(tokens, i, words, COUNT(words));
}

// "Get down and", "go round the back to": the way that one did not go for it.
static size_t move_at(const struct tokens *tokens, size_t i) {
    static const char *const verbs[] = {"get",    "got",     "go",    "gone",  "went",   "crawl", "crawled",
                                        "climb",  "climbed", "bend",  "bent",  "kneel",  "knelt", "lean",
                                        "leaned", "sit",     "sat",   "stop",  "reach",  "turn",  "turned",
                                        "take",   "took",    "taken", "open",  "opened", "have",  "had",
                                        "lift",   "lifted",  "stand", "stood", "pull",   "pulled"};
    static const char *const ways[] = {"down",  "under",  "underneath", "in",    "inside", "behind", "round",
                                       "up",    "out",    "over",       "close", "near",   "the",    "back",
                                       "it",    "them",   "on",         "my",    "knees",  "hands",  "and",
                                       "to",    "enough", "far",        "off",   "apart",  "right",  "around",
                                       "table", "floor",  "there"};
    enum { WAYS_MOST = 6 };
    if (!token_among(tokens, i, verbs, COUNT(verbs))) return 0;
    size_t at = i + 1;
    while (at < i + WAYS_MOST && at < tokens->count && token_among(tokens, at, ways, COUNT(ways))) at++;
    bool joined = at > i + 1 && ANY(tokens, at - 1, "and", "to");
    return joined ? at - i : 0;
}

static size_t filler_at(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "actually", "really",     "even",        "yet",        "properly",  "fully",
        "been",     "able to",    "had",         "a",          "chance",    "to",
        "get",      "got",        "gotten",      "round to",   "around to", "bothered",
        "managed",  "time",       "thoroughly",  "personally", "ever",      "carefully",
        "had the",  "the chance", "opportunity", "i",          "have",      "me",
        "the time", "closely",    "bother",      "manage",     "going to",  "been through and"};
    size_t n = token_longest(tokens, i, words, COUNT(words)), went = move_at(tokens, i);
    return went > n ? went : n;
}

static size_t verb_at(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "check",      "checked",    "checking",     "inspect",       "inspected",   "inspecting",
        "examine",    "examined",   "examining",    "look",          "looked",      "looking",
        "test",       "tested",     "testing",      "try",           "tried",       "trying",
        "count",      "counted",    "counting",     "verify",        "verified",    "confirm",
        "confirmed",  "assess",     "assessed",     "gone over",     "go over",     "gone through",
        "go through", "going over", "been over",    "been through",  "try out",     "tried out",
        "search",     "searched",   "investigated", "going through", "judge",       "gauge",
        "see inside", "see into",   "get a look",   "had a look",    "have a look", "get into",
        "get inside", "get at",     "reach",        "measure"};
    return token_longest(tokens, i, words, COUNT(words));
}

// "It over closely for", "to see if", "whether": between the verb and what it is about.
static size_t link_at(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "it",         "them",        "this",        "that",    "these",       "em",           "over",
        "out",        "through",     "properly",    "closely", "carefully",   "fully",        "for",
        "to see",     "if",          "whether",     "on",      "at",          "to make sure", "thoroughly",
        "to see how", "how",         "about",       "into",    "to find out", "him",          "in detail",
        "each one",   "any of them", "all of them", "they're", "it's",        "for any",      "any"};
    return token_longest(tokens, i, words, COUNT(words));
}

// "Haven't measured it or checked it for leaks": a second verb under the same negation.
static size_t second_verb(const struct tokens *tokens, size_t i) {
    enum { FAR = 7 };
    for (size_t at = i; at < tokens->count && at < i + FAR; at++) {
        if (tokens->at[at].stop != STOP_NONE || token_is(tokens, at, "but") || token_is(tokens, at, "so"))
            return 0;
        bool or = token_is(tokens, at, "or") || token_is(tokens, at, "nor");
        size_t n = or ? verb_at(tokens, at + 1) : 0;
        if (n) return at + 1 + n - i;
    }
    return 0;
}

// "None of the irons have been checked for pitting", "neither lock was tried": up to the verb.
static size_t none_were(const struct tokens *tokens, size_t i) {
    static const char *const heads[] = {"none", "neither", "nothing"};
    static const char *const passives[] = {"been", "were", "was"};
    enum { FAR = 8 };
    if (!token_among(tokens, i, heads, COUNT(heads))) return 0;
    for (size_t at = i + 1; at < tokens->count && at < i + FAR && tokens->at[at].stop == STOP_NONE; at++) {
        if (!token_among(tokens, at, passives, COUNT(passives))) continue;
        size_t n = verb_at(tokens, at + 1), end = at + 1 + n;
        if (!n) return 0;
        bool on = token_is(tokens, end, "for");
        return on ? end + 1 - i : 0;
    }
    return 0;
}

size_t scope_unlooked(const struct tokens *tokens, size_t i) {
    enum { FILLERS_MOST = 7 };
    size_t none = none_were(tokens, i);
    if (none) return none;
    size_t n = negation_at(tokens, i);
    if (!n) return 0;
    size_t at = i + n, taken;
    bool first = token_is(tokens, i, "haven't") || token_is(tokens, i, "didn't") ||
                 token_is(tokens, i, "not") || token_is(tokens, i, "never");
    for (size_t k = 0; k < FILLERS_MOST && !verb_at(tokens, at) && (taken = filler_at(tokens, at)) != 0; k++)
        at += taken;
    taken = verb_at(tokens, at);
    if (token_is(tokens, at, "count") && ANY(tokens, at + 1, "on", "upon", "as", "for", "against")) return 0;
    if (!taken && first) taken = second_verb(tokens, at);
    if (!taken) return 0;
    bool apart = token_is(tokens, at, "counting") && n == 1; // "10 in tall not counting the handle"
    if (apart && (token_is(tokens, i, "not") || token_is(tokens, i, "without"))) return 0;
    bool tries =
        token_is(tokens, at, "try") || token_is(tokens, at, "tried") || token_is(tokens, at, "trying");
    at += taken;
    if (tries && token_is(tokens, at, "to")) return 0; // "haven't tried to free it"
    while (at < tokens->count && tokens->at[at].stop == STOP_NONE && (taken = link_at(tokens, at)) != 0)
        at += taken;
    return at - i;
}

// "I couldn't honestly tell you", "not at all certain": before what is not known.
size_t scope_unsure(const struct tokens *tokens, size_t i, size_t *head) {
    static const char *const heads[] = {"don't know",
                                        "do not know",
                                        "dont know",
                                        "didn't know",
                                        "wouldn't know",
                                        "can't say",
                                        "can't tell",
                                        "can't promise",
                                        "cannot promise",
                                        "can't guarantee",
                                        "cannot guarantee",
                                        "can't be sure",
                                        "can't be certain",
                                        "cannot be sure",
                                        "can't swear",
                                        "couldn't swear",
                                        "wouldn't swear",
                                        "can't confirm",
                                        "cannot confirm",
                                        "couldn't confirm",
                                        "couldn't tell you",
                                        "can't tell you",
                                        "couldn't say",
                                        "couldn't tell",
                                        "not sure",
                                        "not certain",
                                        "not convinced",
                                        "not clear",
                                        "unclear",
                                        "unsure",
                                        "uncertain",
                                        "no idea",
                                        "no clue",
                                        "not a clue",
                                        "haven't a clue",
                                        "no guarantee",
                                        "no guarantees",
                                        "no promises",
                                        "won't promise",
                                        "hard to say",
                                        "hard to tell",
                                        "difficult to say",
                                        "difficult to tell",
                                        "not confident",
                                        "not positive",
                                        "dunno",
                                        "god knows",
                                        "goodness knows",
                                        "wouldn't like to say",
                                        "not able to say",
                                        "unable to say",
                                        "not going to promise",
                                        "make no promises",
                                        "not 100% sure",
                                        "not entirely sure",
                                        "not totally sure",
                                        "not completely sure",
                                        "not altogether sure",
                                        "not really sure",
                                        "not quite sure",
                                        "don't really know",
                                        "don't honestly know",
                                        "can't honestly say",
                                        "couldn't honestly say",
                                        "not too sure",
                                        "can't really say",
                                        "can't vouch",
                                        "won't vouch",
                                        "couldn't vouch",
                                        "wouldn't vouch",
                                        "can't speak",
                                        "can't comment",
                                        "can't answer",
                                        "can't attest",
                                        "cannot vouch",
                                        "cant vouch",
                                        "cant say",
                                        "cant tell",
                                        "cannot say",
                                        "cannot tell",
                                        "wouldn't bet",
                                        "not guaranteed",
                                        "remains to be seen",
                                        "unknown",
                                        "not known",
                                        "who knows"};
    static const char *const links[] = {"if",
                                        "whether",
                                        "about",
                                        "that",
                                        "how",
                                        "how well",
                                        "how far",
                                        "how good",
                                        "on",
                                        "as to",
                                        "to",
                                        "for",
                                        "of",
                                        "how long",
                                        "how much",
                                        "what it's like",
                                        "what its like",
                                        "what they're like",
                                        "what state",
                                        "what's",
                                        "what is",
                                        "what condition"};
    static const char *const nots[] = {"no", "not", "isn't", "aren't", "never", "without", "free", "none"};
    static const char *const clauses[] = {"it",    "it's",    "its",   "they",       "they're",
                                          "the",   "all",     "every", "everything", "you",
                                          "these", "there's", "there", "both",       "this"};
    size_t n = token_longest(tokens, i, heads, COUNT(heads));
    *head = 0;
    if (!n || i + n >= tokens->count || tokens->at[i + n].stop != STOP_NONE) return 0;
    *head = n;
    size_t link = token_longest(tokens, i + n, links, COUNT(links));
    static const char *const open[] = {"sure",  "certain", "know",    "idea",  "clue",
                                       "dunno", "unsure",  "unclear", "knows", "convinced"};
    bool asks = token_among(tokens, i + n - 1, open, COUNT(open)); // "not sure there aren't chips"
    for (size_t k = i + n; k < i + n + link + 3 && !asks;
         k++) // "can't say there's no rust": there may well be
        if (token_among(tokens, k, nots, COUNT(nots))) return 0;
    return link || token_among(tokens, i + n, clauses, COUNT(clauses)) ? n + link : 0;
}

// "Seams not checked", "the wiring is unchecked": behind what was not looked at.
size_t scope_left_unlooked(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"not checked",
                                        "not inspected",
                                        "not examined",
                                        "not looked at",
                                        "not been checked",
                                        "not been looked at",
                                        "not been inspected",
                                        "not been examined",
                                        "unchecked",
                                        "uninspected",
                                        "unexamined",
                                        "unverified",
                                        "not verified",
                                        "haven't been checked",
                                        "hasn't been checked",
                                        "hasn't been looked at",
                                        "wasn't checked",
                                        "weren't checked",
                                        "never checked",
                                        "never been checked",
                                        "not yet checked",
                                        "isn't checked",
                                        "aren't checked",
                                        "haven't been looked at",
                                        "never looked at",
                                        "not gone over",
                                        "i haven't checked",
                                        "i didn't check",
                                        "not gone into",
                                        "i didn't look at",
                                        "i haven't looked at",
                                        "not opened",
                                        "not been opened",
                                        "not assessed",
                                        "unknown",
                                        "not known",
                                        "an unknown",
                                        "is a mystery",
                                        "unproven",
                                        "not proven",
                                        "not tried out",
                                        "not gone through",
                                        "not confirmed",
                                        "unconfirmed",
                                        "not verified",
                                        "not tried myself",
                                        "not touched",
                                        "not looked into",
                                        "not been gone into",
                                        "hasn't been verified"};
    size_t n = token_longest(tokens, i, words, COUNT(words)), end = i + n;
    if (!n) return 0;
    while (end < tokens->count &&
           (token_is(tokens, end, "yet") || token_is(tokens, end, "over") ||
            token_is(tokens, end, "properly") || token_is(tokens, end, "fully") ||
            token_is(tokens, end, "either") || token_is(tokens, end, "by") || token_is(tokens, end, "me") ||
            token_is(tokens, end, "it") || token_is(tokens, end, "them")))
        end++;
    enum { WORDS_MOST = 6 };
    for (size_t k = 0; k < WORDS_MOST && end > i + n && token_is(tokens, i + n, "by") &&
                       end < tokens->count && tokens->at[end].stop == STOP_NONE;
         k++)
        end++; // "by anybody who knows"
    bool ends = end >= tokens->count || tokens->at[end].stop != STOP_NONE || token_is(tokens, end, "and") ||
                token_is(tokens, end, "but") || token_is(tokens, end, "so") ||
                token_is(tokens, end, "beyond") || token_is(tokens, end, "except");
    return ends ? n : 0;
}
