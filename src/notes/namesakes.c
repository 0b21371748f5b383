// SPDX-License-Identifier: MIT
// "Biscuits for Rusty", "our dog Chip": who is called by a word of a fault. Such a word has a capital that
// its place in the sentence does not give it, and stands where a name is due.
#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

// "Worm holes in the back, I can't say how old": the age of the holes, and not of the thing.
static bool is_age_of_fault(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    bool old = false;
    for (size_t i = hit->from + 1; i < hit->to; i++)
        old |= ANY(tokens, i, "old") && ANY(tokens, i - 1, "how");
    if (!old || !text_same(hit->kinds[0]->rule.id, "authenticity-unverified")) return false;
    for (size_t h = 0; h < r->hit_count && r->hits[h].to <= hit->from; h++)
        if (r->hits[h].from >= scope_sentence_start(&r->scope, hit->from) &&
            r->hits[h].kinds[0]->class != CLASS_STATUS && r->hits[h].kinds[0]->class != CLASS_FEATURE)
            return true;
    return false;
}

bool fault_is_called_so(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct note *note = r->note;
    if (is_age_of_fault(r, hit)) return true;
    const struct tokens *tokens = &note->tokens;
    const struct token *word = &tokens->at[hit->from];
    if (hit->to != hit->from + 1 || !word->capital || word->capitals || word->starts || tokens->shouts ||
        tokens->flat || hit->from == 0)
        return false;
    const struct token *before = word - 1;
    if (before->stop != STOP_NONE || (before->capital && !before->starts)) return false;
    bool owns =
        ANY(tokens, hit->to, "and", "slept", "loved", "chewed", "liked", "was", "had", "used", "came") &&
        ANY(tokens, hit->from - 1, "old", "our", "my", "when", "where", "because", "since", "that");
    return owns || ANY(tokens, hit->from - 1, "for", "to", "by", "called", "named", "from", "dog", "cat",
                       "pony", "horse", "mare", "parrot", "brother", "uncle", "aunt", "cousin", "nephew",
                       "with", "friend", "mr", "mrs", "miss", "puppy", "kitten", "hound", "terrier");
}
