// SPDX-License-Identifier: MIT
// What a seller did to have a thing clean and in order before it was sold: "soaked them in the bath", "beat
// the dirt off", "sponged it and left it three days in the sun". The deed is no damage, and the dirt is gone.
// What the deed did not get off, or did to the thing, is told all the same.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/traces.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

static const char *const deeds[] = {
    "washed",      "cleaned",   "scrubbed",    "rinsed",    "soaked",     "wiped",       "dusted",
    "brushed",     "polished",  "buffed",      "oiled",     "waxed",      "steamed",     "ironed",
    "aired",       "hosed",     "vacuumed",    "hoovered",  "sponged",    "dried",       "boiled",
    "shook",       "beat",      "blew",        "swabbed",   "greased",    "fed",         "conditioned",
    "soaped",      "degreased", "descaled",    "bleached",  "laundered",  "combed",      "swept",
    "flushed",     "rubbed",    "dunked",      "emptied",   "knocked",    "pressed",     "honed",
    "sharpened",   "flattened", "ground",      "lubed",     "handwashed", "hand-washed", "deodorized",
    "disinfected", "sanitized", "disinfected", "shampooed", "blacked",    "creamed",     "dressed",
    "picked",      "drained",   "lapped",      "tapped",    "teased",     "hung",        "laid",
    "tumbled"};

// Is it the seller's deed: "I washed", "and scrubbed", "Washed it"? Not "was washed", "the dog soaked".
static bool is_deed(const struct fault_reader *r, size_t i) {
    static const char *const rough[] = {"rubbed", "flattened", "knocked", "ground",
                                        "picked", "pressed",   "tapped",  "beat"};
    static const char *const behind[] = {
        "it",        "them",       "the",   "this",       "these",     "all",    "every",   "each",
        "both",      "out",        "off",   "down",       "up",        "over",   "in",      "with",
        "by",        "once",       "twice", "my",         "its",       "well",   "and",     "flat",
        "overnight", "again",      "for",   "on",         "from",      "inside", "through", "to",
        "at",        "round",      "under", "thoroughly", "carefully", "gently", "lightly", "after",
        "before",    "everything", "right", "then",       "one",       "two",    "three",   "a",
        "their",     "that",       "those", "till",       "until",     "only",   "last",    "yesterday",
        "this",      "so",         "his",   "her"};
    const struct tokens *tokens = &r->note->tokens;
    if (token_is(tokens, i, "been") &&
        token_is(tokens, i + 1, "through")) // "every jar's been through a hot wash"
        for (size_t k = i + 2; k < i + 6 && k < tokens->count && tokens->at[k - 1].stop == STOP_NONE; k++)
            if (ANY(tokens, k, "wash", "cycle", "soak", "rinse")) return true;
    if (!AMONG(tokens, i, deeds)) return false;
    size_t at = i;
    while (at > 0 && tokens->at[at - 1].stop == STOP_NONE &&
           ANY(tokens, at - 1, "just", "then", "only", "also", "have", "even", "gently", "lightly",
               "carefully", "wire", "hand", "hot", "saddle", "well", "quickly", "dry", "steam", "thoroughly",
               "been", "carefully"))
        at--;
    if (at > 0 && tokens->at[at - 1].stop == STOP_NONE &&
        ANY(tokens, at - 1, "i", "we", "i've", "we've", "i'd", "ive"))
        return true;
    bool opens =
        at == 0 || tokens->at[at - 1].stop != STOP_NONE || ANY(tokens, at - 1, "and", "so", "but", "then");
    if (!opens) return false;
    // "Dried glue", "scrubbed pine", "rubbed at the corners": how it is.
    if (AMONG(tokens, i, rough))
        return ANY(tokens, i + 1, "it", "them", "the", "out", "off", "over", "down", "away") &&
               !r->part[i + 1];
    return i + 1 >= tokens->count || tokens->at[i].stop != STOP_NONE || tokens->at[i + 1].stop != STOP_NONE ||
           AMONG(tokens, i + 1, behind);
}

// What the sentence says besides that keeps the dirt on it: "needs", "won't", "still", "most".
static bool is_open(const struct fault_reader *r, size_t from, size_t to) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = from; i < to; i++)
        if (ANY(tokens, i, "needs", "need", "wants", "want", "could", "should", "won't", "wont", "didn't",
                "didnt", "not", "still", "most", "some", "half", "nearly", "almost", "mostly", "partly",
                "never", "can't", "couldn't", "hasn't", "haven't", "until", "would", "bit", "left", "remains",
                "but", "except", "ruined", "worst", "try", "tried"))
            return true;
    return false;
}

