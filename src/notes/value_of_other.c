// SPDX-License-Identifier: MIT
// Words of color and stuff that tell of something other than the thing: of what is written on it, of what a
// part was mended with, of a part that is at fault, of where it stood.
#include "notes/value_of_other.h"

#include <string.h>

#include "notes/any.h"
#include "notes/festivals.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// "Initials R.M. on the lid in white": what stands before tells of what is written, and not of the lid.
static bool is_written_in(const struct note *note, size_t i) {
    enum { BACK = 8 };
    static const char *const writing[] = {"initials",   "name",      "number",   "letters",
                                          "stencilled", "stenciled", "lettered", "signed",
                                          "marked",     "numbered",  "inscribed"};
    const struct tokens *tokens = &note->tokens;
    if (i < 2 || !token_is(tokens, i - 1, "in")) return false;
    for (size_t k = i - 1; k > 0 && k + BACK > i && tokens->at[k - 1].stop == STOP_NONE; k--)
        if (note->taken[k - 1] == TAKEN_MARK || token_among(tokens, k - 1, writing, COUNT(writing)))
            return true;
    return false;
}

// "BREAD in brown letters", "cream with green lettering": the color of what is written.
static bool is_of_letters(const struct note *note, size_t i, size_t n) {
    static const char *const words[] = {"letters",  "lettering", "writing", "script",  "print",   "ink",
                                        "capitals", "caps",      "numbers", "figures", "numerals"};
    const struct tokens *tokens = &note->tokens;
    if (!token_among(tokens, i + n, words, COUNT(words))) return false;
    if (ANY(tokens, i + n, "lettering", "letters", "writing", "script") && i + n + 1 < tokens->count &&
        (note->taken[i + n + 1] == TAKEN_MARK ||
         ANY(tokens, i + n + 1, "says", "reads", "reading", "saying")))
        return true; // "red lettering TORWELL"
    if (ANY(tokens, i + n, "lettering", "letters") && i > 0 && token_is(tokens, i - 1, "with")) return true;
    return (i > 0 && token_is(tokens, i - 1, "in")) || (i > 1 && token_is(tokens, i - 2, "in"));
}

// "Knob replaced with a cotton reel", "stained with tea": the stuff of what it was mended or soiled with.
static bool is_of_a_mend(const struct note *note, size_t i) {
    enum { BACK = 4 };
    static const char *const mends[] = {
        "replaced", "swapped",  "repaired",  "mended",  "fixed",   "patched", "held",    "tied",  "wedged",
        "propped",  "plugged",  "bodged",    "secured", "changed", "taped",   "wired",   "bound", "stained",
        "spotted",  "splashed", "spattered", "caked",   "crusted", "smeared", "clogged", "marked"};
    static const char *const joints[] = {"on", "up", "together", "back", "shut", "over"};
    const struct tokens *tokens = &note->tokens;
    for (size_t k = i; k > 1 && k + BACK > i && tokens->at[k - 1].stop == STOP_NONE; k--) {
        if (!ANY(tokens, k - 1, "with", "by")) continue;
        size_t verb = k - 2;
        if (verb && token_among(tokens, verb, joints, COUNT(joints))) verb--;
        return token_among(tokens, verb, mends, COUNT(mends));
    }
    return false;
}

static bool has_material(const struct note *note) {
    for (size_t i = 0; i < note->record->attribute_count; i++) {
        const struct value *value = &note->record->attributes[i];
        if (!value->of && !strcmp(value->name, "material")) return true;
    }
    return false;
}

// "Pewter tankard. Glass cracked", "mahogany. Thread worn": what is so is a part, for the stuff of the thing
// was told before.
static bool is_faulty_part(const struct note *note, size_t i, size_t n) {
    const struct tokens *tokens = &note->tokens;
    if (ANY(tokens, i, "cork") && tokens->at[i].starts &&
        ANY(tokens, i + n, "still", "is", "in", "present", "stuck", "included", "there"))
        return true; // "cork still in it"
    if (ANY(tokens, i, "mica", "horn", "baize", "webbing") && i > 0 && tokens->at[i - 1].stop != STOP_NONE &&
        ANY(tokens, i + n, "is", "has", "are"))
        return true;
    bool opens = tokens->at[i].starts || (i > 0 && tokens->at[i - 1].stop != STOP_NONE);
    return opens && i + n < tokens->count && note->fault_word[i + n] && has_material(note);
}

// "Copper kettle, tin inside": the stuff of the lining.
static bool is_of_inside(const struct note *note, size_t i, size_t n) {
    return has_material(note) && ANY(&note->tokens, i + n, "inside", "within", "interior", "innards");
}

