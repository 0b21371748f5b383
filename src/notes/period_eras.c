// SPDX-License-Identifier: MIT
// Eras by name: reigns, dynasties, wars, styles that stand for years. Nearly all are from memory, so they are
// told as the years of the era that is named, and allow no word.
#include <string.h>

#include "notes/period.h"
#include "notes/period_pieces.h"

struct era {
    const char *name;
    int from, to;
    int early_to, late_from; // where custom parts it; 0: thirds are not told
    bool needs_noun;         // an everyday word without "period", "era", "dynasty" behind it
};

static const struct era eras[] = {
    {"tudor", 1485, 1603, 0, 0, false},
    {"elizabethan", 1558, 1603, 0, 0, false},
    {"jacobean", 1603, 1625, 0, 0, false},
    {"restoration", 1660, 1689, 0, 0, true},
    {"charles ii", 1660, 1685, 0, 0, false},
    {"william and mary", 1689, 1702, 0, 0, false},
    {"queen anne", 1702, 1714, 0, 0, false},
    {"georgian", 1714, 1837, 1760, 1790, false},
    {"george iii", 1760, 1820, 0, 0, false},
    {"george iv", 1820, 1830, 0, 0, false},
    {"george ii", 1727, 1760, 0, 0, false},
    {"george i", 1714, 1727, 0, 0, false},
    {"george vi", 1936, 1952, 0, 0, false},
    {"george v", 1910, 1936, 0, 0, false},
    {"regency", 1811, 1820, 0, 0, false},
    {"william iv", 1830, 1837, 0, 0, false},
    {"victorian", 1837, 1901, 1850, 1876, false},
    {"queen victoria", 1837, 1901, 0, 0, false},
    {"edwardian", 1901, 1910, 0, 0, false},
    {"edward vii", 1901, 1910, 0, 0, false},
    {"louis xiii", 1610, 1643, 0, 0, false},
    {"louis xiv", 1643, 1715, 0, 0, false},
    {"louis xvi", 1774, 1792, 0, 0, false},
    {"louis xv", 1715, 1774, 0, 0, false},
    {"second empire", 1852, 1870, 0, 0, false},
    {"empire", 1804, 1815, 0, 0, true},
    {"biedermeier", 1815, 1848, 0, 0, false},
    {"weimar", 1919, 1933, 0, 0, true},
    {"federal", 1788, 1823, 0, 0, true},
    {"civil war", 1861, 1865, 0, 0, true},
    {"gilded age", 1870, 1900, 0, 0, false},
    {"depression", 1929, 1939, 0, 0, true},
    {"interwar", 1918, 1939, 0, 0, false},
    {"inter - war", 1918, 1939, 0, 0, false},
    {"between wars", 1918, 1939, 0, 0, false},
    {"between the wars", 1918, 1939, 0, 0, false},
    {"between the world wars", 1918, 1939, 0, 0, false},
    {"between the two world wars", 1918, 1939, 0, 0, false},
    {"postwar", 1945, 0, 1955, 0, false},
    {"prewar", 0, 1939, 0, 0, false},
    {"turn of the century", 1890, 1910, 0, 0, false},
    {"turn of the last century", 1890, 1910, 0, 0, false},
    {"fin de siecle", 1890, 1910, 0, 0, false},
    {"fin - de - siecle", 1890, 1910, 0, 0, false},
    {"art deco", 1920, 1939, 0, 0, false},
    {"art nouveau", 1890, 1910, 0, 0, false},
    {"muromachi", 1336, 1573, 0, 0, false},
    {"momoyama", 1568, 1615, 0, 0, false},
    {"edo", 1615, 1868, 0, 0, false},
    {"meiji", 1868, 1912, 0, 0, false},
    {"taisho", 1912, 1926, 0, 0, false},
    {"showa", 1926, 1989, 0, 0, false},
    {"joseon", 1392, 1910, 0, 0, false},
    {"song", 960, 1279, 0, 0, true},
    {"yuan", 1271, 1368, 0, 0, true},
    {"ming", 1368, 1644, 0, 0, false},
    {"qing", 1644, 1911, 0, 0, false},
    {"wanli", 1573, 1620, 0, 0, false},
    {"kangxi", 1662, 1722, 0, 0, false},
    {"yongzheng", 1723, 1735, 0, 0, false},
    {"qianlong", 1736, 1795, 0, 0, false},
    {"jiaqing", 1796, 1820, 0, 0, false},
    {"daoguang", 1821, 1850, 0, 0, false},
    {"tongzhi", 1862, 1874, 0, 0, false},
    {"guangxu", 1875, 1908, 0, 0, false},
    {"safavid", 1501, 1736, 0, 0, false},
    {"qajar", 1789, 1925, 0, 0, false},
    {"mughal", 1526, 1857, 0, 0, false},
};

