// SPDX-License-Identifier: MIT
// Loaded before the C library: lets the n-th call of one kind fail in a program that knows nothing of it.
// What to do is told by the environment:
//   FAULT_CALL  alloc, write, read, open or close
//   FAULT_AT    which of these calls (from 1); 0 or none: only count them
//   FAULT_FILE  descriptor the call must be about (write, read, close); "files" means all but the standard
//   ones FAULT_HOW   ENOSPC, EIO, EINTR, EMFILE, or "short": half of what was asked for, at least one byte
//   FAULT_LAST  as FAULT_AT: fails up to this call; "0" means to the end
//   FAULT_COUNT file to write the number of calls to when the program ends
#define _GNU_SOURCE
#include <errno.h>
#include <fcntl.h>
#include <stdarg.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/syscall.h>
#include <unistd.h>

void *__libc_malloc(size_t size);
void *__libc_calloc(size_t count, size_t size);
void *__libc_realloc(void *block, size_t size);

enum call { CALL_NONE, CALL_ALLOC, CALL_WRITE, CALL_READ, CALL_OPEN, CALL_CLOSE };

enum { ANY_FILE = -1, SHORT = -1 };

// The loader asks for memory too, before anything here is set: until `call` is, everything passes.
static enum call call;
static unsigned long at, last, seen;
static int file, how;
static const char *count_file;

static unsigned long number(const char *name, unsigned long otherwise) {
    const char *text = getenv(name);
    return text ? strtoul(text, NULL, 10) : otherwise;
}

static int how_of(const char *text) {
    static const struct {
        const char *name;
        int how;
    } all[] = {{"ENOSPC", ENOSPC}, {"EIO", EIO}, {"EINTR", EINTR}, {"EMFILE", EMFILE}, {"short", SHORT}};
    for (size_t i = 0; text && i < sizeof all / sizeof *all; i++)
        if (!strcmp(all[i].name, text)) return all[i].how;
    return EIO;
}

__attribute__((constructor)) static void begin(void) {
    static const char *const names[] = {"", "alloc", "write", "read", "open", "close"};
    const char *name = getenv("FAULT_CALL"), *about = getenv("FAULT_FILE");
    at = number("FAULT_AT", 0);
    last = number("FAULT_LAST", at);
    if (!last) last = (unsigned long)-1;
    file = about && strcmp(about, "files") != 0 ? atoi(about) : ANY_FILE;
    how = how_of(getenv("FAULT_HOW"));
    count_file = getenv("FAULT_COUNT");
    for (int i = 1; name && i <= CALL_CLOSE; i++)
        if (!strcmp(names[i], name)) call = (enum call)i;
}

__attribute__((destructor)) static void end(void) {
    call = CALL_NONE;
    int to =
        count_file ? (int)syscall(SYS_openat, AT_FDCWD, count_file, O_WRONLY | O_CREAT | O_TRUNC, 0600) : -1;
    if (to < 0) return;
    char text[32];
    int size = snprintf(text, sizeof text, "%lu\n", seen);
    syscall(SYS_write, to, text, (size_t)size);
    syscall(SYS_close, to);
}

static int fails(enum call which) {
    if (call != which) return 0;
    seen++;
    return at && seen >= at && seen <= last;
}

static int fails_on(enum call which, int descriptor) {
    if (file == ANY_FILE ? descriptor <= STDERR_FILENO : descriptor != file) return 0;
    return fails(which);
}

void *malloc(size_t size) {
    if (!fails(CALL_ALLOC)) return __libc_malloc(size);
    errno = ENOMEM;
    return NULL;
}

void *calloc(size_t count, size_t size) {
    if (!fails(CALL_ALLOC)) return __libc_calloc(count, size);
    errno = ENOMEM;
    return NULL;
}

void *realloc(void *block, size_t size) {
    if (!fails(CALL_ALLOC)) return __libc_realloc(block, size);
    errno = ENOMEM;
    return NULL;
}

static ssize_t transfer(long number_of_call, enum call which, int descriptor, void *bytes, size_t size) {
    if (fails_on(which, descriptor)) {
        if (how != SHORT) {
            errno = how;
            return -1;
        }
        size = size > 1 ? size / 2 : size;
    }
    return syscall(number_of_call, descriptor, bytes, size);
}

ssize_t write(int descriptor, const void *bytes, size_t size) {
    return transfer(SYS_write, CALL_WRITE, descriptor, (void *)bytes, size);
}

ssize_t read(int descriptor, void *bytes, size_t size) {
    return transfer(SYS_read, CALL_READ, descriptor, bytes, size);
}

int open(const char *path, int flags, ...) {
    mode_t mode = 0;
    if (flags & O_CREAT) {
        va_list arguments;
        va_start(arguments, flags);
        mode = va_arg(arguments, mode_t);
        va_end(arguments);
    }
    if (!fails(CALL_OPEN)) return (int)syscall(SYS_openat, AT_FDCWD, path, flags, mode);
    errno = how;
    return -1;
}

int close(int descriptor) {
    int result = (int)syscall(SYS_close, descriptor);
    if (!fails_on(CALL_CLOSE, descriptor)) return result;
    errno = how;
    return -1;
}
