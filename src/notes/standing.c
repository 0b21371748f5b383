// SPDX-License-Identifier: MIT
// First what follows decides: the thing or a part of it ("green glass shade"), a fault ("black mark": its
// color, not the thing's). Where nothing follows, what stands before: a verb with its subject ("the lid is
// tin"), "made of", or nothing but more such words between two commas ("blue and white"). A word that stands
// otherwise ("comes down", "laid flat") is no value.
#include "notes/any.h"
#include "notes/standing.h"

#include <string.h>

#include "notes/chunk.h"
#include "notes/number.h"
#include "notes/standing_parts.h"
#include "text/utf8.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static bool any(const struct note *note, size_t i, const char *const *words, size_t count) {
    for (size_t k = 0; k < count; k++)
        if (token_is(&note->tokens, i, words[k])) return true;
    return false;
}

// Nouns that stand for the thing's own look, and shape or number words for the thing itself.
static bool is_vague(const struct note *note, size_t i) {
    static const char *const words[] = {
        "color",      "colour",     "colored",     "coloured",  "finish",  "glaze",        "design",
        "pattern",    "trim",       "tone",        "toned",     "body",    "ware",         "piece",
        "one",        "ones",       "decoration",  "accents",   "accent",  "motif",        "print",
        "stripe",     "stripes",    "style",       "shape",     "shaped",  "type",         "set",
        "pair",       "item",       "thing",       "detail",    "details", "look",         "wash",
        "weave",      "fabric",     "material",    "theme",     "work",    "construction", "plaid",
        "check",      "ground",     "background",  "dots",      "spots",   "dot",          "overall",
        "throughout", "inside",     "outside",     "lettering", "flecks",  "swirl",        "swirls",
        "lines",      "line",       "numbers",     "stuff",     "metal",   "halves",       "half",
        "sponging",   "stenciling", "stencilling", "graining",  "banding", "speckling",    "mottling",
        "tooling",    "strips",     "strip"};
    return any(note, i, words, COUNT(words));
}

// "Blue enamel chipped": the fault is said of the enamel, not the enamel of the fault.
static bool is_done(const struct token *t) {
    static const char *const odd[] = {"worn", "torn", "broken", "bent", "split", "gone", "missing", "loose"};
    size_t n = strlen(t->fold);
    if (n > 4 && text_same(t->fold + n - 2, "ed")) return true;
    for (size_t i = 0; i < COUNT(odd); i++)
        if (text_same(t->fold, odd[i])) return true;
    return false;
}

struct head {
    enum ahead what;
    size_t from, to; // of the last noun
};

static bool joins(const struct note *note, size_t i) { // "red and black rug", "black & white"
    struct word_entry entry;
    static const char *const words[] = {"and", "&", "-", "or", "/"};
    return any(note, i, words, COUNT(words)) && word_at(note, i + 1, standing_uses, &entry) > 0 &&
           !standing_is_stop(note, i + 1);
}

// "Metal frame", "line guard", "trim ring": such a word before a part is of that part. A shade or a body is
// most of what one sees of a thing.
static bool is_vague_of_part(const struct note *note, size_t at) {
    struct word_entry entry;
    const struct tokens *tokens = &note->tokens;
    return ANY(tokens, at, "metal", "line", "trim", "body", "fabric", "stripe", "check", "plaid", "print") &&
           tokens->at[at].stop == STOP_NONE && at + 1 < tokens->count && !standing_is_stop(note, at + 1) &&
           word_at(note, at + 1, 1u << USE_PART, &entry) > 0 && !is_vague(note, at + 1) &&
           !ANY(tokens, at + 1, "shade", "shades") && !standing_is_type(note, at + 1);
}

