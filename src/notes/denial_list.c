// SPDX-License-Identifier: MIT
// The list under one "no": what joins its items, and what ends it though no stop does, a verb, a state, a
// part with a fault of its own, or a place that only one of them has.
#include "notes/denial_list.h"

#include <string.h>

#include "notes/any.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// They open a predicate of their own and so end a list that was denied.
bool denial_ends_list(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "is",      "are",   "was",   "were",    "has",      "have",  "had",    "works", "work",  "needs",
        "need",    "got",   "gets",  "shows",   "comes",    "come",  "looks",  "look",  "feels", "runs",
        "sits",    "fits",  "holds", "opens",   "measures", "does",  "it",     "its",   "it's",  "theres",
        "there's", "there", "they",  "because", "so",       "since", "and it", "please"};
    return token_among(tokens, i, words, COUNT(words));
}

bool denial_joins(const struct tokens *tokens, size_t i) {
    return tokens->at[i].stop == STOP_COMMA || token_is(tokens, i, "or") || token_is(tokens, i, "nor") ||
           token_is(tokens, i, "and") || token_is(tokens, i, "&") || token_is(tokens, i, "/");
}

// "Split", "chipped", "loose": what a part is said to be, behind its name.
bool denial_is_state(const struct token *token) {
    static const char *const words[] = {"split",   "torn",  "bent",   "worn",  "loose", "broken",
                                        "missing", "gone",  "rusty",  "stiff", "stuck", "dirty",
                                        "wobbly",  "faded", "grubby", "musty"};
    size_t size = strlen(token->fold);
    for (size_t k = 0; k < COUNT(words); k++)
        if (text_same(token->fold, words[k])) return true;
    return size > 4 && text_same(token->fold + size - 2, "ed");
}

// A fault behind a comma with a place of its own, where no "or" closes the list.
static bool has_place_alone(const struct scope *s, size_t i) {
    static const char *const places[] = {"on",    "in",     "at",     "near", "along", "across",
                                         "under", "inside", "around", "by",   "round"};
    static const char *const joints[] = {"or", "nor", "and", "anywhere", "either", "any"};
    enum { FAR = 7 };
    const struct tokens *tokens = &s->note->tokens;
    bool own = false; // "moth in the backing": a word of the fault itself
    for (; i < tokens->count && s->fault[i]; i++) own |= token_among(tokens, i, places, COUNT(places));
    if (ANY(tokens, i, "about", "measuring", "roughly", "nearly")) return true; // "tear about two inches"
    bool over = ANY(tokens, i, "all") && ANY(tokens, i + 1, "over", "round", "around", "along");
    if (!own && !over && !token_among(tokens, i, places, COUNT(places))) return false;
    for (size_t at = i; at < tokens->count && at < i + FAR && tokens->at[at].stop < STOP_CLAUSE; at++)
        if (token_among(tokens, at, joints, COUNT(joints))) return false;
    return true;
}

// "No chips, the gold is rubbed": behind a comma stands a statement with a verb of its own; but "no chips,
// cracks are to be seen" goes on.
// "The lining's splitting", "the hook's off": a noun with its verb, and what is said of it.
static bool is_contracted(const struct tokens *tokens, size_t i) {
    size_t size = strlen(tokens->at[i].fold), next = i + 1;
    if (size < 4 || !text_same(tokens->at[i].fold + size - 2, "'s") || tokens->at[i].stop != STOP_NONE ||
        next >= tokens->count || tokens->at[next].kind != TOKEN_WORD)
        return false;
    const char *word = tokens->at[next].fold;
    size = strlen(word);
    return (size > 5 && (text_same(word + size - 3, "ing") || text_same(word + size - 2, "ed"))) ||
           ANY(tokens, next, "off", "gone", "bent", "torn", "split", "loose", "stiff", "stuck", "worn",
               "broken", "missing", "rusty", "shot", "perished", "dented", "a", "been");
}

