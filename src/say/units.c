// SPDX-License-Identifier: MIT
// Units by the spellings people use. Factors are those of GNU units 2.22, which names NIST SP 811 and
// Handbook 44 as its sources; they are exact by definition, and a test compares each with that program.
#include <string.h>

#include "say/say.h"
#include "text/order.h"

// Plain units have no kind: nothing else is said about them, and their factor of one keeps arithmetic
// harmless.
static const struct unit units[] = {
    {"in", "mm", 25.4, "in", "in", SYSTEM_US},
    {"ft", "mm", 304.8, "ft", "ft", SYSTEM_US},
    {"yd", "mm", 914.4, "yd", "yd", SYSTEM_US},
    {"mil", "mm", 0.0254, "mil", "mil", SYSTEM_US},
    {"mm", "mm", 1, "mm", "mm", SYSTEM_METRIC},
    {"cm", "mm", 10, "cm", "cm", SYSTEM_METRIC},
    {"m", "mm", 1000, "m", "m", SYSTEM_METRIC},
    {"micron", "mm", 0.001, "micron", "micron", SYSTEM_METRIC},
    {"oz", "g", 28.349523125, "oz", "oz", SYSTEM_US},
    {"lb", "g", 453.59237, "lb", "lb", SYSTEM_US},
    {"st", "g", 6350.29318, "st", "st", SYSTEM_US},
    {"troy oz", "g", 31.1034768, "troy oz", "troy oz", SYSTEM_US},
    {"dwt", "g", 1.55517384, "dwt", "dwt", SYSTEM_US},
    {"grain", "g", 0.06479891, "Grain", "grain", SYSTEM_US},
    {"carat", "g", 0.2, "ct", "ct", SYSTEM_US},
    {"g", "g", 1, "g", "g", SYSTEM_METRIC},
    {"kg", "g", 1000, "kg", "kg", SYSTEM_METRIC},
    {"fl oz", "ml", 29.5735295625, "fl oz", "fl oz", SYSTEM_US},
    {"cup", "ml", 236.5882365, "Cup", "cup", SYSTEM_US},
    {"pt", "ml", 473.176473, "Pt", "pt", SYSTEM_US},
    {"qt", "ml", 946.352946, "Qt", "qt", SYSTEM_US},
    {"gal", "ml", 3785.411784, "Gal", "gal", SYSTEM_US},
    {"imperial fl oz", "ml", 28.4130625, "fl oz", "fl oz", SYSTEM_US},
    {"imperial cup", "ml", 284.130625, "Cup", "cup", SYSTEM_US},
    {"imperial pt", "ml", 568.26125, "Imp Pt", "pt", SYSTEM_US},
    {"imperial qt", "ml", 1136.5225, "Imp Qt", "qt", SYSTEM_US},
    {"imperial gal", "ml", 4546.09, "Imp Gal", "gal", SYSTEM_US},
    {"ml", "ml", 1, "ml", "ml", SYSTEM_METRIC},
    {"cl", "ml", 10, "cl", "cl", SYSTEM_METRIC},
    {"l", "ml", 1000, "L", "L", SYSTEM_METRIC},
    {"V", NULL, 1, "V", "V", SYSTEM_METRIC},
    {"W", NULL, 1, "W", "W", SYSTEM_METRIC},
    {"kW", NULL, 1, "kW", "kW", SYSTEM_METRIC},
    {"A", NULL, 1, "A", "A", SYSTEM_METRIC},
    {"mAh", NULL, 1, "mAh", "mAh", SYSTEM_METRIC},
    {"Hz", NULL, 1, "Hz", "Hz", SYSTEM_METRIC},
    {"kHz", NULL, 1, "kHz", "kHz", SYSTEM_METRIC},
    {"MHz", NULL, 1, "MHz", "MHz", SYSTEM_METRIC},
    {"rpm", NULL, 1, "rpm", "rpm", SYSTEM_METRIC},
};
enum { UNITS = sizeof units / sizeof *units };

struct spelling {
    const char *spelling, *name;
};

