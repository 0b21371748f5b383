// SPDX-License-Identifier: MIT
// Amounts: a number, its unit, the second half of "5 foot 6", the other end of a range, and the hedges around
// them.
#include "notes/figure.h"
#include "notes/any.h"

#include <string.h>

#include "notes/unit.h"
#include "text/order.h"

#define COUNT(list) (sizeof list / sizeof *list)

// Hedges before a figure, and those that stand behind one. The longer ones first.
static const char *const hedges[] = {"just shy of",
                                     "just short of",
                                     "just under",
                                     "just over",
                                     "a little over",
                                     "a little under",
                                     "a little more than",
                                     "a hair over",
                                     "a hair under",
                                     "a touch over",
                                     "a touch under",
                                     "a bit over",
                                     "a bit under",
                                     "a bit more than",
                                     "a shade over",
                                     "a shade under",
                                     "a tad over",
                                     "a tad under",
                                     "shy of",
                                     "close to",
                                     "more like",
                                     "more or less",
                                     "not quite",
                                     "no bigger than",
                                     "no more than",
                                     "not much over",
                                     "under",
                                     "over",
                                     "about",
                                     "around",
                                     "roughly",
                                     "approximately",
                                     "approx .",
                                     "approx",
                                     "nearly",
                                     "almost",
                                     "maybe",
                                     "perhaps",
                                     "say",
                                     "like",
                                     "probably",
                                     "some",
                                     "~",
                                     "circa",
                                     "ca .",
                                     "abt",
                                     "c .",
                                     "at least",
                                     "or so"};
static const char *const hedges_behind[] = {"give or take an inch",
                                            "give or take a bit",
                                            "give or take",
                                            "or thereabouts",
                                            "or so",
                                            "more or less",
                                            "approximately",
                                            "approx .",
                                            "approx",
                                            "roughly",
                                            "ish",
                                            "- ish",
                                            "or about that",
                                            "I guess",
                                            "i guess",
                                            "i think",
                                            "maybe",
                                            "about"};

size_t hedge_at(const struct note *note, size_t i, bool behind) {
    const char *const *list = behind ? hedges_behind : hedges;
    size_t count = behind ? COUNT(hedges_behind) : COUNT(hedges);
    if (!token_may_open(&note->tokens, i, (const void *)list, count, sizeof *list)) return 0;
    for (size_t k = 0; k < count; k++) {
        size_t taken = token_phrase(&note->tokens, i, list[k]);
        if (taken) return taken;
    }
    return 0;
}

static size_t one_hedge_before(const struct note *note, size_t i) {
    enum { HEDGE_MOST = 4 };
    size_t best = 0;
    for (size_t back = 1; back <= HEDGE_MOST && back <= i; back++) {
        if (note->tokens.at[i - back].stop >= STOP_COMMA) break;
        if (hedge_at(note, i - back, false) == back) best = back;
    }
    return best;
}

// "maybe about": two are usual, more are not.
size_t hedge_before(const struct note *note, size_t i) {
    size_t first = one_hedge_before(note, i);
    return first ? first + one_hedge_before(note, i - first) : 0;
}

// "5 foot long, foot wide, foot and a half high": one of them.
static bool is_one_foot(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (!ANY(tokens, i, "foot", "yard") || i == 0 || tokens->at[i].stop != STOP_NONE) return false;
    bool led = tokens->at[i - 1].stop == STOP_COMMA || ANY(tokens, i - 1, "and", "by", "about");
    return led && (ANY(tokens, i + 1, "wide", "high", "tall", "long", "deep", "square", "across") ||
                   (token_phrase(tokens, i + 1, "and a half") && !ANY(tokens, i + 4, "of")));
}

static bool article_number(const struct note *note, size_t i, struct number *number) {
    if (is_one_foot(note, i)) {
        *number = (struct number){.value = 1, .taken = 0, .whole = true, .said = true, .tail = ""};
        return true;
    }
    if (!token_is(&note->tokens, i, "a") && !token_is(&note->tokens, i, "an")) return false;
    *number = (struct number){.value = 1, .taken = 1, .whole = true, .said = true, .tail = ""};
    size_t taken;
    if (token_is(&note->tokens, i + 1, "couple")) {
        number->value = 2;
        number->taken = token_is(&note->tokens, i + 2, "of") ? 3 : 2;
    }
    const struct unit *unit = unit_at(note, i + number->taken, number, &taken);
    return unit && unit->kind;
}

