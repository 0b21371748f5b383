// SPDX-License-Identifier: MIT
// What a word of fault is by the part that it is said of, whatever the thing: a new wire is wiring, what has
// a grain is wood, and the hinges of a tin are no book's.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

bool kind_names_one(const char *place, const char *const *words, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (kind_has_word(place, words[i])) return true;
    return false;
}

// Fired or blown, and not the wooden handle of what is.
static bool is_fired(const struct fault_reader *r, const char *place) {
    static const char *const glasses[] = {"mirror", "pane", "panes", "glass", "mirror's"};
    const char *type = r->note->record->type.value, *last = type ? strrchr(type, ' ') : NULL;
    bool fired = false, looking = type && text_same(last ? last + 1 : type, "mirror");
    static const char *const places[] = {"corner", "corners", "edge", "across", "side", "middle", "center"};
    bool whole = !place || kind_names_one(place, places, COUNT(places));
    if ((place && kind_names_one(place, glasses, COUNT(glasses))) || (looking && whole)) return true;
    for (size_t i = 0; i < r->material_count; i++) {
        const struct value *value = r->materials[i];
        if (value->of && place && kind_has_word(place, value->of)) return false;
        fired |= !value->of && (kind_names_material("ceramics", value->value) ||
                                kind_names_material("glass", value->value));
    }
    return fired && r->material_count == 1;
}

// A tin's hinges are no book's.
static bool is_box(const struct fault_reader *r) {
    static const char *const boxes[] = {"tin",   "box",    "case",   "chest", "caddy",
                                        "trunk", "locket", "casket", "safe",  "canister"};
    const char *type = r->note->record->type.value;
    bool box = false;
    for (size_t i = 0; type && i < COUNT(boxes); i++) box |= kind_has_word(type, boxes[i]);
    return box;
}

// "The hinge of the lid is weak": of an inkstand, and not of a book.
static bool is_hinge_of_goods(const struct fault_reader *r, const struct fault_hit *hit, const char *place) {
    static const char *const bound[] = {"books", "paper", "music", "crafts", "media"};
    const struct family *family = r->note->record->family;
    if (!family || !(kind_has_word(place, "hinge") || kind_has_word(place, "hinges"))) return false;
    for (size_t i = 0; i < COUNT(bound); i++)
        if (text_same(family->rule.id, bound[i])) return false;
    return ANY(&r->note->tokens, hit->to - 1, "weak", "tender", "loose", "shaky", "torn");
}

// All of it metal, as far as the note says; a part of another material is not.
static bool is_metal(const struct fault_reader *r, const char *place) {
    static const char *const metals[] = {"silver", "pewter", "copper", "brass",    "tin",      "steel",
                                         "iron",   "bronze", "chrome", "aluminum", "aluminium"};
    bool metal = false;
    for (size_t i = 0; i < r->material_count; i++) {
        const struct value *value = r->materials[i];
        if (value->of && place && kind_has_word(place, value->of)) return false;
        for (size_t k = 0; k < COUNT(metals); k++)
            metal |= !value->of && kind_has_word(value->value, metals[k]);
    }
    return metal && r->material_count == 1;
}

// Corrosion that a note with a battery in it speaks of by itself is the battery's.
static bool is_by_battery(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const ids[] = {"electrical", "cameras", "toys", "lighting", "clocks-watches"};
    static const char *const cells[] = {"battery", "batteries", "contacts", "terminals"};
    const struct tokens *tokens = &r->note->tokens;
    const struct family *family = r->note->record->family;
    bool runs = false, cell = false;
    for (size_t i = 0; family && i < COUNT(ids); i++) runs |= text_same(family->rule.id, ids[i]);
    if (!runs || !token_is(tokens, hit->from, "corrosion")) return false;
    for (size_t i = 0; i < tokens->count && !cell; i++) cell = token_among(tokens, i, cells, COUNT(cells));
    return cell;
}

