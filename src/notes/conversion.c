// SPDX-License-Identifier: MIT
// The same figure again in another unit, "12 in (30.5 cm) long", "16 x 12 in (41 x 30 cm)", "2 lb / 900 g":
// goes, so that what stands behind it is beside the figure that it says again.
#include <string.h>

#include "notes/any.h"
#include "notes/measures.h"
#include "notes/note.h"

// How far people round; a sign less plain than a bracket has to be nearer. Pints and gallons differ by a
// fifth between countries.
static const double ROUNDED_MOST = 0.25, ROUNDED_MOST_OPEN = 0.12, ROUNDED_MOST_VOLUME = 0.35, SMALL_MM = 2;

// The amount that ends before token `i`; false: none does.
static bool amount_before(const struct note *note, size_t i, struct amount *amount) {
    enum { WORDS_MOST = 6 };
    bool found = false;
    for (size_t back = 1; back <= WORDS_MOST && back <= i && note->tokens.at[i - back].stop < STOP_COMMA;
         back++) {
        struct amount longer;
        if (!amount_at(note, i - back, &longer) || longer.taken != back || !longer.unit) continue;
        *amount = longer;
        found = true;
    }
    return found;
}

// The last of two or three figures, which is the one with the unit, and where they end; 0: there is none.
static size_t last_amount(const struct note *note, size_t at, struct amount *last) {
    enum { MOST = 3 };
    for (size_t n = 0; n < MOST; n++) {
        at += hedge_at(note, at, false);
        if (!amount_at(note, at, last)) return 0;
        at += last->taken;
        if (!ANY(&note->tokens, at, "x", "by", "*")) return at;
        at++;
    }
    return 0;
}

static double last_of(const struct amount *amount) {
    return (amount->to > 0 ? amount->to : amount->value) * amount->unit->factor;
}

// Where what begins at the sign `i` ends; 0: it says nothing again.
static size_t conversion_at(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    bool round = token_is(tokens, i, "("), square = token_is(tokens, i, "["), closed = round || square;
    struct amount ours = {0}, other;
    bool named =
        i && ANY(tokens, i - 1, "tall", "high", "long", "wide", "deep", "across"); // "9 in tall or 23 cm"
    if (!amount_before(note, named ? i - 1 : i, &ours) || !ours.unit->kind) return 0;
    size_t end = last_amount(note, i + 1, &other);
    if (!end || !other.unit || other.unit == ours.unit || !other.unit->kind ||
        strcmp(other.unit->kind, ours.unit->kind) != 0)
        return 0;
    if ((round && !token_is(tokens, end, ")")) || (square && !token_is(tokens, end, "]"))) return 0;
    double we = last_of(&ours), off = last_of(&other) - we, most = we * ROUNDED_MOST_OPEN;
    if (closed) most = we * (strcmp(ours.unit->kind, "ml") ? ROUNDED_MOST : ROUNDED_MOST_VOLUME);
    if (closed && !strcmp(ours.unit->kind, "mm") && most < SMALL_MM) most = SMALL_MM; // 5 mm, 1/4 in
    return off < most && off > -most ? end + closed : 0;
}

// A word joins only figures, most brackets hold none.
static bool may_join(const struct tokens *tokens, size_t i) {
    if (!i || i + 1 >= tokens->count) return false;
    if (tokens->at[i].kind == TOKEN_SIGN)
        return *tokens->at[i].fold && strchr("([/=", *tokens->at[i].fold) && !tokens->at[i].fold[1];
    return tokens->at[i + 1].kind == TOKEN_FIGURE && token_is(tokens, i, "or");
}

// In brackets, and what follows says nothing of the figure before: there the brackets part the two, and who
// measures takes both.
static bool ends_there(const struct tokens *tokens, size_t from, size_t end) {
    return ANY(tokens, from, "(", "[") && !ANY(tokens, end, "tall", "high", "long", "wide", "deep", "across",
                                               "x", "by", "on", "in", "inside", "near");
}

size_t conversion_behind(const struct note *note, size_t i) {
    size_t end = may_join(&note->tokens, i) ? conversion_at(note, i) : 0;
    return end ? end : i;
}

void note_drop_conversions(struct note *note) {
    struct tokens *tokens = &note->tokens;
    size_t *ends = NULL; // of what begins at a token
    for (size_t i = 0; i < tokens->count; i++) {
        size_t end = may_join(tokens, i) ? conversion_at(note, i) : 0;
        if (!end || ends_there(tokens, i, end)) continue;
        if (!ends) ends = arena_array(note->arena, tokens->count, sizeof *ends);
        ends[i] = end;
        i = end - 1;
    }
    if (!ends) return;
    size_t kept = 0;
    for (size_t i = 0; i < tokens->count;)
        if (ends[i])
            i = ends[i];
        else
            tokens->at[kept++] = tokens->at[i++];
    memset(tokens->at + kept, 0, (tokens->count - kept) * sizeof *tokens->at);
    tokens->count = kept;
    tokens->altered = true;
}
