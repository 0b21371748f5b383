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
    const char *hash;  // of the new file, once it is complete
    const char *wrong; // what went wrong: text; NULL when nothing
    // Copying:
    struct behind *behind;
    struct edit *edits;
    size_t count, room, next;
    uint64_t at; // of the old file
};

// Makes the temporary file, with the permissions of the open file `old`. False: see `wrong`. A file of that
// name must not be there.
bool newfile_open(struct arena *arena, struct newfile *file, const char *path, int old);
// Was `old` last changed well before the new file was made? Only then does its time of change tell whether it
// is changed while it is read.
bool newfile_is_later(const struct newfile *file, int old);

// From one reading: all bytes of the old file are passed in order, and each edit, in order of place, before
// the bytes behind it.
void newfile_start(struct newfile *file);
void newfile_edit(struct newfile *file, const struct edit *edit);
void newfile_pass(struct newfile *file, const char *bytes, size_t size);
// Forces it to the disk. Nothing but naming is left.
bool newfile_end(struct newfile *file);

// From a second reading of `old`, which must still have the hash `expected`. What was passed before is
// forgotten.
bool newfile_write(struct newfile *file, int old, const char *expected, const struct edit *edits,
                   size_t count);
// Gives the file its name. It never takes the place of another.
bool newfile_name(struct newfile *file);
// Where it will be, from any folder: the folder's true path and the name.
const char *newfile_full_path(const struct newfile *file);
// Takes the temporary file away, where it is still there.
void newfile_drop(struct newfile *file);

#endif
