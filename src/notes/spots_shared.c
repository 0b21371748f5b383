// SPDX-License-Identifier: MIT
// Places and parts that a fault has from another: from the one it is listed with, from what it is contrasted
// with, from the one that it mends.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/spots_shared.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// "Tear on the cuff, mended", "rip in the door neatly sewn up": what was done is said of the damage before
// it.
static bool is_of_damage(const struct fault_reader *r, const struct fault_hit *damage,
                         const struct fault_hit *hit) {
    static const char *const ids[] = {"darned-patched", "glued-repair", "tape-repair", "filled-overpainted"};
    static const char *const done[] = {"sewn", "stuck", "darn", "held"};
    enum { FAR = 9 };
    const struct tokens *tokens = &r->note->tokens;
    const char *word = tokens->at[hit->from].fold;
    size_t size = strlen(word);
    const char *last = tokens->at[hit->to - 1].fold; // "a crack in one arm, been brazed"
    size_t length = strlen(last);
    bool participle =
        (size > 4 && text_same(word + size - 2, "ed")) || token_among(tokens, hit->from, done, COUNT(done)) ||
        (ANY(tokens, hit->from, "been", "since", "now") && length > 4 && text_same(last + length - 2, "ed"));
    bool mend = false;
    for (size_t k = 0; k < COUNT(ids); k++) mend |= text_same(hit->kinds[0]->rule.id, ids[k]);
    if (!participle || !mend || damage->kinds[0]->class != CLASS_DAMAGE || damage->to > hit->from ||
        hit->from - damage->to > FAR)
        return false;
    for (size_t i = damage->to; i < hit->from; i++)
        if (tokens->at[i].stop > STOP_COMMA) return false;
    return true;
}

// "That somebody sewed", "which my uncle glued": what stands from `i` on tells who mended it.
static bool who_mended(const struct fault_reader *r, size_t i, size_t to) {
    const struct tokens *tokens = &r->note->tokens;
    for (; i < to && tokens->at[i].stop == STOP_NONE; i++)
        if (ANY(tokens, i, "that", "which") && i < to) return true;
    return false;
}

// "A rip at the elbow that somebody mended": the repair is where the damage was.
void spot_of_damage(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    size_t start = scope_sentence_start(&r->scope, hit->from);
    bool next = true; // no fault stands between
    for (size_t k = r->hit_count; k-- > 0;) {
        const struct fault_hit *damage = &r->hits[k];
        if (damage->from >= hit->from) continue;
        if (damage->from < start) return;
        bool past = (r->scope.stance[damage->from] & STANCE_PAST) || who_mended(r, damage->to, hit->from) ||
                    (next && is_of_damage(r, damage, hit));
        next = false;
        if (!past || damage->kinds[0]->class == CLASS_REPAIR) continue;
        *spot = spot_of_hit(r, damage);
        return;
    }
}

// "Cards foxed, one torn": one of the cards.
bool spot_take_same(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    const struct tokens *tokens = &r->note->tokens;
    if (hit->from < 3 || tokens->at[hit->from - 2].stop != STOP_COMMA ||
        !degrees_number(tokens, hit->from - 1))
        return false;
    for (size_t k = 0; k < r->hit_count; k++) {
        if (r->hits[k].to != hit->from - 2) continue;
        struct spot before = spot_found(r, &r->hits[k]);
        const struct token *last = before.part_to > before.part_from ? &tokens->at[before.part_to - 1] : NULL;
        if (!last || last->one == last->fold) continue;
        spot->part_from = before.part_from;
        spot->part_to = before.part_to;
        return true;
    }
    return false;
}

