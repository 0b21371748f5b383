// SPDX-License-Identifier: MIT
// Words of a fault that are none where they stand. Private to the room; faults.h has the structs.
#ifndef NOTES_MEANT_H
#define NOTES_MEANT_H

#include <stdbool.h>

struct fault_reader;
struct fault_hit;
struct phrase_hit;

// meant.c: does a phrase of the kind mean something else here: "no guarantee it reads right"?
bool fault_means_other(const struct fault_reader *reader, const struct fault_hit *hit);
// meant_place.c: does it only tell where the fault before it is, or what nobody would try?
bool fault_means_place(const struct fault_reader *reader, const struct fault_hit *hit);
// harmless.c: does it stand in a turn of speech that is of no fault, "hard to find", "painted green"?
// innocent.c: by what they are said of.
// innocent_made.c: what goods do, and what they are made with.
bool fault_is_made_so(const struct fault_reader *r, const struct fault_hit *hit);
bool fault_is_innocent(const struct fault_reader *reader, const struct fault_hit *hit);
bool fault_is_harmless(const struct fault_reader *reader, const struct fault_hit *hit);
// The same file: "thumb screws", of no thumb.
bool fault_is_named_for_limb(const struct fault_reader *reader, const struct phrase_hit *hit);
bool fault_is_beside_limb(const struct fault_reader *reader, const struct phrase_hit *hit);
// The same file: is the pull of a drawer or a door among the tokens [from, to)?
bool fault_is_drawer_pull(const struct fault_reader *reader, size_t from, size_t to);

#endif
