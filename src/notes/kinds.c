// SPDX-License-Identifier: MIT
// "Cracked" on a plate, a radio case and a chair are three kinds. What decides, in this order: the material
// of the thing or its part, its family, and the places where a kind usually is; all of them stand in the
// rules (`on`, `parts`). The first of the rules' order where nothing decides.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// What the words of `on` stand for when a record names a narrower one.
static const struct {
    const char *class, *members;
} classes[] = {
    {"metal", " brass copper iron steel tin pewter silver bronze aluminum aluminium chrome zinc nickel lead "
              "galvanized cast gunmetal spelter wrought stainless alloy ormolu tinplate "},
    {"wood", " oak pine walnut mahogany maple teak beech ash elm cherry birch bamboo plywood wooden rosewood "
             "wicker willow boxwood hornbeam sycamore yew poplar spruce cedar larch chestnut hickory ebony "
             "pear rattan satinwood pearwood hardwood softwood driftwood "},
    {"textile", " cotton wool linen silk velvet denim canvas felt lace polyester nylon fleece tweed corduroy "
                "satin rayon cloth "},
    {"textiles", " cotton wool linen silk velvet denim canvas felt lace polyester nylon fleece tweed "
                 "corduroy satin rayon cloth "},
    {"ceramics",
     " porcelain stoneware earthenware ironstone china pottery terracotta ceramic redware majolica "},
    {"glass", " crystal glass globe chimney "},
    {"plastic", " plastic celluloid acrylic resin vinyl phenolic melamine nylon "},
    {"paper", " paper card cardboard papier "},
    {"leather", " leather suede cowhide hide "},
    {"stone", " marble slate granite soapstone alabaster stone "},
    {"enamel", " enamel enamelware enameled "},
    {"rubber", " rubber latex "},
};

bool kind_has_word(const char *list, const char *word) {
    for (const char *at = list; *at;) {
        if (*at == *word) { // most begin otherwise
            const char *a = at, *w = word;
            while (*w && *a == *w) a++, w++;
            if (!*w && (*a == ' ' || !*a)) return true;
        }
        while (*at && *at != ' ') at++;
        while (*at == ' ') at++;
    }
    return false;
}

// Does a word of the list begin with that letter, and the next one?
static bool has_beginning(const char *list, char letter, char next) {
    for (const char *at = list; *at; at++)
        if (*at == letter && (!next || at[1] == next) && (at == list || at[-1] == ' ')) return true;
    return false;
}

// The first of those that begin with a letter, which stand together; beyond all where none does.
static size_t first_class(char letter) {
    enum { LETTERS = 26 };
    static const unsigned char firsts[LETTERS] = {
        ['m' - 'a'] = 1, ['w' - 'a'] = 2, ['t' - 'a'] = 3,  ['c' - 'a'] = 5,  ['g' - 'a'] = 6,
        ['p' - 'a'] = 7, ['l' - 'a'] = 9, ['s' - 'a'] = 10, ['e' - 'a'] = 11, ['r' - 'a'] = 12};
    return letter >= 'a' && letter <= 'z' && firsts[letter - 'a'] ? firsts[letter - 'a'] - 1u
                                                                  : COUNT(classes);
}

bool kind_names_material(const char *on, const char *material) {
    if (kind_has_word(material, on) || kind_has_word(on, material)) return true;
    for (size_t i = first_class(on[0]); i < COUNT(classes) && classes[i].class[0] == on[0]; i++) {
        if (!text_same(classes[i].class, on)) continue;
        for (const char *at = material; *at;) { // any word of "cast iron"
            size_t n = strcspn(at, " ");
            char word[32];
            if (n < sizeof word) {
                memcpy(word, at, n);
                word[n] = '\0';
                if (kind_has_word(classes[i].members, word)) return true;
            }
            at += n;
            while (*at == ' ') at++;
        }
    }
    return false;
}

void kind_gather_materials(struct fault_reader *r) {
    const struct record *record = r->note->record;
    r->materials = arena_array(r->note->arena, record->attribute_count + 1, sizeof *r->materials);
    for (size_t i = 0; i < record->attribute_count; i++)
        if (text_same(record->attributes[i].name, "material"))
            r->materials[r->material_count++] = &record->attributes[i];
}

