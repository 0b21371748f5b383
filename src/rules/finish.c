// SPDX-License-Identifier: MIT
// Two flaw forms need different keys, a family needs its type slot, and ids must name something: all said
// with places.
#include "rules/finish.h"

#include <limits.h>
#include <stdlib.h>
#include <string.h>

#include "rules/groups.h"
#include "rules/signs.h"
#include "rules/trigger.h"
#include "text/index.h"
#include "text/order.h"
#include "text/utf8.h"

// What a buyer must know whether or not anyone searches for it; a family overrides where it differs.
static const int usual_tells[SLOT_COUNT] = {
    [SLOT_PAIR] = 16,  [SLOT_AGE] = 10,     [SLOT_BRAND] = 20,    [SLOT_NAME] = 30,
    [SLOT_MODEL] = 20, [SLOT_MARK] = 12,    [SLOT_TECHNIQUE] = 8, [SLOT_MATERIAL] = 10,
    [SLOT_COLOR] = 8,  [SLOT_PATTERN] = 12, [SLOT_THEME] = 10,    [SLOT_SHAPE] = 7,
    [SLOT_STYLE] = 7,  [SLOT_FINISH] = 5,   [SLOT_AUDIENCE] = 8,  [SLOT_CONDITION] = 8,
    [SLOT_TYPE] = 40,  [SLOT_SYNONYM] = 3,  [SLOT_FITS] = 20,     [SLOT_COUNT_WORDS] = 16,
    [SLOT_SIZE] = 12,  [SLOT_MEASURE] = 9,  [SLOT_PARTS] = 6,     [SLOT_INCLUDES] = 5,
};

static bool lacks(struct diags *diags, const struct rule *rule, const char *key, const char *why) {
    diags_add(diags, CODE_RULE_REQUIRED, rule->at, why, "the key '%s' is missing", key);
    return false;
}

static bool begins_with_verb(const struct flaw *flaw, const char *says, struct diags *diags) {
    static const char *const verbs[] = {"{is} ", "{has} ", "{was} "};
    if (!says) return true;
    for (size_t i = 0; i < sizeof verbs / sizeof *verbs; i++)
        if (!strncmp(says, verbs[i], strlen(verbs[i])) && says[strlen(verbs[i])]) return true;
    diags_add(diags, CODE_RULE_VALUE, flaw->rule.at, "as in '{has} not been tested'",
              "a predicate begins with {is}, {has} or {was}, unlike '%s'", says);
    return false;
}

// The millimeters of a scale's text: "under 3 mm", "3 to 6 mm, or on the rim". "Over 3 mm" sets no upper end.
static double most_mm_of(const char *scale) {
    const char *unit = scale ? strstr(scale, " mm") : NULL;
    if (!unit || strstr(scale, "over ")) return 0;
    const char *digits = unit;
    while (digits > scale && digits[-1] >= '0' && digits[-1] <= '9') digits--;
    double mm = 0;
    for (; digits < unit; digits++) mm = 10 * mm + (*digits - '0');
    return mm;
}

static bool finish_flaw(struct flaw *flaw, struct diags *diags) {
    flaw->cap[SEVERITY_UNKNOWN] = flaw->cap[SEVERITY_MODERATE];
    for (int i = SEVERITY_LIGHT; i <= SEVERITY_MODERATE; i++) flaw->most_mm[i] = most_mm_of(flaw->scale[i]);
    bool fine = true;
    if (flaw->form == FAULT && !flaw->noun)
        fine = lacks(diags, &flaw->rule, "noun", "a fault is told by its noun");
    if (flaw->form == ABSENCE && !flaw->part) fine = lacks(diags, &flaw->rule, "part", "say what is absent");
    if (flaw->form == STATE && !flaw->says)
        fine = lacks(diags, &flaw->rule, "says", "a state is told by its predicate");
    fine &= begins_with_verb(flaw, flaw->says, diags) && begins_with_verb(flaw, flaw->says_part, diags);
    if (flaw->form == STATE && !flaw->title.count)
        fine = lacks(diags, &flaw->rule, "words", "a state needs title words");
    if (flaw->beside.count && !flaw->title_beside.count)
        fine = lacks(diags, &flaw->rule, "beside_words", "say what is left to tell beside the others");
    return fine;
}

