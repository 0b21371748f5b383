// SPDX-License-Identifier: MIT
// Words are kept once each in an open hash table while they come in, then laid out by length.
#include "words/lexicon.h"

#include <string.h>

struct lexicon_build {
    struct arena *arena;
    struct lexicon *lexicon;
    size_t letters_room, letters_size, words_room;
    enum lexicon_trait trait; // of the dictionary being read
};

static size_t hash(const char *word, size_t size) {
    uint64_t h = UINT64_C(14695981039346656037);
    for (size_t i = 0; i < size; i++) h = (h ^ (unsigned char)word[i]) * UINT64_C(1099511628211);
    return (size_t)(h ^ h >> 29);
}

// The slot of the word, or the free one where it belongs.
static uint32_t *slot_of(const struct lexicon *l, const char *word, size_t size) {
    size_t at = hash(word, size) & (l->slot_count - 1);
    for (; l->slots[at]; at = (at + 1) & (l->slot_count - 1)) {
        const struct lexicon_word *there = &l->words[l->slots[at] - 1];
        if (there->size == size && !memcmp(l->letters + there->at, word, size)) break;
    }
    return &l->slots[at];
}

static void make_room(struct lexicon_build *b, size_t size) {
    struct lexicon *l = b->lexicon;
    if (b->letters_size + size > b->letters_room) {
        char *more = arena_alloc(b->arena, b->letters_room * 2);
        memcpy(more, l->letters, b->letters_size);
        l->letters = more;
        b->letters_room *= 2;
    }
    l->words = arena_grow(b->arena, l->words, l->count, &b->words_room, sizeof *l->words);
    if (l->count * 2 < l->slot_count) return;
    l->slot_count *= 2;
    l->slots = arena_array(b->arena, l->slot_count, sizeof *l->slots);
    for (size_t i = 0; i < l->count; i++)
        *slot_of(l, l->letters + l->words[i].at, l->words[i].size) = (uint32_t)i + 1;
}

static bool has_capital(const char *word, size_t size) {
    for (size_t i = 0; i < size; i++)
        if (word[i] >= 'A' && word[i] <= 'Z') return true;
    return false;
}

static struct lexicon_word *put(struct lexicon_build *b, const char *word, size_t size) {
    struct lexicon *l = b->lexicon;
    make_room(b, size);
    uint32_t *slot = slot_of(l, word, size);
    if (!*slot) {
        memcpy(l->letters + b->letters_size, word, size);
        struct lexicon_word fresh = {(uint32_t)b->letters_size, (uint8_t)size, 0, 0};
        fresh.traits =
            (uint8_t)(has_capital(word, size) ? LEXICON_CAPITAL | LEXICON_PREFIXED : LEXICON_PREFIXED);
        l->words[l->count++] = fresh;
        b->letters_size += size;
        *slot = (uint32_t)l->count;
    }
    return &l->words[*slot - 1];
}

static void take_form(void *context, const struct affix_form *form) {
    struct lexicon_build *b = context;
    if (form->size > LEXICON_LONGEST) return;
    struct lexicon_word *word = put(b, form->word, form->size);
    word->traits = (uint8_t)(word->traits | b->trait);
    if (!form->prefixed) word->traits = (uint8_t)(word->traits & ~LEXICON_PREFIXED);
    size_t richness = form->richness < LEXICON_RICHEST ? form->richness : LEXICON_RICHEST;
    if (richness > word->richness) word->richness = (uint8_t)richness;
}

struct lexicon_build *lexicon_start(struct arena *arena) {
    struct lexicon_build *b = arena_alloc(arena, sizeof *b);
    b->arena = arena;
    b->lexicon = arena_alloc(arena, sizeof *b->lexicon);
    b->letters_room = (size_t)1 << 20;
    b->lexicon->letters = arena_alloc(arena, b->letters_room);
    b->lexicon->slot_count = (size_t)1 << 19;
    b->lexicon->slots = arena_array(arena, b->lexicon->slot_count, sizeof *b->lexicon->slots);
    return b;
}

void lexicon_add_dictionary(struct lexicon_build *b, const struct affixes *affixes, const char *text,
                            size_t size, enum lexicon_trait trait) {
    b->trait = trait;
    affixes_expand(affixes, text, size, take_form, b);
}

void lexicon_add_word(struct lexicon_build *b, const char *word, size_t size, enum lexicon_trait trait) {
    struct affix_form form = {word, size, 0, true, false};
    b->trait = trait;
    take_form(b, &form);
}

void lexicon_favor(struct lexicon_build *b, const char *word, size_t size) {
    uint32_t id = *slot_of(b->lexicon, word, size);
    if (id) b->lexicon->words[id - 1].traits |= LEXICON_TRADE;
}

const struct lexicon *lexicon_finish(struct lexicon_build *b) {
    struct lexicon *l = b->lexicon;
    for (size_t i = 0; i < l->count; i++) l->of_length[l->words[i].size].count++;
    for (size_t n = 0; n <= LEXICON_LONGEST; n++) {
        struct lexicon_class *class = &l->of_length[n];
        class->masks = arena_array(b->arena, class->count + 1, sizeof *class->masks);
        class->ids = arena_array(b->arena, class->count + 1, sizeof *class->ids);
        class->count = 0;
    }
    for (size_t i = 0; i < l->count; i++) {
        const struct lexicon_word *word = &l->words[i];
        struct lexicon_class *class = &l->of_length[word->size];
        class->masks[class->count] = lexicon_mask(l->letters + word->at, word->size);
        class->ids[class->count++] = (uint32_t)i;
    }
    return l;
}

const struct lexicon_word *lexicon_find(const struct lexicon *l, const char *word, size_t size) {
    uint32_t id = *slot_of(l, word, size);
    return id ? &l->words[id - 1] : NULL;
}

uint64_t lexicon_mask(const char *word, size_t size) {
    uint64_t once = 0, twice = 0;
    for (size_t i = 0; i < size; i++) {
        unsigned letter = ((unsigned char)word[i] | 32u) - 'a';
        uint64_t bit = UINT64_C(1) << (letter < 26 ? letter : 26);
        twice |= once & bit;
        once |= bit;
    }
    return once | twice << 32;
}
