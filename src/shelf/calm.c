// SPDX-License-Identifier: MIT
// Where everything has capitals, capitals tell no name: "GRENHOLT BRASS OIL LAMP" and "Grenholt Brass Oil
// Lamp" are read as "Grenholt brass oil lamp". The word book tells words from names, and no byte moves.
#include <string.h>

#include "shelf/propose.h"
#include "text/utf8.h"

enum {
    WORD = 3,
    LONG_WORD = 4
}; // a shorter one may be an abbreviation, or a small word that never has a capital

struct letters {
    size_t upper, lower, other, points; // points: all of them
    bool first_upper;
};

static struct letters letters_of(const char *word, size_t size) {
    struct letters l = {0};
    for (size_t at = 0; at < size; l.points++) {
        uint32_t point = utf8_next(word, size, &at);
        bool upper = utf8_lower(point) != point;
        if (!l.points) l.first_upper = upper;
        l.upper += upper;
        l.lower += utf8_upper(point) != point;
        l.other += !utf8_is_letter(point) && point != '-' && point != '\'' && point != '/' && point != 0x2019;
    }
    return l;
}

// What is around a word: commas, brackets.
static void trim(const char *text, size_t *from, size_t *to) {
    while (*from < *to && strchr(",.;:!?()[]{}*~|\"'", text[*from])) ++*from;
    while (*to > *from && strchr(",.;:!?()[]{}*~|\"'", text[*to - 1])) --*to;
}

static bool next_word(const char *text, size_t *at, size_t *from, size_t *to) {
    *from = *at + strspn(text + *at, " \t\r\n");
    *to = *from + strcspn(text + *from, " \t\r\n");
    *at = *to;
    if (*from == *to) return false;
    trim(text, from, to);
    return true;
}

enum manner { MANNER_PLAIN, MANNER_SHOUTS, MANNER_TITLE };

static enum manner manner_of(struct arena *arena, const char *text) {
    size_t shouted = 0, capital = 0, plain = 0, all = 0, lower = 0;
    bool work = !strncmp(text, "The ", 4); // of somebody: "The Long Reach by A. Merrowin"
    for (size_t at = 0, from, to; next_word(text, &at, &from, &to);) {
        struct letters l = letters_of(text + from, to - from);
        lower += l.lower;
        work |= to == from + 2 && !strncmp(text + from, "by", 2);
        all += l.upper > 1;
        if (l.points < WORD || l.other) continue;
        if (word_is_free(utf8_fold(arena, arena_copy(arena, text + from, to - from)))) continue;
        shouted += !l.lower && l.points >= LONG_WORD;
        capital += l.first_upper && l.lower && l.upper == 1;
        plain += !l.first_upper && l.lower;
    }
    if ((shouted > 1 && shouted > capital + plain) || (all > 1 && !lower)) return MANNER_SHOUTS;
    return capital > 1 && !plain && !work ? MANNER_TITLE : MANNER_PLAIN;
}

static bool is_word(const struct proposer *proposer, const char *fold, size_t points) {
    struct word_entry entry;
    if (word_is_free(fold)) return true;
    if (points < 3) return false; // "Co", "Mk"
    if (points < LONG_WORD) return wordbook_find(proposer->book, fold, strlen(fold), &entry);
    return english_word(proposer->book, fold);
}

// Small letters for the bytes [from, to) where they are as many bytes.
static void lower(struct arena *arena, char *text, size_t from, size_t to) {
    const char *small = utf8_fold(arena, arena_copy(arena, text + from, to - from));
    if (strlen(small) == to - from) memcpy(text + from, small, to - from);
}

static bool among(const char *fold, const char *const *list, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (!strcmp(fold, list[i])) return true;
    return false;
}

// Of a firm's name, behind a name or an "&".
static bool is_of_firm(const char *fold) {
    static const char *const words[] = {"works",   "sons",   "son",     "bros",    "brothers",  "co",
                                        "company", "mills",  "foundry", "pottery", "potteries", "forge",
                                        "ltd",     "paints", "ales",    "teas",    "seeds",     "cycles",
                                        "motors",  "tyres",  "soaps",   "stout",   "brewery"};
    return among(fold, words, sizeof words / sizeof *words);
}

// "De Larquin".
static bool is_particle(const char *fold) {
    static const char *const words[] = {"de", "von", "van", "la", "le", "du", "di", "mc", "mac", "st"};
    return among(fold, words, sizeof words / sizeof *words);
}

// "Eskil-Rowe": a capital for each half.
static void lower_but_first(struct arena *arena, char *text, size_t from, size_t to) {
    while (from < to) {
        size_t end = from, next = from;
        while (end < to && text[end] != '-') end++;
        if (end < to) end++;
        utf8_next(text, to, &next);
        if (next < end) lower(arena, text, next, end);
        from = end;
    }
}

// A run of capitals that is no English stays a name, with one capital.
static const char *calm(struct arena *arena, const struct proposer *proposer, const char *text,
                        enum manner manner) {
    if (!proposer->book) return text;
    char *copy = arena_string(arena, text);
    bool name = false; // the word before
    for (size_t at = 0, from, to; next_word(text, &at, &from, &to);) {
        struct letters l = letters_of(text + from, to - from);
        bool behind_name = name, sign = to == from + 1 && (text[from] == '&' || text[from] == '+');
        name = sign || l.other;
        if (l.other || !l.first_upper || (manner == MANNER_SHOUTS ? l.lower : l.upper != 1)) continue;
        if (l.points == 1 && text[to] == '.') continue; // "A. Merrowin"
        const char *fold = utf8_fold(arena, arena_copy(arena, text + from, to - from));
        size_t gap = to + strspn(text + to, ". ");
        bool number = !strcmp(fold, "no") && text[gap] >= '0' && text[gap] <= '9';
        bool firm = behind_name && is_of_firm(fold);
        if (manner == MANNER_PLAIN && (!from || l.points < 2 || !word_is_free(fold))) continue; // "For" alone
        bool word = !number && !firm && (!strcmp(fold, "x") || is_word(proposer, fold, l.points));
        name = !word;
        if (word) {
            lower(arena, copy, from, to);
        } else if ((number || l.points >= LONG_WORD || is_particle(fold)) && manner == MANNER_SHOUTS) {
            lower_but_first(arena, copy, from, to);
        }
    }
    return copy;
}

const char *calm_title(struct arena *arena, const struct proposer *proposer, const char *title,
                       bool *capitals) {
    enum manner manner = manner_of(arena, title);
    *capitals = manner != MANNER_PLAIN;
    return calm(arena, proposer, title, manner);
}

const char *calm_description(struct arena *arena, const struct proposer *proposer, const char *text) {
    bool shouts = manner_of(arena, text) == MANNER_SHOUTS;
    return shouts ? calm(arena, proposer, text, MANNER_SHOUTS) : text;
}
