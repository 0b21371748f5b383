// SPDX-License-Identifier: MIT
// The degree said later of the fault: "there's a crack in it but it's tiny", "stain on the lid. Not big.",
// "chips on the rim - you'd hardly notice", and of several at once: "scratches and a dent, nothing major",
// "both small". What may be said of the thing itself ("it's heavy") is left to the thing.
#include "notes/any.h"
#include "notes/faults.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { FAR = 12, WORDS_MOST = 4 };

struct statement {
    bool of_it;     // "it's", "they are"
    bool of_all;    // "nothing", "both", "all": of every fault before
    bool contrasts; // "but", "though"
    bool narrows;   // "only", "just"
    bool denies;    // "isn't", "not"
    bool own;       // no thing stands in the fault's sentence: "A tear in the hem. It's small."
};

static size_t subject_at(const struct tokens *tokens, size_t i, struct statement *told) {
    static const char *const its[] = {"one is",
                                      "one goes",
                                      "one runs",
                                      "one gets",
                                      "one looks",
                                      "one's",
                                      "the worst is",
                                      "the worst one is",
                                      "the biggest is",
                                      "one of them is",
                                      "one of which is",
                                      "the largest is",
                                      "some are",
                                      "a few are",
                                      "a couple are",
                                      "two are",
                                      "two of them are",
                                      "one of them",
                                      "some of them are",
                                      "it's",
                                      "its",
                                      "it is",
                                      "it was",
                                      "that's",
                                      "thats",
                                      "it isn't",
                                      "it isnt",
                                      "it looks",
                                      "it's not",
                                      "that is",
                                      "this is",
                                      "isn't",
                                      "isnt",
                                      "it's a",
                                      "its a",
                                      "it does look",
                                      "i'd call it",
                                      "i would call it",
                                      "i'd say it's",
                                      "i'd say",
                                      "i would say",
                                      "call it",
                                      "is"};
    static const char *const many[] = {"neither",
                                       "none",
                                       "none of them",
                                       "none of it",
                                       "none of these",
                                       "neither one",
                                       "neither is",
                                       "neither of them",
                                       "neither of them is",
                                       "neither are",
                                       "none are",
                                       "none is",
                                       "none of these are",
                                       "they're",
                                       "theyre",
                                       "they are",
                                       "they aren't",
                                       "all",
                                       "both",
                                       "both are",
                                       "they're all",
                                       "all of them",
                                       "all of it",
                                       "none of it's",
                                       "none of it is",
                                       "none of them are",
                                       "these are",
                                       "they look",
                                       "all just",
                                       "all only",
                                       "both just",
                                       "both only",
                                       "aren't",
                                       "they're both",
                                       "are"};
    size_t n = token_longest(tokens, i, its, COUNT(its));
    if (n) {
        told->of_it = true;
    } else {
        n = token_longest(tokens, i, many, COUNT(many));
        told->of_it = told->of_all = n > 0;
    }
    if (ANY(tokens, i, "none", "neither")) told->denies = n > 0;
    for (size_t k = i; k < i + n; k++) told->denies |= ANY(tokens, k, "isn't", "isnt", "not", "aren't");
    return n;
}

// "Heavy", "large": said as often of the thing as of its fault.
static bool is_of_thing(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "heavy", "light", "big", "large", "huge", "thick", "thin", "strong", "small",
               "little", "massive", "solid", "enormous", "bigger", "smaller", "modest", "even", "surface");
}

// "It's small." with nothing behind it: of weight and build ("heavy", "solid") it is said of the thing all
// the same.
static bool is_size_alone(const struct tokens *tokens, size_t end) {
    bool ends =
        end >= tokens->count || tokens->at[end].stop >= STOP_CLAUSE || ANY(tokens, end, "though", "tho");
    return ends &&
           ANY(tokens, end - 1, "big", "large", "huge", "small", "little", "massive", "enormous", "strong");
}

static bool is_tail(const struct tokens *tokens, size_t i) {
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE ||
           ANY(tokens, i, "though", "tho", "and", "but", "so", "you", "tbh", "really", "mind", "if", "one",
               "ones", "honestly", "imo", "i", "just", "only", "overall", "anyway", "thankfully", "enough",
               "not") ||
           (token_is(tokens, i, "to") && ANY(tokens, i + 1, "be", "tell", "say"));
}

