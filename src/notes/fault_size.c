// SPDX-License-Identifier: MIT
// The size of a fault: a figure beside it that no other words have taken.
#include "notes/fault_size.h"

#include "notes/any.h"

#include <string.h>

#include "notes/figure.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

bool fault_opens_sentence(const struct note *note, size_t i) {
    static const char *const words[] = {
        "a",    "an",    "the",   "one",    "there",  "is",  "there's", "has",   "it",     "with",  "some",
        "also", "small", "tiny",  "slight", "large",  "big", "deep",    "long",  "light",  "minor", "only",
        "just", "got",   "faint", "short",  "little", "bad", "open",    "clean", "closed", "old"};
    const struct tokens *tokens = &note->tokens;
    while (i > 0 && tokens->at[i - 1].stop == STOP_NONE && token_among(tokens, i - 1, words, COUNT(words)))
        i--;
    return i == 0 || tokens->at[i].starts || ANY(tokens, i, "there", "there's") ||
           tokens->at[i - 1].stop >= STOP_SENTENCE;
}

// Of a chip little can be told in inches; a crack runs as far as it will.
static bool is_likely(const struct flaw *kind, double mm) {
    static const char *const small[] = {"chip", "fleabite", "dent-bend", "enamel-chip", "hole", "moth-holes"};
    enum { SMALL_MM = 60, LONG_MM = 200 };
    for (size_t k = 0; k < COUNT(small); k++)
        if (text_same(kind->rule.id, small[k])) return mm <= SMALL_MM;
    return mm <= LONG_MM;
}

static const char *const leads[] = {"measuring", "measures", "which",   "is",      "runs",  "running", "goes",
                                    "it's",      "of",       "some",    "being",   "going", "only",    "just",
                                    "both",      "under",    "i'd",     "say",     "maybe", "perhaps", "id",
                                    "a",         "strip",    "stretch", "section", "patch", "gap"};

bool fault_is_denied(const struct note *note, size_t i) {
    enum { REACH = 6 };
    for (size_t n = 0; n < REACH && i > 0 && note->tokens.at[i - 1].stop < STOP_COMMA; n++) {
        i--;
        if (ANY(&note->tokens, i, "but", "though", "except")) return false; // "no chips but a crack"
        if (ANY(&note->tokens, i, "no", "not", "never", "free", "zero", "w/o", "isn't", "isnt", "aren't",
                "arent", "hasn't", "hasnt", "doesn't", "doesnt", "any", "none", "aint", "ain't", "wasn't",
                "won't", "can't", "cant", "didn't", "couldn't", "without", "haven't", "havent", "don't",
                "dont"))
            return true;
    }
    return false;
}

// Verbs of damage that are no flaw's words by themselves; they own a figure that names no dimension.
bool fault_comes_off(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "lifted", "lifting", "lifts", "torn", "tore", "split", "opened", "apart",
               "ripped", "peeled", "peeling", "frayed", "worn", "cut", "burst", "unstitched", "parted",
               "separated", "sprung");
}

// "A hairline, barely 10 mm": words for more or less alone stand between.
bool fault_size_only(const struct note *note, size_t from, size_t to) {
    for (size_t k = from; k < to; k++)
        if (!ANY(&note->tokens, k, "barely", "about", "only", "just", "maybe", "around", "roughly", "say",
                 "under", "over", "nearly", "perhaps", "some", "a", "good", "approx", "approximately", "at",
                 "least", "largest", "biggest", "longest", "widest", "deepest", "worst", "one", "being", "is",
                 "the", "of", "which", "them", "each", "up", "to", "probably", "it's", "they're", "tight",
                 "faint", "fine", "closed", "clean", "dry", "tiny", "small", "deep", "shallow", "thin",
                 "straight", "old", "i'd", "id", ",", "(", "-", "measuring", "runs", "running", "goes",
                 "going", "run"))
            return false;
    return true;
}

