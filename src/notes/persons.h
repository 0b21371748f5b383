// SPDX-License-Identifier: MIT
// Names, places and numbers of people, which are taken before any reader of names. Private to the room.
#ifndef NOTES_PERSONS_H
#define NOTES_PERSONS_H

#include "notes/note.h"

// persons.c
bool person_capital(const struct note *note, size_t i);    // a word with a capital that nobody has taken
bool person_named(const struct note *note, size_t i);      // the same, and no capital that a sentence gives
size_t person_name_end(const struct note *note, size_t i); // where the run of names from `i` ends
size_t person_keep_back(struct note *note, size_t from, size_t to); // an aside; `to`, 0 if it was taken

// addresses.c: where it ends, 0 if none stands at `i`.
size_t person_street(struct note *note, size_t i);
size_t person_number(struct note *note, size_t i);

// owners.c: a word of a firm's or an institution's name, and of nobody's.
bool firm_word(const struct tokens *tokens, size_t i);

// A first name, even where it is a word of English too; the end of "W. Somebody", "A.L. Somebody", `i` if it
// is none.
bool person_first_name(const struct note *note, size_t i);
size_t person_form_end(const struct note *note, size_t i);

// That somebody's name is on it, told once; the words [from, to), and the place behind `at` or before them.
void person_tell_owner(struct note *note, size_t from, size_t to, size_t at);
// The place before what is engraved: "On the front engraved", "the lid is engraved"; NULL where none stands.
const char *owner_place_before(const struct note *note, size_t cue);

// persons_papers.c: "the photographer's name" at token `i`: of a trade, whose name and street are its mark.
bool person_of_trade(const struct tokens *tokens, size_t i);

// persons_papers.c: the same as person_by_hand().
size_t person_on_paper(struct note *note, size_t i);

// persons_living.c: the same, of those who do what no thing does, of who gave it to whom, who is called so,
// and of a family's records.
size_t person_living(struct note *note, size_t i);
size_t person_dedicated(struct note *note, size_t i);
size_t person_called(struct note *note, size_t i);
size_t person_recorded(struct note *note, size_t i);

// Names put on by hand and words that are secret; where what was kept back ends, 0 where there is none.
size_t person_by_hand(struct note *note, size_t i);

// persons_papers.c: do the words [i, to) stand in the title of a book, "A Lantern for Mrs. X by Y Z"?
bool person_in_title(const struct note *note, size_t i, size_t to);

#endif
