// SPDX-License-Identifier: MIT
// A growing byte string in an arena. `at` is always NUL-ended, also when empty, and never NULL after
// buf_start().
#ifndef TEXT_BUF_H
#define TEXT_BUF_H

#include <stdarg.h>
#include <stddef.h>

#include "text/arena.h"

struct buf {
    struct arena *arena;
    char *at;
    size_t n, room;
};

struct buf buf_start(struct arena *arena);
// Makes room for `more` bytes behind the text, for a caller who writes them at `at + n` and adds to `n`
// himself.
void buf_reserve(struct buf *buf, size_t more);
void buf_add(struct buf *buf, const char *bytes, size_t size);
void buf_text(struct buf *buf, const char *text);
static inline void buf_byte(struct buf *buf, char byte) {
    if (buf->room - buf->n < 2) buf_reserve(buf, 1);
    buf->at[buf->n++] = byte;
    buf->at[buf->n] = '\0';
}
void buf_format(struct buf *buf, const char *format, ...) TEXT_PRINTF(2, 3);
void buf_vformat(struct buf *buf, const char *format, va_list arguments) TEXT_PRINTF(2, 0);
// Empties the text, keeps the room.
void buf_clear(struct buf *buf);

#endif
