// SPDX-License-Identifier: MIT
// The other form of a chosen wording, for a title in which a small word would stand twice: "Chip on Rim,
// Stain on Base" says the second as "Base Stain". Both forms say the same and hold the same words for
// searches; the other one is never longer, so the choice need not know of it. Texts live in the arena given.
#ifndef TITLE_TURNED_H
#define TITLE_TURNED_H

#include <stdbool.h>
#include <stddef.h>

#include "text/arena.h"

struct plan_spelling;

// What stands before the place of "{noun} {at}", and so what becomes of it.
enum word_turn {
    TURN_NONE,
    TURN_NOUN,    // "Small Chip on Rim": "Small Rim Chip"
    TURN_QUALITY, // "Cracked on Rim": "Cracked Rim"
    TURN_PLACE,   // "Open Seam on Corner": "Open Seam at Corner"
    TURN_MEASURE, // "10 in Across" behind another figure in inches: "10 Across"
    TURN_SIDES,   // "16 x 12 in": stays, and its unit is the first
    TURN_ABSENCE, // "No Cord" behind "No Reel": "or Cord"
};

// How a rule's words with the place at their end may be turned; `lead` counts the words of degree and number
// before the noun, which stay in front.
enum word_turn turned_way(const char *words, const char *noun);
// The other form, or NULL where there is none.
const char *turned_form(struct arena *arena, const struct plan_spelling *spelling);

struct title_plan;
struct title_choice;
// The texts that a choice of the plan puts into the title, in order, and the phrase of each; returns how
// many.
size_t turned_texts(struct arena *arena, const struct title_plan *plan, const struct title_choice *choice,
                    const char ***texts, size_t **phrases);
// The same with what has to be turned.
size_t turned_chosen(struct arena *arena, const struct title_plan *plan, const struct title_choice *choice,
                     const char ***texts, size_t **phrases);
// `text` as it was chosen where it is the title that the choice makes; else `text` itself. Readers of titles
// know the wordings of the plan alone.
const char *turned_back(struct arena *arena, const struct title_plan *plan, const struct title_choice *choice,
                        const char *text);
// Turns what has to be turned among the texts of a title. `after` is their order; texts without a turn stay.
void turned_title(struct arena *arena, const struct plan_spelling *const *chosen, const char **texts,
                  size_t count);

#endif
