// SPDX-License-Identifier: MIT
// The text to paste: what the thing is, marks as read, measures in both systems, what comes with it, what it
// fits, and the disclosure. Claims that the title may not make are not made here either.
#include "item/narrower.h"
#include "item/parts.h"
#include "item/several.h"
#include "item/told.h"
#include "listing/listing.h"
#include "text/order.h"

#include <string.h>

struct describer {
    struct arena *arena;
    const struct drafter *drafter;
    const struct listing *listing;
    const struct record *record;
    enum locale locale;
    struct buf out;
};

static bool may_say(const struct describer *d, const struct value *value) {
    return value->sure == SURE_STATED && !claims_bar(d->listing->claims, value->value);
}

// A rule may know a plural that spelling does not give: "cartes de visite".
static const char *plural_of(const struct describer *d, const char *noun) {
    const struct family *family = d->record->family;
    for (size_t i = 0; i < family->thing_count; i++)
        if (family->things[i].plural && text_same(family->things[i].noun, noun))
            return family->things[i].plural;
    return say_plural(d->arena, noun);
}

// "Item, possibly a sextant".
static const char *hedged_type(const struct describer *d) {
    const struct value *type = &d->record->type;
    bool many = record_is_several(d->arena, d->record) || say_is_plural(type->value);
    const char *noun = many ? say_plural(d->arena, type->value)
                            : arena_format(d->arena, "%s %s", say_article(type->value), type->value);
    return arena_format(d->arena, "%s, %s %s", many ? "items" : "item",
                        type->sure == SURE_LIKELY ? "probably" : "possibly", noun);
}

static const char *type_words(const struct describer *d) {
    const struct value *type = &d->record->type;
    if (type->value && type->sure != SURE_STATED && !claims_bar(d->listing->claims, type->value))
        return hedged_type(d);
    const char *noun =
        type->value && may_say(d, type) ? type->value : say_item_of(d->arena, d->record->family->print);
    if (record_is_several(d->arena, d->record) && !noun_is_collective(noun)) noun = plural_of(d, noun);
    return noun;
}

// A word the type holds already is not said before it ("denim denim jacket").
static bool in_type(const struct describer *d, const char *word) {
    return strstr(type_words(d), word) != NULL;
}

// "Blue band", "fish scale pattern": a noun of its own, which the thing is told to be with. Words that only
// call a pattern ("willow", "egg and dart") stand before the noun.
static bool is_shown(const struct value *value) {
    static const char *const shown[] = {"band",   "stripe", "border", "line", "pattern", "design",
                                        "motif",  "scene",  "edging", "edge", "panel",   "medallion",
                                        "wreath", "scroll", "spot",   "dot",  "flower",  "stars"};
    const char *head = text_same(value->name, "pattern") ? strrchr(value->value, ' ') : NULL;
    for (size_t i = 0; head && i < sizeof shown / sizeof *shown; i++) {
        size_t n = strlen(shown[i]);
        if (!strncmp(head + 1, shown[i], n) && (!head[1 + n] || !strcmp(head + 1 + n, "s"))) return true;
    }
    return false;
}

static bool has_name(const struct value *value, const char *name) {
    if (strcmp(value->name, "style") != 0) return text_same(value->name, name);
    return !strcmp(name, strchr(value->value, ' ') ? "style, words" : "style");
}

// "Etched" and "etching" are one technique.
static bool same_root(const char *a, const char *b) {
    static const char *const ends[] = {"ing", "ed", "d", "s", ""};
    for (size_t i = 0; i < sizeof ends / sizeof *ends; i++)
        for (size_t k = 0; k < sizeof ends / sizeof *ends; k++) {
            size_t n = strlen(a), m = strlen(b), x = strlen(ends[i]), y = strlen(ends[k]);
            if (n > x + 3 && n - x == m - (m > y ? y : 0) && !strcmp(a + n - x, ends[i]) &&
                !strcmp(b + m - (m > y ? y : 0), ends[k]) && !strncmp(a, b, n - x))
                return true;
        }
    return false;
}

static bool is_among(const char *const *items, size_t count, const char *value) {
    for (size_t i = 0; i < count; i++)
        if (same_root(items[i], value)) return true;
    return false;
}

static void add_values(struct describer *d, struct buf *out, const char *name) {
    const char *items[8];
    size_t count = 0;
    for (size_t i = 0; i < d->record->attribute_count && count < 8; i++) {
        const struct value *value = &d->record->attributes[i];
        if (has_name(value, name) && !value->of && may_say(d, value) &&
            !value_said_narrower(d->record, value) && !in_type(d, value->value) && !is_shown(value) &&
            !is_among(items, count, value->value))
            items[count++] = value->value;
    }
    if (count) buf_format(out, "%s%s", out->n ? " " : "", say_list(d->arena, items, count, d->locale));
}

