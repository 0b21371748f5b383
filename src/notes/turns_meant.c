// SPDX-License-Identifier: MIT
// What looks like damage and is meant so, or is none of it: "it's meant to be dimpled", "the holes are
// eyelets", "six strips glued up, it's no fault", "no handles, the French sort", "his name was Rex".
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/traces.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

// "It's meant to be dimpled", "supposed to look beaten up".
static void read_meant_to(struct fault_reader *r, size_t i) {
    static const char *const cues[] = {"meant to be",  "meant to look",  "supposed to be", "supposed to look",
                                       "made to look", "intended to be", "designed to be", "meant to"};
    enum { FAR = 4 };
    const struct tokens *tokens = &r->note->tokens;
    size_t n = token_longest(tokens, i, cues, COUNT(cues));
    if (!n || ANY(tokens, i - 1, "not", "isn't", "aren't", "never", "i", "we", "always", "wasn't")) return;
    for (size_t k = i + n; k < i + n + FAR && k < tokens->count && tokens->at[k - 1].stop == STOP_NONE; k++) {
        if (ANY(tokens, k, "but", "and", "when", "though")) return;
        if (r->scope.fault[k]) turn_pass_over(r, k, k + 1, i);
    }
}

// "The holes under the arms are eyelets", "the slack in the jaw is how they grip", "the dimples are meant".
static size_t innocent_at(const struct fault_reader *r, size_t i) {
    static const char *const meant[] = {"meant",
                                        "meant to",
                                        "supposed to",
                                        "intentional",
                                        "intended",
                                        "deliberate",
                                        "on purpose",
                                        "by design",
                                        "part of the",
                                        "normal for",
                                        "usual for",
                                        "eyelets",
                                        "vents",
                                        "air holes",
                                        "drain holes",
                                        "vent holes",
                                        "drainage",
                                        "the design",
                                        "a design",
                                        "decorative",
                                        "decoration",
                                        "correct for",
                                        "right for",
                                        "as it should",
                                        "as they should",
                                        "how they're made",
                                        "how they are made",
                                        "how it's made",
                                        "no fault",
                                        "no damage",
                                        "not damage",
                                        "not a fault",
                                        "not damaged",
                                        "not faults",
                                        "not flaws",
                                        "the pattern",
                                        "the weave",
                                        "the grain",
                                        "the style",
                                        "a feature",
                                        "for ventilation",
                                        "for drainage",
                                        "for hanging",
                                        "for the screws",
                                        "for screws",
                                        "for air",
                                        "for air to",
                                        "the decoration",
                                        "the reflection",
                                        "reflections",
                                        "a reflection",
                                        "glare",
                                        "just glare",
                                        "the flash",
                                        "my flash",
                                        "just the light",
                                        "only the light",
                                        "the light",
                                        "a shadow",
                                        "shadows",
                                        "the shadow",
                                        "my shadow",
                                        "dust on my lens",
                                        "on my lens",
                                        "on the camera",
                                        "my camera",
                                        "my phone",
                                        "sunlight",
                                        "the sun",
                                        "sun through",
                                        "sun on",
                                        "rain on",
                                        "water drops",
                                        "raindrops",
                                        "printed on",
                                        "part of it",
                                        "the look",
                                        "the fashion",
                                        "original to the design"};
    static const char *const now[] = {"came",   "got",  "arrived", "is",     "was",   "looks",
                                      "looked", "sits", "found",   "stands", "are",   "were",
                                      "has",    "have", "i",       "we",     "bought"};
    const struct tokens *tokens = &r->note->tokens;
    while (ANY(tokens, i, "just", "only", "all", "simply", "really", "actually", "there", "fully", "both",
               "quite"))
        i++;
    size_t n = token_longest(tokens, i, meant, COUNT(meant));
    if (n) return n;
    if (token_is(tokens, i, "how") && ANY(tokens, i + 1, "they", "it", "these", "you") &&
        !AMONG(tokens, i + 2, now))
        return 2;
    if (token_is(tokens, i, "where") && ANY(tokens, i + 1, "the", "you", "a", "your", "it"))
        for (size_t k = i + 2; k < i + 6 && k < tokens->count && tokens->at[k - 1].stop == STOP_NONE; k++)
            if (ANY(tokens, k, "goes", "go", "fits", "fit", "hang", "hangs", "screws", "screw", "clips",
                    "slots", "drains", "plug", "plugs", "sits", "slides"))
                return 2;
    bool picture =
        kind_note_has(r, "painting paintings watercolor watercolour oils seascape landscape portrait");
    return picture && ANY(tokens, i, "paint", "painted", "ink", "charcoal", "brushwork") &&
           tokens->at[i].stop != STOP_NONE;
}

