// SPDX-License-Identifier: MIT
// say_unit() knows the spellings; here stands what else those letters may be in a note. Every rule below is
// there because the plain reading is wrong more often than right.
#include "notes/any.h"
#include "text/order.h"
#include "notes/things.h"
#include "notes/unit.h"

#include <string.h>

// "A big 5 in cobalt on the front": painted in it, and no inches.
bool unit_is_painted(const struct tokens *tokens, size_t figure) {
    size_t i = figure + 1;
    if (figure < 1 || !token_is(tokens, i, "in") ||
        !ANY(tokens, i + 1, "cobalt", "blue", "black", "red", "gold", "white", "green", "brown", "gilt",
             "paint", "slip"))
        return false;
    bool ends =
        i + 2 >= tokens->count || tokens->at[i + 2].stop != STOP_NONE ||
        ANY(tokens, i + 2, "on", "at", "under", "below", "across", "inside", "paint", "slip", "glaze");
    return ends && ANY(tokens, i - 2, "big", "large", "number", "numeral", "painted", "stenciled",
                       "stencilled", "small", "fancy", "script", "figure");
}

// "in" as a preposition: what follows is where something is.
static bool in_is_place(const struct tokens *tokens, size_t i) {
    if (i > 0 && unit_is_painted(tokens, i - 1)) return true;
    if (ANY(tokens, i + 1, "cardboard", "paper", "wooden", "cloth", "tin", "card", "plastic", "glass") &&
        ANY(tokens, i + 2, "tubes", "boxes", "tins", "sleeves", "bags", "cases", "jars", "trays", "packets",
            "cartons", "envelopes", "folders", "racks"))
        return true; // "11 in cardboard tubes"
    return ANY(tokens, i + 1, "the", "a", "an", "my", "this", "that", "it", "each", "total", "all", "good",
               "great", "one", "front", "box", "perfect", "working", "use", "here", "there", "them", "nice",
               "very", "fair", "poor", "excellent", "need", "original", "their", "its", "our", "his", "her",
               "place", "stock", "number", "pencil", "pen", "ink", "two", "three");
}

// "Typewriter, Quillard 22 in seafoam green": a maker's number, and what color it is of.
static bool in_is_of_color(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    struct word_entry entry;
    const uint32_t looks =
        (1u << USE_COLOR) | (1u << USE_MATERIAL) | (1u << USE_PATTERN) | (1u << USE_FINISH);
    if (i < 3 || tokens->at[i].joined || !tokens->at[i - 2].capital || tokens->at[i - 2].kind != TOKEN_WORD ||
        tokens->at[i - 2].starts || tokens->at[i - 2].stop != STOP_NONE)
        return false;
    size_t at = i + 1, n = word_at(note, at, 1u << USE_COLOR, &entry);
    if (!n) return false;
    for (; n; n = at < tokens->count ? word_at(note, at, looks, &entry) : 0)
        at += n + ANY(tokens, at + n, "and", "&");
    return at >= tokens->count || tokens->at[at].stop != STOP_NONE ||
           ANY(tokens, at, "with", "w/", "but", "case", "paint", "finish");
}

// Does a written `"` close a quotation that was opened before?
static bool closes_quote(const struct tokens *tokens, size_t i) {
    enum { QUOTE_MOST = 24 };
    bool open = false;
    size_t from = i > QUOTE_MOST ? i - QUOTE_MOST : 0;
    for (size_t k = from; k < i; k++) {
        if (tokens->at[k].stop >= STOP_LINE) open = false;
        if (!token_is(tokens, k, "\"")) continue;
        bool after_figure = tokens->at[k].joined && k && tokens->at[k - 1].kind == TOKEN_FIGURE;
        open = open ? false : !after_figure && k + 1 < tokens->count && tokens->at[k + 1].joined;
    }
    return open;
}

static const struct unit *mark_unit(const struct note *note, size_t i, size_t *taken) {
    const struct tokens *tokens = &note->tokens;
    if (!tokens->at[i].joined && i && tokens->at[i - 1].kind != TOKEN_FIGURE) return NULL;
    if (token_is(tokens, i, "\"")) {
        *taken = 1;
        return closes_quote(tokens, i) ? NULL : say_unit("in", note->locale);
    }
    if (!token_is(tokens, i, "'")) return NULL;
    bool two = token_is(tokens, i + 1, "'") && tokens->at[i + 1].joined;
    *taken = two ? 2 : 1;
    return say_unit(two ? "in" : "ft", note->locale);
}

