// SPDX-License-Identifier: MIT
// Turns of speech in which a word of a fault says none of its part: what is hard to find, what stands on the
// left, what was painted green, what comes off to be cleaned.
#include <string.h>

#include "notes/any.h"
#include "notes/faults.h"
#include "notes/kind_goods.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

// "Hard to find", "hard to beat": of the hunt for one or of the words for it.
static bool is_hard_to(const struct tokens *tokens, size_t i) {
    static const char *const done[] = {"find", "come",       "beat",    "get",    "say",    "tell",
                                       "date", "photograph", "fault",   "know",   "better", "describe",
                                       "show", "capture",    "imagine", "source", "replace"};
    return ANY(tokens, i, "hard", "difficult", "tough") && token_is(tokens, i + 1, "to") &&
           AMONG(tokens, i + 2, done);
}

// "On the left", "bottom left": the side, and not what remains.
static bool is_side(const struct tokens *tokens, size_t i) {
    return i > 0 && token_is(tokens, i, "left") &&
           ANY(tokens, i - 1, "the", "top", "bottom", "upper", "lower", "far", "hand", "your", "my");
}

// "Painted green", "dyed a dark brown".
static bool is_color_given(const struct tokens *tokens, size_t i) {
    static const char *const colors[] = {"green", "white", "black", "brown", "yellow", "orange",   "red",
                                         "gray",  "grey",  "blue",  "cream", "pink",   "turquoise"};
    static const char *const given[] = {"painted", "enameled", "enamelled", "lacquered", "dyed",
                                        "colored", "coloured", "stained",   "finished",  "sprayed",
                                        "glazed",  "japanned", "lined",     "tinted"};
    static const char *const between[] = {"a", "in", "dark", "light", "pale", "bright", "deep", "mid", "all"};
    enum { FAR = 3 };
    if (!AMONG(tokens, i, colors)) return false;
    for (size_t n = 0; i > 0 && n < FAR; n++) {
        i--;
        if (AMONG(tokens, i, given)) return true;
        if (!AMONG(tokens, i, between)) return false;
    }
    return false;
}

// "A yellow middle", "with a brown band": how it is colored, and not what it has turned.
static bool is_colored_part(const struct tokens *tokens, size_t i) {
    static const char *const parts[] = {"middle", "center", "centre", "stripe", "stripes", "band",   "flower",
                                        "trim",   "lid",    "lining", "bow",    "ribbon",  "collar", "beak",
                                        "handle", "base",   "border", "rim",    "petal",   "petals", "hat",
                                        "dress",  "eye",    "top",    "glaze",  "ground"};
    return i > 0 && ANY(tokens, i, "yellow", "brown", "green", "white", "black", "gray", "grey") &&
           ANY(tokens, i - 1, "a", "an") && tokens->at[i].stop == STOP_NONE && AMONG(tokens, i + 1, parts);
}

// "Comes off for cleaning", "lifts out to empty", "unscrews for packing": made so.
static bool is_for_use(const struct tokens *tokens, size_t i) {
    static const char *const uses[] = {"cleaning", "washing",  "storage",  "packing",  "travel", "polishing",
                                       "filling",  "posting",  "shipping", "carrying", "access", "clean",
                                       "wash",     "fill",     "empty",    "refill",   "pack",   "store",
                                       "polish",   "get",      "reach",    "change",   "oil",    "service",
                                       "emptying", "transport"};
    static const char *const verbs[] = {"comes", "come",     "lifts", "lift",  "pulls", "slides",
                                        "pops",  "unscrews", "slips", "folds", "drops", "takes"};
    static const char *const ways[] = {"off", "out", "apart", "away", "up", "down"};
    bool moves = AMONG(tokens, i, ways) ? i > 0 && AMONG(tokens, i - 1, verbs) : AMONG(tokens, i, verbs);
    if (!moves) return false;
    size_t at = i + 1;
    if (AMONG(tokens, at, ways)) at++;
    if (ANY(tokens, at, "easily", "cleanly", "readily")) at++;
    return ANY(tokens, at, "for", "to") && AMONG(tokens, at + 1, uses);
}

