// SPDX-License-Identifier: MIT
// How a word book lies in its file: a head, the entries, a hash table of their phrases, a hash table of first
// words, and the texts, each ended by a zero byte. Written by tools/wordbook.c, read by wordbook.c, on one
// kind of machine.
#ifndef WORDS_WORDBOOK_FORM_H
#define WORDS_WORDBOOK_FORM_H

#include <stddef.h>
#include <stdint.h>

enum {
    WORDBOOK_MAGIC = 0x62775361,
    WORDBOOK_VERSION = 4
}; // reads otherwise where bytes lie the other way round

struct wordbook_head {
    uint32_t magic, version;
    uint32_t entries, slots, firsts, texts; // counts; of texts bytes
};

struct wordbook_entry {
    uint32_t phrase, print, family, broader; // offsets into the texts; 0 is the empty text
    uint32_t uses, candidate;
};

// A slot of the phrases: 0 or the number of its entry and one more, with eight bits of the hash above it, so
// that another phrase is seldom looked at.
enum { WORDBOOK_SLOT_BITS = 24 };
#define WORDBOOK_SLOT_MASK ((1u << WORDBOOK_SLOT_BITS) - 1)

struct wordbook_first {
    uint32_t word, longest; // the words of the longest phrase that begins with it, and hash bits as in a slot
};

static inline uint32_t wordbook_tag(uint64_t hash) {
    return (uint32_t)(hash >> 32) & ~WORDBOOK_SLOT_MASK;
}

static inline uint64_t wordbook_hash(const char *text, size_t size) {
    uint64_t h = 14695981039346656037u;
    for (size_t i = 0; i < size; i++) h = (h ^ (unsigned char)text[i]) * 1099511628211u;
    return h ^ (h >> 29);
}

#endif
