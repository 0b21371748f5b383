// SPDX-License-Identifier: MIT
// What a seller calls a thing is worth more than any rule: a word stays unless a rule says what it is, or
// says that nothing shows it. In doubt it stays.
#include <string.h>

#include "say/say.h"
#include "shelf/propose.h"
#include "text/utf8.h"

static bool is_digit(char c) {
    return c >= '0' && c <= '9';
}

static bool spans_hold(const struct node *spans, size_t from, size_t to) {
    for (size_t i = 0; spans && i < spans->count; i++) {
        const struct node *span = spans->members[i].value;
        double a, b;
        if (span->count == 2 && node_number(span->members[0].value, &a) &&
            node_number(span->members[1].value, &b) && a < (double)to && b > (double)from)
            return true;
    }
    return false;
}

static bool is_english(const struct proposer *p, struct arena *arena, const char *fold) {
    struct word_entry entry;
    if (!p->book) return false; // it was told that there is none
    if (wordbook_find(p->book, fold, strlen(fold), &entry)) return true;
    const char *one = say_singular(arena, fold);
    return wordbook_find(p->book, one, strlen(one), &entry);
}

struct keeping {
    struct arena *arena;
    const struct proposer *proposer;
    const struct note_read *read;
    const char *title;
    struct folds names, claims;
    bool capitals; // tell nothing
};

static bool is_stuff(const struct keeping *k, const char *fold) {
    struct word_entry entry;
    enum { STUFF = 1u << USE_MATERIAL | 1u << USE_COLOR };
    return k->proposer->book && wordbook_find(k->proposer->book, fold, strlen(fold), &entry) &&
           (entry.uses & STUFF);
}

static bool is_of_thing(const struct keeping *k, const char *fold) {
    struct word_entry entry;
    enum {
        SAYS_NOTHING = 1u << USE_WORD | 1u << USE_FILLER | 1u << USE_PLACE | 1u << USE_PERSON |
                       1u << USE_IDEA | 1u << USE_NATURE
    };
    return k->proposer->book && wordbook_find(k->proposer->book, fold, strlen(fold), &entry) &&
           (entry.uses & ~(uint32_t)SAYS_NOTHING);
}

static bool is_filler(const struct keeping *k, const char *fold) {
    struct word_entry entry;
    return k->proposer->book && wordbook_find(k->proposer->book, fold, strlen(fold), &entry) &&
           (entry.uses & 1u << USE_FILLER);
}

// Names and what stands on the thing.
static void add_names(const struct record *r, struct buf *names) {
    static const char *const kinds[] = {"brand", "model", "pattern", "author", "byArtist",
                                        "name",  "isbn",  "mpn",     "gtin"};
    for (size_t i = 0; i < r->attribute_count; i++)
        for (size_t k = 0; k < sizeof kinds / sizeof *kinds; k++)
            if (!strcmp(r->attributes[i].name, kinds[k])) buf_format(names, " %s", r->attributes[i].value);
    for (size_t i = 0; i < r->mark_count; i++) buf_format(names, " %s", r->marks[i].text);
    for (size_t i = 0; i < r->fit_count; i++)
        buf_format(names, " %s %s", r->fits[i].brand ? r->fits[i].brand : "",
                   r->fits[i].model ? r->fits[i].model : "");
}

static const char *claims_in(struct arena *arena, const struct proposer *p, const struct listing *l,
                             const char *title) {
    struct buf words = buf_start(arena);
    const struct claims *claims = claims_weigh_text(arena, p->drafter.scanner, p->rules, l->record, title);
    for (size_t i = 0; i < claims->count; i++)
        if (claims->items[i].verdict != VERDICT_ALLOW) buf_format(&words, " %s", claims->items[i].word);
    claims = l->claims;
    for (size_t i = 0; claims && i < claims->count; i++)
        if (claims->items[i].verdict != VERDICT_ALLOW) buf_format(&words, " %s", claims->items[i].word);
    return words.at;
}

