// SPDX-License-Identifier: MIT
// One answer for all forms to "may these bytes stand in a record?". Looked at before parsing, so that no
// parser ever sees invalid UTF-8, and once more after unescaping, so that an escape is no way round it.
#include "format/check.h"

#include <stdint.h>
#include <stdio.h>
#include <string.h>

#include "text/utf8.h"

enum { CONTROLS_MOST = 5, KEYS_WALKED = 16 };

static struct place place_in(const struct source *source, size_t from, size_t to) {
    struct place place = {source, from, to};
    return place;
}

static const char *point_hint(uint32_t point) {
    bool bidi = (point >= 0x202A && point <= 0x202E) || (point >= 0x2066 && point <= 0x2069);
    if (bidi || point == 0x200E || point == 0x200F || point == 0x61C) {
        return "it changes the direction of writing and cannot be seen; take it out";
    }
    if (point < 0xA0 && point != '\r') return "a control character; take it out";
    if (point == '\r') return "a carriage return with no line feed; save the file with ordinary line ends";
    return "it cannot be seen and often comes along when text is pasted; take it out";
}

static bool check_utf8(const struct source *source, struct diags *diags) {
    size_t bad = utf8_check(source->text, source->size);
    const char *nul = memchr(source->text, 0, source->size);
    if (nul) {
        size_t at = (size_t)(nul - source->text);
        diags_add(diags, CODE_NUL, place_in(source, at, at + 1), "is this really a text file?",
                  "a NUL byte (U+0000)");
    }
    if (bad < source->size) {
        unsigned char byte = (unsigned char)source->text[bad];
        unsigned char next = bad + 1 < source->size ? (unsigned char)source->text[bad + 1] : 0;
        bool wide = bad == 0 && ((byte == 0xFF && next == 0xFE) || (byte == 0xFE && next == 0xFF));
        diags_add(diags, CODE_UTF8, place_in(source, bad, bad + 1),
                  wide ? "the file is in UTF-16; save it as UTF-8" : "save the file as UTF-8",
                  "byte 0x%02X is not valid UTF-8 here", byte);
    }
    return !nul && bad == source->size;
}

bool check_source(const struct source *source, struct diags *diags) {
    if (!source->size) return true;
    if (!check_utf8(source, diags)) return false;
    const char *text = source->text;
    size_t at = source->size >= 3 && memcmp(text, "\xEF\xBB\xBF", 3) == 0 ? 3 : 0;
    bool fine = true;
    for (int seen = 0; seen < CONTROLS_MOST; seen++) {
        at += utf8_unwanted(text + at, source->size - at, true);
        if (at >= source->size) break;
        size_t from = at;
        uint32_t point = utf8_next(text, source->size, &at);
        fine = false;
        diags_add(diags, CODE_CONTROL, place_in(source, from, at), point_hint(point),
                  "character U+%04X must not stand here", (unsigned)point);
    }
    return fine;
}

bool check_value(const char *text, size_t size, struct place at, bool key, struct diags *diags) {
    if (memchr(text, 0, size)) {
        diags_add(diags, CODE_NUL, at, "take the escape out", "the %s holds U+0000", key ? "key" : "text");
        return false;
    }
    size_t bad = utf8_unwanted(text, size, !key);
    if (bad >= size) return true;
    uint32_t point = utf8_next(text, size, &bad);
    diags_add(diags, CODE_CONTROL, at, point_hint(point), "character U+%04X must not stand in a %s",
              (unsigned)point, key ? "key" : "text");
    return false;
}

static size_t hash_text(const char *text) {
    uint64_t hash = 14695981039346656037u; // FNV-1a
    for (; *text; text++) hash = (hash ^ (unsigned char)*text) * 1099511628211u;
    return (size_t)(hash ^ hash >> 32);
}

static void keys_remember(struct keys *keys, const struct node *map, size_t index) {
    size_t slot = hash_text(map->members[index].key) & (keys->room - 1);
    while (keys->slots[slot]) slot = (slot + 1) & (keys->room - 1);
    keys->slots[slot] = index + 1;
}

static void keys_follow(struct keys *keys, struct arena *arena, const struct node *map) {
    if (keys->room < map->count * 2) {
        keys->room = keys->room ? keys->room * 2 : KEYS_WALKED * 4;
        keys->slots = arena_array(arena, keys->room, sizeof *keys->slots);
        keys->known = 0;
    }
    while (keys->known < map->count) keys_remember(keys, map, keys->known++);
}

const struct member *keys_find(struct keys *keys, struct arena *arena, const struct node *map,
                               const char *key) {
    if (map->count < KEYS_WALKED) {
        for (size_t i = 0; i < map->count; i++) {
            if (strcmp(map->members[i].key, key) == 0) return &map->members[i];
        }
        return NULL;
    }
    keys_follow(keys, arena, map);
    size_t slot = hash_text(key) & (keys->room - 1);
    for (; keys->slots[slot]; slot = (slot + 1) & (keys->room - 1)) {
        const struct member *member = &map->members[keys->slots[slot] - 1];
        if (strcmp(member->key, key) == 0) return member;
    }
    return NULL;
}
