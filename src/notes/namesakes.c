// SPDX-License-Identifier: MIT
// "Biscuits for Rusty", "our dog Chip": who is called by a word of a fault. Such a word has a capital that
// its place in the sentence does not give it, and stands where a name is due.
#include "notes/any.h"
#include "notes/faults.h"

bool fault_is_called_so(const struct note *note, const struct fault_hit *hit) {
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