// "The other lens is clear", "right one clear": nothing is in the way, which is no color.
static bool is_unclouded(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (i > 1 && ANY(tokens, i - 2, "glass", "crystal")) return false; // "the glass is clear"
    return token_is(tokens, i, "clear") && i > 0 && tokens->at[i - 1].stop == STOP_NONE &&
           ANY(tokens, i - 1, "is", "are", "was", "looks", "seems", "stays", "very", "quite", "nice", "still",
               "left", "right", "one", "both", "lens", "lenses", "prisms", "optics", "view", "all", "dial",
               "glass", "image", "eyepiece", "eyepieces", "both", "window", "holes", "hole", "jet", "jets",
               "bore", "pipe", "drain", "vent", "barrel", "spout", "flue");
}

// "Runs smooth", "the other straight", "fringe short at one end": how it goes, or how a part of it is.
static bool is_of_conduct(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    struct word_entry entry;
    if (i == 0 || tokens->at[i - 1].stop != STOP_NONE ||
        !ANY(tokens, i, "short", "long", "straight", "smooth", "flat", "true", "tight", "even", "level"))
        return false;
    return ANY(tokens, i - 1, "runs", "run", "ran", "slides", "slide", "turns", "turn", "moves", "opens",
               "shuts", "goes", "other", "one", "both", "still", "feels", "sits", "hangs", "lies", "is",
               "are") ||
           (word_at(note, i - 1, 1u << USE_PART, &entry) == 1 &&
            !word_at(note, i + 1, 1u << USE_THING, &entry));
}

// "Sits wobbly on a flat stove", "stood against a white wall": of what is no part of the thing.
bool value_is_elsewhere(const struct note *note, size_t i, const char *of) {
    static const char *const praise[] = {"good",  "fine",     "ok",    "okay", "clean",
                                         "sound", "solid",    "tight", "nice", "intact",
                                         "firm",  "original", "shot",  "worn", "gone"};
    for (size_t k = 0; k < COUNT(praise); k++)
        if (!strcmp(of, praise[k])) return true; // "thread good", "horn fine": parts, and no stuff
    static const char *const preps[] = {"on", "against", "near", "by", "beside", "under", "off", "over"};
    const struct tokens *tokens = &note->tokens;
    struct word_entry entry;
    size_t at = i;
    while (at > 0 && i - at < 2 && tokens->at[at - 1].stop == STOP_NONE && !ANY(tokens, at - 1, "a", "an"))
        at--;
    if (at < 2 || !ANY(tokens, at - 1, "a", "an") || !token_among(tokens, at - 2, preps, COUNT(preps)))
        return false;
    // "Brass on a mahogany block": what the thing stands on is of it
    if (at > 2 && token_is(tokens, at - 2, "on") && tokens->at[at - 3].stop == STOP_NONE &&
        (note->taken[at - 3] == TAKEN_VALUE || note->taken[at - 3] == TAKEN_TYPE))
        return false;
    const char *head = strrchr(of, ' ');
    head = head ? head + 1 : of;
    return !(wordbook_find(note->book, head, strlen(head), &entry) && (entry.uses & (1u << USE_PART)));
}

// "Plane stamped with an owner's name", "branded by a past owner": how a mark was made.
static bool is_of_a_mark(const struct note *note, size_t i) {
    enum { FAR = 6 };
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, i, "stamped", "branded", "impressed", "punched", "incised") ||
        !ANY(tokens, i + 1, "with", "by"))
        return false;
    for (size_t k = i + 2; k < i + FAR && k < tokens->count && tokens->at[k].stop == STOP_NONE; k++)
        if (ANY(tokens, k, "name", "names", "number", "numbers", "initials", "owner", "owner's", "maker",
                "maker's", "mark", "marks", "letters", "crown", "arrow", "date") ||
            note->taken[k] == TAKEN_MARK)
            return true;
    return false;
}

// "Rubber stamp rack", "paper clips": no stuff of what holds them.
static bool is_in_a_name(const struct tokens *tokens, size_t i) {
    return (ANY(tokens, i, "wool") &&
            ANY(tokens, i + 1, "bale", "bales", "sack", "press", "table", "hook")) ||
           (ANY(tokens, i, "card") && ANY(tokens, i + 1, "catalog", "catalogue", "index", "file", "table")) ||
           (ANY(tokens, i, "rubber") && ANY(tokens, i + 1, "stamp", "stamps", "band", "bands")) ||
           (ANY(tokens, i, "paper") && ANY(tokens, i + 1, "clip", "clips", "fastener", "knife", "weight")) ||
           (ANY(tokens, i, "cork") && ANY(tokens, i + 1, "screw", "screws", "borer", "borers"));
}

