// SPDX-License-Identifier: MIT
// Builds the search's view of a title problem and throws out what cannot matter:
//   spellings over the limit or with a word that a must says in every title, wordings that need a stem nobody
//   offers, a wording's stems that stand in every title or come along with another of its stems, wordings
//   beaten inside their want, spellings beaten inside their phrase.
// All of these keep the one best choice, ties included; solve_reduce.c says why for the beaten ones.
#include "title/solve_model.h"
#include "title/solve_bits.h"
#include "title/solve_reach.h"
#include "title/solve_reduce.h"
#include "title/solve_rows.h"

struct draft {
    struct arena *arena;
    const struct title_problem *problem;
    struct solve_model *model;
    bool lengths_only;
    const uint32_t *sure;                // per word: the must that says it in every title, or 0
    const struct title_spelling **texts; // per entry, NULL when left out
    uint64_t *offer;                     // per stem as numbered outside: the entries that bring it
    bool *told;                          // per such stem: every title has it, as some must always brings it
    uint32_t *stem_name;                 // outside number to ours, 0 for none, else one more
    uint32_t *word_name;
};

static bool says_word_twice(const struct title_spelling *text) {
    for (size_t i = 0; i < text->word_count; i++)
        for (size_t j = 0; j < i; j++)
            if (text->words[i] == text->words[j]) return true;
    return false;
}

static void add_text(struct draft *draft, size_t group, const struct title_spelling *text, int index) {
    struct solve_model *model = draft->model;
    if (says_word_twice(text) || (!draft->lengths_only && text->length > draft->problem->limit)) return;
    if (!reach_may_stand(draft->sure, group, text)) return;
    draft->texts[model->entry_count] = text;
    model->entries[model->entry_count++] =
        (struct solve_entry){.group = group, .length = text->length + 1, .spelling = index};
}

static void add_skip(struct draft *draft, size_t group) {
    draft->model->may_skip[group] = true;
    draft->model->entries[draft->model->entry_count++] = (struct solve_entry){.group = group, .spelling = -1};
}

static bool has_rollup(const struct title_problem *problem, const struct title_phrase *phrase) {
    return phrase->must && phrase->rollup >= 0 && (size_t)phrase->rollup < problem->rollup_count;
}

static bool rollup_is_named(const struct title_problem *problem, size_t rollup) {
    for (size_t p = 0; p < problem->phrase_count; p++)
        if (has_rollup(problem, &problem->phrases[p]) && (size_t)problem->phrases[p].rollup == rollup)
            return true;
    return false;
}

static void draft_entries(struct draft *draft) {
    const struct title_problem *problem = draft->problem;
    struct solve_model *model = draft->model;
    size_t most = 2 * problem->rollup_count;
    for (size_t p = 0; p < problem->phrase_count; p++) most += problem->phrases[p].count + 1;
    model->entries = arena_array(draft->arena, most, sizeof *model->entries);
    draft->texts = arena_array(draft->arena, most, sizeof *draft->texts);
    for (size_t p = 0; p < problem->phrase_count; p++) {
        const struct title_phrase *phrase = &problem->phrases[p];
        for (size_t i = 0; i < phrase->count && (phrase->must || !draft->lengths_only); i++)
            add_text(draft, p, &phrase->spellings[i], (int)i);
        if (!phrase->must || has_rollup(problem, phrase)) add_skip(draft, p);
    }
    for (size_t r = 0; r < problem->rollup_count; r++) {
        if (rollup_is_named(problem, r)) add_text(draft, problem->phrase_count + r, &problem->rollups[r], 0);
        add_skip(draft, problem->phrase_count + r);
    }
    model->entry_cells = bits_cells(model->entry_count);
}

