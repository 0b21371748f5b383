// SPDX-License-Identifier: MIT
// Is a token one of some words? Private to the room.
#ifndef NOTES_ANY_H
#define NOTES_ANY_H

#include "notes/token.h"

#define ANY(tokens, i, ...) token_any(tokens, i, (const char *const[]){__VA_ARGS__, NULL})

#endif