// What a thing of that family is made of where nobody says: "medicine bottle".
static bool is_usual(const struct fault_reader *r, const char *on) {
    const struct record *record = r->note->record;
    return record->family && !r->material_count && text_same(on, "glass") &&
           text_same(record->family->rule.id, "glassware");
}

// "Knives" of rules are a "knife" too. Asked of every kind, so singulars are made only where letters agree.
static bool is_goods(const struct fault_reader *r, const char *type, const char *on) {
    if (!has_beginning(type, on[0], on[0] ? on[1] : '\0')) return false;
    return kind_has_word(type, on) || kind_has_word(type, say_singular(r->note->arena, on));
}

// A bowl of wood among the ceramics: what its family is made of says nothing of it.
static bool is_of_other_stuff(const struct fault_reader *r) {
    static const char *const stuffs[] = {"wood", "metal", "plastic", "leather", "textile", "paper", "rubber"};
    const struct record *record = r->note->record;
    if (!record->family ||
        (!text_same(record->family->rule.id, "ceramics") && !text_same(record->family->rule.id, "glassware")))
        return false;
    bool other = false;
    for (size_t i = 0; i < r->material_count; i++) {
        if (r->materials[i]->of) continue;
        bool named = false;
        for (size_t k = 0; k < COUNT(stuffs); k++)
            named |= kind_names_material(stuffs[k], r->materials[i]->value);
        if (!named) return false;
        other = true;
    }
    return other;
}

static int fits_on(const struct fault_reader *r, const struct flaw *kind, const char *place) {
    const struct record *record = r->note->record;
    int score = 0;
    bool other_stuff = is_of_other_stuff(r);
    for (size_t i = 0; i < kind->on.count; i++) {
        const char *on = kind->on.at[i];
        for (size_t k = 0; k < r->material_count; k++) {
            const struct value *value = r->materials[k];
            if (!kind_names_material(on, value->value)) continue;
            bool of_place = value->of && place &&
                            (kind_has_word(place, value->of) ||
                             kind_has_word(place, say_singular(r->note->arena, value->of)));
            score += of_place ? 8 : value->of ? 0 : 4;
        }
        if (record->family && !other_stuff &&
            (text_same(on, record->family->rule.id) || text_same(on, record->family->print)))
            score += 4;
        if (is_usual(r, on)) score += 4;
        if (record->type.value && is_goods(r, record->type.value, on)) score += 3;
        if (place && kind_names_material(on, place)) score += 6; // "cracked glass"
    }
    return score;
}

static int fits(const struct fault_reader *r, const struct flaw *kind, const char *place) {
    int score = fits_on(r, kind, place);
    for (size_t i = 0; place && i < kind->parts.count; i++)
        if (kind_has_word(place, kind->parts.at[i])) score += 2;
    return score;
}

// "Yellowed" is first of all yellowing, "split" a split.
static int is_named(const struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind) {
    enum { STEM = 5 };
    const char *word = r->note->tokens.at[hit->from].fold;
    size_t n = strlen(word) < STEM ? strlen(word) : STEM;
    bool noun = kind->noun && !strncmp(kind->noun, word, n),
         adjective = kind->adjective && !strncmp(kind->adjective, word, n);
    return noun || adjective ? 1 : 0;
}

// Where nobody says of what it is, "candlesticks" are of each family that knows them.
static bool is_of_other_family(const struct fault_reader *r, const struct flaw *kind) {
    const struct record *record = r->note->record;
    if (r->material_count || !record->type.value) return false;
    size_t count = 0;
    const struct thing *const *things = ruleset_things(r->note->rules, record->type.value, &count);
    for (size_t i = 0; things && i < count; i++)
        for (size_t k = 0; k < kind->on.count; k++)
            if (text_same(kind->on.at[k], things[i]->family->rule.id)) return true;
    return false;
}

// Two words apart are a weaker sign than a phrase: the kind has to be one that such a thing can have.
bool kind_can_be(const struct fault_reader *r, const struct flaw *kind, const char *place) {
    const struct family *family = r->note->record->family;
    if (!family || !kind->on.count) return true;
    for (size_t i = 0; i < kind->on.count; i++)
        if (text_same(kind->on.at[i], "all")) return true;
    return fits_on(r, kind, place) > 0 || is_of_other_family(r, kind);
}

