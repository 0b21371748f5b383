// SPDX-License-Identifier: MIT
// What the two files of the ledger share, and no other.
#ifndef SHELF_LEDGER_PRIVATE_H
#define SHELF_LEDGER_PRIVATE_H

#include <sqlite3.h>

#include "shelf/ledger.h"

enum { LEDGER_WAIT_MS = 10000 };

struct ledger_ahead;

struct ledger {
    struct arena *arena;
    sqlite3 *db; // of one thread at a time
    const char *wrong;
    struct ledger_ahead *ahead; // NULL: none
};

// False, with the reason in `wrong`.
bool ledger_fail(struct ledger *ledger);
bool ledger_run(struct ledger *ledger, const char *sql);
// Ends the thread that ledger_begin() made. Its transaction is left open.
void ledger_stop_ahead(struct ledger *ledger);

#endif
