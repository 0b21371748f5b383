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

// Is the fault at token `i` denied right before? Does the word there tell of damage that is no flaw by
// itself, "lifted"? And does nothing but words for more or less stand in [from, to), "barely about"?
bool fault_is_denied(const struct note *note, size_t i);
bool fault_comes_off(const struct note *note, size_t i);
bool fault_size_only(const struct note *note, size_t from, size_t to);

// What of its size counts on the scale, in mm.
double fault_extent(const struct fault_reader *reader, const struct fault_hit *hit,
                    const struct item_flaw *flaw);

#endif
