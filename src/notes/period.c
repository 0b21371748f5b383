// SPDX-License-Identifier: MIT
// A grammar of words of age: a unit (a year, a decade, a century), a part of it, from one to another, and
// open to one side. DEVELOPERS.md has the table of words and their years.
#include "notes/period.h"

#include <string.h>

#include "notes/period_pieces.h"
#include "text/order.h"

enum {
    YEAR_CIRCA = 1000,
    YEAR_FIRST = 1500,
    YEAR_LAST = 2029,
    CENTURY_FIRST = 1,
    CENTURY_SHORT = 11,
    CENTURY_LAST = 21,
    ROUGHLY = 10
};

struct reader {
    struct pieces pieces;
    size_t at;
};

static const char *fold_at(const struct reader *r, size_t at) {
    pieces_look(&r->pieces, at);
    return at < r->pieces.count ? r->pieces.at[at].fold : "";
}

// Does nothing stand between this piece and the one before?
static bool is_joined(const struct reader *r) {
    pieces_look(&r->pieces, r->at);
    return r->at < r->pieces.count && r->pieces.at[r->at].joined;
}

static bool take(struct reader *r, const char *words) {
    bool found = piece_one_of(&r->pieces, r->at, words);
    r->at += found;
    return found;
}

static bool take_phrase(struct reader *r, const char *words) {
    size_t taken = piece_phrase(&r->pieces, r->at, words);
    r->at += taken;
    return taken != 0;
}

static int number_of(const char *fold, size_t digits) {
    int value = 0;
    for (size_t i = 0; i < digits; i++) {
        if (fold[i] < '0' || fold[i] > '9') return -1;
        value = 10 * value + (fold[i] - '0');
    }
    return value;
}

// --- units ---

static bool take_year(struct reader *r, int first, int *year) {
    const char *fold = fold_at(r, r->at);
    *year = strlen(fold) == 4 ? number_of(fold, 4) : -1;
    if (*year < first || *year > YEAR_LAST) return false;
    r->at++;
    return true;
}

static int spoken_decade(const char *fold) {
    static const char *const names[] = {"twenties", "thirties",  "forties",  "fifties",
                                        "sixties",  "seventies", "eighties", "nineties"};
    for (int i = 0; i < 8; i++)
        if (text_same(fold, names[i])) return 1920 + i * 10;
    if (text_same(fold, "noughties")) return 2000;
    return 0;
}

static bool is_plural(const char *tail) {
    return text_same(tail, "s") || text_same(tail, "ies");
}

// "1950s", "'50s", "fifties", "nineteen fifties", "1800s".
static bool take_decade(struct reader *r, struct period *p) {
    bool earlier = piece_is(&r->pieces, r->at, "eighteen");
    size_t at = r->at + (earlier || piece_one_of(&r->pieces, r->at, "'|nineteen") ? 1 : 0);
    const char *fold = fold_at(r, at);
    int from = spoken_decade(fold), width = 10;
    if (earlier && (from < 1920 || from > 1990)) return false;
    if (earlier) from -= 100;
    if (!from && strlen(fold) >= 5 && is_plural(fold + 4)) {
        from = number_of(fold, 4);
        if (from < YEAR_FIRST || from > YEAR_LAST || from % 10) return false;
        // "1900s" is a century for most and a decade for some; "2000s" is a decade.
        if (from % 100 == 0 && from < 2000) width = 100;
    } else if (!from && strlen(fold) >= 3 && is_plural(fold + 2)) {
        int tens = number_of(fold, 2);
        from = tens >= 20 && tens % 10 == 0 ? 1900 + tens : 0;
    }
    if (from <= 0) return false;
    *p = (struct period){.from = from, .to = from + width - 1, .because = "the whole of it"};
    r->at = at + 1;
    return true;
}

// "xix", "xviii" and the like; a century is told so from the eleventh on, since "x" and "v" are other things.
static int roman_of(const char *fold, size_t size) {
    static const char *const names[] = {"xi",   "xii",   "xiii", "xiv", "xv", "xvi",
                                        "xvii", "xviii", "xix",  "xx",  "xxi"};
    for (int i = 0; i < 11; i++)
        if (strlen(names[i]) == size && !strncmp(fold, names[i], size)) return 11 + i;
    return 0;
}

