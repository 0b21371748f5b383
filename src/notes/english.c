// SPDX-License-Identifier: MIT
// The word book holds base forms and the irregular ones; regular endings are taken off here.
#include "notes/english.h"

#include <stdio.h>
#include <string.h>

#include "notes/read.h"
#include "text/order.h"

enum { WORD_BYTES = 48 };

static bool is_known(const struct wordbook *book, const char *word, size_t n) {
    struct word_entry entry;
    return n < 3 || wordbook_find(book, word, n, &entry);
}

static bool ends_in(const char *word, size_t n, const char *ending) {
    size_t k = strlen(ending);
    return n > k + 1 && !memcmp(word + n - k, ending, k);
}

static bool is_vowel(char c) {
    return c && strchr("aeiou", c) != NULL;
}

// "Pit", which doubles its last letter before "ed" and "ing"; "pited" is a slip.
static bool doubles(const char *base, size_t n) {
    if (n < 3 || strchr("aeiouwxy", base[n - 1]) || !is_vowel(base[n - 2]) || is_vowel(base[n - 3]))
        return false;
    for (size_t i = 0; i + 2 < n; i++)
        if (is_vowel(base[i]) || base[i] == 'y') return false;
    return true;
}

// Does such an ending stand on such a base: not in "pited", "flakeing", "stickes" and "noisey".
static bool may_bear(const char *base, size_t n, const char *ending) {
    bool vowel = is_vowel(ending[0]);
    if (text_same(ending, "es")) return strchr("sxzho", base[n - 1]) != NULL;
    if (text_same(ending, "y")) return base[n - 1] != 'e';
    if (vowel && doubles(base, n)) return false;
    if (ending[0] == 'e' && n > 2 && base[n - 1] == 'y' && !is_vowel(base[n - 2])) return false; // "dryed"
    return !text_same(ending, "ing") || base[n - 1] != 'e' || strchr("eoyg", base[n - 2]);
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
        bool bare = !more;
        if (is_known(book, base, size + more) && (!bare || may_bear(base, size, endings[k].ending)))
            return true;
        bool twice = size > 3 && base[size - 1] == base[size - 2] && is_vowel(base[size - 3]);
        if (twice && (is_vowel(endings[k].ending[0]) || endings[k].ending[0] == 'y') &&
            is_known(book, base, size - 1))
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
    static const char key[] = "a word of English";
    if (!note->book) return true;
    int told = token_told(&note->tokens, i, key);
    if (told >= 0) return told;
    bool english = english_word(note->book, note->tokens.at[i].fold);
    token_tell(&note->tokens, i, key, english);
    return english;
}