static bool is_unit_named(const struct unit *unit, const char *name) {
    return unit && text_same(unit->name, name);
}

static bool ends_amount(const struct note *note, size_t i) {
    static const char *const words[] = {
        "tall",    "high",   "long", "wide",  "deep",     "across",   "by",     "x",
        "rug",     "runner", "in",   "total", "and",      "each",     "on",     "or",
        "with",    "w/",     "has",  "no",    "plus",     "but",      "opened", "open",
        "overall", "square", "at",   "when",  "unfolded", "extended", "out",    "folded"};
    if (i >= note->tokens.count || note->tokens.at[i].stop >= STOP_COMMA) return true;
    bool end = token_is(&note->tokens, i, "to") && ANY(&note->tokens, i + 1, "the", "its", "top");
    return end || token_among(&note->tokens, i, words, COUNT(words)); // "7 foot 8 to the finial"
}

// "5 foot 6", "5'10", "3 lbs 4": the smaller unit behind, with or without its name.
static void add_lesser(const struct note *note, size_t i, struct amount *amount) {
    bool feet = is_unit_named(amount->unit, "ft"), pounds = is_unit_named(amount->unit, "lb");
    if ((!feet && !pounds) || !amount->whole) return;
    size_t skip = token_is(&note->tokens, i, "and") ? 1 : 0, taken = 0;
    struct number less;
    double most = feet ? 12 : 16;
    if (!number_at(&note->tokens, i + skip, &less) || less.value >= most || (less.part && !*less.tail))
        return;
    size_t end = i + skip + less.taken;
    const struct unit *unit = unit_at(note, end, &less, &taken);
    bool named = unit && text_same(unit->name, feet ? "in" : "oz");
    if (!named && pounds && unit && strstr(unit->name, "fl oz")) named = true;
    if (!named && note->tokens.at[i + skip].kind == TOKEN_WORD &&
        ANY(&note->tokens, end, "has", "have", "is", "are", "with", "of"))
        return; // "7 ft. One has a split"
    if (!named && (unit || skip || *less.tail || (!note->tokens.at[i].joined && !ends_amount(note, end))))
        return;
    amount->value = feet ? amount->value * 12 + less.value : amount->value + less.value / 16;
    if (feet) amount->unit = say_unit("in", note->locale);
    amount->whole = false;
    amount->taken += skip + less.taken + (named ? taken : 0);
}

// "an inch and a half", "a foot and a quarter".
static void add_fraction(const struct note *note, size_t i, struct amount *amount) {
    double more;
    size_t taken = amount->whole ? number_fraction(&note->tokens, i, &more) : 0;
    if (!taken) return;
    amount->value += more;
    amount->whole = false;
    amount->taken += taken;
}

// "20 something", "30 odd".
static bool add_something(const struct note *note, size_t i, struct amount *amount) {
    if (!token_is(&note->tokens, i, "something") && !token_is(&note->tokens, i, "odd")) return false;
    if (!amount->whole || amount->value < 20 || amount->unit) return false;
    amount->to = amount->value + 9;
    amount->about = true;
    amount->taken++;
    return true;
}

static bool single_at(const struct note *note, size_t i, struct amount *amount) {
    struct number number;
    size_t taken = 0;
    *amount = (struct amount){0};
    if (article_number(note, i, &number))
        amount->about = number.value > 1;
    else if (!number_at(&note->tokens, i, &number) || number.value <= 0)
        return false;
    amount->value = number.value;
    amount->whole = number.whole;
    amount->spelled = number.said;
    amount->taken = number.taken;
    size_t at = i + number.taken;
    if (text_same(number.tail, "ish")) {
        amount->about = true;
        number.tail = "";
    }
    if (token_is(&note->tokens, at, "-") && token_is(&note->tokens, at + 1, "ish")) {
        amount->about = true;
        amount->taken += 2;
        at += 2;
    }
    if (strlen(number.tail) == 1 && strchr("hwdl", *number.tail)) amount->letter = *number.tail;
    amount->unit = unit_at(note, at, &number, &taken);
    if (amount->unit && *number.tail) amount->letter = 0;
    if (amount->letter) { // "7w inches"
        number.tail = "";
        amount->unit = unit_at(note, at, &number, &taken);
    }
    bool share = !amount->unit && number.value < 1 && token_is(&note->tokens, at, "of") &&
                 ANY(&note->tokens, at + 1, "an", "a"); // "3/4 of an inch"
    if (share && (amount->unit = unit_at(note, at + 2, &number, &taken)) != NULL) taken += 2;
    if (*number.tail && !amount->unit && !amount->letter) return false;
    amount->taken += taken;
    if (add_something(note, i + amount->taken, amount)) return true;
    add_fraction(note, i + amount->taken, amount);
    add_lesser(note, i + amount->taken, amount);
    return true;
}

