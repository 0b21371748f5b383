// SPDX-License-Identifier: MIT
// What goods are by their family, their name and their materials, where the word of a fault is another kind
// for it: leather creases and metal is bent, dark spots of wood are no mold.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/kind_goods.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_in(const struct fault_reader *r, const char *const *ids, size_t count) {
    const struct family *family = r->note->record->family;
    for (size_t i = 0; family && i < count; i++)
        if (text_same(family->rule.id, ids[i])) return true;
    return false;
}

// "Paint has faded" of a sled: the color of it, and no picture on it.
bool kind_is_plain_paint(const struct fault_reader *r) {
    static const char *const painted[] = {"ceramics", "glassware",     "toys",
                                          "decor",    "games-puzzles", "lighting"};
    const char *type = r->note->record->type.value;
    return r->note->record->family && !is_in(r, painted, COUNT(painted)) && !(type && strstr(type, "sign"));
}

bool kind_is_leather(const struct fault_reader *r, const char *place) {
    static const char *const worn[] = {"glove", "boot", "shoe", "skate", "saddle", "holster", "bag", "mitt"};
    const char *type = r->note->record->type.value, *last = type ? strrchr(type, ' ') : NULL;
    if (place && kind_has_word(place, "leather")) return true;
    for (size_t i = 0; i < r->material_count; i++)
        if (!r->materials[i]->of && kind_has_word(r->materials[i]->value, "leather")) return true;
    for (size_t i = 0; type && i < COUNT(worn); i++)
        if (text_same(last ? last + 1 : type, worn[i])) return true; // but no boot jack
    return false;
}

// A tent or a deck chair among goods that are mostly hard.
static bool is_of_cloth(const struct fault_reader *r) {
    static const char *const stuffs[] = {"canvas", "cotton", "linen",   "wool",
                                         "nylon",  "silk",   "hessian", "cloth"};
    static const char *const things[] = {"tent",       "sail",      "awning", "hammock",     "tarp",
                                         "deck chair", "deckchair", "flag",   "umbrella",    "parasol",
                                         "net",        "spinnaker", "jib",    "sleeping bag"};
    const char *type = r->note->record->type.value, *at;
    for (size_t i = 0; i < r->material_count; i++)
        for (size_t k = 0; !r->materials[i]->of && k < COUNT(stuffs); k++)
            if (text_same(r->materials[i]->value, stuffs[k])) return true;
    for (size_t k = 0; type && k < COUNT(things); k++)
        if ((at = strstr(type, things[k])) && (at == type || at[-1] == ' ')) return true;
    return false;
}

bool kind_is_hard(const struct fault_reader *r, const char *place) {
    static const char *const ids[] = {"tools",    "sports", "metalware",      "kitchenware",
                                      "cameras",  "parts",  "clocks-watches", "electrical",
                                      "lighting", "music",  "furniture"};
    static const char *const soft[] = {"leather", "canvas", "strap",   "straps",  "bag",  "case",
                                       "cover",   "lining", "cloth",   "cushion", "wall", "flap",
                                       "sail",    "seat",   "bellows", "rope"};
    return is_in(r, ids, COUNT(ids)) && !kind_is_leather(r, NULL) && !is_of_cloth(r) &&
           !(place && kind_names_one(place, soft, COUNT(soft)));
}

// Their pins, hooks and pulls fasten nothing that is worn.
bool kind_is_hardware(const struct fault_reader *r) {
    static const char *const worn[] = {"jewelry", "clothing", "bags", "linens", "footwear", "crafts", "toys"};
    return r->note->record->family && !is_in(r, worn, COUNT(worn));
}

// On a picture new paint hides what was there, and is no new finish of a piece of furniture.
bool kind_is_picture(const struct fault_reader *r) {
    const char *type = r->note->record->type.value;
    static const char *const words[] = {"painting",  "picture",     "portrait", "icon",      "watercolor",
                                        "print",     "watercolour", "oil on",   "gouache",   "etching",
                                        "engraving", "lithograph",  "drawing",  "acrylic on"};
    for (size_t i = 0; type && i < COUNT(words); i++)
        if (strstr(type, words[i])) return true;
    return false;
}