bool scope_states_own(const struct tokens *tokens, size_t i) {
    static const char *const verbs[] = {"is",    "are",    "was",   "were",    "has",    "have",
                                        "looks", "got",    "feels", "isn't",   "aren't", "doesn't",
                                        "don't", "hasn't", "won't", "haven't", "wasn't"};
    static const char *const shown[] = {"visible", "present", "seen",  "noted", "found",  "evident",
                                        "there",   "to",      "known", "shown", "noticed"};
    enum { WORDS_MOST = 5, PLACE_WORDS = 3 };
    size_t most = i + WORDS_MOST;
    for (size_t at = i; at < tokens->count && at < most; at++) {
        if (at > i && most == i + WORDS_MOST && ANY(tokens, at, "on", "at", "in", "of", "under") &&
            ANY(tokens, at + 1, "the", "its", "one", "top"))
            most += PLACE_WORDS; // "and the rest on the right has been bent"
        if (tokens->at[at].stop != STOP_NONE || token_is(tokens, at, "or") || token_is(tokens, at, "and") ||
            token_is(tokens, at, "that") || token_is(tokens, at, "which"))
            return false;
        if (at > i && is_contracted(tokens, at)) return true; // "no moth, the lining's splitting"
        if (at > i && token_among(tokens, at, verbs, COUNT(verbs)))
            return !token_among(tokens, at + 1, shown, COUNT(shown));
    }
    return false;
}

// "Not checked for accuracy, scratched case": what "not" was said of is over.
static bool opens_worn(const struct scope *s, size_t from, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    return from > 0 && token_is(tokens, from - 1, "not") && ANY(tokens, from, "checked", "tested", "tried") &&
           i + 1 < tokens->count && s->fault[i] && denial_is_state(&tokens->at[i]) &&
           tokens->at[i].stop == STOP_NONE && tokens->at[i + 1].kind == TOKEN_WORD;
}

// "No woodworm and dusty inside", "not moth eaten and pilling on one side": of things that are not there and
// what it is not like no list is made, so that behind "and" something else is said.
static bool turns_kind(const struct scope *s, size_t from, size_t i) {
    static const char *const states[] = {"dusty", "rusty",  "musty", "grubby", "dirty", "sticky", "greasy",
                                         "mucky", "smelly", "shaky", "wobbly", "tatty", "grimy",  "sooty",
                                         "loose", "stiff",  "bent",  "torn",   "worn",  "stuck",  "faded"};
    const struct tokens *tokens = &s->note->tokens;
    if (from == 0 || i >= tokens->count || !s->fault[i]) return false;
    bool state = denial_is_state(&tokens->at[i]) || token_among(tokens, i, states, COUNT(states));
    bool alone = i + 1 >= tokens->count || tokens->at[i].stop != STOP_NONE || !s->fault[i + 1];
    if (ANY(tokens, from - 1, "no", "without")) return state && alone;
    return ANY(tokens, from - 1, "not", "isn't", "aren't") && !state &&
           denial_is_state(&tokens->at[from + 1 < i ? i - 2 : from]) && has_place_alone(s, i);
}

// "No dents, lacquer mostly worn off": a part and what is said of it, all of them words of one fault.
static bool tells_part(const struct scope *s, size_t i) {
    static const char *const degrees[] = {"mostly", "badly",      "partly", "slightly", "nearly",
                                          "almost", "completely", "mainly", "quite",    "very"};
    const struct tokens *tokens = &s->note->tokens;
    static const char *const ends[] = {"off", "away", "through", "gone", "down"};
    bool done = false, degree = false;
    for (size_t at = i + 1; at < tokens->count && s->fault[at] && tokens->at[at].stop == STOP_NONE; at++) {
        done |= denial_is_state(&tokens->at[at]);
        degree |= token_among(tokens, at, degrees, COUNT(degrees)) ||
                  token_among(tokens, at + 1, ends, COUNT(ends)); // "lacquer worn off"
    }
    bool owner = strstr(tokens->at[i].fold, "'s") != NULL; // "knob's missing"
    return done && (degree || owner || s->note->taken[i] == TAKEN_PART);
}

// "No cracks, hanging ring missing": one part without an article that lacks. "No cracks, bits missing or
// chips" goes on.
static bool tells_lack(const struct scope *s, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    size_t at = i;
    while (at + 1 < tokens->count && s->fault[at] && tokens->at[at].stop == STOP_NONE &&
           !ANY(tokens, at, "missing", "gone", "absent", "lost"))
        at++;
    return at > i && ANY(tokens, at, "missing", "gone", "absent", "lost") &&
           tokens->at[at - 1].one == tokens->at[at - 1].fold &&
           (at + 1 >= tokens->count || tokens->at[at + 1].stop != STOP_NONE);
}