// "Black with tarnish", "brown from years of smoke": what came over it, and no color of its own.
static bool is_of_dirt(const struct note *note, size_t to) {
    static const char *const dirt[] = {"tarnish", "soot", "grime",  "dirt",   "mold",  "mould",
                                       "smoke",   "age",  "carbon", "grease", "mildew"};
    const struct tokens *tokens = &note->tokens;
    size_t at = to + 1 + ANY(tokens, to + 1, "years", "the") + ANY(tokens, to + 2, "of");
    if (!ANY(tokens, to, "with", "from") || !token_among(tokens, at, dirt, COUNT(dirt))) return false;
    return at + 1 >= tokens->count || tokens->at[at].stop != STOP_NONE ||
           tokens->at[at + 1].stop != STOP_NONE || ANY(tokens, at + 1, "and", "but", "on", "in", "at");
}

bool value_is_of_other(const struct note *note, size_t i, size_t n, enum word_use use) {
    if (use == USE_COLOR && is_of_dirt(note, i + n)) return true;
    if (use == USE_TECHNIQUE && is_of_a_mark(note, i)) return true;
    if (use == USE_FINISH && ANY(&note->tokens, i, "mat", "mat's") &&
        !ANY(&note->tokens, i + 1, "finish", "black", "white", "glaze", "surface", "paint", "glazed",
             "lacquer"))
        return true; // what lies on a floor
    if (use == USE_COLOR && ANY(&note->tokens, i, "gold") &&
        ANY(&note->tokens, i + 1, "pan", "pans", "scales"))
        return true;
    const char *type = note->record->type.value;
    if (use == USE_THEME && type &&
        ((ANY(&note->tokens, i, "tree", "trees") && (strstr(type, "saddle") || strstr(type, "shoe"))) ||
         (ANY(&note->tokens, i, "rose") && strstr(type, "watering"))))
        return true; // of a saddle and of a can a part
    if (use == USE_MATERIAL && is_in_a_name(&note->tokens, i)) return true;
    if (use == USE_COLOR && (is_of_letters(note, i, n) || is_written_in(note, i) || is_unclouded(note, i)))
        return true;
    if (use == USE_MATERIAL &&
        ANY(&note->tokens, i + n, "patch", "patches", "repair", "splint", "shim", "shims"))
        return true; // "tin patch over a split"
    if (use == USE_MATERIAL && ANY(&note->tokens, i, "paper", "card", "cloth", "cardboard", "plastic") &&
        ANY(&note->tokens, i + n, "label", "labels", "tag", "tags", "sticker", "stickers", "ticket") &&
        (note->taken[i + n] == TAKEN_MARK || (i > 0 && note->taken[i - 1] == TAKEN_MARK) ||
         (i > 1 && note->taken[i - 2] == TAKEN_MARK)))
        return true; // "paper label inside"
    if (ANY(&note->tokens, i, "hanging") &&
        ANY(&note->tokens, i + n, "ring", "wire", "hook", "loop", "chain", "hole", "cord", "eye", "strap",
            "string", "bracket", "hooks", "rings", "holes", "wires", "loops"))
        return true; // what it hangs by
    if (use == USE_MATERIAL && i > 0 && ANY(&note->tokens, i, "wire") &&
        ANY(&note->tokens, i - 1, "hanging", "picture"))
        return true;
    const struct family *family = note->record->family;
    if (use == USE_MATERIAL && family && ANY(&note->tokens, i, "crystal") &&
        text_same(family->rule.id, "clocks-watches"))
        return true; // the glass of a watch
    if (use == USE_TECHNIQUE && i > 0 && ANY(&note->tokens, i, "riveted", "stapled", "pinned") &&
        (ANY(&note->tokens, i - 1, "is", "are", "was", "been", "one", "two", "three") ||
         note->tokens.at[i - 1].kind == TOKEN_FIGURE))
        return true; // "the can is riveted at the handle", "2 cracked, 1 riveted"
    if (use == USE_TECHNIQUE && i > 0 && note->tokens.at[i - 1].stop == STOP_NONE &&
        ANY(&note->tokens, i, "soldered", "welded", "brazed", "riveted") &&
        (i + 1 >= note->tokens.count || note->tokens.at[i + 1].stop != STOP_NONE ||
         ANY(&note->tokens, i + 1, "at", "on", "in", "near", "to")) &&
        !ANY(&note->tokens, i - 1, "and", "&", "is", "all", "fully", "or"))
        return true; // "has a link soldered": what was mended
    if (use == USE_PATTERN && i > 0 && ANY(&note->tokens, i, "spotted", "speckled", "mottled") &&
        ANY(&note->tokens, i - 1, "glass", "mirror", "plate", "silvering", "reflector", "chrome", "brass",
            "nickel"))
        return true; // "glass spotted lower left"
    if (use == USE_MATERIAL && ANY(&note->tokens, i, "glass") &&
        ANY(&note->tokens, i + 1, "spotted", "speckled", "foxed", "blackened"))
        return true; // "glass spotted" of a mirror
    if (use == USE_FINISH && ANY(&note->tokens, i, "rough") &&
        ANY(&note->tokens,
            i + 1 + (ANY(&note->tokens, i + 1, "top", "upper", "outer", "inner", "inside") ? 1 : 0), "rim",
            "lip", "mouth"))
        return true; // "rough top rim": the edge of glass, and no finish
    if (use == USE_MATERIAL && ANY(&note->tokens, i, "wax", "sand", "lime") &&
        ANY(&note->tokens, i + 1, "all", "in", "on", "inside", "over", "down", "left", "residue", "drips",
            "everywhere", "runs"))
        return true; // what is on it or in it
    if (n == 1 && is_of_conduct(note, i)) return true;
    if (use == USE_MATERIAL && n == 1 && token_is(&note->tokens, i, "iron") &&
        token_is(&note->tokens, i + 1, "on") &&
        ANY(&note->tokens, i + 2, "patch", "patches", "transfer", "transfers", "letters", "name", "badge",
            "label", "vinyl", "decal", "design", "tape", "mending"))
        return true; // "iron on patch"
    if (use == USE_MATERIAL && n == 1 && i > 0 &&
        ANY(&note->tokens, i, "cork", "rubber", "slate", "sponge", "iron", "marble") &&
        ANY(&note->tokens, i - 1, "a", "one", "no", "its", "another") &&
        (i + 1 >= note->tokens.count || note->tokens.at[i + 1].stop != STOP_NONE ||
         ANY(&note->tokens, i + 1, "and", "in", "with", "&", "but", "to", "for")))
        return true; // "jug with a cork": a part
    return is_of_a_mend(note, i) ||
           (use == USE_MATERIAL && (is_faulty_part(note, i, n) || is_of_inside(note, i, n)));
}