// The head of a drum is a skin.
bool kind_is_skin(const struct fault_reader *r, const char *place) {
    const char *type = r->note->record->type.value;
    if (kind_has_word(place, "vellum") || kind_has_word(place, "skin")) return true;
    return type && kind_has_word(place, "head") &&
           (strstr(type, "drum") || strstr(type, "banjo") || strstr(type, "tambour"));
}

// A tin's hinges are no book's.
bool kind_is_box(const struct fault_reader *r) {
    static const char *const boxes[] = {"tin",   "box",    "case",   "chest", "caddy",
                                        "trunk", "locket", "casket", "safe",  "canister"};
    const char *type = r->note->record->type.value;
    bool box = false;
    for (size_t i = 0; type && i < COUNT(boxes); i++) box |= kind_has_word(type, boxes[i]);
    return box;
}

// The blade of an oar cuts nothing.
bool kind_is_blade_of_paddle(const struct fault_reader *r) {
    const char *type = r->note->record->type.value;
    return type && (strstr(type, "paddle") || strstr(type, "oar") || strstr(type, "propeller"));
}

bool kind_is_plastic(const struct fault_reader *r) {
    bool plastic = false;
    for (size_t i = 0; i < r->material_count; i++)
        plastic |= !r->materials[i]->of && kind_names_material("plastic", r->materials[i]->value);
    return plastic;
}

// "Hoops painted red, flaking", "the varnish is dark, peeling at the foot": what coat it is that does.
char kind_coat(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    char coat = 0;
    for (size_t i = scope_sentence_start(&r->scope, hit->from); i < hit->to; i++) {
        if (ANY(tokens, i, "paint", "paint's", "painted", "repainted", "paintwork")) coat = 'p';
        if (ANY(tokens, i, "varnish", "varnish's", "varnished", "lacquer", "shellac", "polish", "finish"))
            coat = 'v';
        if (ANY(tokens, i, "leather", "leathercloth", "leatherette", "rexine", "vinyl", "covering", "coating",
                "skin", "lining", "plastic", "film", "laminate"))
            return 0;
    }
    return coat;
}

static bool is_material(const struct note *note, size_t i, const char *class) {
    struct word_entry entry;
    return word_at(note, i, 1u << USE_MATERIAL, &entry) == 1 &&
           kind_names_material(class, note->tokens.at[i].fold);
}

// "One of the brass corners is missing": of what they are made tells that they were put on.
bool kind_is_shod(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = hit->to; i > 1 && hit->to - i < 4 && tokens->at[i - 2].stop == STOP_NONE; i--)
        if (ANY(tokens, i - 1, "corner", "corners")) return is_material(r->note, i - 2, "metal");
    return false;
}

bool kind_note_has(const struct fault_reader *r, const char *words) {
    for (size_t i = 0; i < r->note->tokens.count; i++)
        if (kind_has_word(words, r->note->tokens.at[i].fold)) return true;
    return false;
}

// "Worn through at the edges": of metal that the note tells is plated.
bool kind_is_plated(const struct fault_reader *r) {
    static const char *const metals[] = {"jewelry",     "metalware", "music", "clocks-watches",
                                         "kitchenware", "lighting",  "decor"};
    const struct tokens *tokens = &r->note->tokens;
    const struct family *family = r->note->record->family;
    bool metal = false;
    for (size_t i = 0; family && i < COUNT(metals); i++) metal |= text_same(family->rule.id, metals[i]);
    if (!metal) return false;
    for (size_t i = 0; i < tokens->count; i++) {
        if (ANY(tokens, i, "plated", "epns", "electroplate", "electroplated", "gold-plated", "silver-plated",
                "nickel-plated", "chromed", "chrome", "gold-filled", "silverplate", "gilt", "gilded",
                "vermeil"))
            return true;
        if (i > 0 && ANY(tokens, i, "plate", "plating", "filled") &&
            ANY(tokens, i - 1, "silver", "gold", "nickel", "chrome", "tin", "copper", "electro"))
            return true;
        if (i > 0 && token_is(tokens, i, "gold") && token_is(tokens, i - 1, "rolled")) return true;
        if (i > 0 && ANY(tokens, i, "tone", "toned") && ANY(tokens, i - 1, "gold", "silver", "rose", "two"))
            return true;
    }
    return false;
}

