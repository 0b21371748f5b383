// SPDX-License-Identifier: MIT
// Open addressing at half load; the upper half of each hash stands in a table of its own, which is small, so
// that another text is seldom looked at and what is not there costs one look.
#include "text/index.h"

#include <string.h>

struct slot {
    const char *text;
    uint32_t size, number;
};

struct index {
    uint32_t *tags; // 0: free
    struct slot *slots;
    size_t mask, longest; // bytes; nothing longer is worth a hash
};

static uint64_t mixed(uint64_t hash, uint64_t bytes) {
    hash = (hash ^ bytes) * UINT64_C(0x9E3779B97F4A7C15);
    return hash ^ (hash >> 29);
}

// Eight bytes at a time, the last few in two halves that overlap. It differs with the order of bytes in a
// machine word, and nothing but the place in the table comes of it.
uint64_t index_hash(const char *text, size_t size) {
    uint64_t hash = mixed(14695981039346656037u, size), bytes = 0;
    for (; size > 8; text += 8, size -= 8) {
        memcpy(&bytes, text, 8);
        hash = mixed(hash, bytes);
    }
    if (size >= 4) {
        uint32_t first, last;
        memcpy(&first, text, 4);
        memcpy(&last, text + size - 4, 4);
        bytes = (uint64_t)last << 32 | first;
    } else {
        bytes = 0;
        for (size_t i = 0; i < size; i++) bytes = bytes << 8 | (unsigned char)text[i];
    }
    return mixed(hash, bytes);
}

struct index *index_new(struct arena *arena, size_t most) {
    struct index *index = arena_alloc(arena, sizeof *index);
    size_t count = 16;
    while (count < most * 2) count *= 2;
    index->tags = arena_array(arena, count, sizeof *index->tags);
    index->slots = arena_array(arena, count, sizeof *index->slots);
    index->mask = count - 1;
    index->longest = 0;
    return index;
}

static uint32_t tag_of(uint64_t hash) {
    uint32_t tag = (uint32_t)(hash >> 32);
    return tag ? tag : 1;
}

// Of the text, or the free one where it would stand.
static size_t slot_of(const struct index *index, uint64_t hash, const char *text, size_t size) {
    uint32_t tag = tag_of(hash);
    for (size_t at = (size_t)hash & index->mask;; at = (at + 1) & index->mask) {
        if (!index->tags[at]) return at;
        const struct slot *slot = &index->slots[at];
        if (index->tags[at] == tag && slot->size == size && !memcmp(slot->text, text, size)) return at;
    }
}

void index_add(struct index *index, const char *text, size_t size, size_t number) {
    uint64_t hash = index_hash(text, size);
    size_t at = slot_of(index, hash, text, size);
    if (index->tags[at]) return;
    index->tags[at] = tag_of(hash);
    index->slots[at] = (struct slot){text, (uint32_t)size, (uint32_t)number};
    if (size > index->longest) index->longest = size;
}

uint32_t index_find_hash(const struct index *index, uint64_t hash, const char *text, size_t size) {
    if (!index) return INDEX_NONE;
    size_t at = slot_of(index, hash, text, size);
    return index->tags[at] ? index->slots[at].number : INDEX_NONE;
}

uint32_t index_find(const struct index *index, const char *text, size_t size) {
    if (!index || size > index->longest) return INDEX_NONE;
    return index_find_hash(index, index_hash(text, size), text, size);
}