// "Nothing structural", "nothing too alarming": whatever it is not, it is little.
static size_t nothing_at(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (!ANY(tokens, i, "nothing", "not")) return 0;
    size_t at = i + 1;
    while (ANY(tokens, at, "too", "very", "really", "that", "overly", "anything", "at", "all")) at++;
    if (token_is(tokens, i, "not") && !token_is(tokens, i + 1, "anything")) return 0;
    if (at >= tokens->count || tokens->at[at].kind != TOKEN_WORD || r->scope.fault[at] || r->part[at] ||
        ANY(tokens, at, "else", "missing", "wrong", "more", "included", "there", "special", "fancy", "on",
            "in", "inside", "is", "to", "of", "about", "like", "but", "known", "original", "new", "with",
            "for", "works"))
        return 0;
    return is_tail(tokens, at + 1) ? at + 1 - i : 0;
}

// The words of degree at `i` with what strengthens or denies them; `*end` behind them.
static enum severity core_at(const struct fault_reader *r, size_t i, struct statement *told, size_t *end) {
    const struct tokens *tokens = &r->note->tokens;
    size_t n;
    enum severity found = token_is(tokens, i, "solid") ? SEVERITY_UNKNOWN : degree_word_behind(r, i, &n);
    told->of_all |= token_is(tokens, i, "nothing") || token_is(tokens, i, "none");
    if (found && (degree_is_of_goods(r, i, n) || degree_leads(r, i + n)))
        return SEVERITY_UNKNOWN; // "slightly tapered"
    if (!found && (n = nothing_at(r, i)) != 0) found = SEVERITY_LIGHT;
    if (found) {
        *end = i + n;
        return told->denies ? SEVERITY_LIGHT : found;
    }
    for (size_t k = 0; k < WORDS_MOST && !degree_word(r, i, &n); k++, i++) {
        told->denies |= ANY(tokens, i, "not", "isn't", "aren't", "nothing");
        told->narrows |= ANY(tokens, i, "only", "just");
        if (!ANY(tokens, i, "not", "isn't", "aren't", "nothing", "only", "just", "very", "really", "so",
                 "that", "too", "all", "super", "real", "quite", "pretty", "rather", "fairly", "a", "an"))
            return SEVERITY_UNKNOWN;
    }
    found = degree_word(r, i, &n);
    if (found && degree_is_of_goods(r, i, n)) return SEVERITY_UNKNOWN;
    *end = i + n;
    bool new_subject = told->of_it && token_is(tokens, *end, "the"); // "one is bad the rest small"
    if (!found || (!is_tail(tokens, *end) && !new_subject)) return SEVERITY_UNKNOWN;
    if (told->of_it && is_of_thing(tokens, *end - 1) && !told->contrasts && !told->narrows && !told->denies &&
        !(told->own && is_size_alone(tokens, *end)))
        return SEVERITY_UNKNOWN;
    return told->denies && found != SEVERITY_LIGHT ? SEVERITY_LIGHT : found;
}

// A statement of degree alone that begins at `i`. `crossed`: behind a full stop.
static enum severity statement_at(const struct fault_reader *r, size_t i, bool crossed, bool shared, bool own,
                                  size_t *end) {
    const struct tokens *tokens = &r->note->tokens;
    struct statement told = {.own = own};
    while (ANY(tokens, i, "but", "and", "though", "although", "however", "only", "just", "well", "like",
               "tbh", "honestly", "thankfully", "luckily", "mostly", "tho", "really")) {
        told.contrasts |= ANY(tokens, i, "but", "though", "although", "however", "tho");
        told.narrows |= ANY(tokens, i, "only", "just");
        i++;
    }
    if (r->note->taken[i] == TAKEN_MARK) return SEVERITY_UNKNOWN;
    i += subject_at(tokens, i, &told);
    enum severity found = core_at(r, i, &told, end);
    if (!found || (shared && !told.of_all)) return SEVERITY_UNKNOWN;
    if (!crossed) return found;
    bool one = ANY(tokens, *end, "one", "ones") &&
               (*end + 1 >= tokens->count || tokens->at[*end + 1].stop >= STOP_CLAUSE);
    bool sure = told.of_it || one || *end >= tokens->count || tokens->at[*end].stop >= STOP_CLAUSE ||
                ANY(tokens, *end, "though", "tho", "to", "honestly", "tbh");
    bool its = one || !is_of_thing(tokens, *end - 1) || (own && is_size_alone(tokens, *end));
    return sure && its ? found : SEVERITY_UNKNOWN;
}

