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

#include "shelf/ahead.h"

enum { OUT_SIZE = 128 << 10, FORCE_EVERY = 8 << 20 };

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

// The disk may begin with what is there, so that there is little left to force to it at the end.
static void begin_forcing(const struct newfile *f) {
#ifdef SYNC_FILE_RANGE_WRITE
    uint64_t before = f->sum.size - f->filled;
    if (before / FORCE_EVERY == f->sum.size / FORCE_EVERY) return;
    int kept = errno; // it is only a hint
    uint64_t from = before / FORCE_EVERY * FORCE_EVERY;
    (void)sync_file_range(f->file, (off64_t)from, FORCE_EVERY, SYNC_FILE_RANGE_WRITE);
    errno = kept;
#else
    (void)f;
#endif
}

static bool flush(struct newfile *f) {
    file_hash_add(&f->sum, f->out, f->filled);
    for (size_t done = 0; done < f->filled;) {
        ssize_t wrote = write(f->file, f->out + done, f->filled - done);
        if (wrote < 0 && errno == EINTR) continue;
        if (wrote == 0) errno = ENOSPC;
        if (wrote <= 0) return fail(f, "cannot be written");
        done += (size_t)wrote;
    }
    begin_forcing(f);
    f->filled = 0;
    return true;
}

static bool put(struct newfile *f, const char *bytes, size_t size) {
    while (size) {
        size_t n = OUT_SIZE - f->filled < size ? OUT_SIZE - f->filled : size;
        memcpy(f->out + f->filled, bytes, n);
        f->filled += n;
        bytes += n;
        size -= n;
        if (f->filled == OUT_SIZE && !flush(f)) return false;
    }
    return true;
}

struct copying {
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
            if (!put(f, bytes, n)) return false;
            bytes += n;
            c->at = plain;
        }
        if (!e || e->from >= end) continue;
        uint64_t over = e->to < end ? e->to : end;
        bytes += over - c->at;
        c->at = over;
        if (c->at < e->to) continue; // the rest of it is in the next piece
        if (!put(f, e->bytes, e->size)) return false;
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
        if (!put(f, e->bytes, e->size)) return false;
    }
    return true;
}

bool newfile_write(struct newfile *f, int old, const char *expected, const struct edit *edits, size_t count) {
    struct copying c = {.edits = edits, .count = count};
    file_hash_start(&f->sum);
    f->out = arena_alloc(f->arena, OUT_SIZE);
    f->filled = 0;
    if (lseek(old, 0, SEEK_SET) < 0) return fail(f, "the stock file cannot be read twice");
    struct ahead *ahead = ahead_open(f->arena, old);
    const char *bytes;
    size_t size;
    while ((bytes = ahead_next(ahead, &size)))
        if (!copy_piece(f, &c, bytes, size)) return false;
    if (ahead_error(ahead)) {
        errno = ahead_error(ahead);
        return fail(f, "the stock file cannot be read");
    }
    if (!edits_at_end(f, &c) || !flush(f)) return false;
    if (strcmp(ahead_hash(ahead), expected) != 0) {
        f->wrong = "the stock file was changed while it was read";
        return false;
    }
    if (fsync(f->file) < 0) return fail(f, "cannot be forced to the disk");
    int file = f->file;
    f->file = -1;
    if (close(file) < 0 && errno != EINTR) return fail(f, "cannot be closed");
    f->hash = file_hash_text(f->arena, &f->sum);
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
