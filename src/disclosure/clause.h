// SPDX-License-Identifier: MIT
// One fault as subject and predicate, so that several of one subject make one sentence. Private to the room.
// Owner: the arena.
#ifndef DISCLOSURE_CLAUSE_H
#define DISCLOSURE_CLAUSE_H

#include "disclosure/disclosure.h"

// The order of the paragraph.
enum band {
    BAND_FUNCTION,
    BAND_STRUCTURE, // damage that even at its lightest lowers the grade
    BAND_MISSING,
    BAND_REPAIR,
    BAND_SURFACE,
    BAND_DIRT,
    BAND_ODOR,
    BAND_REST // what is told without being a fault
};

enum clause_verb { VERB_IS, VERB_HAS, VERB_WAS };

struct clause {
    const struct item_flaw *flaw;
    enum band band;
    const char *subject; // small first letter: "it", "the handle", "two of the six", "there" (then the verb
                         // agrees with the rest)
    bool many;           // the subject takes are and have
    bool many_rest;      // behind "there": are
    bool maybe;          // the seller is not certain
    bool missing;        // "The lid is missing": such subjects may share one predicate
    enum clause_verb verb;
    const char
        *rest; // what follows the verb, without its place: "a small chip of 3 mm (1/8 in)", "not working"
    const char *place; // "on the rim", or ""
    bool alone;        // holds a comma or a list of its own: no other stands in its sentence
};

// How the thing is spoken of: "it", "they" (one thing of plural form), or "there" (several pieces).
enum address { ADDRESS_IT, ADDRESS_THEY, ADDRESS_THERE };

struct clause clause_of(struct arena *arena, const struct item_flaw *flaw, enum address address,
                        enum locale locale);
// "is", "have", "may be", "was" …
const char *clause_verb_words(enum clause_verb verb, bool many, bool maybe);

// What is looked for, after "No" or "for": "chips", "rust", "missing lids"; `part` may be NULL.

// clear.c: what was not looked at, and what was looked for and not seen.
void tell_unchecked(struct disclosure_maker *maker, const struct record *record);
void tell_clear(struct disclosure_maker *maker, const struct record *record);

#endif
