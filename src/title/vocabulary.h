// SPDX-License-Identifier: MIT
// Words as small numbers. Two vocabularies a title: `words` by exact inflection for law 1 (no content word
// twice), `stems` for what searches see. Owner: the arena.
#ifndef TITLE_VOCABULARY_H
#define TITLE_VOCABULARY_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "text/arena.h"

struct vocabulary {
    const char **names;
    size_t count, room;
    uint16_t *slots; // hash table of numbers + 1, a power of two long
    size_t slot_count;
    struct vocabulary *asked; // words that were brought to their stems already, NULL before the first
    uint16_t *stem_of;        // of each of them
    size_t stem_room;
};

struct vocabulary vocabulary_start(struct arena *arena);
uint16_t vocabulary_number(struct arena *arena, struct vocabulary *vocabulary, const char *word);

struct numbers {
    uint16_t *at;
    size_t count;
};

// The content words of a title text, each once: letter runs of two and more, case-folded, free words aside.
struct numbers vocabulary_words(struct arena *arena, struct vocabulary *words, const char *text);
// Whether one of those words stands in the text twice.
bool words_repeat(struct arena *arena, const char *text);
// The stems of a text, each once: letter and digit runs, folded to the singular; "in", "of" and their like
// aside.
struct numbers vocabulary_stems(struct arena *arena, struct vocabulary *stems, const char *text);

// A run of letters or digits (with inner points and apostrophes) from `*at` on, case-folded; NULL at the end.
const char *word_next(struct arena *arena, const char *text, size_t *at);
// The next run of two and more letters from `*at` on, case-folded; NULL at the end. Law 1 looks at these
// alone, so "wind-up" holds "wind" and "up", and "18v" holds nothing.
const char *letters_next(struct arena *arena, const char *text, size_t *at);
// Words that may stand more than once and that no search depends on: small words and units.
bool word_is_free(const char *word);

#endif
