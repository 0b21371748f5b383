// SPDX-License-Identifier: MIT
// Ages: the seller's own words go to the attribute `age`; years to the record only where they were stated
// plainly.
//
// DEVELOPERS.md has the table of words and their years.
//
// "Turn of the century", "pre-war" and "'62" have no years: people mean different ones. "1950s style" is a
// style.
#include <string.h>

#include "notes/age.h"
#include "notes/any.h"
#include "notes/note.h"
#include "notes/number.h"

struct period {
    int from, to; // 0: no years are meant for sure
    size_t taken;
    const char *because;
};

enum { YEAR_FIRST = 1500, YEAR_LAST = 2029 };

static bool is_digits(const char *text, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (text[i] < '0' || text[i] > '9') return false;
    return true;
}

static int digits_value(const char *text, size_t count) {
    int value = 0;
    for (size_t i = 0; i < count; i++) value = value * 10 + (text[i] - '0');
    return value;
}

static bool is_plural_tail(const char *tail) {
    return !strcmp(tail, "s") || !strcmp(tail, "'s") || !strcmp(tail, "ies");
}

// A year of four digits and nothing else; 0 otherwise.
static int year_at(const struct tokens *tokens, size_t i) {
    if (i >= tokens->count || tokens->at[i].kind != TOKEN_FIGURE) return 0;
    const char *fold = tokens->at[i].fold;
    if (strlen(fold) != 4 || !is_digits(fold, 4)) return 0;
    int year = digits_value(fold, 4);
    return year >= YEAR_FIRST && year <= YEAR_LAST ? year : 0;
}

// --- decades and centuries ---

static int spoken_decade(const char *fold) {
    static const char *const names[] = {"twenties", "thirties",  "forties",  "fifties",
                                        "sixties",  "seventies", "eighties", "nineties"};
    for (int i = 0; i < 8; i++)
        if (!strcmp(fold, names[i])) return 1920 + i * 10;
    return 0;
}

// The first year of a decade: "1950s", "50's", "'50s", "fifties", "nineteen fifties"; `width` 100 for
// "1800s".
static int decade_at(const struct tokens *tokens, size_t i, int *width, size_t *taken) {
    if (i >= tokens->count) return 0;
    size_t skip = token_is(tokens, i, "'") && i + 1 < tokens->count && tokens->at[i + 1].joined ? 1 : 0;
    if (token_is(tokens, i, "nineteen")) skip = 1;
    if (i + skip >= tokens->count) return 0;
    const char *fold = tokens->at[i + skip].fold;
    *width = 10;
    *taken = skip + 1;
    int spoken = spoken_decade(fold);
    if (spoken) return spoken;
    if (tokens->at[i + skip].kind != TOKEN_FIGURE) return 0;
    if (is_digits(fold, 4) && is_plural_tail(fold + 4)) {
        int year = digits_value(fold, 4);
        if (year < YEAR_FIRST || year > YEAR_LAST || year % 10) return 0;
        // "1900s" is a century for most and a decade for some; "2000s" is a decade.
        if (year % 100 == 0 && year < 2000) *width = 100;
        return year;
    }
    bool short_form = strlen(fold) >= 3 && is_digits(fold, 2) && is_plural_tail(fold + 2) && fold[1] == '0';
    int tens = short_form ? digits_value(fold, 2) : 0;
    return tens >= 20 && tens <= 90 ? 1900 + tens : 0;
}

static int ordinal_value(const char *fold) {
    static const char *const names[] = {"fifteenth",  "sixteenth", "seventeenth", "eighteenth",
                                        "nineteenth", "twentieth", "twenty-first"};
    for (int i = 0; i < 7; i++)
        if (!strcmp(fold, names[i])) return 15 + i;
    if (strlen(fold) == 4 && is_digits(fold, 2) && (!strcmp(fold + 2, "th") || !strcmp(fold + 2, "st"))) {
        int value = digits_value(fold, 2);
        return value >= 15 && value <= 21 ? value : 0;
    }
    return 0;
}

