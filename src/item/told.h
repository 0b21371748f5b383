// SPDX-License-Identifier: MIT
// Which words a flaw is told with.
#ifndef ITEM_TOLD_H
#define ITEM_TOLD_H

#include "item/record.h"

// Notes, too, whose degree nobody said.
// Gives each flaw of the record, and what it denies, the words of its kind for what the notes call it, at its
// place in them.
void told_set(struct arena *arena, struct record *record);

// Initials in a record that has an owner's: nobody prints them.
bool told_is_owners(const struct record *record, const char *mark);

// Same kind, grade and duty; noun, adjective and title words go by what the seller said.
static inline const struct flaw *flaw_told(const struct item_flaw *flaw) {
    return flaw->told ? flaw->told : flaw->kind;
}

#endif
