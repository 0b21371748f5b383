// SPDX-License-Identifier: MIT
// A mark as it was found, before it is kept. Private to the readers of marks.
#ifndef NOTES_MARK_FOUND_H
#define NOTES_MARK_FOUND_H

#include "notes/note.h"

enum { MARK_WORDS_MOST = 12 };

struct mark_found {
    size_t from, to; // tokens of the text alone
    size_t end;      // behind the place, if one follows
    const char *where;
};

// May the token be of a mark by its own: a capital, a figure or a code?
bool mark_is_text(const struct note *note, size_t i);
// The end of a run of capitals and figures from token `i` on.
size_t mark_proper_run(const struct note *note, size_t i);
// "Corbett Dray, Instrument Makers, no. 4412": the end of a mark that goes on behind a comma, up to a stop.
size_t mark_goes_on(const struct note *note, size_t from, size_t end);
// "(TORWELL K-7) plate on the heel": does what bears it stand at token `i`, and where that is?
bool mark_is_on_bearer(const struct note *note, size_t i);
// "(Torwell) model K-7": the token behind the code, where the word for it stands at token `i`; else `i`.
size_t mark_model_end(const struct note *note, size_t i);
// "Two have (TORWELL MILLS) labels", from token `i` up to `end`: the tokens that it takes, 0 where it is
// none.
size_t mark_find_worn(struct note *note, size_t i, size_t end);
// Keeps each of several behind "labels say"; the tokens from `says` on, 0 where there are not several.
size_t mark_keep_each(struct note *note, size_t says, const struct mark_found *found);
// Keeps it with the words from token `begin` on; false where it is none after all.
bool mark_keep(struct note *note, size_t begin, const struct mark_found *found);
// marks_withheld.c: is it somebody's own writing? Then it is told as that, and kept back.
bool mark_is_withheld(struct note *note, size_t begin, const struct mark_found *found);
// A statement that is nothing but a mark; the tokens that it takes, 0 where there is none.
size_t mark_find_number(struct note *note, size_t i); // mark_numbers.c
size_t mark_find_alone(struct note *note, size_t i);
// "Has an 8 on the back"; mark_numbers.c.
size_t mark_find_borne(struct note *note, size_t i);
size_t mark_find_bearer(struct note *note, size_t i);
// A mark beside a device ("1931 and an arrow stamped on it", "the mark is a D in a diamond"), a figure that
// is raised or pressed into what it stands in, figures of a weight; mark_devices.c.
size_t mark_find_device(struct note *note, size_t i);
// Does what stands before token `i` end with a device and a joint: "anchor and", "a star over"? Where the
// device begins; `i` where it does not.
size_t mark_device_before(const struct note *note, size_t i);
// The token behind "6 x 30" or "3/8 - 7/16", whose first figure is token `i`; i + 1 where it is alone.
size_t mark_figures_end(const struct note *note, size_t i);
// "Made in Sweden on the base", which a capital and a place tell from what the seller says.
size_t mark_find_origin(struct note *note, size_t i);
// Initials between tokens, worked into the thing or put on it later by somebody: kept as what they are.
void mark_add_letters(struct note *note, size_t from, size_t to, const char *where);
// Initials that are engraved or embroidered, where the words do not call them so.
void mark_add_initials(struct note *note, size_t begin, const struct mark_found *found);
// The token behind the piece or part that "on" at token `at` names for the capitals from token `from` on; or
// 0.
size_t mark_on_piece(const struct note *note, size_t from, size_t at);
// "Back has 1268 cast in it": a figure from token `from` to `to` and the verb behind it; the tokens, or 0.
size_t mark_find_cast(struct note *note, size_t from, size_t to, size_t verb);
// "On the eyepiece rim TORWELL" at token `at`: where the capitals stand behind a place that no list has; or
// 0.
size_t mark_place_unlisted(const struct note *note, size_t at, const char **where);
// "Mark on blade F. DUNNICK & SONS" at token `i`: the tokens that it takes, 0 where there is none.
size_t mark_find_placed(struct note *note, size_t i);
// Capitals from token `from` to `to` with a frame and a place behind them ("HOLDEN in a circle on the side").
size_t mark_find_framed(struct note *note, size_t from, size_t to);
// Does a quotation that begins at token `quote` stand behind what bears writing, or a colon that a place or a
// word for writing leads to? Where that is goes to `found`.
bool mark_is_labeled(const struct note *note, size_t quote, struct mark_found *found);
// "t and g woodware pitlock on the back" of a note without capitals: the end of a text that a place closes;
// `i` where none does.
size_t mark_up_to_place(const struct note *note, size_t i);
// Behind "in pencil", "in raised letters", "in white paint"; `at` where that does not stand.
size_t mark_in_letters(const struct note *note, size_t at);
// "34/150": of so many prints, and no fraction that anybody measures with.
bool mark_is_edition(const char *fold);
// "2/3/64", "12.5.1983": kept as written, since the order of day and month is not known.
bool mark_is_day(const char *fold);
bool mark_is_year(const struct tokens *tokens, size_t i);
// "No. 12", "no 12": a number, and no denial.
bool mark_is_no_figure(const struct note *note, size_t i);
// "Worm in the back, says treated": what somebody says at token `says`, and nothing bears.
bool mark_is_hearsay(const struct note *note, size_t says, size_t text, size_t to);
// "The letter f": one letter, and the end of what is said.
bool mark_is_one_letter(const struct note *note, size_t i);
// "Gives the number 3318-B.": a number at token `i` that something shows, up to token `to`.
bool mark_is_told_number(const struct note *note, size_t i, size_t to);
// Where "HALDEN & CRAYE, OPTICIANS" ends, whose name ends before token `to`.
size_t mark_past_comma(const struct note *note, size_t from, size_t to);
// "(OSTERBY) on the label", "(Tolland & Co) on the case" from token `from` up to `to`.
bool mark_on_label(const struct note *note, size_t from, size_t to);
// "(Number 3) punched in the top", "(the number 12) is burnt into": how it was put there, at token `i`.
bool mark_is_put(const struct tokens *tokens, size_t i);
// A capital behind a comma that is a word of English, as hasty sellers write: "label on the back, Gone".
bool mark_is_sloppy(const struct note *note, size_t i);
// "“Crescent Ware” sticker still on": what bears a quotation and stands behind it, before its place.
void mark_past_bearer(const struct note *note, struct mark_found *found);
// What is left of capitals in a sentence that speaks of writing; after all others.
void mark_read_written(struct note *note);

#endif
