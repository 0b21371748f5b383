// SPDX-License-Identifier: MIT
// Letters and figures in a row are one piece, and each sign is one.
#include "notes/period_pieces.h"

#include <string.h>

#include "text/order.h"

static bool is_wordy(char c) {
    return (c >= '0' && c <= '9') || (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z');
}

// Bytes of an apostrophe or a dash at this place, or 0.
static size_t mark_at(const char *text, size_t size, bool apostrophe) {
    static const char *const dashes[] = {"-", "\xE2\x80\x90", "\xE2\x80\x91", "\xE2\x80\x93", "\xE2\x80\x94"},
                             *const quotes[] = {"'", "\xE2\x80\x99", "\xE2\x80\x98"};
    unsigned char first = size ? (unsigned char)*text : 0;
    if (first < 0x80 && first != (apostrophe ? '\'' : '-')) return 0;
    const char *const *marks = apostrophe ? quotes : dashes;
    size_t count = apostrophe ? sizeof quotes / sizeof *quotes : sizeof dashes / sizeof *dashes;
    for (size_t i = 0; i < count; i++) {
        size_t n = strlen(marks[i]);
        if (n <= size && !memcmp(text, marks[i], n)) return n;
    }
    return 0;
}

// The plain letter of an accented one of two bytes, or 0: "siècle", "Shōwa".
static char plain_letter(const char *text, size_t size) {
    static const char letters[][4] = {"\xC3\xA8"
                                      "e",
                                      "\xC3\xA9"
                                      "e",
                                      "\xC5\x8D"
                                      "o",
                                      "\xC5\xAB"
                                      "u"};
    if (!size || (unsigned char)*text < 0x80) return 0;
    for (size_t i = 0; size > 1 && i < sizeof letters / sizeof *letters; i++)
        if (!memcmp(text, letters[i], 2)) return letters[i][2];
    return 0;
}

// The word from here on, or 0 where it is longer than any word of age.
static size_t cut_word(const char *text, size_t size, char fold[PIECE_MOST + 1]) {
    size_t at = 0, n = 0;
    while (at < size) {
        size_t quote = at ? mark_at(text + at, size - at, true) : 0;
        if (quote && at + quote < size && is_wordy(text[at + quote])) {
            at += quote;
            continue;
        }
        char plain = plain_letter(text + at, size - at);
        if (!plain && !is_wordy(text[at])) break;
        if (n == PIECE_MOST) return 0;
        if (plain) {
            fold[n++] = plain;
            at += 2;
            continue;
        }
        fold[n++] = text[at] >= 'A' && text[at] <= 'Z' ? (char)(text[at] - 'A' + 'a') : text[at];
        at++;
    }
    fold[n] = '\0';
    return at;
}

struct pieces pieces_cut(const char *text, size_t size) {
    struct pieces p = {.count = 0};
    for (size_t at = 0; p.count < PIECES_MOST;) {
        size_t gap = 0;
        while (at + gap < size && text[at + gap] == ' ') gap++;
        if (at + gap >= size) return p;
        char *fold = p.at[p.count].fold;
        const char *here = text + at + gap;
        size_t left = size - at - gap, taken = cut_word(here, left, fold);
        size_t dash = taken ? 0 : mark_at(here, left, false), quote = taken ? 0 : mark_at(here, left, true);
        if (dash || quote) {
            fold[0] = dash ? '-' : '\'';
            taken = dash ? dash : quote;
        } else if (!taken) {
            if (!strchr("/,.~()?:", *here)) return p;
            fold[0] = *here;
            taken = 1;
        }
        if (dash || quote || !is_wordy(fold[0])) fold[1] = '\0';
        at += gap + taken;
        p.at[p.count].joined = p.count && !gap;
        p.at[p.count++].to = at;
    }
    return p;
}

bool piece_is(const struct pieces *p, size_t at, const char *word) {
    pieces_look(p, at);
    return at < p->count && text_same(p->at[at].fold, word);
}

bool piece_one_of(const struct pieces *p, size_t at, const char *words) {
    pieces_look(p, at);
    if (at >= p->count) return false;
    const char *fold = p->at[at].fold;
    size_t n = strlen(fold);
    for (const char *word = words; word; word = strchr(word, '|')) {
        word += *word == '|';
        if (*word == *fold && !strncmp(word, fold, n) && (!word[n] || word[n] == '|')) return true;
    }
    return false;
}

size_t piece_phrase(const struct pieces *p, size_t at, const char *words) {
    size_t from = at;
    for (const char *word = words; *word;) {
        size_t n = strcspn(word, " ");
        pieces_look(p, at);
        if (at >= p->count || strlen(p->at[at].fold) != n || strncmp(p->at[at].fold, word, n) != 0) return 0;
        word += n + (word[n] == ' ');
        at++;
    }
    return at - from;
}
