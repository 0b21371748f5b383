// SPDX-License-Identifier: MIT
// Every option, once. The table drives parsing, the help texts, the man page and the completion.
#ifndef CLI_OPTIONS_H
#define CLI_OPTIONS_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "asfound.h"
#include "cli/session.h"

enum option_id {
    OPTION_FROM,
    OPTION_FORMAT,
    OPTION_RULES,
    OPTION_DICTIONARIES,
    OPTION_LIMIT,
    OPTION_LOCALE,
    OPTION_TITLE,
    OPTION_ANSWER,
    OPTION_ONLY,
    OPTION_TODAY,
    OPTION_SHEET,
    OPTION_TABLE,
    OPTION_MAP,
    OPTION_EXPLAIN_COLUMNS,
    OPTION_OLDER_THAN,
    OPTION_VIEWS_UNDER,
    OPTION_EARNED_UNDER,
    OPTION_CATEGORY,
    OPTION_PRICE,
    OPTION_HOLD_BACK,
    OPTION_SEED,
    OPTION_JOBS,
    OPTION_WRITE,
    OPTION_COLOR,
    OPTION_STORE,
    OPTION_QUIET,
    OPTION_STATS,
    OPTION_SCHEMA,
    OPTION_MAN,
    OPTION_COMPLETION,
    OPTION_HELP,
    OPTION_COUNT
};

#define OPTION_BIT(id) ((uint64_t)1 << (id))

// Of the commands for stock files. A number of 0 is not given; others are one more than what was said.
struct shelf_settings {
    const char *map, *category, *seed, *write;
    size_t older_than, views_under, earned_under, hold_back, jobs;
    bool price_given;
    double price_from, price_to; // -1: open
    bool explain_columns;
};

// What the options of one run say. Texts are the caller's.
struct settings {
    const char *const *operands;
    size_t operand_count;
    bool from_given;
    enum asfound_input from;
    enum asfound_output format;
    const char **packs;
    size_t pack_count, pack_room;
    const char *dictionaries; // folder; NULL when not given
    size_t limit;
    enum asfound_unit unit;
    enum asfound_locale locale;
    const char *today; // YYYY-MM-DD, a day of the calendar; NULL when not given
    const char *store;
    const char *title; // to be scored; NULL when not given
    const char **answers;
    size_t answer_count, answer_room;
    const char *only; // id of the one record wanted; NULL when not given
    struct shelf_settings shelf;
    enum color_choice color;
    bool sheet, table, quiet, stats, schema, man, completion, help;
};

enum completes { COMPLETES_NOTHING, COMPLETES_FILES, COMPLETES_FOLDERS };

struct option_value {
    struct arena *arena;
    struct settings *settings;
    const char *text;
    size_t choice; // index in the choices, where there are any
};

struct option {
    const char *name;           // without dashes
    const char *letter;         // NULL when there is none
    const char *argument;       // how the help names its value; NULL when it takes none
    const char *const *choices; // the values that there are, NULL-ended; NULL: any that `take` accepts
    enum completes completes;
    // Puts the value into the settings; otherwise what is wrong with it, to be read after the value.
    const char *(*take)(const struct option_value *value);
    const char *help;
};

const struct option *option_entry(enum option_id id);

#endif
