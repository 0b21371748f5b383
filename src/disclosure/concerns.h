// SPDX-License-Identifier: MIT
// Whether a question or a picture of the family is one of this thing: nobody asks for the charger of a hand
// plane. Private to the room. Owner: the arena.
#ifndef DISCLOSURE_CONCERNS_H
#define DISCLOSURE_CONCERNS_H

#include "disclosure/disclosure.h"

// Where `about` has words, one of them stands there, and none of `never`.
bool concerns(const char *words, const struct texts *about, const struct texts *never);

// Burns oil, gas or wax: nobody plugs it in.
bool concerns_flame(const char *words);

#endif
