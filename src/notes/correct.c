// SPDX-License-Identifier: MIT
// Speech repairs itself in few ways: "no wait", "sorry", "I mean", "make that", "more like". The later figure
// holds.
#include "notes/correct.h"

#include <string.h>

#include "notes/any.h"
#include "notes/things.h"
#include "text/order.h"

static const char *const words[] = {"no i tell a lie",
                                    "no hang on",
                                    "no hold on",
                                    "no wait sorry",
                                    "no wait",
                                    "wait no",
                                    "no sorry",
                                    "sorry no",
                                    "oh no",
                                    "no make that",
                                    "make that",
                                    "scratch that",
                                    "strike that",
                                    "i mean",
                                    "i meant",
                                    "or rather",
                                    "rather",
                                    "correction",
                                    "sorry",
                                    "no",
                                    "wait",
                                    "actually",
                                    "more like",
                                    "oops",
                                    "hang on",
                                    "its more like",
                                    "it's more like",
                                    "call it",
                                    "well"};

size_t correction_at(const struct note *note, size_t i) {
    if (i >= note->tokens.count) return 0;
    return token_first(&note->tokens, i, words, sizeof words / sizeof *words);
}

static bool is_lead(const struct note *note, size_t i) {
    return token_is(&note->tokens, i, "it's") || token_is(&note->tokens, i, "its") ||
           token_is(&note->tokens, i, "it") || token_is(&note->tokens, i, "is") ||
           token_is(&note->tokens, i, ",") || token_is(&note->tokens, i, "-") ||
           token_is(&note->tokens, i, "\xE2\x80\xA6") || token_is(&note->tokens, i, ".") ||
           token_is(&note->tokens, i, "\xE2\x80\xA6");
}

bool correction_behind(const struct note *note, size_t i, size_t *figure) {
    enum { STEPS_MOST = 4 };
    size_t at = i;
    *figure = 0;
    // "10 inch plate more like 10 and a quarter"
    if (at + 1 < note->tokens.count && note->tokens.at[at].kind == TOKEN_WORD &&
        token_phrase(&note->tokens, at + 1, "more like"))
        at++;
    bool corrected = false;
    for (int step = 0; step < STEPS_MOST; step++) {
        size_t taken = correction_at(note, at);
        corrected |= taken > 0;
        if (!taken && is_lead(note, at)) taken = 1;
        if (!taken) break;
        at += taken;
    }
    at += corrected ? hedge_at(note, at, false) : 0;
    struct amount amount;
    if (!corrected || !amount_at(note, at, &amount)) return false;
    // "no 2 alike", "no one": the second figure must be able to stand for the first.
    struct dimension dimension;
    size_t end = at + amount.taken;
    bool alone = end >= note->tokens.count || note->tokens.at[end].stop != STOP_NONE;
    if (!amount.unit && !dimension_behind(note, end, &dimension) && !alone) return false;
    *figure = at;
    return true;
}

void carry_keep(const struct note *note, struct carry *carry, const struct amount *amount,
                const struct dimension *dimension, size_t to) {
    if (amount->unit && amount->unit->kind && text_same(amount->unit->kind, "mm")) {
        carry->unit = amount->unit;
        carry->last = amount->value;
        carry->until = note_clause_to(note, to, STOP_SENTENCE) + 1;
    }
    carry->dimension = dimension->name;
    carry->corrected = 0;
}

void carry_into(const struct carry *carry, size_t i, struct amount *amount, struct dimension *dimension) {
    if (carry->corrected != i || !i || !carry->unit) return;
    if (!amount->unit) amount->unit = carry->unit;
    if (!dimension->name) dimension->name = carry->dimension;
}

bool thing_is_taken_back(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t at = i, n;
    while (at < tokens->count && tokens->at[at].kind == TOKEN_SIGN) at++;
    if ((n = correction_at(note, at)) == 0 || (at == i && n < 2))
        return false; // "pram no wait it's a carrier"
    bool plain = n == 1 && ANY(tokens, at, "no", "well", "wait", "rather", "actually"); // may mean much else
    at += n;
    if (plain && !(at < tokens->count && tokens->at[at].kind == TOKEN_SIGN)) return false;
    while (at < tokens->count &&
           (tokens->at[at].kind == TOKEN_SIGN || ANY(tokens, at, "a", "an", "it's", "the")))
        at++;
    struct noun_found later;
    return noun_at(note, at, &later) && (later.thing || (!later.part && !later.gated));
}

// "No frame", "hooks not included": what is not there is not the thing, whatever else goes unnamed.
bool thing_is_lacked(const struct note *note, size_t from, size_t to) {
    const struct tokens *tokens = &note->tokens;
    bool no = from > 0 && note->taken[from - 1] != TAKEN_COUNT &&
              ANY(tokens, from - 1, "no", "without", "minus", "w/o");
    size_t at = to + ANY(tokens, to, "is", "are");
    bool behind = token_is(tokens, at, "not") || ANY(tokens, at, "isn't", "aren't");
    return no || (behind && ANY(tokens, at + 1, "included", "supplied", "provided", "with", "for", "part"));
}
