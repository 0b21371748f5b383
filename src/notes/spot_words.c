// SPDX-License-Identifier: MIT
// Which words of a note are parts of the thing or places on it: those of the lists of parts and places, those
// that the rules for flaws name, and a few that no list has a use for.
#include <string.h>

#include "text/order.h"

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/things.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// Words for parts and places that no list has a use for but this one, in the order of their bytes.
static const char *const always[] = {
    "aerial",    "antenna",  "arm",      "arms",       "back",      "backing",   "baize",   "base",
    "bezel",     "blade",    "board",    "body",       "bottom",    "bowl",      "box",     "buckle",
    "button",    "buttons",  "case",     "caster",     "casters",   "castor",    "castors", "center",
    "centre",    "chain",    "clasp",    "claw",       "claws",     "collar",    "cord",    "corner",
    "corners",   "cover",    "crystal",  "cuff",       "cuffs",     "cursor",    "dial",    "division",
    "divisions", "door",     "drawer",   "ear",        "edge",      "edges",     "end",     "endpaper",
    "endpapers", "ends",     "exterior", "face",       "facing",    "feet",      "finish",  "flex",
    "flyleaf",   "focus",    "fold",     "foot",       "frame",     "fret",      "frets",   "fringe",
    "front",     "gilt",     "glass",    "grille",     "gutter",    "hand",      "handle",  "handles",
    "hands",     "head",     "heel",     "heels",      "hem",       "hinge",     "hinges",  "holder",
    "inside",    "interior", "jacket",   "jaw",        "jaws",      "key",       "keys",    "knob",
    "knobs",     "label",    "leg",      "legs",       "lens",      "lid",       "lining",  "lip",
    "margin",    "margins",  "middle",   "mount",      "neck",      "nose",      "outside", "pad",
    "pads",      "page",     "pages",    "plug",       "pocket",    "rim",       "screen",  "seam",
    "seams",     "seat",     "shade",    "shelf",      "shoulder",  "side",      "sides",   "skiver",
    "sleeve",    "sleeves",  "socket",   "sole",       "soles",     "spine",     "spout",   "stem",
    "stone",     "stopper",  "strap",    "string",     "strings",   "stylus",    "surface", "switch",
    "tail",      "thread",   "threads",  "tine",       "tines",     "tip",       "toe",     "toes",
    "top",       "tray",     "trim",     "underneath", "underside", "waistband", "well",    "wheel",
    "wheels",    "wing",     "zip",      "zipper"};

static bool among(const char *word) {
    return text_sorted_has(always, COUNT(always), word);
}

bool spot_usual(const struct token *token) {
    return among(token->fold) || (token->one != token->fold && among(token->one));
}

// "Winder's stiff": the winder.
static bool is_owner(const struct fault_reader *r, const struct token *token) {
    size_t n = strlen(token->fold);
    if (n < 3 || !text_same(token->fold + n - 2, "'s")) return false;
    const char *one = say_singular(r->note->arena, arena_copy(r->note->arena, token->fold, n - 2));
    struct word_entry entry;
    return among(one) || (r->note->book && wordbook_find(r->note->book, one, strlen(one), &entry) &&
                          (entry.uses & ((1u << USE_PART) | (1u << USE_PLACE))));
}

