// SPDX-License-Identifier: MIT
// The forms of input, once: the word of --from, the endings of files, and a line of help.
#ifndef CLI_FORMS_H
#define CLI_FORMS_H

#include <stdbool.h>

#include "asfound.h"

struct form_entry {
    enum asfound_input form;
    const char *word;
    const char *endings[2]; // with the dot; the second may be NULL
    const char *holds;
};

extern const struct form_entry FORM_TABLE[];
extern const unsigned FORM_TABLE_COUNT;
// The words alone, in the order of the table, NULL-ended.
extern const char *const FORM_WORDS[];

// By the ending of a file name, in any case of letters; false when it has none of the endings known.
bool form_of_file(const char *name, enum asfound_input *form);

#endif