static size_t pass(const struct note *note, size_t at, struct head *head) {
    struct word_entry entry;
    struct noun_found noun;
    size_t part = word_at(note, at, 1u << USE_PART, &entry);
    size_t value = word_at(note, at, standing_uses, &entry);
    bool is_noun = noun_at(note, at, &noun), vague = is_vague(note, at);
    size_t n = is_noun && noun.to - at > part ? noun.to - at : part;
    // "Ivory coloured tip": the tip's
    if (ANY(&note->tokens, at, "colored", "coloured", "toned", "tone", "effect") &&
        at + 1 < note->tokens.count && note->tokens.at[at].stop == STOP_NONE && !chunk_breaks(note, at + 1) &&
        note->tokens.at[at + 1].stop == STOP_NONE)
        return 1;
    if (vague && is_vague_of_part(note, at)) return 1;
    if (vague) {
        *head = (struct head){AHEAD_THING, at, at + 1};
        return 1;
    }
    if (value && value >= n) {
        uint32_t kind = entry.uses;
        const struct token *last = &note->tokens.at[at + value - 1];
        struct word_entry itself; // "canvas" is no plural
        bool plural =
            last->one != last->fold && !(wordbook_find(note->book, last->fold, strlen(last->fold), &itself) &&
                                         itself.uses & (1u << USE_MATERIAL));
        bool look = kind & ((1u << USE_STYLE) | (1u << USE_COLOR)) || (kind & (1u << USE_SHAPE) && !plural);
        bool plain =
            kind & ~(1u << USE_THEME) & standing_uses && !plural; // "grey stoneware"; but "green rhinestones"
        if (!look && !plain && (part || (is_noun && !noun.gated) || kind & (1u << USE_THEME)))
            *head = (struct head){AHEAD_PART, at, at + value};
        return value;
    }
    if (!n) {
        if (note->tokens.at[at].kind != TOKEN_FIGURE && head->what != AHEAD_PART)
            *head = (struct head){AHEAD_OTHER, at, at + 1};
        return 1;
    }
    if (head->what != AHEAD_PART && !part && standing_side(note, at) &&
        (standing_is_stop(note, at + 1) || chunk_breaks(note, at + 1))) { // but "oak side table"
        *head = (struct head){AHEAD_PART, at, at + 1};
        return 1;
    }
    if (head->what == AHEAD_PART && !part && noun.gated) return n; // "red handle wear": of the handle
    bool goods = part || (is_noun && !noun.gated) || (is_noun && (noun.uses & (1u << USE_PART)));
    *head = (struct head){goods ? AHEAD_PART : AHEAD_OTHER, at, at + n};
    return n;
}

// A word behind which no noun is to be expected: "all over", "obviously".
static bool is_past(const struct note *note, size_t i) {
    static const char *const words[] = {
        "all",   "throughout", "together", "maybe", "too",  "though", "inside", "outside", "according", "per",
        "mixed", "assorted",   "mainly",   "alike", "made", "that",   "going",  "shading", "blending"};
    const char *word = note->tokens.at[i].fold;
    size_t n = strlen(word);
    return any(note, i, words, COUNT(words)) || (n > 5 && text_same(word + n - 2, "ly"));
}

static bool is_done_run(const struct note *note,
                        size_t at) { // "enamel chipped", all of it words of one fault
    for (; at < note->tokens.count && note->fault_word[at]; at++)
        if (is_done(&note->tokens.at[at])) return true;
    return false;
}

// "Brown leather strap cracked", all of it words of one fault: the color is the strap's.
static bool part_of_run(const struct note *note, size_t at, struct head *head) {
    static const char *const lacks[] = {"no", "without", "missing", "minus", "lacks", "lost", "w/o"};
    struct word_entry entry;
    if (any(note, at, lacks, COUNT(lacks))) return false;
    for (; at < note->tokens.count && note->fault_word[at] && !is_done(&note->tokens.at[at]); at++) {
        size_t n = word_at(note, at, 1u << USE_PART, &entry);
        if (n && !(entry.uses & (1u << USE_MATERIAL))) {
            *head = (struct head){AHEAD_PART, at, at + n};
            return true;
        }
        if (note->tokens.at[at].stop != STOP_NONE) break;
    }
    return false;
}

static bool is_said_behind(const struct note *note, size_t at) { // "brass font polished bright"
    struct word_entry entry;
    struct noun_found noun;
    return word_at(note, at, (1u << USE_FINISH) | (1u << USE_TECHNIQUE), &entry) > 0 &&
           !noun_at(note, at, &noun);
}

// "Blue paint faded", "green enamel chipped": its color, whatever became of it; but "white paint splashes".
bool standing_is_paint(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    struct word_entry entry;
    if (!ANY(tokens, i, "paint", "paintwork", "enamel", "lacquer", "japanning", "varnish", "finish") ||
        tokens->at[i].stop != STOP_NONE)
        return false;
    if (ANY(tokens, i, "enamel") && !note->fault_word[i + 1] &&
        !ANY(tokens, i + 1, "shade", "shades", "body") &&
        (word_at(note, i + 1, 1u << USE_PART, &entry) || standing_side(note, i + 1)))
        return false;               // "white enamel dial"
    if (ANY(tokens, i + 1, "over")) // "gold paint over the lot"
        return ANY(tokens, i + 2, "the", "all") && ANY(tokens, i + 3, "lot", "whole", "thing");
    return !ANY(tokens, i + 1, "splashes", "splash", "spots", "spot", "drips", "drip", "marks", "mark",
                "specks", "splatter", "spatter", "on", "down", "stains", "stain", "smears", "lines", "flecks",
                "splats");
}

