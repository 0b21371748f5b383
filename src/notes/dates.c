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
#include "notes/period.h"
#include "notes/unsure.h"
#include "text/order.h"

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

// A year of four digits and nothing else; 0 otherwise.
static int year_at(const struct tokens *tokens, size_t i) {
    if (i >= tokens->count || tokens->at[i].kind != TOKEN_FIGURE) return 0;
    const char *fold = tokens->at[i].fold;
    if (strlen(fold) != 4 || !is_digits(fold, 4)) return 0;
    int year = digits_value(fold, 4);
    return year >= YEAR_FIRST && year <= YEAR_LAST ? year : 0;
}

// --- periods ---

enum { WORDS_MOST = 20 };

// The words from here on as one text, and where each of them ends in it. Asked at each token, so nothing is
// taken from the arena but for words of unheard-of length.
enum { AHEAD_ROOM = 512 };

struct ahead {
    char small[AHEAD_ROOM];
    const char *text;
    size_t size, ends[WORDS_MOST], count;
};

static void look_ahead(struct arena *arena, const struct tokens *tokens, size_t i, struct ahead *out) {
    size_t need = 1;
    out->size = out->count = 0;
    while (i + out->count < tokens->count && out->count < WORDS_MOST) {
        out->ends[out->count] = strlen(tokens->at[i + out->count].fold);
        need += out->ends[out->count++] + 1;
    }
    char *to = need <= AHEAD_ROOM ? out->small : arena_alloc(arena, need);
    for (size_t k = 0; k < out->count; k++) {
        const struct token *token = &tokens->at[i + k];
        if (k && !token->joined) to[out->size++] = ' ';
        memcpy(to + out->size, token->fold, out->ends[k]);
        out->size += out->ends[k];
        out->ends[k] = out->size;
    }
    to[out->size] = '\0';
    out->text = to;
}

// Whole tokens only: of "1920s-ish" nothing is taken.
static bool take_whole(const struct ahead *ahead, struct period *p) {
    for (p->taken = 0; p->taken < ahead->count; p->taken++)
        if (ahead->ends[p->taken] >= p->size) break;
    return p->taken++ < ahead->count && ahead->ends[p->taken - 1] == p->size;
}

static bool begins_period(const struct tokens *tokens, size_t i) {
    const struct token *token = &tokens->at[i];
    return token->kind != TOKEN_SIGN || text_same(token->fold, "'") || text_same(token->fold, "~");
}

// "About 1800 pieces" counts.
static bool counts_pieces(const struct tokens *tokens, size_t i, size_t to) {
    return ANY(tokens, i, "about", "around", "approx", "approximately", "roughly", "~", "by", "c", "up",
               "before", "after", "until", "not", "no", "from", "since") &&
           to < tokens->count && tokens->at[to - 1].stop == STOP_NONE &&
           ANY(tokens, to, "pieces", "pcs", "pc", "mm", "cm", "g", "ml", "miles", "of", "buttons", "x", "by",
               "watts", "watt", "w", "pages", "degrees", "hours", "hrs", "rpm", "volts", "v", "hz", "lbs",
               "lb", "kg", "feet", "ft", "copies", "gallons", "people");
}

// What was seen to begin no period by its first word alone begins none in any note.
static bool period_at(struct arena *arena, const struct tokens *tokens, size_t i, struct period *p) {
    static const char key[] = "begins a period";
    struct ahead ahead;
    size_t looked;
    if (!begins_period(tokens, i)) return false;
    bool alone =
        tokens->at[i].plain && !tokens->at[i].slip && (i + 1 >= tokens->count || !tokens->at[i + 1].joined);
    if (alone && !token_told(tokens, i, key)) {
        *p = (struct period){0};
        return false;
    }
    look_ahead(arena, tokens, i, &ahead);
    if (!period_read_far(ahead.text, ahead.size, p, &looked)) {
        if (alone && !looked) token_tell(tokens, i, key, false);
        return false;
    }
    return take_whole(&ahead, p) && !counts_pieces(tokens, i, i + p->taken);
}

