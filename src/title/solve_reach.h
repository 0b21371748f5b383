// SPDX-License-Identifier: MIT
// What of a title problem can be settled without a model of it.
#ifndef TITLE_SOLVE_REACH_H
#define TITLE_SOLVE_REACH_H

#include "title/problem.h"

// Words that stand in every title, because a must has no spelling without them: per word one more than the
// number of that phrase, else 0.
uint32_t *reach_sure_words(struct arena *arena, const struct title_problem *problem);
// False when the spelling holds a sure word of another phrase, and so never stands beside it.
bool reach_may_stand(const uint32_t *sure, size_t phrase, const struct title_spelling *spelling);
// False only when no title is worth `floor`.
bool reach_floor(struct arena *arena, const struct title_problem *problem, int64_t floor);

#endif
