// SPDX-License-Identifier: MIT
// The words around a mark, by what they do: stamp it, say it, end it.
#include "notes/mark_words.h"

#include <string.h>

#include "notes/any.h"
#include "notes/english.h"
#include "notes/figure.h"
#include "text/order.h"
#include "notes/mark_found.h"
#include "notes/measures.h"
#include "notes/place.h"
#include "notes/things.h"

bool mark_is_stamp(const struct note *note, size_t i) {
    if (!ANY(&note->tokens, i, "marked", "stamped", "signed", "engraved", "inscribed", "embossed",
             "impressed", "incised", "etched", "printed", "stenciled", "stencilled", "lettered", "hallmarked",
             "labeled", "labelled", "initialed", "branded", "backstamped", "dated", "cast", "molded",
             "forged", "embroidered", "punched", "moulded", "pressed", "scratched", "painted", "marking",
             "numbered", "carved"))
        return false;
    if (ANY(&note->tokens, i, "carved", "embroidered", "punched") && i + 1 < note->tokens.count &&
        !ANY(&note->tokens, i + 1, "with", "in", "on", "at", "under", "inside", ":", "underneath", "near") &&
        !note->tokens.at[i + 1].capital && note->tokens.at[i + 1].kind != TOKEN_FIGURE)
        return false; // "carved panels, 11 stops"
    if (ANY(&note->tokens, i, "numbered")) {
        const char *where;
        size_t at = i + 1 + place_at(note, i + 1, &where);
        return at < note->tokens.count &&
               (note->tokens.at[at].kind == TOKEN_FIGURE || note->tokens.at[at].kind == TOKEN_CODE);
    }
    if (ANY(&note->tokens, i, "marking") && ANY(&note->tokens, i + 1, "gauge", "knife", "out", "ink", "awl"))
        return false;                                         // a tool
    if (i && ANY(&note->tokens, i - 1, "hand")) return false; // "hand painted": how it was made
    if (i && token_is(&note->tokens, i, "marking") && token_is(&note->tokens, i - 1, "for")) return false;
    if (token_is(&note->tokens, i + 1, "by") && ANY(&note->tokens, i + 2, "nobody", "no"))
        return false; // "signed by nobody"
    return !(ANY(&note->tokens, i, "pressed", "cast", "molded", "moulded", "painted", "etched", "forged") &&
             ANY(&note->tokens, i + 1, "glass", "iron", "steel", "metal", "brass", "wood", "aluminum",
                 "plastic",
                 "tin")); // "pressed glass"
}

// These need something beside them before what follows is a text: "cast iron", "pressed glass", "painted
// blue".
bool mark_is_weak(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "cast", "molded", "moulded", "pressed", "scratched", "painted", "branded",
               "etched", "printed", "embossed", "engraved", "labeled", "labelled", "impressed", "incised",
               "embroidered", "punched", "carved", "forged");
}

// Ways of making before they are ways of writing.
bool mark_is_process(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "cast", "molded", "moulded", "pressed", "painted", "scratched",
               "embroidered", "punched", "carved", "forged");
}

// "Reads 2 lb light", "reads about half an ounce over": how far off it is.
static bool is_deviation(const struct tokens *tokens, size_t from, size_t to) {
    for (size_t i = from; i < to && i < tokens->count && tokens->at[i].stop < STOP_CLAUSE; i++) {
        if (ANY(tokens, i, "light", "heavy", "high", "low", "over", "under", "out", "short", "off"))
            return true;
        if (tokens->at[i].stop != STOP_NONE) return false;
    }
    return false;
}

bool mark_is_says(const struct note *note, size_t i) {
    enum { WORDS_MOST = 5 };
    const struct tokens *tokens = &note->tokens;
    if (ANY(tokens, i, "reads", "read", "reading") && i + 2 < tokens->count &&
        (tokens->at[i + 1].kind == TOKEN_FIGURE ||
         ANY(tokens, i + 1, "about", "roughly", "nearly", "around", "a", "half", "two", "three")) &&
        is_deviation(tokens, i + 2, i + 1 + WORDS_MOST))
        return false;
    return ANY(&note->tokens, i, "says", "reads", "reading", "saying", "say", "read", "stating", "states");
}

