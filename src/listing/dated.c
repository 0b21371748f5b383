// SPDX-License-Identifier: MIT
// A first year may lead: what is said to be older is a conflict. A last year only questions, since old molds
// and stock run on; of words of age it is evidence only where it is firm.
#include "listing/dated.h"

#include <string.h>

#include "text/order.h"

static const struct note_span nowhere = {0, 0};

void listing_date(struct arena *arena, const struct drafter *drafter, struct listing *l) {
    const struct record *r = l->record;
    const char **marks = arena_array(arena, r->mark_count + r->attribute_count + 1, sizeof *marks);
    size_t count = 0;
    for (size_t i = 0; i < r->mark_count; i++) marks[count++] = r->marks[i].text;
    for (size_t i = 0; i < r->attribute_count; i++) {
        const struct value *value = &r->attributes[i];
        if (!text_same(value->name, "isbn") || value->sure != SURE_STATED) continue;
        bool labeled = !strncmp(utf8_fold(arena, value->value), "isbn", 4);
        marks[count++] = labeled ? value->value : arena_format(arena, "ISBN %s", value->value);
    }
    l->dating = dating_of_marks(arena, drafter->scanner, drafter->rules, marks, count, drafter->today);
}

// The years given cannot be those of a thing that bears this mark.
static bool is_too_young(const struct record *r, const struct dated_mark *m) {
    return m->counts && m->not_before && r->year_to && r->year_to < m->not_before;
}

static bool is_too_old(const struct record *r, const struct dated_mark *m) {
    return m->counts && m->not_after && r->year_from > m->not_after;
}

static int latest_year(const struct listing *l) {
    const struct record *r = l->record;
    const struct dating *d = l->dating;
    int latest = r->year_to;
    for (size_t i = 0; i < d->count; i++) {
        const struct dated_mark *m = &d->marks[i];
        if (is_too_young(r, m)) return 0;
        if (m->counts && m->bound->sure == BOUND_FIRM && m->not_after && (!latest || m->not_after < latest))
            latest = m->not_after;
    }
    return d->fits ? latest : 0;
}

// Years are known as whole ones: the thing may be of the last day of its latest year.
static bool bears_out(const struct claim *claim, int latest, const struct day *today) {
    bool last_day = today->month == 12 && today->day == 31;
    int whole = today->year - latest - (last_day ? 0 : 1);
    if (claim->at_least) return whole >= claim->at_least;
    return claim->more_than && today->year - latest > claim->more_than;
}

// The first year that the record gives or a mark leads to.
static int earliest_year(const struct listing *l) {
    return l->dating->from > l->record->year_from ? l->dating->from : l->record->year_from;
}

// All its years lie within the era.
static bool is_of_era(const struct claim *claim, int earliest, int latest) {
    return claim->from_year && claim->to_year && earliest >= claim->from_year && latest <= claim->to_year;
}

void listing_allow_ages(struct arena *arena, const struct drafter *drafter, const struct listing *l,
                        const struct claims *claims) {
    int latest = latest_year(l), earliest = earliest_year(l);
    if (!latest || record_years_are_era(l->record)) return;
    bool has_today = drafter->today && drafter->today->year;
    for (size_t i = 0; i < claims->count; i++) {
        struct claim_found *found = &claims->items[i];
        bool of_era = is_of_era(found->claim, earliest, latest);
        if (!of_era && !(has_today && bears_out(found->claim, latest, drafter->today))) continue;
        found->verdict = VERDICT_ALLOW;
        found->written = NULL;
        found->by_years = true;
        found->evidence = of_era ? dating_years(arena, earliest, latest)
                                 : arena_format(arena, "of %d at the latest", latest);
    }
}

// One finding a rule: the same mark on ten labels is one question.
static bool is_first(const struct dating *d, size_t at) {
    for (size_t i = 0; i < at; i++)
        if (d->marks[i].bound == d->marks[at].bound) return false;
    return true;
}

static void against_years(struct arena *arena, struct listing *l, const struct dated_mark *m) {
    const struct record *r = l->record;
    const char *years = dating_years(arena, r->year_from, r->year_to);
    bool firm = m->bound->sure == BOUND_FIRM;
    if (is_too_young(r, m))
        listing_find(arena, l, firm ? "should" : "could", firm ? "dates.conflict" : "dates.question",
                     arena_format(arena, "the years are given as %s, but '%s' was not used before %d", years,
                                  m->words, m->not_before),
                     nowhere);
    if (is_too_old(r, m))
        listing_find(arena, l, "could", "dates.question",
                     arena_format(arena, "the years are given as %s; marks such as '%s' mostly end with %d",
                                  years, m->words, m->not_after),
                     nowhere);
}

void listing_find_dates(struct arena *arena, const struct drafter *drafter, struct listing *l) {
    const struct dating *d = l->dating;
    const struct record *r = l->record;
    if (drafter->today && drafter->today->year && r->year_from > drafter->today->year)
        listing_find(arena, l, "should", "dates.future",
                     arena_format(arena, "the years are given as %s, which is after today",
                                  dating_years(arena, r->year_from, r->year_to)),
                     nowhere);
    if (d->conflict_count)
        listing_find(arena, l, "should", "dates.conflict", dating_conflict_text(arena, &d->conflicts[0]),
                     nowhere);
    for (size_t i = 0; i < d->count; i++) {
        const struct dated_mark *m = &d->marks[i];
        if (!is_first(d, i)) continue;
        against_years(arena, l, m);
        if (m->wrong)
            listing_find(arena, l, "should", "dates.number",
                         arena_format(arena, "'%s': %s; look at it again", m->words, m->wrong), nowhere);
    }
    if (d->future_count)
        listing_find(arena, l, "should", "dates.future",
                     arena_format(arena, "'%s' was not used before %d, which is still to come",
                                  d->future[0]->words, d->future[0]->not_before),
                     nowhere);
}
