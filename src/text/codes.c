// SPDX-License-Identifier: MIT
// The table made from the list in codes.h.
#include "text/codes.h"

static const struct code_entry ENTRIES[CODE_COUNT] = {
#define X(symbol, name, level, status) [symbol] = {name, level, status},
    CODES(X)
#undef X
};

const struct code_entry *code_entry(enum code code) {
    return &ENTRIES[code];
}
