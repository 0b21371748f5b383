// SPDX-License-Identifier: MIT
// Puts the phrases in title order and turns them into the numbers of a title problem.
#include "title/plan.h"

#include <stdlib.h>
#include <string.h>

#include "text/order.h"

static const char *const rollup_texts[ROLLUP_COUNT] = {NULL, "For Repair or Spares", "Damaged", "Incomplete"};

const char *rollup_words(enum rollup rollup) {
    return rollup_texts[rollup];
}

static size_t place_of(const struct family *family, enum slot slot) {
    if (slot == SLOT_SYNONYM) {
        for (size_t i = 0; i < family->order.count; i++)
            if (family->order.at[i] == SLOT_SYNONYM) return 2 * i;
        return place_of(family, SLOT_TYPE) + 1; // right behind the type
    }
    for (size_t i = 0; i < family->order.count; i++)
        if (family->order.at[i] == slot) return 2 * i;
    return 2 * family->order.count;
}

static size_t place_of_phrase(const struct family *family, const struct plan_phrase *phrase) {
    size_t own = place_of(family, phrase->after_type ? SLOT_SYNONYM : phrase->slot);
    size_t type = place_of(family, SLOT_TYPE);
    return phrase->before_type && type && own > type ? type - 1 : own;
}

struct ordered {
    struct plan_phrase phrase;
    size_t place;
};

static int phrase_order(const void *a, const void *b) {
    const struct ordered *x = a, *y = b;
    if (x->place != y->place) return x->place < y->place ? -1 : 1;
    return (x->phrase.rank > y->phrase.rank) - (x->phrase.rank < y->phrase.rank);
}

static void put_in_order(struct phrase_maker *m) {
    struct title_plan *plan = m->plan;
    struct ordered *all = arena_array(m->arena, plan->count + 1, sizeof *all);
    size_t count = 0;
    for (size_t i = 0; i < plan->count; i++)
        if (plan->phrases[i].count)
            all[count++] =
                (struct ordered){plan->phrases[i], place_of_phrase(m->record->family, &plan->phrases[i])};
    if (count) qsort(all, count, sizeof *all, phrase_order);
    for (size_t i = 0; i < count; i++) plan->phrases[i] = all[i].phrase;
    plan->count = count;
}

static struct title_spelling number(struct phrase_maker *m, const char *text, int tells, int cost,
                                    bool name) {
    struct title_spelling s = {
        .length = count_text(text, strlen(text), m->options->unit), .tells = tells, .cost = cost};
    struct numbers stems = vocabulary_stems(m->arena, &m->plan->stems, text);
    s.stems = stems.at;
    s.stem_count = stems.count;
    if (!name) {
        struct numbers words = vocabulary_words(m->arena, &m->plan->words, text);
        s.words = words.at;
        s.word_count = words.count;
    }
    return s;
}

static void number_rollups(struct phrase_maker *m) {
    struct title_plan *plan = m->plan;
    struct title_spelling *rollups = arena_array(m->arena, ROLLUP_COUNT, sizeof *rollups);
    size_t count = 0;
    for (int i = 0; i < ROLLUP_COUNT; i++) plan->rollup_index[i] = -1;
    for (size_t i = 0; i < plan->count; i++) {
        enum rollup rollup = plan->phrases[i].rollup;
        if (!plan->phrases[i].must || rollup == ROLLUP_NONE || plan->rollup_index[rollup] >= 0) continue;
        plan->rollup_text[rollup] = rollup_texts[rollup];
        plan->rollup_index[rollup] = (int)count;
        rollups[count++] = number(m, rollup_texts[rollup], 4, 1, false);
    }
    plan->problem.rollups = rollups;
    plan->problem.rollup_count = count;
}

static void number_phrases(struct phrase_maker *m) {
    struct title_plan *plan = m->plan;
    struct title_phrase *phrases = arena_array(m->arena, plan->count + 1, sizeof *phrases);
    for (size_t i = 0; i < plan->count; i++) {
        const struct plan_phrase *from = &plan->phrases[i];
        struct title_spelling *spellings = arena_array(m->arena, from->count, sizeof *spellings);
        for (size_t k = 0; k < from->count; k++)
            spellings[k] = number(m, from->spellings[k].text, from->spellings[k].tells,
                                  from->spellings[k].cost, from->name);
        bool covered = from->must && from->rollup != ROLLUP_NONE;
        phrases[i] = (struct title_phrase){spellings, from->count, from->must,
                                           covered ? plan->rollup_index[from->rollup] : -1};
    }
    plan->problem.phrases = phrases;
    plan->problem.phrase_count = plan->count;
}

