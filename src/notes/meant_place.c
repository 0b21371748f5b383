// SPDX-License-Identifier: MIT
// Words of a fault in a clause that only tells where the fault before it is: "frayed where it goes through
// the hole", "lifting where a plant pot stood"; and words for a trial of goods that nobody would run.
#include "notes/any.h"
#include "notes/faults.h"
#include "notes/traces.h"
#include "text/order.h"

// The "where" that leads the clause of token `i`; SIZE_MAX if none does.
static size_t where_before(const struct tokens *tokens, size_t i) {
    enum { FAR = 9 };
    for (size_t at = i; at > 0 && at + FAR > i; at--) {
        if (tokens->at[at - 1].stop != STOP_NONE || ANY(tokens, at - 1, "and", "but")) return SIZE_MAX;
        if (token_is(tokens, at - 1, "where")) return at - 1;
    }
    return SIZE_MAX;
}

// Is a fault told before token `i`, in its sentence?
static bool told_before(const struct fault_reader *r, size_t i) {
    size_t start = scope_sentence_start(&r->scope, i);
    for (size_t k = 0; k < r->hit_count && r->hits[k].to <= i; k++)
        if (r->hits[k].from >= start && r->hits[k].kinds[0]->form != ABSENCE) return true;
    return false;
}

// "Felt gone from the base", "fringe missing from the edge": that stuff lacks, and nothing is chipped off.
static bool is_stuff_gone(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const bits[] = {"bit",    "bits",   "piece",  "pieces", "chip",  "chips", "flake",
                                       "lump",   "nick",   "sliver", "chunk",  "bite",  "shard", "splinter",
                                       "flakes", "corner", "chunks", "crumb",  "speck", "spot",  "nibble"};
    const struct tokens *tokens = &r->note->tokens;
    size_t i = hit->from;
    return text_same(hit->kinds[0]->rule.id, "chip") && i > 0 && ANY(tokens, i, "gone", "missing") &&
           tokens->at[i - 1].stop == STOP_NONE && tokens->at[i - 1].kind == TOKEN_WORD &&
           !token_among(tokens, i - 1, bits, sizeof bits / sizeof *bits) && spot_plain_noun(r, i - 1);
}

// "The lid has warped so you see daylight down one side": between the two, and through no hole.
static bool is_gap_of_warp(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const kinds[] = {"hole", "crack", "crack-through", "wood-split"};
    const struct tokens *tokens = &r->note->tokens;
    bool light = false, kind = false;
    for (size_t i = hit->from; i < hit->to; i++) light |= ANY(tokens, i, "daylight", "light");
    for (size_t k = 0; light && k < sizeof kinds / sizeof *kinds; k++)
        kind |= text_same(hit->kinds[0]->rule.id, kinds[k]);
    if (!kind || ANY(tokens, hit->to, "through") || ANY(tokens, hit->to - 1, "through")) return false;
    size_t start = scope_sentence_start(&r->scope, hit->from);
    for (size_t k = 0; k < r->hit_count && r->hits[k].to <= hit->from; k++)
        if (r->hits[k].from >= start && (text_same(r->hits[k].kinds[0]->rule.id, "warped") ||
                                         text_same(r->hits[k].kinds[0]->rule.id, "dent-bend")))
            return true;
    return false;
}

// "Nothing a boil wouldn't shift", "nothing a brush won't cure": that it is easily put right.
static bool is_of_cure(const struct tokens *tokens, size_t i) {
    enum { FAR = 8 };
    if (!ANY(tokens, i, "wouldn't", "won't", "couldn't", "can't", "wouldnt", "wont", "doesn't")) return false;
    for (size_t k = i; k > 0 && k + FAR > i && tokens->at[k - 1].stop == STOP_NONE; k--)
        if (token_is(tokens, k - 1, "nothing")) return true;
    return false;
}

// "Patent gone cloudy on one toe": turned so, and the toe is there.
static bool is_turned(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const states[] = {"cloudy", "dull",   "hard",  "stiff",  "green",   "dark",  "black",
                                         "brown",  "yellow", "white", "soft",   "thin",    "shiny", "flat",
                                         "baggy",  "sticky", "tacky", "dry",    "milky",   "grey",  "gray",
                                         "fluffy", "bobbly", "pale",  "crispy", "brittle", "pink",  "rusty"};
    const struct tokens *tokens = &r->note->tokens;
    bool lost = hit->kinds[0]->form == ABSENCE || text_same(hit->kinds[0]->rule.id, "broken-part");
    size_t i = hit->from + (ANY(tokens, hit->from, "gone") ? 0u : 1u);
    if (!lost || !hit->near || !ANY(tokens, i, "gone", "turned", "went")) return false;
    i += 1u + (ANY(tokens, i + 1, "a", "very", "rather", "all", "quite") ? 1u : 0u);
    i += ANY(tokens, i, "bit", "little", "touch") ? 1u : 0u;
    return i < hit->to && token_among(tokens, i, states, sizeof states / sizeof *states);
}

