// SPDX-License-Identifier: MIT
// "Dial has spots", "a few specks inside", "some blotches on the cover": a word for what is seen on a
// surface, with nothing that says what made it. The stuff that it is on tells the kind. Read after the rules,
// which know more of them by color and cause.
#include <string.h>

#include "notes/any.h"
#include "notes/stuff.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// What the surface has is its look where a color or "with" stands before: "white with blue spots".
static bool is_counted(const struct fault_reader *r, size_t i) {
    enum { NEAR = 4 };
    static const char *const counts[] = {"some", "few", "several", "odd",   "has",  "have",
                                         "are",  "is",  "many",    "small", "tiny", "couple",
                                         "lots", "got", "little",  "light", "faint"};
    const struct tokens *tokens = &r->note->tokens;
    if (i == 0 || tokens->at[i - 1].stop != STOP_NONE)
        return ANY(tokens, i + 1, "on", "in", "to", "inside", "all", "here");
    for (size_t at = i; at > 0 && i - at < NEAR && tokens->at[at - 1].stop == STOP_NONE; at--)
        if (ANY(tokens, at - 1, "in", "at")) return false; // "pulled in about six spots"
    return token_among(tokens, i - 1, counts, COUNT(counts)) || degrees_number(tokens, i - 1) > 0;
}

static bool closes(const struct tokens *tokens, size_t i) {
    static const char *const words[] = {"on",         "in",    "to",    "at",     "inside", "outside",
                                        "underneath", "round", "along", "around", "all",    "where",
                                        "here",       "near",  "and",   "but"};
    return i >= tokens->count || tokens->at[i].stop != STOP_NONE ||
           token_among(tokens, i, words, COUNT(words));
}

// The part that has them, or that they are on; SIZE_MAX: the thing.
static size_t surface_of(const struct fault_reader *r, size_t i) {
    enum { FAR = 4 };
    static const char *const ons[] = {"on", "in", "to", "at", "round", "along", "around"};
    const struct tokens *tokens = &r->note->tokens;
    if (i + 1 < tokens->count && tokens->at[i].stop == STOP_NONE &&
        token_among(tokens, i + 1, ons, COUNT(ons)))
        for (size_t at = i + 2; at < tokens->count && at < i + 2 + FAR; at++) {
            if (r->part[at]) return at;
            if (tokens->at[at].stop != STOP_NONE) break;
        }
    for (size_t at = i; at > 0 && i - at < FAR + 2 && tokens->at[at - 1].stop == STOP_NONE; at--)
        if (r->part[at - 1] && r->note->taken[at - 1] != TAKEN_TYPE) return at - 1;
    return SIZE_MAX;
}

// "Rust inside the base, a few specks": how much of it there is.
static bool is_of_fault(const struct fault_reader *r, size_t i) {
    const struct tokens *tokens = &r->note->tokens;
    size_t at = i;
    while (at > 0 && tokens->at[at - 1].stop == STOP_NONE) at--;
    if (at < 2 || tokens->at[at - 1].stop != STOP_COMMA) return false;
    for (at--; at > 0 && tokens->at[at - 1].stop < STOP_SENTENCE; at--)
        if (r->scope.fault[at - 1]) return true;
    return false;
}

static const char *kind_on(enum stuff stuff, bool iron) {
    switch (stuff) {
    case STUFF_METAL:
        return iron ? "rust" : "tarnish";
    case STUFF_PAPER:
        return "foxing";
    case STUFF_CLOTH:
    case STUFF_LEATHER:
    case STUFF_WOOD:
    case STUFF_FIRED:
    case STUFF_PLASTIC:
        return "stain";
    default:
        return NULL;
    }
}

static bool is_iron(const struct fault_reader *r) {
    static const char *const irons[] = {"iron", "cast iron", "steel", "tin", "tinplate", "wrought iron"};
    for (size_t m = 0; m < r->material_count; m++)
        for (size_t k = 0; !r->materials[m]->of && k < COUNT(irons); k++)
            if (!strcmp(r->materials[m]->value, irons[k])) return true;
    return false;
}

void read_blots(struct fault_reader *r) {
    static const char *const blots[] = {"spots", "specks",   "speckles", "blotches",
                                        "blots", "freckles", "dots"};
    static const uint16_t off = STANCE_DENIED | STANCE_NONE_SEEN | STANCE_PAST | STANCE_WITHDRAWN |
                                STANCE_OTHER | STANCE_UNKNOWN | STANCE_PLANNED;
    const struct tokens *tokens = &r->note->tokens;
    for (size_t i = 1; i < tokens->count; i++) {
        if (!token_among(tokens, i, blots, COUNT(blots)) || !note_free(r->note, i, i + 1) ||
            r->scope.fault[i] || r->scope.stance[i] & off || !closes(tokens, i + 1) || !is_counted(r, i) ||
            is_of_fault(r, i))
            continue;
        size_t part = surface_of(r, i);
        bool dial = part != SIZE_MAX && ANY(tokens, part, "dial", "dials", "face");
        enum stuff stuff = stuff_of_part(r, part == SIZE_MAX ? i : part);
        const char *id = dial ? "stain" : kind_on(stuff, is_iron(r));
        const struct flaw *kind = id ? ruleset_flaw(r->note->rules, id) : NULL;
        if (!kind) continue;
        struct fault_hit hit = {.from = i, .to = i + 1, .kinds = {kind}, .kind_count = 1};
        size_t from = part;
        while (part < i && from > 0 && r->part[from - 1]) from--;
        const char *own = part < i ? fault_place(r->note, from, part + 1) : NULL;
        fault_tell(r, &hit, kind, own, stuff_where(r, &hit));
    }
}
