// SPDX-License-Identifier: MIT
// Colors, materials, techniques, patterns, styles, shapes, finishes and themes: each word goes under the key
// that its neighbors call for, and belongs to the part that it stands before ("brass handle", "the lid is
// tin") or else to the thing. A word in doubt is a guess; a word denied is none.
#include <string.h>

#include "notes/things.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct {
    enum word_use use;
    const char *name;
} keys[] = {{USE_MATERIAL, "material"}, {USE_COLOR, "color"},   {USE_TECHNIQUE, "technique"},
            {USE_PATTERN, "pattern"},   {USE_FINISH, "finish"}, {USE_SHAPE, "shape"},
            {USE_STYLE, "style"},       {USE_THEME, "theme"}};

static const uint32_t all_uses = (1u << USE_MATERIAL) | (1u << USE_COLOR) | (1u << USE_TECHNIQUE) |
                                 (1u << USE_PATTERN) | (1u << USE_FINISH) | (1u << USE_SHAPE) |
                                 (1u << USE_STYLE) | (1u << USE_THEME);

static bool has_use(const struct word_entry *entry, enum word_use use) {
    return entry->uses & (1u << use);
}

static bool is_one_of(const struct tokens *tokens, size_t i, const char *const *words, size_t count) {
    for (size_t k = 0; k < count; k++)
        if (token_is(tokens, i, words[k])) return true;
    return false;
}

// The next token that says something: signs within a phrase and "and", "with" are no neighbors.
static size_t next_word(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    while (i < tokens->count && (token_is(tokens, i, "-") || token_is(tokens, i, "&"))) i++;
    return i < tokens->count && tokens->at[i].stop == STOP_NONE ? i : tokens->count;
}

static bool is_type(const struct note *note, size_t i) {
    return i < note->tokens.count && note->taken[i] == TAKEN_TYPE;
}

static bool is_metal_color(const char *word) {
    static const char *const words[] = {"gold", "silver"};
    for (size_t i = 0; i < COUNT(words); i++)
        if (!strcmp(word, words[i])) return true;
    return false;
}

// "Amber glass" is a color, "brass lamp" a material: of a word that is both, what follows decides.
static enum word_use settle(const struct note *note, size_t from, size_t to, const struct word_entry *entry) {
    struct word_entry other;
    size_t next = next_word(note, to);
    if (has_use(entry, USE_MATERIAL) && has_use(entry, USE_COLOR)) {
        if (is_metal_color(entry->print)) return USE_COLOR; // metal only where a mark says so
        static const char *const tones[] = {"tone",   "toned", "colored", "coloured", "color",
                                            "colour", "tint",  "tinted",  "finish"};
        if (is_one_of(&note->tokens, next, tones, COUNT(tones))) return USE_COLOR;
        bool material = word_at(note, next, 1u << USE_MATERIAL, &other) > 0;
        bool color = from > 0 && word_at(note, from - 1, 1u << USE_COLOR, &other) > 0;
        static const char *const gems[] = {"amber",    "ivory", "coral",    "turquoise", "jade",
                                           "ebony",    "pearl", "amethyst", "ruby",      "emerald",
                                           "sapphire", "topaz", "opal",     "cobalt"};
        bool gem = false;
        for (size_t i = 0; i < COUNT(gems); i++) gem |= !strcmp(entry->print, gems[i]);
        return material || color || gem ? USE_COLOR : USE_MATERIAL;
    }
    for (size_t k = 0; k < COUNT(keys); k++)
        if (has_use(entry, keys[k].use)) return keys[k].use;
    return USE_COUNT;
}

// The part that the word is said of: behind it ("brass handle"), or before "is" ("handle is brass"). NULL:
// the thing.
static const char *part_of(const struct note *note, size_t from, size_t to) {
    struct word_entry entry;
    const struct tokens *tokens = &note->tokens;
    size_t at = to;
    for (size_t n = 0; n < 4; n++) { // over further adjectives: "white glass shade"
        at = next_word(note, at);
        if (at >= tokens->count || is_type(note, at)) break;
        size_t size = word_at(note, at, 1u << USE_PART, &entry);
        struct noun_found noun;
        if (size && !is_type(note, at)) {
            bool both = word_at(note, at, all_uses, &entry) >= size &&
                        word_at(note, next_word(note, at + size), 1u << USE_PART, &entry);
            if (!both) return arena_string(note->arena, note_words(note, at, at + size));
        }
        size_t value = word_at(note, at, all_uses, &entry);
        if (!value) {
            if (noun_at(note, at, &noun)) break;
            break;
        }
        at += value;
    }
    static const char *const verbs[] = {"is", "are", "looks", "in"};
    if (from >= 2 && is_one_of(tokens, from - 1, verbs, COUNT(verbs)))
        for (size_t n = 3; n > 0; n--) {
            if (from < n + 1) continue;
            size_t size = word_at(note, from - 1 - n, 1u << USE_PART, &entry);
            if (size == n && !is_type(note, from - 2))
                return arena_string(note->arena, note_words(note, from - 1 - n, from - 1));
        }
    return NULL;
}

