// SPDX-License-Identifier: MIT
// Is a token one of some words, all of them literals? What they are made of is the key of their list. Private
// to the room.
#ifndef NOTES_ANY_H
#define NOTES_ANY_H

#include <assert.h>

#include "notes/token.h"

#define ANY(tokens, i, ...) any_of(tokens, i, #__VA_ARGS__, (const char *const[]){__VA_ARGS__, NULL})

static inline bool any_of(const struct tokens *tokens, size_t i, const char *key, const char *const *words) {
    assert(key[0] == '"'); // what a variable holds may be another word next time
    return token_any_of(tokens, i, key, words);
}

#endif
