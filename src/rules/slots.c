// SPDX-License-Identifier: MIT
// Names of the closed list of title slots.
#include <string.h>

#include "rules/model.h"
#include "text/order.h"

static const char *const names[SLOT_COUNT] = {
#define X(symbol, name, help) [symbol] = name,
#include "rules/slots.def"
#undef X
};

const char *slot_name(enum slot slot) {
    return names[slot];
}

bool slot_of_name(const char *name, enum slot *slot) {
    for (int i = 0; i < SLOT_COUNT; i++)
        if (text_same(names[i], name)) {
            *slot = (enum slot)i;
            return true;
        }
    return false;
}
