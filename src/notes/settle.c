// SPDX-License-Identifier: MIT
// What figures could not say before the thing was known.
#include <string.h>

#include "notes/any.h"
#include "notes/measures.h"
#include "notes/place.h"
#include "text/order.h"

static bool ends_with(const char *text, const char *word) {
    size_t n = strlen(text), m = strlen(word);
    return n >= m && text_same(text + n - m, word) && (n == m || text[n - m - 1] == ' ');
}

static void add_size(struct note *note, const struct measurement *measure) {
    struct value *value = note_attribute(note);
    value->name = "size";
    value->value =
        arena_format(note->arena, "%s%s %s", measure->figure.about ? "about " : "",
                     say_fraction(note->arena, measure->figure.value), measure->figure.unit->title);
    value->of = measure->of;
    value->span = measure->span;
}

// A picture's pair is width and height.
static bool is_upright(const struct family *family) {
    return family && family->default_dimension && text_same(family->default_dimension, "height");
}

// "30 inches across" of what is round.
static bool is_round(const char *type) {
    static const char *const nouns[] = {
        "ring",         "wheel",         "drum",        "buoy",   "hoop",  "gong",    "cymbal",
        "disc",         "disk",          "target",      "shield", "sieve", "riddle",  "tambourine",
        "clock",        "banjo",         "globe",       "bell",   "pan",   "plaque",  "lifebuoy",
        "chamberstick", "chamber stick", "candlestick", "churn",  "crock", "jar",     "goblet",
        "funnel",       "cauldron",      "tureen",      "dish",   "coin",  "medal",   "badge",
        "stool",        "burner",        "tankard",     "mug",    "cup",   "coaster", "trivet",
        "bowl",         "plate",         "basin",       "bucket", "vase",  "jug",     "candle stick"};
    for (size_t i = 0; type && i < sizeof nouns / sizeof *nouns; i++)
        if (ends_with(type, nouns[i])) return true;
    return false;
}

static bool says_across(const struct note *note, const struct note_span *span) {
    for (size_t i = 0; i < note->tokens.count; i++)
        if (note->tokens.at[i].from >= span->from && note->tokens.at[i].to <= span->to &&
            token_is(&note->tokens, i, "across"))
            return true;
    return false;
}

// What stands, whatever its family: one figure is its height.
static bool is_tall(const char *type) {
    static const char *const nouns[] = {
        "vase",    "jug",         "pitcher",  "ewer",     "bottle",     "decanter",   "carafe",
        "flagon",  "tankard",     "urn",      "figurine", "figure",     "statue",     "bust",
        "lamp",    "candlestick", "lantern",  "flask",    "churn",      "stool",      "coffee pot",
        "stein",   "crock",       "demijohn", "carboy",   "easel",      "goblet",     "tumbler",
        "beaker",  "jar",         "milk can", "chalice",  "candelabra", "lighthouse", "obelisk",
        "samovar", "bucket",      "pail",     "owl",      "doorstop",   "kettle",     "teapot"};
    for (size_t i = 0; type && i < sizeof nouns / sizeof *nouns; i++)
        if (ends_with(type, nouns[i])) return true;
    return false;
}

// What is round and lies: one figure goes across.
static bool is_disc(const char *type) {
    static const char *const nouns[] = {
        "plate",   "saucer",     "wheel",   "cymbal",     "gong",      "skillet",  "frying pan",
        "griddle", "sieve",      "riddle",  "grindstone", "millstone", "pulley",   "saw blade",
        "drum",    "tambourine", "charger", "lifebelt",   "lid",       "trivet",   "barometer",
        "globe",   "buoy",       "quoit",   "target",     "sundial",   "porthole", "hoop"};
    static const char *const others[] = {
        "number plate",  "name plate", "finger plate",   "fashion plate", "license plate", "builder's plate",
        "works plate",   "book plate", "printing plate", "glass plate",   "seat plate",    "face plate",
        "surface plate", "door plate", "steel plate",    "shed plate",    "stencil plate", "angle plate",
        "letter plate",  "hot plate",  "side drum"};
    for (size_t i = 0; type && i < sizeof others / sizeof *others; i++)
        if (ends_with(type, others[i])) return false;
    for (size_t i = 0; type && i < sizeof nouns / sizeof *nouns; i++)
        if (ends_with(type, nouns[i])) return true;
    return false;
}

