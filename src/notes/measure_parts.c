// SPDX-License-Identifier: MIT
// Of what a figure is the measure: a part that stands before it ("blade 3 in") or behind ("3 in blade"), what
// it leaves out ("without the handle"), or the thing.
#include "notes/measure_group.h"

#include <string.h>

#include "notes/any.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof list / sizeof *list)

enum { SHORT_MM_MOST = 900 }; // a base or a collar is no longer

static bool is_between(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "is", "are", "was", "measures", "measure", "about", "the", ":", "itself",
               "runs", "s", "of", "opens", "has", "-", "at", "on", "it");
}

static const char *part_before(struct note *note, size_t from, struct part *part) {
    for (size_t n = 0; n < 3 && from > 0 && is_between(note, from - 1); n++) {
        if (token_is(&note->tokens, from - 1, "has") || token_is(&note->tokens, from - 1, "it")) return NULL;
        from--;
    }
    if (!from || !part_at(note, from - 1, part)) return NULL;
    // "of the thing" before it: "on the base 8 in" says where a fault is, not what is measured.
    bool after_place =
        from > 1 && (token_is(&note->tokens, from - 2, "the") || token_is(&note->tokens, from - 2, "its")) &&
        from > 2 &&
        ANY(&note->tokens, from - 3, "on", "at", "to", "near", "by", "under", "with", "in", "from");
    bool place = from > 1 && ANY(&note->tokens, from - 2, "on", "at", "no", "without", "missing", "w/o",
                                 "with", "w/", "in");
    // What a note begins with is the thing, though it may be a part of other things: "oak shelf 30 in".
    enum { NAME_WORDS = 3 };
    bool thing = from > 1 && from <= NAME_WORDS + 1 && note_clause_from(note, from - 1, STOP_COMMA) == 0;
    return thing || after_place || place || note->tokens.at[from - 1].stop != STOP_NONE ? NULL : part->name;
}

const char *measure_part_behind(const struct note *note, size_t to, struct part *part, size_t *taken) {
    enum { ADJECTIVES_MOST = 2 };
    for (size_t k = 0; k <= ADJECTIVES_MOST; k++) {
        if (to + k >= note->tokens.count || note->tokens.at[to + k].kind != TOKEN_WORD) return NULL;
        if (part_at(note, to + k, part)) {
            // "8 inch base plate": the part names a thing of its own.
            *taken = k + 1;
            return part->name;
        }
        if (ANY(&note->tokens, to + k, "with", "and", "no", "has", "of", "the", "a", "an", "on", "in", "at",
                "but", "to", "or", "by", "around", "from", "is", "not", "without", "for", "it", "each",
                "overall", "total", "missing"))
            return NULL;
    }
    return NULL;
}

// "12 inches tall without the handle", "9 in not counting the lid": what the figure leaves out or takes in.
static bool left_out(struct note *note, struct group *group) {
    static const char *const cues[] = {"without counting",
                                       "without including",
                                       "without",
                                       "w/o",
                                       "not counting",
                                       "not including",
                                       "excluding",
                                       "minus",
                                       "less",
                                       "including",
                                       "counting",
                                       "incl"};
    enum { WITHOUT = 9 }; // of them leave something out
    const struct tokens *tokens = &note->tokens;
    for (size_t k = 0; k < COUNT(cues); k++) {
        size_t taken = token_phrase(tokens, group->to, cues[k]), at = group->to + taken;
        if (!taken) continue;
        if (ANY(tokens, at, ".", "the", "its")) at++;
        struct part part;
        size_t end = at + 1;
        bool known = part_at(note, at, &part) || ANY(tokens, at, "finial", "stopper", "cover", "glass");
        if (!known || note->fault_word[at] || (end < tokens->count && tokens->at[end].stop == STOP_NONE))
            return false;
        group->of =
            arena_format(note->arena, "%s %s", k < WITHOUT ? "without" : "with", note_words(note, at, end));
        group->to = end;
        return true;
    }
    return false;
}

// "With a 2 in iron", "w/ 3 inch casters": a part that no list has.
static bool names_unknown_part(struct note *note, struct group *group) {
    const struct tokens *tokens = &note->tokens;
    size_t from = group->from, to = group->to;
    struct word_entry entry;
    if (group->count > 1 || group->sides[0].dimension.name || from == 0 || to >= tokens->count) return false;
    if (ANY(tokens, from - 1, "a", "an", "its")) from--;
    if (from == 0 || !ANY(tokens, from - 1, "with", "w/", "w") || tokens->at[to].kind != TOKEN_WORD ||
        !word_at(note, to, (1u << USE_THING) | (1u << USE_PART) | (1u << USE_MATERIAL), &entry))
        return false;
    if (to + 1 < tokens->count && tokens->at[to + 1].stop == STOP_NONE &&
        !ANY(tokens, to + 1, "and", "on", "in", "that", "with"))
        return false;
    group->of = note_words(note, to, to + 1);
    group->sides[0].dimension.name = "size";
    return true;
}

