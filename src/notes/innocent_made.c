// SPDX-License-Identifier: MIT
// Words of a fault that say what goods do or how they are made: "it cracks a walnut", "the handle holes",
// "from being shot" of a marble.
#include "notes/any.h"
#include "notes/faults.h"
#include "notes/meant.h"
#include "notes/number.h"
#include "text/order.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))
#define AMONG(tokens, i, list) token_among(tokens, i, list, COUNT(list))

// "It cracks a walnut", "cracks nuts fine": the work of a nutcracker.
static bool is_cracking(const struct tokens *tokens, const struct fault_hit *hit) {
    static const char *const cracked[] = {"nut",    "nuts",    "walnut",   "walnuts",   "pecan",  "pecans",
                                          "almond", "almonds", "hazelnut", "hazelnuts", "egg",    "eggs",
                                          "crab",   "lobster", "claws",    "shells",    "pepper", "ice",
                                          "brazil", "whip",    "filbert",  "filberts"};
    if (!ANY(tokens, hit->from, "cracks", "crack", "cracking", "cracked")) return false;
    size_t at = hit->from + 1;
    while (at < hit->from + 4 &&
           ANY(tokens, at, "a", "an", "any", "the", "your", "even", "hard", "every", "all"))
        at++;
    return AMONG(tokens, at, cracked) && !ANY(tokens, at + 1, "bowl", "dish", "tray", "cup", "mold");
}

// "Round the handle holes": holes that it needs.
static bool is_made_hole(const struct tokens *tokens, const struct fault_hit *hit) {
    static const char *const of[] = {"handle", "screw",   "mounting", "fixing",  "drain",   "drainage",
                                     "lace",   "vent",    "peg",      "bolt",    "finger",  "hand",
                                     "rivet",  "hanging", "steam",    "valve",   "pouring", "strap",
                                     "string", "thumb",   "axle",     "spindle", "keyhole", "sound",
                                     "shaker", "air",     "inkwell",  "umbrella"};
    size_t last = hit->to - 1;
    return ANY(tokens, last, "holes", "hole") && last > 0 && AMONG(tokens, last - 1, of) &&
           tokens->at[last - 1].stop == STOP_NONE &&
           (hit->from + 1 == hit->to || ANY(tokens, hit->from, "round", "around", "handle"));
}

// "I said six but I counted again and there's seven": how many, and not that none is missing.
static bool is_recount(const struct tokens *tokens, const struct fault_hit *hit) {
    enum { FAR = 8 };
    bool again = false;
    for (size_t i = hit->from; i < hit->to + 1; i++) again |= ANY(tokens, i, "again", "recounted", "recount");
    for (size_t i = hit->to; again && i + 1 < tokens->count && i < hit->to + FAR; i++) {
        if (ANY(tokens, i, "all", "complete", "none", "nothing")) return false;
        if (ANY(tokens, i, "there's", "are", "it's", "is", "found", "only", "got") &&
            number_may_be(tokens, i + 1))
            return true;
        if (tokens->at[i].stop >= STOP_SENTENCE) return false;
    }
    return false;
}

bool fault_is_made_so(const struct fault_reader *r, const struct fault_hit *hit) {
    const struct tokens *tokens = &r->note->tokens;
    const char *id = hit->kinds[0]->rule.id;
    bool crack = text_same(id, "crack") || text_same(id, "crack-through") || text_same(id, "hairline") ||
                 text_same(id, "wood-split");
    if (text_same(id, "complete-counted") && is_recount(tokens, hit)) return true;
    // "Has 88213 punched in it": what was struck there
    if (text_same(id, "dent-bend") && ANY(tokens, hit->from, "punched") && hit->from > 0 &&
        (tokens->at[hit->from - 1].kind == TOKEN_FIGURE || tokens->at[hit->from - 1].kind == TOKEN_CODE ||
         tokens->at[hit->from - 1].capitals ||
         ANY(tokens, hit->from - 1, "number", "numbers", "letters", "initials", "name")))
        return true;
    if (crack && is_cracking(tokens, hit)) return true;
    if ((text_same(id, "woodworm") || text_same(id, "hole")) && is_made_hole(tokens, hit)) return true;
    return ANY(tokens, hit->to - 1, "shot") && hit->to > 1 &&
           ANY(tokens, hit->to - 2, "being", "getting", "be"); // a marble
}