// "nineteenth", "19th", "3rd", "xix", "xixth".
static int ordinal_of(const char *fold) {
    static const char *const names[] = {"eleventh",  "twelfth",     "thirteenth", "fourteenth", "fifteenth",
                                        "sixteenth", "seventeenth", "eighteenth", "nineteenth", "twentieth"};
    for (int i = 0; i < 10; i++)
        if (text_same(fold, names[i])) return 11 + i;
    size_t size = strlen(fold), tail = size > 2 ? size - 2 : size;
    bool ends = text_same(fold + tail, "th") || text_same(fold + tail, "st") ||
                text_same(fold + tail, "nd") || text_same(fold + tail, "rd");
    int roman = roman_of(fold, ends ? tail : size);
    if (roman || !ends || tail > 2) return roman;
    int value = number_of(fold, tail);
    return value >= CENTURY_FIRST && value <= CENTURY_LAST ? value : 0;
}

// "C19th", "19thC": the letter and the number are one word.
static int century_word(const char *fold) {
    char rest[PIECE_MOST + 1];
    size_t size = strlen(fold);
    if (size < 5) return 0;
    if (*fold == 'c' && fold[1] >= '0' && fold[1] <= '9') return ordinal_of(fold + 1);
    if (fold[size - 1] != 'c' || *fold < '0' || *fold > '9') return 0;
    memcpy(rest, fold, size);
    rest[size - 1] = '\0';
    return ordinal_of(rest);
}

static bool take_ordinal(struct reader *r, int *century) {
    *century = ordinal_of(fold_at(r, r->at));
    if (*century) r->at++;
    if (!*century && (take_phrase(r, "twenty - first") || take_phrase(r, "twenty first"))) *century = 21;
    return *century != 0;
}

static struct period century_years(int century) {
    return (struct period){
        .from = (century - 1) * 100 + 1, .to = century * 100, .because = "the whole of it"};
}

// "19th century", "nineteenth-century", "19th c.".
static bool take_century(struct reader *r, struct period *p) {
    size_t from = r->at;
    int century = century_word(fold_at(r, r->at));
    if (century) {
        r->at++;
        *p = century_years(century);
        return true;
    }
    if (!take_ordinal(r, &century)) return false;
    take(r, "-");
    bool full = take(r, "century|centuries"),
         shortened = !full && century >= CENTURY_SHORT && take(r, "c|cent|cen");
    if (!full && !shortened) {
        r->at = from;
        return false;
    }
    if (shortened && is_joined(r)) take(r, ".");
    *p = century_years(century);
    return true;
}

static bool take_unit(struct reader *r, struct period *p) {
    return take_decade(r, p) || take_century(r, p);
}

// --- parts of a unit ---

enum third { WHOLE, EARLY, MID, LATE };

static int width_of(const struct period *p) {
    return p->to - p->from + 1;
}

static void cut_third(struct period *p, enum third first, enum third last) {
    bool decade = width_of(p) <= 10;
    int from = p->from, one = decade ? 4 : 33, two = decade ? 7 : 66;
    if (first == WHOLE) return;
    if (last < LATE) p->to = from + (last == EARLY ? one : two) - 1;
    if (first > EARLY) p->from = from + (first == MID ? one : two);
    p->because = decade ? "early, mid and late parts of a decade" : "thirds of a century";
}

static enum third take_third(struct reader *r) {
    enum third third = WHOLE;
    if (take(r, "early|earlier")) third = EARLY;
    if (!third && take(r, "late|later")) third = LATE;
    if (!third && take(r, "mid|middle")) third = MID;
    if (third && !take_phrase(r, "part of the") && third == MID) take_phrase(r, "of the");
    return third;
}

// Its first or last years, as "beginning", "end", "very late" have it.
static void cut_end(struct period *p, bool last) {
    if (width_of(p) <= 10) {
        cut_third(p, last ? LATE : EARLY, last ? LATE : EARLY);
        return;
    }
    if (last)
        p->from = p->to - 10 + (p->to % 10 ? 1 : 0);
    else
        p->to = p->from + 9 - p->from % 10 + (p->from % 10 ? 1 : 0);
    p->because = "ten years at its end";
}

// "first half", "last quarter", "second third": which and how many years.
struct share {
    int nth, years;
};