enum opening { PLAIN, BRACKET, DASH, COMMA };

// "(six inches)", "- 2 in", "of about 3 cm", "measuring 10 mm", ", two inches,": a size and nothing else,
// from `i` on. Returns the token behind it, 0 where none stands.
static size_t size_alone(const struct fault_reader *r, size_t i, enum opening *opening, struct figure *figure,
                         size_t *from, size_t *to) {
    static const char *const ways[] = {"long",  "across", "wide", "deep",   "max",
                                       "round", "or",     "so",   "overall"};
    static const char *const others[] = {"from", "off", "below", "above", "away",  "tall", "high",
                                         "in",   "x",   "by",    "back",  "apart", "up",   "down"};
    const struct tokens *tokens = &r->note->tokens;
    *opening = token_is(tokens, i, "(")                                ? BRACKET
               : token_is(tokens, i, "-")                              ? DASH
               : i < tokens->count && tokens->at[i].stop == STOP_COMMA ? COMMA
                                                                       : PLAIN;
    size_t at = i + (*opening != PLAIN), taken;
    if (i > 0 && *opening == PLAIN && tokens->at[i - 1].stop != STOP_NONE) return 0;
    if (ANY(tokens, i, "past", "beyond", "after")) return 0; // "worn past 20 inches": where
    while (token_among(tokens, at, leads, COUNT(leads))) at++;
    if (at >= tokens->count || !note_free(r->note, at, at + 1) || !figure_at(r->note, at, figure, &taken))
        return 0;
    if (!figure->unit || !figure->unit->kind || !text_same(figure->unit->kind, "mm")) return 0;
    *from = at;
    *to = at += taken;
    bool of = token_is(tokens, at, "in") &&
              (token_is(tokens, at + 1, "length") || token_is(tokens, at + 1, "diameter"));
    if (of) at += 2;
    if (!of && token_among(tokens, at, others, COUNT(others))) return 0;
    while (token_among(tokens, at, ways, COUNT(ways)) && tokens->at[at].stop == STOP_NONE) at++;
    if (*opening == BRACKET) return token_is(tokens, at, ")") ? at + 1 : 0;
    if (at < tokens->count && r->scope.fault[at] && !r->part[at] && tokens->at[at].stop == STOP_NONE)
        return 0; // "foxing at the edges, 3 inch tear": of the fault that follows
    bool ends = at >= tokens->count || tokens->at[at].stop != STOP_NONE;
    if (*opening == DASH) return ends ? at : 0;
    if (*opening == COMMA && !ends) return 0;
    return *opening == COMMA && at < tokens->count && tokens->at[at].stop == STOP_COMMA ? at + 1 : at;
}

size_t fault_size_behind(const struct fault_reader *r, size_t i) {
    enum opening opening;
    struct figure figure;
    size_t from, to;
    return size_alone(r, i, &opening, &figure, &from, &to);
}

// The size that stands behind the fault or behind its place, where it cannot be the thing's own.
static bool measure_alone(struct fault_reader *r, const struct fault_hit *hit, struct figure *figure,
                          size_t *from, size_t *to) {
    enum { LONGEST_MM = 700 };
    size_t place, behind = spot_place_of(r, hit, &place);
    enum opening opening;
    bool found = size_alone(r, hit->to, &opening, figure, from, to) > 0;
    if (!found && behind >= hit->to) found = size_alone(r, behind, &opening, figure, from, to) > 0;
    if (!found || figure->base > LONGEST_MM) return false;
    bool named =
        is_likely(hit->kinds[0], 100) && ANY(&r->note->tokens, *to, "long", "across", "wide"); // "2 ft long"
    bool only = opening == COMMA && (named || is_likely(hit->kinds[0], figure->base)) &&
                fault_opens_sentence(r->note, hit->from);
    return only || opening == BRACKET || opening == DASH || (opening == PLAIN && *from > hit->to);
}