// "Cane has gone in one corner": it is the cane that has, and the corner is where.
static bool is_gone_at(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const bits[] = {"bit",  "piece", "pieces", "chip", "chunk",
                                       "bits", "lump",  "end",    "tip"};
    const struct tokens *tokens = &r->note->tokens;
    size_t i = hit->from;
    if (!text_same(hit->kinds[0]->rule.id, "broken-part") || !hit->near || i < 2 ||
        !ANY(tokens, i, "gone", "missing") ||
        !ANY(tokens, i + 1, "in", "at", "on", "along", "from", "round") ||
        tokens->at[i - 1].stop != STOP_NONE)
        return false;
    size_t noun = i - 1;
    while (noun > 0 && ANY(tokens, noun, "has", "have", "is", "are", "all", "completely")) noun--;
    return tokens->at[noun].stop == STOP_NONE && tokens->at[noun].kind == TOKEN_WORD &&
           !token_among(tokens, noun, bits, sizeof bits / sizeof *bits) && spot_plain_noun(r, noun);
}

static bool is_come_off(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (ANY(tokens, hit->from, "torn", "ripped") && hit->from > 0 &&
        (ANY(tokens, hit->to, "off", "away") || ANY(tokens, hit->to - 1, "off", "away")))
        for (size_t i = hit->from; i > 0 && i + 4 > hit->from && tokens->at[i - 1].stop == STOP_NONE; i--)
            if (ANY(tokens, i - 1, "handle", "handles", "knob", "hook", "loop", "ring", "buckle", "lug",
                    "clip", "surcingle", "badge", "hinge", "foot", "leg", "bracket"))
                return true; // "the handle has torn off": come off, and no tear
    if (ANY(tokens, hit->from, "see", "seen", "tell") && ANY(tokens, hit->from + 1, "where"))
        for (size_t k = scope_sentence_start(&r->scope, hit->from); k < hit->from; k++)
            if (ANY(tokens, k, "missing", "gone", "lost", "off"))
                return true; // "badge missing, you can see …"
    return false;
}

