// SPDX-License-Identifier: MIT
// "Hardly any wear", "not too many stains", "barely a scratch": there is some, and it is light. No denial.
#include "notes/scope.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct cue cues[] = {
    {"ain't many", 0},
    {"ain't much", 0},
    {"almost no", 0},
    {"aren't many", 0},
    {"aren't overly", 0},
    {"aren't that", 0},
    {"aren't too", 0},
    {"aren't too many", 0},
    {"aren't very", 0},
    {"barely", 0},
    {"barely any", 0},
    {"doesn't have many", 0},
    {"doesn't have much", 0},
    {"doesn't have too many", 0},
    {"doesn't have too much", 0},
    {"don't have too many", 0},
    {"hardly", 0},
    {"hardly a", 0},
    {"hardly any", 0},
    {"isn't all that", 0},
    {"isn't badly", 0},
    {"isn't especially", 0},
    {"isn't heavily", 0},
    {"isn't much", 0},
    {"isn't overly", 0},
    {"isn't particularly", 0},
    {"isn't that", 0},
    {"isn't too", 0},
    {"isn't too bad", 0},
    {"isn't too much", 0},
    {"isn't very", 0},
    {"just a hint of", 0},
    {"just a trace of", 0},
    {"little in the way of", 0},
    {"minimal", 0},
    {"next to no", 0},
    {"no great", 0},
    {"not a lot of", 0},
    {"not all that", 0},
    {"not bad", 0},
    {"not badly", 0},
    {"not especially", 0},
    {"not heavily", 0},
    {"not hugely", 0},
    {"not many", 0},
    {"not massively", 0},
    {"not much", 0},
    {"not overly", 0},
    {"not particularly", 0},
    {"not really", 0},
    {"not seriously", 0},
    {"not so many", 0},
    {"not so much", 0},
    {"not terribly", 0},
    {"not that", 0},
    {"not that many", 0},
    {"not that much", 0},
    {"not too", 0},
    {"not too bad", 0},
    {"not too badly", 0},
    {"not too many", 0},
    {"not too much", 0},
    {"not very", 0},
    {"nothing much", 0},
    {"practically no", 0},
    {"scarcely", 0},
    {"scarcely any", 0},
    {"the odd", 0},
    {"very few", 0},
    {"very little", 0},
    {"virtually no", 0},
    {"wasn't too", 0},
};

enum { WORDS_MOST = 6 };

void scope_limited(struct scope *s) {
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        size_t n;
        if (!cue_at(s, cues, COUNT(cues), i, &n)) continue;
        if (token_is(tokens, i + n, "as") && token_is(tokens, i + n - 1, "much"))
            continue; // "not so much as a"
        size_t to = scope_clause_end(s, i + n);
        if (to > i + n + WORDS_MOST) to = i + n + WORDS_MOST;
        for (size_t at = i + n; at < to; at++) // a comma ends it: "hardly any wear, chip on the rim"
            if (tokens->at[at].stop == STOP_COMMA) to = at;
        scope_mark(s, i + n, to, STANCE_LIMITED, i);
        i += n - 1;
    }
}