static void take_size(struct fault_reader *r, const struct fault_hit *hit, struct item_flaw *flaw,
                      enum severity told, const struct figure *figure, size_t from, size_t to) {
    flaw->has_size = true;
    flaw->size = *figure;
    if (!told && !flaw->severity && figure->about) flaw->severity = degree_of_ruler(r, flaw->kind, from, to);
    bool by_place = text_same(flaw->kind->rule.id, "hairline") ||
                    text_same(flaw->kind->rule.id, "chip"); // 2 mm, on the rim
    enum severity run = !told && by_place ? degree_on_scale(r, hit, flaw->kind) : SEVERITY_UNKNOWN;
    if (run > degree_of_size(flaw->kind, figure->base) && run > flaw->severity)
        flaw->severity = run; // short, but from the rim
    note_take(r->note, from, to, TAKEN_FLAW);
    for (size_t k = hit->to; k < from; k++)
        if (r->note->taken[k] == TAKEN_NOT && token_among(&r->note->tokens, k, leads, COUNT(leads)))
            note_take(r->note, k, k + 1, TAKEN_SCOPE);
}

// Does token `k`, between a fault and a figure behind it, part the two?
static bool parts_from(const struct fault_reader *r, const struct fault_hit *hit, size_t k) {
    static const char *const runs[] = {"runs", "goes", "running",
                                       "going"}; // "a hairline, runs about 2 inches"
    const struct tokens *tokens = &r->note->tokens;
    return tokens->at[k].stop >= STOP_CLAUSE ||
           (r->scope.fault[k] && !r->part[k] && !token_among(tokens, k, runs, COUNT(runs))) ||
           (k > hit->to && fault_told_again(r, k));
}

