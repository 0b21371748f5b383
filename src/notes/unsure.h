// SPDX-License-Identifier: MIT
// Is a word in doubt by what stands around it? One answer for all that is said of a thing: its age, its
// stuff, its maker. Private to the room.
#ifndef NOTES_UNSURE_H
#define NOTES_UNSURE_H

#include "notes/note.h"

// "Probably oak", "sold to me as silk", "at a guess, 1920s": before token `from`, in its clause.
bool unsure_before(const struct note *note, size_t from);
// "Oak I think", "1920s, supposedly", "silver?": behind, from token `to` on.
bool unsure_in_all(const struct note *note, size_t to);
bool unsure_behind(const struct note *note, size_t to);

// "Silver tray?": the thing's name from token `at` on, and nothing behind it but a question.
bool unsure_is_asked(const struct note *note, size_t at);

#endif
