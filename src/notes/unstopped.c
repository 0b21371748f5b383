// SPDX-License-Identifier: MIT
// Notes that were dictated or typed without any stops: where a clause begins is told by its words alone. A
// sign without bytes is put there, so that the readers see one kind of stop. Only stretches that no stop
// parts are looked at; in others a comma says more than a guess.
#include "notes/cut.h"
#include "notes/note.h"

#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

enum { STRETCH_LEAST = 16, GROUP_MOST = 3, OPENS_AFTER = 3, WORDS_A_STOP = 16 };

static const char *const articles[] = {"the",  "a",    "an",  "this",  "these",   "that", "those",   "my",
                                       "its",  "one",  "two", "three", "four",    "five", "six",     "both",
                                       "each", "some", "all", "every", "several", "any",  "another", "other"};
static const char *const verbs[] = {
    "is",     "are",     "was",   "were",    "has",    "have",  "had",   "isn't", "aren't",  "wasn't",
    "hasn't", "haven't", "works", "work",    "turns",  "turn",  "runs",  "run",   "opens",   "open",
    "closes", "shuts",   "leaks", "leak",    "sticks", "stick", "looks", "look",  "feels",   "smells",
    "needs",  "wobbles", "shows", "doesn't", "don't",  "won't", "can't", "plays", "lights",  "rattles",
    "slides", "slips",   "moves", "fits",    "goes",   "comes", "holds", "locks", "latches", "screws",
    "seems",  "squeaks", "ticks", "could",   "will",   "would", "still", "do",    "does",    "sits"};
static const char *const adverbs[] = {"all",  "both", "still",  "also", "just",
                                      "even", "only", "really", "each"};
static const char *const sides[] = {"left",    "right", "front",  "back",   "top",    "bottom", "inner",
                                    "outer",   "upper", "lower",  "main",   "other",  "glass",  "brass",
                                    "leather", "wood",  "metal",  "first",  "second", "top",    "rear",
                                    "whole",   "steel", "wooden", "rubber", "plastic"};
// What stands before a clause's first word only where that word goes on with what was begun.
static const char *const leads[] = {
    "the",     "a",      "an",    "this",  "that",    "these",  "those",    "my",     "its",     "his",
    "her",     "their",  "of",    "in",    "on",      "at",     "to",       "from",   "by",      "with",
    "without", "for",    "near",  "under", "over",    "inside", "around",   "round",  "along",   "across",
    "behind",  "below",  "above", "into",  "onto",    "off",    "up",       "down",   "if",      "whether",
    "because", "when",   "where", "which", "while",   "until",  "as",       "like",   "than",    "think",
    "believe", "know",   "see",   "say",   "said",    "hope",   "guess",    "reckon", "sure",    "suppose",
    "no",      "not",    "and",   "or",    "but",     "so",     "is",       "are",    "was",     "were",
    "has",     "have",   "had",   "got",   "very",    "some",   "all",      "both",   "each",    "one",
    "any",     "every",  "only",  "just",  "then",    "though", "although", "who",    "there",   "it",
    "i",       "they",   "we",    "you",   "can",     "could",  "will",     "would",  "between", "out",
    "about",   "except", "apart", "says",  "shows",   "show",   "see",      "feel",   "tell",    "how",
    "wait",    "uh",     "um",    "hmm",   "actually"};

static bool is_noun(const struct note *note, size_t i) {
    const struct token *t = &note->tokens.at[i];
    struct word_entry entry;
    enum { THINGS = (1u << USE_THING) | (1u << USE_PART) | (1u << USE_GATED) };
    if (t->kind != TOKEN_WORD || AMONG(&note->tokens, i, verbs)) return false;
    return (wordbook_find(note->book, t->fold, strlen(t->fold), &entry) && (entry.uses & THINGS)) ||
           (wordbook_find(note->book, t->one, strlen(t->one), &entry) && (entry.uses & THINGS));
}

static bool is_verb(const struct tokens *tokens, size_t i) {
    if (AMONG(tokens, i, adverbs)) i++;
    return AMONG(tokens, i, verbs);
}

// "The dial glass is", "right eyepiece is", "two of them stick": the tokens before the verb, 0 where no such
// group begins at `i`.
static size_t subject_at(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t at = i;
    bool article = AMONG(tokens, at, articles);
    at += article;
    if (article && token_is(tokens, at, "of") && token_is(tokens, at + 1, "them")) {
        at += 2;
        return is_verb(tokens, at) ? at - i : 0;
    }
    if (AMONG(tokens, at, sides)) at++;
    size_t nouns = 0;
    while (nouns < GROUP_MOST && at < tokens->count && is_noun(note, at)) at++, nouns++;
    if (!nouns && !(article && is_verb(tokens, at))) return 0; // "one has a hole"
    return is_verb(tokens, at) ? at - i : 0;
}

