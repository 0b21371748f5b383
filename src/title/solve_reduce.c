// SPDX-License-Identifier: MIT
// What can be left out of the search without losing the one best choice.
//
// Entry a beats entry b when a is not longer, not worth less, brings at least b's stems and uses at most b's
// words: then b can always be swapped for a. The best choice is unique (the tie rule leaves no equals), so it
// never holds b when the swap makes it strictly better: by value, or by the tie rule because a comes earlier.
// This holds inside a phrase, and between two phrases that may both be left out: "b taken while a's phrase is
// left out" is then barred.
#include "title/solve_reduce.h"
#include "title/solve_bits.h"

static bool wording_beats(const struct solve_model *model, size_t a, size_t b) {
    const struct solve_wording *one = &model->wordings[a], *other = &model->wordings[b];
    if (one->want != other->want || one->weight < other->weight) return false;
    if (!bits_within(one->stem_set, other->stem_set, model->stem_cells)) return false;
    return one->weight > other->weight || one->stem_count < other->stem_count || a < b;
}

static bool wording_is_beaten(const struct solve_model *model, size_t w) {
    size_t want = model->wordings[w].want;
    for (size_t v = w; v-- > 0 && model->wordings[v].want == want;)
        if (wording_beats(model, v, w)) return true;
    for (size_t v = w + 1; v < model->wording_count && model->wordings[v].want == want; v++)
        if (wording_beats(model, v, w)) return true;
    return false;
}

// Within a want the heaviest first: the first one answered is the one that pays.
static void put_wording(struct solve_model *model, size_t place, const struct solve_wording *wording) {
    struct solve_wording own = *wording;
    while (place > 0 && model->wordings[place - 1].want == own.want &&
           model->wordings[place - 1].weight < own.weight) {
        model->wordings[place] = model->wordings[place - 1];
        place--;
    }
    model->wordings[place] = own;
}

// Marked first and taken out after: "beats" has no circles, so whatever is beaten has a victor that stays.
void solve_reduce_wordings(struct arena *arena, struct solve_model *model) {
    bool *beaten = arena_array(arena, model->wording_count, sizeof *beaten);
    for (size_t w = 0; w < model->wording_count; w++) beaten[w] = wording_is_beaten(model, w);
    size_t kept = 0;
    for (size_t w = 0; w < model->wording_count; w++)
        if (!beaten[w]) put_wording(model, kept++, &model->wordings[w]);
    model->wording_count = kept;
}

// The only group that brings any of the wordings' stems, or SIZE_MAX.
static size_t only_group(const struct solve_model *model, const struct solve_wording *wordings,
                         size_t count) {
    size_t group = SIZE_MAX;
    for (size_t e = 0; e < model->entry_count; e++) {
        const struct solve_entry *entry = &model->entries[e];
        bool brings = false;
        for (size_t w = 0; w < count && !brings; w++)
            brings = bits_meet(entry->stem_set, wordings[w].stem_set, model->stem_cells);
        if (!brings || entry->group == group) continue;
        if (group != SIZE_MAX) return SIZE_MAX;
        group = entry->group;
    }
    return group;
}

static void hand_over(struct solve_model *model, const struct solve_wording *wordings, size_t count,
                      size_t group) {
    for (size_t e = 0; e < model->entry_count; e++) {
        struct solve_entry *entry = &model->entries[e];
        for (size_t w = 0; w < count && entry->group == group; w++) {
            if (!bits_within(wordings[w].stem_set, entry->stem_set, model->stem_cells)) continue;
            entry->value += wordings[w].weight;
            break;
        }
    }
}

static void forget_stems(const struct solve_model *model, const uint64_t *needed) {
    for (size_t e = 0; e < model->entry_count; e++) {
        struct solve_entry *entry = &model->entries[e];
        size_t kept = 0;
        for (size_t i = 0; i < entry->stem_count; i++) {
            if (bits_has(needed, entry->stems[i]))
                entry->stems[kept++] = entry->stems[i];
            else
                bits_drop(entry->stem_set, entry->stems[i]);
        }
        entry->stem_count = kept;
    }
}

