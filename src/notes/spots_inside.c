// SPDX-License-Identifier: MIT
// A part or a place that the words of the fault hold themselves: "lid sticks", "gold on the rim is worn".
#include "notes/spots_inside.h"

#include "notes/any.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_whole(const struct fault_reader *r, const struct fault_hit *hit) {
    for (size_t i = 0; i < hit->kind_count; i++)
        if (kind_is_whole(r, hit->kinds[i], hit)) return true;
    return false;
}

bool spot_place_inside(const struct fault_reader *r, const struct fault_hit *hit, size_t *from, size_t *to) {
    if (is_whole(r, hit) || text_same(hit->kinds[0]->rule.id, "wear-unspecified"))
        return false; // "round the block", "rough round the edges": of the whole
    for (size_t i = hit->from + 1; i < hit->to; i++) {
        if (!r->part[i] || !spot_in_phrase(r, hit, i) || mends_with(hit, &r->note->tokens, i)) continue;
        if (hit->kinds[0]->class == CLASS_REPAIR && i > 1 && ANY(&r->note->tokens, i - 2, "into")) continue;
        *from = i;
        for (*to = i + 1; *to < hit->to && r->part[*to];) ++*to;
        return true;
    }
    size_t end = hit->near ? hit->to + 1 : hit->to;  // a pattern may end in it: "paint on the bib"
    for (size_t i = hit->from + 1; i + 3 < end; i++) // "paint on the hat worn": of no list
        if (ANY(&r->note->tokens, i, "on", "at", "over", "round", "around") &&
            ANY(&r->note->tokens, i + 1, "the", "its", "his", "her") &&
            !ANY(&r->note->tokens, i + 2, "spot", "spots", "place", "area", "damage", "lot", "whole", "crack",
                 "chip", "bare", "worn", "years") &&
            r->note->taken[i + 2] == TAKEN_NOT) {
            *from = i + 2;
            *to = i + 3;
            return true;
        }
    return false;
}

// A part word inside the phrase of the fault itself: "lid sticks".
bool spot_part_inside(const struct fault_reader *r, const struct fault_hit *hit, size_t *from, size_t *to) {
    static const char *const none[] = {"surface", "ring",  "mark",   "marks", "spot",
                                       "spots",   "stain", "stains", "patch", "patches"};
    bool state = hit->kinds[0]->form == STATE && (hit->near || !r->part[hit->from]); // "knob isn't original"
    if (hit->to - hit->from < 2 || state || is_whole(r, hit) ||
        text_same(hit->kinds[0]->rule.id, "ring-mark") || text_same(hit->kinds[0]->rule.id, "utensil-marks"))
        return false; // "cup rings", "spoon marks"
    const char *lacks = hit->kinds[0]->form == ABSENCE ? hit->kinds[0]->part : NULL;
    for (size_t i = hit->from; lacks && i < hit->to; i++) // "old lock, no key": the key
        if (text_same(r->note->tokens.at[i].one, lacks)) return *from = i, *to = i + 1, true;
    for (size_t i = hit->from; i < hit->to; i++) {
        if (state && (hit->near || hit->kinds[0]->class != CLASS_REPAIR || i == hit->from ||
                      !token_is(&r->note->tokens, i - 1, "the")))
            continue; // but "ground the rim"
        if (!(r->part[i] || (i == hit->from && spot_is_lettering(r, hit, i))) || spot_in_phrase(r, hit, i) ||
            mends_with(hit, &r->note->tokens, i) || token_among(&r->note->tokens, i, none, COUNT(none)) ||
            token_phrase(&r->note->tokens, i, "all over") ||
            (i > hit->from && ANY(&r->note->tokens, i - 1, "your", "my"))) // "turns in your hand"
            continue;
        *from = i;
        for (*to = i + 1; *to < hit->to && r->part[*to];) ++*to;
        return true;
    }
    return false;
}

void spot_part_of_phrase(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    size_t from, to;
    if (spot->part_to > spot->part_from || spot->where_to == spot->where_from || spot->where_from < hit->to)
        return;
    const struct tokens *tokens = &r->note->tokens;
    if (!spot_place_inside(r, hit, &from, &to) || from < 2) return;
    bool of_it = ANY(tokens, from - 1, "the", "its", "each", "one", "both") &&
                 ANY(tokens, from - 2, "on", "of", "at", "round", "around", "along");
    if (!of_it) return; // "caught on a hook near the hem"
    spot->part_from = from;
    spot->part_to = to;
}
