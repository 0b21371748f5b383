// SPDX-License-Identifier: MIT
// The rename refuses to replace: of two runs that want the same name one gets it, and no file of the user's
// is lost.
#ifndef _GNU_SOURCE
#define _GNU_SOURCE // renameat2(), which is the only rename that replaces nothing;
                    // NOLINT(bugprone-reserved-identifier)
#endif
#include "shelf/newfile.h"

#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

enum { COPY_SIZE = 256 << 10 };

// --- hash: two sums over words of eight bytes, so that it keeps up with the disk; not against an adversary
// ---

static void mix(struct file_hash *h, uint64_t word) {
    h->a = (h->a ^ word) * 0x9E3779B97F4A7C15u;
    h->a ^= h->a >> 29;
    h->b = (h->b + word) * 0xC2B2AE3D27D4EB4Fu;
    h->b ^= h->b >> 31;
}

void file_hash_start(struct file_hash *hash) {
    *hash = (struct file_hash){.a = 0x243F6A8885A308D3u, .b = 0x13198A2E03707344u};
}

void file_hash_add(struct file_hash *h, const char *bytes, size_t size) {
    h->size += size;
    for (; size && h->filled; size--, bytes++) {
        h->word |= (uint64_t)(unsigned char)*bytes << (8 * h->filled);
        h->filled = (h->filled + 1) % 8;
        if (!h->filled) {
            mix(h, h->word);
            h->word = 0;
        }
    }
    for (; size >= 8; size -= 8, bytes += 8) {
        uint64_t word;
        memcpy(&word, bytes, 8);
        mix(h, word);
    }
    for (; size; size--, bytes++) {
        h->word |= (uint64_t)(unsigned char)*bytes << (8 * h->filled);
        h->filled++;
    }
}

const char *file_hash_text(struct arena *arena, const struct file_hash *hash) {
    struct file_hash h = *hash;
    mix(&h, h.word);
    mix(&h, h.size);
    return arena_format(arena, "%016llx%016llx%016llx", (unsigned long long)h.a, (unsigned long long)h.b,
                        (unsigned long long)h.size);
}

static ssize_t read_some(int file, char *to, size_t room) {
    for (;;) {
        ssize_t got = read(file, to, room);
        if (got >= 0 || errno != EINTR) return got;
    }
}

const char *file_hash_of(struct arena *arena, const char *path) {
    int file = open(path, O_RDONLY | O_CLOEXEC | O_NOCTTY | O_NONBLOCK);
    if (file < 0) return NULL;
    char bytes[16 << 10];
    struct file_hash hash;
    file_hash_start(&hash);
    ssize_t got;
    while ((got = read_some(file, bytes, sizeof bytes)) > 0) file_hash_add(&hash, bytes, (size_t)got);
    close(file);
    return got < 0 ? NULL : file_hash_text(arena, &hash);
}

// --- writing ---

static bool fail(struct newfile *f, const char *what) {
    if (!f->wrong) f->wrong = arena_format(f->arena, "%s: %s", what, strerror(errno));
    return false;
}

bool newfile_open(struct arena *arena, struct newfile *f, const char *path, int old) {
    *f = (struct newfile){.arena = arena, .path = path, .file = -1};
    const char *slash = strrchr(path, '/');
    f->folder = !slash ? "." : slash == path ? "/" : arena_copy(arena, path, (size_t)(slash - path));
    struct stat about, there;
    if (fstat(old, &about) < 0) return fail(f, "cannot be looked at");
    if (lstat(path, &there) == 0) {
        f->wrong = about.st_dev == there.st_dev && about.st_ino == there.st_ino
                       ? "this is the stock file itself, which is never written to"
                       : "there is a file of that name already, and none is replaced";
        return false;
    }
    if (errno != ENOENT) return fail(f, "cannot be looked at");
    for (int i = 0; i < 100 && f->file < 0; i++) {
        f->temporary = arena_format(arena, "%s.part%d-%ld", path, i, (long)getpid());
        f->file = open(f->temporary, O_WRONLY | O_CREAT | O_EXCL | O_CLOEXEC | O_NOFOLLOW, 0600);
        if (f->file < 0 && errno != EEXIST) break;
    }
    if (f->file < 0) {
        f->temporary = NULL;
        return fail(f, "cannot be made");
    }
    if (fchmod(f->file, about.st_mode & 0777) < 0)
        return fail(f, "cannot be given the permissions of the stock file");
    // Where the group cannot be kept the permissions alone have to do.
    if (fchown(f->file, (uid_t)-1, about.st_gid) < 0) errno = 0;
    return true;
}

