// SPDX-License-Identifier: MIT
// A word that is a fault's only where it is all that its clause says: "Dull.", "it's a bit dull", "blunt and
// rusty", "dull at the foot". Before it may stand the thing as a pronoun, its verb and a word of degree,
// behind it a word of degree and a place; a noun on either side ("dull green glaze", "blunt ended") makes it
// something else. A verb may have the noun before it that does so: "case won't shut".
#include "notes/bare.h"

#include "notes/any.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const char *const degrees[] = {
    "a",    "bit",   "very",   "quite",  "rather",   "pretty", "slightly", "little",     "now",
    "gone", "going", "fairly", "really", "somewhat", "too",    "so",       "completely", "totally",
    "lot",  "touch", "badly",  "looks",  "look",     "all",    "seems",    "feels",      "still",
    "just", "also",  "get",    "gets",   "getting",  "got",    "become",   "turned",     "tad"};

static const char *const subjects[] = {"it",   "it's",  "its",  "they", "they're", "both", "this", "these",
                                       "that", "thing", "set",  "lot",  "all",     "one",  "most", "item",
                                       "is",   "are",   "have", "has",  "was",     "been", "the",  "whole"};

static const char *const behind[] = {"now",   "too",       "badly",  "all",   "over",   "throughout",
                                     "bit",   "a",         "little", "as",    "well",   "though",
                                     "sadly", "obviously", "there",  "again", "really", "also"};

static const char *const joins[] = {"and", "but", "or", "with", "plus", "so", "because", "when", "if"};

static const char *const places[] = {"at", "in",    "on",     "round",      "around", "near",
                                     "by", "along", "inside", "underneath", "where",  "from"};

static bool parts_before(const struct tokens *tokens, size_t i) {
    return tokens->at[i].stop != STOP_NONE || tokens->at[i].kind == TOKEN_SIGN ||
           token_among(tokens, i, joins, COUNT(joins));
}

// "Won't shut".
static bool is_helper(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "won't", "wont", "doesn't", "doesnt", "will", "does", "can't", "cannot");
}

// What goods do that they should not: "sticks".
static bool is_verb(const struct tokens *tokens, size_t i) {
    static const char *const verbs[] = {
        "binds",    "creaks", "drips", "gains",   "hisses",  "jams",     "leaks",    "leans",   "loses",
        "misfires", "rocks",  "sags",  "seeps",   "smells",  "smokes",   "squeaks",  "squeals", "sticks",
        "stops",    "weeps",  "hums",  "wheezes", "wobbles", "crackles", "dribbles", "flickers"};
    return is_helper(tokens, i) || token_among(tokens, i, verbs, COUNT(verbs));
}

// "Old drawer unit", "the case": what does so, and nothing else in its clause.
static bool opens_with_noun(const struct tokens *tokens, size_t at, bool helps) {
    enum { WORDS_MOST = 4 };
    static const char *const others[] = {"no",  "not", "any", "of",   "with", "for", "to",    "is", "are",
                                         "was", "has", "one", "them", "some", "few", "these", "my"};
    for (size_t n = 0; n < WORDS_MOST; n++) {
        if (at == 0) return helps; // "Sealing wax sticks, red": the goods
        if (parts_before(tokens, at - 1)) return n > 0;
        if (tokens->at[at - 1].kind != TOKEN_WORD || token_among(tokens, at - 1, others, COUNT(others)) ||
            token_among(tokens, at - 1, places, COUNT(places)))
            return false;
        at--;
    }
    return at > 0 ? parts_before(tokens, at - 1) : helps;
}

// "Dry, doesn't smell", "clean and dry": where it was kept, and no leather.
static bool is_not_damp(const struct tokens *tokens, size_t from, size_t to) {
    if (!token_is(tokens, from, "dry")) return false;
    if (from > 1 && ANY(tokens, from - 1, "and") && ANY(tokens, from - 2, "clean", "tidy", "sound"))
        return true;
    return to + 1 < tokens->count && tokens->at[to].stop == STOP_COMMA &&
           ANY(tokens, to + 1, "no", "not", "never", "doesn't", "doesnt", "clean", "and", "without");
}

bool bare_stands(const struct tokens *tokens, size_t from, size_t to) {
    size_t at = from;
    if (is_not_damp(tokens, from, to)) return false;
    while (at > 0 && token_among(tokens, at - 1, degrees, COUNT(degrees))) at--;
    while (at > 0 && token_among(tokens, at - 1, subjects, COUNT(subjects))) at--;
    bool verb = is_verb(tokens, from);
    // "One draw is dented and sticks": what does so stands before the "and"
    if (verb && at == from && at > 0 && token_among(tokens, at - 1, joins, COUNT(joins))) return false;
    bool instead = at > 2 && at < from && token_is(tokens, at, "just"); // "screw not rusted just dull"
    if (instead)
        instead =
            ANY(tokens, at - 2, "not", "isn't", "aren't") || ANY(tokens, at - 3, "not", "isn't", "aren't");
    if (at > 0 && !instead && !parts_before(tokens, at - 1) &&
        !(verb &&
          opens_with_noun(tokens, at,
                          is_helper(tokens, from) || (from > 0 && ANY(tokens, from - 1, "that", "which")))))
        return false;
    for (at = to; at < tokens->count && token_among(tokens, at, behind, COUNT(behind));) at++;
    static const char *const other[] = {"its", "their", "use", "case", "color", "colour", "style"};
    if (at >= tokens->count || parts_before(tokens, at)) return true;
    return token_among(tokens, at, places, COUNT(places)) &&
           !token_among(tokens, at + 1, other, COUNT(other));
}
