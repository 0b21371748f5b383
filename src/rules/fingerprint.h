// SPDX-License-Identifier: MIT
// Which rules were they? The same for the same files with the same names, wherever they lie.
#ifndef RULES_FINGERPRINT_H
#define RULES_FINGERPRINT_H

#include "text/diag.h"

// Twelve hexadecimal digits over all files of rules of these folders, in order. NULL with a message when one
// cannot be read.
const char *rules_fingerprint(struct arena *arena, const char *const *folders, size_t count,
                              struct diags *diags);

#endif
