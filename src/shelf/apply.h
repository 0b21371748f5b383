// SPDX-License-Identifier: MIT
// Approved titles into a new stock file, and old ones back again. Dry unless `write` is given. Inside
// arena_try().
#ifndef SHELF_APPLY_H
#define SHELF_APPLY_H

#include "shelf/wanted.h"

struct apply_request {
    const char *stock, *map;
    const char *proposals;    // apply
    int64_t entry;            // undo: number of the ledger's entry
    const char *write;        // the new file; NULL: dry run
    const char *ledger;       // its path
    const char *when, *rules; // for the ledger
};

// What happened, for people, goes to `out`; everything that was refused to `diags`.
void apply_run(struct arena *arena, const struct apply_request *request, struct buf *out,
               struct diags *diags);
void undo_run(struct arena *arena, const struct apply_request *request, struct buf *out, struct diags *diags);

#endif