static bool ends_with_word(struct arena *arena, const char *text, const char *word) {
    size_t n = strlen(text), m = strlen(word);
    bool apart = n >= m && (n == m || text[n - m - 1] == ' ');
    return apart && text_same(utf8_fold(arena, text + n - m), utf8_fold(arena, word));
}

// The name of a work may end in what it is: "The School Atlas" is not said to be an atlas again.
static bool name_says_type(const struct describer *d) {
    const struct value *name = record_stated(d->record, "name");
    const char *type = type_words(d), *head = strrchr(type, ' ');
    return name && ends_with_word(d->arena, name->value, head ? head + 1 : type);
}

// Parts that take no article: "with hemp netting".
static bool is_stuff(const char *part) {
    static const char *const stuff[] = {"netting", "lettering",  "stitching", "edging",     "piping",
                                        "trim",    "hardware",   "wiring",    "upholstery", "banding",
                                        "webbing", "decoration", "padding",   "foliage",    "beading"};
    const char *head = strrchr(part, ' ');
    for (size_t i = 0; i < sizeof stuff / sizeof *stuff; i++)
        if (text_same(head ? head + 1 : part, stuff[i])) return true;
    return false;
}

static const char *with_parts(struct describer *d) {
    enum { PARTS_MOST = 6 };
    const char *parts[PARTS_MOST];
    size_t count = 0, at = 0;
    for (size_t i = 0; i < d->record->attribute_count && count + 1 < PARTS_MOST; i++) {
        const struct value *value = &d->record->attributes[i];
        if (value->of || !is_shown(value) || !may_say(d, value) || in_type(d, value->value)) continue;
        bool many = record_is_several(d->arena, d->record);
        const char *one = value->value;
        if (many && !say_is_plural(one)) one = say_plural(d->arena, one); // "six mugs with blue bands"
        parts[count++] = say_is_plural(one) ? one : arena_format(d->arena, "%s %s", say_article(one), one);
    }
    for (struct part_words part; count < PARTS_MOST && parts_next(d->record, &at, &part);) {
        struct buf phrase = buf_start(d->arena);
        for (size_t i = 0; i < part.count; i++)
            if (may_say(d, part.words[i])) buf_format(&phrase, "%s ", part.words[i]->value);
        if (!phrase.n) continue;
        buf_text(&phrase, part.part);
        bool plural = say_is_plural(part.part) || is_stuff(part.part);
        parts[count++] =
            plural ? phrase.at : arena_format(d->arena, "%s %s", say_article(phrase.at), phrase.at);
    }
    bool hedged = d->record->type.value && d->record->type.sure != SURE_STATED;
    return count ? arena_format(d->arena, "%s with %s", hedged ? "," : "",
                                say_list(d->arena, parts, count, d->locale))
                 : "";
}

static const char *spelled(const struct describer *d, const char *text) {
    return say_spelling(d->arena, d->drafter->variants, text, d->locale);
}

// With a small first letter where it is no name.
static const char *noun_words(struct describer *d) {
    // What it is of, and what for, stands next to the noun: "oak music cabinet", "leather school satchel",
    // but "wall mounted pine rack".
    static const char *const before[] = {"brand",     "author",       "byArtist", "name",    "model",
                                         "audience",  "shape",        "color",    "pattern", "finish",
                                         "technique", "style, words", "material", "style",   "theme"};
    struct buf out = buf_start(d->arena);
    enum { NAMES = 5 }; // are spelled as they are
    for (size_t i = 0; i < sizeof before / sizeof *before; i++) {
        struct buf values = buf_start(d->arena);
        add_values(d, &values, before[i]);
        if (!values.n || in_type(d, values.at)) continue;
        buf_format(&out, "%s%s", out.n ? " " : "", i < NAMES ? values.at : spelled(d, values.at));
    }
    if (!name_says_type(d)) buf_format(&out, "%s%s", out.n ? " " : "", spelled(d, type_words(d)));
    buf_text(&out, spelled(d, with_parts(d)));
    return out.at;
}

const char *listing_noun_phrase(struct arena *arena, const struct drafter *drafter,
                                const struct listing *listing) {
    struct describer d = {arena,           drafter, listing, listing->record, listing->options.locale,
                          buf_start(arena)};
    return say_sentence_case(arena, noun_words(&d));
}

