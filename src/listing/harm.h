// SPDX-License-Identifier: MIT
// Does a text speak of damage, loss, function or smell?
#ifndef LISTING_HARM_H
#define LISTING_HARM_H

#include <stdbool.h>

// `text` in small letters.
bool harm_is_told(const char *text);

#endif
