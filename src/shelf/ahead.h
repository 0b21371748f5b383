// SPDX-License-Identifier: MIT
// A file read and hashed ahead by a thread of its own, while what came before is worked on.
//
// Owner: the arena it was opened in, which also ends the thread. The file is not closed.
#ifndef SHELF_AHEAD_H
#define SHELF_AHEAD_H

#include <stdbool.h>
#include <stddef.h>

#include "text/arena.h"

struct ahead;

// From where the file stands.
struct ahead *ahead_open(struct arena *arena, int file);
// The next piece, valid until the one behind it is asked for. NULL at the end, or when reading failed.
const char *ahead_next(struct ahead *ahead, size_t *size);
// As read(): 0 at the end, (size_t)-1 when reading failed.
size_t ahead_get(struct ahead *ahead, char *to, size_t room);
// The errno of reading; 0 when nothing went wrong.
int ahead_error(const struct ahead *ahead);
// The hash of the file, once its end was met. Inside arena_try() of that arena.
const char *ahead_hash(struct ahead *ahead);

#endif
