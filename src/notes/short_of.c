// SPDX-License-Identifier: MIT
// Pieces that were counted and fall short: "748 of 750 pieces", "27 of 28", ", 2 missing" of a puzzle; and a
// letter on plate and linen that stands for a name: "mono H". None has a word of its own for the fault.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/number.h"

static bool is_of_pieces(const struct note *note) { // a thing that is known by its pieces
    const struct record *r = note->record;
    if (r->family && !strcmp(r->family->rule.id, "games-puzzles")) return true;
    static const char *const sets[] = {"set", "service", "puzzle", "cutlery", "flatware", "dominoes", "deck"};
    const char *type = r->type.value ? r->type.value : "", *last = strrchr(type, ' ');
    for (size_t k = 0; k < sizeof sets / sizeof *sets; k++)
        if (!strcmp(last ? last + 1 : type, sets[k])) return true;
    return false;
}

static bool is_known(const struct record *record, const struct flaw *kind) {
    for (size_t i = 0; i < record->flaw_count; i++)
        if (record->flaws[i].kind == kind) return true;
    return false;
}

static bool ends(const struct note *note, size_t i) {
    return i >= note->tokens.count || note->tokens.at[i].stop != STOP_NONE;
}

// "748 of 750 pieces": how many are short; 0 where none is said to be.
static int short_at(const struct note *note, size_t i, int *of, size_t *to) {
    const struct tokens *tokens = &note->tokens;
    size_t a, b;
    int have = number_whole(tokens, i, &a);
    if (!have) return 0;
    size_t at = i + a;
    if (ends(note, i + a + 1) && ANY(tokens, at, "missing", "short", "lost", "gone")) {
        bool apart = i > 0 && tokens->at[i - 1].stop != STOP_NONE;
        *of = 0;
        *to = at + 1;
        return apart && have < 50 ? have : 0;
    }
    if (!token_is(tokens, at, "of")) return 0;
    if (token_is(tokens, at + 1, "the")) at++;
    *of = number_whole(tokens, at + 1, &b);
    if (*of <= have || *of < 8 || *of - have > *of / 2) return 0;
    at += 1 + b;
    if (ANY(tokens, at, "pieces", "pcs", "cards", "tiles", "men", "counters", "dominoes")) at++;
    if (ANY(tokens, at, "there", "here", "present", "left", "counted", "in", "total")) at++;
    *to = at;
    return ends(note, at) ? *of - have : 0;
}

static void read_short(struct note *note) {
    const struct flaw *kind = ruleset_flaw(note->rules, "missing-pieces");
    if (!kind || !is_of_pieces(note) || is_known(note->record, kind)) return;
    for (size_t i = 0; i < note->tokens.count; i++) {
        int of;
        size_t to;
        if (note->taken[i] != TAKEN_NOT || (i && ANY(&note->tokens, i - 1, "of", "page", "side"))) continue;
        int count = short_at(note, i, &of, &to);
        if (!count || !note_free(note, i, to)) continue;
        struct item_flaw *flaw = note_flaw(note);
        *flaw = (struct item_flaw){.kind = kind, .count = count, .of = of, .span = note_span_of(note, i, to)};
        note_take(note, i, to, TAKEN_FLAW);
        note_reading(note, i, to, "flaw missing-pieces", "fewer pieces than belong to it");
        return;
    }
}

static void read_mono(struct note *note) {
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

void read_short_of(struct fault_reader *r) {
    read_short(r->note);
    read_mono(r->note);
}
