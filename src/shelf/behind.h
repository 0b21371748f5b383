// SPDX-License-Identifier: MIT
// Bytes hashed and written behind by a thread of its own, while those that follow are made.
//
// Owner: the arena it was opened in. The file is not closed; behind_stop() has to come before that.
#ifndef SHELF_BEHIND_H
#define SHELF_BEHIND_H

#include <stdbool.h>
#include <stddef.h>

#include "text/arena.h"

struct behind;

struct behind *behind_open(struct arena *arena, int file);
// Takes the bytes. What went wrong with them shows in behind_finish().
void behind_put(struct behind *behind, const char *bytes, size_t size);
// Waits until all is written. 0 and the hash of it, or the errno of the write that failed.
int behind_finish(struct behind *behind, const char **hash);
// Lets go of what is not written yet. May be called at any time, and again; NULL is fine.
void behind_stop(struct behind *behind);

#endif
