// SPDX-License-Identifier: MIT
// Nouns for goods in a note, and which of them is the thing. Private to the room.
#ifndef NOTES_THINGS_H
#define NOTES_THINGS_H

#include "notes/note.h"

// A noun of the rules or the word book that stands at a token.
struct noun_found {
    size_t from, to;           // tokens
    const char *noun;          // singular, as it is printed
    const struct thing *thing; // of the rules; NULL when only the word book knows it
    const char *family;        // id; NULL when unknown
    size_t families;           // of the rules that know it
    uint32_t uses;             // of the word book
    bool candidate, gated, part;
};

// "Sound bar one", "fine bar a chip": does "bar" at token `i` except what follows, so that it is no bar?
bool noun_excepts(const struct tokens *tokens, size_t i);

// The longest noun at token `i`; false when there is none.
bool noun_at(const struct note *note, size_t i, struct noun_found *found);

// A name of goods that was written by ear ("chester drawers") at token `i`; NULL when there is none.
const char *sound_alike(const struct note *note, size_t i, size_t *taken);

// Where the words that say what the noun at token `noun` is for ("kitchen dresser") begin; `noun` if none do.
size_t purpose_from(const struct note *note, size_t noun);

// Room for what noun_at() finds in a note of `count` tokens.
struct noun_memo *noun_memos(struct arena *arena, size_t count);

// What stands there is somebody's name, and no book is asked about it from now on.
void words_hide(struct note *note, size_t from, size_t to);

// A phrase of the word book of one of `uses` (bits) at token `i`; how many tokens it takes, 0 if none.
size_t word_at(const struct note *note, size_t i, uint32_t uses, struct word_entry *entry);

// The words of `entry` as the seller has them, where they are English; else as the list prints them.
const char *word_own_name(const struct note *note, const struct word_entry *entry);

// The same of a stuff: what the trade calls otherwise ("ebonite"), and no other spelling or short form of it.
const char *word_trade_name(const struct word_entry *entry);

// correct.c: is the name that ends before token `i` taken back for another: "kettle, no wait, coffee pot",
// "hockey boots... no, football boots"?
bool thing_is_taken_back(const struct note *note, size_t i);
// Is a noun at [from, to) told as not there: "no frame", "hooks not included"?
bool thing_is_lacked(const struct note *note, size_t from, size_t to);

#endif
