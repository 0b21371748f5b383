// SPDX-License-Identifier: MIT
// Numbers as text, in JSON grammar whatever the locale of the program. Room-internal.
#ifndef FORMAT_NUMBER_H
#define FORMAT_NUMBER_H

#include <stddef.h>

// Bytes of the longest JSON number that `text` begins with; 0 when there is none.
size_t number_length(const char *text, size_t size);

#endif
