// SPDX-License-Identifier: MIT
// JSON by RFC 8259, byte for byte, with the place of every value. The first fault ends the reading: what
// stands after it in a strict grammar is guesswork. Invariant: `at` never passes `end`, and the bytes are
// valid UTF-8.
#include "format/json.h"

#include <string.h>

#include "format/check.h"
#include "format/json_fault.h"
#include "format/number.h"
#include "format/read.h"
#include "text/limits.h"
#include "text/utf8.h"

static void skip_space(struct json *json) {
    const char *text = json->source->text;
    while (json->at < json->end && text[json->at] && strchr(" \t\r\n", text[json->at])) json->at++;
}

static char peek(const struct json *json) {
    return json->at < json->end ? json->source->text[json->at] : '\0';
}

static struct node *node_at(struct json *json, enum node_kind kind, size_t from) {
    struct node *node = arena_alloc(json->arena, sizeof *node);
    node->kind = kind;
    node->at.source = json->source;
    node->at.from = from;
    node->at.to = json->at;
    return node;
}

static bool read_hex(const struct json *json, size_t at, uint32_t *value) {
    *value = 0;
    if (json->end - at < 4) return false;
    for (size_t i = at; i < at + 4; i++) {
        char c = json->source->text[i];
        uint32_t digit = c >= '0' && c <= '9'   ? (uint32_t)(c - '0')
                         : c >= 'a' && c <= 'f' ? (uint32_t)(c - 'a' + 10)
                         : c >= 'A' && c <= 'F' ? (uint32_t)(c - 'A' + 10)
                                                : 16u;
        if (digit > 15) return false;
        *value = *value << 4 | digit;
    }
    return true;
}

// At the `u` of an escape.
static bool read_unicode(struct json *json, struct buf *out) {
    const char *text = json->source->text;
    size_t from = json->at - 1;
    uint32_t point = 0, low = 0;
    if (!read_hex(json, json->at + 1, &point)) {
        return json_fault(json, from, json->at + 1, "write \\u and four digits of 0-9 a-f",
                          "an escape that is not complete");
    }
    json->at += 5;
    if (point >= 0xD800 && point < 0xDC00 && json->end - json->at >= 6 && text[json->at] == '\\' &&
        text[json->at + 1] == 'u' && read_hex(json, json->at + 2, &low) && low >= 0xDC00 && low < 0xE000) {
        point = 0x10000 + ((point - 0xD800) << 10) + (low - 0xDC00);
        json->at += 6;
    }
    if (point >= 0xD800 && point < 0xE000) {
        return json_fault(json, from, json->at, "beyond U+FFFF both halves are needed, as in \\ud83d\\ude42",
                          "half of a surrogate pair");
    }
    char bytes[4];
    size_t size = utf8_put(point, bytes);
    buf_add(out, bytes, size);
    if (!check_value(bytes, size, json_place(json, from, json->at), false, json->diags)) json->failed = true;
    return !json->failed;
}

static bool read_escape(struct json *json, struct buf *out) {
    static const char FROM[] = "\"\\/bfnrt", TO[] = "\"\\/\b\f\n\r\t";
    json->at++;
    char c = peek(json);
    if (c == 'u') return read_unicode(json, out);
    const char *known = c ? strchr(FROM, c) : NULL;
    if (!known) {
        return json_fault(json, json->at - 1, json->at + 1, "write \\\\ for a backslash",
                          "an escape that JSON does not have");
    }
    json->at++;
    buf_byte(out, TO[known - FROM]);
    return true;
}

// At the opening quote. NULL after a fault.
static struct node *read_text(struct json *json) {
    const char *text = json->source->text;
    size_t from = json->at++;
    struct buf out = buf_start(json->arena);
    for (;;) {
        size_t run = json->at;
        while (run < json->end && (unsigned char)text[run] >= 0x20 && text[run] != '"' && text[run] != '\\')
            run++;
        buf_add(&out, text + json->at, run - json->at);
        json->at = run;
        if (run >= json->end) {
            json_fault(json, from, from + 1, "the closing quote is missing", "a text that never ends");
            return NULL;
        }
        if (text[run] == '"') break;
        if (text[run] == '\\') {
            if (!read_escape(json, &out)) return NULL;
            continue;
        }
        const char *hint =
            text[run] == '\t' ? "write \\t for a tab" : "close the quote, or write \\n for a new line";
        json_fault(json, run, run + 1, hint, "a line end or control character inside a text");
        return NULL;
    }
    json->at++;
    struct node *node = node_at(json, NODE_TEXT, from);
    node->text = out.at;
    node->size = out.n;
    if (check_value(node->text, node->size, node->at, false, json->diags)) return node;
    json->failed = true;
    return NULL;
}

