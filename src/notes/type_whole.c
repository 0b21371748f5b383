// SPDX-License-Identifier: MIT
// "Strand of glass beads", "deck of bridge size cards": the first noun says how many lie together, and goods
// of their own are what they make.
#include "notes/any.h"
#include "notes/note.h"
#include "text/order.h"

static bool is_of(const struct note *note, size_t i) {
    return i + 1 < note->tokens.count && note->tokens.at[i].stop == STOP_NONE &&
           token_is(&note->tokens, i + 1, "of");
}

// Where one of the goods stands behind the "of" at token `of`, before any stop; 0 where none does.
static size_t goods_behind(const struct note *note, size_t of, bool cards) {
    enum { WORDS_MOST = 5 };
    const struct tokens *tokens = &note->tokens;
    for (size_t k = of + 1; k < tokens->count && k <= of + WORDS_MOST; k++) {
        if (cards ? ANY(tokens, k, "cards") : ANY(tokens, k, "beads", "pearls")) return k;
        if (tokens->at[k].stop != STOP_NONE) return 0;
    }
    return 0;
}

// "Three volume history of canals, green cloth", "cloth bound poetry": what is written in it and how it is
// bound tell a book, though no noun for one stands there.
static void read_genre(struct note *note) {
    static const char *const looks[] = {"cloth", "page",   "pages",  "volume",  "board",
                                        "spine", "jacket", "ribbon", "leather", "binding"};
    const struct tokens *tokens = &note->tokens;
    struct record *record = note->record;
    bool weak = !record->type.value;
    for (size_t k = 0; !weak && k < sizeof looks / sizeof *looks; k++)
        weak = text_same(record->type.value, looks[k]);
    if (!weak) return;
    size_t genre = tokens->count;
    bool bound = false;
    for (size_t i = 0; i < tokens->count; i++) {
        if (genre == tokens->count && note->taken[i] != TAKEN_TYPE &&
            ANY(tokens, i, "poetry", "history", "biography", "memoirs", "mystery", "essays", "fiction") &&
            !(i > 0 && ANY(tokens, i - 1, "the", "its", "his", "no", "some", "a")) &&
            (!ANY(tokens, i, "history", "essays") || ANY(tokens, i + 1, "of", "on")))
            genre = i;
        bound |= ANY(tokens, i, "bound", "cloth", "volume", "volumes", "hardcover", "hardback", "paperback",
                     "softcover");
        if (tokens->at[i].stop >= STOP_SENTENCE) break;
    }
    if (genre == tokens->count || !bound) return;
    for (size_t i = 0; i < tokens->count; i++)
        if (note->taken[i] == TAKEN_TYPE) note->taken[i] = TAKEN_NOT;
    record->type.value = arena_format(note->arena, "%s book", tokens->at[genre].fold);
    record->type.span = note_span_of(note, genre, genre + 1);
    record->type.sure = SURE_STATED;
    record->family = ruleset_family(note->rules, "books");
    note_take(note, genre, genre + 1, TAKEN_TYPE);
    note_reading(note, genre, genre + 1, arena_format(note->arena, "type %s", record->type.value),
                 "how it is bound");
}

void read_type_whole(struct note *note) {
    read_genre(note);
    const struct tokens *tokens = &note->tokens;
    struct record *record = note->record;
    for (size_t i = 0; i < tokens->count && record->type.value; i++) {
        if (note->taken[i] != TAKEN_TYPE) continue;
        bool cards = ANY(tokens, i, "deck", "decks", "pack", "packs");
        if ((!cards && !ANY(tokens, i, "strand", "strands", "string", "rope")) || !is_of(note, i)) continue;
        size_t at = goods_behind(note, i + 1, cards);
        if (!at) continue;
        bool pearls = ANY(tokens, at, "pearls");
        if (!pearls) record->type.value = cards ? "playing cards" : "bead necklace"; // pearls are a claim
        record->family = ruleset_family(note->rules, cards ? "games-puzzles" : "jewelry");
        if (cards && note->taken[at] == TAKEN_NOT) {
            size_t from =
                at > 0 && ANY(tokens, at - 1, "playing") && note->taken[at - 1] == TAKEN_NOT ? at - 1 : at;
            note_take(note, from, at + 1, TAKEN_TYPE);
        }
        note_reading(note, i, i + 1, arena_format(note->arena, "type %s", record->type.value),
                     "what they make");
        return;
    }
}
