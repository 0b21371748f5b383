// SPDX-License-Identifier: MIT
// Readers ask of every word whether it is one of a list, some thousand lists in all, nearly always in vain
// and of the same words in note after note. Here is kept which word was asked of which list in vain. Lists
// are known by their address, so they must live as long as this and never change. For one thread at a time.
// Owner: the arena.
#ifndef NOTES_ASKED_H
#define NOTES_ASKED_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "text/arena.h"

enum {
    ASKED_LISTS = 4096,
    ASKED_SLOTS = 16384, // a power of two, and room for the lists
    ASKED_WORDS = 4096,
    ASKED_CELLS = ASKED_LISTS / 64,
    ASKED_KEPT = 2 * ASKED_CELLS, // the cell in which lookup.c keeps what the books say of the word
    ASKED_PLACES = 1024
};

// Where in a sorted list the entries of a word begin.
struct asked_place {
    const void *list;
    const uint64_t *word; // as asked_word() has it
    size_t from;
};

struct asked_list {
    uint64_t key; // 0 where it is free
    uint32_t number;
};

struct asked_word; // asked.c

struct asked {
    struct arena *arena;
    struct asked_list lists[ASKED_SLOTS];
    size_t list_count;
    struct asked_word *words[2 * ASKED_WORDS];
    size_t word_count;
    struct asked_word *spare;                // of words that were forgotten
    struct asked_place places[ASKED_PLACES]; // of the words and lists that were asked last
};

struct asked *asked_new(struct arena *arena);
// Before a note is begun, while no other is half read: where too many words are known all are forgotten.
void asked_begin(struct asked *asked);
// A bit for each list, set where the word was asked in vain, and ASKED_CELLS behind it one where it was
// found; then the cell ASKED_KEPT, 0 at first. NULL where there is no room for the word.
uint64_t *asked_word(struct asked *asked, uint64_t hash, const char *fold);
// ASKED_LISTS where there is no room for another list.
uint32_t asked_list_of(struct asked *asked, uint64_t key);

// A list and what it is asked for. Addresses have 48 bits at most where this was built, so that two keys are
// never one; where they have more, that needs two lists that far apart.
static inline uint64_t asked_key(const void *list, size_t count) {
#ifdef __clang_analyzer__ // which breaks down on an address taken as a number
    return count + (list != NULL);
#else
    return (uint64_t)(uintptr_t)list ^ (uint64_t)(count + 1) << 48;
#endif
}
static inline size_t asked_slot(uint64_t key) {
    return (size_t)(key * 0x9E3779B97F4A7C15u >> 50);
}
static inline uint32_t asked_list(struct asked *asked, const void *list, size_t count) {
    uint64_t key = asked_key(list, count);
    const struct asked_list *slot = &asked->lists[asked_slot(key)];
    return slot->key == key ? slot->number : asked_list_of(asked, key);
}

// The place where it is kept, or was last of another word and list: the caller looks which.
static inline struct asked_place *asked_place_of(struct asked *asked, const void *list,
                                                 const uint64_t *word) {
    uint64_t key = asked_key(list, 0) + 31 * asked_key(word, 0);
    return &asked->places[(size_t)(key * 0x9E3779B97F4A7C15u >> 54)];
}

#endif
