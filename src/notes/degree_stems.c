// SPDX-License-Identifier: MIT
// Everyday adjectives of size, strength and judgment, and the adverbs made of them: "a colossal crack",
// "abominably bent", "nasty-looking". What is in degree_words.c is told there; the adverb of any of its
// adjectives is found here as well, so that no form has to be written down twice.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const char *const slight[] = {
    "bearable",       "diminutive",     "eensy",          "excusable",     "feathery",      "fleeting",
    "forgivable",     "fractional",     "hair-fine",      "hair-thin",     "imperceptible", "inconsequential",
    "inconsiderable", "indiscernible",  "inconspicuous",  "infinitesimal", "innocuous",     "inoffensive",
    "insubstantial",  "invisible",      "limited",        "localised",     "localized",     "low-grade",
    "low-level",      "meager",         "meagre",         "measly",        "mere",          "needle-thin",
    "nugatory",       "paltry",         "passable",       "passing",       "petty",         "piddling",
    "piffling",       "pin-sized",      "pint-sized",     "puny",          "scant",         "scanty",
    "skin-deep",      "sparse",         "tichy",          "titchy",        "tolerable",     "undetectable",
    "unimportant",    "unnoticeable",   "unobtrusive",    "unremarkable",  "vestigial",     "discreet",
    "barely-there",   "barely-visible", "hardly-visible", "pinhead-sized", "hairline-thin", "teeny-tiny",
    "teensy-weensy",  "itty-bitty",     "itsy-bitsy",     "vague",         "weeny",         "pale",
    "palest",         "hair-line"};

static const char *const middling[] = {"definite",       "detectable",   "discernible",  "distinct",
                                       "fair-sized",     "good-sized",   "medium-sized", "mid-sized",
                                       "moderate-sized", "observable",   "partial",      "perceptible",
                                       "visible",        "decent-sized", "medium-size",  "middle-sized"};

static const char *const great[] = {"abominable",
                                    "abysmal",
                                    "acrid",
                                    "alarming",
                                    "blatant",
                                    "bottomless",
                                    "calamitous",
                                    "catastrophic",
                                    "cavernous",
                                    "choking",
                                    "colossal",
                                    "conspicuous",
                                    "copious",
                                    "crippling",
                                    "deplorable",
                                    "desperate",
                                    "devastating",
                                    "diabolical",
                                    "disastrous",
                                    "disfiguring",
                                    "disgraceful",
                                    "disgusting",
                                    "dismal",
                                    "dramatic",
                                    "drastic",
                                    "excessive",
                                    "exceptional",
                                    "eye-watering",
                                    "fatal",
                                    "fearsome",
                                    "fetid",
                                    "flagrant",
                                    "foul",
                                    "frightening",
                                    "full-length",
                                    "gargantuan",
                                    "ghastly",
                                    "god-awful",
                                    "godawful",
                                    "grave",
                                    "grievous",
                                    "grim",
                                    "gross",
                                    "grotesque",
                                    "gruesome",
                                    "hazardous",
                                    "heinous",
                                    "hellish",
                                    "honking",
                                    "hopeless",
                                    "howling",
                                    "hulking",
                                    "humungous",
                                    "immense",
                                    "indecent",
                                    "inescapable",
                                    "inexcusable",
                                    "infernal",
                                    "inordinate",
                                    "insane",
                                    "intense",
                                    "intolerable",
                                    "irreparable",
                                    "irretrievable",
                                    "irreversible",
                                    "jarring",
                                    "jumbo",
                                    "lamentable",
                                    "loathsome",
                                    "lousy",
                                    "mahoosive",
                                    "mahusive",
                                    "merciless",
                                    "monumental",
                                    "nauseating",
                                    "noxious",
                                    "obnoxious",
                                    "obscene",
                                    "offensive",
                                    "ominous",
                                    "outrageous",
                                    "overbearing",
                                    "painful",
                                    "perilous",
                                    "pitiful",
                                    "prodigious",
                                    "profuse",
                                    "prolific",
                                    "prominent",
                                    "pronounced",
                                    "raging",
                                    "rank",
                                    "repulsive",
                                    "revolting",
                                    "ridiculous",
                                    "ruinous",
                                    "ruthless",
                                    "scandalous",
                                    "scary",
                                    "screaming",
                                    "shameful",
                                    "sickening",
                                    "sizeable",
                                    "socking",
                                    "staggering",
                                    "startling",
                                    "stomach-churning",
                                    "stonking",
                                    "strapping",
                                    "stupendous",
                                    "terminal",
                                    "terrifying",
                                    "thundering",
                                    "thunderous",
                                    "titanic",
                                    "tragic",
                                    "tremendous",
                                    "unbearable",
                                    "unforgivable",
                                    "ungodly",
                                    "unmissable",
                                    "unmistakable",
                                    "unmistakeable",
                                    "unsightly",
                                    "vast",
                                    "vicious",
                                    "vile",
                                    "violent",
                                    "virulent",
                                    "walloping",
                                    "woeful",
                                    "worrying",
                                    "yawning",
                                    "dangerous",
                                    "cruel",
                                    "disturbing",
                                    "sorry-looking",
                                    "wholesale"};

