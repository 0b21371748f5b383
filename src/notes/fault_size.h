// SPDX-License-Identifier: MIT
#ifndef NOTES_FAULT_SIZE_H
#define NOTES_FAULT_SIZE_H

#include "notes/faults.h"

// Gives the flaw the size that its clause tells: "a chip of 3 mm", "hairline, about an inch". `told`: the
// degree that words have told already.
void fault_measure(struct fault_reader *reader, const struct fault_hit *hit, struct item_flaw *flaw,
                   enum severity told);

// What of its size counts on the scale, in mm.
double fault_extent(const struct fault_reader *reader, const struct fault_hit *hit,
                    const struct item_flaw *flaw);

#endif
