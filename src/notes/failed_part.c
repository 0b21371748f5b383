// SPDX-License-Identifier: MIT
// "The light doesn't come on", "the light meter doesn't move", "the dial light is out": what fails is the
// noun before the verb, though its word is a verb, a weight or a shade elsewhere and no list of parts has it.
#include <string.h>

#include "notes/any.h"
#include "notes/measures.h"
#include "notes/note.h"
#include "text/order.h"

// The token that begins at that byte; the count of tokens where none does. They stand in order.
static size_t token_at(const struct tokens *tokens, size_t byte) {
    size_t low = 0, high = tokens->count;
    while (low < high) {
        size_t middle = low + (high - low) / 2;
        if (tokens->at[middle].from < byte)
            low = middle + 1;
        else
            high = middle;
    }
    return low < tokens->count && tokens->at[low].from == byte ? low : tokens->count;
}

static bool fails(const struct item_flaw *flaw) {
    return text_same(flaw->kind->rule.id, "partly-working");
}

// "Worn where you drink": the rim, told by what it is for.
static void name_place(struct item_flaw *flaw) {
    static const char *const rims[] = {
        "where you drink",    "where you drink from",  "where you sip",      "where your lip goes",
        "where your lips go", "where your mouth goes", "where the lip goes", "where you put your lips"};
    for (size_t i = 0; flaw->where && i < sizeof rims / sizeof *rims; i++)
        if (text_same(flaw->where, rims[i])) flaw->where = "rim";
}

void settle_failed_part(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i < note->record->flaw_count; i++) {
        struct item_flaw *flaw = &note->record->flaws[i];
        name_place(flaw);
        size_t at = flaw->span.to && fails(flaw) ? token_at(tokens, flaw->span.from) : tokens->count;
        if (at < tokens->count && at > 2 &&
            ANY(tokens, at, "burned", "burnt", "blown", "dead", "out", "gone")) {
            while (at > 1 && ANY(tokens, at - 1, "is", "are", "has", "was", "all")) at--;
            at--; // "the inside light is burned out"
        }
        if (at + 1 >= tokens->count || tokens->at[at].stop != STOP_NONE ||
            !ANY(tokens, at, "light", "lights", "meter", "clock", "alarm", "backlight", "flash") ||
            !ANY(tokens, at + 1, "doesn't", "doesnt", "don't", "won't", "wont", "isn't", "is", "does", "will",
                 "has", "never", "are", "didn't"))
            continue;
        bool named =
            at > 0 && tokens->at[at - 1].stop == STOP_NONE &&
            ANY(tokens, at - 1, "dial", "light", "pilot", "interior", "inside", "oven", "work", "power",
                "indicator", "ready", "front", "back", "brake", "tail", "head", "reading", "map");
        size_t from = at - named;
        const char *noun =
            named ? arena_format(note->arena, "%s %s", tokens->at[from].fold, tokens->at[at].fold)
                  : tokens->at[at].fold;
        bool bare = !flaw->part || text_same(flaw->part, tokens->at[from].fold);
        if (bare) flaw->part = say_singular(note->arena, noun);
    }
}
