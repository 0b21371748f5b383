// SPDX-License-Identifier: MIT
// A row whose age or views cannot be told is not stale where they are asked for: in doubt it is left alone.
#include "shelf/stale.h"

#include <stdint.h>
#include <stdlib.h>
#include <string.h>

#include "text/utf8.h"

static const char *const MONTHS[] = {"jan", "feb", "mar", "apr", "may", "jun",
                                     "jul", "aug", "sep", "oct", "nov", "dec"};

static bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

static long number_at(const char **text) {
    long n = 0;
    int digits = 0;
    for (; is_digit(**text) && digits < 9; digits++) n = 10 * n + *(*text)++ - '0';
    return digits ? n : -1;
}

// By the rule of the calendar that has no exceptions but these.
static bool day_number(long year, long month, long day, long *number) {
    static const int lengths[] = {31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31};
    bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    if (year < 1970 || year > 9999 || month < 1 || month > 12 || day < 1) return false;
    if (day > lengths[month - 1] + (month == 2 && leap)) return false;
    long y = month <= 2 ? year - 1 : year, era = y / 400, of_era = y % 400;
    long of_year = (153 * (month + (month > 2 ? -3 : 9)) + 2) / 5 + day - 1;
    *number = era * 146097 + of_era * 365 + of_era / 4 - of_era / 100 + of_year - 719468;
    return true;
}

static long month_named(const char **text) {
    char name[4] = {0};
    for (int i = 0; i < 3 && (*text)[i]; i++) name[i] = (char)((*text)[i] | 0x20);
    for (int i = 0; i < 12; i++)
        if (!strcmp(name, MONTHS[i])) {
            while ((**text | 0x20) >= 'a' && (**text | 0x20) <= 'z') (*text)++;
            return i + 1;
        }
    return -1;
}

bool stale_day(const char *text, bool day_first, long *day) {
    const char *at = text + strspn(text, " ");
    const char *begin = at;
    long part[3];
    bool named = false;
    int month_at = -1;
    for (int i = 0; i < 3; i++) {
        part[i] = number_at(&at);
        if (part[i] < 0 && !named) {
            part[i] = month_named(&at);
            named = true;
            month_at = i;
        }
        if (part[i] < 0) return false;
        size_t gap = strspn(at, "-/. ,");
        if (i < 2 && !gap) return false;
        if (i < 2) at += gap;
    }
    // A time may stand behind it.
    if (*at && *at != 'T' && *at != ' ' && *at != ',') return false;
    bool year_first = strspn(begin, "0123456789") == 4;
    if (year_first) return day_number(part[0], part[1], part[2], day);
    if (part[2] < 100) part[2] += 2000;
    if (named) return month_at < 2 && day_number(part[2], part[month_at], part[1 - month_at], day);
    bool points = strchr(begin, '.') && strchr(begin, '.') < at;
    bool first_is_day = part[0] > 12 || (part[1] <= 12 && (day_first || points));
    return day_number(part[2], part[first_is_day ? 1 : 0], part[first_is_day ? 0 : 1], day);
}

bool stale_whole(const char *text, long *number) {
    const char *at = text + strspn(text, " ");
    long n = 0;
    int digits = 0;
    for (; is_digit(*at) ||
           ((*at == ',' || *at == '.') && digits && is_digit(at[1]) && is_digit(at[2]) && is_digit(at[3]));
         at++) {
        if (!is_digit(*at)) continue;
        if (++digits > 12) return false;
        n = 10 * n + *at - '0';
    }
    *number = n;
    return digits && !at[strspn(at, " ")];
}

bool stale_price(const char *text, double *price) {
    const char *at = text + strcspn(text, "0123456789");
    if (!*at || (at > text && at[-1] == '-')) return false;
    double whole = 0, part = 0, scale = 1;
    const char *end = at + strspn(at, "0123456789.,'");
    const char *point = NULL;
    for (const char *c = at; c < end; c++)
        if ((*c == '.' || *c == ',') && strspn(c + 1, "0123456789") < 3) point = c;
    for (const char *c = at; c < end; c++) {
        if (!is_digit(*c)) continue;
        if (point && c > point) {
            scale /= 10;
            part += (*c - '0') * scale;
        } else
            whole = 10 * whole + (*c - '0');
    }
    *price = whole + part;
    return true;
}

static bool in_category(struct arena *arena, const char *category, const char *wanted) {
    return category && strstr(utf8_fold(arena, category), utf8_fold(arena, wanted)) != NULL;
}

bool stale_is(struct arena *arena, const struct filters *f, const struct shelf_facts *facts) {
    if (f->older_than >= 0 && facts->days < f->older_than) return false;
    if (f->views_under >= 0 && (facts->views < 0 || facts->views >= f->views_under)) return false;
    if (f->price_from >= 0 && (facts->price < 0 || facts->price < f->price_from)) return false;
    if (f->price_to >= 0 && (facts->price < 0 || facts->price > f->price_to)) return false;
    return !f->category || in_category(arena, facts->category, f->category);
}

bool stale_is_held(const char *seed, const char *id, unsigned hundredths) {
    uint64_t h = 14695981039346656037u;
    for (const char *c = seed; *c; c++) h = (h ^ (unsigned char)*c) * 1099511628211u;
    h = (h ^ 0xFF) * 1099511628211u;
    for (const char *c = id; *c; c++) h = (h ^ (unsigned char)*c) * 1099511628211u;
    h ^= h >> 33;
    h *= 0xFF51AFD7ED558CCDu;
    h ^= h >> 33;
    return h % 10000 < hundredths;
}
