// SPDX-License-Identifier: MIT
// Denials that say nothing of the kind whose words they have: no leak of a pillow is no whole glass, no rot
// of a post no sound cloth, and what is not playable as is was not offered as it is.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

// A leak that was not looked for is a crack of glass alone; of a tent or a can it is what it is called.
bool denial_of_leak(const struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind) {
    if (strncmp(r->note->tokens.at[hit->from].fold, "leak", 4) != 0) return false;
    return text_same(kind->rule.id, "partly-working") ||
           ((text_same(kind->rule.id, "crack-through") || text_same(kind->rule.id, "seam-split")) &&
            (!r->note->record->family || !kind_can_be(r, kind, NULL)));
}

// Wood that has no rot is no sound cloth.
static bool is_rot_of_wood(const struct fault_reader *r, const struct fault_hit *hit,
                           const struct flaw *kind) {
    const struct flaw *wood = ruleset_flaw(r->note->rules, "wood-split");
    return wood && text_same(kind->rule.id, "fabric-weak") &&
           !strncmp(r->note->tokens.at[hit->to - 1].fold, "rot", 3) && kind_is_of_material(r, wood, NULL);
}

// "Not playable as is": no condition of sale is denied.
static bool is_as_it_is(const struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind) {
    return text_same(kind->rule.id, "as-is") && hit->from > 0 &&
           ANY(&r->note->tokens, hit->from - 1, "playable", "usable", "useable", "wearable", "safe",
               "workable", "readable", "useful", "rideable", "seaworthy", "good", "fit");
}

const char *denial_idle(const struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind) {
    if (is_as_it_is(r, hit, kind)) return "no condition of sale";
    if (is_rot_of_wood(r, hit, kind)) return "no cloth";
    return denial_of_leak(r, hit, kind) ? "no vessel" : NULL;
}
