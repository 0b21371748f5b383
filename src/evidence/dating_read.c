// SPDX-License-Identifier: MIT
// Years, numbers given out in order, numbers with a check digit, and the registration diamond.
#include "evidence/dating_read.h"

#include <stdlib.h>
#include <string.h>

#include "evidence/check_digit.h"
#include "evidence/diamond.h"
#include "text/arena.h"

static bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

static int roman_digit(char c) {
    static const char letters[] = "IVXLCDM";
    static const int values[] = {1, 5, 10, 50, 100, 500, 1000};
    const char *at = c ? strchr(letters, c) : NULL;
    return at ? values[at - letters] : 0;
}

static int roman_year(const char *text) {
    int year = 0;
    for (size_t i = 0; roman_digit(text[i]) && i < 16; i++) {
        int now = roman_digit(text[i]), next = roman_digit(text[i + 1]);
        year += now < next ? -now : now;
    }
    return year >= 1400 && year < 3000 ? year : 0;
}

// The latest year of the words: a notice of several years was printed after the last of them.
static int latest_year(const char *words) {
    int latest = roman_year(words);
    for (const char *c = words; *c;) {
        size_t n = strspn(c, "0123456789");
        if (n == 4 && atoi(c) > latest) latest = atoi(c);
        c += n ? n : 1;
    }
    return latest;
}

// Figures only; thousands may be parted by commas or spaces.
static long number_in(const char *words) {
    long number = 0;
    for (; *words; words++)
        if (is_digit(*words) && number < 100000000) number = 10 * number + (*words - '0');
    return number;
}

static void read_number(struct arena *arena, struct dated_mark *mark) {
    const struct bound *bound = mark->bound;
    long number = number_in(mark->words);
    const struct short_form *last = NULL;
    for (size_t i = 0; i < bound->step_count && atol(bound->steps[i].text) <= number; i++)
        last = &bound->steps[i];
    if (!last) {
        mark->wrong = "no such number was given out";
        return;
    }
    mark->not_before = atoi(last->means);
    mark->told = arena_format(arena, "%s (numbers from %s on: %s)", bound->text, last->text, last->means);
}

static void read_bar_code(struct arena *arena, struct dated_mark *mark) {
    char digits[16];
    mark->wrong = check_bar_code(arena, mark->words);
    // The European code, which has thirteen figures, is three years younger.
    if (check_digits(mark->words, digits, sizeof digits) == 13 && digits[0] != '0') mark->not_before = 1977;
}

static void read_diamond(struct arena *arena, struct dated_mark *mark) {
    struct diamond diamond = diamond_read(mark->words);
    mark->wrong = diamond.wrong;
    if (!diamond.year) return;
    mark->not_before = diamond.year;
    mark->not_after = diamond.year + 20;
    mark->told =
        arena_format(arena,
                     "the design%s%s%s was registered in %s%s%d; such things were made for some "
                     "twenty years after",
                     diamond.class ? " (" : "", diamond.class ? diamond.class : "", diamond.class ? ")" : "",
                     diamond.month ? diamond.month : "", diamond.month ? " " : "", diamond.year);
}

void dating_read(struct arena *arena, struct dated_mark *mark) {
    const struct bound *bound = mark->bound;
    mark->not_before = bound->not_before;
    mark->not_after = bound->not_after;
    mark->told = bound->text;
    switch (bound->reads) {
    case READS_NOTHING:
        break;
    case READS_YEAR:
        mark->not_before = latest_year(mark->words);
        if (!mark->not_before) mark->wrong = "no year is to be read in it";
        break;
    case READS_NUMBER:
        read_number(arena, mark);
        break;
    case READS_BOOK_NUMBER:
        mark->wrong = check_book_number(arena, mark->words);
        break;
    case READS_BAR_CODE:
        read_bar_code(arena, mark);
        break;
    case READS_DIAMOND:
        read_diamond(arena, mark);
        break;
    }
    if (mark->wrong) mark->not_before = mark->not_after = 0;
    mark->counts = !mark->wrong && bound->sure != BOUND_MEMORY;
}
