// SPDX-License-Identifier: MIT
// Where one token ends and the next begins; private to token.c.
#ifndef NOTES_CUT_H
#define NOTES_CUT_H

#include "notes/token.h"

struct cutter {
    const char *text;
    size_t size, at;
    bool caseless;    // a capital, or its absence, says nothing in this note
    bool line_start;  // nothing but space since the last line end
    size_t line_from; // where this line began
    size_t parted;    // the hyphen that was cut behind a number in words: "six-inch-long"; 0 where none was
};

// The next token without its folds; false at the end.
bool cut_next(struct cutter *cutter, struct token *token);
// Curly quotes, long dashes and the like as their plain sign.
uint32_t cut_straight(uint32_t point);

// --- the hash of token.hash, for other texts ---
// Eight bytes at a time, the first of them lowest whatever the machine's own order; zeros stand behind the
// last. Words have no zeros, so two that differ in length differ here. The rest of less than eight is always
// added, even if it is none, which saves a question.
enum { HASH_BYTES = 8 };

static inline uint64_t hash_eight(const char *text) {
    const unsigned char *b = (const unsigned char *)text;
    return (uint64_t)b[0] | (uint64_t)b[1] << 8 | (uint64_t)b[2] << 16 | (uint64_t)b[3] << 24 |
           (uint64_t)b[4] << 32 | (uint64_t)b[5] << 40 | (uint64_t)b[6] << 48 | (uint64_t)b[7] << 56;
}

static const uint64_t HASH_START = 14695981039346656037u;

static inline uint64_t hash_on(uint64_t hash, uint64_t eight) {
    hash = (hash ^ eight) * 0x9FB21C651E98DF25u;
    return hash ^ hash >> 32;
}

static inline uint64_t token_hash(const char *text, size_t size) {
    uint64_t hash = HASH_START;
    for (; size >= HASH_BYTES; size -= HASH_BYTES, text += HASH_BYTES) hash = hash_on(hash, hash_eight(text));
    uint64_t last = 0;
    for (size_t i = 0; i < size; i++) last |= (uint64_t)(unsigned char)text[i] << 8 * i;
    return hash_on(hash, last);
}

#endif
