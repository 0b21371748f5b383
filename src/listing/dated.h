// SPDX-License-Identifier: MIT
// The years that a record's marks leave, against those that its seller gave; and the words of age that both
// allow.
#ifndef LISTING_DATED_H
#define LISTING_DATED_H

#include "listing/listing.h"

// Fills `dating` of the listing from marks and book number of its record.
void listing_date(struct arena *arena, const struct drafter *drafter, struct listing *listing);
// Allows the claims of age that the latest possible year bears out. Without a day for today, none.
void listing_allow_ages(struct arena *arena, const struct drafter *drafter, const struct listing *listing,
                        const struct claims *claims);
// Findings: marks against each other, against the seller's years and against today; wrong check digits.
void listing_find_dates(struct arena *arena, const struct drafter *drafter, struct listing *listing);

#endif
