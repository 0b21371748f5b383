// SPDX-License-Identifier: MIT
// A ring of batches behind one lock: batches are large, so the lock is seldom asked for.
#include "shelf/pool.h"

#include <pthread.h>
#include <stdlib.h>

enum state { EMPTY, FILLED, TAKEN, WORKED };

struct ring {
    const struct pool *pool;
    pthread_mutex_t lock;
    pthread_cond_t changed;
    enum state *states;
    size_t next; // to be taken
    bool closed;
};

struct worker {
    struct ring *ring;
    size_t number;
    pthread_t thread;
};

static void *work(void *thing) {
    struct worker *w = thing;
    struct ring *r = w->ring;
    pthread_mutex_lock(&r->lock);
    for (;;) {
        size_t at = r->next;
        if (r->states[at] == FILLED) {
            r->states[at] = TAKEN;
            r->next = (at + 1) % r->pool->batches;
            pthread_mutex_unlock(&r->lock);
            r->pool->work(r->pool->context, w->number, at);
            pthread_mutex_lock(&r->lock);
            r->states[at] = WORKED;
            pthread_cond_broadcast(&r->changed);
        } else if (r->closed)
            break;
        else
            pthread_cond_wait(&r->changed, &r->lock);
    }
    pthread_mutex_unlock(&r->lock);
    return NULL;
}

static bool drain_at(struct ring *r, size_t at) {
    pthread_mutex_lock(&r->lock);
    while (r->states[at] != WORKED) pthread_cond_wait(&r->changed, &r->lock);
    r->states[at] = EMPTY;
    pthread_mutex_unlock(&r->lock);
    return r->pool->drain(r->pool->context, at);
}

static void feed(struct ring *r) {
    const struct pool *p = r->pool;
    const size_t batches = p->batches ? p->batches : 1;
    size_t filled = 0, drained = 0;
    bool more = true;
    while (more || drained < filled) {
        if (filled - drained == batches || !more) {
            more = drain_at(r, drained % batches) && more;
            drained++;
            continue;
        }
        more = p->fill(p->context, filled % batches);
        if (!more) continue;
        pthread_mutex_lock(&r->lock);
        r->states[filled++ % batches] = FILLED;
        pthread_cond_broadcast(&r->changed);
        pthread_mutex_unlock(&r->lock);
    }
    pthread_mutex_lock(&r->lock);
    r->closed = true;
    pthread_cond_broadcast(&r->changed);
    pthread_mutex_unlock(&r->lock);
}

static bool run_alone(const struct pool *pool) {
    while (pool->fill(pool->context, 0)) {
        pool->work(pool->context, 0, 0);
        if (!pool->drain(pool->context, 0)) break;
    }
    return true;
}

bool pool_run(const struct pool *pool) {
    if (pool->workers < 2 || pool->batches < 2) return run_alone(pool);
    struct ring ring = {.pool = pool, .states = calloc(pool->batches, sizeof *ring.states)};
    struct worker *workers = calloc(pool->workers, sizeof *workers);
    size_t started = 0;
    bool fine = ring.states && workers;
    if (fine) {
        pthread_mutex_init(&ring.lock, NULL);
        pthread_cond_init(&ring.changed, NULL);
        for (; started < pool->workers; started++) {
            workers[started] = (struct worker){.ring = &ring, .number = started};
            if (pthread_create(&workers[started].thread, NULL, work, &workers[started]) != 0) break;
        }
        if (started) feed(&ring);
        for (size_t i = 0; i < started; i++) pthread_join(workers[i].thread, NULL);
        pthread_cond_destroy(&ring.changed);
        pthread_mutex_destroy(&ring.lock);
        if (!started) fine = run_alone(pool); // no threads are to be had: slower, and the same result
    }
    free(workers);
    free(ring.states);
    return fine;
}
