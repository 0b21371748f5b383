// SPDX-License-Identifier: MIT
// A number in the right corner: the series of 1842, year at the top, month at the left. A letter there: the
// series of 1868, which is that letter; its month stands at the bottom.
#include "evidence/diamond.h"

#include <stdbool.h>
#include <stddef.h>
#include <string.h>

#include "text/order.h"

enum { CORNERS = 5, VALUE = 8 };
static const char *const corner_names[CORNERS] = {"top", "left", "right", "bottom", "class"};
enum corner { TOP, LEFT, RIGHT, BOTTOM, CLASS };

// In the order of the years 1842 to 1867 and 1868 to 1883.
static const char first_letters[] = "XHCAIFUSVPDYJELKBMZROGNWQT";
static const char second_letters[] = "XHCAIFUSVPDYJELK";

static const struct {
    char letter;
    const char *name;
} months[] = {{'C', "January"}, {'O', "January"},  {'G', "February"}, {'W', "March"},  {'H', "April"},
              {'E', "May"},     {'M', "June"},     {'I', "July"},     {'R', "August"}, {'D', "September"},
              {'B', "October"}, {'K', "November"}, {'A', "December"}};

static bool is_word_char(char c) {
    return (c >= '0' && c <= '9') || (c >= 'A' && c <= 'Z') || (c >= 'a' && c <= 'z');
}

static char upper(char c) {
    return c >= 'a' && c <= 'z' ? (char)(c - 'a' + 'A') : c;
}

static size_t word_at(const char *text) {
    size_t n = 0;
    while (is_word_char(text[n])) n++;
    return n;
}

static bool is_same(const char *text, size_t size, const char *word) {
    if (strlen(word) != size) return false;
    for (size_t i = 0; i < size; i++)
        if (upper(text[i]) != upper(word[i])) return false;
    return true;
}

// "top S" and "top: S": the word behind a corner's name, in capitals.
static void read_corners(const char *text, char values[CORNERS][VALUE]) {
    int open = -1;
    for (size_t n; *text; text += n ? n : 1) {
        n = word_at(text);
        if (!n) continue;
        int corner = -1;
        for (int i = 0; i < CORNERS; i++)
            if (is_same(text, n, corner_names[i])) corner = i;
        if (corner < 0 && open >= 0 && n < VALUE && !is_same(text, n, "corner"))
            for (size_t i = 0; i <= n; i++) values[open][i] = i < n ? upper(text[i]) : '\0';
        if (corner >= 0 || !is_same(text, n, "corner")) open = corner;
    }
}

static bool is_letter(const char *value) {
    return value[0] >= 'A' && value[0] <= 'Z' && !value[1];
}

static bool is_number(const char *value) {
    return value[0] && strspn(value, "0123456789") == strlen(value);
}

static int year_of(const char *letters, int first, char letter) {
    const char *at = strchr(letters, letter);
    return at ? first + (int)(at - letters) : 0;
}

static const char *month_of(const char *value) {
    if (!is_letter(value)) return NULL;
    for (size_t i = 0; i < sizeof months / sizeof *months; i++)
        if (months[i].letter == value[0]) return months[i].name;
    return NULL;
}

static const char *class_of(const char *value) {
    static const char *const numerals[] = {"I", "II", "III", "IV"};
    static const char *const made_of[] = {"metal", "wood", "glass", "ceramics"};
    for (size_t i = 0; i < 4; i++)
        if (text_same(value, numerals[i])) return made_of[i];
    return NULL;
}

struct diamond diamond_read(const char *text) {
    char values[CORNERS][VALUE] = {{0}};
    read_corners(text, values);
    struct diamond d = {0, NULL, class_of(values[CLASS]), NULL};
    if (!values[TOP][0] && !values[RIGHT][0]) return d;
    if (is_number(values[RIGHT]) && is_letter(values[TOP])) {
        d.year = year_of(first_letters, 1842, values[TOP][0]);
        d.month = month_of(values[LEFT]);
        // Two months of this series were cut with a letter that was not theirs.
        if ((d.year == 1857 && values[LEFT][0] == 'R') || (d.year == 1860 && values[LEFT][0] == 'K'))
            d.month = NULL;
    } else if (is_letter(values[RIGHT])) {
        d.year = year_of(second_letters, 1868, values[RIGHT][0]);
        d.month = month_of(values[BOTTOM]);
        // The first days of March 1878 bear a W for the year and a G for the month.
        if (values[RIGHT][0] == 'W') {
            d.year = 1878;
            d.month = "March";
        }
    } else {
        d.wrong = "its right corner holds a number and its top a letter, or its right corner a letter";
    }
    if (!d.year && !d.wrong) d.wrong = "no year has that letter";
    return d;
}
