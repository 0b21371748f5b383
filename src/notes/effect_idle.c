// SPDX-License-Identifier: MIT
// Words of a fault that only say what comes of another, told before, or of what a part is for: the stuffing
// of a doll shows where its seam is open, a box without a key does not lock, the holes of a board are clean.
#include "notes/any.h"
#include "notes/of_use.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

static bool is_kind(const struct fault_hit *hit, const char *id) {
    return text_same(hit->kinds[0]->rule.id, id);
}

static bool is_family(const struct fault_reader *r, const char *ids) {
    const struct family *family = r->note->record->family;
    return family && kind_has_word(ids, family->rule.id);
}

// Another fault of the sentence, which stands before the hit.
static bool has_before(const struct fault_reader *r, const struct fault_hit *hit) {
    size_t start = scope_sentence_start(&r->scope, hit->from);
    for (size_t i = 0; i < r->hit_count; i++)
        if (r->hits[i].from >= start && r->hits[i].to <= hit->from &&
            !(r->scope.stance[r->hits[i].from] & (STANCE_DENIED | STANCE_NONE_SEEN)))
            return true;
    return false;
}

// "Split seam with the stuffing showing" of a doll or a coat: nothing upholstered.
static bool is_stuffing_seen(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    bool worn = is_kind(hit, "upholstery-wear") && is_family(r, "toys clothing bags linens");
    if (!worn && !is_kind(hit, "hole")) return false;
    for (size_t i = hit->from > 2 && worn ? hit->from - 2 : hit->from; i < hit->to; i++)
        if (ANY(tokens, i, "stuffing", "straw", "filling", "kapok", "sawdust", "wadding", "feathers", "down",
                "batting", "beans"))
            return has_before(r, hit);
    return false;
}

// "No marks on it" of a dress: no maker's are looked for there.
static bool is_clean_of_marks(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return is_kind(hit, "authenticity-unverified") && ANY(tokens, hit->from, "no") &&
           ANY(tokens, hit->from + 1, "marks", "mark") && ANY(tokens, hit->from + 2, "on") &&
           is_family(r, "clothing linens footwear bags books games-puzzles paper media");
}

// "The holes are all clean": holes that are meant to be there.
static bool is_clean_hole(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->to;
    if (!is_kind(hit, "hole") || !ANY(tokens, hit->to - 1, "holes", "hole") ||
        tokens->at[hit->to - 1].stop != STOP_NONE || !ANY(tokens, at, "are", "is"))
        return false;
    at++;
    while (ANY(tokens, at, "all", "still", "nice", "and", "quite", "sharp")) at++;
    return ANY(tokens, at, "clean", "clear", "crisp", "open", "even", "true", "round", "good", "free",
               "fine");
}

// "The hole in the bottom is meant for drainage", "a slit in the side that's there for the cord", "the hole
// in front is where the bird goes in": it has a use.
static bool is_useful_hole(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { PLACE_MOST = 7, FAR = 6 };
    const struct tokens *tokens = &r->note->tokens;
    size_t hole = hit->from;
    while (hole < hit->to && !ANY(tokens, hole, "holes", "hole", "pinhole", "pinholes")) hole++;
    if ((!is_kind(hit, "hole") && !is_kind(hit, "upholstery-wear") && !is_kind(hit, "lining-damage")) ||
        hole == hit->to)
        return false;
    size_t at = hole + 1, end = at + PLACE_MOST;
    while (at < end && at < tokens->count && tokens->at[at - 1].stop == STOP_NONE &&
           !ANY(tokens, at, "is", "are", "that's", "hole's", "they're", "for"))
        at++;
    if (at >= end || at + 1 >= tokens->count || tokens->at[at - 1].stop != STOP_NONE) return false;
    if (token_is(tokens, at, "for") && at > hole + 1) // "a hole in the base for the cord"
        return !ANY(tokens, at + 1, "some", "no", "years", "whatever", "sure", "parts", "sale", "me") &&
               ANY(tokens, at + 1, "the", "a", "its", "hanging", "drainage", "mounting", "air", "wall",
                   "nails", "screws", "pegs", "ventilation", "steam", "wiring");
    bool meant = false;
    for (at++; ANY(tokens, at, "meant", "intended", "there", "only", "just", "all", "made", "drilled",
                   "supposed", "designed", "put", "purposely", "cut", "simply");
         at++)
        meant |= ANY(tokens, at, "meant", "intended", "there", "supposed", "designed");
    if (token_is(tokens, at, "for")) return !ANY(tokens, at + 1, "some", "sure", "me", "you");
    if (meant && token_is(tokens, at, "to")) return true;
    if (meant && ANY(tokens, at, "so", "on") && !token_is(tokens, at + 1, "the")) return true;
    if (!token_is(tokens, at, "where")) return false;
    for (size_t k = at + 1; k < at + FAR && k < tokens->count && tokens->at[k - 1].stop == STOP_NONE; k++)
        if (ANY(tokens, k, "goes", "go", "sits", "sit", "hangs", "hang", "fits", "fit", "screws", "runs",
                "comes", "enters", "plugs", "drains", "hooks", "pours", "ties", "threads", "slides"))
            return true;
    return false;
}

