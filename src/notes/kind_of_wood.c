// SPDX-License-Identifier: MIT
// What is of wood splits as wood does, whatever else that splits would do: no tear of a pine box, no mere
// crack of a slat. Rubber that splits has perished, though it is the grip of an oar.
#include "notes/any.h"
#include "notes/faults.h"
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
    static const char *const things[] = {"breadboard", "board", "trug",        "mallet", "oar",
                                         "paddle",     "bat",   "rolling pin", "print",  "mangle",
                                         "ladder",     "ladle", "skittle",     "crate",  "skittles",
                                         "stool",      "bench", "chest",       "trough", "pin"};
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
    const char *id = kind->rule.id;
    const struct flaw *perished = text_same(id, "wood-split") && is_rubber(r, place)
                                      ? ruleset_flaw(r->note->rules, "rubber-perished")
                                      : NULL;
    if (perished) return perished;
    // "Stiff and cracked": what perishes is of rubber, and leather cracks
    bool elastic = ANY(&r->note->tokens, hit->from, "elastic", "elastics", "rubber");
    const struct flaw *leather =
        text_same(id, "rubber-perished") && !elastic && !is_rubber(r, place) && of_leather(r)
            ? ruleset_flaw(r->note->rules, "leather-crack")
            : NULL;
    if (leather) return leather;
    bool named = text_same(id, "leather-crack") && wood_before(r, hit); // "wood has a split" of a clog
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
