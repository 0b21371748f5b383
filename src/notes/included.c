// SPDX-License-Identifier: MIT
// What comes with the thing: "comes with the manual and two keys", "in its original box", "box included". A
// part that simply is there ("with a lid") is no extra.
#include <stdlib.h>
#include <string.h>

#include "notes/any.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const char *const cues[] = {"comes with",
                                   "come with",
                                   "came with",
                                   "comes w/",
                                   "come w/",
                                   "comes w",
                                   "complete with",
                                   "includes",
                                   "include",
                                   "including",
                                   "included is",
                                   "together with",
                                   "along with",
                                   "goes with it is",
                                   "also has the original",
                                   "has the original",
                                   "have the original",
                                   "in the original",
                                   "in its original",
                                   "with the original",
                                   "with its original",
                                   "still has its original",
                                   "still in its",
                                   "still in the"};

static bool ends(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    static const char *const words[] = {"but",      "that",    "which",   "is",   "are",     "has",
                                        "from",     "so",      "not",     "no",   "without", "though",
                                        "although", "however", "because", "where"};
    if (tokens->at[i].stop >= STOP_CLAUSE || note->fault_word[i] || note->taken[i] != TAKEN_NOT) return true;
    return token_among(tokens, i, words, COUNT(words));
}

static int number_of(const struct token *t) {
    static const char *const names[] = {"",      "one",   "two",  "three", "four",   "five",  "six",
                                        "seven", "eight", "nine", "ten",   "eleven", "twelve"};
    for (int k = 1; k <= 12; k++)
        if (text_same(t->fold, names[k])) return k;
    return t->kind == TOKEN_FIGURE && strlen(t->fold) < 4 ? (int)strtol(t->fold, NULL, 10) : 0;
}

static bool is_article(const struct token *t) {
    return text_same(t->fold, "a") || text_same(t->fold, "an") || text_same(t->fold, "the") ||
           text_same(t->fold, "its") || text_same(t->fold, "original") || text_same(t->fold, "some");
}

static void add(struct note *note, size_t from, size_t to, int count) {
    while (from < to && is_article(&note->tokens.at[from])) from++;
    if (from == to ||
        (to == from + 1 && ANY(&note->tokens, from, "bottom", "top", "back", "front", "inside", "middle")))
        return;
    struct item_included *included = note_included(note);
    const char *what = note_words(note, from, to);
    included->what = arena_string(note->arena, count > 1 ? say_singular(note->arena, what) : what);
    included->count = count;
    note_take(note, from, to, TAKEN_INCLUDES);
    note_reading(note, from, to, arena_format(note->arena, "included %s", included->what), "comes with it");
}

// "Including down the sides": no thing follows.
static bool is_way(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"down", "in",     "on",     "at",      "under",    "inside",
                                        "up",   "where",  "when",   "postage", "shipping", "me",
                                        "my",   "around", "behind", "over"};
    return token_among(tokens, i, words, COUNT(words));
}

static bool holds_noun(const struct note *note, size_t from, size_t to) {
    struct noun_found noun;
    struct word_entry entry;
    for (size_t i = from; i < to; i++)
        if (noun_at(note, i, &noun) || word_at(note, i, 1u << USE_PART, &entry)) return true;
    return false;
}

static void read_list(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    static const char *const vague[] = {"it", "them", "this", "that", "these", "those"};
    if (is_way(tokens, i) || token_among(tokens, i, vague, COUNT(vague))) return;
    while (i < tokens->count && !ends(note, i)) {
        int count = 0;
        size_t from = i;
        while (i < tokens->count && !ends(note, i) && tokens->at[i].stop != STOP_COMMA &&
               !token_is(tokens, i, "and") && !token_is(tokens, i, "plus") && !token_is(tokens, i, "&")) {
            int n = number_of(&tokens->at[i]);
            if (n && i == from) {
                count = n;
                from++;
            }
            i++;
        }
        bool listed =
            from > 0 && i > from && !holds_noun(note, from, i) && tokens->at[from - 1].stop == STOP_COMMA;
        if (listed) return; // "complete with rails, full"
        if (i > from && i - from <= 5) add(note, from, i, count);
        if (i < tokens->count && !ends(note, i)) i++;
    }
}