// "Flap's frayed": the part and its verb, and no flaps.
static bool is_part_with_verb(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    const struct token *t = &tokens->at[hit->from];
    bool alone =
        hit->to == hit->from + 1 && t->stop == STOP_NONE && t->kind == TOKEN_WORD && t->to - t->from > 2;
    if (!alone || tokens->altered) return false;
    const char *end = tokens->text + t->to - 2;
    return end[1] == 's' && (end[0] == '\'' || (unsigned char)end[0] == 0x99); // the last byte of a curly one
}

// "Only one has a chip", "only one runs", "with only one handle": one of several, which are all there.
static bool is_one_of_several(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (!ANY(tokens, hit->to - 1, "one") || tokens->at[hit->to - 1].stop != STOP_NONE ||
        hit->to >= tokens->count || tokens->at[hit->to].kind != TOKEN_WORD ||
        !text_same(hit->kinds[0]->rule.id, "missing-mate"))
        return false;
    if (r->note->taken[hit->to] == TAKEN_TYPE) return false; // "just one bookend"
    if (ANY(tokens, hit->to, "of", "in")) return r->note->record->count > 1;
    return !ANY(tokens, hit->to, "so", "and", "but", "not", "no", "as", "here", "i", "we", "sadly", "now",
                "left", "though", "survives", "remains", "available", "there", "for", "to", "from", "because",
                "since", "unfortunately", "only", "it", "the", "a", "on");
}

// "Nutcracker, just the one": so many are sold, and of what never comes in pairs none is missed.
static bool is_one_sold(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const bare[] = {"only one",     "only have one", "only have the one", "just one",
                                       "just the one", "1 only",        "one only",          "single only"};
    static const char *const paired[] = {
        "earring",     "earrings",    "cufflink",   "cufflinks", "cuff",     "bookend",  "bookends",
        "candlestick", "candle",      "glove",      "gloves",    "mitten",   "mittens",  "shoe",
        "shoes",       "boot",        "boots",      "sock",      "socks",    "slipper",  "skate",
        "skates",      "sandal",      "stocking",   "curtain",   "curtains", "drape",    "panel",
        "sconce",      "sconces",     "andiron",    "andirons",  "firedog",  "stirrup",  "spur",
        "shaker",      "salt",        "pepper",     "pot",       "oar",      "ski",      "pole",
        "speaker",     "clip",        "pair",       "pairs",     "mate",     "other",    "clog",
        "moccasin",    "candelabrum", "candelabra", "girandole", "tieback",  "hinge",    "shutter",
        "mule",        "pump",        "heel",       "sneaker",   "trainer",  "snowshoe", "flipper",
        "fin",         "set",         "two",        "second",    "stud",     "hoop",     "epaulet",
        "gaiter",      "legging",     "creamer",    "sugar",     "dog",      "fire",     "cup",
        "saucer",      "shoehorn",    "paddle",     "castanet",  "cymbal",   "maraca",   "drumstick",
        "pillowcase",  "sham",        "oarlock",    "rowlock",   "bracket",  "lens",     "headlamp",
        "headlight",   "hubcap",      "fender",     "handset",   "epergne"};
    enum { OPENS = 12, NEAR = 12 };
    const struct tokens *tokens = &r->note->tokens;
    size_t from = hit->from > 0 && ANY(tokens, hit->from - 1, "i") ? hit->from - 1 : hit->from;
    if (!text_same(hit->kinds[0]->rule.id, "missing-mate") ||
        token_longest(tokens, hit->from, bare, COUNT(bare)) != hit->to - hit->from ||
        (from > 0 && tokens->at[from - 1].stop == STOP_NONE))
        return false;
    for (size_t i = 0; i < tokens->count && i < OPENS && tokens->at[i].stop < STOP_SENTENCE; i++)
        if (AMONG(tokens, i, paired)) return false;
    for (size_t i = hit->from, n = 0; i > 0 && n < NEAR && tokens->at[i - 1].stop < STOP_SENTENCE; i--, n++)
        if (AMONG(tokens, i - 1, paired)) return false;
    for (size_t i = hit->to; i < tokens->count && i < hit->to + NEAR && tokens->at[i].stop < STOP_SENTENCE;
         i++)
        if (AMONG(tokens, i, paired)) return false;
    return true;
}

