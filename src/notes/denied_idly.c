// SPDX-License-Identifier: MIT
// Denials that say nothing of the kind whose words they have: no leak of a pillow is no whole glass, no rot
// of a post no sound cloth, and what is not playable as is was not offered as it is. Beside them what is said
// of a new part.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

// A leak that was not looked for is a crack of glass alone; of a tent or a can it is what it is called.
bool denial_of_leak(const struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind) {
    if (strncmp(r->note->tokens.at[hit->from].fold, "leak", 4) != 0) return false;
    return text_same(kind->rule.id, "partly-working") ||
           ((text_same(kind->rule.id, "crack-through") || text_same(kind->rule.id, "seam-split")) &&
            (!r->note->record->family || !kind_can_be(r, kind, NULL)));
}

// Wood that has no rot is no sound cloth.
static bool is_rot_of_wood(const struct fault_reader *r, const struct fault_hit *hit,
                           const struct flaw *kind) {
    const struct flaw *wood = ruleset_flaw(r->note->rules, "wood-split");
    return wood && text_same(kind->rule.id, "fabric-weak") &&
           !strncmp(r->note->tokens.at[hit->to - 1].fold, "rot", 3) && kind_is_of_material(r, wood, NULL);
}

// "Not playable as is": no condition of sale is denied.
static bool is_as_it_is(const struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind) {
    return text_same(kind->rule.id, "as-is") && hit->from > 0 &&
           ANY(&r->note->tokens, hit->from - 1, "playable", "usable", "useable", "wearable", "safe",
               "workable", "readable", "useful", "rideable", "seaworthy", "good", "fit");
}

// "A worm hole or two, dead I believe": the worm, and nothing that should run.
bool fault_is_dead_worm(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { FAR = 7 };
    if (!token_is(&r->note->tokens, hit->to - 1, "dead")) return false; // "but it seems dead"
    for (size_t h = 0; h < r->hit_count && r->hits[h].to <= hit->from; h++)
        if (hit->from - r->hits[h].to <= FAR && text_same(r->hits[h].kinds[0]->rule.id, "woodworm") &&
            r->hits[h].from >= scope_sentence_start(&r->scope, hit->from))
            return true;
    return false;
}

// "Has had the feet off", "I had the back off": a hand took it off and looked, and nothing broke.
bool fault_is_taken_off(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const articles[] = {"the", "its", "their", "both", "all"};
    const struct tokens *tokens = &r->note->tokens;
    if (hit->from < 2 || !token_is(tokens, hit->to - 1, "off")) return false;
    size_t at = hit->from;
    while (at > 0 && r->part[at - 1]) at--;
    while (at > 0 && token_among(tokens, at - 1, articles, sizeof articles / sizeof *articles)) at--;
    return at > 0 && at < hit->from && token_is(tokens, at - 1, "had");
}

// "Cord's the old cloth kind, not frayed": a cord of its time, which was looked at.
bool fault_is_old_cord(struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const cords[] = {"cord", "cord's", "flex", "lead", "cable"};
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(hit->kinds[0]->rule.id, "cord-frayed") ||
        !(ANY(tokens, hit->from, "old", "cloth") || ANY(tokens, hit->to - 1, "old", "cloth")))
        return false;
    size_t cord = hit->from;
    while (cord < hit->to && !token_among(tokens, cord, cords, sizeof cords / sizeof *cords)) cord++;
    for (size_t i = hit->to, end = scope_sentence_end(&r->scope, hit->to); i < end; i++) {
        bool denied =
            r->scope.stance[i] & (STANCE_DENIED | STANCE_NONE_SEEN) || ANY(tokens, i - 1, "no", "not");
        if (!denied || !ANY(tokens, i, "frayed", "fraying", "cracked", "perished", "damage", "bare"))
            continue;
        const char *part = cord < hit->to ? fault_place(r->note, cord, cord + 1) : NULL;
        clear_add(r, hit->kinds[0], part, NULL, false, i, i + 1);
        return true;
    }
    return false;
}

