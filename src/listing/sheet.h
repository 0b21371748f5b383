// SPDX-License-Identifier: MIT
// One dated page to keep or hand over with the goods: the text as offered, the record behind it, its
// pictures, and a digest that shows later whether the text was changed.
#ifndef LISTING_SHEET_H
#define LISTING_SHEET_H

#include "listing/listing.h"

// Of a listing that may be offered its title, an empty line and its description; else the list of its faults.
const char *sheet_statement(struct arena *arena, const struct listing *listing);
void sheet_text(struct arena *arena, const struct listing *listing, const char *today, struct buf *out);
// An article for page_begin() and page_end().
void sheet_page(struct arena *arena, const struct listing *listing, const char *today, struct buf *out);

#endif