// "A cloudy patch", "bald patches": a place that looks so, and nothing sewn on.
static bool is_patch_of_look(const struct tokens *tokens, size_t i) {
    static const char *const looks[] = {"cloudy", "foggy", "milky",    "hazy",  "dull",   "bald",  "bare",
                                        "rusty",  "faded", "sticky",   "damp",  "wet",    "soft",  "thin",
                                        "rough",  "shiny", "worn",     "dry",   "greasy", "sooty", "scuffed",
                                        "pale",   "dark",  "bleached", "misty", "mossy",  "tacky", "spongy"};
    if (i == 0 || !ANY(tokens, i, "patch", "patches") || tokens->at[i - 1].stop != STOP_NONE) return false;
    if (i > 2 && ANY(tokens, i - 1, "a", "one", "small") && ANY(tokens, i - 2, "from", "in") &&
        ANY(tokens, i - 3, "gone", "missing", "worn", "lost", "rubbed", "bare", "off", "away", "thin"))
        return true; // "the tufts are gone from a patch near the foot"
    return AMONG(tokens, i - 1, looks);
}

// "The hinge is broken so the bezel just sits there": of a part, and it does nothing else anyway.
static bool is_part_at_rest(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (!token_is(tokens, hit->to - 1, "there") || !ANY(tokens, hit->to - 2, "sits", "sit", "lies", "hangs"))
        return false;
    size_t at = hit->to - 2;
    while (at > 0 && ANY(tokens, at - 1, "just", "only", "simply")) at--;
    return at > 0 && r->part && r->part[at - 1] && r->note->taken[at - 1] != TAKEN_TYPE;
}

// "Oak table. Dark stain.": how the wood is finished, where the clause says no more.
static bool is_wood_stain(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t i = hit->from;
    const struct family *family = r->note->record->family;
    if (hit->to != i + 1 || i < 2 || !ANY(tokens, i, "stain") || !family ||
        !text_same(family->rule.id, "furniture"))
        return false;
    return ANY(tokens, i - 1, "dark", "light", "medium", "walnut", "oak", "mahogany", "teak", "jacobean") &&
           tokens->at[i - 2].stop != STOP_NONE &&
           (i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE);
}

// "I dusted it now and then", "we used them on and off": what somebody did, and no way in which it works.
static bool is_done_at_times(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const times[] = {"now",   "on",        "off",          "occasionally", "once",
                                        "every", "sometimes", "periodically", "from",         "at"};
    static const char *const deeds[] = {"ran", "wound", "wore", "kept", "took",
                                        "lit", "rode",  "put",  "swept"};
    const struct tokens *tokens = &r->note->tokens;
    size_t i = hit->from;
    if (!text_same(hit->kinds[0]->rule.id, "partly-working")) return false;
    if (ANY(tokens, i, "it", "them")) i++;
    if (i < 2 || !AMONG(tokens, i, times) || !ANY(tokens, i - 1, "it", "them")) return false;
    const char *verb = tokens->at[i - 2].fold;
    size_t size = strlen(verb);
    bool done = size > 3 && text_same(verb + size - 2, "ed");
    return tokens->at[i - 2].stop == STOP_NONE && (done || AMONG(tokens, i - 2, deeds));
}