// "The frets are worn", "handle is a bit worn": of a part, and not of the thing at large.
static bool is_worn_part(const struct fault_reader *r, const struct fault_hit *hit, const char *place) {
    static const char *const between[] = {"is",   "are",   "was",    "a",        "bit",    "rather", "quite",
                                          "very", "well",  "badly",  "slightly", "all",    "has",    "have",
                                          "been", "looks", "little", "getting",  "pretty", "fairly"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->from;
    bool to = hit->to == at + 2 && ANY(tokens, at + 1, "to", "down"); // "worn to stubs"
    if ((hit->to != at + 1 && !to) || !token_is(tokens, at, "worn")) return false;
    while (at > 0 && hit->from - at < 4 && tokens->at[at - 1].stop == STOP_NONE &&
           token_among(tokens, at - 1, between, COUNT(between)))
        at--;
    return at > 0 && (at < hit->from || (place && !r->part[at - 1])) &&
           tokens->at[at - 1].stop == STOP_NONE &&
           (r->part[at - 1] || (place && kind_has_word(place, tokens->at[at - 1].fold))) &&
           r->note->taken[at - 1] != TAKEN_TYPE;
}

// The blade of an oar cuts nothing.
static bool is_blade_of_paddle(const struct fault_reader *r) {
    const char *type = r->note->record->type.value;
    return type && (strstr(type, "paddle") || strstr(type, "oar") || strstr(type, "propeller"));
}

static bool is_plastic(const struct fault_reader *r) {
    bool plastic = false;
    for (size_t i = 0; i < r->material_count; i++)
        plastic |= !r->materials[i]->of && kind_names_material("plastic", r->materials[i]->value);
    return plastic;
}

// The glass of a picture, a cupboard or a lantern is a pane, and no dial's, lens or screen.
static const char *kind_of_pane(const struct fault_reader *r, const struct fault_hit *hit,
                                const char *place) {
    static const char *const seen[] = {"cameras", "electrical", "clocks-watches", "media", "jewelry"};
    const struct tokens *tokens = &r->note->tokens;
    const struct family *family = r->note->record->family;
    for (size_t i = 0; family && i < COUNT(seen); i++)
        if (text_same(family->rule.id, seen[i])) return NULL;
    if (!family || !place || !kind_has_word(place, "glass")) return NULL;
    for (size_t i = hit->from; i < hit->to; i++)
        if (ANY(tokens, i, "cracked", "crack", "cracks"))
            return "crack-through";
        else if (ANY(tokens, i, "chipped", "chip", "chips"))
            return "chip";
        else if (ANY(tokens, i, "scratched", "scratches", "scratch"))
            return "scratches";
    return NULL;
}

// Gold that is worn off a frame, a cup or a spine is gilding; what is plated says so, and is metal.
static bool is_gilding(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const metals[] = {"jewelry", "metalware", "music"};
    const struct tokens *tokens = &r->note->tokens;
    const struct family *family = r->note->record->family;
    const char *type = r->note->record->type.value;
    for (size_t i = 0; family && i < COUNT(metals); i++)
        if (text_same(family->rule.id, metals[i])) return false;
    if (type && strstr(type, "watch")) return false;
    for (size_t i = 0; i < tokens->count; i++)
        if (ANY(tokens, i, "plate", "plated", "plating", "gold-plated")) return false;
    return family && ANY(tokens, hit->from, "gold", "gilding", "gilt");
}

// "Moth at one end, a few small holes": what the moth has made.
static bool is_made_by_moth(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { FAR = 14 };
    static const char *const others[] = {"burn", "burnt", "cigarette", "nail",    "pin",   "tack", "screw",
                                         "rust", "worn",  "drilled",   "punched", "spark", "bolt", "mouse"};
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = hit->from > 2 ? hit->from - 2 : 0; i < hit->to + 1; i++)
        if (token_among(tokens, i, others, COUNT(others))) return false;
    for (size_t i = 0; i < r->hit_count && r->hits[i].from < hit->from; i++)
        if (text_same(r->hits[i].kinds[0]->rule.id, "moth-holes") && r->hits[i].to + FAR > hit->from &&
            !(r->scope.stance[r->hits[i].from] & (STANCE_DENIED | STANCE_NONE_SEEN | STANCE_UNKNOWN)))
            return true;
    return false;
}

// "Lid bowed and won't sit flat": it moves, but lies badly.
static bool lies_badly(const struct tokens *tokens, const struct fault_hit *hit) {
    return ANY(tokens, hit->to - 1, "won't", "wont", "doesn't", "doesnt") &&
           ANY(tokens, hit->to, "sit", "lie", "lay", "stand", "rest") &&
           ANY(tokens, hit->to + 1, "flat", "level", "flush", "square", "straight", "true", "even");
}

