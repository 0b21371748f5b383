// SPDX-License-Identifier: MIT
// "Chip inside the rim, doesn't show with the lid on", "wouldn't be seen in a base": said of a fault that has
// been told, and no fault by itself. Only what stands behind a fault and begins its clause is such a remark.
#include <string.h>

#include "notes/any.h"
#include "notes/rest.h"
#include "text/order.h"

enum { LEAD_MOST = 2, BETWEEN_MOST = 3, WORDS_MOST = 9, BACK_MOST = 14 };

static bool is_no(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "doesn't", "doesnt", "don't", "dont", "won't", "wont", "wouldn't", "wouldnt",
               "can't", "cant", "cannot", "couldn't", "hardly", "barely", "not");
}

static bool begins(const struct tokens *tokens, size_t i) {
    for (size_t n = 0; n <= LEAD_MOST; n++, i--) {
        if (i == 0 || tokens->at[i - 1].stop != STOP_NONE || token_is(tokens, i - 1, "(")) return true;
        if (ANY(tokens, i - 1, "where", "so", "though"))
            return true; // "inside the lid where it doesn't show"
        if (!ANY(tokens, i - 1, "which", "that", "but", "and", "it", "you", "they")) return false;
    }
    return false;
}

static bool follows_fault(const struct note *note, size_t i) {
    for (size_t n = 0; n < BACK_MOST && i > 0; n++, i--)
        if (note->taken[i - 1] == TAKEN_FLAW) return true;
    return false;
}

// "Plays through, doesn't jump", "no skips": of a disc, that it plays; nothing is said of its surface.
static size_t plays_at(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    const struct family *family = note->record->family;
    bool no = ANY(tokens, i, "doesn't", "doesnt", "don't", "dont", "never", "no", "didn't", "without");
    if (!no || !family || !text_same(family->rule.id, "media")) return 0;
    if (!ANY(tokens, i + 1, "jump", "jumps", "skip", "skips", "stick", "sticks", "jumping", "skipping",
             "sticking"))
        return 0;
    return i + 2 >= tokens->count || tokens->at[i + 2].stop != STOP_NONE ? 2 : 0;
}

// "Somebody told me it was Victorian but I wouldn't know": who knows nothing of a story or a date has said
// nothing of the thing.
static size_t knows_nothing_at(const struct note *note, size_t i) {
    static const char *const phrases[] = {"can't say",
                                          "can't say myself",
                                          "cannot say",
                                          "couldn't say",
                                          "couldn't tell you",
                                          "can't be sure",
                                          "don't ask me",
                                          "don't know",
                                          "have no idea",
                                          "no idea",
                                          "no way of knowing",
                                          "no way to know",
                                          "no way to tell",
                                          "not sure",
                                          "not sure about that",
                                          "not sure if that is right",
                                          "not sure if that's right",
                                          "not sure if that's true",
                                          "not sure that's right",
                                          "who knows",
                                          "wouldn't know",
                                          "would not know",
                                          "beats me"};
    const struct tokens *tokens = &note->tokens;
    size_t n = token_longest(tokens, i, phrases, sizeof phrases / sizeof *phrases), at = i;
    if (!n || (i + n < tokens->count && tokens->at[i + n].stop == STOP_NONE)) return 0;
    for (size_t k = i; k < i + n; k++)
        if (note->taken[k] != TAKEN_NOT && note->taken[k] != TAKEN_FILLER) return 0;
    while (at > 0 &&
           (tokens->at[at - 1].stop != STOP_NONE ||
            ANY(tokens, at - 1, "i", "i've", "but", "and", "so", "though", "really", "honestly", "just")))
        at--;
    return at > 0 && at < i && (note->taken[at - 1] == TAKEN_ASIDE || note->taken[at - 1] == TAKEN_DATE) ? n
                                                                                                         : 0;
}

size_t remark_at(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (!strchr("dnwchb", tokens->at[i].fold[0])) return 0; // most words begin no such remark
    size_t nothing = knows_nothing_at(note, i);
    if (nothing) return nothing;
    size_t plays = plays_at(note, i);
    if (plays) return plays;
    if (!is_no(tokens, i) || !begins(tokens, i) || !follows_fault(note, i)) return 0;
    size_t at = i + 1;
    while (at < i + BETWEEN_MOST &&
           ANY(tokens, at, "really", "even", "be", "actually", "easily", "you", "very"))
        at++;
    bool through = ANY(tokens, at, "go", "gone", "went", "run") && // "a crack, doesn't go right through"
                   (token_is(tokens, at + 1, "through") || token_is(tokens, at + 2, "through"));
    if (through) return at - i + (token_is(tokens, at + 1, "through") ? 2 : 3);
    if (!ANY(tokens, at, "show", "seen", "see", "notice", "noticed", "noticeable", "visible", "spot"))
        return 0;
    size_t next = at + 1;
    bool ends = next >= tokens->count || tokens->at[next].stop != STOP_NONE;
    if (!ends &&
        !ANY(tokens, next, "it", "them", "with", "w", "w/", "in", "on", "when", "once", "at", "unless",
             "from", "much", "if", "under", "behind", "where", "as", "up", "outside", "inside", "through"))
        return 0;
    size_t to = at + 1;
    while (to < tokens->count && to < i + WORDS_MOST &&
           (to == at + 1 || tokens->at[to - 1].stop == STOP_NONE) && tokens->at[to].stop == STOP_NONE)
        to++;
    for (size_t k = i; k < to; k++)
        if (note->taken[k] == TAKEN_FLAW || note->taken[k] == TAKEN_MARK) return 0;
    return to - i;
}
