// SPDX-License-Identifier: MIT
#ifndef NOTES_FAULT_SIZE_H
#define NOTES_FAULT_SIZE_H

#include "notes/faults.h"

// Gives the flaw the size that its clause tells: "a chip of 3 mm", "hairline, about an inch". `told`: the
// degree that words have told already.
void fault_measure(struct fault_reader *reader, const struct fault_hit *hit, struct item_flaw *flaw,
                   enum severity told);

// A size and nothing else at token `i`, behind a fault or its place: "(six inches)", "- 2 in", ", about 3
// cm,". Returns the token behind it, 0 where none stands.
size_t fault_size_behind(const struct fault_reader *reader, size_t i);

// "There is a small tear on the hem": does the sentence begin with the fault at token `i`?
bool fault_opens_sentence(const struct note *note, size_t i);

// What of its size counts on the scale, in mm.
double fault_extent(const struct fault_reader *reader, const struct fault_hit *hit,
                    const struct item_flaw *flaw);

#endif
