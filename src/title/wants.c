// SPDX-License-Identifier: MIT
// From a family's search shapes to the searches that this record could answer: every combination of the
// values that stand in its slots, the type under each of its names. What a part is made of never answers a
// search for the whole.
#include <string.h>

#include "text/order.h"
#include "title/plan.h"

enum { VALUES_MOST = 6, WORDINGS_MOST = 400 };

struct slot_values {
    const char *texts[VALUES_MOST];
    int share[VALUES_MOST]; // percent of the weight: another name of the type is typed less often
    size_t count;
};

static void put(struct slot_values *values, const char *text, int share) {
    for (size_t i = 0; i < values->count; i++)
        if (text_same(values->texts[i], text)) return;
    if (values->count == VALUES_MOST) return;
    values->texts[values->count] = text;
    values->share[values->count++] = share;
}

static void collect(struct phrase_maker *m, struct slot_values values[SLOT_COUNT]) {
    for (size_t i = 0; i < m->plan->count; i++) {
        const struct plan_phrase *phrase = &m->plan->phrases[i];
        if (phrase->slot == SLOT_FLAWS || phrase->slot == SLOT_PARTS || phrase->slot == SLOT_INCLUDES ||
            !phrase->count)
            continue;
        if (phrase->slot == SLOT_SYNONYM) {
            for (size_t k = 0; k < phrase->count; k++) put(&values[SLOT_TYPE], phrase->spellings[k].text, 85);
        } else if (phrase->slot == SLOT_COLOR) {
            // "Blue and White" is searched as either color.
            put(&values[SLOT_COLOR], phrase->spellings[phrase->count - 1].text, 100);
            put(&values[SLOT_COLOR], phrase->spellings[0].text, 100);
        } else
            put(&values[phrase->slot],
                phrase->spellings[phrase->slot == SLOT_MEASURE ? phrase->count - 1 : 0].text, 100);
    }
}

struct maker {
    struct phrase_maker *m;
    const struct slot_values *values;
    struct title_wording *wordings;
    const char **texts;
    size_t count, room;
};

static void add_wording(struct maker *w, const char *text, int weight) {
    struct numbers stems = vocabulary_stems(w->m->arena, &w->m->plan->stems, text);
    if (!stems.count || weight <= 0 || w->count == w->room) return;
    w->wordings[w->count] = (struct title_wording){stems.at, stems.count, weight};
    w->texts[w->count++] = text;
}

static void combine(struct maker *w, const struct wording_shape *shape, size_t at, const char *text,
                    int weight) {
    if (at == shape->words.count) {
        add_wording(w, text, weight);
        return;
    }
    const struct slot_values *values = &w->values[shape->words.at[at]];
    for (size_t i = 0; i < values->count; i++)
        combine(w, shape, at + 1,
                arena_format(w->m->arena, "%s%s%s", text, *text ? " " : "", values->texts[i]),
                weight * values->share[i] / 100);
}

void make_wants(struct phrase_maker *m) {
    const struct family *family = m->record->family;
    struct slot_values values[SLOT_COUNT];
    memset(values, 0, sizeof values);
    collect(m, values);
    struct title_plan *plan = m->plan;
    struct title_want *wants = arena_array(m->arena, family->want_count + 1, sizeof *wants);
    plan->want_ids = arena_array(m->arena, family->want_count + 1, sizeof *plan->want_ids);
    plan->searches = arena_array(m->arena, family->want_count + 1, sizeof *plan->searches);
    size_t count = 0;
    for (size_t i = 0; i < family->want_count; i++) {
        size_t room = 0;
        for (size_t j = 0; j < family->wants[i].count; j++) {
            size_t product = 1;
            const struct slots *words = &family->wants[i].shapes[j].words;
            for (size_t k = 0; k < words->count; k++) product *= values[words->at[k]].count;
            room += product;
        }
        if (!room) continue;
        if (room > WORDINGS_MOST) room = WORDINGS_MOST;
        struct maker w = {.m = m, .values = values, .room = room};
        w.wordings = arena_array(m->arena, room, sizeof *w.wordings);
        w.texts = arena_array(m->arena, room, sizeof *w.texts);
        for (size_t j = 0; j < family->wants[i].count; j++)
            combine(&w, &family->wants[i].shapes[j], 0, "", family->wants[i].shapes[j].weight);
        if (!w.count) continue;
        plan->want_ids[count] = family->wants[i].id;
        plan->searches[count] = w.texts;
        wants[count++] = (struct title_want){w.wordings, w.count};
    }
    plan->problem.wants = wants;
    plan->problem.want_count = count;
}