static void read_identity(struct fault_reader *r, const struct fault_hit *hit) {
    enum { FAR = 7 };
    const struct tokens *tokens = &r->note->tokens;
    size_t i = hit->to;
    bool placed = spot_preposition(tokens, i - 1);
    if (hit->kinds[0]->class == CLASS_FUNCTION || hit->kinds[0]->form == ABSENCE) return;
    for (; i < tokens->count && i < hit->to + FAR && tokens->at[i - 1].stop == STOP_NONE; i++) {
        if (ANY(tokens, i, "is", "are", "was", "were", "isn't")) break;
        placed |= spot_preposition(tokens, i) || ANY(tokens, i, "in", "you", "of");
        if (!placed || r->scope.fault[i] || ANY(tokens, i, "and", "but", "it", "which", "that")) return;
    }
    if (!ANY(tokens, i, "is", "are", "was", "were") || tokens->at[i - 1].stop != STOP_NONE) return;
    size_t n = innocent_at(r, i + 1);
    if (n && !ANY(tokens, i + 1 + n, "but", "though")) turn_pass_over(r, hit->from, i + 1 + n, i);
}

// "Six strips glued up, it's no fault".
static void read_no_fault(struct fault_reader *r, size_t i) {
    static const char *const tails[] = {"it's no fault",
                                        "that's no fault",
                                        "it's not a fault",
                                        "that's not a fault",
                                        "is no fault",
                                        "not a fault",
                                        "no fault in it",
                                        "it's not damage",
                                        "that's not damage",
                                        "isn't damage",
                                        "so don't take it for damage",
                                        "don't take it for damage",
                                        "it isn't damage",
                                        "it's no damage",
                                        "and not damage",
                                        "not damage",
                                        "and no fault",
                                        "not a defect",
                                        "it's not a flaw",
                                        "not a flaw",
                                        "is what it's for",
                                        "are what it's for",
                                        "is what they're for",
                                        "is what that's for"};
    const struct tokens *tokens = &r->note->tokens;
    if (!token_longest(tokens, i, tails, COUNT(tails)) || i == 0) return;
    size_t start = scope_sentence_start(&r->scope, i);
    for (size_t k = 0; k < r->hit_count; k++)
        if (r->hits[k].from >= start && r->hits[k].to <= i)
            turn_pass_over(r, r->hits[k].from, r->hits[k].to, i);
}

// "No handles, the French sort": made so.
static void read_sort(struct fault_reader *r, size_t i) {
    static const char *const sorts[] = {"sort", "kind",   "type",  "style",  "pattern",
                                        "way",  "design", "model", "method", "fashion"};
    static const char *const leads[] = {"the",    "that's the",   "it's the", "this is the",
                                        "in the", "which is the", "as is the"};
    enum { FAR = 4, WORDS_MOST = 3 };
    const struct tokens *tokens = &r->note->tokens;
    if (!ANY(tokens, i, "no", "without")) return;
    size_t at = i + 1;
    while (at < tokens->count && at < i + FAR && tokens->at[at].stop == STOP_NONE) at++;
    if (at >= tokens->count || tokens->at[at].stop != STOP_COMMA) return;
    size_t n = token_longest(tokens, at + 1, leads, COUNT(leads));
    for (size_t k = at + 1 + n;
         n && k <= at + n + WORDS_MOST && k < tokens->count && tokens->at[k - 1].stop != STOP_SENTENCE; k++) {
        bool ends =
            AMONG(tokens, k, sorts) && (k + 1 >= tokens->count || tokens->at[k + 1].stop != STOP_NONE ||
                                        ANY(tokens, k + 1, "that", "you", "they", "with", "of", "without"));
        if (ends && k > at + n) {
            turn_pass_over(r, i, at, k);
            return;
        }
    }
}

