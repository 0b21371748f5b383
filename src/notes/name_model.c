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

// "Tamsworth Student", "Corven Popular": behind a made-up name the model that its maker calls so.
static bool name_is_grade(const struct note *note, size_t i) {
    static const char *const words[] = {
        "student",      "junior",  "senior",  "major",     "minor",     "standard",  "deluxe",
        "master",       "super",   "special", "popular",   "universal", "portable",  "compact",
        "professional", "classic", "royal",   "imperial",  "ranger",    "pioneer",   "courier",
        "colt",         "cadet",   "scout",   "champion",  "monarch",   "regent",    "viscount",
        "ambassador",   "consul",  "giant",   "rapid",     "express",   "prefect",   "premier",
        "supreme",      "elite",   "regal",   "household", "tourist",   "traveller", "traveler",
        "sports",       "concert", "artist",  "companion", "commander", "captain"};
    const struct tokens *tokens = &note->tokens;
    return i > 0 && i < tokens->count && token_among(tokens, i, words, COUNT(words)) &&
           tokens->at[i].capital && !tokens->flat && !tokens->shouts && note->book &&
           tokens->at[i - 1].stop == STOP_NONE && tokens->at[i - 1].kind == TOKEN_WORD &&
           tokens->at[i - 1].capital && !english_at(note, i - 1) &&
           !(i + 1 < tokens->count && (tokens->at[i + 1].capital || tokens->at[i + 1].kind == TOKEN_FIGURE));
}

// The words behind the maker's name are its model; those within it are no longer the maker's.
static void name_model(struct note *note, size_t from, size_t at, size_t to) {
    struct value *model = note_attribute(note);
    struct value *brand = value_named(note->record, "brand"); // it may have moved
    *model = (struct value){.name = "model",
                            .value = arena_string(note->arena, note_words(note, at, to)),
                            .sure = brand->sure,
                            .span = note_span_of(note, at, to)};
    brand->value = arena_string(note->arena, note_words(note, from, at));
    brand->span = note_span_of(note, from, at);
    note_reading(note, at, to, arena_format(note->arena, "model %s", model->value),
                 "a name behind the maker's");
}

void read_model_named(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    struct record *record = note->record;
    const struct value *brand = value_named(record, "brand");
    if (!brand || !brand->span.to || value_named(record, "model")) return;
    size_t from = token_at_byte(tokens, brand->span.from), to = from;
    for (; to < tokens->count && tokens->at[to].from < brand->span.to; to++)
        if (tokens->at[to].kind != TOKEN_WORD || (to > from && is_of_firm(tokens, to))) return;
    if (to == from + 1 && note_free(note, to, to + 1) && name_is_grade(note, to)) {
        note_take(note, to, to + 1, TAKEN_VALUE);
        name_model(note, from, to, to + 1);
        return;
    }
    if (to == from + 2 && name_is_grade(note, from + 1)) {
        name_model(note, from, from + 1, to);
        return;
    }
    if (!is_modelled(note) || to < from + 2 || to > from + 3 ||
        tokens->at[from].to - tokens->at[from].from < 4)
        return;
    bool camera = text_same(record->family->rule.id, "cameras");
    if (!camera && !english_at(note, from + 1)) return;
    if (english_at(note, from)) return; // a name made of plain words is one
    name_model(note, from, from + 1, to);
}
