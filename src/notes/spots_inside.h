// SPDX-License-Identifier: MIT
// Parts and places inside the words of a fault. Private to the room.
#ifndef NOTES_SPOTS_INSIDE_H
#define NOTES_SPOTS_INSIDE_H

#include "notes/faults.h"

bool spot_place_inside(const struct fault_reader *reader, const struct fault_hit *hit, size_t *from,
                       size_t *to);
bool spot_part_inside(const struct fault_reader *reader, const struct fault_hit *hit, size_t *from,
                      size_t *to);

// "The gold on the rim is worn at the front": the part is what the phrase holds, where its place follows.
void spot_part_of_phrase(const struct fault_reader *reader, const struct fault_hit *hit, struct spot *spot);

#endif