bool mark_is_person(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "he", "she", "they", "who", "wife", "husband", "sister", "brother", "lady",
               "man", "neighbor", "neighbour", "uncle", "aunt", "dad", "mom", "mum", "father", "mother",
               "son", "daughter", "cousin", "friend", "guy", "seller", "dealer", "grandma", "grandpa", "i",
               "you", "everyone", "somebody", "someone", "people", "nobody", "we", "nephew", "niece",
               "partner", "scale", "scales", "clock", "meter", "thermometer", "gauge");
}

// Words that end a mark, or that cannot begin one.
bool mark_is_breaker(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "is", "has", "have", "with", "but", "so", "which", "that", "and", "no",
               "not", "it", "its", "it's", "i", "the", "a", "an", "was", "were", "are", "there", "for", "or",
               "where", "then", "my", "this", "they", "comes", "from", "some", "nothing", "can't", "cant",
               "also", "plus", "all", "both", "each", "very", "works", "missing", "w/", "w/o", "on", "in",
               "under", "underneath", "inside", "at", "to", "into", "down", "along", "across", "over", "up",
               "by", "of", "near", "who", "if", "when", "like", "only", "just", "too", "one", "again",
               "below", "above", "beneath", "faintly", "clearly", "twice", "everywhere", "handle", "lid",
               "base", "bottom", "back", "side", "front");
}

// "9ct on the case back", "18k inside the band"
bool mark_is_carat(const struct note *note, size_t i) {
    return ANY(&note->tokens, i, "9ct", "15ct", "18ct", "22ct", "9k", "10k", "14k", "18k", "22k", "14kt",
               "18kt", "10kt", "375", "585", "750", "925", "k18", "k14");
}

bool mark_is_roman(const struct note *note, size_t i) {
    const struct token *token = i < note->tokens.count ? &note->tokens.at[i] : NULL;
    return token && token->capitals && strspn(token->fold, "ivxlcdm") == strlen(token->fold);
}

bool mark_is_doing(const struct note *note, size_t i) {
    const char *fold = note->tokens.at[i].fold;
    size_t size = strlen(fold);
    bool verb = size > 4 && (!strcmp(fold + size - 2, "ed") || !strcmp(fold + size - 3, "ing"));
    return verb && english_at(note, i);
}

// "Printed 1951", "published 1949." of a book: its year, and nothing that is written on it.
static bool is_imprint(const struct note *note, size_t i) {
    static const char *const books[] = {"book",     "books",     "guide",     "atlas",      "catalog",
                                        "manual",   "cookbook",  "catalogue", "magazine",   "pamphlet",
                                        "map",      "edition",   "novel",     "dictionary", "encyclopedia",
                                        "volume",   "hardcover", "paperback", "handbook",   "textbook",
                                        "songbook", "hymnal",    "bible",     "almanac",    "booklet"};
    const struct tokens *tokens = &note->tokens;
    size_t year = i + 1 + (ANY(tokens, i + 1, "in") ? 1 : 0);
    if (!ANY(tokens, i, "printed", "published", "issued") || year >= tokens->count ||
        tokens->at[year].kind != TOKEN_FIGURE || strlen(tokens->at[year].fold) != 4 ||
        strspn(tokens->at[year].fold, "0123456789") != 4 ||
        (year + 1 < tokens->count && tokens->at[year + 1].stop == STOP_NONE))
        return false;
    for (size_t k = 0; k < tokens->count; k++)
        if (token_among(tokens, k, books, sizeof books / sizeof *books)) return true;
    return false;
}

// "A stenciled iron tray", "Stamped leather case": how the goods behind it were made.
bool mark_is_making(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (is_imprint(note, i)) return true;
    if (i + 1 >= tokens->count || tokens->at[i + 1].kind != TOKEN_WORD ||
        tokens->at[i + 1].stop != STOP_NONE || (mark_is_text(note, i + 1) && !tokens->at[i + 1].starts))
        return false;
    struct word_entry entry;
    struct noun_found goods;
    bool led = i > 0 && tokens->at[i - 1].stop == STOP_NONE &&
               ANY(tokens, i - 1, "a", "an", "this", "these", "old", "small", "large", "nice", "two", "three",
                   "four", "pair");
    bool opens = i == 0 || tokens->at[i - 1].stop >= STOP_SENTENCE;
    if (!led && !opens) return false;
    if (word_at(note, i + 1, 1u << USE_MATERIAL, &entry)) return true;
    if (led && ANY(tokens, i, "stenciled", "stencilled", "printed", "painted", "embroidered", "etched") &&
        !tokens->at[i + 1].capital && word_at(note, i + 1, 1u << USE_THEME, &entry))
        return true; // "a stenciled fern on the front": a picture
    return noun_at(note, i + 1, &goods) &&
           (goods.thing || (goods.uses & (1u << USE_THING) && !goods.gated && !goods.candidate));
}

