// SPDX-License-Identifier: MIT
// "Strand of glass beads", "deck of bridge size cards": the first noun says how many lie together, and goods
// of their own are what they make.
#include "notes/any.h"
#include "notes/note.h"

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

void read_type_whole(struct note *note) {
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
