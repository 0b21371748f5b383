// SPDX-License-Identifier: MIT
// How big a fault is beside a thing that has no fixed size: "size of a saucer", "fist sized dent", "no bigger
// than a lentil". It places the fault on its kind's scale; no length is told by it.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const struct {
    const char *object;
    double mm;
} objects[] = {{"sesame seed", 3},
               {"grain of sand", 1},
               {"grain of salt", 1},
               {"poppy seed", 1},
               {"match head", 3},
               {"matchhead", 3},
               {"pin prick", 1},
               {"pinprick", 1},
               {"needle", 1},
               {"lentil", 4},
               {"peppercorn", 4},
               {"fingernail", 10},
               {"finger nail", 10},
               {"thumbnail", 14},
               {"thumb nail", 14},
               {"fingertip", 13},
               {"finger", 15},
               {"thumb", 20},
               {"bean", 12},
               {"grape", 18},
               {"marble", 16},
               {"button", 15},
               {"coin", 22},
               {"postage stamp", 23},
               {"stamp", 23},
               {"walnut", 32},
               {"matchbox", 50},
               {"egg", 50},
               {"tennis ball", 66},
               {"baseball", 73},
               {"orange", 75},
               {"apple", 75},
               {"mug", 80},
               {"cup", 80},
               {"coaster", 95},
               {"palm", 85},
               {"fist", 90},
               {"hand", 150},
               {"saucer", 140},
               {"side plate", 170},
               {"plate", 250},
               {"dinner plate", 260},
               {"football", 220},
               {"foot", 280},
               {"bottle cap", 30},
               {"bottle top", 30},
               {"ping pong ball", 40},
               {"lemon", 60},
               {"teaspoon", 40},
               {"head of a pin", 2},
               {"pin", 1},
               {"freckle", 2},
               {"ladybird", 6},
               {"ladybug", 6},
               {"raisin", 9},
               {"sixpence", 19},
               {"shilling", 24},
               {"florin", 28},
               {"half crown", 32},
               {"farthing", 20},
               {"threepenny bit", 21},
               {"halfpenny", 25},
               {"ha'penny", 25},
               {"old penny", 31},
               {"5p", 18},
               {"10p", 24},
               {"20p", 21},
               {"50p", 27},
               {"1p", 20},
               {"2p", 26},
               {"pound coin", 23},
               {"nickel", 21},
               {"dime", 18},
               {"quarter", 24},
               {"half dollar", 30},
               {"silver dollar", 38},
               {"penny", 19},
               {"penny piece", 20},
               {"two pence", 26},
               {"euro", 23},
               {"loonie", 26},
               {"toonie", 28},
               {"hand print", 150},
               {"hand span", 200},
               {"golf ball", 43},
               {"plum", 45},
               {"cherry", 20},
               {"hazelnut", 15},
               {"almond", 20},
               {"pinkie nail", 8},
               {"little fingernail", 8},
               {"grain of wheat", 5},
               {"grain of barley", 6},
               {"pencil rubber", 7},
               {"pencil eraser", 7},
               {"eraser", 7},
               {"baby fingernail", 5},
               {"mustard seed", 2},
               {"apple pip", 7},
               {"orange pip", 8},
               {"cornflake", 20},
               {"tea plate", 150},
               {"bus ticket", 60},
               {"credit card", 85},
               {"business card", 85},
               {"playing card", 88},
               {"beer mat", 95},
               {"tea tray", 400},
               {"palm of my hand", 85},
               {"my thumb", 20},
               {"your thumb", 20},
               {"egg cup", 50},
               {"jam jar lid", 65},
               {"bottle top lid", 30},
               {"tick", 3},
               {"full stop", 1},
               {"dot", 1},
               {"ant", 4},
               {"fly", 7},
               {"split pea", 5},
               {"chickpea", 10},
               {"broad bean", 20},
               {"kidney bean", 15},
               {"conker", 30},
               {"grain of rice", 6},
               {"rice grain", 6},
               {"baked bean", 12},
               {"pea", 7}};

static size_t object_at(const struct tokens *tokens, size_t i, double *mm) {
    size_t longest = 0;
    if (!token_may_open(tokens, i, objects, COUNT(objects), sizeof *objects)) return 0;
    for (size_t k = 0; k < COUNT(objects); k++) {
        size_t n = token_phrase(tokens, i, objects[k].object);
        if (n <= longest) continue;
        longest = n;
        *mm = objects[k].mm;
    }
    return longest;
}