static bool opens_statement(const struct note *note, size_t i) {
    static const char *const it[] = {"it", "they", "there", "this"};
    static const char *const is[] = {"is",  "are",  "was",     "has",   "have", "had",   "runs", "works",
                                     "ran", "does", "doesn't", "isn't", "will", "won't", "been"};
    static const char *const both[] = {"theres", "there's", "it's", "they're", "its"};
    static const char *const own[] = {"have",    "haven't",  "had",   "wound",  "tried",   "tested",
                                      "think",   "can't",    "don't", "didn't", "cleaned", "washed",
                                      "plugged", "couldn't", "ran",   "left",   "would"};
    static const char *const none[] = {"no", "never", "otherwise", "comes", "smells", "nothing"};
    const struct tokens *tokens = &note->tokens;
    if (AMONG(tokens, i, it) && AMONG(tokens, i + 1, is)) return true;
    if (token_is(tokens, i, "its")) return AMONG(tokens, i + 1, adverbs) || token_is(tokens, i + 1, "been");
    if (AMONG(tokens, i, both)) return true;
    if (token_is(tokens, i, "i")) return AMONG(tokens, i + 1, own);
    return AMONG(tokens, i, none) || subject_at(note, i) > 0;
}

// The noun before `i` may be the head of what opens here: "the dial | glass is" parts nothing.
static bool is_inside(const struct note *note, size_t i) {
    static const char *const ends[] = {"top",   "bottom", "end",  "base",   "rim",    "edge",    "middle",
                                       "front", "back",   "side", "inside", "corner", "corners", "center"};
    const struct tokens *tokens = &note->tokens;
    if (AMONG(tokens, i, articles) || !subject_at(note, i)) return false;
    for (size_t back = 1; back <= GROUP_MOST && back < i; back++) {
        if (AMONG(tokens, i - back, articles)) {
            // "At the top wick is": the group before is closed by its own preposition.
            bool bound =
                i - back > 0 && AMONG(tokens, i - back - 1, leads) && !token_is(tokens, i - back - 1, "and");
            return !bound || back == 1 || !AMONG(tokens, i - 1, ends);
        }
        if (!is_noun(note, i - back) && !AMONG(tokens, i - back, sides)) return false;
    }
    return false;
}

static bool is_start(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    // "In the left one the strap is gone": a piece, and no number of what comes.
    bool piece = i > 1 && token_is(tokens, i - 1, "one") &&
                 (AMONG(tokens, i - 2, sides) || AMONG(tokens, i - 2, articles));
    piece |=
        token_is(tokens, i - 1, "there") && (token_is(tokens, i, "theres") || token_is(tokens, i, "there's"));
    if ((AMONG(tokens, i - 1, leads) && !piece) || !opens_statement(note, i)) return false;
    return !is_inside(note, i);
}

// "And the clapper is missing": before the joint.
static bool is_joint(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    return token_is(tokens, i, "and") && opens_statement(note, i + 1) && !token_is(tokens, i + 1, "no") &&
           !token_is(tokens, i + 1, "nothing");
}

static struct token stop_before(const struct token *next) {
    static const char sign[] = ";";
    return (struct token){.from = next->from,
                          .to = next->from,
                          .fold = sign,
                          .one = sign,
                          .hash = token_hash(sign, 1),
                          .kind = TOKEN_SIGN,
                          .stop = STOP_CLAUSE,
                          .joined = true};
}

// Marks where clauses begin in [from, to); true when there are any.
static bool find_starts(const struct note *note, size_t from, size_t to, bool *starts) {
    bool any = false;
    size_t last = from;
    for (size_t i = from + OPENS_AFTER; i + 1 < to; i++) {
        if (i < last + 2 || (!is_joint(note, i) && !is_start(note, i))) continue;
        starts[i] = any = true;
        last = i;
    }
    return any;
}

// Who puts stops leaves them out where a sentence needs none.
static bool is_stopped(const struct tokens *tokens) {
    size_t stops = 1;
    for (size_t i = 0; i < tokens->count; i++) stops += tokens->at[i].stop != STOP_NONE;
    return stops * WORDS_A_STOP > tokens->count;
}

void note_part_clauses(struct note *note) {
    struct tokens *tokens = &note->tokens;
    if (!note->book || tokens->count < STRETCH_LEAST || is_stopped(tokens)) return;
    bool *starts = arena_array(note->arena, tokens->count + 1, sizeof *starts), any = false;
    for (size_t from = 0, to; from < tokens->count; from = to + 1) {
        for (to = from; to < tokens->count && tokens->at[to].stop == STOP_NONE;) to++;
        if (to - from >= STRETCH_LEAST) any |= find_starts(note, from, to, starts);
    }
    if (!any) return;
    size_t more = 0;
    for (size_t i = 0; i < tokens->count; i++) more += starts[i];
    struct token *at = arena_array(note->arena, tokens->count + more + 1, sizeof *at);
    size_t count = 0;
    for (size_t i = 0; i < tokens->count; i++) {
        if (starts[i]) at[count++] = stop_before(&tokens->at[i]);
        at[count++] = tokens->at[i];
    }
    tokens->at = at;
    tokens->count = count;
    tokens->altered = true;
}
