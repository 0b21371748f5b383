// SPDX-License-Identifier: MIT
// Loaded before the C library: ends the program at once, as a power cut would, before the n-th call that
// changes something on the disk; or lets that call fail.
//   KILL_AT     which of these calls (from 1); 0: only count them
//   KILL_HOW    "kill", or the call fails: "ENOSPC"; or the byte at KILL_PLACE of the file KILL_CHANGE is
//               changed before the call: "change"
//   KILL_COUNT  file to write the number of calls to when the program ends
#define _GNU_SOURCE
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/syscall.h>
#include <unistd.h>

static unsigned long at, seen;
static int full;
static const char *count_file, *change_file;
static long place;

__attribute__((constructor)) static void begin(void) {
    const char *text = getenv("KILL_AT"), *how = getenv("KILL_HOW");
    at = text ? strtoul(text, NULL, 10) : 0;
    full = how && !strcmp(how, "ENOSPC");
    count_file = getenv("KILL_COUNT");
    place = getenv("KILL_PLACE") ? atol(getenv("KILL_PLACE")) : 0;
    change_file = how && !strcmp(how, "change") ? getenv("KILL_CHANGE") : NULL;
}

__attribute__((destructor)) static void end(void) {
    int to =
        count_file ? (int)syscall(SYS_openat, AT_FDCWD, count_file, O_WRONLY | O_CREAT | O_TRUNC, 0600) : -1;
    if (to < 0) return;
    char text[32];
    int size = snprintf(text, sizeof text, "%lu\n", seen);
    syscall(SYS_write, to, text, (size_t)size);
    syscall(SYS_close, to);
}

static int fails(void) {
    if (++seen != at) return 0;
    if (change_file) {
        int to = (int)syscall(SYS_openat, AT_FDCWD, change_file, O_WRONLY);
        syscall(SYS_pwrite64, to, "#", 1, place);
        syscall(SYS_close, to);
        return 0;
    }
    if (!full) syscall(SYS_exit_group, 137);
    errno = ENOSPC;
    return 1;
}

// Messages and results are no part of it.
ssize_t write(int file, const void *bytes, size_t size) {
    if (file > STDERR_FILENO && fails()) return -1;
    return syscall(SYS_write, file, bytes, size);
}

ssize_t pwrite(int file, const void *bytes, size_t size, off_t to) {
    return fails() ? -1 : syscall(SYS_pwrite64, file, bytes, size, to);
}

ssize_t pwrite64(int file, const void *bytes, size_t size, off64_t to) {
    return fails() ? -1 : syscall(SYS_pwrite64, file, bytes, size, to);
}

int fsync(int file) {
    return fails() ? -1 : (int)syscall(SYS_fsync, file);
}

int fdatasync(int file) {
    return fails() ? -1 : (int)syscall(SYS_fdatasync, file);
}

int ftruncate(int file, off_t size) {
    return fails() ? -1 : (int)syscall(SYS_ftruncate, file, size);
}

int ftruncate64(int file, off64_t size) {
    return fails() ? -1 : (int)syscall(SYS_ftruncate, file, size);
}

int unlink(const char *path) {
    return fails() ? -1 : (int)syscall(SYS_unlinkat, AT_FDCWD, path, 0);
}

int rename(const char *from, const char *to) {
    return fails() ? -1 : (int)syscall(SYS_renameat2, AT_FDCWD, from, AT_FDCWD, to, 0);
}

int renameat2(int a, const char *from, int b, const char *to, unsigned flags) {
    return fails() ? -1 : (int)syscall(SYS_renameat2, a, from, b, to, flags);
}