// "19th century", "nineteenth-century", "19th c.": its number.
static int century_at(const struct tokens *tokens, size_t i, size_t *taken) {
    if (i >= tokens->count) return 0;
    char name[24];
    const char *fold = tokens->at[i].fold;
    size_t size = strcspn(fold, "-");
    if (fold[size] && !strcmp(fold + size, "-century") && size < sizeof name) {
        memcpy(name, fold, size);
        name[size] = '\0';
        *taken = 1;
        return ordinal_value(name);
    }
    int value = ordinal_value(fold);
    size_t at = i + 1;
    if (token_is(tokens, at, "-")) at++;
    if (!value || !ANY(tokens, at, "century", "c", "cent")) return 0;
    if (token_is(tokens, at + 1, ".") && !token_is(tokens, at, "century")) at++;
    *taken = at + 1 - i;
    return value;
}

enum third { WHOLE, EARLY, MID, LATE };

static enum third third_at(const struct tokens *tokens, size_t i, size_t *taken) {
    *taken = 1;
    if (token_is(tokens, i + 1, "-")) *taken = 2;
    if (ANY(tokens, i, "early", "earlier")) return EARLY;
    if (ANY(tokens, i, "mid", "middle")) {
        if (token_phrase(tokens, i + 1, "of the")) *taken = 3;
        return MID;
    }
    if (ANY(tokens, i, "late", "later")) return LATE;
    *taken = 0;
    return WHOLE;
}

static struct period third_of(int from, int width, enum third third) {
    struct period p = {from, from + width - 1, 0, "the whole of it"};
    int first = width == 10 ? 4 : 33, second = width == 10 ? 7 : 66;
    if (third == EARLY) p.to = from + first - 1;
    if (third == MID) {
        p.from = from + first;
        p.to = from + second - 1;
    }
    if (third == LATE) p.from = from + second;
    if (third != WHOLE)
        p.because = width == 10 ? "early, mid and late parts of a decade" : "thirds of a century";
    return p;
}

// "mid-19th": the hyphen makes one token of both.
static bool joined_third(const struct tokens *tokens, size_t i, enum third *third, const char **rest) {
    if (i >= tokens->count) return false;
    const char *fold = tokens->at[i].fold;
    static const struct {
        const char *word;
        enum third third;
    } words[] = {{"early-", EARLY}, {"mid-", MID}, {"late-", LATE}};
    for (size_t k = 0; k < 3; k++) {
        size_t size = strlen(words[k].word);
        if (strncmp(fold, words[k].word, size) != 0) continue;
        *third = words[k].third;
        *rest = fold + size;
        return true;
    }
    return false;
}

static bool joined_period(const struct tokens *tokens, size_t i, struct period *p) {
    enum third third;
    const char *rest;
    if (!joined_third(tokens, i, &third, &rest)) return false;
    int century = ordinal_value(rest);
    if (century && ANY(tokens, i + 1, "century", "c")) {
        *p = third_of((century - 1) * 100 + 1, 100, third);
        p->taken = 2;
        return true;
    }
    int decade = spoken_decade(rest);
    if (!decade && strlen(rest) >= 5 && is_digits(rest, 4) && is_plural_tail(rest + 4))
        decade = digits_value(rest, 4);
    if (!decade) return false;
    *p = third_of(decade, decade % 100 == 0 && decade < 2000 ? 100 : 10, third);
    p->taken = 1;
    return true;
}

