// SPDX-License-Identifier: MIT
// Parts that the words of a kind leave unnamed, named once all faults are read: which button, what was cut
// out of a page. A phrase of place is a place.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/place.h"
#include "text/order.h"

static bool is_kind(const struct item_flaw *flaw, const char *id) {
    return text_same(flaw->kind->rule.id, id);
}

// "One sleeve button is gone", "two cuff buttons": which of its buttons, where the words of the kind name
// none.
static void name_buttons(struct note *note) {
    for (size_t i = 0; i < note->record->flaw_count; i++) {
        struct item_flaw *flaw = &note->record->flaws[i];
        if (!is_kind(flaw, "missing-button") || flaw->part || flaw->where) continue;
        for (size_t k = 1; k < note->tokens.count; k++) {
            const struct token *token = &note->tokens.at[k];
            if (token->from < flaw->span.from || token->to > flaw->span.to ||
                !ANY(&note->tokens, k, "button", "buttons", "snap", "snaps", "toggle", "toggles") ||
                note->tokens.at[k - 1].stop != STOP_NONE || note->taken[k - 1] == TAKEN_TYPE)
                continue;
            if (place_noun(note, k - 1)) flaw->part = note_words(note, k - 1, k + 1);
            break;
        }
    }
}

// "Yellow under the arms": a phrase of place is where it is, and no part.
static void move_places(struct record *record) {
    static const char *const leads[] = {"under ",  "inside ",     "beneath ",
                                        "behind ", "underneath ", "between "};
    for (size_t i = 0; i < record->flaw_count; i++) {
        struct item_flaw *flaw = &record->flaws[i];
        for (size_t k = 0; flaw->part && k < sizeof leads / sizeof *leads; k++)
            if (!strncmp(flaw->part, leads[k], strlen(leads[k]))) {
                if (!flaw->where || strstr(flaw->part, flaw->where)) flaw->where = flaw->part;
                flaw->part = NULL;
            }
    }
}

// "Somebody cut out the order form", "a coupon has been cut out": what is not there any more, where the words
// of the kind name no part.
static void name_cut_out(struct note *note) {
    static const char *const edges[] = {"margin", "margins", "border",   "borders", "edge",   "edges",
                                        "corner", "corners", "piece",    "bit",     "square", "section",
                                        "strip",  "someone", "somebody", "it",      "they",   "part",
                                        "top",    "bottom",  "side",     "sides",   "pieces", "bits"};
    enum { WORDS_MOST = 3 };
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i < note->record->flaw_count; i++) {
        struct item_flaw *flaw = &note->record->flaws[i];
        if (!is_kind(flaw, "trimmed") || flaw->part) continue;
        size_t cut = 0, from = 0, to = 0;
        for (size_t k = 0; k < tokens->count && !cut; k++)
            if (tokens->at[k].from >= flaw->span.from && tokens->at[k].to <= flaw->span.to &&
                ANY(tokens, k, "cut", "clipped", "snipped", "scissored", "torn"))
                cut = k;
        size_t behind = cut + 1 + (ANY(tokens, cut + 1, "out") ? 1 : 0);
        bool out = behind > cut + 1;
        if (cut && ANY(tokens, behind, "the", "a", "an", "one", "its", "some", "two")) {
            from = to = behind + 1;
            while (to < tokens->count && to < from + WORDS_MOST && tokens->at[to].stop == STOP_NONE &&
                   tokens->at[to].kind == TOKEN_WORD &&
                   !ANY(tokens, to, "of", "from", "out", "and", "but", "on", "in", "at", "off", "to", "with",
                        "for", "so"))
                to++;
            out |= token_is(tokens, to, "out");
        } else if (cut && out) {
            to = cut;
            while (to > 0 &&
                   ANY(tokens, to - 1, "has", "have", "been", "is", "was", "were", "got", "are", "had"))
                to--;
            from = to;
            while (from > 0 && to - from < WORDS_MOST && tokens->at[from - 1].stop == STOP_NONE &&
                   tokens->at[from - 1].kind == TOKEN_WORD &&
                   !ANY(tokens, from - 1, "the", "a", "an", "one", "its", "some", "two", "with", "and", "had",
                        "has", "of"))
                from--;
        }
        if (!out || to <= from || ANY(tokens, to - 1, "cut", "out")) continue;
        bool edge = token_among(tokens, to - 1, edges, sizeof edges / sizeof *edges);
        for (size_t k = from; k < to; k++) edge |= note->taken[k] == TAKEN_TYPE;
        if (edge) continue;
        flaw->part = note_words(note, from, to);
        int count = from > 0 ? degrees_number(tokens, from - 1) : 0;
        if (!flaw->count && count > 1) flaw->count = count;
    }
}

// "Only six here, Thursday is missing": which one of a set whose pieces have the names of days or months.
static void name_day(struct note *note) {
    static const char *const days[] = {"monday", "tuesday",   "wednesday", "thursday", "friday",  "saturday",
                                       "sunday", "january",   "february",  "april",    "june",    "july",
                                       "august", "september", "october",   "november", "december"};
    for (size_t i = 0; i < note->record->flaw_count; i++) {
        struct item_flaw *flaw = &note->record->flaws[i];
        if (!is_kind(flaw, "missing-pieces") || flaw->part) continue;
        for (size_t k = 0; k < note->tokens.count && !flaw->part; k++)
            if (note->tokens.at[k].from >= flaw->span.from && note->tokens.at[k].to <= flaw->span.to &&
                token_among(&note->tokens, k, days, sizeof days / sizeof *days))
                flaw->part = arena_format(note->arena, "%s one", note_words(note, k, k + 1));
    }
}

void outcome_name(struct note *note) {
    name_day(note);
    name_cut_out(note);
    move_places(note->record);
    name_buttons(note);
}