static bool holds(const struct slots *slots, enum slot slot) {
    for (size_t i = 0; i < slots->count; i++)
        if (slots->at[i] == slot) return true;
    return false;
}

static bool finish_family(struct family *family, struct diags *diags) {
    bool fine = true;
    for (int i = 0; i < SLOT_COUNT; i++)
        if (!family->tells[i]) family->tells[i] = usual_tells[i];
    static const enum slot always[] = {SLOT_TYPE, SLOT_COUNT_WORDS, SLOT_FLAWS};
    for (size_t i = 0; family->order.count && i < sizeof always / sizeof *always; i++)
        if (!holds(&family->order, always[i])) {
            diags_add(diags, CODE_RULE_VALUE, family->rule.at, "every title needs type, count and flaws",
                      "the order lacks the slot '%s'", slot_name(always[i]));
            fine = false;
        }
    for (size_t i = 0; i < family->thing_count; i++) family->things[i].family = family;
    for (size_t i = 0; i < family->want_count; i++)
        for (size_t j = 0; j < family->wants[i].count; j++) {
            const struct wording_shape *shape = &family->wants[i].shapes[j];
            for (size_t k = 0; k < shape->words.count; k++)
                if (family->order.count && !holds(&family->order, shape->words.at[k]) &&
                    shape->words.at[k] != SLOT_SYNONYM) {
                    diags_add(diags, CODE_RULE_VALUE, family->rule.at,
                              "a slot outside the order never reaches a title",
                              "the want '%s' asks for the slot '%s'", family->wants[i].id,
                              slot_name(shape->words.at[k]));
                    fine = false;
                }
        }
    return fine;
}

static bool wrong_bound(const struct bound *bound, const char *hint, const char *message,
                        struct diags *diags) {
    diags_add(diags, CODE_RULE_VALUE, bound->rule.at, hint, "%s", message);
    return false;
}

static bool is_figure(const char *text) {
    size_t digits = strspn(text, "0123456789");
    return digits && digits < 10 && !text[digits];
}

static bool finish_steps(const struct bound *bound, struct diags *diags) {
    if ((bound->reads == READS_NUMBER) != (bound->step_count > 0))
        return wrong_bound(bound, "steps: {'1000000': '1911'}", "'reads: number' and 'steps' go together",
                           diags);
    for (size_t i = 0; i < bound->step_count; i++) {
        const struct short_form *step = &bound->steps[i], *last = i ? step - 1 : step;
        bool figures = is_figure(step->text) && is_figure(step->means) && strlen(step->means) == 4;
        if (!figures ||
            (i && (atol(step->text) <= atol(last->text) || atol(step->means) < atol(last->means))))
            return wrong_bound(bound, "numbers and years ascend", "a step is a number and a year", diags);
    }
    return true;
}

static bool finish_bound(const struct bound *bound, struct diags *diags) {
    bool fine = finish_steps(bound, diags);
    if (!bound->finder.said.count && !bound->finder.match.count)
        fine = lacks(diags, &bound->rule, "said", "say what stands in the mark, here or under 'match'");
    if (!bound->rule.source)
        fine = lacks(diags, &bound->rule, "source", "a year without a source is an opinion");
    if (!bound->not_before && !bound->not_after && !bound->reads)
        fine = lacks(diags, &bound->rule, "not_before", "a bound has a first year, a last one, or both");
    if (bound->not_after && bound->not_before > bound->not_after)
        fine = wrong_bound(bound, NULL, "'not_before' is later than 'not_after'", diags);
    return fine;
}

