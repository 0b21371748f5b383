// SPDX-License-Identifier: MIT
// What is not there is not broken besides: "comes without the lid, which broke years ago", "no lid, it got
// broken in the move", "base only, the top broke".
#include <string.h>

#include "notes/any.h"
#include "notes/beside.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static size_t token_from(const struct note *note, size_t byte) {
    size_t i = 0;
    while (i < note->tokens.count && note->tokens.at[i].from < byte) i++;
    return i;
}

// Words for the lost part itself before the break, and a verb of what befell it.
static bool is_of_lost(const struct note *note, const struct item_flaw *lost, const struct item_flaw *broke) {
    static const char *const befell[] = {"broke",  "broken",  "smashed", "shattered",
                                         "busted", "cracked", "split"};
    static const char *const passed[] = {"got", "was", "were", "has", "had", "have", "been"};
    static const char *const tops[] = {"lid", "top", "cover", "one"};
    const struct tokens *tokens = &note->tokens;
    size_t at = token_from(note, broke->span.from), end = token_from(note, broke->span.to);
    size_t verb = at;
    while (verb < end && !token_among(tokens, verb, befell, COUNT(befell))) verb++;
    if (verb == 0 || verb >= end) return false;
    size_t i = verb;
    while (i > 0 && tokens->at[i - 1].stop == STOP_NONE && token_among(tokens, i - 1, passed, COUNT(passed)))
        i--;
    bool past = i < verb || ANY(tokens, verb, "broke", "smashed", "shattered", "busted");
    if (i == 0 || tokens->at[i - 1].stop != STOP_NONE) return false;
    if (ANY(tokens, i - 1, "which", "that")) return true;
    if (ANY(tokens, i - 1, "it", "they")) return past;
    bool lid = text_same(lost->kind->rule.id, "missing-lid");
    return past && ((lid && token_among(tokens, i - 1, tops, COUNT(tops))) ||
                    (lost->part && broke->part && text_same(lost->part, broke->part)));
}

void settle_gone_anyway(struct note *note) {
    struct record *record = note->record;
    size_t kept = 0;
    for (size_t i = 0; i < record->flaw_count; i++) {
        const struct item_flaw *flaw = &record->flaws[i];
        bool gone = false;
        for (size_t k = 0; k < i && text_same(flaw->kind->rule.id, "broken-part") && !gone; k++) {
            const struct item_flaw *lost = &record->flaws[k];
            if (lost->kind->form != ABSENCE || lost->span.to > flaw->span.from) continue;
            size_t at = token_from(note, lost->span.to), to = token_from(note, flaw->span.from);
            bool same = true;
            for (; at < to && same; at++) same = note->tokens.at[at].stop < STOP_SENTENCE;
            gone = same && is_of_lost(note, lost, flaw);
        }
        if (!gone) record->flaws[kept++] = *flaw;
    }
    record->flaw_count = kept;
}