static bool take_share(struct reader *r, struct share *share) {
    static const char *const nths[] = {"first|1st|opening", "second|2nd", "third|3rd", "fourth|4th"};
    size_t from = r->at;
    share->nth = -1;
    for (int i = 0; i < 4 && share->nth < 0; i++)
        if (take(r, nths[i])) share->nth = i;
    if (share->nth < 0 && take(r, "last|final|closing|latter|later")) share->nth = 9;
    take(r, "-");
    share->years = take(r, "quarter")  ? 25
                   : take(r, "half")   ? 50
                   : take(r, "third")  ? 33
                   : take(r, "decade") ? 10
                                       : 0;
    int count = share->years ? 100 / share->years : 0;
    if (share->nth == 9) share->nth = count - 1;
    if (share->nth >= 0 && share->years && share->nth < count) return true;
    r->at = from;
    return false;
}

static bool cut_share(struct period *p, const struct share *share) {
    if (width_of(p) < 100) return false;
    int end = p->to;
    p->from += share->nth * share->years;
    p->to = share->nth == 100 / share->years - 1 ? end : p->from + share->years - 1;
    p->because = "quarters, thirds or halves of a century";
    return true;
}

// "the turn of the 19th/20th century": the second is the one that it turns to.
static void take_first_of_two(struct reader *r) {
    size_t from = r->at;
    int century;
    if (!take_ordinal(r, &century) || !take(r, "/|-|to|and")) r->at = from;
}

// "C19", which alone may be the number of a model.
static bool take_letter_century(struct reader *r, struct period *p) {
    const char *fold = fold_at(r, r->at);
    int century = *fold == 'c' && strlen(fold) == 3 ? number_of(fold + 1, 2) : 0;
    if (century < CENTURY_SHORT || century > CENTURY_LAST) return false;
    *p = century_years(century);
    r->at++;
    return true;
}

// "first half of the 19th century", "end of the 1800s".
static bool take_part(struct reader *r, struct period *p) {
    size_t from = r->at;
    struct share share = {0, 0};
    bool shared = take_share(r, &share), begins = !shared && take(r, "beginning|start|dawn"),
         ends = !shared && !begins && take(r, "end|close"),
         turns = !shared && !begins && !ends && take(r, "turn");
    bool very = !shared && !begins && !ends && !turns && take(r, "very");
    if (very) begins = take(r, "early"), ends = !begins && take(r, "late"), take(r, "-");
    if (!shared && !very && !begins && !ends && !turns) {
        begins = take_phrase(r, "early years") || take_phrase(r, "first years");
        ends = !begins && (take_phrase(r, "last years") || take_phrase(r, "closing years"));
    }
    if (!shared && !very && !take(r, "of")) begins = ends = turns = false;
    take(r, "of");
    take(r, "the");
    if (turns) take_first_of_two(r);
    bool fine = (shared || begins || ends || turns) && (take_letter_century(r, p) || take_unit(r, p)) &&
                (!shared || cut_share(p, &share));
    if (fine && (begins || ends)) cut_end(p, ends);
    if (fine && turns) { // the turn to the century that is named
        int hundred = p->from - p->from % 100;
        *p = (struct period){
            .from = hundred - 10, .to = hundred + 10, .because = "ten years each way of the turn"};
    }
    if (!fine) r->at = from;
    return fine;
}

// "late 1930s", "early to mid-19th century", "19th century, second quarter".
static bool take_atom(struct reader *r, struct period *p) {
    if (take_part(r, p)) return true;
    size_t from = r->at;
    enum third first = take_third(r), last = first;
    if (first) {
        size_t after = r->at;
        bool joint = take(r, "-|to|or|/"), more = joint && take(r, "to") && take(r, "-");
        (void)more;
        enum third second = joint ? take_third(r) : WHOLE;
        if (second > first)
            last = second;
        else
            r->at = after;
        take(r, "-");
    }
    take(r, "the");
    if (!(first && take_letter_century(r, p)) && !take_unit(r, p)) {
        r->at = from;
        return false;
    }
    cut_third(p, first, last);
    size_t end = r->at;
    struct share share;
    if (!first && take(r, ",") && take_share(r, &share) && cut_share(p, &share)) return true;
    r->at = end;
    return true;
}

