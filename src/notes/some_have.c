// SPDX-License-Identifier: MIT
// Of several pieces some have the part and the rest do not: "only one has its lid", "six jars but only four
// lids", "three pans, two with lids", "lids for two of them". How many lack it follows from how many there
// are.
#include <string.h>

#include "notes/any.h"
#include "notes/traces.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const char *const haves[] = {
    "has",  "have",     "has got",   "have got",     "still has",     "still have", "has still", "have still",
    "with", "retains",  "retain",    "came with",    "come with",     "comes with", "keeps",     "keep",
    "kept", "has kept", "have kept", "still retain", "still retains", "are with",   "had"};

static const struct record *record_of(const struct fault_reader *r) {
    return r->note->record;
}

// "Six cups and only five saucers": the number before the other noun, else that of the whole lot.
static int whole_before(const struct fault_reader *r, size_t i) {
    enum { FAR = 6 };
    const struct tokens *tokens = &r->note->tokens;
    size_t start = scope_sentence_start(&r->scope, i);
    for (size_t at = i; at > start && at + FAR > i; at--) {
        int number = degrees_number(tokens, at - 1);
        if (number > 1 && r->note->taken[at - 1] != TAKEN_MEASURE) return number;
    }
    return record_of(r)->count;
}

// Where the words "of them", "of the three jars" behind a number end.
static size_t behind_of(const struct tokens *tokens, size_t i) {
    enum { FAR = 4 };
    if (!token_is(tokens, i, "of")) return i;
    if (ANY(tokens, i + 1, "them", "these", "those") && !tokens->at[i + 1].stop) {
        if (token_longest(tokens, i + 2, haves, COUNT(haves))) return i + 2;
    }
    for (size_t at = i + 2; at < i + 2 + FAR && at < tokens->count && tokens->at[at - 1].stop == STOP_NONE;
         at++)
        if (token_longest(tokens, at, haves, COUNT(haves))) return at;
    return i;
}

static bool is_done(const struct tokens *tokens, size_t i) {
    static const char *const more[] = {
        "between them", "left",     "with them", "to go with them", "for them",  "now", "still", "with it",
        "between the",  "to match", "here",      "to go round",     "among them"};
    size_t n = token_longest(tokens, i, more, COUNT(more));
    return n || i >= tokens->count || tokens->at[i].stop != STOP_NONE ||
           ANY(tokens, i, "and", "but", "so", "though");
}

static bool is_part(const struct fault_reader *r, const struct part_at *part) {
    return r->part[part->to - 1] && !r->scope.fault[part->to - 1] &&
           !ANY(&r->note->tokens, part->to - 1, "mark", "marks", "hallmark", "hallmarks", "stamp", "date",
                "signature", "number", "crest", "label", "labels", "side", "sides", "name", "edge", "corner",
                "piece", "pieces", "pattern", "inside", "color", "colour");
}

// Chairs with arms and without make one set, pans with lids and without do not.
static bool is_own_to_each(const struct tokens *tokens, size_t i) {
    static const char *const parts[] = {"lid",     "lids",     "stopper", "stoppers", "cover", "covers",
                                        "saucer",  "saucers",  "cap",     "caps",     "shade", "shades",
                                        "chimney", "chimneys", "key",     "keys",     "cork",  "corks"};
    return token_among(tokens, i, parts, COUNT(parts));
}

// "… and the other has none", ", one doesn't", ", the others don't": how many that is, of `rest` where that
// is known; 0 where nothing of the kind stands behind token `i`. `*to` is the token behind.
static int lack_behind(const struct tokens *tokens, size_t i, int rest, size_t *to) {
    static const char *const nots[] = {
        "has none", "have none",      "had none",        "doesn't",    "don't",    "doesnt",    "hasn't",
        "haven't",  "does not",       "do not",          "dont",       "not",      "without",   "has not",
        "have not", "hasn't got one", "haven't got one", "hasn't one", "lacks it", "lack them", "didn't",
        "none"};
    size_t at = i;
    if (at < tokens->count && tokens->at[at].stop == STOP_COMMA) at++;
    if (ANY(tokens, at, "and", "but")) at++;
    if (at == i) return 0;
    if (token_is(tokens, at, "the")) at++;
    bool other = ANY(tokens, at, "other", "others", "rest");
    at += other;
    int number = degrees_number(tokens, at);
    at += number > 0;
    if (!other && !number) return 0;
    size_t n = token_longest(tokens, at, nots, COUNT(nots));
    *to = at + n;
    if (!n || (*to < tokens->count && tokens->at[*to].stop == STOP_NONE)) return 0;
    return number ? number : token_is(tokens, at - 1, "other") ? 1 : rest;
}

