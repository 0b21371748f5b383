// SPDX-License-Identifier: MIT
// Nothing is dropped in silence: a word is a fact, an aside, a small word, or it is `unread`.
#include "notes/rest.h"

#include <string.h>

#include "format/tree.h"
#include "text/order.h"

// Sorted for a binary search.
static const char *const small_words[] = {
    "a",         "about",   "actually", "after",  "again",   "all",     "also",   "although", "am",
    "an",        "and",     "another",  "any",    "anyway",  "are",     "as",     "at",       "basically",
    "be",        "because", "been",     "before", "being",   "besides", "bit",    "both",     "but",
    "by",        "can",     "could",    "did",    "do",      "does",    "else",   "er",       "even",
    "ever",      "every",   "for",      "from",   "get",     "got",     "had",    "has",      "have",
    "he",        "her",     "here",     "hers",   "him",     "his",     "i",      "if",       "in",
    "into",      "is",      "it",       "it's",   "its",     "itself",  "just",   "kind",     "kinda",
    "like",      "little",  "lol",      "many",   "may",     "me",      "might",  "more",     "most",
    "much",      "my",      "of",       "oh",     "ok",      "okay",    "on",     "one",      "ones",
    "only",      "or",      "other",    "others", "our",     "out",     "over",   "own",      "pretty",
    "quite",     "rather",  "really",   "right",  "see",     "she",     "should", "so",       "some",
    "something", "sort",    "sorta",    "still",  "such",    "than",    "that",   "that's",   "the",
    "their",     "them",    "then",     "there",  "there's", "theres",  "these",  "they",     "they're",
    "thing",     "things",  "this",     "those",  "though",  "through", "to",     "too",      "uh",
    "um",        "up",      "us",       "very",   "was",     "we",      "well",   "were",     "what",
    "when",      "where",   "which",    "while",  "who",     "will",    "with",   "would",    "yes",
    "yet",       "you",     "your"};

static bool in_small(const char *word) {
    return text_sorted_has(small_words, sizeof small_words / sizeof *small_words, word);
}

bool rest_is_small(const struct note *note, size_t i) {
    const struct token *token = &note->tokens.at[i];
    // A question mark is data: something is not known.
    if (token->kind == TOKEN_SIGN) return token->fold[0] != '?';
    if (token->from == token->to) return true; // no word of the note
    static const char key[] = "a small word";
    return token->kind == TOKEN_WORD && token_passes(&note->tokens, i, key, in_small);
}

static void keep(struct note *note, size_t from, size_t to) {
    note->unread =
        arena_grow(note->arena, note->unread, note->unread_count, &note->unread_room, sizeof *note->unread);
    note->unread[note->unread_count++] = note_span_of(note, from, to);
}

// Each word is small, and together they say that something is not as it should be: "all but one are fine",
// "most of the stones are in it", "only one of them is here".
static const char *const turns[] = {"all but one",
                                    "all but two",
                                    "all but three",
                                    "most of the",
                                    "most of them",
                                    "only one of them",
                                    "only two of them",
                                    "not all of",
                                    "not all there",
                                    "someone handy",
                                    "somebody handy",
                                    "anyone handy",
                                    "not as it was",
                                    "not what it was",
                                    "not how it should",
                                    "not quite right",
                                    "isn't right",
                                    "not right",
                                    "better days",
                                    "had a hard life",
                                    "been through it",
                                    "been in the wars",
                                    "worse for",
                                    "some of the",
                                    "supposed to be",
                                    "one of them isn't",
                                    "the other isn't",
                                    "has had it",
                                    "have had it",
                                    "had its day",
                                    "let go",
                                    "come away",
                                    "came away",
                                    "comes away",
                                    "come adrift",
                                    "came adrift",
                                    "sit right",
                                    "sit flat",
                                    "sit level",
                                    "stand up",
                                    "stand straight",
                                    "off something else",
                                    "off another",
                                    "off a different",
                                    "isn't the one",
                                    "under water",
                                    "in a fire",
                                    "got to it",
                                    "get to it",
                                    "at it",
                                    "a go at",
                                    "been dropped",
                                    "a knock",
                                    "a bang",
                                    "a tumble",
                                    "keeps going",
                                    "gives a shock",
                                    "gave me a",
                                    "a bow in it",
                                    "to bits",
                                    "in bits",
                                    "in two",
                                    "out of true",
                                    "out of round",
                                    "gets hot",
                                    "got hot",
                                    "needs love",
                                    "needs some love",
                                    "needs some work",
                                    "to be desired",
                                    "another story",
                                    "best side",
                                    "bad side",
                                    "good side out",
                                    "from one side",
                                    "from a distance",
                                    "from the front",
                                    "last legs",
                                    "went astray",
                                    "gone astray",
                                    "ought to be",
                                    "ought to have",
                                    "tips over",
                                    "falls over",
                                    "falls off",
                                    "comes off",
                                    "wants a new",
                                    "needs a new",
                                    "do with a new",
                                    "wants another",
                                    "a line in the",
                                    "is short",
                                    "could be better",
                                    "has seen",
                                    "have gone",
                                    "had a life"};

static size_t says_much(const struct tokens *tokens, size_t i) {
    static const size_t count = sizeof turns / sizeof *turns;
    if (!token_may_open(tokens, i, (const void *)turns, count, sizeof *turns)) return 0;
    for (size_t k = 0; k < count; k++) {
        if (turns[k][0] != tokens->at[i].fold[0]) continue;
        size_t n = token_phrase(tokens, i, turns[k]);
        if (n && !token_is(tokens, i + n, "time") && !token_is(tokens, i + n, "way")) return n;
    }
    return 0;
}

void note_rest(struct note *note, bool (*says_nothing)(const struct note *note, size_t i)) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        size_t much = note->taken[i] == TAKEN_NOT ? says_much(tokens, i) : 0;
        bool whole = much > 0;
        for (size_t k = i; k < i + much && k < tokens->count; k++) whole &= note->taken[k] == TAKEN_NOT;
        if (whole) {
            i += much - 1; // stays not taken
            continue;
        }
        size_t remark = note->taken[i] == TAKEN_NOT ? remark_at(note, i) : 0;
        for (size_t k = i; k < i + remark; k++) note->taken[k] = TAKEN_FILLER;
        if (note->taken[i] == TAKEN_NOT && says_nothing(note, i)) note->taken[i] = TAKEN_FILLER;
    }
    for (size_t i = 0; i < tokens->count;) {
        size_t to = i + 1;
        if (note->taken[i] == TAKEN_OPEN) {
            while (to < tokens->count && note->taken[to] == TAKEN_OPEN) to++;
            keep(note, i, to);
            i = to;
            continue;
        }
        if (note->taken[i] != TAKEN_NOT) {
            i++;
            continue;
        }
        for (size_t k = i; k < tokens->count && tokens->at[k].stop == STOP_NONE; k++) {
            if (note->taken[k] == TAKEN_NOT)
                to = k + 1;
            else if (note->taken[k] != TAKEN_FILLER)
                break;
        }
        keep(note, i, to);
        i = to;
    }
}

const struct node *note_spans_tree(const struct note *note, const struct note_span *spans, size_t count) {
    if (!count) return NULL;
    struct node *list = node_list(note->arena);
    for (size_t i = 0; i < count; i++) {
        struct node *span = node_list(note->arena);
        node_push(note->arena, span, node_whole(note->arena, (long long)spans[i].from));
        node_push(note->arena, span, node_whole(note->arena, (long long)spans[i].to));
        node_push(note->arena, list, span);
    }
    return list;
}
