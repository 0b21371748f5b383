// SPDX-License-Identifier: MIT
// What is of wood splits as wood does, whatever else that splits would do: no tear of a pine box, no mere
// crack of a slat. Rubber that splits has perished, though it is the grip of an oar.
#include "notes/any.h"
#include "notes/faults.h"
#include "notes/kind_goods.h"
#include "text/order.h"

#include <string.h>

#define COUNT(list) (sizeof(list) / sizeof *(list))

// "Oars with rubber grips, grips split".
static bool is_rubber(const struct fault_reader *r, const char *place) {
    static const char *const grips[] = {"grip", "grips", "buffer", "buffers", "handgrip"};
    const struct tokens *tokens = &r->note->tokens;
    bool rubber = false;
    if (!place || !kind_names_one(place, grips, COUNT(grips))) return false;
    for (size_t i = 0; i < tokens->count && !rubber; i++) rubber = token_is(tokens, i, "rubber");
    return rubber;
}

static bool of_leather(const struct fault_reader *r) {
    const struct record *record = r->note->record;
    for (size_t i = 0; i < record->attribute_count; i++)
        if (text_same(record->attributes[i].name, "material") && !record->attributes[i].of &&
            text_same(record->attributes[i].value, "leather"))
            return true;
    return false;
}

// What is made of wood whether the note says so or not.
static bool is_wooden(const struct fault_reader *r, const char *place) {
    static const char *const things[] = {
        "breadboard", "board",  "trug",   "mallet", "oar",     "paddle", "bat",      "rolling pin",
        "print",      "mangle", "ladder", "ladle",  "skittle", "crate",  "skittles", "stool",
        "bench",      "chest",  "trough", "pin",    "hutch",   "gate",   "cart",     "barrel",
        "sledge",     "dinghy", "skiff",  "punt",   "toboggan"};
    static const char *const goods[] = {"kitchenware", "tools", "sports", "games-puzzles", "furniture"};
    const struct record *record = r->note->record;
    const char *type = record->type.value, *last = type ? strrchr(type, ' ') : NULL;
    bool good = false;
    for (size_t i = 0; record->family && i < COUNT(goods); i++)
        good |= text_same(record->family->rule.id, goods[i]);
    if (!type || !good || r->material_count || (place && strstr(place, "fold")) || strstr(type, "game"))
        return false;
    for (size_t i = 0; i < COUNT(things); i++)
        if (text_same(last ? last + 1 : type, things[i])) return true;
    return false;
}

static bool wood_before(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = scope_clause_start(&r->scope, hit->from); i < hit->from; i++)
        if (ANY(tokens, i, "wood", "wooden", "timber")) return true;
    return false;
}

// "Some gone green": what became of them, and none was used up.
static const struct flaw *of_turn(const struct fault_reader *r, const struct fault_hit *hit) {
    static const struct {
        const char *word, *kind;
    } turns[] = {{"green", "verdigris"},
                 {"rusty", "rust"},
                 {"dull", "tarnish"},
                 {"moldy", "mold"},
                 {"mouldy", "mold"}};
    const struct tokens *tokens = &r->note->tokens;
    if (!token_is(tokens, hit->to - 1, "gone") || tokens->at[hit->to - 1].stop != STOP_NONE) return NULL;
    for (size_t i = 0; i < COUNT(turns); i++)
        if (token_is(tokens, hit->to, turns[i].word)) return ruleset_flaw(r->note->rules, turns[i].kind);
    return NULL;
}

// "Red vinyl seat … the seat has split": what the note says the part is of is no wood.
static const struct flaw *of_its_cover(const struct fault_reader *r, const struct flaw *kind,
                                       const char *place) {
    static const char *const covers[] = {"vinyl",    "leather", "leatherette", "canvas", "fabric",
                                         "cloth",    "velvet",  "oilcloth",    "cotton", "imitation leather",
                                         "tapestry", "wool",    "felt",        "silk",   "faux leather"};
    const struct record *record = r->note->record;
    if (!place || !text_same(kind->rule.id, "wood-split")) return NULL;
    for (size_t i = 0; i < record->attribute_count; i++) {
        const struct value *v = &record->attributes[i];
        if (!v->of || !text_same(v->name, "material") || !strstr(place, v->of)) continue;
        bool sat = strstr(place, "seat") || strstr(place, "cushion");
        for (size_t k = 0; k < COUNT(covers); k++)
            if (text_same(v->value, covers[k]))
                return ruleset_flaw(r->note->rules, sat ? "upholstery-wear" : "tear");
        if (text_same(v->value, "plastic")) return ruleset_flaw(r->note->rules, "crack");
    }
    return NULL;
}