static struct head look_ahead(const struct note *note, size_t to, size_t *end) {
    struct head head = {AHEAD_NOTHING, to, to};
    size_t at = to;
    if (standing_is_paint(note, to)) return (struct head){AHEAD_THING, to, to + 1};
    for (int n = 0; n < 7; n++) {
        if (head.what == AHEAD_PART && joins(note, at)) return head; // "brass pans & marble slab"
        while (joins(note, at)) at++;
        *end = at;
        if (standing_is_type(note, at)) return (struct head){AHEAD_THING, at, at + 1};
        if (standing_is_stop(note, at) || is_past(note, at)) return head;
        // "Ukulele mahogany missing 1 string": another statement begins
        static const char *const lacks[] = {"missing", "lacks", "needs", "lost"};
        bool lacking = any(note, at, lacks, COUNT(lacks)) && at + 1 < note->tokens.count &&
                       note->tokens.at[at].stop == STOP_NONE && !standing_is_stop(note, at + 1) &&
                       !ANY(&note->tokens, at + 1, "from", "on", "in", "at");
        if (lacking && head.what != AHEAD_PART) return head;
        static const char *const nots[] = {"no", "without", "minus", "w/o"};
        if (head.what != AHEAD_PART && any(note, at, nots, COUNT(nots))) return head; // "blue bird no lid"
        if (note->fault_word[at] && head.what != AHEAD_PART && part_of_run(note, at, &head)) return head;
        if (note->fault_word[at] && head.what != AHEAD_PART && !is_vague(note, at))
            return is_done_run(note, at) ? head : (struct head){AHEAD_FAULT, at, at + 1};
        if (chunk_breaks(note, at) || (note->fault_word[at] && !is_vague(note, at))) return head;
        if (head.what == AHEAD_PART && is_said_behind(note, at)) return head;
        struct word_entry next; // "oak staves iron hoops"
        if (head.what == AHEAD_PART && at > to &&
            note->tokens.at[at - 1].one != note->tokens.at[at - 1].fold &&
            word_at(note, at, 1u << USE_MATERIAL, &next) && !ANY(&note->tokens, at, "glass"))
            return head;
        at += pass(note, at, &head);
        if (head.what == AHEAD_THING) break;
    }
    *end = at;
    return head;
}

// --- what stands before ---

static bool is_degree(const struct note *note, size_t i) {
    static const char *const words[] = {
        "dark",       "very",       "mostly",    "all",       "really",    "light",   "bright",    "pretty",
        "kind",       "sort",       "maybe",     "probably",  "kinda",     "sorta",   "a",         "an",
        "the",        "nice",       "deep",      "pale",      "still",     "also",    "some",      "mainly",
        "partly",     "soft",       "likely",    "plain",     "solid",     "with",    "and",       "&",
        "or",         "think",      "i",         "fully",     "old",       "perhaps", "early",     "real",
        "rather",     "both",       "obviously", "two",       "three",     "four",    "-",         "(",
        "little",     "lots",       "possibly",  "just",      "is",        "are",     "was",       "it",
        "its",        "it's",       "they",      "this",      "thing",     "looks",   "feels",     "seems",
        "guess",      "like",       "not",       "marked",    "tag",       "says",    "i'd",       "say",
        "okay",       "ok",         "so",        "oh",        "well",      "pure",    "fairly",    "sure",
        "believe",    "reckon",     "chippy",    "chalky",    "actually",  "that's",  "that",      "most",
        "many",       "colored",    "coloured",  "toned",     "tone",      "effect",  "certainly", "clearly",
        "completely", "definitely", "entirely",  "evidently", "genuinely", "largely", "plainly",   "truly",
        "wholly",     "worn",       "faded",     "tired",     "heavy",     "fine",    "coarse",    "thick",
        "thin",       "new",        "modern",    "later",     "good",      "tatty",   "original",  "lovely",
        "beautiful",  "sturdy",     "great",     "small",     "big",       "large",   "tall",      "stout",
        "supple",     "chunky",     "slim"};
    bool this_one = i > 0 && token_is(&note->tokens, i, "one") && ANY(&note->tokens, i - 1, "this", "that");
    return this_one || any(note, i, words, COUNT(words));
}

