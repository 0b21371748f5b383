// SPDX-License-Identifier: MIT
// Words for what pictures show that show nothing where they stand: "straps cross in back", "music plays", "a
// dog chew", the train of a gown, the cars of a train and the carriage of a typewriter.
#include <string.h>

#include "notes/any.h"
#include "notes/idioms.h"
#include "notes/note.h"

static bool type_has(const struct note *note, const char *const *words, size_t count) {
    const char *type = note->record->type.value;
    for (size_t i = 0; type && i < count; i++)
        if (strstr(type, words[i])) return true;
    return false;
}

#define TYPE_HAS(note, ...)                                                                                  \
    type_has(note, (const char *const[]){__VA_ARGS__},                                                       \
             sizeof((const char *const[]){__VA_ARGS__}) / sizeof(const char *))

// What such goods have by that name.
static bool is_own_part(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (ANY(tokens, i, "train", "trains")) return TYPE_HAS(note, "gown", "dress", "veil");
    if (ANY(tokens, i, "car", "cars", "engine", "engines")) return TYPE_HAS(note, "train");
    if (ANY(tokens, i, "bridge", "bridges"))
        return note->record->family && !strcmp(note->record->family->rule.id, "music");
    if (ANY(tokens, i, "carousel")) return TYPE_HAS(note, "projector");
    if (ANY(tokens, i, "carriage"))
        for (size_t k = 0; k < tokens->count; k++)
            if (ANY(tokens, k, "typewriter", "lathe", "cannon")) return true;
    return false;
}

bool theme_is_idle(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (is_own_part(note, i)) return true;
    if (ANY(tokens, i, "cross"))
        return i > 0 &&
               ANY(tokens, i - 1, "straps", "they", "bands", "ties", "legs", "stretchers", "laces", "wires");
    if (ANY(tokens, i, "music"))
        return ANY(tokens, i + 1, "plays", "inside", "still", "is", "was", "works", "box", "stand", "stops",
                   "got", "starts", "runs", "and", "stored");
    if (ANY(tokens, i, "dog", "cat", "mouse", "rabbit", "horse", "bird"))
        return ANY(tokens, i + 1, "chew", "chews", "chewed", "whisker", "whiskers", "hair", "hairs",
                   "scratches", "scratched", "bite", "bites", "got", "ate", "bed", "did", "does", "nest");
    if (ANY(tokens, i, "child")) return i + 1 < tokens->count && tokens->at[i + 1].kind == TOKEN_FIGURE;
    return false;
}
