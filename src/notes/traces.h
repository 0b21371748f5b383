// SPDX-License-Identifier: MIT
// A part with what stands around it: "had a burner once", "the lid I never had", "where the handle was".
// Private to the room.
#ifndef NOTES_TRACES_H
#define NOTES_TRACES_H

#include "notes/faults.h"

// Where a part with its articles, numbers and adjectives stands; empty when equal.
struct part_at {
    size_t lead, from, to; // `lead` is the first of its articles
};

// The part at token `i`: one of the lists or any other noun for goods. False where none stands there.
bool part_named_at(const struct fault_reader *reader, size_t i, struct part_at *part);
// The same, or any word with an article at the end of a statement: for words that only speak of a lack.
bool part_or_word_at(const struct fault_reader *reader, size_t i, struct part_at *part);
// Does the statement end before token `i`, or go on with what says no more of the part?
bool part_ends(const struct tokens *tokens, size_t i);
// The part is missing, whatever governs the words around it; [from, to) is all that says so.
struct item_flaw *part_tell_missing(struct fault_reader *reader, const struct part_at *part, size_t from,
                                    size_t to);
// The tokens [from, to) have said what they say: no fault's word in them is read again.
void part_close(struct fault_reader *reader, size_t from, size_t to);

// traces.c: before any fault is read. Parts that once were there or that somebody else has.
void read_traces(struct fault_reader *reader);
// strays.c: the same where the part comes first, and of who has it.
void read_strays(struct fault_reader *reader);
// subjects.c: parts with a place or a clause between them and what says so.
void read_subjects(struct fault_reader *reader);
// tails.c: in a clause behind the part; and, when the faults are read, "so is the strap".
void read_tails(struct fault_reader *reader);
void read_so_too(struct fault_reader *reader);
// roll.c: lists of them.
void read_roll(struct fault_reader *reader);
// "Lead lining? No, just foil", "leather handles? No, rope ones": the "no" at token `i` is of the stuff.
bool part_is_other_stuff(const struct tokens *tokens, size_t i);
// bystanders.c: of what befell others nothing is told.
void read_bystanders(struct fault_reader *reader);
void read_care(struct fault_reader *reader);  // care.c: nor of what was done to have it clean
void read_meant(struct fault_reader *reader); // turns_meant.c: nor of what is meant so
// turns.c: the tokens [from, to) say nothing of the thing, by what stands at `cue`.
void turn_pass_over(struct fault_reader *reader, size_t from, size_t to, size_t cue);
void read_turns(struct fault_reader *reader); // turns.c: nor of turns of speech and what is only thought of
// tally.c: how many of the parts lack.
void read_tally(struct fault_reader *reader);
// The same file: `count` of the parts lack, of `of` where that is known.
void part_tell_lack(struct fault_reader *reader, const struct part_at *part, int count, int of, size_t from,
                    size_t to);
// The same where each of several pieces has the part, or should have.
void part_tell_lack_each(struct fault_reader *reader, const struct part_at *part, int count, int of,
                         size_t from, size_t to);
// some_have.c: of several pieces some have the part.
void read_some_have(struct fault_reader *reader);
// amounts.c: "missing a couple of screws" at token `i`; the token behind it, 0 where none is said.
size_t amount_lacks(struct fault_reader *reader, size_t i);
// shreds.c: "a length of beading is gone from the front".
void read_shreds(struct fault_reader *reader);
// Before the scope is read: the "missing" of "no missing straps" is the word of a fault.
void amounts_mark(struct fault_reader *reader);
// company.c: what was looked for and there is none; and, when the faults are read, what goes with them.
void read_sought_parts(struct fault_reader *reader);
void read_company(struct fault_reader *reader);
// sets.c: sets that are short, where no piece is named.
void read_sets(struct fault_reader *reader);
bool sets_has_pieces(const struct note *note); // is the thing known by its pieces?
// stand_ins.c: parts that are not the thing's own, and parts that are off and lie beside it.
void read_stand_ins(struct fault_reader *reader);
// renewed.c: parts that no list knows and that are not the first.
void read_renewed(struct fault_reader *reader);
// The same file: the part that the words of one themselves name, "new soles"; NULL if none.
const char *renewed_part_in(struct fault_reader *reader, const struct fault_hit *hit,
                            const struct flaw *kind);
// makeshift.c: where what a part is ends, from token `i` behind its verb on, if it is not its own; 0 if it
// is.
size_t part_made_at(const struct tokens *tokens, size_t i);
size_t part_not_own_at(const struct tokens *tokens,
                       size_t i); // "is a later one", "not the one": how many tokens
// inscribed.c: letters and figures that a hand put on it.
void read_inscribed(struct fault_reader *reader);
// lost_bits.c: pieces that parts have lost.
void read_lost_bits(struct fault_reader *reader);
bool lost_is_broken_off(const struct fault_reader *reader, size_t from, size_t to);
// unread_marks.c: marks that are there and cannot be read.
void read_unread_marks(struct fault_reader *reader);

// absent_kinds.c: where the part at `i` begins with its side, "the left handle".
size_t absent_with_side(const struct fault_reader *reader, size_t i);

// only_said.c: words of a fault in a clause that tells none; what water and sweat leave.
bool fault_is_only_said(const struct fault_reader *reader, const struct fault_hit *hit);
const struct flaw *kind_of_leavings(const struct fault_reader *reader, const struct fault_hit *hit,
                                    const struct flaw *kind);

#endif
