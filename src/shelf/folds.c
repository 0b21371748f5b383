// SPDX-License-Identifier: MIT
// Two titles are compared by their words, not by their letters.
#include <string.h>

#include "say/say.h"
#include "shelf/propose.h"
#include "text/utf8.h"

// One form of each unit, for comparing only.
static const char *const UNITS[][2] = {{"inch", "in"},
                                       {"inches", "in"},
                                       {"foot", "ft"},
                                       {"feet", "ft"},
                                       {"yard", "yd"},
                                       {"yards", "yd"},
                                       {"yds", "yd"},
                                       {"pound", "lb"},
                                       {"pounds", "lb"},
                                       {"lbs", "lb"},
                                       {"ounce", "oz"},
                                       {"ounces", "oz"},
                                       {"quart", "qt"},
                                       {"quarts", "qt"},
                                       {"qts", "qt"},
                                       {"pint", "pt"},
                                       {"pints", "pt"},
                                       {"pts", "pt"},
                                       {"gallon", "gal"},
                                       {"gallons", "gal"},
                                       {"gals", "gal"},
                                       {"litre", "l"},
                                       {"litres", "l"},
                                       {"liter", "l"},
                                       {"liters", "l"},
                                       {"metre", "m"},
                                       {"metres", "m"},
                                       {"meter", "m"},
                                       {"meters", "m"},
                                       {"grams", "g"},
                                       {"gram", "g"},
                                       {"volt", "v"},
                                       {"volts", "v"},
                                       {"watt", "w"},
                                       {"watts", "w"},
                                       {"in", "in"},
                                       {"ft", "ft"},
                                       {"yd", "yd"},
                                       {"mm", "mm"},
                                       {"cm", "cm"},
                                       {"m", "m"},
                                       {"qt", "qt"},
                                       {"pt", "pt"},
                                       {"gal", "gal"},
                                       {"oz", "oz"},
                                       {"lb", "lb"},
                                       {"kg", "kg"},
                                       {"g", "g"},
                                       {"l", "l"},
                                       {"ml", "ml"},
                                       {"cl", "cl"},
                                       {"v", "v"},
                                       {"w", "w"},
                                       {"hp", "hp"},
                                       {"kw", "kw"},
                                       {"amp", "amp"},
                                       {"amps", "amp"},
                                       {"fl", "fl"},
                                       {"cwt", "cwt"},
                                       {"kva", "kva"},
                                       {"centimeters", "cm"},
                                       {"centimetres", "cm"},
                                       {"millimeters", "mm"},
                                       {"millimetres", "mm"}};

static const char *unit_of(const char *fold) {
    for (size_t i = 0; i < sizeof UNITS / sizeof *UNITS; i++)
        if (!strcmp(UNITS[i][0], fold)) return UNITS[i][1];
    return NULL;
}

bool fold_is_figure(const char *fold) {
    return *fold >= '0' && *fold <= '9' && strspn(fold, "0123456789./") == strlen(fold);
}

bool fold_is_unit(const char *fold) {
    return unit_of(fold) != NULL;
}

static void add(struct folds *f, const char *fold) {
    f->at[f->count++] = fold;
}

// "1/2" and "0.5" are one figure.
static const char *figure_of(const char *word) {
    static const char *const halves[][2] = {{"1/2", "0.5"},   {"1/4", "0.25"},  {"3/4", "0.75"},
                                            {"1/8", "0.125"}, {"3/8", "0.375"}, {"5/8", "0.625"},
                                            {"7/8", "0.875"}};
    for (size_t i = 0; i < sizeof halves / sizeof *halves; i++)
        if (!strcmp(halves[i][0], word)) return halves[i][1];
    return word;
}

// A figure and what follows it up to the next space: word_next() ends at a stroke.
static const char *next_fold(struct arena *arena, const char *text, size_t *at) {
    const char *word = word_next(arena, text, at);
    if (!word || !fold_is_figure(word) || text[*at] != '/' || !strchr("248", text[*at + 1]) ||
        !text[*at + 1] || (text[*at + 2] >= '0' && text[*at + 2] <= '9'))
        return word;
    const char *all = arena_format(arena, "%s/%c", word, text[*at + 1]);
    *at += 2;
    return figure_of(all);
}

// Was what ends at `at` written as "1/2", with a space before it?
static bool is_fraction(const char *text, size_t at) {
    return at > 3 && text[at - 2] == '/' && text[at - 4] == ' ';
}

struct folds folds_of(struct arena *arena, const char *text) {
    // No word without a letter, and two more at most behind a figure.
    struct folds f = {arena_array(arena, 2 * strlen(text) + 2, sizeof *f.at), 0};
    size_t at = 0;
    for (const char *word; (word = next_fold(arena, text, &at));) {
        // "9 1/2" is 9.5.
        bool part = word[0] == '0' && word[1] == '.' && f.count;
        const char *whole = part ? f.at[f.count - 1] : "";
        if (part && *whole && strspn(whole, "0123456789") == strlen(whole) && is_fraction(text, at)) {
            f.at[f.count - 1] = arena_format(arena, "%s%s", whole, word + 1);
            continue;
        }
        size_t figure = strspn(word, "0123456789./");
        bool behind = f.count && fold_is_figure(f.at[f.count - 1]);
        const char *unit = behind ? unit_of(word) : figure && word[figure] ? unit_of(word + figure) : NULL;
        if (unit && !behind) add(&f, arena_copy(arena, word, figure));
        add(&f, unit ? unit : word);
        if (fold_is_figure(word) && (text[at] == '"' || text[at] == '\''))
            add(&f, text[at] == '"' ? "in" : "ft");
        if (text[at] == '?') add(&f, "?");
    }
    return f;
}

