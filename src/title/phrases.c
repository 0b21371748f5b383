// SPDX-License-Identifier: MIT
// Adding phrases to a plan. Slots keep the family's order; phrases of one slot keep the order in which they
// were made.
#include <string.h>

#include "text/limits.h"
#include "title/plan.h"

enum {
    BARRED_MOST = 500,                          // what `explain` lists of words left out
    PHRASE_BYTES_MOST = 4 * LIMIT_TITLE_LONGEST // of the longest title, in the longest code points
};

static bool has_slot(const struct phrase_maker *m, enum slot slot) {
    const struct family *family = m->record->family;
    if (slot == SLOT_SYNONYM) return true; // stands beside the type wherever a family does not place it
    for (size_t i = 0; i < family->order.count; i++)
        if (family->order.at[i] == slot) return true;
    return false;
}

struct plan_phrase *phrase_add(struct phrase_maker *m, enum slot slot, const char *because,
                               struct note_span span) {
    if (!has_slot(m, slot)) return NULL;
    struct title_plan *plan = m->plan;
    plan->phrases = arena_grow(m->arena, plan->phrases, plan->count, &plan->room, sizeof *plan->phrases);
    struct plan_phrase *phrase = &plan->phrases[plan->count];
    *phrase = (struct plan_phrase){.slot = slot, .because = because, .span = span, .rank = plan->count};
    plan->count++;
    phrase->spellings = arena_array(m->arena, 8, sizeof *phrase->spellings);
    return phrase;
}

static bool same_text(const struct plan_phrase *phrase, const char *text) {
    for (size_t i = 0; i < phrase->count; i++)
        if (!strcmp(phrase->spellings[i].text, text)) return true;
    return false;
}

static void add(struct phrase_maker *m, struct plan_phrase *phrase, const char *text, int tells, int cost) {
    // Law 1 holds within a phrase too: "Seat Wear on Seat" is no spelling.
    if (!phrase || phrase->count == 8 || !*text || (!phrase->name && words_repeat(m->arena, text))) return;
    const struct claim_found *bar = claims_bar(m->claims, text);
    if (bar) {
        phrase_bar(m, text,
                   arena_format(m->arena, "'%s' needs evidence that the record does not hold (claim %s)",
                                bar->word, bar->claim->rule.id));
        return;
    }
    if (!same_text(phrase, text))
        phrase->spellings[phrase->count++] =
            (struct plan_spelling){.text = text, .tells = tells, .cost = cost};
}

// Without the thing itself there is no title at all, so a must is left to the choice, which says what is
// wrong.
static bool too_long(struct phrase_maker *m, const struct plan_phrase *phrase, const char *text) {
    if (!phrase || phrase->must || strlen(text) <= PHRASE_BYTES_MOST) return false;
    phrase_bar(m, text, "no title is as long as this");
    return true;
}

void spelling_add(struct phrase_maker *m, struct plan_phrase *phrase, const char *text, int tells, int cost) {
    if (too_long(m, phrase, text)) return;
    const char *spelled = say_spelling(m->arena, m->options->variants, text, m->options->locale);
    // The claim's word is looked for as it stands in the record, before capitals change it.
    const struct claim_found *bar = claims_bar(m->claims, text);
    if (bar && phrase) {
        phrase_bar(m, text,
                   arena_format(m->arena, "'%s' needs evidence that the record does not hold (claim %s)",
                                bar->word, bar->claim->rule.id));
        return;
    }
    add(m, phrase, say_title_case(m->arena, spelled), tells, cost);
}

void spelling_keep(struct phrase_maker *m, struct plan_phrase *phrase, const char *text, int tells,
                   int cost) {
    if (too_long(m, phrase, text)) return;
    if (phrase) phrase->name = true;
    add(m, phrase, text, tells, cost);
}

void phrase_bar(struct phrase_maker *m, const char *text, const char *why) {
    struct title_plan *plan = m->plan;
    if (plan->barred_count == BARRED_MOST) return;
    for (size_t i = 0; i < plan->barred_count; i++)
        if (!strcmp(plan->barred[i].text, text)) return;
    plan->barred =
        arena_grow(m->arena, plan->barred, plan->barred_count, &plan->barred_room, sizeof *plan->barred);
    plan->barred[plan->barred_count++] = (struct plan_barred){text, why};
}

void phrase_drop(struct phrase_maker *m, struct plan_phrase *phrase) {
    struct title_plan *plan = m->plan;
    size_t at = (size_t)(phrase - plan->phrases);
    memmove(phrase, phrase + 1, (plan->count - at - 1) * sizeof *phrase);
    plan->count--;
}
