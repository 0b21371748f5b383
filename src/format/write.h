// SPDX-License-Identifier: MIT
// Writing trees and pages. One writer a form; nothing else in the project escapes anything.
#ifndef FORMAT_WRITE_H
#define FORMAT_WRITE_H

#include "format/tree.h"
#include "text/buf.h"

// One line of JSON, no spaces outside strings, no line end. Always valid UTF-8; U+2028 and U+2029 escaped
// too.
void json_write(struct buf *out, const struct node *node);
// The same, indented by two spaces.
void json_write_pretty(struct buf *out, const struct node *node);
// One YAML document that yaml_read() reads back as the same tree. With libyaml's emitter.
void yaml_write(struct arena *arena, struct buf *out, const struct node *node);

// HTML: text is escaped here and only here. Tags and attribute names are literals of our own.
struct html {
    struct buf *out;
};
void html_open(struct html *html, const char *tag, const char *attribute,
               const char *value); // attribute may be NULL
void html_close(struct html *html, const char *tag);
void html_text(struct html *html, const char *text);
// The same, with each run that is read from right to left in a <bdi>, so that it moves nothing around it.
void html_isolated(struct html *html, const char *text);
// <tag>text</tag> and a line end, isolated.
void html_line(struct html *html, const char *tag, const char *text);
// A JSON tree inside <script type="application/ld+json">: "<" is written \u003c so that no text can end the
// element.
void html_json(struct html *html, const struct node *node);

#endif
