// SPDX-License-Identifier: MIT
// Whose a name is, once the thing is known: a book has an author and a picture its artist where "by" or
// "signed" leads the name, and what is in a tin or told on a sign is of the firm that it was made for.
#include <string.h>

#include "notes/any.h"
#include "notes/things.h"

static bool type_ends(const struct note *note, const char *const *words, size_t count) {
    const char *type = note->record->type.value, *last = type ? strrchr(type, ' ') : NULL;
    if (!type) return false;
    last = last ? last + 1 : type;
    for (size_t i = 0; i < count; i++)
        if (!strcmp(last, words[i])) return true;
    return false;
}

static bool is_picture(const struct note *note) {
    static const char *const words[] = {
        "watercolour", "watercolor", "painting",   "oil",        "etching",    "engraving", "print",
        "drawing",     "sketch",     "lithograph", "aquatint",   "mezzotint",  "woodcut",   "linocut",
        "pastel",      "picture",    "photograph", "poster",     "portrait",   "landscape", "sculpture",
        "miniature",   "cartoon",    "sampler",    "silhouette", "screenprint"};
    return type_ends(note, words, sizeof words / sizeof *words);
}

static bool is_packing(const struct note *note) {
    static const char *const words[] = {
        "tin",    "box",      "bottle",      "jar",         "crate",    "sign",     "poster", "bag",
        "sack",   "canister", "carton",      "tray",        "caddy",    "packet",   "drum",   "can",
        "mirror", "ashtray",  "matchholder", "thermometer", "showcard", "dispenser"};
    return type_ends(note, words, sizeof words / sizeof *words);
}

static const char *credit_of(const struct note *note) {
    const struct family *family = note->record->family;
    if (is_picture(note)) return "byArtist";
    static const char *const blank[] = {"album", "albums",   "scrapbook", "notebook",
                                        "diary", "register", "binder"};
    const char *type = note->record->type.value;
    if (type && strstr(type, "guest book")) return NULL;
    if (family && !strcmp(family->rule.id, "books") && !type_ends(note, blank, sizeof blank / sizeof *blank))
        return "author";
    return NULL;
}

static bool has(const struct note *note, const char *name) {
    for (size_t i = 0; i < note->record->attribute_count; i++)
        if (!strcmp(note->record->attributes[i].name, name)) return true;
    return false;
}

// "Printed by", "framed by": no author.
static bool is_trade(const struct note *note, size_t by) {
    const struct tokens *tokens = &note->tokens;
    return by > 0 && tokens->at[by - 1].stop == STOP_NONE &&
           ANY(tokens, by - 1, "printed", "published", "bound", "rebound", "sold", "retailed", "framed",
               "made", "issued", "supplied", "restored", "given", "pub", "engraved");
}

static size_t token_from(const struct note *note, size_t byte) {
    for (size_t i = 0; i < note->tokens.count; i++)
        if (note->tokens.at[i].from == byte) return i;
    return 0;
}

// "By Pinder & Lowe, stationers"
static bool is_of_trade(const struct note *note, const struct value *value) {
    size_t to = token_from(note, value->span.from);
    while (to < note->tokens.count && note->tokens.at[to].from < value->span.to) to++;
    if (token_is(&note->tokens, to, ",") && ANY(&note->tokens, to + 1, "stationers", "stationer")) to++;
    return ANY(&note->tokens, to, "stationers", "stationer", "binders", "printers", "printer", "publishers",
               "publisher");
}

static void credit_by(struct note *note, const char *credit) {
    for (size_t i = 0; i < note->record->attribute_count; i++) {
        struct value *value = &note->record->attributes[i];
        if (strcmp(value->name, "brand") != 0 || value->of || is_of_trade(note, value)) continue;
        size_t at = token_from(note, value->span.from);
        if (at > 0 && token_is(&note->tokens, at - 1, "by") && !is_trade(note, at - 1)) value->name = credit;
    }
}

// A blank book has no author, and no printer is one.
static void credit_back(struct note *note) {
    const char *type = note->record->type.value;
    bool blank = type && strstr(type, "guest book");
    for (size_t i = 0; i < note->record->attribute_count; i++) {
        struct value *value = &note->record->attributes[i];
        if (!strcmp(value->name, "author") && (blank || is_of_trade(note, value)) && !has(note, "brand"))
            value->name = "brand";
    }
}