static void find_offers(struct draft *draft) {
    struct solve_model *model = draft->model;
    draft->offer =
        arena_array(draft->arena, draft->problem->stem_count * model->entry_cells, sizeof *draft->offer);
    for (size_t e = 0; e < model->entry_count; e++) {
        const struct title_spelling *text = draft->texts[e];
        for (size_t i = 0; text != NULL && i < text->stem_count; i++)
            bits_add(&draft->offer[text->stems[i] * model->entry_cells], e);
    }
}

// Stems that all entries of a group bring which cannot be left out.
static void find_told(struct draft *draft) {
    struct solve_model *model = draft->model;
    size_t cells = model->entry_cells;
    draft->told = arena_array(draft->arena, draft->problem->stem_count, sizeof *draft->told);
    for (size_t from = 0, to; from < model->entry_count; from = to) {
        size_t group = model->entries[from].group;
        for (to = from + 1; to < model->entry_count && model->entries[to].group == group;) to++;
        const struct title_spelling *text = draft->texts[from];
        for (size_t i = 0; !model->may_skip[group] && i < text->stem_count; i++) {
            size_t e = from + 1;
            while (e < to && bits_has(&draft->offer[text->stems[i] * cells], e)) e++;
            draft->told[text->stems[i]] |= e == to;
        }
    }
}

// Keeps one of two stems when whatever brings the kept one brings the other as well: fewer things to wait
// for.
static bool comes_along(const struct draft *draft, const struct title_wording *wording, size_t i) {
    size_t cells = draft->model->entry_cells;
    const uint64_t *mine = &draft->offer[wording->stems[i] * cells];
    for (size_t j = 0; j < wording->count; j++) {
        const uint64_t *other = &draft->offer[wording->stems[j] * cells];
        if (j == i || !bits_within(other, mine, cells)) continue;
        if (wording->stems[i] == wording->stems[j] ? j < i : j < i || !bits_within(mine, other, cells))
            return true;
    }
    return false;
}

static bool all_offered(const struct draft *draft, const struct title_wording *wording) {
    size_t cells = draft->model->entry_cells;
    for (size_t i = 0; i < wording->count; i++) {
        const uint64_t *offer = &draft->offer[wording->stems[i] * cells];
        uint64_t any = 0;
        for (size_t c = 0; c < cells; c++) any |= offer[c];
        if (any == 0) return false;
    }
    return true;
}

static void draft_wording(struct draft *draft, const struct title_wording *wording, size_t want) {
    struct solve_model *model = draft->model;
    if (wording->weight <= 0 || !all_offered(draft, wording)) return;
    struct solve_wording *own = &model->wordings[model->wording_count++];
    *own = (struct solve_wording){.want = want, .weight = wording->weight};
    own->stems = arena_array(draft->arena, wording->count, sizeof *own->stems);
    for (size_t i = 0; i < wording->count; i++) {
        if (draft->told[wording->stems[i]] || comes_along(draft, wording, i)) continue;
        uint32_t *name = &draft->stem_name[wording->stems[i]];
        if (*name == 0) *name = (uint32_t)++model->stem_count;
        own->stems[own->stem_count++] = *name - 1;
    }
}

static void draft_wordings(struct draft *draft) {
    const struct title_problem *problem = draft->problem;
    struct solve_model *model = draft->model;
    size_t most = 0;
    for (size_t k = 0; k < problem->want_count; k++) most += problem->wants[k].count;
    model->wordings = arena_array(draft->arena, most, sizeof *model->wordings);
    draft->stem_name = arena_array(draft->arena, problem->stem_count, sizeof *draft->stem_name);
    model->want_count = problem->want_count;
    for (size_t k = 0; k < problem->want_count && !draft->lengths_only; k++)
        for (size_t i = 0; i < problem->wants[k].count; i++)
            draft_wording(draft, &problem->wants[k].wordings[i], k);
    model->stem_cells = bits_cells(model->stem_count);
    uint64_t *sets = arena_array(draft->arena, model->wording_count * model->stem_cells, sizeof *sets);
    for (size_t w = 0; w < model->wording_count; w++) {
        struct solve_wording *own = &model->wordings[w];
        own->stem_set = sets + w * model->stem_cells;
        for (size_t i = 0; i < own->stem_count; i++) bits_add(own->stem_set, own->stems[i]);
    }
}

