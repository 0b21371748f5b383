// SPDX-License-Identifier: MIT
// What was understood of a note and why, for people: lines of an explanation, a tree for programs, and a page
// with the words marked. An explanation keeps back what is private; the page of a record is the seller's own
// and shows the note as it was written.
#ifndef LISTING_READINGS_H
#define LISTING_READINGS_H

#include "listing/listing.h"
#include "notes/read.h"
#include "text/buf.h"

// "In the notes", then a line a reading: its words, what was understood, and the rule, or what stopped it.
// Nothing where there are no readings.
void readings_text(struct arena *arena, const struct note_read *read, const struct listing *listing,
                   struct buf *out, bool color);
// List of {words, span, what, because, stopped}. Owner: `arena`.
struct node *readings_tree(struct arena *arena, const struct note_read *read, const struct listing *listing);
// One <article>: the note with what was understood marked and numbered, and the numbers told below, so that
// nothing hangs on color alone.
void readings_page(struct arena *arena, const struct note_read *read, struct buf *out);

#endif
