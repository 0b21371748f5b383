// SPDX-License-Identifier: MIT
// Blocks in a chain, handed out from the front. setjmp and longjmp stand in this file only: one place decides
// what "memory ran out" means, so that no caller has to check. Invariant: every byte not handed out is zero
// or poisoned.
#include "text/arena.h"
#include "text/print.h"

#include <setjmp.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#if defined(__SANITIZE_ADDRESS__)
#define ARENA_ASAN 1
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
#define ARENA_ASAN 1
#endif
#endif

#ifdef ARENA_ASAN
#include <sanitizer/asan_interface.h>
#define POISON(at, size) ASAN_POISON_MEMORY_REGION(at, size)
#define UNPOISON(at, size) ASAN_UNPOISON_MEMORY_REGION(at, size)
enum { GAP = 16 }; // poisoned bytes after each piece, so that reading one past its end is caught
#else
#define POISON(at, size) ((void)(at), (void)(size))
#define UNPOISON(at, size) ((void)(at), (void)(size))
enum { GAP = 0 };
#endif

#ifdef ASFOUND_TEST_TINY
enum { CHUNK_FIRST = 64, CHUNK_MOST = 64 };
#else
enum { CHUNK_FIRST = 32 << 10, CHUNK_MOST = 1 << 20 };
#endif

enum { ALIGN = _Alignof(max_align_t) };

struct block {
    struct block *next; // the one before it in time
    size_t size, used;  // of `at`
    _Alignas(max_align_t) unsigned char at[];
};

struct deferred {
    struct deferred *next;
    void (*clean)(void *thing);
    void *thing;
};

struct trial {
    jmp_buf back;
    struct trial *outer;
};

struct arena {
    struct arena_memory memory;
    struct block *newest, *first;
    struct block *spare; // freed by a release and kept for the next block, or NULL
    struct deferred *deferred;
    struct trial *trial;
    size_t used, most; // `most`: as far as the last release
};

static void *memory_take(void *context, size_t size) {
    (void)context;
    return malloc(size);
}

static void memory_give(void *context, void *block) {
    (void)context;
    free(block);
}

static struct block *block_new(struct arena *arena, size_t size) {
    if (size > SIZE_MAX - sizeof(struct block)) return NULL;
    struct block *block = arena->memory.alloc(arena->memory.context, sizeof *block + size);
    if (!block) return NULL;
    block->next = NULL;
    block->size = size;
    block->used = 0;
    POISON(block->at, size);
    arena->used += sizeof *block;
    return block;
}

static void block_free(struct arena *arena, struct block *block) {
    UNPOISON(block->at, block->size);
    arena->memory.free(arena->memory.context, block);
}

struct arena *arena_new(const struct arena_memory *memory) {
    struct arena_memory from = {memory_take, memory_give, NULL};
    if (memory && memory->alloc) from = *memory;
    struct arena *arena = from.alloc(from.context, sizeof *arena);
    if (!arena) return NULL;
    memset(arena, 0, sizeof *arena);
    arena->memory = from;
    arena->first = arena->newest = block_new(arena, CHUNK_FIRST);
    arena->most = arena->used;
    if (arena->first) return arena;
    from.free(from.context, arena);
    return NULL;
}

static void clean_until(struct arena *arena, const struct deferred *last) {
    while (arena->deferred != last) {
        struct deferred *one = arena->deferred;
        arena->deferred = one->next;
        one->clean(one->thing);
    }
}

// Whoever marks and releases at the end of a block again and again would ask for a block each time.
static void free_until(struct arena *arena, const struct block *last) {
    while (arena->newest != last) {
        struct block *block = arena->newest;
        arena->newest = block->next;
        if (arena->spare || block->size > CHUNK_MOST) {
            block_free(arena, block);
            continue;
        }
        POISON(block->at, block->size);
        arena->spare = block;
    }
}

static void drop_spare(struct arena *arena) {
    if (arena->spare) block_free(arena, arena->spare);
    arena->spare = NULL;
}

// The largest block is the first of the next task, so that tasks alike ask for no memory once it is as large
// as they need.
static void keep_largest(struct arena *arena) {
    struct block *kept = arena->first;
    for (struct block *block = arena->newest; block; block = block->next)
        if (!kept || (block->size > kept->size && block->size <= CHUNK_MOST)) kept = block;
    if (!kept) return;
    for (struct block *block = arena->newest, *next; block; block = next) {
        next = block->next;
        if (block != kept) block_free(arena, block);
    }
    kept->next = NULL;
    arena->first = arena->newest = kept;
}

void arena_reset(struct arena *arena) {
    // A clean-up may still look at pieces of the arena, so they all run before the first block goes.
    clean_until(arena, NULL);
    drop_spare(arena);
    keep_largest(arena);
    arena->first->used = 0;
    POISON(arena->first->at, arena->first->size);
    arena->used = arena->most = sizeof(struct block);
}

struct arena_mark arena_mark(const struct arena *arena) {
    struct arena_mark mark = {arena->newest, arena->deferred, arena->newest->used, arena->used};
    return mark;
}

