// SPDX-License-Identifier: MIT
// What was changed in stock files, in one SQLite file of the user's. An entry is intended before the new file
// appears and settled after it by the file's hash, so that a run which was killed between the two is settled
// by the next one. Two processes may use it at one time: its log is written ahead, and a writer waits for
// another.
//
// Owner: ledger_open() ties it to the arena, which closes it. Every function that returns false leaves the
// reason in ledger_wrong().
#ifndef SHELF_LEDGER_H
#define SHELF_LEDGER_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "text/arena.h"

struct ledger;

struct change {
    const char *id;
    const char *old_title, *new_title;
    const char *old_bytes, *new_bytes; // of the cells, quotes included
    size_t old_size, new_size;
    const char *earned[3]; // old, new, best; as proposed, "" where not known
};

struct entry {
    int64_t number;
    const char *kind;  // apply, undo
    const char *state; // intended, done, abandoned
    const char *when, *stock, *output, *rules;
    int64_t changes, held;
};

enum ledger_use { LEDGER_READ, LEDGER_WRITE };
// NULL only when `*wrong` says why. LEDGER_READ makes no file.
struct ledger *ledger_open(struct arena *arena, const char *path, enum ledger_use use, const char **wrong);
void ledger_close(struct ledger *ledger);
// What a person can do about it; NULL where there is nothing to say.
const char *ledger_hint(const char *wrong);
const char *ledger_wrong(const struct ledger *ledger);

// Entries that were left intended: done where the new file stands as intended, else abandoned.
bool ledger_settle(struct ledger *ledger, struct arena *arena);

struct intention {
    const char *kind, *when, *stock, *output, *rules, *old_hash, *new_hash;
    int64_t undoes; // 0: no undo
    const struct change *changes;
    size_t count;
    const struct change *held; // rows that are left as they are on purpose: id and old title
    size_t held_count;
};
// Optional: changes may be added from here on, while hashes are not known yet; each stays where it is. The
// ledger is others' to read, and not to write to, until ledger_intend().
void ledger_begin(struct ledger *ledger, const struct intention *intention);
void ledger_add(struct ledger *ledger, const struct change *change);
// With the same entry, all of its changes, and the hashes. Those added before need to be as many as these.
bool ledger_intend(struct ledger *ledger, const struct intention *intention, int64_t *number);
bool ledger_finish(struct ledger *ledger, int64_t number, bool done);

typedef void ledger_take_entry(void *context, const struct entry *entry);
typedef void ledger_take_change(void *context, const struct entry *entry, const struct change *change);
bool ledger_entries(struct ledger *ledger, ledger_take_entry *take, void *context);
// Of one entry, or of one item (`id` not NULL), in order.
bool ledger_changes(struct ledger *ledger, int64_t number, const char *id, ledger_take_change *take,
                    void *context);

#endif
