// SPDX-License-Identifier: MIT
// Figures as people write them, and the same length, weight or volume in the other system.
//
// How the figure in brackets is rounded, and why:
//   mm, cm, m      under 1 mm to 0.01 mm, under 2 cm to 1 mm, under 3 m to 0.1 cm, above to 0.01 m:
//                  what calipers, a ruler, a tape and a long tape show
//   in             under 1 mm to 0.001, under 1/10 to 0.01, as calipers tell; under 4 to 1/16, above to
//                  1/8, as tapes are marked
//   ft and in      whole inches, from 3 m, and from 6 ft where the record says meters, as rugs are told
//   g, kg          gem and precious-metal units to 0.01 g, as their scales do; others under 10 g to
//                  0.1 g, under 100 g to 1 g, under 1 kg to 5 g (a kitchen scale), under 10 kg to
//                  0.01 kg, above to 0.1 kg (a bathroom scale)
//   oz, lb         under 100 g to 0.01 oz, under 1 lb to 0.1 oz, under 20 lb pounds and whole ounces,
//                  under 100 lb to 1/2 lb, above to 1 lb
//   ml, L          under 10 ml to 0.1 ml, above to 1 ml; fluid ounces from 100 ml to 5 ml, because a
//                  glass is never filled closer, while pint and quart keep the figure that stands on
//                  such vessels; liters as kilograms
//   fl oz, pt, qt  under 50 ml to 0.01 fl oz, above to 0.1; from a quart (US) or a pint (UK) the larger
//                  unit to 0.1
// No rounding may turn something into nothing: a figure under 0.01 is told to its first digit.
#include <math.h>
#include <string.h>

#include "say/say.h"
#include "text/order.h"

static const double LARGEST = 1e15; // above this a double has no hundredths left

// Digits by hand: printf takes its decimal point from the host program's locale.
static const char *with_decimals(struct arena *arena, bool minus, double value, int decimals) {
    unsigned long long scale = 1;
    for (int i = 0; i < decimals; i++) scale *= 10;
    // the addend undoes the binary error of decimals like 1.005, far below any digit shown
    unsigned long long whole = (unsigned long long)floor(value * (double)scale + 0.5 + 1e-9);
    unsigned long long fraction = whole % scale;
    const char *sign = minus && whole ? "-" : "";
    if (!fraction) return arena_format(arena, "%s%llu", sign, whole / scale);
    int digits = decimals;
    while (fraction % 10 == 0) fraction /= 10, digits--;
    return arena_format(arena, "%s%llu.%0*llu", sign, whole / scale, digits, fraction);
}

const char *say_decimal(struct arena *arena, double value) {
    if (!isfinite(value)) return "?"; // no record holds one; a reader must not take it for a figure
    double size = fabs(value);
    if (size >= LARGEST) return arena_format(arena, "%.0f", value);
    int decimals = 2;
    while (size > 0 && decimals < 9 && size * pow(10, decimals) < 1 - 1e-9) decimals++;
    return with_decimals(arena, value < 0, size, decimals);
}

// A figure counts as a sixteenth when it is one written with two decimals: 0.13 and 0.12 are 1/8, 6.3 is not
// 6 5/16.
static const double AS_WRITTEN = 0.005 + 1e-9;

const char *say_fraction(struct arena *arena, double value) {
    double size = fabs(value);
    if (!isfinite(value) || size >= LARGEST) return say_decimal(arena, value);
    double nearest = floor(size * 16 + 0.5);
    if (fabs(size - nearest / 16) > AS_WRITTEN || (nearest == 0 && size > 0))
        return say_decimal(arena, value);
    unsigned long long sixteenths = (unsigned long long)nearest, whole = sixteenths / 16;
    unsigned over = (unsigned)(sixteenths % 16), under = 16;
    while (over && over % 2 == 0) over /= 2, under /= 2;
    const char *sign = value < 0 && sixteenths ? "-" : "";
    if (!over) return arena_format(arena, "%s%llu", sign, whole);
    if (!whole) return arena_format(arena, "%s%u/%u", sign, over, under);
    return arena_format(arena, "%s%llu %u/%u", sign, whole, over, under);
}

static double round_to(double value, double step) {
    double rounded = floor(value / step + 0.5 + 1e-9) * step;
    return rounded > 0 ? rounded : value;
}

static const char *decimal_of(struct arena *arena, double value, double step, const char *unit) {
    return arena_format(arena, "%s %s", say_decimal(arena, round_to(value, step)), unit);
}

static const char *fraction_of(struct arena *arena, double value, double step, const char *unit) {
    return arena_format(arena, "%s %s", say_fraction(arena, round_to(value, step)), unit);
}

static const char *metric_length(struct arena *arena, double mm) {
    if (mm < 1) return decimal_of(arena, mm, 0.01, "mm");
    if (mm < 20) return decimal_of(arena, mm, 1, "mm");
    if (mm < 3000) return decimal_of(arena, mm / 10, 0.1, "cm");
    return decimal_of(arena, mm / 1000, 0.01, "m");
}