// Numbers the words that two groups use, and makes one more word for each must that a roll-up may cover: it
// stands in "covered" and in "roll-up left out", which therefore cannot meet.
static void name_words(struct draft *draft) {
    struct solve_model *model = draft->model;
    size_t *group = arena_array(draft->arena, draft->problem->word_count, sizeof *group);
    draft->word_name = arena_array(draft->arena, draft->problem->word_count, sizeof *draft->word_name);
    for (size_t e = 0; e < model->entry_count; e++) {
        const struct title_spelling *text = draft->texts[e];
        for (size_t i = 0; text != NULL && i < text->word_count; i++) {
            uint16_t word = text->words[i];
            if (group[word] == 0)
                group[word] = model->entries[e].group + 1;
            else if (group[word] != model->entries[e].group + 1 && draft->word_name[word] == 0)
                draft->word_name[word] = (uint32_t)++model->word_count;
        }
    }
}

// A roll-up that is left out is tied to every must that it may cover, such a must to one roll-up.
static size_t word_room(const struct draft *draft, size_t e) {
    const struct title_spelling *text = draft->texts[e];
    bool rollup = draft->model->entries[e].group >= draft->model->phrase_count;
    return text != NULL ? text->word_count : rollup ? draft->model->phrase_count : 1;
}

// One piece of memory for the lists of all entries.
static void share_out(struct draft *draft) {
    struct solve_model *model = draft->model;
    size_t stems = 0, words = 0;
    for (size_t e = 0; e < model->entry_count; e++) {
        stems += draft->texts[e] == NULL ? 0 : draft->texts[e]->stem_count;
        words += word_room(draft, e);
    }
    uint32_t *lists = arena_array(draft->arena, stems + words, sizeof *lists);
    uint64_t *sets = arena_array(draft->arena, model->entry_count * model->stem_cells, sizeof *sets);
    for (size_t e = 0; e < model->entry_count; e++) {
        struct solve_entry *entry = &model->entries[e];
        entry->stem_set = sets + e * model->stem_cells;
        entry->stems = lists;
        lists += draft->texts[e] == NULL ? 0 : draft->texts[e]->stem_count;
        entry->words = lists;
        lists += word_room(draft, e);
    }
}

static void fill_texts(struct draft *draft, struct solve_entry *entry, const struct title_spelling *text) {
    size_t stems = text == NULL ? 0 : text->stem_count, words = text == NULL ? 0 : text->word_count;
    for (size_t i = 0; i < stems; i++) {
        uint32_t name = draft->stem_name[text->stems[i]];
        if (name == 0 || bits_has(entry->stem_set, name - 1)) continue;
        bits_add(entry->stem_set, name - 1);
        entry->stems[entry->stem_count++] = name - 1;
    }
    for (size_t i = 0; i < words; i++)
        if (draft->word_name[text->words[i]] != 0)
            entry->words[entry->word_count++] = draft->word_name[text->words[i]] - 1;
}

static void tie_covers(struct draft *draft) {
    struct solve_model *model = draft->model;
    const struct title_problem *problem = draft->problem;
    for (size_t e = 0; e < model->entry_count; e++) {
        struct solve_entry *entry = &model->entries[e];
        if (entry->spelling >= 0 || entry->group >= problem->phrase_count) continue;
        if (!has_rollup(problem, &problem->phrases[entry->group])) continue;
        size_t rollup = (size_t)problem->phrases[entry->group].rollup;
        for (size_t out = 0; out < model->entry_count; out++) {
            struct solve_entry *other = &model->entries[out];
            if (other->spelling >= 0 || other->group != problem->phrase_count + rollup) continue;
            other->words[other->word_count++] = (uint32_t)model->word_count;
            entry->words[entry->word_count++] = (uint32_t)model->word_count++;
        }
    }
}