// "Boils fine, shuts itself off", "perks and turns itself off": when its work is done. "But", a time or a
// place in the work says that it is not.
static bool is_off_when_done(const struct tokens *tokens, const struct fault_hit *hit) {
    enum { FAR = 6 };
    if (hit->to < 2 || !ANY(tokens, hit->to - 1, "off") || !ANY(tokens, hit->to - 2, "itself")) return false;
    if (tokens->at[hit->to - 1].stop == STOP_NONE &&
        ANY(tokens, hit->to, "after", "before", "halfway", "partway", "while", "mid", "at", "for", "randomly",
            "too", "early", "every", "in", "within", "if", "now", "sometimes", "again", "a", "on"))
        return false;
    for (size_t i = hit->from; i-- > 0 && i + FAR >= hit->from && tokens->at[i].stop < STOP_SENTENCE;) {
        if (ANY(tokens, i, "but", "then", "only", "never", "not", "doesn't", "won't", "though", "until",
                "till"))
            return ANY(tokens, i, "then") && i > 0 &&
                   ANY(tokens, i - 1, "boils", "boiled", "brews", "brewed", "perks", "perked", "toasts");
        if (ANY(tokens, i, "boils", "boiled", "heats", "heated", "brews", "brewed", "perks", "perked",
                "cooks", "cooked", "toasts", "toasted", "clicks", "works", "steams", "warms", "hot", "boil"))
            return true;
    }
    return false;
}

// "Goes off when it should", "boils and shuts itself off": as it is meant to.
static bool is_as_meant(const struct fault_reader *r, const struct fault_hit *hit) {
    enum { FAR = 5 };
    static const char *const meant[] = {
        "as it should",       "like it should",    "when it should",   "as they should",
        "like they should",   "when they should",  "as it is meant",   "as it's meant",
        "when it's done",     "when it is done",   "when it's ready",  "when it's hot",
        "when it is hot",     "when it's full",    "when it boils",    "when the water boils",
        "when done",          "when hot",          "when up to heat",  "when it is supposed",
        "when it's supposed", "when it's up to",   "when you release", "when it reaches",
        "as it's supposed",   "as it is supposed", "as supposed",      "as intended",
        "as designed"};
    static const char *const shoulds[] = {"as it should",   "like it should", "when it should",
                                          "as they should", "as intended",    "as designed",
                                          "as it's meant",  "as it is meant"};
    const struct tokens *tokens = &r->note->tokens;
    bool ends = false;
    const char *id = hit->kinds[0]->rule.id;
    if (!text_same(id, "partly-working") && !text_same(id, "not-working")) return false;
    for (size_t i = hit->from; i < hit->to; i++)
        if (strstr(tokens->at[i].fold, "n't") || ANY(tokens, i, "not", "never", "only", "nothing", "cuts",
                                                     "cut", "dies", "quits", "stops", "trips"))
            ends = true;
    for (size_t i = hit->from; i < hit->to + FAR && i < tokens->count; i++) {
        if (i > hit->from && tokens->at[i - 1].stop >= STOP_CLAUSE) break;
        if (ends ? token_longest(tokens, i, shoulds, COUNT(shoulds)) > 0 && i >= hit->to &&
                       !strstr(tokens->at[hit->from].fold, "n't") &&
                       !ANY(tokens, hit->from, "not", "never", "only", "nothing")
                 : token_longest(tokens, i, meant, COUNT(meant)) > 0)
            return true;
    }
    return !ends && is_off_when_done(tokens, hit);
}