// Adverbs of no such adjective.
static const char *const wholly[] = {
    "irreparably", "roundly",      "utterly",   "wholly",  "entirely",  "absolutely", "royally", "stupidly",
    "uncommonly",  "unbelievably", "miserably", "crazily", "unusually", "impossibly", "beastly", "liberally"};
static const char *const partly[] = {"partly", "visibly", "obviously", "distinctly"};

static enum severity adjective_at(const struct tokens *tokens, size_t i) {
    if (token_among(tokens, i, slight, COUNT(slight))) return SEVERITY_LIGHT;
    if (token_among(tokens, i, great, COUNT(great))) return SEVERITY_HEAVY;
    return token_among(tokens, i, middling, COUNT(middling)) ? SEVERITY_MODERATE : SEVERITY_UNKNOWN;
}

static enum severity listed(const char *word, size_t size) {
    static const struct {
        const char *const *words;
        size_t count;
        enum severity degree;
    } lists[] = {{slight, COUNT(slight), SEVERITY_LIGHT},
                 {great, COUNT(great), SEVERITY_HEAVY},
                 {middling, COUNT(middling), SEVERITY_MODERATE}};
    for (size_t l = 0; l < COUNT(lists); l++)
        for (size_t k = 0; k < lists[l].count; k++)
            if (!strncmp(lists[l].words[k], word, size) && !lists[l].words[k][size]) return lists[l].degree;
    return degree_word_alone(word, size);
}

// Of the adjective that an adverb is made of: "horribly", "grossly", "shoddily", "drastically".
static enum severity of_adjective(const char *word) {
    enum { STEM_LEAST = 3, STEM_MOST = 24 };
    size_t size = strlen(word);
    if (size < STEM_LEAST + 2 || size >= STEM_MOST || !text_same(word + size - 2, "ly")) return 0;
    enum severity own = degree_word_alone(word, size); // "completely"
    if (own) return own;
    char stem[STEM_MOST + 2];
    memcpy(stem, word, size + 1);
    enum severity found = listed(stem, size - 2); // "grossly"
    stem[size - 1] = 'e';
    if (!found) found = listed(stem, size); // "horribly"
    if (!found && stem[size - 3] == 'i') {
        stem[size - 3] = 'y';
        found = listed(stem, size - 2); // "shoddily"
    }
    bool ally = size > STEM_LEAST + 4 && text_same(word + size - 4, "ally");
    return !found && ally ? listed(word, size - 4) : found; // "drastically"
}

static bool ends_in_ly(const char *word) {
    size_t size = strlen(word);
    return size > 3 && word[size - 1] == 'y' && word[size - 2] == 'l';
}

enum severity degree_adverb(const struct tokens *tokens, size_t i) {
    if (i >= tokens->count || tokens->at[i].kind != TOKEN_WORD || !ends_in_ly(tokens->at[i].fold))
        return SEVERITY_UNKNOWN;
    if (token_among(tokens, i, partly, COUNT(partly))) return SEVERITY_MODERATE;
    if (token_among(tokens, i, wholly, COUNT(wholly))) return SEVERITY_HEAVY;
    // "Hardly", "really", "early" and "only" are of no adjective of degree, or said elsewhere
    static const char *const others[] = {"hardly", "barely", "only",  "evenly",
                                         "really", "mostly", "early", "fairly"};
    if (token_among(tokens, i, others, COUNT(others))) return SEVERITY_UNKNOWN;
    return of_adjective(tokens->at[i].fold);
}

enum severity degree_stem(const struct tokens *tokens, size_t i) {
    if (i >= tokens->count || tokens->at[i].kind != TOKEN_WORD) return SEVERITY_UNKNOWN;
    enum severity found = adjective_at(tokens, i);
    if (found) return found;
    if (token_is(tokens, i, "hair"))
        return ANY(tokens, i + 1, "crack", "cracks", "split", "fracture") ? SEVERITY_LIGHT : SEVERITY_UNKNOWN;
    const char *word = tokens->at[i].fold, *dash = strchr(word, '-');
    if (dash && (text_same(dash, "-looking") || text_same(dash, "-ish"))) // "a nasty-looking split"
        return listed(word, (size_t)(dash - word));
    return degree_adverb(tokens, i);
}