void fault_measure(struct fault_reader *r, const struct fault_hit *hit, struct item_flaw *flaw,
                   enum severity told) {
    struct figure figure;
    size_t taken;
    enum { NEAR = 5, BEHIND = 14 };
    const struct tokens *tokens = &r->note->tokens;
    size_t from, to, looked = hit->to;
    if (measure_alone(r, hit, &figure, &from, &to)) {
        take_size(r, hit, flaw, told, &figure, from, to);
        return;
    }
    for (size_t i = hit->from > NEAR ? hit->from - NEAR : 0; i < hit->to + BEHIND && i < tokens->count; i++) {
        bool own_words = i == hit->from && tokens->at[i].stop == STOP_NONE; // "six inch rip"
        bool inside = i > hit->from && i + 1 < hit->to &&                   // "jacket has a half inch chip"
                      ANY(tokens, i - 1, "a", "an", "has", "have", "with", "about", "another", "got") &&
                      figure_at(r->note, i, &figure, &taken) && i + taken + 1 == hit->to;
        own_words |= inside;
        if (i >= hit->from && i < hit->to && !own_words) continue;
        if (i > 0 && ANY(tokens, i - 1, "past", "beyond", "after")) continue; // "worn past 20 inches"
        if (i > 1 && ANY(tokens, i - 1, "x", "by") && tokens->at[i - 2].kind == TOKEN_FIGURE)
            continue; // "60 x 80 in moth hole": a side of the thing
        // `Vase 10" chipped rim`: a size before what was done to it is the thing's.
        const char *word = tokens->at[hit->from].fold;
        size_t letters = strlen(word);
        if (i < hit->from && letters > 3 && text_same(word + letters - 2, "ed")) continue;
        static const char *const done[] = {"worn", "torn", "bent", "broken", "split", "rotten"};
        if (i < hit->from && token_among(tokens, hit->from, done, COUNT(done)) &&
            ANY(tokens, hit->from - 1, "dia", "diameter", "wide", "tall", "long", "across", "high", "deep",
                "thick", "square", "round"))
            continue; // "stone 12 in dia worn uneven"
        bool own = i < hit->from && i > 0 && tokens->at[i - 1].stop == STOP_COMMA;
        // "Hairline on the arm, 7 1/4 in": so much, said by itself, is the thing's own size.
        bool alone = i > hit->to && tokens->at[i - 1].stop == STOP_COMMA;
        bool apart = false;
        for (size_t k = i; k < hit->from; k++)
            apart |= tokens->at[k].stop >= STOP_CLAUSE || (k != i && r->scope.fault[k] && !r->part[k]);
        for (; looked < i && !apart; looked++) apart = parts_from(r, hit, looked);
        if (apart && i >= hit->to) return;
        if (apart || (!own_words && !note_free(r->note, i, i + 1)) || !figure_at(r->note, i, &figure, &taken))
            continue;
        if (!figure.unit || !figure.unit->kind || !text_same(figure.unit->kind, "mm")) continue;
        if (ANY(tokens, i + 1, "foot", "feet") && token_is(tokens, i + 2, "of")) continue; // of the stand
        bool parted = i < hit->from && r->part[hit->from]; // "14 inch wide strap torn": of the strap
        for (size_t k = i + taken; k < hit->from; k++) parted |= r->part[k];
        size_t sided =
            ANY(tokens, i + taken, "wide", "long", "tall", "high", "deep", "thick", "across") ? 1 : 0;
        for (size_t k = i; k < i + taken; k++)
            sided |= ANY(tokens, k, "wide", "long", "tall", "high", "deep");
        if (parted && sided) continue;
        static const char *const aways[] = {"from", "off", "below", "above", "away", "in"};
        if (i + taken < hit->to + BEHIND &&
            token_among(tokens, i + taken, aways, sizeof aways / sizeof *aways) &&
            (!token_is(tokens, i + taken, "in") || token_is(tokens, i + taken + 1, "from")) &&
            !token_is(tokens, i + taken + 1, "diameter") && !token_is(tokens, i + taken + 1, "length"))
            continue;            // "an inch from the rim" is where
        size_t next = i + taken; // "foxing at the edges, 3 inch tear": of the fault that follows
        if (i >= hit->to && next < tokens->count && r->scope.fault[next] && !r->part[next]) continue;
        enum { WHOLE_MM = 120 };
        if (own && (next < hit->from || (next == hit->from && r->part[next])) && figure.base > WHOLE_MM &&
            !r->note->record->measurement_count)
            return; // "beads, 24 in. clasp does not hold"
        alone = alone && (i + taken >= tokens->count || tokens->at[i + taken].stop != STOP_NONE);
        if (alone && figure.base > WHOLE_MM && !r->note->record->measurement_count) return;
        enum { PALM_MM = 25 }; // "brooch, small chip to the edge, 2 in": the brooch's, at the end of the note
        if (alone && next + 1 >= tokens->count && figure.base > PALM_MM &&
            !r->note->record->measurement_count)
            return;
        take_size(r, hit, flaw, told, &figure, i, i + taken);
        return;
    }
}

// Veneer that lifts along an edge is all there, and glued down again: its length weighs less than a loss.
double fault_extent(const struct fault_reader *r, const struct fault_hit *hit, const struct item_flaw *flaw) {
    static const char *const lifts[] = {"lifting", "lifted", "lifts", "lift", "rising", "risen"};
    static const char *const rims[] = {"edge", "corner", "front", "bottom", "side", "end", "edges"};
    enum { LESS = 6 };
    const struct tokens *tokens = &r->note->tokens;
    bool lift = false, rim = false;
    if (strcmp(flaw->kind->rule.id, "veneer-damage") != 0) return flaw->size.base;
    for (size_t i = hit->from; i < hit->to; i++)
        lift |= token_among(tokens, i, lifts, sizeof lifts / sizeof *lifts);
    for (size_t i = hit->to; i < tokens->count && tokens->at[i].stop < STOP_CLAUSE; i++)
        rim |= token_among(tokens, i, rims, sizeof rims / sizeof *rims);
    return lift && rim ? flaw->size.base / LESS : flaw->size.base;
}