void solve_reduce_wants(struct arena *arena, struct solve_model *model) {
    uint64_t *needed = arena_array(arena, model->stem_cells, sizeof *needed);
    size_t kept = 0;
    for (size_t from = 0, to; from < model->wording_count; from = to) {
        for (to = from + 1; to < model->wording_count; to++)
            if (model->wordings[to].want != model->wordings[from].want) break;
        size_t group = only_group(model, &model->wordings[from], to - from);
        // A wording without stems is answered by nothing at all, which no group can be paid for.
        if (group != SIZE_MAX && model->wordings[to - 1].stem_count > 0) {
            hand_over(model, &model->wordings[from], to - from, group);
            continue;
        }
        for (size_t w = from; w < to; w++) {
            bits_join(needed, model->wordings[w].stem_set, model->stem_cells);
            model->wordings[kept++] = model->wordings[w];
        }
    }
    model->wording_count = kept;
    forget_stems(model, needed);
}

static bool entry_beats(const struct solve_model *model, size_t a, size_t b) {
    const struct solve_entry *one = &model->entries[a], *other = &model->entries[b];
    return one->length <= other->length && one->value >= other->value &&
           (one->value > other->value || a < b) &&
           bits_within(other->stem_set, one->stem_set, model->stem_cells) &&
           bits_within(one->word_set, other->word_set, model->word_cells);
}

static bool entry_is_beaten(const struct solve_model *model, size_t e) {
    size_t group = model->entries[e].group;
    for (size_t a = e; a-- > 0 && model->entries[a].group == group;)
        if (entry_beats(model, a, e)) return true;
    for (size_t a = e + 1; a < model->entry_count && model->entries[a].group == group; a++)
        if (entry_beats(model, a, e)) return true;
    return false;
}

void solve_reduce_entries(struct arena *arena, struct solve_model *model) {
    bool *beaten = arena_array(arena, model->entry_count, sizeof *beaten);
    for (size_t e = 0; e < model->entry_count; e++) beaten[e] = entry_is_beaten(model, e);
    size_t kept = 0;
    for (size_t e = 0; e < model->entry_count; e++)
        if (!beaten[e]) model->entries[kept++] = model->entries[e];
    model->entry_count = kept;
    model->entry_cells = bits_cells(kept);
}

static int64_t most_of_group(const struct solve_model *model, size_t g) {
    int64_t most = INT64_MIN;
    for (size_t e = model->first[g]; e < model->first[g + 1]; e++)
        if (model->entries[e].value > most) most = model->entries[e].value;
    return most;
}

// The only group that brings the stem, or SIZE_MAX.
static size_t bringer(const struct solve_model *model, uint32_t stem) {
    size_t group = SIZE_MAX;
    for (size_t e = 0; e < model->entry_count; e++) {
        if (!bits_has(model->entries[e].stem_set, stem) || model->entries[e].group == group) continue;
        if (group != SIZE_MAX) return SIZE_MAX;
        group = model->entries[e].group;
    }
    return group;
}

// A wording that must be answered needs each of its stems: where one group alone brings a stem, an entry of
// that group with it.
static void keep_answers(const struct solve_model *model, const struct solve_wording *wording,
                         uint64_t *alive) {
    for (size_t i = 0; i < wording->stem_count; i++) {
        size_t group = bringer(model, wording->stems[i]);
        if (group == SIZE_MAX) continue;
        for (size_t e = model->first[group]; e < model->first[group + 1]; e++)
            if (!bits_has(model->entries[e].stem_set, wording->stems[i])) bits_drop(alive, e);
    }
}

// Nothing is worth more than the best entry of each group and the heaviest wording of each want together.
static int64_t most_of_all(const struct solve_model *model) {
    int64_t most = 0;
    for (size_t g = 0; g < model->group_count; g++) most += most_of_group(model, g);
    for (size_t w = 0; w < model->wording_count; w++)
        if (!w || model->wordings[w].want != model->wordings[w - 1].want) most += model->wordings[w].weight;
    return most;
}

// The only wording of its want, without which nothing is worth `least`?
static bool must_answer(const struct solve_model *model, size_t w, int64_t most, int64_t least) {
    const struct solve_wording *wording = &model->wordings[w];
    bool first = !w || wording->want != wording[-1].want,
         last = w + 1 == model->wording_count || wording->want != wording[1].want;
    return first && last && most - wording->weight < least;
}