// "The switch is cracked and doesn't work", "latch is bent and won't close": what does not do what it should
// is what the fault before is said of.
bool spot_joined_before(const struct fault_reader *r, size_t i, size_t *from, size_t *to) {
    static const char *const nots[] = {"doesn't", "won't", "don't", "doesnt", "wont",   "dont",    "will",
                                       "does",    "can't", "never", "cannot", "didn't", "wouldn't"};
    const struct tokens *tokens = &r->note->tokens;
    if (i < 2 || !token_is(tokens, i - 1, "and") || !token_among(tokens, i, nots, COUNT(nots))) return false;
    for (size_t k = 0; k < r->hit_count; k++) {
        if (r->hits[k].to != i - 1 || tokens->at[i - 2].stop > STOP_COMMA) continue;
        struct spot before = spot_found(r, &r->hits[k]);
        bool works = before.part_to > before.part_from && function_kind(r, before.part_to - 1) &&
                     r->note->taken[before.part_to - 1] != TAKEN_TYPE;
        if (!works) return false;
        *from = before.part_from;
        *to = before.part_to;
        return true;
    }
    return false;
}

// Before token `i` a figure by the way, ", three inches,": the token that its first comma is.
static size_t before_figure(const struct tokens *tokens, size_t i) {
    enum { FIGURE_MOST = 5 };
    size_t at = i;
    if (at < 3 || tokens->at[at - 1].stop != STOP_COMMA) return i;
    for (at--; at > 1 && i - at < FIGURE_MOST && tokens->at[at - 1].stop == STOP_NONE; at--) continue;
    bool figure = tokens->at[at].kind == TOKEN_FIGURE || degrees_number(tokens, at) ||
                  ANY(tokens, at, "about", "maybe", "some", "a", "roughly");
    return figure && tokens->at[at - 1].stop == STOP_COMMA ? at - 1 : i;
}

// "Blades are bent and have some rust", "the lid is scratched and has a dent": of what the one before is.
static bool share_by_verb(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    static const char *const verbs[] = {"has", "have", "had", "got", "shows", "show", "is", "are"};
    static const char *const between[] = {
        "a",     "an",    "some",    "the",  "few",    "light",   "also", "little", "bit",
        "of",    "small", "surface", "big",  "slight", "several", "lots", "heavy",  "tiny",
        "two",   "three", "plenty",  "bad",  "couple", "shallow", "deep", "fine",   "long",
        "short", "faint", "minor",   "dark", "large",  "one",     "four", "nasty",  "old"};
    enum { PLACE_LONGEST = 6 };
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->from;
    while (at > 2 && hit->from - at < 4 && tokens->at[at - 1].stop == STOP_NONE &&
           (token_among(tokens, at - 1, between, COUNT(between)) || degree_stem(tokens, at - 1) ||
            ANY(tokens, at - 1, "very", "rather", "quite")))
        at--;
    if (at == hit->from && token_among(tokens, at, verbs, COUNT(verbs))) at++; // "and [has come loose]"
    if (at < 3 || !token_among(tokens, at - 1, verbs, COUNT(verbs)) || !token_is(tokens, at - 2, "and"))
        return false;
    size_t end = before_figure(tokens, at - 2); // "torn near the pocket, three inches, and has a stain"
    for (size_t k = 0; k < r->hit_count; k++) {
        if (r->hits[k].to > end || r->hits[k].to + PLACE_LONGEST < end) continue;
        struct spot before = spot_found(r, &r->hits[k]);
        bool next = r->hits[k].to == end || // "is loose at the base and has a bend"
                    (before.where_from >= r->hits[k].to && before.where_to == end);
        if (!next) continue;
        bool part = before.part_to > before.part_from && r->note->taken[before.part_from] != TAKEN_TYPE;
        bool headed = before.where_to > before.where_from && before.where_to <= r->hits[k].from;
        if (!part && !headed) return false;
        if (part) spot->part_from = before.part_from, spot->part_to = before.part_to;
        if (!part) // "leather on the slope is scuffed and has a splash"
            spot->where_from = before.where_from, spot->where_to = before.where_to;
        return true;
    }
    return false;
}

