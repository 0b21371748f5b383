// SPDX-License-Identifier: MIT
// Number words are few and looked up by a switch on the first letter's table; a fraction joins the whole
// before it.
#include "notes/number.h"

#include <stdlib.h>
#include <string.h>

// --- words ---

struct number_word {
    const char *word;
    double value;
};

static const struct number_word small_words[] = {
    {"zero", 0},     {"one", 1},      {"two", 2},        {"three", 3},     {"four", 4},
    {"five", 5},     {"six", 6},      {"seven", 7},      {"eight", 8},     {"nine", 9},
    {"ten", 10},     {"eleven", 11},  {"twelve", 12},    {"thirteen", 13}, {"fourteen", 14},
    {"fifteen", 15}, {"sixteen", 16}, {"seventeen", 17}, {"eighteen", 18}, {"nineteen", 19}};
static const struct number_word tens_words[] = {{"twenty", 20},  {"thirty", 30}, {"forty", 40},
                                                {"fourty", 40},  {"fifty", 50},  {"sixty", 60},
                                                {"seventy", 70}, {"eighty", 80}, {"ninety", 90}};
static const struct number_word fraction_words[] = {
    {"half", 2},  {"halves", 2}, {"quarter", 4}, {"quarters", 4}, {"fourth", 4},     {"fourths", 4},
    {"third", 3}, {"thirds", 3}, {"eighth", 8},  {"eighths", 8},  {"sixteenth", 16}, {"sixteenths", 16}};

static double word_value(const char *word, size_t size, const struct number_word *list, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (list[i].word[0] == word[0] && !strncmp(word, list[i].word, size) && !list[i].word[size])
            return list[i].value;
    return -1;
}

#define IN(list) list, sizeof list / sizeof *list

static bool is_number_letter(char c) {
    return strchr("zotfsentwh", c) != NULL && c;
}

// "twenty-five" in one token, "twenty five" in two.
static double words_at(const struct tokens *tokens, size_t i, size_t *taken) {
    if (i >= tokens->count || tokens->at[i].kind != TOKEN_WORD || !is_number_letter(tokens->at[i].fold[0]))
        return -1;
    const char *word = tokens->at[i].fold;
    size_t size = strcspn(word, "-");
    *taken = 1;
    double value = word_value(word, size, IN(small_words));
    if (value >= 0) return word[size] ? -1 : value;
    value = word_value(word, size, IN(tens_words));
    if (value < 0) return -1;
    if (word[size]) {
        double ones = word_value(word + size + 1, strlen(word + size + 1), IN(small_words));
        return ones > 0 && ones < 10 ? value + ones : -1;
    }
    if (i + 1 >= tokens->count || tokens->at[i + 1].kind != TOKEN_WORD) return value;
    double ones = word_value(tokens->at[i + 1].fold, strlen(tokens->at[i + 1].fold), IN(small_words));
    if (ones > 0 && ones < 10) {
        *taken = 2;
        value += ones;
    }
    return value;
}

// "a hundred", "two hundred and ten", "twelve hundred".
static double hundreds_at(const struct tokens *tokens, size_t i, size_t *taken) {
    double value = words_at(tokens, i, taken);
    if (value < 0 && token_is(tokens, i, "a") && token_is(tokens, i + 1, "hundred")) {
        value = 1;
        *taken = 1;
    }
    if (value < 1 || !token_is(tokens, i + *taken, "hundred")) return value;
    value *= 100;
    ++*taken;
    size_t skip = token_is(tokens, i + *taken, "and") ? 1 : 0, more = 0;
    double rest = words_at(tokens, i + *taken + skip, &more);
    if (rest <= 0 || rest >= 100) return value;
    *taken += skip + more;
    return value + rest;
}

static double fraction_word(const struct tokens *tokens, size_t i) {
    if (i >= tokens->count || tokens->at[i].kind != TOKEN_WORD) return 0;
    double below = word_value(tokens->at[i].fold, strlen(tokens->at[i].fold), IN(fraction_words));
    return below > 0 ? 1 / below : 0;
}