static bool era_at(struct arena *arena, const struct tokens *tokens, size_t i, struct period *p, bool *said) {
    struct ahead ahead;
    if (!begins_period(tokens, i)) return false;
    look_ahead(arena, tokens, i, &ahead);
    return period_of_era(ahead.text, ahead.size, p, said) && take_whole(&ahead, p);
}

// --- single years ---

static size_t last_before(const struct note *note, size_t i) {
    return i > 0 && note->tokens.at[i - 1].stop == STOP_NONE ? i - 1 : SIZE_MAX;
}

// "Optrel 2000 radio": a noun goes on behind the figure.
static bool names_model(const struct note *note, size_t i) {
    return i + 1 < note->tokens.count && note->tokens.at[i + 1].kind == TOKEN_WORD;
}

// Words by which a bare figure of four digits is no year of the thing.
static bool is_no_year(const struct note *note, size_t i, size_t to) {
    const struct tokens *tokens = &note->tokens;
    if (ANY(tokens, to, "piece", "pieces", "pc", "pcs", "hours", "hrs", "volts", "copies", "gallons", "watt",
            "watts", "w", "v", "mm", "g", "ml", "rpm", "hz", "count", "series", "degrees", "miles", "yards",
            "feet", "ft", "x", "by", "buttons", "nails", "tokens", "/", "or", "postmark", "%", "\"") ||
        (token_is(tokens, to, "-") && tokens->at[to].joined))
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
        other |= ANY(tokens, k, "last") && ANY(tokens, k + 1, "one", "entry", "photo", "record", "page",
                                               "name", "date", "picture", "stamp", "entries");
        other |= ANY(tokens, k, "born", "died", "married", "since", "until", "till", "retired", "moved",
                     "graduated", "expired", "expires", "inherited", "sold", "closed", "wedding", "worked",
                     "stopped", "replaced", "rewired", "repainted", "serviced", "refinished", "restored",
                     "mended", "repaired", "treated", "revarnished", "recovered", "reupholstered", "cleaned");
    }
    if (other) return STORY_OTHER;
    return bought ? (fresh ? STORY_NEW : STORY_OTHER) : STORY_NONE;
}

// A bare year or two: what stands around them may say that they are none.
static bool plain_year(const struct note *note, size_t i, const struct period *p) {
    return !is_no_year(note, i, i + p->taken);
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
                                          "second world war",
                                          "first world war",
                                          "world war ii",
                                          "world war i",
                                          "world war two",
                                          "world war one",
                                          "great war",
                                          "war-time",
                                          "inter-war",
                                          "inter war",
                                          "fin de siecle",
                                          "pre-decimal",
                                          "predecimal",
                                          "depression era",
                                          "cold war era"};
    *p = (struct period){0};
    p->taken = token_first(tokens, i, phrases, sizeof phrases / sizeof *phrases);
    if (p->taken) return true;
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
    *p = (struct period){.taken = at + 2 - i};
    return true;
}

// --- keeping ---

static bool is_hedge(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "maybe", "think", "guess", "guessing", "probably", "possibly", "perhaps", "might",
               "could", "may", "supposedly", "believe", "looks", "seems", "told", "said", "says", "say",
               "suspect", "bet", "likely", "?", "if", "unless", "reckon", "swore", "wouldn't", "suppose",
               "sounds", "remember", "should");
}

