// SPDX-License-Identifier: MIT
// A word that is no English and one slip away from exactly one word for goods is read as that word, as
// likely: "guage", "vaze", "tapastry". The first letter holds, as it nearly always does. Names are left
// alone: of the words with a capital only one that stands by itself at the start of a sentence is looked at.
#include "notes/cut.h"
#include "notes/english.h"
#include "notes/things.h"

#include <string.h>

enum { SLIP_LEAST = 4, SLIP_MOST = 20, CANDIDATE_LEAST = 5, WORD_ROOM = SLIP_MOST + 2 };

struct meant {
    char word[WORD_ROOM]; // of the curated lists, or of the candidates where those have none
    size_t words;         // how many different ones; only one is believed
    bool curated;
};

static const uint32_t of_goods = (1u << USE_THING) | (1u << USE_MATERIAL) | (1u << USE_COLOR) |
                                 (1u << USE_TECHNIQUE) | (1u << USE_PATTERN);

static void weigh(const struct note *note, const char *word, size_t size, struct meant *meant) {
    struct word_entry entry;
    size_t things = 0;
    bool ruled = ruleset_things(note->rules, word, &things) != NULL;
    bool listed = wordbook_find(note->book, word, size, &entry) && (entry.uses & of_goods);
    if (!ruled && (!listed || (entry.candidate && size < CANDIDATE_LEAST))) return;
    bool curated = ruled || !entry.candidate;
    if (meant->curated && !curated) return;
    if (meant->words && meant->curated == curated && !strcmp(meant->word, word)) return;
    if (curated && !meant->curated) meant->words = 0;
    meant->curated = curated;
    meant->words++;
    memcpy(meant->word, word, size + 1);
}

static void try_swaps(const struct note *note, const char *word, size_t n, struct meant *meant) {
    char other[WORD_ROOM];
    memcpy(other, word, n + 1);
    for (size_t i = 1; i + 1 < n; i++) {
        other[i] = word[i + 1], other[i + 1] = word[i];
        weigh(note, other, n, meant);
        other[i] = word[i], other[i + 1] = word[i + 1];
    }
}

static void try_less(const struct note *note, const char *word, size_t n, struct meant *meant) {
    char other[WORD_ROOM];
    for (size_t i = 1; i < n; i++) {
        memcpy(other, word, i);
        memcpy(other + i, word + i + 1, n - i);
        weigh(note, other, n - 1, meant);
    }
}

// Another letter at each place, and one more before it.
static void try_letters(const struct note *note, const char *word, size_t n, struct meant *meant) {
    char other[WORD_ROOM], more[WORD_ROOM];
    memcpy(other, word, n + 1);
    for (size_t i = 1; i <= n; i++) {
        memcpy(more, word, i);
        memcpy(more + i + 1, word + i, n - i + 1);
        for (const char *letter = "abcdefghijklmnopqrstuvwxyz"; *letter; letter++) {
            char c = *letter;
            more[i] = c;
            weigh(note, more, n + 1, meant);
            if (i == n || c == word[i]) continue;
            other[i] = c;
            weigh(note, other, n, meant);
        }
        other[i] = word[i];
    }
}

static bool is_plain(const char *word, size_t n) {
    return n >= SLIP_LEAST && n <= SLIP_MOST && strspn(word, "abcdefghijklmnopqrstuvwxyz") == n;
}

// A slip of two letters changed places is likelier than the others, so it is asked for first.
static bool find_meant(const struct note *note, const char *word, struct meant *meant) {
    size_t n = strlen(word);
    if (!is_plain(word, n)) return false;
    try_swaps(note, word, n, meant);
    if (meant->words == 1) return true;
    try_less(note, word, n, meant);
    try_letters(note, word, n, meant);
    return meant->words == 1;
}

static bool may_slip(const struct note *note, size_t i) {
    const struct token *t = &note->tokens.at[i];
    if (t->kind != TOKEN_WORD || t->capitals || t->stop != STOP_NONE || note->fault_word[i]) return false;
    if (t->capital) {
        bool alone = i + 1 == note->tokens.count || note->tokens.at[i + 1].stop != STOP_NONE;
        if (!t->starts || !alone) return false;
    }
    return !english_at(note, i);
}

void note_mend_slips(struct note *note) {
    if (!note->book || !note->rules) return;
    for (size_t i = 0; i < note->tokens.count; i++) {
        if (!may_slip(note, i)) continue;
        struct token *t = &note->tokens.at[i];
        struct meant meant = {0};
        bool plural = t->one != t->fold;
        if (!find_meant(note, plural ? t->one : t->fold, &meant)) continue;
        t->one = arena_string(note->arena, meant.word);
        t->fold = plural ? arena_format(note->arena, "%ss", meant.word) : t->one;
        t->hash = token_hash(t->fold, strlen(t->fold));
        t->opening = token_opening(t->fold);
        t->slip = true;
        t->plain = false;
        note_reading(note, i, i + 1, arena_format(note->arena, "spelling %s", t->fold),
                     "one slip from a word for goods");
    }
}

bool note_slipped(const struct note *note, size_t from, size_t to) {
    for (size_t i = from; i < to && i < note->tokens.count; i++)
        if (note->tokens.at[i].slip) return true;
    return false;
}