void arena_release(struct arena *arena, const struct arena_mark *mark) {
    arena->most = arena_used(arena);
    clean_until(arena, mark->deferred);
    free_until(arena, mark->block);
    struct block *block = arena->newest;
    block->used = mark->in_block;
    POISON(block->at + block->used, block->size - block->used);
    arena->used = mark->used;
}

void arena_free(struct arena *arena) {
    if (!arena) return;
    arena_reset(arena);
    block_free(arena, arena->first);
    arena->memory.free(arena->memory.context, arena);
}

bool arena_try(struct arena *arena, void (*body)(struct arena *arena, void *context), void *context) {
    struct trial trial;
    trial.outer = arena->trial;
    arena->trial = &trial;
    if (setjmp(trial.back)) return false;
    body(arena, context);
    arena->trial = trial.outer;
    return true;
}

void arena_give_up(struct arena *arena) {
    struct trial *trial = arena->trial;
    if (!trial) {
        // A mistake in the program, not in its input: there is no caller who could be told.
        fputs("asfound: memory asked for outside arena_try()\n", stderr);
        abort();
    }
    arena->trial = trial->outer;
    longjmp(trial->back, 1);
}

static struct block *block_add(struct arena *arena, size_t need) {
    size_t size = arena->newest->size < CHUNK_MOST ? arena->newest->size * 2 : CHUNK_MOST;
    if (size > CHUNK_MOST) size = CHUNK_MOST;
    if (size < need) size = need;
    struct block *block = arena->spare;
    if (block && block->size >= need) {
        arena->spare = NULL;
        block->used = 0;
        arena->used += sizeof *block;
    } else
        block = block_new(arena, size);
    if (!block) arena_give_up(arena);
    block->next = arena->newest;
    return arena->newest = block;
}

void *arena_room(struct arena *arena, size_t size) {
    if (!arena->trial || size > SIZE_MAX / 2) arena_give_up(arena);
    size_t need = (size + (ALIGN - 1)) / ALIGN * ALIGN + GAP;
    struct block *block = arena->newest;
    if (block->size - block->used < need) block = block_add(arena, need);
    unsigned char *at = block->at + block->used;
    block->used += need;
    arena->used += need;
    UNPOISON(at, size);
    return at;
}

void *arena_alloc(struct arena *arena, size_t size) {
    return memset(arena_room(arena, size), 0, size);
}

void *arena_array(struct arena *arena, size_t count, size_t size) {
    size_t all;
    if (__builtin_mul_overflow(count, size, &all)) arena_give_up(arena);
    return arena_alloc(arena, all);
}

char *arena_copy(struct arena *arena, const char *bytes, size_t size) {
    if (size == SIZE_MAX) arena_give_up(arena);
    char *copy = arena_room(arena, size + 1);
    if (size) memcpy(copy, bytes, size);
    copy[size] = '\0';
    return copy;
}

char *arena_string(struct arena *arena, const char *text) {
    return arena_copy(arena, text, strlen(text));
}

// Most texts are short: they are written once and copied, not written twice to learn their size first.
char *arena_format(struct arena *arena, const char *format, ...) {
    enum { SHORT = 256 };
    char first[SHORT];
    va_list arguments, again;
    va_start(arguments, format);
    va_copy(again, arguments);
    int size = text_print(first, sizeof first, format, arguments);
    va_end(arguments);
    size_t whole = size > 0 ? (size_t)size : 0;
    char *text = arena_copy(arena, first, whole < SHORT ? whole : 0);
    if (whole >= SHORT) {
        text = arena_room(arena, whole + 1);
        text_print(text, whole + 1, format, again);
    }
    va_end(again);
    return text;
}

struct promise {
    struct deferred *one;
};

static void promise_make(struct arena *arena, void *context) {
    struct promise *promise = context;
    promise->one = arena_alloc(arena, sizeof *promise->one);
}

void arena_defer(struct arena *arena, void (*clean)(void *thing), void *thing) {
    struct promise promise = {NULL};
    if (!arena_try(arena, promise_make, &promise)) {
        clean(thing); // cannot be remembered, and nobody else will ever do it
        arena_give_up(arena);
    }
    promise.one->clean = clean;
    promise.one->thing = thing;
    promise.one->next = arena->deferred;
    arena->deferred = promise.one;
}

void *arena_grow(struct arena *arena, void *base, size_t count, size_t *room, size_t size) {
    if (count < *room) return base;
    if (*room > SIZE_MAX / 2) arena_give_up(arena);
    size_t more = *room ? *room * 2 : 4;
    size_t all;
    if (__builtin_mul_overflow(more, size, &all)) arena_give_up(arena);
    char *moved = arena_room(arena, all);
    if (count) memcpy(moved, base, count * size);
    memset(moved + count * size, 0, all - count * size);
    *room = more;
    return moved;
}

size_t arena_used(const struct arena *arena) {
    return arena->used > arena->most ? arena->used : arena->most;
}

const struct arena_memory *arena_source(const struct arena *arena) {
    return &arena->memory;
}