static bool is_denied(const struct note *note, size_t from) {
    static const char *const words[] = {"not", "isn't", "no", "without", "never", "aren't", "nor"};
    for (size_t back = 1; back <= 2 && back <= from; back++) {
        if (note->tokens.at[from - back].stop != STOP_NONE) return false;
        if (is_one_of(&note->tokens, from - back, words, COUNT(words))) return true;
    }
    return false;
}

static enum sure sure_of(const struct note *note, size_t from, size_t to) {
    static const char *const before[] = {"maybe",      "possibly", "perhaps", "might",  "think",
                                         "guess",      "guessing", "looks",   "look",   "probably",
                                         "supposedly", "believe",  "say",     "seems",  "feels",
                                         "could",      "likely",   "suppose", "reckon", "assume"};
    static const char *const behind[] = {"maybe", "possibly", "perhaps", "?", "probably", "ish"};
    const struct tokens *tokens = &note->tokens;
    for (size_t back = 1; back <= 5 && back <= from; back++) {
        if (tokens->at[from - back].stop >= STOP_COMMA) break;
        if (is_one_of(tokens, from - back, before, COUNT(before))) return SURE_GUESS;
    }
    if (is_one_of(tokens, to, behind, COUNT(behind))) return SURE_GUESS;
    if (tokens->count > to + 2 && tokens->at[to].stop == STOP_COMMA &&
        is_one_of(tokens, to + 1, behind, COUNT(behind)))
        return SURE_GUESS;
    if (token_phrase(tokens, to, "i think") || token_phrase(tokens, to, "i guess") ||
        token_phrase(tokens, to, "i believe"))
        return SURE_GUESS;
    if (to < tokens->count && tokens->at[to].stop == STOP_COMMA &&
        (token_phrase(tokens, to + 1, "i think") || token_phrase(tokens, to + 1, "i guess")))
        return SURE_GUESS;
    return SURE_STATED;
}

// What is depicted stands before the type or behind words that say that it is depicted.
static bool is_depicted(const struct note *note, size_t from, size_t to) {
    static const char *const behind[] = {"design",  "pattern",     "scene",     "motif", "print",  "picture",
                                         "theme",   "decoration",  "shaped",    "shape", "figure", "painted",
                                         "printed", "embroidered", "engraving", "decal", "on"};
    static const char *const of[] = {"of", "with", "showing", "like", "has"};
    static const char *const heads[] = {
        "picture",   "scene",   "design",  "print",       "image",  "painting", "photo",   "shape", "drawing",
        "decorated", "painted", "printed", "embroidered", "figure", "carved",   "carving", "map",   "theme"};
    const struct tokens *tokens = &note->tokens;
    size_t next = next_word(note, to);
    if (is_type(note, next)) return true;
    if (is_one_of(tokens, next, behind, COUNT(behind))) return true;
    size_t at = from;
    while (at > 0 && (token_is(tokens, at - 1, "a") || token_is(tokens, at - 1, "an") ||
                      token_is(tokens, at - 1, "the") || tokens->at[at - 1].kind == TOKEN_FIGURE ||
                      note->taken[at - 1] == TAKEN_VALUE || token_is(tokens, at - 1, "and")))
        at--;
    if (at == 0 || !is_one_of(tokens, at - 1, of, COUNT(of))) return false;
    return token_is(tokens, at - 1, "showing") ||
           (at >= 2 && is_one_of(tokens, at - 2, heads, COUNT(heads))) || token_is(tokens, at - 1, "with");
}

static bool is_known(const struct note *note, const char *name, const char *value, const char *of) {
    const struct record *r = note->record;
    for (size_t i = 0; i < r->attribute_count; i++) {
        const struct value *v = &r->attributes[i];
        if (!strcmp(v->name, name) && !strcmp(v->value, value) &&
            ((!v->of && !of) || (v->of && of && !strcmp(v->of, of))))
            return true;
    }
    return false;
}

static const char *key_of(enum word_use use) {
    for (size_t k = 0; k < COUNT(keys); k++)
        if (keys[k].use == use) return keys[k].name;
    return NULL;
}

void read_values(struct note *note) {
    struct word_entry entry;
    for (size_t i = 0; i < note->tokens.count; i++) {
        if (note->taken[i] != TAKEN_NOT || note->fault_word[i]) continue;
        size_t n = word_at(note, i, all_uses, &entry);
        if (!n || !note_free(note, i, i + n)) continue;
        enum word_use use = settle(note, i, i + n, &entry);
        const char *name = use == USE_COUNT ? NULL : key_of(use);
        if (!name || (use == USE_THEME && !is_depicted(note, i, i + n)) || is_denied(note, i)) continue;
        const char *of = use == USE_THEME ? NULL : part_of(note, i, i + n);
        const char *print = entry.print;
        if (!is_known(note, name, print, of)) {
            struct value *value = note_attribute(note);
            *value = (struct value){.name = name,
                                    .value = print,
                                    .of = of,
                                    .sure = sure_of(note, i, i + n),
                                    .span = note_span_of(note, i, i + n)};
            note_reading(note, i, i + n, arena_format(note->arena, "%s %s", name, print), "word book");
        }
        note_take(note, i, i + n, TAKEN_VALUE);
        i += n - 1;
    }
}
