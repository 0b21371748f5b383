// SPDX-License-Identifier: MIT
// Writing JSON. U+2028 and U+2029 end lines in script, so they are escaped; a byte that is no UTF-8 becomes
// U+FFFD, because a line that cannot be parsed would cost the reader all the rest of it.
#include <stdint.h>
#include <string.h>

#include "format/write.h"
#include "text/utf8.h"

enum { FLAT = -1 }; // in place of the depth: no line ends, no blanks

static void add_escape(struct buf *out, unsigned point) {
    static const char FROM[] = "\b\f\n\r\t\"\\", TO[] = "bfnrt\"\\";
    const char *one = point < 0x80 && point ? strchr(FROM, (char)point) : NULL;
    if (one) {
        buf_byte(out, '\\');
        buf_byte(out, TO[one - FROM]);
    } else {
        buf_format(out, "\\u%04x", point);
    }
}

// Nearly every byte of a text is one of these.
static bool is_plain(char c) {
    return c >= 0x20 && c < 0x7F && c != '"' && c != '\\';
}

#define EACH_BYTE(b) (UINT64_C(0x0101010101010101) * (b))

// The highest bit of each byte that is 0; of one above it maybe too.
static uint64_t zeros(uint64_t bytes) {
    return (bytes - EACH_BYTE(0x01)) & ~bytes & EACH_BYTE(0x80);
}

static bool eight_plain(const char *text) {
    uint64_t bytes;
    memcpy(&bytes, text, sizeof bytes);
    uint64_t low = (bytes - EACH_BYTE(0x20)) & ~bytes;
    uint64_t odd = bytes | low | zeros(bytes ^ EACH_BYTE('"')) | zeros(bytes ^ EACH_BYTE('\\')) |
                   zeros(bytes ^ EACH_BYTE(0x7F));
    return !(odd & EACH_BYTE(0x80));
}

static bool all_plain(const char *text, size_t size) {
    size_t at = 0;
    if (size < 8) {
        while (at < size && is_plain(text[at])) at++;
        return at == size;
    }
    while (size - at > 8 && eight_plain(text + at)) at += 8;
    return size - at <= 8 && eight_plain(text + size - 8);
}

static void add_plain(struct buf *out, const char *text, size_t size) {
    if (out->room - out->n <= size + 2) buf_reserve(out, size + 2);
    char *to = out->at + out->n;
    to[0] = '"';
    memcpy(to + 1, text, size);
    to[size + 1] = '"';
    to[size + 2] = '\0';
    out->n += size + 2;
}

static void add_string(struct buf *out, const char *text, size_t size) {
    size_t at = 0, done = 0;
    if (all_plain(text, size)) {
        add_plain(out, text, size);
        return;
    }
    buf_byte(out, '"');
    while (at < size) {
        while (size - at >= 8 && eight_plain(text + at)) at += 8;
        while (at < size && is_plain(text[at])) at++;
        if (at == size) break;
        size_t from = at, left = size - at < 4 ? size - at : 4;
        bool good = utf8_check(text + at, left) > 0;
        unsigned point = good ? utf8_next(text, size, &at) : 0xFFFD;
        bool escape = point < 0x20 || point == '"' || point == '\\' || point == 0x7F || point == 0x2028 ||
                      point == 0x2029;
        if (good && !escape) continue;
        buf_add(out, text + done, from - done);
        if (good)
            add_escape(out, point);
        else
            buf_text(out, "\xEF\xBF\xBD");
        if (!good) at++;
        done = at;
    }
    buf_add(out, text + done, at - done);
    buf_byte(out, '"');
}

static void new_line(struct buf *out, int depth) {
    if (depth < 0) return;
    buf_byte(out, '\n');
    for (int i = 0; i < depth; i++) buf_text(out, "  ");
}

static void write_node(struct buf *out, const struct node *node, int depth) {
    if (node->kind == NODE_TEXT) {
        add_string(out, node->text, node->size);
        return;
    }
    if (node->kind != NODE_LIST && node->kind != NODE_MAP) {
        buf_text(out, node->kind == NODE_NULL ? "null" : node->text);
        return;
    }
    int inner = depth == FLAT ? FLAT : depth + 1;
    buf_byte(out, node->kind == NODE_MAP ? '{' : '[');
    for (size_t i = 0; i < node->count; i++) {
        const struct member *member = &node->members[i];
        if (i) buf_byte(out, ',');
        new_line(out, inner);
        if (node->kind == NODE_MAP) {
            add_string(out, member->key, strlen(member->key));
            buf_byte(out, ':');
            if (depth != FLAT) buf_byte(out, ' ');
        }
        write_node(out, member->value, inner);
    }
    if (node->count) new_line(out, depth);
    buf_byte(out, node->kind == NODE_MAP ? '}' : ']');
}

void json_write(struct buf *out, const struct node *node) {
    write_node(out, node, FLAT);
}

void json_write_pretty(struct buf *out, const struct node *node) {
    write_node(out, node, 0);
}
