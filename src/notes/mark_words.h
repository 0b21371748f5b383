// SPDX-License-Identifier: MIT
// The words around a mark, by what they do. Private to the room.
#ifndef NOTES_MARK_WORDS_H
#define NOTES_MARK_WORDS_H

#include "notes/note.h"

bool mark_is_stamp(const struct note *note, size_t i);
bool mark_is_weak(const struct note *note, size_t i);    // needs something beside it: "cast iron"
bool mark_is_process(const struct note *note, size_t i); // a way of making before it is one of writing
bool mark_is_says(const struct note *note, size_t i);
bool mark_is_person(const struct note *note, size_t i);  // who says something, and no thing that bears it
bool mark_is_breaker(const struct note *note, size_t i); // ends a mark, or cannot begin one
bool mark_is_carat(const struct note *note, size_t i);   // "9ct", "750"
bool mark_is_roman(const struct note *note, size_t i);
bool mark_is_making(const struct note *note, size_t i);        // "stamped leather case": how goods were made
bool mark_is_denied(const struct note *note, size_t i);        // "not marked"
bool mark_is_other_reading(const struct note *note, size_t i); // a label's size, measure or count
bool mark_is_measure(const struct note *note, size_t i);       // a size of the thing, behind a comma
// "Stencilled numbers on it", "stamped by two owners": what is written, or who did, and not the writing.
bool mark_is_sort(const struct note *note, size_t from, size_t to);
bool mark_is_doing(const struct note *note, size_t i); // "peeling", "scuffed": no name is one

#endif
