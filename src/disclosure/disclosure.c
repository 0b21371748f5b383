// SPDX-License-Identifier: MIT
// Order of the paragraph: function, structure, missing parts, repairs, surface, dirt, smell, states; which
// sizes are not known; what was not looked at; then what was looked for and not seen, as narrow as it was
// said.
#include "disclosure/disclosure.h"

#include <stdint.h>
#include <string.h>

#include "disclosure/copied.h"
#include "disclosure/sentence.h"
#include "item/several.h"
#include "item/told.h"
#include "item/wording.h"
#include "text/order.h"

enum { UNSIZED_MOST = 4 }; // kinds named as without size; of more it is said in general

// Sentences told, by hash: with thousands of faults a walk over all of them would be slow.
struct told {
    size_t *slots; // index + 1; 0 where empty
    size_t slot_count;
};

struct paragraph {
    struct disclosure_maker maker;
    struct told told;
    const struct variants *variants;
};

static uint64_t hash_of(const char *text) {
    uint64_t h = 14695981039346656037u;
    for (; *text; text++) h = (h ^ (unsigned char)*text) * 1099511628211u;
    return h ^ (h >> 32);
}

static size_t slot_of(const struct paragraph *p, const char *text) {
    size_t at = (size_t)hash_of(text) & (p->told.slot_count - 1);
    while (p->told.slots[at] && !text_same(p->maker.made->sentences[p->told.slots[at] - 1].text, text))
        at = (at + 1) & (p->told.slot_count - 1);
    return at;
}

static void make_room(struct paragraph *p) {
    const struct disclosure *d = p->maker.made;
    if (2 * (d->count + 1) <= p->told.slot_count) return;
    p->told.slot_count = p->told.slot_count ? 2 * p->told.slot_count : 32;
    p->told.slots = arena_array(p->maker.arena, p->told.slot_count, sizeof *p->told.slots);
    for (size_t i = 0; i < d->count; i++) p->told.slots[slot_of(p, d->sentences[i].text)] = i + 1;
}

void disclosure_add(struct disclosure_maker *maker, const char *text, const char *because,
                    struct note_span span) {
    struct paragraph *p = (struct paragraph *)(void *)maker;
    struct disclosure *d = maker->made;
    const char *whole = arena_format(maker->arena, "%s.", say_sentence_case(maker->arena, text));
    whole = say_spelling(maker->arena, p->variants, whole, maker->locale);
    make_room(p);
    size_t slot = slot_of(p, whole);
    if (p->told.slots[slot]) return; // the same fault said twice is told once
    d->sentences = arena_grow(maker->arena, d->sentences, d->count, &d->room, sizeof *d->sentences);
    d->sentences[d->count++] = (struct sentence){whole, because, span};
    p->told.slots[slot] = d->count;
}

static enum address address_of(struct arena *arena, const struct record *record) {
    if (record_is_several(arena, record)) return ADDRESS_THERE;
    return record->type.value && say_is_plural(record->type.value) ? ADDRESS_THEY : ADDRESS_IT;
}

static bool same_clause(const struct clause *a, const struct clause *b) {
    return a->verb == b->verb && a->maybe == b->maybe && text_same(a->subject, b->subject) &&
           text_same(a->rest, b->rest) && text_same(a->place, b->place);
}

enum { TWINS_LOOKED_AT = 64 }; // further back a repeat is left to stand

static bool has_twin(const struct clause *clauses, size_t count, const struct clause *one) {
    size_t from = count > TWINS_LOOKED_AT ? count - TWINS_LOOKED_AT : 0;
    for (size_t i = from; i < count; i++)
        if (same_clause(&clauses[i], one)) return true;
    return false;
}

// "Two handles, one has been glued, you can see the glue": of the handles what was told of one of them.
static bool said_of_one(struct arena *arena, const struct record *record, size_t i) {
    const struct item_flaw *flaw = &record->flaws[i];
    if (!flaw->part || flaw->where || flaw->count || flaw->has_size || !flaw->span.to) return false;
    for (size_t k = i > TWINS_LOOKED_AT ? i - TWINS_LOOKED_AT : 0; k < i; k++) {
        const struct item_flaw *other = &record->flaws[k];
        if (other->kind == flaw->kind && other->part && other->count &&
            !strcmp(say_singular(arena, other->part), say_singular(arena, flaw->part)))
            return true;
    }
    return false;
}

static void add_flaws(struct paragraph *p, const struct record *record) {
    struct arena *arena = p->maker.arena;
    struct clause *all = arena_array(arena, record->flaw_count + 1, sizeof *all);
    struct clause *ordered = arena_array(arena, record->flaw_count + 1, sizeof *ordered);
    enum address address = address_of(arena, record);
    size_t count = 0;
    for (size_t i = 0; i < record->flaw_count; i++)
        all[i] = clause_of(arena, &record->flaws[i], address, p->maker.locale);
    for (int band = BAND_FUNCTION; band <= BAND_REST; band++)
        for (size_t i = 0; i < record->flaw_count; i++)
            if ((int)all[i].band == band && !said_of_one(arena, record, i) &&
                !has_twin(ordered, count, &all[i]))
                ordered[count++] = all[i];
    tell_clauses(&p->maker, ordered, count);
}

static void add_unsized(struct paragraph *p, const struct record *record) {
    struct arena *arena = p->maker.arena;
    const char *nouns[UNSIZED_MOST];
    size_t count = 0;
    for (size_t i = 0; i < record->flaw_count; i++) {
        if (!wording_unsized(&record->flaws[i])) continue;
        const char *noun = flaw_told(&record->flaws[i])->noun;
        bool known = false;
        for (size_t k = 0; k < count; k++) known |= text_same(nouns[k], noun);
        if (known) continue;
        if (count == UNSIZED_MOST) {
            disclosure_add(&p->maker, "size or degree not stated where none is given", "severity not stated",
                           (struct note_span){0, 0});
            return;
        }
        nouns[count++] = noun;
    }
    if (count)
        disclosure_add(&p->maker,
                       arena_format(arena, "size or degree not stated: %s",
                                    say_list(arena, nouns, count, p->maker.locale)),
                       "severity not stated", (struct note_span){0, 0});
}

struct disclosure disclosure_write(struct arena *arena, const struct ruleset *rules,
                                   const struct record *record, enum locale locale,
                                   const struct variants *variants) {
    struct disclosure made = {.text = ""};
    struct paragraph p = {
        .maker = {arena, record, copied_runs_of(arena, record->notes), rules, locale, &made},
        .variants = variants};
    add_flaws(&p, record);
    add_unsized(&p, record);
    tell_unchecked(&p.maker, record);
    tell_clear(&p.maker, record);
    struct buf all = buf_start(arena);
    for (size_t i = 0; i < made.count; i++) buf_format(&all, "%s%s", i ? " " : "", made.sentences[i].text);
    made.text = all.at;
    return made;
}