static bool is_link(const struct note *note, size_t i) {
    static const char *const words[] = {"is",    "are",  "looks", "was", "feels",
                                        "seems", "were", "in",    "of",  "isn't"};
    return any(note, i, words, COUNT(words));
}

static bool is_dressed(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "covered", "recovered", "upholstered", "reupholstered", "lined", "bound",
               "dressed", "finished", "wrapped", "trimmed", "painted", "repainted", "done", "clad", "cased",
               "framed");
}

// "Wool on burlap", "silver on copper": a stuff of the thing, told just before.
static bool is_stuff_said(const struct note *note, size_t i) {
    struct word_entry entry;
    return note->taken[i] == TAKEN_VALUE && word_at(note, i, 1u << USE_MATERIAL, &entry) == 1;
}

// "Map on linen", "plan drawn on vellum": what a picture or a writing is on.
static bool is_ground(const struct note *note, size_t from, size_t on) {
    if (on > 0 && ANY(&note->tokens, on, "over") && note->taken[on - 1] == TAKEN_VALUE)
        return true; // "gilt over brass"
    return token_is(&note->tokens, on, "on") && on > 0 &&
           ANY(&note->tokens, from, "linen", "silk", "canvas", "cloth", "paper", "card", "cardboard",
               "vellum", "parchment", "cotton", "calico", "velvet", "satin", "board", "hardboard", "oilcloth",
               "rice", "burlap", "hessian", "jute", "muslin", "copper", "wood", "oak", "pine", "steel",
               "iron", "brass", "tin", "nickel") &&
           (standing_is_type(note, on - 1) || is_stuff_said(note, on - 1) ||
            standing_is_sheet(note, from, on) ||
            ANY(&note->tokens, on - 1, "printed", "painted", "drawn", "mounted", "laid", "done", "worked",
                "written", "engraved", "beads", "beadwork", "embroidery", "applique", "stuck", "pasted",
                "colored"));
}

// "Pears and leaves on black", "gilt on red,": the color of what a picture is on.
static bool is_color_ground(const struct note *note, size_t from, size_t on) {
    struct word_entry entry;
    size_t n = word_at(note, from, 1u << USE_COLOR, &entry);
    return n && on > 0 && ANY(&note->tokens, on, "on") && standing_is_stop(note, from + n) &&
           note->tokens.at[on - 1].stop == STOP_NONE &&
           (note->taken[on - 1] == TAKEN_VALUE || word_at(note, on - 1, 1u << USE_THEME, &entry) == 1);
}

// "Maps hand coloured", "panels carved": done to the part that stands right before it.
static bool is_worked_part(const struct note *note, size_t from) {
    struct word_entry entry;
    if (!word_at(note, from, (1u << USE_TECHNIQUE) | (1u << USE_FINISH), &entry)) return false;
    const char *word = note->tokens.at[from].fold;
    const char *last = strrchr(entry.print, ' ');
    size_t n = strlen(word), m = strlen(last ? last : entry.print);
    bool participle = (n > 3 && text_same(word + n - 2, "ed")) ||
                      (m > 3 && text_same(entry.print + strlen(entry.print) - 2, "ed"));
    return participle && from > 0 && note->tokens.at[from - 1].stop == STOP_NONE;
}

// "One piece of beech", "a solid block of teak".
static bool is_one_piece(const struct note *note, size_t of) {
    const struct tokens *tokens = &note->tokens;
    return of > 1 && token_is(tokens, of, "of") &&
           ANY(tokens, of - 1, "piece", "block", "slab", "length", "lump") &&
           ANY(tokens, of - 2, "one", "single", "solid");
}

static bool is_participle(const struct tokens *tokens, size_t i) {
    size_t n = strlen(tokens->at[i].fold);
    return (tokens->at[i].kind == TOKEN_WORD && n > 5 && text_same(tokens->at[i].fold + n - 2, "ed")) ||
           ANY(tokens, i, "cut", "blown", "spun", "wrought", "cast");
}

