// SPDX-License-Identifier: MIT
// Words that name what a figure measures, before it ("height 9", "pit to pit 22") and behind it ("9 tall"),
// and the parts of a thing that have measures of their own. Private to the room.
#ifndef NOTES_DIMENSION_H
#define NOTES_DIMENSION_H

#include "notes/note.h"

struct dimension {
    const char *name; // "height" …; "square" stands for width and length alike
    const char *of;   // "pit to pit"; NULL: nothing besides
    size_t taken;
    bool noun; // "height", not "tall": may stand before its figure
};

bool dimension_behind(const struct note *note, size_t i, struct dimension *dimension);
// The noun whose last token is right before `i`, with "is", ":" or "of" between; `taken` counts all of them.
bool dimension_before(const struct note *note, size_t i, struct dimension *dimension);
// "HxWxD", "L x W": the dimensions in that order; how many, and the tokens. `before`: ends right before `i`.
size_t dimension_letters(const struct note *note, size_t i, bool before, const char *names[3], size_t *taken);

// "Folds to", "extended it is": the state that words right before token `i` tell of, NULL if none; `taken`
// tokens.
const char *dimension_state_before(const struct note *note, size_t i, size_t *taken);

struct part {
    const char *name;    // singular
    const char *measure; // what a bare figure of it means
};
bool part_at(const struct note *note, size_t i, struct part *part);

#endif