static bool is_read(const struct note_read *read, size_t from, size_t to) {
    for (size_t i = 0; i < read->reading_count; i++)
        if (read->readings[i].from < to && read->readings[i].to > from) return true;
    return false;
}

// Without the commas and brackets around it.
static bool is_edge(char c) {
    return c && strchr(",.;:!?()[]{}*~|<>\"'/\\-_=+^", c) != NULL;
}

// "Complete", where something is missing: the title would be the only one to say so.
static bool is_contradicted(const struct record *r, const char *fold) {
    static const struct {
        const char *word;
        enum flaw_class class;
    } words[] = {{"complete", CLASS_MISSING}, {"intact", CLASS_MISSING},   {"intact", CLASS_DAMAGE},
                 {"undamaged", CLASS_DAMAGE}, {"unbroken", CLASS_DAMAGE},  {"working", CLASS_FUNCTION},
                 {"works", CLASS_FUNCTION},   {"running", CLASS_FUNCTION}, {"runs", CLASS_FUNCTION},
                 {"clean", CLASS_DIRT},       {"spotless", CLASS_DIRT}};
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        for (size_t k = 0; !strcmp(words[i].word, fold) && k < r->flaw_count; k++)
            if (r->flaws[k].kind->class == words[i].class) return true;
    return false;
}

// "Jar with cork", and the cork is missing.
static bool is_missing_part(const struct keeping *k, const char *fold) {
    const struct record *r = &k->read->record;
    for (size_t i = 0; i < r->flaw_count; i++) {
        const struct item_flaw *flaw = &r->flaws[i];
        const char *part = flaw->part ? flaw->part : flaw->kind->part;
        if (flaw->kind->class != CLASS_MISSING || flaw->kind->form != ABSENCE || flaw->count || !part)
            continue;
        if (!strcmp(part, fold) && !(r->type.value && strstr(r->type.value, fold))) return true;
    }
    return false;
}

// What a rule made of a word that says what the thing is; NULL where it was read as something else: a fault,
// a measure, an aside.
static const char *said_of_thing(const struct keeping *k, const struct kept_word *w, bool *phrase) {
    static const char *const kinds[] = {"type ",   "material ", "color ",    "theme ",
                                        "style ",  "shape ",    "pattern ",  "technique ",
                                        "finish ", "brand ",    "included ", "audience "};
    const char *found = NULL;
    for (size_t i = 0; i < k->read->reading_count; i++) {
        const struct reading *r = &k->read->readings[i];
        if (r->from >= w->to || r->to <= w->from) continue;
        const char *value = NULL;
        for (size_t n = 0; n < sizeof kinds / sizeof *kinds; n++)
            if (!strncmp(r->what, kinds[n], strlen(kinds[n]))) value = r->what + strlen(kinds[n]);
        if (!value || r->stopped) return NULL;
        found = value;
        *phrase |= !strncmp(r->what, "audience ", 9); // "ladies" by "Women's"
        *phrase |= r->from < w->from || r->to > w->to || memchr(k->title + w->from, '-', w->to - w->from);
    }
    return found;
}

static bool is_of_type(const struct keeping *k, const struct kept_word *w) {
    const struct note_span *type = &k->read->record.type.span;
    return w->from < type->to && w->to > type->from;
}

// What was read in its full length: "Sz 9" is told as "Size 9".
static bool is_short(const char *fold) {
    static const char *const words[] = {"sz",  "dbl", "pr",  "pc",  "pcs", "vtg", "approx", "qty", "lge",
                                        "blk", "wht", "brn", "blu", "grn", "ylw", "orig",   "incl"};
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        if (!strcmp(words[i], fold)) return true;
    return false;
}