static enum standing behind(const struct note *note, size_t from, const char **of) {
    size_t at = from;
    for (int n = 0; n < 9 && at > 0; n++) {
        size_t prev = at - 1;
        if (n == 0 && ANY(&note->tokens, from, "clear") && (*of = standing_part_before(note, from)) != NULL)
            return STANDING_PART; // "lens clear"
        if (n == 0 && is_worked_part(note, from) && (*of = standing_part_before(note, from)) != NULL)
            return STANDING_PART; // "maps hand coloured"
        if (n == 0 && ((*of = standing_part_spoken_of(note, prev)) != NULL ||
                       (*of = standing_bracketed_by(note, prev)) != NULL))
            return STANDING_PART;
        if (standing_is_stop(note, prev) || standing_is_type(note, prev) ||
            note->taken[prev] == TAKEN_MEASURE || note->taken[prev] == TAKEN_DATE)
            return STANDING_THING;
        if (is_link(note, prev) && prev > 0 &&
            ANY(&note->tokens, prev - 1, "paint", "paintwork", "finish", "glaze", "wood", "timber", "metal",
                "material", "fabric", "stone", "cloth", "ground", "style", "colour", "color", "pattern"))
            return STANDING_THING; // "paint was red"
        if (is_link(note, prev) && (*of = standing_part_before(note, prev)) != NULL) return STANDING_PART;
        struct word_entry stuff;
        if (is_link(note, prev) && word_at(note, from, 1u << USE_MATERIAL, &stuff) &&
            (*of = standing_subject(note, prev)) != NULL)
            return STANDING_PART;
        if (ANY(&note->tokens, prev, "other") && prev > 0 && ANY(&note->tokens, prev - 1, "the"))
            return STANDING_THING; // "the other turkey red"
        static const char *const sorts[] = {"sort", "kind", "shade", "type"};
        static const char *const parts[] = {"percent", "%", "pct"};
        if (any(note, prev, parts, COUNT(parts)) && prev > 0) { // "100 percent wool"
            at = prev - 1;
            continue;
        }
        if (token_is(&note->tokens, prev, "of") && prev > 0 && any(note, prev - 1, sorts, COUNT(sorts))) {
            at = prev - 1;
            continue;
        }
        if (token_is(&note->tokens, prev, "in") && prev > 1 && is_dressed(note, prev - 1)) {
            *of = ANY(&note->tokens, prev - 1, "lined") ? "lining" : standing_part_before(note, prev - 1);
            return *of ? STANDING_PART : STANDING_THING; // "seat recovered in green velvet"
        }
        if ((n == 0 && (is_ground(note, from, prev) || is_color_ground(note, from, prev))) ||
            (n == 1 && ANY(&note->tokens, prev, "over") && is_ground(note, from, prev)))
            return STANDING_THING; // "lace over cream silk"
        if (token_is(&note->tokens, prev, "with") && n == 0 &&
            (*of = standing_part_before(note, prev)) != NULL)
            return STANDING_PART; // "base with basketweave"
        if (prev > 1 && is_link(note, prev - 1) && !is_link(note, prev) && note->taken[prev] == TAKEN_NOT &&
            !is_degree(note, prev) && !chunk_breaks(note, prev) &&
            ANY(&note->tokens, prev - 1, "is", "are") && (*of = standing_part_before(note, prev - 1)) != NULL)
            return STANDING_PART; // "blade is blunt steel"
        if (ANY(&note->tokens, prev, "with", "in") && prev > 1 &&
            (*of = ANY(&note->tokens, prev - 1, "backed")    ? "back"
                   : ANY(&note->tokens, prev - 1, "lined")   ? "lining"
                   : ANY(&note->tokens, prev - 1, "faced")   ? "face"
                   : ANY(&note->tokens, prev - 1, "tipped")  ? "tip"
                   : ANY(&note->tokens, prev - 1, "edged")   ? "edge"
                   : ANY(&note->tokens, prev - 1, "trimmed") ? "trim"
                   : ANY(&note->tokens, prev - 1, "capped")  ? "cap"
                   : ANY(&note->tokens, prev - 1, "banded")  ? "band"
                                                             : NULL) != NULL)
            return STANDING_PART; // "paper backed with linen"
        if (token_is(&note->tokens, prev, "from") && prev > 0 &&
            ANY(&note->tokens, prev - 1, "hewn", "carved", "cut", "turned", "woven", "built", "made",
                "fashioned", "worked", "shaped", "hollowed", "cast", "forged", "sawn", "formed", "up"))
            return (*of = standing_part_before(note, prev - 1)) ? STANDING_PART : STANDING_THING;
        if (token_is(&note->tokens, prev, "in") || token_is(&note->tokens, prev, "of")) {
            bool thing = prev == 0 || is_one_piece(note, prev) || standing_is_type(note, prev - 1) ||
                         standing_is_stop(note, prev - 1) ||
                         note->taken[prev - 1] == TAKEN_VALUE || // "log cabin in wools"
                         ANY(&note->tokens, prev - 1, "made", "woven", "built", "plaited", "constructed");
            return thing ? STANDING_THING : STANDING_NONE;
        }
        bool worked = prev > 0 && standing_is_stop(note, prev - 1) && !note->fault_word[prev] &&
                      note->taken[prev] == TAKEN_NOT &&
                      is_participle(&note->tokens, prev); // ", slatted teak"
        bool one_piece =
            ANY(&note->tokens, prev, "piece") && prev > 0 && ANY(&note->tokens, prev - 1, "one", "single");
        if (one_piece || worked) {
            at = one_piece ? prev - 1 : prev;
            continue;
        }
        if (note->taken[prev] != TAKEN_VALUE && note->taken[prev] != TAKEN_COUNT && !is_degree(note, prev) &&
            note->tokens.at[prev].kind != TOKEN_FIGURE)
            return note->tokens.flat && !chunk_breaks(note, prev) ? STANDING_THING : STANDING_NONE;
        at = prev;
    }
    return at == 0 ? STANDING_THING : STANDING_NONE;
}

