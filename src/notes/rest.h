// SPDX-License-Identifier: MIT
// What no reader took. Private to the room.
#ifndef NOTES_REST_H
#define NOTES_REST_H

#include "notes/note.h"

// Takes as filler every free token that `says_nothing`, then keeps what is left as `unread`: one span a run,
// which may hold filler inside but neither begins nor ends with it, nor goes over a stop.
void note_rest(struct note *note, bool (*says_nothing)(const struct note *note, size_t i));
// Closed classes of words: articles, pronouns, auxiliaries, greetings of speech. What the word book adds
// stands in read.c.
// A remark on whether a fault that was told can be seen: how many tokens, 0 if none begins at `i`.
size_t remark_at(const struct note *note, size_t i);
// Takes what is left beside a fault that was read and tells no more of it.
void note_leftover(struct note *note);
bool rest_is_small(const struct note *note, size_t i);
// The lists of spans as they stand in a record: `[[from, to], …]`; NULL when empty.
const struct node *note_spans_tree(const struct note *note, const struct note_span *spans, size_t count);

#endif