bool finish_rule(struct arena *arena, enum rule_kind kind, struct rule *rule, struct diags *diags) {
    (void)arena;
    if (kind == RULE_FLAW) return finish_flaw((struct flaw *)(void *)rule, diags);
    if (kind == RULE_FAMILY) return finish_family((struct family *)(void *)rule, diags);
    if (kind == RULE_BOUND) return finish_bound((const struct bound *)(const void *)rule, diags);
    if (kind == RULE_CAUTION && ((struct caution *)(void *)rule)->stop && !rule->source)
        return lacks(diags, rule, "source", "what keeps goods from being listed must rest on something");
    return true;
}

static int flaw_order(const void *a, const void *b) {
    return strcmp((*(const struct flaw *const *)a)->rule.id, (*(const struct flaw *const *)b)->rule.id);
}

static int family_order(const void *a, const void *b) {
    return strcmp((*(const struct family *const *)a)->rule.id, (*(const struct family *const *)b)->rule.id);
}

static void *sorted(struct arena *arena, const void *array, size_t count,
                    int (*order)(const void *, const void *)) {
    if (!count) return NULL;
    void *copy = arena_array(arena, count, sizeof(void *));
    memcpy(copy, array, count * sizeof(void *));
    qsort(copy, count, sizeof(void *), order);
    return copy;
}

struct named {
    const char *name;
    const struct thing *thing;
    size_t rank; // order of the families, so that equal names keep it
};

static int named_order(const void *a, const void *b) {
    const struct named *x = a, *y = b;
    int names = strcmp(x->name, y->name);
    return names ? names : (x->rank > y->rank) - (x->rank < y->rank);
}

// The last words of the nouns of its things.
static const struct index *heads_of(struct arena *arena, const struct family *family) {
    struct index *heads = index_new(arena, family->thing_count);
    for (size_t i = 0; i < family->thing_count; i++) {
        const char *last = strrchr(family->things[i].noun, ' '),
                   *head = last ? last + 1 : family->things[i].noun;
        index_add(heads, head, strlen(head), i);
    }
    return heads;
}

static size_t words_of(const char *name) {
    size_t count = 1;
    for (; *name; name++) count += *name == ' ';
    return count;
}

static void name_things(struct arena *arena, struct ruleset *rules) {
    size_t count = 0;
    for (size_t i = 0; i < rules->family_count; i++)
        for (size_t j = 0; j < rules->families[i]->thing_count; j++)
            count += 1 + rules->families[i]->things[j].also.count;
    struct named *named = arena_array(arena, count + 1, sizeof *named);
    size_t n = 0;
    for (size_t i = 0; i < rules->family_count; i++)
        for (size_t j = 0; j < rules->families[i]->thing_count; j++) {
            const struct thing *thing = &rules->families[i]->things[j];
            // A thing's own noun ranks before another thing's other name, in every family.
            named[n++] = (struct named){utf8_fold(arena, thing->noun), thing, i};
            for (size_t k = 0; k < thing->also.count; k++)
                named[n++] =
                    (struct named){utf8_fold(arena, thing->also.at[k]), thing, rules->family_count + i};
        }
    qsort(named, n, sizeof *named, named_order);
    rules->thing_count = n;
    rules->things_by_noun = arena_array(arena, n + 1, sizeof *rules->things_by_noun);
    rules->thing_names = arena_array(arena, n + 1, sizeof *rules->thing_names);
    for (size_t i = 0; i < n; i++) {
        rules->things_by_noun[i] = named[i].thing;
        rules->thing_names[i] = named[i].name;
    }
    struct index *names = index_new(arena, n), *firsts = index_new(arena, n);
    rules->thing_words = arena_array(arena, n + 1, sizeof *rules->thing_words);
    for (size_t i = 0; i < n; i++) {
        size_t first = strcspn(named[i].name, " ");
        index_add(names, named[i].name, strlen(named[i].name), i);
        index_add(firsts, named[i].name, first, i);
        unsigned char *most = &rules->thing_words[index_find(firsts, named[i].name, first)];
        size_t words = words_of(named[i].name);
        if (words > *most) *most = words < UCHAR_MAX ? (unsigned char)words : UCHAR_MAX;
    }
    rules->thing_index = names;
    rules->thing_firsts = firsts;
}

