// SPDX-License-Identifier: MIT
// The list below is the only place that names the forms; table and words are made from it.
#include "cli/forms.h"

#include <string.h>

#define FORMS(X)                                                                                             \
    X(ASFOUND_YAML, "yaml", ".yaml", ".yml", "one or more documents, a record each")                         \
    X(ASFOUND_JSON, "json", ".json", NULL, "one record, or a list of records")                               \
    X(ASFOUND_NDJSON, "ndjson", ".ndjson", NULL, "a record on each line")                                    \
    X(ASFOUND_CSV, "csv", ".csv", NULL, "a record on each row, the header naming its keys")                  \
    X(ASFOUND_NOTES, "txt", ".txt", NULL, "plain notes, parted by lines of only ---")

const struct form_entry FORM_TABLE[] = {
#define X(form, word, first, second, holds) {form, word, {first, second}, holds},
    FORMS(X)
#undef X
};
const unsigned FORM_TABLE_COUNT = sizeof FORM_TABLE / sizeof *FORM_TABLE;

const char *const FORM_WORDS[] = {
#define X(form, word, first, second, holds) word,
    FORMS(X)
#undef X
        NULL};

static bool ends_with(const char *name, const char *ending) {
    size_t n = strlen(name), e = strlen(ending);
    if (n <= e) return false;
    for (const char *at = name + n - e; *at; at++, ending++) {
        char low = *at >= 'A' && *at <= 'Z' ? (char)(*at + ('a' - 'A')) : *at;
        if (low != *ending) return false;
    }
    return true;
}

bool form_of_file(const char *name, enum asfound_input *form) {
    for (unsigned i = 0; i < FORM_TABLE_COUNT; i++)
        for (unsigned k = 0; k < 2 && FORM_TABLE[i].endings[k]; k++)
            if (ends_with(name, FORM_TABLE[i].endings[k])) {
                *form = FORM_TABLE[i].form;
                return true;
            }
    return false;
}