bool mark_is_denied(const struct note *note, size_t i) {
    for (size_t k = i; k > 0 && k + 3 > i && note->tokens.at[k - 1].stop == STOP_NONE; k--)
        if (ANY(&note->tokens, k - 1, "not", "never", "isn't", "isnt", "nothing", "no", "aren't", "arent",
                "wasn't", "un"))
            return true;
    return false;
}

// "tag says medium", "label says 40 inch chest", "the list says ten": a size, a measure or a count told by a
// label.
bool mark_is_other_reading(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (ANY(tokens, i, "size", "sz", "small", "medium", "large", "extra", "xs", "s", "m", "l", "xl", "xxl",
            "2xl", "3xl"))
        return true;
    if (ANY(tokens, i + 1, "long", "regular", "reg", "short", "tall") && i < tokens->count &&
        tokens->at[i].kind == TOKEN_FIGURE && strlen(tokens->at[i].fold) == 2)
        return true; // "tag says 44 long"
    if (token_is(tokens, i + 1, "x") && i + 2 < tokens->count && tokens->at[i].kind == TOKEN_FIGURE &&
        tokens->at[i + 2].kind == TOKEN_FIGURE && strlen(tokens->at[i].fold) == 2 &&
        strlen(tokens->at[i + 2].fold) == 2 && sizes_of_trousers(note))
        return true; // "tag says 34 x 30"
    struct amount amount;
    if (!amount_at(note, i, &amount)) return false;
    if (amount.unit && amount.unit->kind) return text_same(amount.unit->kind, "mm");
    return amount.spelled && i + amount.taken < tokens->count &&
           tokens->at[i + amount.taken].stop != STOP_NONE;
}

// "Roses printed on the sides, 4 1/4 inches high": how large it is, which a comma parts from the print. What
// is in capitals stands there.
bool mark_is_measure(const struct note *note, size_t i) {
    struct amount amount;
    const struct tokens *tokens = &note->tokens;
    bool counts = i > 0 && i + 1 < tokens->count && tokens->at[i - 1].stop == STOP_COMMA &&
                  tokens->at[i].kind == TOKEN_FIGURE && tokens->at[i].stop == STOP_NONE &&
                  tokens->at[i + 1].kind == TOKEN_WORD && !tokens->at[i + 1].capital &&
                  tokens->at[i + 1].one != tokens->at[i + 1].fold; // "marked on the clasp, 9 charms"
    if (counts) return true;
    return i > 0 && tokens->at[i - 1].stop == STOP_COMMA && amount_at(note, i, &amount) && amount.unit &&
           !tokens->at[i + amount.taken - 1].capitals;
}

bool mark_is_sort(const struct note *note, size_t from, size_t to) {
    const struct tokens *tokens = &note->tokens;
    // "XL on the tag": its size
    if (to == from + 1 && ANY(tokens, from, "xs", "xl", "xxl", "2xl", "3xl", "s", "m", "l") &&
        ANY(tokens, to, "on") && ANY(tokens, to + 2, "tag", "label"))
        return true;
    if (tokens->at[to - 1].capital) return false;
    // "Stenciled fruit", "painted boats": a picture
    struct word_entry shown;
    bool drawn = to == from + 1 && from > 0 &&
                 ANY(tokens, from - 1, "stenciled", "stencilled", "painted", "embroidered", "woven",
                     "embossed", "printed");
    if (drawn && word_at(note, from, (1u << USE_THEME) | (1u << USE_PATTERN), &shown)) return true;
    if (drawn && !tokens->flat && tokens->at[from].one != tokens->at[from].fold && english_at(note, from))
        return true;
    return ANY(tokens, to - 1, "owners", "people", "persons", "hands") ||
           (to == from + 1 && ANY(tokens, from, "numbers", "letters", "names", "initials", "words", "writing",
                                  "lettering", "things", "zero", "true"));
}
