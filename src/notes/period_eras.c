// SPDX-License-Identifier: MIT
// Eras by name: reigns, dynasties, wars, styles that stand for years. Nearly all are from memory, so they are
// told as the years of the era that is named, and allow no word.
#include <string.h>

#include "notes/period.h"
#include "notes/period_pieces.h"
#include "text/order.h"

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
    {"william and mary", 1689, 1702, 0, 0, false},
    {"queen anne", 1702, 1714, 0, 0, false},
    {"georgian", 1714, 1837, 1760, 1790, false},
    {"regency", 1811, 1820, 0, 0, false},
    {"victorian", 1837, 1901, 1850, 1876, false},
    {"queen victoria", 1837, 1901, 0, 0, false},
    {"edwardian", 1901, 1910, 0, 0, false},
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
    {"commonwealth", 1649, 1660, 0, 0, true},
    {"republic", 1912, 1949, 0, 0, true},
    {"soviet", 1922, 1991, 0, 0, true},
    {"ddr", 1949, 1990, 0, 0, true},
    {"louis treize", 1610, 1643, 0, 0, false},
    {"louis quatorze", 1643, 1715, 0, 0, false},
    {"louis quinze", 1715, 1774, 0, 0, false},
    {"louis seize", 1774, 1792, 0, 0, false},
    {"predecimal", 0, 1970, 0, 0, false},
    {"pre - decimal", 0, 1970, 0, 0, false},
    {"prohibition", 1920, 1933, 0, 0, true},
    {"cold war", 1947, 1991, 0, 0, true},
    {"wartime", 1939, 1945, 0, 0, false},
    {"war - time", 1939, 1945, 0, 0, false},
    {"victoria", 1837, 1901, 0, 0, true},
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

