// SPDX-License-Identifier: MIT
// A file that differs from another in some places, and comes to be whole or not at all: written beside its
// place under another name, forced to the disk, named, and the folder forced to the disk.
#ifndef SHELF_NEWFILE_H
#define SHELF_NEWFILE_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "shelf/filehash.h"

struct edit {
    uint64_t from, to; // bytes of the old file
    const char *bytes; // what stands there in the new one
    size_t size;
};

struct newfile {
    struct arena *arena;
    const char *path, *temporary, *folder;
    int file;
    char *out; // bytes on their way to the file
    size_t filled;
    struct file_hash sum; // of those that went before
    const char *hash;     // of the new file, once newfile_write() is done
    const char *wrong;    // what went wrong: text; NULL when nothing
};

// Makes the temporary file, with the permissions of the open file `old`. False: see `wrong`. A file of that
// name must not be there.
bool newfile_open(struct arena *arena, struct newfile *file, const char *path, int old);
// Copies `old` with the edits (in order of place) and forces it to the disk. `expected` is the hash that the
// old file must still have.
bool newfile_write(struct newfile *file, int old, const char *expected, const struct edit *edits,
                   size_t count);
// Gives the file its name. It never takes the place of another.
bool newfile_name(struct newfile *file);
// Where it will be, from any folder: the folder's true path and the name.
const char *newfile_full_path(const struct newfile *file);
// Takes the temporary file away, where it is still there.
void newfile_drop(struct newfile *file);

#endif
