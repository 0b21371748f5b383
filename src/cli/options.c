// SPDX-License-Identifier: MIT
// A value is checked where it is taken, so that no later code meets one that makes no sense.
#include "cli/options.h"

#include <string.h>

#include "cli/forms.h"
#include "cli/options_shelf.h"
#include "text/limits.h"
#include "text/utf8.h"

static const char *const FORMAT_WORDS[] = {"text", "yaml", "json", "html", NULL};
static const char *const LOCALE_WORDS[] = {"en_US", "en_GB", NULL};
static const char *const COLOR_WORDS[] = {"auto", "always", "never", NULL};

static const char *take_from(const struct option_value *value) {
    value->settings->from = FORM_TABLE[value->choice].form;
    value->settings->from_given = true;
    return NULL;
}

static const char *take_format(const struct option_value *value) {
    static const enum asfound_output outputs[] = {ASFOUND_TEXT, ASFOUND_YAML_OUT, ASFOUND_JSON_LINES,
                                                  ASFOUND_HTML};
    value->settings->format = outputs[value->choice];
    return NULL;
}

static const char *take_rules(const struct option_value *value) {
    struct settings *s = value->settings;
    if (!*value->text) return "is no folder";
    s->packs = arena_grow(value->arena, (void *)s->packs, s->pack_count, &s->pack_room, sizeof *s->packs);
    s->packs[s->pack_count++] = value->text;
    return NULL;
}

static const char *take_dictionaries(const struct option_value *value) {
    if (!*value->text) return "is no folder";
    value->settings->dictionaries = value->text;
    return NULL;
}

static bool take_digits(const char *text, size_t count, size_t *number) {
    *number = 0;
    for (size_t i = 0; i < count; i++) {
        if (text[i] < '0' || text[i] > '9') return false;
        *number = 10 * *number + (size_t)(text[i] - '0');
    }
    return count > 0;
}

static const char *take_limit(const struct option_value *value) {
    static const char units[] = "gub"; // in the order of enum asfound_unit
    size_t digits = strspn(value->text, "0123456789"), number = 0;
    const char *unit = value->text + digits;
    const char *known = *unit ? strchr(units, *unit) : units;
    // Nine digits cannot overflow and are already far above any limit.
    if (digits > 9 || !take_digits(value->text, digits, &number) || !known || (*unit && unit[1]))
        return "is no limit; a whole number is, with g, u or b after it for the unit";
    if (number < 1 || number > LIMIT_TITLE_LONGEST) return "is no limit for a title; 1 to 1000 are";
    value->settings->limit = number;
    value->settings->unit = (enum asfound_unit)(known - units);
    return NULL;
}

static const char *take_locale(const struct option_value *value) {
    value->settings->locale = value->choice ? ASFOUND_EN_GB : ASFOUND_EN_US;
    return NULL;
}

static const char *take_title(const struct option_value *value) {
    size_t size = strlen(value->text);
    if (strspn(value->text, " ") == size) return "is no title";
    if (utf8_check(value->text, size) != size) return "is not UTF-8";
    if (utf8_unwanted(value->text, size, false) != size) return "holds a character that no title may";
    value->settings->title = value->text;
    return NULL;
}

static const char *take_answer(const struct option_value *value) {
    struct settings *s = value->settings;
    if (!*value->text || value->text[0] == '=') return "names no question";
    s->answers =
        arena_grow(value->arena, (void *)s->answers, s->answer_count, &s->answer_room, sizeof *s->answers);
    s->answers[s->answer_count++] = value->text;
    return NULL;
}

static const char *take_only(const struct option_value *value) {
    if (!*value->text) return "is no id";
    value->settings->only = value->text;
    return NULL;
}

static size_t days_in(size_t year, size_t month) {
    bool leap = (year % 4 == 0 && year % 100 != 0) || year % 400 == 0;
    if (month == 2) return leap ? 29 : 28;
    return month == 4 || month == 6 || month == 9 || month == 11 ? 30 : 31;
}

