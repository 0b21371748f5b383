// SPDX-License-Identifier: MIT
// A fault's words in a sentence that may tell of somebody or something else. Private to the room.
#ifndef NOTES_STRANGERS_H
#define NOTES_STRANGERS_H

#include "notes/faults.h"
#include "words/wordbook.h"

enum { SOMEBODY = 1u << USE_PERSON, THOUGHT = 1u << USE_IDEA, NATURE = 1u << USE_NATURE };

struct telling {
    const struct fault_reader *r;
    const struct tokens *tokens;
    const struct flaw *kind;
    size_t start, end; // of the sentence
    size_t from, to;   // of the fault's words
    bool figures;      // the thing shows people or animals, or is formed like one
};

enum who { NOBODY, TELLER, OTHERS, MANY };

// strangers.c: which of the three the noun at token `i` is, as bits; 0 where it may be of the goods.
uint32_t stranger_at(const struct telling *telling, size_t i);
// Who stands at token `i`, by a pronoun, and by a pronoun, a noun or a name.
enum who stranger_pronoun(const struct telling *telling, size_t i);
enum who stranger_person(const struct telling *telling, size_t i);
// Where the predicate begins that ends in the fault's words; `*passive` is set where it has a form of "be".
size_t stranger_predicate(const struct telling *telling, bool *passive);
bool stranger_possessed(const struct telling *telling, size_t i); // "my finger"
bool stranger_stops(const struct telling *telling, size_t i);

// strangers_weak.c: words that name no fault without a word for the thing in their sentence.
bool stranger_is_told_to(const struct telling *telling); // "remove the dirty dishes": an order
bool stranger_is_weak(const struct telling *telling);

#endif
