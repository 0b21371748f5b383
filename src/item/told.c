// SPDX-License-Identifier: MIT
// "Bent" and "dented" are one kind with one scale, but nobody would say "dented or bent" of a tray that he
// saw bent. The notes say which it is; where they say both or neither, the kind's own words stand.
#include "item/told.h"

#include <string.h>

#include "text/utf8.h"

static bool is_letter(char c) {
    return (c >= 'a' && c <= 'z') || (unsigned char)c >= 0x80;
}

static bool has_words(const char *text, const char *words) {
    size_t n = strlen(words);
    for (const char *at = strstr(text, words); at; at = strstr(at + 1, words))
        if ((at == text || !is_letter(at[-1])) && !is_letter(at[n])) return true;
    return false;
}

static size_t words_most(const struct flaw *telling, const char *said) {
    size_t most = 0;
    for (size_t k = 0; k < telling->finder.said.count; k++) {
        const char *words = telling->finder.said.at[k];
        size_t n = 1;
        for (const char *c = words; *c; c++) n += *c == ' ';
        if (n > most && has_words(said, words)) most = n;
    }
    return most;
}

// The phrase of the most words decides; of two that have as many neither.
static const struct flaw *telling_of(const struct flaw *kind, const char *said) {
    const struct flaw *best = NULL;
    size_t longest = 0;
    for (size_t i = 0; i < kind->telling_count; i++) {
        const struct flaw *telling = &kind->tellings[i];
        size_t size = words_most(telling, said);
        if (size && size == longest) best = NULL;
        if (size <= longest) continue;
        longest = size;
        best = telling;
    }
    return best;
}

static bool says_any(const struct record *record, const struct item_flaw *flaw, const char *const *words,
                     size_t count) {
    enum { NEAR = 60 };
    size_t from = flaw->span.from > NEAR ? flaw->span.from - NEAR : 0;
    for (size_t i = from; record->notes[i] && i < flaw->span.to + NEAR; i++)
        for (size_t k = 0; k < count && (!i || !is_letter(record->notes[i - 1])); k++)
            if (!strncmp(record->notes + i, words[k], strlen(words[k]))) return true;
    return false;
}

// Told by words that have one degree only: "broken", "sagging".
static bool is_absolute(const struct item_flaw *flaw) {
    const char *heavy = flaw->told->adjective_at[SEVERITY_HEAVY];
    return flaw->told != flaw->kind && heavy && flaw->told->adjective &&
           !strcmp(heavy, flaw->told->adjective);
}

// "Torn" is graded as moderate and a leak as heavy, but nobody called them that. Small and heavy are else
// other words for what was said.
static bool is_unsaid(const struct record *record, const struct item_flaw *flaw) {
    static const char *const words[] = {"moderate", "medium", "fairly"};
    static const char *const large[] = {
        "large", "Large",  "big",      "Big",        "huge",    "long",      "Long",   "wide",   "deep",
        "great", "major",  "severe",   "whole",      "heav",    "Heav",      "bad",    "Bad",    "worst",
        "good ", "right",  "across",   "very",       "Very",    "completel", "total",  "strong", "reek",
        "stink", "really", "all over", "everywhere", "extreme", "awful",     "terrib", "hard",   "thick"};
    if (!flaw->span.to || !record->notes || flaw->severity == SEVERITY_UNKNOWN) return false;
    if (flaw->severity == SEVERITY_MODERATE)
        return !says_any(record, flaw, words, sizeof words / sizeof *words);
    if (flaw->kind->form != FAULT) return true;
    static const char *const small[] = {
        "small",  "Small", "tiny",  "Tiny",  "slight",  "Slight",  "little", "Little",
        "minor",  "Minor", "faint", "Faint", "light",   "Light",   "a bit",  "a few",
        "few ",   "thin",  "fine",  "touch", "hint",    "odd ",    "Odd ",   "barely",
        "hardly", "trace", "some ", "Some ", "surface", "Surface", "pin",    "hairline"};
    if (flaw->severity == SEVERITY_LIGHT) return !says_any(record, flaw, small, sizeof small / sizeof *small);
    return (flaw->told->degree != DEGREE_AMOUNT || is_absolute(flaw)) &&
           !says_any(record, flaw, large, sizeof large / sizeof *large);
}

static bool is_said(const struct flaw *kind, const char *word) {
    const char *last = kind->noun ? strrchr(kind->noun, ' ') : NULL;
    if (kind->noun && !strcmp(last ? last + 1 : kind->noun, word)) return true;
    for (size_t i = 0; i < kind->finder.said.count; i++)
        if (!strcmp(kind->finder.said.at[i], word)) return true;
    return false;
}

