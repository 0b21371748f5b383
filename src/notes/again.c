// SPDX-License-Identifier: MIT
// What was denied and is there all the same, said without the word for the fault: "no rust other than inside
// the lid", "the veneer isn't lifting anywhere but one corner".
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_denied(const struct fault_reader *r, const struct fault_hit *hit) {
    uint16_t stance = fault_stance(r, hit);
    return (stance & (STANCE_DENIED | STANCE_NONE_SEEN)) && !(stance & (STANCE_EXCEPT | STANCE_DOUBLE));
}

// "But a crease on the spine": a word that is a part as well, as a fault of its own.
static bool is_fault_itself(const struct fault_reader *r, size_t i) {
    static const char *const places[] = {"the", "its", "on", "in", "at", "near", "along", "inside", "round"};
    if (i > 0 && token_among(&r->note->tokens, i - 1, places, COUNT(places))) return false;
    for (size_t k = 0; k < r->hit_count; k++)
        if (r->hits[k].from == i && !r->hits[k].near && r->hits[k].kinds[0]->form == FAULT) return true;
    return false;
}

// The first token of what is excepted behind `i`, with no fault of its own; the count of tokens if none.
static size_t excepted_behind(const struct fault_reader *r, size_t i) {
    enum { FAR = 8 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t at = i; at < tokens->count && at < i + FAR; at++) {
        if (r->scope.fault[at] && (!r->part[at] || is_fault_itself(r, at))) break;
        if (r->scope.stance[at] & STANCE_EXCEPT) return at;
        if (tokens->at[at].stop >= STOP_CLAUSE) break;
    }
    return tokens->count;
}

// "One corner at the back", "on the base": a place, and nothing said of it.
static size_t place_alone(const struct fault_reader *r, size_t i, size_t *from) {
    static const char *const skipped[] = {
        "the",    "a",       "one",     "for",    "just",    "right",  "maybe",    "two",   "its",    "spot",
        "bit",    "patch",   "touch",   "little", "small",   "tiny",   "spots",    "place", "some",   "few",
        "couple", "mark",    "there's", "it",     "faint",   "slight", "light",    "very",  "specks", "speck",
        "of",     "tiniest", "bloom",   "film",   "dusting", "trace",  "freckles", "haze"};
    enum { SKIP_MOST = 5, WORDS_MOST = 6 };
    const struct tokens *tokens = &r->note->tokens;
    size_t to = spot_place_at(r, i, from), at = i;
    while (!to && at < i + SKIP_MOST && token_among(tokens, at, skipped, COUNT(skipped)))
        to = spot_place_at(r, ++at, from); // "a spot on the latch"
    if (!to && at < tokens->count && r->part[at] && !is_fault_itself(r, at)) {
        *from = at;
        for (to = at; to < tokens->count && r->part[to] && to < at + WORDS_MOST;) to++;
        size_t ignored, behind = spot_place_at(r, to, &ignored);
        if (behind && tokens->at[to].stop == STOP_NONE) to = behind;
    }
    static const char *const goes_on[] = {"where", "that", "which", "when", "if",
                                          "you",   "and",  "but",   "from"};
    bool ends = to >= tokens->count || tokens->at[to].stop != STOP_NONE ||
                token_among(tokens, to, goes_on, COUNT(goes_on));
    return to && ends ? to : 0;
}

// "No cracks in the lid but one in the base": a part beside the other, and no place of it as a corner is.
static bool is_beside(const struct fault_reader *r, size_t start, size_t from, size_t to) {
    const struct tokens *tokens = &r->note->tokens;
    if (from == 0 || !ANY(tokens, from - 1, "in", "on", "to", "inside", "the")) return false;
    if (!token_is(tokens, start, "but") && !(start > 0 && token_is(tokens, start - 1, "but")) &&
        ANY(tokens, to - 1, "back", "front", "top", "bottom", "inside", "outside", "underside", "rim"))
        return false;
    return !ANY(tokens, to - 1, "corner", "corners", "edge", "edges", "end", "ends", "tip", "side", "sides",
                "middle", "center", "centre", "one", "ones", "other", "place", "places", "spot", "seam",
                "face", "half");
}

// "The veneer isn't lifting anywhere but one corner": not of the whole veneer. What was denied of another
// part stays so.
static void forget_clear(struct record *record, const struct flaw *kind, bool beside, const char *type) {
    size_t kept = 0;
    for (size_t i = 0; i < record->clear_count; i++) {
        const struct item_clear *clear = &record->clear[i];
        const char *place = clear->part ? clear->part : clear->where;
        if (clear->kind != kind || (beside && place && !(type && strstr(type, place))))
            record->clear[kept++] = *clear;
    }
    record->clear_count = kept;
}

// "No breaks anywhere but the lid, where two canes have snapped": told by what follows.
static bool is_told_there(const struct fault_reader *r, const struct fault_hit *hit, size_t to,
                          const char *where) {
    const struct tokens *tokens = &r->note->tokens;
    if (to + 1 >= tokens->count || tokens->at[to].stop != STOP_COMMA ||
        !ANY(tokens, to + 1, "where", "which", "that"))
        return false;
    size_t end = scope_sentence_end(&r->scope, to), last = tokens->at[end < tokens->count ? end : end - 1].to;
    for (size_t i = 0; i < r->note->record->flaw_count; i++) {
        struct item_flaw *flaw = &r->note->record->flaws[i];
        if (flaw->kind != hit->kinds[0] || flaw->span.from < tokens->at[to].from || flaw->span.to > last)
            continue;
        if (!flaw->where) flaw->where = where;
        return true;
    }
    return false;
}

static void read_excepted(struct fault_reader *r) {
    for (size_t h = 0; h < r->hit_count; h++) {
        const struct fault_hit *hit = &r->hits[h];
        if (hit->kinds[0]->form != FAULT || !is_denied(r, hit)) continue;
        size_t start = excepted_behind(r, hit->to), from = 0, to = 0;
        if (start < r->note->tokens.count) to = place_alone(r, start, &from);
        if (!to) continue;
        const char *where = fault_place(r->note, from, to);
        static const char *const anew[] = {"there's", "theres",
                                           "there"};                  // "no cracks in the head but there's
        if (!token_among(&r->note->tokens, start, anew, COUNT(anew))) // one down the foot"
            forget_clear(r->note->record, kind_of_hit(r, hit, where), is_beside(r, start, from, to),
                         r->note->record->type.value);
        if (is_told_there(r, hit, to, where)) continue;
        struct fault_hit there = *hit;
        there.from = start;
        there.to = to;
        fault_tell(r, &there, kind_of_hit(r, hit, where), NULL, where);
    }
}

void read_again(struct fault_reader *r) {
    read_some_still(r);
    read_excepted(r);
}
