// SPDX-License-Identifier: MIT
// The upper bits choose the part, the lower ones the place in it; a part is at most seven eighths full.
#include "shelf/ids.h"

#include <string.h>

enum { FIRST_ROOM = 32 };

static uint64_t mix(uint64_t h) {
    h ^= h >> 32;
    h *= 0xD6E8FEB86659FD93u;
    h ^= h >> 29;
    return h;
}

static uint64_t word_at(const char *bytes) {
    uint64_t word;
    memcpy(&word, bytes, sizeof word);
    return word;
}

// The last word may overlap the one before it; the size is part of the hash.
uint64_t id_hash(const char *id, size_t size) {
    uint64_t h = 0x9E3779B97F4A7C15u ^ size, last = 0;
    if (size >= 8)
        last = word_at(id + size - 8);
    else
        for (size_t i = 0; i < size; i++) last = last << 8 | (unsigned char)id[i];
    for (; size > 8; size -= 8, id += 8) h = mix((h ^ word_at(id)) * 0xC2B2AE3D27D4EB4Fu);
    h = mix((h ^ last) * 0xC2B2AE3D27D4EB4Fu);
    return h ? h : 1; // 0 is an empty slot
}

static bool put(const struct id_part *part, uint64_t hash) {
    uint32_t at = (uint32_t)((hash & UINT32_MAX) * part->room >> 32);
    for (; part->slots[at]; at = at + 1 < part->room ? at + 1 : 0)
        if (part->slots[at] == hash) return false;
    part->slots[at] = hash;
    return true;
}

static bool grow(struct id_set *set, struct id_part *part) {
    struct id_part more = {.room = part->room ? part->room + part->room / 2 : FIRST_ROOM,
                           .count = part->count};
    if (more.room <= part->room) return false;
    more.slots = set->memory->alloc(set->memory->context, more.room * sizeof *more.slots);
    if (!more.slots) return false;
    memset(more.slots, 0, more.room * sizeof *more.slots);
    for (uint32_t i = 0; i < part->room; i++)
        if (part->slots[i]) put(&more, part->slots[i]);
    if (part->slots) set->memory->free(set->memory->context, part->slots);
    *part = more;
    return true;
}

enum id_added id_set_add(struct id_set *set, uint64_t hash) {
    struct id_part *part = &set->parts[hash >> 56];
    if (8 * ((uint64_t)part->count + 1) > 7 * (uint64_t)part->room && !grow(set, part)) return ID_NO_MEMORY;
    if (!put(part, hash)) return ID_KNOWN;
    part->count++;
    return ID_NEW;
}

void id_set_free(struct id_set *set) {
    for (size_t i = 0; i < ID_PARTS; i++) {
        if (set->parts[i].slots) set->memory->free(set->memory->context, set->parts[i].slots);
        set->parts[i] = (struct id_part){0};
    }
}
