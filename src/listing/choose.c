// SPDX-License-Identifier: MIT
// From the solver's choice to words a person can read, each with what it earns, and what was left out with
// the reason.
#include "listing/listing.h"
#include "text/order.h"

#include <string.h>

struct chooser {
    struct arena *arena;
    struct listing *listing;
    const struct title_plan *plan;
    struct title_choice choice;
};

static const char *chosen_text(const struct chooser *c, size_t phrase) {
    int spelling = c->choice.spelling[phrase];
    return spelling >= 0 ? c->plan->phrases[phrase].spellings[spelling].text : NULL;
}

size_t listing_pieces(struct arena *arena, const struct title_plan *plan, const struct title_choice *choice,
                      struct title_piece **pieces) {
    const char **texts;
    size_t *phrases, count = turned_texts(arena, plan, choice, &texts, &phrases);
    *pieces = arena_array(arena, count + 1, sizeof **pieces);
    for (size_t i = 0; i < count; i++)
        (*pieces)[i] = (struct title_piece){texts[i], plan->phrases[phrases[i]].slot};
    return count;
}

static const char *compose(const struct chooser *c, const struct title_choice *choice) {
    struct buf out = buf_start(c->arena);
    const char **texts;
    size_t *phrases, count = turned_chosen(c->arena, c->plan, choice, &texts, &phrases);
    for (size_t i = 0; i < count; i++) buf_format(&out, "%s%s", i ? " " : "", texts[i]);
    // A title that begins with a small word ("for Repair") still begins with a capital.
    return say_sentence_case(c->arena, out.at);
}

static bool *held_stems(const struct chooser *c, size_t without) {
    const struct title_problem *p = &c->plan->problem;
    bool *held = arena_array(c->arena, p->stem_count + 1, sizeof *held);
    for (size_t i = 0; i < p->phrase_count; i++) {
        int spelling = c->choice.spelling[i];
        if (i == without || spelling < 0) continue;
        const struct title_spelling *s = &p->phrases[i].spellings[spelling];
        for (size_t k = 0; k < s->stem_count; k++) held[s->stems[k]] = true;
    }
    for (size_t r = 0; r < p->rollup_count; r++)
        if (c->choice.rollup[r])
            for (size_t k = 0; k < p->rollups[r].stem_count; k++) held[p->rollups[r].stems[k]] = true;
    return held;
}

static bool answers(const bool *held, const struct title_wording *wording) {
    for (size_t k = 0; k < wording->count; k++)
        if (!held[wording->stems[k]]) return false;
    return true;
}

static int64_t paid(const struct title_want *want, const bool *held, size_t *which) {
    int64_t best = 0;
    for (size_t j = 0; j < want->count; j++)
        if (want->wordings[j].weight > best && answers(held, &want->wordings[j])) {
            best = want->wordings[j].weight;
            *which = j;
        }
    return best;
}

static bool uses(const struct title_wording *wording, const struct title_spelling *spelling) {
    for (size_t k = 0; k < wording->count; k++)
        for (size_t j = 0; j < spelling->stem_count; j++)
            if (wording->stems[k] == spelling->stems[j]) return true;
    return false;
}

// What the title would lose without this phrase: its own telling, and the searches that then pay less.
static void weigh_word(struct chooser *c, size_t phrase, struct title_word *word) {
    const struct title_problem *p = &c->plan->problem;
    const struct title_spelling *s = &p->phrases[phrase].spellings[c->choice.spelling[phrase]];
    const bool *with = held_stems(c, SIZE_MAX), *without = held_stems(c, phrase);
    word->worth = s->tells - s->cost;
    word->answers.at = arena_array(c->arena, p->want_count + 1, sizeof *word->answers.at);
    for (size_t i = 0; i < p->want_count; i++) {
        size_t best = 0, rest = 0;
        int64_t now = paid(&p->wants[i], with, &best), then = paid(&p->wants[i], without, &rest);
        word->worth += now - then;
        if (now > 0 && uses(&p->wants[i].wordings[best], s))
            word->answers.at[word->answers.count++] =
                arena_format(c->arena, "%s (%s, %d)", c->plan->searches[i][best], c->plan->want_ids[i],
                             (int)p->wants[i].wordings[best].weight);
    }
}

static void list_words(struct chooser *c) {
    struct listing *l = c->listing;
    l->words = arena_array(c->arena, c->plan->count + 1, sizeof *l->words);
    const char **texts;
    size_t *phrases, count = turned_chosen(c->arena, c->plan, &c->choice, &texts, &phrases);
    for (size_t k = 0; k < count; k++) {
        size_t i = phrases[k];
        const struct plan_phrase *phrase = &c->plan->phrases[i];
        struct title_word *word = &l->words[l->word_count++];
        *word = (struct title_word){
            .text = texts[k], .slot = phrase->slot, .because = phrase->because, .span = phrase->span};
        if (c->choice.spelling[i] >= 0)
            weigh_word(c, i, word);
        else
            word->because = "one short word for several faults";
    }
}

// --- what was left out ---

static bool shares_word(const struct chooser *c, size_t phrase, size_t other) {
    int chosen = c->choice.spelling[other];
    if (chosen < 0) return false;
    const struct title_spelling *a = &c->plan->problem.phrases[phrase].spellings[0];
    const struct title_spelling *b = &c->plan->problem.phrases[other].spellings[chosen];
    for (size_t i = 0; i < a->word_count; i++)
        for (size_t j = 0; j < b->word_count; j++)
            if (a->words[i] == b->words[j]) return true;
    return false;
}

