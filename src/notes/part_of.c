// SPDX-License-Identifier: MIT
// A part told with the part that it is on or of: "the switch on the middle arm sticks", "one horn of the
// handle is broken off". The nearer noun alone would name another part, the farther one leave open which.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/place.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_kind(const struct flaw *kind) {
    static const char *const ids[] = {"seized",    "loose-part",  "broken-part", "partly-working",
                                      "zip-fault", "clasp-fault", "dent-bend"};
    for (size_t i = 0; i < COUNT(ids); i++)
        if (text_same(kind->rule.id, ids[i])) return true;
    return false;
}

// A part that can be broken or stuck by itself, and no coat or share of another.
static bool is_head(const struct fault_reader *r, size_t i) {
    static const char *const coats[] = {
        "paint",   "finish", "varnish", "gold",    "gilt",   "glaze",   "veneer", "chrome", "plating",
        "leather", "lining", "print",   "pattern", "color",  "colour",  "silver", "fabric", "enamel",
        "edge",    "edges",  "side",    "sides",   "end",    "ends",    "top",    "bottom", "back",
        "front",   "inside", "outside", "middle",  "corner", "corners", "center", "centre", "surface",
        "part",    "parts",  "piece",   "rest",    "one",    "two",     "bits",   "bit",    "pieces",
        "half",    "most",   "some",    "pair",    "all"};
    const struct tokens *tokens = &r->note->tokens;
    return tokens->at[i].kind == TOKEN_WORD && r->part[i] && !r->scope.fault[i] &&
           r->note->taken[i] != TAKEN_TYPE && !token_among(tokens, i, coats, COUNT(coats));
}

static bool is_article(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "the", "its", "one", "each", "this", "that");
}

// "Lights and hums but no stations": what it does, where a lamp has lights.
static bool is_deed(const struct fault_reader *r, const struct fault_hit *hit, const char *part) {
    const struct tokens *tokens = &r->note->tokens;
    size_t i = scope_sentence_start(&r->scope, hit->from);
    return text_same(part, tokens->at[i].fold) &&
           ANY(tokens, i, "lights", "chimes", "rings", "plays", "hums", "ticks", "strikes", "turns", "runs",
               "glows", "spins", "records", "heats", "rocks", "whistles", "pumps", "locks", "winds", "feeds",
               "blows") &&
           ANY(tokens, i + 1, "and", "but", "up", "fine", "warm", "cold", "hot");
}

const char *fault_part_of(const struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind,
                          const struct spot *spot, const char *part) {
    const struct tokens *tokens = &r->note->tokens;
    static const char *const stuffs[] = {"straw",   "stuffing", "sawdust",  "kapok",
                                         "filling", "batting",  "excelsior"};
    size_t from = spot->part_from, to = spot->part_to;
    for (size_t i = 0; part && i < COUNT(stuffs); i++) // "straw is coming out of the foot": of the hole
        if (text_same(part, stuffs[i]) && kind->form == FAULT) return NULL;
    if (part && text_same(part, "drawer") && hit->from > 1 && ANY(tokens, hit->from - 1, "pull", "pulls") &&
        ANY(tokens, hit->from - 2, "drawer", "drawers"))
        return fault_place(r->note, hit->from - 2, hit->from);
    if (part && (text_same(part, "drawer") || text_same(part, "door")) && to > from &&
        ANY(tokens, to, "pull", "pulls", "knob", "knobs", "handle", "handles"))
        return fault_place(r->note, from, to + 1);
    if (part && is_deed(r, hit, part)) return NULL;
    size_t behind = hit->to; // "all keys play except the low F": that one
    if (part && is_kind(kind) && behind > 1 && token_is(tokens, behind - 1, "the") &&
        ANY(tokens, behind - 2, "except", "but", "save")) {
        while (behind < tokens->count && tokens->at[behind].stop == STOP_NONE && behind < hit->to + 3)
            behind++;
        if (behind > hit->to) return fault_place(r->note, hit->to, behind);
    }
    size_t size = part ? strlen(part) : 0; // "one leg folds by itself"
    if (size > 9 && text_same(part + size - 9, "'s coming"))
        return arena_copy(r->note->arena, part, size - 9);
    if (size > 6 && text_same(part + size - 6, " folds") && token_is(tokens, hit->from, "folds"))
        return arena_copy(r->note->arena, part, size - 6);
    if (part && text_same(part, "window") && ANY(tokens, to - 1, "window"))
        return NULL; // where the sun came in
    if (!part || to <= from || from > hit->from || !is_kind(kind)) return part;
    // "one horn | of the handle is broken": the owner is a word of the hit
    if (to == from + 1 && is_head(r, from) && to + 2 == hit->from && token_is(tokens, to, "of") &&
        is_article(tokens, to + 1) && r->part[to + 2] && hit->to > to + 3)
        return fault_place(r->note, from, to + 3);
    // "the switch | on the middle arm | sticks"
    if (from > 3 && !is_article(tokens, from - 1) && is_article(tokens, from - 2)) from--; // "the middle arm"
    if (from < 3 || to > hit->from || hit->from > to + 1 || !is_article(tokens, from - 1) ||
        !ANY(tokens, from - 2, "on", "of", "in", "at", "inside") || !is_head(r, from - 3))
        return part;
    size_t lead = from - 3;
    bool opens = lead == 0 || tokens->at[lead - 1].stop != STOP_NONE || is_article(tokens, lead - 1) ||
                 ANY(tokens, lead - 1, "and", "but");
    return opens ? fault_place(r->note, lead, to) : part;
}

