// SPDX-License-Identifier: MIT
// US and UK spelling from a list of pairs. Only words whose change is safe both ways belong in the list:
// "meter" does not, since the UK keeps it for the instrument.
#include <stdlib.h>
#include <string.h>

#include "say/say.h"
#include "text/buf.h"
#include "text/diag.h"
#include "text/index.h"
#include "text/order.h"

enum { WORD_LONGEST = 32 };

struct pair {
    const char *from, *to;
};
struct variants {
    struct pair *pairs[2];  // by the locale that a text is to have, sorted by `from`
    struct index *index[2]; // of them
    size_t count;
};

static bool is_upper(char c) {
    return c >= 'A' && c <= 'Z';
}
static bool is_lower(char c) {
    return c >= 'a' && c <= 'z';
}

static int compare(const void *a, const void *b) {
    return text_order(((const struct pair *)a)->from, ((const struct pair *)b)->from);
}

struct reader {
    struct arena *arena;
    struct diags *diags;
    const struct source *source;
    struct pair *pairs; // US to UK, in file order
    size_t count, room;
};

static void fault(struct reader *r, size_t from, size_t to, const char *hint, const char *word,
                  const char *what) {
    diags_add(r->diags, CODE_DICT, (struct place){r->source, from, to}, hint, "'%s' %s", word, what);
}

// The next word of a line in [*at, end); its size is 0 at the line's end.
static size_t next_word(const char *text, size_t *at, size_t end) {
    while (*at < end && (text[*at] == ' ' || text[*at] == '\t' || text[*at] == '\r')) ++*at;
    size_t size = 0;
    while (*at + size < end && !strchr(" \t\r", text[*at + size])) size++;
    return size;
}

static bool is_plain(const char *word, size_t size) {
    for (size_t i = 0; i < size; i++)
        if (!is_lower(word[i])) return false;
    return size <= WORD_LONGEST;
}

static void read_pair(struct reader *r, size_t from, size_t end) {
    const char *text = r->source->text;
    size_t us = from, us_size = next_word(text, &us, end), gb = us + us_size,
           gb_size = next_word(text, &gb, end);
    size_t more = gb + gb_size;
    if (!us_size || text[us] == '#') return;
    const char *first = arena_copy(r->arena, text + us, us_size);
    if (!gb_size || next_word(text, &more, end)) {
        fault(r, us, end, "the US spelling, a space, the UK spelling", first,
              "does not stand on a line of two words");
        return;
    }
    struct pair pair = {first, arena_copy(r->arena, text + gb, gb_size)};
    if (!is_plain(pair.from, us_size) || !is_plain(pair.to, gb_size))
        fault(r, us, gb + gb_size, "letters a to z, at most 32", first,
              "or its pair has other signs than small letters");
    else if (text_same(pair.from, pair.to))
        fault(r, us, gb + gb_size, "take the line out", first, "is spelled alike in both");
    else if (r->count && strcmp(r->pairs[r->count - 1].from, pair.from) >= 0)
        fault(r, us, us + us_size, "sort the list by the US word, each once", first, "is out of order");
    else {
        r->pairs = arena_grow(r->arena, r->pairs, r->count, &r->room, sizeof *r->pairs);
        r->pairs[r->count++] = pair;
    }
}

static const struct pair *find(const struct pair *pairs, size_t count, const char *word) {
    struct pair key = {word, NULL};
    return count ? bsearch(&key, pairs, count, sizeof *pairs, compare) : NULL;
}

// Going back must be possible: no UK word twice, and none that is a US word of its own.
static void check_back(struct reader *r, const struct pair *back) {
    for (size_t i = 0; i < r->count; i++) {
        bool twice = i && text_same(back[i - 1].from, back[i].from);
        if (twice || find(r->pairs, r->count, back[i].from))
            fault(r, 0, 0, "keep one of the lines", back[i].from, "leads back to more than one word");
    }
}

