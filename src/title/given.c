// SPDX-License-Identifier: MIT
// A reading on the scale of the drafted title, and what it misses of that.
#include "title/given.h"

#include <string.h>

#include "text/order.h"

struct scorer {
    struct arena *arena;
    const struct title_plan *plan;
    const struct title_choice *best;
    struct given_reading *reading; // of what counts
    struct given_title *out;
    size_t room;
};

const char *miss_kind_name(enum miss_kind kind) {
    static const char *const names[] = {"must", "search", "phrase"};
    return names[kind];
}

// At the last space at or before `size`; all of a text that ends before it.
static const char *whole_words(struct arena *arena, const char *text, size_t size) {
    size_t all = strlen(text);
    if (size >= all) return text;
    while (size > 0 && text[size] != ' ') size--;
    while (size > 0 && text[size - 1] == ' ') size--;
    return arena_copy(arena, text, size);
}

// The longest run of whole words that fits. Lengths only grow with the text, whatever the unit.
static const char *what_fits(struct arena *arena, const char *text, const struct title_options *options) {
    size_t size = strlen(text);
    if (count_text(text, size, options->unit) <= options->limit) return text;
    const char *fits = "";
    for (size_t at = 1; at < size; at++) {
        if (text[at] != ' ' || text[at - 1] == ' ') continue;
        if (count_text(text, at, options->unit) > options->limit) break;
        fits = arena_copy(arena, text, at);
    }
    return fits;
}

// Spaces at the ends are no part of a title, and one stands between two words.
static const char *single_spaced(struct arena *arena, const char *text) {
    struct buf out = buf_start(arena);
    size_t size = strlen(text);
    for (size_t at = 0; at < size;) {
        size_t from = at;
        if (utf8_is_space(utf8_next(text, size, &at))) {
            if (out.n && out.at[out.n - 1] != ' ') buf_byte(&out, ' ');
        } else
            buf_add(&out, text + from, at - from);
    }
    while (out.n && out.at[out.n - 1] == ' ') out.at[--out.n] = '\0';
    return out.at;
}

// --- what it earns ---

static bool *held_stems(const struct scorer *s, struct given_reading *r) {
    const struct vocabulary *stems = &s->plan->stems;
    bool *held = arena_array(s->arena, stems->count + 1, sizeof *held);
    for (size_t i = 0; i < stems->count; i++)
        held[i] = vocabulary_number(s->arena, &r->stems, stems->names[i]) < r->stem_count;
    return held;
}

// The stems of a choice of the plan's own.
static bool *best_stems(const struct scorer *s) {
    const struct title_problem *p = &s->plan->problem;
    bool *held = arena_array(s->arena, p->stem_count + 1, sizeof *held);
    for (size_t i = 0; i < p->phrase_count + p->rollup_count; i++) {
        const struct title_spelling *text = NULL;
        if (i >= p->phrase_count)
            text = s->best->rollup[i - p->phrase_count] ? &p->rollups[i - p->phrase_count] : NULL;
        else if (s->best->spelling[i] >= 0)
            text = &p->phrases[i].spellings[s->best->spelling[i]];
        for (size_t k = 0; text && k < text->stem_count; k++) held[text->stems[k]] = true;
    }
    return held;
}

static int32_t paid(const struct title_want *want, const bool *held, size_t *which) {
    int32_t best = 0;
    for (size_t j = 0; j < want->count; j++) {
        const struct title_wording *wording = &want->wordings[j];
        size_t there = 0;
        while (there < wording->count && held[wording->stems[there]]) there++;
        if (there < wording->count || wording->weight <= best) continue;
        best = wording->weight;
        *which = j;
    }
    return best;
}

static int64_t net(const struct title_spelling *spelling) {
    return (int64_t)spelling->tells - spelling->cost;
}

// A roll-up beside words of their own for everything that it stands for tells nothing more.
static bool rollup_tells(const struct scorer *s, size_t rollup) {
    const struct title_problem *p = &s->plan->problem;
    for (size_t i = 0; i < p->phrase_count; i++)
        if (p->phrases[i].must && p->phrases[i].rollup == (int)rollup && s->reading->spelling[i] < 0)
            return true;
    return false;
}