static enum sure sure_of(const struct note *note, size_t from, size_t to) {
    const struct tokens *tokens = &note->tokens;
    enum { REACH = 7 };
    if (unsure_before(note, from) || unsure_behind(note, to)) return SURE_GUESS;
    for (size_t k = from, n = 0; k > 0 && n < REACH && tokens->at[k - 1].stop < STOP_COMMA; k--, n++)
        if (is_hedge(tokens, k - 1)) return SURE_GUESS;
    if (token_is(tokens, to, "(") && token_is(tokens, to + 1, "?")) return SURE_GUESS;
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
    if (text_same(value->value, "vtg") || text_same(value->value, "Vtg") || text_same(value->value, "VTG"))
        value->value = "vintage";
    value->sure = sure;
    value->span = note_span_of(note, i, to);
    note_reading(note, i, to, name, p->because ? p->because : "word of age");
    note_take(note, i, to, TAKEN_DATE);
    bool era = sure == SURE_LIKELY && p->because && text_same(p->because, YEARS_OF_ERA);
    if ((sure != SURE_STATED && !era) || (!p->from && !p->to) || !text_same(name, "age")) return;
    if (note->record->year_from || note->record->year_to) return;
    note->record->year_from = p->from;
    note->record->year_to = p->to;
    note->record->year_because = p->because;
}

static bool is_style(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (token_is(tokens, i, "-")) i++;
    return ANY(tokens, i, "style", "styled", "look", "looking", "inspired", "type", "vibe", "flavor",
               "flavour", "revival", "reproduction", "manner", "replica", "copy", "design");
}

// "Not 1920s", "copy of a 1920s one", "after a 1920s design": of another thing, or of none.
static bool is_refused(const struct note *note, size_t i) {
    enum { REACH = 4 };
    const struct tokens *tokens = &note->tokens;
    for (size_t k = i; k > 0 && i - k < REACH && tokens->at[k - 1].stop < STOP_COMMA; k--) {
        if (ANY(tokens, k - 1, "copy", "reproduction", "replica", "doubt", "hardly", "cannot", "can't",
                "wants", "than", "nothing", "late", "early") ||
            (ANY(tokens, k - 1, "old") && ANY(tokens, k, "as")))
            return true;
        bool near = k == i ||
                    (k + 1 == i && ANY(tokens, k, "a", "an", "really", "the", "quite", "from", "of")) ||
                    (k + 2 == i && ANY(tokens, k, "from", "of", "before") && token_is(tokens, k + 1, "the"));
        if (near && ANY(tokens, k - 1, "not", "isn't", "wasn't", "never")) return true;
    }
    return false;
}

// "In the style of the 1920s".
static bool of_style(const struct note *note, size_t i) {
    const struct tokens *tokens = &note->tokens;
    if (i && token_is(tokens, i - 1, "the")) i--;
    return i > 1 && token_is(tokens, i - 1, "of") && ANY(tokens, i - 2, "style", "manner", "look", "taste");
}