// The first of two centuries goes without its noun: "late 19th to early 20th century".
static bool take_bare(struct reader *r, struct period *p) {
    size_t from = r->at;
    enum third third = take_third(r);
    take(r, "-");
    take(r, "the");
    int century;
    if (take_ordinal(r, &century) && piece_one_of(&r->pieces, r->at, "-|/|to|or|and|through")) {
        *p = century_years(century);
        cut_third(p, third, third);
        return true;
    }
    r->at = from;
    return false;
}

// "1885 or later", "19th century or earlier".
static bool take_open_end(struct reader *r, struct period *p) {
    if (take_phrase(r, "or earlier") || take_phrase(r, "or before") || take_phrase(r, "and earlier"))
        p->from = 0;
    else if (take_phrase(r, "or later") || take_phrase(r, "or after") || take_phrase(r, "and later") ||
             take(r, "onward|onwards"))
        p->to = 0;
    else
        return false;
    p->because = "open to one side";
    return true;
}

static bool take_range(struct reader *r, struct period *p) {
    size_t from = r->at;
    bool bare = false;
    if (!take_atom(r, p) && !(bare = take_bare(r, p))) return false;
    size_t end = r->at;
    struct period last;
    if (!bare && take_open_end(r, p)) return true;
    if (take(r, "-|/|to|or|and|through|until") && (take(r, "the") || true) && take_atom(r, &last) &&
        last.to > p->to && (!bare || width_of(&last) > 10)) {
        p->to = last.to;
        p->because = "from the first to the last named";
        return true;
    }
    r->at = bare ? from : end;
    return !bare;
}

// --- years ---

// "1885-90", "1862/63", "1914 to 1918", "1910 or 1911".
static void take_last_year(struct reader *r, struct period *p) {
    size_t from = r->at;
    bool dash = take(r, "-"), slash = !dash && take(r, "/"), or = !dash && !slash && take(r, "or");
    const char *fold = fold_at(r, r->at);
    size_t digits = strlen(fold);
    bool joined = is_joined(r);
    int end = number_of(fold, digits), power = digits == 2 ? 100 : digits == 1 ? 10 : 0;
    if ((dash || slash) && joined && power && end >= 0 && (power == 100 || slash)) {
        p->to = p->from - p->from % power + end;
        r->at++;
    } else if (!dash && !slash && ! or &&!take(r, "to|until|through")) {
        return;
    } else if (!take_year(r, p->from < YEAR_FIRST ? YEAR_CIRCA : YEAR_FIRST, &p->to) ||
               (or &&p->to > p->from + ROUGHLY)) {
        p->to = 0;
    }
    if (p->to > p->from) return;
    p->to = p->from;
    r->at = from;
}

static bool take_years(struct reader *r, struct period *p) {
    int year;
    if (!take_year(r, YEAR_FIRST, &year)) return false;
    *p = (struct period){.from = year, .to = year, .because = "as given", .plain = true};
    if (take_open_end(r, p))
        p->plain = false;
    else
        take_last_year(r, p);
    return true;
}

enum side { NO_SIDE, NOT_AFTER, NOT_BEFORE, BEFORE, AFTER };

static enum side take_side(struct reader *r) {
    if (take_phrase(r, "no later than") || take_phrase(r, "not later than") || take_phrase(r, "not after") ||
        take_phrase(r, "up to") || take(r, "by|until"))
        return NOT_AFTER;
    if (take_phrase(r, "no earlier than") || take_phrase(r, "not earlier than") ||
        take_phrase(r, "not before") || take(r, "since|earliest"))
        return NOT_BEFORE;
    if (take(r, "before|pre") || take_phrase(r, "prior to")) return BEFORE;
    return take(r, "after|post") ? AFTER : NO_SIDE;
}

// "before 1914", "no later than 1900", "post-1945", "before the 1920s".
static bool take_open(struct reader *r, struct period *p) {
    size_t from = r->at;
    enum side side = take_side(r);
    struct period whole = {0};
    take(r, "-");
    if (take(r, "about|circa|ca|c")) take(r, ".");
    bool year = side && take_year(r, YEAR_FIRST, &whole.from),
         range = is_joined(r) && piece_one_of(&r->pieces, r->at, "-|/");
    if (!side || (year ? range : !take_atom(r, &whole))) {
        r->at = from;
        return false;
    }
    // "After 1950" is 1950 or later, after the fifties is not.
    int first = whole.from, last = year ? first : whole.to;
    *p = (struct period){.because = "open to one side"};
    if (side == NOT_AFTER) p->to = last;
    if (side == BEFORE) p->to = first - 1;
    if (side == NOT_BEFORE) p->from = first;
    if (side == AFTER) p->from = year ? first : last + 1;
    return true;
}

