// SPDX-License-Identifier: MIT
// What was filled and lost nothing: "holds water", "the tank didn't drip overnight", "wasn't leaking when I
// filled it". By the stuff of the thing it denies a crack or a seam that has opened; what has a tank has
// seams. That it did not leak in the past says so only of a trial.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool ends(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"and", "but", "no",   "though", "with",
                                        "so",  "the", "just", "not",    "only"};
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE ||
           token_among(tokens, i, words, COUNT(words));
}

// How many tokens from `i` say that nothing runs out: "holds water", "didn't drip", "wasn't leaking"; `*then`
// where that was when it was filled.
static size_t tight_at(const struct tokens *tokens, size_t i, bool *then) {
    static const char *const phrases[] = {
        "watertight",          "water tight",          "can't see a leak",   "can't find a leak",
        "couldn't see a leak", "couldn't find a leak", "didn't find a leak", "no sign of a leak",
        "not a drop came out", "not a drop lost",      "no leaks",           "no leak"};
    static const char *const nots[] = {"doesn't", "doesnt", "does not", "don't",  "didn't",
                                       "did not", "wasn't", "isn't",    "aren't", "weren't"};
    static const char *const runs[] = {"leak", "leaking", "drip", "dripping",
                                       "weep", "weeping", "seep", "lose a drop"};
    static const char *const holds[] = {"holds", "hold", "held"};
    static const char *const liquids[] = {"water",    "fuel",   "oil",     "paraffin",
                                          "kerosene", "liquid", "pressure"};
    size_t n = token_longest(tokens, i, phrases, COUNT(phrases)), more;
    if (n) return n;
    *then = ANY(tokens, i, "didn't", "did", "wasn't", "weren't", "held");
    n = token_longest(tokens, i, nots, COUNT(nots));
    if (n && (more = token_longest(tokens, i + n, runs, COUNT(runs))) != 0) return n + more;
    static const char *const wishes[] = {"to",  "would",  "will",  "won't",   "might",
                                         "may", "should", "could", "can",     "can't",
                                         "not", "it'll",  "must",  "doesn't", "don't"};
    if (i > 0 && token_among(tokens, i - 1, wishes, COUNT(wishes)))
        return 0; // "I wouldn't expect it to hold water"
    if (!token_among(tokens, i, holds, COUNT(holds)) || !token_among(tokens, i + 1, liquids, COUNT(liquids)))
        return 0;
    static const char *const manners[] = {"fine",      "well",      "no problem",
                                          "overnight", "all night", "for a day"};
    return 2 + token_longest(tokens, i + 2, manners, COUNT(manners));
}

// "Tank dented but doesn't leak": of what has a tank, its seams.
static bool has_tank(const struct note *note) {
    static const char *const tanks[] = {"tank", "font", "fount", "reservoir", "boiler", "burner"};
    for (size_t i = 0; i < note->tokens.count; i++)
        if (token_among(&note->tokens, i, tanks, COUNT(tanks))) return true;
    return false;
}

// "Holds water", "doesn't leak": by the material a crack, a seam or nothing that has a name.
bool read_watertight(struct fault_reader *r, size_t i) {
    static const char *const kinds[] = {"seam-split", "crack-through"};
    static const char *const tried[] = {"on the",    "on a",       "when i",    "when filled", "when full",
                                        "overnight", "all night",  "at all",    "anywhere",    "with water",
                                        "in the",    "when tried", "either",    "for two",     "for a day",
                                        "at the",    "from the",   "around the"};
    static const char *const hedged[] = {"as far", "that i", "so far", "far as"};
    const struct tokens *tokens = &r->note->tokens;
    bool then = false, filled = false;
    size_t n = tight_at(tokens, i, &then);
    if (!n) return false;
    for (size_t k = scope_sentence_start(&r->scope, i); k < scope_sentence_end(&r->scope, i) && then; k++)
        filled |= ANY(tokens, k, "filled", "full", "fill", "overnight", "tested", "tried", "night");
    bool seems = token_longest(tokens, i + n, hedged, COUNT(hedged)) > 0;
    uint16_t off = STANCE_UNKNOWN | STANCE_DOUBT | STANCE_HEARD | (filled ? 0 : STANCE_PAST);
    if ((!seems && !ends(tokens, i + n) && !token_longest(tokens, i + n, tried, COUNT(tried))) ||
        (r->scope.stance[i] & off) || (then && !filled))
        return false;
    for (size_t k = 0; k < n; k++)
        if (r->note->taken[i + k] == TAKEN_FLAW) return false;
    bool tank = has_tank(r->note);
    const struct flaw *crack = ruleset_flaw(r->note->rules, "crack-through");
    size_t first =
        crack && kind_is_of_material(r, crack, NULL) ? 1 : 0; // of stoneware, whatever else holds water
    for (size_t n_kind = 0; n_kind < COUNT(kinds); n_kind++) {
        size_t k = (n_kind + first) % COUNT(kinds);
        const struct flaw *kind = ruleset_flaw(r->note->rules, kinds[k]);
        bool can = r->note->record->family && kind && kind_can_be(r, kind, NULL);
        if (!can && !(k == 0 && tank && kind)) continue;
        for (size_t f = 0; f < r->note->record->flaw_count; f++)
            if (r->note->record->flaws[f].kind == kind) return true;
        clear_add(r, kind, NULL, NULL, seems, i, i + n);
        return true;
    }
    return false;
}

// "Bottom rusted but not through", "not rusted through anywhere": of what rusts there is no hole.
bool read_not_through(struct fault_reader *r, size_t i) {
    static const char *const eaten[] = {"rusted", "gone", "eaten", "worn", "been", "go", "goes"};
    static const char *const nots[] = {"not",   "nothing", "isn't",   "hasn't",
                                       "never", "haven't", "doesn't", "no"};
    static const char *const behind[] = {"anywhere", "yet", "at", "though", "that", "and"};
    const struct tokens *tokens = &r->note->tokens;
    if (!ANY(tokens, i, "through", "thru") || i == 0 ||
        (i + 1 < tokens->count && tokens->at[i].stop == STOP_NONE && tokens->at[i + 1].stop == STOP_NONE &&
         !token_among(tokens, i + 1, behind, COUNT(behind))))
        return false;
    size_t from = i;
    bool rust = false;
    while (from > 0 && token_among(tokens, from - 1, eaten, COUNT(eaten)))
        rust |= ANY(tokens, --from, "rusted");
    if (from == 0 || !token_among(tokens, from - 1, nots, COUNT(nots))) return false;
    for (size_t k = scope_sentence_start(&r->scope, i); k < from && !rust; k++)
        rust = !strncmp(tokens->at[k].fold, "rust", 4);
    const struct flaw *hole = rust ? ruleset_flaw(r->note->rules, "hole") : NULL;
    if (!hole) return false;
    for (size_t f = 0; f < r->note->record->flaw_count; f++)
        if (r->note->record->flaws[f].kind == hole) return false;
    for (size_t k = from - 1; k <= i; k++)
        if (r->note->taken[k] == TAKEN_FLAW) return false;
    clear_add(r, hole, NULL, NULL, false, from - 1, i + 1);
    return true;
}
