// SPDX-License-Identifier: MIT
// Writing that is somebody's and no maker's: what a person put there with a pin, a knife, a poker or a pen
// ("someone cut SOMEBODY with a pin", "lettered in white-out"), and what speaks of people ("property of",
// "from Dad 1962"). It is told that the thing bears it; the words themselves are kept back.
#include <string.h>

#include "notes/any.h"
#include "notes/mark_found.h"
#include "notes/mark_words.h"
#include "notes/persons.h"

enum { BACK = 9, AHEAD = 7, NEAR = 6 };

static bool is_deed(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "scratched", "cut", "carved", "burned", "burnt", "scrawled", "wrote", "inked",
               "penned", "penciled", "pencilled", "put", "painted", "stitched", "sewed", "engraved",
               "scribbled", "gouged", "lettered", "chalked", "etched", "punched", "stamped", "inscribed",
               "printed");
}

static bool is_doer(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "someone", "somebody", "he", "she", "they", "boy", "girl", "child", "kid", "kids",
               "boys", "owner", "pupil", "schoolboy", "soldier", "prisoner", "husband", "father", "mother",
               "grandfather", "uncle", "brother", "sister", "son", "daughter");
}

static bool is_tool(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "pin", "nail", "knife", "penknife", "poker", "needle", "pen", "biro", "ballpoint",
               "marker", "crayon", "felt-tip", "white-out", "chalk", "sharpie", "lipstick", "nib",
               "screwdriver", "compass", "dymo", "varnish", "pens");
}

// With what it was put there, or who did: in the sentence of the writing.
static bool is_by_hand(const struct note *note, size_t begin, const struct mark_found *found) {
    const struct tokens *tokens = &note->tokens;
    size_t from = note_clause_from(note, begin, STOP_SENTENCE), to = found->end;
    if (from + BACK < begin) from = begin - BACK;
    for (size_t k = to; k > found->from && to == found->end && k < tokens->count && k < found->end + AHEAD;
         k++) {
        if (tokens->at[k].stop >= STOP_CLAUSE) break;
        if (ANY(tokens, k, "with", "in") && (is_tool(tokens, k + 1) || is_tool(tokens, k + 2))) return true;
    }
    // '"…" scratched inside'
    size_t behind = found->to + ANY(tokens, found->to, "\"", "'");
    if (ANY(tokens, behind, "scratched", "scrawled", "inked", "penned", "penciled", "pencilled", "biroed",
            "crayoned", "gouged", "scribbled"))
        return true;
    // "Names cut all over the lid, biggest is SOMEBODY"
    for (size_t k = note_clause_from(note, begin, STOP_SENTENCE); k + 1 < found->from; k++)
        if (ANY(tokens, k, "names", "initials") &&
            ANY(tokens, k + 1, "cut", "carved", "scratched", "burned", "burnt", "inked", "gouged"))
            return true;
    for (size_t k = from; k < found->from; k++) {
        if (ANY(tokens, k, "in", "with") &&
            (is_tool(tokens, k + 1) || is_tool(tokens, k + 2) ||
             (ANY(tokens, k + 1, "one") && is_tool(tokens, k + 4))) &&
            tokens->at[k].stop == STOP_NONE)
            return true;
        if (ANY(tokens, k, "dymo", "nametape") ||
            (ANY(tokens, k, "tape") && ANY(tokens, k + 1, "says", "reads")) ||
            (ANY(tokens, k, "laundry", "name") && ANY(tokens, k + 1, "mark", "tape", "tag")))
            return true; // "a tape says", "laundry mark in the corner says"
        for (size_t next = k + 1; is_doer(tokens, k) && next < k + 4 && next < found->from; next++)
            if (is_deed(tokens, next)) return true;
        if (ANY(tokens, k, "scratched", "scrawled", "scribbled", "gouged", "crayoned", "biroed", "whittled",
                "sequined"))
            return true;
    }
    return false;
}

// The number of a paper that was issued to somebody.
static bool is_issued(const struct note *note, const struct mark_found *found) {
    const struct tokens *tokens = &note->tokens;
    if (found->from == 0 || !ANY(tokens, found->from - 1, "number", "no")) return false;
    for (size_t i = note_clause_from(note, found->from, STOP_SENTENCE); i + 1 < found->from; i++)
        if (ANY(tokens, i, "issued", "registered") && ANY(tokens, i + 1, "to")) return true;
    return false;
}

// Goods that are given to somebody with a name on them.
static bool is_keepsake(const struct note *note) {
    enum { HEAD = 8 };
    const struct tokens *tokens = &note->tokens;
    for (size_t i = 0; i < HEAD && i < tokens->count && tokens->at[i].stop < STOP_SENTENCE; i++)
        if (ANY(tokens, i, "spoon", "mug", "cup", "locket", "ring", "bracelet", "bangle", "porringer",
                "rattle", "lighter", "compact", "flask", "goblet", "charm"))
            return true;
    return false;
}