static bool says_oval(const struct note *note) {
    static const char *const words[] = {"oval", "oblong", "square", "rectangular", "banjo", "stick"};
    for (size_t i = 0; i < note->tokens.count; i++)
        if (token_among(&note->tokens, i, words, sizeof words / sizeof *words)) return true;
    return false;
}

// "1 inch chisel", "3/4 auger": how wide it works, which has no name of its own.
static bool is_bore(const char *type, double mm) {
    enum { BORE_MOST = 64 };
    static const char *const nouns[] = {"chisel", "gouge",  "bit",     "auger",  "drill", "reamer", "tap",
                                        "die",    "socket", "spanner", "wrench", "punch", "bits"};
    for (size_t i = 0; type && mm < BORE_MOST && i < sizeof nouns / sizeof *nouns; i++)
        if (ends_with(type, nouns[i])) return true;
    return false;
}

// What is known by one figure, whatever its family.
static bool is_long(const char *type) {
    static const char *const nouns[] = {
        "chain",    "strap",     "cord",    "rope",     "stick", "cane",        "oar",
        "paddle",   "hook",      "rod",     "pole",     "rule",  "belt",        "warming pan",
        "rake",     "hoe",       "scythe",  "sickle",   "spear", "bow",         "spindle",
        "baluster", "plank",     "beam",    "pipe",     "tube",  "bar",         "batten",
        "shaft",    "telescope", "sword",   "scabbard", "scarf", "pump handle", "crop",
        "spoon",    "ladle",     "skimmer", "peel",     "poker", "rolling pin", "whip",
        "ski",      "mast",      "spar",    "boom",     "coil",  "ladder",      "bookcase ladder"};
    for (size_t i = 0; type && i < sizeof nouns / sizeof *nouns; i++)
        if (ends_with(type, nouns[i])) return true;
    return false;
}

// Of a basket or a mirror one figure may be any side of it.
static bool is_flat(const char *type) {
    static const char *const nouns[] = {"basket", "hamper", "trug",        "tray",  "mirror", "frame",
                                        "plaque", "sign",   "mold",        "mould", "trough", "globe",
                                        "float",  "box",    "wreath",      "panel", "creel",  "cloche",
                                        "roller", "bath",   "paperweight", "reel"};
    for (size_t i = 0; type && i < sizeof nouns / sizeof *nouns; i++)
        if (ends_with(type, nouns[i])) return true;
    return false;
}

// "5 ft 6 wide. Feet tipped two inches": a bare figure is not once more what was told with its word.
static bool has_side(const struct record *record, size_t count, const char *dimension) {
    for (size_t i = 0; i < count; i++)
        if (!record->measurements[i].of && text_same(record->measurements[i].dimension, dimension))
            return true;
    return false;
}

