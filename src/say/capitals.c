// SPDX-License-Identifier: MIT
// Title case, word by word. What a person set in capitals or wrote with digits is a name or a number, and
// stays.
#include <string.h>

#include "say/say.h"
#include "text/buf.h"
#include "text/order.h"
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
static bool is_letter(char c) {
    return is_upper(c) || is_lower(c) || (unsigned char)c >= 0x80;
}

enum { SMALL_LONGEST = 3, VERB_LONGEST = 8 };

// In small letters but for the first, whichever it is.
static bool is_word_of(const char *word, size_t size, const char *of) {
    char first = is_upper(word[0]) ? (char)(word[0] + ('a' - 'A')) : word[0];
    return first == of[0] && !strncmp(word + 1, of + 1, size - 1) && !of[size];
}

static const char *const small_words[] = {"on",  "of", "in", "to", "and", "by", "for",
                                          "the", "at", "or", "a",  "an",  "x"};

// A lone capital is a grade or a model ("Type A"), not an article.
static bool is_small_word(const char *word, size_t size) {
    if (!size || size > SMALL_LONGEST || (size == 1 && is_upper(word[0]))) return false;
    for (size_t i = 0; i < sizeof small_words / sizeof *small_words; i++)
        if (is_word_of(word, size, small_words[i])) return true;
    return false;
}

// One half of a hyphened word, or a whole one.
static void add_part(struct buf *out, const char *part, size_t size, bool first) {
    size_t at = 0;
    while (at < size && !is_letter(part[at]) && !is_digit(part[at])) at++;
    size_t end = size;
    while (end > at && !is_letter(part[end - 1]) && !is_digit(part[end - 1])) end--;
    bool keep = at == end;
    for (size_t i = at + 1; i < end; i++) keep = keep || is_upper(part[i]);
    for (size_t i = at; i < end; i++) keep = keep || is_digit(part[i]);
    if (keep) {
        buf_add(out, part, size);
        return;
    }
    buf_add(out, part, at);
    size_t next = at;
    uint32_t point = utf8_next(part, size, &next);
    bool low = !first && !at && is_small_word(part + at, end - at);
    char bytes[4];
    buf_add(out, bytes, utf8_put(low ? utf8_lower(point) : utf8_upper(point), bytes));
    buf_add(out, part + next, size - next);
}

// "12-piece" and "pre-1950" are words with a number; "kr-9" is a model and not to be touched.
static bool is_number_and_word(const char *word, size_t size) {
    size_t digits = 0, letters = 0;
    while (digits < size && is_digit(word[digits])) digits++;
    if (digits && digits < size && word[digits] == '-') {
        for (size_t i = digits + 1; i < size && is_lower(word[i]); i++) letters++;
        return letters >= 3;
    }
    while (letters < size && is_lower(word[letters])) letters++;
    if (letters < 3 || letters == size || word[letters] != '-') return false;
    for (size_t i = letters + 1; i < size && is_digit(word[i]); i++) digits++;
    return digits == 4;
}

static bool stays(const char *word, size_t size) {
    if (size >= 2 && word[1] == '/' && (word[0] == 'w' || word[0] == 'W')) return true; // w/ and w/o
    for (size_t i = 0; i < size; i++)
        if (is_digit(word[i])) return !is_number_and_word(word, size);
    return false;
}

// Most words are small letters throughout, of which nothing needs to be asked.
static bool is_plain(const char *word, size_t size) {
    for (size_t i = 0; i < size; i++)
        if (!is_lower(word[i])) return false;
    return true;
}

static void add_word(struct buf *out, const char *word, size_t size, bool first) {
    if (is_plain(word, size)) {
        size_t at = out->n;
        buf_add(out, word, size);
        if (first || !is_small_word(word, size)) out->at[at] = (char)(word[0] - ('a' - 'A'));
        return;
    }
    if (stays(word, size)) {
        buf_add(out, word, size);
        return;
    }
    size_t from = 0;
    for (size_t i = 0; i <= size; i++) {
        if (i < size && word[i] != '-' && word[i] != '/') continue;
        add_part(out, word + from, i - from, from == 0 && (first || word[0] == '('));
        if (i < size) buf_byte(out, word[i]);
        from = i + 1;
    }
}

// "On A Stand": after a small word a lone capital A is the article all the same.
static bool is_article_after(const char *word, size_t size, bool after_small) {
    return after_small && size == 1 && word[0] == 'A';
}

static bool is_figure(const char *word, size_t size) {
    for (size_t i = 0; i < size; i++)
        if (!is_digit(word[i]) && !strchr("./,-", word[i])) return false;
    return size > 0 && is_digit(word[size - 1]);
}

// The unit as titles write it, or NULL. Only the short form counts: in "2 cups" the cups are the thing.
static const char *unit_title(struct arena *arena, const char *word, size_t size) {
    const char *name = arena_copy(arena, word, size);
    size_t count;
    const struct unit *units = say_units(&count);
    for (size_t i = 0; i < count; i++)
        if (text_same(name, units[i].name) || text_same(name, units[i].text) ||
            text_same(name, units[i].title))
            return units[i].title;
    return text_same(name, "fl") || text_same(name, "troy") ? name : NULL;
}

// "Powers On": after such a verb "on" belongs to it and is no small word.
static bool takes_on(const char *word, size_t size) {
    static const char *const verbs[] = {"powers", "power", "turns", "switches", "lights"};
    if (!size || size > VERB_LONGEST) return false;
    for (size_t i = 0; i < sizeof verbs / sizeof *verbs; i++)
        if (is_word_of(word, size, verbs[i])) return true;
    return false;
}

static bool word_is_on(const char *word) {
    return (word[0] == 'o' || word[0] == 'O') && word[1] == 'n';
}

const char *say_title_case(struct arena *arena, const char *text) {
    struct buf out = buf_start(arena);
    bool first = true, figure = false, after_small = false, verb = false;
    for (size_t at = 0; text[at];) {
        size_t spaces = 0, size = 0;
        while (text[at + spaces] == ' ') spaces++;
        buf_add(&out, text + at, spaces);
        at += spaces;
        while (text[at + size] && text[at + size] != ' ') size++;
        if (!size) break;
        const char *unit = figure ? unit_title(arena, text + at, size) : NULL;
        if (unit)
            buf_text(&out, unit);
        else if (is_article_after(text + at, size, after_small))
            buf_byte(&out, 'a');
        else
            add_word(&out, text + at, size, first || (verb && size == 2 && word_is_on(text + at)));
        figure = is_figure(text + at, size) || (unit && (text_same(unit, "fl") || text_same(unit, "troy")));
        first = text[at + size - 1] == ':';
        after_small = is_small_word(text + at, size);
        verb = takes_on(text + at, size);
        at += size;
    }
    return out.at;
}
