// SPDX-License-Identifier: MIT
// Whole notes read as the program reads them: the shipped rules and the word book of this build.
#ifndef TESTS_NOTES_SUPPORT_BOOK_H
#define TESTS_NOTES_SUPPORT_BOOK_H

#include "support.h"

#include "notes/read.h"

// The first record of a note; everything lives in `arena`.
const struct record *support_read(struct arena *arena, const char *note);

// The same with some phenomena (bits of enum phenomenon) left unread.
const struct record *support_read_without(struct arena *arena, const char *note, unsigned off);

// The same by a reader that keeps what it learns of words.
const struct record *support_read_keeping(struct arena *arena, const char *note, struct asked *asked);

#endif
