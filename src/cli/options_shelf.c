// SPDX-License-Identifier: MIT
// Numbers are kept one higher than they were said, so that 0 means that nothing was.
#include "cli/options_shelf.h"

#include <string.h>

#include "text/utf8.h"

enum { JOBS_MOST = 64, DIGITS_MOST = 7 };

// Digits, then one of `units` or nothing.
static bool take_number(const char *text, const char *units, size_t *number) {
    size_t digits = strspn(text, "0123456789"), n = 0;
    if (!digits || digits > DIGITS_MOST) return false;
    for (size_t i = 0; i < digits; i++) n = 10 * n + (size_t)(text[i] - '0');
    if (text[digits] && (!strchr(units, text[digits]) || text[digits + 1])) return false;
    *number = n;
    return true;
}

static const char *keep(const struct option_value *value, const char *units, size_t *to, const char *wrong) {
    size_t number;
    if (!take_number(value->text, units, &number)) return wrong;
    *to = number + 1;
    return NULL;
}

static const char *keep_text(const struct option_value *value, const char **to, const char *wrong) {
    size_t size = strlen(value->text);
    if (!size) return wrong;
    if (utf8_check(value->text, size) != size) return "is not UTF-8";
    *to = value->text;
    return NULL;
}

const char *shelf_take_map(const struct option_value *value) {
    return keep_text(value, &value->settings->shelf.map, "names no column");
}

const char *shelf_take_explain(const struct option_value *value) {
    value->settings->shelf.explain_columns = true;
    return NULL;
}

const char *shelf_take_older(const struct option_value *value) {
    return keep(value, "d", &value->settings->shelf.older_than, "is no number of days; write it as 60d");
}

const char *shelf_take_views(const struct option_value *value) {
    return keep(value, "", &value->settings->shelf.views_under, "is no whole number");
}

static const char *take_percent(const struct option_value *value, size_t *to) {
    const char *wrong = keep(value, "%", to, "is no share; write it as 20%");
    return !wrong && *to > 101 ? "is more than all" : wrong;
}

const char *shelf_take_earned(const struct option_value *value) {
    return take_percent(value, &value->settings->shelf.earned_under);
}

const char *shelf_take_hold(const struct option_value *value) {
    return take_percent(value, &value->settings->shelf.hold_back);
}

const char *shelf_take_category(const struct option_value *value) {
    return keep_text(value, &value->settings->shelf.category, "is no category");
}

const char *shelf_take_seed(const struct option_value *value) {
    return keep_text(value, &value->settings->shelf.seed, "is no seed");
}

// "12", "12.5": enough for a bound.
static bool take_money(const char *text, size_t size, double *to) {
    double n = 0, scale = 0;
    if (!size || size > 12) return false;
    for (size_t i = 0; i < size; i++) {
        if (text[i] == '.' && scale == 0 && i) {
            scale = 1;
            continue;
        }
        if (text[i] < '0' || text[i] > '9') return false;
        if (scale > 0)
            n += (text[i] - '0') * (scale /= 10);
        else
            n = 10 * n + (text[i] - '0');
    }
    *to = n;
    return true;
}

const char *shelf_take_price(const struct option_value *value) {
    static const char wrong[] = "is no range of prices; write it as 5..50, 5.. or ..50";
    struct shelf_settings *s = &value->settings->shelf;
    const char *dots = strstr(value->text, "..");
    if (!dots || (dots == value->text && !dots[2])) return wrong;
    s->price_from = s->price_to = -1;
    if (dots > value->text && !take_money(value->text, (size_t)(dots - value->text), &s->price_from))
        return wrong;
    if (dots[2] && !take_money(dots + 2, strlen(dots + 2), &s->price_to)) return wrong;
    s->price_given = true;
    return NULL;
}

const char *shelf_take_jobs(const struct option_value *value) {
    size_t *jobs = &value->settings->shelf.jobs;
    const char *wrong = keep(value, "", jobs, "is no whole number");
    if (wrong) return wrong;
    (*jobs)--;
    return *jobs < 1 || *jobs > JOBS_MOST ? "is no number of jobs; 1 to 64 are" : NULL;
}

const char *shelf_take_write(const struct option_value *value) {
    return keep_text(value, &value->settings->shelf.write, "is no file");
}
