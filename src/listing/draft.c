// SPDX-License-Identifier: MIT
// One record through the rooms: evidence, title, disclosure, questions, description, findings.
#include "listing/listing.h"
#include "listing/dated.h"
#include "listing/harm.h"
#include "listing/spelling.h"
#include "text/order.h"

#include <string.h>

#include "text/utf8.h"

void listing_find(struct arena *arena, struct listing *listing, const char *level, const char *code,
                  const char *message, struct note_span span) {
    listing->findings = arena_grow(arena, listing->findings, listing->finding_count, &listing->finding_room,
                                   sizeof *listing->findings);
    listing->findings[listing->finding_count++] = (struct finding){level, code, message, span};
}

bool listing_has_must(const struct listing *listing) {
    for (size_t i = 0; i < listing->finding_count; i++)
        if (text_same(listing->findings[i].level, "must")) return true;
    return false;
}

static const struct note_span nowhere = {0, 0};

const struct family *listing_family(struct arena *arena, const struct ruleset *rules,
                                    const struct record *record, size_t *known) {
    const struct thing *const *things = NULL;
    *known = 0;
    if (record->type.value) {
        const char *noun = utf8_fold(arena, say_singular(arena, record->type.value));
        things = ruleset_things(rules, noun, known);
        for (const char *at = noun; !things && (at = strchr(at, ' ')) != NULL;)
            things = ruleset_things(rules, ++at, known);
    }
    const struct family *other = ruleset_family(rules, "other");
    return things ? things[0]->family : other ? other : rules->families[0];
}

// A record without a family takes that of its noun; one that no rule knows is listed as "other".
static void settle_family(struct arena *arena, const struct drafter *drafter, struct record *record,
                          struct listing *l) {
    size_t known;
    if (record->family) return;
    record->family = listing_family(arena, drafter->rules, record, &known);
    listing_find(arena, l, "should", "record.family",
                 arena_format(arena, "no family was given; '%s' was taken%s", record->family->rule.id,
                              known > 1 ? ", others know the noun too" : ""),
                 nowhere);
}

// The same kind told present and not there at one place: both are printed, and the seller has to decide.
static void find_conflicts(struct arena *arena, struct listing *l) {
    const struct record *r = l->record;
    for (size_t i = 0; i < r->flaw_count; i++)
        for (size_t j = 0; j < r->clear_count; j++) {
            const struct item_flaw *flaw = &r->flaws[i];
            const struct item_clear *clear = &r->clear[j];
            if (flaw->kind != clear->kind) continue;
            const char *a = flaw->part ? flaw->part : flaw->where ? flaw->where : "";
            const char *b = clear->part ? clear->part : clear->where ? clear->where : "";
            if (*b && !text_same(a, b)) continue;
            if (!*b && *a) continue; // told for the whole, present at one place: the place is the exception
            listing_find(arena, l, "must", "record.conflict",
                         arena_format(arena, "'%s' is told both there and not there", flaw->kind->rule.id),
                         flaw->span);
        }
}

static void find_counts(struct arena *arena, struct listing *l) {
    const struct record *r = l->record;
    for (size_t i = 0; i < r->flaw_count; i++) {
        const struct item_flaw *flaw = &r->flaws[i];
        bool absent = flaw->kind->form == ABSENCE; // of the whole, what is missing included
        if (!absent && r->count > 1 && flaw->of > r->count)
            listing_find(arena, l, "should", "record.count",
                         arena_format(arena, "'%s' speaks of %d pieces, the record of %d",
                                      flaw->kind->rule.id, flaw->of, r->count),
                         flaw->span);
    }
}

// A text that is no note in English is told as what it is, not word by word.
static void find_alien(struct arena *arena, struct listing *l, const struct record *record) {
    static const struct {
        const char *are, *id, *text;
    } aliens[] = {{"page", "notes.page", "the notes are a web page: copy out what is said of the thing"},
                  {"table", "notes.table", "the notes are a table: read it as csv, one thing a row"},
                  {"language", "notes.language", "the notes are not in English: nothing was read from them"}};
    for (size_t i = 0; i < sizeof aliens / sizeof *aliens; i++)
        if (text_same(record->notes_are, aliens[i].are))
            listing_find(arena, l, "must", aliens[i].id, aliens[i].text, nowhere);
}

// What is private in it is looked for only where it matters.
static bool may_harm(struct arena *arena, const char *notes, struct note_span at) {
    const char *fold = utf8_fold(arena, arena_copy(arena, notes + at.from, at.to - at.from));
    return harm_is_foreign(fold) || harm_is_told(fold, 0);
}

enum { LOOKED_AT = 64 }; // of what a record holds thousands of

static bool same_noun(struct arena *arena, const char *place, const char *one) {
    if (!place) return false;
    const char *last = strrchr(place, ' ');
    return text_same(say_singular(arena, utf8_fold(arena, last ? last + 1 : place)), one);
}

