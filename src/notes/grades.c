// SPDX-License-Identifier: MIT
// Where a fault stands on its kind's scale by figures: its length, what it is compared with, how many it is.
#include "notes/faults.h"
#include "text/order.h"

#include <string.h>

// By the scale of the kind, where it goes by size.
enum severity degree_of_size(const struct flaw *kind, double mm) {
    static const double slack = 1.02; // "2 inches" is meant where the scale says 50 mm
    double light = slack * kind->most_mm[SEVERITY_LIGHT], moderate = slack * kind->most_mm[SEVERITY_MODERATE];
    enum { PINPOINT = 2 };
    if (light > 0 && mm <= light) return SEVERITY_LIGHT;
    if (light <= 0 && moderate > 0 && mm <= PINPOINT && kind->degree == DEGREE_SIZE) return SEVERITY_LIGHT;
    if (moderate > 0) return mm <= moderate ? SEVERITY_MODERATE : SEVERITY_HEAVY;
    return light > 0 ? SEVERITY_MODERATE : SEVERITY_UNKNOWN;
}

// "Pea", "pea sized": does it stand from `i` on, and nothing behind it but that it is a size?
static bool is_ruler(const struct tokens *tokens, size_t i, size_t to, const char *word) {
    static const char *const sized[] = {"size", "sized", "-"};
    size_t at = i + token_phrase(tokens, i, word);
    if (at == i) return false;
    while (at < to && token_among(tokens, at, sized, sizeof sized / sizeof *sized)) at++;
    return at == to;
}

// "No bigger than a grain of rice": some scales name the thing compared with.
enum severity degree_of_ruler(const struct fault_reader *r, const struct flaw *kind, size_t from, size_t to) {
    for (int degree = SEVERITY_HEAVY; degree > SEVERITY_UNKNOWN; degree--)
        for (size_t k = 0; k < kind->tells[degree].count; k++)
            for (size_t i = from; i < to; i++)
                if (!(i > from &&
                      (token_is(&r->note->tokens, i - 1, "half") ||
                       token_is(&r->note->tokens, i - 1, "quarter"))) && // "half an inch" is no inch
                    is_ruler(&r->note->tokens, i, to, kind->tells[degree].at[k]))
                    return (enum severity)degree;
    return SEVERITY_UNKNOWN;
}

// Three and more are several, where the scale goes by that.
enum severity degree_of_count(const struct flaw *kind, int count) {
    enum { SEVERAL = 3 };
    for (int degree = SEVERITY_HEAVY; degree > SEVERITY_UNKNOWN && count >= SEVERAL; degree--)
        for (size_t k = 0; k < kind->tells[degree].count; k++)
            if (text_same(kind->tells[degree].at[k], "several")) return (enum severity)degree;
    return SEVERITY_UNKNOWN;
}

// "Moth holes, three of them": some scales go by the number itself.
enum severity degree_of_number(const struct flaw *kind, int count) {
    static const char *const names[] = {"", "one", "two", "three", "four", "five", "six", "seven", "eight"};
    if (count <= 0 || (size_t)count >= sizeof names / sizeof *names) return SEVERITY_UNKNOWN;
    for (int degree = SEVERITY_HEAVY; degree > SEVERITY_UNKNOWN; degree--)
        for (size_t k = 0; k < kind->tells[degree].count; k++)
            if (text_same(kind->tells[degree].at[k], names[count])) return (enum severity)degree;
    return SEVERITY_UNKNOWN;
}

bool degree_goes_by_number(const struct flaw *kind) {
    return text_same(kind->rule.id, "moth-holes") || text_same(kind->rule.id, "fleabite");
}

// A dent goes by no length, but "fist sized" is said for a big one.
enum severity degree_of_likeness(const struct flaw *kind, double mm) {
    enum { SPECK = 5, SHORT = 10, FIST = 60 };
    enum severity degree = degree_of_size(kind, mm);
    if (degree || kind->class != CLASS_DAMAGE) return degree;
    if (kind->degree != DEGREE_SIZE) // "rust the size of a saucer"
        return mm <= SHORT ? SEVERITY_LIGHT : mm >= FIST ? SEVERITY_HEAVY : SEVERITY_MODERATE;
    double small = strcmp(kind->rule.id, "crack") ? SPECK : SHORT; // "no longer than a grain of rice"
    return mm <= small ? SEVERITY_LIGHT : mm >= FIST ? SEVERITY_HEAVY : SEVERITY_MODERATE;
}
