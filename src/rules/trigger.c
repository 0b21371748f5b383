// SPDX-License-Identifier: MIT
// A sorted table of first words and of pairs of them, and an index of it. Words are runs of letters and
// digits, case-folded, as scan.c's word boundaries see them.
#include "rules/trigger.h"

#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "text/index.h"
#include "text/order.h"
#include "text/utf8.h"

enum { WORD_ROOM = 64 };

enum { SIDES_MOST = 256, SIDE_BITS = 64 };

struct entry {
    const char *word; // one, or two with a space between
    size_t finder;    // or the number of a side
    bool side;
    unsigned char why;
    const char *phrase; // that must stand around the word; NULL: whatever stands there
    size_t at;          // where the word stands in it
    size_t alike;       // of the first entry of a word: how many there are
};

// Two sides, "battery|batteries + swollen|bulging": a word of each must stand somewhere in the text.
struct both {
    size_t sides[2], finder;
};

struct triggers {
    struct entry *entries;
    size_t count, room;
    struct index *firsts;  // the first entry of each text
    struct index *openers; // the words that begin an entry of two
    struct both *boths;
    size_t both_count, both_room, side_count;
    size_t *always;
    size_t always_count, always_room;
};

struct triggers *triggers_new(struct arena *arena) {
    return arena_alloc(arena, sizeof(struct triggers));
}

// The next word of `text` from `*at`, folded into `to`; its bytes there, or 0 at the end. It begins at
// `*from`. A word longer than `to` never triggers.
static size_t next_word(const char *text, size_t size, size_t *at, size_t *from, char *to, size_t room) {
    size_t n = 0, i = *at;
    while (i < size) { // most gaps are a space
        size_t next = i;
        uint32_t point = utf8_next(text, size, &next);
        if (utf8_is_letter(point) || utf8_is_digit(point)) break;
        i = next;
    }
    *from = i;
    while (i < size) {
        unsigned char c = (unsigned char)text[i], small = c | 0x20;
        if ((small >= 'a' && small <= 'z') || (c >= '0' && c <= '9')) { // as nearly all are
            if (n + 4 < room) to[n++] = (char)(c <= '9' ? c : small);
            i++;
            continue;
        }
        size_t next = i;
        uint32_t point = utf8_next(text, size, &next);
        if (point < 0x80 || (!utf8_is_letter(point) && !utf8_is_digit(point))) break;
        if (n + 4 < room) n += utf8_put(utf8_lower(point), to + n);
        i = next;
    }
    *at = i;
    to[n] = '\0';
    return n;
}

static struct entry *add_entry(struct arena *arena, struct triggers *t, const char *word, size_t finder,
                               unsigned char why) {
    t->entries = arena_grow(arena, t->entries, t->count, &t->room, sizeof *t->entries);
    struct entry *entry = &t->entries[t->count++];
    *entry = (struct entry){.word = arena_string(arena, word), .finder = finder, .why = why};
    return entry;
}