bool denial_is_part(const struct scope *s, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    struct word_entry entry;
    return i < tokens->count && s->note->book &&
           wordbook_find(s->note->book, tokens->at[i].one, strlen(tokens->at[i].one), &entry) &&
           (entry.uses & (1u << USE_PART));
}

// "No dents, scratched lid": what a part is, behind the name of a fault. "No chipped rims, cracked lids" goes
// on.
static bool is_parts_own(const struct scope *s, size_t at, size_t comma_end) {
    const struct tokens *tokens = &s->note->tokens;
    size_t next = at + 1;
    while (next < tokens->count && s->fault[next]) next++;
    bool part = next < tokens->count && tokens->at[at].stop == STOP_NONE && denial_is_part(s, next);
    return part && denial_is_state(&tokens->at[at]) && comma_end > 1 && s->fault[comma_end - 2];
}

// "No moth, smells of cedar": a verb behind the comma, and what it takes. "No rattles, squeaks or hums" goes
// on.
static bool opens_verb(const struct tokens *tokens, size_t i) {
    static const char *const verbs[] = {
        "smells", "smelled", "smelt", "reeks",  "stinks",  "wobbles", "rocks",  "squeaks", "creaks",
        "sticks", "leans",   "leaks", "drips",  "rattles", "skips",   "jumps",  "slips",   "wants",
        "rubs",   "catches", "sags",  "bulges", "flexes",  "moves",   "whiffs", "pongs",   "hums"};
    static const char *const takes[] = {
        "of",       "like",     "a",        "an",     "the",     "faintly", "slightly", "when", "if",
        "on",       "strongly", "badly",    "from",   "really",  "in",      "at",       "some", "very",
        "kind",     "sort",     "quite",    "though", "strong",  "more",    "most",     "old",  "musty",
        "damp",     "fusty",    "smoky",    "stale",  "lightly", "mildly",  "vaguely",  "out",  "to",
        "terribly", "awfully",  "horribly", "so",     "too",     "until"};
    return token_among(tokens, i, verbs, COUNT(verbs)) && tokens->at[i].stop == STOP_NONE &&
           token_among(tokens, i + 1, takes, COUNT(takes));
}

// "Not a chip or a crack", "hasn't a nick, a scuff or a single scratch": an article that stands behind "or",
// or in a list that began with one and that an "or" closes, opens no statement.
bool denial_article(const struct scope *s, size_t from, size_t i) {
    static const char *const small[] = {"a",      "an",   "one",    "single", "small",
                                        "little", "tiny", "slight", "minor",  "faint"};
    enum { AHEAD = 9 };
    const struct tokens *tokens = &s->note->tokens;
    size_t at = i;
    if (!token_among(tokens, i, small, COUNT(small))) return false;
    while (at > from && token_among(tokens, at - 1, small, COUNT(small))) at--;
    if (at <= from) return false;
    if (ANY(tokens, at - 1, "or", "nor")) return !ANY(tokens, i + 1, "two", "so", "more");
    if (tokens->at[at - 1].stop != STOP_COMMA || !ANY(tokens, from, "a", "an", "one", "single")) return false;
    for (size_t k = i + 1; k < tokens->count && k < i + AHEAD && tokens->at[k].stop < STOP_CLAUSE; k++) {
        if (ANY(tokens, k, "or", "nor")) return !ANY(tokens, k + 1, "two", "so", "more");
        if (denial_ends_list(tokens, k) || ANY(tokens, k, "and", "but")) return false;
    }
    return false;
}