static bool in_first_sentence(const struct note *note, size_t i) {
    for (size_t k = 0; k < i; k++)
        if (note->tokens.at[k].stop >= STOP_SENTENCE) return false;
    return true;
}

// After the value, may the statement be over?
static bool is_over(const struct note *note, size_t from, size_t i) {
    static const char *const words[] = {
        "with", "w/",  "w",        "and",       "but",  "so",         "no",      "or",    "i",     "maybe",
        "?",    "w/o", "without",  "according", "okay", "ok",         "missing", "needs", "lacks", "-",
        "(",    "not", "possibly", "all",       "over", "throughout", "except",  "i'm",   "im",    "they",
        "she",  "he",  "though",   "says",      "per",  "looking",    "as"};
    static const char *const early[] = {"in",     "on",      "for", "by",   "around", "across",
                                        "along",  "under",   "at",  "near", "about",  "from",
                                        "inside", "outside", "has", "it",   "into",   "to"};
    if (standing_is_stop(note, i) || is_past(note, i) || any(note, i, words, COUNT(words))) return true;
    if (ANY(&note->tokens, i, "gone", "going", "weathered", "when")) return true; // "teak gone gray"
    if (ANY(&note->tokens, i, "a") && ANY(&note->tokens, i + 1, "few", "couple"))
        return true; // "most green a few red"
    if (ANY(&note->tokens, i, "on") && ANY(&note->tokens, i + 1, "one", "both", "the", "each") &&
        ANY(&note->tokens, i + 2, "side", "sides", "other", "face", "reverse", "outside", "inside"))
        return true; // "indigo on one side"
    if (in_first_sentence(note, i) && any(note, i, early, COUNT(early))) return true;
    if (from > 0 && note->tokens.at[from].starts && ANY(&note->tokens, i, "is", "are", "still")) return true;
    return note->taken[i] == TAKEN_MEASURE || note->taken[i] == TAKEN_MARK || note->taken[i] == TAKEN_ASIDE ||
           note->taken[i] == TAKEN_VALUE;
}

// "Toaster chrome model 4": behind the thing with nothing but such words between.
static bool is_behind_type(const struct note *note, size_t from) {
    while (from > 0 && (note->taken[from - 1] == TAKEN_VALUE || token_is(&note->tokens, from - 1, "-") ||
                        token_is(&note->tokens, from - 1, "and")))
        from--;
    return from > 0 && standing_is_type(note, from - 1);
}

