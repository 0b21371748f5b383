// SPDX-License-Identifier: MIT
// The one place that escapes for a page. Text from a seller is never anything but text there.
#include <string.h>

#include "format/write.h"
#include "text/utf8.h"

static const char *entity(char c) {
    switch (c) {
    case '&':
        return "&amp;";
    case '<':
        return "&lt;";
    case '>':
        return "&gt;";
    case '"':
        return "&quot;";
    case '\'':
        return "&#39;";
    default:
        return NULL;
    }
}

static void add_good(struct buf *out, const char *text, size_t size) {
    size_t done = 0;
    for (size_t at = 0; at < size; at++) {
        const char *written = entity(text[at]);
        // Controls other than tab and line ends may not stand in a page.
        bool control = (unsigned char)text[at] < 0x20 && !strchr("\t\n\r", text[at]);
        if (!written && !control && text[at] != 0x7F) continue;
        buf_add(out, text + done, at - done);
        buf_text(out, written ? written : "\xEF\xBF\xBD");
        done = at + 1;
    }
    buf_add(out, text + done, size - done);
}

void html_text(struct html *html, const char *text) {
    size_t size = strlen(text), at = 0;
    while (at < size) {
        size_t good = utf8_check(text + at, size - at);
        add_good(html->out, text + at, good);
        at += good;
        if (at >= size) return;
        buf_text(html->out, "\xEF\xBF\xBD");
        at++;
    }
}

// Letters of scripts that run from right to left (Hebrew, Arabic and their neighbors).
static bool is_leftward(uint32_t point) {
    return (point >= 0x590 && point <= 0x8FF) || (point >= 0xFB1D && point <= 0xFDFF) ||
           (point >= 0xFE70 && point <= 0xFEFE) || (point >= 0x10800 && point <= 0x10FFF) ||
           (point >= 0x1E800 && point <= 0x1EFFF);
}

// Bytes from `at` to the last leftward letter before a line end or a letter that runs the other way.
static size_t leftward_length(const char *text, size_t size, size_t at) {
    size_t last = at;
    for (size_t next = at; next < size;) {
        uint32_t point = utf8_next(text, size, &next);
        if (is_leftward(point))
            last = next;
        else if (point == '\n' || utf8_is_letter(point))
            break;
    }
    return last - at;
}

void html_isolated(struct html *html, const char *text) {
    size_t size = strlen(text);
    size_t done = 0, good = utf8_check(text, size);
    for (size_t at = 0; at < good;) {
        size_t from = at;
        if (!is_leftward(utf8_next(text, good, &at))) continue;
        at = from + leftward_length(text, good, from);
        add_good(html->out, text + done, from - done);
        buf_text(html->out, "<bdi>");
        add_good(html->out, text + from, at - from);
        buf_text(html->out, "</bdi>");
        done = at;
    }
    html_text(html, text + done);
}

void html_open(struct html *html, const char *tag, const char *attribute, const char *value) {
    buf_byte(html->out, '<');
    buf_text(html->out, tag);
    if (attribute) {
        buf_byte(html->out, ' ');
        buf_text(html->out, attribute);
        buf_text(html->out, "=\"");
        html_text(html, value ? value : "");
        buf_byte(html->out, '"');
    }
    buf_byte(html->out, '>');
}

void html_close(struct html *html, const char *tag) {
    buf_text(html->out, "</");
    buf_text(html->out, tag);
    buf_byte(html->out, '>');
}

void html_line(struct html *html, const char *tag, const char *text) {
    html_open(html, tag, NULL, NULL);
    html_isolated(html, text);
    html_close(html, tag);
    buf_byte(html->out, '\n');
}

void html_json(struct html *html, const struct node *node) {
    struct buf json = buf_start(html->out->arena);
    json_write(&json, node);
    buf_text(html->out, "<script type=\"application/ld+json\">");
    for (size_t i = 0; i < json.n; i++) {
        if (json.at[i] == '<')
            buf_text(html->out, "\\u003c");
        else
            buf_byte(html->out, json.at[i]);
    }
    buf_text(html->out, "</script>\n");
}