static bool all_held(const struct numbers *own, const struct numbers *held) {
    size_t said = 0;
    for (size_t k = 0; k < own->count; k++)
        for (size_t j = 0; j < held->count; j++) said += own->at[k] == held->at[j];
    return own->count && said == own->count;
}

static void drop_echo(struct phrase_maker *m, struct plan_phrase *phrase, const char *why) {
    phrase_bar(m, phrase->spellings[0].text, why);
    phrase->count = 0;
}

static struct numbers *stems_of_all(struct phrase_maker *m) {
    struct title_plan *plan = m->plan;
    struct numbers *stems = arena_array(m->arena, plan->count + 1, sizeof *stems);
    for (size_t i = 0; i < plan->count; i++)
        if (plan->phrases[i].count)
            stems[i] = vocabulary_stems(m->arena, &plan->stems, plan->phrases[i].spellings[0].text);
    return stems;
}

// What the maker, the model, the name and the material say together.
static struct numbers said_by_facts(struct phrase_maker *m, const struct numbers *stems) {
    const struct title_plan *plan = m->plan;
    size_t room = 0;
    for (size_t i = 0; i < plan->count; i++) room += stems[i].count;
    struct numbers all = {arena_array(m->arena, room + 1, sizeof *all.at), 0};
    for (size_t i = 0; i < plan->count; i++) {
        enum slot slot = plan->phrases[i].slot;
        if (slot != SLOT_BRAND && slot != SLOT_MODEL && slot != SLOT_NAME && slot != SLOT_MATERIAL) continue;
        for (size_t k = 0; k < stems[i].count; k++) all.at[all.count++] = stems[i].at[k];
    }
    return all;
}

static const struct numbers *type_of(const struct title_plan *plan, const struct numbers *stems) {
    for (size_t i = 0; i < plan->count; i++)
        if (plan->phrases[i].slot == SLOT_TYPE && plan->phrases[i].count) return &stems[i];
    return NULL;
}

static bool any_held(const struct numbers *own, const struct numbers *held, const struct numbers *but) {
    for (size_t k = 0; k < own->count; k++) {
        bool in = false, out = false;
        for (size_t j = 0; j < held->count; j++) in |= own->at[k] == held->at[j];
        for (size_t j = 0; j < but->count; j++) out |= own->at[k] == but->at[j];
        if (in && !out) return true;
    }
    return false;
}

// A mark that maker, model or material say already goes. One that says the maker and more becomes the maker's
// fuller wording, in the maker's place: the maker itself is never lost to a mark that does not fit.
static void merge_marks(struct phrase_maker *m) {
    struct title_plan *plan = m->plan;
    const struct numbers *stems = stems_of_all(m);
    struct numbers facts = said_by_facts(m, stems);
    for (size_t i = 0; i < plan->count; i++) {
        struct plan_phrase *mark = &plan->phrases[i];
        if (mark->slot != SLOT_MARK || !mark->count) continue;
        if (all_held(&stems[i], &facts)) {
            drop_echo(m, mark, "maker, model or material say it already");
            continue;
        }
        for (size_t j = 0; mark->count && j < plan->count; j++) {
            struct plan_phrase *brand = &plan->phrases[j];
            if (brand->slot != SLOT_BRAND || !brand->count || brand->count == 8 ||
                !all_held(&stems[j], &stems[i]))
                continue;
            // "HOLLIN MILLS ALL WOOL" beside a wool blanket: the maker alone
            const struct numbers *type = type_of(plan, stems);
            if (type && any_held(&stems[i], type, &stems[j])) {
                drop_echo(m, mark, "maker and type say it already");
                continue;
            }
            memmove(brand->spellings + 1, brand->spellings, brand->count * sizeof *brand->spellings);
            brand->spellings[0].text = mark->spellings[0].text;
            brand->spellings[0].tells += 6;
            brand->count++;
            mark->count = 0;
        }
    }
}

