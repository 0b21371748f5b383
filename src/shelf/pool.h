// SPDX-License-Identifier: MIT
// Batches filled in order, worked on by several threads, drained in the same order: the same result as with
// one.
#ifndef SHELF_POOL_H
#define SHELF_POOL_H

#include <stdbool.h>
#include <stddef.h>

enum { POOL_WORKERS_MOST = 64 };

struct pool {
    size_t workers;
    size_t batches; // how many there are: more than workers
    void *context;
    // Called by one thread, in order. fill: false when there is nothing more. drain: false to stop early.
    bool (*fill)(void *context, size_t batch);
    bool (*drain)(void *context, size_t batch);
    // Called by any worker; a batch is with one thread at a time.
    void (*work)(void *context, size_t worker, size_t batch);
};

// With one worker no thread is made. False when not even one thread could be.
bool pool_run(const struct pool *pool);

#endif
