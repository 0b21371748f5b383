// SPDX-License-Identifier: MIT
// Days that people keep. "A Christmas plate" tells what the plate is for; "we lit them every Christmas" tells
// when, which is the seller's life and no fact of the goods. A day is nobody's name either.
#include "notes/festivals.h"

#include "notes/any.h"
#include "notes/standing.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

static const char *const days[] = {
    "christmas",       "christmases",     "xmas",          "easter",        "easters",
    "halloween",       "halloweens",      "thanksgiving",  "hanukkah",      "chanukah",
    "passover",        "diwali",          "ramadan",       "lent",          "whitsun",
    "michaelmas",      "hogmanay",        "yuletide",      "valentine's",   "valentines",
    "new year's day",  "new years day",   "new year's",    "new years",     "new year",
    "new year's eve",  "new years eve",   "labor day",     "labour day",    "memorial day",
    "mother's day",    "mothers day",     "father's day",  "fathers day",   "boxing day",
    "valentine's day", "valentines day",  "may day",       "veterans day",  "columbus day",
    "armistice day",   "remembrance day", "christmas eve", "christmas day", "xmas eve",
    "xmas day",        "easter sunday",   "easter monday", "easter day",    "independence day",
    "thanksgiving day"};

size_t festival_at(const struct tokens *tokens, size_t i) {
    return token_longest(tokens, i, days, COUNT(days));
}

bool festival_covers(const struct tokens *tokens, size_t i) {
    enum { LONGEST = 3 };
    for (size_t back = 0; back < LONGEST && back <= i; back++)
        if (festival_at(tokens, i - back) > back) return true;
    return false;
}

// A picture of the day, or goods for it: "Christmas Eve scene", "Easter egg cup".
static bool shows(const struct note *note, size_t at) {
    enum { FAR = 3 };
    const struct tokens *tokens = &note->tokens;
    for (size_t n = 0; n < FAR && !standing_is_stop(note, at); n++, at++)
        if (standing_is_type(note, at) ||
            ANY(tokens, at, "scene", "scenes", "design", "pattern", "print", "motif", "theme", "themed",
                "picture", "pictures", "decal", "decals", "decoration", "colors", "colours"))
            return true;
    return false;
}

// Does the sentence up to token `i` tell what somebody did with the thing?
static bool is_done(const struct note *note, size_t i) {
    for (size_t k = note_clause_from(note, i, STOP_SENTENCE); k < i; k++)
        if (ANY(&note->tokens, k, "used", "use", "lit", "came", "comes", "bought", "got", "gave", "given",
                "brought", "bring", "served", "serve", "wore", "sat", "stood", "hung", "burned", "burnt",
                "ate", "eaten", "broke", "dropped", "fell", "polished", "washed", "lay", "went", "saved",
                "we", "she", "he", "i", "they", "nobody", "everybody", "everyone"))
            return true;
    return false;
}

bool festival_is_when(const struct note *note, size_t from, size_t to) {
    const struct tokens *tokens = &note->tokens;
    size_t at = from;
    if (ANY(tokens, to, "present", "presents", "gift", "gifts", "ago", "past")) return true;
    if (shows(note, to)) return false;
    while (at > 0 && ANY(tokens, at - 1, "the", "very", "our", "their", "first")) at--;
    if (at > 0 &&
        ANY(tokens, at - 1, "every", "each", "last", "one", "at", "until", "till", "til", "since", "before",
            "after", "over", "during", "by", "on", "next", "this", "that", "through", "around", "round",
            "near", "past", "two", "three", "many", "several", "come", "most", "some"))
        return true;
    if (ANY(tokens, to, "dinner", "dinners", "lunch", "lunches", "breakfast", "morning", "mornings", "night",
            "nights", "afternoon", "week", "weekend", "time", "season", "holidays", "party", "parties",
            "supper", "meal", "meals"))
        return true;
    bool loose = at > 0 &&
                 (tokens->at[at - 1].stop != STOP_NONE || ANY(tokens, at - 1, "for", "and", "or", "out", "it",
                                                              "them", "used", "only", "between", "in", "of"));
    return loose && is_done(note, from);
}
