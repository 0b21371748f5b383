// SPDX-License-Identifier: MIT
// The name of a measure before a vessel stands for one of it.
#include "notes/any.h"
#include "notes/measures.h"

#include <string.h>

#include "notes/number.h"
#include "notes/unit.h"

#define COUNT(list) (sizeof list / sizeof *list)

// "pint jars", "a half-gallon jug": one of the measure.
void read_named_volumes(struct note *note) {
    static const struct {
        const char *word, *unit;
        double value;
    } names[] = {{"pint", "pt", 1},        {"quart", "qt", 1},          {"gallon", "gal", 1},
                 {"half-pint", "pt", 0.5}, {"half-gallon", "gal", 0.5}, {"litre", "l", 1},
                 {"liter", "l", 1},        {"half-litre", "l", 0.5},    {"half-liter", "l", 0.5}};
    enum { REACH = 3 };
    for (size_t i = 0; i < note->tokens.count; i++) {
        size_t name = 0;
        while (name < COUNT(names) && !token_is(&note->tokens, i, names[name].word)) name++;
        if (name == COUNT(names)) continue;
        bool numbered = i && note->tokens.at[i - 1].stop == STOP_NONE &&
                        (note->tokens.at[i - 1].kind == TOKEN_FIGURE ||
                         ANY(&note->tokens, i - 1, "-", "of", "per", "imperial", "half"));
        size_t number;
        for (size_t back = 1; back <= 2 && back <= i; back++)
            numbered |= note->tokens.at[i - back].stop == STOP_NONE &&
                        number_whole(&note->tokens, i - back, &number) > 0 && number == back;
        if (numbered || note->taken[i] != TAKEN_NOT) continue;
        bool vessel = false;
        for (size_t k = i + 1;
             k <= i + REACH && k < note->tokens.count && note->tokens.at[k].stop == STOP_NONE; k++)
            vessel |= vessel_at(note, k);
        vessel |= ANY(&note->tokens, i + 1, "size", "sized"); // "oil can, pint size"
        if (!vessel) continue;
        struct measurement *measure = note_measurement(note);
        measure->dimension = "capacity";
        measure->figure = figure_of(names[name].value, say_unit(names[name].unit, note->locale), false);
        measure->span = note_span_of(note, i, i + 1);
        note_reading(note, i, i + 1, "measure", "a measure's name before a vessel");
        note_take(note, i, i + 1, TAKEN_MEASURE);
    }
}