void settle_measures(struct note *note) {
    struct record *record = note->record;
    size_t kept = 0;
    for (size_t i = 0; i < record->measurement_count; i++) {
        struct measurement measure = record->measurements[i];
        if (measure.of && record->type.value && ends_with(record->type.value, measure.of)) measure.of = NULL;
        bool size = text_same(measure.dimension, "size");
        if (!measure.of && text_same(measure.dimension, "width") && is_round(record->type.value) &&
            says_across(note, &measure.span))
            measure.dimension = "diameter";
        if (size && measure.of && text_same(measure.of, "open")) {
            measure.dimension = "length"; // "opens to 29 in"
            size = false;
        }
        if (size && !measure.of && !measure.range &&
            (is_flat(record->type.value) || is_bore(record->type.value, measure.figure.base))) {
            add_size(note, &measure);
            continue;
        }
        if (size && !measure.of && is_long(record->type.value) && !has_side(record, kept, "length"))
            measure.dimension = "length";
        else if (size && !measure.of && is_tall(record->type.value) && !has_side(record, kept, "height"))
            measure.dimension = "height";
        else if (size && !measure.of && is_disc(record->type.value) && !says_oval(note) &&
                 !has_side(record, kept, "diameter"))
            measure.dimension = "diameter";
        else if (size && !measure.of && record->family && record->family->default_dimension &&
                 !has_side(record, kept, record->family->default_dimension))
            measure.dimension = record->family->default_dimension;
        else if (size && !measure.range) {
            add_size(note, &measure);
            continue;
        }
        bool pair =
            i + 1 < record->measurement_count && measure.span.to == record->measurements[i + 1].span.to;
        if (pair && is_upright(record->family) && text_same(measure.dimension, "width") &&
            text_same(record->measurements[i + 1].dimension, "length"))
            record->measurements[i + 1].dimension = "height";
        record->measurements[kept++] = measure;
    }
    record->measurement_count = kept;
}

// "Copper coloured paint": a look, and no stuff.
static bool is_look(const struct note *note, const struct note_span *span) {
    static const char *const looks[] = {"coloured", "colored", "effect", "look", "looking", "tone", "toned"};
    for (size_t i = 0; i < note->tokens.count; i++)
        if (note->tokens.at[i].to == span->to && note->tokens.at[i].stop == STOP_NONE)
            return token_among(&note->tokens, i + 1, looks, sizeof looks / sizeof *looks);
    return false;
}

// "No glass", "glass missing".
static bool is_lost(const struct note *note, const struct note_span *span) {
    static const char *const before[] = {"no", "without", "missing", "minus", "lacks", "lacking"};
    static const char *const behind[] = {"missing", "gone", "lost", "absent", "cracked", "broken", "smashed"};
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        if (tokens->at[i].from == span->from && i > 0 && tokens->at[i - 1].stop == STOP_NONE &&
            token_among(tokens, i - 1, before, sizeof before / sizeof *before))
            return true;
        if (tokens->at[i].to == span->to && tokens->at[i].stop == STOP_NONE)
            return token_among(tokens, i + 1, behind, sizeof behind / sizeof *behind);
    }
    return false;
}

// "Brass telescope, leather worn".
static bool is_cover(const char *stuff) {
    static const char *const covers[] = {"leather", "leatherette", "rubber", "felt",
                                         "velvet",  "cloth",       "canvas"};
    for (size_t i = 0; i < sizeof covers / sizeof *covers; i++)
        if (text_same(stuff, covers[i])) return true;
    return false;
}

// "Paper mould": what the thing is called is nothing that is wrong with it.
static void drop_names(struct record *record) {
    const struct note_span *type = &record->type.span;
    size_t kept = 0;
    for (size_t i = 0; i < record->flaw_count; i++) {
        const struct note_span *span = &record->flaws[i].span;
        bool fault = record->flaws[i].kind->form == FAULT;
        if (fault && span->to && type->to && span->from >= type->from && span->to <= type->to) continue;
        record->flaws[kept++] = record->flaws[i];
    }
    record->flaw_count = kept;
}

// Initials that are told as such are no pattern besides.
static bool is_told(const struct record *record, const struct value *value) {
    if (!text_same(value->name, "pattern") || strncmp(value->value, "monogram", strlen("monogram")) != 0)
        return false;
    for (size_t i = 0; i < record->flaw_count; i++)
        if (text_same(record->flaws[i].kind->rule.id, "monogram")) return true;
    return false;
}