static bool is_look(enum slot slot) {
    return slot == SLOT_MATERIAL || slot == SLOT_COLOR || slot == SLOT_TECHNIQUE || slot == SLOT_PATTERN ||
           slot == SLOT_THEME || slot == SLOT_STYLE || slot == SLOT_FINISH;
}

// "Silk" of the Corvane Silk Co: a search for silk finds the maker's name.
static bool held_by_name(const struct title_plan *plan, const struct numbers *stems, size_t i) {
    for (size_t j = 0; j < plan->count; j++) {
        const struct plan_phrase *other = &plan->phrases[j];
        if (j != i && other->count && other->name && other->slot != SLOT_FITS &&
            all_held(&stems[i], &stems[j]))
            return true;
    }
    return false;
}

// A phrase all of whose stems the type says already ("denim" beside "denim jacket") would only repeat it; so
// would a model that a mark holds. A work's name that ends in its type ("School Atlas") says the type.
static void drop_echoes(struct phrase_maker *m) {
    struct title_plan *plan = m->plan;
    merge_marks(m);
    const struct numbers *stems = stems_of_all(m);
    size_t type = plan->count;
    for (size_t i = 0; i < plan->count; i++)
        if (plan->phrases[i].slot == SLOT_TYPE && plan->phrases[i].count) type = i;
    for (size_t i = 0; i < plan->count; i++) {
        struct plan_phrase *phrase = &plan->phrases[i];
        if (i == type || phrase->slot == SLOT_FLAWS || phrase->must || !phrase->count) continue;
        if (type < plan->count && phrase->slot == SLOT_NAME && all_held(&stems[type], &stems[i]) &&
            plan->phrases[type].count) {
            phrase->must = true;
            drop_echo(m, &plan->phrases[type], "the name says it already");
            continue;
        }
        if (type < plan->count && plan->phrases[type].count && all_held(&stems[i], &stems[type]))
            drop_echo(m, phrase, "the type says it already");
        if (is_look(phrase->slot) && held_by_name(plan, stems, i))
            drop_echo(m, phrase, "the maker's name says it already");
        for (size_t j = 0; phrase->name && phrase->slot != SLOT_BRAND && phrase->count && j < plan->count;
             j++) {
            const struct plan_phrase *other = &plan->phrases[j];
            if (j == i || !other->name || !other->count || other->slot == SLOT_FITS ||
                !all_held(&stems[i], &stems[j]))
                continue;
            if (stems[i].count < stems[j].count || j < i)
                drop_echo(m, phrase, "another name or mark says it already");
        }
    }
}

static const struct thing *thing_named(struct arena *arena, const struct family *family, const char *noun) {
    size_t size = strlen(noun); // folding the names of all things would cost more than the rest of the plan
    for (size_t i = 0; i < family->thing_count; i++) {
        const struct thing *thing = &family->things[i];
        if (strlen(thing->noun) == size && text_same(noun, utf8_fold(arena, thing->noun))) return thing;
        for (size_t k = 0; k < thing->also.count; k++)
            if (strlen(thing->also.at[k]) == size && text_same(noun, utf8_fold(arena, thing->also.at[k])))
                return thing;
    }
    return NULL;
}

// "Kitchen wall clock" is a wall clock.
static const struct thing *thing_of(struct arena *arena, const struct record *record) {
    if (!record->type.value) return NULL;
    const struct thing *thing = NULL;
    for (const char *noun = utf8_fold(arena, record->type.value); noun && !thing;) {
        thing = thing_named(arena, record->family, noun);
        noun = strchr(noun, ' ');
        if (noun) noun++;
    }
    return thing;
}

struct title_plan *title_plan(struct arena *arena, const struct record *record, const struct claims *claims,
                              const struct title_options *options) {
    struct title_plan *plan = arena_alloc(arena, sizeof *plan);
    plan->words = vocabulary_start(arena);
    plan->stems = vocabulary_start(arena);
    struct phrase_maker m = {arena, record, claims, options, plan, thing_of(arena, record), {0}};
    memcpy(m.tells, record->family->tells, sizeof m.tells);
    make_facts(&m);
    make_figures(&m);
    make_flaws(&m);
    drop_echoes(&m);
    put_in_order(&m);
    make_wants(&m);
    number_rollups(&m);
    number_phrases(&m);
    plan->problem.word_count = plan->words.count;
    plan->problem.stem_count = plan->stems.count;
    plan->problem.limit = options->limit;
    return plan;
}
