// SPDX-License-Identifier: MIT
// Of what a word like "brass", "red" or "hinged" is said: of the thing, of a part, or of nothing that the
// record keeps. Private to the room.
#ifndef NOTES_STANDING_H
#define NOTES_STANDING_H

#include "notes/things.h"

enum ahead { AHEAD_NOTHING, AHEAD_THING, AHEAD_PART, AHEAD_FAULT, AHEAD_OTHER };

enum standing { STANDING_NONE, STANDING_THING, STANDING_PART };

static const uint32_t standing_uses = (1u << USE_MATERIAL) | (1u << USE_COLOR) | (1u << USE_TECHNIQUE) |
                                      (1u << USE_PATTERN) | (1u << USE_FINISH) | (1u << USE_SHAPE) |
                                      (1u << USE_STYLE) | (1u << USE_THEME);

// The value at tokens [from, to); `*of` is the part, in the note's words.
enum standing standing_of(const struct note *note, size_t from, size_t to, const char **of);

// What follows from token `to` on, and where it begins.
enum ahead standing_ahead(const struct note *note, size_t to, size_t *end);

static inline bool standing_is_type(const struct note *note, size_t i) {
    return i < note->tokens.count && note->taken[i] == TAKEN_TYPE;
}

static inline bool standing_is_stop(const struct note *note, size_t i) { // or the end
    return i >= note->tokens.count || note->tokens.at[i].stop != STOP_NONE;
}

// Is a subject at tokens [from, to) depicted on the thing, or is it the thing's form? depicted.c
bool is_depicted(const struct note *note, size_t from, size_t to);

// Does token `i` name the paint of a color before it ("blue paint faded")?
bool standing_is_paint(const struct note *note, size_t i);

// Is token `i` a color that something was painted in ("painted green over tin")?
bool standing_painted(const struct note *note, size_t i);

#endif