// "Chipped rim": the rim is told with its fault.
static bool is_of_flaw(const struct keeping *k, const struct kept_word *w, const char *fold) {
    enum { FAR = 24 };
    const struct record *r = &k->read->record;
    const char *one = say_singular(k->arena, fold);
    for (size_t i = 0; i < r->flaw_count; i++) {
        const struct item_flaw *flaw = &r->flaws[i];
        if (flaw->span.to + FAR < w->from || w->to + FAR < flaw->span.from || flaw->sure != SURE_STATED)
            continue;
        const char *const places[] = {flaw->part, flaw->where};
        for (size_t n = 0; n < 2; n++) {
            struct folds own = folds_of(k->arena, places[n] ? places[n] : "");
            if (folds_hold(&own, fold) || folds_hold(&own, one)) return true;
        }
    }
    return false;
}

// One run of bytes without a space.
static void weigh(const struct keeping *k, const char *title, struct kept_word *w) {
    const char *text = arena_copy(k->arena, title + w->from, w->to - w->from);
    struct folds folds = folds_of(k->arena, text);
    bool unread = spans_hold(k->read->record.unread, w->from, w->to);
    w->read = is_read(k->read, w->from, w->to) || spans_hold(k->read->record.asides, w->from, w->to);
    w->instead = said_of_thing(k, w, &w->phrase);
    w->type = is_of_type(k, w);
    w->stuff = folds.count == 1 && is_stuff(k, folds.at[0]);
    for (size_t i = 0; i < folds.count; i++) {
        const char *fold = folds.at[i];
        bool claim = folds_hold(&k->claims, fold), name = folds_hold(&k->names, fold);
        bool figure = strpbrk(fold, "0123456789") != NULL;
        if (name || figure) w->must = true;
        w->name |= name || (figure && !fold_is_figure(fold));
        w->barred |=
            claim || (!name && (is_contradicted(&k->read->record, fold) || is_missing_part(k, fold)));
        if (w->barred || word_is_free(fold) || !fold[1]) continue;
        bool strange = !figure && !(w->read && is_short(fold)) && !is_english(k->proposer, k->arena, fold) &&
                       !(w->read && k->proposer->book &&
                         (english_word(k->proposer->book, fold) ||
                          english_word(k->proposer->book, say_singular(k->arena, fold))));
        if ((unread && !w->read) || strange) w->must = w->unknown = true;
        w->name |= strange;
        if (!w->must && !w->instead && is_of_flaw(k, w, fold)) {
            w->read = true;
            continue;
        }
        bool thing = w->instead || (!w->read && !unread && is_of_thing(k, fold));
        if (!w->must && thing && !is_filler(k, fold)) w->must = w->soft = true;
    }
}

static bool side_by_side(const struct kept_words *kept, size_t i) {
    return kept->items[i].to + 1 == kept->items[i + 1].from;
}

// A capital where none is due: not at the start, and no word of the title has it without need.
static bool has_capital(const char *title, const struct kept_word *w) {
    size_t at = w->from, points = 0;
    for (; at < w->to; points++) {
        uint32_t point = utf8_next(title, w->to, &at);
        if (!utf8_is_letter(point) || (!points && utf8_lower(point) == point)) return false;
    }
    return points > 1;
}

static bool shouts(const char *title, const struct kept_word *w) {
    for (size_t at = w->from; at < w->to; at++)
        if (title[at] < 'A' || title[at] > 'Z') return false;
    return w->to > w->from + 2;
}

// "Series E", "Model 9b".
static bool begins_number(const struct keeping *k, const struct kept_words *kept, size_t i) {
    static const char *const words[] = {"no", "nr", "mk", "mark", "type", "model", "series", "pattern"};
    struct folds own = kept_folds(k->arena, kept, i);
    for (size_t n = 0; n < sizeof words / sizeof *words; n++)
        if (own.count == 1 && !strcmp(own.at[0], words[n])) return true;
    return false;
}