void solve_reduce_above(const struct solve_model *model, int64_t least, uint64_t *alive) {
    int64_t most = most_of_all(model);
    for (size_t g = 0; g < model->group_count; g++) {
        int64_t others = most - most_of_group(model, g);
        for (size_t e = model->first[g]; e < model->first[g + 1]; e++)
            if (others + model->entries[e].value < least) bits_drop(alive, e);
    }
    for (size_t w = 0; w < model->wording_count; w++)
        if (must_answer(model, w, most, least)) keep_answers(model, &model->wordings[w], alive);
}

// Whole grains of what lies between, so that values stay as they are to each other.
static int64_t lower_by(const struct solve_model *model, int64_t without) {
    int64_t more = model->least - without - 1;
    return more - more % model->grain;
}

static int64_t lower_group(struct solve_model *model, size_t g, int64_t others) {
    int64_t without = INT64_MIN;
    for (size_t e = model->first[g]; e < model->first[g + 1]; e++) {
        int64_t value = others + model->entries[e].value;
        if (value < model->least && value > without) without = value;
    }
    int64_t less = without == INT64_MIN ? 0 : lower_by(model, without);
    for (size_t e = model->first[g]; e < model->first[g + 1]; e++)
        if (others + model->entries[e].value >= model->least) model->entries[e].value -= less;
    model->least -= less;
    return less;
}

static int64_t lower_wording(struct solve_model *model, struct solve_wording *wording, int64_t most) {
    int64_t less = lower_by(model, most - wording->weight);
    wording->weight -= less;
    model->least -= less;
    size_t i = 0;
    while (i < wording->stem_count && bringer(model, wording->stems[i]) != SIZE_MAX) i++;
    if (i == wording->stem_count) wording->row_count = 0;
    return less;
}

int64_t solve_reduce_sure(struct solve_model *model) {
    int64_t all = 0, most = most_of_all(model);
    for (size_t g = 0; g < model->group_count; g++) {
        int64_t less = lower_group(model, g, most - most_of_group(model, g));
        most -= less;
        all += less;
    }
    for (size_t w = 0; w < model->wording_count; w++) {
        if (!must_answer(model, w, most, model->least)) continue;
        int64_t less = lower_wording(model, &model->wordings[w], most);
        most -= less;
        all += less;
    }
    return all;
}

static void mark_pair(uint64_t *pairs, size_t cells, size_t a, size_t b) {
    bits_add(&pairs[a * cells], b);
    bits_add(&pairs[b * cells], a);
}

static void mark_clashes(struct solve_model *model, size_t a) {
    const struct solve_entry *entry = &model->entries[a];
    for (size_t b = 0; b < a && entry->word_count > 0; b++) {
        const struct solve_entry *other = &model->entries[b];
        if (other->group == entry->group || !bits_meet(entry->word_set, other->word_set, model->word_cells))
            continue;
        mark_pair(model->clash, model->entry_cells, a, b);
        mark_pair(model->bar, model->entry_cells, a, b);
    }
}

// A skip that stands for "covered by the roll-up" carries a word; only a phrase that may simply be left out
// carries none.
static bool may_leave(const struct solve_model *model, size_t group) {
    return group < model->phrase_count && model->may_skip[group] &&
           model->entries[model->first[group + 1] - 1].word_count == 0;
}

static void mark_bars(struct solve_model *model, size_t b) {
    const struct solve_entry *entry = &model->entries[b];
    if (entry->spelling < 0 || !may_leave(model, entry->group)) return;
    for (size_t g = 0; g < model->phrase_count; g++) {
        if (g == entry->group || !may_leave(model, g)) continue;
        size_t skip = model->first[g + 1] - 1;
        for (size_t a = model->first[g]; a < skip; a++)
            if (entry_beats(model, a, b)) mark_pair(model->bar, model->entry_cells, b, skip);
    }
}

void solve_reduce_pairs(struct arena *arena, struct solve_model *model) {
    model->clash = arena_array(arena, model->entry_count * model->entry_cells, sizeof *model->clash);
    model->bar = arena_array(arena, model->entry_count * model->entry_cells, sizeof *model->bar);
    for (size_t e = 0; e < model->entry_count; e++) mark_clashes(model, e);
    for (size_t e = 0; e < model->entry_count; e++) mark_bars(model, e);
}