// `number` pieces have the part at `at`.
static void read_having(struct fault_reader *r, size_t i, size_t at, int number, bool only) {
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    int whole = record_of(r)->count;
    if (!part_named_at(r, at, &part) || degrees_number(tokens, at) > 1) return;
    size_t behind;
    int lack = is_part(r, &part) ? lack_behind(tokens, part.to, whole - number, &behind) : 0;
    if (lack > 0) {
        part_tell_lack_each(r, &part, lack, whole, i, behind);
        return;
    }
    size_t more = part.to; // "four have keys and open, the rest don't"
    if (ANY(tokens, more, "and", "but") && more + 2 < tokens->count &&
        tokens->at[more + 2].stop == STOP_COMMA && is_part(r, &part) &&
        (lack = lack_behind(tokens, more + 2, whole - number, &behind)) > 0) {
        part_tell_lack_each(r, &part, lack, whole, i, behind);
        return;
    }
    bool each = ANY(tokens, at - 1, "have", "has") && is_own_to_each(tokens, part.to - 1) && number > 0 &&
                tokens->at[part.to - 1].one != tokens->at[part.to - 1].fold; // "jars, six, four have lids"
    if (!is_done(tokens, part.to) || (!only && !each && !token_is(tokens, at - 1, "with"))) return;
    bool own = ANY(tokens, at, "its", "their", "it's");
    if ((!own && !is_part(r, &part)) || (!only && !is_own_to_each(tokens, part.to - 1))) return;
    if (number < whole)
        part_tell_lack_each(r, &part, whole - number, whole, i, part.to);
    else if (only && (own || number > 1))
        part_tell_lack_each(r, &part, 0, 0, i, part.to);
}

// "Lids for only two of them": of the part at token `i`.
static void read_for_some(struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i + 2;
    if (!ANY(tokens, i + 1, "for", "to", "on", "with") || tokens->at[i].stop != STOP_NONE) return;
    bool only = ANY(tokens, at, "only", "just");
    at += only;
    int number = degrees_number(tokens, at), whole = record_of(r)->count;
    if (number < 1 || number >= whole || !token_is(tokens, at + 1, "of") ||
        !ANY(tokens, at + 2, "them", "these", "those", "the") || (!only && token_is(tokens, i + 1, "on")))
        return;
    bool with = token_is(tokens, i + 1, "with"), opens = i > 0 && tokens->at[i - 1].stop != STOP_NONE;
    if (with && (!opens || !ANY(tokens, at + 2, "them") || !is_done(tokens, at + 3))) return;
    struct part_at part = {i, i, i + 1};
    if (is_part(r, &part)) part_tell_lack_each(r, &part, whole - number, whole, i, at + 3);
}

void read_some_have(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        if (r->scope.stance[i] & (STANCE_OTHER | STANCE_WITHDRAWN) || tokens->at[i].kind == TOKEN_SIGN)
            continue;
        if (r->part[i] && tokens->at[i].one != tokens->at[i].fold && record_of(r)->count > 1)
            read_for_some(r, i);
        bool only = ANY(tokens, i, "only", "just");
        if (!only && record_of(r)->count < 2) continue;
        int number = degrees_number(tokens, i + only);
        if (number < 1 || number > 40 || r->note->taken[i + only] == TAKEN_MEASURE) continue;
        size_t at = behind_of(tokens, i + only + 1), n = token_longest(tokens, at, haves, COUNT(haves));
        bool parted = i > 0 && tokens->at[i - 1].stop != STOP_NONE;
        if (n && (only || parted)) {
            read_having(r, i, at + n, number, only);
            continue;
        }
        struct part_at part;
        int whole = only && at == i + 2 ? whole_before(r, i) : 0;
        if (whole > number && part_named_at(r, at, &part) && part.from == at && is_part(r, &part) &&
            is_done(tokens, part.to))
            part_tell_lack_each(r, &part, whole - number, whole, i, part.to);
    }
}