// "In a japanned tin w/ key": what it lies in.
bool value_is_holder(const struct note *note, size_t i, size_t n) {
    enum { BACK = 3 };
    const struct tokens *tokens = &note->tokens;
    bool tin = token_is(tokens, i, "tin") && n == 1;
    if (!tin && !token_is(tokens, i + n, "tin")) return false;
    size_t end = tin ? i + 1 : i + n + 1;
    if (end < tokens->count && tokens->at[end].stop == STOP_NONE &&
        !ANY(tokens, end, "with", "w/", "and", "that"))
        return false;
    for (size_t k = i; k > 1 && k + BACK > i && tokens->at[k - 1].stop == STOP_NONE; k--)
        if (ANY(tokens, k - 1, "a", "an", "its", "the", "old")) {
            if (ANY(tokens, k - 2, "in", "inside")) return true;
        }
    return false;
}

bool value_is_worked(const struct note *note, size_t i, size_t n) {
    const struct tokens *tokens = &note->tokens;
    if (ANY(tokens, i, "card", "cards") && ANY(tokens, i + n, "table", "catalog", "case", "file", "rack",
                                               "index", "holder", "tray", "cabinet", "press", "box"))
        return true;
    if (ANY(tokens, i, "yarn", "wool", "thread", "rope", "string", "twine") &&
        ANY(tokens, i + n, "swift", "reel", "holder", "stand", "rack", "walk", "maker", "winch", "bed"))
        return true; // "yarn swift", "rope bed key"
    if (ANY(tokens, i, "wood", "metal") &&
        ANY(tokens, i + n, "lathe", "saw", "rasp", "screw", "screws", "file", "stove"))
        return true; // "wood lathe faceplate"
    if (ANY(tokens, i, "gold") && ANY(tokens, i + n, "pan", "pans", "scale", "scales", "balance"))
        return true;
    if (ANY(tokens, i, "mop"))
        return ANY(tokens, i + n, "bucket", "pail", "head", "handle", "wringer", "stick", "stand", "holder");
    if (ANY(tokens, i, "wallpaper", "veneer", "wire", "soap", "stone", "straw", "webbing", "lead", "tin",
            "grass") &&
        ANY(tokens, i + n, "brush", "hammer", "cutter", "cutters", "saver", "stretcher", "dispenser",
            "opener", "snips", "saw", "chisel", "strainer", "strippers", "ladle", "roller", "scraper", "hook",
            "jar", "dish", "strainers", "twister", "gauge", "dresser"))
        return !ANY(tokens, i + n, "brush", "jar") || !ANY(tokens, i, "wire", "tin"); // but "wire brush"
    return ANY(tokens, i, "lace", "leather", "paper", "cloth", "wool", "glass", "silk", "cotton", "linen",
               "rope", "cork", "bone", "cheese") &&
           ANY(tokens, i + n, "bobbin", "bobbins", "punch", "cutter", "cutters", "knife", "press", "shears",
               "winder", "scissors", "awl", "guillotine", "drill", "merchant", "mill", "cards", "carder",
               "gauge", "pricker", "making");
}

