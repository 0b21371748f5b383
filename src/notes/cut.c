// SPDX-License-Identifier: MIT
// The cutter: figures with all that is written against them, words with their inner signs, and single signs.
// A full stop is told apart by the word before it: abbreviations and initials do not end a sentence.
#include "notes/cut.h"

#include <string.h>

#include "text/utf8.h"

static uint32_t peek(const struct cutter *c, size_t at) {
    return at < c->size ? utf8_next(c->text, c->size, &at) : 0;
}

static size_t after(const struct cutter *c, size_t at) {
    if (at < c->size) utf8_next(c->text, c->size, &at);
    return at;
}

static bool is_digit(uint32_t point) {
    return point >= '0' && point <= '9';
}

static bool is_fraction(uint32_t point) {
    return (point >= 0xBC && point <= 0xBE) || (point >= 0x2150 && point <= 0x215E);
}

// Marks, joiners and variation selectors belong to the sign before them.
static bool is_joiner(uint32_t point) {
    return (point >= 0x300 && point <= 0x36F) || point == 0x200D || (point >= 0xFE00 && point <= 0xFE0F) ||
           (point >= 0x1F3FB && point <= 0x1F3FF);
}

static size_t digits(const struct cutter *c, size_t at) {
    while (at < c->size && is_digit((unsigned char)c->text[at])) at++;
    return at;
}

static bool at_space(const struct cutter *c, size_t at) {
    return at >= c->size || utf8_is_space(peek(c, at));
}

// "1,000", "12.5", "1/2", "8-1/2", "2/3/64", "12.5.1983": where the digits and their inner signs end.
static size_t figure_body(const struct cutter *c, size_t at) {
    size_t start = at;
    at = digits(c, at);
    while (at < c->size && c->text[at] == ',' && at - start <= 3 && digits(c, at + 1) == at + 4) {
        start = at + 1;
        at += 4;
    }
    while (at + 1 < c->size && (c->text[at] == '.' || c->text[at] == '/') && is_digit(peek(c, at + 1)))
        at = digits(c, at + 1);
    if (at + 1 < c->size && c->text[at] == '-') { // a hyphen between whole and fraction is no range
        size_t over = digits(c, at + 1);
        if (over > at + 1 && over + 1 < c->size && c->text[over] == '/' && is_digit(peek(c, over + 1)))
            at = digits(c, over + 1);
        else if (is_fraction(peek(c, at + 1)))
            at++;
    }
    if (is_fraction(peek(c, at))) at = after(c, at);
    return at;
}

// Letters against a figure: "18v", "1920s", "3rd", "1950's"; but the x of "8x10" stands alone.
static size_t figure_tail(const struct cutter *c, size_t at) {
    uint32_t point = peek(c, at);
    if ((point == 'x' || point == 'X') && (is_digit(peek(c, at + 1)) || at_space(c, at + 1))) return at;
    size_t end = at;
    while (utf8_is_letter(peek(c, end))) {
        point = peek(c, end);
        if ((point == 'x' || point == 'X') && end > at && is_digit(peek(c, end + 1))) break;
        end = after(c, end);
    }
    uint32_t quote = cut_straight(peek(c, at));
    size_t s = after(c, at);
    if (end == at && quote == '\'' && peek(c, s) == 's' && !utf8_is_letter(peek(c, s + 1))) return s + 1;
    return end;
}

static size_t cut_figure(const struct cutter *c, size_t at) {
    return figure_tail(c, figure_body(c, at));
}

static bool is_inner(uint32_t point) {
    return point == '\'' || point == '-' || point == '.' || point == '&';
}

static bool is_word_of(const char *text, size_t size, const char *const *words, size_t count) {
    for (size_t k = 0; k < count; k++) {
        size_t n = 0;
        while (n < size && words[k][n] && (text[n] | 0x20) == words[k][n]) n++;
        if (n == size && !words[k][n]) return true;
    }
    return false;
}

