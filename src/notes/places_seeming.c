// SPDX-License-Identifier: MIT
// What looks like a place of a fault and is none: the room where the thing stood, and what did the damage.
// And what does not look like one and is: the figures of a dial.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// "Faded from standing in the window", "rocks on a flat stove": where it stood, and no place on it.
bool place_is_of_room(const struct tokens *tokens, size_t i) {
    static const char *const rooms[] = {
        "window", "windowsill", "sun",   "sunlight", "stove",   "hob",   "floor",   "garage", "shed",
        "loft",   "attic",      "barn",  "table",    "rain",    "bench", "worktop", "ground", "surface",
        "cellar", "greenhouse", "light", "weather",  "counter", "shelf", "tray",    "hearth"};
    static const char *const verbs[] = {
        "standing",      "stood",   "stands", "sat",   "sits",    "sitting",  "kept",    "left",
        "hung",          "hanging", "stored", "been",  "sliding", "dragging", "rubbing", "scraping",
        "sliding about", "wobbles", "wobbly", "rocks", "rocky",   "lived",    "rock",    "wobble"};
    static const char *const flats[] = {"flat", "level", "hard", "south", "kitchen", "shop", "sunny"};
    // "Broken off a long time back": when, and not where
    size_t when = i + (ANY(tokens, i, "off", "from", "up", "in") ? 1 : 0);
    if (when > i && ANY(tokens, when, "a", "some", "quite")) when += ANY(tokens, when + 1, "a") ? 2 : 1;
    if (when > i &&
        ((ANY(tokens, when, "long") && ANY(tokens, when + 1, "time", "while")) ||
         (ANY(tokens, when, "time", "while", "years", "ages") && ANY(tokens, when + 1, "back", "ago"))))
        return true;
    if (token_is(tokens, i, "in") && ANY(tokens, i + 1, "the", "a", "my") &&
        ANY(tokens, i + 2, "dishwasher", "wash", "washer", "dryer", "laundry", "microwave", "mail", "move"))
        return true; // "lost its print in the dishwasher"
    if (!i || !ANY(tokens, i, "in", "on", "by") || !token_among(tokens, i - 1, verbs, COUNT(verbs)))
        return false;
    size_t at = i + 1;
    if (ANY(tokens, at, "the", "a", "my", "our", "his", "her")) at++;
    if (token_among(tokens, at, flats, COUNT(flats))) at++;
    return token_among(tokens, at, rooms, COUNT(rooms));
}

// "Chipped at the 2", "a crack by the 7" of what has a dial: the end of the figure, 0 where there is none.
size_t place_dial_figure(const struct fault_reader *r, size_t i) {
    enum { HOURS = 12 };
    const struct tokens *tokens = &r->note->tokens;
    const struct family *family = r->note->record->family;
    bool dial = family && text_same(family->rule.id, "clocks-watches");
    if (!dial || !ANY(tokens, i, "at", "by", "near", "over", "above", "below", "under", "across", "between"))
        return 0;
    size_t at = i + (token_is(tokens, i + 1, "the") ? 2 : 1);
    if (at >= tokens->count || tokens->at[at].kind != TOKEN_FIGURE || r->note->taken[at] == TAKEN_MEASURE)
        return 0;
    int hour = degrees_number(tokens, at);
    bool the = at == i + 2 || token_is(tokens, at + 1, "o'clock");
    return the && hour > 0 && hour <= HOURS ? at + 1 : 0;
}

