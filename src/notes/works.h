// SPDX-License-Identifier: MIT
// Books, records and films by title and maker. Private to the room.
#ifndef NOTES_WORKS_H
#define NOTES_WORKS_H

#include "notes/note.h"

// "The Salt Lantern, a novel by Orla Wenthrop" -> `name` and `author`; of a record `byArtist`.
void read_works(struct note *note);

// credit.c: what the words around a name at [from, to) say of it. `*refused`: it is none of the thing's own.
enum sure name_credit(const struct note *note, size_t from, size_t to, bool *refused);
bool name_is_no_name(const struct note *note, size_t from, size_t to); // "Victorian", "Sweden"
// A stuff or a part with a capital.
bool name_is_stuff(const struct note *note, size_t from, size_t to);

// maker_grounds.c: does anything around the name let it be a maker's?
bool name_has_grounds(const struct note *note, size_t from, size_t to);
// "Worn once, by Somebody": who used it, and not who made it; `by` is that token.
bool name_by_user(const struct note *note, size_t by);
// The same of what the thing fits ("for a Halden 40"), and of a code without a word before it.
bool fit_has_grounds(const struct note *note, size_t from, size_t to);
bool code_has_grounds(const struct note *note, size_t i);

#endif