// "Gone brown all over" of copper or brass has tarnished. A part of iron rusts where the words are of it;
// wood, horn and tin beside it turn nothing brown.
bool kind_is_rustless(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const metals[] = {"brass",  "copper", "bronze",      "silver",
                                         "pewter", "gold",   "silver plate"};
    static const char *const rusting[] = {"iron", "steel", "tinplate"};
    const struct tokens *tokens = &r->note->tokens;
    bool metal = false;
    for (size_t i = hit->from; i < hit->to; i++)
        if (!strncmp(tokens->at[i].fold, "rust", 4)) return false;
    if (!ANY(tokens, hit->from, "gone", "turned", "going", "brown", "went", "browned")) return false;
    for (size_t i = 0; i < r->material_count; i++) {
        const struct value *stuff = r->materials[i];
        bool here = !stuff->of;
        for (size_t k = note_clause_from(r->note, hit->from, STOP_COMMA); k < hit->from && !here; k++)
            here = text_same(tokens->at[k].one, stuff->of);
        for (size_t k = 0; k < COUNT(metals) && here; k++) metal |= text_same(stuff->value, metals[k]);
        for (size_t k = 0; k < COUNT(rusting) && here; k++)
            if (kind_has_word(stuff->value, rusting[k])) return false;
    }
    return metal;
}

// Damp that dries out of fired clay and stone leaves its salts (common practice, no source).
bool kind_is_porous(const struct fault_reader *r) {
    static const char *const porous[] = {"stone", "terracotta", "earthenware", "stoneware", "clay",
                                         "slate", "concrete",   "plaster",     "marble",    "brick",
                                         "zinc",  "galvanized", "galvanised",  "lead"};
    const struct family *family = r->note->record->family;
    for (size_t i = 0; i < r->material_count; i++)
        for (size_t k = 0; k < COUNT(porous); k++)
            if (!r->materials[i]->of && kind_has_word(r->materials[i]->value, porous[k])) return true;
    return family && text_same(family->rule.id, "ceramics");
}

// The handle of a reel, and not one of leather or of a case.
bool kind_is_bare_handle(const struct fault_reader *r, const struct fault_hit *hit, const char *place) {
    static const char *const soft[] = {"strap", "straps", "case", "bag", "leather"};
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = hit->from > 2 ? hit->from - 2 : 0; i < hit->to; i++)
        if (ANY(tokens, i, "leather", "strap", "case", "bag", "rope", "webbing", "cloth", "canvas",
                "stitching"))
            return false;
    return !(place && kind_names_one(place, soft, COUNT(soft)));
}

// "Chrome has flaked at the spout".
bool kind_is_metal_coat(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    bool coat = false;
    for (size_t i = scope_clause_start(&r->scope, hit->from); i < hit->to; i++) {
        if (ANY(tokens, i, "paint", "painted", "lacquer", "enamel", "varnish", "glaze", "gilding"))
            return false;
        coat |= ANY(tokens, i, "chrome", "nickel", "plating", "silvering");
    }
    return coat;
}

// "Tin is worn to nothing" of a pan, "plating rubbed on the handle" of whatever has some.
bool kind_is_tin_worn(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const ids[] = {"metalware", "kitchenware", "jewelry"};
    const struct tokens *tokens = &r->note->tokens;
    const char *type = r->note->record->type.value;
    if (hit->from < 3 || !ANY(tokens, hit->from, "worn", "rubbed", "gone")) return false;
    size_t at = hit->from - 1 - ANY(tokens, hit->from - 1, "is", "has");
    if (ANY(tokens, at, "plating", "nickel", "chrome")) return true;
    return is_in(r, ids, COUNT(ids)) && !(type && strstr(type, "tin")) && at + 1 < hit->from &&
           ANY(tokens, at, "tin", "tinning");
}

// "Lid bowed and won't sit flat": it moves, but lies badly.
bool kind_lies_badly(const struct tokens *tokens, const struct fault_hit *hit) {
    bool fails = ANY(tokens, hit->to - 1, "won't", "wont", "doesn't", "doesnt");
    if (fails && ANY(tokens, hit->to, "seat")) return true;
    return fails && ANY(tokens, hit->to, "sit", "lie", "lay", "stand", "rest") &&
           ANY(tokens, hit->to + 1, "flat", "level", "flush", "square", "straight", "true", "even");
}