// "6 ft 7 in", "2 lb 10 oz": `small` to the whole, `each` of them in a large one.
static const char *two_units(struct arena *arena, double small, unsigned each, const char *large_name,
                             const char *small_name) {
    unsigned long long total = (unsigned long long)floor(small + 0.5);
    unsigned long long large = total / each, rest = total % each;
    if (!rest) return arena_format(arena, "%llu %s", large, large_name);
    return arena_format(arena, "%llu %s %llu %s", large, large_name, rest, small_name);
}

static const char *customary_length(struct arena *arena, double mm, const struct unit *from) {
    double in = mm / 25.4;
    if (mm >= 3000 || (in >= 72 && text_same(from->name, "m"))) return two_units(arena, in, 12, "ft", "in");
    if (in < 0.1) return decimal_of(arena, in, mm < 1 ? 0.001 : 0.01, "in");
    return fraction_of(arena, in, in < 4 ? 1.0 / 16 : 1.0 / 8, "in");
}

static bool is_one_of(const struct unit *unit, const char *const *names) {
    for (; *names; names++)
        if (text_same(unit->name, *names)) return true;
    return false;
}

static bool is_fine_weight(const struct unit *unit) {
    static const char *const names[] = {"troy oz", "dwt", "grain", "carat", NULL};
    return is_one_of(unit, names);
}

static const char *metric_weight(struct arena *arena, double g, const struct unit *from) {
    if (is_fine_weight(from) && g < 1000) return decimal_of(arena, g, 0.01, "g");
    if (g < 10) return decimal_of(arena, g, 0.1, "g");
    if (g < 100) return decimal_of(arena, g, 1, "g");
    if (g < 997.5) return decimal_of(arena, g, 5, "g");
    return decimal_of(arena, g / 1000, g < 10000 ? 0.01 : 0.1, "kg");
}

static const char *customary_weight(struct arena *arena, double g) {
    double oz = g / 28.349523125;
    if (g < 100) return decimal_of(arena, oz, 0.01, "oz");
    if (oz < 15.95) return decimal_of(arena, oz, 0.1, "oz");
    if (oz < 20 * 16) return two_units(arena, oz, 16, "lb", "oz");
    return fraction_of(arena, oz / 16, oz < 100 * 16 ? 0.5 : 1, "lb");
}

static const char *metric_volume(struct arena *arena, double ml, const struct unit *from) {
    static const char *const ounces[] = {"fl oz", "imperial fl oz", NULL};
    if (ml < 10) return decimal_of(arena, ml, 0.1, "ml");
    if (ml < 997.5) return decimal_of(arena, ml, ml >= 100 && is_one_of(from, ounces) ? 5 : 1, "ml");
    return decimal_of(arena, ml / 1000, ml < 10000 ? 0.01 : 0.1, "L");
}

static const char *customary_volume(struct arena *arena, double ml, enum locale locale) {
    const struct unit *oz = say_unit("fl oz", locale), *gal = say_unit("gal", locale);
    const struct unit *middle = say_unit(locale == LOCALE_GB ? "pt" : "qt", locale);
    const struct unit *to = ml < middle->factor * 0.99 ? oz : ml < gal->factor * 2 ? middle : gal;
    return decimal_of(arena, ml / to->factor, ml < 50 ? 0.01 : 0.1, to->text);
}

static const char *other_system(struct arena *arena, double base, const struct unit *unit,
                                enum locale locale) {
    bool metric = unit->system == SYSTEM_METRIC;
    if (text_same(unit->kind, "mm"))
        return metric ? customary_length(arena, base, unit) : metric_length(arena, base);
    if (text_same(unit->kind, "g"))
        return metric ? customary_weight(arena, base) : metric_weight(arena, base, unit);
    return metric ? customary_volume(arena, base, locale) : metric_volume(arena, base, unit);
}

// Tapes are marked in sixteenths, so lengths take any; weights and volumes only the quarters that people say.
static const char *own_figure(struct arena *arena, double value, const struct unit *unit) {
    if (!unit->kind || unit->system == SYSTEM_METRIC || is_fine_weight(unit) || text_same(unit->name, "mil"))
        return say_decimal(arena, value);
    bool quarters = fabs(value * 4 - floor(value * 4 + 0.5)) < 1e-9;
    return quarters || text_same(unit->kind, "mm") ? say_fraction(arena, value) : say_decimal(arena, value);
}

// "2 cups", "3 imperial pt": a volume from across the sea says so.
static const char *own_unit(struct arena *arena, double value, const struct unit *unit, enum locale locale) {
    static const char *const words[] = {"cup", "imperial cup", "grain", "micron", "mil", NULL};
    const char *plural = value > 1 && is_one_of(unit, words) ? "s" : "";
    const struct unit *here = say_unit(unit->text, locale);
    bool foreign = unit->kind && text_same(unit->kind, "ml") && here != unit;
    const char *of = !foreign ? "" : locale == LOCALE_GB ? "US " : "imperial ";
    return arena_format(arena, "%s%s%s", of, unit->text, plural);
}

const char *say_both(struct arena *arena, double value, const struct unit *unit, enum locale locale) {
    const char *own =
        arena_format(arena, "%s %s", own_figure(arena, value, unit), own_unit(arena, value, unit, locale));
    double base = value * unit->factor;
    if (!unit->kind || !(base > 0) || base >= LARGEST) return own;
    return arena_format(arena, "%s (%s)", own, other_system(arena, base, unit, locale));
}