// "Glued back on", "it came back": a direction, not the back of the thing.
static bool is_adverb_back(const struct tokens *tokens, size_t i) {
    static const char *const before[] = {
        "came",  "come",   "comes", "coming", "put",   "glued",  "stuck",   "sent",    "screwed", "sewn",
        "sewed", "nailed", "goes",  "go",     "went",  "bring",  "brought", "send",    "pushed",  "bent",
        "snaps", "taped",  "fixed", "fitted", "slips", "slides", "drops",   "springs", "falls",   "swings",
        "rolls", "sinks",  "jumps", "flops",  "slip",  "drop",   "spring"};
    static const char *const behind[] = {"on",   "together", "in",    "up",    "to",  "into",
                                         "then", "with",     "by",    "using", "and", "so",
                                         "down", "out",      "again", "off",   "open"};
    static const char *const pronouns[] = {"it", "them", "that", "him", "her", "one"};
    if (!token_is(tokens, i, "back") || i == 0) return false;
    if (i > 1 && token_among(tokens, i - 1, pronouns, COUNT(pronouns)) &&
        token_among(tokens, i - 2, before, COUNT(before)))
        return true;                              // "I stuck it back"
    size_t size = strlen(tokens->at[i - 1].fold); // "pegged back", "tied back"
    bool put =
        size > 4 && text_same(tokens->at[i - 1].fold + size - 2, "ed") &&
        ANY(tokens, i - 1, "pegged", "tied", "wired", "stitched", "bolted", "riveted", "tacked", "pinned",
            "soldered", "welded", "clipped", "hooked", "dowelled", "doweled", "stapled", "moved", "folded");
    return (put || token_among(tokens, i - 1, before, COUNT(before))) &&
           (token_among(tokens, i + 1, behind, COUNT(behind)) || i + 1 >= tokens->count ||
            token_is(tokens, i - 1, "came") || token_is(tokens, i - 1, "come") ||
            tokens->at[i + 1].stop != STOP_NONE);
}

// "A box of 14 knobs", "a couple of places", "the first few", "scratched to bits": no part of anything.
static bool is_no_spot(const struct tokens *tokens, size_t i) {
    static const char *const holders[] = {"box",    "bag",    "tin",      "tray",
                                          "carton", "bundle", "envelope", "roll"};
    static const char *const amounts[] = {"few", "couple", "bits", "mark", "marks", "place", "places"};
    if (i > 0 && ANY(tokens, i, "bit", "touch", "tad") && token_is(tokens, i - 1, "a") &&
        i + 1 < tokens->count && tokens->at[i].stop == STOP_NONE && !ANY(tokens, i + 1, "is", "has", "that"))
        return true; // "a bit slack"
    static const char *const works[] = {"sewn",     "made",   "painted", "stitched", "knitted",   "forged",
                                        "cut",      "blown",  "written", "woven",    "stitching", "colored",
                                        "coloured", "carved", "darned",  "mended",   "repaired",  "finished",
                                        "tinted",   "sewed",  "built",   "cranked",  "operated",  "powered",
                                        "driven",   "held",   "worked",  "wound"};
    if (i > 0 && ANY(tokens, i, "roller", "brush") && ANY(tokens, i - 1, "lint", "clothes", "sticky"))
        return true; // "wants a lint roller"
    if (i > 1 && ANY(tokens, i, "track", "tracks") && ANY(tokens, i - 2, "off") &&
        ANY(tokens, i - 1, "its", "the", "their"))
        return true; // "off its track": how it is wrong, and not where
    if (i > 1 && ANY(tokens, i - 1, "a", "an") && ANY(tokens, i - 2, "as", "like"))
        return true; // "stiff as a board"
    if (i > 0 && token_is(tokens, i, "note") && ANY(tokens, i - 1, "please", "do", "to", "also", "pls"))
        return true;
    if (ANY(tokens, i, "maker's", "makers") && ANY(tokens, i + 1, "name", "mark", "stamp", "plate", "label"))
        return true; // "maker's name is worn": the name
    if (token_is(tokens, i, "thumb") && ANY(tokens, i + 1, "mark", "marks", "print", "prints", "smear"))
        return true;
    if (ANY(tokens, i, "inch", "inches")) return true;
    if (i > 0 && token_is(tokens, i, "legs") && token_is(tokens, i - 1, "last")) return true;
    if (token_is(tokens, i, "foot") && i > 1 && ANY(tokens, i - 1, "a") &&
        ANY(tokens, i - 2, "of", "about") &&
        ANY(tokens, i + 1, "along", "at", "on", "down", "in", "from", "near", "or", "long", "across"))
        return true; // "a rip of a foot along the edge"
    if (i > 0 && ANY(tokens, i, "thread", "threads") && ANY(tokens, i - 1, "a", "by", "few"))
        return true; // "by a thread"
    if (ANY(tokens, i, "foot", "feet") && i > 0 && tokens->at[i - 1].stop == STOP_NONE &&
        degrees_number(tokens, i - 1) > 0 && ANY(tokens, i + 1, "with", "long", "wide", "by", "x"))
        return true; // "cord four foot with a nick in it"
    if (token_is(tokens, i, "line") && i > 1 && token_is(tokens, i - 1, "of") &&
        token_is(tokens, i - 2, "out"))
        return true; // "out of line"
    if (ANY(tokens, i, "hand", "foot") && token_among(tokens, i + 1, works, COUNT(works))) return true;
    static const char *const holes[] = {"pin",  "worm",  "moth",   "nail", "screw",
                                        "tack", "drain", "button", "eye"};
    if (token_among(tokens, i, holes, COUNT(holes)) &&
        (token_is(tokens, i + 1, "hole") || token_is(tokens, i + 1, "holes")))
        return true;
    static const char *const sides[] = {"the", "on",    "at",   "to",   "top", "bottom", "lower", "upper",
                                        "far", "front", "back", "rear", "and", "or",     "of",    "hand"};
    bool ends = i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE;
    if (ANY(tokens, i, "left", "right") && ends && i > 1 && tokens->at[i - 1].stop == STOP_NONE &&
        tokens->at[i - 2].stop == STOP_NONE && !token_among(tokens, i - 1, sides, COUNT(sides)))
        return true; // "no smell of mothballs left", "doesn't strike right"
    if (i > 0 && token_is(tokens, i, "left") &&
        ANY(tokens, i + 1, "a", "an", "some", "its", "behind", "traces", "residue") &&
        !ANY(tokens, i - 1, "the", "on", "at", "to", "top", "bottom", "lower", "upper", "far", "front",
             "back"))
        return true; // "the damp got in and left a brown line"
    if (i > 0 && token_is(tokens, i, "grain") && ANY(tokens, i - 1, "following", "with"))
        return true; // "a crack following the grain"
    bool grain = token_is(tokens, i, "grain") && i > 0 &&
                 (token_is(tokens, i - 1, "a") || // "of salt"
                  (i > 1 && token_is(tokens, i - 1, "the") &&
                   ANY(tokens, i - 2, "along", "with", "across", "against", "down", "follows", "following")));
    static const char *const scattered[] = {"spots", "patches", "patch", "sheets", "strips"};
    if (i > 0 && token_among(tokens, i, scattered, COUNT(scattered)) &&
        (token_is(tokens, i - 1, "in") ||
         (i > 1 && token_is(tokens, i - 1, "a") && token_is(tokens, i - 2, "in"))))
        return true; // "gone in spots"
    bool some = token_is(tokens, i + 1, "few") || token_is(tokens, i + 1, "couple");
    size_t lead = i > 0 && ANY(tokens, i - 1, "the", "its", "all") ? i - 1 : i;
    if (ANY(tokens, i, "bits") && (lead == 0 || tokens->at[lead - 1].stop != STOP_NONE) &&
        tokens->at[i].stop == STOP_NONE && !ANY(tokens, i + 1, "of", "and", "missing", "gone"))
        return false; // "bits are rusty": of a brace
    return grain || some || token_among(tokens, i, amounts, COUNT(amounts)) ||
           (token_is(tokens, i + 1, "of") && token_among(tokens, i, holders, COUNT(holders)));
}