// Is what follows a comma or "and" more of the list: fault words before anything that opens a new statement?
bool denial_list_goes_on(const struct scope *s, size_t from, size_t i, bool comma) {
    const struct tokens *tokens = &s->note->tokens;
    if (i > 0 && tokens->at[i - 1].stop == STOP_COMMA && scope_states_own(tokens, i)) return false;
    static const char *const states[] = {"good",  "fair", "normal", "usual", "nice",     "decent",
                                         "great", "fine", "honest", "age",   "ordinary", "general"};
    if (comma && token_among(tokens, i, states, COUNT(states))) return false; // "no chips, normal wear"
    if (comma && opens_verb(tokens, i)) return false;
    if (comma && denial_article(s, from, i)) return true;
    enum { WORDS_MOST = 4 }; // "… or any other wear"
    for (size_t at = i; at < tokens->count && at < i + WORDS_MOST; at++) {
        if (denial_article(s, from, at)) continue;
        if (tokens->at[at].stop != STOP_NONE || s->positive[at] || denial_ends_list(tokens, at)) return false;
        if ((token_is(tokens, at, "i") && token_is(tokens, at + 1, "say")) || token_is(tokens, at, "but") ||
            token_is(tokens, at, "just") || token_is(tokens, at, "only"))
            return false;
        if (s->fault[at] && at > i && denial_is_state(&tokens->at[at]))
            return false; // "not scratched, wrap split"
        if (s->fault[at]) {
            // "lid cracked" after a comma is a statement; "rust spots" and "edge wear" are fault words
            // themselves.
            if (comma && has_place_alone(s, at)) return false; // "no loose pages, name on the flyleaf"
            if (comma && (tells_part(s, at) || tells_lack(s, at) || is_parts_own(s, at, i))) return false;
            return at == i || !(s->note->taken[at - 1] == TAKEN_PART);
        }
        if (token_is(tokens, at, "anything") || token_is(tokens, at, "any") || token_is(tokens, at, "other"))
            return true;
    }
    return false;
}

// "No repairs, missing the wedge", "no rust and lost its handle": what lacks has an article or a number, and
// so is no more of the list. "No repairs, missing pages or tears" goes on.
static bool opens_lack(const struct tokens *tokens, size_t i) {
    static const char *const verbs[] = {"missing", "lacking", "lacks", "lost", "wanting", "short"};
    static const char *const articles[] = {"the",  "its",  "it's", "a",    "an",      "one",  "two", "three",
                                           "four", "some", "all",  "both", "several", "half", "of",  "most",
                                           "five", "six",  "only", "just", "his",     "her",  "my",  "their"};
    return i < tokens->count && token_among(tokens, i, verbs, COUNT(verbs)) &&
           tokens->at[i].stop == STOP_NONE &&
           (token_among(tokens, i + 1, articles, COUNT(articles)) ||
            tokens->at[i + 1].kind == TOKEN_FIGURE) &&
           !ANY(tokens, i - 1, "or", "nor");
}

// "None rusted through, surface rust yes": the answer stands behind it.
static bool is_affirmed(const struct scope *s, size_t i) {
    enum { WORDS_MOST = 4 };
    const struct tokens *tokens = &s->note->tokens;
    size_t at = i;
    while (at < tokens->count && at < i + WORDS_MOST && tokens->at[at].stop == STOP_NONE &&
           !ANY(tokens, at, "yes"))
        at++;
    return at > i && ANY(tokens, at, "yes");
}

bool denial_list_ends(const struct scope *s, size_t from, size_t i) {
    const struct tokens *tokens = &s->note->tokens;
    if (opens_lack(tokens, i) || is_affirmed(s, i)) return true;
    bool and = token_is(tokens, i - 1, "and") || token_is(tokens, i - 1, "&");
    if (opens_verb(tokens, i) || opens_worn(s, from, i)) return true;
    return and&&(scope_states_own(tokens, i) || turns_kind(s, from, i) || tells_lack(s, i));
}

size_t denial_none_are(const struct scope *s, size_t i) {
    static const char *const between[] = {"of",   "them", "are",  "is",   "the", "have", "has",
                                          "been", "seem", "look", "with", "a",   "an",   "any"};
    const struct tokens *tokens = &s->note->tokens;
    size_t at = i + 1;
    while (token_among(tokens, at, between, COUNT(between)) ||
           (at > i + 1 && ANY(tokens, at + 1, "are", "is", "have", "has"))) // "none of the beads are chipped"
        at++;
    return at < tokens->count && s->fault[at] ? at : 0;
}