static void check_ids(struct arena *arena, const struct ruleset *rules, const struct rule *rule,
                      const struct texts *ids, struct diags *diags) {
    for (size_t i = 0; i < ids->count; i++)
        if (!ruleset_flaw(rules, ids->at[i]))
            diags_add(diags, CODE_RULE_UNKNOWN_ID, rule->at, ruleset_flaw_hint(arena, rules, ids->at[i]),
                      "'%s' names the flaw '%s', which no pack holds", rule->id, ids->at[i]);
}

static void check_family(struct arena *arena, const struct ruleset *rules, const struct family *family,
                         struct diags *diags) {
    for (size_t i = 0; i < family->check_count; i++) {
        check_ids(arena, rules, &family->rule, &family->checks[i].flaws, diags);
        for (size_t j = 0; j < i; j++)
            if (text_same(family->checks[i].id, family->checks[j].id))
                diags_add(diags, CODE_RULE_SAME_ID, family->rule.at, NULL, "the check '%s' is there twice",
                          family->checks[i].id);
    }
    for (size_t i = 0; i < family->photo_count; i++)
        check_ids(arena, rules, &family->rule, &family->photos[i].flaws, diags);
}

static bool has_adjective(const struct flaw *flaw, const char *adjective) {
    bool has = flaw->adjective && text_same(flaw->adjective, adjective);
    for (int i = 0; i < SEVERITY_COUNT; i++)
        has |= flaw->adjective_at[i] && text_same(flaw->adjective_at[i], adjective);
    return has;
}

// "Worn" alone says neither which wear nor of what; a noun that several kinds share is told in full.
static bool owns_adjective(const struct ruleset *rules, const struct flaw *flaw) {
    if (!flaw->adjective) return false;
    for (size_t i = 0; i < rules->flaw_count; i++)
        if (rules->flaws[i] != flaw && has_adjective(rules->flaws[i], flaw->adjective)) return false;
    return true;
}

// A telling is its kind in all but its words: grade, scale and duty are the kind's.
static void finish_tellings(struct flaw *kind) {
    for (size_t i = 0; i < kind->telling_count; i++) {
        const struct flaw own = kind->tellings[i];
        struct flaw *told = &kind->tellings[i];
        *told = *kind;
        told->tellings = NULL;
        told->telling_count = 0;
        told->finder.said = own.finder.said;
        if (own.degree) told->degree = own.degree;
        if (!own.degree && own.noun && !own.mass && !own.adjective && kind->mass)
            told->degree = DEGREE_SIZE; // "a small rust hole", of rust that is light
        if (own.noun || own.adjective) {
            told->mass = own.noun ? own.mass : kind->mass;
            told->plural = own.noun ? own.plural : kind->plural;
            told->many = own.noun ? own.many : kind->many;
            told->noun = own.noun ? own.noun : kind->noun;
            told->adjective = own.adjective;
            memcpy(told->adjective_at, own.adjective_at, sizeof told->adjective_at);
            told->adjective_own = own.adjective != NULL;
        }
        if (own.says) told->says = own.says;
        if (own.says || own.says_part) told->says_part = own.says_part;
        // The grammar does what the telling has no words of its own for; a state has no grammar.
        if (kind->form != STATE || own.title.count) told->title = own.title;
        if (kind->form != STATE || own.title_part.count) told->title_part = own.title_part;
    }
}

static void check_caution(struct arena *arena, const struct ruleset *rules, const struct caution *caution,
                          struct diags *diags) {
    check_ids(arena, rules, &caution->rule, &caution->flaws, diags);
    for (size_t i = 0; i < caution->on.count; i++)
        if (!ruleset_family(rules, caution->on.at[i]))
            diags_add(diags, CODE_RULE_UNKNOWN_ID, caution->rule.at,
                      ruleset_family_hint(arena, rules, caution->on.at[i]),
                      "'%s' names the family '%s', which no pack holds", caution->rule.id, caution->on.at[i]);
}