// "Leaves in rust and olive": a color.
static bool is_rust_color(const struct fault_reader *r, const struct fault_hit *hit) {
    static const char *const colors[] = {
        "olive", "gold",  "brown", "cream", "green", "navy", "tan",  "mustard", "teal", "blue", "orange",
        "beige", "ivory", "gray",  "white", "black", "red",  "grey", "yellow",  "plum", "sage", "avocado"};
    const struct tokens *tokens = &r->note->tokens;
    size_t i = hit->from;
    if (hit->to != i + 1 || !token_is(tokens, i, "rust") || i == 0) return false;
    bool in =
        ANY(tokens, i - 1, "in") && !(i > 1 && ANY(tokens, i - 2, "covered", "caked", "coated", "thick"));
    bool joined = ANY(tokens, i + 1, "and", ",", "&") && AMONG(tokens, i + 2, colors);
    size_t before = i > 2 && ANY(tokens, i - 1, "and", "&", ",") && AMONG(tokens, i - 2, colors) ? i - 2 : 0;
    return (in && joined) || (before > 0 && ANY(tokens, before - 1, "in"));
}

// "Green in the crease where the spout goes on": where two parts meet, and what is there is told.
static bool is_crease_of_parts(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return ANY(tokens, hit->to - 1, "crease", "creases") && hit->from > 1 &&
           token_is(tokens, hit->from - 1, "the") &&
           ANY(tokens, hit->from - 2, "in", "into", "from", "down") &&
           ANY(tokens, hit->to, "where", "between", "under", "below", "behind");
}

// "The thumb screws that hold the shade are missing", "finger plate", "toe caps": no thumb of a figure.
bool fault_is_named_for_limb(const struct fault_reader *r, const struct phrase_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    if (hit->near && ANY(tokens, hit->to - 1, "match", "matches") &&
        ANY(tokens, hit->to, "head", "heads", "stick", "sticks", "box", "book", "striker", "holder", "safe"))
        return true; // "the size of a match head"
    return hit->near && ANY(tokens, hit->from, "thumb", "finger", "toe", "ear", "nose", "elbow") &&
           tokens->at[hit->from].stop == STOP_NONE &&
           ANY(tokens, hit->from + 1, "screw", "screws", "nut", "nuts", "plate", "plates", "cap", "caps",
               "piece", "wheel", "latch", "ring", "rest", "pads", "pad", "clip", "clips", "joint", "catch");
}

// "Gone around the tail": where it is, and no tail that is gone.
bool fault_is_beside_limb(const struct fault_reader *r, const struct phrase_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    return hit->near && hit->to > hit->from + 2 && text_same(hit->flaw->rule.id, "broken-part") &&
           ANY(tokens, hit->to - 1, "tail", "ear", "ears", "nose", "wing", "wings", "paw", "beak", "arm",
               "hand", "head", "leg", "foot", "neck") &&
           ANY(tokens, hit->to - 2, "the", "his", "her", "its", "one", "each") &&
           ANY(tokens, hit->to - 3, "around", "near", "by", "at", "under", "behind", "above", "below",
               "along", "round", "beside", "across");
}

// "The middle drawer has no pull", "no pulls on the doors": what goods with drawers or doors are opened by,
// and no thread that was drawn.
bool fault_is_drawer_pull(const struct fault_reader *r, size_t from, size_t to) {
    while (from < to && !ANY(&r->note->tokens, from, "pull", "pulls")) from++;
    return from < to && kind_is_hardware(r) &&
           kind_note_has(r, "drawer drawers door doors dresser cabinet cupboard bureau desk chest wardrobe "
                            "sideboard nightstand hutch armoire credenza washstand vanity blind shade");
}

bool fault_is_harmless(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    size_t last = hit->to - 1;
    return is_hard_to(tokens, last) || is_side(tokens, last) || is_color_given(tokens, last) ||
           is_colored_part(tokens, last) || is_for_use(tokens, last) || is_hard_to(tokens, hit->from) ||
           is_part_with_verb(r, hit) || is_one_of_several(r, hit) || is_one_sold(r, hit) ||
           is_done_at_times(r, hit) || is_wood_stain(r, hit) || is_as_meant(r, hit) ||
           is_crease_of_parts(r, hit) || is_rust_color(r, hit) || (last > 1 && is_part_at_rest(r, hit)) ||
           (hit->to == hit->from + 1 && is_patch_of_look(tokens, last));
}
