// SPDX-License-Identifier: MIT
// A text that is no note in English: a web page, a table, another language. Nothing is guessed from it.
// Private to the room.
#ifndef NOTES_ALIEN_H
#define NOTES_ALIEN_H

#include "notes/note.h"

// "page" or "table" by its form; NULL where it may be a note.
const char *alien_form(const char *text);
// "language" where the words are not English; NULL where they may be.
const char *alien_words(const struct note *note);
// A small word of another language; `fold` as tokens are folded.
bool alien_word(const char *fold);
// Takes the sentences of a note that are in another language, so that nothing is guessed from them.
void read_alien(struct note *note);

#endif