static bool is_day(const struct tokens *tokens, size_t i) {
    return i < tokens->count &&
           (tokens->at[i].kind == TOKEN_FIGURE || tokens->at[i].kind == TOKEN_CODE ||
            ANY(tokens, i, "born", "married", "wed", "christened", "baptized", "anniversary", "birthday",
                "christmas", "xmas", "easter", "graduation", "retirement"));
}

// Worked into the thing for somebody: "inscribed SOMEBODY SOMEBODY born 9 March 1948", "engraved SOMEBODY on
// the handle and 6-2-31 in the bowl", "the name SOMEBODY is embroidered on the chest", "inside it says
// SOMEBODY, Christmas 1931".
static bool is_dedicated(const struct note *note, const struct mark_found *found) {
    enum { FAR = 8 };
    static const char *const bodies[] = {"lifeboat", "club",   "school",  "regiment", "troop",
                                         "band",     "lodge",  "chapel",  "choir",    "crew",
                                         "team",     "church", "squadron"};
    const struct tokens *tokens = &note->tokens;
    bool worked = false, feast = false;
    for (size_t i = note_clause_from(note, found->from, STOP_SENTENCE); i < found->from; i++)
        worked |=
            ANY(tokens, i, "engraved", "inscribed", "inscription", "engraving", "embroidered", "stitched");
    bool who = false; // and not the feast alone
    for (size_t i = found->from; i < found->to; i++)
        who |= tokens->at[i].capital && tokens->at[i].kind == TOKEN_WORD && !is_day(tokens, i);
    for (size_t i = found->from; i < found->to + FAR && i < tokens->count; i++) {
        if (i >= found->to && tokens->at[i - 1].stop >= STOP_SENTENCE) break;
        feast |= ANY(tokens, i, "christmas", "xmas", "birthday", "anniversary", "graduation", "retirement");
        if (worked && who && is_day(tokens, i) && !ANY(tokens, i, "800", "830", "925", "835") &&
            (is_keepsake(note) || ANY(tokens, i, "born", "married", "christened", "baptized")))
            return true;
        for (size_t k = 0; i < found->to && worked && k < sizeof bodies / sizeof *bodies; k++)
            if (token_is(tokens, i, bodies[k]) && person_form_end(note, found->from) > found->from)
                return true;
    }
    if (feast && who && !ANY(tokens, found->from, "merry", "happy")) return true;
    if (worked && is_keepsake(note) && found->to == found->from + 1 && !tokens->at[found->from].capitals)
        return true;
    bool stuck = false; // "a sticker on the trunk says SOMEBODY"
    for (size_t i = note_clause_from(note, found->from, STOP_SENTENCE); i < found->from; i++)
        stuck |= ANY(tokens, i, "sticker", "tape", "marker", "crayon");
    if (stuck && found->to == found->from + 1 && person_first_name(note, found->from)) return true;
    if (person_form_end(note, found->from) == found->to &&
        ANY(tokens, found->to, "sewn", "stitched", "inked"))
        return true; // "J. SOMEBODY sewn inside the collar"
    for (size_t i = found->from + 1; i + 1 < found->to; i++)
        if (token_is(tokens, i, "+") && tokens->at[i - 1].capital && tokens->at[i + 1].capital) return true;
    for (size_t i = found->to; token_is(tokens, found->to, ",") && i < found->to + FAR && i < tokens->count;
         i++)
        if (ANY(tokens, i, "grade", "classroom")) return true; // "Somebody Somebody, 5th grade, room 12"
    bool named =
        found->from > 1 && ANY(tokens, found->from - 1, "name") && ANY(tokens, found->from - 2, "the", "a");
    size_t verb = found->to + (ANY(tokens, found->to, "is", "was", "chain") ? 1 : 0);
    return (named || found->to == found->from + 2) &&
           ANY(tokens, verb, "embroidered", "stitched", "sewn", "chain-stitched") &&
           (named || person_first_name(note, found->from));
}

