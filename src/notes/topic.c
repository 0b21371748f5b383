// SPDX-License-Identifier: MIT
// A fault's word that names something else: what is used against it ("stain remover", "dent puller"), what a
// book is about ("pamphlet on woodworm"), what a thing is called ("called Broken Ladders").
#include <string.h>

#include "notes/scope.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

// "Rust remover", "moth killer", "scratch awl": goods and work against the fault, or named after it.
static void read_remedies(struct scope *s) {
    static const char *const remedies[] = {
        "remover",   "removers",  "removal",      "removing",   "killer",     "killers",   "repellent",
        "repellant", "preventer", "preventative", "preventive", "prevention", "inhibitor", "converter",
        "treatment", "puller",    "pullers",      "filler",     "fillers",    "awl",       "finder",
        "detector",  "protector", "proofing",     "guard",      "resistant",  "resisting", "proof",
        "eraser",    "lifter",    "popper",       "tester",     "gauge",      "cure",      "pads",
        "stick",     "sticks",    "paste",        "powder",     "cream",      "fluid",     "spray",
        "trap",      "traps"};
    static const char *const damage[] = {"rust",   "stain",     "scratch", "dent",     "moth",   "mold",
                                         "mould",  "mildew",    "crack",   "woodworm", "worm",   "tarnish",
                                         "grease", "limescale", "scale",   "lint",     "odor",   "odour",
                                         "wax",    "chip",      "snag",    "bobble",   "lime",   "splinter",
                                         "crease", "wrinkle",   "tear",    "wear",     "shrink", "smoke"};
    static const char *const always[] = {"remover",   "removers",  "removal",   "killer",
                                         "repellent", "repellant", "preventer", "inhibitor",
                                         "puller",    "pullers",   "detector"};
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = 0; i + 1 < tokens->count; i++) {
        if (!s->fault[i] || tokens->at[i].stop != STOP_NONE || !AMONG(tokens, i + 1, remedies)) continue;
        if (!AMONG(tokens, i + 1, always) && !AMONG(tokens, i, damage)) continue;
        scope_mark(s, i, i + 2, STANCE_OTHER, i + 1);
    }
}

static bool is_reading(const struct note *note) {
    const struct family *family = note->record->family;
    return family && (text_same(family->rule.id, "books") || text_same(family->rule.id, "paper"));
}

// "Book on woodworm and dry rot": up to the next sign.
static void read_subject(struct scope *s) {
    static const char *const leads[] = {"on", "about", "concerning", "regarding", "explaining"};
    static const char *const places[] = {"the",   "its",   "a",       "one",  "both",   "each",
                                         "paper", "board", "front",   "back", "cover",  "spine",
                                         "linen", "card",  "canvas",  "this", "inside", "page",
                                         "pages", "edges", "corners", "top",  "all",    "every"};
    const struct tokens *tokens = &s->note->tokens;
    if (!is_reading(s->note)) return;
    for (size_t i = 1; i + 1 < tokens->count; i++) {
        if (s->note->taken[i - 1] != TAKEN_TYPE || !AMONG(tokens, i, leads) || AMONG(tokens, i + 1, places))
            continue;
        size_t to = i + 1;
        while (to < tokens->count && tokens->at[to].stop == STOP_NONE && !token_is(tokens, to, "with") &&
               !token_is(tokens, to, "has") && !token_is(tokens, to, "but"))
            to++;
        scope_mark(s, i + 1, to, STANCE_OTHER, i);
        return;
    }
}

// "Drawing of a worn out cart horse", "print of a ruined abbey": what it shows.
static void read_picture(struct scope *s) {
    static const char *const articles[] = {"a", "an"};
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = 1; i + 2 < tokens->count; i++) {
        if (s->note->taken[i - 1] != TAKEN_TYPE || !token_is(tokens, i, "of")) continue;
        size_t at = AMONG(tokens, i + 1, articles) ? i + 2 : i + 1, to = at;
        while (to < tokens->count && s->fault[to] && tokens->at[to].stop == STOP_NONE) to++;
        bool noun = to > at && to < tokens->count && tokens->at[to].kind == TOKEN_WORD &&
                    !token_is(tokens, to, "and") && !token_is(tokens, to, "on") &&
                    !token_is(tokens, to, "in");
        if (noun && at > i + 1) scope_mark(s, at, to, STANCE_OTHER, i);
        return;
    }
}

// "Called The Cracked Bell": the capitals behind it, with the small words between them.
static void read_name(struct scope *s) {
    static const char *const leads[] = {"called", "titled", "entitled", "named"};
    static const char *const small[] = {"the", "of", "and", "a", "in", "on", "for", "to"};
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = 0; i + 1 < tokens->count && !tokens->shouts; i++) {
        if (!AMONG(tokens, i, leads)) continue;
        size_t to = i + 1;
        while (to < tokens->count && tokens->at[to].stop == STOP_NONE &&
               (tokens->at[to].capital || AMONG(tokens, to, small)))
            to++;
        scope_mark(s, i + 1, to, STANCE_OTHER, i);
    }
}