// "Moth at one end, a few small holes": what the moth has made.
bool kind_is_by_moth(const struct fault_reader *r, const struct fault_hit *hit) {
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
    for (size_t i = hit->from > FAR ? hit->from - FAR : 0; i < hit->from; i++) // "moth, four tiny holes"
        if (ANY(tokens, i, "moth", "moths") && !ANY(tokens, i + 1, "ball", "balls", "proof", "free") &&
            !(r->scope.stance[i] & (STANCE_DENIED | STANCE_NONE_SEEN | STANCE_UNKNOWN)) &&
            !(i > 0 && ANY(tokens, i - 1, "no", "not", "any")))
            return true;
    return false;
}

// "Key missing so can't open it": locked, and not stuck.
bool kind_is_locked(const struct fault_reader *r) {
    bool is = false;
    for (size_t i = 0; i < r->hit_count; i++) is |= text_same(r->hits[i].kinds[0]->rule.id, "missing-key");
    for (size_t i = 0; i < r->note->tokens.count && !is; i++) is = token_is(&r->note->tokens, i, "locked");
    return is;
}

// Gold that is worn off a frame, a cup or a spine is gilding; what is plated says so, and is metal.
bool kind_is_gilding(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const metals[] = {"jewelry", "metalware", "music"};
    const struct tokens *tokens = &r->note->tokens;
    const struct family *family = r->note->record->family;
    const char *type = r->note->record->type.value;
    for (size_t i = 0; i + 1 < tokens->count; i++) // "gilt line round the lid" of a japanned box
        if (ANY(tokens, i, "gilt", "gold") &&
            ANY(tokens, i + 1, "line", "lines", "letters", "lettering", "decoration", "border", "design"))
            return true;
    for (size_t i = 0; family && i < COUNT(metals); i++)
        if (text_same(family->rule.id, metals[i])) return false;
    if (type && strstr(type, "watch")) return false;
    for (size_t i = 0; i < tokens->count; i++)
        if (ANY(tokens, i, "plate", "plated", "plating", "gold-plated")) return false;
    return family && ANY(tokens, hit->from, "gold", "gilding", "gilt");
}

// "The frets are worn", "handle is a bit worn": of a part, and not of the thing at large.
bool kind_is_worn_part(const struct fault_reader *r, const struct fault_hit *hit, const char *place) {
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
    if (!to && r->part[hit->to] && tokens->at[hit->from].stop == STOP_NONE && !r->scope.fault[hit->to] &&
        r->note->taken[hit->to] != TAKEN_TYPE)
        return place != NULL; // "a worn needle"
    return at > 0 && (at < hit->from || (place && !r->part[at - 1])) &&
           tokens->at[at - 1].stop == STOP_NONE &&
           (r->part[at - 1] || (place && kind_has_word(place, tokens->at[at - 1].fold))) &&
           r->note->taken[at - 1] != TAKEN_TYPE;
}

// No cord of such goods brings power.
bool kind_is_mainsless(const struct fault_reader *r) {
    static const char *const ids[] = {"sports", "paper", "books", "furniture", "bags", "tools", "metalware"};
    return is_in(r, ids, COUNT(ids)) &&
           !kind_note_has(r, "electric electrical mains plug flex lamp wired rewired wiring socket bulb");
}

// Nothing hard tears, unless a soft part is named.
bool kind_is_untearable(const struct fault_reader *r, const char *place) {
    static const char *const classes[] = {"wood", "metal", "stone", "glass", "ceramics"};
    static const char *const paper[] = {"books", "paper"};
    bool is = false;
    if (place && !kind_has_word(place, "corner") && !kind_has_word(place, "corners") &&
        !kind_has_word(place, "edge"))
        return false;
    for (size_t i = 0; i < r->material_count; i++) {
        const char *of = r->materials[i]->of;
        bool its = !of || (place &&
                           text_same(say_singular(r->note->arena, of), say_singular(r->note->arena, place)));
        for (size_t k = 0; its && k < COUNT(classes); k++)
            is |= kind_names_material(classes[k], r->materials[i]->value);
    }
    const char *type = r->note->record->type.value, *last = type ? strrchr(type, ' ') : NULL;
    return (is && !is_in(r, paper, COUNT(paper))) ||
           (type && kind_has_word("slate tile", last ? last + 1 : type));
}