static bool is_extra(const struct note *note, size_t i) { // goods of their own, no part and no picture
    static const uint32_t other = (1u << USE_PART) | (1u << USE_THEME) | (1u << USE_PATTERN);
    static const char *const fixed[] = {
        "drawers", "doors",   "cupboards",    "shelves",  "pockets", "panes",  "sides", "legs",
        "wheels",  "handles", "compartments", "sections", "windows", "panels", "hooks", "feet",
        "arms",    "burners", "rings",        "bells",    "speeds",  "trays"};
    struct noun_found noun;
    if (!noun_at(note, i, &noun) || token_among(&note->tokens, noun.to - 1, fixed, COUNT(fixed)))
        return false;
    return noun.thing && !noun.part && !noun.gated && !(noun.uses & other);
}

// "Tablecloth with 6 napkins", "plus 2 chairs", "brace and 6 bits": counted goods beside the thing.
static void read_beside(struct note *note, size_t i) {
    static const char *const joints[] = {"with", "w/", "plus", "and", "&", "+"};
    const struct tokens *tokens = &note->tokens;
    if (i == 0 || !token_among(tokens, i, joints, COUNT(joints)) || i + 2 >= tokens->count) return;
    int count = number_of(&tokens->at[i + 1]);
    if (count < 2 || note->taken[i + 1] != TAKEN_NOT) return;
    for (size_t at = i + 2;
         at < i + 5 && at < tokens->count && !ends(note, at) && tokens->at[at].kind == TOKEN_WORD; at++) {
        struct noun_found noun;
        if (!is_extra(note, at)) continue;
        noun_at(note, at, &noun);
        bool many = tokens->at[noun.to - 1].one != tokens->at[noun.to - 1].fold;
        if (many && note_free(note, i + 2, noun.to)) add(note, i + 2, noun.to, count);
        if (many) note_take(note, i + 1, i + 2, TAKEN_INCLUDES);
        return;
    }
}

// "Doesn't include the lid".
static bool is_denied(const struct tokens *tokens, size_t i) {
    static const char *const nots[] = {"doesn't", "not",    "don't", "didn't",
                                       "won't",   "doesnt", "dont",  "never"};
    return token_among(tokens, i, nots, COUNT(nots));
}

// "Came with a grate, there isn't one now".
static bool is_past(const struct tokens *tokens, size_t i) {
    static const char *const gone[] = {
        "there isn't one", "there's none",     "there is none",    "long gone",     "but it's gone",
        "but it's lost",   "but it's missing", "now gone",         "but not now",   "not any more",
        "hasn't got one",  "but i can't find", "but i don't have", "but i've lost", "but that's gone",
        "since lost",      "now lost",         "no longer"};
    if (!token_is(tokens, i, "came") && !token_is(tokens, i, "come")) return false;
    for (size_t at = i; at < tokens->count && tokens->at[at].stop < STOP_SENTENCE; at++)
        if (token_longest(tokens, at, gone, COUNT(gone))) return true;
    return false;
}

void read_included(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        bool may = token_may_open(tokens, i, (const void *)cues, COUNT(cues), sizeof *cues);
        for (size_t k = 0; may && k < COUNT(cues); k++) {
            size_t n = token_phrase(tokens, i, cues[k]);
            if (!n || (i > 0 && is_denied(tokens, i - 1)) || is_past(tokens, i)) continue;
            note_take(note, i, i + n, TAKEN_SCOPE);
            read_list(note, i + n);
            i += n - 1;
            break;
        }
        read_beside(note, i);
        if (token_is(tokens, i, "included") && i > 0 && !token_is(tokens, i - 1, "not") &&
            note->taken[i - 1] == TAKEN_NOT) {
            size_t from = i;
            if (from > 0 && token_is(tokens, from - 1, "is")) from--;
            struct word_entry entry;
            struct noun_found noun;
            bool none =
                from > 1 && (token_is(tokens, from - 2, "no") || token_is(tokens, from - 2, "without"));
            if (from > 0 && !none &&
                (word_at(note, from - 1, 1u << USE_PART, &entry) || noun_at(note, from - 1, &noun)))
                add(note, from - 1, from, 0);
        }
    }
}