// Sheets of wood that part are veneer, a pane that is cracked is no wood, and spots on cloth are no paper's.
static const struct flaw *of_its_stuff(const struct fault_reader *r, const struct fault_hit *hit,
                                       const struct flaw *kind, const char *place) {
    static const char *const panes[] = {"pane", "panes", "glass", "glazing"};
    static const char *const parted[] = {"delaminating", "delaminated", "delaminates", "delamination"};
    static const char *const spotted[] = {"spotting", "spots", "spotted"};
    static const char *const plies[] = {"plywood", "ply", "veneered", "veneer"};
    const struct tokens *tokens = &r->note->tokens;
    const struct family *family = r->note->record->family;
    if (text_same(kind->rule.id, "wood-split") && place && kind_names_one(place, panes, COUNT(panes)))
        return ruleset_flaw(r->note->rules, "crack-through");
    static const char *const sheets[] = {"drawing", "drawings", "paper",   "papers", "map",
                                         "maps",    "card",     "cards",   "label",  "felt",
                                         "cloth",   "blanket",  "cushion", "cover"};
    if (text_same(kind->rule.id, "chip") && place && kind_names_one(place, sheets, COUNT(sheets)) &&
        ANY(tokens, hit->to - 1, "nibbled", "nibbles", "bitten", "chewed"))
        return ruleset_flaw(r->note->rules, "pest-signs");
    static const char *const soft[] = {"rope", "cord", "backing", "string", "netting", "becket", "sling"};
    if (text_same(kind->rule.id, "rubber-perished") && place && kind_names_one(place, soft, COUNT(soft)) &&
        !strstr(place, "elastic") && !strstr(place, "rubber"))
        return ruleset_flaw(r->note->rules, "fabric-weak");
    if (text_same(kind->rule.id, "insole-wear") && family && place && strstr(place, "stamp") &&
        (text_same(family->rule.id, "tools") || text_same(family->rule.id, "metalware") ||
         text_same(family->rule.id, "other")))
        return ruleset_flaw(r->note->rules, "decoration-wear"); // "maker stamp worn off" of a square
    static const char *const basins[] = {"bath", "sink", "basin", "tub", "font", "trough"};
    const char *type = r->note->record->type.value, *last = type ? strrchr(type, ' ') : NULL;
    for (size_t i = 0; type && place && i < COUNT(basins); i++) // "hip bath, no plug"
        if (text_same(kind->rule.id, "cord-frayed") && strstr(place, "plug") &&
            text_same(last ? last + 1 : type, basins[i]))
            return ruleset_flaw(r->note->rules, "missing-stopper");
    if (text_same(kind->rule.id, "rubber-perished") && place && strstr(place, "leather"))
        return ruleset_flaw(r->note->rules, "leather-crack");
    if (text_same(kind->rule.id, "upholstery-wear") && place && strstr(place, "spring") && family &&
        !text_same(family->rule.id, "furniture"))
        return ruleset_flaw(r->note->rules, "partly-working"); // of a press
    if (text_same(kind->rule.id, "moth-holes") && family &&
        (text_same(family->rule.id, "paper") || text_same(family->rule.id, "books")))
        return ruleset_flaw(r->note->rules, "pest-signs"); // "edge nibbled"
    static const char *const teeth[] = {"tooth", "teeth"};
    if (text_same(kind->rule.id, "blade-wear") && place && kind_names_one(place, teeth, COUNT(teeth)) &&
        type && (strstr(type, "rake") || strstr(type, "comb") || strstr(type, "harrow")) &&
        ANY(tokens, hit->to - 1, "gone", "missing", "snapped", "broken", "off", "lost"))
        return ruleset_flaw(r->note->rules, "broken-part");
    static const char *const holes[] = {"hole", "holes", "slot", "slots"};
    if (text_same(kind->rule.id, "tear") && place && kind_names_one(place, holes, COUNT(holes)) && family &&
        (text_same(family->rule.id, "metalware") || text_same(family->rule.id, "tools")))
        return ruleset_flaw(r->note->rules, "broken-part"); // "screw holes torn"
    if (text_same(kind->rule.id, "upholstery-wear") && place && strstr(place, "webbing") && family &&
        !text_same(family->rule.id, "furniture") && ANY(tokens, hit->to - 1, "frayed", "fraying", "frays"))
        return ruleset_flaw(r->note->rules, "fraying"); // of a harness
    if (text_same(kind->rule.id, "leather-crack") && place &&
        (strstr(place, "window") || strstr(place, "celluloid") || strstr(place, "wheel")))
        return ruleset_flaw(r->note->rules, "crack");
    if (text_same(kind->rule.id, "upholstery-wear") && place && strstr(place, "webbing") && family &&
        text_same(family->rule.id, "sports"))
        return ruleset_flaw(r->note->rules, "broken-part"); // of a snowshoe
    static const char *const elastics[] = {"hose",   "hoses",  "line",    "lines",
                                           "tubing", "gaiter", "gaiters", "belt"};
    if (text_same(kind->rule.id, "wood-split") && place && kind_names_one(place, elastics, COUNT(elastics)))
        return ruleset_flaw(r->note->rules, "rubber-perished"); // "fuel line split"
    static const char *const metals[] = {"ferrule", "ferrules", "collar", "socket",  "tang",    "collet",
                                         "collets", "chuck",    "jaw",    "jaws",    "casting", "castings",
                                         "bracket", "nut",      "bush",   "coupler", "clamp",   "housing",
                                         "nozzle",  "pipe",     "tube",   "washer",  "cap"};
    static const char *const grips[] = {"grip", "grips", "handgrip", "casing", "insulation"};
    const struct flaw *wood = ruleset_flaw(r->note->rules, "wood-split");
    bool grain = false; // "grip split along the grain"
    for (size_t i = hit->from; i < hit->to + 4 && i < tokens->count; i++)
        grain |= token_is(tokens, i, "grain");
    bool bare = !grain && place && wood && kind == wood && !kind_is_of_material(r, wood, place) &&
                !wood_before(r, hit) && !is_rubber(r, place) &&
                kind_names_one(place, grips, COUNT(grips)); // of pliers
    if (bare || (kind == wood && place && kind_names_one(place, metals, COUNT(metals))))
        return ruleset_flaw(r->note->rules, "crack");
    if (text_same(kind->rule.id, "foxing") && family &&
        (text_same(family->rule.id, "linens") || text_same(family->rule.id, "clothing")) &&
        token_among(tokens, hit->to - 1, spotted, COUNT(spotted)))
        return ruleset_flaw(r->note->rules, "stain");
    if (text_same(kind->rule.id, "partly-used-supplies")) return of_turn(r, hit);
    static const char *const rods[] = {"ends",    "end",     "rods",    "rod",     "canes",
                                       "strands", "strand",  "withy",   "withies", "reeds",
                                       "stakes",  "weavers", "splints", "bristles"};
    if (text_same(kind->rule.id, "chip") && token_is(tokens, hit->from, "out") && place &&
        kind_names_one(place, rods, COUNT(rods))) // "willow ends have come out of the rim"
        return ruleset_flaw(r->note->rules, "loose-part");
    if (!text_same(kind->rule.id, "peeling-coating") ||
        !token_among(tokens, hit->to - 1, parted, COUNT(parted)))
        return NULL;
    for (size_t i = 0; i < tokens->count; i++)
        if (token_among(tokens, i, plies, COUNT(plies))) return ruleset_flaw(r->note->rules, "veneer-damage");
    return NULL;
}