// "Quarn Rare Bird level": a run of capitals in a title that is plain but for them is a name, all of it.
static void keep_capitals(const struct keeping *k, struct kept_words *kept) {
    for (size_t from = 1; from < kept->count; from++) {
        size_t to = from;
        bool name = false;
        for (; to < kept->count && has_capital(kept->title, &kept->items[to]); to++) {
            struct folds own = kept_folds(k->arena, kept, to);
            name |= own.count && !folds_hold(&k->claims, own.at[0]) && !is_filler(k, own.at[0]);
            if (to + 1 < kept->count && (!side_by_side(kept, to) || begins_number(k, kept, to + 1))) {
                to++;
                break;
            }
        }
        bool mark = to == from + 1 && name && shouts(kept->title, &kept->items[from]);
        if ((to < from + 2 && !mark) || !name) continue;
        for (size_t i = from; i < to; i++) {
            kept->items[i].must = kept->items[i].name = true;
            kept->items[i].soft = false;
            kept->items[i].bound = i + 1 < to;
        }
        from = to;
    }
}

// "No glass": what is not there is told by a fault, or stays with its "no".
static void leave_absent(const struct keeping *k, struct kept_words *kept) {
    static const char *const words[] = {"no", "not", "without", "missing", "minus", "lacks", "w/o", "less"};
    for (size_t i = 1; i < kept->count; i++) {
        const struct kept_word *before = &kept->items[i - 1];
        const char *text = arena_copy(k->arena, kept->title + before->from, before->to - before->from);
        for (size_t n = 0; kept->items[i].soft && n < sizeof words / sizeof *words; n++)
            if (!strcmp(utf8_fold(k->arena, text), words[n]))
                kept->items[i].must = kept->items[i].soft = false;
    }
}

// "'Half hunter' watch": what the seller put in quotes is a name, all of it. Inches have no quote before
// them.
static void keep_quoted(struct kept_words *kept) {
    enum { QUOTED_MOST = 6 };
    const char *title = kept->title;
    for (size_t i = 0; i < kept->count; i++) {
        size_t from = kept->items[i].from;
        char quote = from ? title[from - 1] : '\0';
        if ((quote != '\'' && quote != '"') || (from > 1 && title[from - 2] != ' ')) continue;
        size_t last = i;
        while (last < kept->count && last < i + QUOTED_MOST && title[kept->items[last].to] != quote) last++;
        if (last == kept->count || last == i + QUOTED_MOST) continue;
        for (size_t k = i; k <= last; k++) {
            kept->items[k].must = kept->items[k].name = true;
            kept->items[k].soft = false;
            kept->items[k].bound = k < last;
        }
        i = last;
    }
}

static bool is_firm(const struct kept_word *w) {
    return w->must && !w->soft;
}

// "17 jewel", "48 bass": a number that no rule read stays before the word that it counts.
static void keep_counted(const struct keeping *k, struct kept_words *kept) {
    for (size_t i = 0; i + 1 < kept->count; i++) {
        struct kept_word *w = &kept->items[i], *behind = w + 1;
        struct folds own = kept_folds(k->arena, kept, i), next = kept_folds(k->arena, kept, i + 1);
        if (w->read || !w->must || own.count != 1 || !fold_is_figure(own.at[0]) || next.count != 1) continue;
        if (!side_by_side(kept, i) || !behind->must || behind->read || fold_is_figure(next.at[0]) ||
            fold_is_unit(next.at[0]) || word_is_free(next.at[0]))
            continue;
        w->bound = true;
        behind->must = true;
        behind->soft = false;
    }
}

static void bind(struct kept_word *w) {
    w->must = w->bound = true;
    w->soft = false;
}

