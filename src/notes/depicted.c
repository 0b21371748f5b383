// SPDX-License-Identifier: MIT
// "A ship on the lid", "map of a county", "hunting scene": a picture on the thing, or what it is formed like.
// What it comes with, what was done to it and who did it are none.
#include "notes/any.h"
#include "notes/chunk.h"
#include "notes/festivals.h"
#include "notes/standing.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// "Compass & protractor": goods of their own beside the thing, and no picture on it.
static bool is_beside_type(const struct note *note, size_t from, size_t to) {
    struct noun_found noun;
    return ANY(&note->tokens, to, "&", "and", "+") && standing_is_type(note, to + 1) &&
           !(from > 0 && ANY(&note->tokens, from - 1, "a", "an", "of", "with")) &&
           noun_at(note, from, &noun) && noun.to == to && (noun.thing || noun.uses & (1u << USE_THING));
}

// "A crack running up the bowl": what something does is a picture only where the thing or a word for
// pictures follows ("hunting scene").
static bool is_action(const struct note *note, size_t from, size_t to) {
    return to == from + 1 &&
           ANY(&note->tokens, from, "running", "fishing", "sailing", "hunting", "dancing", "cycling",
               "swimming", "racing", "riding", "skating", "cooking", "boxing", "climbing", "rowing",
               "surfing", "farming", "mining", "sewing", "knitting", "gardening", "camping", "hiking",
               "sleeping", "flying", "walking", "bowling");
}

// "4 fold, leaf brass", "somebody drew on the lighthouse": a part of the thing, and what was spoken of
// before.
static bool is_the_part(const struct note *note, size_t from, size_t to) {
    struct word_entry entry;
    const struct tokens *tokens = &note->tokens;
    bool the = from > 1 && token_is(tokens, from - 1, "the") && token_is(tokens, from - 2, "on");
    bool one = to == from + 1 && tokens->at[from].one == tokens->at[from].fold;
    if (the && one) return true; // but "gilding worn on the roses"
    bool led = from > 0 && ANY(tokens, from - 1, "a", "an", "with", "of", "and", "showing");
    // "Wax seal on the cork cracked"
    bool opens = from > 1 && (tokens->at[from - 1].starts ||
                              ANY(tokens, from - 2, "with", "w/", "its", "the")); // "with wax seal"
    if (one && opens && (!tokens->at[from - 1].starts || !standing_is_stop(note, to)) &&
        word_at(note, from - 1, 1u << USE_MATERIAL, &entry) == 1 &&
        word_at(note, from, 1u << USE_PART, &entry))
        return true;
    return one && !led && word_at(note, from, 1u << USE_PART, &entry) == 1 && to < tokens->count &&
           !standing_is_stop(note, to) && word_at(note, to, 1u << USE_MATERIAL, &entry) > 0;
}

// "Gold anchors on the buttons", "a ship on the lid": on a part, and nothing wrong in it.
static bool is_worn_by_part(const struct note *note, size_t from, size_t to) {
    static const char *const parts[] = {
        "buttons", "button", "lid",    "handle", "handles", "front",  "cover", "back",
        "shade",   "body",   "bowl",   "side",   "sides",   "collar", "cuffs", "cuff",
        "pocket",  "yoke",   "dial",   "face",   "border",  "band",   "badge", "bib",
        "spout",   "panel",  "panels", "doors",  "drawers", "top",    "end",   "ends"};
    const struct tokens *tokens = &note->tokens;
    struct word_entry entry;
    if (!token_is(tokens, to, "on") || !ANY(tokens, to + 1, "the", "its", "each", "both") ||
        !token_among(tokens, to + 2, parts, COUNT(parts)))
        return false;
    bool led = from == 0 || standing_is_stop(note, from - 1) ||
               ANY(tokens, from - 1, "a", "an", "two", "with", "and", "raised") ||
               word_at(note, from - 1, standing_uses, &entry) > 0;
    return led && !note->fault_word[from] && (to + 3 >= tokens->count || !note->fault_word[to + 3]);
}

// "Carriage moves, bell rings": what opens a later sentence and does its work is a part.
static bool is_running(const struct note *note, size_t from, size_t to) {
    size_t at = from > 0 && ANY(&note->tokens, from - 1, "the", "its") ? from - 1 : from;
    return at > 0 && (note->tokens.at[at - 1].stop != STOP_NONE || ANY(&note->tokens, at - 1, "and")) &&
           ANY(&note->tokens, to, "moves", "comes", "goes", "works", "runs", "turns", "rings", "opens",
               "closes", "spins", "slides", "locks", "winds", "lights", "returns", "sticks", "rattles", "is",
               "has", "won't", "doesn't", "sound");
}

// "Bring a truck", "made a cake": what somebody does, or should, at token `i`.
static bool is_deed(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "bring", "made", "make", "baked", "bake", "cooked", "took", "take", "need",
               "needs", "want", "use", "used", "bought", "buy", "saw", "hire", "drive", "rent", "get", "got",
               "call", "send", "load", "fed", "caught", "ate", "drew", "drank", "served", "poured", "cut",
               "put", "ask", "found");
}

