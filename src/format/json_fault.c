// SPDX-License-Identifier: MIT
// Guesses what was meant from the bytes at the fault, to give a way out; the reading itself never depends on
// it.
#include "format/json_fault.h"

#include <string.h>

struct place json_place(const struct json *json, size_t from, size_t to) {
    struct place at = {json->source, from, to > json->end ? json->end : to};
    return at;
}

static bool is_word(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') || c == '_' ||
           c == '.' || c == '+' || c == '-' || (unsigned char)c >= 0x80;
}

size_t json_word_length(const struct json *json, size_t at) {
    size_t to = at;
    while (to < json->end && is_word(json->source->text[to])) to++;
    return to - at;
}

bool json_fault(struct json *json, size_t from, size_t to, const char *hint, const char *message) {
    json->failed = true;
    diags_add(json->diags, CODE_JSON, json_place(json, from, to), hint, "%s", message);
    return false;
}

bool json_fault_here(struct json *json, const char *hint, const char *message) {
    if (json->at >= json->end) return json_fault(json, json->at, json->at, hint, "the text ends too early");
    return json_fault(json, json->at, json->at + 1, hint, message);
}

static bool same_word(const char *text, size_t size, const char *word) {
    if (size != strlen(word)) return false;
    for (size_t i = 0; i < size; i++) {
        char low = text[i] >= 'A' && text[i] <= 'Z' ? (char)(text[i] + ('a' - 'A')) : text[i];
        if (low != word[i]) return false;
    }
    return true;
}

static const char *word_hint(const char *text, size_t size) {
    if (same_word(text, size, "true") || same_word(text, size, "false") || same_word(text, size, "null")) {
        return "in small letters: true, false, null";
    }
    if (same_word(text, size, "none") || same_word(text, size, "undefined"))
        return "JSON says null for nothing";
    if (same_word(text, size, "yes") || same_word(text, size, "no")) return "JSON says true or false";
    if (same_word(text, size, "nan") || same_word(text, size, "infinity") ||
        same_word(text, size, "-infinity")) {
        return "JSON has finite numbers only; write null, or leave the key out";
    }
    char first = text[0] == '-' && size > 1 ? text[1] : text[0];
    if (first == '0') return "a number has no zeros before it: 7, or \"007\" where it is a text";
    if ((first >= '1' && first <= '9') || first == '.' || first == '+') {
        return "a number is written like 12, -0.5 or 1e3; anything else needs quotes";
    }
    return "a text stands in double quotes";
}

bool json_fault_word(struct json *json, size_t at) {
    size_t size = json_word_length(json, at);
    const char *text = json->source->text + at;
    bool number = text[0] == '-' || (text[0] >= '0' && text[0] <= '9');
    return json_fault(json, at, at + size, word_hint(text, size),
                      number ? "a number that is not written as JSON wants it"
                             : "a word that JSON does not have");
}

bool json_fault_key(struct json *json) {
    char c = json->at < json->end ? json->source->text[json->at] : '\0';
    size_t word = json_word_length(json, json->at);
    if (c == '\'') return json_fault_here(json, "use double quotes", "a key in single quotes");
    if (word)
        return json_fault(json, json->at, json->at + word, "put it in double quotes", "a key without quotes");
    if (c == '/')
        return json_fault_here(json, "JSON has no comments; take it out", "a key should stand here");
    if (c == ',') return json_fault_here(json, "take this comma out", "a key should stand here");
    return json_fault_here(json, "a key in double quotes, or the closing }", "a key should stand here");
}

bool json_fault_value(struct json *json) {
    char c = json->at < json->end ? json->source->text[json->at] : '\0';
    const char *hint = "a value is a text in double quotes, a number, true, false, null, a list or a map";
    if (c == '\'') hint = "use double quotes";
    if (c == '/' || c == '#') hint = "JSON has no comments; take it out";
    if (c == ',') hint = "take this comma out, or write null";
    if (c == '.' || c == '+') return json_fault_word(json, json->at);
    if ((unsigned char)c >= 0x80) hint = "use straight double quotes around a text";
    return json_fault_here(json, hint, c == '\'' ? "a text in single quotes" : "a value should stand here");
}

bool json_fault_between(struct json *json, const struct node *into) {
    bool map = into->kind == NODE_MAP;
    if (json->at >= json->end) {
        return json_fault(json, into->at.from, into->at.from + 1,
                          map ? "the closing } is missing" : "the closing ] is missing",
                          map ? "a map that never ends" : "a list that never ends");
    }
    char c = json->source->text[json->at];
    if (c == '"' || c == '{' || c == '[')
        return json_fault_here(json, "put a comma before it", "a comma is missing");
    if (c == ':' && !map) return json_fault_here(json, "keys stand in { }, not in [ ]", "a colon in a list");
    if (c == '/' || c == '#')
        return json_fault_here(json, "JSON has no comments; take it out", "unexpected character");
    return json_fault_here(
        json, map ? "a comma or the closing } belongs here" : "a comma or the closing ] belongs here",
        "unexpected character");
}

bool json_fault_after(struct json *json) {
    char c = json->source->text[json->at];
    bool again = c == '{' || c == '[';
    return json_fault_here(
        json, again ? "several records: one a line in an .ndjson file, or in [ ] with commas" : NULL,
        "the text goes on after its value");
}
