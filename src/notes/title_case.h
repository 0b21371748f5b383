// SPDX-License-Identifier: MIT
// Heads of notes that are written with capitals throughout. Private to the room.
#ifndef NOTES_TITLE_CASE_H
#define NOTES_TITLE_CASE_H

#include "notes/note.h"

// Before names are read.
void read_title_case(struct note *note);

#endif
