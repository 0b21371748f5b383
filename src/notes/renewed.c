// SPDX-License-Identifier: MIT
// Parts that are not the first, where no list knows the part: "the receiver is a later plastic one"; and what
// was put on anew: "the tip has had a new ring whipped on". Read before the faults, whose words name no part.
#include <string.h>

#include "notes/any.h"
#include "notes/things.h"
#include "notes/traces.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

static const uint16_t off = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_UNKNOWN | STANCE_PLANNED |
                            STANCE_OTHER | STANCE_WITHDRAWN | STANCE_HEARD;

static void tell(struct fault_reader *r, const char *part, const char *where, size_t from, size_t to) {
    const struct flaw *kind = ruleset_flaw(r->note->rules, "replaced-part");
    if (!kind) return;
    fault_add(r, kind, part, where, from, to);
    part_close(r, from, to);
}

// What the clause that ends before token `to` speaks of, behind its article: up to three words of which no
// list knows the last; false where it is another clause.
static bool unknown_subject(const struct fault_reader *r, size_t to, size_t *from) {
    enum { WORDS_MOST = 3 };
    const struct note *note = r->note;
    const struct tokens *tokens = &note->tokens;
    size_t at = to;
    while (at > 0 && to - at < WORDS_MOST && tokens->at[at - 1].kind == TOKEN_WORD &&
           !spot_article(tokens, at - 1) && tokens->at[at - 1].stop == STOP_NONE && !r->scope.fault[at - 1] &&
           !absent_is_small(tokens, at - 1) &&
           (note->taken[at - 1] == TAKEN_NOT || note->taken[at - 1] == TAKEN_VALUE))
        at--;
    *from = at;
    while (at > 0 && spot_article(tokens, at - 1)) at--;
    bool opens = at == 0 || tokens->at[at - 1].stop != STOP_NONE || ANY(tokens, at - 1, "and", "but");
    return opens && *from < to && note->taken[to - 1] == TAKEN_NOT && !r->part[to - 1] &&
           !ANY(tokens, to - 1, "it", "this", "that", "which", "one", "other", "others", "they", "these",
                "those", "there", "what", "all", "both", "some", "two", "three", "rest", "date", "mark",
                "name", "print");
}

// "Platform balance is a later one", at the "one".
static void read_later_one(struct fault_reader *r, size_t i) {
    static const char *const news[] = {"later", "newer", "modern", "replacement", "reproduction", "recent"};
    enum { WORDS_MOST = 3 };
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i, from;
    bool later = false;
    while (at > 0 && i - at < WORDS_MOST && tokens->at[at - 1].stop == STOP_NONE && !later)
        later = AMONG(tokens, --at, news);
    if (!later || at == 0) return;
    while (at > 0 && ANY(tokens, at - 1, "a", "much", "clearly", "obviously", "just")) at--;
    if (at == 0 || !ANY(tokens, at - 1, "is", "are", "was") || !unknown_subject(r, at - 1, &from)) return;
    if (r->scope.stance[at - 1] & off) return;
    tell(r, fault_place(r->note, from, at - 1), NULL, from, i + 1);
}

// "The tip has had a new ring whipped on", "has had a new handle put on", at the "new".
static void read_had_new(struct fault_reader *r, size_t i) {
    static const char *const never[] = {"coat",    "lick", "owner",  "home",    "life",   "plug",  "flex",
                                        "cord",    "lead", "wiring", "wire",    "one",    "wick",  "socket",
                                        "battery", "bulb", "paint",  "varnish", "finish", "lease", "job",
                                        "go",      "edge", "look",   "plugs"};
    const struct tokens *tokens = &r->note->tokens;
    struct part_at part;
    size_t a = i > 0 && ANY(tokens, i - 1, "a", "some") ? 1 : 0, had = i - a;
    bool fitted = had > 1 &&
                  ANY(tokens, had - 1, "fitted", "added", "put") && // "someone has fitted a new spring"
                  !ANY(tokens, had - 2, "be", "to", "could", "can", "needs");
    if (fitted) had++; // the verb that leads
    if (had < 2 ||
        (!fitted && (!token_is(tokens, had - 1, "had") || !ANY(tokens, had - 2, "has", "have", "it's"))) ||
        tokens->at[i].stop != STOP_NONE || AMONG(tokens, i + 1, never) || r->scope.stance[i] & off ||
        !part_named_at(r, i + 1, &part) || part.lead != part.from || AMONG(tokens, part.to - 1, never))
        return;
    size_t owner, end;
    const char *where = spot_owner(r, had - 2, &owner, &end) ? fault_place(r->note, owner, end) : NULL;
    tell(r, fault_place(r->note, part.from, part.to), where, had - 2, part.to);
}

void read_renewed(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 2; i < tokens->count; i++) {
        if (tokens->at[i].kind != TOKEN_WORD) continue;
        if (token_is(tokens, i, "new")) read_had_new(r, i);
        if (ANY(tokens, i, "one", "ones")) read_later_one(r, i);
    }
}

// "New soles put on", "a replacement hinge": the part that the words themselves name; NULL if none.
const char *renewed_part_in(struct fault_reader *r, const struct fault_hit *hit, const struct flaw *kind) {
    static const char *const news[] = {"new", "newer", "later",        "modern", "replacement",
                                       "odd", "wrong", "replacements", "fresh",  "aftermarket"};
    static const char *const wholes[] = {"one",   "ones", "part",    "parts", "piece", "pieces",
                                         "style", "type", "binding", "it",    "old",   "something"};
    const struct tokens *tokens = &r->note->tokens;
    struct word_entry entry;
    struct noun_found noun;
    size_t from = hit->from, last = hit->to - 1;
    if (strcmp(kind->rule.id, "replaced-part") != 0) return NULL;
    while (from < last && !AMONG(tokens, from, news)) from++;
    if (from == last || from + 3 < last || tokens->at[last].kind != TOKEN_WORD || AMONG(tokens, last, wholes))
        return NULL;
    for (size_t i = from; i <= last; i++)
        if (tokens->at[i].stop != STOP_NONE) return NULL;
    bool named =
        r->part[last] || word_at(r->note, last, 1u << USE_PART, &entry) || noun_at(r->note, last, &noun);
    return named ? fault_place(r->note, from + 1, last + 1) : NULL;
}
