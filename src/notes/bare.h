// SPDX-License-Identifier: MIT
// Private to the room.
#ifndef NOTES_BARE_H
#define NOTES_BARE_H

#include "notes/token.h"

// Do the tokens say by themselves what is said of the thing, with no noun beside them?
bool bare_stands(const struct tokens *tokens, size_t from, size_t to);

#endif
