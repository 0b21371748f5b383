// SPDX-License-Identifier: MIT
// What the readers of pieces share. Private to the room.
#ifndef NOTES_COUNTS_H
#define NOTES_COUNTS_H

#include "notes/note.h"

struct tally {
    int count;
    size_t taken;     // tokens of the count's own words
    const char *noun; // singular of what is counted; NULL if not said
    bool about;       // "a dozen or so": kept as a size in words, for no number was counted
};

// The number at token `i`, dozens and corrections with it; 0 where there is none.
int count_number(const struct note *note, size_t i, size_t *taken);
// The plural that a number before token `i` counts; 0 where there is none.
size_t count_plural(const struct note *note, size_t i);
// "Minus one", ", I mean four" behind a number: the number it becomes, and how many tokens say so; or 0.
int count_changed(const struct note *note, size_t at, int count, size_t *taken);
bool count_is_stopper(const struct note *note, size_t i); // no word of what is counted goes on here
// counts_head.c
bool count_is_head(const struct note *note, size_t i);      // does the note begin with what it counts here?
bool count_is_numbering(const struct note *note, size_t i); // "box 4": it numbers
size_t count_look(const struct note *note, size_t i); // "round", "dark blue": how many tokens; 0 if none
bool count_head_at(const struct note *note, size_t i, struct tally *tally);
// "Ten 16 inch plates", at the token behind the ten: how many tokens of a size or an age stand between; or 0.
size_t count_sized_by(const struct tokens *tokens, size_t i);
bool count_is_first_sentence(const struct note *note, size_t i);
// "Pair of lamps", "a pair" at token `i`.
// Does a later sentence count what the thing is not called: "hamper. Set of 4 plates"?
bool count_is_of_other(const struct note *note, size_t i, size_t noun);
void count_keep_pieces(struct note *note, size_t i, size_t to, int count);
// Is what was counted at tokens `i` to `to` in one box of a game? Then it is kept as the size of that.
bool count_is_in_box(struct note *note, size_t i, size_t to, int count);
bool count_pair_at(const struct note *note, size_t i, struct tally *tally);
// Numbers that are told and stand before no plural: "eight in all", "qty 6", "I make it nine", "a trio of
// jugs".
// counts_told.c: does the note begin with a plural, before token `i`?
bool count_begins_with_many(const struct note *note, size_t i);
bool count_behind_at(const struct note *note, size_t i, struct tally *tally); // counts_behind.c
bool count_told_at(const struct note *note, size_t i, struct tally *tally);
// "(Six piece) sweep rod set": does "set" end the name that begins at token `i`?
bool count_set_behind(const struct note *note, size_t i);
// counts_sums.c: what is told of the count again: "nine pieces all told", "one broke, so five left", "I said
// six but there's seven". `before` is what was counted.
bool count_again_at(const struct note *note, size_t i, int before, struct tally *tally);
// counts_groups.c: "eight round and six square", "one red two blue", "two sisters": behind the plural that
// the note begins with.
bool count_groups_at(const struct note *note, size_t i, struct tally *tally);
// counts_one.c: that there is one: "just the one", "four parts but one jug".
bool count_one_at(const struct note *note, size_t i, struct tally *tally);
// counts_goods.c: by what the goods are: "yarn, six skeins", "postcards, 9 of the same view".
bool count_goods_at(const struct note *note, size_t i, struct tally *tally);
// "Salt and pepper shakers": two by their name; the token behind it, 0 where the note begins with no such.
size_t count_two_by_name(const struct note *note);
// "3 of 4" at token `i`: what is missing is told by the same words.
bool count_is_share(const struct note *note, size_t i);

// "And the label says 48": how many tokens from `i` on; 0 where it says none or another number.
size_t company_label_says(const struct tokens *tokens, size_t i, int number);

#endif