static bool single_period(const struct tokens *tokens, size_t i, struct period *p) {
    if (joined_period(tokens, i, p)) return true;
    size_t lead, taken;
    enum third third = third_at(tokens, i, &lead);
    size_t at = i + lead;
    if (ANY(tokens, at, "to", "or") &&
        third) { // "mid to late 1960s": the later word counts alone for its end
        size_t more;
        enum third end = third_at(tokens, at + 1, &more);
        struct period last;
        if (end > third && single_period(tokens, at + 1, &last)) {
            int width = last.to - last.from > 15 ? 100 : 10;
            int base = last.to - (last.to - (width == 10 ? 0 : 1)) % width;
            struct period first = third_of(base, width, third);
            *p = (struct period){first.from, last.to, at + 1 + last.taken - i, last.because};
            return true;
        }
    }
    if (token_is(tokens, at, "the")) at++;
    int width, decade = decade_at(tokens, at, &width, &taken);
    if (decade) {
        *p = third_of(decade, width, third);
    } else {
        int century = century_at(tokens, at, &taken);
        if (!century) return false;
        *p = third_of((century - 1) * 100 + 1, 100, third);
    }
    p->taken = at + taken - i;
    return true;
}

// "second quarter of the 20th century", "first half of the 1800s".
static bool part_period(const struct tokens *tokens, size_t i, struct period *p) {
    static const char *const names[] = {"first", "second", "third", "fourth"};
    static const char *const figures[] = {"1st", "2nd", "3rd", "4th"};
    int nth = -1;
    for (int k = 0; k < 4; k++)
        if (token_is(tokens, i, names[k]) || token_is(tokens, i, figures[k])) nth = k;
    if (token_is(tokens, i, "last")) nth = 9;
    int years = token_is(tokens, i + 1, "quarter") ? 25 : token_is(tokens, i + 1, "half") ? 50 : 0;
    size_t of = token_phrase(tokens, i + 2, "of the") ? 2 : token_is(tokens, i + 2, "of") ? 1 : 0;
    if (nth < 0 || !years || !single_period(tokens, i + 2 + of, p)) return false;
    if (p->to - p->from < 90) return false;
    if (nth == 9) nth = 100 / years - 1;
    if (nth * years >= 100) return false;
    p->from += nth * years;
    p->to = p->from + years - 1;
    p->taken += 2 + of;
    p->because = "quarters or halves of a century";
    return true;
}

static bool is_joint(const struct tokens *tokens, size_t at) {
    return ANY(tokens, at, "to", "or", "and", "/") ||
           (token_is(tokens, at, "-") && tokens->at[at].stop == STOP_NONE);
}

// "late 19th to early 20th century", "18th-19th century": the first goes without its noun.
static bool bare_century(const struct tokens *tokens, size_t i, struct period *p) {
    size_t lead;
    enum third third = third_at(tokens, i, &lead);
    size_t at = i + lead;
    const char *bare = at < tokens->count ? tokens->at[at].fold : "";
    int century = ordinal_value(bare);
    struct period end;
    if (!century || !is_joint(tokens, at + 1) || !single_period(tokens, at + 2, &end)) return false;
    *p = third_of((century - 1) * 100 + 1, 100, third);
    if (end.to - end.from < 30 || end.to <= p->to) return false;
    *p = (struct period){p->from, end.to, at + 2 + end.taken - i, "from the first to the last named"};
    return true;
}

static bool period_at(const struct tokens *tokens, size_t i, struct period *p) {
    if (part_period(tokens, i, p) || bare_century(tokens, i, p)) return true;
    if (!single_period(tokens, i, p)) return false;
    size_t at = i + p->taken;
    struct period end;
    if (is_joint(tokens, at) && single_period(tokens, at + 1, &end) && end.to > p->to) {
        p->to = end.to;
        p->taken = at + 1 + end.taken - i;
        p->because = "from the first to the last named";
    }
    return true;
}

// --- single years ---