// "Scratched inside from the whisk", "worn in the middle from a spoon": what did it, and no place. "Gone
// from the lid", "a crack from the rim" tell places.
bool place_is_of_doer(const struct fault_reader *r, size_t i) {
    static const char *const places[] = {
        "rim",    "lip",  "edge",   "top",    "bottom", "base",   "neck",  "foot",   "spout",
        "handle", "side", "back",   "front",  "end",    "corner", "mouth", "inside", "shoulder",
        "hinge",  "lid",  "middle", "center", "centre", "hole",   "one",   "left",   "right",
        "point",  "seam", "joint",  "tap",    "valve",  "crack",  "split"};
    static const char *const done[] = {"worn",   "rubbed",  "inside",    "outside", "middle", "underneath",
                                       "marked", "scuffed", "scratched", "stained", "dented", "faded"};
    static const char *const makers[] = {"glass", "cup",    "mug",    "vase", "pot",    "plant", "pan",
                                         "can",   "candle", "bottle", "tin",  "kettle", "iron",  "plate"};
    const struct tokens *tokens = &r->note->tokens;
    if (token_is(tokens, i, "from") && ANY(tokens, i + 1, "a", "an") &&
        token_among(tokens, i + 2, makers, sizeof makers / sizeof *makers))
        return true; // "a ring from a glass"
    static const char *const lost[] = {"missing", "gone",  "lost",   "off",   "out",   "away",  "chip",
                                       "chips",   "piece", "broken", "flake", "crack", "split", "taken",
                                       "bit",     "chunk", "paint",  "all",   "came",  "come",  "runs"};
    bool any = i > 0 && token_is(tokens, i, "from") && // "scratches on the back from a belt buckle"
               ANY(tokens, i + 1, "a", "an", "someone's", "somebody's");
    if (any && !token_among(tokens, i - 1, lost, sizeof lost / sizeof *lost) &&
        !token_among(tokens, i + 2, places, sizeof places / sizeof *places) &&
        !token_among(tokens, i + 3, places, sizeof places / sizeof *places) &&
        !token_is(tokens, i + 3, "of") && !token_is(tokens, i + 3, "to"))
        return true;
    bool down =
        token_is(tokens, i, "to") && i > 0 && token_is(tokens, i - 1, "down"); // "frayed down to the wire"
    if (down || (token_is(tokens, i, "down") && token_is(tokens, i + 1, "to"))) {
        size_t bared = i + (down ? 1 : 2);
        while (spot_article(tokens, bared) || token_is(tokens, bared, "bare")) bared++;
        if (ANY(tokens, bared, "wire", "wires", "cord", "cords", "canvas", "metal", "copper", "wood", "core",
                "weft", "steel", "threads"))
            return true;
    }
    if (token_is(tokens, i, "by") && ANY(tokens, i + 1, "tape", "string", "wire", "cord", "glue", "twine"))
        return true; // "held by tape"
    if (!i || !token_is(tokens, i, "from") || !token_among(tokens, i - 1, done, COUNT(done))) return false;
    size_t at = i + 1;
    while (spot_article(tokens, at)) at++;
    return !token_among(tokens, at, places, COUNT(places)) && !token_is(tokens, at + 1, "of");
}

bool place_is_aside(const struct tokens *tokens, size_t at, size_t to) {
    return ANY(tokens, at, "which", "that", "who", "though", "also") ||
           (token_is(tokens, at, "the") && spot_side(tokens, at + 1) && at + 5 > to);
}

// "Dents both ends", "rusty one side": without its preposition.
size_t place_bare_sides(const struct tokens *tokens, size_t i) {
    static const char *const sides[] = {"end", "ends", "side", "sides", "edge", "edges", "corner", "corners"};
    static const char *const which[] = {"both", "each", "either", "one"};
    bool ends = i + 2 >= tokens->count || tokens->at[i + 2].stop != STOP_NONE ||
                ANY(tokens, i + 2, "where", "by", "from", "and", "but", "so", "with", "near", "only", "when");
    return ends && token_among(tokens, i, which, COUNT(which)) && tokens->at[i].stop == STOP_NONE &&
                   token_among(tokens, i + 1, sides, COUNT(sides))
               ? i + 2
               : 0;
}

// "Cracked where it bends", "worn where the arm rests": the place told by what happens there.
size_t place_in_clause(const struct tokens *tokens, size_t i) {
    static const char *const subjects[] = {"it",    "they",   "the",    "you",     "your", "its", "one",
                                           "two",   "hands",  "hand",   "fingers", "feet", "his", "her",
                                           "their", "people", "thumbs", "straps",  "ropes"};
    static const char *const others[] = {"someone", "somebody", "i",   "we",  "he",   "she", "was",
                                         "were",    "should",   "has", "had", "been", "is",  "are"};
    static const char *const ends[] = {"and", "but", "so", "which", "though", "because"};
    enum { LEAST = 3, MOST = 7 };
    if (i > 0 && token_is(tokens, i - 1, "where")) i--; // of the fault's own words: "worn where you hold it"
    if (!token_is(tokens, i, "where") || !token_among(tokens, i + 1, subjects, COUNT(subjects))) return 0;
    if (i > 0 && ANY(tokens, i - 1, "it's", "that's", "is", "they're", "its", "just", "only"))
        return 0; // "that's not a dent, it's where the handle folds in"
    size_t to = i + 1;
    while (to < tokens->count && to < i + MOST && tokens->at[to].stop == STOP_NONE &&
           tokens->at[to].kind == TOKEN_WORD && !token_among(tokens, to, ends, COUNT(ends)) &&
           !token_among(tokens, to, others, COUNT(others)))
        to++;
    bool ended =
        to >= tokens->count || tokens->at[to].stop != STOP_NONE || token_among(tokens, to, ends, COUNT(ends));
    for (size_t k = i + 1; k < to || (k == to && to < tokens->count); k++)
        if (token_among(tokens, k, others, COUNT(others))) return 0; // what was done there, not where
    return ended && to >= i + LEAST ? to : 0;
}