static void fill_entries(struct draft *draft) {
    struct solve_model *model = draft->model;
    name_words(draft);
    share_out(draft);
    for (size_t e = 0; e < model->entry_count; e++) fill_texts(draft, &model->entries[e], draft->texts[e]);
    tie_covers(draft);
    model->word_cells = bits_cells(model->word_count);
    uint64_t *sets = arena_array(draft->arena, model->entry_count * model->word_cells, sizeof *sets);
    for (size_t e = 0; e < model->entry_count; e++) {
        struct solve_entry *entry = &model->entries[e];
        entry->word_set = sets + e * model->word_cells;
        for (size_t i = 0; i < entry->word_count; i++) bits_add(entry->word_set, entry->words[i]);
    }
}

// The room that a title can use at all: a limit far above that must not cost anything.
static size_t usable_room(const struct draft *draft) {
    const struct solve_model *model = draft->model;
    size_t sum = 0, most = 0;
    for (size_t e = 0; e < model->entry_count; e++) {
        const struct solve_entry *entry = &model->entries[e];
        if (e > 0 && entry->group != model->entries[e - 1].group) most = 0;
        if (entry->length > most) {
            sum += entry->length - most;
            most = entry->length;
        }
    }
    return draft->problem->limit < sum ? draft->problem->limit + 1 : sum;
}

static int64_t text_value(const struct title_spelling *text) {
    return text == NULL ? 0 : (int64_t)text->tells - text->cost;
}

static void set_values(struct draft *draft) {
    struct solve_model *model = draft->model;
    int64_t total = 1;
    for (size_t e = 0; e < model->entry_count; e++) {
        int64_t value = text_value(draft->texts[e]);
        total += value < 0 ? -value : value;
    }
    for (size_t w = 0; w < model->wording_count; w++) total += model->wordings[w].weight;
    model->room = draft->lengths_only ? 0 : usable_room(draft);
    model->scale = (int64_t)model->room + 1;
    model->grain = draft->lengths_only || total > ((int64_t)1 << 50) / model->scale ? 1 : 8;
    for (size_t e = 0; e < model->entry_count; e++) {
        struct solve_entry *entry = &model->entries[e];
        int64_t worth = draft->lengths_only ? 0 : text_value(draft->texts[e]) * model->scale;
        entry->value = (worth - (int64_t)entry->length) * model->grain;
        if (draft->lengths_only) entry->length = 0;
    }
    for (size_t w = 0; w < model->wording_count; w++)
        model->wordings[w].weight *= model->scale * model->grain;
}

static void find_span(struct solve_model *model) {
    for (size_t g = 0; g < model->group_count; g++) {
        int64_t least = INT64_MAX, most = INT64_MIN;
        for (size_t e = model->first[g]; e < model->first[g + 1]; e++) {
            int64_t value = model->entries[e].value;
            least = value < least ? value : least;
            most = value > most ? value : most;
        }
        if (least > most) continue;
        model->least += least;
        model->span += most - least;
    }
    for (size_t w = 0; w < model->wording_count; w++) model->span += model->wordings[w].weight;
}

