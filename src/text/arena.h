// SPDX-License-Identifier: MIT
// One owner for everything that lives as long as one task (a rule set, a draft).
//
// Owner: whoever called arena_new() frees the arena, and with it every block and every deferred clean-up.
// Lifetime: a block lives until arena_reset() or arena_free().
// Running out of memory: inside arena_try() an allocation never returns NULL; it leaves the body at once and
// arena_try() returns false. Code between the two needs no checks, and nothing leaks because the arena owns
// it.
#ifndef TEXT_ARENA_H
#define TEXT_ARENA_H

#include <stdbool.h>
#include <stddef.h>

#include "text/attributes.h"

struct arena;

// Where blocks come from; all zero means malloc and free. Tests pass one that fails at the n-th call.
struct arena_memory {
    void *(*alloc)(void *context, size_t size);
    void (*free)(void *context, void *block);
    void *context;
};

// NULL when not even the first block can be had. `memory` may be NULL and is copied.
struct arena *arena_new(const struct arena_memory *memory);
// Frees all blocks after running the deferred clean-ups, last first. NULL is fine.
void arena_free(struct arena *arena);
// As arena_free(), but keeps the arena and its largest block for the next task.
void arena_reset(struct arena *arena);

// Where an arena stands: what was handed out later is taken back by arena_release(), clean-ups included. For
// work whose result is small beside what it takes. Marks are released last first, or not at all.
struct arena_mark {
    void *block, *deferred;
    size_t in_block, used;
};
struct arena_mark arena_mark(const struct arena *arena);
void arena_release(struct arena *arena, const struct arena_mark *mark);

// Runs `body`; false when memory ran out inside it. May be nested: the innermost try is left.
bool arena_try(struct arena *arena, void (*body)(struct arena *arena, void *context), void *context);

// Leaves the innermost arena_try() as a failed allocation would: for other libraries that report they have no
// memory.
_Noreturn void arena_give_up(struct arena *arena);

// Zeroed memory aligned for any type. Must be called inside arena_try() of the same arena.
void *arena_alloc(struct arena *arena, size_t size);
// The same, holding anything: for what is written before it is read.
void *arena_room(struct arena *arena, size_t size);
// `count` zeroed elements; an overflowing product counts as memory run out.
void *arena_array(struct arena *arena, size_t count, size_t size);
// NUL-ended copies.
char *arena_copy(struct arena *arena, const char *bytes, size_t size);
char *arena_string(struct arena *arena, const char *text);
char *arena_format(struct arena *arena, const char *format, ...) TEXT_PRINTF(2, 3);
// Runs `clean(thing)` when the arena is reset or freed.
void arena_defer(struct arena *arena, void (*clean)(void *thing), void *thing);

// Grows an array of `size`-byte elements kept in the arena: makes room for one more, returns the (maybe
// moved) base.
// `*room` is the number of elements that fit. Old blocks stay until the arena goes.
void *arena_grow(struct arena *arena, void *base, size_t count, size_t *room, size_t size);

// The most bytes that were out at one time since the last reset, the bookkeeping of blocks included.
size_t arena_used(const struct arena *arena);
// The memory functions that the arena was made with, for libraries that take their own.
const struct arena_memory *arena_source(const struct arena *arena);

#endif