// An end or an edge is of the part that is spoken of; a side or a rim only of a part that has a body.
static bool is_place_of_part(const struct fault_reader *r, const struct fault_hit *hit,
                             const struct spot *part) {
    static const char *const ends[] = {"edge",   "edges",  "end", "ends", "corner", "corners", "top",
                                       "middle", "center", "tip", "join", "seam",   "joint",   "centre"};
    static const char *const bodies[] = {"shade",  "globe", "lid",  "cover", "stopper", "chimney", "tank",
                                         "font",   "fount", "case", "dial",  "drawer",  "door",    "glass",
                                         "saucer", "tray",  "bowl", "frame", "shaft",   "blade"};
    static const char *const sides[] = {"side",   "sides", "bottom", "rim",      "base",
                                        "inside", "back",  "lip",    "underside"};
    const struct tokens *tokens = &r->note->tokens;
    size_t from = 0, to = spot_place_of(r, hit, &from);
    if (!to || from < hit->to) return !to;
    for (size_t i = to; i > from && tokens->at[i - 1].kind == TOKEN_WORD; i--) {
        if (token_among(tokens, i - 1, ends, COUNT(ends))) return true;
        if (token_among(tokens, i - 1, sides, COUNT(sides)))
            return token_among(tokens, part->part_to - 1, bodies, COUNT(bodies));
    }
    return false;
}

// "The shade has no chips but there's a crack at the top": of the shade too.
static bool share_by_denied(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    static const char *const leads[] = {
        "a",    "an",   "some",  "the",   "few",    "light", "also",    "little", "bit",
        "of",   "one",  "small", "two",   "slight", "tiny",  "there's", "there",  "theres",
        "is",   "are",  "it",    "has",   "have",   "does",  "it's",    "got",    "they",
        "just", "only", "three", "minor", "faint",  "old",   "big",     "long",   "short"};
    enum { LEADS_MOST = 6, FAR = 4 };
    static const uint16_t denied = STANCE_DENIED | STANCE_NONE_SEEN;
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->from;
    while (at > 1 && hit->from - at < LEADS_MOST && tokens->at[at - 1].stop == STOP_NONE &&
           token_among(tokens, at - 1, leads, COUNT(leads)))
        at--;
    if (at < 3 || !token_is(tokens, at - 1, "but") || r->scope.stance[hit->from] & denied) return false;
    for (size_t k = 0; k < r->hit_count; k++) {
        const struct fault_hit *first = &r->hits[k];
        if (first->to > at - 1 || first->to + FAR < at || !(r->scope.stance[first->from] & denied)) continue;
        struct spot before = spot_found(r, first);
        if (before.part_to == before.part_from || before.part_to > first->from ||
            r->note->taken[before.part_from] == TAKEN_TYPE || !is_place_of_part(r, hit, &before))
            return false;
        spot->part_from = before.part_from;
        spot->part_to = before.part_to;
        return true;
    }
    return false;
}

// "The dasher has one paddle broken off", "head has two teeth bent": of what is counted, whatever it is.
bool spot_of_owned(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    static const char *const states[] = {"broken", "snapped", "bent",  "cracked",
                                         "split",  "chipped", "loose", "missing"};
    const struct tokens *tokens = &r->note->tokens;
    size_t state = hit->from;
    while (state < hit->to && !token_among(tokens, state, states, COUNT(states))) state++;
    if (state == hit->to || state > hit->from + 1 || state < 3 || hit->kinds[0]->form == ABSENCE)
        return false;
    static const char *const owners[] = {"the", "his", "her", "its", "their", "a", "an", "one"};
    size_t part = state - 1, first = part;
    if (ANY(tokens, first - 1, "a", "the", "one", "his", "its", "her") && first > 4 &&
        token_is(tokens, first - 2, "of"))
        first -= 3; // "with the tip of a wing broken off"
    bool whose = token_among(tokens, first - 1, owners, COUNT(owners)) && first > 1 &&
                 ANY(tokens, first - 2, "has", "have", "had", "with") && !r->part[part] &&
                 !r->scope.fault[part] && !ANY(tokens, state, "split"); // "has the cross broken off his head"
    bool counted = degrees_number(tokens, part - 1) && ANY(tokens, part - 2, "has", "have", "had");
    if ((!counted && !whose && first == part) ||
        (first < part && !ANY(tokens, first - 2, "has", "have", "with")) ||
        tokens->at[part].kind != TOKEN_WORD || tokens->at[part].stop != STOP_NONE ||
        ANY(tokens, part, "is", "are", "been", "it", "got"))
        return false;
    spot->part_from = first;
    spot->part_to = part + 1;
    return true;
}

