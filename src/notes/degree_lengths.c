// SPDX-License-Identifier: MIT
// Lengths that nobody measured: "a couple of feet", "inches long", "maybe half an inch", "an inch or so".
// They place a fault on its kind's scale and are no figure of the record.
#include "notes/any.h"
#include "notes/faults.h"

enum { INCH = 25, FOOT = 305, YARD = 914, CENTI = 10 };

static double unit_at(const struct tokens *tokens, size_t i) {
    if (ANY(tokens, i, "inch", "inches", "ins")) return INCH;
    if (ANY(tokens, i, "foot", "feet", "ft")) return FOOT;
    if (ANY(tokens, i, "yard", "yards")) return YARD;
    if (ANY(tokens, i, "cm", "cms", "centimetre", "centimetres", "centimeter", "centimeters")) return CENTI;
    if (ANY(tokens, i, "mm", "mil", "millimetre", "millimetres", "millimeter", "millimeters")) return 1;
    return 0;
}

// The number before a unit at `i`, in words; 0 where none is there.
static double number_before(const struct tokens *tokens, size_t i) {
    if (i == 0 || tokens->at[i - 1].stop != STOP_NONE) return 0;
    size_t at = i - 1;
    if (ANY(tokens, at, "of", "good")) at -= at > 0 ? 1 : 0;
    if (ANY(tokens, at, "couple")) return 2;
    if (ANY(tokens, at, "few")) return 3;
    if (ANY(tokens, at, "several", "many")) return 5;
    if (ANY(tokens, at, "an", "a", "quarter")) {
        if (at > 0 && ANY(tokens, at - 1, "half")) return 0.5;
        if (ANY(tokens, at, "quarter") ||
            (at > 1 && ANY(tokens, at - 1, "of") && ANY(tokens, at - 2, "quarter")))
            return 0.25;
        return 1;
    }
    if (ANY(tokens, at, "half")) return 0.5;
    int n = degrees_number(tokens, at);
    return n > 0 ? n : 0;
}

double degree_loose_length(const struct tokens *tokens, const struct around *span) {
    for (size_t i = span->from; i < span->to; i++) {
        double unit = unit_at(tokens, i);
        if (unit <= 0) continue;
        if (ANY(tokens, i + 1, "from", "off", "below", "above", "up", "away", "in", "inside", "under",
                "behind", "square", "and"))
            continue;
        double number = number_before(tokens, i);
        bool long_ones =
            number <= 0 && ANY(tokens, i, "inches", "feet") && ANY(tokens, i + 1, "long", "of", "across");
        if (long_ones) number = 4;
        if (number <= 0) continue;
        size_t lead = i > 1 ? i - 2 : 0; // "on a foot": a part
        if (ANY(tokens, i, "foot") && ANY(tokens, lead, "on", "at", "near", "of", "in", "to") && number == 1)
            continue;
        if (token_is(tokens, i + 1, "or") && ANY(tokens, i + 2, "two")) number += 0.5;
        return number * unit;
    }
    return 0;
}
