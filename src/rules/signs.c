// SPDX-License-Identifier: MIT
#include "rules/signs.h"

#include <stdlib.h>
#include <string.h>

#include "text/index.h"
#include "text/utf8.h"

enum { WORD_ROOM = 48 };

struct signs *signs_new(struct arena *arena) {
    return arena_alloc(arena, sizeof(struct signs));
}

static bool is_apostrophe(uint32_t point) {
    return point == '\'' || point == 0x2019;
}

size_t sign_word_next(const char *text, size_t size, size_t *at, size_t *from, char *to, size_t room) {
    size_t n = 0;
    bool inside = false;
    while (*at < size) {
        unsigned char c = (unsigned char)text[*at], small = c | 0x20;
        if ((small >= 'a' && small <= 'z') || (c >= '0' && c <= '9')) { // as nearly all are
            if (!inside) *from = *at;
            inside = true;
            if (n + 4 < room) to[n++] = (char)(c <= '9' ? c : small);
            ++*at;
            continue;
        }
        size_t next = *at;
        uint32_t point = utf8_next(text, size, &next);
        bool letter = utf8_is_letter(point) || utf8_is_digit(point);
        if (!letter && inside && !is_apostrophe(point)) break;
        if (letter) {
            if (!inside) *from = *at;
            inside = true;
            if (n + 4 < room && point < 0x80)
                to[n++] = (char)utf8_lower(point);
            else if (n + 4 < room)
                n += utf8_put(utf8_lower(point), to + n);
        }
        *at = next;
    }
    to[n] = '\0';
    return inside ? n : 0;
}

static void add_word(struct arena *arena, struct signs *signs, const char *text, size_t size) {
    char words[4 * WORD_ROOM];
    size_t n = 0, at = 0, from = 0, first = 0, more;
    while (n + WORD_ROOM + 1 < sizeof words) {
        size_t gap = n > 0;
        more = sign_word_next(text, size, &at, &from, words + n + gap, WORD_ROOM);
        if (!more) break;
        if (gap) words[n] = ' ';
        n += gap + more;
        if (!first) first = n;
    }
    if (!n) return;
    signs->words =
        arena_grow(arena, signs->words, signs->word_count, &signs->word_room, sizeof *signs->words);
    signs->words[signs->word_count++] =
        (struct sign_word){arena_copy(arena, words, n), first, n, signs->group_count - 1, 0};
}

static void add_group(struct arena *arena, struct signs *signs, const char *text, size_t size,
                      size_t section) {
    while (size && *text == ' ') text++, size--;
    bool bars = size && *text == '!';
    signs->groups =
        arena_grow(arena, signs->groups, signs->group_count, &signs->group_room, sizeof *signs->groups);
    signs->groups[signs->group_count++] = (struct sign_group){section, bars};
    for (size_t at = bars; at < size;) {
        const char *bar = memchr(text + at, '|', size - at);
        size_t n = bar ? (size_t)(bar - text) - at : size - at;
        add_word(arena, signs, text + at, n);
        at += n + 1;
    }
}

bool caution_is_state(const struct caution *caution) {
    return caution->flaws.count && !caution->things.count;
}

// "a|b / c // d / !e": groups by single strokes, sections by double ones.
static void add_sign(struct arena *arena, struct signs *signs, const char *text,
                     const struct caution *caution) {
    struct sign sign = {.caution = caution, .first = signs->group_count};
    size_t section = 0;
    for (const char *at = text;;) {
        size_t n = strcspn(at, "/");
        add_group(arena, signs, at, n, section);
        if (!at[n]) break;
        at += n + 1;
        if (*at == '/') {
            section++;
            at++;
        }
    }
    sign.count = signs->group_count - sign.first;
    signs->signs = arena_grow(arena, signs->signs, signs->count, &signs->room, sizeof *signs->signs);
    signs->signs[signs->count++] = sign;
}

void signs_add(struct arena *arena, struct signs *signs, const struct caution *caution) {
    if (caution->number >= signs->rule_count) signs->rule_count = caution->number + 1;
    for (size_t i = 0; i < caution->signs.count; i++) add_sign(arena, signs, caution->signs.at[i], caution);
}

// By the first word, then as they were given.
static int word_order(const void *a, const void *b) {
    const struct sign_word *x = a, *y = b;
    size_t n = x->size < y->size ? x->size : y->size;
    int order = memcmp(x->words, y->words, n);
    if (!order) order = (x->size > y->size) - (x->size < y->size);
    if (!order) order = strcmp(x->words, y->words);
    return order ? order : (x->group > y->group) - (x->group < y->group);
}

void signs_close(struct arena *arena, struct signs *signs) {
    if (signs->word_count) qsort(signs->words, signs->word_count, sizeof *signs->words, word_order);
    struct index *firsts = index_new(arena, signs->word_count);
    for (size_t i = signs->word_count; i-- > 0;) {
        struct sign_word *word = &signs->words[i];
        bool more = i + 1 < signs->word_count && word[1].size == word->size &&
                    !memcmp(word[1].words, word->words, word->size);
        word->alike = more ? word[1].alike + 1 : 1;
    }
    for (size_t i = 0; i < signs->word_count; i++)
        index_add(firsts, signs->words[i].words, signs->words[i].size, i);
    signs->firsts = firsts;
}

size_t signs_first(const struct signs *signs, const char *word, size_t size) {
    uint32_t found = index_find(signs->firsts, word, size);
    return found == INDEX_NONE ? signs->word_count : found;
}