// "Dark film on the silver": a stuff that the sentence names.
static bool is_of_stuff(const struct fault_reader *r, const struct flaw *kind, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t at = scope_sentence_start(&r->scope, i); at <= scope_sentence_end(&r->scope, i); at++) {
        if (at >= tokens->count || tokens->at[at].kind != TOKEN_WORD || tokens->at[at].fold[0] == '\0')
            continue;
        for (size_t k = 0; k < kind->on.count; k++)
            if (!strchr(kind->on.at[k], ' ') && kind_names_material(kind->on.at[k], tokens->at[at].fold))
                return true;
    }
    return false;
}

bool kind_fits_words(const struct fault_reader *r, const struct flaw *kind, size_t from, size_t to) {
    const struct family *family = r->note->record->family;
    const char *words = note_words(r->note, from, to);
    bool open = !family || text_same(family->rule.id, "other"); // nothing but the stuff tells what it is
    if (open && !r->material_count) return true;
    return (open ? fits_on(r, kind, words) > 0 : kind_can_be(r, kind, words)) || is_of_stuff(r, kind, from);
}

static bool is_narrower(const struct flaw *kind, const struct fault_hit *hit) {
    for (size_t i = 0; i < hit->kind_count; i++)
        for (size_t k = 0; k < kind->narrows.count; k++)
            if (text_same(kind->narrows.at[k], hit->kinds[i]->rule.id)) return true;
    return false;
}

// Is the thing, or the part at hand where it has a material of its own, of what the kind occurs on?
bool kind_is_of_material(const struct fault_reader *r, const struct flaw *kind, const char *place) {
    const char *whole = NULL, *part = NULL;
    for (size_t i = 0; i < r->material_count; i++) {
        const struct value *value = r->materials[i];
        if (!value->of && !whole) whole = value->value;
        if (value->of && place && kind_has_word(place, value->of)) part = value->value;
    }
    const char *material = part ? part : whole;
    for (size_t i = 0; material && i < kind->on.count; i++)
        if (kind_names_material(kind->on.at[i], material)) return true;
    return false;
}

static bool has_part_of(struct arena *arena, const struct texts *list, const char *words) {
    for (size_t i = 0; words && i < list->count; i++) {
        if (!has_beginning(words, list->at[i][0], '\0')) continue; // no plural changes the first letter
        if (kind_has_word(words, list->at[i]) || kind_has_word(words, say_plural(arena, list->at[i])))
            return true;
    }
    return false;
}

// A place that everything has, and no part with a name of its own.
static bool is_anywhere(const char *place) {
    static const char *const words[] = {"edge",   "edges", "corner", "corners", "bottom", "top",   "middle",
                                        "center", "side",  "sides",  "surface", "tip",    "point", "glass"};
    static const char *const sides[] = {"right",      "left",   "lower right", "lower left", "upper right",
                                        "upper left", "centre", "in places",   "places",     "lower half"};
    for (size_t i = 0; i < COUNT(sides); i++) // but no "right hand door"
        if (text_same(place, sides[i])) return true;
    for (size_t i = 0; i < COUNT(words); i++)
        if (kind_has_word(place, words[i])) return true;
    return false;
}

// A tear of the lining is damage of the lining, a nick of a knife is wear of its blade.
static bool is_of_part(const struct fault_reader *r, const struct flaw *kind, const char *place) {
    struct arena *arena = r->note->arena;
    const struct record *record = r->note->record;
    const char *type = record->type.value, *last = type ? strrchr(type, ' ') : NULL;
    bool course = place && !strncmp(place, "where ", 6); // "holes where the cord went": of no cord
    bool named = !course && has_part_of(arena, &kind->within, kind_fitting(place));
    bool usual = !place || is_anywhere(place); // "black round the edge" of a mirror
    for (size_t i = 0; usual && type && i < kind->within.count; i++)
        named |= text_same(last ? last + 1 : type, kind->within.at[i]);
    return named && (!record->family || !kind->on.count || fits_on(r, kind, NULL) > 0);
}

