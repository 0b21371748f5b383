// SPDX-License-Identifier: MIT
// Names of the input forms: file endings and the words of an option.
#include <string.h>

#include "format/stream.h"

static const struct {
    const char *word;
    enum form form;
} WORDS[] = {{"yaml", FORM_YAML}, {"yml", FORM_YAML},  {"json", FORM_JSON},  {"ndjson", FORM_NDJSON},
             {"csv", FORM_CSV},   {"txt", FORM_NOTES}, {"notes", FORM_NOTES}};

static bool same_word(const char *text, const char *word) {
    for (; *word; text++, word++) {
        char low = *text >= 'A' && *text <= 'Z' ? (char)(*text + ('a' - 'A')) : *text;
        if (low != *word) return false;
    }
    return !*text;
}

bool form_of_word(const char *word, enum form *form) {
    for (size_t i = 0; i < sizeof WORDS / sizeof *WORDS; i++) {
        if (!same_word(word, WORDS[i].word)) continue;
        *form = WORDS[i].form;
        return true;
    }
    return false;
}

bool form_of_name(const char *name, enum form *form) {
    const char *dot = strrchr(name, '.'), *slash = strrchr(name, '/');
    if (!dot || (slash && slash > dot)) return false;
    return strcmp(dot + 1, "notes") != 0 && form_of_word(dot + 1, form);
}
