// SPDX-License-Identifier: MIT
// How many of the pieces a fault is of, where the notes give no number.
#ifndef ITEM_TOLD_SHARE_H
#define ITEM_TOLD_SHARE_H

#include "item/record.h"

// "Most", "some", "several" and the like of the flaw's clause in the notes; NULL where none stands there.
const char *told_share(struct arena *arena, const struct record *record, const struct item_flaw *flaw);

#endif