// "Chips down to black on the lid": how deep they go.
bool spot_tells_depth(const struct tokens *tokens, size_t i) {
    size_t to = i + token_is(tokens, i, "down"), on = to + 1 + ANY(tokens, to + 1, "the");
    return token_is(tokens, to, "to") && to > 0 && ANY(tokens, to - 1, "down", "through", "back") &&
           ANY(tokens, on, "black", "bare", "metal", "wood", "brass", "copper", "steel", "canvas", "primer",
               "undercoat", "clay", "plaster", "gesso", "backing", "rust", "white");
}

// "Won't catch", "mended by hand": what it does, and by what; no part.
static bool is_deed(const struct tokens *tokens, size_t i) {
    if (i == 0) return false;
    if (ANY(tokens, i, "flies", "springs", "swings", "catches") &&
        ANY(tokens, i + 1, "open", "off", "up", "out"))
        return true; // "shuts, but flies open"
    if (token_is(tokens, i, "hand")) return token_is(tokens, i - 1, "by");
    return ANY(tokens, i, "catch", "lock", "latch", "hook", "buckle", "clasp", "seal", "zip", "screw",
               "button", "fold", "strap") &&
           ANY(tokens, i - 1, "won't", "wont", "doesn't", "doesnt", "didn't", "don't", "can't", "cannot",
               "wouldn't", "will", "not");
}

