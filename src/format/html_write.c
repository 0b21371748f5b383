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
    html_text(html, text);
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