enum severity degree_of_statement(const struct fault_reader *r, size_t i, size_t *end) {
    return statement_at(r, i, false, false, false, end);
}

// "The rust on the lid is light", "staining is minimal": the fault itself is the subject.
static enum severity predicate_of(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const verbs[] = {"is",   "are",   "was",  "were",  "isn't", "aren't",
                                        "isnt", "looks", "look", "seems", "seem"};
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = hit->to; i < tokens->count && i < hit->to + FAR && tokens->at[i].stop == STOP_NONE; i++) {
        struct statement told = {0};
        size_t end = 0;
        if (token_among(tokens, i, verbs, COUNT(verbs))) {
            told.denies = ANY(tokens, i, "isn't", "aren't", "isnt");
            enum severity found = core_at(r, i + 1, &told, &end);
            for (size_t k = i; found && k < end; k++)
                if (r->note->taken[k] == TAKEN_NOT) note_take(r->note, k, k + 1, TAKEN_SCOPE);
            return found;
        }
        if (!r->part[i] && !spot_preposition(tokens, i) && !spot_article(tokens, i)) break;
    }
    return SEVERITY_UNKNOWN;
}

// Is the fault all that its sentence speaks of, and not a thing that has it?
static bool speaks_of_fault(const struct fault_reader *r, const struct fault_hit *hit) {
    for (size_t i = scope_sentence_start(&r->scope, hit->from);
         i < r->note->tokens.count && r->note->tokens.at[i].stop < STOP_SENTENCE; i++)
        if (r->note->taken[i] == TAKEN_TYPE) return false;
    return true;
}

// "One is tiny, the other is big": the worse of both.
static enum severity worse_of(const struct fault_reader *r, size_t start, size_t end, enum severity found) {
    const struct tokens *tokens = &r->note->tokens;
    if (found == SEVERITY_HEAVY || !ANY(tokens, start, "one", "some", "two", "a")) return found;
    for (size_t i = end; i < tokens->count && i < end + FAR && tokens->at[i].stop < STOP_SENTENCE; i++) {
        size_t n;
        enum severity other = degree_word(r, i, &n);
        if (other > found && !ANY(tokens, i - 1, "not", "isn't", "no", "too", "that")) found = other;
    }
    return found;
}

static bool opens(const struct tokens *tokens, size_t i) {
    return tokens->at[i].stop != STOP_NONE || ANY(tokens, i, "but", "and", "though", "although", "only");
}

enum severity degree_said_later(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    bool crossed = false, shared = false;
    enum severity own = predicate_of(r, hit);
    if (own) return own;
    for (size_t i = hit->to; i < tokens->count && i < hit->to + FAR; i++) {
        if (r->scope.fault[i] && !r->part[i]) shared = true;
        if (!opens(tokens, i)) continue;
        size_t start = tokens->at[i].stop != STOP_NONE ? i + 1 : i, end = 0;
        while (start < tokens->count && tokens->at[start].stop >= STOP_SENTENCE) start++; // "!!"
        bool full = tokens->at[i].stop >= STOP_SENTENCE;
        if (crossed && full) return SEVERITY_UNKNOWN;
        crossed |= full;
        if (start >= tokens->count || fault_told_again(r, start)) return SEVERITY_UNKNOWN;
        enum severity found = statement_at(r, start, crossed, shared, speaks_of_fault(r, hit), &end);
        if (found) {
            found = worse_of(r, start, end, found);
            for (size_t k = start; k < end; k++)
                if (r->note->taken[k] == TAKEN_NOT) note_take(r->note, k, k + 1, TAKEN_SCOPE);
            return found;
        }
        if (crossed) return SEVERITY_UNKNOWN;
        if (start > i + 1) i = start - 1;
    }
    return SEVERITY_UNKNOWN;
}
