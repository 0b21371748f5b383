// SPDX-License-Identifier: MIT
// The order asked of the file is that of bytes, so that the list is searched as it stands.
#include "words/trade.h"

#include <stdlib.h>
#include <string.h>

struct trade_reader {
    struct arena *arena;
    struct diags *diags;
    const struct source *source;
    struct trade *trade;
    size_t room;
};

static int compare_sized(const char *a, size_t a_size, const char *b, size_t b_size) {
    int order = memcmp(a, b, a_size < b_size ? a_size : b_size);
    return order ? order : (a_size > b_size) - (a_size < b_size);
}

static int compare(const void *a, const void *b) {
    const struct trade_word *x = a, *y = b;
    return compare_sized(x->word, x->size, y->word, y->size);
}

static bool is_plain(const char *word, size_t size) {
    for (size_t i = 0; i < size; i++) {
        bool joint = word[i] == '-' && i && i + 1 < size;
        if ((word[i] < 'a' || word[i] > 'z') && !joint) return false;
    }
    return size > 1 && size <= TRADE_LONGEST;
}

static void read_word(struct trade_reader *r, size_t from, size_t to) {
    const char *text = r->source->text;
    while (from < to && (text[from] == ' ' || text[from] == '\t')) from++;
    while (to > from && strchr(" \t\r", text[to - 1])) to--;
    if (from == to || text[from] == '#') return;
    struct trade_word fresh = {arena_copy(r->arena, text + from, to - from), to - from};
    struct place at = {r->source, from, to};
    if (!is_plain(fresh.word, fresh.size)) {
        diags_add(r->diags, CODE_DICT, at, "one word of letters a to z and inner hyphens, at most 40",
                  "'%s' is not one word in small letters", fresh.word);
        return;
    }
    struct trade *t = r->trade;
    if (t->count && compare(&t->words[t->count - 1], &fresh) >= 0) {
        diags_add(r->diags, CODE_DICT, at, "sort the list, each word once", "'%s' is out of order",
                  fresh.word);
        return;
    }
    t->words = arena_grow(r->arena, t->words, t->count, &r->room, sizeof *t->words);
    t->words[t->count++] = fresh;
}

const struct trade *trade_read(struct arena *arena, const struct source *source, struct diags *diags) {
    struct trade_reader r = {.arena = arena, .diags = diags, .source = source};
    r.trade = arena_alloc(arena, sizeof *r.trade);
    for (size_t at = 0; at < source->size;) {
        const char *stop = memchr(source->text + at, '\n', source->size - at);
        size_t end = stop ? (size_t)(stop - source->text) : source->size;
        read_word(&r, at, end);
        at = end + 1;
    }
    return r.trade;
}

static bool has(const struct trade *trade, const char *word, size_t size) {
    struct trade_word key = {word, size};
    return size && trade->count && bsearch(&key, trade->words, trade->count, sizeof key, compare);
}

static bool ends_in_bare_y(const char *word, size_t size) {
    return size > 1 && word[size - 1] == 'y' && !strchr("aeiou", word[size - 2]);
}

static bool hisses(const char *word, size_t size) {
    char last = word[size - 1], before = size > 1 ? word[size - 2] : '\0';
    return strchr("sxz", last) || (last == 'h' && (before == 's' || before == 'c'));
}

bool trade_knows(const struct trade *trade, const char *word, size_t size) {
    if (size > TRADE_LONGEST + 2) return false;
    if (has(trade, word, size)) return true;
    if (size < 4 || word[size - 1] != 's') return false;
    if (has(trade, word, size - 1)) return !hisses(word, size - 1) && !ends_in_bare_y(word, size - 1);
    if (word[size - 2] != 'e') return false;
    if (has(trade, word, size - 2)) return hisses(word, size - 2);
    if (word[size - 3] != 'i') return false;
    char singular[TRADE_LONGEST + 2];
    memcpy(singular, word, size - 3);
    singular[size - 3] = 'y';
    return has(trade, singular, size - 2);
}
