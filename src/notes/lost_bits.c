// SPDX-License-Identifier: MIT
// "Lost a piece of the moulding", "missing a chunk out of the back leg", "has lost a bit of carving off the
// top": a part that is no longer whole. No lid and no piece of a set is missing there.
#include "notes/any.h"
#include "notes/traces.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

// What wears off, runs out or belongs to a set, and is told by kinds of its own.
static bool is_else(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {
        "paint",    "gilt",     "gilding",   "gold",    "silvering",  "veneer",  "enamel", "enamelling",
        "color",    "colour",   "plating",   "plate",   "varnish",    "lacquer", "finish", "glaze",
        "print",    "transfer", "fringe",    "lace",    "braid",      "thread",  "pile",   "nap",
        "stuffing", "filling",  "leather",   "rubber",  "felt",       "weight",  "time",   "stitching",
        "height",   "shape",    "shine",     "air",     "pressure",   "cane",    "rush",   "grout",
        "inlay",    "string",   "stringing", "puzzle",  "set",        "jigsaw",  "game",   "it",
        "them",     "text",     "page",      "paper",   "label",      "binding", "fabric", "cloth",
        "jacket",   "wool",     "silver",    "tinning", "black",      "lining",  "page",   "pages",
        "power",    "strength", "speed",     "life",    "definition", "sparkle", "luster", "lustre",
        "backing",  "baize",    "seam",      "stone",   "stones",     "bead",    "beads",  "wicker",
        "weave",    "willow",   "japanning", "gesso",   "spine"};
    return AMONG(tokens, i, words);
}

static size_t bit_at(const struct tokens *tokens, size_t i) {
    static const char *const sizes[] = {"small", "little", "tiny",  "big", "good", "large", "decent", "fair",
                                        "short", "long",   "whole", "wee", "inch", "nice",  "great"};
    static const char *const bits[] = {"bit",      "piece", "chunk",  "length", "strip",
                                       "section",  "slice", "sliver", "lump",   "splinter",
                                       "fragment", "bits",  "pieces", "chunks", "slivers"};
    size_t at = i;
    if (ANY(tokens, at, "a", "an", "one", "some", "several", "few", "couple", "two", "three")) at++;
    if (ANY(tokens, at, "few", "couple")) at++;
    at += token_is(tokens, at, "of");
    while (AMONG(tokens, at, sizes)) at++;
    return AMONG(tokens, at, bits) ? at + 1 : 0;
}

// The noun phrase behind articles; empty where none stands.
static size_t noun_end(const struct fault_reader *r, size_t from) {
    enum { MOST = 3 };
    const struct tokens *tokens = &r->note->tokens;
    size_t at = from;
    while (at < tokens->count && at < from + MOST && tokens->at[at].kind == TOKEN_WORD &&
           !ANY(tokens, at, "on", "off", "at", "in", "from", "and", "but", "near", "by", "along", "round",
                "around", "under", "where", "is", "to", "which", "so", "with", "of", "about", "maybe", "the",
                "a", "an", "when", "some", "long", "roughly", "just", "over", "has", "size", "that", "as",
                "if", "it", "years", "i", "now", "already", "inside", "underneath") &&
           !(at > from && r->part[at - 1] && !r->part[at]))
        at++;
    return at;
}

// "The cornice is missing a piece at the back": what has lost it stands before.
static size_t read_owner(struct fault_reader *r, const struct flaw *kind, size_t i, size_t behind) {
    const struct tokens *tokens = &r->note->tokens;
    bool over = behind >= tokens->count || tokens->at[behind].stop != STOP_NONE ||
                ANY(tokens, behind, "on", "at", "in", "near", "and", "where", "by", "along", "underneath");
    size_t to = i;
    while (to > 0 && tokens->at[to - 1].stop == STOP_NONE &&
           ANY(tokens, to - 1, "is", "are", "has", "have", "had", "also", "just", "'s", "only"))
        to--;
    size_t from = to;
    while (from > 0 && tokens->at[from - 1].stop == STOP_NONE && r->part[from - 1] &&
           r->note->taken[from - 1] != TAKEN_TYPE)
        from--;
    const struct family *family = r->note->record->family;
    if (!over || from == to || to == i || !note_free(r->note, i, behind) ||
        (family && text_same(family->rule.id, "games-puzzles")))
        return 0;
    struct fault_hit hit = {.from = i, .to = behind, .kinds = {kind}, .kind_count = 1};
    struct spot spot = spot_of_hit(r, &hit);
    const char *where =
        spot.where_from >= behind ? fault_place(r->note, spot.where_from, spot.where_to) : NULL;
    fault_tell(r, &hit, kind, fault_place(r->note, from, to), where);
    part_close(r, from, behind);
    return behind;
}

