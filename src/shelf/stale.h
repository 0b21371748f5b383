// SPDX-License-Identifier: MIT
// Which rows are stale: by age, views, price and category, as asked for. No clock is read.
#ifndef SHELF_STALE_H
#define SHELF_STALE_H

#include <stdbool.h>

#include "text/arena.h"

struct filters {
    long older_than;             // days; -1: any
    long views_under;            // -1: any
    long earned_under;           // percent of the best; -1: any
    const char *category;        // NULL: any
    double price_from, price_to; // -1: any
    long today;                  // day number; -1: not known
    bool day_first;              // of 03/04/2025
};

// Days since 1970-01-01 of a date as stock files write it; false when it is none.
bool stale_day(const char *text, bool day_first, long *day);
// A whole number, with separators or not; false when it is none.
bool stale_whole(const char *text, long *number);
// "$1,234.50", "12,50", "12.50 EUR".
bool stale_price(const char *text, double *price);

struct shelf_facts {
    const char *category;
    long days, views; // -1: not known
    double price;     // -1: not known
};
bool stale_is(struct arena *arena, const struct filters *filters, const struct shelf_facts *facts);
// Is the id one of the share held back? The same for the same seed and id, whatever the other rows are.
bool stale_is_held(const char *seed, const char *id, unsigned hundredths);

#endif
