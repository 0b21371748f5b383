// SPDX-License-Identifier: MIT
// What safety or law asks about a record's goods. One more fact never takes a caution away. Owner: the arena.
#ifndef EVIDENCE_CAUTIONS_H
#define EVIDENCE_CAUTIONS_H

#include "item/record.h"
#include "rules/scan.h"

struct caution_found {
    const struct caution *caution;
    const char *because;   // what in the record raised it
    struct note_span span; // where in the notes, if there
    bool stop;             // the caution stops, and the words that raised it leave no doubt, as signs do
};

struct cautions {
    struct caution_found *items; // those that stop first, else in the order of the rules
    size_t count;
    bool stop; // one of them keeps the goods from being listed
};

// Looks through everything that the record says, its notes included but for their asides. `record` as it was
// given: a family that was only guessed for it would narrow what is raised.
struct cautions *cautions_raise(struct arena *arena, struct scanner *scanner, const struct ruleset *rules,
                                const struct record *record);
// Only those that stop.
struct cautions *cautions_raise_stops(struct arena *arena, struct scanner *scanner,
                                      const struct ruleset *rules, const struct record *record);

#endif
