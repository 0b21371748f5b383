// SPDX-License-Identifier: MIT
// What the family's buyers ask that the record leaves open. Each question is weighed by what its answer could
// change: a step of the grade weighs more than any word of the title, words weigh what the family pays for
// them.
#include <stdlib.h>
#include <string.h>

#include "disclosure/concerns.h"
#include "disclosure/disclosure.h"
#include "evidence/grade.h"
#include "text/index.h"
#include "text/order.h"
#include "text/utf8.h"

enum { STEP = 100, UNKNOWN_TYPE = 10000, MUST = 45, SHOULD = 25 };

struct asker {
    struct arena *arena;
    const struct record *record;
    const struct ruleset *rules;
    enum grade grade;  // as the record stands
    const char *head;  // the last word of the type, singular; NULL without a type
    const char *words; // of the record
    struct question *all;
    size_t count, room;
};

static bool names_flaw(const struct record *record, const char *id) {
    for (size_t i = 0; i < record->flaw_count; i++)
        if (text_same(record->flaws[i].kind->rule.id, id)) return true;
    for (size_t i = 0; i < record->clear_count; i++)
        if (text_same(record->clear[i].kind->rule.id, id)) return true;
    for (size_t i = 0; i < record->unchecked.count; i++)
        if (text_same(record->unchecked.at[i], id)) return true;
    return false;
}

static bool gives_fact(const struct record *record, const char *fact) {
    for (size_t i = 0; i < record->measurement_count; i++)
        if (text_same(record->measurements[i].dimension, fact)) return true;
    for (size_t i = 0; i < record->attribute_count; i++)
        if (text_same(record->attributes[i].name, fact)) return true;
    if (text_same(fact, "count")) return record->count > 0;
    if (text_same(fact, "marks")) return record->mark_count > 0;
    if (text_same(fact, "includes")) return record->include_count > 0;
    if (text_same(fact, "fits")) return record->fit_count > 0;
    const struct node *value = record->tree ? node_get(record->tree, fact) : NULL;
    return value && value->kind != NODE_NULL && (value->kind != NODE_LIST || value->count);
}

static bool answered(const struct record *record, const struct check *check) {
    for (size_t i = 0; i < check->flaws.count; i++)
        if (names_flaw(record, check->flaws.at[i])) return true;
    for (size_t i = 0; i < check->facts.count; i++)
        if (gives_fact(record, check->facts.at[i])) return true;
    return false;
}

static void put(struct asker *a, struct question question) {
    a->all = arena_grow(a->arena, a->all, a->count, &a->room, sizeof *a->all);
    question.order = a->count;
    a->all[a->count++] = question;
}

// --- what an answer could change ---

static int duty_worth(const struct flaw *kind) {
    return kind->duty == DUTY_MUST ? MUST : kind->duty == DUTY_SHOULD ? SHOULD : 0;
}

// The slot of the title that a fact fills; SLOT_COUNT where it fills none.
static enum slot slot_of_fact(const char *fact) {
    static const struct {
        const char *fact;
        enum slot slot;
    } slots[] = {{"marks", SLOT_BRAND},        {"count", SLOT_COUNT_WORDS},
                 {"includes", SLOT_INCLUDES},  {"fits", SLOT_FITS},
                 {"author", SLOT_NAME},        {"byArtist", SLOT_NAME},
                 {"productionDate", SLOT_AGE}, {"itemCondition", SLOT_CONDITION}};
    enum slot slot;
    for (size_t i = 0; i < sizeof slots / sizeof *slots; i++)
        if (text_same(fact, slots[i].fact)) return slots[i].slot;
    if (slot_of_name(fact, &slot)) return slot;
    return SLOT_MEASURE;
}

// What buyers search with a word of that slot, and what it tells them besides.
static int slot_worth(const struct family *family, enum slot slot) {
    int most = 0;
    for (size_t i = 0; i < family->want_count; i++)
        for (size_t k = 0; k < family->wants[i].count; k++) {
            const struct wording_shape *shape = &family->wants[i].shapes[k];
            for (size_t w = 0; w < shape->words.count; w++)
                if (shape->words.at[w] == slot && shape->weight > most) most = shape->weight;
        }
    return most + family->tells[slot];
}

static int steps_down(const struct asker *a, enum grade cap) {
    return cap > a->grade ? (int)cap - (int)a->grade : 0;
}

static const char *grade_change(struct asker *a, enum grade to) {
    return arena_format(a->arena, "may lower the grade from %s to %s", grade_letter(a->grade),
                        grade_letter(to));
}

// --- the questions ---

static void ask_type(struct asker *a) {
    const struct record *r = a->record;
    if (r->type.value && r->type.sure == SURE_STATED) return;
    const char *ask = "What would a buyer call this thing?";
    if (r->type.value && r->others.count) {
        const char **names = arena_array(a->arena, r->others.count + 1, sizeof *names);
        names[0] = r->type.value;
        for (size_t i = 0; i < r->others.count; i++) names[i + 1] = r->others.at[i];
        struct buf out = buf_start(a->arena);
        buf_text(&out, "Which is it: ");
        for (size_t i = 0; i <= r->others.count; i++)
            buf_format(&out, "%s%s", i == 0 ? "" : i == r->others.count ? " or " : ", ", names[i]);
        buf_byte(&out, '?');
        ask = out.at;
    } else if (r->type.value)
        ask = arena_format(a->arena, "Is it certain that it is %s %s?", say_article(r->type.value),
                           r->type.value);
    put(a, (struct question){.id = "type",
                             .ask = ask,
                             .kind = "type",
                             .because = "a title needs its noun",
                             .worth = UNKNOWN_TYPE});
}