// Paint that is worn to the metal: the note says that there was some, and of no plating.
bool kind_is_japanned(const struct fault_reader *r) {
    return !kind_is_plated(r) &&
           kind_note_has(r, "japanned japanning painted paint paintwork lacquered lacquer "
                            "enameled enamelled black-painted stoved");
}

// What is lined is a box, a case or a bag.
bool kind_is_unlined(const struct fault_reader *r) {
    static const char *const ids[] = {"bags", "furniture"};
    if (kind_note_has(r, "covered")) return true; // "velvet covered box"
    return !is_in(r, ids, COUNT(ids)) && !kind_is_box(r) &&
           !kind_note_has(r, "lining lined case box chest tray drawer");
}

// A plan or a map on linen has no hem.
bool kind_is_sheet(const struct fault_reader *r) {
    const char *type = r->note->record->type.value, *last = type ? strrchr(type, ' ') : NULL;
    return is_in(r, (const char *const[]){"books", "paper"}, 2) ||
           (type && kind_has_word("plan map chart print poster drawing engraving photograph",
                                  last ? last + 1 : type));
}

// Of a tin, of a caddy no plating.
bool kind_is_tinware(const struct fault_reader *r) {
    const char *type = r->note->record->type.value, *last = type ? strrchr(type, ' ') : NULL;
    if (!type || kind_note_has(r, "plate plated plating silver brass")) return false;
    return kind_has_word("tin caddy canister box case sign", last ? last + 1 : type) ||
           kind_note_has(r, "toleware tole japanned lacquered tin painted enamelled enameled"); // its border
}

// "The hinge of the lid is weak": of an inkstand, and not of a book.
bool kind_is_hinge_of_goods(const struct fault_reader *r, const struct fault_hit *hit, const char *place) {
    static const char *const bound[] = {"books", "paper", "music", "crafts", "media"};
    const struct family *family = r->note->record->family;
    if (!family || !(kind_has_word(place, "hinge") || kind_has_word(place, "hinges"))) return false;
    for (size_t i = 0; i < COUNT(bound); i++)
        if (text_same(family->rule.id, bound[i])) return false;
    return ANY(&r->note->tokens, hit->to - 1, "weak", "tender", "loose", "shaky", "torn");
}

// "The hinge has gone stiff", "gone out of line", of goods that are not bound: not the hinge is gone.
bool kind_is_turned_hinge(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const bound[] = {"books", "paper", "music", "crafts", "media"};
    const struct tokens *tokens = &r->note->tokens;
    const struct family *family = r->note->record->family;
    if (!text_same(hit->kinds[0]->rule.id, "binding-weak")) return false;
    for (size_t i = 0; family && i < COUNT(bound); i++)
        if (text_same(family->rule.id, bound[i])) return false;
    size_t at = hit->to - (token_is(tokens, hit->to - 1, "out") ? 1 : 0);
    bool of = token_is(tokens, at, "out") && token_is(tokens, at + 1, "of");
    return at > 0 && token_is(tokens, at - 1, "gone") && (of || absent_turns_into(r, at));
}

// Corrosion that a note with a battery in it speaks of by itself is the battery's.
bool kind_is_by_battery(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const ids[] = {"electrical", "cameras", "toys", "lighting", "clocks-watches"};
    static const char *const cells[] = {"battery", "batteries", "contacts", "terminals"};
    const struct tokens *tokens = &r->note->tokens;
    const struct family *family = r->note->record->family;
    bool runs = false, cell = false;
    for (size_t i = 0; family && i < COUNT(ids); i++) runs |= text_same(family->rule.id, ids[i]);
    bool spring = hit->from > 0 && ANY(tokens, hit->from - 1, "spring", "springs", "contacts", "terminals",
                                       "contact", "terminal", "are", "is"); // "springs eaten away"
    if (!runs || !(token_is(tokens, hit->from, "corrosion") || (spring && ANY(tokens, hit->from, "eaten"))))
        return false;
    for (size_t i = 0; i < tokens->count && !cell; i++) cell = token_among(tokens, i, cells, COUNT(cells));
    return cell;
}