// "Blade still cuts but there are two nicks in it", "handle turns on the shank, needs tightening": of the
// part that the sentence begins with, by a pronoun or by no word at all.
bool spot_of_first(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    static const char *const ins[] = {"in", "on", "to", "through"}, *const verbs[] = {"needs", "wants",
                                                                                      "wobbles", "rattles"};
    const struct tokens *tokens = &r->note->tokens;
    bool back = token_among(tokens, hit->to, ins, COUNT(ins)) && token_is(tokens, hit->to + 1, "it") &&
                tokens->at[hit->to - 1].stop == STOP_NONE;
    bool bare = hit->from > 0 && tokens->at[hit->from - 1].stop == STOP_COMMA &&
                token_among(tokens, hit->from, verbs, COUNT(verbs));
    size_t size = strlen(tokens->at[hit->to - 1].fold);
    if (bare && ANY(tokens, hit->from, "needs", "wants"))
        bare = size > 4 && text_same(tokens->at[hit->to - 1].fold + size - 3, "ing"); // "needs tightening"
    if ((!back && !bare) || hit->kinds[0]->form == ABSENCE) return false;
    size_t start = scope_sentence_start(&r->scope, hit->from);
    while (ANY(tokens, start, "the", "its", "both")) start++;
    size_t to = start;
    while (to < hit->from && r->part[to] && !r->scope.fault[to] && r->note->taken[to] != TAKEN_TYPE &&
           (to == start || tokens->at[to - 1].stop == STOP_NONE))
        to++;
    if (to == start || to + 1 >= hit->from) return false;
    bool there = bare;
    for (size_t i = to; i < hit->from; i++) there |= ANY(tokens, i, "there", "there's", "theres");
    if (!there) return false;
    for (size_t i = to; i < hit->from; i++)
        if (r->part[i] && ANY(tokens, i - 1, "the", "a", "its", "and") && back)
            return false; // a part of its own
    spot->part_from = start;
    spot->part_to = to;
    return true;
}

// "The lid is there but bent", "its cork is with it but it's stuck": of what is there.
static bool share_by_there(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    static const char *const between[] = {"it's", "they're", "it",    "they",  "is",     "are",
                                          "a",    "bit",     "badly", "quite", "rather", "both"};
    static const char *const heres[] = {"there", "here", "present", "included", "it"};
    static const char *const links[] = {"is", "are", "all", "both", "still", "with"};
    enum { WORDS_MOST = 3 };
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->from;
    while (at > 0 && token_among(tokens, at - 1, between, COUNT(between))) at--;
    if (at < 4 || !ANY(tokens, at - 1, "but", "though")) return false;
    at -= tokens->at[at - 2].stop == STOP_COMMA ? 2 : 1;
    if (!token_among(tokens, at - 1, heres, COUNT(heres)) ||
        (token_is(tokens, at - 1, "it") && !token_is(tokens, at - 2, "with")))
        return false;
    size_t end = at - 1;
    while (end > 0 && token_among(tokens, end - 1, links, COUNT(links))) end--;
    size_t from = scope_clause_start(&r->scope, end);
    while (from < end && ANY(tokens, from, "the", "its", "their", "a", "both", "all")) from++;
    bool plain = from < end && end - from <= WORDS_MOST && end < at - 1;
    for (size_t i = from; i < end && plain; i++)
        plain = tokens->at[i].kind == TOKEN_WORD && tokens->at[i].stop == STOP_NONE && !r->scope.fault[i] &&
                !ANY(tokens, i, "it", "they", "one", "that", "this", "i", "it's", "they're", "there") &&
                r->note->taken[i] != TAKEN_TYPE;
    if (!plain) return false;
    spot->part_from = from;
    spot->part_to = end;
    return true;
}

