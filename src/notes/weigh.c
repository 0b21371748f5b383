// SPDX-License-Identifier: MIT
// How bad a fault is where no word of degree beside it says so: by how it is noticed, what comes of it, what
// it is like in size or number, where it stands on its kind's scale, and what the next sentence says of it.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"

// What is not seen or cleaned: that it works, is missing or unknown has no such degrees.
static bool is_seen(const struct flaw *kind) {
    return kind->form == FAULT && (kind->class == CLASS_DAMAGE || kind->class == CLASS_DIRT ||
                                   kind->class == CLASS_ODOR || kind->class == CLASS_REPAIR);
}

static enum severity of_likeness(const struct fault_reader *r, const struct fault_hit *hit,
                                 const struct item_flaw *flaw) {
    double like = flaw->has_size ? 0 : size_of_object(r, hit);
    enum severity found = like > 0 ? degree_of_likeness(flaw->kind, like) : SEVERITY_UNKNOWN;
    return found || flaw->of ? found : degree_of_count(flaw->kind, flaw->count);
}

// "It goes right through." "Still holds water."
static enum severity of_next(const struct fault_reader *r, const struct fault_hit *hit,
                             const struct flaw *kind, const struct around *next, bool seen) {
    enum severity found = seen ? degree_of_notice(r, next, false) : SEVERITY_UNKNOWN;
    if (!found && seen) found = degree_of_effect(r, hit, kind, next);
    return found ? found : degree_on_scale_in(r, kind, next->from, next->to);
}

enum severity degree_weigh(const struct fault_reader *r, const struct fault_hit *hit,
                           const struct item_flaw *flaw) {
    const struct flaw *kind = flaw->kind;
    struct around at[AROUND_COUNT];
    if (unknown_is_own(kind) || fault_is_virtue(kind)) return degree_on_scale(r, hit, kind);
    degree_around(r, hit, kind, at);
    bool seen = is_seen(kind);
    enum severity found = seen ? degree_of_notice(r, &at[AROUND_BEHIND], false) : SEVERITY_UNKNOWN;
    if (!found && seen) found = degree_of_notice(r, &at[AROUND_BEFORE], true);
    if (!found && seen) found = degree_of_effect(r, hit, kind, &at[AROUND_BEHIND]);
    if (!found) found = of_likeness(r, hit, flaw);
    if (!found) found = degree_on_scale(r, hit, kind);
    if (!found) found = degree_of_use(r, hit);
    if (!found) found = of_next(r, hit, kind, &at[AROUND_NEXT], seen);
    if (!found && seen) found = degree_of_sight(r, &at[AROUND_BEHIND]);
    if (!found && seen) found = degree_of_sight(r, &at[AROUND_NEXT]);
    return found;
}