// "With hot water and no soap", "without bleach": what it was washed with.
static void read_agent(struct fault_reader *r, size_t i) {
    static const char *const agents[] = {
        "soap",   "soaps",       "bleach", "detergent", "detergents", "chemicals", "softener", "starch",
        "spin",   "conditioner", "heat",   "abrasive",  "abrasives",  "scrubbing", "solvent",  "solvents",
        "tumble", "vinegar",     "sugar",  "butter",    "salt",       "milk"};
    const struct tokens *tokens = &r->note->tokens;
    bool washed = false;
    for (size_t k = scope_sentence_start(&r->scope, i); k < i; k++)
        washed |= ANY(tokens, k, "wash", "washed", "water", "cleaned", "scrubbed", "rinsed", "dried",
                      "ironed", "soak", "soaked", "dunked", "wiped", "cloth", "hosed", "cycle", "sponged");
    if (washed && ANY(tokens, i, "no", "without") && AMONG(tokens, i + 1, agents) &&
        r->note->taken[i + 1] != TAKEN_TYPE &&
        (i + 2 >= tokens->count ||
         !ANY(tokens, i + 2, "dish", "dispenser", "tray", "shaker", "cellar", "jug", "damage", "marks",
              "stains", "spots", "holder", "residue", "dryer", "smell")))
        turn_pass_over(r, i, i + 2, i);
}

// "His name was Rex": what somebody is called, and nothing is written. "Her name is inside" is.
static void read_called(struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (i > 0 && token_is(tokens, i, "name") && ANY(tokens, i - 1, "his", "her", "whose", "my", "the") &&
        ANY(tokens, i + 1, "was", "is") && i + 2 < tokens->count && tokens->at[i + 2].capital &&
        !tokens->shouts)
        turn_pass_over(r, i - 1, i + 1, i);
}

// "The dog got at the old ones", "danced holes in my last pair": of others than are sold; "it wasn't this one
// that got wet".
static bool is_of_others(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const others[] = {"the old",
                                         "the old ones",
                                         "the old one",
                                         "the last",
                                         "the last ones",
                                         "the last pair",
                                         "the last one",
                                         "the previous",
                                         "my last",
                                         "my last pair",
                                         "my last one",
                                         "my old one",
                                         "my old ones",
                                         "my old pair",
                                         "my other pair",
                                         "two other pair",
                                         "two other pairs",
                                         "three other pair",
                                         "three other pairs",
                                         "the first one i had",
                                         "the one before",
                                         "another pair",
                                         "my first",
                                         "my first pair",
                                         "my first one",
                                         "hers",
                                         "theirs",
                                         "mine"};
    static const char *const nots[] = {
        "wasn't this", "wasn't this one", "wasn't these",   "not this",          "not this one",
        "wasn't that", "wasn't it",       "never this one", "it's not this one", "weren't these"};
    const struct tokens *tokens = &r->note->tokens;
    size_t at = hit->to;
    if (tokens->at[at - 1].stop != STOP_NONE) return false;
    if (ANY(tokens, at, "in", "through", "on", "from", "off", "of")) at++;
    size_t n = token_longest(tokens, at, others, COUNT(others));
    bool ends = at + n >= tokens->count || tokens->at[at + n].stop != STOP_NONE ||
                ANY(tokens, at + n, "and", "so", "before", "but", "when", "which");
    if (n && ends && (r->note->record->count < 2 || ANY(tokens, at, "my", "hers", "theirs", "mine")))
        return true;
    if (hit->from < 3 || !ANY(tokens, hit->from - 1, "that", "which", "to")) return false;
    for (size_t k = hit->from - 1; k > 0 && k + 4 > hit->from - 1; k--) {
        size_t m = token_longest(tokens, k - 1, nots, COUNT(nots));
        if (m && k - 1 + m == hit->from - 1) return true;
    }
    return false;
}

