// SPDX-License-Identifier: MIT
// On how many of several a fault is. Private to the room.
#ifndef NOTES_SHARE_H
#define NOTES_SHARE_H

#include "notes/faults.h"

// "Scribbles on two pages": how many; 0 where nobody says.
int fault_on_several(const struct fault_reader *r, const struct fault_hit *hit);

// "Worn where you drink", "thin where people drank": the rim, of what one drinks from.
bool fault_is_where_one_drinks(const struct fault_reader *r, const struct fault_hit *hit);

#endif
