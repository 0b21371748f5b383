// SPDX-License-Identifier: MIT
// Room doubles, so that n bytes added one by one are copied at most about 2n times; old rooms stay in the
// arena.
#include "text/buf.h"
#include "text/print.h"

#include <stdint.h>
#include <string.h>

enum { ROOM_FIRST = 64 };

struct buf buf_start(struct arena *arena) {
    struct buf buf = {arena, arena_room(arena, ROOM_FIRST), 0, ROOM_FIRST};
    buf.at[0] = '\0';
    return buf;
}

void buf_reserve(struct buf *buf, size_t more) {
    if (more < buf->room - buf->n) return; // one byte is kept for the NUL
    if (more > SIZE_MAX / 4 || buf->room > SIZE_MAX / 4) arena_give_up(buf->arena);
    size_t room = buf->room;
    while (more >= room - buf->n) room *= 2;
    char *moved = arena_room(buf->arena, room);
    memcpy(moved, buf->at, buf->n + 1);
    buf->at = moved;
    buf->room = room;
}

void buf_add(struct buf *buf, const char *bytes, size_t size) {
    if (!size) return;
    buf_reserve(buf, size);
    memcpy(buf->at + buf->n, bytes, size);
    buf->n += size;
    buf->at[buf->n] = '\0';
}

void buf_text(struct buf *buf, const char *text) {
    buf_add(buf, text, strlen(text));
}

void buf_vformat(struct buf *buf, const char *format, va_list arguments) {
    va_list again;
    va_copy(again, arguments);
    size_t left = buf->room - buf->n;
    int size = text_print(buf->at + buf->n, left, format, arguments);
    if (size > 0 && (size_t)size >= left) {
        buf_reserve(buf, (size_t)size);
        text_print(buf->at + buf->n, (size_t)size + 1, format, again);
    }
    if (size > 0) buf->n += (size_t)size;
    va_end(again);
}

void buf_format(struct buf *buf, const char *format, ...) {
    va_list arguments;
    va_start(arguments, format);
    buf_vformat(buf, format, arguments);
    va_end(arguments);
}

void buf_clear(struct buf *buf) {
    buf->n = 0;
    buf->at[0] = '\0';
}
