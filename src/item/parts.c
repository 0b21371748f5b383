// SPDX-License-Identifier: MIT
// Parts come in the order in which the record first names them.
#include "item/parts.h"

#include <string.h>

#include "text/order.h"

// Size, then looks, then color, then material: "50mm lens", "luminous green numbers", "white glass shade".
static const char *const order[PART_WORDS_MOST] = {"size",      "finish", "shape",    "pattern",
                                                   "technique", "color",  "material", "style"};

static bool belongs(const struct value *value, const char *part) {
    return value->of && text_same(value->of, part) && value->sure == SURE_STATED;
}

static bool named_before(const struct record *record, size_t at) {
    for (size_t i = 0; i < at; i++)
        if (belongs(&record->attributes[i], record->attributes[at].of)) return true;
    return false;
}

bool parts_next(const struct record *record, size_t *at, struct part_words *part) {
    for (; *at < record->attribute_count; ++*at) {
        const struct value *first = &record->attributes[*at];
        if (!first->of || first->sure != SURE_STATED || named_before(record, *at)) continue;
        *part = (struct part_words){.part = first->of, .span = first->span};
        for (size_t k = 0; k < PART_WORDS_MOST; k++)
            for (size_t i = 0; i < record->attribute_count && part->count < PART_WORDS_MOST; i++) {
                const struct value *value = &record->attributes[i];
                if (belongs(value, part->part) && text_same(value->name, order[k]))
                    part->words[part->count++] = value;
            }
        ++*at;
        if (part->count) return true;
        --*at;
    }
    return false;
}
