// SPDX-License-Identifier: MIT
// strcmp() for searches in lists: most pairs differ in their first byte, which needs no call.
#ifndef TEXT_ORDER_H
#define TEXT_ORDER_H

#include <stdbool.h>
#include <string.h>

static inline int text_order(const char *a, const char *b) {
    int first = (unsigned char)*a - (unsigned char)*b;
    return first ? first : strcmp(a, b);
}

static inline bool text_same(const char *a, const char *b) {
    return *a == *b && !strcmp(a, b);
}

#endif
