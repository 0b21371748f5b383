// SPDX-License-Identifier: MIT
// A noun and what stands before it, as one run of words: "tall cobalt glass vase". Ends at a stop, at a word
// that builds sentences ("is", "with", "stands") and at a fault word. The last noun of a run names it, those
// before only qualify it. Private to the room.
#ifndef NOTES_CHUNK_H
#define NOTES_CHUNK_H

#include "notes/things.h"

enum { CHUNK_NOUNS_MOST = 6 };

struct chunk {
    size_t from, to;
    struct noun_found nouns[CHUNK_NOUNS_MOST]; // the last ones, in order
    size_t count;
    bool cut;       // ended before a word that says more of its noun
    bool toy;       // "wind up", "clockwork", "toy" … in the run
    size_t subject; // token of a last word that is a subject for pictures ("frog"), else SIZE_MAX
    struct word_entry theme;
};

// The run that begins at token `i`; false when a stop or a sentence-building word stands there.
bool chunk_at(const struct note *note, size_t i, struct chunk *chunk);
// A run that a holder ends ("trumpet case"): the two nouns in one; false when it is none.
bool purpose_is_capacity(const struct note *note, const struct noun_found *head); // "crate, 24 bottle"
bool purpose_holder(const struct note *note, const struct chunk *chunk, struct noun_found *holder);
// Does token `i` build the sentence and so stand in no run?
bool chunk_breaks(const struct note *note, size_t i);

#endif