// "Legs are scuffed with a few chips", "blades dull with brown stains": the second is of the same part.
static bool share_by_with(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    enum { WORDS_MOST = 4 };
    const struct tokens *tokens = &r->note->tokens;
    size_t with = hit->from;
    while (with > 1 && hit->from - with < WORDS_MOST && !token_is(tokens, with, "with") &&
           tokens->at[with - 1].stop == STOP_NONE && !r->part[with - 1])
        with--;
    if (with < 2 || !token_is(tokens, with, "with") || tokens->at[with - 1].stop != STOP_NONE ||
        hit->kinds[0]->form != FAULT || hit->kinds[0]->class == CLASS_REPAIR ||
        r->scope.stance[hit->from] & (STANCE_DENIED | STANCE_NONE_SEEN))
        return false;
    for (size_t k = 0; k < r->hit_count; k++) {
        const struct fault_hit *first = &r->hits[k];
        if (first->to != with || first->kinds[0]->form != FAULT || first->kinds[0] == hit->kinds[0] ||
            first->kinds[0]->class == CLASS_REPAIR ||
            r->scope.stance[first->from] & (STANCE_DENIED | STANCE_NONE_SEEN))
            continue;
        struct spot before = spot_found(r, first);
        if (before.part_to == before.part_from || before.part_to > first->to) continue;
        spot->part_from = before.part_from;
        spot->part_to = before.part_to;
        return true;
    }
    return false;
}

// "Shade: chip at the bottom edge.": a part before the colon that its sentence begins with.
bool spot_under_colon(const struct fault_reader *r, const struct fault_hit *hit, size_t *from, size_t *to) {
    enum { WORDS_MOST = 3 };
    const struct tokens *tokens = &r->note->tokens;
    size_t colon = hit->from;
    while (colon > 0 && tokens->at[colon - 1].stop < STOP_CLAUSE) colon--;
    if (colon < 2 || !token_is(tokens, --colon, ":")) return false;
    size_t start = colon;
    while (start > 0 && r->part[start - 1] && r->note->taken[start - 1] != TAKEN_TYPE &&
           tokens->at[start - 1].stop == STOP_NONE)
        start--;
    if (start == colon || colon - start > WORDS_MOST ||
        (start > 0 && tokens->at[start - 1].stop < STOP_CLAUSE))
        return false;
    *from = start;
    *to = colon;
    return true;
}