// "Six white mugs", "Socket set, 29 pieces".
static const char *counted_phrase(struct describer *d) {
    const char *what = noun_words(d);
    int count = d->record->count;
    if (count < 2) return say_sentence_case(d->arena, what);
    const struct value *type = &d->record->type;
    const char *number = say_number(d->arena, count);
    if (!type->value || noun_is_collective(type->value))
        return arena_format(d->arena, "%s, %s pieces", say_sentence_case(d->arena, what), number);
    return arena_format(d->arena, "%s %s", say_sentence_case(d->arena, number), what);
}

// Holds what is spelled as it stands on the thing.
static void line_as_is(struct describer *d, const char *text) {
    buf_format(&d->out, "%s%s", d->out.n ? "\n" : "", text);
}

static void line(struct describer *d, const char *text) {
    line_as_is(d, spelled(d, text));
}

static void tell_marks(struct describer *d) {
    for (size_t i = 0; i < d->record->mark_count; i++) {
        const struct mark *mark = &d->record->marks[i];
        if (told_is_owners(d->record, mark->text)) continue; // the disclosure tells that they are there
        const char *where =
            mark->where ? arena_format(d->arena, " %s", spelled(d, say_place(d->arena, mark->where))) : "";
        line_as_is(d, arena_format(d->arena, "Marked \"%s\"%s.", mark->text, where));
    }
    for (size_t i = 0; i < d->listing->withheld_count; i++)
        if (d->listing->withheld[i].told) line(d, d->listing->withheld[i].told);
}

static const char *figure_words(struct describer *d, const struct measurement *m) {
    const char *about = m->figure.about ? "about " : "";
    if (!m->range)
        return arena_format(d->arena, "%s%s", about,
                            say_both(d->arena, m->figure.value, m->figure.unit, d->locale));
    return arena_format(d->arena, "%s%s to %s", about, say_both(d->arena, m->from, m->figure.unit, d->locale),
                        say_both(d->arena, m->to, m->figure.unit, d->locale));
}

// How a dimension is said behind its figure; others are named before it.
static const char *dimension_word(const char *dimension) {
    static const char *const words[][2] = {{"height", "tall"},     {"width", "wide"},
                                           {"depth", "deep"},      {"length", "long"},
                                           {"diameter", "across"}, {"circumference", "around"}};
    for (size_t i = 0; i < sizeof words / sizeof *words; i++)
        if (text_same(dimension, words[i][0])) return words[i][1];
    return NULL;
}

static bool is_marked(const struct describer *d, const struct measurement *m) {
    const char *figure = say_decimal(d->arena, m->figure.value);
    for (size_t i = 0; i < d->record->mark_count; i++)
        if (strstr(d->record->marks[i].text, figure)) return true;
    return false;
}

static void tell_measures(struct describer *d) {
    struct buf sizes = buf_start(d->arena), others = buf_start(d->arena);
    for (size_t i = 0; i < d->record->measurement_count; i++) {
        const struct measurement *m = &d->record->measurements[i];
        const char *word = dimension_word(m->dimension), *figure = figure_words(d, m);
        const char *of = m->of ? arena_format(d->arena, "%s ", m->of) : "";
        if (word) {
            buf_format(&sizes, "%s%s%s %s", sizes.n ? ", " : "", of, figure, word);
        } else if (text_same(m->dimension, "capacity")) {
            // What it holds is told as it was marked or given, never promised.
            const char *lead = is_marked(d, m) ? "Marked capacity" : "Capacity as given";
            buf_format(&others, "%s%s: %s%s.", others.n ? "\n" : "", lead, of, figure);
        } else
            buf_format(&others, "%s%s: %s%s.", others.n ? "\n" : "",
                       say_sentence_case(d->arena, m->dimension), of, figure);
    }
    if (sizes.n) line(d, arena_format(d->arena, "Measures: %s.", sizes.at));
    if (others.n) line(d, others.at);
    const struct value *size = record_stated(d->record, "size");
    if (size && may_say(d, size)) line(d, arena_format(d->arena, "Size: %s.", size->value));
}

// "Possibly mahogany": a guess is told as one, and no title holds it.
static void tell_guesses(struct describer *d) {
    static const char *const names[] = {"material", "color", "age", "finish", "technique"};
    const char *items[6];
    size_t count = 0;
    for (size_t i = 0; i < d->record->attribute_count && count < 6; i++) {
        const struct value *value = &d->record->attributes[i];
        bool known = false;
        for (size_t k = 0; k < sizeof names / sizeof *names; k++) known |= !strcmp(value->name, names[k]);
        if (!known || value->sure == SURE_STATED || claims_bar(d->listing->claims, value->value)) continue;
        items[count++] =
            value->of ? arena_format(d->arena, "%s (%s)", value->value, value->of) : value->value;
    }
    struct buf all = buf_start(d->arena);
    for (size_t i = 0; i < count; i++) buf_format(&all, "%s%s", i ? " or " : "", items[i]);
    if (count) line(d, arena_format(d->arena, "Possibly %s.", all.at));
}

