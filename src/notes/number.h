// SPDX-License-Identifier: MIT
// Figures as people write and say them: "8 1/2", "8½", "eight and a half", "a dozen".
#ifndef NOTES_NUMBER_H
#define NOTES_NUMBER_H

#include "notes/token.h"

struct number {
    double value;
    size_t taken;     // tokens
    bool whole;       // no fraction, no decimals
    bool said;        // in words
    bool part;        // less than one, as a fraction: "1/2", "half", "three quarters"
    const char *tail; // letters written against the last figure, small: "in" of "8in"; "" if none
    size_t tail_at;   // bytes of the token before the tail
};

// The number that begins at token `i`; false where none does, or where it cannot be read for sure ("81/2").
// An article is no number; "half a" and "a half" are.
bool number_at(const struct tokens *tokens, size_t i, struct number *number);
// The same for whole numbers in words or figures without a tail; 0 where there is none or it is above a
// million.
int number_whole_at(const struct tokens *tokens, size_t i, size_t *taken);
// Most tokens are no number, and are asked again and again.
extern const char number_key[];
bool number_begins(const char *word);
static inline bool number_may_be(const struct tokens *tokens, size_t i) {
    if (i >= tokens->count) return false;
    enum token_kind kind = tokens->at[i].kind;
    return kind == TOKEN_FIGURE || (kind == TOKEN_WORD && token_passes(tokens, i, number_key, number_begins));
}
static inline int number_whole(const struct tokens *tokens, size_t i, size_t *taken) {
    return number_may_be(tokens, i) ? number_whole_at(tokens, i, taken) : 0;
}
// Joins a fraction in words to `number`: "and a half", "and three quarters", "& 1/2". The tokens it takes, or
// 0.
size_t number_fraction(const struct tokens *tokens, size_t i, double *value);

#endif