static bool is_no_ill(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (fault_is_only_said(r, hit)) return true;
    const char *id = hit->kinds[0]->rule.id;
    if (text_same(id, "not-working") && token_is(tokens, hit->from, "nothing") &&
        ANY(tokens, hit->to - 1, "moves", "shifts") && !running_can(r->note))
        return true; // "solid, nothing moves"
    if (text_same(id, "leather-crack") && hit->to == hit->from + 1 &&
        ANY(tokens, hit->from, "dry", "hard", "parched") && r->note->record->family &&
        text_same(r->note->record->family->rule.id, "furniture") &&
        !kind_note_has(r, "leather hide skiver rexine suede pigskin straps"))
        return true; // of wood
    static const char *const unmarked[] = {"linens", "clothing", "footwear", "paper",
                                           "books",  "bags",     "music",    "games-puzzles"};
    bool marks = text_same(id, "authenticity-unverified") && token_is(tokens, hit->from, "no") &&
                 ANY(tokens, hit->to - 1, "marks") && !ANY(tokens, hit->to, "inside", "underneath", "that");
    for (size_t k = 0; marks && r->note->record->family && k < sizeof unmarked / sizeof *unmarked; k++)
        if (text_same(r->note->record->family->rule.id, unmarked[k]))
            return true; // "clean, no marks" of cloth: none that soil it
    if (marks && ANY(tokens, hit->to, "or", "nor", "and") && hit->to + 1 < tokens->count &&
        r->scope.fault[hit->to + 1] && !r->part[hit->to + 1])
        return true; // "no marks or scuffs"
    if (ANY(tokens, hit->from, "from") && hit->from > 0 && ANY(tokens, hit->from - 1, "apart", "aside"))
        return true;
    if (text_same(id, "wear-unspecified") && hit->from > 1 && token_is(tokens, hit->to - 1, "worn") &&
        ANY(tokens, hit->from - 1, "was", "were") &&
        ANY(tokens, hit->from - 2, "it", "they", "dress", "she", "he"))
        return true; // "in its bag since it was worn": had on
    if (text_same(id, "powers-on-only") &&
        (ANY(tokens, hit->to - 1, "when", "if", "as") || ANY(tokens, hit->to, "when", "if", "as")))
        for (size_t k = hit->to; k < hit->to + 4 && k < tokens->count && tokens->at[k - 1].stop == STOP_NONE;
             k++)
            if (ANY(tokens, k, "push", "pushed", "pull", "pulled", "wind", "wound", "crank", "cranked",
                    "turn", "shake", "shaken", "squeeze", "squeezed", "roll", "rolled", "rolls", "walk",
                    "move", "moved"))
                return true; // by hand, of what no current runs
    bool fired = r->note->record->family && (text_same(r->note->record->family->rule.id, "ceramics") ||
                                             text_same(r->note->record->family->rule.id, "glassware"));
    if (text_same(id, "fading") && fired && hit->to > hit->from + 2 &&
        ANY(tokens, hit->from + 1, "going", "fading", "shading", "turning", "running", "blending") &&
        ANY(tokens, hit->from + 2, "to", "into"))
        return true; // "green going to rust at the foot": how it is glazed
    if (text_same(id, "warped") && token_is(tokens, hit->to - 1, "dished") && hit->to == hit->from + 1 &&
        tokens->at[hit->from].stop == STOP_NONE && hit->from > 0 &&
        (ANY(tokens, hit->to, "seat", "seats", "top", "tray", "well", "center") ||
         ANY(tokens, hit->to + 1, "seat", "seats", "top")) &&
        !ANY(tokens, hit->from - 1, "badly", "slightly", "bit", "worn", "has", "is"))
        return true; // "dished seat": made so
    bool made = text_same(id, "hole") && ANY(tokens, hit->to - 1, "hole", "holes") && hit->to > 1 &&
                ANY(tokens, hit->to - 2, "hook", "hanging", "nail", "peg", "hanger", "screw", "mounting",
                    "string", "cord", "buckle", "lace");
    for (size_t k = hit->to;
         made && k < hit->to + 6 && k < tokens->count && tokens->at[k - 1].stop == STOP_NONE; k++)
        if (ANY(tokens, k, "is", "are") && ANY(tokens, k + 1, "fine", "good", "sound", "intact", "clean",
                                               "clear", "tight", "strong", "ok", "okay"))
            return true; // "the nail hole at the top is fine"
    if (text_same(id, "seized") && token_is(tokens, hit->from, "stuck") && hit->from > 0 &&
        ANY(tokens, hit->from - 1, "been") && ANY(tokens, hit->to, "in", "down", "on"))
        return true; // cards of an album
    if (ANY(tokens, hit->to - 1, "off", "out") && ANY(tokens, hit->to, "for") &&
        ANY(tokens, hit->to + 1, "transport", "storage", "travel", "posting", "moving", "packing", "shipping",
            "ease"))
        return true; // "legs are off for transport"
    return false;
}

static bool is_as_made(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    const char *id = hit->kinds[0]->rule.id;
    bool wood = r->note->record->family && text_same(r->note->record->family->rule.id, "furniture");
    if (!wood && text_same(id, "tarnish") && ANY(tokens, hit->to - 1, "polished", "cleaned") &&
        !kind_note_has(
            r, "brass copper silver pewter bronze plate plated metal nickel steel iron tin gold lead"))
        return true; // "I haven't polished it"
    if (text_same(id, "broken-part") && hit->near && token_is(tokens, hit->from, "tip") &&
        ANY(tokens, hit->from + 1, "up", "top"))
        return true; // of a table that tips up
    if (text_same(id, "pilling") && ANY(tokens, hit->to - 1, "bobbles", "bobble") &&
        (ANY(tokens, hit->to, "off", "missing", "gone") ||
         ANY(tokens, hit->to + 1, "off", "missing", "gone")))
        return true; // those that were sewn on
    return false;
}

