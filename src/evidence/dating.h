// SPDX-License-Identifier: MIT
// From marks found on a thing to the years in which such marks were used. Bounds are intersected; where none
// is left, both sides are told and nothing is chosen. A mark dates the mark, never the thing. Owner: the
// arena.
#ifndef EVIDENCE_DATING_H
#define EVIDENCE_DATING_H

#include "rules/ruleset.h"
#include "rules/scan.h"

struct day {
    int year, month, day; // year 0: not known
};

struct dated_mark {
    const struct bound *bound;
    const char *mark, *words;  // the mark as given, and what of it was read
    int not_before, not_after; // 0: open
    const char *told;          // the rule's text, with what was read
    const char *wrong;         // NULL, or why this number bounds nothing
    bool counts;               // it narrows the years: neither wrong nor only remembered
};

// `late` was not used before a year that lies behind the last year of `early`.
struct date_conflict {
    const struct dated_mark *late, *early;
};

struct dating {
    struct dated_mark *marks; // by year, then rule, then text: the order given makes no difference
    size_t count, room;
    const char **silent; // marks that no rule knows, sorted
    size_t silent_count;
    int from, to; // the years left; 0: open to that side
    const struct dated_mark *from_by, *to_by;
    bool fits; // some year is left
    struct date_conflict *conflicts;
    size_t conflict_count;
    const struct dated_mark **future; // not before a year that is still to come
    size_t future_count;
    bool slow; // a pattern ran into its step limit: its rule was passed over
};

// `today` may be NULL: no mark is then from the future.
struct dating *dating_of_marks(struct arena *arena, struct scanner *scanner, const struct ruleset *rules,
                               const char *const *marks, size_t count, const struct day *today);

// "1947-1952", "1963 or later", "1992 or earlier", "any year".
const char *dating_years(struct arena *arena, int from, int to);
// "such marks were used 1947-1952; narrowed by 'Occupied Japan' (not before 1947, not after 1952)".
const char *dating_summary(struct arena *arena, const struct dating *dating);
const char *dating_conflict_text(struct arena *arena, const struct date_conflict *conflict);
const char *bound_sure_name(enum bound_sure sure);
// "2025-11-25" to a day; false when it is none.
bool day_read(const char *text, struct day *day);

#endif
