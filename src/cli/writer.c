// SPDX-License-Identifier: MIT
// The C library's streams hide which write failed and why, so the buffer is our own.
#include "cli/writer.h"

#include <errno.h>
#include <string.h>
#include <unistd.h>

int write_all(int file, const char *bytes, size_t size) {
    for (size_t done = 0; done < size;) {
        ssize_t wrote = write(file, bytes + done, size - done);
        if (wrote < 0 && errno == EINTR) continue;
        if (wrote < 0) return errno;
        if (wrote == 0) return ENOSPC;
        done += (size_t)wrote;
    }
    return 0;
}

void writer_start(struct writer *writer, int file, bool direct) {
    writer->file = file;
    writer->direct = direct;
    writer->error = 0;
    writer->total = writer->filled = 0;
}

bool writer_flush(struct writer *writer) {
    if (!writer->error) writer->error = write_all(writer->file, writer->bytes, writer->filled);
    writer->filled = 0;
    return !writer->error;
}

bool writer_put(void *context, const char *bytes, size_t size) {
    struct writer *writer = context;
    if (writer->error) return false;
    writer->total += size;
    if (size > sizeof writer->bytes - writer->filled && !writer_flush(writer)) return false;
    if (size >= sizeof writer->bytes) {
        writer->error = write_all(writer->file, bytes, size);
        return !writer->error;
    }
    memcpy(writer->bytes + writer->filled, bytes, size);
    writer->filled += size;
    return !writer->direct || writer_flush(writer);
}

bool writer_text(struct writer *writer, const char *text) {
    return writer_put(writer, text, strlen(text));
}

bool writer_close(struct writer *writer) {
    writer_flush(writer);
    // An interrupted close has closed the descriptor on Linux; doing it twice could hit another file.
    if (close(writer->file) < 0 && errno != EINTR && !writer->error) writer->error = errno;
    return !writer->error;
}