// "Flour sack": the whole name of the thing is a stuff as well, and none that it is of.
bool value_is_all_of_type(const struct note *note, size_t i, size_t n) {
    const size_t count = note->tokens.count;
    return n > 1 && (i == 0 || note->taken[i - 1] != TAKEN_TYPE) &&
           (i + n >= count || note->taken[i + n] != TAKEN_TYPE) && note->taken[i + n - 1] == TAKEN_TYPE;
}

// "Railway lamp, red glass cracked", "clear glass" of a lamp or a clock: of the pane, where glass is no stuff
// of the thing itself.
bool value_is_of_pane(const struct note *note, size_t glass, const char *look) {
    static const char *const glazed[] = {"lighting", "clocks-watches", "cameras", "furniture"};
    const struct family *family = note->record->family;
    size_t at = glass + 1;
    if (ANY(&note->tokens, glass, "and", "&") && token_is(&note->tokens, at, "clear"))
        return value_is_of_pane(note, at + 1, "clear"); // "red and clear glass"
    if (!family || !token_is(&note->tokens, glass, "glass") || note->taken[glass] == TAKEN_TYPE) return false;
    if (ANY(&note->tokens, at, "is", "has", "was")) at++;
    bool fault = at < note->tokens.count && note->fault_word[at] && note->tokens.at[at - 1].stop == STOP_NONE;
    for (size_t k = 0; k < COUNT(glazed) && (fault || text_same(look, "clear") || text_same(look, "beveled"));
         k++)
        if (text_same(family->rule.id, glazed[k])) return true;
    return false;
}

// "Grey spoon marks": the color of the marks.
static bool is_of_marks(const struct note *note, size_t i) {
    return i + 1 < note->tokens.count && note->fault_word[i] && note->fault_word[i + 1] &&
           ANY(&note->tokens, i + 1, "marks", "mark", "ring", "rings", "stain", "stains", "spots", "streaks");
}

// "Corven in gold inside each one": of the name that is read there.
static bool is_of_lettering(const struct note *note, size_t i, size_t to) {
    return i > 1 && ANY(&note->tokens, i - 1, "in") && note->tokens.at[i - 2].capital &&
           note->taken[i - 2] != TAKEN_NOT && note->taken[i - 2] != TAKEN_TYPE &&
           ANY(&note->tokens, to, "inside", "on", "under", "underneath", "across", "below", "along", "at");
}

// "Worn through at the tips to the yellow metal": what shows where it is worn.
static bool is_worn_to(const struct note *note, size_t i) {
    enum { FAR = 10 };
    const struct tokens *tokens = &note->tokens;
    if (i < 3 || !ANY(tokens, i - 1, "the", "bare") || !ANY(tokens, i - 2, "to", "the")) return false;
    for (size_t k = i - 1; k > 0 && i - k < FAR && tokens->at[k - 1].stop == STOP_NONE; k--)
        if (note->fault_word[k - 1]) return true;
    return false;
}

bool value_is_beside(const struct note *note, size_t i, size_t n) {
    if (value_is_of_company(note, i, n)) return true;
    bool when = ANY(&note->tokens, i, "round") && festival_at(&note->tokens, i + 1); // "round Easter"
    size_t year = i + 1 + (ANY(&note->tokens, i + 1, "in") ? 1 : 0);
    if (ANY(&note->tokens, i, "printed", "issued") && year < note->tokens.count &&
        note->taken[year] == TAKEN_DATE)
        return true; // "printed 1951": when, and not how
    return when || is_worn_to(note, i) || is_of_marks(note, i + n) || is_of_lettering(note, i, i + n);
}
