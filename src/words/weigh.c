// SPDX-License-Identifier: MIT
// A table of least costs, filled row by row. `D[i][j]` is the cost of the first i letters typed for the first
// j meant; a step looks back at most three rows, for a far swap. The weights were fitted to one half of a
// public list of slips and are tested on the other.
#include "words/weigh.h"

#include <stdbool.h>
#include <string.h>

const struct edit_weights EDIT_WEIGHTS = {
    .substitute = 130,
    .vowel = 100,
    .sound = 80,
    .neighbor = 115,
    .missing = 65,
    .missing_double = 20,
    .missing_vowel = 50,
    .missing_silent = 55,
    .extra = 125,
    .extra_double = 55,
    .extra_vowel = 85,
    .extra_neighbor = 105,
    .swap = 60,
    .swap_vowels = 20,
    .swap_far = 100,
    .sounds_alike = 90,
    .first = 30,
    .last = 10,
};

static bool is_vowel(char c) {
    return c == 'a' || c == 'e' || c == 'i' || c == 'o' || c == 'u' || c == 'y';
}

static bool is_pair(const char *const *pairs, size_t count, char a, char b) {
    for (size_t i = 0; i < count; i++)
        if ((pairs[i][0] == a && pairs[i][1] == b) || (pairs[i][0] == b && pairs[i][1] == a)) return true;
    return false;
}

static bool sounds_like(char a, char b) {
    static const char *const pairs[] = {"ck", "cs", "sz", "gj", "fv", "td", "mn", "bp", "kq", "cq",
                                        "xs", "xz", "vw", "iy", "tc", "ts", "gc", "lr", "bv"};
    return is_pair(pairs, sizeof pairs / sizeof *pairs, a, b);
}

// Next to one another on a keyboard, in a row or across two rows.
static bool is_neighbor(char a, char b) {
    static const char *const rows[] = {"qwertyuiop", "asdfghjkl", "zxcvbnm"};
    int row[2] = {-1, -1}, column[2] = {0, 0};
    const char letters[2] = {a, b};
    for (int which = 0; which < 2; which++)
        for (int r = 0; r < 3; r++) {
            const char *at = letters[which] ? strchr(rows[r], letters[which]) : NULL;
            if (at) row[which] = r, column[which] = (int)(at - rows[r]);
        }
    if (row[0] < 0 || row[1] < 0) return false;
    int down = row[1] - row[0], right = column[1] - column[0];
    if (down == 0) return right == 1 || right == -1;
    // Each row stands half a key to the right of the one above it.
    if (down == 1) return right == 0 || right == -1;
    return down == -1 && (right == 0 || right == 1);
}

struct weighing {
    const struct edit_weights *w;
    const char *typed, *meant;
    size_t typed_size, meant_size;
    short cost[WEIGH_LONGEST + 1][WEIGH_LONGEST + 1];
};

static char letter(const char *word, size_t size, size_t at) {
    return at < size ? word[at] : '\0';
}

// The letter meant[j], left out, is one that is not heard or hardly so.
static bool is_silent(const struct weighing *g, size_t j) {
    char c = g->meant[j], before = j ? g->meant[j - 1] : '\0', after = letter(g->meant, g->meant_size, j + 1);
    switch (c) {
    case 'h':
        return before && strchr("cgrtwps", before);
    case 'e':
        return !after || (after == 'l' && j + 2 == g->meant_size) || strchr("dms", after);
    case 'u':
        return before == 'g' || before == 'q' || before == 'o';
    case 'c':
        return before == 's' || after == 'k' || after == 'q';
    case 'k':
        return before == 'c' || (!j && after == 'n');
    case 'g':
        return after == 'n' || after == 'h';
    case 'd':
        return after == 'g' || after == 'j';
    case 't':
        return after == 'c' || before == 's';
    case 'w':
        return !j && after == 'r';
    case 'p':
        return !j && (after == 's' || after == 'n' || after == 't');
    case 'b':
        return before == 'm' || after == 't';
    case 'n':
        return before == 'm' || after == 'm';
    default:
        return false;
    }
}

static int missing_cost(const struct weighing *g, size_t j) {
    char c = g->meant[j], before = j ? g->meant[j - 1] : '\0', after = letter(g->meant, g->meant_size, j + 1);
    int cost = g->w->missing;
    if (c == before || c == after)
        cost = g->w->missing_double;
    else if (is_silent(g, j))
        cost = g->w->missing_silent;
    else if (is_vowel(c))
        cost = g->w->missing_vowel;
    if (j == 0) cost += g->w->first;
    return j + 1 == g->meant_size ? cost + g->w->last : cost;
}

static int extra_cost(const struct weighing *g, size_t i) {
    char c = g->typed[i], before = i ? g->typed[i - 1] : '\0', after = letter(g->typed, g->typed_size, i + 1);
    int cost = g->w->extra;
    if (c == before || c == after)
        cost = g->w->extra_double;
    else if (is_neighbor(c, before) || is_neighbor(c, after))
        cost = g->w->extra_neighbor;
    else if (is_vowel(c))
        cost = g->w->extra_vowel;
    if (i == 0) cost += g->w->first;
    return i + 1 == g->typed_size ? cost + g->w->last : cost;
}