// A part by its name alone, which is asked once for each word.
static bool is_named(const struct fault_reader *r, size_t i) {
    static const char key[] = "a part by name";
    const struct tokens *tokens = &r->note->tokens;
    const struct token *token = &tokens->at[i];
    int told = token->slip ? -1 : token_told(tokens, i, key);
    if (told >= 0) return told;
    bool named = spot_usual(token) || is_owner(r, token) || phrases_is_part(r->note->phrases, token->fold) ||
                 phrases_is_part(r->note->phrases, token->one);
    if (!token->slip) token_tell(tokens, i, key, named);
    return named;
}

// "Verdigris in the screw holes", "a chip by the filler hole": a hole that the thing was made with is a
// place.
bool spot_made_hole(const struct tokens *tokens, size_t i) {
    enum { BACK_MOST = 4 };
    if (i < 2 || !ANY(tokens, i, "hole", "holes") || tokens->at[i - 1].stop != STOP_NONE) return false;
    if (ANY(tokens, i - 1, "both", "each", "the") && ANY(tokens, i - 2, "at", "round", "around", "by") &&
        i > 2)
        return token_is(tokens, i, "holes") || ANY(tokens, i - 1, "each"); // "chips at both holes"
    if (!ANY(tokens, i - 1, "screw", "filler", "fill", "tap", "plug", "bolt", "nail", "peg", "key", "finger",
             "sound", "drain", "vent", "mounting", "fixing", "rivet", "lace", "bung", "air", "peep", "hand",
             "post", "spigot", "weep", "oil", "stopper", "dowel", "rope", "cable", "hinge", "pin", "strap",
             "thumb", "bottom", "top", "drainage", "center", "centre", "vent", "breather", "winding", "feed",
             "sight", "end", "pipe", "hanging", "spout", "handle", "leg", "lamp", "wire"))
        return false;
    for (size_t at = i - 1; at > 0 && i - at < BACK_MOST && tokens->at[at - 1].stop == STOP_NONE; at--) {
        if (spot_preposition(tokens, at - 1)) return true;
        if (!spot_article(tokens, at - 1) && !spot_side(tokens, at - 1) &&
            !ANY(tokens, at - 1, "both", "two", "four", "one", "each", "all", "wood", "old", "other",
                 "first"))
            return false;
    }
    return false;
}

// "Iron pitted", "the iron is nicked": of a plane it is the blade.
static bool is_cutting_iron(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    const char *type = r->note->record->type.value;
    if (!ANY(tokens, i, "iron", "irons", "iron's") || !type) return false;
    if (!strstr(type, "plane") && !strstr(type, "shave") && !strstr(type, "jointer")) return false;
    bool stuff = i + 1 < tokens->count && tokens->at[i].stop == STOP_NONE && is_named(r, i + 1);
    return !stuff && !(i > 0 && ANY(tokens, i - 1, "cast", "wrought", "of", "in"));
}

// "Rocker, one rocker is split": what it rocks on.
bool spot_is_rocker(const struct note *note, size_t i) {
    const char *type = note->record->type.value;
    if (i == 0 || !ANY(&note->tokens, i, "rocker", "rockers") || !type || !strstr(type, "rocker"))
        return false;
    return (token_is(&note->tokens, i, "rockers") && note->taken[i] != TAKEN_TYPE) ||
           ANY(&note->tokens, i - 1, "one", "left", "right", "other", "each", "front", "back", "near", "off");
}

// "Table is rusty", "the bed is scored" of a machine.
static bool is_machine_part(const struct fault_reader *r, size_t i) {
    static const char *const machines[] = {"saw",        "press",  "planer",  "lathe",   "sander", "jointer",
                                           "grinder",    "drill",  "shaper",  "milling", "mortis", "router",
                                           "guillotine", "cutter", "trimmer", "vise",    "vice"};
    const char *type = r->note->record->type.value;
    if (!type || !ANY(&r->note->tokens, i, "table", "tables", "bed", "beds", "column", "fence")) return false;
    if (r->note->taken[i] == TAKEN_TYPE) return false;
    for (size_t k = 0; k < COUNT(machines); k++)
        if (strstr(type, machines[k])) return true;
    return false;
}

