// SPDX-License-Identifier: MIT
// Words that mean something else alone. "Not Grenholt" without its "not" is a lie, "brass effect" without its
// "effect" too, and "No. 12" without its "No." is a measure to come.
#include <string.h>

#include "shelf/propose.h"
#include "text/utf8.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

// What they stand before is not, or not surely, what it seems.
static const char *const BEFORE[] = {"not",        "never", "unlike", "like",      "resembles", "resembling",
                                     "faux",       "fake",  "mock",   "imitation", "simulated", "pseudo",
                                     "artificial", "non",   "nearly", "almost"};
// The same, before a name: a copy of a lamp is a lamp, a copy of a Grenholt is none.
static const char *const BEFORE_NAME[] = {
    "after",    "copy",     "replica",  "reproduction", "repro",    "attributed", "possibly",
    "probably", "maybe",    "perhaps",  "manner",       "inspired", "unmarked",   "unsigned",
    "without",  "no",       "missing",  "minus",        "lacking",  "unbranded",  "poss",
    "prob",     "supposed", "follower", "similar",      "fits",     "for"};
// What they stand behind is told of a part, or of the looks, of the thing.
static const char *const BEHIND[] = {
    "type",       "style",    "effect",  "look",    "looking",  "tone",    "toned",   "colored",
    "coloured",   "plated",   "plate",   "only",    "copy",     "replica", "repro",   "reproduction",
    "imitation",  "inspired", "finish",  "veneer",  "veneered", "trim",    "trimmed", "bound",
    "mounted",    "tipped",   "lined",   "faced",   "clad",     "coated",  "topped",  "handled",
    "framed",     "edged",    "inlaid",  "inlay",   "backed",   "capped",  "banded",  "wrapped",
    "bladed",     "filled",   "washed",  "covered", "shaded",   "era",     "pattern", "shaped",
    "compatible", "gone",     "missing", "lost",    "broken",   "absent",  "good",    "ok"};

static const char *const LOOKS[] = {"effect", "tone", "colored", "coloured", "finish"};

struct turning {
    struct arena *arena;
    const struct note_read *read;
    struct folds claims;
    const struct kept_words *kept;
    const char **folds; // of each item; "" where it has none or several
};

static bool among(const char *word, const char *const *list, size_t count) {
    for (size_t i = 0; i < count; i++)
        if (!strcmp(word, list[i])) return true;
    return false;
}

static bool is_content(const struct turning *t, size_t i) {
    const struct kept_word *w = &t->kept->items[i];
    struct folds own = kept_folds(t->arena, t->kept, i);
    return own.count > 1 || (own.count && own.at[0][1] && !word_is_free(own.at[0])) || w->must;
}

// The next, or the one before, that is no small word; the count of items where there is none.
static size_t content_from(const struct turning *t, size_t i) {
    while (i < t->kept->count && !is_content(t, i)) i++;
    return i;
}

// One rule took both: what it made of them holds both.
static bool in_one_reading(const struct turning *t, size_t a, size_t b) {
    const struct kept_word *x = &t->kept->items[a], *y = &t->kept->items[b];
    for (size_t i = 0; i < t->read->reading_count; i++) {
        const struct reading *r = &t->read->readings[i];
        if (r->from <= x->from && r->to >= y->to) return true;
    }
    return false;
}

// A comma between them parts them.
static bool parted(const struct turning *t, size_t a, size_t b) {
    for (size_t i = a; i < b; i++)
        for (size_t at = t->kept->items[i].to; at < t->kept->items[i + 1].from; at++)
            if (strchr(",.;:!()[]|/'\"", t->kept->title[at])) return true;
    return false;
}

static bool is_coded(const struct turning *t, size_t i) {
    const struct kept_word *w = &t->kept->items[i];
    for (size_t at = w->from; at < w->to; at++)
        if (t->kept->title[at] >= '0' && t->kept->title[at] <= '9') return true;
    return false;
}

// The last item that stays together with item `i`, for what it says of what is behind it.
static size_t turn_end(const struct turning *t, size_t i) {
    const char *word = t->folds[i];
    bool always = among(word, BEFORE, COUNT(BEFORE));
    if (!always && !among(word, BEFORE_NAME, COUNT(BEFORE_NAME))) return i;
    size_t next = content_from(t, i + 1);
    if (next == t->kept->count || parted(t, i, next) || folds_hold(&t->claims, word)) return i;
    if (in_one_reading(t, i, next) || (!always && (!t->kept->items[next].must || t->kept->items[next].soft)))
        return i;
    while (next + 1 < t->kept->count && t->kept->items[next + 1].name && !is_coded(t, next + 1) &&
           !parted(t, next, next + 1))
        next++;
    return next;
}