// "Six-inch", "twenty-two-gallon": a number in words and its unit, told apart like those of "6-inch". `at` is
// the hyphen.
static bool parts_number(const struct cutter *c, size_t start, size_t at) {
    static const char *const numbers[] = {
        "one",      "two",    "three",  "four",     "five",     "six",     "seven",   "eight",     "nine",
        "ten",      "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen", "eighteen",
        "nineteen", "twenty", "thirty", "forty",    "fifty",    "sixty",   "seventy", "eighty",    "ninety"};
    static const char *const units[] = {"inch",  "inches", "foot",  "yard",  "gallon", "quart",
                                        "pint",  "pound",  "ounce", "litre", "liter",  "metre",
                                        "meter", "watt",   "volt",  "mile"};
    size_t last = at, end = at + 1;
    while (last > start && c->text[last - 1] != '-') last--;
    while (end < c->size &&
           (((unsigned char)c->text[end] | 0x20) >= 'a' && ((unsigned char)c->text[end] | 0x20) <= 'z'))
        end++;
    static const char *const shares[] = {"half", "quarter", "eighth",
                                         "sixteenth"}; // of an inch; a half-pint is a jar
    static const char *const inch[] = {"inch"};
    if (is_word_of(c->text + last, at - last, shares, sizeof shares / sizeof *shares))
        return is_word_of(c->text + at + 1, end - at - 1, inch, 1);
    return is_word_of(c->text + last, at - last, numbers, sizeof numbers / sizeof *numbers) &&
           is_word_of(c->text + at + 1, end - at - 1, units, sizeof units / sizeof *units);
}

// Letters, and a sign between two of them; digits make it a code.
static size_t cut_word(struct cutter *c, size_t at, bool *code) {
    size_t start = at;
    // Behind a figure the hyphens part words: "9-inch-high".
    bool after_figure = at > 1 && c->text[at - 1] == '-' && is_digit((unsigned char)c->text[at - 2]);
    after_figure |= c->parted && at == c->parted + 1;
    for (;;) {
        uint32_t point = peek(c, at);
        if (utf8_is_letter(point) || is_joiner(point)) {
            at = after(c, at);
        } else if (is_digit(point)) {
            *code = true;
            at = after(c, at);
        } else {
            uint32_t sign = cut_straight(point);
            size_t next = after(c, at);
            bool long_dash = point >= 0x2012 && point <= 0x2015;
            if (at == start || !is_inner(sign) || long_dash || (after_figure && sign == '-')) return at;
            uint32_t follows = peek(c, next);
            if (!utf8_is_letter(follows) && !(sign == '-' && is_digit(follows))) return at;
            if (sign == '-' && parts_number(c, start, at)) {
                c->parted = at;
                return at;
            }
            // "h.m." and "S&P" are short all through; "clean.The" is a stop without its space.
            if ((sign == '.' || sign == '&') && utf8_is_letter(peek(c, after(c, next)))) return at;
            at = next;
        }
    }
}

// The x of "11x7" and 11"x7".
static bool is_times(const struct cutter *c, size_t at) {
    char letter = c->text[at];
    if ((letter != 'x' && letter != 'X') || at == 0 || !is_digit(peek(c, at + 1))) return false;
    unsigned char before = (unsigned char)c->text[at - 1];
    return is_digit(before) || before == '"' || before == '\'' || before >= 0x80;
}

// "w/", "w/o", "n/c": words with a stroke.
static size_t cut_stroke(const struct cutter *c, size_t at) {
    char first = (char)((unsigned char)c->text[at] | 0x20);
    if (at + 1 >= c->size || c->text[at + 1] != '/') return 0;
    char second = at + 2 < c->size ? (char)((unsigned char)c->text[at + 2] | 0x20) : '\0';
    bool short_second = at + 2 < c->size && !utf8_is_letter(peek(c, at + 3)) && !is_digit(peek(c, at + 3));
    if (first == 'w' && second == 'o' && short_second) return at + 3;
    if (first == 'w' && !is_digit(peek(c, at + 2))) return at + 2;
    if (first == 'n' && (second == 'c' || second == 'a' || second == 'r') && short_second) return at + 3;
    return 0;
}

static bool is_one_of(const char *text, size_t size, const char *const *list) {
    for (; *list; list++) {
        size_t i = 0;
        while (i < size && (*list)[i] && (((unsigned char)text[i]) | 0x20) == (unsigned char)(*list)[i]) i++;
        if (i == size && !(*list)[i]) return true;
    }
    return false;
}

// "No. 3318-B. Bottom", "the letter K. 10 in", "stamped S. The lid": a letter from `from` on that is no
// initial, for it ends a code, or a figure or what opens a sentence comes next.
static bool opens_sentence(const struct cutter *c, size_t next) {
    static const char *const openers[] = {"the",  "a",     "an",   "it",    "its",   "no",   "not",  "one",
                                          "has",  "there", "this", "two",   "all",   "some", "very", "with",
                                          "both", "each",  "lid",  "some",  "three", "only", "on",   "in",
                                          "i",    "is",    "also", "other", NULL};
    uint32_t follows = peek(c, next);
    size_t end = next;
    while (end < c->size && utf8_is_letter(peek(c, end))) end = after(c, end);
    bool written = end > next && !c->caseless && utf8_lower(follows) != follows;
    return written && (end >= c->size || c->text[end] == ' ') &&
           is_one_of(c->text + next, end - next, openers) && end - next > 1;
}