// "Decanter and six glasses, one glass chipped": what comes with the thing has faults of its own.
static bool is_included(const struct fault_reader *r, size_t i) {
    const struct record *record = r->note->record;
    const struct token *token = &r->note->tokens.at[i];
    if (r->note->taken[i] == TAKEN_INCLUDES) return false;
    for (size_t k = 0; k < record->include_count; k++) {
        const char *what = record->includes[k].what, *last = strrchr(what, ' ');
        last = last ? last + 1 : what;
        if (text_same(last, token->fold) || text_same(last, token->one)) return true;
    }
    return false;
}

size_t spot_word(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (i >= tokens->count || tokens->at[i].kind == TOKEN_SIGN || is_adverb_back(tokens, i) ||
        is_no_spot(tokens, i))
        return 0;
    if (is_deed(tokens, i) || noun_excepts(tokens, i) ||
        (token_is(tokens, i, "sound") && noun_excepts(tokens, i + 1)))
        return 0;
    if (spot_made_hole(tokens, i)) return 1;
    if (i > 0 && ANY(tokens, i, "spots", "points", "parts", "places", "areas") &&
        ANY(tokens, i - 1, "high", "raised", "low", "sunken"))
        return 1; // "gilding worn on the high spots"
    static const char *const lead[] = {"no", "its", "a", "one", "the", "any", "without", "missing", "two"};
    if (i > 0 && token_among(tokens, i - 1, lead, COUNT(lead)) && fault_is_drawer_pull(r, i, i + 1)) return 1;
    if (is_cutting_iron(r, i) || is_machine_part(r, i) || spot_is_rocker(r->note, i)) return 1;
    struct word_entry entry;
    size_t n = word_at(r->note, i, (1u << USE_PART) | (1u << USE_PLACE), &entry);
    bool amount = n == 1 && (token_is(tokens, i, "bit") || token_is(tokens, i, "touch")); // "a bit of rust"
    amount |= token_is(tokens, i, "hair") && i > 0 && token_is(tokens, i - 1, "a");       // "leans a hair"
    amount |= token_is(tokens, i, "bar") && (token_is(tokens, i + 1, "a") || token_is(tokens, i + 1, "the") ||
                                             token_is(tokens, i + 1, "one")); // "fine bar a chip"
    const struct family *family = r->note->record->family;
    bool tool =
        ANY(tokens, i, "bit", "bits") && i > 0 && family && text_same(family->rule.id, "tools") &&
        !ANY(tokens, i - 1, "a", "little", "wee") && tokens->at[i].stop == STOP_NONE &&
        ANY(tokens, i + 1, "is", "are", "has", "have", "snapped", "broken", "bent", "blunt", "missing");
    const char *type = r->note->record->type.value;
    tool |= token_is(tokens, i, "table") && family && text_same(family->rule.id, "tools") && i > 0 &&
            !(type && strstr(type, "table")) &&
            ANY(tokens, i + 1, "is", "has", "tilts", "tilt", "won't", "rusty", "insert");
    if (tool) return 1; // "one bit is snapped" of a drill, "table has rust" of a saw
    if (n == 1 && token_is(tokens, i, "well")) n = 0;
    if (n == 1 && token_is(tokens, i, "set") && ANY(tokens, i + 1, "up", "off", "fast", "solid", "hard"))
        n = 0;
    if (n && !amount) return n;
    if (amount) return 0;
    static const char *const wells[] = {"the", "ink", "its", "a"}; // "how well it runs"
    bool at_end = i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE;
    if (token_is(tokens, i, "well") && i > 0 && at_end && ANY(tokens, i - 1, "to", "in", "inside", "across"))
        return 1; // "stain to well"
    if (token_is(tokens, i, "well") && (i == 0 || !token_among(tokens, i - 1, wells, COUNT(wells)))) return 0;
    return is_named(r, i) || is_included(r, i) ? 1 : 0;
}