// "Pan 12 in across", "inside is 11 by 7", "each panel 5 ft by 20 in": a part that opens its clause, where
// the dimension is said; of other parts it would have to be guessed.
static const char *clause_part(const struct note *note, size_t from) {
    const struct tokens *tokens = &note->tokens;
    struct word_entry entry;
    for (size_t n = 0; n < 3 && from > 0 && is_between(note, from - 1); n++) from--;
    if (from < 2) return NULL;
    size_t noun = from - 1, open = noun;
    if (tokens->at[noun].kind != TOKEN_WORD || note->fault_word[noun] || tokens->at[noun].stop != STOP_NONE)
        return NULL;
    bool named = ANY(tokens, noun, "inside", "interior", "outside", "glass", "image", "sight", "print",
                     "picture", "panel", "panels", "pan", "kneehole", "mirror", "opening", "blank") ||
                 word_at(note, noun, 1u << USE_PART, &entry) == 1;
    if (!named || ANY(tokens, noun, "it", "overall", "total", "set", "body", "pair", "size", "one", "piece"))
        return NULL;
    while (open > 0 && ANY(tokens, open - 1, "the", "its", "each", "both", "inner", "outer", "main", "top",
                           "lower", "upper", "inside", "brass", "glass", "iron", "wooden"))
        open--;
    if (open == 0 || note_clause_from(note, noun, STOP_COMMA) == 0) return NULL;
    bool opens = tokens->at[open - 1].stop >= STOP_COMMA || tokens->at[open].starts ||
                 ANY(tokens, open - 1, "and", "but", "(", "with");
    return opens ? note_words(note, noun, noun + 1) : NULL;
}

// "Hole for the watch is 1 3/4 in", "outlet is 2 in": what its clause is about, where that is no word for the
// thing.
static const char *own_subject(const struct note *note, size_t from) {
    const struct tokens *tokens = &note->tokens;
    struct word_entry entry;
    while (from > 0 && ANY(tokens, from - 1, "about", "only", "just", "roughly", "around")) from--;
    bool said = from > 1 && ANY(tokens, from - 1, "is", "are", "measures");
    if (from < 2) return NULL;
    size_t start = note_clause_from(note, from - 1, STOP_COMMA);
    if (start == 0 || (!said && start + 1 != from)) return NULL; // "spoon, eleven inches, bowl 3 in"
    while (ANY(tokens, start, "the", "its", "and", "a", "each", "center", "inner", "outer")) start++;
    if (start + (said ? 1 : 0) >= from || tokens->at[start].kind != TOKEN_WORD || note->fault_word[start] ||
        note->taken[start] != TAKEN_NOT ||
        ANY(tokens, start, "it", "this", "that", "they", "thing", "whole", "overall", "height", "width",
            "length", "size", "which", "piece", "all", "both", "mine", "total", "what", "here", "longest",
            "depth", "diameter"))
        return NULL;
    bool noun = ANY(tokens, start, "hole", "slot", "outlet", "inlet", "gap", "distance", "opening", "bore",
                    "thread", "socket", "well", "hub") ||
                word_at(note, start, 1u << USE_PART, &entry) == 1;
    return noun ? note_words(note, start, start + 1) : NULL;
}

void measure_find_part(struct note *note, struct group *group) {
    struct part part;
    struct side *first = &group->sides[0];
    if (group->of) return;
    if (left_out(note, group) && (first->dimension.name || group->count > 1)) return;
    size_t taken = 0;
    const char *kind = first->amount.unit->kind;
    const char *behind = measure_part_behind(note, group->to, &part, &taken);
    static const char *const longs[] = {"cord",  "cable",  "flex",  "lead",    "chain",  "strap", "handle",
                                        "hose",  "pole",   "shaft", "antenna", "aerial", "rod",   "pipe",
                                        "blade", "fringe", "reel",  "tape",    "hook"};
    bool far =
        kind && text_same(kind, "mm") && first->amount.value * first->amount.unit->factor > SHORT_MM_MOST;
    for (size_t k = 0; behind && far && k < COUNT(longs); k++) far = !text_same(longs[k], behind);
    bool posed = behind && ANY(&note->tokens, group->to + taken, "up", "down", "raised", "lowered");
    if (posed) behind = NULL;                             // "10 in tall handle up"
    if (behind && (far || group->follows)) behind = NULL; // "oars 7ft leather collars"
    if (behind && group->count == 1 && (!first->dimension.name || !first->dimension.noun) &&
        (!kind || text_same(kind, "mm"))) {
        group->of = behind;
        if (!first->dimension.name) first->dimension.name = part.measure;
        return;
    }
    if (names_unknown_part(note, group)) return;
    group->of = part_before(note, group->from, &part);
    if (!group->of && (first->dimension.name || group->count > 1) && kind && text_same(kind, "mm") &&
        !(first->dimension.of && group->count == 1))
        group->of = clause_part(note, group->from);
    if (group->of && group->count == 1 && !first->dimension.name && kind && text_same(kind, "mm"))
        first->dimension.name = part.measure;
    if (!group->of && group->count == 1 && !first->dimension.name && kind && text_same(kind, "mm") &&
        (group->of = own_subject(note, group->from)) != NULL)
        first->dimension.name = "size";
}
