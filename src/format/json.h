// SPDX-License-Identifier: MIT
// State of one JSON reading, shared by the reader and by what it says about faults. Room-internal.
#ifndef FORMAT_JSON_H
#define FORMAT_JSON_H

#include <stdbool.h>
#include <stddef.h>

#include "text/diag.h"

struct json {
    struct arena *arena;
    const struct source *source;
    struct diags *diags;
    size_t at, end; // byte offsets in the source
    bool failed;
};

#endif