char dimension_letter(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (i >= tokens->count || !ANY(tokens, i, "h", "w", "d", "l")) return 0;
    return tokens->at[i].fold[0];
}

// A letter that is a unit too ("8 w x 6 h"): a dimension where an x, a comma or another such letter is near.
static bool letter_is_dimension(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (ANY(tokens, i + 1, "x", "by")) return true;
    for (size_t k = i > 5 ? i - 5 : 0; k < i + 5 && k < tokens->count; k++)
        if (k > i && ANY(tokens, k, "high", "tall", "deep", "wide", "long"))
            return true;
        else if (k != i && tokens->at[k].kind == TOKEN_FIGURE && strpbrk(tokens->at[k].fold, "hwl"))
            return true;
        else if (k != i && tokens->at[k].fold[0] != tokens->at[i].fold[0] && dimension_letter(note, k))
            return true;
    return false;
}

static bool is_whole_small(const struct number *number) {
    return number->whole && number->value < 13;
}

// "4 feet, one is loose", "one foot is chipped": feet that something stands on.
static bool is_bodily(const struct note *note, size_t i, const struct number *number) {
    enum { INCHES = 12, LEGS = 6 };
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, i, "foot", "feet") || !is_whole_small(number)) return false;
    if (i > 0 && token_is(tokens, i - 1, "-")) return false;              // "five-foot-long"
    if (token_is(tokens, i, "foot") && number->value > 1.5) return false; // "pole, 6 foot to the hook"
    size_t before = i - number->taken;
    if (before > 0 && ANY(tokens, before - 1, "has", "have", "had", "its", "of", "on") &&
        ANY(tokens, i + 1, "and") &&
        ANY(tokens, i + 2, "one", "two", "all", "they", "each", "none", "they're", "both"))
        return true; // "it has three feet and one is broken off"
    if (ANY(tokens, i + 1, "tall", "high", "long", "wide", "across", "deep", "by", "x", "of", "in", "square",
            "reel", "around", "round", "length", "and", "cord", "cable", "rope", "chain", "ladder", "rug",
            "runner", "diameter"))
        return before > 0 && ANY(tokens, before - 1, "on");
    size_t again = 0;
    if (token_is(tokens, i, "foot") && number_whole(tokens, i + 1, &again)) return false;
    bool more = number_whole(tokens, i + 1, &again) > 0 && number_whole(tokens, i + 1, &again) < INCHES;
    size_t behind = i + 1 + again; // "5 feet 2 overall"
    if (more && tokens->at[i].stop == STOP_NONE &&
        (behind >= tokens->count || tokens->at[behind].stop != STOP_NONE ||
         ANY(tokens, behind, "tall", "high", "long", "wide", "across", "deep", "by", "x", "overall", "square",
             "when", "open", "closed", "to")))
        return false;
    if (number_whole(tokens, i + 1, &again) && (ANY(tokens, i + 1 + again, "in", "inch", "inches", "\"") ||
                                                number_fraction(tokens, i + 1 + again, &(double){0})))
        return false; // "two feet eight inches"
    bool ends = i + 1 >= tokens->count || tokens->at[i + 1].stop != STOP_NONE;
    if (token_is(tokens, i, "foot") && ends && number->value > 1.5) return false; // "bench. 6 foot."
    if (ends && number->value > LEGS && (before == 0 || tokens->at[before - 1].stop != STOP_NONE))
        return false; // "pole, 9 feet."
    return before == 0 || !ANY(tokens, before - 1, "about", "measures", "approx", "roughly", "around", "~",
                               "to", "is", "nearly", "almost", "least", "over", "under", "s", "by", "x");
}

static bool near_word(const struct note *note, size_t i, size_t span, const char *const *list) {
    for (size_t k = i > span ? i - span : 0; k < i + span && k < note->tokens.count; k++)
        if (token_any(&note->tokens, k, list)) return true;
    return false;
}