// The word or sign between the ends of a range that began at `i`; 0 where there is none.
static size_t range_joint(const struct note *note, size_t first, size_t at) {
    const struct tokens *tokens = &note->tokens;
    if (token_is(tokens, at, "to") || token_is(tokens, at, "or")) return 1;
    if (token_is(tokens, at, "-") && tokens->at[at].stop == STOP_NONE) return 1;
    if (token_is(tokens, at, "and") && first && token_is(tokens, first - 1, "between")) return 1;
    return 0;
}

static void add_range(const struct note *note, size_t i, struct amount *amount) {
    size_t joint = range_joint(note, i, i + amount->taken);
    if (!joint || amount->to > 0) return;
    size_t at = i + amount->taken + joint;
    struct amount end;
    at += hedge_at(note, at, false);
    if (!single_at(note, at, &end) || end.value <= amount->value) return;
    if (amount->unit ? end.unit && end.unit != amount->unit : !end.unit && end.spelled) return;
    // "60 x 80 in or 150 x 200 cm": the same again
    if (token_is(&note->tokens, i + amount->taken, "or") && ANY(&note->tokens, at + end.taken, "x", "by"))
        return;
    if (!amount->unit) amount->unit = end.unit;
    amount->to = end.value;
    amount->taken = at + end.taken - i;
    amount->whole = amount->whole && end.whole;
}

// "5G-118820": the number of a part or of a piece, and no weight.
static bool is_code(const struct note *note, size_t i, const struct amount *amount) {
    const struct tokens *tokens = &note->tokens;
    size_t dash = i + amount->taken;
    return amount->unit && amount->taken == 1 && token_is(tokens, dash, "-") && tokens->at[dash].joined &&
           dash + 1 < tokens->count && tokens->at[dash + 1].joined &&
           tokens->at[dash + 1].kind == TOKEN_FIGURE && strlen(tokens->at[dash + 1].fold) > 3;
}

bool amount_at(const struct note *note, size_t i, struct amount *amount) {
    if (i >= note->tokens.count || !single_at(note, i, amount) || is_code(note, i, amount)) return false;
    add_range(note, i, amount);
    size_t behind = hedge_at(note, i + amount->taken, true);
    // "about" behind a figure belongs to the next one, if one follows.
    struct number next;
    if (behind && !number_at(&note->tokens, i + amount->taken + behind, &next)) {
        amount->taken += behind;
        amount->about = true;
    }
    return true;
}

struct figure figure_of(double value, const struct unit *unit, bool about) {
    return (struct figure){value, unit, value * unit->factor, about};
}

// --- objects as rulers ---

