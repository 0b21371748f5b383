// SPDX-License-Identifier: MIT
// Words of a fault that only tell how the thing was made to look. Private to the room.
#ifndef NOTES_PLAIN_LOOKS_H
#define NOTES_PLAIN_LOOKS_H

#include "notes/note.h"

// Is the hit no more than the color of the thing or of a part ("pale blue", "yellow cupboard")?
bool look_is_plain(const struct note *note, const struct phrase_hit *hit);

#endif
