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

#include "text/arena.h"

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
    uint64_t opening; // of `fold`, as token_opening() has it
    enum token_kind kind;
    enum token_stop stop;   // of the token itself: a comma, a full stop, a line end that no stop precedes
    bool capital, capitals; // begins with a capital; is all capitals (of two letters or more)
    bool starts;            // first of a sentence or line
    bool joined;            // no space before it
    bool slip;              // `fold` is what was meant, not what was written
    bool plain;             // `fold` is letters a to z and digits alone
};

// Lists of words are many and a token is asked about most of them, nearly always in vain: which letters those
// begin with that were asked for. Slots are shared by the address of a list: one that was pushed out is
// worked out again. A short list is sooner walked than looked up.
enum { LISTS_SEEN = 512, SHORT_LIST = 8 };

struct list_seen {
    const void *list;
    const char *first; // of a list at the same address with other words, which none of ours is
    size_t count;
    uint64_t openings;
};

struct tokens {
    struct token *at;
    size_t count;
    const char *text;
    size_t size;
    bool shouts;  // nearly all letters are capitals: then a capital says nothing
    bool flat;    // no capital at all: then neither does its absence
    bool altered; // stops that were said became signs, or slips were mended: no longer those of its bytes
    struct list_seen *seen; // LISTS_SEEN of them, or NULL where a text is too short to be worth it
};

// `text` is NFC and valid UTF-8. A line end becomes a token of its own (TOKEN_SIGN, STOP_LINE, fold "\n"). A
// full stop in an abbreviation or a figure ("approx. 5 in.", "No. 5", "1.5") is part of its token or a sign
// with STOP_NONE.
struct tokens tokens_cut(struct arena *arena, const char *text, size_t size);

// Is token `i` the word `word` (small letters)? False beyond the end. Most are another one already by their
// first letter.
static inline bool token_is(const struct tokens *tokens, size_t i, const char *word) {
    return i < tokens->count && tokens->at[i].fold[0] == word[0] && !strcmp(tokens->at[i].fold, word);
}
// One bit of 64 for the first two letters of a word or phrase, apostrophes aside; two words with other bits
// begin otherwise.
uint64_t token_opening(const char *word);
// The bits of `count` words or phrases, the first members of entries of `size` bytes. The list outlives the
// note; so do the lists of the functions below.
uint64_t token_openings_of(const struct tokens *tokens, const void *list, size_t count, size_t size);
static inline uint64_t token_openings(const struct tokens *tokens, const void *list, size_t count,
                                      size_t size) {
    if (!tokens->seen) return UINT64_MAX;
#ifdef __clang_analyzer__ // which breaks down on an address taken as a number
    return token_openings_of(tokens, list, count, size);
#endif
    const struct list_seen *seen = &tokens->seen[((uintptr_t)list >> 4) % LISTS_SEEN];
    if (seen->list == list && seen->count == count && seen->first == *(const char *const *)list)
        return seen->openings;
    return token_openings_of(tokens, list, count, size);
}
// May one of them stand from `i` on?
static inline bool token_may_open(const struct tokens *tokens, size_t i, const void *list, size_t count,
                                  size_t size) {
    return i < tokens->count && count && (token_openings(tokens, list, count, size) & tokens->at[i].opening);
}
// The same of words and phrases with a bar between, in one static text: "base|rim|foot of the bowl".
bool token_may_open_one(const struct tokens *tokens, size_t i, const char *barred);
// Is it one of a NULL-ended list?
bool token_any(const struct tokens *tokens, size_t i, const char *const *words);
// The same of `count` words.
static inline bool token_among(const struct tokens *tokens, size_t i, const char *const *words,
                               size_t count) {
    if (count > SHORT_LIST && !token_may_open(tokens, i, (const void *)words, count, sizeof *words))
        return false;
    for (size_t k = 0; k < count; k++)
        if (token_is(tokens, i, words[k])) return true;
    return false;
}
// Do the words of `phrase` (small letters, one space between) stand from `i` on? How many tokens they take; 0
// if not. Hyphens between words count as spaces on both sides; an apostrophe may be missing.
size_t token_phrase_words(const struct tokens *tokens, size_t i, const char *phrase);
static inline size_t token_phrase(const struct tokens *tokens, size_t i, const char *phrase) {
    if (i >= tokens->count) return 0;
    char first = tokens->at[i].fold[0];
    if (first != phrase[0] && first != '\'' && phrase[0] != '\'') return 0;
    return token_phrase_words(tokens, i, phrase);
}

// The most tokens that one of `count` phrases takes from `i` on; 0 where none stands.
static inline size_t token_longest(const struct tokens *tokens, size_t i, const char *const *phrases,
                                   size_t count) {
    size_t most = 0;
    if (count > SHORT_LIST && !token_may_open(tokens, i, (const void *)phrases, count, sizeof *phrases))
        return 0;
    for (size_t k = 0; k < count; k++) {
        size_t taken = token_phrase(tokens, i, phrases[k]);
        if (taken > most) most = taken;
    }
    return most;
}

#endif