// Boots of rubber are so whatever part of them has cracked.
static bool is_of_rubber(const struct fault_reader *r, const struct flaw *kind) {
    const char *type = r->note->record->type.value, *last = type ? strrchr(type, ' ') : NULL;
    bool rubber = false, named = false;
    for (size_t i = 0; i < kind->on.count; i++) rubber |= text_same(kind->on.at[i], "rubber");
    for (size_t i = 0; rubber && i < r->material_count; i++)
        named |= !r->materials[i]->of && r->material_count == 1 &&
                 kind_names_material("rubber", r->materials[i]->value);
    named |= rubber && type && strstr(type, "wellington");
    for (size_t i = 0; rubber && type && i < kind->within.count; i++)
        named |= text_same(last ? last + 1 : type, kind->within.at[i]);
    return named;
}

// A seat not said to be soft splits as wood does: "split in the seat" of an oak chair, "in the seat frame".
static bool is_hard(const struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind) {
    static const char *const soft[] = {
        "leather",   "leatherette", "vinyl",  "velvet",  "fabric", "cloth",   "cushion", "cushions",
        "cushioned", "upholstered", "padded", "padding", "cover",  "covers",  "covered", "upholstery",
        "foam",      "rush",        "cane",   "caned",   "canvas", "rexine",  "wool",    "tapestry",
        "webbing",   "saddle",      "sofa",   "settee",  "couch",  "armchair"};
    bool wood = false;
    for (size_t i = 0; i < hit->kind_count; i++) wood |= text_same(hit->kinds[i]->rule.id, "wood-split");
    if (!wood || !text_same(kind->rule.id, "upholstery-wear")) return false;
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = hit->to; i < tokens->count && tokens->at[i - 1].stop == STOP_NONE; i++)
        if (ANY(tokens, i, "frame", "rail", "rails", "frames")) return true;
    const char *type = r->note->record->type.value;
    bool bare = type && (strstr(type, "stool") || strstr(type, "bench")) && // "wedged with cloth": no seat
                kind_is_of_material(r, ruleset_flaw(r->note->rules, "wood-split"), NULL);
    for (size_t i = 0; i < tokens->count; i++)
        if (token_among(tokens, i, soft, COUNT(soft)) &&
            !(bare && i > 0 && ANY(tokens, i - 1, "with", "in", "a")))
            return false;
    return true;
}

// What is damage of a part comes before what is damage of a stuff: a leather seat that has split is a seat's.
static const struct flaw *narrowed(const struct fault_reader *r, const struct fault_hit *hit,
                                   const char *place) {
    const struct ruleset *rules = r->note->rules;
    for (int parts = 1; parts >= 0; parts--)
        for (size_t i = 0; i < rules->narrowing_count; i++) {
            const struct flaw *kind = rules->narrowing[i];
            if ((kind->within.count > 0) != (parts > 0) || !is_narrower(kind, hit)) continue;
            if (kind_is_wider_denied(r, hit, kind)) continue;
            if (parts ? (is_of_part(r, kind, place) || is_of_rubber(r, kind)) && !is_hard(r, hit, kind)
                      : kind_is_of_material(r, kind, place))
                return kind;
        }
    return NULL;
}

static bool is_cloth(const struct record *record) {
    return record->family &&
           (text_same(record->family->rule.id, "clothing") || text_same(record->family->rule.id, "linens"));
}

static bool is_hide(const struct record *record) {
    static const char *const hard[] = {"tree", "trees", "horn", "jack", "last", "lasts", "brush", "rack"};
    const char *type = record->type.value, *last = type ? strrchr(type, ' ') : NULL;
    for (size_t i = 0; type && i < COUNT(hard); i++) // for shoes, and no shoes
        if (text_same(last ? last + 1 : type, hard[i])) return false;
    return record->family &&
           (text_same(record->family->rule.id, "footwear") || text_same(record->family->rule.id, "bags"));
}