// "Lid", left over where the chip of the lid was read: the record speaks of it.
static bool is_named(struct arena *arena, const struct record *r, const char *fold) {
    if (strchr(fold, ' ')) return false;
    const char *one = say_singular(arena, fold);
    bool named = same_noun(arena, r->type.value, one);
    for (size_t i = 0; i < r->flaw_count && i < LOOKED_AT && !named; i++) // "two of the scrolls"
        named = r->flaws[i].count && (!strcmp(fold, say_number(arena, r->flaws[i].count)) ||
                                      !strcmp(fold, arena_format(arena, "%d", r->flaws[i].count)));
    for (size_t i = 0; i < r->flaw_count && i < LOOKED_AT && !named; i++)
        named = same_noun(arena, r->flaws[i].part, one) || same_noun(arena, r->flaws[i].where, one);
    for (size_t i = 0; i < r->clear_count && i < LOOKED_AT && !named; i++)
        named = same_noun(arena, r->clear[i].part, one) || same_noun(arena, r->clear[i].where, one);
    for (size_t i = 0; i < r->attribute_count && i < LOOKED_AT && !named; i++)
        named = same_noun(arena, r->attributes[i].of, one);
    for (size_t i = 0; i < r->include_count && i < LOOKED_AT && !named; i++)
        named = same_noun(arena, r->includes[i].what, one);
    for (size_t i = 0; i < r->measurement_count && i < LOOKED_AT && !named; i++)
        named = same_noun(arena, r->measurements[i].of, one);
    for (size_t i = 0; i < r->mark_count && i < LOOKED_AT && !named; i++)
        named = same_noun(arena, r->marks[i].where, one);
    return named;
}

static bool is_asked(const struct listing *l, const char *message) {
    for (size_t i = l->finding_count > LOOKED_AT ? l->finding_count - LOOKED_AT : 0; i < l->finding_count;
         i++)
        if (!strcmp(l->findings[i].message, message)) return true;
    return false;
}

// "No rust through", "wasn't cracked": the denial was read and the word left, so that the words before it in
// its clause, `*from` bytes, stand before `fold`.
static const char *with_before(struct arena *arena, const char *notes, struct note_span at, const char *fold,
                               size_t *from) {
    enum { FAR = 12 };
    size_t start = at.from > FAR ? at.from - FAR : 0;
    while (start < at.from && notes[start] != ' ' && start) start++;
    const char *before = utf8_fold(arena, arena_copy(arena, notes + start, at.from - start));
    for (const char *stop; (stop = strpbrk(before, ".,;:!?\n")) != NULL;) before = stop + 1;
    while (*before == ' ') before++;
    *from = strlen(before);
    return arena_format(arena, "%s%s", before, fold);
}

static bool tells_function(const struct record *r) {
    for (size_t i = 0; i < r->flaw_count; i++)
        if (r->flaws[i].kind->class == CLASS_FUNCTION) return true;
    return false;
}

// Law of the house: what was not understood is asked about, and where it may be a fault nothing is told as
// not seen.
static void find_unread(struct arena *arena, struct listing *l, struct record *record) {
    const struct node *list = record->unread;
    if (record->notes_are) {
        find_alien(arena, l, record);
        return;
    }
    if (!list || list->kind != NODE_LIST || !record->notes) return;
    size_t size = strlen(record->notes);
    bool silent = false;
    for (size_t i = 0; i < list->count; i++) {
        const struct node *span = list->members[i].value;
        double from, to;
        if (span->kind != NODE_LIST || span->count != 2 || !node_number(span->members[0].value, &from) ||
            !node_number(span->members[1].value, &to) || from < 0 || to <= from || to > (double)size)
            continue;
        struct note_span at = {(size_t)from, (size_t)to};
        if (record->notes_read && at.from == record->notes_read) {
            silent = true;
            listing_find(
                arena, l, "must", "notes.long",
                arena_format(arena,
                             "the notes are too long to be of one thing: %zu bytes of them were read, %zu "
                             "were not: make one note for each thing",
                             at.from, at.to - at.from),
                (struct note_span){at.from, at.from});
            continue;
        }
        if (l->title_only && !may_harm(arena, record->notes, at)) continue;
        const char *text = listing_note(arena, l, at);
        const char *fold = utf8_fold(arena, text);
        size_t before;
        const char *clause = with_before(arena, record->notes, at, fold, &before);
        bool fault = harm_is_foreign(fold) || (!harm_is_denied(fold) && harm_is_told(clause, before));
        if (fault && harm_is_motion(fold) && tells_function(record)) continue;
        silent |= fault;
        if (!fault && is_named(arena, record, fold)) continue;
        const char *message = arena_format(arena, "\"%s\" was not understood%s", text,
                                           fault ? ", and may be a fault: write it into the record" : "");
        if (!is_asked(l, message))
            listing_find(arena, l, fault ? "must" : "could", "notes.unread", message, at);
    }
    if (silent) record->clear_count = 0;
}

