// SPDX-License-Identifier: MIT
// "Chip on the rim", "lid chipped": a preposition makes a place; the subject of the fault is the part.
#include <string.h>

#include "notes/any.h"
#include "notes/beside.h"
#include "notes/faults.h"
#include "notes/spots_inside.h"
#include "notes/spots_shared.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { PART_WORDS_MOST = 4, GAP_MOST = 6 };

// "No lid rust on the handle": the lid is what is missing, and not what is rusty.
static bool in_other(const struct fault_reader *r, size_t part, size_t fault) {
    for (size_t i = 0; i < r->hit_count; i++)
        if (r->hits[i].from <= part && part < r->hits[i].to) return r->hits[i].to <= fault;
    return false;
}

// "Signal lamp with a chip", "the lamp is dented": the thing itself is no part of it.
static bool is_thing(const struct fault_reader *r, size_t last) {
    const char *type = r->note->record->type.value, *head = type ? strrchr(type, ' ') : NULL;
    bool usual = spot_is_rocker(r->note, last) || spot_usual(&r->note->tokens.at[last]); // "lid loose. pot."
    if (r->note->taken[last] == TAKEN_TYPE && (!usual || token_is(&r->note->tokens, last + 1, "with")))
        return true;
    return type && !usual && !strstr(type, " and ") && r->note->record->count < 2 &&
           text_same(r->note->tokens.at[last].one, head ? head + 1 : type);
}

// "The shade, which is enamel, has": the comma before what is said by the way; 0 if there is none.
static size_t before_aside(const struct fault_reader *r, size_t i) {
    enum { WORDS_MOST = 7 };
    const struct tokens *tokens = &r->note->tokens;
    for (size_t at = i; at > 1 && at + WORDS_MOST > i; at--) {
        if (r->scope.fault[at - 1] || tokens->at[at - 1].stop >= STOP_CLAUSE) return 0;
        if (tokens->at[at - 1].stop == STOP_COMMA)
            return r->part[at - 2] && place_is_aside(tokens, at, i) ? at - 1 : 0;
    }
    return 0;
}

// "Mica window", "the adjusting nut": a word that says which of them it is.
static bool leads_part(const struct fault_reader *r, size_t i) {
    static const char *const others[] = {"also",  "only", "just",  "then",  "though", "some", "both",
                                         "each",  "plus", "still", "even",  "sadly",  "when", "found",
                                         "shows", "with", "where", "there", "that",   "this", "which",
                                         "have",  "been", "needs", "like",  "good",   "fine"};
    enum { LEAST = 4 };
    const struct token *token = &r->note->tokens.at[i];
    return token->kind == TOKEN_WORD && strlen(token->fold) >= LEAST && !r->scope.fault[i] &&
           (r->note->taken[i] == TAKEN_NOT || r->note->taken[i] == TAKEN_VALUE) &&
           !spot_preposition(&r->note->tokens, i) && !token_among(&r->note->tokens, i, others, COUNT(others));
}

// "The handle at the bottom is cracked", "the rim of the saucer has a chip": the part before the preposition
// at `prep` where the clause begins with it. "Of" belongs to its name, so that it ends at `*to` then.
static bool owner_of_place(const struct fault_reader *r, size_t prep, size_t *from, size_t *to) {
    const struct tokens *tokens = &r->note->tokens;
    size_t start = prep;
    while (start > 0 && prep - start < PART_WORDS_MOST && r->part[start - 1] && !r->scope.fault[start - 1] &&
           !spot_adverb(tokens, start - 1) && tokens->at[start - 1].stop == STOP_NONE)
        start--;
    if (start == prep && ANY(tokens, prep, "on", "at", "in", "inside", "near", "by", "under", "round") &&
        prep > 0 && spot_plain_subject(r, prep, from)) { // "red window at the back is cracked"
        *to = prep;
        return true;
    }
    if (start == prep || is_thing(r, prep - 1)) return false;
    while (start > 0 && spot_side(tokens, start - 1) && tokens->at[start - 1].stop == STOP_NONE) start--;
    size_t first = start;
    while (first > 0 && tokens->at[first - 1].stop == STOP_NONE &&
           (spot_article(tokens, first - 1) || degrees_number(tokens, first - 1) ||
            ANY(tokens, first - 1, "some", "several", "few", "couple", "of", "most")))
        first--; // "two legs on the stand are cracked"
    bool opens = first == 0 || tokens->at[first - 1].stop != STOP_NONE ||
                 token_is(tokens, first - 1, "and") || token_is(tokens, first - 1, "but");
    if (!opens && first == start && leads_part(r, first - 1)) { // "the adjusting nut on the small one"
        size_t before = first - 1;
        while (before > 0 && tokens->at[before - 1].stop == STOP_NONE && spot_article(tokens, before - 1))
            before--;
        opens = before == 0 || tokens->at[before - 1].stop != STOP_NONE ||
                token_is(tokens, before - 1, "and") || token_is(tokens, before - 1, "but");
        if (opens && r->note->taken[first - 1] == TAKEN_NOT) start--;
    }
    if (!opens) return false;
    *from = start;
    if (!token_is(tokens, prep, "of")) *to = prep;
    return true;
}