// "Tote cracked and glued": both of the tote.
void spot_share_part(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    enum { FAR = 5 };
    const struct tokens *tokens = &r->note->tokens;
    if (hit->kinds[0]->form != ABSENCE && (share_by_verb(r, hit, spot) || share_by_denied(r, hit, spot) ||
                                           share_by_there(r, hit, spot) || share_by_with(r, hit, spot)))
        return;
    if (spot_joined_before(r, hit->from, &spot->part_from, &spot->part_to)) return;
    size_t joint = hit->from, n; // "faded and badly stained"
    while (joint > 1 && degree_word(r, joint - 1, &n) && n == 1) joint--;
    if (joint < 2 || !token_is(tokens, joint - 1, "and") || hit->kinds[0]->form == ABSENCE) return;
    const char *word = tokens->at[hit->near ? hit->from : hit->to - 1].fold; // "water stained"
    static const char *const states[] = {"gone", "torn",  "worn",  "bent",  "loose", "stiff", "split",
                                         "dry",  "dirty", "rusty", "stuck", "weak",  "rotten"};
    size_t size = strlen(word);
    bool dirty = size > 4 && word[size - 1] == 'y' && hit->kinds[0]->class == CLASS_DIRT; // "torn and grubby"
    const char *first = tokens->at[hit->from].fold; // "stained with ink"
    size_t length = strlen(first);
    bool done = (size > 3 && text_same(word + size - 2, "ed")) ||
                (length > 3 && text_same(first + length - 2, "ed") && hit->to > hit->from + 1);
    bool fails =
        ANY(tokens, hit->from, "doesn't", "won't", "can't", "doesnt", "wont", "don't"); // "and won't grip"
    if (!dirty && !done && !fails && !token_among(tokens, hit->from, states, COUNT(states))) return;
    for (size_t k = 0; k < r->hit_count; k++) {
        if (r->hits[k].to > joint - 1 || r->hits[k].to + FAR < joint) continue;
        struct spot before = spot_found(r, &r->hits[k]);
        bool placed = before.where_to == joint - 1 && before.where_from >= r->hits[k].to;
        if (r->hits[k].to != joint - 1 && !placed) continue; // "detached at the back and stained"
        spot->part_from = before.part_from;
        spot->part_to = before.part_to;
    }
}

// "Hinges rusty but not broken", "sleeves faded, not torn": of the part that the one before is said of.
void spot_share_contrast(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    static const char *const between[] = {"but",   "not", "isn't", "aren't", "just",
                                          "never", "yet", ",",     "are",    "is"};
    enum { FAR = 4 };
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->from;
    bool contrasts = false;
    while (at > 0 && hit->from - at < FAR && token_among(tokens, at - 1, between, COUNT(between))) {
        at--;
        contrasts |= token_is(tokens, at, "but") || token_is(tokens, at, "not");
    }
    if (!contrasts || hit->kinds[0]->form == ABSENCE || !(r->scope.stance[hit->from] & STANCE_DENIED)) return;
    for (size_t k = 0; k < r->hit_count; k++) {
        if (r->hits[k].to != at) continue;
        struct spot before = spot_found(r, &r->hits[k]);
        spot->part_from = before.part_from;
        spot->part_to = before.part_to;
    }
}

// "What looks like a crack in the dial is only a scratch": where it seemed to be is where it is.
void spot_share_seeming(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    static const char *const cues[] = {"what",      "that",  "which",  "looks",   "look",
                                       "looked",    "seems", "seemed", "appears", "appeared",
                                       "resembles", "think", "swear",  "like"};
    const struct tokens *tokens = &r->note->tokens;
    size_t start = scope_sentence_start(&r->scope, hit->from);
    for (size_t k = r->hit_count; k-- > 0;) {
        const struct fault_hit *first = &r->hits[k];
        if (first->to > hit->from) continue;
        size_t cue = r->scope.cue[first->from];
        bool seemed = first->from >= start && (r->scope.stance[first->from] & STANCE_DENIED) &&
                      cue < first->from && token_among(tokens, cue, cues, COUNT(cues));
        if (!seemed) return;
        *spot = spot_found(r, first);
        return;
    }
}

// "The handle is split and loose": the split too is of the handle, whose words are those of the other.
bool spot_within(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    for (size_t k = 0; k < r->hit_count; k++) {
        const struct fault_hit *other = &r->hits[k];
        if (other == hit || !other->near || other->from >= hit->from || other->to < hit->to) continue;
        if (!r->part[other->from] || r->note->taken[other->from] == TAKEN_TYPE) continue;
        spot->part_from = other->from;
        spot->part_to = other->from + 1;
        return true;
    }
    return false;
}

