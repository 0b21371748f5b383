// SPDX-License-Identifier: MIT
// Of what a word like "brass", "red" or "hinged" is said: of the thing, of a part, or of nothing that the
// record keeps. Private to the room.
#ifndef NOTES_STANDING_H
#define NOTES_STANDING_H

#include "notes/things.h"

enum standing { STANDING_NONE, STANDING_THING, STANDING_PART };

static const uint32_t standing_uses = (1u << USE_MATERIAL) | (1u << USE_COLOR) | (1u << USE_TECHNIQUE) |
                                      (1u << USE_PATTERN) | (1u << USE_FINISH) | (1u << USE_SHAPE) |
                                      (1u << USE_STYLE) | (1u << USE_THEME);

// The value at tokens [from, to); `*of` is the part, in the note's words.
enum standing standing_of(const struct note *note, size_t from, size_t to, const char **of);

// Is a subject at tokens [from, to) depicted on the thing, or is it the thing's form?
bool is_depicted(const struct note *note, size_t from, size_t to);

// Does token `i` name the paint of a color before it ("blue paint faded")?
bool standing_is_paint(const struct note *note, size_t i);

#endif
