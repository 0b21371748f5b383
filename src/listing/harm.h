// SPDX-License-Identifier: MIT
// Does a text that nobody understood speak of damage, loss, function or smell?
#ifndef LISTING_HARM_H
#define LISTING_HARM_H

#include <stdbool.h>
#include <stddef.h>

// `text` in small letters, of which the first `from` bytes were understood: they deny what follows and tell
// nothing.
bool harm_is_told(const char *text, size_t from);
// "No issues": a denial of everything, and of nothing that a rule has a name for.
bool harm_is_motion(const char *text);
bool harm_is_denied(const char *text);
// A sentence in another language may tell of a fault as well.
bool harm_is_foreign(const char *text);

#endif