// "On a leather strap, leather cracked": the strap's, of which it was said before.
static bool is_parts_own(const struct record *record, const struct value *value) {
    if (value->of || !text_same(value->name, "material") || !is_cover(value->value)) return false;
    bool strap = false, beside = false;
    for (size_t i = 0; i < record->attribute_count; i++)
        strap |= record->attributes[i].of && text_same(record->attributes[i].value, value->value) &&
                 record->attributes[i].span.from < value->span.from;
    for (size_t i = 0; i < record->flaw_count; i++)
        beside |=
            value->span.to &&
            (value->span.to + 1 == record->flaws[i].span.from ||
             (value->span.from >= record->flaws[i].span.from && value->span.to <= record->flaws[i].span.to));
    return strap && beside;
}

static bool is_painted_so(const struct record *record, const char *finish) {
    static const char painted[] = "painted ";
    if (strncmp(finish, painted, sizeof painted - 1) != 0) return false;
    for (size_t i = 0; i < record->attribute_count; i++) {
        const struct value *other = &record->attributes[i];
        if (!other->of && text_same(other->name, "color") &&
            text_same(other->value, finish + sizeof painted - 1))
            return true;
    }
    return false;
}

// "No cracks in the leather", "the suede is stained": of shoes and bags, which are of what they are covered
// with.
static void add_cover(struct note *note) {
    struct record *record = note->record;
    const struct tokens *tokens = &note->tokens;
    const struct family *family = record->family;
    if (!family || (!text_same(family->rule.id, "footwear") && !text_same(family->rule.id, "bags"))) return;
    for (size_t i = 0; i < record->attribute_count; i++)
        if (text_same(record->attributes[i].name, "material") && !record->attributes[i].of) return;
    for (size_t i = 1; i < tokens->count; i++) {
        bool cover = ANY(tokens, i, "leather", "suede", "canvas") && token_is(tokens, i - 1, "the");
        if (!cover || note->taken[i] == TAKEN_ASIDE || tokens->at[i - 1].stop != STOP_NONE) continue;
        if (i + 1 < tokens->count && tokens->at[i + 1].stop == STOP_NONE && place_noun(note, i + 1))
            continue; // "the leather strap"
        struct value *value = note_attribute(note);
        *value = (struct value){.name = "material",
                                .value = tokens->at[i].fold,
                                .sure = SURE_STATED,
                                .span = note_span_of(note, i, i + 1)};
        return;
    }
}

// "Lamp, glass cracked": the glass is a part there, and no lamp of glass is told of.
void settle_stuff(struct note *note) {
    struct record *record = note->record;
    bool glassware = record->family && text_same(record->family->rule.id, "glassware");
    size_t kept = 0, stuffs = 0;
    drop_names(record);
    for (size_t i = 0; i < record->attribute_count; i++)
        stuffs += text_same(record->attributes[i].name, "material") && !record->attributes[i].of;
    for (size_t i = 0; i < record->attribute_count; i++) {
        const struct value *value = &record->attributes[i];
        bool glass = text_same(value->value, "glass");
        bool part = (glass || stuffs > 1) && is_lost(note, &value->span);
        part |= is_look(note, &value->span);
        for (size_t k = 0; k < record->flaw_count; k++) {
            const struct item_flaw *flaw = &record->flaws[k];
            bool beside = value->span.to && value->span.to + 1 == flaw->span.from;
            bool within = value->span.from >= flaw->span.from && value->span.to <= flaw->span.to;
            part |= glass && within && !glassware && flaw->part && text_same(flaw->part, "glass");
            part |= beside && !glassware &&
                    (flaw->part ? text_same(flaw->part, value->value) : stuffs > 1 && is_cover(value->value));
        }
        if (is_told(record, value) || is_parts_own(record, value)) continue;
        if (!value->of && text_same(value->name, "finish") && is_painted_so(record, value->value))
            record->attributes[i].value = "painted"; // "White canoe, painted white"
        if (!part || value->of || !text_same(value->name, "material"))
            record->attributes[kept++] = record->attributes[i];
    }
    record->attribute_count = kept;
    add_cover(note);
}
