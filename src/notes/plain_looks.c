// SPDX-License-Identifier: MIT
// Many words of a fault are words of color: brass goes dark, linen yellow, cloth pale. Where they stand as a
// seller describes goods ("pale blue, in a grey case", "black and brass", "yellow cupboard") nothing is
// wrong. What has become so ("gone pale blue"), and what is on it ("brown marks"), stays a fault.
#include "notes/plain_looks.h"

#include <stdint.h>

#include "notes/any.h"
#include "notes/things.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const uint32_t color_use = 1u << USE_COLOR;

// What is seen on a thing and no part of how it was made.
static bool is_trace(const struct note *note, size_t i) {
    static const char *const traces[] = {
        "line",     "lines",    "mark",    "marks",   "spot",    "spots", "ring",   "rings",  "patch",
        "edge",     "edges",    "film",    "tint",    "powder",  "tinge", "stuff",  "hair",   "bit",
        "bits",     "corner",   "corners", "page",    "pages",   "dots",  "specks", "stain",  "stains",
        "staining", "streak",   "streaks", "patches", "bloom",   "crust", "cast",   "look",   "deposit",
        "blotch",   "blotches", "smear",   "smears",  "residue", "tape",  "glue",   "gunk",   "putty",
        "gum",      "strips",   "strip",   "growth",  "fuzz",    "dust",  "haze",   "flecks", "freckles",
        "speckles", "fold",     "folds"};
    return token_among(&note->tokens, i, traces, COUNT(traces));
}

// Behind these a color is what has become of it.
static bool is_change(const struct note *note, size_t i) {
    static const char *const words[] = {
        "gone",  "going",  "goes",  "went", "turned",   "turning", "turns",  "faded",   "now",
        "looks", "look",   "been",  "worn", "got",      "become",  "became", "getting", "stained",
        "dried", "rubbed", "to",    "a",    "slightly", "bit",     "rather", "little",  "somewhat",
        "too",   "slight", "faint", "some", "where",    "with",    "of",     "has"};
    return token_among(&note->tokens, i, words, COUNT(words));
}

// Goods, and no part that wears: "brown cupboard", but not "brown lining". A word that is seldom goods is so
// in the first words of a note alone.
static bool is_goods(const struct note *note, size_t i) {
    enum { FIRST_WORDS = 6 };
    struct noun_found noun;
    return noun_at(note, i, &noun) && !noun.part && (!noun.gated || (noun.thing && i < FIRST_WORDS)) &&
           (noun.thing || (noun.uses & (1u << USE_THING) && !noun.candidate));
}

// "Pale blue", "bow front", "mould blown", "mid century modern": token `i` stands within a name of a look of
// two words or more. A color that something has turned is none, nor is one that only marks have.
static bool in_look(const struct note *note, size_t i, size_t to) {
    static const uint32_t made = (1u << USE_PATTERN) | (1u << USE_SHAPE) | (1u << USE_TECHNIQUE) |
                                 (1u << USE_MATERIAL) | (1u << USE_STYLE);
    enum { WORDS_MOST = 3 };
    struct word_entry entry;
    for (size_t back = 0; back < WORDS_MOST && back <= i; back++) {
        size_t from = i - back, n = word_at(note, from, color_use, &entry);
        bool color = n > 1 && from + n >= to;
        if (!color) n = word_at(note, from, made, &entry);
        if (n < 2 || from + n < to || token_is(&note->tokens, from, "a")) continue; // "a line runs in"
        if (!color) return true;
        return !is_trace(note, from + n) && (from == 0 || note->tokens.at[from - 1].stop != STOP_NONE ||
                                             is_goods(note, from + n) || !is_change(note, from - 1));
    }
    return false;
}

// What is told of a thing besides, and no damage: that it is engraved, or crazed on purpose.
static bool is_told_anyhow(const struct flaw *flaw) {
    return text_same(flaw->rule.id, "monogram") || text_same(flaw->rule.id, "crazing") ||
           text_same(flaw->rule.id, "refinished") || text_same(flaw->rule.id, "finish-crackle");
}