// "Rim split where the solder let go": what comes of it and what came first are one.
static const char *kind_of_cause(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { FAR = 5 };
    static const char *const joins[] = {"seam-split", "seam-open", "loose-joint", "clasp-fault"};
    const struct tokens *tokens = &r->note->tokens;
    if (!ANY(tokens, hit->to, "where", "because", "as", "since") ||
        tokens->at[hit->to - 1].stop != STOP_NONE ||
        !ANY(tokens, hit->to - 1, "split", "open", "opened", "parted", "gaping", "gapes", "cracked", "loose"))
        return NULL;
    for (size_t i = 0; i < r->hit_count; i++)
        for (size_t k = 0; k < COUNT(joins) && r->hits[i].from > hit->to && r->hits[i].from < hit->to + FAR;
             k++)
            if (text_same(r->hits[i].kinds[0]->rule.id, joins[k])) return joins[k];
    return NULL;
}

static bool is_paper(const struct fault_reader *r) {
    const struct family *family = r->note->record->family;
    return family && (text_same(family->rule.id, "books") || text_same(family->rule.id, "paper"));
}

static bool is_in(const struct fault_reader *r, const char *const *ids, size_t count) {
    const struct family *family = r->note->record->family;
    for (size_t i = 0; family && i < count; i++)
        if (text_same(family->rule.id, ids[i])) return true;
    return false;
}

static bool is_fired_goods(const struct fault_reader *r) {
    static const char *const ids[] = {"ceramics", "glassware"};
    return !r->note->record->family || is_in(r, ids, COUNT(ids));
}

// "Drip tray gone": no liner.
static bool is_other_tray(const struct fault_reader *r, const struct fault_hit *hit) {
    for (size_t i = hit->from > 0 ? hit->from : 1; i < hit->to; i++)
        if (ANY(&r->note->tokens, i, "tray", "trays") &&
            ANY(&r->note->tokens, i - 1, "drip", "crumb", "pen", "ash", "tea", "cash", "oil", "seed"))
            return true;
    return false;
}

// A patch on what is all wood is no darn.
static bool is_wooden(const struct fault_reader *r) {
    bool wood = false;
    const char *type = r->note->record->type.value;
    for (size_t i = 0; i < r->material_count; i++)
        if (!kind_names_material("wood", r->materials[i]->value))
            return false;
        else
            wood = true;
    return wood || (type && (!strcmp(type, "oar") || strstr(type, "paddle") || strstr(type, "ladder")));
}

// The head of a drum is a skin.
static bool is_skin(const struct fault_reader *r, const char *place) {
    const char *type = r->note->record->type.value;
    if (kind_has_word(place, "vellum") || kind_has_word(place, "skin")) return true;
    return type && kind_has_word(place, "head") &&
           (strstr(type, "drum") || strstr(type, "banjo") || strstr(type, "tambour"));
}

// On a picture new paint hides what was there, and is no new finish of a piece of furniture.
static bool is_picture(const struct fault_reader *r) {
    const char *type = r->note->record->type.value;
    static const char *const words[] = {"painting", "picture", "portrait", "icon", "watercolor", "print"};
    for (size_t i = 0; type && i < COUNT(words); i++)
        if (strstr(type, words[i])) return true;
    return false;
}

