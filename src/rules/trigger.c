// SPDX-License-Identifier: MIT
// A sorted table of first words and of pairs of them, and an index of it. Words are runs of letters and
// digits, case-folded, as scan.c's word boundaries see them.
#include "rules/trigger.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "text/index.h"
#include "text/utf8.h"

enum { WORD_ROOM = 64 };

struct entry {
    const char *word; // one, or two with a space between
    size_t finder;
};

struct triggers {
    struct entry *entries;
    size_t count, room;
    struct index *firsts; // the first entry of each text
    size_t *always;
    size_t always_count, always_room;
};

struct triggers *triggers_new(struct arena *arena) {
    return arena_alloc(arena, sizeof(struct triggers));
}

// The next word of `text` from `*at`, folded into `to`; false at the end. A word longer than `to` never
// triggers.
static bool next_word(const char *text, size_t size, size_t *at, char *to, size_t room) {
    size_t n = 0;
    bool inside = false;
    while (*at < size) {
        size_t next = *at;
        uint32_t point = utf8_next(text, size, &next);
        bool letter = utf8_is_letter(point) || utf8_is_digit(point);
        if (!letter && inside) break;
        if (letter) {
            inside = true;
            if (n + 4 < room) n += utf8_put(utf8_lower(point), to + n);
        }
        *at = next;
    }
    to[n] = '\0';
    return inside;
}

static void add_entry(struct arena *arena, struct triggers *t, const char *word, size_t finder) {
    t->entries = arena_grow(arena, t->entries, t->count, &t->room, sizeof *t->entries);
    t->entries[t->count++] = (struct entry){arena_string(arena, word), finder};
}

// By the two neighboring words that are longest together, which stand in the fewest texts ("recall list" of
// "on the recall list"), else by its first word; an apostrophe may be left out in a text, so "it's" is "it"
// or "its".
static void add_phrase(struct arena *arena, struct triggers *t, const char *phrase, size_t finder) {
    char word[WORD_ROOM], before[WORD_ROOM] = "", best[2 * WORD_ROOM] = "", first[WORD_ROOM] = "";
    size_t at = 0, size = strlen(phrase), longest = 0;
    char gap = '\0', first_gap = '\0';
    bool joined = true; // no apostrophe on either side of the word before
    while (next_word(phrase, size, &at, word, sizeof word)) {
        bool plain = phrase[at] != '\'' && gap != '\'';
        size_t n = strlen(before) + strlen(word);
        if (*before && (gap == ' ' || gap == '-') && joined && plain && n > longest) {
            longest = n;
            snprintf(best, sizeof best, "%s %s", before, word);
        }
        if (!*first) {
            memcpy(first, word, strlen(word) + 1);
            first_gap = phrase[at];
        } else if (first_gap == '\'' && !strcmp(before, first))
            add_entry(arena, t, arena_format(arena, "%s%s", first, word), finder);
        memcpy(before, word, strlen(word) + 1);
        gap = phrase[at];
        joined = plain;
    }
    add_entry(arena, t, longest ? best : first, finder);
}

void triggers_add(struct arena *arena, struct triggers *t, const struct finder *finder) {
    for (size_t i = 0; i < finder->said.count; i++) add_phrase(arena, t, finder->said.at[i], finder->number);
    for (size_t i = 0; i < finder->match_on.count; i++)
        add_phrase(arena, t, finder->match_on.at[i], finder->number);
    if (!finder->match.count || finder->match_on.count) return;
    t->always = arena_grow(arena, t->always, t->always_count, &t->always_room, sizeof *t->always);
    t->always[t->always_count++] = finder->number;
}

static int entry_order(const void *a, const void *b) {
    const struct entry *x = a, *y = b;
    int words = strcmp(x->word, y->word);
    return words ? words : (x->finder > y->finder) - (x->finder < y->finder);
}

void triggers_close(struct arena *arena, struct triggers *t) {
    if (t->count) qsort(t->entries, t->count, sizeof *t->entries, entry_order);
    t->firsts = index_new(arena, t->count);
    for (size_t i = 0; i < t->count; i++)
        index_add(t->firsts, t->entries[i].word, strlen(t->entries[i].word), i);
}

static void mark(const struct triggers *t, const char *words, size_t size, bool *wanted) {
    uint32_t first = index_find(t->firsts, words, size);
    if (first == INDEX_NONE) return;
    const char *text = t->entries[first].word;
    for (size_t i = first; i < t->count && !strcmp(t->entries[i].word, text); i++)
        wanted[t->entries[i].finder] = true;
}

void triggers_mark(const struct triggers *t, const char *text, bool *wanted) {
    for (size_t i = 0; i < t->always_count; i++) wanted[t->always[i]] = true;
    char words[2 * WORD_ROOM + 1] = ""; // the word before, a space, this word
    size_t at = 0, size = strlen(text), before = 0;
    for (;;) {
        char *word = words + before + (before > 0);
        if (before) words[before] = ' ';
        if (!next_word(text, size, &at, word, WORD_ROOM)) return;
        size_t n = strlen(word);
        mark(t, word, n, wanted);
        if (before) mark(t, words, before + 1 + n, wanted);
        before = n;
        memmove(words, word, before + 1);
    }
}