static int substitute_cost(const struct weighing *g, size_t i, size_t j) {
    char a = g->typed[i], b = g->meant[j];
    if (a == b) return 0;
    int cost = g->w->substitute;
    if (is_vowel(a) && is_vowel(b))
        cost = g->w->vowel;
    else if (sounds_like(a, b))
        cost = g->w->sound;
    else if (is_neighbor(a, b))
        cost = g->w->neighbor;
    if (i == 0 && j == 0) cost += g->w->first;
    return i + 1 == g->typed_size && j + 1 == g->meant_size ? cost + g->w->last : cost;
}

static int swap_cost(const struct weighing *g, size_t i) {
    bool vowels = is_vowel(g->typed[i]) && is_vowel(g->typed[i - 1]);
    return (vowels ? g->w->swap_vowels : g->w->swap) + (i == 1 ? g->w->first / 2 : 0);
}

// Spellings of one sound, as typed and as meant.
struct alike {
    const char *typed, *meant;
    unsigned char typed_size, meant_size;
};

#define ALIKE(typed, meant)                                                                                  \
    { typed, meant, sizeof(typed) - 1, sizeof(meant) - 1 }
static const struct alike ALIKES[] = {
    ALIKE("f", "ph"),      ALIKE("ph", "f"),   ALIKE("f", "gh"),      ALIKE("uf", "ough"), ALIKE("x", "cs"),
    ALIKE("ks", "x"),      ALIKE("cs", "x"),   ALIKE("cks", "x"),     ALIKE("cc", "x"),    ALIKE("x", "cc"),
    ALIKE("ks", "cs"),     ALIKE("k", "que"),  ALIKE("kw", "qu"),     ALIKE("ck", "qu"),   ALIKE("sh", "ti"),
    ALIKE("sh", "ci"),     ALIKE("er", "re"),  ALIKE("el", "le"),     ALIKE("ei", "a"),    ALIKE("ee", "ea"),
    ALIKE("ious", "eous"), ALIKE("tch", "ch"), ALIKE("shun", "tion"),
};

static int alike_cost(const struct weighing *g, size_t i, size_t j, int best) {
    for (size_t n = 0; n < sizeof ALIKES / sizeof *ALIKES; n++) {
        const struct alike *a = &ALIKES[n];
        size_t t = a->typed_size, m = a->meant_size;
        if (a->typed[t - 1] != g->typed[i - 1] || a->meant[m - 1] != g->meant[j - 1] || t > i || m > j)
            continue;
        if (memcmp(g->typed + i - t, a->typed, t) != 0 || memcmp(g->meant + j - m, a->meant, m) != 0)
            continue;
        int cost = g->cost[i - t][j - m] + g->w->sounds_alike;
        if (cost < best) best = cost;
    }
    return best;
}

static int least(int a, int b) {
    return a < b ? a : b;
}

static int cell(const struct weighing *g, size_t i, size_t j) {
    const char *t = g->typed, *m = g->meant;
    int best = g->cost[i - 1][j - 1] + substitute_cost(g, i - 1, j - 1);
    best = least(best, g->cost[i - 1][j] + extra_cost(g, i - 1));
    best = least(best, g->cost[i][j - 1] + missing_cost(g, j - 1));
    if (i > 1 && j > 1 && t[i - 1] == m[j - 2] && t[i - 2] == m[j - 1] && t[i - 1] != t[i - 2])
        best = least(best, g->cost[i - 2][j - 2] + swap_cost(g, i - 1));
    if (i > 2 && j > 2 && t[i - 1] == m[j - 3] && t[i - 3] == m[j - 1] && t[i - 2] == m[j - 2] &&
        t[i - 1] != t[i - 3])
        best = least(best, g->cost[i - 3][j - 3] + g->w->swap_far);
    return alike_cost(g, i, j, best);
}

int weigh_edits(const struct edit_weights *weights, const char *typed, size_t typed_size, const char *meant,
                size_t meant_size) {
    if (typed_size > WEIGH_LONGEST || meant_size > WEIGH_LONGEST) return WEIGH_TOO_FAR;
    struct weighing g = {
        .w = weights, .typed = typed, .meant = meant, .typed_size = typed_size, .meant_size = meant_size};
    for (size_t j = 1; j <= meant_size; j++)
        g.cost[0][j] = (short)(g.cost[0][j - 1] + missing_cost(&g, j - 1));
    for (size_t i = 1; i <= typed_size; i++) {
        g.cost[i][0] = (short)(g.cost[i - 1][0] + extra_cost(&g, i - 1));
        for (size_t j = 1; j <= meant_size; j++) g.cost[i][j] = (short)cell(&g, i, j);
    }
    return g.cost[typed_size][meant_size];
}