bool is_depicted(const struct note *note, size_t from, size_t to) {
    static const char *const next[] = {"design",    "pattern",  "scene",   "motif",      "print",
                                       "picture",   "pictures", "theme",   "decoration", "shaped",
                                       "shape",     "figure",   "painted", "printed",    "embroidered",
                                       "engraving", "decal",    "carved",  "molded",     "engraved",
                                       "etched",    "raised",   "all",     "decals",     "scenes"};
    static const char *const lead[] = {"with", "showing", "w/", "has", "w", "depicting", "features"};
    static const char *const heads[] = {
        "picture", "scene",   "design",    "print",   "image",   "painting",    "photo",
        "shape",   "drawing", "decorated", "painted", "printed", "embroidered", "figure",
        "carved",  "carving", "map",       "theme",   "view",    "pattern",     "pictures",
        "row",     "border",  "band",      "bunch",   "spray",   "pair"};
    const struct tokens *tokens = &note->tokens;
    size_t end, at = from;
    struct noun_found noun;
    enum ahead what = standing_ahead(note, to, &end);
    if (is_beside_type(note, from, to) || ANY(tokens, to, "present", "gift", "party", "reception", "fair"))
        return false;
    if (standing_is_type(note, to) || token_among(&note->tokens, to, next, COUNT(next))) return true;
    if (from > 1 && token_is(tokens, from - 1, "the") && token_is(tokens, from - 2, "to"))
        return false; // "I wore it to the bus"
    if (is_action(note, from, to) || is_the_part(note, from, to) || is_running(note, from, to)) return false;
    if (ANY(tokens, to, "fine", "good", "ok", "clear", "crisp", "legible", "readable", "worn", "rubbed",
            "faded") ||
        ANY(tokens, to, "not", "isn't", "aren't"))
        return false; // "numbers fine": of a part
    // "Seal button on the bottom", "one dog bolt seized": of the part
    bool faulty = end < tokens->count && note->fault_word[end] && tokens->at[end].stop == STOP_NONE;
    if (what == AHEAD_PART && (faulty || (from > 0 && tokens->at[from].starts && to == from + 1)))
        return false;
    if (what == AHEAD_THING) return true;
    if (what == AHEAD_FAULT) return false;
    if (is_worn_by_part(note, from, to)) return true;
    while (at > 0 && !standing_is_stop(note, at - 1) && from - at < 6 &&
           (!chunk_breaks(note, at - 1) || token_is(tokens, at - 1, "a") || token_is(tokens, at - 1, "an") ||
            token_is(tokens, at - 1, "the") || token_is(tokens, at - 1, "and")))
        at--;
    bool goods =
        noun_at(note, from, &noun) && (noun.thing || (!noun.gated && !(noun.uses & (1u << USE_THEME))));
    bool plural = note->tokens.at[to - 1].one != note->tokens.at[to - 1].fold;
    size_t day = festival_at(tokens, from);
    if (day) return !festival_is_when(note, from, from + day);
    static const char *const lost[] = {"missing", "gone", "lost", "broken", "loose", "replaced", "has",
                                       "is",      "was",  "have", "are",    "needs", "says",     "reads"};
    if (token_among(&note->tokens, to, lost, COUNT(lost))) return false; // "bridge missing"
    // "With case and bow": of what comes with it, and no picture
    static const char *const extras[] = {"case", "box", "bag", "stand", "cover", "strap", "lid", "key"};
    for (size_t k = at; k < from; k++)
        if (token_is(tokens, k, "and") && k > at && noun_at(note, k - 1, &noun) &&
            (noun.thing || token_among(&note->tokens, k - 1, extras, COUNT(extras))))
            return false;
    if (goods && !standing_is_stop(note, to))
        return token_among(&note->tokens, at > 0 ? at - 1 : 0, lead, COUNT(lead)) && plural;
    if (goods) return false;
    static const char *const actors[] = {"the", "our", "my", "his", "her", "their"};
    if (token_among(&note->tokens, at, actors, COUNT(actors)) && !standing_is_stop(note, to))
        return false; // "the dog used to …"
    // "Bow in the front bar": what is in a part, and no picture
    if (at == from && tokens->at[from].starts && from > 0 && token_is(tokens, to, "in")) return false;
    if (at < from && is_deed(note, at)) return false;
    if (at == 0 || standing_is_stop(note, at - 1)) return !note->fault_word[at];
    if (at > 1 && ANY(tokens, at - 1, "with") && ANY(tokens, at - 2, "along", "together")) return false;
    if (token_is(tokens, at - 1, "on") || token_among(&note->tokens, at - 1, lead, COUNT(lead))) return true;
    if (token_is(tokens, at - 1, "like"))
        return at >= 2 && token_among(&note->tokens, at - 2, heads, COUNT(heads));
    static const char *const holders[] = {"box", "bag",   "smells",  "smell", "full",
                                          "out", "front", "because", "piece"};
    return token_is(tokens, at - 1, "of") && at >= 2 &&
           !token_among(&note->tokens, at - 2, holders, COUNT(holders)) && !note->fault_word[at - 2];
}
