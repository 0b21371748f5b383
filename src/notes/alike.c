// SPDX-License-Identifier: MIT
// What a thing only looks like is not what it is made of: "mock bronze figure", "oak effect chest", "like
// jade".
#include <string.h>

#include "notes/any.h"
#include "notes/measures.h"
#include "notes/unsure.h"
#include "text/order.h"

// The tokens of a value: first and last.
struct at {
    size_t first, last;
};

static bool find_tokens(const struct note *note, const struct note_span *span, struct at *at) {
    size_t from = SIZE_MAX;
    for (size_t i = 0; i < note->tokens.count && span->to; i++) {
        const struct token *token = &note->tokens.at[i];
        if (token->from == span->from) from = i;
        if (token->to != span->to || from == SIZE_MAX) continue;
        *at = (struct at){from, i};
        return true;
    }
    return false;
}

// The token before `i` in its clause; SIZE_MAX at its start.
static size_t token_before(const struct note *note, size_t i) {
    return i && note->tokens.at[i - 1].stop == STOP_NONE ? i - 1 : SIZE_MAX;
}

static bool says_sham(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "mock", "fake", "faux", "imitation", "imit", "simulated", "artificial",
               "pretend", "pseudo", "sham", "man-made", "manmade");
}

static bool is_sham(const struct note *note, size_t i) {
    size_t at = token_before(note, i);
    return at != SIZE_MAX && says_sham(note, at);
}

// "Pearl studs in their box, faux, with backs": the word alone between stops, behind the stuff.
static bool is_sham_apart(const struct note *note, size_t last) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = last + 1; i < tokens->count && tokens->at[i - 1].stop < STOP_SENTENCE; i++)
        if (says_sham(note, i) && tokens->at[i - 1].stop >= STOP_COMMA &&
            (i + 1 >= tokens->count || tokens->at[i].stop != STOP_NONE ||
             tokens->at[i + 1].stop >= STOP_COMMA))
            return true;
    return false;
}

// "Like oak", "made to resemble real bronze".
static bool is_likened(const struct note *note, size_t i) {
    size_t at = token_before(note, i);
    while (at != SIZE_MAX && ANY(&note->tokens, at, "a", "an", "the", "real", "old", "dark", "proper"))
        at = token_before(note, at);
    if (at != SIZE_MAX && token_is(&note->tokens, at, "as") && at > 0)
        return ANY(&note->tokens, at - 1, "good", "heavy", "hard", "bright", "shiny", "black", "white",
                   "solid", "cold");
    return at != SIZE_MAX && ANY(&note->tokens, at, "like", "resembles", "resemble", "resembling",
                                 "imitating", "imitate", "imitates", "mimics", "unlike");
}

static bool is_look_behind(const struct note *note, size_t last) {
    if (note->tokens.at[last].stop != STOP_NONE) return false;
    return ANY(&note->tokens, last + 1, "effect", "look", "looking", "type", "lookalike", "look-alike",
               "like", "substitute", "ish", "finish", "finished", "free", "toned", "tone", "imitation",
               "alternative") ||
           token_phrase(&note->tokens, last + 1, "look alike");
}

// "Bronze-colored" is one token.
static bool holds_colored(const struct note *note, size_t last) {
    const char *word = strchr(note->tokens.at[last].fold, '-');
    return word && (text_same(word, "-coloured") || text_same(word, "-colored"));
}

static bool is_colored(const struct note *note, size_t last) {
    return note->tokens.at[last].stop == STOP_NONE && note->taken[last + 1] == TAKEN_NOT &&
           ANY(&note->tokens, last + 1, "coloured", "colored", "color", "colour");
}

static bool is_stuff(const struct note *note, const char *word) {
    struct word_entry entry;
    return note->book && wordbook_find(note->book, word, strlen(word), &entry) &&
           entry.uses & (1u << USE_MATERIAL);
}

// "Bronze figure" of "mock bronze figure" is a figure.
static void bare_type(struct note *note, const struct at *at) {
    struct value *type = &note->record->type;
    struct at noun;
    if (!type->value || !find_tokens(note, &type->span, &noun) || noun.first != at->first ||
        noun.last <= at->last)
        return;
    const char *space = type->value;
    for (size_t i = at->first; i <= at->last && space; i++) {
        space = strchr(space, ' ');
        if (space) space++;
    }
    if (!space || !*space) return;
    type->value = space;
    type->span.from = note->tokens.at[at->last + 1].from;
}

// False: it is no value of the thing.
static bool settle(struct note *note, struct value *value) {
    bool material = text_same(value->name, "material");
    struct at at;
    if ((!material && !text_same(value->name, "color")) || !find_tokens(note, &value->span, &at)) return true;
    if (!material && !is_stuff(note, value->value)) return true;
    bool apart = material && is_sham_apart(note, at.last);
    if (apart || is_sham(note, at.first)) {
        bare_type(note, &at);
        if (!apart) note_take(note, at.first - 1, at.first, TAKEN_VALUE);
        value->name = "material";
        value->value = arena_format(note->arena, "imitation %s", value->value);
        return true;
    }
    bool joined = holds_colored(note, at.last);
    if (!material && (joined || is_colored(note, at.last))) {
        if (!joined) note_take(note, at.last + 1, at.last + 2, TAKEN_VALUE);
        value->value = arena_format(note->arena, "%s-colored", value->value);
        return true;
    }
    if (is_likened(note, at.first) || is_look_behind(note, at.last)) {
        bare_type(note, &at);
        return false;
    }
    bool sort = material && at.first > 1 && token_is(&note->tokens, at.first - 1, "of") &&
                ANY(&note->tokens, at.first - 2, "sort", "kind"); // "sort of brass"
    if (value->sure == SURE_STATED && (sort || unsure_before(note, at.first))) value->sure = SURE_GUESS;
    return true;
}

void settle_alike(struct note *note) {
    struct record *record = note->record;
    size_t kept = 0;
    for (size_t i = 0; i < record->attribute_count; i++)
        if (settle(note, &record->attributes[i])) record->attributes[kept++] = record->attributes[i];
    record->attribute_count = kept;
}
