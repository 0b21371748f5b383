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

enum { SIDES_MOST = 256, SIDE_BITS = 64 };

struct entry {
    const char *word; // one, or two with a space between
    size_t finder;    // or the number of a side
    bool side;
};

// Two sides, "battery|batteries + swollen|bulging": a word of each must stand somewhere in the text.
struct both {
    size_t sides[2], finder;
};

struct triggers {
    struct entry *entries;
    size_t count, room;
    struct index *firsts; // the first entry of each text
    struct both *boths;
    size_t both_count, both_room, side_count;
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
    t->entries[t->count++] = (struct entry){arena_string(arena, word), finder, false};
}

static size_t add_side(struct arena *arena, struct triggers *t, const char *words, size_t size) {
    for (size_t at = 0, n; at < size; at += n + 1) {
        n = strcspn(words + at, "|+ ");
        if (!n) continue;
        add_entry(arena, t, arena_copy(arena, words + at, n), t->side_count);
        t->entries[t->count - 1].side = true;
    }
    return t->side_count++;
}

// More pairs than there is room for are asked at every text by their first side.
static void add_both(struct arena *arena, struct triggers *t, const char *text, const char *plus,
                     size_t finder) {
    if (t->side_count + 2 > SIDES_MOST) {
        t->always = arena_grow(arena, t->always, t->always_count, &t->always_room, sizeof *t->always);
        t->always[t->always_count++] = finder;
        return;
    }
    size_t first = add_side(arena, t, text, (size_t)(plus - text)),
           second = add_side(arena, t, plus + 1, strlen(plus + 1));
    t->boths = arena_grow(arena, t->boths, t->both_count, &t->both_room, sizeof *t->boths);
    t->boths[t->both_count++] = (struct both){{first, second}, finder};
}

// By the two neighboring words that are longest together, which stand in the fewest texts ("recall list" of
// "on the recall list"), else by its longest word that has no apostrophe beside it ("ivory" of "it's ivory"),
// else by its first: an apostrophe may be left out in a text, so "it's" is "it" or "its".
static void add_phrase(struct arena *arena, struct triggers *t, const char *phrase, size_t finder) {
    char word[WORD_ROOM], before[WORD_ROOM] = "", best[2 * WORD_ROOM] = "", first[WORD_ROOM] = "",
                          sole[WORD_ROOM] = "";
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
        if (plain && strlen(word) > strlen(sole)) memcpy(sole, word, strlen(word) + 1);
        if (!*first) {
            memcpy(first, word, strlen(word) + 1);
            first_gap = phrase[at];
        }
        memcpy(before, word, strlen(word) + 1);
        gap = phrase[at];
        joined = plain;
    }
    add_entry(arena, t, longest ? best : *sole ? sole : first, finder);
    if (longest || *sole || first_gap != '\'') return;
    at = 0;
    while (next_word(phrase, size, &at, word, sizeof word) && !strcmp(word, first)) continue;
    add_entry(arena, t, arena_format(arena, "%s%s", first, word), finder);
}

void triggers_add(struct arena *arena, struct triggers *t, const struct finder *finder) {
    for (size_t i = 0; i < finder->said.count; i++) add_phrase(arena, t, finder->said.at[i], finder->number);
    for (size_t i = 0; i < finder->match_on.count; i++) {
        const char *text = finder->match_on.at[i], *plus = strchr(text, '+');
        if (plus)
            add_both(arena, t, text, plus, finder->number);
        else
            add_phrase(arena, t, text, finder->number);
    }
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

struct seen {
    bool *wanted;
    uint64_t sides[SIDES_MOST / SIDE_BITS];
};

static void mark(const struct triggers *t, const char *words, size_t size, struct seen *seen) {
    uint32_t first = index_find(t->firsts, words, size);
    if (first == INDEX_NONE) return;
    const char *text = t->entries[first].word;
    for (size_t i = first; i < t->count && !strcmp(t->entries[i].word, text); i++) {
        size_t number = t->entries[i].finder;
        if (t->entries[i].side)
            seen->sides[number / SIDE_BITS] |= (uint64_t)1 << number % SIDE_BITS;
        else
            seen->wanted[number] = true;
    }
}

static void mark_boths(const struct triggers *t, const struct seen *seen) {
    for (size_t i = 0; i < t->both_count; i++) {
        size_t a = t->boths[i].sides[0], b = t->boths[i].sides[1];
        if (seen->sides[a / SIDE_BITS] >> a % SIDE_BITS & seen->sides[b / SIDE_BITS] >> b % SIDE_BITS & 1)
            seen->wanted[t->boths[i].finder] = true;
    }
}

void triggers_mark(const struct triggers *t, const char *text, bool *wanted) {
    for (size_t i = 0; i < t->always_count; i++) wanted[t->always[i]] = true;
    char words[2 * WORD_ROOM + 1] = ""; // the word before, a space, this word
    size_t at = 0, size = strlen(text), before = 0;
    struct seen seen = {.wanted = wanted};
    for (;;) {
        char *word = words + before + (before > 0);
        if (before) words[before] = ' ';
        if (!next_word(text, size, &at, word, WORD_ROOM)) break;
        size_t n = strlen(word);
        mark(t, word, n, &seen);
        if (before) mark(t, words, before + 1 + n, &seen);
        before = n;
        memmove(words, word, before + 1);
    }
    mark_boths(t, &seen);
}