// A color in the note's first sentence is the thing's, unless the statement tells a fault.
static bool is_early_color(const struct note *note, size_t from) {
    struct word_entry entry;
    if (!word_at(note, from, 1u << USE_COLOR, &entry) || !in_first_sentence(note, from)) return false;
    if (ANY(&note->tokens, from, "clear") && standing_part_before(note, from)) return false;
    static const char *const stray[] = {"mark",   "marks",  "spot",   "spots",    "residue", "smudge",
                                        "specks", "label",  "labels", "tag",      "tags",    "sticker",
                                        "ink",    "box",    "pen",    "light",    "dust",    "fuzz",
                                        "crust",  "marker", "tape",   "lettering"};
    if (any(note, from + 1, stray, COUNT(stray))) return false;
    // "3 balls blue red yellow": of the balls
    size_t noun = from;
    struct noun_found goods;
    while (noun > 0 && word_at(note, noun - 1, 1u << USE_COLOR, &entry) == 1) noun--;
    size_t number;
    if (noun > 1 && number_whole(&note->tokens, noun - 2, &number) > 1 && !standing_is_type(note, noun - 1) &&
        noun_at(note, noun - 1, &goods) && goods.to == noun)
        return false;
    size_t to = note_clause_to(note, from, STOP_COMMA);
    for (size_t i = note_clause_from(note, from, STOP_COMMA); i < to; i++)
        if (note->fault_word[i]) return false;
    return true;
}

// "Jacket green size 40 zipper sticks", "toaster chrome two slice": said between the thing and what is no
// fault.
static bool is_set_off(const struct note *note, size_t from, size_t to) {
    if (to + 1 >= note->tokens.count || !is_behind_type(note, from) || note->fault_word[to]) return false;
    enum taken next = (enum taken)note->taken[to];
    size_t number;
    return next == TAKEN_VALUE || next == TAKEN_MEASURE || next == TAKEN_COUNT || next == TAKEN_MARK ||
           number_whole(&note->tokens, to, &number) > 1;
}

// "Farm shop scales. Cast iron scales with a pan": the thing by its bare noun.
static bool is_thing_again(const struct note *note, size_t to) {
    const char *type = note->record->type.value, *last = type ? strrchr(type, ' ') : NULL;
    return last && to > 0 && text_same(last + 1, note->tokens.at[to - 1].one);
}

// "Oak surround,", "with a brass spigot": what stands behind a stuff and ends the statement is a part, though
// no list has it.
static const char *unknown_part(const struct note *note, size_t from, size_t to, const struct head *head) {
    struct word_entry entry;
    const struct tokens *tokens = &note->tokens;
    if (head->from != to || head->to != to + 1 ||
        !(standing_is_stop(note, head->to) ||
          ANY(tokens, head->to, "with", "w", "w/", "and", "&", "at", "round", "around", "along", "below",
              "above", "between", "across", "under", "over", "let", "set", "near", "running")))
        return NULL;
    if (note->fault_word[to] ||
        ANY(tokens, to, "bright", "clean", "perfect", "shiny", "clear", "sound", "tight"))
        return NULL;
    if (word_at(note, from, 1u << USE_MATERIAL, &entry) != to - from) return NULL;
    struct word_entry look;
    while (
        from > 0 && tokens->at[from - 1].stop == STOP_NONE &&
        (note->taken[from - 1] == TAKEN_VALUE ||
         word_at(note, from - 1, (1u << USE_TECHNIQUE) | (1u << USE_COLOR) | (1u << USE_FINISH), &look) == 1))
        from--; // "blue velvet slope", "embossed tin covering"
    bool opens = from > 0 &&
                 (standing_is_stop(note, from - 1) || ANY(tokens, from - 1, "a", "an", "with", "and", "its"));
    const struct token *word = &tokens->at[to];
    size_t size = strlen(word->fold);
    bool noun = word->kind == TOKEN_WORD && size > 3 && !chunk_breaks(note, to) &&
                strcmp(word->fold + size - 2, "ed") != 0 && strcmp(word->fold + size - 3, "ing") != 0 &&
                strcmp(word->fold + size - 2, "ly") != 0;
    struct noun_found found;
    bool goods = noun_at(note, to, &found) && found.thing;
    bool known = noun_at(note, to, &found) || word_at(note, to, UINT32_MAX, &entry) > 0;
    return opens && noun && known && !goods && !word->capital ? standing_part_words(note, to, to + 1) : NULL;
}