// "Shattered glass effect", "distressed look": what it is made to look like.
static void read_looks(struct scope *s) {
    static const char *const looks[] = {"effect", "effects", "style", "look", "motif", "collage", "illusion"};
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = 0; i < tokens->count; i++)
        for (size_t at = i + 1; s->fault[i] && at < i + 3 && tokens->at[at - 1].stop == STOP_NONE; at++)
            if (AMONG(tokens, at, looks) && !s->fault[at]) scope_mark(s, i, at, STANCE_OTHER, at);
}

// "For mending torn sails", "takes rust off in minutes", "to replace mine": what it is for, or another thing.
static void read_uses(struct scope *s) {
    static const char *const cues[] = {
        "for mending",    "for cutting",      "for making",    "for picking up",       "for removing",
        "for repairing",  "for hiding",       "for catching",  "for covering",         "for filling",
        "for getting",    "for drilling",     "for punching",  "for treating",         "for cleaning",
        "for darning",    "for patching",     "for killing",   "for keeping",          "for stopping",
        "for preventing", "for pulling",      "for smoothing", "for boring",           "keeps out",
        "keeps the damp", "keeps moths",      "takes rust",    "takes the rust",       "gets rust",
        "gets stains",    "removes",          "in case of",    "in case the",          "to replace mine",
        "to replace a",   "replace a broken", "my other one",  "the other one i have", "mine had",
        "mine has",       "unlike mine",      "should ever",   "ever wears out",       "patch kit",
        "before it gets", "to stop it",       "to stop them",  "protects against",     "guards against",
        "prevents"};
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        size_t n = token_longest(tokens, i, cues, COUNT(cues));
        if (!n) continue;
        size_t to = i + n;
        while (to < tokens->count && tokens->at[to].stop == STOP_NONE && !token_is(tokens, to, "but")) to++;
        scope_mark(s, i, to, STANCE_OTHER, i);
    }
}

// "None is chipped, one is cracked", "none are torn, a few creases": another statement.
static bool opens_other(const struct scope *s, size_t i) {
    static const char *const words[] = {"one",     "two",  "three", "some", "a",
                                        "several", "most", "just",  "only"};
    const struct tokens *tokens = &s->note->tokens;
    return scope_states_own(tokens, i) || AMONG(tokens, i, words);
}

// "None are loose": all of them are not.
static void read_none(struct scope *s) {
    static const char *const verbs[] = {"is", "are", "was", "were", "has", "have", "looks", "look"};
    const struct tokens *tokens = &s->note->tokens;
    for (size_t i = 0; i + 1 < tokens->count; i++)
        if (token_is(tokens, i, "none") && AMONG(tokens, i + 1, verbs)) {
            size_t to = i + 1, end = scope_clause_end(s, i + 1);
            while (to < end && !(tokens->at[to].stop == STOP_COMMA && to + 1 < end && opens_other(s, to + 1)))
                to++;
            scope_mark(s, i + 1, to, STANCE_DENIED, i);
        }
}

// "White plate, black edge", "jug with a green rim": where the thing is described, how it is painted. Of
// metal and mirrors the same words tell what has become of them.
static void read_trim(struct scope *s) {
    static const char *const colors[] = {"black", "green", "blue",  "white", "brown",  "gold",     "grey",
                                         "gray",  "red",   "cream", "pink",  "yellow", "turquoise"};
    static const char *const trims[] = {"edge",   "edges",   "rim",    "rims",   "band",    "bands",
                                        "border", "borders", "stripe", "trim",   "stripes", "dots",
                                        "handle", "lid",     "leaves", "flowers"};
    static const char *const before[] = {"with", "w", "w/", "and", "a", "an"};
    static const char *const metal[] = {"metalware", "jewelry", "tools", "lighting", "music", "furniture"};
    const struct tokens *tokens = &s->note->tokens;
    const struct record *record = s->note->record;
    if (record->type.value && strstr(record->type.value, "mirror")) return;
    for (size_t i = 0; record->family && i < COUNT(metal); i++)
        if (text_same(record->family->rule.id, metal[i])) return;
    for (size_t i = 1; i + 1 < tokens->count && tokens->at[i].stop < STOP_CLAUSE; i++) {
        bool found = s->fault[i] && AMONG(tokens, i, colors) && AMONG(tokens, i + 1, trims);
        if (!found || !(tokens->at[i - 1].stop == STOP_COMMA || AMONG(tokens, i - 1, before))) continue;
        bool ends =
            i + 2 >= tokens->count || tokens->at[i + 2].stop != STOP_NONE || token_is(tokens, i + 2, "and");
        if (ends) scope_mark(s, i, i + 2, STANCE_OTHER, i);
    }
}

void scope_topic(struct scope *s) {
    read_trim(s);
    read_remedies(s);
    read_subject(s);
    read_name(s);
    read_looks(s);
    read_picture(s);
    read_uses(s);
    read_none(s);
}