static bool is_rotten(const struct tokens *tokens, const struct fault_hit *hit) {
    for (size_t i = hit->from; i < hit->to; i++)
        if (ANY(tokens, i, "rotted", "rotten", "rotting", "rot")) return true;
    return false;
}

// What is of wood splits as wood does, a box as well: no tear and no mere crack, unless a soft part is named.
const struct flaw *kind_of_wood(const struct fault_reader *r, const struct fault_hit *hit,
                                const struct flaw *kind, const char *place) {
    static const char *const said[] = {"split", "splits", "splitting"};
    static const char *const soft[] = {"seat",  "lining", "cover", "cushion", "strap",   "sleeve",
                                       "label", "cloth",  "paper", "canvas",  "leather", "felt",
                                       "baize", "grip",   "grips", "rubber",  "card",    "skin",
                                       "bag",   "jacket", "seam",  "seams",   "corner",  "corners"};
    static const char *const wooden[] = {"slat",   "slats",  "stave",   "staves",    "spindle",    "spindles",
                                         "rung",   "rungs",  "plank",   "stretcher", "stretchers", "splat",
                                         "planks", "batten", "battens", "board",     "boards"};
    if (!kind) return hit->kinds[0]; // what it would become is in a file that is broken
    const struct flaw *stuff = of_its_cover(r, kind, place);
    if (!stuff) stuff = of_its_stuff(r, hit, kind, place);
    if (stuff) return stuff;
    const char *id = kind->rule.id;
    const struct flaw *perished = text_same(id, "wood-split") && is_rubber(r, place)
                                      ? ruleset_flaw(r->note->rules, "rubber-perished")
                                      : NULL;
    if (perished) return perished;
    // "Stiff and cracked": what perishes is of rubber, and leather cracks
    bool elastic = ANY(&r->note->tokens, hit->from, "elastic", "elastics", "rubber");
    for (size_t i = hit->from; i < hit->to; i++) elastic |= ANY(&r->note->tokens, i, "worn"); // a washer
    const struct flaw *leather =
        text_same(id, "rubber-perished") && !elastic && !is_rubber(r, place) && of_leather(r)
            ? ruleset_flaw(r->note->rules, "leather-crack")
            : NULL;
    if (leather) return leather;
    bool named = text_same(id, "leather-crack") && wood_before(r, hit); // "wood has a split" of a clog
    static const char *const tied[] = {"roll",   "tie",   "ties", "rope",    "ropes", "cord", "cords", "sash",
                                       "string", "thong", "net",  "webbing", "sling", "sail", "tapes"};
    static const char *const legs[] = {"frame",  "frames", "beam",   "beams", "leg",     "legs",    "tread",
                                       "treads", "post",   "posts",  "sill",  "gunwale", "transom", "keel",
                                       "stem",   "shaft",  "shafts", "rail",  "rails"};
    if ((text_same(id, "fabric-weak") || text_same(id, "rust")) && is_rotten(&r->note->tokens, hit) &&
        (is_wooden(r, place) || kind_is_all_wood(r) ||
         (place &&
          (kind_names_one(place, wooden, COUNT(wooden)) || kind_names_one(place, legs, COUNT(legs))))) &&
        !(place && (kind_names_one(place, soft, COUNT(soft)) || kind_names_one(place, tied, COUNT(tied))))) {
        const struct flaw *rot = ruleset_flaw(r->note->rules, "water-damage"); // "rungs rotted"
        return rot ? rot : kind;
    }
    const struct flaw *splits = ruleset_flaw(r->note->rules, "wood-split"); // "wood lid split in two"
    if (text_same(id, "crack-through") && splits && place && kind_is_of_material(r, splits, place) &&
        token_among(&r->note->tokens, hit->from, said, COUNT(said)))
        return splits;
    if (!text_same(id, "tear") && !text_same(id, "crack") && !named) return kind;
    if (!token_among(&r->note->tokens, hit->from, said, COUNT(said)) &&
        !token_among(&r->note->tokens, hit->to - 1, said, COUNT(said)))
        return kind;
    const struct flaw *split = ruleset_flaw(r->note->rules, "wood-split");
    if (!split) return kind;
    bool other = place && kind_names_one(place, soft, COUNT(soft));
    bool wood = named || is_wooden(r, place) || kind_is_of_material(r, split, place) ||
                (place && kind_names_one(place, wooden, COUNT(wooden)));
    return other || !wood ? kind : split;
}
