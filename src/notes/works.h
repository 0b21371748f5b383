// SPDX-License-Identifier: MIT
// Books, records and films by title and maker. Private to the room.
#ifndef NOTES_WORKS_H
#define NOTES_WORKS_H

#include "notes/note.h"

// "The Salt Lantern, a novel by Orla Wenthrop" -> `name` and `author`; of a record `byArtist`.
void read_works(struct note *note);

#endif
