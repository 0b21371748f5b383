// SPDX-License-Identifier: MIT
// Colors and stuffs of what only stands beside the thing in a sentence: what it goes with, what it was
// cleaned with, what lay under it, what others are made of.
#include "notes/any.h"
#include "notes/value_of_other.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

enum { BACK = 4 };

// "Lovely with navy", "goes with any tan sandal".
static bool is_gone_with(const struct tokens *tokens, size_t i, size_t n) {
    static const char *const goes[] = {
        "goes",  "go",     "lovely", "great",    "good",   "nice", "looks",     "look",    "wear", "wore",
        "pairs", "worked", "works",  "stunning", "pretty", "well", "beautiful", "perfect", "smart"};
    size_t with = i;
    while (with > 0 && with + 3 > i && tokens->at[with - 1].stop == STOP_NONE &&
           ANY(tokens, with - 1, "any", "your", "my", "a", "the", "with", "or", "all", "every", "both"))
        with--;
    if (!ANY(tokens, with, "with") || with == 0 || tokens->at[with - 1].stop != STOP_NONE) return false;
    if (ANY(tokens, with - 1, "goes", "go", "pairs", "worn")) return true;
    bool ends =
        i + n >= tokens->count || tokens->at[i + n].stop != STOP_NONE || ANY(tokens, i + n, "and", "or");
    return ends && AMONG(tokens, with - 1, goes) && with + 1 == i;
}

// "With a melamine sponge", "a wooden spoon": what it was cleaned with.
static bool is_of_tool(const struct note *note, size_t i, size_t n) {
    static const char *const tools[] = {
        "sponge", "sponges", "spoon",   "cloth", "rag",  "sock",   "pad",   "duster", "toothbrush",
        "brush",  "towel",   "bud",     "buds",  "swab", "swabs",  "glove", "gloves", "stick",
        "balls",  "skewer",  "scourer", "wipes", "wipe", "shammy", "mop",   "pick"};
    const struct tokens *tokens = &note->tokens;
    if (!AMONG(tokens, i + n, tools) || note->taken[i + n] == TAKEN_TYPE) return false;
    for (size_t k = i; k > 0 && k + BACK > i && tokens->at[k - 1].stop == STOP_NONE; k--)
        if (ANY(tokens, k - 1, "with", "and", "using", "by"))
            return !ANY(tokens, k - 1, "and") || ANY(tokens, k - 2, "soap", "brush", "water", "cloth");
    return false;
}

// "We had plastic ones for that", "not like the brass ones".
static bool is_of_ones(const struct tokens *tokens, size_t i, size_t n) {
    if (!ANY(tokens, i + n, "ones", "one")) return false;
    for (size_t k = i; k > 0 && k + BACK > i && tokens->at[k - 1].stop == STOP_NONE; k--)
        if (ANY(tokens, k - 1, "had", "like", "than", "used", "want", "unlike", "prefer", "bought", "wanted",
                "my", "other"))
            return !ANY(tokens, k - 1, "like") || ANY(tokens, k - 2, "not", "isn't", "aren't", "nothing");
    return false;
}

// "The ivy in the photo is plastic and stays here".
static bool is_of_photo(const struct tokens *tokens, size_t i) {
    enum { FAR = 8 };
    bool is = false;
    for (size_t k = i; k > 0 && k + FAR > i && tokens->at[k - 1].stop == STOP_NONE; k--) {
        is |= ANY(tokens, k - 1, "is", "are");
        if (is && ANY(tokens, k - 1, "photo", "photos", "picture", "pictures", "pic", "pics", "photograph") &&
            k > 2)
            return ANY(tokens, k - 2, "the", "my", "this") && ANY(tokens, k - 3, "in");
    }
    return false;
}

// "Pinned on a velvet board", "kept in a felt roll in the bureau".
static bool is_under_it(const struct tokens *tokens, size_t i) {
    static const char *const lay[] = {"pinned", "displayed", "stored",       "propped", "stood",  "hung",
                                      "laid",   "lay",       "sat",          "lived",   "wedged", "rested",
                                      "dried",  "ironed",    "photographed", "shot",    "kept",   "put"};
    size_t at = i;
    if (at < 3 || !ANY(tokens, at - 1, "a", "an", "my", "some", "our") ||
        tokens->at[at - 1].stop != STOP_NONE)
        return false;
    if (!ANY(tokens, at - 2, "on", "over", "against", "under", "behind", "beside")) return false;
    return AMONG(tokens, at - 3, lay);
}

bool value_is_of_company(const struct note *note, size_t i, size_t n) {
    const struct tokens *tokens = &note->tokens;
    return is_gone_with(tokens, i, n) || is_of_tool(note, i, n) || is_of_ones(tokens, i, n) ||
           is_of_photo(tokens, i) || is_under_it(tokens, i);
}
