// SPDX-License-Identifier: MIT
// Ids that were seen, as 64-bit hashes: of a million rows at most fourteen bytes a row, also while it grows.
#ifndef SHELF_IDS_H
#define SHELF_IDS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "text/arena.h"

enum { ID_PARTS = 256 };

// A small table; they grow one after the other, so that two copies of everything never exist at one time.
struct id_part {
    uint64_t *slots;
    uint32_t room, count;
};

struct id_set {
    const struct arena_memory *memory;
    struct id_part parts[ID_PARTS];
};

uint64_t id_hash(const char *id, size_t size);
enum id_added { ID_NEW, ID_KNOWN, ID_NO_MEMORY };
enum id_added id_set_add(struct id_set *set, uint64_t hash);
void id_set_free(struct id_set *set);

#endif
