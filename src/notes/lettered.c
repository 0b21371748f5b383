// SPDX-License-Identifier: MIT
// Figures that are written into one token with their letter: "W48 x D30 x H29".
#include <stdlib.h>
#include <string.h>

#include "notes/any.h"
#include "notes/measures.h"
#include "notes/number.h"
#include "notes/unit.h"
#include "text/order.h"

enum { SIDES_MOST = 3 };

struct lettered {
    const char *name;
    double value;
};

static bool code_at(const struct note *note, size_t i, struct lettered *side) {
    static const char letters[] = "hwdl";
    static const char *const names[] = {"height", "width", "depth", "length"};
    if (i >= note->tokens.count || note->taken[i] != TAKEN_NOT || note->tokens.at[i].kind != TOKEN_CODE)
        return false;
    const char *fold = note->tokens.at[i].fold, *letter = strchr(letters, fold[0]);
    char *end;
    if (!letter || !*letter || fold[1] < '1' || fold[1] > '9') return false;
    *side = (struct lettered){names[letter - letters], strtod(fold + 1, &end)};
    return !*end && side->value < 400;
}

static void keep(struct note *note, const struct lettered *side, const struct unit *unit, size_t from,
                 size_t to) {
    struct measurement *measure = note_measurement(note);
    measure->dimension = side->name;
    measure->figure = figure_of(side->value, unit, false);
    measure->span = note_span_of(note, from, to);
}

// Two at least, each with another letter: one alone is a model.
static size_t codes_at(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    struct lettered sides[SIDES_MOST];
    size_t count = 0, at = i, end = i;
    while (count < SIDES_MOST && code_at(note, at, &sides[count])) {
        for (size_t k = 0; k < count; k++)
            if (text_same(sides[k].name, sides[count].name)) return 0;
        count++;
        end = at + 1;
        at = end + (ANY(tokens, end, "x", "by", ",", "*", "/") ? 1 : 0);
    }
    if (count < 2) return 0;
    size_t taken = 0;
    struct number none = {.tail = ""};
    const struct unit *unit = unit_at(note, end, &none, &taken);
    bool length = unit && unit->kind && text_same(unit->kind, "mm");
    if (!length && note->locale != LOCALE_US) return 0;
    if (length) end += taken;
    for (size_t k = 0; k < count; k++)
        keep(note, &sides[k], length ? unit : say_unit("in", LOCALE_US), i, end);
    note_reading(note, i, end, "measure",
                 length ? "letters before figures" : "a bare figure is taken as inches");
    note_take(note, i, end, TAKEN_MEASURE);
    return end - i;
}

void read_lettered(struct note *note) {
    for (size_t i = 0; i < note->tokens.count;) {
        size_t taken = note->taken[i] == TAKEN_NOT ? codes_at(note, i) : 0;
        i += taken ? taken : 1;
    }
}
