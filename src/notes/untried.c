// SPDX-License-Identifier: MIT
// Which part was not tried: "haven't tried the heater or the fan", "motor and pump untested", "the wiring is
// untested". Where nothing is named it is the thing itself.
#include "notes/any.h"
#include "notes/faults.h"
#include "notes/things.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { WORDS_MOST = 3 };

static bool article_at(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"the",  "its", "either", "both", "all", "any",  "every",
                                        "each", "of",  "out",    "a",    "an",  "their"};
    return token_among(tokens, i, words, COUNT(words));
}

static bool joint_at(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"and", "or", "nor", "&"};
    return token_among(tokens, i, words, COUNT(words));
}

static bool closes(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "because", "so", "as",      "since", "but",   "yet",     "with",    "though", "myself",
        "on",      "in", "for",     "when",  "until", "is",      "are",     "was",    "at",
        "either",  "by", "between", "under", "over",  "against", "through", "behind"};
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE || joint_at(tokens, i) ||
           token_among(tokens, i, words, COUNT(words));
}

// Words that stand for the thing, or for no part of it.
static bool is_vague(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "it",   "them", "this",   "that",   "these",   "item",       "one",   "ones",     "thing",  "unit",
        "set",  "lot",  "piece",  "pieces", "any",     "myself",     "yet",   "properly", "fully",  "time",
        "full", "sold", "all",    "still",  "them",    "everything", "i",     "machine",  "gadget", "well",
        "they", "its",  "things", "play",   "working", "way",        "order", "anything", "itself"};
    return token_among(tokens, i, words, COUNT(words));
}

static bool is_thing(const struct fault_reader *r, size_t last) {
    return r->note->taken[last] == TAKEN_TYPE || is_vague(&r->note->tokens, last);
}

static size_t behind(const struct fault_reader *r, size_t i, struct spot *parts) {
    const struct tokens *tokens = &r->note->tokens;
    size_t n = 0;
    while (n < LIST_MOST) {
        bool named = article_at(tokens, i);
        while (article_at(tokens, i)) i++;
        size_t to = i;
        while (to < tokens->count && to < i + WORDS_MOST && !closes(tokens, to) &&
               tokens->at[to].kind == TOKEN_WORD && !r->scope.fault[to])
            to++;
        if (to == i || ANY(tokens, i, "no", "not", "never") || !closes(tokens, to) || is_thing(r, to - 1) ||
            is_vague(tokens, i))
            break;
        struct noun_found found;
        if (!named && !r->part[to - 1] && !noun_at(r->note, to - 1, &found)) break;
        parts[n++] = (struct spot){.part_from = i, .part_to = to};
        if (!joint_at(tokens, to) && !(to < tokens->count && tokens->at[to].stop == STOP_COMMA)) break;
        i = to + 1;
    }
    return n;
}

static bool links(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"is",     "are",  "was",  "were", "has",        "have",    "been",
                                        "still",  "also", "but",  "not",  "i",          "haven't", "we",
                                        "though", "all",  "both", "yet",  "completely", "totally"};
    return token_among(tokens, i, words, COUNT(words));
}

static size_t before(const struct fault_reader *r, const struct fault_hit *hit, size_t i,
                     struct spot *parts) {
    const struct tokens *tokens = &r->note->tokens;
    size_t n = 0, to = i;
    while (to > 0 && links(tokens, to - 1)) to--;
    while (n < LIST_MOST && to > 0) {
        size_t from = to;
        while (from > 0 && to - from < WORDS_MOST && tokens->at[from - 1].kind == TOKEN_WORD &&
               tokens->at[from - 1].stop == STOP_NONE && !article_at(tokens, from - 1) &&
               !joint_at(tokens, from - 1) && (!r->scope.fault[from - 1] || from > hit->from) &&
               !is_vague(tokens, from - 1) && r->note->taken[from - 1] != TAKEN_TYPE)
            from--;
        struct noun_found found;
        if (from == to || is_thing(r, to - 1)) break;
        bool named = from > 0 && article_at(tokens, from - 1);
        if (!named && !r->part[to - 1] && !noun_at(r->note, to - 1, &found)) break;
        size_t start = from;
        while (start > 0 && article_at(tokens, start - 1)) start--;
        bool joined = start > 0 && joint_at(tokens, start - 1);
        bool comma = n > 0 && start > 0 && tokens->at[start - 1].stop == STOP_COMMA;
        static const char *const doubts[] = {"but", "if",    "whether", "that", "well",
                                             "how", "about", "all",     "sure", "of"};
        bool opens = start == 0 || tokens->at[start - 1].stop != STOP_NONE || joined ||
                     token_among(tokens, start - 1, doubts, COUNT(doubts));
        if (!opens) break;
        parts[n++] = (struct spot){.part_from = from, .part_to = to};
        if (!joined && !comma) break;
        to = start - 1;
    }
    return n;
}

