// SPDX-License-Identifier: MIT
// What is read of a fault by the words beside it: what bears it, what became of a trial, what is only more of
// the same. Private to the room.
#ifndef NOTES_BESIDE_H
#define NOTES_BESIDE_H

#include "notes/faults.h"

// seen_briefly.c: what ran and stopped, and what was not fed; gone_anyway.c: breaks of what is not there.
void settle_short_lived(struct note *note);
void settle_unfed(struct note *note);
void settle_gone_anyway(struct note *note);

// innocent_beside.c: is it only more of another fault?
bool fault_is_beside(const struct fault_reader *r, const struct fault_hit *hit);

// spot_bearer.c: the part that has the broken one; what has the fault that is then called by a name; what the
// plain word before "and needs" was said of.
bool spot_bearer(const struct fault_reader *r, const struct fault_hit *hit, const struct spot *spot,
                 size_t *from, size_t *to);
bool spot_called(const struct fault_reader *r, const struct fault_hit *hit, size_t *from, size_t *to);
bool spot_of_plain_state(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot);

// tried_well.c: may it work, by its family or by its words? goes_dead.c: what does nothing.
bool running_may(const struct fault_reader *r);
void read_tried_well(struct fault_reader *r);
void read_goes_dead(struct fault_reader *r);

#endif
