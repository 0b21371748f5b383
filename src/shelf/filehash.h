// SPDX-License-Identifier: MIT
// Is it still the same file? Four sums over words of eight bytes, side by side, so that it keeps up with
// memory; not against an adversary.
#ifndef SHELF_FILEHASH_H
#define SHELF_FILEHASH_H

#include <stdint.h>

#include "text/arena.h"

enum { FILE_HASH_LANES = 4, FILE_HASH_BLOCK = 8 * FILE_HASH_LANES };

struct file_hash {
    uint64_t lanes[FILE_HASH_LANES];
    uint64_t size;
    unsigned char rest[FILE_HASH_BLOCK]; // what does not fill a block yet
    unsigned filled;
};

void file_hash_start(struct file_hash *hash);
void file_hash_add(struct file_hash *hash, const char *bytes, size_t size);
// 48 hexadecimal digits: two sums and the size.
const char *file_hash_text(struct arena *arena, const struct file_hash *hash);
// Of a whole file by name; NULL when it is not there or cannot be read.
const char *file_hash_of(struct arena *arena, const char *path);

#endif