// "c. 1890", "circa 1890", "c1890", "about 1890".
static bool about_year(const struct tokens *tokens, size_t i, struct period *p) {
    int year = 0;
    size_t taken = 0;
    if (i < tokens->count && tokens->at[i].kind == TOKEN_CODE && strlen(tokens->at[i].fold) == 5 &&
        tokens->at[i].fold[0] == 'c' && is_digits(tokens->at[i].fold + 1, 4)) {
        year = digits_value(tokens->at[i].fold + 1, 4);
        taken = 1;
    } else if (ANY(tokens, i, "c", "ca", "cir", "circa", "about", "around", "approx", "approximately",
                   "roughly", "~")) {
        size_t at = i + 1;
        if (token_is(tokens, at, ".")) at++;
        year = year_at(tokens, at);
        taken = at + 1 - i;
        bool plain = ANY(tokens, i, "about", "around", "approx", "approximately", "roughly", "~");
        if (plain && at + 1 < tokens->count && tokens->at[at + 1].kind == TOKEN_WORD &&
            tokens->at[at].stop == STOP_NONE &&
            ANY(tokens, at + 1, "pieces", "pcs", "pc", "mm", "g", "ml", "miles", "of", "buttons"))
            return false;
    }
    if (year < YEAR_FIRST || year > YEAR_LAST) return false;
    *p = (struct period){year - 10, year + 10, taken, "ten years each way of a rough year"};
    return true;
}

static size_t last_before(const struct note *note, size_t i) {
    return i > 0 && note->tokens.at[i - 1].stop == STOP_NONE ? i - 1 : SIZE_MAX;
}

// "Optrel 2000 radio": a noun goes on behind the figure.
static bool names_model(const struct note *note, size_t i) {
    return i + 1 < note->tokens.count && note->tokens.at[i + 1].kind == TOKEN_WORD;
}

// Words by which a bare figure of four digits is no year of the thing.
static bool is_no_year(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (ANY(tokens, i + 1, "piece", "pieces", "pc", "pcs", "watt", "watts", "w", "v", "mm", "g", "ml", "rpm",
            "hz", "count", "series", "degrees", "miles", "yards", "feet", "ft", "x", "by", "buttons", "nails",
            "tokens", "/", "or", "postmark", "%", "\"") ||
        (token_is(tokens, i + 1, "-") && tokens->at[i + 1].joined && !year_at(tokens, i + 2)))
        return true;
    size_t before = last_before(note, i);
    if (before == SIZE_MAX) return false;
    const struct token *word = &tokens->at[before];
    if (ANY(tokens, before, "$", "\xC2\xA3", "\xE2\x82\xAC", "#", "no", "number", "model", "serial", "part",
            "size", "lot", ".", "-", "/", "x", "or", "expired", "exp", "expires", "style", "pattern", "type"))
        return true;
    return word->kind == TOKEN_CODE ||
           (word->capital && !note->tokens.shouts && (!word->starts || names_model(note, i))) ||
           (word->kind == TOKEN_FIGURE && !year_at(tokens, before));
}

enum story { STORY_NONE, STORY_NEW, STORY_OTHER };

// Does the clause tell of people: when it was bought, who was born?
static enum story story_of(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    size_t from = note_clause_from(note, i, STOP_COMMA), to = note_clause_to(note, i, STOP_COMMA);
    bool bought = false, fresh = false, other = false;
    for (size_t k = from; k < to; k++) {
        bought |= ANY(tokens, k, "bought", "got", "purchased", "ordered");
        fresh |= ANY(tokens, k, "new");
        other |= ANY(tokens, k, "born", "died", "married", "since", "until", "till", "retired", "moved",
                     "graduated", "expired", "expires", "inherited", "sold", "closed", "wedding", "worked",
                     "stopped", "replaced", "rewired", "repainted", "serviced", "refinished", "restored",
                     "mended", "repaired");
    }
    if (other) return STORY_OTHER;
    return bought ? (fresh ? STORY_NEW : STORY_OTHER) : STORY_NONE;
}

// "before 1900", "after 1950": open to one side.
static bool bounded_year(const struct tokens *tokens, size_t i, struct period *p) {
    bool before = ANY(tokens, i, "before", "pre"), after = ANY(tokens, i, "after", "post");
    size_t at = i + (token_is(tokens, i + 1, "-") ? 2 : 1);
    int year = year_at(tokens, at);
    if ((!before && !after) || !year || tokens->at[at].stop != STOP_NONE) return false;
    *p = (struct period){after ? year : 0, before ? year - 1 : 0, at + 1 - i, "open to one side"};
    return true;
}

