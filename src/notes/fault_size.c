// SPDX-License-Identifier: MIT
// The size of a fault: a figure beside it that no other words have taken.
#include "notes/fault_size.h"

#include <string.h>

#include "notes/figure.h"
#include "text/order.h"

void fault_measure(struct fault_reader *r, const struct fault_hit *hit, struct item_flaw *flaw,
                   enum severity told) {
    struct figure figure;
    size_t taken;
    enum { NEAR = 5, BEHIND = 14 };
    static const char *const runs[] = {"runs", "goes", "running",
                                       "going"}; // "a hairline, runs about 2 inches"
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = hit->from > NEAR ? hit->from - NEAR : 0; i < hit->to + BEHIND && i < tokens->count; i++) {
        if (i >= hit->from && i < hit->to) continue;
        // `Vase 10" chipped rim`: a size before what was done to it is the thing's.
        const char *word = tokens->at[hit->from].fold;
        size_t letters = strlen(word);
        if (i < hit->from && letters > 3 && text_same(word + letters - 2, "ed")) continue;
        bool own = i < hit->from && i > 0 && tokens->at[i - 1].stop == STOP_COMMA;
        // "Hairline on the arm, 7 1/4 in": so much, said by itself, is the thing's own size.
        bool alone = i > hit->to && tokens->at[i - 1].stop == STOP_COMMA;
        bool apart = false;
        size_t a = i < hit->from ? i : hit->to, b = i < hit->from ? hit->from : i;
        for (size_t k = a; k < b; k++)
            apart |= tokens->at[k].stop >= STOP_CLAUSE ||
                     (k != i && r->scope.fault[k] && !r->part[k] &&
                      !(i > hit->from && token_among(tokens, k, runs, sizeof runs / sizeof *runs)));
        if (apart || !note_free(r->note, i, i + 1) || !figure_at(r->note, i, &figure, &taken)) continue;
        if (!figure.unit || !figure.unit->kind || !text_same(figure.unit->kind, "mm")) continue;
        static const char *const aways[] = {"from", "off", "below", "above", "away", "in"};
        if (i + taken < hit->to + BEHIND &&
            token_among(tokens, i + taken, aways, sizeof aways / sizeof *aways) &&
            (!token_is(tokens, i + taken, "in") || token_is(tokens, i + taken + 1, "from")) &&
            !token_is(tokens, i + taken + 1, "diameter") && !token_is(tokens, i + taken + 1, "length"))
            continue;            // "an inch from the rim" is where
        size_t next = i + taken; // "foxing at the edges, 3 inch tear": of the fault that follows
        if (i >= hit->to && next < tokens->count && r->scope.fault[next] && !r->part[next]) continue;
        enum { WHOLE_MM = 120 };
        if (own && (next < hit->from || (next == hit->from && r->part[next])) && figure.base > WHOLE_MM &&
            !r->note->record->measurement_count)
            return; // "beads, 24 in. clasp does not hold"
        alone = alone && (i + taken >= tokens->count || tokens->at[i + taken].stop != STOP_NONE);
        if (alone && figure.base > WHOLE_MM && !r->note->record->measurement_count) return;
        enum { PALM_MM = 25 }; // "brooch, small chip to the edge, 2 in": the brooch's, at the end of the note
        if (alone && next + 1 >= tokens->count && figure.base > PALM_MM &&
            !r->note->record->measurement_count)
            return;
        flaw->has_size = true;
        flaw->size = figure;
        if (!told && !flaw->severity && figure.about)
            flaw->severity = degree_of_ruler(r, flaw->kind, i, i + taken);
        bool by_place = text_same(flaw->kind->rule.id, "hairline") ||
                        text_same(flaw->kind->rule.id, "chip"); // 2 mm, on the rim
        enum severity run = !told && by_place ? degree_on_scale(r, hit, flaw->kind) : SEVERITY_UNKNOWN;
        if (run > degree_of_size(flaw->kind, figure.base) && run > flaw->severity)
            flaw->severity = run; // short, but from the rim
        note_take(r->note, i, i + taken, TAKEN_FLAW);
        return;
    }
}

// Veneer that lifts along an edge is all there, and glued down again: its length weighs less than a loss.
double fault_extent(const struct fault_reader *r, const struct fault_hit *hit, const struct item_flaw *flaw) {
    static const char *const lifts[] = {"lifting", "lifted", "lifts", "lift", "rising", "risen"};
    static const char *const rims[] = {"edge", "corner", "front", "bottom", "side", "end", "edges"};
    enum { LESS = 6 };
    const struct tokens *tokens = &r->note->tokens;
    bool lift = false, rim = false;
    if (strcmp(flaw->kind->rule.id, "veneer-damage") != 0) return flaw->size.base;
    for (size_t i = hit->from; i < hit->to; i++)
        lift |= token_among(tokens, i, lifts, sizeof lifts / sizeof *lifts);
    for (size_t i = hit->to; i < tokens->count && tokens->at[i].stop < STOP_CLAUSE; i++)
        rim |= token_among(tokens, i, rims, sizeof rims / sizeof *rims);
    return lift && rim ? flaw->size.base / LESS : flaw->size.base;
}