static bool take_between(struct reader *r, struct period *p) {
    size_t from = r->at;
    int first, last;
    if (!take(r, "between")) return false;
    if (take(r, "about|circa|ca|c|around")) take(r, ".");
    if (take_year(r, YEAR_FIRST, &first) && take(r, "and|-|to") && take_year(r, YEAR_FIRST, &last) &&
        last > first) {
        *p = (struct period){.from = first, .to = last, .because = "as given"};
        return true;
    }
    r->at = from;
    return false;
}

// "ca. 1450": older than anything that a bare figure is taken for.
static bool take_old_year(struct reader *r, struct period *p) {
    int year;
    if (!take_year(r, YEAR_CIRCA, &year)) return false;
    *p = (struct period){.from = year, .to = year};
    take_last_year(r, p);
    return true;
}

// "c. 1890", "circa 1920-30", "ca. 1890s": a rough year is ten years each way.
static bool take_about(struct reader *r, struct period *p) {
    size_t from = r->at;
    const char *fold = fold_at(r, r->at);
    int year = strlen(fold) == 5 && fold[0] == 'c' ? number_of(fold + 1, 4) : -1;
    if (year >= YEAR_FIRST && year <= YEAR_LAST) {
        r->at++;
        *p = (struct period){.from = year, .to = year};
        take_last_year(r, p);
    } else if (take(r, "c|ca|cca|cir|circ|circa|about|around|approx|approximately|roughly|~")) {
        bool circa = *fold == 'c';
        take(r, ".|:");
        take_phrase(r, "the year");
        if (take_range(r, p)) return true;
        if (!take_years(r, p) && !(circa && take_old_year(r, p))) r->at = from;
    }
    if (r->at == from) return false;
    bool one = p->from == p->to;
    p->plain = false;
    p->because = one ? "ten years each way of a rough year" : "as given";
    if (one) p->from -= ROUGHLY, p->to += ROUGHLY;
    return true;
}

// "5th century BC": nothing that is sold here.
static bool is_before_christ(struct reader *r) {
    return take(r, "bc|bce") || take_phrase(r, "b . c") || take_phrase(r, "b . c .");
}

bool period_read(const char *text, size_t size, struct period *p) {
    return period_read_far(text, size, p, NULL);
}

bool period_read_far(const char *text, size_t size, struct period *p, size_t *looked) {
    struct reader r = {.pieces = pieces_cut(text, size)};
    if (looked) *looked = 0;
    r.pieces.looked = looked;
    *p = (struct period){0};
    if (!take_about(&r, p) && !take_open(&r, p) && !take_between(&r, p) && !take_range(&r, p) &&
        !take_years(&r, p))
        return false;
    size_t end = r.at;
    if (is_before_christ(&r)) return false;
    p->size = r.pieces.at[end - 1].to;
    return true;
}

// A figure is none by itself: a year has four digits, and a short one a letter behind.
static bool is_figure_of_age(const char *word) {
    size_t digits = 0;
    for (const char *at = word; *at; at++) {
        bool digit = *at >= '0' && *at <= '9', letter = *at >= 'a' && *at <= 'z';
        if (digits && (letter || *at == '\'')) return true;
        digits = digit ? digits + 1 : 0;
        if (digits == 4) return true;
    }
    return false;
}

bool period_may_hold(const char *word) {
    enum { SHORTEST = 3 };
    if (is_figure_of_age(word)) return true;
    size_t size = strlen(word);
    if (size < SHORTEST) return size == SHORTEST - 1 && period_begins_era(word);
    bool letter = *word == 'c' && size == SHORTEST && number_of(word + 1, 2) >= CENTURY_SHORT;
    if (letter || period_begins_era(word) || (*word == 'x' && ordinal_of(word))) return true;
    for (const char *at = word; size > SHORTEST && *at; at++) // "fifties", "mid-century"
        if ((*at == 't' && !strncmp(at, "ties", 4)) || (*at == 'c' && !strncmp(at, "centur", 6))) return true;
    return false;
}