static bool plain_year(const struct note *note, size_t i, struct period *p) {
    int year = year_at(&note->tokens, i);
    if (!year || is_no_year(note, i)) return false;
    *p = (struct period){year, year, 1, "as given"};
    int end = 0;
    if (token_is(&note->tokens, i + 1, "-") && note->tokens.at[i + 1].stop == STOP_NONE)
        end = year_at(&note->tokens, i + 2);
    if (token_is(&note->tokens, i + 1, "to")) end = year_at(&note->tokens, i + 2);
    if (end > year) {
        p->to = end;
        p->taken = 3;
    }
    return true;
}

// Words of age without years that everybody agrees on.
static bool loose_age(const struct tokens *tokens, size_t i, struct period *p) {
    static const char *const phrases[] = {"turn of the last century",
                                          "turn of the century",
                                          "pre-war",
                                          "prewar",
                                          "pre war",
                                          "post-war",
                                          "postwar",
                                          "post war",
                                          "between the wars",
                                          "interwar",
                                          "wartime",
                                          "wwii era",
                                          "wwii",
                                          "ww2 era",
                                          "ww2",
                                          "wwi era",
                                          "wwi",
                                          "ww1",
                                          "depression era",
                                          "cold war era"};
    *p = (struct period){0};
    for (size_t k = 0; k < sizeof phrases / sizeof *phrases; k++)
        if ((p->taken = token_phrase(tokens, i, phrases[k])) != 0) return true;
    if (token_is(tokens, i, "'") && i + 1 < tokens->count && tokens->at[i + 1].joined &&
        !tokens->at[i].joined && strlen(tokens->at[i + 1].fold) == 2 &&
        is_digits(tokens->at[i + 1].fold, 2)) {
        p->taken = 2;
        return true;
    }
    if (!ANY(tokens, i, "vintage", "vtg", "antique", "vintage-looking")) return false;
    p->taken = 1;
    return true;
}

// "over 100 years old", "forty years old".
static bool years_old(const struct tokens *tokens, size_t i, struct period *p) {
    size_t lead = ANY(tokens, i, "over", "about", "almost", "nearly", "around", "maybe", "at") ? 1 : 0,
           taken = 0;
    if (lead && token_is(tokens, i, "at")) lead = token_is(tokens, i + 1, "least") ? 2 : 0;
    if (!number_whole(tokens, i + lead, &taken)) return false;
    size_t at = i + lead + taken;
    if (!ANY(tokens, at, "years", "yrs", "year")) return false;
    if (!token_is(tokens, at + 1, "old")) return false;
    *p = (struct period){0, 0, at + 2 - i, NULL};
    return true;
}

// --- keeping ---

static bool is_hedge(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "maybe", "think", "guess", "guessing", "probably", "possibly", "perhaps", "might",
               "could", "may", "supposedly", "believe", "looks", "seems", "told", "said", "says", "suspect",
               "bet", "likely", "?", "if", "unless", "reckon", "swore", "wouldn't", "suppose", "sounds",
               "remember", "should");
}

static enum sure sure_of(const struct note *note, size_t from, size_t to) {
    const struct tokens *tokens = &note->tokens;
    enum { REACH = 7 };
    for (size_t k = from, n = 0; k > 0 && n < REACH && tokens->at[k - 1].stop < STOP_COMMA; k--, n++)
        if (is_hedge(tokens, k - 1)) return SURE_GUESS;
    for (size_t k = to, n = 0; k < tokens->count && n < REACH; k++, n++) {
        if (is_hedge(tokens, k)) return SURE_GUESS;
        if (tokens->at[k].stop >= STOP_COMMA) break;
    }
    return SURE_STATED;
}