static bool holds_before(const struct note *note, size_t i) {
    static const char *const words[] = {"holds",  "hold",    "capacity", "takes",
                                        "volume", "holding", "contains", NULL};
    size_t from = i > 8 ? i - 8 : 0;
    for (size_t k = i; k > from && note->tokens.at[k - 1].stop < STOP_SENTENCE; k--)
        if (token_any(&note->tokens, k - 1, words)) return true;
    return false;
}

// Spellings that need something beside them before they are believed.
static bool is_doubtful(const struct note *note, size_t i, const char *word, const struct unit *unit,
                        const struct number *number) {
    static const char *const gold[] = {"gold", "karat", "gf", "filled", "yellow", "rolled", NULL};
    static const char *const gem[] = {"diamond", "stone",    "stones", "sapphire", "ruby",
                                      "gem",     "diamonds", "opal",   NULL};
    static const char *const weigh[] = {"weighs", "weight", "weighing", "weighed", NULL};
    static const char *const pint[] = {"pint", "pints", "pt", NULL};
    const char *name = unit->name;
    // "the twenty ounce kind" of a pint
    if (text_same(name, "oz") && number->value > 19.5 && number->value < 20.5 && near_word(note, i, 8, pint))
        return true;
    if (text_same(name, "carat")) return near_word(note, i, 3, gold) || !near_word(note, i, 5, gem);
    if (text_same(name, "st")) return text_same(word, "st") || !near_word(note, i, 6, weigh);
    if (text_same(name, "grain") || text_same(name, "mil")) return true;
    // "Holds four plates and four cups"
    const struct token *t = note->tokens.at;
    if (strstr(name, "cup") && i > 2 &&
        (ANY(&note->tokens, i - 2, "and", "&") || t[i - 2].stop == STOP_COMMA)) {
        size_t noun = t[i - 2].kind == TOKEN_SIGN || ANY(&note->tokens, i - 2, "and", "&") ? i - 3 : i - 2;
        if (t[noun].one != t[noun].fold) return true;
    }
    if (strstr(name, "cup"))
        return !holds_before(note, i) && !(token_is(&note->tokens, i, "cup") && vessel_at(note, i + 1));
    if (text_same(word, "pt") || text_same(word, "pts"))
        return !holds_before(note, i) && !note_has_vessel(note, i);
    if (text_same(name, "m") && text_same(word, "m")) return number->said;
    if (text_same(name, "g") && text_same(word, "g")) return number->said;
    return false;
}

// "oz" is a volume beside a vessel, unless it is weighed.
static const struct unit *volume_of(const struct note *note, size_t i, size_t after,
                                    const struct unit *unit) {
    static const char *const weigh[] = {"weighs", "weight", "weighing", "weighed",  "weigh", "scale",
                                        "scales", "wt",     "silver",   "sterling", "troy",  NULL};
    if (!text_same(unit->name, "oz")) return unit;
    const struct unit *volume = say_unit("fl oz", note->locale);
    if (holds_before(note, i) || token_is(&note->tokens, after, "capacity")) return volume;
    if (near_word(note, i, 6, weigh)) return unit;
    for (size_t k = after; k < after + 3 && k < note->tokens.count && note->tokens.at[k].stop == STOP_NONE;
         k++)
        if (vessel_at(note, k)) return volume;
    return note_has_vessel(note, i) ? volume : unit;
}

// Pints and gallons of the other country, where the note says so.
static const struct unit *measure_of_country(const struct note *note, size_t i, const struct unit *unit) {
    static const char *const imperial[] = {"imperial", "imp", "british", "uk", "english", NULL};
    if (!unit->kind || !text_same(unit->kind, "ml") || unit->system != SYSTEM_US) return unit;
    bool says = near_word(note, i, 3, imperial);
    // "2 pints, the proper twenty ounce kind"
    for (size_t k = i + 1; !says && strstr(unit->name, "pt") && k < i + 6 && k < note->tokens.count; k++)
        says = (token_is(&note->tokens, k, "twenty") || token_is(&note->tokens, k, "20")) &&
               ANY(&note->tokens, k + 1, "ounce", "oz", "ounces");
    return says ? say_unit(unit->name, LOCALE_GB) : unit;
}