// "three quarters", "five eighths", "one third", and the same in one token: "three-quarters".
static double fraction_words_at(const struct tokens *tokens, size_t i, size_t *taken) {
    if (i >= tokens->count || tokens->at[i].kind != TOKEN_WORD) return 0;
    const char *word = tokens->at[i].fold;
    size_t size = strcspn(word, "-");
    double above = word_value(word, size, IN(small_words));
    if (above < 1 || above > 15) return 0;
    double part = 0;
    if (word[size]) {
        double below = word_value(word + size + 1, strlen(word + size + 1), IN(fraction_words));
        part = below > 0 ? 1 / below : 0;
        *taken = 1;
    } else {
        part = fraction_word(tokens, i + 1);
        *taken = 2;
    }
    return above * part < 1 ? above * part : 0;
}

// --- figures ---

// Value of one of the fraction characters, 0 for any other text.
static double fraction_sign(const char *text, size_t *size) {
    static const struct {
        const char *sign;
        double value;
    } signs[] = {{"\xC2\xBC", 0.25},        {"\xC2\xBD", 0.5},         {"\xC2\xBE", 0.75},
                 {"\xE2\x85\x93", 1 / 3.0}, {"\xE2\x85\x94", 2 / 3.0}, {"\xE2\x85\x95", 0.2},
                 {"\xE2\x85\x96", 0.4},     {"\xE2\x85\x97", 0.6},     {"\xE2\x85\x98", 0.8},
                 {"\xE2\x85\x99", 1 / 6.0}, {"\xE2\x85\x9A", 5 / 6.0}, {"\xE2\x85\x9B", 0.125},
                 {"\xE2\x85\x9C", 0.375},   {"\xE2\x85\x9D", 0.625},   {"\xE2\x85\x9E", 0.875}};
    if ((unsigned char)text[0] < 0x80) return 0;
    for (size_t i = 0; i < sizeof signs / sizeof *signs; i++) {
        *size = strlen(signs[i].sign);
        if (!strncmp(text, signs[i].sign, *size)) return signs[i].value;
    }
    return 0;
}

static bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

static bool is_rule_denominator(double below) {
    static const double usual[] = {2, 3, 4, 5, 6, 8, 10, 12, 16, 32, 64};
    for (size_t i = 0; i < sizeof usual / sizeof *usual; i++)
        if (below > usual[i] - 0.5 && below < usual[i] + 0.5) return true;
    return false;
}

// Digits with thousands commas, as a whole; moves past them.
static double digits(const char **at) {
    enum { MOST_DIGITS = 12 };
    double value = 0;
    size_t n = 0;
    for (;; ++*at) {
        if (**at == ',' && n) continue;
        if (!is_digit(**at)) return n <= MOST_DIGITS ? value : -1;
        value = value * 10 + (**at - '0');
        n++;
    }
}

static double decimals(const char **at) {
    double value = 0, step = 0.1;
    for (; is_digit(**at); ++*at, step /= 10) value += step * (**at - '0');
    return value;
}

// "3/4" from its slash on; 0 where it is no fraction that a ruler shows.
static double below_slash(double above, const char **at) {
    ++*at;
    double below = digits(at);
    return is_rule_denominator(below) && above >= 1 && above < below ? above / below : 0;
}

// A whole figure token; its tail is what stands behind. False where it is a date, a code or unclear.
static bool parse(const char *text, struct number *number) {
    const char *at = text;
    size_t size = 0;
    number->whole = true;
    if (is_digit(*at)) number->value = digits(&at);
    if (number->value < 0) return false;
    if (*at == '.' && is_digit(at[1])) {
        at++;
        number->value += decimals(&at);
        number->whole = false;
        if (*at == '.' || *at == '/') return false;
    } else if (*at == '/') {
        number->value = below_slash(number->value, &at);
        number->whole = false;
        number->part = true;
        if (number->value <= 0 || *at == '/') return false;
    } else {
        double part = 0;
        const char *hyphen = *at == '-' ? at + 1 : at;
        if (hyphen > at && is_digit(*hyphen)) {
            double above = digits(&hyphen);
            part = *hyphen == '/' ? below_slash(above, &hyphen) : 0;
            if (part <= 0) return false;
            at = hyphen;
        } else if ((part = fraction_sign(hyphen, &size)) > 0) {
            at = hyphen + size;
        }
        number->part = part > 0 && number->value < 0.5;
        number->whole = part <= 0;
        number->value += part;
    }
    number->tail = at;
    number->tail_at = (size_t)(at - text);
    return true;
}