static void tell_included(struct describer *d) {
    const char *items[12];
    size_t count = 0;
    for (size_t i = 0; i < d->record->include_count && count < 12; i++) {
        const struct item_included *included = &d->record->includes[i];
        items[count++] = included->count > 1
                             ? arena_format(d->arena, "%s %s", say_number(d->arena, included->count),
                                            say_plural(d->arena, included->what))
                             : included->what;
    }
    if (count) line(d, arena_format(d->arena, "Included: %s.", say_list(d->arena, items, count, d->locale)));
}

static void tell_fits(struct describer *d) {
    for (size_t i = 0; i < d->record->fit_count; i++) {
        const struct fit *fit = &d->record->fits[i];
        const char *space = fit->brand && fit->model ? " " : "";
        const char *lead = fit->sure == SURE_STATED ? "Fits" : "The seller believes that it fits";
        line(d, arena_format(d->arena, "%s %s%s%s.", lead, fit->brand ? fit->brand : "", space,
                             fit->model ? fit->model : ""));
    }
}

static void tell_years(struct describer *d) {
    int from = d->record->year_from, to = d->record->year_to;
    if (record_years_are_era(d->record)) return;
    if (from && to == from)
        line(d, arena_format(d->arena, "Dated %d.", from));
    else if (from && to)
        line(d, arena_format(d->arena, "Dated between %d and %d.", from, to));
    else if (from)
        line(d, arena_format(d->arena, "Not before %d.", from));
}

// --- what the record does not describe, so that silence is not read as praise ---

static bool names(struct arena *arena, const char *text, const char *area) {
    if (!text) return false;
    const char *folded = utf8_fold(arena, text);
    size_t n = strlen(area);
    for (const char *at = folded; (at = strstr(at, area)) != NULL; at += n) {
        bool starts = at == folded || at[-1] == ' ' || at[-1] == '-';
        const char *end = at + n;
        end += *end == 's';
        if (starts && (!*end || strchr(" -,", *end))) return true;
    }
    return false;
}

static bool describes(const struct describer *d, const char *area) {
    const struct record *r = d->record;
    bool said = false;
    for (size_t i = 0; i < r->flaw_count && !said; i++)
        said = names(d->arena, r->flaws[i].part, area) || names(d->arena, r->flaws[i].where, area) ||
               names(d->arena, r->flaws[i].kind->part, area) || names(d->arena, r->flaws[i].kind->noun, area);
    for (size_t i = 0; i < r->clear_count && !said; i++)
        said = names(d->arena, r->clear[i].part, area) || names(d->arena, r->clear[i].where, area);
    for (size_t i = 0; i < r->unchecked.count && !said; i++) said = names(d->arena, r->unchecked.at[i], area);
    for (size_t i = 0; i < r->mark_count && !said; i++) said = names(d->arena, r->marks[i].where, area);
    for (size_t i = 0; i < r->attribute_count && !said; i++)
        said = names(d->arena, r->attributes[i].of, area);
    return said;
}

enum { AREAS_MOST = 4 };

static void tell_open(struct describer *d) {
    const struct record *r = d->record;
    if (!r->flaw_count && !r->clear_count && !r->unchecked.count)
        line(d, "Condition not described: no faults are named, and nothing was said to be looked for.");
    const char *open[AREAS_MOST];
    size_t count = 0;
    for (size_t i = 0; i < r->family->areas.count && count < AREAS_MOST; i++)
        if (!describes(d, r->family->areas.at[i])) open[count++] = r->family->areas.at[i];
    if (count)
        line(d, arena_format(d->arena, "Not described: %s.", say_list(d->arena, open, count, d->locale)));
}

const char *listing_describe(struct arena *arena, const struct drafter *drafter,
                             const struct listing *listing) {
    struct describer d = {arena,           drafter, listing, listing->record, listing->options.locale,
                          buf_start(arena)};
    line_as_is(&d, arena_format(arena, "%s.", counted_phrase(&d)));
    tell_marks(&d);
    tell_measures(&d);
    tell_years(&d);
    tell_guesses(&d);
    tell_included(&d);
    tell_fits(&d);
    if (*listing->disclosure.text) {
        buf_byte(&d.out, '\n');
        line(&d, arena_format(arena, "Condition %s (%s): %s", grade_letter(listing->grading.grade),
                              grade_word(listing->grading.grade), listing->disclosure.text));
    }
    tell_open(&d);
    return d.out.at;
}
