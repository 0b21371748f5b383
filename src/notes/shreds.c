// SPDX-License-Identifier: MIT
// A piece of a part that is not there any more: "missing a bit of the molding on the left", "a length of
// beading is gone", "has lost a strip of its edging". The part is what stands behind "of", whatever its name;
// where a rule knows more of such a loss (veneer, a trim, a torn page) it tells it.
#include <string.h>

#include "notes/any.h"
#include "notes/lacking.h"
#include "notes/traces.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool is_shred(const struct tokens *tokens, size_t i) {
    static const char *const shreds[] = {"bit",    "bits",    "piece", "pieces",   "strip", "strips",
                                         "length", "lengths", "run",   "section",  "chunk", "chunks",
                                         "part",   "portion", "scrap", "sections", "sliver"};
    return token_among(tokens, i, shreds, COUNT(shreds)) && token_is(tokens, i + 1, "of") &&
           tokens->at[i].stop == STOP_NONE && tokens->at[i + 1].stop == STOP_NONE;
}

// What the piece is of: up to three words, of which the last is its name.
static size_t whole_at(const struct fault_reader *r, size_t i, size_t *from) {
    static const char *const leads[] = {"the", "its", "a", "his", "their", "one", "that"};
    static const char *const none[] = {
        "it",    "them",  "this", "these", "paper",  "wood", "glass", "wire", "work",  "kit",    "paint",
        "metal", "cloth", "rope", "luck",  "string", "foam", "tape",  "skin", "which", "fabric", "leather"};
    enum { WORDS_MOST = 3 };
    const struct tokens *tokens = &r->note->tokens;
    while (token_among(tokens, i, leads, COUNT(leads))) i++;
    *from = i;
    while (
        i < tokens->count && i < *from + WORDS_MOST && tokens->at[i].kind == TOKEN_WORD &&
        !spot_preposition(tokens, i) && !absent_is_small(tokens, i) && !(r->scope.fault[i] && !r->part[i]) &&
        r->note->taken[i] != TAKEN_TYPE &&
        !ANY(tokens, i, "is", "are", "has", "have", "was", "and", "but", "where", "missing", "gone", "lost"))
        if (tokens->at[i++].stop != STOP_NONE) break;
    return i > *from && !token_among(tokens, i - 1, none, COUNT(none)) ? i : 0;
}

// Do the rules tell it as more than a lack or a break?
static bool is_told(const struct fault_reader *r, size_t from, size_t to) {
    static const char *const general[] = {"missing-pieces", "missing-accessory", "missing-hardware",
                                          "broken-part"};
    for (size_t i = 0; i < r->hit_count; i++) {
        bool plain = false;
        for (size_t k = 0; k < COUNT(general); k++)
            plain |= text_same(r->hits[i].kinds[0]->rule.id, general[k]);
        if (r->hits[i].from < to && r->hits[i].to > from && !plain) return true;
    }
    return false;
}

void read_shreds(struct fault_reader *r) {
    static const uint16_t off = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_UNKNOWN | STANCE_PAST |
                                STANCE_PLANNED | STANCE_OTHER | STANCE_WITHDRAWN;
    const struct tokens *tokens = &r->note->tokens;
    const struct flaw *kind = ruleset_flaw(r->note->rules, "broken-part");
    for (size_t i = 1; kind && i + 2 < tokens->count; i++) {
        if (!is_shred(tokens, i)) continue;
        size_t from, to = whole_at(r, i + 2, &from), n = 0;
        if (!to || r->scope.stance[i] & off || tokens->at[to - 1].stop != STOP_NONE ||
            !lacking_said_behind(&r->scope, to, &n))
            continue;
        size_t first = i, last = to + n;
        if (is_told(r, first, last)) continue;
        const char *where = NULL;
        size_t place = tokens->at[last - 1].stop == STOP_NONE ? absent_place(r->note, last, &where) : 0;
        struct fault_hit hit = {.from = i, .to = i + 1, .kinds = {kind}, .kind_count = 1};
        fault_tell(r, &hit, kind, fault_words(r->note, from, to), place ? where : NULL);
        note_take(r->note, first, last + place, TAKEN_FLAW);
        part_close(r, first, last);
        i = last - 1;
    }
}