static bool is_fraction_token(const struct tokens *tokens, size_t i, struct number *part) {
    *part = (struct number){.tail = ""};
    return i < tokens->count && tokens->at[i].kind == TOKEN_FIGURE && parse(tokens->at[i].fold, part) &&
           part->part;
}

size_t number_fraction(const struct tokens *tokens, size_t i, double *value) {
    if (!token_is(tokens, i, "and") && !token_is(tokens, i, "&")) return 0;
    size_t taken = 0;
    struct number part;
    if (is_fraction_token(tokens, i + 1, &part) && !*part.tail) {
        *value = part.value;
        return 2;
    }
    *value = fraction_words_at(tokens, i + 1, &taken);
    if (*value > 0) return taken + 1;
    size_t article = token_is(tokens, i + 1, "a") || token_is(tokens, i + 1, "one") ? 1 : 0;
    *value = fraction_word(tokens, i + 1 + article);
    // "and half of it" is no fraction of the figure before.
    return *value > 0 && !token_is(tokens, i + 2 + article, "of") ? article + 2 : 0;
}

static bool figure_number(const struct tokens *tokens, size_t i, struct number *number) {
    if (!parse(tokens->at[i].fold, number)) return false;
    number->taken = 1;
    if (!number->whole || *number->tail) return true;
    struct number part;
    double more;
    if (is_fraction_token(tokens, i + 1, &part) && tokens->at[i].stop == STOP_NONE) {
        number->value += part.value;
        number->tail = part.tail;
        number->tail_at = part.tail_at;
        number->taken = 2;
        number->whole = false;
        return true;
    }
    size_t taken = number_fraction(tokens, i + 1, &more);
    if (taken) {
        number->value += more;
        number->taken += taken;
        number->whole = false;
    }
    return true;
}

static bool said_fraction(const struct tokens *tokens, size_t i, struct number *number) {
    size_t article = token_is(tokens, i, "a") || token_is(tokens, i, "one") ? 1 : 0;
    number->value = fraction_words_at(tokens, i, &number->taken);
    if (number->value <= 0) {
        number->value = fraction_word(tokens, i + article);
        number->taken = article + 1;
        // "a third" alone counts things more often than it measures them.
        if (number->value > 0 && article && !token_is(tokens, i + 1, "half") &&
            !token_is(tokens, i + 1, "quarter"))
            return false;
    }
    if (number->value <= 0) return false;
    number->part = true;
    size_t at = i + number->taken;
    if (token_is(tokens, at, "of")) at++;
    if (token_is(tokens, at, "a") || token_is(tokens, at, "an")) at++;
    if (at > i + number->taken) number->taken = at - i;
    return true;
}

const char number_key[] = "a number";

// Is it a word of a number or a fraction, or the article of one?
bool number_begins(const char *word) {
    size_t size = strcspn(word, "-");
    return text_same(word, "a") || word_value(word, size, IN(small_words)) >= 0 ||
           word_value(word, size, IN(tens_words)) >= 0 || word_value(word, size, IN(fraction_words)) >= 0;
}

bool number_at(const struct tokens *tokens, size_t i, struct number *number) {
    *number = (struct number){.tail = ""};
    if (!number_may_be(tokens, i)) return false;
    if (tokens->at[i].kind == TOKEN_FIGURE) return figure_number(tokens, i, number);
    number->said = true;
    if (said_fraction(tokens, i, number)) return true;
    number->value = hundreds_at(tokens, i, &number->taken);
    if (number->value < 0) return false;
    number->whole = true;
    double more;
    size_t taken = number_fraction(tokens, i + number->taken, &more);
    if (taken) {
        number->value += more;
        number->taken += taken;
        number->whole = false;
    }
    return true;
}

int number_whole_at(const struct tokens *tokens, size_t i, size_t *taken) {
    struct number number;
    if (!number_at(tokens, i, &number) || !number.whole || *number.tail || number.value < 1 ||
        number.value > 1e6)
        return 0;
    *taken = number.taken;
    return (int)(number.value + 0.5);
}
