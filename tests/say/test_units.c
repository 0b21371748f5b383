// SPDX-License-Identifier: MIT
// Units against the program `units` (the source of the factors), spellings, figures, and the other system in
// brackets.
#include "../text/support.h"

#include <locale.h>
#include <math.h>
#include <stdio.h>
#include <string.h>

#include "say/say.h"

// Our name, and what the program calls the same thing and its base.
static const struct {
    const char *name, *theirs, *base;
} sources[] = {
    {"in", "inch", "mm"},
    {"ft", "foot", "mm"},
    {"yd", "yard", "mm"},
    {"mil", "mil", "mm"},
    {"mm", "millimeter", "mm"},
    {"cm", "centimeter", "mm"},
    {"m", "meter", "mm"},
    {"micron", "micron", "mm"},
    {"oz", "ounce", "g"},
    {"lb", "pound", "g"},
    {"st", "stone", "g"},
    {"troy oz", "troyounce", "g"},
    {"dwt", "pennyweight", "g"},
    {"grain", "grain", "g"},
    {"carat", "carat", "g"},
    {"g", "gram", "g"},
    {"kg", "kilogram", "g"},
    {"fl oz", "usfluidounce", "ml"},
    {"cup", "uscup", "ml"},
    {"pt", "uspint", "ml"},
    {"qt", "usquart", "ml"},
    {"gal", "usgallon", "ml"},
    {"imperial fl oz", "brfloz", "ml"},
    {"imperial cup", "brcup", "ml"},
    {"imperial pt", "brpint", "ml"},
    {"imperial qt", "brquart", "ml"},
    {"imperial gal", "brgallon", "ml"},
    {"ml", "milliliter", "ml"},
    {"cl", "centiliter", "ml"},
    {"l", "liter", "ml"},
};
enum { SOURCES = sizeof sources / sizeof *sources };

static double told_by_units(const char *theirs, const char *base) {
    char command[120], line[120] = "";
    snprintf(command, sizeof command, "units -t -d 15 '1 %s' '%s' 2>&1", theirs, base);
    FILE *pipe = popen(command, "r");
    ck_assert_ptr_nonnull(pipe);
    char *got = fgets(line, sizeof line, pipe);
    int status = pclose(pipe);
    ck_assert_msg(got && status == 0, "`%s` failed (%s): the package 'units' has to be there", command, line);
    return strtod(line, NULL);
}

START_TEST(factors_are_those_of_units) {
    size_t count, with_kind = 0;
    const struct unit *units = say_units(&count);
    for (size_t i = 0; i < count; i++) with_kind += units[i].kind != NULL;
    ck_assert_uint_eq(with_kind, SOURCES);
    for (size_t i = 0; i < SOURCES; i++) {
        const struct unit *unit = say_unit(sources[i].name, LOCALE_US);
        ck_assert_ptr_nonnull(unit);
        ck_assert_str_eq(unit->name, sources[i].name);
        ck_assert_str_eq(unit->kind, sources[i].base);
        double theirs = told_by_units(sources[i].theirs, sources[i].base);
        ck_assert_msg(fabs(unit->factor - theirs) <= 1e-12 * theirs, "%s: %.17g, units says %.17g",
                      sources[i].name, unit->factor, theirs);
    }
}
END_TEST

static const char *name_of(const char *spelling, enum locale locale) {
    const struct unit *unit = say_unit(spelling, locale);
    return unit ? unit->name : "none";
}