// "A quarter of the beads": how many of them, and no part.
static bool is_share(const struct tokens *tokens, size_t i) {
    static const char *const shares[] = {"quarter", "third", "half", "fifth", "eighth", "quarters", "thirds"};
    if (!token_among(tokens, i, shares, sizeof shares / sizeof *shares)) return false;
    size_t behind = i + (token_is(tokens, i + 1, "-") ? 2 : 1); // "a quarter inch chip"
    return ANY(tokens, behind, "of", "inch", "inches");
}

// "Doesn't grip", "won't catch": what it does, and no part.
static bool is_done(const struct tokens *tokens, size_t i) {
    return i > 0 && tokens->at[i - 1].stop == STOP_NONE &&
           ANY(tokens, i, "grip", "catch", "hold", "lock", "seal", "clip", "latch", "pull", "zip", "screw",
               "buckle", "fold", "hook", "slide") &&
           ANY(tokens, i - 1, "doesn't", "don't", "won't", "wont", "doesnt", "dont", "wouldn't", "can't",
               "didn't", "to", "not", "can", "could", "you");
}

bool spot_is_stuff(const struct tokens *tokens, size_t i) {
    static const char *const stuffs[] = {
        "paper", "leather", "leathercloth", "cloth", "oilcloth", "skin",      "linen",  "canvas",   "velvet",
        "baize", "felt",    "hide",         "cane",  "wicker",   "parchment", "vellum", "hessian",  "rush",
        "gauze", "webbing", "cardboard",    "vinyl", "rubber",   "suede",     "mica",   "celluloid"};
    return token_among(tokens, i, stuffs, sizeof stuffs / sizeof *stuffs);
}

// "Paper lifting along the equator", "the leather is lifting", "velvet on the rim is torn": a stuff that
// opens its clause and has a fault of its own is a part. Goods that are all of that stuff have no such part.
static bool is_stuff_at_fault(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (!spot_is_stuff(tokens, i) || tokens->at[i].stop != STOP_NONE) return false;
    size_t start = i > 0 && ANY(tokens, i - 1, "the", "its") ? i - 1 : i, at = i + 1;
    if (start > 0 && tokens->at[start - 1].stop == STOP_NONE && !ANY(tokens, start - 1, "and", "but"))
        return false;
    if (spot_word(r, at) && !spot_preposition(tokens, at)) return false; // "leather handle broken"
    if (ANY(tokens, at, "on", "at", "in", "inside", "over", "under", "near", "by",
            "along")) // "on the barrel"
        while (at < i + 4 && at < tokens->count && tokens->at[at].stop == STOP_NONE && !r->scope.fault[at])
            at++;
    while (at < i + 6 && ANY(tokens, at, "is", "has", "are", "a", "bit", "badly", "slightly", "gone")) at++;
    const char *type = r->note->record->type.value;
    if (type && strstr(type, tokens->at[i].one)) return false;
    return at < tokens->count &&
           (ANY(tokens, at, "lifting", "peeling", "lifted", "torn", "coming", "bubbled") ||
            (r->scope.fault[at] && !r->part[at] && !token_is(tokens, i, "cloth")));
}