static const char *take_today(const struct option_value *value) {
    const char *text = value->text;
    size_t year, month, day;
    bool shape = strlen(text) == 10 && text[4] == '-' && text[7] == '-' && take_digits(text, 4, &year) &&
                 take_digits(text + 5, 2, &month) && take_digits(text + 8, 2, &day);
    if (!shape) return "is no date; write it as YYYY-MM-DD";
    if (!year || !month || month > 12 || !day || day > days_in(year, month))
        return "is not a day of the calendar";
    value->settings->today = text;
    return NULL;
}

static const char *take_color(const struct option_value *value) {
    static const enum color_choice choices[] = {COLOR_AUTO, COLOR_ALWAYS, COLOR_NEVER};
    value->settings->color = choices[value->choice];
    return NULL;
}

static const char *take_store(const struct option_value *value) {
    if (!*value->text) return "is no file";
    value->settings->store = value->text;
    return NULL;
}

#define TAKE_FLAG(field)                                                                                     \
    static const char *take_##field(const struct option_value *value) {                                      \
        value->settings->field = true;                                                                       \
        return NULL;                                                                                         \
    }
TAKE_FLAG(sheet)
TAKE_FLAG(table)
TAKE_FLAG(quiet)
TAKE_FLAG(stats)
TAKE_FLAG(schema)
TAKE_FLAG(man)
TAKE_FLAG(completion)
TAKE_FLAG(help)