// A new wire is wiring, what has a grain is wood, a pattern that is worn is decoration, and a cap that is
// lost was not broken off, whatever the thing.
const struct flaw *kind_of_part(const struct fault_reader *r, const struct fault_hit *hit,
                                const struct flaw *kind, const char *place) {
    static const char *const wires[] = {"wire",   "wires",   "wiring", "flex",    "cord",
                                        "cable",  "plug",    "wire's", "flex's",  "cord's",
                                        "plug's", "cable's", "lead's", "wiring's"};
    static const char *const designs[] = {"pattern",   "design",     "transfer",  "decal",       "etching",
                                          "engraving", "decoration", "lettering", "graduations", "markings",
                                          "numerals",  "figures",    "letters",   "numbers"};
    static const char *const tops[] = {"cap",  "caps",    "cover", "lid", "knob",
                                       "plug", "stopper", "screw", "key", "finial"};
    static const char *const lost[] = {"lost", "missing", "gone"};
    static const char *const halves[] = {"half", "partly", "part", "partially", "nearly", "mostly"};
    static const char *const pressed[] = {"button", "buttons", "key", "keys", "switch", "switches"};
    static const char *const wholes[] = {"movement", "mechanism", "engine", "works", "machine",
                                         "unit",     "set",       "motor",  "clock", "watch"};
    static const char *const working[] = {"work", "working", "works"};
    static const char *const holders[] = {"chuck", "jaw", "jaws", "vice", "clutch", "brake"};
    static const char *const joints[] = {"corner", "corners", "joint",    "joints",
                                         "mitre",  "miter",   "dovetail", "dovetails"};
    static const char *const hard[] = {"bar",       "rail",  "leg",     "legs",    "arm",   "arms",
                                       "frame",     "pole",  "poles",   "slat",    "slats", "stave",
                                       "staves",    "rung",  "rungs",   "spindle", "post",  "posts",
                                       "stretcher", "block", "bracket", "roller",  "batten"};
    const char *id = kind->rule.id, *meant = kind->class == CLASS_DAMAGE ? kind_of_cause(r, hit) : NULL;
    if (meant) {
    } else if (text_same(id, "wear-unspecified") && is_worn_part(r, hit, place))
        meant = place && kind_names_one(place, designs, COUNT(designs)) ? "decoration-wear" : "wear-rub";
    else if (text_same(id, "crack") && place && kind_has_word(place, "grain"))
        meant = "wood-split";
    else if (text_same(id, "crack") && is_fired(r, place))
        meant = "crack-through";
    else if (text_same(id, "blade-wear") && is_blade_of_paddle(r) &&
             token_is(&r->note->tokens, hit->to - 1, "worn"))
        meant = "wear-rub";
    else if (text_same(id, "darned-patched") && (is_metal(r, place) || is_fired(r, place)))
        meant = "glued-repair"; // "a patch on the base" of an iron pot
    else if (text_same(id, "wood-split") && is_metal(r, place))
        meant = "crack";
    else if (text_same(id, "refinished") && is_picture(r) &&
             ANY(&r->note->tokens, hit->to - 1, "overpainted", "repainted", "painted", "over"))
        meant = "filled-overpainted";
    else if (text_same(id, "finish-crackle") &&
             ANY(&r->note->tokens, hit->to - 1, "gone", "turned", "going") &&
             ANY(&r->note->tokens, hit->to, "yellow", "brown", "amber", "yellowish", "orange"))
        meant = "yellowing"; // "varnish gone yellow"
    else if (text_same(id, "seized") && lies_badly(&r->note->tokens, hit))
        meant = "warped";
    else if (text_same(id, "hole") && ANY(&r->note->tokens, hit->from, "rusted", "rust", "rotted") &&
             (ANY(&r->note->tokens, hit->from + 1, "nearly", "almost") ||
              (hit->from > 0 && ANY(&r->note->tokens, hit->from - 1, "nearly", "almost"))))
        meant = "rust"; // "rusted nearly through"
    else if (text_same(id, "tear") && place &&
             ANY(&r->note->tokens, hit->to - 1, "split", "splits", "splitting") &&
             kind_names_one(place, hard, COUNT(hard)))
        meant = "wood-split"; // "the spreader bar has split" of a hammock
    else if (text_same(id, "chip") && is_paper(r) &&
             ANY(&r->note->tokens, hit->from, "edges", "edge", "chipped", "corners"))
        meant = "edge-wear";
    else if (text_same(id, "stone-missing") && ANY(&r->note->tokens, hit->to - 1, "chipped", "chips"))
        meant = "chip"; // of what is made of stone
    else if (text_same(id, "missing-liner") && is_other_tray(r, hit))
        meant = "missing-accessory";
    else if (text_same(id, "firing-flaw") && ANY(&r->note->tokens, hit->from, "pinhole", "pinholes") &&
             !is_fired_goods(r))
        meant = "hole";
    else if (text_same(id, "darned-patched") && is_wooden(r))
        meant = "glued-repair";
    else if (text_same(id, "paint-flaking") && r->note->record->family && is_fired_goods(r) &&
             ANY(&r->note->tokens, hit->to - 1, "worn", "rubbed", "thin", "faded", "wearing"))
        meant = "decoration-wear"; // paint of a figure
    else if (text_same(id, "clasp-fault") && place && kind_names_one(place, holders, COUNT(holders)))
        meant = "partly-working";
    else if (text_same(id, "partly-working") && ANY(&r->note->tokens, hit->to - 1, "stops", "stop") &&
             ANY(&r->note->tokens, hit->to, "halfway", "short", "part") && !running_can(r->note))
        meant = "seized"; // a draw tube
    else if (text_same(id, "warped") && ANY(&r->note->tokens, hit->to - 1, "sprung") && place &&
             kind_names_one(place, joints, COUNT(joints)))
        meant = "loose-joint";
    else if (text_same(id, "patina") && ANY(&r->note->tokens, hit->to - 2, "gone", "turned", "going") &&
             ANY(&r->note->tokens, hit->to - 1, "brown", "black", "dark", "yellow"))
        meant = "tarnish";
    else if ((text_same(id, "wood-split") || text_same(id, "crack")) && place && is_skin(r, place))
        meant = "tear";
    else if (text_same(id, "plate-wear") && r->note->record->family &&
             text_same(r->note->record->family->rule.id, "tools") &&
             ANY(&r->note->tokens, hit->to - 1, "pitted", "pitting", "pits"))
        meant = "rust"; // the plate of a saw
    else if (text_same(id, "wear-unspecified") && place && hit->to == hit->from + 1 &&
             token_is(&r->note->tokens, hit->from, "worn") &&
             r->note->tokens.at[hit->from].stop == STOP_NONE &&
             ANY(&r->note->tokens, hit->to, "at", "near", "under", "where", "by"))
        meant = "wear-rub"; // "legs worn at the foot"
    else if (text_same(id, "hole") && is_made_by_moth(r, hit))
        meant = "moth-holes";
    else if (text_same(id, "screen-damage"))
        meant = kind_of_pane(r, hit, place);
    else if (text_same(id, "plate-wear") && is_gilding(r, hit))
        meant = "gilt-wear";
    else if (text_same(id, "gilt-wear") && place &&
             (kind_has_word(place, "plate") || kind_has_word(place, "plating")))
        meant = "plate-wear"; // "plate's rubbed through" on the mounts of a jug of glass
    else if (text_same(id, "rust") && is_by_battery(r, hit))
        meant = "battery-corrosion";
    else if (text_same(id, "sticky-plastic") && token_is(&r->note->tokens, hit->from, "sticky") && place &&
             kind_names_one(place, pressed, COUNT(pressed)))
        meant = "partly-working";
    else if (text_same(id, "replaced-part") && place && kind_names_one(place, wires, COUNT(wires)))
        meant = "rewired";
    else if ((text_same(id, "wear-unspecified") || text_same(id, "wear-rub")) && place &&
             kind_names_one(place, designs, COUNT(designs)))
        meant = "decoration-wear";
    else if (text_same(id, "broken-part") && place && kind_names_one(place, tops, COUNT(tops)) &&
             token_among(&r->note->tokens, hit->to - 1, lost, COUNT(lost)) &&
             !(hit->to > 1 && (token_among(&r->note->tokens, hit->to - 2, halves, COUNT(halves)) ||
                               ANY(&r->note->tokens, hit->to - 2, "corner", "piece", "bit", "chunk", "edge",
                                   "tip", "lump", "section", "end", "part", "side"))))
        return absent_kind_here(r, place, 1);
    else if (text_same(id, "binding-weak") && place && kind_has_word(place, "hinges") && is_box(r))
        return absent_kind_here(r, place, 1);
    else if (text_same(id, "binding-weak") && place && is_hinge_of_goods(r, hit, place))
        meant = "loose-part";
    else if (text_same(id, "rubber-perished") && is_plastic(r) &&
             ANY(&r->note->tokens, hit->to - 1, "brittle", "cracked"))
        meant = "crack"; // "the lid has gone brittle"
    else if (text_same(id, "seized") && place &&
             (kind_has_word(place, "strap") || kind_has_word(place, "straps")))
        meant = "strap-damage"; // "the straps have gone stiff"
    else if (text_same(id, "refinished") && mends_hide_damage(r, hit))
        meant = "filled-overpainted";
    else if (text_same(id, "missing-pieces") && place && absent_is_of_one(r, hit))
        meant = "broken-part";
    else if (!strcmp(id, "not-working") && place && !kind_names_one(place, wholes, COUNT(wholes)) &&
             token_among(&r->note->tokens, hit->to - 1, working, COUNT(working)))
        meant = "partly-working"; // "the volume doesn't work"
    const struct flaw *other = meant ? ruleset_flaw(r->note->rules, meant) : NULL;
    return other ? other : kind;
}