static bool is_of_sun(const struct tokens *tokens, const struct fault_hit *hit) {
    bool sun = false;
    for (size_t i = hit->from; i < hit->to; i++) sun |= ANY(tokens, i, "sun", "sunshine", "sunlight");
    return sun && ANY(tokens, hit->from, "sat", "left", "hung", "dried", "stood", "out", "in", "the", "put",
                      "bleached", "laid", "aired");
}

// Is the word of a fault the deed itself, or what it was done with?
static bool is_means(const struct tokens *tokens, const struct fault_hit *hit) {
    if (AMONG(tokens, hit->from, deeds) || is_of_sun(tokens, hit)) return true;
    if (ANY(tokens, hit->from, "wire") && ANY(tokens, hit->to - 1, "brushed")) return true;
    for (size_t i = hit->from; i < hit->to; i++)
        if (ANY(tokens, i, "squirt", "neatsfoot", "dubbin", "lubed", "sponge", "soak", "wash", "wipe",
                "drink", "dropped", "drop", "drops", "salt", "vinegar"))
            return true;
    return false;
}

static bool may_be_deed(const struct flaw *kind) {
    static const char *const ids[] = {"water-damage", "leather-crack", "scratches",       "refinished",
                                      "size-changed", "dust-grime",    "fading",          "tide-line",
                                      "seized",       "stain",         "rubber-perished", "wear-rub",
                                      "dent-bend",    "heat-damage",   "blade-wear",      "mineral-deposit",
                                      "fabric-weak",  "lining-damage", "warped"};
    for (size_t i = 0; i < COUNT(ids); i++)
        if (text_same(kind->rule.id, ids[i])) return true;
    return false;
}

static bool is_dirt(const struct flaw *kind) {
    static const char *const ids[] = {"pilling",         "tarnish",         "rust",
                                      "mineral-deposit", "sticker-residue", "stain"};
    for (size_t i = 0; i < COUNT(ids); i++)
        if (text_same(kind->rule.id, ids[i])) return true;
    return kind->class == CLASS_DIRT || kind->class == CLASS_ODOR;
}

// "Beat the dirt off", "cleaned the lint from under the plate", "with a spoon to get the dust off".
static bool is_got_off(const struct fault_reader *r, size_t deed, const struct fault_hit *hit) {
    enum { FAR = 4, BACK = 4 };
    const struct tokens *tokens = &r->note->tokens;
    bool off = ANY(tokens, hit->to, "off", "out", "away", "from", "loose", "down") &&
               tokens->at[hit->to - 1].stop == STOP_NONE;
    if (!off) return false;
    size_t at = hit->from;
    while (at > deed + 1 &&
           ANY(tokens, at - 1, "the", "all", "any", "its", "old", "loose", "that", "worst", "of"))
        at--;
    if (at == deed + 1) return true;
    return at > 1 && ANY(tokens, at - 1, "get", "got", "knock", "lift", "take", "shake", "blow", "bring",
                         "getting", "draw");
}

static void read_hits(struct fault_reader *r, size_t deed) {
    struct tokens *tokens = &r->note->tokens;
    size_t start = scope_sentence_start(&r->scope, deed), end = scope_sentence_end(&r->scope, deed);
    for (size_t k = 0; k < r->hit_count; k++) {
        struct fault_hit *hit = &r->hits[k];
        if (hit->from < start || hit->to > end || hit->denied || fault_is_silent(hit->kinds[0])) continue;
        if (hit->from < deed && hit->from != deed && tokens->at[deed].starts) continue;
        bool means = may_be_deed(hit->kinds[0]) && is_means(tokens, hit) &&
                     !is_open(r, scope_clause_start(&r->scope, hit->from), hit->from);
        if (AMONG(tokens, hit->from, deeds) && !is_deed(r, hit->from)) means = false;
        if (means) scope_mark(&r->scope, hit->from, hit->to, STANCE_OTHER, deed);
        if (!means && is_dirt(hit->kinds[0]) && hit->from > deed && is_got_off(r, deed, hit) &&
            !is_open(r, start, end) && !scope_left(&r->scope, start, deed, hit->to))
            scope_mark(&r->scope, hit->from, hit->to, STANCE_OTHER, deed);
    }
}

void read_care(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    if (r->note->off & SCOPE_PAST) return;
    for (size_t i = 0; i < tokens->count; i++)
        if (tokens->at[i].kind == TOKEN_WORD && is_deed(r, i)) read_hits(r, i);
}