// One event is a kind of its own on each stuff: a seam that gapes is an open seam of a blouse and failed
// solder of a tin. Where a phrase names only what this thing cannot have, the other is meant.
static const struct flaw *of_event(const struct fault_reader *r, const struct fault_hit *hit,
                                   const struct flaw *kind, const char *place) {
    static const struct {
        const char *said, *meant[2];
    } events[] = {{"seam-open", {"seam-split", NULL}},
                  {"seam-split", {"seam-open", NULL}},
                  {"crack", {"crack-through", "leather-crack"}},
                  {"crack-through", {"crack", "wood-split"}},
                  {"wood-split", {"crack", "crack-through"}},
                  {"crazing", {"leather-crack", "finish-crackle"}},
                  {"crease", {"dent-bend", NULL}},
                  {"blade-wear", {"chip", "enamel-chip"}},
                  {"glued-repair", {"darned-patched", NULL}},
                  {"darned-patched", {"glued-repair", NULL}},
                  {"upholstery-wear", {"fabric-weak", NULL}},
                  {"snag", {"fleabite", NULL}}};
    static const char *const others[] = {"mirror", "dial",    "tile",  "plate",  "plastic", "paint",
                                         "finish", "varnish", "wheel", "wheels", "shell",   "buckle"};
    static const char *const own[] = {"glaze", "glue",   "glued",   "reglued", "stuck",  "epoxy",
                                      "rivet", "rivets", "riveted", "staples", "solder", "soldered",
                                      "blade", "bolted", "knife",   "knives",  "dull",   "blunt"};
    bool listed = false;
    for (size_t i = 0; i < COUNT(events); i++) listed |= text_same(events[i].said, kind->rule.id);
    if (!listed) return kind;
    const struct tokens *tokens = &r->note->tokens;
    const char *type = r->note->record->type.value;
    if (type && text_same(kind->rule.id, "darned-patched") &&
        (strstr(type, "painting") || strstr(type, "drum")))
        return kind; // of canvas, of skin
    bool known = r->note->record->family || (r->material_count && text_same(kind->rule.id, "blade-wear"));
    if (!known || fits_on(r, kind, place) > 0 || !strncmp(tokens->at[hit->from].fold, "leak", 4)) return kind;
    for (size_t i = hit->from; i < hit->to; i++) // "leather gone brittle", "glaze crackled"
        for (size_t k = 0; k < kind->on.count; k++)
            if (token_is(tokens, i, kind->on.at[k]) ||
                (token_among(tokens, i, own, COUNT(own)) && !text_same(kind->rule.id, "darned-patched")))
                return kind;
    for (size_t i = 0; place && i < COUNT(others); i++)
        if (kind_has_word(place, others[i])) return kind; // of another stuff than the thing
    const struct flaw *best = kind;
    int most = 0;
    for (size_t i = 0; i < COUNT(events); i++)
        for (size_t k = 0; k < 2 && events[i].meant[k] && text_same(events[i].said, kind->rule.id); k++) {
            bool sewn = text_same(events[i].said, "glued-repair"),
                 worn = text_same(events[i].said, "upholstery-wear");
            const struct family *family = r->note->record->family;
            if ((sewn || worn) && !is_cloth(r->note->record)) continue;
            if (worn && !text_same(family->rule.id, "clothing")) continue; // a kneeler has stuffing
            if (text_same(events[i].said, "crack") && k > 0 && !is_hide(r->note->record)) continue;
            const struct flaw *other = ruleset_flaw(r->note->rules, events[i].meant[k]);
            int score = other ? fits_on(r, other, place) : 0;
            if (score > most) best = other;
            if (score > most) most = score;
        }
    return best;
}

static const struct flaw *best_of_hit(const struct fault_reader *r, const struct fault_hit *hit,
                                      const char *place) {
    const struct flaw *narrow = narrowed(r, hit, place);
    if (narrow) return narrow;
    const struct flaw *best = hit->kinds[0];
    if (hit->kind_count < 2) return best;
    int most = 2 * fits(r, best, place) + is_named(r, hit, best);
    for (size_t i = 1; i < hit->kind_count; i++) {
        int score = 2 * fits(r, hit->kinds[i], place) + is_named(r, hit, hit->kinds[i]);
        if (score <= most) continue;
        most = score;
        best = hit->kinds[i];
    }
    return best;
}

