// SPDX-License-Identifier: MIT
#include "item/several.h"

#include <string.h>

#include "text/order.h"
#include "text/utf8.h"

// The noun as the notes have it is in the plural and the type, which is that noun, is not.
bool record_is_several(struct arena *arena, const struct record *record) {
    const struct value *type = &record->type;
    if (record->count || !type->value || !record->notes || !type->span.to) return record->count > 1;
    const char *said = arena_copy(arena, record->notes + type->span.from, type->span.to - type->span.from);
    return !say_is_plural(type->value) && say_is_plural(said) &&
           text_same(utf8_fold(arena, say_singular(arena, said)), utf8_fold(arena, type->value));
}