static bool within_look(const struct note *note, const struct phrase_hit *hit) {
    if (is_told_anyhow(hit->flaw)) return false;
    if (in_look(note, hit->from, hit->to)) return true;
    return hit->near && (in_look(note, hit->from, hit->from + 1) || in_look(note, hit->to - 1, hit->to));
}

// "Black and brass", "dark green & cream", "metal and brass": colors and stuffs that "and" joins, and no
// other word. One word of a color may be a fault's as well ("rust and brass").
static bool is_joined_colors(const struct note *note, const struct phrase_hit *hit) {
    static const char *const plain[] = {"black",  "white", "brown",  "green", "blue",   "red",    "yellow",
                                        "cream",  "grey",  "gray",   "gold",  "silver", "orange", "pink",
                                        "purple", "tan",   "maroon", "ivory", "beige"};
    struct word_entry entry;
    size_t i = hit->from, looks = 0;
    bool joined = false;
    while (i < hit->to) {
        if (ANY(&note->tokens, i, "and", "&")) {
            joined = true;
            i++;
            continue;
        }
        size_t n = word_at(note, i, color_use, &entry);
        if (n == 1 && !token_among(&note->tokens, i, plain, COUNT(plain))) n = 0;
        if (!n) n = word_at(note, i, 1u << USE_MATERIAL, &entry);
        if (!n || note->tokens.at[i].stop != STOP_NONE) return false;
        looks++;
        i += n;
    }
    return joined && looks > 1 && !is_trace(note, i) &&
           (hit->from == 0 || note->tokens.at[hit->from - 1].stop != STOP_NONE ||
            !is_change(note, hit->from - 1));
}

// "Yellow cupboard", "dark brown cabinet": the color of goods that it stands before.
static bool is_color_of_goods(const struct note *note, const struct phrase_hit *hit) {
    static const char *const colors[] = {"white", "black", "green", "yellow", "brown", "red",
                                         "grey",  "gray",  "blue",  "orange", "tan"};
    const size_t ends[] = {hit->from, hit->to - 1};
    for (size_t k = 0; k < COUNT(ends); k++) {
        struct word_entry entry;
        size_t at = ends[k], n = word_at(note, at, color_use, &entry); // "brown and cream cupboard"
        size_t next = at + (n > 1 ? n : 1);
        // "Yellow plastic daisies": what is so and so of its stuff; but "green brass"
        if (ANY(&note->tokens, at, "white", "yellow", "brown", "red", "blue", "cream") &&
            ANY(&note->tokens, next, "plastic", "leather", "wood", "cloth", "cotton", "wool", "canvas",
                "glass", "vinyl", "silk", "velvet", "felt", "linen", "rubber", "enamel", "tin") &&
            note->tokens.at[at].stop == STOP_NONE && (hit->to <= next + 1 || hit->near) &&
            !is_trace(note, next + 1))
            return true;
        if (token_among(&note->tokens, at, colors, COUNT(colors)) && note->tokens.at[at].stop == STOP_NONE &&
            is_goods(note, next) && !is_trace(note, next))
            return true;
    }
    return false;
}

// "Yellow ware with white bands", "brass & black": a color of something, and no sign of a fault.
static bool is_color_of_part(const struct note *note, const struct phrase_hit *hit) {
    static const char *const colors[] = {"white", "black", "green", "yellow"};
    static const char *const joints[] = {"&", "and"};
    const struct tokens *tokens = &note->tokens;
    const size_t ends[] = {hit->from, hit->to - 1};
    if (hit->to == hit->from + 3 && token_among(tokens, hit->from + 1, joints, COUNT(joints)) &&
        token_among(tokens, hit->to - 1, colors, COUNT(colors)))
        return true;
    for (size_t k = 0; k < COUNT(ends); k++) {
        size_t next = ends[k] + 1;
        struct noun_found noun;
        struct word_entry entry;
        if (!token_among(tokens, ends[k], colors, COUNT(colors)) || next >= tokens->count ||
            next == ends[1 - k] || tokens->at[next].stop != STOP_NONE || is_trace(note, next))
            continue;
        bool ware = ANY(tokens, next, "ware", "bands");
        bool thing = noun_at(note, next, &noun) && (noun.thing || noun.part) && !noun.gated;
        if (ware || thing || word_at(note, next, 1u << USE_PART, &entry)) return true;
    }
    return false;
}

