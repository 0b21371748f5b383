// SPDX-License-Identifier: MIT
// Number of a noun phrase: finds the word or words that carry it, and leaves the rest as written.
// "set of keys" by its first word, "cup and saucer" by both, "salt and pepper shaker" by the last; "bowl 10
// in" not by the size.
#include <string.h>

#include "say/inflect.h"
#include "say/nouns.h"
#include "say/say.h"
#include "text/buf.h"
#include "text/order.h"
#include "text/utf8.h"

enum { WORDS_MOST = 24, WORD_ROOM = 16 }; // a longer phrase is a sentence; its number is left alone

struct span {
    size_t from, to;
};
struct phrase {
    const char *text;
    struct span words[WORDS_MOST];
    size_t count;
    bool bare[WORDS_MOST]; // no comma before the next word
    struct span heads[WORDS_MOST];
    size_t head_count;
};

static bool is_letter_or_digit(char c) {
    return (c >= 'a' && c <= 'z') || (c >= 'A' && c <= 'Z') || (c >= '0' && c <= '9') ||
           (unsigned char)c >= 0x80;
}

static bool split(struct phrase *p) {
    size_t at = 0;
    for (;;) {
        while (p->text[at] == ' ') at++;
        if (!p->text[at]) return p->count > 0;
        if (p->count == WORDS_MOST) return false;
        struct span *word = &p->words[p->count];
        word->from = at;
        at += strcspn(p->text + at, " ");
        word->to = at;
        p->bare[p->count++] = p->text[at - 1] != ',' && p->text[at - 1] != ';';
    }
}

// The word in small letters, without the stops around it; "" when it is too long to be a function word.
static void small(const struct phrase *p, size_t i, char to[WORD_ROOM]) {
    size_t from = p->words[i].from, size = p->words[i].to - from;
    while (size && (p->text[from + size - 1] == ',' || p->text[from + size - 1] == '.')) size--;
    if (size >= WORD_ROOM) size = 0;
    for (size_t k = 0; k < size; k++) {
        char c = p->text[from + k];
        to[k] = c >= 'A' && c <= 'Z' ? (char)(c + ('a' - 'A')) : c;
    }
    to[size] = '\0';
}

static bool one_of(const char *word, const char *const *list, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (text_same(word, list[i])) return true;
    return false;
}

static bool is_figure(const struct phrase *p, size_t i) {
    char c = p->text[p->words[i].from];
    return c >= '0' && c <= '9';
}

static bool is_measure_word(const struct phrase *p, size_t i) {
    static const char *const units[] = {"in", "inch", "inches", "ft", "cm",  "mm", "m",
                                        "oz", "lb",   "qt",     "pt", "gal", "x",  "by"};
    char word[WORD_ROOM];
    small(p, i, word);
    return is_figure(p, i) || one_of(word, units, sizeof units / sizeof *units);
}

// "Clip on earrings", "roll on bottle": a kind of thing, and on nothing.
static bool is_particle(const struct phrase *p, size_t i) {
    static const char *const verbs[] = {"clip", "roll",  "pull", "slip", "stick",
                                        "snap", "screw", "push", "iron"};
    char word[WORD_ROOM];
    small(p, i, word);
    if (i + 1 >= p->count || !text_same(word, "on")) return false;
    small(p, i - 1, word);
    return one_of(word, verbs, sizeof verbs / sizeof *verbs);
}

static bool is_joint(const struct phrase *p, size_t i) {
    static const char *const joints[] = {"of", "with", "without", "for",   "in", "on", "from",
                                         "by", "to",   "at",      "under", "w/", "w/o"};
    char word[WORD_ROOM];
    small(p, i, word);
    if (p->text[p->words[i].from] == '(') return true;
    return one_of(word, joints, sizeof joints / sizeof *joints) && !is_particle(p, i) &&
           !(is_figure(p, i - 1) && text_same(word, "in"));
}

static bool is_and(const struct phrase *p, size_t i) {
    char word[WORD_ROOM];
    small(p, i, word);
    return text_same(word, "and") || text_same(word, "&");
}

static bool is_stuff(const struct phrase *p, size_t i) {
    char word[WORD_ROOM];
    small(p, i, word);
    return nouns_has(NOUNS_STUFF, word);
}

