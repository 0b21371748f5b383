// SPDX-License-Identifier: MIT
// The word book holds base forms and the irregular ones; regular endings are taken off here.
#include "notes/english.h"

#include <stdio.h>
#include <string.h>

#include "notes/read.h"

enum { WORD_BYTES = 48 };

static bool is_known(const struct wordbook *book, const char *word, size_t n) {
    struct word_entry entry;
    return n < 3 || wordbook_find(book, word, n, &entry);
}

static bool ends_in(const char *word, size_t n, const char *ending) {
    size_t k = strlen(ending);
    return n > k + 1 && !memcmp(word + n - k, ending, k);
}

static bool is_inflected(const struct wordbook *book, const char *word, size_t n) {
    static const struct {
        const char *ending, *instead;
    } endings[] = {{"men", "man"}, {"men's", "man"}, {"'s", ""},   {"s", ""},   {"es", ""},   {"ies", "y"},
                   {"ed", ""},     {"ed", "e"},      {"ied", "y"}, {"ing", ""}, {"ing", "e"}, {"er", ""},
                   {"er", "e"},    {"est", ""},      {"est", "e"}, {"ly", ""},  {"y", ""},    {"y", "e"},
                   {"ness", ""},   {"less", ""},     {"n't", ""},  {"'ll", ""}, {"'d", ""}};
    char base[WORD_BYTES];
    for (size_t k = 0; k < sizeof endings / sizeof *endings; k++) {
        if (!ends_in(word, n, endings[k].ending)) continue;
        size_t size = n - strlen(endings[k].ending), more = strlen(endings[k].instead);
        if (size + more >= WORD_BYTES) continue;
        snprintf(base, sizeof base, "%.*s%s", (int)size, word, endings[k].instead);
        if (is_known(book, base, size + more)) return true;
        if (size > 3 && base[size - 1] == base[size - 2] && is_known(book, base, size - 1))
            return true; // "hemmed"
    }
    return false;
}

bool english_word(const struct wordbook *book, const char *fold) {
    for (const char *part = fold; *part;) {
        size_t n = strcspn(part, "-/");
        if (!is_known(book, part, n) && !is_inflected(book, part, n)) return false;
        part += n + (part[n] != '\0');
    }
    return true;
}

bool english_at(const struct note *note, size_t i) {
    return !note->book || english_word(note->book, note->tokens.at[i].fold);
}