static const struct unit *word_unit(const struct note *note, size_t i, const struct number *number,
                                    size_t *taken) {
    const struct tokens *tokens = &note->tokens;
    const char *word = tokens->at[i].fold;
    static const char *const pairs[] = {"fl oz",           "fluid ounces",     "fluid ounce",
                                        "fluid oz",        "troy ounces",      "troy oz",
                                        "troy ounce",      "imperial pint",    "imperial pints",
                                        "imperial gallon", "imperial gallons", "us pint",
                                        "us gallon",       "us gallons",       "oz t"};
    bool may = token_may_open(tokens, i, (const void *)pairs, sizeof pairs / sizeof *pairs, sizeof *pairs);
    for (size_t k = 0; may && k < sizeof pairs / sizeof *pairs; k++)
        if ((*taken = token_phrase(tokens, i, pairs[k])) != 0) return say_unit(pairs[k], note->locale);
    *taken = 1;
    if (text_same(word, "fl") && token_is(tokens, i + 1, ".") && token_is(tokens, i + 2, "oz")) {
        *taken = 3;
        return say_unit("fl oz", note->locale);
    }
    enum { IN_MOST = 400 }; // "4471 in gold"
    if (text_same(word, "in") &&
        (in_is_place(tokens, i) || in_is_of_color(note, i) || number->said || number->value > IN_MOST) &&
        !token_is(tokens, i + 1, "."))
        return NULL;
    if (tokens->at[i].kind != TOKEN_WORD) return NULL;
    if (ANY(tokens, i, "h", "d") || (ANY(tokens, i, "w", "l") && letter_is_dimension(note, i))) return NULL;
    if (text_same(word, "a") || text_same(word, "m") || text_same(word, "l")) {
        char letter[2] = {tokens->text[tokens->at[i].from], '\0'};
        static const char *const current[] = {"v", "volt", "volts", "ac", "dc", "hz", "w", "watt", NULL};
        if (text_same(letter, "A"))
            return near_word(note, i, 4, current) ? say_unit("A", note->locale) : NULL;
        if (text_same(letter, "M")) return NULL;
    }
    const struct unit *unit = say_unit(word, note->locale);
    if (!unit || is_bodily(note, i, number) || is_doubtful(note, i, word, unit, number)) return NULL;
    return unit;
}

static const struct unit *tail_unit(const struct note *note, size_t i, const struct number *number) {
    const struct token *token = &note->tokens.at[i - 1];
    if (text_same(number->tail, "a") && note->tokens.text[token->to - 1] == 'A')
        return say_unit("A", note->locale);
    if (text_same(number->tail, "m") && note->tokens.text[token->to - 1] == 'M') return NULL;
    if (strlen(number->tail) == 1 && strchr("hdw", *number->tail) && letter_is_dimension(note, i - 1))
        return NULL;
    const struct unit *unit = say_unit(number->tail, note->locale);
    return unit && !is_doubtful(note, i - 1, number->tail, unit, number) ? unit : NULL;
}

const struct unit *unit_at(const struct note *note, size_t i, const struct number *number, size_t *taken) {
    const struct tokens *tokens = &note->tokens;
    size_t start = i;
    *taken = 0;
    if (*number->tail) {
        const struct unit *unit = tail_unit(note, i, number);
        if (unit && token_is(tokens, i, ".") && tokens->at[i].stop == STOP_NONE) *taken = 1;
        return unit ? measure_of_country(note, i, volume_of(note, i, i, unit)) : NULL;
    }
    if (i >= tokens->count) return NULL;
    if (token_is(tokens, i, "-") && tokens->at[i].joined && tokens->at[i].stop == STOP_NONE) i++;
    if (i >= tokens->count) return NULL;
    const struct unit *unit = NULL;
    if (token_is(tokens, i, "#") && tokens->at[i].joined) {
        *taken = 1;
        unit = say_unit("lb", note->locale);
    } else {
        unit =
            tokens->at[i].kind == TOKEN_SIGN ? mark_unit(note, i, taken) : word_unit(note, i, number, taken);
    }
    if (!unit) {
        *taken = 0;
        return NULL;
    }
    *taken += i - start;
    size_t end = start + *taken;
    if (token_is(tokens, end, ".") && tokens->at[end].stop == STOP_NONE) ++*taken;
    return measure_of_country(note, i, volume_of(note, i, start + *taken, unit));
}