static void add_head(struct phrase *p, size_t i) {
    struct span head = p->words[i];
    while (head.to > head.from && !is_letter_or_digit(p->text[head.to - 1])) head.to--;
    while (head.from < head.to && !is_letter_or_digit(p->text[head.from])) head.from++;
    if (head.from < head.to) p->heads[p->head_count++] = head;
}

// "knife, fork and spoon": every member single, none a color. Adds all heads but the last two.
static bool add_list(struct phrase *p, size_t first_comma, size_t and) {
    for (size_t i = first_comma; i < and; i++)
        if (is_stuff(p, i) || (i + 1 < and&&p->bare[i])) return false;
    for (size_t i = first_comma; i + 1 < and; i++) add_head(p, i);
    return true;
}

// How many words, from the first, belong to the noun and what stands before it.
static size_t noun_end(const struct phrase *p) {
    size_t end = 1;
    while (end < p->count && !is_joint(p, end)) end++;
    size_t figures = 0, cut = end;
    while (cut > 1 && is_measure_word(p, cut - 1)) figures += is_figure(p, --cut);
    return figures ? cut : end;
}

static void find_heads(struct phrase *p) {
    size_t end = noun_end(p), comma = end;
    for (size_t i = end; i-- > 0;)
        if (!p->bare[i] && i + 1 < end) comma = i;
    bool pair = end >= 3 && is_and(p, end - 2) && !is_stuff(p, end - 3) && !is_stuff(p, end - 1);
    if (comma < end && !(pair && add_list(p, comma, end - 2))) {
        add_head(p, comma);
        return;
    }
    if (pair) add_head(p, end - 3);
    add_head(p, end - 1);
}

// "field glasses" are one thing; "wine glasses" are several.
static bool is_eyewear(const struct phrase *p, size_t head) {
    static const char *const kinds[] = {"field",  "opera",   "reading", "eye",    "sun",
                                        "safety", "driving", "theater", "theatre"};
    struct span span = p->heads[head];
    if (span.to - span.from != 7) return false;
    for (size_t i = 1; i < p->count; i++)
        if (p->words[i].from == span.from) {
            char word[WORD_ROOM], before[WORD_ROOM];
            small(p, i, word);
            small(p, i - 1, before);
            return text_same(word, "glasses") && one_of(before, kinds, sizeof kinds / sizeof *kinds);
        }
    return false;
}

typedef const char *change_word(struct arena *arena, const char *word, size_t size);

// The size of what is one word of letters and digits, as most are; 0 where it is more.
static size_t lone_word(const char *noun) {
    size_t size = 0;
    while (is_letter_or_digit(noun[size])) size++;
    return noun[size] ? 0 : size;
}

static const char *change_heads(struct arena *arena, const char *noun, change_word *change) {
    size_t lone = lone_word(noun);
    if (lone) return change(arena, noun, lone);
    struct phrase p = {.text = noun};
    if (!split(&p)) return noun;
    find_heads(&p);
    struct buf out = buf_start(arena);
    size_t done = 0;
    for (size_t i = 0; i < p.head_count; i++) {
        if (is_eyewear(&p, i)) continue;
        buf_add(&out, noun + done, p.heads[i].from - done);
        buf_text(&out, change(arena, noun + p.heads[i].from, p.heads[i].to - p.heads[i].from));
        done = p.heads[i].to;
    }
    buf_text(&out, noun + done);
    return out.at;
}

const char *say_plural(struct arena *arena, const char *noun) {
    return change_heads(arena, noun, inflect_plural);
}

const char *say_singular(struct arena *arena, const char *noun) {
    return change_heads(arena, noun, inflect_singular);
}

bool say_is_plural(const char *noun) {
    struct phrase p = {.text = noun};
    if (!split(&p)) return false;
    find_heads(&p);
    for (size_t i = 0; i < p.head_count; i++) {
        struct span head = p.heads[i];
        if (is_eyewear(&p, i) || inflect_is_plural(noun + head.from, head.to - head.from)) return true;
    }
    return false;
}

const char *say_item_of(struct arena *arena, const char *family) {
    if (strstr(family, " and ")) return "household item";
    const char *one = say_singular(arena, family);
    return text_same(one, family) ? arena_format(arena, "%s item", family) : one;
}

const char *say_stem(struct arena *arena, const char *word) {
    const char *folded = utf8_fold(arena, word);
    return inflect_singular(arena, folded, strlen(folded));
}