// Fungus of what one looks through is in its glass, a pan that wobbles is not flat: what a word is of one
// thing, but for some only where no part is named. `of` holds families and the last words of types.
static const struct flaw *of_thing(const struct fault_reader *r, const struct fault_hit *hit,
                                   const struct flaw *kind, const char *place) {
    static const char pans[] =
        "skillet pan griddle plate platter tray dish saucepan bowl basin charger casserole vase jug";
    static const char forged[] = "metalware kitchenware tools lighting";
    static const char worn[] = "music cameras sports"; // their straps come off
    static const struct {
        const char *said, *kind, *of, *meant;
        bool placed;
    } words[] = {
        {"fungus", "mold", "cameras", "screen-damage", false},
        {"haze", "cloudy-glass", "cameras", "screen-damage", true},
        {"hazy", "cloudy-glass", "cameras", "screen-damage", true},
        {"wobble", "loose-part", pans, "warped", false},
        {"wobbles", "loose-part", pans, "warped", false},
        {"seam", "seam-split", "media", "tear", true}, // a record's sleeve
        {"seam", "seam-split", "games-puzzles", "box-wear", true},
        {"glue", "sticker-residue", "scrapbook album postcard photograph print stamp", "album-residue", true},
        {"chain", "clasp-fault", "lighting electrical tools bags", "broken-part", true},
        {"polished", "tarnish", "furniture", "dust-grime", true},
        {"sticky", "sticky-plastic", "media", "media-degraded", true},
        {"mended", "darned-patched", forged, "glued-repair", true},
        {"patched", "darned-patched", forged, "glued-repair", true},
        {"split", "crack", "furniture", "wood-split", true},
        {"broken", "strap-damage", "ceramics glassware", "broken-part", true}, // of woven clay
        {"spotted", "foxing", "lighting metalware kitchenware", "tarnish", true},
        {"missing", "stone-missing", "lighting", "missing-accessory", true}, // the crystals of a chandelier
        {"gilding", "gilt-wear", "ceramics glassware", "gilt-wear",
         true}, // "plate gilding", and no plate's wear
        {"gilt", "gilt-wear", "ceramics glassware", "gilt-wear", true},
        {"doesn't", "stain", "clocks-watches", "partly-working", true}, // "the bird doesn't come out"
        {"won't", "stain", "clocks-watches", "partly-working", true},
        {"taped", "tape-repair", "glassware ceramics kitchenware", "glued-repair", true},
        {"brassed", "wear-rub", "clocks-watches jewelry metalware lighting", "plate-wear", true},
        {"pinholes", "hole", "ceramics glassware", "firing-flaw", true},
        {"pinhole", "hole", "ceramics glassware", "firing-flaw", true},
        {"joint", "seam-split", "clocks-watches decor music", "loose-joint", true}, // of a case, of a frame
        {"hairlines", "hairline", "media", "disc-scratches", true}, // of vinyl; one hairline is a crack
        {"split", "crack", "books paper linens clothing", "tear", true},
        {"chipping", "chip", "furniture", "paint-flaking", false},
        {"splits", "crack", "books paper", "tear", true},
        {"split", "wood-split", "footwear", "leather-crack", true}, // "a split in the upper"
        {"splits", "wood-split", "footwear", "leather-crack", true},
        {"stiff", "seized", "clothing footwear", "leather-crack", false},
        {"stiff", "seized", "cowhide goatskin sheepskin hide skin pelt gloves", "leather-crack", true},
        {"frayed", "cord-frayed", "bags linens clothing footwear basket hamper trunk chest blind hammock",
         "fraying", true},
        {"snapped", "cord-frayed", "bags linens basket hamper trunk chest blind hammock", "broken-part",
         true},
        {"cap", "missing-stopper", "sports furniture tools music", "missing-accessory", true},
        {"lace", "trim-loss", "footwear", "missing-accessory", true},
        {"laces", "trim-loss", "footwear", "missing-accessory", true},
        {"strands", "fraying", "basket hamper creel trug", "broken-part", true},
        {"missing", "clasp-fault", "clothing", "missing-accessory", true}, // the pin of a kilt
        {"gone", "clasp-fault", "clothing", "missing-accessory", true},
        {"rock", "warped", "furniture", "loose-joint", false},
        {"toe", "leather-crack", "bat club stick putter driver", "wood-split", true},
        {"missing", "strap-damage", worn, "missing-accessory", true},
        {"gone", "strap-damage", worn, "missing-accessory", true}};
    const struct record *record = r->note->record;
    const char *type = record->type.value, *last = type ? strrchr(type, ' ') : NULL;
    for (size_t i = 0; record->family && i < COUNT(words); i++) {
        bool said = token_is(&r->note->tokens, hit->from, words[i].said) ||
                    token_is(&r->note->tokens, hit->to - 1, words[i].said);
        bool piece = place && kind_has_word(place, "one"); // "the small one wobbles"
        if (!said || (place && !piece && !words[i].placed) || !text_same(words[i].kind, kind->rule.id))
            continue;
        bool of = kind_has_word(words[i].of, record->family->rule.id) ||
                  (type && kind_has_word(words[i].of, last ? last + 1 : type));
        bool own = text_same(kind->rule.id, "wood-split") && kind_is_of_material(r, kind, place);
        const struct flaw *meant = of && !own ? ruleset_flaw(r->note->rules, words[i].meant) : NULL;
        if (meant) return meant;
    }
    return kind_of_part(r, hit, kind, place);
}