// "In a patch along one side", "in a few spots near the hem": where the place begins that tells more; or 0.
size_t place_of_patch(const struct tokens *tokens, size_t i) {
    if (!ANY(tokens, i, "in", "for", "over") ||
        !ANY(tokens, i + 1, "a", "an", "one", "two", "some", "several"))
        return 0;
    size_t at = i + 2;
    while (at < i + 5 && ANY(tokens, at, "small", "big", "little", "few", "couple", "of", "long", "short",
                             "large", "bare", "bad", "single", "wide"))
        at++;
    if (!ANY(tokens, at, "patch", "patches", "spot", "spots", "stretch", "strip", "area", "areas", "section",
             "place", "places", "line", "row", "streak", "band") ||
        tokens->at[at].stop != STOP_NONE)
        return 0;
    return ANY(tokens, at + 1, "along", "near", "on", "at", "by", "around", "round", "in", "down", "under",
               "inside", "across", "below", "above")
               ? at + 1
               : 0;
}

// "Knife marks on the top where the cake sits": the words of the fault name the place, and the clause at
// `*from` only says why there. The token behind that place, or 0.
size_t place_before_clause(const struct fault_reader *r, const struct fault_hit *hit, size_t *from) {
    const struct tokens *tokens = &r->note->tokens;
    size_t at, end = *from < hit->to ? *from : hit->to;
    if (!token_is(tokens, *from, "where")) return 0;
    for (size_t k = hit->from + 1; k + 1 < end; k++) {
        size_t own = ANY(tokens, k, "on", "in", "at", "along") ? spot_place_at(r, k, &at) : 0;
        if (!own || own > *from) continue;
        *from = at;
        return own;
    }
    return 0;
}

bool spot_in_clause(const struct tokens *tokens, size_t i) {
    static const char *const uses[] = {"bends", "bend",    "folds",  "fold",  "rubs",    "rub",    "flexes",
                                       "flex",  "creases", "sticks", "rests", "buckles", "rubbed", "rested"};
    enum { BACK = 6 };
    if (!token_among(tokens, i, uses, COUNT(uses))) return false;
    for (size_t at = i; at > 0 && at + BACK > i; at--)
        if (place_in_clause(tokens, at - 1) > i) return true;
    return false;
}

// "In the canvas near the strap": the canvas; NULL where no place is told.
const char *place_itself(const struct fault_reader *r, const struct spot *spot) {
    size_t to = spot->where_from + 1;
    if (spot->where_to <= spot->where_from) return NULL;
    while (to < spot->where_to &&
           !ANY(&r->note->tokens, to, "near", "by", "beside", "beneath", "below", "above"))
        to++;
    return fault_folded(r->note, spot->where_from, to);
}

// "A piece missing from one end": what is away from there is missing there.
const char *place_of_loss(const struct flaw *kind, const char *where) {
    static const char *const leads[] = {"from the ", "from its ", "from "};
    if (!where || !text_same(kind->rule.id, "broken-part")) return where;
    for (size_t i = 0; i < sizeof leads / sizeof *leads; i++)
        if (!strncmp(where, leads[i], strlen(leads[i]))) return where + strlen(leads[i]);
    return where;
}