// "A crack at the ankle, so that one lets in water", "torn, so it leaks": a gap was told, and lets water in.
static bool is_leak_of_gap(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const gaps[] = {"tear",       "rubber-perished", "hole",          "seam-open",
                                       "seam-split", "sole-wear",       "leather-crack", "crack"};
    static const char *const leaks[] = {"hole", "partly-working", "tide-line"};
    enum { BACK = 5 };
    const struct tokens *tokens = &r->note->tokens;
    bool leak = false, kind = false;
    for (size_t k = 0; k < sizeof leaks / sizeof *leaks; k++)
        kind |= text_same(hit->kinds[0]->rule.id, leaks[k]);
    for (size_t i = hit->from; kind && i < hit->to; i++)
        leak |= ANY(tokens, i, "leaks", "leak", "leaked", "lets", "let", "drips", "seeps");
    size_t so = hit->from, least = hit->from > BACK ? hit->from - BACK : 0;
    while (leak && so > least && !ANY(tokens, so, "so", "and")) so--;
    if (!leak || !ANY(tokens, so, "so")) return false;
    bool partly = text_same(hit->kinds[0]->rule.id, "partly-working");
    for (size_t h = 0; h < r->hit_count && r->hits[h].to <= so; h++)
        for (size_t k = 0; k < sizeof gaps / sizeof *gaps; k++)
            if (r->hits[h].from >= scope_sentence_start(&r->scope, so) &&
                text_same(r->hits[h].kinds[0]->rule.id, gaps[k]) &&
                !(partly && text_same(gaps[k], "rubber-perished"))) // "washer perished, so it drips"
                return true;
    return false;
}

// "The seat is split with the foam showing": what shows through what was told.
static bool is_filling_seen(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t with = hit->from;
    while (with > 0 && with + 3 > hit->from && !ANY(tokens, with, "with")) with--;
    if (!text_same(hit->kinds[0]->rule.id, "upholstery-wear") || !ANY(tokens, with, "with") ||
        !ANY(tokens, hit->from, "foam", "stuffing", "padding", "batting", "wadding", "horsehair", "springs",
             "spring", "straw", "webbing"))
        return false;
    size_t start = tokens->at[scope_sentence_start(&r->scope, with)].from;
    for (size_t i = 0; i < r->note->record->flaw_count; i++)
        if (r->note->record->flaws[i].kind == hit->kinds[0] && r->note->record->flaws[i].span.to &&
            r->note->record->flaws[i].span.from >= start)
            return true;
    return false;
}

// "Box lid warped so it doesn't shut": what comes of the fault that was told of the same part.
bool fault_is_its_effect(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const causes[] = {"warped", "dent-bend", "loose-joint"};
    const struct tokens *tokens = &r->note->tokens;
    if (is_leak_of_gap(r, hit) || is_filling_seen(r, hit)) return true;
    if (hit->from < 3 || !ANY(tokens, hit->from, "doesn't", "won't", "don't", "can't", "does") ||
        !ANY(tokens, hit->from - 1, "it", "they") || !ANY(tokens, hit->from - 2, "so") ||
        !text_same(hit->kinds[0]->rule.id, "seized"))
        return false;
    size_t end = tokens->at[hit->from - 3].stop == STOP_COMMA ? hit->from - 3 : hit->from - 2;
    for (size_t h = 0; h < r->hit_count; h++)
        for (size_t k = 0;
             r->hits[h].to <= end && r->hits[h].to + 2 >= end && k < sizeof causes / sizeof *causes; k++)
            if (text_same(r->hits[h].kinds[0]->rule.id, causes[k])) return true;
    return false;
}

bool fault_of_new_part(const struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind) {
    enum { FAR = 6 };
    const struct tokens *tokens = &r->note->tokens;
    if (!text_same(kind->rule.id, "married-set") ||
        !ANY(tokens, hit->from, "doesn't", "don't", "not", "doesnt", "isn't"))
        return false;
    for (size_t h = 0; h < r->hit_count && r->hits[h].to <= hit->from; h++)
        if (hit->from - r->hits[h].to <= FAR &&
            r->hits[h].from >= scope_sentence_start(&r->scope, hit->from) &&
            text_same(r->hits[h].kinds[0]->rule.id, "replaced-part"))
            return true;
    return false;
}

const char *denial_idle(const struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind) {
    if (is_as_it_is(r, hit, kind)) return "no condition of sale";
    if (is_rot_of_wood(r, hit, kind)) return "no cloth";
    return denial_of_leak(r, hit, kind) ? "no vessel" : NULL;
}