static void index_groups(struct draft *draft) {
    struct solve_model *model = draft->model;
    model->first = arena_array(draft->arena, model->group_count + 1, sizeof *model->first);
    model->possible = true;
    size_t e = 0;
    for (size_t g = 0; g < model->group_count; g++) {
        model->first[g] = e;
        while (e < model->entry_count && model->entries[e].group == g) e++;
        if (e == model->first[g]) model->possible = false;
        if (e - model->first[g] > model->widest) model->widest = e - model->first[g];
    }
    model->first[model->group_count] = e;
    find_span(model);
    size_t rollups = draft->problem->rollup_count;
    model->covers = arena_array(draft->arena, rollups, sizeof *model->covers);
    model->cover_count = arena_array(draft->arena, rollups, sizeof *model->cover_count);
    for (size_t r = 0; r < rollups; r++)
        model->covers[r] = arena_array(draft->arena, model->phrase_count, sizeof **model->covers);
    for (size_t g = 0; g < model->phrase_count; g++) {
        const struct title_phrase *phrase = &draft->problem->phrases[g];
        if (!has_rollup(draft->problem, phrase)) continue;
        size_t r = (size_t)phrase->rollup;
        model->covers[r][model->cover_count[r]++] = model->first[g + 1] - 1;
    }
}

void solve_model_build(struct arena *arena, const struct title_problem *problem, bool lengths_only,
                       struct solve_model *model) {
    struct draft draft = {.arena = arena,
                          .problem = problem,
                          .model = model,
                          .lengths_only = lengths_only,
                          .sure = reach_sure_words(arena, problem)};
    *model = (struct solve_model){.phrase_count = problem->phrase_count,
                                  .group_count = problem->phrase_count + problem->rollup_count};
    model->may_skip = arena_array(arena, model->group_count, sizeof *model->may_skip);
    draft_entries(&draft);
    find_offers(&draft);
    find_told(&draft);
    draft_wordings(&draft);
    fill_entries(&draft);
    set_values(&draft);
    solve_reduce_wordings(arena, model);
    solve_reduce_wants(arena, model);
    solve_reduce_entries(arena, model);
    index_groups(&draft);
    solve_rows_build(arena, model);
    solve_reduce_pairs(arena, model);
}

static int64_t wants_pay(const struct solve_model *model, const uint64_t *stems) {
    int64_t sum = 0;
    for (size_t w = 0, paid = SIZE_MAX; w < model->wording_count; w++) {
        const struct solve_wording *wording = &model->wordings[w];
        if (wording->want == paid || !bits_within(wording->stem_set, stems, model->stem_cells)) continue;
        paid = wording->want;
        sum += wording->weight;
    }
    return sum;
}

static bool rollups_are_used(const struct solve_model *model, const size_t *pick) {
    for (size_t g = model->phrase_count; g < model->group_count; g++) {
        bool used = model->entries[pick[g]].spelling < 0;
        size_t r = g - model->phrase_count;
        for (size_t i = 0; i < model->cover_count[r] && !used; i++)
            used = pick[model->entries[model->covers[r][i]].group] == model->covers[r][i];
        if (!used) return false;
    }
    return true;
}

static bool keeps_laws(const struct solve_model *model, const size_t *pick, uint64_t *picked) {
    memset(picked, 0, model->entry_cells * sizeof *picked);
    for (size_t g = 0; g < model->group_count; g++) bits_add(picked, pick[g]);
    for (size_t g = 0; g < model->group_count; g++)
        if (bits_meet(&model->clash[pick[g] * model->entry_cells], picked, model->entry_cells)) return false;
    return rollups_are_used(model, pick);
}

bool solve_model_value(const struct solve_model *model, const size_t *pick, uint64_t *room, int64_t *value) {
    size_t length = 0;
    *value = 0;
    if (!keeps_laws(model, pick, room)) return false;
    memset(room, 0, model->stem_cells * sizeof *room);
    for (size_t g = 0; g < model->group_count; g++) {
        const struct solve_entry *entry = &model->entries[pick[g]];
        length += entry->length;
        *value += entry->value;
        bits_join(room, entry->stem_set, model->stem_cells);
    }
    if (length > model->room) return false;
    *value += wants_pay(model, room);
    return true;
}

bool solve_model_earlier(const struct solve_model *model, const size_t *a, const size_t *b) {
    for (size_t g = 0; g < model->phrase_count; g++)
        if (a[g] != b[g]) return a[g] < b[g];
    return false;
}
