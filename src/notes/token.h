// SPDX-License-Identifier: MIT
// A note cut into words, figures and signs, each with its bytes in the note. Nothing is thrown away: every
// byte that is no space belongs to one token. Spoken punctuation ("comma", "new line") is told apart here, so
// that the rest of the room sees one kind of stop. Owner: the arena.
#ifndef NOTES_TOKEN_H
#define NOTES_TOKEN_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>
#include <string.h>

#include "notes/asked.h"
#include "text/arena.h"
#include "text/order.h"

enum token_kind {
    TOKEN_WORD,   // letters, with apostrophes, hyphens and inner dots: "rim", "don't", "mother-of-pearl",
                  // "h.m."
    TOKEN_FIGURE, // begins with a digit or a fraction: "8", "8.5", "1/2", "½", "1920s", "18v", "3rd"
    TOKEN_CODE,   // letters and digits in one: "CB-12", "KR9", "x100"
    TOKEN_SIGN    // one sign: . , ; : ! ? ( ) " ' # $ & / - + = * …
};

// How strongly a token parts what stands before from what stands after.
enum token_stop { STOP_NONE, STOP_COMMA, STOP_CLAUSE, STOP_SENTENCE, STOP_LINE };

struct token {
    size_t from, to;  // bytes of the note
    const char *fold; // small letters, straight quotes, no accents; a TOKEN_SIGN is itself, straightened
    const char *one;  // the singular of `fold`; `fold` itself where there is none
    uint64_t hash;    // of `fold`, as token_hash() has it
    uint64_t *vain;   // of which lists it is no word, as asked_word() has it; NULL until it is asked
    enum token_kind kind;
    enum token_stop stop;   // of the token itself: a comma, a full stop, a line end that no stop precedes
    bool capital, capitals; // begins with a capital; is all capitals (of two letters or more)
    bool starts;            // first of a sentence or line
    bool joined;            // no space before it
    bool slip;              // `fold` is what was meant, not what was written
    bool guessed;           // a slip that may have been meant as another word
    bool plain;             // `fold` is letters a to z and digits alone
};

struct tokens {
    struct token *at;
    size_t count;
    const char *text;
    size_t size;
    bool shouts;  // nearly all letters are capitals: then a capital says nothing
    bool flat;    // no capital at all: then neither does its absence
    bool altered; // stops that were said became signs, or slips were mended: no longer those of its bytes
    struct asked *asked; // what is known of words and lists; NULL: nothing
};

// `text` is NFC and valid UTF-8. A line end becomes a token of its own (TOKEN_SIGN, STOP_LINE, fold "\n"). A
// full stop in an abbreviation or a figure ("approx. 5 in.", "No. 5", "1.5") is part of its token or a sign
// with STOP_NONE.
struct tokens tokens_cut(struct arena *arena, const char *text, size_t size);

