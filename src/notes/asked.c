// SPDX-License-Identifier: MIT
// Two tables with open slots, by address and by hash. A list is never forgotten, a word is.
#include "notes/asked.h"

#include <string.h>

#include "text/order.h"

_Static_assert(ASKED_SLOTS == 1 << 14, "a slot is the upper 14 bits");
_Static_assert(ASKED_PLACES == 1 << 10, "a place is the upper 10 bits");

enum { FOLD_ROOM = 32 }; // longer words are hardly met twice

struct asked_word {
    uint64_t hash;
    char fold[FOLD_ROOM];
    uint64_t told[ASKED_KEPT + 1]; // in vain, then found, then what lookup.c keeps
    struct asked_word *next;       // among the spare ones
};

struct asked *asked_new(struct arena *arena) {
    struct asked *asked = arena_alloc(arena, sizeof *asked);
    asked->arena = arena;
    return asked;
}

void asked_begin(struct asked *asked) {
    if (asked->word_count < ASKED_WORDS / 2) return;
    for (size_t i = 0; i < 2 * ASKED_WORDS; i++) {
        struct asked_word *word = asked->words[i];
        if (!word) continue;
        word->next = asked->spare;
        asked->spare = word;
        asked->words[i] = NULL;
    }
    asked->word_count = 0;
    memset(asked->places, 0, sizeof asked->places);
}

static struct asked_word *new_word(struct asked *asked) {
    struct asked_word *word = asked->spare;
    if (!word) return arena_alloc(asked->arena, sizeof *word);
    asked->spare = word->next;
    memset(word, 0, sizeof *word);
    return word;
}

uint64_t *asked_word(struct asked *asked, uint64_t hash, const char *fold) {
    size_t at = (size_t)(hash >> 7) % (2 * ASKED_WORDS), size = strlen(fold);
    if (size >= FOLD_ROOM) return NULL;
    for (struct asked_word *word; (word = asked->words[at]) != NULL; at = (at + 1) % (2 * ASKED_WORDS))
        if (word->hash == hash && text_same(word->fold, fold)) return word->told;
    if (asked->word_count == ASKED_WORDS) return NULL;
    struct asked_word *word = asked->words[at] = new_word(asked);
    asked->word_count++;
    word->hash = hash;
    memcpy(word->fold, fold, size + 1);
    return word->told;
}

uint32_t asked_list_of(struct asked *asked, uint64_t key) {
    size_t at = asked_slot(key);
    for (; asked->lists[at].key; at = (at + 1) % ASKED_SLOTS)
        if (asked->lists[at].key == key) return asked->lists[at].number;
    if (asked->list_count == ASKED_LISTS) return ASKED_LISTS;
    asked->lists[at] = (struct asked_list){key, (uint32_t)asked->list_count++};
    return asked->lists[at].number;
}
