// SPDX-License-Identifier: MIT
// Articles, lists and the first capital.
#include <string.h>

#include "say/nouns.h"
#include "say/say.h"
#include "text/buf.h"
#include "text/utf8.h"

static bool is_upper(char c) {
    return c >= 'A' && c <= 'Z';
}
static bool is_lower(char c) {
    return c >= 'a' && c <= 'z';
}
static bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

enum { WORD_ROOM = 24 };

struct word {
    char lower[WORD_ROOM]; // cut off where it is longer: sounds stand at the front
    size_t size;           // letters and digits only, up to the first other sign
    bool capitals, digits, vowels;
};

static struct word first_word(const char *text) {
    struct word word = {.capitals = true};
    for (; word.size < WORD_ROOM - 1; word.size++) {
        char c = text[word.size];
        if (!is_upper(c) && !is_lower(c) && !is_digit(c)) break;
        word.capitals = word.capitals && !is_lower(c);
        word.digits = word.digits || is_digit(c);
        word.lower[word.size] = is_upper(c) ? (char)(c + ('a' - 'A')) : c;
        word.vowels = word.vowels || strchr("aeiouy", word.lower[word.size]);
    }
    return word;
}

// Eight, eleven, eighteen and what starts with them: "an 8", "an 11-inch", "an 18,000", "an 1890s". A bare
// four-digit number is read as a year, in two pairs.
static bool number_starts_with_vowel(const char *text) {
    if (text[0] == '8') return true;
    if (text[0] != '1' || (text[1] != '1' && text[1] != '8')) return false;
    size_t group = strspn(text, "0123456789");
    return group == 2 || group == 4 || group == 5;
}

// The names of these letters start with a vowel: "an F-hole", "an LP", "an x-ray", but "a U-bolt".
static bool letter_starts_with_vowel(char letter) {
    return strchr("aefhilmnorsx", letter) != NULL;
}

static bool is_spelled_out(const struct word *word, char after) {
    if (word->size == 1) return after == '-' || after == '\0' || after == ' ' || after == '.';
    if (word->capitals && nouns_has(NOUNS_SPELLED, word->lower)) return true;
    if (word->capitals && word->digits && word->size <= 3) return true; // M6, A4, F2
    return word->capitals && !word->vowels;                             // DVD, KR-9, MP3
}

static bool starts_with_one_of(const char *word, const char *const *list) {
    for (; *list; list++)
        if (!strncmp(word, *list, strlen(*list))) return true;
    return false;
}

static bool word_starts_with_vowel(const char *word) {
    // a silent h; "herb" as the US says it, the default locale
    static const char *const silent[] = {"hour", "heir", "honest", "honor", "honour", "herb", "hors", NULL};
    // "you" and "won": a glide, though a vowel is written
    static const char *const glide[] = {"uni", "use",  "usu",   "usa",   "uten", "uti", "uto",
                                        "ura", "uri",  "ubi",   "ukule", "unan", "eu",  "ewe",
                                        "one", "once", "ouija", "oui",   NULL};
    // "uni-" with an "un-" in it: unimpressed, uninked, unissued, unironed, unidentified
    static const char *const not_glide[] = {"unin", "unim", "uniss", "unir", "unident", "onei", NULL};
    if (word[0] == 'h') return starts_with_one_of(word, silent);
    if (!strncmp(word, "ytt", 3)) return true;
    if (!word[0] || !strchr("aeiou", word[0])) return false;
    return !starts_with_one_of(word, glide) || starts_with_one_of(word, not_glide);
}

// The letter under the accent of what people borrow: "étagère", "épergne", "écru".
static char plain_first(const char *text) {
    size_t at = 0, size = strlen(text);
    if (utf8_check(text, size) != size) return '\0';
    uint32_t point = utf8_lower(utf8_next(text, size, &at));
    if ((point >= 0xE0 && point <= 0xE6) || (point >= 0xE8 && point <= 0xEF) ||
        (point >= 0xF2 && point <= 0xF6) || (point >= 0xF8 && point <= 0xFB) || point == 0x153)
        return 'a';
    return '\0';
}

const char *say_article(const char *phrase) {
    phrase += strspn(phrase, " \"'([");
    if (is_digit(phrase[0])) return number_starts_with_vowel(phrase) ? "an" : "a";
    struct word word = first_word(phrase);
    if (!word.size) return plain_first(phrase) ? "an" : "a";
    if (is_spelled_out(&word, phrase[word.size])) return letter_starts_with_vowel(word.lower[0]) ? "an" : "a";
    return word_starts_with_vowel(word.lower) ? "an" : "a";
}

// A comma before the last "and": always in US usage; in UK usage only where a member has an "and" of its own.
// Members with commas are kept apart by semicolons in both.
static const char *list_mark(const char *const *items, size_t count, enum locale locale, bool last) {
    bool ands = false;
    for (size_t i = 0; i < count; i++) {
        if (strchr(items[i], ',')) return ";";
        ands = ands || strstr(items[i], " and ");
    }
    return !last || locale == LOCALE_US || ands ? "," : "";
}

const char *say_list(struct arena *arena, const char *const *items, size_t count, enum locale locale) {
    struct buf out = buf_start(arena);
    const char *mark = list_mark(items, count, locale, false),
               *last_mark = list_mark(items, count, locale, true);
    for (size_t i = 0; i < count; i++) {
        bool last = i + 1 == count;
        if (i && count > 2) buf_text(&out, last ? last_mark : mark);
        if (i) buf_text(&out, last ? " and " : " ");
        buf_text(&out, items[i]);
    }
    return out.at;
}

// "pH meter" and "kHz" carry their capital inside and begin small even at the head of a sentence.
static bool has_capital_inside(const char *text) {
    for (size_t i = 1; text[i] && text[i] != ' '; i++)
        if (is_upper(text[i]) && text[i - 1] != '-' && text[i - 1] != '/') return true;
    return false;
}

const char *say_sentence_case(struct arena *arena, const char *text) {
    size_t at = strspn(text, " \"'(["), size = strlen(text);
    if (at == size || has_capital_inside(text + at)) return text;
    size_t next = at;
    uint32_t point = utf8_next(text, size, &next), upper = utf8_upper(point);
    if (upper == point) return text;
    char bytes[4];
    size_t room = utf8_put(upper, bytes);
    return arena_format(arena, "%.*s%.*s%s", (int)at, text, (int)room, bytes, text + next);
}