static void keep(struct note *note, size_t i, const struct period *p, const char *name, enum sure sure) {
    size_t to = i + p->taken;
    struct value *value = note_attribute(note);
    value->name = name;
    value->value = note_words(note, i, to);
    if (!strcmp(value->value, "vtg") || !strcmp(value->value, "Vtg") || !strcmp(value->value, "VTG"))
        value->value = "vintage";
    value->sure = sure;
    value->span = note_span_of(note, i, to);
    note_reading(note, i, to, name, p->because ? p->because : "word of age");
    note_take(note, i, to, TAKEN_DATE);
    if (sure != SURE_STATED || (!p->from && !p->to) || strcmp(name, "age") != 0) return;
    if (note->record->year_from || note->record->year_to) return;
    note->record->year_from = p->from;
    note->record->year_to = p->to;
    note->record->year_because = p->because;
}

static bool is_style(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (token_is(tokens, i, "-")) i++;
    return ANY(tokens, i, "style", "styled", "look", "looking", "inspired", "type", "vibe", "flavor",
               "flavour", "revival", "reproduction");
}

static size_t keep_period(struct note *note, size_t i, const struct period *p, bool loose) {
    size_t to = i + p->taken;
    if (is_style(note, to)) {
        struct period style = *p;
        style.taken += token_is(&note->tokens, to, "-") ? 2 : 1;
        keep(note, i, &style, "style", sure_of(note, i, to));
        return style.taken;
    }
    enum story story = loose ? STORY_NONE : story_of(note, i);
    if (story == STORY_OTHER) return p->taken;
    enum sure sure = sure_of(note, i, to);
    if (sure == SURE_STATED && (loose || story == STORY_NEW)) sure = SURE_LIKELY;
    struct period kept = *p;
    // "the fifties": the article is no part of the words of age.
    size_t article = token_is(&note->tokens, i, "the") ? 1 : 0;
    kept.taken -= article;
    keep(note, i + article, &kept, "age", sure);
    return p->taken;
}

// "copyright 1978": a mark as well, so its tokens may be taken already.
static void copyright_at(struct note *note, size_t i) {
    if (!ANY(&note->tokens, i, "copyright", "\xC2\xA9")) return;
    int year = year_at(&note->tokens, i + 1);
    if (!year) return;
    struct value *value = note_attribute(note);
    value->name = "age";
    value->value = note_words(note, i + 1, i + 2);
    value->span = note_span_of(note, i + 1, i + 2);
    if (note->record->year_from || note->record->year_to) return;
    note->record->year_from = year;
    note->record->year_because = "copyright: not made before";
}

static size_t date_at(struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    struct period p;
    if (about_year(tokens, i, &p) || period_at(tokens, i, &p) || bounded_year(tokens, i, &p))
        return note_free(note, i, i + p.taken) ? keep_period(note, i, &p, false) : 0;
    if (loose_age(tokens, i, &p) || years_old(tokens, i, &p))
        return note_free(note, i, i + p.taken) ? keep_period(note, i, &p, true) : 0;
    if (!plain_year(note, i, &p) || !note_free(note, i, i + p.taken)) return 0;
    return keep_period(note, i, &p, false);
}

void read_dates(struct note *note) {
    for (size_t i = 0; i < note->tokens.count;) {
        copyright_at(note, i);
        size_t taken = note->taken[i] == TAKEN_NOT ? date_at(note, i) : 0;
        i += taken ? taken : 1;
    }
}

bool date_words(struct arena *arena, const char *text, struct date_words *words) {
    struct note note = {.arena = arena, .tokens = tokens_cut(arena, text, strlen(text))};
    const struct tokens *tokens = &note.tokens;
    for (size_t i = 0; i < tokens->count; i++) {
        struct period p;
        bool found = about_year(tokens, i, &p) || period_at(tokens, i, &p) || bounded_year(tokens, i, &p);
        size_t mid = token_phrase(tokens, i, "mid century") + token_phrase(tokens, i, "midcentury");
        if (!found && !mid) continue;
        bool style = !found || is_style(&note, i + p.taken);
        *words = style ? (struct date_words){0, 0, "a style, and no years"}
                       : (struct date_words){p.from, p.to, p.because};
        return true;
    }
    return false;
}