static struct node *read_number(struct json *json) {
    const char *text = json->source->text;
    size_t from = json->at, size = number_length(text + from, json->end - from), after = from + size;
    bool ends = after >= json->end || strchr(" \t\r\n,]}", text[after]);
    if (!size || !ends) {
        json_fault_word(json, from);
        return NULL;
    }
    json->at = after;
    struct node *node = node_at(json, NODE_NUMBER, from);
    node->text = arena_copy(json->arena, text + from, size);
    node->size = size;
    return node;
}

static struct node *read_word(struct json *json) {
    static const char *const WORDS[] = {"true", "false", "null"};
    const char *text = json->source->text + json->at;
    size_t size = json_word_length(json, json->at);
    for (size_t i = 0; i < 3; i++) {
        if (size != strlen(WORDS[i]) || memcmp(text, WORDS[i], size) != 0) continue;
        size_t from = json->at;
        json->at += size;
        struct node *node = node_at(json, i < 2 ? NODE_BOOL : NODE_NULL, from);
        node->text = WORDS[i];
        node->size = size;
        return node;
    }
    json_fault_word(json, json->at);
    return NULL;
}

static bool read_key(struct json *json, struct node *map, struct keys *keys, struct node **key) {
    if (peek(json) != '"') return json_fault_key(json);
    *key = read_text(json);
    if (!*key) return false;
    json->failed = !check_value((*key)->text, (*key)->size, (*key)->at, true, json->diags);
    if (json->failed) return false;
    const struct member *same = keys_find(keys, json->arena, map, (*key)->text);
    if (same) {
        json->failed = true;
        size_t line = source_locate(json->source, same->key_at.from).line;
        diags_add(json->diags, CODE_DUPLICATE_KEY, (*key)->at, "keep one of the two",
                  "key `%s` stands twice, first in line %zu", (*key)->text, line);
        return false;
    }
    skip_space(json);
    if (peek(json) != ':')
        return json_fault_here(json, "a colon stands between key and value", "a colon is missing");
    json->at++;
    return true;
}

static struct node *read_value(struct json *json, size_t depth);

// One entry of a list or map, and what stands after it. False at the end of the collection or after a fault.
static bool read_entry(struct json *json, struct node *into, struct keys *keys, size_t depth) {
    char close = into->kind == NODE_MAP ? '}' : ']';
    struct node *key = NULL;
    if (into->kind == NODE_MAP && !read_key(json, into, keys, &key)) return false;
    struct node *value = read_value(json, depth + 1);
    if (!value) return false;
    node_put_at(json->arena, into, key ? key->text : NULL, key ? key->at : value->at, value);
    skip_space(json);
    if (peek(json) == close) {
        json->at++;
        return false;
    }
    if (peek(json) != ',') return json_fault_between(json, into);
    size_t comma = json->at++;
    skip_space(json);
    if (peek(json) != '}' && peek(json) != ']') return true;
    return json_fault(json, comma, comma + 1, "take this comma out", "a comma after the last entry");
}

static struct node *read_collection(struct json *json, size_t depth) {
    struct node *into = node_at(json, peek(json) == '{' ? NODE_MAP : NODE_LIST, json->at);
    if (depth == LIMIT_DEPTH) {
        json->failed = true;
        diags_add(json->diags, CODE_DEEP, json_place(json, json->at, json->at + 1), NULL,
                  "lists and maps are nested too deep");
        return NULL;
    }
    json->at++;
    skip_space(json);
    struct keys keys = {0};
    if (peek(json) == (into->kind == NODE_MAP ? '}' : ']')) {
        json->at++;
    } else {
        while (read_entry(json, into, &keys, depth)) {
        }
        if (json->failed) return NULL;
    }
    into->at.to = json->at;
    return into;
}

static struct node *read_value(struct json *json, size_t depth) {
    skip_space(json);
    char c = peek(json);
    if (c == '{' || c == '[') return read_collection(json, depth);
    if (c == '"') return read_text(json);
    if (c == '-' || (c >= '0' && c <= '9')) return read_number(json);
    if ((c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z')) return read_word(json);
    json_fault_value(json);
    return NULL;
}

struct node *json_read(struct arena *arena, const struct source *source, struct diags *diags) {
    if (!check_source(source, diags)) return NULL;
    struct json json = {.arena = arena, .source = source, .diags = diags, .end = source->size};
    if (source->size >= 3 && memcmp(source->text, "\xEF\xBB\xBF", 3) == 0) json.at = 3;
    struct node *node = read_value(&json, 0);
    if (!node) return NULL;
    skip_space(&json);
    if (json.at < json.end) {
        json_fault_after(&json);
        return NULL;
    }
    return node;
}