// Of ink that has flaked, of fingers to be minded, of a stain that is washed out, of leather where it has
// bent.
static bool is_of_speech(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    const char *id = hit->kinds[0]->rule.id;
    if (text_same(id, "stain") && ANY(tokens, hit->from, "ink", "paint", "dye", "varnish"))
        for (size_t i = hit->from + 1; i < hit->to; i++) // "ink has flaked in spots"
            if (ANY(tokens, i, "flaked", "flaking", "lifted", "peeled", "cracked", "rubbed", "worn"))
                return true;
    if (text_same(id, "broken-part") && hit->near &&
        ANY(tokens, hit->to - 1, "finger", "fingers", "toe", "toes") &&
        ANY(tokens, hit->to - 2, "your", "my", "his"))
        return true; // "lid stay missing so mind your fingers"
    if (text_same(id, "seized") && token_is(tokens, hit->from, "blocked") && hit->from > 0 &&
        ANY(tokens, hit->from - 1, "initials", "name", "title", "gold", "gilt", "letters", "crest", "design"))
        return true; // stamped into the leather
    if (text_same(id, "wear-rub") && token_is(tokens, hit->from, "where") && told_before(r, hit->from))
        return true; // "finish rubbed where hands go"
    bool cleaned = text_same(id, "fading") || text_same(id, "rim-ground");
    if (cleaned && ANY(tokens, hit->to - 1, "out", "off") && hit->from > 1 &&
        ANY(tokens, hit->from - 1, "it's", "has", "been") && told_before(r, hit->from) &&
        r->scope.stance[hit->from - 1] & STANCE_PAST)
        return true; // "there was a stain but it's washed out"
    if (text_same(id, "dent-bend") && hit->to == hit->from + 1 &&
        ANY(tokens, hit->from, "bent", "folded", "creased") && where_before(tokens, hit->from) != SIZE_MAX &&
        where_before(tokens, hit->from) + 4 > hit->from &&
        ANY(tokens, where_before(tokens, hit->from) + 1, "they've", "it's", "it", "they", "you", "you've") &&
        told_before(r, hit->from))
        return true; // "surface cracks where they've bent"
    return false;
}

bool fault_means_place(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    const char *id = hit->kinds[0]->rule.id;
    if (text_same(id, "hole") && hit->from > 1 && ANY(tokens, hit->to - 1, "hole", "holes") &&
        ANY(tokens, hit->from - 1, "the", "its", "their", "each", "that")) {
        bool way =
            ANY(tokens, hit->from - 2, "through", "into", "round", "around", "past", "by", "at", "from");
        size_t where = way ? where_before(tokens, hit->from - 2) : SIZE_MAX;
        return where != SIZE_MAX && told_before(r, where); // the hole that it goes through
    }
    if (is_of_cure(tokens, hit->from) || (hit->from > 0 && is_of_cure(tokens, hit->from - 1))) return true;
    if (is_come_off(r, hit) || is_no_ill(r, hit) || is_as_made(r, hit)) return true;
    if (is_of_speech(r, hit) || is_stuff_gone(r, hit) || is_turned(r, hit) || is_gone_at(r, hit) ||
        is_gap_of_warp(r, hit))
        return true;
    if (text_same(id, "seized") && hit->to == hit->from + 1 && token_is(tokens, hit->from, "stuck") &&
        hit->from > 0 && tokens->at[hit->from - 1].one != tokens->at[hit->from - 1].fold &&
        tokens->at[hit->from - 1].stop == STOP_NONE && ANY(tokens, hit->to, "on", "onto", "over") &&
        !ANY(tokens, hit->from - 1, "lids", "caps", "tops", "nuts", "rings", "covers", "knobs"))
        return true; // "a screen with scraps stuck on"
    if (text_same(id, "ring-mark") && !ANY(tokens, hit->to - 1, "ring", "rings", "mark", "marks", "circle")) {
        size_t where = token_is(tokens, hit->from, "where") ? hit->from : where_before(tokens, hit->from);
        return where != SIZE_MAX && told_before(r, where);
    }
    if (text_same(id, "working-tested") && hit->to == hit->from + 1) {
        if (r->note->taken[hit->from] == TAKEN_VALUE) return true; // a bolt of ticking
        size_t where = where_before(tokens, hit->from);
        return where != SIZE_MAX && where + 3 > hit->from; // "where it runs through"
    }
    if (text_same(id, "untested") && hit->from > 0 && !running_can(r->note))
        for (size_t i = hit->from; i < hit->to; i++) // "no key so no idea what is inside": of a box
            if (token_is(tokens, i, "key") || (i > 0 && token_is(tokens, i - 1, "key"))) return true;
    return false;
}