// "Property of", "from Dad", "To my", "love": what no maker writes.
static bool is_personal(const struct note *note, const struct mark_found *found) {
    const struct tokens *tokens = &note->tokens;
    if (ANY(tokens, found->from, "souvenir", "present", "gift", "greetings", "remember", "best", "world's",
            "worlds", "greatest", "happy"))
        return false;
    for (size_t i = found->from; i < found->to; i++)
        if (ANY(tokens, i, "dad", "mum", "mom", "mama", "papa", "mother", "father", "daddy", "mummy",
                "granny", "grandma", "grandpa", "auntie", "my", "dearest", "darling", "beloved", "janitor",
                "esq", "mrs", "miss", "pte", "sgt", "capt", "lieut", "cpl"))
            return true;
    // "Stamped by its owners: A. SOMEBODY"
    size_t begin = note_clause_from(note, found->from, STOP_COMMA);
    if (begin > 1 && begin == found->from && ANY(tokens, begin - 1, ":", ",") &&
        (token_is(tokens, begin - 1, ":") || ANY(tokens, begin - 2, "owner", "owners")))
        begin = note_clause_from(note, begin - 1, STOP_COMMA);
    bool next = begin > 1 && begin == found->from && token_is(tokens, begin - 1, ",") &&
                note->taken[begin - 2] == TAKEN_ASIDE; // and the next of them
    if (next && person_form_end(note, found->from) > found->from) return true;
    for (size_t i = begin; i < found->from; i++)
        if (ANY(tokens, i, "owner", "owners", "owner's", "owners'")) return true;
    // "H. W. Somebody, Gas Works", "Somebody, Flat 3": a person with a place of work or a home
    size_t name = person_form_end(note, found->from);
    bool form = name > found->from;
    if (!form) name++;
    for (size_t i = name + 1; token_is(tokens, name, ",") && i < name + 6 && i < tokens->count; i++) {
        if (tokens->at[i].stop >= STOP_SENTENCE || strstr(tokens->at[name - 1].fold, "'s")) break; // a shop
        if (ANY(tokens, i, "flat", "house", "cottage", "farm", "lane", "road", "street", "avenue", "terrace",
                "crescent"))
            return true;
        if (form && ANY(tokens, i, "works", "club", "school", "colliery", "station", "champion", "winner",
                        "brigade", "lodge", "band", "church", "chapel", "depot"))
            return true;
    }
    // "Engraved on the front: Somebody Somebody, 14 June 1922"; "issued to Mr. Somebody, number 4117"
    bool engraved = false, dated = false;
    for (size_t i = note_clause_from(note, found->from, STOP_SENTENCE); i < found->from; i++)
        engraved |= ANY(tokens, i, "engraved", "inscribed", "inscription", "engraving", "embroidered");
    for (size_t i = found->to; engraved && i < found->to + 4 && i < tokens->count; i++)
        dated |= tokens->at[i].kind == TOKEN_FIGURE;
    if (dated && token_is(tokens, found->to, ",") && found->to > found->from + 1) return true;
    if (is_issued(note, found)) return true;
    // "And my own grandfather, H. SOMEBODY"
    if (found->from > 1 && token_is(tokens, found->from - 1, ",") &&
        ANY(tokens, found->from - 2, "grandfather", "grandmother", "father", "mother", "uncle", "aunt",
            "brother", "sister", "husband", "wife", "son", "daughter", "cousin", "grandad", "dad", "mum",
            "mom"))
        return true;
    // "A pawn stub, number 41": of a paper that is gone
    if (found->from > 2 && ANY(tokens, found->from - 1, "number", "no") &&
        ANY(tokens, found->from - 3, "stub", "ticket", "receipt", "docket", "voucher"))
        return true;
    // "Over the pocket the name Somebody, that was my uncle"
    if (found->from > 1 && ANY(tokens, found->from - 1, "name") && ANY(tokens, found->from - 2, "the", "a") &&
        token_is(tokens, found->to, ",") &&
        ANY(tokens, found->to + 1, "that", "who", "my", "his", "her", "which") &&
        ANY(tokens, found->to + 2, "was", "is", "uncle", "aunt", "father", "mother", "grandfather", "brother",
            "wife", "husband", "son", "daughter"))
        return true;
    bool property = ANY(tokens, found->from, "property") && ANY(tokens, found->from + 1, "of");
    // "It says J.L. from Dad"
    bool given = ANY(tokens, found->to, "from", "to", "for", "with") &&
                 ANY(tokens, found->to + 1, "dad", "mum", "mom", "mother", "father", "his", "her", "my",
                     "all", "the", "love", "your", "wife", "husband") &&
                 !ANY(tokens, found->to + 2, "base", "works", "factory");
    return property || given;
}

bool mark_is_withheld(struct note *note, size_t begin, const struct mark_found *found) {
    const struct tokens *tokens = &note->tokens;
    bool word = false, firm = false;
    for (size_t i = found->from; i < found->to; i++) {
        word |= tokens->at[i].kind == TOKEN_WORD && tokens->at[i].capital;
        firm |= firm_word(tokens, i);
    }
    size_t near = note_clause_from(note, begin, STOP_COMMA);
    if (near + NEAR < found->from) near = found->from - NEAR;
    for (size_t k = near; k < found->from; k++)
        if (person_of_trade(tokens, k) ||
            ANY(tokens, k, "signed", "titled", "maker", "maker's", "artist", "artist's", "initials",
                "initial", "monogram")) // letters are told by that word
            return false;
    if (found->from > 0 && token_is(tokens, found->from - 1, ",")) { // "photographer's stamp, A. SOMEBODY"
        size_t start = note_clause_from(note, found->from - 1, STOP_COMMA);
        for (size_t k = start; k < found->from; k++)
            if (person_of_trade(tokens, k)) return false;
    }
    bool stub = is_issued(note, found) || (found->from > 2 && ANY(tokens, found->from - 3, "stub", "ticket",
                                                                  "receipt", "docket", "voucher"));
    if ((!word && !stub) || tokens->shouts) return false;
    if (!is_by_hand(note, begin, found) && (firm || !(is_personal(note, found) || is_dedicated(note, found))))
        return false;
    person_tell_owner(note, found->from, found->to, found->end);
    return person_keep_back(note, found->from, found->to) > 0;
}