START_TEST(spellings_people_use) {
    static const struct {
        const char *spelling, *us, *gb;
    } cases[] = {
        {"in", "in", "in"},
        {"in.", "in", "in"},
        {"inch", "in", "in"},
        {"inches", "in", "in"},
        {"Inches", "in", "in"},
        {"\"", "in", "in"},
        {"\xE2\x80\xB3", "in", "in"},
        {"'", "ft", "ft"},
        {"feet", "ft", "ft"},
        {"yds", "yd", "yd"},
        {"MM", "mm", "mm"},
        {"millimetres", "mm", "mm"},
        {"centimetres", "cm", "cm"},
        {"centimeter", "cm", "cm"},
        {"metres", "m", "m"},
        {"lbs", "lb", "lb"},
        {"lbs.", "lb", "lb"},
        {"pounds", "lb", "lb"},
        {"ounces", "oz", "oz"},
        {"stone", "st", "st"},
        {"kilos", "kg", "kg"},
        {"grams", "g", "g"},
        {"gm", "g", "g"},
        {"pennyweight", "dwt", "dwt"},
        {"ozt", "troy oz", "troy oz"},
        {"Troy Ounces", "troy oz", "troy oz"},
        {"ct", "carat", "carat"},
        {"grains", "grain", "grain"},
        {"fl oz", "fl oz", "imperial fl oz"},
        {"fl. oz.", "fl oz", "imperial fl oz"},
        {"fluid ounces", "fl oz", "imperial fl oz"},
        {"pint", "pt", "imperial pt"},
        {"Quarts", "qt", "imperial qt"},
        {"gallon", "gal", "imperial gal"},
        {"cups", "cup", "imperial cup"},
        {"US pint", "pt", "pt"},
        {"U.S. gallons", "gal", "gal"},
        {"imp gal", "imperial gal", "imperial gal"},
        {"imperial pint", "imperial pt", "imperial pt"},
        {"UK fl oz", "imperial fl oz", "imperial fl oz"},
        {"litres", "l", "l"},
        {"L", "l", "l"},
        {"mL", "ml", "ml"},
        {"cl", "cl", "cl"},
        {"V", "V", "V"},
        {"volts", "V", "V"},
        {"v", "V", "V"},
        {"W", "W", "W"},
        {"A", "A", "A"},
        {"amps", "A", "A"},
        {"hz", "Hz", "Hz"},
        {"MHz", "MHz", "MHz"},
        {"a", "none", "none"},
        {"M", "none", "none"},
        {"imperial inch", "none", "none"},
        {"", "none", "none"},
        {".", "none", "none"},
        {"cubit", "none", "none"},
        {"in on", "none", "none"},
        {"a name that is far too long for any unit", "none", "none"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        ck_assert_str_eq(name_of(cases[i].spelling, LOCALE_US), cases[i].us);
        ck_assert_str_eq(name_of(cases[i].spelling, LOCALE_GB), cases[i].gb);
    }
}
END_TEST

START_TEST(each_unit_knows_itself) {
    size_t count;
    const struct unit *units = say_units(&count);
    for (size_t i = 0; i < count; i++) {
        ck_assert_ptr_eq(say_unit(units[i].name, LOCALE_US), &units[i]);
        ck_assert(units[i].factor > 0 && *units[i].title && *units[i].text);
        ck_assert(units[i].kind || units[i].factor == 1);
    }
    ck_assert_str_eq(say_unit("qt", LOCALE_US)->title, "Qt");
    ck_assert_str_eq(say_unit("qt", LOCALE_US)->text, "qt");
    ck_assert_str_eq(say_unit("in", LOCALE_US)->title, "in");
}
END_TEST

static void figures(struct arena *arena, void *context) {
    (void)context;
    static const struct {
        double value;
        const char *decimal, *fraction;
    } cases[] = {
        {6.25, "6.25", "6 1/4"},
        {9, "9", "9"},
        {0.125, "0.13", "1/8"},
        {0.13, "0.13", "1/8"},
        {0.12, "0.12", "1/8"},
        {10.25, "10.25", "10 1/4"},
        {0.5, "0.5", "1/2"},
        {0.0625, "0.06", "1/16"},
        {3.9375, "3.94", "3 15/16"},
        {6.3, "6.3", "6.3"},
        {6.1, "6.1", "6.1"},
        {6.7, "6.7", "6.7"},
        {0.33, "0.33", "0.33"},
        {0, "0", "0"},
        {-6.25, "-6.25", "-6 1/4"},
        {-0.5, "-0.5", "-1/2"},
        {5.999, "6", "6"},
        {1.005, "1.01", "1"},
        {2.675, "2.68", "2.68"},
        {100, "100", "100"},
        {0.004, "0.004", "0.004"},
        {0.0005, "0.0005", "0.0005"},
        {1200, "1200", "1200"},
        {1e-12, "0", "0"},
        {123456.78, "123456.78", "123456.78"},
        {1e16, "10000000000000000", "10000000000000000"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        ck_assert_str_eq(say_decimal(arena, cases[i].value), cases[i].decimal);
        ck_assert_str_eq(say_fraction(arena, cases[i].value), cases[i].fraction);
    }
    ck_assert_str_eq(say_decimal(arena, (double)NAN), "?");
    ck_assert_str_eq(say_fraction(arena, (double)INFINITY), "?");
}

START_TEST(figures_as_people_write_them) {
    within(figures, NULL);
}
END_TEST

static void near_enough(struct arena *arena, void *context) {
    struct dice *dice = context;
    double value = (double)dice_roll(dice, 4000000) / 10000.0;
    ck_assert_double_eq_tol(strtod(say_decimal(arena, value), NULL), value,
                            value < 0.01 ? value / 2 : 0.005 + 1e-8);
    const char *text = say_fraction(arena, value);
    double whole = 0, over = 0, under = 1;
    if (!strchr(text, '/'))
        whole = strtod(text, NULL);
    else if (sscanf(text, "%lf %lf/%lf", &whole, &over, &under) != 3) {
        whole = 0;
        ck_assert_int_eq(sscanf(text, "%lf/%lf", &over, &under), 2);
    }
    ck_assert_msg(fabs(whole + over / under - value) <= 0.005 + 1e-8, "%s for %f", text, value);
    ck_assert_msg(!strchr(text, '/') || fmod(over, 2) == 1, "%s can be shortened", text);
}

START_TEST(figures_never_stray) {
    struct dice dice = {4};
    for (int i = 0; i < 20000; i++) within(near_enough, &dice);
}
END_TEST

static const struct {
    double value;
    const char *unit, *us, *gb; // NULL: as in the US
} both[] = {
    {6.25, "in", "6 1/4 in (15.9 cm)", NULL},
    {9, "in", "9 in (22.9 cm)", NULL},
    {8.5, "in", "8 1/2 in (21.6 cm)", NULL},
    {0.125, "in", "1/8 in (3 mm)", NULL},
    {0.75, "in", "3/4 in (19 mm)", NULL},
    {6.3, "in", "6.3 in (16 cm)", NULL},
    {6, "ft", "6 ft (182.9 cm)", NULL},
    {12, "ft", "12 ft (3.66 m)", NULL},
    {1.5, "yd", "1 1/2 yd (137.2 cm)", NULL},
    {2, "mil", "2 mils (0.05 mm)", NULL},
    {15.9, "cm", "15.9 cm (6 1/4 in)", NULL},
    {30, "cm", "30 cm (11 3/4 in)", NULL},
    {36, "mm", "36 mm (1 7/16 in)", NULL},
    {3, "mm", "3 mm (1/8 in)", NULL},
    {2, "mm", "2 mm (0.08 in)", NULL},
    {0.2, "mm", "0.2 mm (0.008 in)", NULL},
    {2, "m", "2 m (6 ft 7 in)", NULL},
    {1.2, "m", "1.2 m (47 1/4 in)", NULL},
    {365.76, "cm", "365.76 cm (12 ft)", NULL},
    {50, "micron", "50 microns (0.002 in)", NULL},
    {8.5, "oz", "8 1/2 oz (240 g)", NULL},
    {9.06, "oz", "9.06 oz (255 g)", NULL},
    {3, "lb", "3 lb (1.36 kg)", NULL},
    {0.5, "oz", "1/2 oz (14 g)", NULL},
    {0.25, "oz", "1/4 oz (7.1 g)", NULL},
    {30, "lb", "30 lb (13.6 kg)", NULL},
    {1, "st", "1 st (6.35 kg)", NULL},
    {5, "dwt", "5 dwt (7.78 g)", NULL},
    {0.5, "troy oz", "0.5 troy oz (15.55 g)", NULL},
    {2, "carat", "2 ct (0.4 g)", NULL},
    {0.01, "carat", "0.01 ct (0.002 g)", NULL},
    {1, "grain", "1 grain (0.06 g)", NULL},
    {5, "g", "5 g (0.18 oz)", NULL},
    {250, "g", "250 g (8.8 oz)", NULL},
    {453, "g", "453 g (1 lb)", NULL},
    {1.2, "kg", "1.2 kg (2 lb 10 oz)", NULL},
    {12, "kg", "12 kg (26 1/2 lb)", NULL},
    {100, "kg", "100 kg (220 lb)", NULL},
    {9, "fl oz", "9 fl oz (265 ml)", "9 fl oz (255 ml)"},
    {1, "fl oz", "1 fl oz (30 ml)", "1 fl oz (28 ml)"},
    {2, "cup", "2 cups (473 ml)", "2 cups (568 ml)"},
    {1, "pt", "1 pt (473 ml)", "1 pt (568 ml)"},
    {12, "qt", "12 qt (11.4 L)", "12 qt (13.6 L)"},
    {1, "gal", "1 gal (3.79 L)", "1 gal (4.55 L)"},
    {1, "US pint", "1 pt (473 ml)", "1 US pt (473 ml)"},
    {1, "imperial pint", "1 imperial pt (568 ml)", "1 pt (568 ml)"},
    {500, "ml", "500 ml (16.9 fl oz)", "500 ml (17.6 fl oz)"},
    {75, "cl", "75 cl (25.4 fl oz)", "75 cl (1.3 pt)"},
    {2, "l", "2 L (2.1 qt)", "2 L (3.5 pt)"},
    {30, "l", "30 L (7.9 gal)", "30 L (6.6 gal)"},
    {18, "V", "18 V", NULL},
    {1.5, "A", "1.5 A", NULL},
    {0, "in", "0 in", NULL},
    {-2, "in", "-2 in", NULL},
};
enum { BOTH = sizeof both / sizeof *both };

static void brackets(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < BOTH; i++) {
        const struct unit *us = say_unit(both[i].unit, LOCALE_US), *gb = say_unit(both[i].unit, LOCALE_GB);
        ck_assert_str_eq(say_both(arena, both[i].value, us, LOCALE_US), both[i].us);
        ck_assert_str_eq(say_both(arena, both[i].value, gb, LOCALE_GB), both[i].gb ? both[i].gb : both[i].us);
    }
}

START_TEST(both_systems) {
    within(brackets, NULL);
}
END_TEST

// What stands in the brackets, in base units.
static double in_brackets(struct arena *arena, const char *text, enum locale locale) {
    const char *open = strchr(text, '(');
    ck_assert_ptr_nonnull(open);
    double sum = 0, value = 0;
    char *at = arena_string(arena, open + 1);
    for (char *word = strtok(at, " )"), *next; word; word = next) {
        next = strtok(NULL, " )");
        if (*word >= '0' && *word <= '9') {
            char *slash = strchr(word, '/');
            value += slash ? strtod(word, NULL) / strtod(slash + 1, NULL) : strtod(word, NULL);
            continue;
        }
        bool fluid = !strcmp(word, "fl") && next;
        if (fluid) next = strtok(NULL, " )");
        sum += value * say_unit(fluid ? "fl oz" : word, locale)->factor;
        value = 0;
    }
    return sum;
}

static void close_in_both(struct arena *arena, void *context) {
    struct dice *dice = context;
    size_t count;
    const struct unit *units = say_units(&count), *unit = &units[dice_roll(dice, (uint32_t)count)];
    enum locale locale = dice_roll(dice, 2) ? LOCALE_GB : LOCALE_US;
    double value = (1 + dice_roll(dice, 4000)) / (dice_roll(dice, 2) ? 4.0 : 100.0);
    const char *text = say_both(arena, value, unit, locale);
    ck_assert_msg((strchr(text, '(') != NULL) == (unit->kind != NULL), "%s", text);
    if (!unit->kind) return;
    double base = value * unit->factor, told = in_brackets(arena, text, locale);
    // half of the step shown: 1/16 in up to 4 in, 0.01 in, oz and fl oz for the small, and 5 % where steps
    // grow with size
    bool length = !strcmp(unit->kind, "mm");
    double step = !length ? 0.151 : base < 1 ? 0.13 : base < 101.6 ? 0.8 : 0;
    ck_assert_msg(told > 0 && fabs(told - base) <= 0.051 * base + step, "%s is off by %f", text, told - base);
}

START_TEST(brackets_never_stray) {
    struct dice dice = {9};
    for (int i = 0; i < 20000; i++) within(close_in_both, &dice);
}
END_TEST

static void under_a_comma_locale(struct arena *arena, void *context) {
    (void)context;
    ck_assert_str_eq(say_decimal(arena, 6.25), "6.25");
    ck_assert_str_eq(say_both(arena, 6.3, say_unit("in", LOCALE_US), LOCALE_US), "6.3 in (16 cm)");
}

// Digits are made by hand, so the host's locale cannot matter; where a comma locale is installed this shows
// it.
START_TEST(host_locale_is_ignored) {
    static const char *const names[] = {"de_DE.UTF-8", "fr_FR.UTF-8", "de_DE.utf8", "C"};
    for (size_t i = 0; i < sizeof names / sizeof *names && !setlocale(LC_ALL, names[i]); i++) continue;
    within(under_a_comma_locale, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("units");
    TCase *cases = tcase_create("units");
    tcase_set_timeout(cases, 120);
    tcase_add_test(cases, factors_are_those_of_units);
    tcase_add_test(cases, spellings_people_use);
    tcase_add_test(cases, each_unit_knows_itself);
    tcase_add_test(cases, figures_as_people_write_them);
    tcase_add_test(cases, figures_never_stray);
    tcase_add_test(cases, both_systems);
    tcase_add_test(cases, brackets_never_stray);
    tcase_add_test(cases, host_locale_is_ignored);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