// In mm; where people differ by more than a quarter there is no row. The US coins are those of its mint.
static const struct {
    const char *object;
    double mm;
    enum locale locale;
    bool anywhere;
} rulers[] = {{"dime", 17.91, LOCALE_US, true},        {"nickel", 21.21, LOCALE_US, true},
              {"quarter", 24.26, LOCALE_US, false},    {"half dollar", 30.61, LOCALE_US, true},
              {"penny", 19.05, LOCALE_US, false},      {"cent", 19.05, LOCALE_US, false},
              {"penny", 20.3, LOCALE_GB, false},       {"two pence", 25.9, LOCALE_GB, true},
              {"2p", 25.9, LOCALE_GB, true},           {"1p", 20.3, LOCALE_GB, true},
              {"fifty pence", 27.3, LOCALE_GB, true},  {"50p", 27.3, LOCALE_GB, true},
              {"ten pence", 24.5, LOCALE_GB, true},    {"10p", 24.5, LOCALE_GB, true},
              {"five pence", 18.0, LOCALE_GB, true},   {"5p", 18.0, LOCALE_GB, true},
              {"twenty pence", 21.4, LOCALE_GB, true}, {"20p", 21.4, LOCALE_GB, true},
              {"pound coin", 23.4, LOCALE_GB, true},   {"one euro", 23.25, LOCALE_GB, true},
              {"grain of rice", 6.5, LOCALE_US, true}, {"rice grain", 6.5, LOCALE_US, true},
              {"pinhead", 1.75, LOCALE_US, true},      {"pin head", 1.75, LOCALE_US, true},
              {"pencil eraser", 6.5, LOCALE_US, true}, {"eraser", 6.5, LOCALE_US, true},
              {"pencil", 7, LOCALE_US, true},          {"pea", 7.5, LOCALE_US, true},
              {"credit card", 85.6, LOCALE_US, true},  {"bank card", 85.6, LOCALE_US, true},
              {"playing card", 88.9, LOCALE_US, true}, {"golf ball", 42.67, LOCALE_US, true}};

// "dime-sized" in one token.
static bool is_sized(const char *fold, const char *object) {
    size_t size = strlen(object);
    return !strncmp(fold, object, size) &&
           (text_same(fold + size, "-size") || text_same(fold + size, "-sized"));
}

static size_t ruler_at(const struct note *note, size_t i, double *mm) {
    if (i >= note->tokens.count) return 0;
    for (size_t k = 0; k < COUNT(rulers); k++) {
        if (rulers[k].object[0] != note->tokens.at[i].fold[0]) continue;
        size_t taken = token_phrase(&note->tokens, i, rulers[k].object);
        if (!taken && i < note->tokens.count && is_sized(note->tokens.at[i].fold, rulers[k].object))
            taken = 1;
        if (!taken || (!rulers[k].anywhere && rulers[k].locale != note->locale)) continue;
        *mm = rulers[k].mm;
        return taken;
    }
    return 0;
}

// "the size of a dime", "dime sized", "no bigger than a nickel", "like a grain of rice".
static bool object_at(const struct note *note, size_t i, double *mm, size_t *taken) {
    static const char *const before[] = {
        "the size of a",  "about the size of a", "size of a", "no bigger than a", "no larger than a",
        "smaller than a", "as big as a",         "like a",    "big as a"};
    bool may = token_may_open(&note->tokens, i, (const void *)before, COUNT(before), sizeof *before);
    for (size_t k = 0; may && k < COUNT(before); k++) {
        size_t lead = token_phrase(&note->tokens, i, before[k]);
        size_t object = lead ? ruler_at(note, i + lead, mm) : 0;
        *taken = lead + object;
        if (object) return true;
    }
    size_t object = ruler_at(note, i, mm);
    size_t end = i + object;
    if (object && token_is(&note->tokens, end, "-")) end++;
    bool one = object == 1 && strchr(note->tokens.at[i].fold, '-');
    if (one) {
        *taken = 1;
        return true;
    }
    bool sized = object && (token_is(&note->tokens, end, "size") || token_is(&note->tokens, end, "sized"));
    *taken = sized ? end + 1 - i : object;
    // A pinhead is never what is sold with the fault; a pencil may be.
    return sized || (object && *mm < 2);
}

bool figure_at(const struct note *note, size_t token, struct figure *figure, size_t *taken) {
    double mm;
    size_t hedge = 0;
    for (size_t more; (more = hedge_at(note, token + hedge, false)) != 0 && hedge < 8;) {
        if (object_at(note, token + hedge, &mm, taken)) break;
        hedge += more;
    }
    size_t lead = 0;
    if (object_at(note, token + hedge, &mm, &lead)) {
        *figure = figure_of(mm, say_unit("mm", note->locale), true);
        *taken = hedge + lead;
        return true;
    }
    struct amount amount;
    if (!amount_at(note, token + hedge, &amount) || !amount.unit || !amount.unit->kind ||
        !text_same(amount.unit->kind, "mm"))
        return false;
    *figure = figure_of(amount.to > 0 ? amount.to : amount.value, amount.unit,
                        amount.about || hedge || amount.to > 0);
    *taken = hedge + amount.taken;
    return true;
}