static struct index *index_pairs(struct arena *arena, const struct variants *variants, int locale) {
    struct index *index = index_new(arena, variants->count);
    for (size_t i = 0; i < variants->count; i++) {
        const char *from = variants->pairs[locale][i].from;
        index_add(index, from, strlen(from), i);
    }
    return index;
}

struct variants *variants_load(struct arena *arena, const char *name, const char *text, size_t size,
                               struct diags *diags) {
    struct source *source = arena_alloc(arena, sizeof *source);
    *source = (struct source){.name = arena_string(arena, name),
                              .text = arena_copy(arena, text, size),
                              .size = size,
                              .first_line = 1};
    struct reader r = {.arena = arena, .diags = diags, .source = source};
    for (size_t at = 0; at < size;) {
        const char *stop = memchr(source->text + at, '\n', size - at);
        size_t end = stop ? (size_t)(stop - source->text) : size;
        read_pair(&r, at, end);
        at = end + 1;
    }
    struct variants *variants = arena_alloc(arena, sizeof *variants);
    struct pair *back = arena_array(arena, r.count + 1, sizeof *back);
    for (size_t i = 0; i < r.count; i++) back[i] = (struct pair){r.pairs[i].to, r.pairs[i].from};
    qsort(back, r.count, sizeof *back, compare);
    check_back(&r, back);
    variants->pairs[LOCALE_GB] = r.pairs;
    variants->pairs[LOCALE_US] = back;
    variants->count = r.count;
    for (int locale = 0; locale < 2; locale++) variants->index[locale] = index_pairs(arena, variants, locale);
    return variants;
}

// Part of a word, digits included: "gray2" is a code and not the color.
static bool is_part(char c) {
    return is_lower(c) || is_upper(c) || (c >= '0' && c <= '9') || c == '_' || (unsigned char)c >= 0x80;
}

enum capitals { CAPITALS_NONE, CAPITALS_FIRST, CAPITALS_ALL, CAPITALS_MIXED };

static enum capitals capitals_of(const char *word, size_t size) {
    size_t upper = 0;
    for (size_t i = 0; i < size; i++) upper += is_upper(word[i]);
    if (!upper) return CAPITALS_NONE;
    if (upper == size && size > 1) return CAPITALS_ALL;
    return upper == 1 && is_upper(word[0]) ? CAPITALS_FIRST : CAPITALS_MIXED;
}

static const char *other_spelling(const struct variants *variants, const char *word, size_t size,
                                  enum locale locale) {
    char lower[WORD_LONGEST];
    if (size > WORD_LONGEST) return NULL;
    for (size_t i = 0; i < size; i++) lower[i] = is_upper(word[i]) ? (char)(word[i] + ('a' - 'A')) : word[i];
    uint32_t found = index_find(variants->index[locale], lower, size);
    if (found == INDEX_NONE || capitals_of(word, size) == CAPITALS_MIXED) return NULL;
    return variants->pairs[locale][found].to;
}

static void put(struct buf *out, const char *word, enum capitals capitals) {
    for (size_t i = 0; word[i]; i++) {
        bool upper = capitals == CAPITALS_ALL || (capitals == CAPITALS_FIRST && !i);
        buf_byte(out, upper ? (char)(word[i] - ('a' - 'A')) : word[i]);
    }
}

const char *say_spelling(struct arena *arena, const struct variants *variants, const char *text,
                         enum locale locale) {
    struct buf out = {0};
    size_t done = 0;
    if (!variants) return text;
    for (size_t at = 0; text[at];) {
        size_t size = 0;
        while (is_part(text[at + size])) size++;
        const char *other = size ? other_spelling(variants, text + at, size, locale) : NULL;
        if (other) {
            if (!out.at) out = buf_start(arena);
            buf_add(&out, text + done, at - done);
            put(&out, other, capitals_of(text + at, size));
            done = at + size;
        }
        at += size ? size : 1;
    }
    if (!out.at) return text;
    buf_text(&out, text + done);
    return out.at;
}
