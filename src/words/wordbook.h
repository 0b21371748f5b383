// SPDX-License-Identifier: MIT
// The words for things and what is said of them: curated lists of dict/ (materials, colors, techniques,
// patterns, styles, periods, shapes, finishes, themes, parts, places) and, as candidates only, the nouns of
// WordNet, with the family that their broader terms point to. Built when the program is built, mapped when it
// starts, parsed never: opening costs a few system calls however many words there are. Owner:
// wordbook_close() unmaps; texts point into the map.
#ifndef WORDS_WORDBOOK_H
#define WORDS_WORDBOOK_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "text/diag.h"

enum word_use {
    USE_THING, // a noun for goods
    USE_MATERIAL,
    USE_COLOR,
    USE_TECHNIQUE,
    USE_PATTERN,
    USE_STYLE,
    USE_PERIOD,
    USE_SHAPE,
    USE_FINISH,
    USE_THEME,
    USE_PART,   // of a thing: lid, handle, blade
    USE_PLACE,  // on a thing: rim, underside, left corner
    USE_GATED,  // a noun that is goods only where the grammar says so: "garage", "can", "back", "church"
    USE_WORD,   // a word of English, of whatever kind: not strange, and no name
    USE_FILLER, // says nothing of the thing: "really", "kinda", "basically"
    USE_NAMER,  // a noun for what can be touched, and no adjective: what goods are named after ("hoof parer")
    USE_PERSON, // a noun that is somebody in its first sense, and goods in none
    USE_IDEA,   // a noun that in no sense is anybody or anything that can be touched: "promise", "health"
    USE_NATURE, // an animal, a plant, food, the body, the land and the sky, a building or a vehicle, before
                // all
    USE_COUNT
};

struct word_entry {
    const char *phrase;  // what is looked for: small letters, one space between words
    const char *print;   // how it is said: "silver plate" for "silverplate", "teal" for "tealish"
    uint32_t uses;       // bit 1 << enum word_use
    const char *family;  // of a USE_THING; NULL when unknown
    bool candidate;      // from WordNet alone, nobody looked at it
    const char *broader; // WordNet's next broader term, for `others` and explain; NULL if none
};

struct wordbook;

// NULL when the file is missing or was not made by this version; told in `diags` as CODE_DICT. Unmapped with
// the arena.
const struct wordbook *wordbook_open(struct arena *arena, const char *path, struct diags *diags);
void wordbook_close(void *book); // what the arena calls

// The entry of exactly that phrase; false when there is none, and of a book that is NULL.
bool wordbook_find(const struct wordbook *book, const char *phrase, size_t size, struct word_entry *entry);
// The same in two steps, for those who keep what was found: the number of the entry, from 1 on and below
// 1 << 24, or 0 when there is none; and the entry of a number that was found, or its `uses` alone.
uint32_t wordbook_number(const struct wordbook *book, const char *phrase, size_t size);
void wordbook_entry(const struct wordbook *book, uint32_t number, struct word_entry *entry);
uint32_t wordbook_uses(const struct wordbook *book, uint32_t number);
// Most words that any phrase beginning with `word` has; 0 when none begins so.
size_t wordbook_longest(const struct wordbook *book, const char *word, size_t size);

#endif
