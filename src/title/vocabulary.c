// SPDX-License-Identifier: MIT
// Sorted table of free words; open addressing for the numbers. Numbers are given in order of first use, so
// nothing depends on the hash.
#include "title/vocabulary.h"

#include <stdlib.h>
#include <string.h>

#include "say/say.h"
#include "text/order.h"
#include "text/utf8.h"

static const char *const free_words[] = {
    "a",    "about", "an",  "and",  "as",    "at",  "both", "by",      "cm",   "each", "for",
    "from", "ft",    "gal", "in",   "kg",    "lb",  "ml",   "mm",      "near", "no",   "not",
    "of",   "off",   "on",  "only", "or",    "out", "over", "oz",      "per",  "pt",   "qt",
    "size", "some",  "the", "to",   "under", "up",  "with", "without", "yd"};

static int word_order(const void *key, const void *entry) {
    return text_order(key, *(const char *const *)entry);
}

bool word_is_free(const char *word) {
    return bsearch(word, free_words, sizeof free_words / sizeof *free_words, sizeof *free_words,
                   word_order) != NULL;
}

struct vocabulary vocabulary_start(struct arena *arena) {
    struct vocabulary v = {.slot_count = 256};
    v.slots = arena_array(arena, v.slot_count, sizeof *v.slots);
    return v;
}

static size_t hash(const char *word) {
    uint32_t h = 2166136261u;
    for (; *word; word++) h = (h ^ (unsigned char)*word) * 16777619u;
    return h;
}

static void rehash(struct arena *arena, struct vocabulary *v) {
    v->slot_count *= 2;
    v->slots = arena_array(arena, v->slot_count, sizeof *v->slots);
    for (size_t i = 0; i < v->count; i++) {
        size_t at = hash(v->names[i]) & (v->slot_count - 1);
        while (v->slots[at]) at = (at + 1) & (v->slot_count - 1);
        v->slots[at] = (uint16_t)(i + 1);
    }
}

uint16_t vocabulary_number(struct arena *arena, struct vocabulary *v, const char *word) {
    size_t at = hash(word) & (v->slot_count - 1);
    for (; v->slots[at]; at = (at + 1) & (v->slot_count - 1))
        if (!strcmp(v->names[v->slots[at] - 1], word)) return (uint16_t)(v->slots[at] - 1);
    v->names = arena_grow(arena, (void *)v->names, v->count, &v->room, sizeof *v->names);
    v->names[v->count++] = word;
    v->slots[at] = (uint16_t)v->count;
    if (2 * v->count > v->slot_count) rehash(arena, v);
    return (uint16_t)(v->count - 1);
}

static bool word_point(uint32_t point) {
    return utf8_is_letter(point) || utf8_is_digit(point);
}

const char *word_next(struct arena *arena, const char *text, size_t *at) {
    size_t size = strlen(text), from = *at, after = from;
    while (from < size && !word_point(utf8_next(text, size, &after))) from = after;
    if (from >= size) return NULL;
    size_t to = from;
    for (size_t next = from; next < size;) {
        size_t here = next;
        uint32_t point = utf8_next(text, size, &next);
        if (word_point(point))
            to = next;
        else {
            bool joins = point == '.' || point == '\'' || point == ':' || point == 0x2019;
            size_t peek = next;
            if (here != to || !joins || next >= size || !word_point(utf8_next(text, size, &peek))) break;
        }
    }
    *at = to;
    return utf8_fold(arena, arena_copy(arena, text + from, to - from));
}

static void add(struct numbers *numbers, uint16_t number) {
    for (size_t i = 0; i < numbers->count; i++)
        if (numbers->at[i] == number) return;
    numbers->at[numbers->count++] = number;
}

const char *letters_next(struct arena *arena, const char *text, size_t *at) {
    size_t size = strlen(text);
    while (*at < size) {
        size_t from = *at, to = from, next = from, points = 0;
        while (next < size && utf8_is_letter(utf8_next(text, size, &next))) {
            to = next;
            points++;
        }
        *at = next;
        if (points >= 2) return utf8_fold(arena, arena_copy(arena, text + from, to - from));
    }
    return NULL;
}

struct numbers vocabulary_words(struct arena *arena, struct vocabulary *words, const char *text) {
    struct numbers numbers = {arena_array(arena, strlen(text) / 2 + 1, sizeof(uint16_t)), 0};
    size_t at = 0;
    for (const char *word; (word = letters_next(arena, text, &at));)
        if (!word_is_free(word)) add(&numbers, vocabulary_number(arena, words, word));
    return numbers;
}

struct numbers vocabulary_stems(struct arena *arena, struct vocabulary *stems, const char *text) {
    struct numbers numbers = {arena_array(arena, strlen(text) + 1, sizeof(uint16_t)), 0};
    size_t at = 0;
    for (const char *word; (word = word_next(arena, text, &at));)
        if (!word_is_free(word)) add(&numbers, vocabulary_number(arena, stems, say_stem(arena, word)));
    return numbers;
}
