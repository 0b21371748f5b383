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
};

// The next token without its folds; false at the end.
bool cut_next(struct cutter *cutter, struct token *token);
// Curly quotes, long dashes and the like as their plain sign.
uint32_t cut_straight(uint32_t point);
// The hash of token.hash for other texts.
uint64_t token_hash(const char *text, size_t size);

#endif