bool folds_hold(const struct folds *folds, const char *word) {
    for (size_t i = 0; i < folds->count; i++)
        if (!strcmp(folds->at[i], word)) return true;
    return false;
}

bool folds_run(const struct folds *folds, const struct folds *run) {
    for (size_t i = 0; i + run->count <= folds->count; i++) {
        size_t k = 0;
        while (k < run->count && !strcmp(folds->at[i + k], run->at[k])) k++;
        if (k == run->count) return true;
    }
    return false;
}

struct folds kept_folds(struct arena *arena, const struct kept_words *kept, size_t i) {
    if (kept->folds) return kept->folds[i];
    const struct kept_word *w = &kept->items[i];
    return folds_of(arena, arena_copy(arena, kept->title + w->from, w->to - w->from));
}

// A bare 12 is not told by "12 in tall".
static bool tells_figure(const struct folds *folds, const char *figure) {
    for (size_t i = 0; i < folds->count; i++)
        if (!strcmp(folds->at[i], figure) && (i + 1 == folds->count || !unit_of(folds->at[i + 1])))
            return true;
    return false;
}

// "18x12" by "18 x 12 in", "x4" by "Lot of 4".
static bool tells_product(struct arena *arena, const struct folds *folds, const char *word) {
    size_t first = strspn(word, "0123456789.");
    if (word[first] != 'x') return false;
    size_t second = strspn(word + first + 1, "0123456789.");
    if (word[first + 1 + second] || !second) return false;
    const char *at[3];
    struct folds own = {at, 0};
    add(&own, first ? arena_copy(arena, word, first) : "of");
    if (first) add(&own, "x");
    add(&own, word + first + 1);
    return folds_run(folds, &own);
}

// "Childrens" and "1930's", with the mark or without.
static bool tells_marked(const struct folds *folds, const char *word) {
    for (size_t i = 0; i < folds->count; i++) {
        const char *a = folds->at[i], *b = word;
        for (; *a || *b; a++, b++) {
            while (*a == '\'') a++;
            while (*b == '\'') b++;
            if (*a != *b || !*a) break;
        }
        if (!*a && !*b) return true;
    }
    return false;
}

// Letter for letter, in another number, or in the spelling of the other side of the ocean.
static bool tells_word(struct arena *arena, const struct kept_words *kept, const struct folds *folds,
                       const char *word, bool exact) {
    if (folds_hold(folds, word) || tells_marked(folds, word)) return true;
    const char *other = say_spelling(arena, kept->variants, word, kept->locale);
    if (folds_hold(folds, other)) return true;
    if (exact) return false;
    size_t size = strlen(word);
    if (size > 5 && !strcmp(word + size - 2, "en") && folds_hold(folds, arena_copy(arena, word, size - 2)))
        return true; // "wooden"
    const char *stem = say_stem(arena, word);
    for (size_t i = 0; i < folds->count; i++)
        if (!strcmp(say_stem(arena, folds->at[i]), stem)) return true;
    return false;
}

// "Enamelled" by "Enamel", "Leaded" by "Lead".
static bool tells_kin(const struct folds *folds, const char *word) {
    enum { STEM_LEAST = 4, ENDING_MOST = 3 };
    size_t size = strlen(word);
    for (size_t i = 0; i < folds->count; i++) {
        size_t stem = strlen(folds->at[i]);
        if (stem >= STEM_LEAST && stem < size && size - stem <= ENDING_MOST &&
            !strncmp(word, folds->at[i], stem))
            return true;
    }
    return false;
}

static bool tells_instead(struct arena *arena, const struct kept_words *kept, const struct kept_word *w,
                          const struct folds *folds) {
    if (!w->soft || !w->instead || !w->phrase) return false;
    struct folds own = folds_of(arena, w->instead);
    for (size_t i = 0; i < own.count; i++)
        if (!word_is_free(own.at[i]) && !tells_word(arena, kept, folds, own.at[i], false)) return false;
    return true;
}

bool kept_is_missing(struct arena *arena, const struct kept_words *kept, size_t i,
                     const struct folds *folds) {
    const struct kept_word *w = &kept->items[i];
    if (!w->must || (w->soft && i + kept->gives_way >= kept->count)) return false;
    struct folds own = kept_folds(arena, kept, i);
    bool doubt = own.count && !strcmp(own.at[own.count - 1], "?");
    if (w->several || doubt || (own.count == 2 && fold_is_figure(own.at[0]))) return !folds_run(folds, &own);
    if (own.count == 1 && fold_is_figure(own.at[0])) return !tells_figure(folds, own.at[0]);
    if (tells_instead(arena, kept, w, folds)) return false;
    if (w->soft && own.count == 1 && tells_kin(folds, own.at[0])) return false;
    for (size_t k = 0; k < own.count; k++)
        if (!tells_word(arena, kept, folds, own.at[k], w->name || !w->type) &&
            !tells_product(arena, folds, own.at[k]) &&
            (!word_is_free(own.at[k]) || strpbrk(own.at[k], "0123456789")))
            return true;
    return false;
}

const char *words_beyond(struct arena *arena, const char *a, const char *b) {
    struct folds folds = folds_of(arena, b);
    struct buf out = buf_start(arena);
    for (size_t at = 0; a[at];) {
        at += strspn(a + at, " ");
        size_t end = at + strcspn(a + at, " ");
        const char *word = arena_copy(arena, a + at, end - at);
        struct folds own = folds_of(arena, word);
        const char *unit = own.count == 1 ? unit_of(own.at[0]) : NULL;
        bool there = true;
        for (size_t i = 0; i < own.count; i++)
            there = there && (folds_hold(&folds, own.at[i]) || (unit && folds_hold(&folds, unit)));
        if (!there) buf_format(&out, "%s%s", out.n ? " " : "", word);
        at = end;
    }
    return out.at;
}
