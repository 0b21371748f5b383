// SPDX-License-Identifier: MIT
// "Tamberlane Student" of a trumpet: goods that a firm makes in many models are called by its name and by
// theirs.
#include <string.h>

#include "notes/any.h"
#include "notes/english.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_modelled(const struct note *note) {
    static const char *const ids[] = {"cameras", "music", "sports", "electrical"};
    const struct family *family = note->record->family;
    for (size_t i = 0; family && i < COUNT(ids); i++)
        if (text_same(family->rule.id, ids[i])) return true;
    return false;
}

static struct value *value_named(struct record *record, const char *name) {
    for (size_t i = 0; i < record->attribute_count; i++)
        if (text_same(record->attributes[i].name, name)) return &record->attributes[i];
    return NULL;
}

static size_t token_at_byte(const struct tokens *tokens, size_t byte) {
    size_t i = 0;
    while (i < tokens->count && tokens->at[i].from < byte) i++;
    return i;
}

// A second name may be that of a partner or say what the firm is: "Pike & Wren", "Marlbeck Sports".
static bool is_of_firm(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "&", "and", "bros", "brothers", "sons", "son", "co", "company", "ltd", "limited",
               "works", "sports", "golf", "tackle", "cycles", "cycle", "radio", "radios", "electric",
               "electrical", "instruments", "instrument", "optical", "optics", "camera", "cameras", "music",
               "pianos", "piano", "organ", "organs", "house", "factory", "products", "industries", "de",
               "van", "von", "of", "the", ".", "mill", "mills", "forge", "street", "road");
}

void read_model_named(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    struct record *record = note->record;
    struct value *brand = value_named(record, "brand");
    if (!brand || !brand->span.to || value_named(record, "model") || !is_modelled(note)) return;
    size_t from = token_at_byte(tokens, brand->span.from), to = from;
    while (to < tokens->count && tokens->at[to].from < brand->span.to) {
        if (tokens->at[to].kind != TOKEN_WORD || (to > from && is_of_firm(tokens, to))) return;
        to++;
    }
    if (to < from + 2 || to > from + 3 || tokens->at[from].to - tokens->at[from].from < 4) return;
    bool camera = text_same(record->family->rule.id, "cameras");
    if (!camera && !english_at(note, from + 1)) return;
    if (english_at(note, from)) return; // a name made of plain words is one
    struct value *model = note_attribute(note);
    brand = value_named(record, "brand"); // it may have moved
    *model = (struct value){.name = "model",
                            .value = arena_string(note->arena, note_words(note, from + 1, to)),
                            .sure = brand->sure,
                            .span = note_span_of(note, from + 1, to)};
    brand->value = arena_string(note->arena, note_words(note, from, from + 1));
    brand->span = note_span_of(note, from, from + 1);
    note_reading(note, from + 1, to, arena_format(note->arena, "model %s", model->value),
                 "a name behind the maker's");
}
