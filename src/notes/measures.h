// SPDX-License-Identifier: MIT
// What the readers of figures share. Private to the room.
#ifndef NOTES_MEASURES_H
#define NOTES_MEASURES_H

#include "notes/figure.h"

// Labelled sizes: "size 8", "sz M", "UK 9 / EU 43", "twin size", "1:64". Part of read_measures().
void read_sizes(struct note *note);
// Are they goods whose label gives a waist and a leg?
bool sizes_of_trousers(const struct note *note);
// "W48 x D30 x H29". Part of read_measures().
void read_lettered(struct note *note);
// "Pint jars". Part of read_measures().
void read_named_volumes(struct note *note);
// Where what says the figure before token `i` again in another unit ends; `i` where nothing does.
size_t conversion_behind(const struct note *note, size_t i);
// When the thing is known: a bare figure gets the dimension that its family takes for granted, or becomes its
// `size`; a part that is the thing itself is no part.
void settle_measures(struct note *note);
// When the faults are known: a stuff that is a part with a fault is not what the thing is made of.
void settle_stuff(struct note *note);
// What is said only to look like a stuff is not of it.
void settle_alike(struct note *note);
// failed_part.c: the part that fails, where its word is no part elsewhere.
void settle_failed_part(struct note *note);

#endif
