// SPDX-License-Identifier: MIT
// What goods are by their family, their name and their materials, where the word of a fault is another kind
// for it: leather creases and metal is bent, dark spots of wood are no mold.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
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
    const char *type = r->note->record->type.value;
    if (place && kind_has_word(place, "leather")) return true;
    for (size_t i = 0; i < r->material_count; i++)
        if (!r->materials[i]->of && kind_has_word(r->materials[i]->value, "leather")) return true;
    for (size_t i = 0; type && i < COUNT(worn); i++)
        if (strstr(type, worn[i])) return true;
    return false;
}

bool kind_is_hard(const struct fault_reader *r, const char *place) {
    static const char *const ids[] = {"tools",    "sports", "metalware",      "kitchenware",
                                      "cameras",  "parts",  "clocks-watches", "electrical",
                                      "lighting", "music",  "furniture"};
    static const char *const soft[] = {"leather", "canvas", "strap",   "straps",  "bag",  "case",
                                       "cover",   "lining", "cloth",   "cushion", "wall", "flap",
                                       "sail",    "seat",   "bellows", "rope"};
    static const char *const sewn[] = {"tent", "awning", "sail", "hammock", "sack", "net", "bag", "kite"};
    const char *type = r->note->record->type.value, *last = type ? strrchr(type, ' ') : NULL;
    for (size_t i = 0; type && i < COUNT(sewn); i++)
        if (text_same(last ? last + 1 : type, sewn[i])) return false;
    return is_in(r, ids, COUNT(ids)) && !kind_is_leather(r, NULL) &&
           !(place && kind_names_one(place, soft, COUNT(soft)));
}
