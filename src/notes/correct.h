// SPDX-License-Identifier: MIT
// What one figure lends to the next: its unit within the sentence, and all of its meaning where the next one
// corrects it
// ("9 inches tall, no sorry, 8"). Private to the room.
#ifndef NOTES_CORRECT_H
#define NOTES_CORRECT_H

#include "notes/dimension.h"
#include "notes/figure.h"

struct carry {
    double last; // the figure that had the unit
    bool about;  // a hedge stood before the figure that ends at `end`
    size_t end;
    const struct unit *unit;
    const char *dimension;
    size_t until;     // the unit holds before this token
    size_t corrected; // a figure that begins here takes the last one's place; 0: none
};

// Does a correction with another figure follow at token `i`? Where that figure begins.
bool correction_behind(const struct note *note, size_t i, size_t *figure);
// The same for words of correction only: the tokens they take at `i`, 0 where there are none.
size_t correction_at(const struct note *note, size_t i);
void carry_keep(const struct note *note, struct carry *carry, const struct amount *amount,
                const struct dimension *dimension, size_t to);
// Gives unit and dimension to the figure at `i` that corrects the last one.
void carry_into(const struct carry *carry, size_t i, struct amount *amount, struct dimension *dimension);

#endif
