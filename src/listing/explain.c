// SPDX-License-Identifier: MIT
// Why each word is in the title and each sentence in the disclosure, and why the others are not.
#include <string.h>

#include "listing/listing.h"

static void note_text(struct arena *arena, struct buf *out, const struct listing *l, struct note_span span) {
    if (!span.to || !l->record->notes) return;
    buf_format(out, ", from the notes: \"%s\"", listing_note(arena, l, span));
}

static void head(struct buf *out, const char *text, bool color) {
    buf_format(out, "\n%s%s%s\n", color ? "\x1b[1m" : "", text, color ? "\x1b[0m" : "");
}

// Evidence is a mark, or years of the record.
static const char *claim_shown(struct arena *arena, const struct claim_found *found) {
    return arena_format(arena, found->by_years ? "its years (%s)" : "the mark \"%s\"", found->evidence);
}

void listing_explain(struct arena *arena, const struct listing *l, struct buf *out, bool color) {
    buf_format(out, "%s%s%s\n  %s\n", color ? "\x1b[1;4m" : "", l->record->id, color ? "\x1b[0m" : "",
               *l->title ? l->title : "(no title)");
    head(out, "In the title", color);
    for (size_t i = 0; i < l->word_count; i++) {
        const struct title_word *w = &l->words[i];
        buf_format(out, "  %s: %s slot, from %s, worth %lld", w->text, slot_name(w->slot), w->because,
                   (long long)w->worth);
        note_text(arena, out, l, w->span);
        buf_byte(out, '\n');
        for (size_t k = 0; k < w->answers.count; k++)
            buf_format(out, "      answers the search %s\n", w->answers.at[k]);
    }
    if (l->left_count) head(out, "Left out", color);
    for (size_t i = 0; i < l->left_count; i++)
        buf_format(out, "  %s: %s\n", l->left_out[i].text, l->left_out[i].why);
    if (l->disclosure.count) head(out, "In the disclosure", color);
    for (size_t i = 0; i < l->disclosure.count; i++) {
        buf_format(out, "  %s  (%s", l->disclosure.sentences[i].text, l->disclosure.sentences[i].because);
        note_text(arena, out, l, l->disclosure.sentences[i].span);
        buf_text(out, ")\n");
    }
    if (l->claims->count) head(out, "Claim words", color);
    for (size_t i = 0; i < l->claims->count; i++) {
        const struct claim_found *found = &l->claims->items[i];
        buf_format(out, "  %s: %s", found->word, verdict_name(found->verdict));
        if (found->evidence) buf_format(out, ", shown by %s", claim_shown(arena, found));
        if (found->written) {
            buf_format(out, "; written as: %s", found->written);
            if (found->shown_by) buf_format(out, ", for the mark \"%s\"", found->shown_by);
        } else if (found->claim->instead && !found->evidence)
            buf_format(out, "; write instead: %s", found->claim->instead);
        if (found->claim->rule.source) buf_format(out, " (%s)", found->claim->rule.source);
        buf_byte(out, '\n');
    }
    if (l->withheld_count) head(out, "Kept back", color);
    for (size_t i = 0; i < l->withheld_count; i++)
        buf_format(out, "  %s: %s\n", l->withheld[i].what, l->withheld[i].why);
    buf_byte(out, '\n');
}