// "Chips on the rim" are more than one: a word in the plural whose singular names the kind too.
static bool are_several(struct arena *arena, const struct item_flaw *flaw, const char *said) {
    if (flaw->count || flaw->kind->form != FAULT || flaw->kind->class == CLASS_FUNCTION) return false;
    for (size_t at = 0; said[at];) {
        while (said[at] && !is_letter(said[at])) at++;
        size_t size = 0;
        while (is_letter(said[at + size])) size++;
        if (!size) continue;
        const char *word = arena_copy(arena, said + at, size), *one = say_singular(arena, word);
        static const char *const verbs[] = {"wobbles", "sticks", "leaks",   "drips", "rattles", "slips",
                                            "rocks",   "drags",  "squeaks", "leans", "smells"};
        for (size_t k = 0; k < sizeof verbs / sizeof *verbs; k++)
            if (!strcmp(word, verbs[k])) one = word;
        if (strcmp(one, word) != 0 && is_said(flaw->kind, one)) return true;
        at += size;
    }
    return false;
}

// "Scratch on the lid": one, though scratches are mostly many.
static bool is_lone(const struct item_flaw *flaw, const char *said) {
    const char *noun = flaw->kind->noun, *last = noun ? strrchr(noun, ' ') : NULL;
    return flaw->kind->many && !flaw->count && noun && !say_is_plural(noun) &&
           has_words(said, last ? last + 1 : noun);
}

// "One lid missing" of three pans: not the only one there was.
static bool is_single(const struct record *record, const struct item_flaw *flaw, const char *said) {
    static const char *const ones[] = {"one ", "1 ", "a single "};
    if (flaw->count || flaw->kind->form != ABSENCE) return false;
    for (size_t i = 0; i < sizeof ones / sizeof *ones; i++) {
        size_t n = strlen(ones[i]), from = flaw->span.from;
        if (!strncmp(said, ones[i], n)) return true;
        bool before = from >= n && !strncmp(record->notes + from - n, ones[i], n);
        if (before && (from == n || record->notes[from - n - 1] == ' ')) return true;
    }
    return false;
}

// The word before `at`, whose length goes to `*size`; NULL at the beginning and behind a mark.
static const char *word_before(const char *text, const char *at, size_t *size) {
    while (at > text && at[-1] == ' ') at--;
    const char *end = at;
    while (at > text && (is_letter(at[-1]) || (at[-1] >= '0' && at[-1] <= '9'))) at--;
    *size = (size_t)(end - at);
    return *size ? at : NULL;
}

static bool is_number(struct arena *arena, const char *word, size_t size, int number) {
    const char *said = say_number(arena, number), *figures = arena_format(arena, "%d", number);
    return (strlen(said) == size && !strncmp(word, said, size)) ||
           (strlen(figures) == size && !strncmp(word, figures, size));
}

// "Two buttons stick", "one pane cracked", "one brass knob is bent": it is the buttons that are two. One word
// may stand between.
static bool counts_part(struct arena *arena, const struct record *record, const struct item_flaw *flaw) {
    enum { BEFORE = 50, BEHIND = 30, BETWEEN = 2 };
    if (!flaw->part || flaw->of > 1 || flaw->kind->form != FAULT || flaw->count > 20) return false;
    int number = flaw->count ? flaw->count : 1;
    size_t said;
    const char *before = word_before(record->notes, record->notes + flaw->span.from, &said);
    if (before && before > record->notes + 1 && before[-2] == ',' && is_number(arena, before, said, number))
        return true; // "cards foxed, one torn"
    if ((number > 1) != say_is_plural(flaw->part)) return false;
    size_t all = strlen(record->notes), to = flaw->span.to + BEHIND < all ? flaw->span.to + BEHIND : all;
    size_t from = flaw->span.from > BEFORE ? flaw->span.from - BEFORE : 0;
    const char *text = utf8_fold(arena, arena_copy(arena, record->notes + from, to - from));
    const char *part = utf8_fold(arena, flaw->part);
    for (const char *at = strstr(text, part); at; at = strstr(at + 1, part)) {
        const char *word = at;
        size_t size;
        for (size_t n = 0; n < BETWEEN && (word = word_before(text, word, &size)) != NULL; n++)
            if (is_number(arena, word, size, number)) return true;
    }
    return false;
}

// Of the adjectives of the kind that of the degree at hand.
static bool says_adjective(const struct item_flaw *flaw, const char *said) {
    const char *own = flaw->kind->adjective_at[flaw->severity];
    const char *adjective = own ? own : flaw->kind->adjective;
    return flaw->kind->form == FAULT && adjective && has_words(said, adjective);
}

void told_set(struct arena *arena, struct record *record) {
    for (size_t i = 0; i < record->flaw_count; i++) {
        struct item_flaw *flaw = &record->flaws[i];
        flaw->told = flaw->kind;
        if (!flaw->span.to || !record->notes) continue;
        const char *said = utf8_fold(
            arena, arena_copy(arena, record->notes + flaw->span.from, flaw->span.to - flaw->span.from));
        flaw->single = is_single(record, flaw, said);
        flaw->several = are_several(arena, flaw, said);
        flaw->lone = is_lone(flaw, said);
        flaw->of_part = counts_part(arena, record, flaw);
        flaw->adjective_said = says_adjective(flaw, said);
        const struct flaw *telling = telling_of(flaw->kind, said);
        if (telling) flaw->told = telling;
        flaw->unsaid = is_unsaid(record, flaw);
    }
}