// "19 of 20, no M. Spines are sunned", "missing volume C. The": a letter that is the name of something.
static bool names_letter(const struct cutter *c, size_t from) {
    static const char *const leads[] = {"no",    "missing", "lacks",  "without", "volume", "letter",
                                        "drive", "side",    "ladies", "mens",    "womens", "girls",
                                        "boys",  "misses",  "size",   "kids",    "adult",  NULL};
    if (from < 2 || c->text[from - 1] != ' ') return false;
    size_t end = from - 1, at = end;
    while (at > 0 && (unsigned char)(c->text[at - 1] | 0x20) >= 'a' &&
           (unsigned char)(c->text[at - 1] | 0x20) <= 'z')
        at--;
    return end > at && is_one_of(c->text + at, end - at, leads);
}

// "Boots, 9 D. Heels", "jacket, black, L. Zipper": the width behind a size, and a size behind a color or a
// garment, where no name is due.
static bool is_size_letter(const struct cutter *c, size_t from) {
    static const char *const leads[] = {
        "black",  "white",  "blue",   "navy",     "red",      "green",   "gray",     "grey",
        "brown",  "cream",  "tan",    "ivory",    "pink",     "purple",  "yellow",   "beige",
        "khaki",  "olive",  "maroon", "burgundy", "orange",   "leather", "wool",     "cotton",
        "denim",  "jacket", "coat",   "shirt",    "sweater",  "dress",   "vest",     "hoodie",
        "blouse", "skirt",  "pants",  "robe",     "cardigan", "gold",    "charcoal", NULL};
    if (from < 2 || c->text[from - 1] != ' ') return false;
    size_t end = from - 2;
    if (is_digit((unsigned char)c->text[end])) return strchr("BCDEW", c->text[from]) != NULL;
    if (c->text[end] != ',' || !strchr("SML", c->text[from])) return false;
    size_t at = end;
    while (at > 0 && (unsigned char)(c->text[at - 1] | 0x20) >= 'a' &&
           (unsigned char)(c->text[at - 1] | 0x20) <= 'z')
        at--;
    return end > at && is_one_of(c->text + at, end - at, leads);
}

static bool ends_sentence(const struct cutter *c, size_t from, size_t next) {
    if (names_letter(c, from) || is_size_letter(c, from)) return true;
    if (from > 0 && (c->text[from - 1] == '-' || is_digit((unsigned char)c->text[from - 1]))) return true;
    // "Stamped TORWELL 7 B. Heels worn": a width behind a size, and no "14 W. Mill Street"
    uint32_t second = next < c->size ? peek(c, after(c, next)) : 0;
    if (from > 1 && c->text[from - 1] == ' ' && is_digit((unsigned char)c->text[from - 2]) &&
        !strchr("NSEWnsew", c->text[from]) && utf8_is_letter(second) && utf8_lower(second) == second)
        return true;
    return is_digit(peek(c, next)) || opens_sentence(c, next);
}

// "No. 5", "No 5", "Nos. 5" at `at`.
static bool numbers(const struct cutter *c, size_t at) {
    size_t end = at;
    while (end < c->size && utf8_is_letter(peek(c, end))) end = after(c, end);
    if (!is_one_of(c->text + at, end - at, (const char *const[]){"no", "nos", NULL})) return false;
    if (end < c->size && c->text[end] == '.') end++;
    while (end < c->size && c->text[end] == ' ') end++;
    return is_digit(peek(c, end));
}

// "Bros. Seed Co.", "Mfg. & Supply Co": do more words with capitals follow at `at`, and a firm's at their
// end?
static bool firm_goes_on(const struct cutter *c, size_t at) {
    enum { WORDS_MOST = 4 };
    static const char *const firm[] = {"co",  "company", "ltd",  "works", "mfg",
                                       "inc", "limited", "corp", NULL};
    for (int n = 0; n < WORDS_MOST; n++) {
        if (at < c->size && c->text[at] == '&') {
            for (at++; at < c->size && c->text[at] == ' ';) at++;
            continue;
        }
        size_t end = at;
        while (end < c->size && utf8_is_letter(peek(c, end))) end = after(c, end);
        uint32_t first = peek(c, at);
        if (end == at || c->caseless || utf8_lower(first) == first) return false;
        if (is_one_of(c->text + at, end - at, firm)) return true;
        if (end >= c->size || c->text[end] != ' ') return false;
        at = end + 1;
    }
    return false;
}