// "Gone in a big patch in the corner": how far it goes, and no mend.
static bool is_extent(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->from;
    if (hit->to != at + 1 || !ANY(tokens, at, "patch", "patches") || at < 2) return false;
    while (at > 0 && ANY(tokens, at - 1, "a", "big", "small", "large", "bare", "long", "wide", "one", "two",
                         "few", "couple", "of", "some", "the", "bad", "good", "sized", "little"))
        at--;
    return at > 0 && at < hit->from && ANY(tokens, at - 1, "in", "over") && !ANY(tokens, at, "the") &&
           tokens->at[at - 1].stop == STOP_NONE;
}

// "No key so it doesn't lock", "clasp is broken so it won't stay on", "so you have to lift it": what comes of
// it.
static bool comes_of_it(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const ids[] = {"clasp-fault", "loose-part", "seized", "partly-working", "not-fitting"};
    static const char *const whom[] = {"it", "they", "you", "that", "she", "he"};
    const struct tokens *tokens = &r->note->tokens;
    bool may = false;
    for (size_t k = 0; k < COUNT(ids); k++) may |= is_kind(hit, ids[k]);
    size_t at = hit->from;
    if (!may || at < 2) return false;
    bool inner = AMONG(tokens, at, whom); // "you have to lift" begins with its subject
    if (!inner && !AMONG(tokens, at - 1, whom)) return false;
    size_t so = inner ? at - 1 : at - 2;
    if (!ANY(tokens, so, "so") || !has_before(r, hit)) return false;
    if (!is_kind(hit, "clasp-fault")) return true;
    for (size_t i = scope_sentence_start(&r->scope, so); i < so; i++)
        if (ANY(tokens, i, "key", "keys")) return true;
    return false;
}

// "All 50 stuck in": cards of an album.
static bool is_stuck_in(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return is_kind(hit, "seized") && ANY(tokens, hit->from, "stuck") &&
           (ANY(tokens, hit->to, "in", "down", "onto") || ANY(tokens, hit->to - 1, "in", "down")) &&
           is_family(r, "paper media books crafts");
}

// "Replaced with one that doesn't match": how it looks, and not what it does.
// A replacement that it tells of stays one.
static bool is_unlike(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = hit->from; i < hit->to; i++)
        if (ANY(tokens, i, "replaced", "swapped", "changed")) return false;
    size_t at = hit->to + ANY(tokens, hit->to, "quite", "really", "exactly", "even");
    return (is_kind(hit, "partly-working") || is_kind(hit, "not-working")) &&
           ANY(tokens, hit->to - 1, "doesn't", "don't", "doesnt", "dont", "didn't") &&
           ANY(tokens, at, "match", "suit", "belong", "resemble");
}

bool use_is_effect(const struct fault_reader *r, const struct fault_hit *hit) {
    return is_stuffing_seen(r, hit) || is_clean_of_marks(r, hit) || is_clean_hole(r, hit) ||
           is_useful_hole(r, hit) || is_extent(r, hit) || comes_of_it(r, hit) || is_stuck_in(r, hit) ||
           is_unlike(r, hit);
}