static const struct option TABLE[OPTION_COUNT] = {
    [OPTION_FROM] = {"from", NULL, "FORM", FORM_WORDS, COMPLETES_NOTHING, take_from,
                     "Read every input as this form, whatever its ending: yaml, json, ndjson, csv or txt."},
    [OPTION_FORMAT] = {"format", NULL, "FORMAT", FORMAT_WORDS, COMPLETES_NOTHING, take_format,
                       "Write text (unless told), yaml, json (one object a line) or html (one page)."},
    [OPTION_RULES] = {"rules", NULL, "DIR", NULL, COMPLETES_FOLDERS, take_rules,
                      "Add a rule pack over the shipped ones; may be given again, and the last one wins."},
    [OPTION_DICTIONARIES] =
        {"dictionaries", NULL, "DIR", NULL, COMPLETES_FOLDERS, take_dictionaries,
         "The folder of the spelling dictionaries (en_US.aff, en_US.dic, en_GB.aff, en_GB.dic); where the "
         "system keeps them unless told."},
    [OPTION_LIMIT] =
        {"limit", NULL, "N[g|u|b]", NULL, COMPLETES_NOTHING, take_limit,
         "The longest a title may be, 80 unless told, counted in graphemes (g, what a reader takes for one "
         "character; so without a letter), UTF-16 units (u) or bytes (b)."},
    [OPTION_LOCALE] = {"locale", NULL, "LOCALE", LOCALE_WORDS, COMPLETES_NOTHING, take_locale,
                       "Spelling and units: en_US (unless told) or en_GB."},
    [OPTION_TITLE] =
        {"title", NULL, "TITLE", NULL, COMPLETES_NOTHING, take_title,
         "Score this title of yours too, beside the drafted one; goes with one record. Without it the "
         "title under 'listing' in a record is scored."},
    [OPTION_ANSWER] = {"answer", NULL, "ID=ANSWER", NULL, COMPLETES_NOTHING, take_answer,
                       "Answer a question of the listing for this draft: yes, no or not-looked; may be given "
                       "again, and goes "
                       "with one record. With --format yaml the record is written with the answers in it."},
    [OPTION_ONLY] = {"only", NULL, "ID", NULL, COMPLETES_NOTHING, take_only,
                     "Draft the record of this id only."},
    [OPTION_TODAY] =
        {"today", NULL, "DATE", NULL, COMPLETES_NOTHING, take_today,
         "The day to take for today, as YYYY-MM-DD: no clock is read. Without it no age is settled, and no "
         "mark is too young."},
    [OPTION_SHEET] = {"sheet", NULL, NULL, NULL, COMPLETES_NOTHING, take_sheet,
                      "Write a disclosure sheet instead of the listing, dated by --today: the text, its "
                      "SHA-256, the record, the photos. As text or html; one page of paper each."},
    [OPTION_TABLE] =
        {"table", NULL, NULL, NULL, COMPLETES_NOTHING, take_table,
         "Write every mark that is known, with its years, how sure they are and their source, and "
         "the years of words of age; takes no marks."},
    [OPTION_MAP] =
        {"map", NULL, "NAME=HEADER,...", NULL, COMPLETES_NOTHING, shelf_take_map,
         "Which column is what, where its header does not say so: id, title, description, listed, days, "
         "views, price, category, photos, brand, model, material, color."},
    [OPTION_EXPLAIN_COLUMNS] = {"explain-columns", NULL, NULL, NULL, COMPLETES_NOTHING, shelf_take_explain,
                                "Say only what each column was taken for, and why."},
    [OPTION_OLDER_THAN] =
        {"older-than", NULL, "DAYS", NULL, COMPLETES_NOTHING, shelf_take_older,
         "Only rows listed that long ago or longer, as 60d; needs --today or a column of days."},
    [OPTION_VIEWS_UNDER] = {"views-under", NULL, "N", NULL, COMPLETES_NOTHING, shelf_take_views,
                            "Only rows with fewer views."},
    [OPTION_EARNED_UNDER] = {"earned-under", NULL, "P%", NULL, COMPLETES_NOTHING, shelf_take_earned,
                             "Only rows whose title earns less than that share of the best one."},
    [OPTION_CATEGORY] = {"category", NULL, "TEXT", NULL, COMPLETES_NOTHING, shelf_take_category,
                         "Only rows whose category holds this text."},
    [OPTION_PRICE] = {"price", NULL, "LOW..HIGH", NULL, COMPLETES_NOTHING, shelf_take_price,
                      "Only rows of such a price; either end may be left out."},
    [OPTION_HOLD_BACK] =
        {"hold-back", NULL, "P%", NULL, COMPLETES_NOTHING, shelf_take_hold,
         "Leave that share of the proposed rows as they are, to compare with later; the same rows "
         "each time."},
    [OPTION_SEED] = {"seed", NULL, "TEXT", NULL, COMPLETES_NOTHING, shelf_take_seed,
                     "With --hold-back: another text, another choice of rows."},
    [OPTION_JOBS] =
        {"jobs", NULL, "N", NULL, COMPLETES_NOTHING, shelf_take_jobs,
         "How many rows to work on at one time; as many as there are processors unless told. The result "
         "is the same."},
    [OPTION_WRITE] =
        {"write", NULL, "NEW.csv", NULL, COMPLETES_FILES, shelf_take_write,
         "Write the new stock file under this name, which must be free; without it nothing is written."},
    [OPTION_COLOR] = {"color", NULL, "WHEN", COLOR_WORDS, COMPLETES_NOTHING, take_color,
                      "auto (unless told: on a terminal, where NO_COLOR is not set), always or never."},
    [OPTION_STORE] =
        {"store", NULL, "FILE", NULL, COMPLETES_FILES, take_store,
         "The ledger of what was changed in stock files, an SQLite file of yours; asfound-ledger.sqlite in "
         "this folder unless told."},
    [OPTION_QUIET] = {"quiet", NULL, NULL, NULL, COMPLETES_NOTHING, take_quiet,
                      "Neither warnings nor notes nor progress; errors are still told."},
    [OPTION_STATS] = {"stats", NULL, NULL, NULL, COMPLETES_NOTHING, take_stats,
                      "With check: counts of rules and examples, and how alike the families are."},
    [OPTION_SCHEMA] = {"schema", NULL, NULL, NULL, COMPLETES_NOTHING, take_schema,
                       "With describe: a JSON Schema of the rule files, for editors."},
    [OPTION_MAN] = {"man", NULL, NULL, NULL, COMPLETES_NOTHING, take_man, "Write the man page."},
    [OPTION_COMPLETION] = {"completion", NULL, NULL, NULL, COMPLETES_NOTHING, take_completion,
                           "Write the completion of command lines for bash."},
    [OPTION_HELP] = {"help", "h", NULL, NULL, COMPLETES_NOTHING, take_help, "Say this, and do nothing else."},
};

const struct option *option_entry(enum option_id id) {
    return &TABLE[id];
}
