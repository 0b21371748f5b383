// SPDX-License-Identifier: MIT
// A letter on plate and linen that stands for a name: "mono H".
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"

static bool is_known(const struct record *record, const struct flaw *kind) {
    for (size_t i = 0; i < record->flaw_count; i++)
        if (record->flaws[i].kind == kind) return true;
    return false;
}

static bool ends(const struct note *note, size_t i) {
    return i >= note->tokens.count || note->tokens.at[i].stop != STOP_NONE;
}

void read_mono(struct note *note) {
    static const char *const families[] = {"metalware", "linens", "glassware", "jewelry", "kitchenware"};
    const struct flaw *kind = ruleset_flaw(note->rules, "monogram");
    const char *family = note->record->family ? note->record->family->rule.id : "";
    bool may = false;
    for (size_t k = 0; k < sizeof families / sizeof *families; k++) may |= !strcmp(family, families[k]);
    if (!may || !kind || is_known(note->record, kind)) return;
    for (size_t i = 0; i < note->tokens.count; i++) {
        if (!token_is(&note->tokens, i, "mono") || note->taken[i] != TAKEN_NOT) continue;
        if (i && ANY(&note->tokens, i - 1, "no", "not")) continue;
        size_t to = i + 1;
        while (to < i + 4 && to < note->tokens.count && note->tokens.at[to].kind == TOKEN_WORD &&
               note->tokens.at[to].capital && note->tokens.at[to].to - note->tokens.at[to].from < 4)
            to++;
        if (!ends(note, to)) continue;
        struct item_flaw *flaw = note_flaw(note);
        *flaw = (struct item_flaw){.kind = kind, .span = note_span_of(note, i, to)};
        note_take(note, i, to, TAKEN_FLAW);
        note_reading(note, i, to, "flaw monogram", "letters on it");
        return;
    }
}