// "Signed lower left P. Ashgrove": the mark stays, and tells who painted it.
static void credit_signed(struct note *note) {
    enum { FAR = 7 };
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i + 1 < tokens->count; i++) {
        if (!ANY(tokens, i, "signed") || (i > 0 && ANY(tokens, i - 1, "not", "un", "is", "isn't"))) continue;
        size_t at = i + 1;
        while (at < tokens->count && at < i + FAR &&
               !(note->taken[at] == TAKEN_MARK && tokens->at[at].capital) &&
               tokens->at[at].stop < STOP_COMMA) // "signed lower left"
            at++;
        size_t to = at;
        while (to < tokens->count && note->taken[to] == TAKEN_MARK && tokens->at[to].kind != TOKEN_FIGURE &&
               tokens->at[to].stop < STOP_COMMA &&
               !(to > at && ANY(tokens, to, "in", "on", "at", "lower", "upper"))) // "in the plate"
            to++;
        while (to > at && tokens->at[to - 1].kind == TOKEN_SIGN) to--; // "E. Marl '72"
        if (to == at || !tokens->at[at].capital) continue;
        struct value *value = note_attribute(note);
        *value = (struct value){.name = "byArtist",
                                .value = arena_string(note->arena, note_words(note, at, to)),
                                .span = note_span_of(note, at, to)};
        note_reading(note, at, to, arena_format(note->arena, "byArtist %s", value->value), "a signature");
        return;
    }
}

// "Tin for Orrin & Pell's lozenges".
static void credit_packed(struct note *note) {
    struct record *record = note->record;
    if (record->fit_count != 1 || record->fits[0].model || has(note, "brand")) return;
    const struct fit *fit = &record->fits[0];
    size_t at = token_from(note, fit->span.from);
    if (at == 0 || !token_is(&note->tokens, at - 1, "for")) return;
    size_t to = at;
    while (to < note->tokens.count && note->tokens.at[to].to <= fit->span.to) to++;
    struct value *value = note_attribute(note);
    *value = (struct value){.name = "brand", .value = fit->brand, .sure = fit->sure, .span = fit->span};
    note_take(note, at, to, TAKEN_VALUE);
    record->fit_count = 0;
}

// "Signed H. Lanyon, Pen Quay" on an instrument: who made it, and where.
static void credit_maker(struct note *note) {
    static const char *const families[] = {"clocks-watches", "tools", "cameras", "music", "sports"};
    const struct family *family = note->record->family;
    bool may = false;
    for (size_t i = 0; family && i < sizeof families / sizeof *families; i++)
        may |= !strcmp(family->rule.id, families[i]);
    const char *type = note->record->type.value;
    may |= type && (strstr(type, "barometer") || strstr(type, "barograph") || strstr(type, "globe"));
    if (!may || has(note, "brand")) return;
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i + 1 < tokens->count; i++) {
        if (!ANY(tokens, i, "signed") || (i > 0 && ANY(tokens, i - 1, "not", "un", "isn't"))) continue;
        size_t from = i + 1, to;
        while (from < tokens->count && ANY(tokens, from, "by", "'", "\"")) from++;
        for (to = from; to < tokens->count && note->taken[to] == TAKEN_MARK &&
                        tokens->at[to].kind != TOKEN_FIGURE && !token_is(tokens, to, ",");
             to++)
            continue;
        while (to > from && tokens->at[to - 1].kind == TOKEN_SIGN) to--;
        if (to == from || !tokens->at[from].capital) continue;
        struct value *value = note_attribute(note);
        *value = (struct value){.name = "brand",
                                .value = arena_string(note->arena, note_words(note, from, to)),
                                .span = note_span_of(note, from, to)};
        note_reading(note, from, to, arena_format(note->arena, "brand %s", value->value),
                     "a maker's signature");
        return;
    }
}

// Who signed a picture painted it, and is no maker besides.
static void drop_same_brand(struct record *record) {
    const char *artist = NULL;
    for (size_t i = 0; i < record->attribute_count; i++)
        if (!strcmp(record->attributes[i].name, "byArtist")) artist = record->attributes[i].value;
    size_t kept = 0;
    for (size_t i = 0; i < record->attribute_count; i++) {
        const struct value *value = &record->attributes[i];
        if (!artist || strcmp(value->name, "brand") != 0 || strcmp(value->value, artist) != 0)
            record->attributes[kept++] = *value;
    }
    record->attribute_count = kept;
}

void read_credits(struct note *note) {
    const char *credit = credit_of(note);
    if (credit && !has(note, credit)) {
        credit_by(note, credit);
        if (!has(note, credit) && is_picture(note)) credit_signed(note);
    }
    credit_back(note);
    if (is_packing(note)) credit_packed(note);
    credit_maker(note);
    drop_same_brand(note->record);
}