// The part that is the subject: "the handle is cracked", "lid has a chip", "spout chipped". Between the two
// stand verbs, degrees and articles, no other fault; behind a preposition it is no subject.
static bool subject_before(const struct fault_reader *r, size_t i, size_t *from, size_t *to) {
    static const char *const sides[] = {"left",  "right", "upper",  "lower",  "front",   "back",   "rear",
                                        "inner", "outer", "top",    "bottom", "battery", "inside", "outside",
                                        "big",   "small", "second", "first",  "other",   "third"};
    static const char *const joints[] = {"and",   "so",   "because", "since", "which",
                                         "where", "when", "if",      "as"};
    static const char *const particles[] = {"up", "down", "over"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i;
    for (size_t gap = 0; at > 0 && gap <= GAP_MOST; gap++) {
        bool with = tokens->at[at - 1].stop == STOP_COMMA && at < i && token_is(tokens, at, "with");
        if (with && at > 1 && r->part[at - 2]) { // "has its jacket, with a tear"
            at--;
            continue;
        }
        size_t aside = tokens->at[at - 1].stop == STOP_COMMA ? before_aside(r, at - 1)
                       : at == i && spot_states_both(r, at)  ? at - 2
                                                             : 0;
        if (aside) at = aside;
        if (aside) continue;
        if (token_is(tokens, at - 1, "which") && at > 1 && tokens->at[at - 1].stop == STOP_NONE &&
            tokens->at[at - 2].stop == STOP_NONE && r->part[at - 2] && !is_thing(r, at - 2)) {
            at--; // "bar one lens which is cracked"
            continue;
        }
        if (token_is(tokens, at - 1, "which") && at < i && spot_plain_noun(r, at - 2)) {
            *from = at - 2; // "one side pane which is cracked"
            *to = at - 1;
            return true;
        }
        bool which = token_is(tokens, at - 1, "which") && at > 2 && tokens->at[at - 2].stop == STOP_COMMA;
        if (which && r->part[at - 3]) { // "the left clasp, which won't hold"
            at -= 2;
            continue;
        }
        if (tokens->at[at - 1].stop != STOP_NONE || token_is(tokens, at - 1, "but")) return false;
        bool agent = ANY(tokens, at - 1, "left", "made", "leaves", "caused") && at > 1 &&
                     (ANY(tokens, at - 2, "has", "have", "had") || token_is(tokens, at - 1, "leaves"));
        if (agent) return false; // "the hanger has left scrapes": they are not on it
        if (r->part[at - 1] && r->scope.fault[at - 1] && in_other(r, at - 1, i)) return false;
        if (r->part[at - 1] && is_thing(r, at - 1)) return false;
        if (r->part[at - 1]) {
            *to = at;
            size_t start = at - 1;
            while (start > 0 && *to - start < PART_WORDS_MOST && r->part[start - 1]) start--;
            while (start > 0 && *to - start < PART_WORDS_MOST &&
                   token_among(tokens, start - 1, sides, COUNT(sides)))
                start--;
            size_t behind = start;
            while (behind > 0 && spot_article(tokens, behind - 1)) behind--;
            *from = start;
            bool said = at + 1 == i || ANY(tokens, at + 1, "is", "are", "has", "have", "was", "were");
            if (at < i && said && spot_plain_noun(r, at) && !r->note->taken[at] &&
                !ANY(tokens, at, "wood", "leather", "paper", "glass", "metal", "cloth", "rubber", "brass",
                     "iron", "enamel", "varnish", "glaze", "paint", "runs", "works", "turns", "slides",
                     "opens", "closes", "holds", "sits", "moves", "goes", "fits", "though"))
                *to = at + 1; // "the lead pipe has been soldered"
            if (at < i) spot_of_relative(r, from, to);
            if (*from < start) return true;
            if (token_is(tokens, *to, "one") && spot_side(tokens, *to - 1) && *to < i)
                ++*to; // "the back one"
            bool bare =
                behind == start && behind > 0 && token_among(tokens, behind - 1, particles, COUNT(particles));
            if (bare || token_is(tokens, *to, "being") ||
                !(behind > 0 && spot_preposition(tokens, behind - 1)))
                return true; // "the take up key", "apart from the dial being dirty"
            if (token_is(tokens, behind - 1, "of") && behind > 1 &&
                (degrees_number(tokens, behind - 2) || spot_portion(tokens, behind - 2)))
                return true; // "one of the guards is cracked"
            return owner_of_place(r, behind - 1, from, to);
        }
        bool thing = r->note->taken[at - 1] == TAKEN_TYPE; // "canvas satchel lining frayed": not the canvas
        if (thing || r->scope.fault[at - 1] || token_among(tokens, at - 1, joints, COUNT(joints)))
            return false;
        at--;
    }
    return false;
}

// "Stuck or stiff part": its other words are said of a part.
static bool is_of_part(const struct flaw *kind) {
    const char *last = kind->noun ? strrchr(kind->noun, ' ') : NULL;
    return last && text_same(last, " part");
}

static bool is_noun_of(const struct flaw *kind, const char *word) {
    if (kind->adjective && text_same(kind->adjective, word)) return false; // "a broken lock"
    if (is_of_part(kind)) return false;                                    // "a stiff knob"
    return (kind->noun && strstr(kind->noun, word)) || (kind->plural && strstr(kind->plural, word));
}

// "A wobbly leg": what the adjective stands before.
static bool part_behind(const struct fault_reader *r, const struct fault_hit *hit, size_t *from, size_t *to) {
    const struct tokens *tokens = &r->note->tokens;
    bool apart = hit->near && !is_of_part(hit->kinds[0]);
    if (token_is(tokens, hit->from, "fade")) return false; // "a fade line"
    *from = hit->to;                                       // "faded gingham linings": behind what they are of
    while (*from < tokens->count && *from < hit->to + 2 && !r->part[*from] &&
           (r->note->taken[*from] == TAKEN_VALUE || ANY(tokens, *from, "first", "second", "third")) &&
           tokens->at[*from].stop == STOP_NONE)
        ++*from;
    if (apart || hit->to != hit->from + 1 || *from >= tokens->count || !r->part[*from] ||
        tokens->at[hit->from].stop != STOP_NONE || spot_adverb(tokens, *from) ||
        token_is(tokens, *from, "all") || spot_preposition(tokens, *from) || r->scope.fault[*from] ||
        is_noun_of(hit->kinds[0], tokens->at[hit->from].fold))
        return false;
    static const char *const says[] = {"is", "are", "was", "were", "looks", "has", "have", "isn't", "aren't"};
    for (*to = *from; *to < tokens->count && r->part[*to] && *to < *from + PART_WORDS_MOST;) ++*to;
    bool said = hit->from > 0 && token_among(tokens, hit->from - 1, says, COUNT(says));
    return !(said && token_among(tokens, *to, says, COUNT(says))); // "lid is dented handle is loose"
}

// "Chimney has a chip, winder stuck, dents on the tank": behind the comma a part that is spoken of by itself.
static bool own_subject(const struct fault_reader *r, size_t at, size_t end) {
    const struct tokens *tokens = &r->note->tokens;
    if (tokens->at[at].stop != STOP_COMMA) return false;
    while (at + 1 < end && spot_article(tokens, at + 1)) at++;
    if (at + 2 == end && spot_plain_noun(r, at + 1)) return true; // ", marbling rubbed"
    return at + 1 < end && r->part[at + 1] && !r->scope.fault[at + 1];
}

// "The base has a small crack and coating wear": one subject for all that the sentence says.
static bool subject_of_sentence(const struct fault_reader *r, const struct fault_hit *hit, size_t *from,
                                size_t *to) {
    const size_t i = hit->from;
    static const char *const verbs[] = {"is",      "are",   "has",   "have",   "shows",  "show",
                                        "was",     "were",  "isn't", "aren't", "hasn't", "haven't",
                                        "doesn't", "don't", "had",   "still"};
    static const char *const praise[] = {"clean",    "fine",     "good",    "ok",    "okay",  "perfect",
                                         "intact",   "clear",    "tight",   "sound", "whole", "complete",
                                         "readable", "legible",  "present", "all",   "there", "straight",
                                         "crisp",    "original", "solid",   "usable"};
    static const char *const others[] = {
        "it",    "there",  "they",     "which",   "but",     "it's",     "there's", "theres", "i", "you",
        "while", "though", "although", "whereas", "someone", "somebody", "he",      "she",    "we"};
    static const char *const nots[] = {"not", "isn't", "aren't", "never", "no"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = scope_sentence_start(&r->scope, i);
    while (at < i && spot_article(tokens, at)) at++;
    if (at < i && !r->part[at]) { // "…, the skiver is red and torn"
        size_t own = i;
        while (own > at && tokens->at[own - 1].stop == STOP_NONE) own--;
        if (own > at && ANY(tokens, own, "the", "its") && tokens->at[own - 1].stop == STOP_COMMA)
            at = own + 1;
        while (at < i && at < own + 3 && !r->part[at] && r->note->taken[at] == TAKEN_VALUE) at++;
    }
    *from = at;
    while (at + 1 < i && spot_side(tokens, at) && r->part[at + 1]) at++; // "the left foot"
    while (at < i && r->part[at]) at++;
    *to = at;
    bool held = false; // "corners have cracks" is one fault's words, "and mold" another's
    for (size_t k = 0; k < r->hit_count; k++)
        held |= r->hits[k].near && r->hits[k].from == *from && r->hits[k].kinds[0]->form == FAULT;
    if (*to == *from || (!held && in_other(r, *from, i))) return false;
    bool of_it = r->scope.stance[i] & (STANCE_DENIED | STANCE_NONE_SEEN) || degree_is_state(r, hit);
    bool made = of_it && at + 1 < i && tokens->at[at + 1].stop == STOP_COMMA &&
                r->note->taken[at] == TAKEN_VALUE; // "handle wood, a bit split"
    if (!made && !token_among(tokens, at, verbs, COUNT(verbs)) &&
        !(of_it && token_among(tokens, at, praise, COUNT(praise))))
        return false; // "lid sound, some dents": no lid's
    if (spot_said_apart(r, hit, at)) return false;
    bool joined = false;
    for (; at < i; at++) {
        if (own_subject(r, at, i) || spot_which_one(tokens, at) || spot_own_clause(tokens, at))
            return false; // "and the second one is", "and the paint is flaking"
        bool but =
            token_is(tokens, at, "but") && token_among(tokens, at + 1, nots, COUNT(nots)); // "but not broken"
        bool on_it =
            ANY(tokens, at, "it", "them") && spot_preposition(tokens, at - 1); // "a dent in it and rust"
        if (tokens->at[at].stop >= STOP_CLAUSE ||
            (!but && !on_it && token_among(tokens, at, others, COUNT(others))))
            return false;
        bool more = token_is(tokens, at, "no") && r->scope.fault[at - 1];  // "glass good no chips no cracks"
        more |= ANY(tokens, at, "just", "only") && r->scope.fault[at - 1]; // "panel has no cracks just marks"
        joined |= but || more || token_is(tokens, at, "and") || token_is(tokens, at, "or") ||
                  token_is(tokens, at, "nor") || tokens->at[at].stop == STOP_COMMA;
    }
    bool mate = ANY(tokens, *to, "doesn't", "don't"); // "cover doesn't belong, hairline across the base"
    return joined && !(mate && !of_it && spot_preposition(tokens, hit->to));
}

struct spot spot_of_hit(const struct fault_reader *r, const struct fault_hit *hit) {
    struct spot spot = spot_found(r, hit);
    if (hit->kinds[0]->class == CLASS_REPAIR && spot_of_mended(r, hit, &spot)) return spot;
    bool placed = spot.where_to > spot.where_from; // "iron pitted near the edge"
    if (spot.part_to == spot.part_from &&
        (placed ? spot.where_from >= hit->to : !spot_take_same(r, hit, &spot))) {
        spot_take_subject(r, hit, &spot);
        if (placed && spot.part_to > spot.part_from + 1)
            spot.part_from = spot.part_to = 0; // "cloth covering worn through at the ends": of the whole
    }
    if (spot.part_to > spot.part_from && spot_names_kind(r, hit, spot.part_from, spot.part_to))
        spot.part_from = spot.part_to = 0;
    spot_widen(r, &spot);
    if (spot.part_to > spot.part_from && spot.part_from <= hit->from && spot.part_to < hit->to + 1)
        spot_of_relative(r, &spot.part_from, &spot.part_to);
    size_t from, to;
    if (spot_numbered(r, hit, &from, &to) && (spot.part_to == spot.part_from || spot.part_from == from)) {
        spot.part_from = from;
        spot.part_to = to;
    }
    if (spot.part_to < hit->from && spot_is_stuff(&r->note->tokens, spot.part_from) &&
        spot.where_to == spot.where_from && spot_preposition(&r->note->tokens, spot.part_to) &&
        (to = spot_place_at(r, spot.part_to, &from)) != 0 && to <= hit->from) { // "leather on the slope is"
        spot.where_from = from, spot.where_to = to;
    }
    if (hit->kinds[0]->class == CLASS_REPAIR && spot.part_to < hit->from &&
        ANY(&r->note->tokens, hit->to - 1, "paint", "gold", "gilt", "glaze", "varnish", "finish", "color") &&
        ANY(&r->note->tokens, hit->to, "on", "around", "along", "over"))
        spot.part_from = spot.part_to = 0; // "and someone touched up the paint on the hat"
    if (spot.part_to > spot.part_from && spot.part_to < hit->from && !spot_agrees(r, hit, spot.part_to - 1))
        spot.part_from = spot.part_to = 0;
    return spot;
}

// "Pin bent, hairline on the face": the place is that of the next fault, for this one has its part.
static bool is_of_next(const struct fault_reader *r, const struct fault_hit *hit, const struct spot *spot) {
    const struct tokens *tokens = &r->note->tokens;
    if (spot->part_to == spot->part_from || spot->part_from > hit->from || spot->where_from < hit->to)
        return false;
    bool comma = false;
    for (size_t i = hit->to; i < spot->where_from; i++) {
        comma |= tokens->at[i].stop == STOP_COMMA;
        if (comma && r->scope.fault[i] && !r->part[i]) return true;
    }
    return false;
}

// "The lid has a bent corner", "the board has a dented edge": the noun behind what is said is the place on
// the part, which ends before token `part_to`.
static void place_of_adjective(const struct fault_reader *r, const struct fault_hit *hit, bool near,
                               size_t part_to, struct spot *spot) {
    static const char *const anywhere[] = {"corner", "corners", "edge", "edges", "end", "ends"};
    size_t behind, end, last = hit->to - 1;
    if (spot->where_to || part_to > hit->from) return;
    if (near && part_to < hit->from && part_behind(r, hit, &behind, &end)) {
        spot->where_from = behind;
        spot->where_to = end;
    }
    if (!spot->where_to && last > hit->from && !hit->near &&
        token_among(&r->note->tokens, last, anywhere, COUNT(anywhere))) {
        spot->where_from = last;
        spot->where_to = last + 1;
    }
}

// "Inside has three tills, one runner broken": the runner, which no list of parts has.
static bool has_own_subject(const struct fault_reader *r, const struct fault_hit *hit) {
    struct spot own = {0};
    return spot_take_subject(r, hit, &own), own.part_to > own.part_from;
}

// The part that its own words name, or those before or behind it.
static void find_part(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    size_t from = 0, to = 0;
    bool absence = hit->kinds[0]->form == ABSENCE || // the part is what lacks, not what lacks it
                   ANY(&r->note->tokens, hit->from, "lost", "loses", "losing", "missing", "lacks",
                       "lacking"); // "the box has lost its handle"
    bool own =
        hit->from > 0 && r->note->tokens.at[hit->from - 1].stop != STOP_NONE && r->part[hit->from] &&
        hit->to > hit->from + 1; // "haze in the right one, strap perished": its own words name the part
    if (spot_of_owned(r, hit, spot) || spot_of_first(r, hit, spot)) return;
    if (!absence && spot_of_object(r, hit, &from, &to)) {
        spot->part_from = from;
        spot->part_to = to;
    } else if (absence && spot_part_inside(r, hit, &from, &to)) {
        spot->part_from = from;
        spot->part_to = to;
    } else if (!own && !absence &&
               spot_side_of_parts(r, hit->from, spot)) { // "both handles work but the left one"
    } else if (!own &&
               ((!absence && spot_piece(r, hit->from, &from, &to)) ||
                subject_before(r, hit->from, &from, &to)) &&
               !(r->part[hit->from] && hit->to > hit->from + 1 &&
                 r->note->taken[to - 1] == TAKEN_TYPE)) { // "tweed jacket 40R. Lining torn"
        size_t behind, end;
        bool near = to + 1 >= hit->from || hit->from < hit->to - 1; // "scottish scene rusty lid"
        if (!near && !absence && part_behind(r, hit, &behind, &end)) {
            from = behind;
            to = end;
        }
        size_t inner, inner_to; // "the bigger one has a broken lid strap"
        if (!absence && hit->near && token_is(&r->note->tokens, to - 1, "one") &&
            spot_part_inside(r, hit, &inner, &inner_to)) {
            from = inner;
            to = inner_to;
        }
        spot->part_from = from;
        spot->part_to = to;
        if (!absence) place_of_adjective(r, hit, near, to, spot);
        if (spot->part_to == hit->from) // "box lid hinge broken"
            while (spot->part_to + 1 < hit->to && r->part[spot->part_to]) spot->part_to++;
        size_t place =
            spot->where_to || spot->part_to >= hit->from || !spot_preposition(&r->note->tokens, spot->part_to)
                ? 0
                : spot_place_at(r, spot->part_to, &from); // "the handle at the bottom is cracked"
        if (place &&
            (place <= hit->from || (hit->near && place < hit->to) || // "rung under the arm is loose"
             (place == hit->from + 1 && r->part[hit->from] &&
              !token_is(&r->note->tokens, spot->part_to, "of")))) { // "elastic in the cuffs is slack"
            spot->where_from = from;
            spot->where_to = place;
        }
    } else if (hit->near && r->part[hit->from] && !text_same(hit->kinds[0]->rule.id, "ring-mark") &&
               !mends_with(hit, &r->note->tokens, hit->from)) { // "the clasp won't stay shut"
        spot->part_from = hit->from;
        for (spot->part_to = hit->from + 1; spot->part_to + 1 < hit->to && r->part[spot->part_to];)
            spot->part_to++;
    } else if (spot_part_inside(r, hit, &from, &to) ||
               (spot->where_to == spot->where_from && !spot_is_of_all(r, hit) &&
                spot_part_of_pronoun(r, hit->from, &from, &to))) {
        spot->part_from = from;
        spot->part_to = to;
    } else if (part_behind(r, hit, &from, &to) || spot_object_behind(r, hit, &from, &to) ||
               (!has_own_subject(r, hit) && !spot_denied_elsewhere(r, hit, spot) &&
                subject_of_sentence(r, hit, &from, &to))) {
        spot->part_from = from;
        spot->part_to = to;
    } else if (spot_counted(r, hit->from, &from, &to)) {
        spot->part_from = from;
        spot->part_to = to;
    } else if (!spot->where_to && !absence && spot_of_stuff(r, hit->from, &from, &to)) {
        spot->where_from = from;
        spot->where_to = to;
    } else if (!spot->where_to && spot_place_before(r, hit->from, &from, &to)) {
        bool headed = to < hit->from && r->note->tokens.at[to].stop != STOP_NONE &&
                      !token_is(&r->note->tokens, to, ":") && degree_is_state(r, hit);
        *(headed ? &spot->part_from : &spot->where_from) = from; // "Lock - broken"
        *(headed ? &spot->part_to : &spot->where_to) = to;
    }
}

// A word that was parted off has the part of what it was parted from.
static void take_parted(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    bool behind = hit->parted && hit->parted->from >= hit->to; // "glued crack on the left column"
    if (behind || (hit->parted && spot->part_to == spot->part_from)) {
        struct spot before = spot_found(r, hit->parted);
        bool own = spot->part_to > spot->part_from && before.part_to == before.part_from;
        if (own && before.where_to <= hit->from) return; // "the rim has a repaired chip": of the rim
        if (!own) spot->part_from = before.part_from, spot->part_to = before.part_to;
        bool placed = before.where_to > before.where_from || before.part_to > before.part_from;
        if (spot->where_to == spot->where_from || (behind && placed)) {
            spot->where_from = before.where_from;
            spot->where_to = before.where_to;
        }
    }
}

// Where nothing beside the fault tells it.
static void find_else(const struct fault_reader *r, const struct fault_hit *hit, struct spot *spot) {
    size_t from = 0, to = 0;
    struct spot one = {0}, other = {0};
    if (spot_of_one(r, hit, &one)) {
        *spot = one;
    } else if (spot_other(r, hit->from, &other)) {
        *spot = other;
    } else if (spot_of_verbs(r, hit, &from, &to) || spot_of_contrast(r, hit->from, &from, &to)) {
        spot->part_from = from;
        spot->part_to = to;
        size_t place = spot_preposition(&r->note->tokens, to) ? spot_place_at(r, to, &from) : 0;
        if (place && place < hit->from && r->note->tokens.at[place].stop == STOP_COMMA) {
            spot->where_from = from; // "drawer on the left, stuck"
            spot->where_to = place;
        }
    } else if (spot_of_where(r, hit->from, &from, &to) || (to = spot_fronted(r, hit->from, &from)) != 0) {
        spot->where_from = from;
        spot->where_to = to;
    }
}

struct spot spot_found(const struct fault_reader *r, const struct fault_hit *hit) {
    struct spot spot = {0};
    size_t from = 0, to = spot_touched(r, hit, &from);
    if (to || spot_of_whole(r, hit)) return (struct spot){.where_from = to ? from : 0, .where_to = to};
    bool partly = hit->near && text_same(hit->kinds[0]->rule.id, "partly-working");
    if (partly && r->part[hit->from] && r->note->taken[hit->from] != TAKEN_TYPE) // "one reed is dead"
        return (struct spot){.part_from = hit->from, .part_to = hit->from + 1};
    if (hit->own_no || (hit->near && hit->kinds[0]->form == STATE)) { // "well out of date": no well
        bool mend = hit->kinds[0]->class == CLASS_REPAIR;             // "the stopper is the wrong one"
        bool tells_part = !hit->own_no && hit->kinds[0]->says_part && r->part[hit->from] && mend;
        if (tells_part) spot.part_from = hit->from, spot.part_to = hit->from + 1;
        bool works = hit->kinds[0]->class == CLASS_FUNCTION && !hit->own_no;
        struct spot other = {0};
        if (!tells_part && mend && spot_other(r, hit->from, &other))
            return other; // "left handle perished, right one replaced with rope"
        if (works && (spot_opens_with_part(r, hit, &from, &to) || subject_before(r, hit->from, &from, &to) ||
                      spot_joined_before(r, hit->from, &from, &to))) {
            spot.part_from = from;
            spot.part_to = to;
        }
        return spot;
    }
    const struct tokens *tokens = &r->note->tokens; // "[rust inside] and dents on the rim"
    bool inside = hit->to > hit->from + 1 && spot_adverb(tokens, hit->to - 1) &&
                  (tokens->at[hit->to - 1].stop != STOP_NONE || ANY(tokens, hit->to, "and", "but", "with"));
    to = inside ? 0 : spot_place_of(r, hit, &from);
    size_t within, end; // "rough spot on the edge" of the lid
    if (to && token_is(tokens, hit->to, "of") && spot_place_inside(r, hit, &within, &end) && end == hit->to)
        from = within;
    if (to || spot_place_inside(r, hit, &from, &to)) {
        spot.where_from = from;
        spot.where_to = to;
    }
    find_part(r, hit, &spot);
    take_parted(r, hit, &spot);
    if (is_of_next(r, hit, &spot)) spot.where_from = spot.where_to = 0;
    bool nowhere = spot.where_to == spot.where_from && spot.part_to == spot.part_from;
    if (nowhere && spot_let_out(r, hit, &spot)) return spot;
    if (nowhere && hit->kinds[0]->class == CLASS_REPAIR && !has_own_subject(r, hit) &&
        spot_mended(r, hit, &from, &to)) {
        spot.part_from = from;
        spot.part_to = to;
        nowhere = false;
    }
    if (!spot.where_to && hit->kinds[0]->form == ABSENCE && spot_owner(r, hit->from, &from, &to)) {
        spot.where_from = from;
        spot.where_to = to;
    }
    if (!nowhere && spot.part_to == spot.part_from && hit->kinds[0]->form == FAULT &&
        spot.where_from > hit->from) {
        struct spot shared = {0}; // "shade torn on the seam and browned by the bulb": of the shade
        bool headed = spot_under_colon(r, hit, &shared.part_from, &shared.part_to) ||
                      spot_of_heading(r, hit, &shared.part_from, &shared.part_to) ||
                      ((degree_is_state(r, hit) || ANY(&r->note->tokens, hit->from, "is", "are") ||
                        text_same(hit->kinds[0]->rule.id, "seized")) && // "moves but drags near the end"
                       spot_of_contrast(r, hit->from, &shared.part_from, &shared.part_to));
        if (!headed) shared = (struct spot){0}, spot_share_part(r, hit, &shared);
        if (shared.part_to == shared.part_from &&
            spot_of_one(r, hit, &shared)) { // "one's split from the ferrule"
            bool piece = shared.part_to > shared.part_from && shared.where_to == shared.where_from;
            if (!piece) shared.part_from = shared.part_to = 0;
            spot.which = piece ? shared.which : spot.which;
        }
        spot.part_from = shared.part_from;
        spot.part_to = shared.part_to;
    }
    if (nowhere) find_else(r, hit, &spot);
    spot_part_of_phrase(r, hit, &spot);
    nowhere &= spot.where_to == spot.where_from && spot.part_to == spot.part_from;
    if (nowhere && (spot_of_growth(r, hit, &spot) || spot_within(r, hit, &spot))) return spot;
    if (nowhere) spot_share_part(r, hit, &spot);
    if (nowhere && spot.part_to == spot.part_from) spot_share_place(r, hit, &spot);
    nowhere &= spot.where_to == spot.where_from;
    if (nowhere && spot.part_to == spot.part_from) spot_share_contrast(r, hit, &spot);
    if (nowhere && spot.part_to == spot.part_from && hit->kinds[0]->class == CLASS_REPAIR &&
        !has_own_subject(r, hit))
        spot_of_damage(r, hit, &spot);
    if (nowhere && spot.part_to == spot.part_from && spot.where_to == spot.where_from)
        spot_share_seeming(r, hit, &spot);
    if (nowhere && spot.part_to == spot.part_from && spot.where_to == spot.where_from &&
        (spot_topic(r, hit, &from, &to) || spot_called(r, hit, &from, &to))) {
        spot.part_from = from;
        spot.part_to = to;
    }
    if (nowhere && spot.part_to == spot.part_from && spot.where_to == spot.where_from &&
        spot_of_plain_state(r, hit, &spot))
        return spot;
    if (hit->kinds[0]->form != ABSENCE && spot_bearer(r, hit, &spot, &from, &to)) {
        spot.where_from = from;
        spot.where_to = to;
        if (spot.part_to == to) spot.part_from = spot.part_to = 0;
    }
    return spot;
}