// "Tyres iron.", "handles wood, blade steel": a part and its stuff, and no more.
static const char *bare_part(const struct note *note, size_t from, size_t to) {
    enum { WORDS_MOST = 2 };
    struct word_entry entry;
    // "Bellows green leather,": the words between are of it too
    for (size_t n; !standing_is_stop(note, to) && (n = word_at(note, to, standing_uses, &entry)) > 0;)
        to += n;
    while (from > 0 && note->taken[from - 1] == TAKEN_VALUE) from--;
    if (!standing_is_stop(note, to) && !ANY(&note->tokens, to, "and", "&", "with", "but")) return NULL;
    for (size_t n = WORDS_MOST; n > 0; n--) {
        bool side =
            n == 1 && from > 1 && standing_side(note, from - 1) && ANY(&note->tokens, from - 2, "the", "its");
        if (from < n || (!side && word_at(note, from - n, 1u << USE_PART, &entry) != n) ||
            standing_is_type(note, from - 1))
            continue;
        size_t open = from - n;
        if (open > 0 && ANY(&note->tokens, open - 1, "the", "its")) open--;
        bool opens =
            open == 0 || standing_is_stop(note, open - 1) || ANY(&note->tokens, open - 1, "and", "with");
        struct noun_found noun;
        // "Hinge, brass" is said of the thing; but "Concertina. Bellows green leather"
        bool goods = !side && noun_at(note, from - n, &noun) && noun.thing &&
                     (open == 0 || note->tokens.at[open - 1].stop < STOP_SENTENCE);
        return opens && open > 0 && !goods ? standing_part_words(note, from - n, from) : NULL;
    }
    return NULL;
}

// "Green felt on the bottom", "brass on the corners": where it is tells of which part.
static const char *part_behind(const struct note *note, size_t from, size_t on) {
    const struct tokens *tokens = &note->tokens;
    struct word_entry entry;
    if (!ANY(tokens, on, "on", "to", "around", "round", "under") ||
        !ANY(tokens, on + 1, "the", "its", "each", "both"))
        return NULL;
    size_t at = on + 2;
    while (from > 0 && note->taken[from - 1] == TAKEN_VALUE) from--;
    if (from > 0 && !standing_is_stop(note, from - 1) &&
        !ANY(tokens, from - 1, "with", "and", "a", "has", "some"))
        return NULL;
    if (at >= tokens->count || standing_is_type(note, at) || !standing_is_stop(note, at + 1)) return NULL;
    bool place = standing_side(note, at) || ANY(tokens, at, "inside", "outside", "base", "underside") ||
                 word_at(note, at, 1u << USE_PART, &entry) == 1;
    return place ? standing_part_words(note, at, at + 1) : NULL;
}

// "Legs painted green", "repainted black some time": what was painted is so, whatever follows.
bool standing_painted(const struct note *note, size_t from) {
    struct word_entry entry;
    return from > 0 && word_at(note, from, 1u << USE_COLOR, &entry) > 0 &&
           ANY(&note->tokens, from - 1, "painted", "repainted", "sprayed", "enamelled", "lacquered",
               "varnished", "japanned", "overpainted", "dyed", "tarred", "glazed", "limewashed");
}

static bool is_painted_so(const struct note *note, size_t from, size_t to, const char **of) {
    bool both = to == from + 2 && standing_painted(note, from + 1); // "painted green" is one word of the book
    if (!both && !standing_painted(note, from)) return false;
    size_t verb = both ? from : from - 1;
    *of = verb > 0 ? standing_part_before(note, verb) : NULL;
    return true;
}

enum standing standing_of(const struct note *note, size_t from, size_t to, const char **of) {
    size_t end = to;
    *of = NULL;
    if (is_painted_so(note, from, to, of)) return *of ? STANDING_PART : STANDING_THING;
    if (is_set_off(note, from, to)) return STANDING_THING;
    struct head head = look_ahead(note, to, &end);
    switch (head.what) {
    case AHEAD_THING:
        return STANDING_THING;
    case AHEAD_PART:
        if (is_thing_again(note, head.to)) return STANDING_THING;
        *of = standing_part_words(note, head.from, head.to);
        return STANDING_PART;
    case AHEAD_FAULT:
        return STANDING_NONE;
    case AHEAD_OTHER:
        if ((*of = unknown_part(note, from, to, &head)) != NULL) return STANDING_PART;
        return is_behind_type(note, from) || is_early_color(note, from) ? STANDING_THING : STANDING_NONE;
    case AHEAD_NOTHING:
        break;
    }
    if ((*of = bare_part(note, from, to)) != NULL) return STANDING_PART;
    if ((*of = part_behind(note, from, end)) != NULL) return STANDING_PART;
    bool fault = end < note->tokens.count && note->fault_word[end];
    if (!fault && !is_over(note, from, end) && !note->tokens.flat) return STANDING_NONE;
    enum standing standing = behind(note, from, of);
    return standing == STANDING_NONE && is_early_color(note, from) ? STANDING_THING : standing;
}

enum ahead standing_ahead(const struct note *note, size_t to, size_t *end) {
    return look_ahead(note, to, end).what;
}