// The glass of a picture, a cupboard or a lantern is a pane, and no dial's, lens or screen.
bool kind_is_pane(const struct fault_reader *r, const char *place) {
    static const char *const seen[] = {"cameras", "electrical", "clocks-watches", "media", "jewelry"};
    const struct family *family = r->note->record->family;
    bool clock = family && text_same(family->rule.id, "clocks-watches") && place && // the panels of its case
                 (kind_has_word(place, "top") || kind_has_word(place, "side") ||
                  kind_has_word(place, "back") || kind_has_word(place, "door"));
    for (size_t i = 0; family && !clock && i < COUNT(seen); i++)
        if (text_same(family->rule.id, seen[i])) return false;
    return family && place && (kind_has_word(place, "glass") || (clock && kind_has_word(place, "glasses")));
}

// Glazed as only clay is, where nobody names the clay: "flagon, salt glazed".
static bool is_glazed(const struct fault_reader *r) {
    static const char *const ways[] = {"salt glaze", "glazed", "transferware", "slip decorated", "slipware"};
    const struct record *record = r->note->record;
    for (size_t i = 0; !r->material_count && i < record->attribute_count; i++)
        for (size_t k = 0; k < COUNT(ways) && !record->attributes[i].of; k++)
            if (text_same(record->attributes[i].value, ways[k])) return true;
    return false;
}

// Fired or blown, and not the wooden handle of what is.
bool kind_is_fired(const struct fault_reader *r, const char *place) {
    static const char *const glasses[] = {"mirror", "pane", "panes", "glass",  "mirror's", "tile",
                                          "tiles",  "jar",  "jars",  "bottle", "bottles"};
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
    return (fired && r->material_count == 1) || is_glazed(r);
}

// All of it metal, as far as the note says; a part of another material is not.
bool kind_is_metal(const struct fault_reader *r, const char *place) {
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

// "Drip tray gone": no liner.
bool kind_is_other_tray(const struct fault_reader *r, const struct fault_hit *hit) {
    for (size_t i = hit->from > 0 ? hit->from : 1; i < hit->to; i++)
        if (ANY(&r->note->tokens, i, "tray", "trays") &&
            ANY(&r->note->tokens, i - 1, "drip", "crumb", "pen", "ash", "tea", "cash", "oil", "seed"))
            return true;
    return false;
}

// A patch on what is all wood is no darn.
bool kind_is_all_wood(const struct fault_reader *r) {
    bool wood = false;
    const char *type = r->note->record->type.value;
    for (size_t i = 0; i < r->material_count; i++)
        if (!kind_names_material("wood", r->materials[i]->value))
            return false;
        else
            wood = true;
    return wood || (type && (!strcmp(type, "oar") || strstr(type, "paddle") || strstr(type, "ladder")));
}

// "Transformer box", "sound box": a part that is called so, and nothing that the thing came in.
bool kind_is_housing(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = scope_sentence_start(&r->scope, hit->from) + 1; i <= hit->from; i++)
        if (token_is(tokens, i, "box") &&
            ANY(tokens, i - 1, "transformer", "sound", "gear", "fuse", "junction", "coin", "cash", "speaker",
                "echo", "bellows", "terminal", "switch", "axle", "control", "resonator", "seed", "ash",
                "fire", "smoke"))
            return true;
    return false;
}

// "Liner, copper, with pin holes".
bool kind_metal_said(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = hit->from > 0 ? hit->from - 1 : 0; i < hit->to; i++)
        if (ANY(tokens, i, "worm", "worms", "woodworm", "beetle", "wormholes", "wormhole")) return false;
    if (ANY(tokens, hit->to, "from", "of") && ANY(tokens, hit->to + 1, "rust")) return true;
    for (size_t i = scope_sentence_start(&r->scope, hit->from); i < hit->from; i++)
        if (ANY(tokens, i, "copper", "tin", "zinc", "lead", "brass", "iron", "steel", "metal")) return true;
    for (size_t i = 0; i < r->material_count; i++)
        if (!r->materials[i]->of && (kind_names_material("metal", r->materials[i]->value) ||
                                     kind_has_word(r->materials[i]->value, "enamel")))
            return true;
    return false;
}

