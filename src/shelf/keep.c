// SPDX-License-Identifier: MIT
// What a seller calls a thing is worth more than any rule: a word stays unless a rule says what it is, or
// says that nothing shows it. In doubt it stays.
#include <string.h>

#include "say/say.h"
#include "shelf/propose.h"
#include "text/utf8.h"

enum { FOLDS_MOST = 400 };

struct folds {
    const char *at[FOLDS_MOST];
    size_t count;
};

static struct folds folds_of(struct arena *arena, const char *text) {
    struct folds f = {.count = 0};
    size_t at = 0;
    for (const char *word; f.count < FOLDS_MOST && (word = word_next(arena, text, &at));)
        f.at[f.count++] = word;
    return f;
}

static bool has(const struct folds *f, const char *word) {
    for (size_t i = 0; i < f->count; i++)
        if (!strcmp(f->at[i], word)) return true;
    return false;
}

static bool has_digit(const char *word) {
    return strpbrk(word, "0123456789") != NULL;
}

// "8.5in" is in a title that says "8.5 in".
static bool is_told(const struct folds *f, const char *word) {
    if (has(f, word)) return true;
    size_t figure = strspn(word, "0123456789./");
    if (!figure || !word[figure] || !word_is_free(word + figure)) return false;
    for (size_t i = 0; i + 1 < f->count; i++)
        if (strlen(f->at[i]) == figure && !strncmp(f->at[i], word, figure) &&
            !strcmp(f->at[i + 1], word + figure))
            return true;
    return false;
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

// Names and what stands on the thing.
static void add_names(struct arena *arena, const struct record *r, struct buf *names) {
    static const char *const kinds[] = {"brand", "model", "pattern", "author", "byArtist",
                                        "name",  "isbn",  "mpn",     "gtin"};
    (void)arena;
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
    return words.at;
}

struct keeping {
    struct arena *arena;
    const struct proposer *proposer;
    const struct note_read *read;
    struct folds names, claims;
};

static bool is_read(const struct note_read *read, size_t from, size_t to) {
    for (size_t i = 0; i < read->reading_count; i++)
        if (read->readings[i].from < to && read->readings[i].to > from) return true;
    return false;
}

// One run of bytes without a space.
static void weigh(const struct keeping *k, const char *title, struct kept_word *w) {
    const char *text = arena_copy(k->arena, title + w->from, w->to - w->from);
    struct folds folds = folds_of(k->arena, text);
    bool unread = spans_hold(k->read->record.unread, w->from, w->to);
    bool read = is_read(k->read, w->from, w->to) || spans_hold(k->read->record.asides, w->from, w->to);
    for (size_t i = 0; i < folds.count; i++) {
        const char *fold = folds.at[i];
        bool claim = has(&k->claims, fold), name = has(&k->names, fold);
        if (name || has_digit(fold)) w->must = true;
        if (claim || word_is_free(fold)) continue;
        bool strange = fold[0] && fold[1] && !is_english(k->proposer, k->arena, fold);
        if ((unread && !read) || strange) w->must = w->unknown = true;
    }
}

// Without the commas and brackets around it.
static bool is_edge(char c) {
    return c && strchr(",.;:!?()[]{}*~|<>\"'/\\-_=+^", c) != NULL;
}

// "No. 12" is one thing to say.
static bool is_number_word(const char *title, size_t from, size_t to) {
    return to - from == 2 && (title[from] | 0x20) == 'n' && strchr("oOrR", title[from + 1]);
}

struct kept_words keep_words(struct arena *arena, const struct proposer *proposer,
                             const struct listing *listing, const struct note_read *read, const char *title) {
    struct kept_words kept = {title, arena_array(arena, strlen(title) + 1, sizeof *kept.items), 0};
    struct buf names = buf_start(arena);
    add_names(arena, &read->record, &names);
    struct keeping k = {arena, proposer, read, folds_of(arena, names.at),
                        folds_of(arena, claims_in(arena, proposer, listing, title))};
    for (size_t at = 0; title[at];) {
        at += strspn(title + at, " ");
        size_t end = at + strcspn(title + at, " ");
        size_t figure = end + strspn(title + end, " ");
        size_t bare = end > at && title[end - 1] == '.' ? end - 1 : end;
        if (is_number_word(title, at, bare) && title[figure] >= '0' && title[figure] <= '9')
            end = figure + strcspn(title + figure, " ");
        struct kept_word w = {at, end, false, false};
        while (w.from < w.to && is_edge(title[w.from])) w.from++;
        while (w.to > w.from && is_edge(title[w.to - 1])) w.to--;
        // A point before a figure and inches behind it belong to it.
        if (w.from > at && title[w.from - 1] == '.' && title[w.from] >= '0' && title[w.from] <= '9') w.from--;
        if (w.to < end && title[w.to] == '"' && w.to > w.from && title[w.to - 1] >= '0' &&
            title[w.to - 1] <= '9')
            w.to++;
        weigh(&k, title, &w);
        if (w.from < w.to) kept.items[kept.count++] = w;
        at = end;
    }
    return kept;
}

static bool is_unit(const char *word) {
    static const char *const units[] = {"in",  "ft", "mm",     "cm",     "m",      "qt",  "pt",  "gal",
                                        "oz",  "lb", "kg",     "g",      "l",      "ml",  "lbs", "x",
                                        "v",   "w",  "inches", "inch",   "hp",     "yd",  "kw",  "amp",
                                        "yds", "fl", "cl",     "litres", "liters", "tall"};
    for (size_t i = 0; word && i < sizeof units / sizeof *units; i++)
        if (!strcmp(word, units[i])) return true;
    return false;
}

static bool is_figure(const char *word) {
    return *word && strspn(word, "0123456789") == strlen(word);
}

// "No. 12" is not told by "12 in tall", and a bare 12 is none either.
static bool tells_figure(const struct folds *own, const struct folds *folds) {
    bool numbered = own->count == 2 && (!strcmp(own->at[0], "no") || !strcmp(own->at[0], "nr"));
    const char *figure = own->at[own->count - 1];
    for (size_t i = 0; i < folds->count; i++) {
        if (strcmp(folds->at[i], figure) != 0) continue;
        if (numbered ? i > 0 && !strcmp(folds->at[i - 1], own->at[0])
                     : i + 1 == folds->count || !is_unit(folds->at[i + 1]))
            return true;
    }
    return false;
}

static bool lacks(struct arena *arena, const struct kept_words *kept, size_t i, const struct folds *folds) {
    const struct kept_word *w = &kept->items[i];
    if (!w->must) return false;
    struct folds own = folds_of(arena, arena_copy(arena, kept->title + w->from, w->to - w->from));
    struct folds behind = folds_of(arena, arena_string(arena, kept->title + w->to));
    bool measure = behind.count && is_unit(behind.at[0]); // a measure in the old title: its figure will do
    if (own.count && own.count < 3 && is_figure(own.at[own.count - 1]) && !measure)
        return !tells_figure(&own, folds);
    for (size_t k = 0; k < own.count; k++)
        if (!is_told(folds, own.at[k]) && !(word_is_free(own.at[k]) && !has_digit(own.at[k]))) return true;
    return false;
}

bool keep_holds(struct arena *arena, const struct kept_words *kept, const char *title) {
    struct folds folds = folds_of(arena, title);
    for (size_t i = 0; i < kept->count; i++)
        if (lacks(arena, kept, i, &folds)) return false;
    return true;
}

// A word kept for its own sake stands as a title has it; a name and a mark as the seller wrote them.
static const char *as_title(struct arena *arena, const struct kept_words *kept, size_t i) {
    const struct kept_word *w = &kept->items[i];
    const char *word = arena_copy(arena, kept->title + w->from, w->to - w->from);
    enum { ABBREVIATION_MOST = 3 };
    bool shouts = strpbrk(kept->title, "abcdefghijklmnopqrstuvwxyz") == NULL;
    if (has_digit(word) || (shouts && strlen(word) <= ABBREVIATION_MOST)) return word;
    return say_title_case(arena, shouts ? utf8_fold(arena, word) : word);
}

// Where `title` has the word of kept item `i`: its first byte, NULL if nowhere; `*end` behind it.
static const char *word_in(struct arena *arena, const struct kept_words *kept, size_t i, const char *title,
                           const char **end) {
    struct folds own = folds_of(
        arena, arena_copy(arena, kept->title + kept->items[i].from, kept->items[i].to - kept->items[i].from));
    if (!own.count || word_is_free(own.at[0])) return NULL;
    for (size_t at = 0; title[at];) {
        at += strspn(title + at, " ");
        size_t size = strcspn(title + at, " ");
        struct folds word = folds_of(arena, arena_copy(arena, title + at, size));
        if (word.count == own.count && word.count && !strcmp(word.at[0], own.at[0])) {
            *end = title + at + size;
            return title + at;
        }
        at += size;
    }
    return NULL;
}

// "On rollers": the small word before it goes with it.
static const char *with_small_word(struct arena *arena, const struct kept_words *kept, size_t i) {
    const char *word = as_title(arena, kept, i);
    if (i == 0 || kept->items[i - 1].must) return word;
    const struct kept_word *before = &kept->items[i - 1];
    const char *small =
        utf8_fold(arena, arena_copy(arena, kept->title + before->from, before->to - before->from));
    return word_is_free(small) && strlen(small) < 5 ? arena_format(arena, "%s %s", small, word) : word;
}

static const char *put_at(struct arena *arena, const char *base, size_t at, const char *word) {
    const char *gap = at && base[at - 1] != ' ' ? " " : "";
    return arena_format(arena, "%.*s%s%s%s%s", (int)at, base, gap, word,
                        base[at] && base[at] != ' ' ? " " : "", base + at);
}

// Before the word that it stood before, else behind the word that it stood behind, else at the end.
static const char *put_back(struct arena *arena, const struct kept_words *kept, size_t i, const char *base) {
    const char *end;
    if (i + 1 < kept->count) {
        const char *next = word_in(arena, kept, i + 1, base, &end);
        if (next) return put_at(arena, base, (size_t)(next - base), as_title(arena, kept, i));
    }
    for (size_t k = i; k-- > 0;)
        if (word_in(arena, kept, k, base, &end))
            return put_at(arena, base, (size_t)(end - base), with_small_word(arena, kept, i));
    return put_at(arena, base, strlen(base), with_small_word(arena, kept, i));
}

// A capital or a figure: more likely a name than a word ("Grenholt jug", "valve radio").
static bool has_name(const struct kept_words *kept, size_t i) {
    const struct kept_word *w = &kept->items[i];
    for (size_t at = w->from; at < w->to; at++)
        if (kept->title[at] < 'a' || kept->title[at] > 'z') return true;
    return false;
}

const char *keep_join(struct arena *arena, const struct kept_words *kept, const char *base) {
    struct buf front = buf_start(arena);
    const char *title = base;
    // What stood first is most likely a maker's name, and goes on to stand first.
    bool first = true;
    for (size_t i = 0; i < kept->count; i++) {
        struct folds folds = folds_of(arena, arena_format(arena, "%s %s", front.at, title));
        bool missing = lacks(arena, kept, i, &folds);
        const char *end;
        bool beside =
            i + 1 < kept->count && !kept->items[i + 1].must && word_in(arena, kept, i + 1, base, &end);
        first = first && missing && !(beside && !has_name(kept, i));
        if (!missing) continue;
        if (!first) {
            title = put_back(arena, kept, i, title);
            continue;
        }
        if (front.n) buf_byte(&front, ' ');
        buf_text(&front, as_title(arena, kept, i));
    }
    return arena_format(arena, "%s%s%s", front.at, front.n && *title ? " " : "", title);
}

const char *words_beyond(struct arena *arena, const char *a, const char *b) {
    struct folds folds = folds_of(arena, b);
    struct buf out = buf_start(arena);
    for (size_t at = 0; a[at];) {
        at += strspn(a + at, " ");
        size_t end = at + strcspn(a + at, " ");
        const char *word = arena_copy(arena, a + at, end - at);
        struct folds own = folds_of(arena, word);
        bool there = true;
        for (size_t i = 0; i < own.count; i++) there = there && is_told(&folds, own.at[i]);
        if (!there) buf_format(&out, "%s%s", out.n ? " " : "", word);
        at = end;
    }
    return out.at;
}