static bool is_of_type(const struct turning *t, size_t i) {
    const struct note_span *type = &t->read->record.type.span;
    return t->kept->items[i].from < type->to && t->kept->items[i].to > type->from;
}

static bool numbers(const char *word) {
    static const char *const words[] = {"no",   "nr",   "number", "num",    "mk",
                                        "mark", "type", "model",  "series", "pattern"};
    return among(word, words, COUNT(words));
}

// A figure, a code, or a letter or two in capitals.
static bool is_number(const struct turning *t, size_t i) {
    const struct kept_word *w = &t->kept->items[i];
    size_t size = w->to - w->from;
    bool capitals = size < 5;
    for (size_t at = w->from; at < w->to; at++)
        capitals = capitals && t->kept->title[at] >= 'A' && t->kept->title[at] <= 'Z' &&
                   (size < 2 || strchr("IVXL", t->kept->title[at]));
    return capitals || is_coded(t, i);
}

// A name or a stuff; "wow look" turns nothing.
static bool is_turned(const struct turning *t, size_t i) {
    const struct kept_word *w = &t->kept->items[i];
    // "Crocodile effect" claims no crocodile.
    bool looks = among(t->folds[i + 1], LOOKS, COUNT(LOOKS));
    return (w->must && !w->soft) || w->stuff || (w->barred && looks) || !strcmp(t->folds[i + 1], "only");
}

static bool is_figure(const struct turning *t, size_t i) {
    return i < t->kept->count && fold_is_figure(t->folds[i]);
}

// The "1/2" of "9 1/2".
static bool is_fraction(const struct turning *t, size_t i) {
    const struct kept_word *w = &t->kept->items[i];
    return !strncmp(t->folds[i], "0.", 2) && memchr(t->kept->title + w->from, '/', w->to - w->from);
}

// "14 lb", "3 x 5 ft", "12 fl oz": the last item of it.
static size_t measure_end(const struct turning *t, size_t i) {
    if (!is_figure(t, i)) return i;
    size_t last = i + (i + 1 < t->kept->count && is_fraction(t, i + 1));
    for (; last + 2 < t->kept->count && is_figure(t, last + 2); last += 2)
        if (!among(t->folds[last + 1], (const char *const[]){"x", "by", "to"}, 3)) break;
    while (last + 1 < t->kept->count && fold_is_unit(t->folds[last + 1]) && !parted(t, last, last + 1))
        last++;
    return last;
}

static bool is_numbered(const struct turning *t, size_t i) {
    return numbers(t->folds[i]) && i + 1 < t->kept->count && is_number(t, i + 1) &&
           measure_end(t, i + 1) == i + 1;
}

static bool turns_behind(const struct turning *t, size_t i) {
    bool only = i + 1 < t->kept->count && !strcmp(t->folds[i + 1], "only"); // whatever a rule made of it
    // "Size 14 missing button": of the button, and not of the number before.
    if (i + 2 < t->kept->count && in_one_reading(t, i + 1, i + 2) && !in_one_reading(t, i, i + 1))
        return false;
    return i + 1 < t->kept->count && among(t->folds[i + 1], BEHIND, COUNT(BEHIND)) && is_turned(t, i) &&
           !is_of_type(t, i) && turn_end(t, i + 1) == i + 1 && !parted(t, i, i + 1) &&
           (only || !in_one_reading(t, i, i + 1)) && !folds_hold(&t->claims, t->folds[i + 1]) &&
           !is_numbered(t, i + 1); // "lamp type 3"
}

// "KB" of "KB 220".
static bool is_letters(const struct turning *t, size_t i) {
    const struct kept_word *w = &t->kept->items[i];
    for (size_t at = w->from; at < w->to; at++)
        if (t->kept->title[at] < 'A' || t->kept->title[at] > 'Z') return false;
    return w->to > w->from && w->to < w->from + 4;
}

