// SPDX-License-Identifier: MIT
// A ring of pieces: the one who puts fills the last one, the thread writes the first. One
// wakes the other only when the ring is half full or half empty. Where no thread is to
// be had each piece is written as soon as it is full.
#ifndef _GNU_SOURCE
#define _GNU_SOURCE // sync_file_range(); NOLINT(bugprone-reserved-identifier)
#endif
#include "shelf/behind.h"

#include <errno.h>
#include <fcntl.h>
#include <pthread.h>
#include <string.h>
#include <unistd.h>

#include "shelf/filehash.h"

enum { PIECES = 16, PIECE_SIZE = 64 << 10, FORCE_EVERY = 8 << 20 };

struct piece {
    char *bytes;
    size_t size;
};

struct behind {
    struct arena *arena;
    int file, error;
    struct file_hash hash; // of what was written
    struct piece pieces[PIECES];
    pthread_t thread;
    pthread_mutex_t lock;
    pthread_cond_t changed;
    size_t filled, written; // pieces so far, in all
    bool threaded, finish, stop;
};

// The disk may begin with what is there, so that little is left to be forced to it at the end. It is only a
// hint.
static void begin_forcing(const struct behind *b, uint64_t before) {
#ifdef SYNC_FILE_RANGE_WRITE
    if (before / FORCE_EVERY == b->hash.size / FORCE_EVERY) return;
    off64_t from = (off64_t)(before / FORCE_EVERY * FORCE_EVERY);
    (void)sync_file_range(b->file, from, FORCE_EVERY, SYNC_FILE_RANGE_WRITE);
#else
    (void)b;
    (void)before;
#endif
}

static void write_piece(struct behind *b, struct piece *piece) {
    for (size_t done = 0; done < piece->size && !b->error;) {
        ssize_t wrote = write(b->file, piece->bytes + done, piece->size - done);
        if (wrote > 0)
            done += (size_t)wrote;
        else if (wrote == 0 || errno != EINTR)
            b->error = wrote ? errno : ENOSPC;
    }
    uint64_t before = b->hash.size;
    file_hash_add(&b->hash, piece->bytes, piece->size);
    if (!b->error) begin_forcing(b, before);
    piece->size = 0;
}

static void *run(void *thing) {
    struct behind *b = thing;
    pthread_mutex_lock(&b->lock);
    while (!b->stop && (b->written < b->filled || !b->finish)) {
        if (b->written == b->filled) {
            pthread_cond_wait(&b->changed, &b->lock);
            continue;
        }
        pthread_mutex_unlock(&b->lock);
        write_piece(b, &b->pieces[b->written % PIECES]);
        pthread_mutex_lock(&b->lock);
        b->written++;
        if (b->filled - b->written <= PIECES / 2) pthread_cond_signal(&b->changed);
    }
    pthread_mutex_unlock(&b->lock);
    return NULL;
}

static void join(struct behind *b, bool *how) {
    if (!b->threaded) return;
    pthread_mutex_lock(&b->lock);
    *how = true;
    pthread_cond_signal(&b->changed);
    pthread_mutex_unlock(&b->lock);
    pthread_join(b->thread, NULL);
    b->threaded = false;
}

void behind_stop(struct behind *b) {
    if (b) join(b, &b->stop);
}

static void end(void *thing) {
    struct behind *b = thing;
    behind_stop(b);
    pthread_cond_destroy(&b->changed);
    pthread_mutex_destroy(&b->lock);
}

struct behind *behind_open(struct arena *arena, int file) {
    struct behind *b = arena_alloc(arena, sizeof *b);
    b->arena = arena;
    b->file = file;
    file_hash_start(&b->hash);
    for (int i = 0; i < PIECES; i++) b->pieces[i].bytes = arena_alloc(arena, PIECE_SIZE);
    pthread_mutex_init(&b->lock, NULL);
    pthread_cond_init(&b->changed, NULL);
    arena_defer(arena, end, b);
    b->threaded = pthread_create(&b->thread, NULL, run, b) == 0;
    return b;
}

// The piece at hand is full, or the last one; there is an empty one behind it when this returns.
static void hand_over(struct behind *b) {
    if (!b->threaded) {
        write_piece(b, &b->pieces[b->filled % PIECES]);
        b->filled++;
        b->written++;
        return;
    }
    pthread_mutex_lock(&b->lock);
    b->filled++;
    if (b->filled - b->written >= PIECES / 2) pthread_cond_signal(&b->changed);
    while (b->filled - b->written == PIECES) pthread_cond_wait(&b->changed, &b->lock);
    pthread_mutex_unlock(&b->lock);
}

void behind_put(struct behind *b, const char *bytes, size_t size) {
    while (size) {
        struct piece *piece = &b->pieces[b->filled % PIECES];
        size_t n = PIECE_SIZE - piece->size < size ? PIECE_SIZE - piece->size : size;
        memcpy(piece->bytes + piece->size, bytes, n);
        piece->size += n;
        bytes += n;
        size -= n;
        if (piece->size == PIECE_SIZE) hand_over(b);
    }
}

int behind_finish(struct behind *b, const char **hash) {
    if (b->pieces[b->filled % PIECES].size) hand_over(b);
    join(b, &b->finish);
    *hash = file_hash_text(b->arena, &b->hash);
    return b->error;
}