const struct flaw *kind_of_hit(const struct fault_reader *r, const struct fault_hit *hit, const char *place) {
    const struct flaw *kind = of_event(r, hit, best_of_hit(r, hit, place), place);
    return kind_of_wood(r, hit, of_thing(r, hit, kind, place), place);
}

bool kind_is_whole(const struct fault_reader *r, const struct flaw *kind, const struct fault_hit *hit) {
    const char *const own[] = {kind->noun,
                               kind->plural,
                               kind->adjective,
                               kind->print,
                               kind->adjective_at[SEVERITY_LIGHT],
                               kind->adjective_at[SEVERITY_MODERATE],
                               kind->adjective_at[SEVERITY_HEAVY]};
    for (size_t i = 0; i < COUNT(own); i++)
        if (own[i] && token_phrase(&r->note->tokens, hit->from, own[i]) == hit->to - hit->from) return true;
    bool may_be = kind->noun && !kind->plural && kind->noun[0] == r->note->tokens.at[hit->from].fold[0];
    const char *many = may_be ? say_plural(r->note->arena, kind->noun) : NULL;
    if (many && token_phrase(&r->note->tokens, hit->from, many) == hit->to - hit->from) return true;
    return kind->says && hit->to > hit->from + 1 &&
           strstr(kind->says, note_words(r->note, hit->from, hit->to)) != NULL;
}

// Is it such a thing, or of such a stuff?
static bool is_of_kind(const struct fault_reader *r, const struct flaw *kind, const char *word) {
    for (size_t k = 0; k < kind->on.count; k++)
        if (is_goods(r, word, kind->on.at[k]) || kind_names_material(kind->on.at[k], word)) return true;
    return false;
}

// "Foxing" of a tankard: but a book, a label or leather that the note speaks of can have it.
static bool has_place_for(const struct fault_reader *r, const struct flaw *kind) {
    const struct tokens *tokens = &r->note->tokens;
    const char *key = (const void *)kind->on.at; // each word is asked once
    for (size_t i = 0; kind->on.count && i < tokens->count; i++) {
        if (tokens->at[i].kind != TOKEN_WORD) continue;
        int told = token_told(tokens, i, key);
        if (told < 0) {
            told = is_of_kind(r, kind, tokens->at[i].fold);
            token_tell(tokens, i, key, told);
        }
        if (told) return true;
    }
    return false;
}

bool kind_is_off(const struct fault_reader *r, const struct phrase_hit *hit) {
    const struct family *family = r->note->record->family;
    bool off = false;
    for (size_t i = 0; family && i < hit->flaw->off.count; i++)
        off |= text_same(hit->flaw->off.at[i], family->rule.id);
    const struct fault_hit own = {.from = hit->from, .to = hit->to};
    return off && !kind_is_whole(r, hit->flaw, &own) && !has_place_for(r, hit->flaw);
}