static int64_t earned(const struct scorer *s, const bool *held) {
    const struct title_problem *p = &s->plan->problem;
    int64_t sum = 0;
    size_t which;
    for (size_t i = 0; i < p->want_count; i++) sum += paid(&p->wants[i], held, &which);
    for (size_t i = 0; i < p->phrase_count; i++)
        if (s->reading->spelling[i] >= 0) sum += net(&p->phrases[i].spellings[s->reading->spelling[i]]);
    for (size_t i = 0; i < p->rollup_count; i++)
        if (s->reading->rollup[i] && rollup_tells(s, i)) sum += net(&p->rollups[i]);
    return sum > 0 ? sum : 0;
}

// --- what it misses ---

static void miss(struct scorer *s, struct given_miss item) {
    struct given_title *g = s->out;
    g->misses = arena_grow(s->arena, g->misses, g->miss_count, &s->room, sizeof *g->misses);
    g->misses[g->miss_count++] = item;
}

static bool must_is_told(const struct scorer *s, size_t phrase) {
    int rollup = s->plan->problem.phrases[phrase].rollup;
    return s->reading->spelling[phrase] >= 0 || (rollup >= 0 && s->reading->rollup[rollup]);
}

static void miss_musts(struct scorer *s) {
    const struct title_problem *p = &s->plan->problem;
    for (size_t i = 0; i < p->phrase_count; i++) {
        if (!p->phrases[i].must || must_is_told(s, i)) continue;
        size_t k = s->best->spelling[i] >= 0 ? (size_t)s->best->spelling[i] : 0;
        miss(s, (struct given_miss){MISS_MUST, s->plan->phrases[i].spellings[k].text, NULL,
                                    net(&p->phrases[i].spellings[k]), i});
    }
}

static void miss_searches(struct scorer *s, const bool *held) {
    const struct title_problem *p = &s->plan->problem;
    const bool *best = best_stems(s);
    for (size_t i = 0; i < p->want_count; i++) {
        size_t here = 0, there = 0;
        int32_t now = paid(&p->wants[i], held, &here), could = paid(&p->wants[i], best, &there);
        if (could > now)
            miss(s, (struct given_miss){MISS_SEARCH, s->plan->searches[i][there], s->plan->want_ids[i],
                                        could - now, SIZE_MAX});
    }
}

// What is told in fewer words than the best title has for it misses the difference.
static void miss_phrases(struct scorer *s) {
    const struct title_problem *p = &s->plan->problem;
    for (size_t i = 0; i < p->phrase_count; i++) {
        int best = s->best->spelling[i], own = s->reading->spelling[i];
        if (best < 0 || (p->phrases[i].must && !must_is_told(s, i))) continue;
        int64_t worth = net(&p->phrases[i].spellings[best]);
        if (own >= 0) worth -= net(&p->phrases[i].spellings[own]);
        if (worth > 0 || own < 0)
            miss(s,
                 (struct given_miss){MISS_PHRASE, s->plan->phrases[i].spellings[best].text, NULL, worth, i});
    }
}

struct given_title title_given(struct arena *arena, const struct title_plan *plan,
                               const struct title_choice *best, const struct title_options *options,
                               const char *text) {
    struct given_title g = {.text = single_spaced(arena, text), .best = best->feasible ? best->worth : 0};
    g.length = count_text(g.text, strlen(g.text), options->unit);
    const char *read = whole_words(arena, g.text, GIVEN_BYTES_MOST);
    g.at = what_fits(arena, read, options);
    g.cut = !text_same(g.at, g.text);
    const char *chosen = turned_back(arena, plan, best, g.text);
    bool own = chosen != g.text; // the drafted title, which fits
    if (own) read = chosen;
    g.reading = given_read(arena, plan, read);
    // Not a copy of the same reading: what looks stems up in it may add to them.
    struct given_reading start, *counted = &g.reading;
    if (!own && !text_same(g.at, read)) {
        start = given_read(arena, plan, g.at);
        counted = &start;
    }
    struct scorer s = {.arena = arena, .plan = plan, .best = best, .reading = counted, .out = &g};
    const bool *held = held_stems(&s, counted);
    g.earned = earned(&s, held);
    miss_musts(&s);
    if (best->feasible) {
        miss_searches(&s, held);
        miss_phrases(&s);
    }
    return g;
}