// "As long as a pencil", "the length of my hand".
static bool is_length_at(const struct tokens *tokens, size_t i, double *mm) {
    static const struct {
        const char *object;
        double mm;
    } rods[] = {{"pencil", 180},     {"pen", 140},       {"finger", 75},      {"hand", 180},
                {"arm", 600},        {"forearm", 250},   {"matchstick", 45},  {"match", 45},
                {"thumb", 60},       {"ruler", 300},     {"needle", 45},      {"pin", 28},
                {"cigarette", 80},   {"fingernail", 12}, {"nail", 12},        {"thumbnail", 15},
                {"palm", 90},        {"biro", 140},      {"teaspoon", 130},   {"spoon", 180},
                {"knife", 220},      {"eyelash", 9},     {"foot", 300},       {"toothpick", 65},
                {"credit card", 85}, {"staple", 12},     {"grain of rice", 6}};
    static const struct {
        const char *object;
        double mm;
    } broad[] = {{"hand", 85},  {"palm", 85},       {"finger", 15}, {"thumb", 20},
                 {"pencil", 7}, {"fingernail", 10}, {"hair", 1}};
    static const char *const spans[] = {"width", "breadth", "wide"};
    static const char *const leads[] = {"long as a",    "long as my",     "long as your",  "length of a",
                                        "length of my", "length of your", "longer than a", "longer than my"};
    size_t lead = token_longest(tokens, i, leads, COUNT(leads));
    for (size_t k = 0; lead && k < COUNT(rods); k++)
        if (token_phrase(tokens, i + lead, rods[k].object)) {
            *mm = rods[k].mm;
            return true;
        }
    for (size_t k = 0; !lead && ANY(tokens, i + 1, "length", "long") && k < COUNT(rods); k++)
        if (token_is(tokens, i, rods[k].object)) { // "finger length"
            *mm = rods[k].mm;
            return true;
        }
    if (lead || !token_among(tokens, i + 1, spans, COUNT(spans))) return false;
    for (size_t k = 0; k < COUNT(broad); k++) { // "a hand's breadth", "finger wide"
        const char *word = tokens->at[i].fold, *of = broad[k].object;
        size_t size = strlen(of);
        if (strncmp(word, of, size) != 0 || (word[size] && !text_same(word + size, "'s"))) continue;
        *mm = broad[k].mm;
        return true;
    }
    return false;
}

// "As wide as my thumb", "round as a saucer", "deeper than an egg cup": the words before the object.
static size_t wide_as(const struct tokens *tokens, size_t i) {
    if (!ANY(tokens, i, "big", "wide", "broad", "deep", "large", "round", "thick", "fat", "small", "bigger",
             "wider", "larger", "deeper", "smaller", "size", "diameter"))
        return 0;
    if (!ANY(tokens, i + 1, "as", "than", "of")) return 0;
    return ANY(tokens, i + 2, "a", "an", "my", "your", "the", "his", "one") ? 3 : 0;
}

// "The size of a saucer", "saucer sized", "big as my hand": the tokens it takes.
static bool compared_at(const struct tokens *tokens, size_t i, double *mm) {
    static const char *const leads[] = {
        "size of a", "size of an",      "no bigger than a", "no larger than a", "no more than a", "about a",
        "like a",    "size of my",      "size of the",      "size of your",     "big as a",       "big as an",
        "big as my", "large as a",      "bigger than a",    "larger than a",    "smaller than a", "wide as a",
        "size of",   "cover it with a", "cover it with my"};
    static const char *const sized[] = {"size", "sized"};
    size_t lead = wide_as(tokens, i), said = token_longest(tokens, i, leads, COUNT(leads));
    if (said > lead) lead = said;
    size_t n = object_at(tokens, i + lead, mm);
    if (lead) return n > 0;
    size_t end = i + n + (n && token_is(tokens, i + n, "-") ? 1 : 0);
    return n && token_among(tokens, end, sized, COUNT(sized));
}

double size_of_object(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { BEFORE = 4, BEHIND = 9 };
    const struct tokens *tokens = &r->note->tokens;
    size_t from = hit->from;
    while (from > 0 && hit->from - from < BEFORE && tokens->at[from - 1].stop == STOP_NONE) from--;
    for (size_t i = from; i < tokens->count && i < hit->to + BEHIND; i++) {
        double mm = 0;
        if ((tokens->at[i].stop >= STOP_CLAUSE && !token_is(tokens, i, "(")) ||
            (i >= hit->to && r->scope.fault[i] && !r->part[i]) || (i > hit->to && fault_told_again(r, i)))
            break;
        if (i >= hit->from && i < hit->to) continue;
        if (is_length_at(tokens, i, &mm) || compared_at(tokens, i, &mm)) return mm;
    }
    return 0;
}