// Is token `i` the word `word` (small letters)? False beyond the end. Most are another one already by their
// first letter.
static inline bool token_is(const struct tokens *tokens, size_t i, const char *word) {
    return i < tokens->count && text_same(tokens->at[i].fold, word);
}
// Where it is noted that token `i` is no word of a list, and the bit of that list; NULL where nothing is
// kept. `how` tells apart what the same list is asked for.
enum token_how { TOKEN_AMONG, TOKEN_OPENS, TOKEN_WAYS };
uint64_t *token_learn(const struct tokens *tokens, size_t i);
static inline uint64_t *token_vain(const struct tokens *tokens, size_t i, const void *list, size_t count,
                                   enum token_how how, uint64_t *bit) {
    uint64_t *vain = tokens->at[i].vain;
    if (!vain && (!tokens->asked || !(vain = token_learn(tokens, i)))) return NULL;
    uint32_t number = asked_list(tokens->asked, list, count * TOKEN_WAYS + how);
    *bit = (uint64_t)1 << number % 64;
    return number < ASKED_LISTS ? &vain[number / 64] : NULL;
}
// May one of `count` words or phrases, the first members of entries of `size` bytes, stand from `i` on, or be
// its singular? The list outlives the note; so do the lists of all functions below.
bool token_opens(const struct tokens *tokens, size_t i, const void *list, size_t count, size_t size);
static inline bool token_may_open(const struct tokens *tokens, size_t i, const void *list, size_t count,
                                  size_t size) {
    if (i >= tokens->count || !count) return false;
    uint64_t bit, *vain = token_vain(tokens, i, list, count, TOKEN_OPENS, &bit);
    if (!vain) return true;
    if (*vain & bit) return false;
    uint64_t *found = vain + ASKED_CELLS;
    if (*found & bit) return true;
    bool opens = token_opens(tokens, i, list, count, size);
    *(opens ? found : vain) |= bit;
    return opens;
}
// The same of words and phrases with a bar between, in one static text: "base|rim|foot of the bowl",
// and "rim's" as well.
bool token_may_open_one(const struct tokens *tokens, size_t i, const char *barred);
// Is it one of a NULL-ended list?
bool token_any(const struct tokens *tokens, size_t i, const char *const *words);
// The same of a NULL-ended list that `key` stands for.
static inline bool token_any_of(const struct tokens *tokens, size_t i, const char *key,
                                const char *const *words) {
    if (i >= tokens->count) return false;
    uint64_t bit, *vain = token_vain(tokens, i, key, 0, TOKEN_AMONG, &bit);
    if (vain && (*vain & bit)) return false;
    if (vain && (vain[ASKED_CELLS] & bit)) return true;
    bool any = token_any(tokens, i, words);
    if (vain) *(any ? vain + ASKED_CELLS : vain) |= bit;
    return any;
}
// What was told of the word under `key`, a text that lives as long as the lists: 1 or 0 as token_tell() had
// it, and -1 where nothing was, or is kept. It must hold of the word in any note.
static inline int token_told(const struct tokens *tokens, size_t i, const char *key) {
    uint64_t bit, *vain = token_vain(tokens, i, key, 0, TOKEN_AMONG, &bit);
    if (!vain) return -1;
    return vain[ASKED_CELLS] & bit ? 1 : *vain & bit ? 0 : -1;
}
void token_tell(const struct tokens *tokens, size_t i, const char *key, bool holds);
// What `test` says of the word, asked once for each; `key` stands for the test, and has its own address.
static inline bool token_passes(const struct tokens *tokens, size_t i, const char *key,
                                bool (*test)(const char *fold)) {
    if (i >= tokens->count) return false;
    uint64_t bit, *vain = token_vain(tokens, i, key, 0, TOKEN_AMONG, &bit);
    if (vain && (*vain & bit)) return false;
    if (vain && (vain[ASKED_CELLS] & bit)) return true;
    bool passes = test(tokens->at[i].fold);
    if (vain) *(passes ? vain + ASKED_CELLS : vain) |= bit;
    return passes;
}
// Is it one of `count` words?
bool token_listed(const struct tokens *tokens, size_t i, const char *const *words, size_t count);
static inline bool token_among(const struct tokens *tokens, size_t i, const char *const *words,
                               size_t count) {
    if (i >= tokens->count) return false;
    uint64_t bit, *vain = token_vain(tokens, i, (const void *)words, count, TOKEN_AMONG, &bit);
    if (vain && (*vain & bit)) return false;
    if (vain && (vain[ASKED_CELLS] & bit)) return true;
    bool listed = token_listed(tokens, i, words, count);
    if (vain) *(listed ? vain + ASKED_CELLS : vain) |= bit;
    return listed;
}
// May token `i` begin a word that begins with that letter? A hyphen may stand before it, and apostrophes.
static inline bool token_may_begin(const struct tokens *tokens, size_t i, char letter) {
    if (i >= tokens->count) return false;
    char first = tokens->at[i].fold[0];
    return first == letter || first == '\'' || first == '-' || letter == '\'';
}
// Do the words of `phrase` (small letters, one space between) stand from `i` on? How many tokens they take; 0
// if not. Hyphens between words count as spaces on both sides; an apostrophe may be missing.
size_t token_phrase_words(const struct tokens *tokens, size_t i, const char *phrase);
static inline size_t token_phrase(const struct tokens *tokens, size_t i, const char *phrase) {
    if (i >= tokens->count) return 0;
    const char *fold = tokens->at[i].fold;
    if (fold[0] != phrase[0] && fold[0] != '\'' && phrase[0] != '\'') return 0;
    if (fold[0] == phrase[0] && fold[0] && fold[1] != phrase[1] && fold[1] > '-' && phrase[1] > '-')
        return 0; // no apostrophe, and no end of a word
    return token_phrase_words(tokens, i, phrase);
}

// The most tokens that one of `count` phrases takes from `i` on; 0 where none stands.
static inline size_t token_longest(const struct tokens *tokens, size_t i, const char *const *phrases,
                                   size_t count) {
    size_t most = 0;
    if (!token_may_open(tokens, i, (const void *)phrases, count, sizeof *phrases)) return 0;
    for (size_t k = 0; k < count; k++) {
        size_t taken = token_phrase(tokens, i, phrases[k]);
        if (taken > most) most = taken;
    }
    return most;
}

// The tokens that the first of the phrases takes that stands from `i` on; 0 where none does.
static inline size_t token_first(const struct tokens *tokens, size_t i, const char *const *phrases,
                                 size_t count) {
    if (!token_may_open(tokens, i, (const void *)phrases, count, sizeof *phrases)) return 0;
    for (size_t k = 0; k < count; k++) {
        size_t taken = token_phrase(tokens, i, phrases[k]);
        if (taken) return taken;
    }
    return 0;
}

#endif