// Behind the fault: "in them", "starting in those", "round that one".
static bool points_back(const struct tokens *tokens, size_t i) {
    static const char *const verbs[] = {"starting", "showing",  "coming", "through", "forming", "getting",
                                        "started",  "creeping", "set",    "down",    "up",      "just"};
    static const char *const those[] = {"them",  "those", "these", "it",  "that",
                                        "there", "both",  "each",  "this"};
    enum { VERBS_MOST = 2 };
    for (size_t n = 0; n < VERBS_MOST && token_among(tokens, i, verbs, COUNT(verbs)); n++) {
        if (i > 0 && tokens->at[i - 1].stop != STOP_NONE) return false;
        i++;
    }
    if (i < tokens->count && tokens->at[i - 1].stop == STOP_NONE && token_is(tokens, i, "there") &&
        (i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE))
        return true; // "rust starting there"
    return i + 1 < tokens->count && tokens->at[i - 1].stop == STOP_NONE &&
           ANY(tokens, i, "in", "on", "at", "round", "around", "inside", "under", "from") &&
           token_among(tokens, i + 1, those, COUNT(those));
}

// Before it: "showing rust", "with a bit of rust", "that has rusted", ", both rusty", "gone to rust".
static bool follows_from(const struct tokens *tokens, const struct fault_hit *hit) {
    static const char *const leads[] = {"a",   "bit",     "of",       "some",   "light",  "little",
                                        "the", "surface", "old",      "now",    "slight", "have",
                                        "has", "started", "starting", "couple", "few",    "two"};
    static const char *const shows[] = {"showing", "shows", "show", "that", "which",
                                        "both",    "all",   "each", "they"};
    static const char *const starts[] = {"showing", "starting", "coming", "creeping", "forming", "setting"};
    size_t at = hit->from;
    while (at > 1 && hit->from - at < 4 && tokens->at[at - 1].stop == STOP_NONE &&
           token_among(tokens, at - 1, leads, COUNT(leads)))
        at--;
    if (at < 2 || tokens->at[at - 1].stop != STOP_NONE) return false;
    if (token_among(tokens, at - 1, shows, COUNT(shows))) return true;
    if (token_is(tokens, at - 1, "to") && ANY(tokens, at - 2, "gone", "down", "going", "went")) return true;
    return token_is(tokens, at - 1, "with") &&
           (tokens->at[at - 2].stop == STOP_NONE || token_among(tokens, hit->to, starts, COUNT(starts)));
}

// "Staining round the hairline", "brown in the crazing": the place is another fault, by its own word.
static bool place_of_fault(const struct fault_reader *r, size_t i, struct spot *spot) {
    static const char *const nouns[] = {
        "hairline", "crack", "cracks", "chip", "chips", "crazing", "seam",   "seams", "scratches", "scratch",
        "dent",     "dents", "split",  "tear", "hole",  "holes",   "repair", "joint", "break"};
    const struct tokens *tokens = &r->note->tokens;
    if (i + 2 >= tokens->count || tokens->at[i - 1].stop != STOP_NONE ||
        !ANY(tokens, i, "in", "round", "around", "along", "at", "on", "inside", "by", "near") ||
        !ANY(tokens, i + 1, "the", "that", "this", "its", "both") ||
        !token_among(tokens, i + 2, nouns, COUNT(nouns)))
        return false;
    *spot = (struct spot){.where_from = i + 2, .where_to = i + 3};
    return true;
}