static void deduct(struct arena *arena, struct listing *l, const char *text) {
    l->less = arena_grow(arena, (void *)l->less, l->less_count, &l->less_room, sizeof *l->less);
    l->less[l->less_count++] = text;
}

static void find_gaps(struct arena *arena, struct listing *l) {
    const struct record *r = l->record;
    if (!r->type.value || r->type.sure != SURE_STATED)
        listing_find(arena, l, "must", "record.type",
                     "say what the thing is: the title has only its family's word", nowhere);
    for (size_t i = 0; i < l->claims->count; i++) {
        const struct claim_found *found = &l->claims->items[i];
        if (found->verdict == VERDICT_ALLOW) continue;
        if (found->written) {
            listing_find(arena, l, "could", "claim.qualified",
                         arena_format(arena, "'%s' is written as '%s'", found->word, found->written),
                         nowhere);
            continue;
        }
        listing_find(
            arena, l, "should", "claim.unproved",
            arena_format(arena, "'%s' is kept out: %s%s", found->word,
                         found->claim->instead ? "write instead: " : "nothing in the record shows it",
                         found->claim->instead ? found->claim->instead : ""),
            nowhere);
        deduct(arena, l, arena_format(arena, "'%s' is a claim without evidence", found->word));
    }
    if (l->claims->slow)
        listing_find(arena, l, "should", "rule.slow", "a rule's pattern took too long here and was given up",
                     nowhere);
    size_t unknown = 0, unshown = l->photos.unshown;
    for (size_t i = 0; i < r->flaw_count; i++) unknown += r->flaws[i].severity == SEVERITY_UNKNOWN;
    if (unknown)
        deduct(arena, l, arena_format(arena, "%zu of %zu flaws without a degree", unknown, r->flaw_count));
    if (unshown)
        deduct(arena, l, arena_format(arena, "%zu of %zu flaws without a photo", unshown, r->flaw_count));
    if (!r->measurement_count) deduct(arena, l, "no measurements");
    if (l->title_length && l->title_length * 2 < l->options.limit)
        deduct(arena, l, "more than half of the title is unused");
}

static void tell_condition(struct arena *arena, const struct drafter *drafter, struct listing *l) {
    const struct record *record = l->record;
    l->disclosure = disclosure_write(arena, drafter->rules, record, l->options.locale, drafter->variants);
    l->grading = grade_record(arena, record);
    const char *words = concerns_words(arena, record);
    l->questions = questions_ask(arena, drafter->rules, record, words);
    l->photos = photos_wish(arena, record, words);
    find_conflicts(arena, l);
    find_counts(arena, l);
    find_gaps(arena, l);
    listing_find_dates(arena, drafter, l);
}

static struct listing *draft(struct arena *arena, const struct drafter *drafter, const struct record *given,
                             const struct title_options *options, bool title_only) {
    struct listing *l = arena_alloc(arena, sizeof *l);
    struct record *record = arena_alloc(arena, sizeof *record);
    *record = *given;
    *l = (struct listing){.record = record,
                          .options = *options,
                          .title_only = title_only,
                          .description = "",
                          .window = listing_window(arena)};
    listing_withhold_private(arena, l, record);
    l->cautions = title_only ? cautions_raise_stops(arena, drafter->scanner, drafter->rules, record)
                             : cautions_raise(arena, drafter->scanner, drafter->rules, record);
    settle_family(arena, drafter, record, l);
    find_unread(arena, l, record);
    l->claims = claims_weigh(arena, drafter->scanner, drafter->rules, record);
    listing_date(arena, drafter, l);
    listing_allow_ages(arena, drafter, l, l->claims);
    listing_qualify(arena, l->claims, record);
    listing_unclaim(arena, drafter->rules, l->claims, record);
    listing_choose(arena, l, title_plan(arena, record, l->claims, options));
    if (l->cautions->stop) listing_hold(arena, l);
    if (!l->title_only) tell_condition(arena, drafter, l);
    if (given->listing.title && !l->cautions->stop)
        listing_score_given(arena, drafter, l, given->listing.title);
    if (!l->title_only && !l->cautions->stop) l->description = listing_describe(arena, drafter, l);
    if (drafter->spelling) listing_spell(arena, l, drafter->spelling);
    return l;
}

struct listing *listing_draft(struct arena *arena, const struct drafter *drafter, const struct record *record,
                              const struct title_options *options) {
    return draft(arena, drafter, record, options, false);
}

struct listing *listing_draft_title(struct arena *arena, const struct drafter *drafter,
                                    const struct record *record, const struct title_options *options) {
    return draft(arena, drafter, record, options, true);
}