static size_t keep_period(struct note *note, size_t i, const struct period *p, bool loose) {
    size_t to = i + p->taken;
    if (is_style(note, to)) {
        struct period style = *p;
        style.taken += token_is(&note->tokens, to, "-") ? 2 : 1;
        keep(note, i, &style, "style", sure_of(note, i, to));
        return style.taken;
    }
    if (of_style(note, i)) {
        keep(note, i, p, "style", sure_of(note, i, to));
        return p->taken;
    }
    if (is_refused(note, i)) return p->taken;
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

// "Oak coffer, C18, lid split", "19 c. candlestick": no more than the century. A lone C and a number may be a
// model's, so it stands alone in its clause.
static bool bare_century(const struct note *note, size_t i, struct period *p) {
    const struct tokens *tokens = &note->tokens;
    const struct token *token = &tokens->at[i];
    const char *number = token->fold;
    bool letter = *number == 'c' && tokens->text[token->from] == 'C';
    size_t last = i;
    number += letter;
    if (letter && !*number && i + 1 < tokens->count && tokens->at[i + 1].joined)
        number = tokens->at[last = i + 1].fold;
    if (strlen(number) != 2 || !is_digits(number, 2) || strcmp(number, "15") < 0 || strcmp(number, "20") > 0)
        return false;
    bool first = !i || tokens->at[i - 1].stop != STOP_NONE;
    size_t taken = last + 1 - i;
    if (!letter) {
        if (i + 1 >= tokens->count || !token_is(tokens, i + 1, "c") ||
            tokens->text[tokens->at[i + 1].to] != '.' ||
            ANY(tokens, i + 2, "stamp", "stamps", "coin", "piece", "postage"))
            return false;
        taken = 2;
    } else if (!first || (last + 1 < tokens->count && tokens->at[last + 1].stop == STOP_NONE)) {
        return false;
    }
    const char *words = arena_format(note->arena, "%sth century", number);
    if (!period_read(words, strlen(words), p)) return false;
    p->taken = taken;
    return true;
}

// "After World War II he moved": no year of the war itself.
static bool has_side(const struct tokens *tokens, size_t i) {
    if (i && token_is(tokens, i - 1, "the")) i--;
    return i && ANY(tokens, i - 1, "before", "after", "to", "until", "since", "pre", "post");
}

// `near`: there is what words of age are about, not far from here.
static size_t date_at(struct note *note, size_t i, bool near) {
    const struct tokens *tokens = &note->tokens;
    struct period p;
    bool found = near && period_at(note->arena, tokens, i, &p);
    if (found && !p.plain) return note_free(note, i, i + p.taken) ? keep_period(note, i, &p, false) : 0;
    if (found) {
        if (!plain_year(note, i, &p) || !note_free(note, i, i + p.taken)) return 0;
        if (i && ANY(tokens, i - 1, "patented", "registered", "introduced")) p.to = 0;
        return keep_period(note, i, &p, false);
    }
    if (bare_century(note, i, &p))
        return note_free(note, i, i + p.taken) ? keep_period(note, i, &p, false) : 0;
    struct period war;
    bool side = ANY(tokens, i, "before", "after", "during", "prior");
    if (side && era_at(note->arena, tokens, i, &war, &(bool){false}) && note_free(note, i, i + war.taken) &&
        (i + war.taken >= tokens->count || tokens->at[i + war.taken].stop != STOP_NONE)) {
        war.because = YEARS_OF_ERA;
        return keep_period(note, i, &war, false);
    }
    bool loose = loose_age(tokens, i, &p), said;
    struct period era;
    if (loose && !has_side(tokens, i) && era_at(note->arena, tokens, i, &era, &said)) {
        p.from = era.from;
        p.to = era.to;
        p.because = YEARS_OF_ERA;
    }
    if (loose || years_old(tokens, i, &p))
        return note_free(note, i, i + p.taken) ? keep_period(note, i, &p, true) : 0;
    return 0;
}

// "Dated 1887" and "Meiji period" leave their words to those who read marks and styles.
static void years_beside(struct note *note, size_t i) {
    enum { DAY_AND_MONTH = 4 }; // "dated 4th of May 1961"
    const struct tokens *tokens = &note->tokens;
    struct period p;
    bool era = false;
    if (note->record->year_from || note->record->year_to) return;
    const char *because = "dated so";
    if (token_is(tokens, i, "dated") && i + 1 < tokens->count) {
        size_t at = i + 1, last = i + DAY_AND_MONTH;
        while (at <= last && at < tokens->count && tokens->at[at].stop == STOP_NONE &&
               !period_at(note->arena, tokens, at, &p))
            at++;
        if (at > last || !period_at(note->arena, tokens, at, &p) ||
            sure_of(note, i, at + p.taken) != SURE_STATED)
            return;
    } else {
        if (!period_opens_era(tokens->at[i].fold) || !era_at(note->arena, tokens, i, &p, &era) || !era ||
            is_style(note, i + p.taken) || sure_of(note, i, i + p.taken) != SURE_STATED)
            return;
        because = YEARS_OF_ERA;
    }
    note->record->year_from = p.from;
    note->record->year_to = p.to;
    note->record->year_because = because;
}

// Tokens that words of age may lead to. Most notes have none, and nothing else is asked of them.
static bool *tokens_near(const struct note *note) {
    const struct tokens *tokens = &note->tokens;
    bool *near = arena_array(note->arena, tokens->count + 1, sizeof *near);
    for (size_t i = 0, done = 0; i < tokens->count; i++) {
        if (!token_passes(tokens, i, "may hold a period", period_may_hold)) continue;
        size_t from = i > PERIOD_LEAD ? i - PERIOD_LEAD : 0;
        for (done = done > from ? done : from; done <= i; done++) near[done] = true;
    }
    return near;
}

void read_dates(struct note *note) {
    const bool *near = tokens_near(note);
    for (size_t i = 0; i < note->tokens.count;) {
        copyright_at(note, i);
        size_t taken = note->taken[i] == TAKEN_NOT ? date_at(note, i, near[i]) : 0;
        i += taken ? taken : 1;
    }
    for (size_t i = 0; i < note->tokens.count; i++)
        if (near[i]) years_beside(note, i);
}

// --- without a note ---

// Words beside a bare year that make it a date: "engraved 1788", "1843 (inscribed)".
static bool tells_date(const struct tokens *tokens, size_t i) {
    return ANY(tokens, i, "dated", "date", "made", "designed", "printed", "patented", "in", "from", "perhaps",
               "probably", "possibly", "likely", "engraved", "inscribed", "published", "issued", "woven",
               "introduced", "registered", "cast", "built", "produced", "painted", "struck", "signed");
}

// A bare year may be anything, but for one that is the whole text, signs aside, or is said to be a date.
static bool is_said(const struct tokens *tokens, size_t i, const struct period *p) {
    if (!p->plain || (i && tells_date(tokens, i - 1))) return true;
    for (size_t k = 0; k < tokens->count; k++)
        if ((k < i || k >= i + p->taken) && tokens->at[k].kind != TOKEN_SIGN && !tells_date(tokens, k))
            return false;
    return true;
}

// The day of a patent or a design: the thing came then or later.
static bool is_first_day(const struct tokens *tokens, size_t i) {
    if (i > 1 && token_is(tokens, i - 1, "date")) i--;
    return i && ANY(tokens, i - 1, "patented", "patent", "introduced");
}

// What is said of the making tells more than a date alone, that more than a design's, and that more than an
// era.
enum said_of { OF_ERA, OF_DESIGN, OF_THING, OF_MAKING };

static enum said_of said_of(const struct tokens *tokens, size_t i, bool era) {
    if (era) return OF_ERA;
    if (i && ANY(tokens, i - 1, "designed", "introduced", "patented")) return OF_DESIGN;
    return i && ANY(tokens, i - 1, "made", "printed", "woven", "cast", "built", "produced") ? OF_MAKING
                                                                                            : OF_THING;
}

static bool words_at(struct arena *arena, const struct tokens *tokens, size_t i, struct period *p,
                     bool *era) {
    bool said;
    *era = false;
    if (period_at(arena, tokens, i, p)) {
        if (!is_said(tokens, i, p)) return false;
        if (is_first_day(tokens, i)) p->to = 0;
        return true;
    }
    *era = era_at(arena, tokens, i, p, &said);
    return *era;
}

static bool is_narrower(const struct period *p, const struct date_words *than) {
    return p->from && p->to && p->from >= than->from && (!than->to || p->to <= than->to);
}

bool date_words(struct arena *arena, const char *text, struct date_words *words) {
    struct note note = {.arena = arena, .tokens = tokens_cut(arena, text, strlen(text))};
    const struct tokens *tokens = &note.tokens;
    bool any = false;
    enum said_of best = OF_ERA;
    for (size_t i = 0; i < tokens->count; i++) {
        struct period p;
        bool era, found = words_at(arena, tokens, i, &p, &era);
        size_t mid = token_phrase(tokens, i, "mid century") + token_phrase(tokens, i, "midcentury");
        if (!found && !mid) continue;
        bool style = !found || is_style(&note, i + p.taken) || of_style(&note, i);
        if (style && any) continue;
        if (style) {
            *words = (struct date_words){0, 0, "a style, and no years"};
            return true;
        }
        enum said_of now = said_of(tokens, i, era);
        if (!any || now > best || (now == best && is_narrower(&p, words))) {
            *words = (struct date_words){p.from, p.to, p.because};
            best = now;
        }
        any = true;
        i += p.taken - 1;
    }
    return any;
}