// "Chips on both handles showing rust", "a chip on the foot, a bit of rust in that one": what grows or
// gathers in a damage is where the damage is.
bool spot_of_growth(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    static const char *const grows[] = {"rust",        "stain", "dust-grime", "verdigris",
                                        "grease-film", "mold",  "hole"};
    bool grown = false;
    for (size_t k = 0; k < COUNT(grows); k++) grown |= text_same(hit->kinds[0]->rule.id, grows[k]);
    if (grown && place_of_fault(r, hit->to, spot)) return true;
    if (!grown || (!points_back(&r->note->tokens, hit->to) && !follows_from(&r->note->tokens, hit)))
        return false;
    size_t start = scope_sentence_start(&r->scope, hit->from);
    const struct fault_hit *damage = NULL;
    for (size_t k = 0; k < r->hit_count && r->hits[k].from < hit->from; k++)
        if (r->hits[k].from >= start && r->hits[k].to <= hit->from) damage = &r->hits[k];
    if (!damage || damage->kinds[0]->class != CLASS_DAMAGE || damage->kinds[0] == hit->kinds[0] ||
        (r->scope.stance[damage->from] & (STANCE_DENIED | STANCE_NONE_SEEN)))
        return false;
    struct spot of = spot_of_hit(r, damage);
    for (size_t i = hit->from; i > damage->to; i--) { // "and one on the base, some rust in that one"
        if (!ANY(&r->note->tokens, i - 1, "one", "another", "two", "other")) continue;
        size_t from, to = 0;
        for (size_t k = i; k < hit->from && !to; k++) to = spot_place_at(r, k, &from);
        if (to && to <= hit->from) of = (struct spot){.where_from = from, .where_to = to};
        break;
    }
    if (of.part_to == of.part_from && of.where_to == of.where_from) return false;
    *spot = of;
    return true;
}

// "Dents and scratches on the base": the place behind a list of faults is that of each.
void spot_share_place(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    const struct tokens *tokens = &r->note->tokens;
    if (hit->kinds[0]->form != FAULT || hit->near) return;
    if (hit->to < tokens->count && tokens->at[hit->to].stop == STOP_COMMA &&
        token_is(tokens, hit->to + 1, "and") && ANY(tokens, hit->to + 2, "a", "an", "one") && hit->from > 0 &&
        !ANY(tokens, hit->from - 1, "a", "an", "one", "small"))
        return; // "dents, and a soldered patch on the bottom"
    const struct fault_hit *last = spot_listed_before(r, hit);
    size_t from, to = last ? spot_place_of(r, last, &from) : 0;
    if (!to || from < last->to) return;
    spot->where_from = from;
    spot->where_to = to;
}

// "One ear is off and it wants a clean": what is to be cleaned is the thing, whatever was named before.
bool spot_of_whole(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { BACK = 6 };
    static const char *const verbs[] = {"needs",    "wants",  "need",     "want", "could",  "would",
                                        "will",     "just",   "deserves", "only", "really", "definitely",
                                        "craves",   "does",   "badly",    "may",  "might",  "still",
                                        "probably", "should", "must"};
    const struct tokens *tokens = &r->note->tokens;
    bool cleaned = hit->kinds[0]->class == CLASS_DIRT || text_same(hit->kinds[0]->rule.id, "tarnish");
    for (size_t i = hit->from; cleaned && i > 0 && i + BACK > hit->from; i--) {
        if (ANY(tokens, i, "it", "it'll", "it'd") &&
            (ANY(tokens, i - 1, "and", "but", "so", "though") || tokens->at[i - 1].stop == STOP_COMMA))
            return token_is(tokens, i, "it") ? token_among(tokens, i + 1, verbs, COUNT(verbs)) : true;
        if (tokens->at[i].stop != STOP_NONE) return false;
    }
    return false;
}

// "The lettering is worn": no design that has no name.
bool spot_is_lettering(const struct fault_reader *r, const struct fault_hit *hit, size_t i) {
    static const char *const words[] = {
        "lettering", "letters", "numbers", "numerals", "figures",     "stencil", "stenciling", "transfer",
        "decal",     "logo",    "picture", "print",    "stencilling", "title",   "writing",    "graduations"};
    static const char *const cloths[] = {"velvet", "felt", "baize", "plush", "satin"}; // "velvet worn thin"
    const char *id = hit->kinds[0]->rule.id;
    return (text_same(id, "decoration-wear") && token_among(&r->note->tokens, i, words, COUNT(words))) ||
           ((text_same(id, "wear-rub") || text_same(id, "lining-damage")) &&
            token_among(&r->note->tokens, i, cloths, COUNT(cloths)));
}
