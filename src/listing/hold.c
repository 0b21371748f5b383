// SPDX-License-Identifier: MIT
// Goods under a caution that stops are not listed: no title, no other title, no text to paste. The record and
// the list of its faults stay, and what is kept back says why.
#include "listing/listing.h"

static const struct note_span nowhere = {0, 0};

static void clear_title(struct listing *l) {
    l->title = "";
    l->title_length = 0;
    l->worth = l->bound = 0;
    l->optimal = true;
    l->word_count = l->left_count = l->alternate_count = 0;
}

void listing_hold(struct arena *arena, struct listing *l) {
    clear_title(l);
    for (size_t i = 0; i < l->cautions->count; i++) {
        const struct caution *caution = l->cautions->items[i].caution;
        if (!l->cautions->items[i].stop) continue;
        listing_withhold(arena, l, "the whole listing", caution->text, NULL);
        listing_find(arena, l, "must", "caution.stop",
                     arena_format(arena, "nothing is written to list this: %s", caution->text), nowhere);
    }
}