static size_t read_at(struct fault_reader *r, size_t i) {
    static const uint16_t no = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_PAST | STANCE_WITHDRAWN |
                               STANCE_OTHER | STANCE_UNKNOWN | STANCE_PLANNED;
    const struct tokens *tokens = &r->note->tokens;
    const struct flaw *kind = ruleset_flaw(r->note->rules, "broken-part");
    size_t behind = bit_at(tokens, i + 1);
    if (!behind || !kind || tokens->at[i].stop != STOP_NONE || r->scope.stance[i] & no) return 0;
    bool of = token_is(tokens, behind, "of");
    if (!of && !ANY(tokens, behind, "off", "from", "out")) return read_owner(r, kind, i, behind);
    size_t from = behind + 1;
    while (ANY(tokens, from, "of", "the", "its", "one", "a", "an", "each")) from++;
    size_t to = noun_end(r, from);
    if (to == from || is_else(tokens, to - 1) || is_else(tokens, from) || !note_free(r->note, i, behind) ||
        r->note->taken[to - 1] == TAKEN_TYPE)
        return 0;
    const struct family *family = r->note->record->family;
    if (family && text_same(family->rule.id, "games-puzzles")) return 0; // its pieces are told by count
    bool ware = !family || text_same(family->rule.id, "ceramics") ||
                text_same(family->rule.id, "glassware") || text_same(family->rule.id, "kitchenware");
    if (ware &&
        ANY(tokens, to - 1, "rim", "edge", "lip", "foot", "base", "spout", "corner", "mouth", "border"))
        kind = ruleset_flaw(r->note->rules, "chip");
    if (!kind) return 0;
    struct fault_hit hit = {.from = i, .to = to, .kinds = {kind}, .kind_count = 1};
    struct spot spot = spot_of_hit(r, &hit);
    const char *where = spot.where_from >= to ? fault_place(r->note, spot.where_from, spot.where_to) : NULL;
    const char *part = fault_place(r->note, from, to);
    hit.to = of ? to : behind + 1;
    fault_tell(r, &hit, kind, part, where);
    part_close(r, i, to);
    return to;
}

void read_lost_bits(struct fault_reader *r) {
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 0; i + 3 < tokens->count; i++) {
        if (!ANY(tokens, i, "lost", "missing", "lacks", "lacking", "minus", "loses", "losing")) continue;
        size_t to = read_at(r, i);
        if (to) i = to - 1;
    }
}

// "The handle is broken off and the piece isn't here": what broke off, told with the break.
bool lost_is_broken_off(const struct fault_reader *r, size_t from, size_t to) {
    enum { BACK = 24, SENTENCES = 2 };
    const struct tokens *tokens = &r->note->tokens;
    size_t at = from, ends = 0;
    while (ANY(tokens, at, "the", "that", "its", "broken", "missing")) at++;
    if (at == 0 || to <= at ||
        !ANY(tokens, at, "piece", "bit", "chunk", "shard", "fragment", "pieces", "bits") ||
        !ANY(tokens, at - 1, "the", "that", "its", "broken", "missing") ||
        !ANY(tokens, to - 1, "gone", "missing", "lost", "here", "there", "around", "have", "found"))
        return false;
    for (size_t i = at; i > 0 && at - i < BACK; i--) {
        ends += tokens->at[i - 1].stop >= STOP_SENTENCE;
        if (ends == SENTENCES) return false;
        bool broke = ANY(tokens, i - 1, "broken", "broke", "snapped", "cracked", "knocked", "bust", "busted",
                         "came", "come", "chipped", "fell", "fallen");
        if (i < at &&
            (ANY(tokens, i - 1, "chip", "chunk", "break") || (broke && ANY(tokens, i, "off", "away", "out"))))
            return true;
    }
    return false;
}