// In small letters, without stops.
static const struct spelling spellings[] = {
    {"\"", "in"},
    {"''", "in"},
    {"\xE2\x80\xB3", "in"},
    {"\xE2\x80\x9D", "in"},
    {"inch", "in"},
    {"inches", "in"},
    {"ins", "in"},
    {"'", "ft"},
    {"\xE2\x80\xB2", "ft"},
    {"\xE2\x80\x99", "ft"},
    {"foot", "ft"},
    {"feet", "ft"},
    {"yard", "yd"},
    {"yards", "yd"},
    {"yds", "yd"},
    {"mils", "mil"},
    {"millimeter", "mm"},
    {"millimeters", "mm"},
    {"millimetre", "mm"},
    {"millimetres", "mm"},
    {"mms", "mm"},
    {"centimeter", "cm"},
    {"centimeters", "cm"},
    {"centimetre", "cm"},
    {"centimetres", "cm"},
    {"cms", "cm"},
    {"meter", "m"},
    {"meters", "m"},
    {"metre", "m"},
    {"metres", "m"},
    {"microns", "micron"},
    {"ounce", "oz"},
    {"ounces", "oz"},
    {"ozs", "oz"},
    {"lbs", "lb"},
    {"pound", "lb"},
    {"pounds", "lb"},
    {"stone", "st"},
    {"stones", "st"},
    {"ozt", "troy oz"},
    {"oz t", "troy oz"},
    {"ounce troy", "troy oz"},
    {"troy ounce", "troy oz"},
    {"troy ounces", "troy oz"},
    {"pennyweight", "dwt"},
    {"pennyweights", "dwt"},
    {"grains", "grain"},
    {"gr", "grain"},
    {"carats", "carat"},
    {"ct", "carat"},
    {"cts", "carat"},
    {"gram", "g"},
    {"grams", "g"},
    {"gramme", "g"},
    {"grammes", "g"},
    {"gm", "g"},
    {"gms", "g"},
    {"kilo", "kg"},
    {"kilos", "kg"},
    {"kilogram", "kg"},
    {"kilograms", "kg"},
    {"kgs", "kg"},
    {"floz", "fl oz"},
    {"fluid oz", "fl oz"},
    {"fluid ounce", "fl oz"},
    {"fluid ounces", "fl oz"},
    {"fl ounce", "fl oz"},
    {"fl ounces", "fl oz"},
    {"oz fl", "fl oz"},
    {"cups", "cup"},
    {"pint", "pt"},
    {"pints", "pt"},
    {"pts", "pt"},
    {"quart", "qt"},
    {"quarts", "qt"},
    {"qts", "qt"},
    {"gallon", "gal"},
    {"gallons", "gal"},
    {"gals", "gal"},
    {"milliliter", "ml"},
    {"milliliters", "ml"},
    {"millilitre", "ml"},
    {"millilitres", "ml"},
    {"mls", "ml"},
    {"cc", "ml"},
    {"centiliter", "cl"},
    {"centiliters", "cl"},
    {"centilitre", "cl"},
    {"centilitres", "cl"},
    {"liter", "l"},
    {"liters", "l"},
    {"litre", "l"},
    {"litres", "l"},
    {"ltr", "l"},
    {"ltrs", "l"},
    {"v", "V"},
    {"volt", "V"},
    {"volts", "V"},
    {"w", "W"},
    {"watt", "W"},
    {"watts", "W"},
    {"kw", "kW"},
    {"kilowatt", "kW"},
    {"kilowatts", "kW"},
    {"amp", "A"},
    {"amps", "A"},
    {"ampere", "A"},
    {"amperes", "A"},
    {"mah", "mAh"},
    {"hz", "Hz"},
    {"hertz", "Hz"},
    {"khz", "kHz"},
    {"kilohertz", "kHz"},
    {"mhz", "MHz"},
    {"megahertz", "MHz"},
};

static const struct unit *by_name(const char *name) {
    for (size_t i = 0; i < UNITS; i++)
        if (text_same(name, units[i].name)) return &units[i];
    return NULL;
}

enum { NAME_ROOM = 32 };

// Small letters, no stops, single spaces; false when too long for any unit.
static bool normalize(const char *name, char to[NAME_ROOM]) {
    size_t n = 0;
    for (; *name; name++) {
        char c = *name == '-' ? ' ' : *name;
        if (c == '.' || (c == ' ' && (!n || to[n - 1] == ' '))) continue;
        if (n + 1 == NAME_ROOM) return false;
        to[n++] = c >= 'A' && c <= 'Z' ? (char)(c + ('a' - 'A')) : c;
    }
    while (n && to[n - 1] == ' ') n--;
    to[n] = '\0';
    return n > 0;
}

static bool starts(const char **name, const char *const *prefixes) {
    for (; *prefixes; prefixes++) {
        if (**name != **prefixes) continue;
        size_t size = strlen(*prefixes);
        if (strncmp(*name, *prefixes, size) != 0) continue;
        *name += size;
        return true;
    }
    return false;
}

static const struct unit *imperial_of(const struct unit *unit) {
    static const char prefix[] = "imperial ";
    for (size_t i = 0; i < UNITS; i++)
        if (!strncmp(units[i].name, prefix, sizeof prefix - 1) &&
            text_same(units[i].name + sizeof prefix - 1, unit->name))
            return &units[i];
    return NULL;
}

const struct unit *say_unit(const char *name, enum locale locale) {
    static const char *const us[] = {"us ", "american ", NULL};
    static const char *const imperial[] = {"imperial ", "imp ", "uk ", "british ", NULL};
    if (text_same(name, "A")) return by_name("A");
    if (text_same(name, "a") || text_same(name, "M")) return NULL; // an article and a clothes size
    char plain[NAME_ROOM] = "";
    if (!normalize(name, plain)) return NULL;
    const char *rest = plain;
    bool is_us = starts(&rest, us), is_imperial = !is_us && starts(&rest, imperial);
    const struct unit *unit = by_name(rest);
    for (size_t i = 0; !unit && i < sizeof spellings / sizeof *spellings; i++)
        if (text_same(rest, spellings[i].spelling)) unit = by_name(spellings[i].name);
    if (!unit) return NULL;
    const struct unit *other = imperial_of(unit);
    if (!other) return is_us || is_imperial ? NULL : unit; // "imperial inch" is no unit
    return is_imperial || (locale == LOCALE_GB && !is_us) ? other : unit;
}

const struct unit *say_units(size_t *count) {
    *count = UNITS;
    return units;
}