// Does the full stop at `at` belong to the word that ends there?
static bool is_abbreviation(const struct cutter *c, size_t at) {
    static const char *const often[] = {
        "approx", "nos", "pat",  "ft",   "oz",   "lb",  "lbs", "dia",    "diam", "ht",  "vol",  "ed",
        "mr",     "mrs", "dr",   "ca",   "cir",  "qt",  "pt",  "gal",    "yd",   "sz",  "est",  "incl",
        "orig",   "wt",  "pcs",  "pc",   "pr",   "mfg", "reg", "des",    "vs",   "fl",  "cm",   "mm",
        "misc",   "st",  "jr",   "co",   "sl",   "slt", "hvy", "lt",     "sm",   "lge", "lg",   "med",
        "mod",    "v",   "repl", "poss", "prob", "gd",  "exc", "discol", "sgd",  "mkd", "chpd", NULL};
    static const char *const names[] = {"mr",  "mrs",    "dr",   "pat",  "st",   "vol",  "reg",    "est",
                                        "ca",  "approx", "vs",   "jno",  "wm",   "chas", "geo",    "thos",
                                        "jas", "jos",    "robt", "saml", "benj", "edw",  "capt",   "lieut",
                                        "sgt", "rev",    "prof", "maj",  "cpl",  "edwd", "messrs", NULL};
    static const char *const before_figure[] = {"no", "c", "l", "w", "h", "d", "ser", "mod", "pt", "p", NULL};
    // "Rd. No. 88214", "BROS. LTD. No. 32"
    static const char *const before_number[] = {"rd",  "regd", "registd", "ltd", "bros", "co", "cat",
                                                "mod", "mfg",  "inc",     "ser", "sons", NULL};
    size_t from = at;
    while (from > 0 && at - from < 8 && (unsigned char)(c->text[from - 1] | 0x20) >= 'a' &&
           (unsigned char)(c->text[from - 1] | 0x20) <= 'z')
        from--;
    size_t size = at - from, next = at + 1;
    if (!size) return false;
    if (next < c->size && c->text[next] == ',') return true; // "Esq., of the Castle"
    while (next < c->size && c->text[next] == ' ') next++;
    uint32_t follows = peek(c, next);
    bool ends = !follows || follows == '\n' || (!c->caseless && utf8_lower(follows) != follows);
    const char *word = c->text + from;
    if (is_one_of(word, size, before_figure) && (is_digit(follows) || is_fraction(follows))) return true;
    bool inner = from > 0 && c->text[from - 1] == '.';
    if (size == 1 && (inner ? opens_sentence(c, next) : ends_sentence(c, from, next))) return false;
    if (size == 1 && (inner || (!c->caseless && word[0] >= 'A' && word[0] <= 'Z' && next > at + 1)))
        return !inner || !ends || (word[0] >= 'A' && word[0] <= 'Z'); // an initial, or the last dot of "h.m."
    if (is_one_of(word, size, names)) return !!follows && follows != '\n';
    if (is_one_of(word, size, before_number) && (numbers(c, next) || firm_goes_on(c, next))) return true;
    if (ends) return false;
    if (size == 2 && is_one_of(word, size, (const char *const[]){"in", NULL})) {
        while (from > 0 && c->text[from - 1] == ' ') from--;
        size_t back = from;
        while (back > 0 && ((unsigned char)c->text[back - 1] & 0xC0) == 0x80) back--;
        uint32_t before = back ? peek(c, back - 1) : 0;
        return is_digit(before) || is_fraction(before);
    }
    return is_one_of(word, size, often);
}

static enum token_stop dash_stop(const struct cutter *c, size_t from, size_t to, uint32_t point) {
    bool spaced = from > 0 && utf8_is_space((unsigned char)c->text[from - 1]) && at_space(c, to);
    if (spaced) return STOP_CLAUSE;
    return point == 0x2014 || point == 0x2015 ? STOP_CLAUSE : STOP_NONE;
}

