// SPDX-License-Identifier: MIT
// Standard output: buffered, complete, and honest about what could not be written.
#ifndef CLI_WRITER_H
#define CLI_WRITER_H

#include <stdbool.h>
#include <stddef.h>

enum { WRITER_ROOM = 1 << 16 };

struct writer {
    int file;
    bool direct;  // a person is watching: nothing is kept back
    int error;    // the first errno; nothing is written after it
    size_t total; // bytes taken so far
    size_t filled;
    char bytes[WRITER_ROOM];
};

// Writes everything in spite of interruptions and short writes; 0 or an errno.
int write_all(int file, const char *bytes, size_t size);

void writer_start(struct writer *writer, int file, bool direct);
// An asfound_put: `writer` is a struct writer.
bool writer_put(void *writer, const char *bytes, size_t size);
bool writer_text(struct writer *writer, const char *text);
bool writer_flush(struct writer *writer);
// Flushes and closes: some file systems report a full disk only then. False when anything was lost; see
// `error`.
bool writer_close(struct writer *writer);

#endif