// "Bottom strip is bent", "one of the back sticks broken", "no back beam": a noun of no list, which a side
// tells from others of its name, is a part; what the side does or looks like is none.
static bool is_sided(const struct fault_reader *r, size_t i) {
    static const char *const sides[] = {"top",    "bottom", "front", "back",  "rear",  "side",  "end",
                                        "middle", "upper",  "lower", "inner", "outer", "corner"};
    static const char *const opens[] = {"the",   "a",     "an",   "its",    "one",   "no",      "two",
                                        "three", "four",  "each", "both",   "some",  "several", "other",
                                        "left",  "right", "this", "second", "first", "third",   "missing"};
    static const char *const is[] = {"is", "are", "was", "were", "has", "have", "isn't", "aren't", "been"};
    static const char *const gone[] = {"missing", "gone", "lost",  "broken",  "bent",    "cracked",
                                       "split",   "torn", "loose", "snapped", "replaced"};
    static const char *const verbs[] = {
        "looks", "feels",  "seems", "shows",  "needs", "wants",  "gets",  "not",    "there", "also",
        "only",  "still",  "just",  "now",    "once",  "edge",   "badly", "has",    "have",  "been",
        "part",  "half",   "bit",   "being",  "come",  "comes",  "came",  "going",  "went",  "all",
        "paint", "finish", "never", "always", "inch",  "inches", "third", "quarter"};
    const struct tokens *tokens = &r->note->tokens;
    const struct token *token = &tokens->at[i];
    size_t n = strlen(token->fold);
    if (i == 0 || token->kind != TOKEN_WORD || r->part[i] || n < 4 || r->note->taken[i] ||
        tokens->at[i - 1].stop != STOP_NONE || !token_among(tokens, i - 1, sides, COUNT(sides)))
        return false;
    bool first = i == 1 || tokens->at[i - 2].stop != STOP_NONE;
    if (!first && !token_among(tokens, i - 2, opens, COUNT(opens)) && !spot_side(tokens, i - 2)) return false;
    bool ends = i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE;
    bool no = !first && ANY(tokens, i - 2, "no", "missing") && ends;
    bool said = !ends && token_among(tokens, i + 1, is, COUNT(is));
    if (!no && !said && (ends || !token_among(tokens, i + 1, gone, COUNT(gone)))) return false;
    if (token_among(tokens, i, verbs, COUNT(verbs)) || text_same(token->fold + n - 2, "ed") ||
        text_same(token->fold + n - 2, "ly") || text_same(token->fold + n - 3, "ing") ||
        strchr(token->fold, '\''))
        return false;
    return said || !r->scope.fault[i];
}

// "Strike doesn't work", "one note silent": what a thing does is a part where it does not do so.
static bool is_deed_undone(const struct fault_reader *r, size_t i) {
    static const char *const deeds[] = {"strike", "chime", "chimes", "note", "notes"};
    const struct tokens *tokens = &r->note->tokens;
    if (!token_among(tokens, i, deeds, sizeof deeds / sizeof *deeds) || tokens->at[i].stop != STOP_NONE)
        return false;
    size_t start = i > 0 && (ANY(tokens, i - 1, "the", "its") || degrees_number(tokens, i - 1)) ? i - 1 : i;
    if (start > 0 && tokens->at[start - 1].stop == STOP_NONE) return false;
    size_t at = i + (ANY(tokens, i + 1, "is", "are") ? 2 : 1);
    return ANY(tokens, at, "doesn't", "don't", "won't", "does", "do", "silent", "dead") ||
           (token_is(tokens, at, "not") && ANY(tokens, at + 1, "working", "sounding", "ringing", "striking"));
}

// "It rings dull", "rings clear": what a bell does, and no rings of it. "The blades catch it".
static bool is_doing(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (ANY(tokens, i, "points") && ANY(tokens, i + 1, "to", "at", "the"))
        return true; // "the needle points to 2"
    if (ANY(tokens, i, "spring", "springs") && ANY(tokens, i + 1, "open", "back", "shut", "apart"))
        return true;
    if (ANY(tokens, i, "catch", "clip", "hook") && i > 0 && tokens->at[i - 1].stop == STOP_NONE &&
        tokens->at[i].stop == STOP_NONE && r->part[i - 1] && say_is_plural(tokens->at[i - 1].fold))
        return ANY(tokens, i + 1, "it", "on", "the", "its", "each", "against", "when");
    if (!ANY(tokens, i, "rings", "locks", "plays", "stops", "catches", "hooks") || i == 0 ||
        tokens->at[i - 1].stop != STOP_NONE)
        return false;
    bool object = ANY(tokens, i - 1, "and", "but", "so") && tokens->at[i].stop == STOP_NONE &&
                  ANY(tokens, i + 1, "a", "the", "on", "its", "against"); // "bent in and catches a blade"
    return object || ANY(tokens, i - 1, "it", "which", "that", "bell", "still");
}