static int64_t added_worth(const struct chooser *c, size_t phrase) {
    const struct title_problem *p = &c->plan->problem;
    const struct title_spelling *s = &p->phrases[phrase].spellings[0];
    bool *held = held_stems(c, SIZE_MAX);
    int64_t worth = s->tells - s->cost;
    for (size_t i = 0; i < p->want_count; i++) {
        size_t which = 0;
        worth -= paid(&p->wants[i], held, &which);
    }
    for (size_t k = 0; k < s->stem_count; k++) held[s->stems[k]] = true;
    for (size_t i = 0; i < p->want_count; i++) {
        size_t which = 0;
        worth += paid(&p->wants[i], held, &which);
    }
    return worth;
}

static void list_left_out(struct chooser *c) {
    struct listing *l = c->listing;
    l->left_out = arena_array(c->arena, c->plan->count + c->plan->barred_count + 1, sizeof *l->left_out);
    for (size_t i = 0; i < c->plan->count; i++) {
        if (c->choice.spelling[i] != -1) continue;
        const struct plan_phrase *phrase = &c->plan->phrases[i];
        struct left_out out = {.text = phrase->spellings[0].text, .worth = added_worth(c, i)};
        size_t echo = SIZE_MAX;
        for (size_t j = 0; j < c->plan->count && echo == SIZE_MAX; j++)
            if (shares_word(c, i, j)) echo = j;
        size_t needs = c->plan->problem.phrases[i].spellings[0].length + 1;
        size_t room = l->options.limit - c->choice.length;
        if (echo != SIZE_MAX)
            out.why = arena_format(c->arena, "shares a word with '%s'", chosen_text(c, echo));
        else if (out.worth <= 0)
            out.why = "earns less than it costs to read";
        else {
            out.needs = needs;
            out.why = arena_format(c->arena, "no room: wants %zu, %zu left", needs, room);
        }
        l->left_out[l->left_count++] = out;
    }
    for (size_t i = 0; i < c->plan->barred_count; i++)
        l->left_out[l->left_count++] =
            (struct left_out){c->plan->barred[i].text, 0, 0, c->plan->barred[i].why};
}

// --- alternates: another search answered, at 85 % of the worth and more ---

// A search that is worth more than all others together is answered if anything can.
enum { ALTERNATES_MOST = 3, TRIES_MOST = 4, ALTERNATE_PERCENT = 85, FORCED_WEIGHT = 100000 };

static bool known(const struct listing *l, const char *title) {
    if (text_same(l->title, title)) return true;
    for (size_t i = 0; i < l->alternate_count; i++)
        if (text_same(l->alternates[i], title)) return true;
    return false;
}

static void try_alternate(struct chooser *c, size_t want, size_t wording) {
    struct title_problem other = c->plan->problem;
    struct title_want *wants = arena_array(c->arena, other.want_count + 1, sizeof *wants);
    memcpy(wants, other.wants, other.want_count * sizeof *wants);
    struct title_wording *forced = arena_alloc(c->arena, sizeof *forced);
    *forced = other.wants[want].wordings[wording];
    forced->weight = FORCED_WEIGHT;
    wants[other.want_count++] = (struct title_want){forced, 1};
    other.wants = wants;
    int64_t share = c->choice.worth * ALTERNATE_PERCENT, floor = share / 100 + (share % 100 > 0);
    struct title_choice choice = title_solve_above(c->arena, &other, FORCED_WEIGHT + floor);
    if (!choice.feasible) return;
    const char *title = compose(c, &choice);
    if (!known(c->listing, title)) c->listing->alternates[c->listing->alternate_count++] = title;
}

static void list_alternates(struct chooser *c) {
    struct listing *l = c->listing;
    const struct title_problem *p = &c->plan->problem;
    l->alternates = arena_array(c->arena, ALTERNATES_MOST, sizeof *l->alternates);
    const bool *held = held_stems(c, SIZE_MAX);
    int tries = 0;
    for (size_t i = 0; i < p->want_count; i++)
        for (size_t j = 0; j < p->wants[i].count; j++) {
            if (tries == TRIES_MOST || l->alternate_count == ALTERNATES_MOST) return;
            if (answers(held, &p->wants[i].wordings[j])) continue;
            tries++;
            try_alternate(c, i, j);
        }
}

static void no_title(struct chooser *c) {
    const char *unit = count_unit_name(c->listing->options.unit);
    const char *message =
        c->choice.shortest == SIZE_MAX
            ? "the words that must stand in the title exclude each other"
            : arena_format(c->arena,
                           "what must stand in the title does not fit %zu %s; the shortest that would is %zu",
                           c->listing->options.limit, unit, c->choice.shortest);
    listing_find(c->arena, c->listing, "must", "title.no-room", message, (struct note_span){0, 0});
}

void listing_choose(struct arena *arena, struct listing *listing, const struct title_plan *plan) {
    struct chooser c = {arena, listing, plan, title_solve(arena, &plan->problem)};
    listing->title = "";
    listing->plan = plan;
    listing->choice = c.choice;
    listing->optimal = c.choice.optimal;
    listing->steps = c.choice.steps;
    if (!c.choice.feasible) {
        no_title(&c);
        return;
    }
    listing->worth = c.choice.worth;
    listing->bound = c.choice.bound;
    listing->title = compose(&c, &c.choice);
    listing->title_length = count_text(listing->title, strlen(listing->title), listing->options.unit);
    if (listing->title_only) return;
    list_words(&c);
    list_left_out(&c);
    list_alternates(&c);
}
