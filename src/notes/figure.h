// SPDX-License-Identifier: MIT
// A figure with its unit, as it stands in a note: "8 1/2 inches", "about 3mm", "half a pint", "5' 10", "3 lbs
// 4", "6 to 8 in", and sizes told by an everyday object ("the size of a dime").
#ifndef NOTES_FIGURE_H
#define NOTES_FIGURE_H

#include "notes/note.h"
#include "notes/number.h"

// What stands at a token: a number, or two that make a range, with or without a unit.
struct amount {
    double value, to;        // `to` above 0: a range
    const struct unit *unit; // NULL: none was said
    bool about;
    bool spelled; // the number was in words, or an article ("a foot")
    bool whole;   // without a fraction
    char letter;  // 'h', 'w', 'd' or 'l' written against it: "9h x 6w"; else 0
    size_t taken;
};

// The amount whose number begins at token `i`, a hedge before it not counted; hedges behind are taken.
bool amount_at(const struct note *note, size_t i, struct amount *amount);
// Tokens of hedging words that end right before token `i`: "just under", "about", "~"; 0 when there are none.
size_t hedge_before(const struct note *note, size_t i);
// Tokens of hedging words that begin at token `i`; those before a figure, or those behind one.
size_t hedge_at(const struct note *note, size_t i, bool behind);
struct figure figure_of(double value, const struct unit *unit, bool about);

// What a fault measures: an amount of length or an object as a ruler (in mm, `about`), hedges taken, that
// begins at `token`.
bool figure_at(const struct note *note, size_t token, struct figure *figure, size_t *taken);

// Has the note a word for something that holds a liquid, so that ounces and pints are volumes?
bool note_has_vessel(const struct note *note, size_t near);
bool vessel_at(const struct note *note, size_t i);

#endif
