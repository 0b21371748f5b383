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
#include "shelf/behind.h"

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

bool newfile_is_later(const struct newfile *f, int old) {
    struct stat before, now;
    return fstat(old, &before) == 0 && fstat(f->file, &now) == 0 && before.st_ctime + 1 < now.st_ctime;
}

// --- copying ---

void newfile_start(struct newfile *f) {
    f->behind = behind_open(f->arena, f->file);
    f->at = 0;
    f->count = f->next = 0;
}

void newfile_edit(struct newfile *f, const struct edit *edit) {
    f->edits = arena_grow(f->arena, f->edits, f->count, &f->room, sizeof *f->edits);
    f->edits[f->count++] = *edit;
}

// An edit may begin in one piece of the old file and end in another.
void newfile_pass(struct newfile *f, const char *bytes, size_t size) {
    uint64_t end = f->at + size;
    while (f->at < end) {
        const struct edit *e = f->next < f->count ? &f->edits[f->next] : NULL;
        uint64_t plain = e && e->from < end ? e->from : end;
        if (f->at < plain) {
            size_t n = (size_t)(plain - f->at);
            behind_put(f->behind, bytes, n);
            bytes += n;
            f->at = plain;
        }
        if (!e || e->from >= end) continue;
        uint64_t over = e->to < end ? e->to : end;
        bytes += over - f->at;
        f->at = over;
        if (f->at < e->to) continue; // the rest of it is in the next piece
        behind_put(f->behind, e->bytes, e->size);
        f->next++;
    }
}

bool newfile_end(struct newfile *f) {
    for (; f->next < f->count; f->next++) {
        const struct edit *e = &f->edits[f->next];
        if (e->from != f->at || e->to != f->at) {
            f->wrong = "the stock file is shorter than it was";
            return false;
        }
        behind_put(f->behind, e->bytes, e->size);
    }
    errno = behind_finish(f->behind, &f->hash);
    if (errno) return fail(f, "cannot be written");
    if (fsync(f->file) < 0) return fail(f, "cannot be forced to the disk");
    int file = f->file;
    f->file = -1;
    if (close(file) < 0 && errno != EINTR) return fail(f, "cannot be closed");
    return true;
}

bool newfile_write(struct newfile *f, int old, const char *expected, const struct edit *edits, size_t count) {
    behind_stop(f->behind);
    if (lseek(old, 0, SEEK_SET) < 0) return fail(f, "the stock file cannot be read twice");
    if (lseek(f->file, 0, SEEK_SET) < 0 || ftruncate(f->file, 0) < 0) return fail(f, "cannot be written");
    newfile_start(f);
    for (size_t i = 0; i < count; i++) newfile_edit(f, &edits[i]);
    struct ahead *ahead = ahead_open(f->arena, old);
    const char *bytes;
    size_t size;
    while ((bytes = ahead_next(ahead, &size))) newfile_pass(f, bytes, size);
    errno = ahead_error(ahead);
    if (errno) return fail(f, "the stock file cannot be read");
    if (strcmp(ahead_hash(ahead), expected) != 0) {
        f->wrong = "the stock file was changed while it was read";
        return false;
    }
    return newfile_end(f);
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
    behind_stop(f->behind);
    f->behind = NULL;
    if (f->file >= 0) close(f->file);
    if (f->temporary) unlink(f->temporary);
    f->file = -1;
    f->temporary = NULL;
}