// "I sanded it back", "rubbed them back and painted": how far a deed went, and no back of the thing.
bool spot_way_back(const struct tokens *tokens, size_t i) {
    size_t verb = i;
    if (!token_is(tokens, i, "back") || i == 0 || tokens->at[i - 1].stop != STOP_NONE) return false;
    if (tokens->at[i].stop == STOP_NONE && ANY(tokens, i + 1, "on", "together", "up", "down"))
        for (size_t k = i;
             k-- > 0 && k + 5 > i && tokens->at[k].stop == STOP_NONE;) // "sewed the binding back on"
            if (ANY(tokens, k, "sewed", "sewn", "stitched", "put", "glued", "screwed", "stuck", "tacked",
                    "fixed", "nailed", "pinned", "taped", "soldered", "welded", "wired", "tied"))
                return true;
    if (ANY(tokens, verb - 1, "it", "them", "all", "right", "straight") && verb > 1) verb--;
    if (ANY(tokens, verb - 1, "it", "them") && verb > 1) verb--;
    const char *word = tokens->at[verb - 1].fold;
    size_t n = strlen(word);
    bool deed = (n > 4 && text_same(word + n - 2, "ed")) ||
                ANY(tokens, verb - 1, "took", "taken", "ground", "cut", "brought", "put", "stuck", "sewn");
    bool ends = i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE ||
                ANY(tokens, i + 1, "and", "to", "by", "in", "on", "for", "with", "so", "before", "then", "up",
                    "together", "down", "again", "myself");
    return deed && ends &&
           (verb < i || ANY(tokens, verb - 1, "sanded", "stripped", "rubbed", "scraped", "waxed", "polished",
                            "cleaned", "glued", "pinned", "screwed"));
}

void spot_mark(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    r->part = arena_array(r->note->arena, tokens->count + 1, sizeof *r->part);
    for (size_t i = 0; i < tokens->count; i++) {
        size_t n = spot_word(r, i);
        if (n == 1 &&
            (is_share(tokens, i) || is_done(tokens, i) || is_doing(r, i) || spot_way_back(tokens, i)))
            n = 0;
        if (!n && (is_stuff_at_fault(r, i) || is_deed_undone(r, i))) n = 1;
        for (size_t k = 0; k < n; k++) r->part[i + k] = true;
        if (n) i += n - 1;
    }
    for (size_t i = 1; i < tokens->count; i++)
        if (is_sided(r, i) || (i + 1 < tokens->count && r->part[i + 1] && ANY(tokens, i, "near", "off") &&
                               token_is(tokens, i + 1, "side") && spot_article(tokens, i - 1)))
            r->part[i] = true; // and "on the near side", of a horse or a cart
}

// Words that lists of parts and places have, and that are no part which could have a fault.
bool spot_is_no_part(const char *part) {
    static const char *const words[] = {
        "marks", "mark", "lines", "line",  "scale", "all over", "spot",    "spots", "eraser", "bits",  "ring",
        "rings", "tape", "over",  "words", "death", "somebody", "someone", "touch", "weave",  "patch", "set"};
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        if (text_same(part, words[i])) return true;
    return false;
}

bool spot_is_turn_of_speech(const struct tokens *tokens, size_t part) {
    if (token_is(tokens, part - 1, "your")) return true;
    if (token_is(tokens, part, "record")) return part > 1 && token_phrase(tokens, part - 2, "for the record");
    return token_is(tokens, part, "point") && ANY(tokens, part - 1, "no", "some", "this", "that");
}

// "One of the guards", "a piece of the base", "part of the latch": what is said of it is said of what it is
// of.
bool spot_portion(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "one", "some", "most", "both", "several", "few", "couple", "all", "piece", "pieces",
               "bit", "bits", "part", "parts", "chunk", "lump", "section", "strip", "length", "patch",
               "sliver", "much", "area");
}

// "Dial is clear, no cracks, no chips in the case": of the case.
bool spot_denied_elsewhere(const struct fault_reader *r, const struct fault_hit *hit,
                           const struct spot *spot) {
    const struct token *at = r->note->tokens.at;
    return spot->where_from > hit->from && spot->where_to > spot->where_from && hit->from > 1 &&
           token_is(&r->note->tokens, hit->from - 1, "no") && at[hit->from - 2].stop != STOP_NONE;
}

// "Name on the lid", "rust inside": within the phrase of the fault a place, not a part.
bool spot_in_phrase(const struct fault_reader *r, const struct fault_hit *hit, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (spot_adverb(tokens, i)) return true;
    size_t at = i;
    while (at > hit->from && (spot_article(tokens, at - 1) || ANY(tokens, at - 1, "inner", "outer", "very")))
        at--;
    return at > hit->from && spot_preposition(tokens, at - 1);
}
