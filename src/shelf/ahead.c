// SPDX-License-Identifier: MIT
// A ring of pieces: the thread fills what is empty, the reader gives back what it has used. One wakes the
// other only when the ring is half full or half empty: to be woken costs more than a piece. Where no thread
// is to be had the reader fills the ring by itself.
#include "shelf/ahead.h"

#include <errno.h>
#include <pthread.h>
#include <string.h>
#include <unistd.h>

#include "shelf/filehash.h"

enum { PIECES = 16, PIECE_SIZE = 64 << 10 };

struct piece {
    char *bytes;
    size_t size; // 0: the end
};

struct ahead {
    struct arena *arena;
    int file, error;
    struct file_hash hash;
    struct piece pieces[PIECES];
    pthread_t thread;
    pthread_mutex_t lock;
    pthread_cond_t changed;
    size_t filled, used; // pieces so far, in all
    bool threaded, stop, held;
    const char *at; // of the piece at hand, for ahead_get()
    size_t left;
};

static bool fill(struct ahead *a, struct piece *piece) {
    ssize_t got;
    do got = read(a->file, piece->bytes, PIECE_SIZE);
    while (got < 0 && errno == EINTR);
    if (got < 0) a->error = errno;
    piece->size = got > 0 ? (size_t)got : 0;
    file_hash_add(&a->hash, piece->bytes, piece->size);
    return got > 0;
}

static void *run(void *thing) {
    struct ahead *a = thing;
    bool more = true;
    pthread_mutex_lock(&a->lock);
    while (more && !a->stop) {
        if (a->filled - a->used == PIECES) {
            pthread_cond_wait(&a->changed, &a->lock);
            continue;
        }
        pthread_mutex_unlock(&a->lock);
        more = fill(a, &a->pieces[a->filled % PIECES]);
        pthread_mutex_lock(&a->lock);
        a->filled++;
        if (!more || a->filled - a->used >= PIECES / 2) pthread_cond_signal(&a->changed);
    }
    pthread_mutex_unlock(&a->lock);
    return NULL;
}

static void stop(void *thing) {
    struct ahead *a = thing;
    if (a->threaded) {
        pthread_mutex_lock(&a->lock);
        a->stop = true;
        pthread_cond_signal(&a->changed);
        pthread_mutex_unlock(&a->lock);
        pthread_join(a->thread, NULL);
    }
    pthread_cond_destroy(&a->changed);
    pthread_mutex_destroy(&a->lock);
}

struct ahead *ahead_open(struct arena *arena, int file) {
    struct ahead *a = arena_alloc(arena, sizeof *a);
    a->arena = arena;
    a->file = file;
    file_hash_start(&a->hash);
    for (int i = 0; i < PIECES; i++) a->pieces[i].bytes = arena_alloc(arena, PIECE_SIZE);
    pthread_mutex_init(&a->lock, NULL);
    pthread_cond_init(&a->changed, NULL);
    arena_defer(arena, stop, a);
    a->threaded = pthread_create(&a->thread, NULL, run, a) == 0;
    return a;
}

static const struct piece *wait_for(struct ahead *a) {
    if (!a->threaded) {
        if (a->held) a->used++;
        if (a->filled == a->used) {
            fill(a, &a->pieces[a->filled % PIECES]);
            a->filled++;
        }
    } else {
        pthread_mutex_lock(&a->lock);
        if (a->held) {
            a->used++;
            if (a->filled - a->used <= PIECES / 2) pthread_cond_signal(&a->changed);
        }
        while (a->filled == a->used) pthread_cond_wait(&a->changed, &a->lock);
        pthread_mutex_unlock(&a->lock);
    }
    const struct piece *piece = &a->pieces[a->used % PIECES];
    a->held = piece->size != 0; // the end stays at hand, however often it is asked for
    return piece;
}

const char *ahead_next(struct ahead *a, size_t *size) {
    const struct piece *piece = wait_for(a);
    *size = piece->size;
    return piece->size ? piece->bytes : NULL;
}

size_t ahead_get(struct ahead *a, char *to, size_t room) {
    if (!a->left) a->at = ahead_next(a, &a->left);
    if (!a->at) return a->error ? (size_t)-1 : 0;
    size_t n = a->left < room ? a->left : room;
    memcpy(to, a->at, n);
    a->at += n;
    a->left -= n;
    return n;
}

int ahead_error(const struct ahead *ahead) {
    return ahead->error;
}

const char *ahead_hash(struct ahead *a) {
    return file_hash_text(a->arena, &a->hash);
}
