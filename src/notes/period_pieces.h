// SPDX-License-Identifier: MIT
// A few words cut small: "late-19th-century" is five pieces. Private to the room.
#ifndef NOTES_PERIOD_PIECES_H
#define NOTES_PERIOD_PIECES_H

#include <stdbool.h>
#include <stddef.h>

enum { PIECES_MOST = 24, PIECE_MOST = 15 };

struct pieces {
    struct {
        char fold[PIECE_MOST + 1]; // lower-case, apostrophes left out; a dash of any kind is "-"
        size_t to;                 // where it ends in the text
        bool joined;               // nothing stands between it and the piece before
    } at[PIECES_MOST];
    size_t count;
    size_t *looked; // where it is not NULL: the last piece that was looked at, though it may not be there
};

static inline void pieces_look(const struct pieces *pieces, size_t at) {
    if (pieces->looked && at > *pieces->looked) *pieces->looked = at;
}

// Cuts as far as pieces of words of age go: anything else ends it.
struct pieces pieces_cut(const char *text, size_t size);
bool piece_is(const struct pieces *pieces, size_t at, const char *word);
// One of words parted by "|".
bool piece_one_of(const struct pieces *pieces, size_t at, const char *words);
// The pieces of "of the" and the like, or 0.
size_t piece_phrase(const struct pieces *pieces, size_t at, const char *words);

#endif
