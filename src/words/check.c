// SPDX-License-Identifier: MIT
// Walks a text chunk by chunk (what stands between spaces), a chunk compound by compound (letters, digits,
// hyphens and apostrophes), a compound word by word. What a seller read off the item, and what is no English,
// is passed over: a false alarm costs more trust than a missed slip.
#include "words/speller.h"

#include <string.h>

#include "text/utf8.h"
#include "words/parts.h"

struct walk {
    struct speller *speller;
    struct diags *diags;
    const struct speller_text *text;
    struct misspellings found;
    size_t room;
    bool starts; // the next word stands where a sentence or a line starts
};

struct shape { // of the signs of a word
    size_t letters, capitals, digits;
    bool inner_capital; // after a small letter
    bool foreign;       // a letter of another script, or an underscore
};

static struct shape shape_of(const char *text, size_t size) {
    struct shape shape = {0};
    bool after_small = false;
    for (size_t at = 0; at < size;) {
        uint32_t point = utf8_next(text, size, &at);
        if (utf8_is_digit(point)) shape.digits++;
        if (point == '_') shape.foreign = true;
        if (!utf8_is_letter(point)) continue;
        bool capital = utf8_lower(point) != point;
        shape.letters++;
        if (point > 0x24F && point < 0x1E00) shape.foreign = true;
        if (point > 0x1EFF) shape.foreign = true;
        if (capital) shape.capitals++;
        if (capital && after_small) shape.inner_capital = true;
        after_small = !capital;
    }
    return shape;
}

static bool same_letters(const char *a, const char *b, size_t size) {
    for (size_t i = 0; i < size; i++) {
        char x = a[i], y = b[i];
        parts_lower(&x, 1);
        parts_lower(&y, 1);
        if (x != y) return false;
    }
    return true;
}

static bool is_word_byte(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
           (unsigned char)c >= 0x80;
}

// The word stands in the exempt text as a whole word.
static bool stands_in(const char *exempt, const char *word, size_t size) {
    size_t length = strlen(exempt);
    for (size_t at = 0; at + size <= length; at++) {
        bool starts = !at || !is_word_byte(exempt[at - 1]), ends = !is_word_byte(exempt[at + size]);
        if (starts && ends && same_letters(exempt + at, word, size)) return true;
    }
    return false;
}

static bool is_exempt(const struct walk *w, const char *word, size_t size) {
    for (size_t i = 0; i < w->text->exempt_count; i++)
        if (stands_in(w->text->exempt[i], word, size)) return true;
    return false;
}

static size_t apostrophe(const char *text, size_t size, size_t at) {
    if (text[at] == '\'') return 1;
    bool curly =
        size - at >= 3 && (!memcmp(text + at, "\xE2\x80\x99", 3) || !memcmp(text + at, "\xE2\x80\x98", 3));
    return curly ? 3 : 0;
}

// Takes apostrophes off both ends, and a possessive ending off the word.
static void trim(const char *text, size_t *from, size_t *to) {
    while (*from < *to && apostrophe(text, *to, *from)) *from += apostrophe(text, *to, *from);
    while (*to > *from && text[*to - 1] == '\'') --*to;
    while (*to - *from >= 3 && apostrophe(text, *to, *to - 3) == 3) *to -= 3;
    size_t size = *to - *from;
    if (size > 3 && (text[*to - 1] == 's' || text[*to - 1] == 'S')) {
        if (text[*to - 2] == '\'')
            *to -= 2;
        else if (size > 5 && apostrophe(text, *to, *to - 4) == 3)
            *to -= 4;
    }
}

static void report(struct walk *w, size_t from, size_t to, bool name_like) {
    w->found.items =
        arena_grow(w->diags->arena, w->found.items, w->found.count, &w->room, sizeof *w->found.items);
    w->found.items[w->found.count++] = (struct misspelling){from, to, name_like};
}

// As written, or without the marks that may stand around it; a dictionary is asked last.
static bool is_known(const struct walk *w, size_t whole_from, size_t whole_to, size_t from, size_t to) {
    const char *text = w->text->text, *word = text + from;
    size_t size = to - from;
    return parts_listed(w->speller, word, size) || is_exempt(w, word, size) ||
           speller_knows(w->speller, text + whole_from, whole_to - whole_from, w->diags) ||
           (size != whole_to - whole_from && speller_knows(w->speller, word, size, w->diags));
}

static void check_word(struct walk *w, size_t from, size_t to) {
    const char *text = w->text->text;
    bool starts = w->starts;
    w->starts = false;
    size_t whole_from = from, whole_to = to;
    trim(text, &from, &to);
    struct shape shape = shape_of(text + from, to - from);
    if (shape.letters < 2 || shape.digits || shape.foreign || shape.inner_capital) return;
    if (shape.capitals == shape.letters) return;
    if (is_known(w, whole_from, whole_to, from, to)) return;
    report(w, from, to, shape.capitals > 0 && !starts);
}

