// SPDX-License-Identifier: MIT
// What the readers of looks and stuffs share. Private to the room.
#ifndef NOTES_VALUE_KEEP_H
#define NOTES_VALUE_KEEP_H

#include "notes/note.h"

// Keeps a value, of the part `of` or of the thing (NULL), unless it is there already.
void value_keep(struct note *note, const char *name, const char *print, const char *of, size_t from,
                size_t to, enum sure sure);
// How sure the seller is of the words from token `from` to `to`.
enum sure value_sure(const struct note *note, size_t from, size_t to);

// Parts of read_values().
void value_read_audience(struct note *note);
void value_read_forms(struct note *note);
void value_read_likened(struct note *note); // value_likened.c
void value_read_shown(struct note *note);   // value_shown.c
void value_read_stuffs(struct note *note);

// value_looks.c: a flower for a color at token `i`; is the cloth there what was stitched on; patent leather.
bool value_read_flower_color(struct note *note, size_t i, size_t n);
// "Raincoat, stone": a stuff for a color of what is worn.
bool value_read_fruit(struct note *note, size_t i);
bool value_read_cloth_color(struct note *note, size_t i, size_t n);
bool value_is_ground(const struct note *note, size_t i);
void value_read_patent(struct note *note);
void value_read_men(struct note *note); // of chess
// What the name of the thing tells that it shows: how many words at token `i` do so.
size_t value_read_shown_by_name(struct note *note, size_t i);

// "Apple handle", "table, cherry": the wood of a tree at token `i`; false where it is none. value_stuffs.c
bool value_read_fruitwood(struct note *note, size_t i, size_t n);
bool value_read_plates(struct note *note, size_t i, size_t n);

#endif