// "Thornabel Silver Swan jug", "jug Blue Gate": behind a name, or behind the thing, a word for stuff is of
// the name that goes on. Where it claims, and a rule knows the next one too, nobody can tell.
static void keep_names_whole(const struct keeping *k, struct kept_words *kept) {
    for (size_t i = 1; i + 1 < kept->count; i++) {
        struct kept_word *w = &kept->items[i];
        const struct kept_word *before = w - 1, *behind = w + 1;
        struct folds own = kept_folds(k->arena, kept, i), next = kept_folds(k->arena, kept, i + 1);
        if (own.count != 1 || next.count != 1 || word_is_free(own.at[0]) || !own.at[0][1] ||
            word_is_free(next.at[0]) || !next.at[0][1])
            continue;
        bool of_type = is_of_type(k, before) && !is_of_type(k, w);
        bool firm = is_firm(before);
        if (!(firm || of_type) || is_of_type(k, behind)) continue;
        if (!side_by_side(kept, i - 1) || !side_by_side(kept, i) || begins_number(k, kept, i + 1)) continue;
        bool claims = folds_hold(&k->claims, own.at[0]), stuff = is_stuff(k, own.at[0]);
        bool goes_on = !is_stuff(k, next.at[0]) && !folds_hold(&k->claims, next.at[0]);
        if (is_firm(behind) && !claims && goes_on && !is_firm(w) && (stuff || of_type))
            bind(w);
        else if (is_firm(behind) && firm && !claims) {
            w->must = true;
            w->soft = false;
        } else if (claims && goes_on && !is_firm(w) && (stuff || (is_firm(behind) && k->capitals)))
            kept->doubtful = own.at[0];
        else if (stuff && goes_on && (before->name || of_type))
            bind(w);
    }
}

struct kept_words keep_words(struct arena *arena, const struct proposer *proposer,
                             const struct listing *listing, const struct note_read *read, const char *title,
                             bool capitals) {
    struct kept_words kept = {.title = title,
                              .items = arena_array(arena, strlen(title) + 1, sizeof *kept.items),
                              .variants = proposer->options.variants,
                              .locale = proposer->options.locale};
    struct buf names = buf_start(arena);
    add_names(&read->record, &names);
    const char *claims = claims_in(arena, proposer, listing, title);
    struct keeping k = {arena,   proposer, read, title, folds_of(arena, names.at), folds_of(arena, claims),
                        capitals};
    for (size_t at = 0; title[at];) {
        at += strspn(title + at, " ");
        size_t end = at + strcspn(title + at, " ");
        struct kept_word w = {.from = at, .to = end};
        while (w.from < w.to && is_edge(title[w.from])) w.from++;
        while (w.to > w.from && is_edge(title[w.to - 1])) w.to--;
        // A point before a figure and inches behind it belong to it.
        if (w.from > at && title[w.from - 1] == '.' && is_digit(title[w.from])) w.from--;
        bool point = w.to < end && title[w.to] == '.';
        if (point && (w.to == w.from + 1 || memchr(title + w.from, '.', w.to - w.from)) &&
            !is_digit(title[w.from]))
            w.to++;                                                    // "J.", "T.R."
        if (w.to < end && w.to > w.from && title[w.to] == '?') w.to++; // a doubt stays
        if (w.to < end && title[w.to] == '"' && w.to > w.from && is_digit(title[w.to - 1])) w.to++;
        weigh(&k, title, &w);
        if (w.from < w.to) kept.items[kept.count++] = w;
        at = end;
    }
    leave_absent(&k, &kept);
    if (!capitals) keep_capitals(&k, &kept);
    keep_quoted(&kept);
    keep_names_whole(&k, &kept);
    keep_counted(&k, &kept);
    keep_turns(arena, read, claims, &kept);
    struct folds *all = arena_array(arena, kept.count + 1, sizeof *all);
    for (size_t i = 0; i < kept.count; i++) all[i] = kept_folds(arena, &kept, i);
    kept.folds = all;
    return kept;
}

bool keep_holds(struct arena *arena, const struct kept_words *kept, const char *title) {
    struct folds folds = folds_of(arena, title);
    for (size_t i = 0; i < kept->count; i++)
        if (kept_is_missing(arena, kept, i, &folds)) return false;
    return true;
}
