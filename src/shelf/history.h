// SPDX-License-Identifier: MIT
// What the ledger says, for people or as one object a line.
#ifndef SHELF_HISTORY_H
#define SHELF_HISTORY_H

#include "text/buf.h"
#include "text/diag.h"

// All entries, or the changes of one item. Inside arena_try(). False when nothing was found of `id`.
bool history_write(struct arena *arena, const char *ledger, const char *id, bool json, struct buf *out,
                   struct diags *diags);

#endif
