// SPDX-License-Identifier: MIT
// How far a trial went: "I wound it and it ticks a few minutes and stops" is no clock that works, and "bulb
// lights, fan blows, no film to run through it" is no projector that was tried.
#include "notes/any.h"
#include "notes/beside.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_kind(const struct item_flaw *flaw, const char *id) {
    return text_same(flaw->kind->rule.id, id);
}

// The verb by which it comes to an end: it ends the clause, for what "stops when it is done" is meant to.
static bool is_end(const struct tokens *tokens, size_t i, size_t *to) {
    static const char *const ends[] = {
        "stops",      "stopped",   "quits",    "quit",        "dies",       "died",
        "stalls",     "stalled",   "conks",    "conked",      "peters out", "dies out",
        "cuts out",   "cut out",   "died out", "quits on me", "conks out",  "conked out",
        "quit on me", "gives out", "gave out", "gives up",    "gave up",    "slows down and stops"};
    static const char *const behind[] = {"again", "dead", "after", "within", "there", "every", "each"};
    size_t n = token_longest(tokens, i, ends, COUNT(ends));
    *to = i + n;
    return n && (i + n >= tokens->count || tokens->at[i + n].stop != STOP_NONE ||
                 token_among(tokens, i + n, behind, COUNT(behind)));
}

// Where it came to an end behind token `i`, in the same sentence; 0 if it did not.
static size_t ended_behind(const struct tokens *tokens, size_t i) {
    enum { FAR = 12 };
    static const char *const joints[] = {"and", "then", "but", "it"};
    for (size_t at = i, to; at < tokens->count && at < i + FAR && tokens->at[at].stop < STOP_SENTENCE; at++) {
        if (ANY(tokens, at, "never", "not", "when", "until", "nothing", "i", "we", "whole", "all", "through",
                "end", "before"))
            return 0;
        if (at > 0 && token_among(tokens, at - 1, joints, COUNT(joints)) && is_end(tokens, at, &to))
            return to;
    }
    return 0;
}

// "Plays one side then quits": its end was read as a fault of its own.
static void drop_told_again(struct record *record, size_t i) {
    struct item_flaw told = record->flaws[i];
    size_t kept = 0;
    for (size_t k = 0; k < record->flaw_count; k++) {
        const struct item_flaw *flaw = &record->flaws[k];
        bool again = k != i && flaw->kind == told.kind && flaw->span.from >= told.span.from &&
                     flaw->span.to <= told.span.to;
        if (!again) record->flaws[kept++] = *flaw;
    }
    record->flaw_count = kept;
}

// Of the whole, within the span.
static bool is_told(const struct record *record, const struct flaw *kind, struct note_span span) {
    for (size_t k = 0; k < record->flaw_count; k++) {
        const struct item_flaw *flaw = &record->flaws[k];
        if (flaw->kind == kind && !flaw->part && flaw->span.from >= span.from && flaw->span.to <= span.to)
            return true;
    }
    return false;
}

// "Ticks a few minutes and stops."
void settle_short_lived(struct note *note) {
    const struct tokens *tokens = &note->tokens;
    const struct flaw *partly = ruleset_flaw(note->rules, "partly-working");
    for (size_t i = 0; partly && i < note->record->flaw_count; i++) {
        struct item_flaw *flaw = &note->record->flaws[i];
        if (!is_kind(flaw, "working-tested") || flaw->part) continue;
        size_t at = 0;
        while (at < tokens->count && tokens->at[at].from < flaw->span.to) at++;
        size_t to = at < tokens->count ? ended_behind(tokens, at) : 0;
        if (!to || is_told(note->record, partly, (struct note_span){flaw->span.from, tokens->at[to - 1].to}))
            continue;
        flaw->kind = partly;
        flaw->span.to = tokens->at[to - 1].to;
        drop_told_again(note->record, i);
        for (size_t k = at; k < to; k++)
            if (note_free(note, k, k + 1)) note_take(note, k, k + 1, TAKEN_FLAW);
    }
}

// All that was seen is what it does before it does its work.
static bool is_mere_start(const struct note *note, const struct item_flaw *flaw) {
    static const char *const signs[] = {"lights", "light", "lit",  "blows", "blow",  "spins", "spin",
                                        "turns",  "turn",  "hums", "glows", "warms", "whirs", "comes"};
    const struct tokens *tokens = &note->tokens;
    for (size_t k = 0; k < tokens->count && tokens->at[k].to <= flaw->span.to; k++)
        if (tokens->at[k].from >= flaw->span.from && token_among(tokens, k, signs, COUNT(signs))) return true;
    return false;
}

// "Bulb lights and fan blows, but I have no slides to run through it": one state, and no work of it.
void settle_unfed(struct note *note) {
    struct record *record = note->record;
    const struct flaw *powers = ruleset_flaw(note->rules, "powers-on-only");
    struct item_flaw *start = NULL;
    size_t untested = record->flaw_count;
    for (size_t i = 0; i < record->flaw_count; i++) {
        struct item_flaw *flaw = &record->flaws[i];
        if (is_kind(flaw, "working-tested") && !flaw->part && is_mere_start(note, flaw)) start = flaw;
        if (is_kind(flaw, "untested")) untested = i;
    }
    if (!powers || !start || untested == record->flaw_count ||
        start->span.from > record->flaws[untested].span.from)
        return;
    start->kind = powers;
    record->flaws[untested].part = NULL;
}