// "Spare bulb included, untested", "comes with a charger, not tried": what is beside the thing, and not the
// thing.
static size_t beside(const struct fault_reader *r, const struct fault_hit *hit, struct spot *parts) {
    static const char *const leads[] = {"comes", "come", "with", "there's",  "theres", "there", "is",  "also",
                                        "and",   "plus", "has",  "includes", "a",      "an",    "the", "its"};
    static const char *const tails[] = {"included", "too",  "as",       "with", "is",     "are", "in",
                                        "there",    "here", "supplied", "and",  "thrown", "for"};
    enum { FAR = 9 };
    const struct tokens *tokens = &r->note->tokens;
    size_t comma = hit->from, start;
    while (comma > 0 && tokens->at[comma - 1].stop == STOP_NONE && links(tokens, comma - 1)) comma--;
    if (comma == 0 || tokens->at[comma - 1].stop != STOP_COMMA) return 0;
    for (start = comma - 1; start > 0 && tokens->at[start - 1].stop == STOP_NONE && comma - start < FAR;)
        start--;
    if (start == 0 || tokens->at[start - 1].stop < STOP_SENTENCE) return 0;
    bool comes = ANY(tokens, start, "comes", "come", "with", "includes");
    while (start < comma && token_among(tokens, start, leads, COUNT(leads))) start++;
    bool extra = ANY(tokens, start, "spare", "extra", "second", "new");
    size_t to = start;
    while (to < comma && to < start + WORDS_MOST && tokens->at[to].kind == TOKEN_WORD &&
           !token_among(tokens, to, tails, COUNT(tails)))
        to++;
    if (to == start || (to < comma && !token_among(tokens, to, tails, COUNT(tails))) || is_thing(r, to - 1))
        return 0;
    if (to == comma && !extra && !comes) return 0; // "walnut case, untested": the thing is
    struct noun_found found;
    bool part = r->part[to - 1] || r->note->taken[to - 1] == TAKEN_INCLUDES;
    if (!part && !(extra && noun_at(r->note, to - 1, &found))) return 0;
    parts[0] = (struct spot){.part_from = start, .part_to = to};
    return 1;
}

size_t untried_parts(const struct fault_reader *r, const struct fault_hit *hit, struct spot *parts) {
    static const char *const works[] = {"works", "work", "working", "runs", "goes", "run", "functions"};
    if (hit->own_no) return beside(r, hit, parts);
    if (token_among(&r->note->tokens, hit->to - 1, works, COUNT(works)))
        return before(r, hit, hit->to - 1, parts);
    const struct tokens *tokens = &r->note->tokens;
    static const char *const verbs[] = {"tested", "test", "tried", "try", "testing",
                                        "trying", "run",  "used",  "out"};
    bool open = token_among(tokens, hit->to - 1, verbs, COUNT(verbs)) && hit->to < tokens->count &&
                tokens->at[hit->to].stop == STOP_NONE &&
                (hit->to == 0 || tokens->at[hit->to - 1].stop == STOP_NONE);
    size_t n = open ? behind(r, hit->to, parts) : 0;
    if (!n) n = before(r, hit, hit->from, parts);
    return n ? n : beside(r, hit, parts);
}

bool untried_is_means(const struct fault_reader *r, const struct fault_hit *hit, const char *part) {
    static const char *const means[] = {"battery", "batteries", "hook", "plug",    "lead",
                                        "cord",    "cable",     "bulb", "charger", "adapter",
                                        "adaptor", "fuse",      "disc", "tape",    "film"};
    for (size_t i = hit->from; i < hit->to; i++)
        if (token_is(&r->note->tokens, i, part) && token_among(&r->note->tokens, i, means, COUNT(means)))
            return true;
    return false;
}