// Kings by their number, which no style is called by; the first name may be cut short.
static const struct {
    const char *name, *number;
    int from, to;
} reigns[] = {
    {"george", "i", 1714, 1727},    {"george", "ii", 1727, 1760},   {"george", "iii", 1760, 1820},
    {"george", "iv", 1820, 1830},   {"george", "v", 1910, 1936},    {"george", "vi", 1936, 1952},
    {"william", "iii", 1689, 1702}, {"william", "iv", 1830, 1837},  {"edward", "vi", 1547, 1553},
    {"edward", "vii", 1901, 1910},  {"edward", "viii", 1936, 1936}, {"charles", "i", 1625, 1649},
    {"charles", "ii", 1660, 1685},  {"james", "i", 1603, 1625},     {"james", "ii", 1685, 1688},
    {"henry", "viii", 1509, 1547},  {"elizabeth", "i", 1558, 1603}, {"elizabeth", "ii", 1952, 2022},
};
static const char *const short_names[][2] = {{"geo", "george"},   {"ed", "edward"},  {"edw", "edward"},
                                             {"edwd", "edward"},  {"wm", "william"}, {"will", "william"},
                                             {"chas", "charles"}, {"jas", "james"},  {"eliz", "elizabeth"}};

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
         after = !before && take(c, "after|post"), during = !before && !after && take(c, "during");
    take(c, "-");
    take(c, "the");
    for (size_t i = 0; i < sizeof wars / sizeof *wars; i++) {
        if ((wars[i].needs_side && !before && !after && !during) || !take_phrase(c, wars[i].name)) continue;
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

static const char *whole_name(const char *name) {
    for (size_t i = 0; i < sizeof short_names / sizeof *short_names; i++)
        if (text_same(short_names[i][0], name)) return short_names[i][1];
    return name;
}

// "Ed VI of the series": a name or an edition where no stop stands behind it.
static bool is_first_name(const struct cursor *c) {
    return piece_is(c->pieces, c->at, "ed") || piece_is(c->pieces, c->at, "will");
}

// "George III", "Geo. III".
static bool take_reign(struct cursor *c, struct period *p) {
    if (c->at + 1 >= c->pieces->count) return false;
    const char *name = whole_name(c->pieces->at[c->at].fold);
    bool dot = piece_is(c->pieces, c->at + 1, "."), first_name = is_first_name(c);
    if (first_name && !dot) return false;
    size_t number = c->at + 1 + dot;
    for (size_t i = 0; i < sizeof reigns / sizeof *reigns; i++) {
        if (!text_same(reigns[i].name, name) || !piece_is(c->pieces, number, reigns[i].number)) continue;
        *p = (struct period){.from = reigns[i].from, .to = reigns[i].to};
        c->at = number + 1;
        return true;
    }
    return false;
}

static const char *const nouns = "period|era|dynasty|times|age|reign|years";

static bool is_noun(const struct cursor *c) {
    return piece_one_of(c->pieces, c->at + piece_is(c->pieces, c->at, "-"), nouns) ||
           piece_phrase(c->pieces, c->at, "mark and");
}

// `of`: "the reign of" stands before it.
static bool take_era(struct cursor *c, struct period *p, bool of) {
    size_t from = c->at;
    bool early = take(c, "early"), late = !early && take(c, "late|later"),
         mid = !early && !late && take(c, "mid|middle");
    take(c, "-");
    for (size_t i = 0; i < sizeof eras / sizeof *eras; i++) {
        const struct era *era = &eras[i];
        size_t before = c->at;
        if (!take_phrase(c, era->name)) continue;
        if (era->needs_noun && !of && !is_noun(c)) {
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

// Nothing else goes by these names, and few copies are named so without "style".
static const char *const dynasties = "meiji|taisho|showa|joseon|qing|wanli|kangxi|yongzheng|qianlong|jiaqing|"
                                     "daoguang|tongzhi|guangxu|safavid|qajar";

bool period_of_era(const char *text, size_t size, struct period *p, bool *said) {
    struct pieces pieces = pieces_cut(text, size);
    struct cursor c = {&pieces, 0};
    bool of = take_phrase(&c, "reign of"), reign = take_reign(&c, p);
    *said = of || reign;
    if (!reign && !take_era(&c, p, of) && !take_war(&c, p)) return false;
    *said |= piece_one_of(&pieces, c.at - 1, dynasties);
    p->because = "the years of the era that is named";
    if (is_noun(&c)) {
        *said = true;
        take(&c, "-");
        take_phrase(&c, "mark and");
        take(&c, nouns);
    }
    p->size = pieces.at[c.at - 1].to;
    return true;
}

static bool begins_with(const char *name, const char *word) {
    while (*name && *name != ' ')
        if (*word++ != *name++) return false;
    return true;
}

bool period_begins_era(const char *word) {
    const char *name = whole_name(word);
    for (size_t i = 0; i < sizeof reigns / sizeof *reigns; i++)
        if (text_same(reigns[i].name, name)) return true;
    for (size_t i = 0; i < sizeof eras / sizeof *eras; i++)
        if (begins_with(eras[i].name, word)) return true;
    for (size_t i = 0; i < sizeof wars / sizeof *wars; i++)
        if (begins_with(wars[i].name, word)) return true;
    return false;
}

bool period_opens_era(const char *word) {
    static const char *const before[] = {"early", "late",  "mid",  "before", "pre",
                                         "prior", "after", "post", "reign",  "the"};
    for (size_t i = 0; i < sizeof before / sizeof *before; i++)
        if (begins_with(before[i], word)) return true;
    return period_begins_era(word);
}

static bool ends_with(const char *name, const char *word) {
    const char *space = strrchr(name, ' ');
    return text_same(space ? space + 1 : name, word);
}

bool period_ends_era(const char *word) {
    for (size_t i = 0; i < sizeof reigns / sizeof *reigns; i++)
        if (text_same(reigns[i].number, word)) return true;
    if (text_same(word, "century") || text_same(word, "war") || text_same(word, "wars")) return false;
    for (size_t i = 0; i < sizeof eras / sizeof *eras; i++)
        if (ends_with(eras[i].name, word)) return true;
    for (size_t i = 0; i < sizeof wars / sizeof *wars; i++)
        if (ends_with(wars[i].name, word)) return true;
    return false;
}
