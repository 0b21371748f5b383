// SPDX-License-Identifier: MIT
// Parts that a fault has from what its sentence begins with. Private to the room.
#ifndef NOTES_SPOTS_SHARED_H
#define NOTES_SPOTS_SHARED_H

#include "notes/faults.h"

// "Shade: chip at the bottom edge": the part before the colon.
bool spot_under_colon(const struct fault_reader *reader, const struct fault_hit *hit, size_t *from,
                      size_t *to);

#endif
