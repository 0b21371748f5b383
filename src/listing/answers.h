// SPDX-License-Identifier: MIT
// Answers of a person to the questions of a draft, put into the record.
#ifndef LISTING_ANSWERS_H
#define LISTING_ANSWERS_H

#include "listing/listing.h"

// Each answer is ID=yes, ID=no or ID=not-looked, where ID is a check of the record's family or a kind of
// flaw. What a yes says of a check stands in its rule; one that leaves it open is not answered this way.
// False when an answer could not be put in: each is told in `diags` (CODE_USAGE), and the record is not to be
// drafted.
bool answers_apply(struct arena *arena, const struct ruleset *rules, struct record *record,
                   const char *const *answers, size_t count, struct diags *diags);

#endif