// "No. 12", "Mk II", "Series E".
static size_t number_end(const struct turning *t, size_t i) {
    bool no = !strcmp(t->folds[i], "no");
    if (is_letters(t, i) && is_figure(t, i + 1) && measure_end(t, i + 1) == i + 1 && !parted(t, i, i + 1))
        return i + 1;
    if (!numbers(t->folds[i]) || i + 1 == t->kept->count || !is_number(t, i + 1)) return i;
    if (no ? !is_coded(t, i + 1) : measure_end(t, i + 1) > i + 1) return i; // "type 4 inch"
    return t->kept->title[t->kept->items[i].to] != '.' && parted(t, i, i + 1) ? i : i + 1;
}

// "T.R. Wexcombe": letters before a name.
static bool are_initials(const struct turning *t, size_t i) {
    const struct kept_word *w = &t->kept->items[i];
    return w->to > w->from + 1 && t->kept->title[w->to - 1] == '.' && i + 1 < t->kept->count &&
           t->kept->items[i + 1].name && !is_coded(t, i + 1);
}

// "Fenn & Dale", "Prestwick & Co".
static size_t pair_end(const struct turning *t, size_t i) {
    const struct kept_word *items = t->kept->items;
    size_t last = i;
    while (last + 2 < t->kept->count && items[last].must) {
        const struct kept_word *and = &items[last + 1];
        bool sign = and->to == and->from + 1 && strchr("&+", t->kept->title[ and->from]);
        const char *behind = t->folds[last + 2];
        if (!sign || !(items[last + 2].must || !strcmp(behind, "co") || !strcmp(behind, "son") ||
                       !strcmp(behind, "sons") || !strcmp(behind, "bros")))
            break;
        last += 2;
    }
    return last;
}

static struct kept_word joined(const struct kept_words *kept, size_t from, size_t to, bool turns) {
    struct kept_word all = kept->items[from];
    bool firm = turns;
    all.to = kept->items[to].to;
    all.several = to > from;
    all.turns = turns;
    for (size_t i = from; i <= to; i++) {
        all.must |= kept->items[i].must;
        all.unknown |= kept->items[i].unknown;
        all.read &= kept->items[i].read;
        all.name |= kept->items[i].name;
        all.barred |= kept->items[i].barred;
        all.stuff &= kept->items[i].stuff;
        firm |= kept->items[i].must && !kept->items[i].soft;
    }
    if (all.several) all.instead = NULL;
    all.must |= turns || all.several;
    all.soft = all.must && !firm;
    return all;
}

static size_t plain_end(const struct turning *t, size_t i) {
    size_t end = measure_end(t, i);
    if (end == i && are_initials(t, i)) end = i + 1;
    return pair_end(t, end);
}

static bool is_doubted(const struct turning *t, size_t i) {
    return t->kept->title[t->kept->items[i].to - 1] == '?';
}

void keep_turns(struct arena *arena, const struct note_read *read, const char *claims,
                struct kept_words *kept) {
    struct turning t = {arena, read, folds_of(arena, claims), kept,
                        arena_array(arena, kept->count + 1, sizeof *t.folds)};
    for (size_t i = 0; i <= kept->count; i++) t.folds[i] = "";
    for (size_t i = 0; i < kept->count; i++) {
        struct folds own = kept_folds(arena, kept, i);
        if (own.count == 1) t.folds[i] = own.at[0];
    }
    struct kept_word *items = arena_array(arena, kept->count + 1, sizeof *items);
    size_t count = 0;
    for (size_t i = 0; i < kept->count; i++) {
        size_t end = number_end(&t, i);
        if (end == i) end = turn_end(&t, i);
        bool turns = end > i && !numbers(t.folds[i]);
        while (kept->items[end].bound && end + 1 < kept->count) {
            end++;
            turns = true;
        }
        if (end == i) end = plain_end(&t, i);
        if (turns_behind(&t, end)) {
            end++;
            turns = true;
        }
        // "Gold nib?" doubts the gold too.
        if (end + 1 < kept->count && kept->items[end].stuff && !is_of_type(&t, end) &&
            is_doubted(&t, end + 1))
            end++;
        turns |= is_doubted(&t, end);
        items[count] = joined(kept, i, end, turns);
        bool leans = among(t.folds[i], BEFORE, COUNT(BEFORE)) ||
                     (among(t.folds[i], BEHIND, COUNT(BEHIND)) && i > 0 && !parted(&t, i - 1, i));
        items[count].denies = among(t.folds[i], BEFORE, COUNT(BEFORE));
        items[count++].leans = i > 0 && leans;
        i = end;
    }
    kept->items = items;
    kept->count = count;
}