// "Split in the plinth", "foxing in the sky": right behind damage what stands there is a place of it, known
// as a part or not; but when and under what it happened is none.
size_t spot_unnamed(const struct fault_reader *r, const struct fault_hit *hit, size_t *from) {
    static const char *const ways[] = {"in",    "on",    "along", "across", "round", "around",
                                       "under", "below", "above", "near",   "over",  "at"};
    static const char *const sides[] = {"lower", "upper", "inner", "outer", "left", "right", "front", "main"};
    static const char *const others[] = {
        "past",   "morning",       "post",       "move",    "photo",    "photos",  "picture",    "pictures",
        "pics",   "light",         "sun",        "wash",    "world",    "whole",   "main",       "slightest",
        "least",  "market",        "garage",     "shed",    "attic",    "loft",    "damp",       "rain",
        "moment", "time",          "end",        "way",     "same",     "wet",     "dry",        "house",
        "room",   "cold",          "weather",    "first",   "day",      "kiln",    "making",     "process",
        "style",  "usual",         "field",      "shop",    "barn",     "cellar",  "basement",   "kitchen",
        "yard",   "road",          "rest",       "other",   "others",   "listing", "title",      "set",
        "lot",    "group",         "pair",       "family",  "dark",     "bottle",  "ones",       "one",
        "years",  "war",           "winter",     "heat",    "frost",    "oven",    "water",      "process",
        "hand",   "circumstances", "impression", "move",    "clumsy",   "trade",   "face",       "video",
        "years",  "test",          "air",        "open",    "street",   "lens",    "auction",    "sale",
        "fair",   "market",        "beach",      "factory", "start",    "outset",  "bench",      "hands",
        "minute", "church",        "school",     "hall",    "cleaners", "store",   "dishwasher", "washer",
        "dryer",  "microwave"};
    const struct tokens *tokens = &r->note->tokens;
    size_t i = hit->to;
    bool off = i > hit->from + 1 && token_is(tokens, i - 1, "off"); // "paint flaking off the beard"
    static const char *const comes[] = {"flaking", "flaked", "peeling", "peeled",   "coming",
                                        "come",    "rubbed", "worn",    "chipping", "wearing"};
    bool comes_off = token_is(tokens, i, "off") && token_among(tokens, i - 1, comes, COUNT(comes));
    if (comes_off) i++, off = true; // "paint flaking off the hat"
    if (!off && i > hit->from + 2 && token_is(tokens, i - 1, "the") &&
        token_among(tokens, i - 2, ways, COUNT(ways)))
        i -= 2; // "grease in the", of the fault's own words
    while (ANY(tokens, i, "down", "up", "way", "deep") && tokens->at[i].stop == STOP_NONE &&
           ANY(tokens, i + 1, "in", "on", "at", "under", "near", "down"))
        i++; // "rust down in the grooves"
    if (off || (i > hit->from + 1 && ANY(tokens, i - 1, "on", "in") && ANY(tokens, i, "his", "her")))
        i--; // "paint chipped on his hat", where "on" is of the fault's own words
    enum flaw_class class = hit->kinds[0]->class;
    bool mend = class == CLASS_REPAIR &&
                (ANY(tokens, i, "at", "near", "along") || // "glue at the wrist"
                 (ANY(tokens, i, "on", "around") &&
                  ANY(tokens, i - 1, "paint", "gold", "gilt", "glaze", "varnish", "finish", "color")));
    if (hit->kinds[0]->form != FAULT || (class != CLASS_DAMAGE && class != CLASS_DIRT && !mend)) return 0;
    if (i + 2 >= tokens->count || (!off && !token_among(tokens, i, ways, COUNT(ways))) ||
        !ANY(tokens, i + 1, "the", "his", "her"))
        return 0;
    size_t at = i + 2;
    while (token_among(tokens, at, sides, COUNT(sides))) at++; // "along the lower bout"
    static const char *const portions[] = {"part", "section", "chapter", "pages", "half", "area"};
    size_t first = at; // "in the pudding section"
    if (at + 1 < tokens->count && tokens->at[at].stop == STOP_NONE && !r->scope.fault[at] &&
        tokens->at[at].kind == TOKEN_WORD && token_among(tokens, at + 1, portions, COUNT(portions)))
        at++;
    if (at >= tokens->count || tokens->at[at].kind != TOKEN_WORD || tokens->at[at - 1].stop != STOP_NONE ||
        r->scope.fault[at] || r->note->taken[at] == TAKEN_TYPE ||
        token_among(tokens, at, others, COUNT(others)))
        return 0;
    bool ends =
        at + 1 >= tokens->count || tokens->at[at + 1].stop != STOP_NONE ||
        ANY(tokens, at + 1, "and", "but", "that", "which", "where", "you", "when", "if", "though", "so");
    *from = off || ANY(tokens, i, "in", "on", "at") ? first : i;
    return ends ? at + 1 : 0;
}
