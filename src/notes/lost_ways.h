// SPDX-License-Identifier: MIT
// How a part came to be gone, said by a verb and what goes with it. Private to the room.
#ifndef NOTES_LOST_WAYS_H
#define NOTES_LOST_WAYS_H

#include "notes/token.h"

// How many tokens from `i` say that what stands before them is gone; 0 if none.
size_t lost_ways_behind(const struct tokens *tokens, size_t i);
// How many tokens from `i`, up to the part, say that the part behind them is gone; 0 if none.
size_t lost_ways_before(const struct tokens *tokens, size_t i);

#endif