// "Coming apart at the seam".
bool kind_is_at_seam(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->to + (ANY(tokens, hit->to + 1, "the", "a", "one") ? 2 : 1);
    return ANY(tokens, hit->to, "at", "along", "on", "down") && ANY(tokens, at, "seam", "seams", "stitching");
}

// Not half of it, and no piece of it.
bool kind_is_whole_lost(const struct fault_reader *r, const struct fault_hit *hit) {
    return hit->to < 2 ||
           !ANY(&r->note->tokens, hit->to - 2, "half", "partly", "part", "partially", "nearly", "mostly",
                "corner", "piece", "bit", "chunk", "edge", "tip", "lump", "section", "end", "side");
}

// "Flex is the old twisted sort and perished", "needs a lead, this one's perished".
bool kind_is_flexed(const struct fault_reader *r, const struct fault_hit *hit, const char *place) {
    const struct tokens *tokens = &r->note->tokens;
    if (place || !ANY(tokens, hit->to - 1, "perished", "brittle", "cracked")) return false;
    for (size_t i = scope_sentence_start(&r->scope, hit->from); i < hit->from; i++)
        if (ANY(tokens, i, "flex", "lead", "cord", "cable")) return true;
    return false;
}

// All of it rubber.
bool kind_is_rubber(const struct fault_reader *r, const struct fault_hit *hit) {
    bool rubber = false;
    for (size_t i = 0; i < r->material_count; i++)
        rubber |= !r->materials[i]->of && kind_names_material("rubber", r->materials[i]->value);
    return rubber && ANY(&r->note->tokens, hit->to - 1, "perished", "perishing");
}

// "Case flap is hanging by a thread", "the lid hinge is off": of nothing that is bound.
bool kind_is_unbound(const struct fault_reader *r) {
    static const char *const ids[] = {"books", "paper", "crafts", "media"};
    return r->note->record->type.value && !is_in(r, ids, COUNT(ids)) &&
           !kind_note_has(r, "book books spine binding album ledger pages page boards log bible atlas score "
                             "sheet hymnal diary volume volumes register");
}

bool kind_is_woodwork(const struct fault_reader *r,
                      const struct fault_hit *hit) { // "the stand has one split side"
    const struct tokens *tokens = &r->note->tokens;
    bool stand = false;
    for (size_t i = scope_sentence_start(&r->scope, hit->from); i < hit->from; i++)
        stand |= ANY(tokens, i, "stand", "frame", "case", "base");
    return stand && kind_note_has(r, "wood wooden oak mahogany pine walnut beech");
}

// "Veneer lifting, a piece gone from one corner".
bool kind_is_of_veneer(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = scope_sentence_start(&r->scope, hit->from); i < hit->from; i++)
        if (ANY(tokens, i, "veneer", "inlay", "banding", "marquetry")) return true;
    return false;
}

bool kind_is_wholly_lost(const struct fault_reader *r, const struct fault_hit *hit) {
    return kind_is_whole_lost(r, hit);
}

// "The glass jar is cracked": whatever the goods, it is no screen.
bool kind_is_of_vessel(const struct fault_reader *r, const struct fault_hit *hit) {
    return ANY(&r->note->tokens, hit->from + 1, "jar", "carafe", "jug", "bowl", "lid", "pot", "pitcher",
               "bottle", "dish", "tray", "shade", "globe", "dome", "shelf", "plate", "door");
}

bool kind_is_unplated(const struct fault_reader *r) {
    static const char *const ids[] = {"tools", "sports",    "electrical",     "cameras",
                                      "parts", "furniture", "clocks-watches", "lighting"};
    return is_in(r, ids, COUNT(ids)) && !kind_is_plated(r);
}

// "Cassette door": of no cassette. The name of the fitting, or the place as it is.
const char *kind_fitting(const char *place) {
    static const char *const fittings[] = {"door",    "flap", "hatch", "button",
                                           "counter", "deck", "lid",   "hinge"};
    const char *last = place ? strrchr(place, ' ') : NULL;
    for (size_t i = 0; last && i < COUNT(fittings); i++)
        if (text_same(last + 1, fittings[i])) return last + 1;
    return place;
}
