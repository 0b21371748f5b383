// SPDX-License-Identifier: MIT
// Words for things that hold a liquid, asked before ounces, pints and cups are taken for a volume.
#include <string.h>

#include "notes/figure.h"
#include "text/order.h"

static const char *const vessels[] = {
    "mug",       "cup",    "glass",    "tumbler",  "goblet",    "jar",       "jug",        "pitcher",
    "ewer",      "kettle", "pot",      "teapot",   "coffeepot", "bottle",    "flask",      "canteen",
    "crock",     "bowl",   "pan",      "saucepan", "stockpot",  "cooker",    "canner",     "urn",
    "casserole", "tank",   "can",      "bucket",   "pail",      "cask",      "keg",        "barrel",
    "tankard",   "stein",  "carafe",   "decanter", "churn",     "dispenser", "percolator", "growler",
    "beaker",    "cooler", "tureen",   "creamer",  "vase",      "cruet",     "dutch oven", "shaker",
    "vat",       "tub",    "demijohn", "carboy",   "pipkin",    "jerrican",  "billy",      "cauldron"};

bool vessel_at(const struct note *note, size_t i) {
    if (i >= note->tokens.count) return false;
    for (size_t k = 0; k < sizeof vessels / sizeof *vessels; k++)
        if (note->tokens.at[i].one[0] == vessels[k][0] && text_same(note->tokens.at[i].one, vessels[k]))
            return true;
    return false;
}

bool note_has_vessel(const struct note *note, size_t near) {
    enum { REACH = 24 };
    size_t from = near > REACH ? near - REACH : 0;
    for (size_t k = from; k < note->tokens.count && k < near + 6; k++)
        // "can" is a verb and "glass" a material more often.
        if (vessel_at(note, k) && !token_is(&note->tokens, k, "can") && !token_is(&note->tokens, k, "glass"))
            return true;
    return false;
}
