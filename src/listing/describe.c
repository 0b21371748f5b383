// SPDX-License-Identifier: MIT
// The text to paste: what the thing is, marks as read, measures in both systems, what comes with it, what it
// fits, and the disclosure. Claims that the title may not make are not made here either.
#include "item/parts.h"
#include "listing/listing.h"

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

static void add_values(struct describer *d, struct buf *out, const char *name) {
    const char *items[8];
    size_t count = 0;
    for (size_t i = 0; i < d->record->attribute_count && count < 8; i++) {
        const struct value *value = &d->record->attributes[i];
        if (!strcmp(value->name, name) && !value->of && may_say(d, value)) items[count++] = value->value;
    }
    if (count) buf_format(out, "%s%s", out->n ? " " : "", say_list(d->arena, items, count, d->locale));
}

static const char *type_words(const struct describer *d) {
    const struct value *type = &d->record->type;
    const char *noun = type->value && may_say(d, type)
                           ? type->value
                           : arena_format(d->arena, "%s item", d->record->family->print);
    if (d->record->count > 1 && !noun_is_collective(noun)) noun = say_plural(d->arena, noun);
    return noun;
}

// A word the type holds already is not said before it ("denim denim jacket").
static bool in_type(const struct describer *d, const char *word) {
    return strstr(type_words(d), word) != NULL;
}

static const char *with_parts(struct describer *d) {
    const char *parts[6];
    size_t count = 0, at = 0;
    for (struct part_words part; count < 6 && parts_next(d->record, &at, &part);) {
        struct buf phrase = buf_start(d->arena);
        for (size_t i = 0; i < part.count; i++)
            if (may_say(d, part.words[i])) buf_format(&phrase, "%s ", part.words[i]->value);
        if (!phrase.n) continue;
        buf_text(&phrase, part.part);
        bool plural = say_is_plural(part.part);
        parts[count++] =
            plural ? phrase.at : arena_format(d->arena, "%s %s", say_article(phrase.at), phrase.at);
    }
    return count ? arena_format(d->arena, " with %s", say_list(d->arena, parts, count, d->locale)) : "";
}

const char *listing_noun_phrase(struct arena *arena, const struct drafter *drafter,
                                const struct listing *listing) {
    struct describer d = {arena,           drafter, listing, listing->record, listing->options.locale,
                          buf_start(arena)};
    static const char *const before[] = {"brand",    "author",    "byArtist", "name",  "model",
                                         "audience", "shape",     "color",    "theme", "pattern",
                                         "finish",   "technique", "material", "style"};
    struct buf out = buf_start(arena);
    for (size_t i = 0; i < sizeof before / sizeof *before; i++) {
        struct buf values = buf_start(arena);
        add_values(&d, &values, before[i]);
        if (values.n && !in_type(&d, values.at)) buf_format(&out, "%s%s", out.n ? " " : "", values.at);
    }
    buf_format(&out, "%s%s%s", out.n ? " " : "", type_words(&d), with_parts(&d));
    return say_sentence_case(arena, out.at);
}

static void line(struct describer *d, const char *text) {
    buf_format(&d->out, "%s%s", d->out.n ? "\n" : "",
               say_spelling(d->arena, d->drafter->variants, text, d->locale));
}

static void tell_marks(struct describer *d) {
    for (size_t i = 0; i < d->record->mark_count; i++) {
        const struct mark *mark = &d->record->marks[i];
        const char *where =
            mark->where ? arena_format(d->arena, " %s", say_place(d->arena, mark->where)) : "";
        line(d, arena_format(d->arena, "Marked \"%s\"%s.", mark->text, where));
    }
}

static const char *figure_words(struct describer *d, const struct measurement *m) {
    const char *about = m->figure.about ? "about " : "";
    if (!m->range)
        return arena_format(d->arena, "%s%s", about,
                            say_both(d->arena, m->figure.value, m->figure.unit, d->locale));
    return arena_format(d->arena, "%s%s to %s", about, say_both(d->arena, m->from, m->figure.unit, d->locale),
                        say_both(d->arena, m->to, m->figure.unit, d->locale));
}

static void tell_measures(struct describer *d) {
    for (size_t i = 0; i < d->record->measurement_count; i++) {
        const struct measurement *m = &d->record->measurements[i];
        const char *of = m->of ? arena_format(d->arena, " (%s)", m->of) : "";
        line(d, arena_format(d->arena, "%s%s: %s.", say_sentence_case(d->arena, m->dimension), of,
                             figure_words(d, m)));
    }
    const struct value *size = record_stated(d->record, "size");
    if (size) line(d, arena_format(d->arena, "Size: %s.", size->value));
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
    if (from && to == from)
        line(d, arena_format(d->arena, "Dated %d.", from));
    else if (from && to)
        line(d, arena_format(d->arena, "Dated between %d and %d.", from, to));
    else if (from)
        line(d, arena_format(d->arena, "Not before %d.", from));
}

// Which areas the record does not describe: an open question of the family, named so that silence is not read
// as praise.
static void tell_open(struct describer *d) {
    if (d->record->flaw_count || d->record->clear_count || d->record->unchecked.count) return;
    line(d, "The record describes no faults and names nothing that was looked for; condition not described.");
}

const char *listing_describe(struct arena *arena, const struct drafter *drafter,
                             const struct listing *listing) {
    struct describer d = {arena,           drafter, listing, listing->record, listing->options.locale,
                          buf_start(arena)};
    const char *what = listing_noun_phrase(arena, drafter, listing);
    int count = listing->record->count;
    line(&d, count > 1 ? arena_format(arena, "%s, %s pieces.", what, say_number(arena, count))
                       : arena_format(arena, "%s.", what));
    tell_marks(&d);
    tell_measures(&d);
    tell_years(&d);
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