// Parts before a hyphen that are no words by themselves.
static bool is_fore_part(const char *text, size_t size) {
    static const char *const parts[] = {
        "anti",  "bi",   "co",    "counter", "de",  "electro", "ex",    "hydro", "inter", "mid", "mini",
        "mis",   "mono", "multi", "neo",     "non", "para",    "photo", "poly",  "pre",   "pro", "pseudo",
        "quasi", "re",   "retro", "semi",    "sub", "tri",     "ultra", "un",    "uni"};
    for (size_t i = 0; i < sizeof parts / sizeof *parts; i++)
        if (size == strlen(parts[i]) && same_letters(text, parts[i], size)) return true;
    return false;
}

static void check_compound(struct walk *w, size_t from, size_t to) {
    const char *text = w->text->text;
    struct shape shape = shape_of(text + from, to - from);
    bool hyphens = memchr(text + from, '-', to - from) != NULL;
    if (shape.foreign) return;
    if (!hyphens || (!shape.digits && is_known(w, from, to, from, to))) {
        if (!hyphens) check_word(w, from, to);
        w->starts = false;
        return;
    }
    // "12-inch-wide" is a size with words behind it; "AB-12-cd" is a code.
    if (shape.digits && (text[from] < '0' || text[from] > '9')) return;
    for (size_t at = from; at < to;) {
        const char *hyphen = memchr(text + at, '-', to - at);
        size_t end = hyphen ? (size_t)(hyphen - text) : to;
        bool fore = hyphen && is_fore_part(text + at, end - at);
        if (end > at && !fore) check_word(w, at, end);
        at = end + 1;
    }
    w->starts = false;
}

static bool is_compound_sign(uint32_t point) {
    return utf8_is_letter(point) || utf8_is_digit(point) || point == '-' || point == '_' || point == '\'' ||
           point == 0x2019 || point == 0x2018 || (point >= 0x300 && point <= 0x36F);
}

// An address of the web or of mail, a file's name: letters on both sides of a stop that no capital follows.
static bool is_address(const char *text, size_t size) {
    if (size > 4 && same_letters(text, "www.", 4)) return true;
    for (size_t i = 0; i + 1 < size; i++) {
        if (text[i] == '@' || (text[i] == ':' && text[i + 1] == '/')) return true;
        bool stop = text[i] == '.' && i && is_word_byte(text[i - 1]);
        if (stop && text[i + 1] >= 'a' && text[i + 1] <= 'z') return true;
    }
    return false;
}

static void check_chunk(struct walk *w, size_t from, size_t to) {
    const char *text = w->text->text;
    if (is_address(text + from, to - from)) {
        w->starts = false;
        return;
    }
    size_t at = from, start = from;
    while (at < to) {
        size_t sign = at;
        uint32_t point = utf8_next(text, to, &at);
        if (is_compound_sign(point)) continue;
        if (sign > start) check_compound(w, start, sign);
        if (point == '.' || point == '!' || point == '?' || point == ':') w->starts = true;
        start = at;
    }
    if (to > start) check_compound(w, start, to);
}

// The end of a passage in double quotes that starts at `at`, or `at` when none does. An inch mark starts
// none: a quote stands after a space or a bracket and before a sign, and ends on its own line.
static size_t quoted_end(const char *text, size_t size, size_t at) {
    bool curly = size - at >= 3 && !memcmp(text + at, "\xE2\x80\x9C", 3);
    if (!curly && text[at] != '"') return at;
    bool opens = !at || strchr(" \t\n([:;,", text[at - 1]);
    size_t inner = at + (curly ? 3 : 1);
    if ((!opens && !curly) || inner >= size || text[inner] == ' ') return at;
    for (size_t i = inner; i < size && text[i] != '\n'; i++) {
        if (!curly && text[i] == '"') return i + 1;
        if (curly && size - i >= 3 && !memcmp(text + i, "\xE2\x80\x9D", 3)) return i + 3;
    }
    return at;
}

static void walk_text(struct walk *w) {
    const char *text = w->text->text;
    size_t size = w->text->size, chunk = 0;
    for (size_t at = 0; at < size;) {
        size_t end = quoted_end(text, size, at), sign = at;
        if (end > at) {
            if (at > chunk) check_chunk(w, chunk, at);
            w->starts = false;
            chunk = at = end;
            continue;
        }
        uint32_t point = utf8_next(text, size, &at);
        if (!utf8_is_space(point) && point != '\n') continue;
        if (sign > chunk) check_chunk(w, chunk, sign);
        if (point == '\n') w->starts = true;
        chunk = at;
    }
    if (size > chunk) check_chunk(w, chunk, size);
}

struct misspellings speller_check(struct speller *speller, const struct speller_text *text,
                                  struct diags *diags) {
    struct walk w = {.speller = speller, .diags = diags, .text = text, .starts = true};
    walk_text(&w);
    return w.found;
}