// Wars, which stand with "before" and "after"; without a number it is the second that is meant.
static const struct {
    const char *name;
    int from, to;
    bool needs_side;
} wars[] = {
    {"world war ii", 1939, 1945, false},  {"world war 2", 1939, 1945, false},
    {"world war two", 1939, 1945, false}, {"second world war", 1939, 1945, false},
    {"wwii", 1939, 1945, false},          {"ww2", 1939, 1945, false},
    {"world war i", 1914, 1918, false},   {"world war 1", 1914, 1918, false},
    {"world war one", 1914, 1918, false}, {"first world war", 1914, 1918, false},
    {"great war", 1914, 1918, false},     {"wwi", 1914, 1918, false},
    {"ww1", 1914, 1918, false},           {"war", 1939, 1945, true},
};

struct cursor {
    const struct pieces *pieces;
    size_t at;
};

static bool take(struct cursor *c, const char *words) {
    bool found = piece_one_of(c->pieces, c->at, words);
    c->at += found;
    return found;
}

static bool take_phrase(struct cursor *c, const char *words) {
    size_t taken = piece_phrase(c->pieces, c->at, words);
    c->at += taken;
    return taken != 0;
}

// "after the war", "pre-World War I", "WWII".
static bool take_war(struct cursor *c, struct period *p) {
    size_t from = c->at;
    bool before = take(c, "before|pre") || take_phrase(c, "prior to"),
         after = !before && take(c, "after|post");
    take(c, "-");
    take(c, "the");
    for (size_t i = 0; i < sizeof wars / sizeof *wars; i++) {
        if ((wars[i].needs_side && !before && !after) || !take_phrase(c, wars[i].name)) continue;
        *p = (struct period){.from = before  ? 0
                                     : after ? wars[i].to
                                             : wars[i].from,
                             .to = after    ? 0
                                   : before ? wars[i].from
                                            : wars[i].to};
        return true;
    }
    c->at = from;
    return false;
}

static const char *const nouns = "period|era|dynasty|times|age|reign|years";

static bool take_era(struct cursor *c, struct period *p) {
    size_t from = c->at;
    bool early = take(c, "early"), late = !early && take(c, "late|later"),
         mid = !early && !late && take(c, "mid|middle");
    take(c, "-");
    for (size_t i = 0; i < sizeof eras / sizeof *eras; i++) {
        const struct era *era = &eras[i];
        size_t before = c->at;
        if (!take_phrase(c, era->name)) continue;
        if (era->needs_noun && !piece_one_of(c->pieces, c->at, nouns)) {
            c->at = before;
            continue;
        }
        *p = (struct period){.from = era->from, .to = era->to};
        if (early && era->early_to) p->to = era->early_to;
        if (late && era->late_from) p->from = era->late_from;
        if (mid && era->early_to && era->late_from) {
            p->from = era->early_to;
            p->to = era->late_from;
        }
        return true;
    }
    c->at = from;
    return false;
}

bool period_of_era(const char *text, size_t size, struct period *p, bool *said) {
    struct pieces pieces = pieces_cut(text, size);
    struct cursor c = {&pieces, 0};
    *said = take_phrase(&c, "reign of");
    if (!take_era(&c, p) && !take_war(&c, p)) return false;
    p->because = "the years of the era that is named";
    *said |= take(&c, nouns);
    p->size = pieces.at[c.at - 1].to;
    return true;
}

static bool begins_with(const char *name, const char *word) {
    while (*name && *name != ' ')
        if (*word++ != *name++) return false;
    return true;
}

bool period_begins_era(const char *word) {
    for (size_t i = 0; i < sizeof eras / sizeof *eras; i++)
        if (begins_with(eras[i].name, word)) return true;
    for (size_t i = 0; i < sizeof wars / sizeof *wars; i++)
        if (begins_with(wars[i].name, word)) return true;
    return false;
}

bool period_opens_era(const char *word) {
    static const char *const before[] = {"early", "late", "mid", "before", "pre",
                                         "prior", "after", "post", "reign", "the"};
    for (size_t i = 0; i < sizeof before / sizeof *before; i++)
        if (begins_with(before[i], word)) return true;
    return period_begins_era(word);
}

static bool ends_with(const char *name, const char *word) {
    const char *space = strrchr(name, ' ');
    return !strcmp(space ? space + 1 : name, word);
}

bool period_ends_era(const char *word) {
    if (!strcmp(word, "century") || !strcmp(word, "war") || !strcmp(word, "wars")) return false;
    for (size_t i = 0; i < sizeof eras / sizeof *eras; i++)
        if (ends_with(eras[i].name, word)) return true;
    for (size_t i = 0; i < sizeof wars / sizeof *wars; i++)
        if (ends_with(wars[i].name, word)) return true;
    return false;
}
