// SPDX-License-Identifier: MIT
// strcmp() for searches in lists: most pairs differ in their first two bytes, which needs no call.
#ifndef TEXT_ORDER_H
#define TEXT_ORDER_H

#include <stdbool.h>
#include <stddef.h>
#include <string.h>

static inline int text_order(const char *a, const char *b) {
    int order = (unsigned char)*a - (unsigned char)*b;
    if (order || !*a) return order;
    order = (unsigned char)a[1] - (unsigned char)b[1];
    return order || !a[1] ? order : strcmp(a + 2, b + 2);
}

static inline bool text_same(const char *a, const char *b) {
    return *a == *b && (!*a || (a[1] == b[1] && (!a[1] || !strcmp(a + 2, b + 2))));
}

// Is the word in a list that is sorted by its bytes?
static inline bool text_sorted_has(const char *const *words, size_t count, const char *word) {
    for (size_t from = 0, to = count; from < to;) {
        size_t middle = from + (to - from) / 2;
        int order = text_order(word, words[middle]);
        if (!order) return true;
        if (order < 0)
            to = middle;
        else
            from = middle + 1;
    }
    return false;
}

#endif