static bool put(struct newfile *f, struct file_hash *hash, const char *bytes, size_t size) {
    file_hash_add(hash, bytes, size);
    while (size) {
        ssize_t wrote = write(f->file, bytes, size);
        if (wrote < 0 && errno == EINTR) continue;
        if (wrote == 0) errno = ENOSPC;
        if (wrote <= 0) return fail(f, "cannot be written");
        bytes += wrote;
        size -= (size_t)wrote;
    }
    return true;
}

struct copying {
    struct file_hash before, after;
    const struct edit *edits;
    size_t count, next;
    uint64_t at; // of the old file
};

// One piece of the old file; an edit may begin in one piece and end in another.
static bool copy_piece(struct newfile *f, struct copying *c, const char *bytes, size_t size) {
    uint64_t end = c->at + size;
    while (c->at < end) {
        const struct edit *e = c->next < c->count ? &c->edits[c->next] : NULL;
        uint64_t plain = e && e->from < end ? e->from : end;
        if (c->at < plain) {
            size_t n = (size_t)(plain - c->at);
            if (!put(f, &c->after, bytes, n)) return false;
            bytes += n;
            c->at = plain;
        }
        if (!e || e->from >= end) continue;
        uint64_t over = e->to < end ? e->to : end;
        bytes += over - c->at;
        c->at = over;
        if (c->at < e->to) continue; // the rest of it is in the next piece
        if (!put(f, &c->after, e->bytes, e->size)) return false;
        c->next++;
        if (e->from == e->to && c->at == end) break;
    }
    return true;
}

static bool edits_at_end(struct newfile *f, struct copying *c) {
    for (; c->next < c->count; c->next++) {
        const struct edit *e = &c->edits[c->next];
        if (e->from != c->at || e->to != c->at) {
            f->wrong = "the stock file is shorter than it was";
            return false;
        }
        if (!put(f, &c->after, e->bytes, e->size)) return false;
    }
    return true;
}

bool newfile_write(struct newfile *f, int old, const char *expected, const struct edit *edits, size_t count) {
    struct copying c = {.edits = edits, .count = count};
    file_hash_start(&c.before);
    file_hash_start(&c.after);
    char *bytes = arena_alloc(f->arena, COPY_SIZE);
    if (lseek(old, 0, SEEK_SET) < 0) return fail(f, "the stock file cannot be read twice");
    ssize_t got;
    while ((got = read_some(old, bytes, COPY_SIZE)) > 0) {
        file_hash_add(&c.before, bytes, (size_t)got);
        if (!copy_piece(f, &c, bytes, (size_t)got)) return false;
    }
    if (got < 0) return fail(f, "the stock file cannot be read");
    if (!edits_at_end(f, &c)) return false;
    if (strcmp(file_hash_text(f->arena, &c.before), expected) != 0) {
        f->wrong = "the stock file was changed while it was read";
        return false;
    }
    if (fsync(f->file) < 0) return fail(f, "cannot be forced to the disk");
    int file = f->file;
    f->file = -1;
    if (close(file) < 0 && errno != EINTR) return fail(f, "cannot be closed");
    f->hash = file_hash_text(f->arena, &c.after);
    return true;
}

static int rename_new(const char *from, const char *to) {
#ifdef RENAME_NOREPLACE
    if (renameat2(AT_FDCWD, from, AT_FDCWD, to, RENAME_NOREPLACE) == 0) return 0;
    if (errno != EINVAL && errno != ENOSYS) return -1;
#endif
    // A file system without such a rename: a link replaces nothing either, and where there are no links the
    // look before the leap has to do.
    if (link(from, to) == 0) return unlink(from);
    if (errno == EEXIST) return -1;
    struct stat there;
    if (lstat(to, &there) == 0) {
        errno = EEXIST;
        return -1;
    }
    return rename(from, to);
}

bool newfile_name(struct newfile *f) {
    if (rename_new(f->temporary, f->path) < 0) return fail(f, "cannot be given its name");
    f->temporary = NULL;
    int folder = open(f->folder, O_RDONLY | O_DIRECTORY | O_CLOEXEC);
    if (folder < 0) return fail(f, "is there, but its folder cannot be forced to the disk");
    bool fine = fsync(folder) == 0 || errno == EINVAL; // some file systems force folders by themselves
    if (!fine) fail(f, "is there, but its folder cannot be forced to the disk");
    close(folder);
    return fine;
}

const char *newfile_full_path(const struct newfile *f) {
    const char *slash = strrchr(f->path, '/');
    char *folder = realpath(f->folder, NULL);
    if (!folder) return f->path;
    const char *path =
        arena_format(f->arena, "%s/%s", strcmp(folder, "/") != 0 ? folder : "", slash ? slash + 1 : f->path);
    free(folder);
    return path;
}

void newfile_drop(struct newfile *f) {
    if (f->file >= 0) close(f->file);
    if (f->temporary) unlink(f->temporary);
    f->file = -1;
    f->temporary = NULL;
}