// A flaw without degree: the answer changes grade and wording at once.
static void ask_about_flaws(struct asker *a) {
    for (size_t i = 0; i < a->record->flaw_count; i++) {
        const struct item_flaw *flaw = &a->record->flaws[i];
        const struct flaw *kind = flaw->kind;
        enum grade best = kind->cap[SEVERITY_LIGHT], worst = kind->cap[SEVERITY_HEAVY];
        if (flaw->severity != SEVERITY_UNKNOWN || best == worst || !kind->ask.count) continue;
        bool flame = strstr(kind->ask.at[0], "plug") && concerns_flame(a->words);
        size_t which = (flame || flaw->where || flaw->part) && kind->ask.count > 1 ? 1 : 0;
        const char *place = flaw->part ? flaw->part : flaw->where;
        const char *thing = place ? arena_format(a->arena, "%s, %s", kind->print, place) : kind->print;
        int worth = STEP * ((int)worst - (int)best) + duty_worth(kind) +
                    1; // it is there: more certain than any that may be
        put(a, (struct question){.id = kind->rule.id,
                                 .ask = arena_format(a->arena, "%s: %s", say_sentence_case(a->arena, thing),
                                                     kind->ask.at[which]),
                                 .kind = kind->rule.id,
                                 .because = arena_format(a->arena, "its degree sets the grade: %s to %s",
                                                         grade_letter(best), grade_letter(worst)),
                                 .worth = worth});
    }
}

// "Helmet, rope or float: …" is asked of those things; of another of the family not at all.
static bool is_of_other_thing(struct asker *a, const char *ask) {
    const char *colon = strchr(ask, ':'), *one = a->head;
    if (!colon || !one) return false;
    bool names_thing = false;
    for (const char *at = ask; at < colon;) {
        at += strspn(at, " ,");
        size_t n = strcspn(at, " ,:");
        if (!n) break;
        const char *word = say_singular(a->arena, utf8_fold(a->arena, arena_copy(a->arena, at, n)));
        if (text_same(word, one)) return false;
        names_thing |= index_find(a->record->family->heads, word, strlen(word)) != INDEX_NONE;
        at += n;
    }
    return names_thing;
}

static void ask_check(struct asker *a, const struct check *check) {
    enum grade worst = GRADE_A;
    int title = 0;
    enum slot adds = SLOT_COUNT;
    for (size_t i = 0; i < check->flaws.count; i++) {
        const struct flaw *kind = ruleset_flaw(a->rules, check->flaws.at[i]);
        if (!kind) continue;
        if (kind->class != CLASS_STATUS && kind->class != CLASS_FEATURE &&
            kind->cap[SEVERITY_MODERATE] > worst)
            worst = kind->cap[SEVERITY_MODERATE];
        if (duty_worth(kind) > title) title = duty_worth(kind);
    }
    for (size_t i = 0; i < check->facts.count; i++) {
        enum slot slot = slot_of_fact(check->facts.at[i]);
        int worth = slot_worth(a->record->family, slot);
        if (worth > title) {
            title = worth;
            adds = slot;
        }
    }
    int steps = steps_down(a, worst), worth = STEP * steps + title;
    put(a, (struct question){.id = check->id,
                             .ask = check->ask,
                             .kind = check->id,
                             .lowers_to = steps ? worst : GRADE_A,
                             .adds = steps ? SLOT_COUNT : adds,
                             .yes = check->yes,
                             .worth = worth});
}

static int most_first(const void *x, const void *y) {
    const struct question *a = x, *b = y;
    if (a->worth != b->worth) return a->worth > b->worth ? -1 : 1;
    return (a->order > b->order) - (a->order < b->order);
}

// Said only of the few that are asked.
static void say_why(struct asker *a, struct question *q) {
    if (q->because) return;
    if (q->lowers_to != GRADE_A)
        q->because = grade_change(a, q->lowers_to);
    else if (q->adds != SLOT_COUNT)
        q->because = arena_format(a->arena, "adds the %s to the title", slot_name(q->adds));
    else
        q->because = "buyers of this family ask it";
}

// The first that are of this thing, and not of its neighbors.
static void choose(struct asker *a, struct questions *q) {
    q->items = arena_array(a->arena, QUESTIONS_MOST, sizeof *q->items);
    for (size_t i = 0; i < a->count && q->count < QUESTIONS_MOST; i++)
        if (!is_of_other_thing(a, a->all[i].ask)) q->items[q->count++] = a->all[i];
    for (size_t i = 0; i < q->count; i++) say_why(a, &q->items[i]);
}

struct questions questions_ask(struct arena *arena, const struct ruleset *rules, const struct record *record,
                               const char *words) {
    struct asker a = {
        .arena = arena, .record = record, .rules = rules, .grade = grade_record(arena, record).grade};
    const char *type = record->type.value, *last = type ? strrchr(type, ' ') : NULL;
    if (type) a.head = say_singular(arena, last ? last + 1 : type);
    a.words = words;
    struct questions q = {.asked = record->family->check_count};
    ask_type(&a);
    ask_about_flaws(&a);
    for (size_t i = 0; i < q.asked; i++) {
        const struct check *check = &record->family->checks[i];
        if (answered(record, check))
            q.answered++;
        else if (concerns(a.words, &check->about, &check->never))
            ask_check(&a, check);
    }
    if (a.count) qsort(a.all, a.count, sizeof *a.all, most_first);
    choose(&a, &q);
    return q;
}
