// SPDX-License-Identifier: MIT
// Words of a flaw that title and disclosure share: its degree, its adjective, its noun beside a part.
#ifndef ITEM_WORDING_H
#define ITEM_WORDING_H

#include "item/record.h"

// "small", "heavy" …, before the noun; "" where the degree is unknown or has no word here.
const char *wording_degree(const struct item_flaw *flaw, bool moderate);
// "slightly", "badly" …, before the adjective; "" where the degree is unknown or the adjective tells it
// itself.
const char *wording_adverb(const struct item_flaw *flaw, bool moderate);
// The adjective for the flaw's degree, or NULL when its rule has none.
const char *wording_adjective(const struct item_flaw *flaw);
// What is left of the noun beside a part that begins it: "separation" for "sole separation" of the left sole.
// Of "strap or handle damage" either part leaves "damage". NULL where the part does not begin the noun.
const char *wording_rest(const struct item_flaw *flaw);
// Of a part that ends the noun, what stands before it: "open" for an "open seam" of the seams; NULL else.
const char *wording_before(struct arena *arena, const struct item_flaw *flaw);
// The flaw as it is told: "a loose part on the elbow" of notes is the elbow, which is loose. The flaw itself
// where nothing is to change.
const struct item_flaw *wording_shown(struct arena *arena, const struct item_flaw *flaw);
// A fault whose degree would matter and was not told.
bool wording_unsized(const struct item_flaw *flaw);
// "The left one": the part says itself that it is one of several.
bool wording_names_one(const struct item_flaw *flaw);
// What is looked for: "cracks", "missing knobs", "stuck or stiff lid", as in "No … seen", where `part` names
// the part that it was looked for on; of a part that begins the noun the rest ("damage" of the lining).
const char *wording_sought(struct arena *arena, const struct flaw *kind, const char *part);
// Does what is looked for name the part itself?
bool wording_sought_holds_part(const struct flaw *kind, const char *part);

#endif
