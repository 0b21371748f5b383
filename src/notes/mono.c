// SPDX-License-Identifier: MIT
// A letter on plate and linen that stands for a name: "mono H".
#include <string.h>

#include "notes/any.h"
#include "notes/value_keep.h"
#include "notes/faults.h"
#include "notes/persons.h"
#include "notes/place.h"
#include "text/order.h"
#include "text/utf8.h"

static bool is_known(const struct record *record, const struct flaw *kind) {
    for (size_t i = 0; i < record->flaw_count; i++)
        if (record->flaws[i].kind == kind) return true;
    return false;
}

static bool ends(const struct note *note, size_t i) {
    return i >= note->tokens.count || note->tokens.at[i].stop != STOP_NONE;
}

// "Engraved R.T.D.": up to four letters and nothing more.
static bool letters_behind(const struct note *note, size_t i) {
    if (i >= note->tokens.count || note->tokens.at[i].kind == TOKEN_SIGN) return false;
    const char *text = note->tokens.text + note->tokens.at[i].from;
    size_t size = note->tokens.at[i].to - note->tokens.at[i].from, letters = 0;
    for (size_t k = 0; k < size; k++) {
        if (text[k] == '.') continue;
        if (text[k] < 'A' || text[k] > 'Z') return false;
        letters++;
    }
    return letters > 0 && letters < 5 &&
           (ends(note, i) || ends(note, i + 1) || ANY(&note->tokens, i + 1, "on", "in", "to", "at", ".") ||
            letters_behind(note, i + 1));
}

// "Red M in one corner", "a white cross stitch R": on linen a letter in a color is one.
static bool is_stitched(const struct note *note, size_t i, const char *family) {
    static const char *const colors[] = {"red",   "blue",   "white",    "black", "green", "yellow",
                                         "brown", "pink",   "gold",     "cream", "gray",  "grey",
                                         "navy",  "stitch", "stitched", "sewn",  "woven", "worked"};
    return text_same(family, "linens") && note->tokens.at[i].stop == STOP_NONE &&
           token_among(&note->tokens, i, colors, sizeof colors / sizeof *colors) &&
           !(i > 0 && ANY(&note->tokens, i - 1, "label", "size", "tag", "of"));
}

// "A big M is embroidered on each", "an R stitched in the corner": the letter before the needle.
static size_t sewn_at(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (tokens->at[i].capitals ? tokens->at[i].to - tokens->at[i].from > 4
                               : !tokens->at[i].capital || tokens->at[i].to - tokens->at[i].from > 1)
        return 0;
    if (tokens->at[i].kind != TOKEN_WORD || tokens->at[i].starts || token_is(tokens, i, "i") ||
        tokens->shouts || i == 0 ||
        !ANY(tokens, i - 1, "a", "an", "big", "large", "small", "little", "fancy", "letter", "letters",
             "initial", "initials", "script", "curly", "old", "white", "red", "blue"))
        return 0;
    size_t at = i + 1;
    while (ANY(tokens, at, "is", "are", "was", "'s", "hand", "machine", "in", "white", "red", "blue") &&
           at < i + 4)
        at++;
    return ANY(tokens, at, "embroidered", "stitched", "sewn", "worked", "woven", "monogrammed", "engraved",
               "appliqued", "crocheted")
               ? at + 1
               : 0;
}

static void tell_sewn(struct note *note, const struct flaw *kind, size_t from, size_t to) {
    struct item_flaw *flaw = note_flaw(note);
    *flaw = (struct item_flaw){.kind = kind, .span = note_span_of(note, from, to)};
    size_t place = place_at(note, to, &flaw->where);
    if (!place && ANY(&note->tokens, to, "on") && ANY(&note->tokens, to + 1, "each", "every", "all") &&
        to + 2 < note->tokens.count && note->tokens.at[to + 2].kind == TOKEN_WORD &&
        !ANY(&note->tokens, to + 2, "one", "of", "piece", "and")) {
        flaw->part = note->tokens.at[to + 2].fold;
        place = 3;
    }
    for (size_t k = from; k < to + place; k++)
        if (note->taken[k] == TAKEN_NOT) note_take(note, k, k + 1, k < to ? TAKEN_FLAW : TAKEN_PART);
    if (ANY(&note->tokens, to - 1, "embroidered", "appliqued", "crocheted"))
        value_keep(note, "technique", note->tokens.at[to - 1].fold, NULL, to - 1, to, SURE_STATED);
    note_reading(note, from, to, "flaw monogram", "a letter worked into it");
}