// "The few bobbles there were are gone", "took the smell with her, there's not a whiff left".
static bool is_gone_since(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const were[] = {"there were",     "there was", "that were there",
                                       "that was there", "it had",    "they had"};
    static const char *const gone[] = {"are gone", "is gone",  "are all gone", "have gone",     "has gone",
                                       "came off", "came out", "went",         "have all gone", "washed out",
                                       "are out",  "is out",   "polished out", "came away"};
    static const char *const none[] = {"not a whiff left", "not a trace left",  "there's none now",
                                       "none left",        "there's none left", "not a trace now",
                                       "not a hint left",  "not a whiff now",   "no trace now",
                                       "no trace left",    "it's all gone",     "not a hint now"};
    const struct tokens *tokens = &r->note->tokens;
    size_t n =
        tokens->at[hit->to - 1].stop == STOP_NONE ? token_longest(tokens, hit->to, were, COUNT(were)) : 0;
    if (n && token_longest(tokens, hit->to + n, gone, COUNT(gone))) return true;
    if (hit->kinds[0]->class != CLASS_ODOR && hit->kinds[0]->class != CLASS_DIRT) return false;
    for (size_t k = hit->to; k < tokens->count && tokens->at[k].stop < STOP_SENTENCE; k++)
        if (token_longest(tokens, k, none, COUNT(none))) return true;
    return false;
}

// "He kept his broken watches in it": what it held; "a man with no chin"; "you tighten the nuts until they
// will not turn"; "pitted all over as thimbles are".
static bool is_of_telling(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { FAR = 5 };
    static const char *const done[] = {"can",    "could", "see",   "notice", "feel", "will", "would",
                                       "might",  "may",   "hear",  "have",   "need", "must", "get",
                                       "should", "won't", "can't", "cannot", "want", "find", "don't"};
    const struct tokens *tokens = &r->note->tokens;
    size_t start = scope_sentence_start(&r->scope, hit->from),
           end = scope_sentence_end(&r->scope, hit->to - 1);
    for (size_t k = hit->to; k < end && k < hit->to + FAR && tokens->at[k - 1].stop == STOP_NONE; k++)
        if (ANY(tokens, k, "in") && ANY(tokens, k + 1, "it", "them", "there", "here"))
            for (size_t b = hit->from;
                 b > start && b + FAR > hit->from && tokens->at[b - 1].stop == STOP_NONE; b--)
                if (ANY(tokens, b - 1, "kept", "keep", "keeps", "held", "stored", "store", "hid", "put"))
                    return k > hit->to;
    if (ANY(tokens, start, "you") && !AMONG(tokens, start + 1, done))
        for (size_t k = start; k < hit->from; k++)
            if (ANY(tokens, k, "until", "till")) return true;
    const char *type = r->note->record->type.value;
    for (size_t k = hit->to; type && k < end; k++)
        if (token_is(tokens, k, "as") && k + 2 < tokens->count &&
            kind_has_word(type, tokens->at[k + 1].one) && ANY(tokens, k + 2, "are", "do", "should", "is"))
            return true;
    return false;
}

// "A man with no chin".
static void read_person_without(struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    if (i > 0 && ANY(tokens, i, "with") && ANY(tokens, i + 1, "no") &&
        ANY(tokens, i - 1, "man", "woman", "lady", "fellow", "guy", "bloke", "uncle", "aunt", "neighbor",
            "neighbour", "boss", "teacher", "people", "person", "someone", "somebody", "anyone", "anybody",
            "those"))
        turn_pass_over(r, i + 1, i + 3, i);
}

void read_meant(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    if (r->note->off & SCOPE_INTENDED) return;
    for (size_t i = 0; i < tokens->count; i++) {
        if (tokens->at[i].kind != TOKEN_WORD) continue;
        read_meant_to(r, i);
        read_no_fault(r, i);
        read_sort(r, i);
        read_agent(r, i);
        read_called(r, i);
        read_person_without(r, i);
    }
    for (size_t k = 0; k < r->hit_count; k++) {
        const struct fault_hit *hit = &r->hits[k];
        read_identity(r, hit);
        if (!fault_is_silent(hit->kinds[0]) &&
            (is_of_others(r, hit) || is_gone_since(r, hit) || is_of_telling(r, hit)))
            turn_pass_over(r, hit->from, hit->to, hit->from);
    }
}
