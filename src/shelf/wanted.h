// SPDX-License-Identifier: MIT
// Titles that are to be changed, found again in a stock file by their ids and by what stands there now; and
// the one list of edits that the dry run prints and the write carries out. Owner: the arena.
#ifndef SHELF_WANTED_H
#define SHELF_WANTED_H

#include "shelf/columns.h"
#include "shelf/ledger.h"
#include "shelf/newfile.h"

struct wanted {
    struct change change; // id, titles and what was earned are given; bytes are filled in
    uint64_t hash;        // of the id
    size_t line;          // where it was asked for
    unsigned asked, seen;
    const char *refused; // why it cannot be done; NULL: it can
    size_t found_line;
    struct edit edit;
    bool zeros;    // the stock holds this id with zeros before it
    bool by_bytes; // undo: where the cell still is what was written, it becomes byte for byte what it was
};

enum { WANTED_BLOCK = 512 };

struct wanted_slot {
    uint32_t tag;    // of the hash
    uint32_t number; // of the item, from 1; 0: empty
};

struct wanted_set {
    struct arena *arena;
    struct wanted **blocks; // of WANTED_BLOCK each: none is ever moved
    size_t count, room;
    struct wanted_slot *slots;
    size_t slot_count;
};

struct wanted_set wanted_start(struct arena *arena);
struct wanted *wanted_at(const struct wanted_set *set, size_t item);
struct wanted *wanted_find(const struct wanted_set *set, const char *id);
// The entry of that id, made when there is none; `asked` counts.
struct wanted *wanted_add(struct wanted_set *set, const char *id);

struct stock {
    const char *name;
    int file;
    const char *map;
    const char *hash; // filled in
    size_t rows;
    struct ledger *ledger; // gets the changes of the copy; NULL: none does
    struct newfile *copy;  // made on the way where it is not NULL, of all that can be done as far as was read
};
// Walks the stock, settles each wanted title. False when it cannot be read at all: told. An id that stands
// again further on is refused after it was written to the copy, which then holds more edits than
// wanted_edits() gives.
bool wanted_match(struct wanted_set *set, struct stock *stock, struct diags *diags);
// Those that can be done, as edits and changes in order of place; the others are told in `diags` about
// `name`.
size_t wanted_edits(struct wanted_set *set, const char *name, struct edit **edits, struct change **changes,
                    struct diags *diags);
// Does it look as if a spreadsheet had made it of another?
bool id_is_altered(const char *id);

#endif