static size_t add_side(struct arena *arena, struct triggers *t, const char *words, size_t size) {
    for (size_t at = 0, n; at < size; at += n + 1) {
        n = strcspn(words + at, "|+ ");
        if (!n) continue;
        add_entry(arena, t, arena_copy(arena, words + at, n), t->side_count, TRIGGER_MATCH)->side = true;
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

// Of letters, digits, spaces and apostrophes alone, in ASCII: what stands_around() can read.
static bool is_plain(const char *phrase) {
    for (; *phrase; phrase++) {
        uint32_t byte = (unsigned char)*phrase;
        if (byte >= 0x80 || !(utf8_is_letter(byte) || utf8_is_digit(byte) || byte == ' ' || byte == '\'') ||
            (byte == ' ' && phrase[1] == ' '))
            return false;
    }
    return true;
}

// By the two neighboring words that are longest together, which stand in the fewest texts ("recall list" of
// "on the recall list"), else by its longest word that has no apostrophe beside it ("ivory" of "it's ivory"),
// else by its first: an apostrophe may be left out in a text, so "it's" is "it" or "its".
static void add_phrase(struct arena *arena, struct triggers *t, const char *phrase, size_t finder,
                       unsigned char why) {
    char word[WORD_ROOM], before[WORD_ROOM] = "", best[2 * WORD_ROOM] = "", first[WORD_ROOM] = "",
                          sole[WORD_ROOM] = "";
    size_t at = 0, from = 0, size = strlen(phrase), longest = 0, before_at = 0, best_at = 0, sole_at = 0;
    char gap = '\0', first_gap = '\0';
    bool joined = true; // no apostrophe on either side of the word before
    while (next_word(phrase, size, &at, &from, word, sizeof word)) {
        bool plain = phrase[at] != '\'' && gap != '\'';
        size_t n = strlen(before) + strlen(word);
        if (*before && (gap == ' ' || gap == '-') && joined && plain && n > longest) {
            longest = n;
            best_at = before_at;
            snprintf(best, sizeof best, "%s %s", before, word);
        }
        if (plain && strlen(word) > strlen(sole)) {
            memcpy(sole, word, strlen(word) + 1);
            sole_at = from;
        }
        if (!*first) {
            memcpy(first, word, strlen(word) + 1);
            first_gap = phrase[at];
        }
        memcpy(before, word, strlen(word) + 1);
        before_at = from;
        gap = phrase[at];
        joined = plain;
    }
    struct entry *entry = add_entry(arena, t, longest ? best : *sole ? sole : first, finder, why);
    if (why == TRIGGER_SAID && (longest || *sole) && is_plain(phrase)) {
        entry->phrase = phrase;
        entry->at = longest ? best_at : sole_at;
    }
    if (longest || *sole || first_gap != '\'') return;
    at = 0;
    while (next_word(phrase, size, &at, &from, word, sizeof word) && text_same(word, first)) continue;
    add_entry(arena, t, arena_format(arena, "%s%s", first, word), finder, why);
}

void triggers_add(struct arena *arena, struct triggers *t, const struct finder *finder) {
    for (size_t i = 0; i < finder->said.count; i++)
        add_phrase(arena, t, finder->said.at[i], finder->number, TRIGGER_SAID);
    for (size_t i = 0; i < finder->match_on.count; i++) {
        const char *text = finder->match_on.at[i], *plus = strchr(text, '+');
        if (plus)
            add_both(arena, t, text, plus, finder->number);
        else
            add_phrase(arena, t, text, finder->number, TRIGGER_MATCH);
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
    t->openers = index_new(arena, t->count);
    for (size_t i = 0, to; i < t->count; i = to) {
        for (to = i + 1; to < t->count && text_same(t->entries[to].word, t->entries[i].word);) to++;
        t->entries[i].alike = to - i;
        index_add(t->firsts, t->entries[i].word, strlen(t->entries[i].word), i);
        const char *space = strchr(t->entries[i].word, ' ');
        if (space) index_add(t->openers, t->entries[i].word, (size_t)(space - t->entries[i].word), 0);
    }
}

struct seen {
    const char *text;
    size_t size;
    unsigned char *wanted;
    uint64_t sides[SIDES_MOST / SIDE_BITS];
};

static bool is_gap(unsigned char c) {
    return c == '-' || c == ' ' || (c >= '\t' && c <= '\r');
}

static bool is_word_byte(unsigned char c) {
    return utf8_is_letter(c) || utf8_is_digit(c) || c == '_';
}

// Whether the phrase stands in the text with its byte `at` there, as scan.c has it matched: spaces as runs of
// white space and dashes, apostrophes or none, and a word's edge at its ends. What is beyond ASCII beside or
// inside it is left to scan.c.
static bool stands_around(const struct seen *seen, size_t there, const char *phrase, size_t at) {
    const unsigned char *text = (const unsigned char *)seen->text, *end = text + seen->size;
    const unsigned char *to = text + there, *from = to;
    for (const char *p = phrase + at; *p; p++) {
        if (*p == ' ') {
            if (to == end || !is_gap(*to)) return to < end && *to >= 0x80;
            while (to < end && is_gap(*to)) to++;
        } else if (*p == '\'') {
            to += to < end && *to == '\'';
        } else {
            if (to == end || utf8_lower(*to) != utf8_lower((unsigned char)*p)) return to < end && *to >= 0x80;
            to++;
        }
    }
    for (const char *p = phrase + at; p-- > phrase;) {
        if (*p == ' ') {
            if (from == text || !is_gap(from[-1])) return from > text && from[-1] >= 0x80;
            while (from > text && is_gap(from[-1])) from--;
        } else if (*p == '\'') {
            from -= from > text && from[-1] == '\'';
        } else {
            if (from == text || utf8_lower(from[-1]) != utf8_lower((unsigned char)*p))
                return from > text && from[-1] >= 0x80;
            from--;
        }
    }
    bool begins = !is_word_byte((unsigned char)*phrase) || from == text || !is_word_byte(from[-1]),
         ends = !is_word_byte((unsigned char)phrase[strlen(phrase) - 1]) || to == end || !is_word_byte(*to);
    return (begins || from[-1] >= 0x80) && (ends || *to >= 0x80);
}

static void mark(const struct triggers *t, const char *words, size_t size, size_t from, struct seen *seen) {
    uint32_t first = index_find(t->firsts, words, size);
    if (first == INDEX_NONE) return;
    const struct entry *entry = &t->entries[first], *end = entry + entry->alike;
    for (; entry < end; entry++) {
        size_t number = entry->finder;
        if (entry->side)
            seen->sides[number / SIDE_BITS] |= (uint64_t)1 << number % SIDE_BITS;
        else if (!(seen->wanted[number] & entry->why) &&
                 (!entry->phrase || stands_around(seen, from, entry->phrase, entry->at)))
            seen->wanted[number] |= entry->why;
    }
}

static void mark_boths(const struct triggers *t, const struct seen *seen) {
    for (size_t i = 0; i < t->both_count; i++) {
        size_t a = t->boths[i].sides[0], b = t->boths[i].sides[1];
        if (seen->sides[a / SIDE_BITS] >> a % SIDE_BITS & seen->sides[b / SIDE_BITS] >> b % SIDE_BITS & 1)
            seen->wanted[t->boths[i].finder] |= TRIGGER_MATCH;
    }
}

void triggers_mark(const struct triggers *t, const char *text, unsigned char *wanted) {
    for (size_t i = 0; i < t->always_count; i++) wanted[t->always[i]] |= TRIGGER_MATCH;
    char words[2 * WORD_ROOM + 1] =
        ""; // the word before where it may be the first of two, a space, this word
    size_t at = 0, from = 0, size = strlen(text), before = 0, before_from = 0, n;
    struct seen seen = {.text = text, .size = size, .wanted = wanted};
    for (;;) {
        char *word = words + before + (before > 0);
        if (before) words[before] = ' ';
        n = next_word(text, size, &at, &from, word, WORD_ROOM);
        if (!n) break;
        mark(t, word, n, from, &seen);
        if (before) mark(t, words, before + 1 + n, before_from, &seen);
        before = index_find(t->openers, word, n) == INDEX_NONE ? 0 : n;
        before_from = from;
        if (before) memmove(words, word, before + 1);
    }
    mark_boths(t, &seen);
}