// "Cane outside, white inside": how it is glazed or painted; but what is brown or green inside may have
// become so.
static bool is_inside_color(const struct note *note, const struct phrase_hit *hit) {
    const struct tokens *tokens = &note->tokens;
    size_t i = hit->from;
    return hit->to == i + 2 && ANY(tokens, i, "white", "cream", "yellow", "blue", "pink", "red") &&
           ANY(tokens, i + 1, "inside", "outside", "within") &&
           (i == 0 || tokens->at[i - 1].stop != STOP_NONE || ANY(tokens, i - 1, "and", "&")) &&
           (hit->to >= tokens->count || tokens->at[hit->to].stop != STOP_NONE);
}

// "Butter pat mould, swan", "mould of a hand": what shapes things, and nothing that grows on them.
static bool is_shape_maker(const struct note *note, const struct phrase_hit *hit) {
    const struct tokens *tokens = &note->tokens;
    size_t i = hit->from;
    if (hit->to != i + 1 || !ANY(tokens, i, "mold", "mould", "molds", "moulds")) return false;
    if (i == 0) return ANY(tokens, 1, "of", "for");
    for (size_t k = 0; k < i; k++)
        if (tokens->at[k].stop != STOP_NONE || tokens->at[k].kind != TOKEN_WORD) return false;
    bool ends =
        i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE || ANY(tokens, i + 1, "with", "for");
    return ends && !ANY(tokens, i - 1, "some", "no", "any", "black", "white", "green", "grey", "gray", "blue",
                        "of", "the", "has", "with", "and", "or", "bit", "little", "slight", "light", "is",
                        "like", "leaf", "surface", "dry", "old", "damp", "musty");
}

// "Tin of axle grease, half left": what is sold in it.
static bool is_content(const struct note *note, const struct phrase_hit *hit) {
    enum { WORDS_MOST = 3 };
    const struct tokens *tokens = &note->tokens;
    for (size_t k = 1; k <= WORDS_MOST && k <= hit->from; k++) {
        size_t of = hit->from - k;
        if (tokens->at[of].kind != TOKEN_WORD) return false;
        if (!token_is(tokens, of, "of")) continue;
        return of > 0 && of < 4 && hit->to == hit->from + 1 &&
               ANY(tokens, of - 1, "tin", "tins", "can", "cans", "jar", "tub", "pot", "tube", "drum",
                   "bottle", "pail", "bucket", "box", "keg", "cartridge", "cartridges") &&
               ANY(tokens, hit->from, "grease", "stain", "oil", "wax", "tar", "soot", "glue", "paint", "ink",
                   "pitch", "polish", "lacquer", "varnish");
    }
    return false;
}

// "Birds on pale green", "roses on a pale pink ground": the color behind a picture.
static bool is_ground(const struct note *note, const struct phrase_hit *hit) {
    struct word_entry entry;
    size_t at = hit->to - 1, before = at;
    if (!ANY(&note->tokens, at, "pale", "dull", "faint") || at < hit->from + 2) return false;
    if (ANY(&note->tokens, before - 1, "a", "the", "an") && before > hit->from + 1) before--;
    if (!ANY(&note->tokens, before - 1, "on", "over", "against", "in")) return false;
    size_t n = word_at(note, at, color_use, &entry);
    return n > 1 && !is_trace(note, at + n);
}

bool look_is_plain(const struct note *note, const struct phrase_hit *hit) {
    return is_inside_color(note, hit) || within_look(note, hit) || is_joined_colors(note, hit) ||
           is_color_of_goods(note, hit) || (hit->near && is_color_of_part(note, hit)) ||
           is_shape_maker(note, hit) || is_content(note, hit) || is_ground(note, hit);
}
