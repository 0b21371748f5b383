// SPDX-License-Identifier: MIT
// A fingerprint of a text. Owner: the arena.
#ifndef TEXT_DIGEST_H
#define TEXT_DIGEST_H

#include <stddef.h>

#include "text/arena.h"

// SHA-256 (FIPS 180-4) of the bytes, as 64 lower-case hexadecimal digits.
const char *digest_sha256(struct arena *arena, const char *bytes, size_t size);

#endif