// "Runs if you lay it on its face", "rocks on a glass top": how or on what it was tried.
bool fault_is_doer(const char *part) {
    static const char *const doers[] = {"sun",   "sunlight", "heat",  "damp",  "weather", "rain",
                                        "frost", "moth",     "moths", "mouse", "mice",    "dog",
                                        "puppy", "kids",     "age",   "time"};
    for (size_t i = 0; i < sizeof doers / sizeof *doers; i++)
        if (text_same(part, doers[i])) return true;
    return false;
}

bool fault_stands_there(const struct flaw *kind, const char *where) {
    static const char *const sides[] = {"face", "back", "side", "its face", "its back", "its side"};
    static const char *const flats[] = {"glass top",  "flat surface",  "table",      "counter",
                                        "flat top",   "stove",         "flat table", "level",
                                        "countertop", "level surface", "floor"};
    for (size_t i = 0; text_same(kind->rule.id, "partly-working") && i < COUNT(sides); i++)
        if (text_same(where, sides[i])) return true;
    if (text_same(kind->rule.id, "edge-wear") && text_same(where, "board"))
        return true; // "down to the board"
    for (size_t i = 0; text_same(kind->rule.id, "warped") && i < COUNT(flats); i++)
        if (text_same(where, flats[i])) return true;
    return false;
}

// "A hairline in the cup coming down from the rim": the place goes on to where it begins or ends.
size_t spot_course_end(const struct fault_reader *r, const struct spot *spot) {
    const struct tokens *tokens = &r->note->tokens;
    size_t at = spot->where_to;
    if (spot->where_to <= spot->where_from) return spot->where_to;
    if (!ANY(tokens, at, "coming", "going", "running", "leading", "starting", "extending", "heading"))
        return spot->where_to;
    at++;
    if (ANY(tokens, at, "down", "up", "in", "out", "across", "over")) at++;
    if (!ANY(tokens, at, "from", "to", "toward", "towards", "into") || !is_article(tokens, at + 1) ||
        at + 2 >= tokens->count || !r->part[at + 2])
        return spot->where_to;
    for (size_t i = spot->where_to; i < at + 3; i++)
        if (tokens->at[i].stop != STOP_NONE || r->scope.fault[i]) return spot->where_to;
    return at + 3;
}

// "A bubble in the glass, from the factory": a flaw of the making is one all the same.
bool fault_is_as_made(const struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind) {
    size_t cue = r->scope.cue[hit->from];
    return text_same(kind->rule.id, "firing-flaw") && cue < r->note->tokens.count &&
           ANY(&r->note->tokens, cue, "from") && ANY(&r->note->tokens, cue + 2, "factory", "maker", "start");
}