static void finish_cautions(struct arena *arena, struct ruleset *rules, size_t *number) {
    struct triggers *triggers = triggers_new(arena);
    struct signs *signs = signs_new(arena);
    for (size_t i = 0; i < rules->caution_count; i++) {
        struct caution *caution = (struct caution *)(uintptr_t)rules->cautions[i];
        caution->number = i;
        signs_add(arena, signs, caution);
        caution->finder.number = (*number)++;
        caution->with.number = (*number)++;
        caution->benign = (struct finder){.said = caution->finder.unless, .number = (*number)++};
        triggers_add(arena, triggers, &caution->finder);
        triggers_add(arena, triggers, &caution->with);
    }
    triggers_close(arena, triggers);
    rules->caution_triggers = triggers;
    signs_close(arena, signs);
    rules->signs = signs;
}

static void name_flaws(struct arena *arena, struct ruleset *rules) {
    struct index *index = index_new(arena, rules->flaw_count);
    rules->flaws_by_id = sorted(arena, (const void *)rules->flaws, rules->flaw_count, flaw_order);
    rules->narrowing = arena_array(arena, rules->flaw_count + 1, sizeof *rules->narrowing);
    for (size_t i = 0; i < rules->flaw_count; i++) {
        const char *id = rules->flaws_by_id[i]->rule.id;
        index_add(index, id, strlen(id), i);
        if (rules->flaws[i]->narrows.count) rules->narrowing[rules->narrowing_count++] = rules->flaws[i];
    }
    rules->flaw_index = index;
}

void finish_set(struct arena *arena, struct ruleset *rules, struct diags *diags) {
    name_flaws(arena, rules);
    rules->families_by_id = sorted(arena, (const void *)rules->families, rules->family_count, family_order);
    name_things(arena, rules);
    for (size_t i = 0; i < rules->family_count; i++) {
        struct family *family = (struct family *)(uintptr_t)rules->families[i];
        family->heads = heads_of(arena, family);
    }
    size_t number = 0;
    // The set is still being made here; it is const for everybody else.
    for (size_t i = 0; i < rules->flaw_count; i++) {
        struct flaw *flaw = (struct flaw *)(uintptr_t)rules->flaws[i];
        flaw->finder.number = number++;
        flaw->adjective_own = owns_adjective(rules, flaw);
        finish_tellings(flaw);
    }
    for (size_t i = 0; i < rules->claim_count; i++) {
        struct claim *claim = (struct claim *)(uintptr_t)rules->claims[i];
        claim->finder.number = number++;
        claim->evidence.number = number++;
        claim->marked.number = number++;
    }
    for (size_t i = 0; i < rules->bound_count; i++)
        ((struct bound *)(uintptr_t)rules->bounds[i])->finder.number = number++;
    finish_cautions(arena, rules, &number);
    rules->finder_count = number;
    struct triggers *triggers = triggers_new(arena);
    for (size_t i = 0; i < rules->claim_count; i++) triggers_add(arena, triggers, &rules->claims[i]->finder);
    triggers_close(arena, triggers);
    rules->claim_triggers = triggers;
    triggers = triggers_new(arena);
    for (size_t i = 0; i < rules->bound_count; i++) triggers_add(arena, triggers, &rules->bounds[i]->finder);
    triggers_close(arena, triggers);
    rules->bound_triggers = triggers;
    for (size_t i = 0; i < rules->flaw_count; i++)
        check_ids(arena, rules, &rules->flaws[i]->rule, &rules->flaws[i]->confused, diags);
    for (size_t i = 0; i < rules->flaw_count; i++) {
        const struct flaw *flaw = rules->flaws[i];
        check_ids(arena, rules, &flaw->rule, &flaw->narrows, diags);
        check_ids(arena, rules, &flaw->rule, &flaw->implied_by, diags);
        check_ids(arena, rules, &flaw->rule, &flaw->beside, diags);
    }
    for (size_t i = 0; i < rules->family_count; i++) check_family(arena, rules, rules->families[i], diags);
    groups_check(arena, rules, diags);
    for (size_t i = 0; i < rules->caution_count; i++) check_caution(arena, rules, rules->cautions[i], diags);
}
