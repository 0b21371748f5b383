// SPDX-License-Identifier: MIT
// Reviewed proposals: what was approved and what is held back on purpose. Owner: the arena of the set.
#ifndef SHELF_APPROVED_H
#define SHELF_APPROVED_H

#include "shelf/wanted.h"

struct approved {
    struct wanted_set wanted;
    struct change *held;
    size_t held_count, held_room;
    size_t rows;
};

// False when the file cannot be read at all: told.
bool approved_read(struct arena *arena, const char *name, struct approved *approved, struct diags *diags);

#endif
