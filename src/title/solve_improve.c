// SPDX-License-Identifier: MIT
// A good title early saves the search more than it costs: entries and whole nodes are dropped against it.
#include "title/solve_improve.h"
#include "title/solve_bits.h"

void solve_improve_init(struct arena *arena, const struct solve_model *model, struct solve_improve *improve) {
    improve->trial = arena_array(arena, model->group_count, sizeof *improve->trial);
    improve->order = arena_array(arena, model->group_count, sizeof *improve->order);
    improve->earns = arena_array(arena, model->group_count, sizeof *improve->earns);
    improve->room = arena_array(arena, model->stem_cells + model->entry_cells, sizeof *improve->room);
}

static size_t skip_of(const struct solve_model *model, size_t g) {
    return model->first[g + 1] - 1;
}

static bool earns_less(const struct solve_model *model, const struct solve_improve *improve,
                       const size_t *pick, size_t g, size_t h) {
    return improve->earns[g] * (int64_t)model->entries[pick[h]].length <
           improve->earns[h] * (int64_t)model->entries[pick[g]].length;
}

// Lists what could go, by what it earns for its length. Returns how many.
static size_t order_groups(const struct solve_model *model, struct solve_improve *improve, const size_t *pick,
                           int64_t value) {
    size_t count = 0;
    memcpy(improve->trial, pick, model->group_count * sizeof *pick);
    for (size_t g = 0; g < model->phrase_count; g++) {
        int64_t without;
        if (!model->may_skip[g] || pick[g] == skip_of(model, g)) continue;
        improve->trial[g] = skip_of(model, g);
        bool lawful = solve_model_value(model, improve->trial, improve->room, &without);
        improve->trial[g] = pick[g];
        if (!lawful) continue;
        improve->earns[g] = (value - without) / model->grain;
        size_t place = count++;
        for (; place > 0 && earns_less(model, improve, pick, g, improve->order[place - 1]); place--)
            improve->order[place] = improve->order[place - 1];
        improve->order[place] = g;
    }
    return count;
}

// The pick with entry `e` in it, in improve->trial; false when that cannot be made lawful this way.
static bool change(const struct solve_model *model, struct solve_improve *improve, const size_t *pick,
                   size_t count, size_t e) {
    const uint64_t *clash = &model->clash[e * model->entry_cells];
    size_t length = 0, own = model->entries[e].group;
    memcpy(improve->trial, pick, model->group_count * sizeof *pick);
    improve->trial[own] = e;
    for (size_t g = 0; g < model->group_count; g++) {
        if (bits_has(clash, improve->trial[g])) {
            if (!model->may_skip[g]) return false;
            improve->trial[g] = skip_of(model, g);
        }
        length += model->entries[improve->trial[g]].length;
    }
    for (size_t i = 0; i < count && length > model->room; i++) {
        size_t g = improve->order[i];
        if (g == own || improve->trial[g] == skip_of(model, g)) continue;
        length -= model->entries[improve->trial[g]].length;
        improve->trial[g] = skip_of(model, g);
    }
    return length <= model->room;
}

bool solve_improve_pick(const struct solve_model *model, struct solve_improve *improve, size_t *pick,
                        int64_t *value) {
    size_t count = order_groups(model, improve, pick, *value);
    bool any = false;
    for (size_t e = 0; e < model->entry_count; e++) {
        int64_t trial;
        if (pick[model->entries[e].group] == e || !change(model, improve, pick, count, e)) continue;
        if (!solve_model_value(model, improve->trial, improve->room, &trial) || trial <= *value) continue;
        memcpy(pick, improve->trial, model->group_count * sizeof *pick);
        *value = trial;
        count = order_groups(model, improve, pick, *value);
        any = true;
    }
    return any;
}