static enum token_stop sign_stop(const struct cutter *c, size_t from, size_t to, uint32_t point) {
    bool between = from > 0 && is_digit((unsigned char)c->text[from - 1]) && is_digit(peek(c, to));
    switch (cut_straight(point)) {
    case ',':
        return STOP_COMMA;
    case ';':
        return STOP_CLAUSE;
    case ':':
        return between ? STOP_NONE : STOP_CLAUSE;
    case '(':
    case ')':
    case '[':
    case ']':
    case 0x2026:
        return STOP_CLAUSE;
    case '!':
    case '?':
        return STOP_SENTENCE;
    case '.':
        return is_abbreviation(c, from) ? STOP_NONE : STOP_SENTENCE;
    case '-':
        return dash_stop(c, from, to, point);
    default:
        break;
    }
    if (point == 0x2022 || point == 0x25CF || point == 0x2023) return STOP_LINE;
    bool picture = (point >= 0x2190 && point <= 0x2BFF) || point >= 0x1F000;
    return picture ? STOP_CLAUSE : STOP_NONE;
}

// A line broken only because it was full goes on in the next.
static bool is_wrapped(const struct cutter *c, size_t at) {
    enum { FULL_LINE = 55 };
    if (c->caseless || at - c->line_from < FULL_LINE || at == 0) return false;
    char last = c->text[at - 1];
    uint32_t next = peek(c, at + 1);
    return last != '.' && last != '!' && last != '?' && last != ':' && utf8_is_letter(next) &&
           utf8_lower(next) == next;
}

static void cut_line_end(struct cutter *c, struct token *token) {
    token->stop = is_wrapped(c, c->at) ? STOP_NONE : STOP_LINE;
    c->at++;
    c->line_start = true;
    c->line_from = c->at;
}

// "- ", "* ", "3) ", "3. " before the first word of a line.
static bool cut_bullet(struct cutter *c, struct token *token) {
    size_t at = c->at;
    uint32_t point = cut_straight(peek(c, at));
    if ((point == '-' || point == '*') && at_space(c, after(c, at))) {
        c->at = after(c, at);
    } else if (is_digit(point)) {
        size_t end = digits(c, at);
        if (end - at > 2 || end >= c->size || (c->text[end] != '.' && c->text[end] != ')') ||
            !at_space(c, end + 1))
            return false;
        c->at = end + 1;
    } else {
        return false;
    }
    token->stop = STOP_LINE;
    return true;
}

static void cut_sign(struct cutter *c, struct token *token) {
    size_t from = c->at;
    uint32_t point = utf8_next(c->text, c->size, &c->at);
    if (point == '.' && c->at + 1 < c->size && c->text[c->at] == '.') { // "..." is one pause
        while (c->at < c->size && c->text[c->at] == '.') c->at++;
        token->stop = STOP_CLAUSE;
        return;
    }
    while (is_joiner(peek(c, c->at))) { // a joiner takes the next picture too
        bool joins = peek(c, c->at) == 0x200D;
        c->at = after(c, c->at);
        if (joins && peek(c, c->at) >= 0x2190) c->at = after(c, c->at);
    }
    token->stop = sign_stop(c, from, c->at, point);
}

bool cut_next(struct cutter *c, struct token *token) {
    size_t before = c->at;
    while (c->at < c->size && c->text[c->at] != '\n' && utf8_is_space(peek(c, c->at)))
        c->at = after(c, c->at);
    if (c->at >= c->size) return false;
    *token = (struct token){.from = c->at, .kind = TOKEN_SIGN, .joined = c->at == before && before > 0};
    uint32_t point = peek(c, c->at);
    bool line_start = c->line_start;
    c->line_start = false;
    if (point == '\n') {
        cut_line_end(c, token);
    } else if (line_start && cut_bullet(c, token)) {
        // done
    } else if (is_digit(point) || is_fraction(point) ||
               (point == '.' && is_digit(peek(c, c->at + 1)) && !token->joined)) {
        token->kind = TOKEN_FIGURE;
        c->at = cut_figure(c, c->at + (point == '.'));
    } else if (is_times(c, c->at)) {
        token->kind = TOKEN_WORD;
        c->at++;
    } else if (utf8_is_letter(point)) {
        size_t stroke = point < 0x80 ? cut_stroke(c, c->at) : 0;
        bool code = false;
        c->at = stroke ? stroke : cut_word(c, c->at, &code);
        token->kind = code ? TOKEN_CODE : TOKEN_WORD;
    } else {
        cut_sign(c, token);
    }
    token->to = c->at;
    return true;
}