// The needle by which letters came on it is a technique, too.
static void keep_needle(struct note *note, const struct flaw *kind) {
    for (size_t k = 0; k < note->record->flaw_count; k++) {
        const struct item_flaw *flaw = &note->record->flaws[k];
        for (size_t i = 0; flaw->kind == kind && i < note->tokens.count; i++)
            if (note->tokens.at[i].from >= flaw->span.from && note->tokens.at[i].to <= flaw->span.to &&
                ANY(&note->tokens, i, "embroidered", "appliqued", "crocheted"))
                value_keep(note, "technique", note->tokens.at[i].fold, NULL, i, i + 1, SURE_STATED);
    }
}

void read_mono(struct note *note) {
    static const char *const families[] = {"metalware",   "linens",         "glassware", "jewelry",
                                           "kitchenware", "clocks-watches", "bags",      "other"};
    const struct flaw *kind = ruleset_flaw(note->rules, "monogram");
    const char *family = note->record->family ? note->record->family->rule.id : "";
    bool may = false;
    for (size_t k = 0; k < sizeof families / sizeof *families; k++) may |= text_same(family, families[k]);
    if (!may || !kind) return;
    if (is_known(note->record, kind)) {
        keep_needle(note, kind);
        return;
    }
    for (size_t i = 0; i < note->tokens.count; i++) {
        size_t sewn = note->taken[i] == TAKEN_NOT || note->taken[i] == TAKEN_MARK ? sewn_at(note, i) : 0;
        if (sewn) {
            tell_sewn(note, kind, i, sewn);
            return;
        }
        bool cut = ANY(&note->tokens, i, "engraved", "monogrammed", "initialled", "initialed", "embroidered");
        cut |= ANY(&note->tokens, i, "initial", "initials") || is_stitched(note, i, family);
        if ((!cut && !token_is(&note->tokens, i, "mono")) || (!cut && note->taken[i] != TAKEN_NOT)) continue;
        if (cut && !letters_behind(note, i + 1)) continue;
        if (cut && ANY(&note->tokens, i + 1, "s.s", "s.s.", "ss", "h.m.s", "h.m.s.", "hms", "m.v", "m.v.",
                       "mv", "p.s"))
            continue; // "engraved S.S. MARDOWEN": a ship
        if (i && ANY(&note->tokens, i - 1, "no", "not")) continue;
        size_t to = i + 1;
        while (to < i + 4 && to < note->tokens.count && note->tokens.at[to].kind == TOKEN_WORD &&
               note->tokens.at[to].capital && note->tokens.at[to].to - note->tokens.at[to].from < 4)
            to++;
        if (cut) to = i + 2;
        while (cut && to < i + 4 && to < note->tokens.count && note->tokens.at[to - 1].stop == STOP_NONE &&
               letters_behind(note, to))
            to++; // "initials E W"
        if (!cut && !ends(note, to)) continue;
        const char *where = NULL;
        size_t place = ends(note, to - 1) ? 0 : place_at(note, to, &where);
        struct item_flaw *flaw = note_flaw(note);
        if (!place && cut) where = owner_place_before(note, i); // "the lid is engraved"
        *flaw = (struct item_flaw){.kind = kind,
                                   .where = where && !place ? utf8_fold(note->arena, where) : where,
                                   .span = note_span_of(note, i, to)};
        for (size_t k = i; k < to; k++)
            if (note->taken[k] != TAKEN_VALUE && note->taken[k] != TAKEN_MARK)
                note_take(note, k, k + 1, TAKEN_FLAW);
        if (place) note_take(note, to, to + place, TAKEN_PART);
        note_reading(note, i, to, "flaw monogram", "letters on it");
        return;
    }
}
