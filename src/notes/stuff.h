// SPDX-License-Identifier: MIT
// Private to the room.
#ifndef NOTES_STUFF_H
#define NOTES_STUFF_H

#include "notes/faults.h"

enum stuff {
    STUFF_ANY,
    STUFF_WOOD,
    STUFF_METAL,
    STUFF_CLOTH,
    STUFF_PAPER,
    STUFF_LEATHER,
    STUFF_RUBBER,
    STUFF_FIRED, // china and glass
    STUFF_PLASTIC,
    STUFFS
};

// Of what the part at token `i` is made most likely: by its own name, else by what such goods are made of.
enum stuff stuff_of_part(const struct fault_reader *reader, size_t i);

// Is the token, or its singular, or it without "'s", one of the words of a list with a space around each?
bool stuff_among(const char *list, const struct token *token);

// The noun that a clause is about, of which the verb at token `i` says something: "the hoop has", "two pads
// have", "hoops are"; 0 where it is the thing itself, a pronoun, a mark or dirt, or more than a few words,
// else the token behind it.
size_t stuff_subject(const struct fault_reader *reader, size_t i);

// "The hinge of the lid is slack": of the parts that a predicate stands behind the one that it is said of;
// `behind` is the token behind the last part, and so is what is returned.
size_t stuff_head(const struct fault_reader *reader, size_t behind);

// Where it is, told right behind the words of the fault: "coming undone at the butt". NULL: nowhere.
const char *stuff_where(const struct fault_reader *reader, const struct fault_hit *hit);

// ill_parts.c: is the token a word of what has become of a part that stands before its name: "damaged plug"?
bool ill_before_part(const struct tokens *tokens, size_t i);

#endif
