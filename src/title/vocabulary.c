// SPDX-License-Identifier: MIT
// Sorted table of free words; open addressing for the numbers. Numbers are given in order of first use, so
// nothing depends on the hash.
#include "title/vocabulary.h"

#include <string.h>

#include "say/say.h"
#include "text/order.h"
#include "text/utf8.h"

static const char *const free_words[] = {
    "a",    "about", "an",  "and",  "as",    "at",  "both", "by",      "cm",   "each", "for",
    "from", "ft",    "gal", "in",   "kg",    "lb",  "ml",   "mm",      "near", "no",   "not",
    "of",   "off",   "on",  "only", "or",    "out", "over", "oz",      "per",  "pt",   "qt",
    "size", "some",  "the", "to",   "under", "up",  "with", "without", "yd"};

bool word_is_free(const char *word) {
    return text_sorted_has(free_words, sizeof free_words / sizeof *free_words, word);
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

// The slot of a word: its own, or the free one where it belongs.
static size_t slot_of(const struct vocabulary *v, const char *word) {
    size_t at = hash(word) & (v->slot_count - 1);
    while (v->names && v->slots[at] && !text_same(v->names[v->slots[at] - 1], word))
        at = (at + 1) & (v->slot_count - 1);
    return at;
}

static uint16_t take(struct arena *arena, struct vocabulary *v, size_t slot, const char *word) {
    v->names = arena_grow(arena, (void *)v->names, v->count, &v->room, sizeof *v->names);
    v->names[v->count++] = word;
    v->slots[slot] = (uint16_t)v->count;
    if (2 * v->count > v->slot_count) rehash(arena, v);
    return (uint16_t)(v->count - 1);
}

uint16_t vocabulary_number(struct arena *arena, struct vocabulary *v, const char *word) {
    size_t slot = slot_of(v, word);
    return v->slots[slot] ? (uint16_t)(v->slots[slot] - 1) : take(arena, v, slot, word);
}

static bool word_point(uint32_t point) {
    return utf8_is_letter(point) || utf8_is_digit(point);
}

// The next word of `text` from `*at` on, as [*from, *at); false at the end.
static bool word_span(const char *text, size_t size, size_t *at, size_t *from) {
    size_t after = *from = *at;
    while (*from < size && !word_point(utf8_next(text, size, &after))) *from = after;
    if (*from >= size) return false;
    size_t to = *from;
    for (size_t next = *from; next < size;) {
        size_t here = next;
        unsigned char c = (unsigned char)text[here];
        if (c < 0x80 && word_point(c)) { // nearly all
            to = ++next;
            continue;
        }
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
    return true;
}

const char *word_next(struct arena *arena, const char *text, size_t *at) {
    size_t from;
    if (!word_span(text, strlen(text), at, &from)) return NULL;
    return utf8_fold(arena, arena_copy(arena, text + from, *at - from));
}

static void add(struct numbers *numbers, uint16_t number) {
    for (size_t i = 0; i < numbers->count; i++)
        if (numbers->at[i] == number) return;
    numbers->at[numbers->count++] = number;
}

static bool letters_span(const char *text, size_t size, size_t *at, size_t *from, size_t *to) {
    while (*at < size) {
        size_t next = *at, points = 0;
        *from = *to = *at;
        while (next < size && utf8_is_letter(utf8_next(text, size, &next))) {
            *to = next;
            points++;
        }
        *at = next;
        if (points >= 2) return true;
    }
    return false;
}

const char *letters_next(struct arena *arena, const char *text, size_t *at) {
    size_t from, to;
    if (!letters_span(text, strlen(text), at, &from, &to)) return NULL;
    return utf8_fold(arena, arena_copy(arena, text + from, to - from));
}

// --- words looked up where they stand, so that only a new one is copied ---

enum { PLAIN_ROOM = 48, WORDS_FIRST = 12 };

struct folded {
    char plain[PLAIN_ROOM];
    const char *word; // `plain`, or in the arena
};

static void fold(struct arena *arena, const char *text, size_t size, struct folded *out) {
    size_t n = 0;
    for (; n < size && n + 1 < PLAIN_ROOM && (unsigned char)text[n] < 0x80; n++)
        out->plain[n] = text[n] >= 'A' && text[n] <= 'Z' ? (char)(text[n] | 0x20) : text[n];
    out->plain[n] = '\0';
    out->word = n == size ? out->plain : utf8_fold(arena, arena_copy(arena, text, size));
}

static const char *kept(struct arena *arena, const struct folded *folded) {
    return folded->word == folded->plain ? arena_string(arena, folded->plain) : folded->word;
}

struct numbers vocabulary_words(struct arena *arena, struct vocabulary *words, const char *text) {
    size_t size = strlen(text), at = 0, from, to;
    struct numbers numbers = {arena_array(arena, size / 2 + 1, sizeof(uint16_t)), 0};
    struct folded folded;
    while (letters_span(text, size, &at, &from, &to)) {
        fold(arena, text + from, to - from, &folded);
        if (word_is_free(folded.word)) continue;
        size_t slot = slot_of(words, folded.word);
        add(&numbers, words->slots[slot] ? (uint16_t)(words->slots[slot] - 1)
                                         : take(arena, words, slot, kept(arena, &folded)));
    }
    return numbers;
}

bool words_repeat(struct arena *arena, const char *text) {
    struct folded first[WORDS_FIRST];
    size_t size = strlen(text), at = 0, from, to, count = 0;
    while (count < WORDS_FIRST && letters_span(text, size, &at, &from, &to)) {
        fold(arena, text + from, to - from, &first[count]);
        if (word_is_free(first[count].word)) continue;
        for (size_t i = 0; i < count; i++)
            if (text_same(first[i].word, first[count].word)) return true;
        count++;
    }
    if (count < WORDS_FIRST) return false;
    struct vocabulary words = vocabulary_start(arena); // of a long text, from its beginning
    size_t seen = 0;
    at = 0;
    for (const char *word; (word = letters_next(arena, text, &at));) {
        if (word_is_free(word)) continue;
        vocabulary_number(arena, &words, word);
        seen++;
    }
    return words.count < seen;
}

// The same words stand in many texts of one title: each is brought to its stem once.
static uint16_t stem_of(struct arena *arena, struct vocabulary *stems, const struct folded *folded) {
    if (!stems->asked) {
        stems->asked = arena_alloc(arena, sizeof *stems->asked);
        *stems->asked = vocabulary_start(arena);
    }
    struct vocabulary *asked = stems->asked;
    size_t slot = slot_of(asked, folded->word);
    if (asked->slots[slot]) return stems->stem_of[asked->slots[slot] - 1];
    const char *word = kept(arena, folded);
    stems->stem_of =
        arena_grow(arena, stems->stem_of, asked->count, &stems->stem_room, sizeof *stems->stem_of);
    uint16_t number = vocabulary_number(arena, stems, say_stem(arena, word));
    stems->stem_of[take(arena, asked, slot, word)] = number;
    return number;
}

struct numbers vocabulary_stems(struct arena *arena, struct vocabulary *stems, const char *text) {
    size_t size = strlen(text), at = 0, from;
    struct numbers numbers = {arena_array(arena, size + 1, sizeof(uint16_t)), 0};
    struct folded folded;
    while (word_span(text, size, &at, &from)) {
        fold(arena, text + from, at - from, &folded);
        if (!word_is_free(folded.word)) add(&numbers, stem_of(arena, stems, &folded));
    }
    return numbers;
}