const struct flaw *kind_of_rusted(const struct fault_reader *r, const struct fault_hit *hit,
                                  const struct flaw *kind) {
    static const char *const words[] = {"hole", "holes"};
    if (!text_same(kind->rule.id, "rust")) return kind;
    bool hole = r->note->tokens.at[hit->to - 1].stop == STOP_NONE &&
                token_among(&r->note->tokens, hit->to, words, sizeof words / sizeof *words);
    hole |= token_among(&r->note->tokens, hit->to - 1, words, sizeof words / sizeof *words);
    hole |= ANY(&r->note->tokens, hit->to - 1, "through", "thru") || // "not rusted through"
            (r->note->tokens.at[hit->to - 1].stop == STOP_NONE &&
             ANY(&r->note->tokens, hit->to, "through", "thru"));
    for (size_t i = hit->from > 0 ? hit->from - 1 : 0; i < hit->to + 2 && i < r->note->tokens.count; i++)
        hole &= !ANY(&r->note->tokens, i, "nearly", "almost"); // "rusted nearly through"
    const struct flaw *other = hole ? ruleset_flaw(r->note->rules, "hole") : NULL;
    return other ? other : kind;
}

// As the rules have them: a part that begins a sentence has a capital.
const char *fault_folded(struct note *note, size_t from, size_t to) {
    struct buf out = buf_start(note->arena);
    for (size_t i = from; i < to; i++) {
        const char *word = note->tokens.at[i].fold;
        size_t size = strlen(word);
        if (i + 1 == to && size > 2 && text_same(word + size - 2, "'s")) size -= 2; // "mirror's got a crack"
        buf_format(&out, "%s%.*s", i > from ? " " : "", (int)size, word);
    }
    return out.at;
}

// Its part is the place that decides, and the place itself where no part is named; of a part that is called
// by its stuff both do: "cloth rubbed at the corners".
const struct flaw *kind_at_spot(struct fault_reader *r, const struct fault_hit *hit, const struct spot *spot,
                                const char **place) {
    bool stuff = spot->part_to > spot->part_from && spot_is_stuff(&r->note->tokens, spot->part_from);
    const char *beside = place_itself(r, spot);
    *place = spot->part_to > spot->part_from ? fault_folded(r->note, spot->part_from, spot->part_to) : beside;
    for (size_t i = scope_sentence_start(&r->scope, hit->from); stuff && i < spot->part_from; i++)
        if (ANY(&r->note->tokens, i, "cord", "flex", "lead", "cable", "strap", "handle")) // its cloth
            beside = r->note->tokens.at[i].fold;
    if (stuff && beside) *place = arena_format(r->note->arena, "%s %s", *place, beside);
    const struct flaw *kind = kind_of_hit(r, hit, *place), *whole = stuff ? kind_of_hit(r, hit, NULL) : NULL;
    static const char *const owns[] = {"upholstery-wear", "cord-frayed", "strap-damage"};
    for (size_t i = 0; whole && i < COUNT(owns); i++)
        if (text_same(whole->rule.id, owns[i])) return whole;
    return kind;
}

const struct flaw *kind_beside(const struct fault_reader *r, const struct fault_hit *hit,
                               const struct flaw *kind, const char *part) {
    const struct record *record = r->note->record;
    const struct flaw *cord = ruleset_flaw(r->note->rules, "cord-frayed");
    bool told = false; // "cord's the old cloth kind, not frayed"
    for (size_t i = scope_sentence_start(&r->scope, hit->from); i < hit->from && !part; i++)
        if (cord && text_same(kind->rule.id, "fraying") && ANY(&r->note->tokens, i, "cord", "cord's", "flex"))
            return cord;
    for (size_t i = 0; i < record->flaw_count && part; i++)
        told |=
            record->flaws[i].kind == kind && record->flaws[i].part && text_same(record->flaws[i].part, part);
    if (!told || !text_same(kind->rule.id, "screen-damage")) return kind;
    for (size_t k = 0; k < hit->kind_count; k++)
        if (hit->kinds[k] != kind && hit->kinds[k]->form == FAULT) return hit->kinds[k];
    return kind;
}
