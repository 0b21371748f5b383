// SPDX-License-Identifier: MIT
// Depth first: roll-ups before phrases, since what may stay out hangs on them; of each group the entry that
// is worth most first. A branch ends where the best that the other groups can bring, each by itself, is less
// than what was found. Equals are gone through too: the tie rule may prefer a later one.
#include "title/solve_least.h"
#include "title/solve_bits.h"

enum { TRIES_MOST = 2000 };

struct least {
    const struct solve_model *model;
    struct solve_found *found;
    size_t *groups; // with more than one entry, roll-ups first
    size_t count, rollups;
    int64_t *rest; // per place in `groups`: the most that those from there on can bring
    size_t *pick;
    uint64_t *picked, *room; // `picked`: entries, a set for each depth
};

static bool clashes(const struct least *least, const uint64_t *picked, size_t e) {
    size_t cells = least->model->entry_cells;
    return bits_meet(&least->model->clash[e * cells], picked, cells);
}

// False when a group has nothing left beside what was picked.
static bool find_rest(struct least *least, size_t from, const uint64_t *picked) {
    least->rest[least->count] = 0;
    for (size_t i = least->count; i-- > from;) {
        int64_t most = INT64_MIN;
        for (size_t e = least->model->first[least->groups[i]]; e < least->model->first[least->groups[i] + 1];
             e++)
            if (least->model->entries[e].value > most && !clashes(least, picked, e))
                most = least->model->entries[e].value;
        if (most == INT64_MIN) return false;
        least->rest[i] = least->rest[i + 1] + most;
    }
    return true;
}

static void offer(struct least *least) {
    struct solve_found *found = least->found;
    int64_t value;
    if (!solve_model_value(least->model, least->pick, least->room, &value)) return;
    if (found->any && (value < found->value || (value == found->value && !solve_model_earlier(
                                                                             least->model, least->pick,
                                                                             found->pick))))
        return;
    found->any = true;
    found->value = value;
    memcpy(found->pick, least->pick, least->model->group_count * sizeof *found->pick);
}

// The entry of group `g` that comes behind `after`, those worth most first and equals as they stand; with
// SIZE_MAX the first. SIZE_MAX when there is none.
static size_t next_best(const struct solve_model *model, size_t g, size_t after) {
    size_t best = SIZE_MAX;
    for (size_t e = model->first[g]; e < model->first[g + 1]; e++) {
        int64_t value = model->entries[e].value;
        if (after != SIZE_MAX && (value > model->entries[after].value ||
                                  (value == model->entries[after].value && e <= after)))
            continue;
        if (best == SIZE_MAX || value > model->entries[best].value) best = e;
    }
    return best;
}

static bool go_through(struct least *least, size_t at, int64_t value) {
    const struct solve_model *model = least->model;
    const size_t cells = model->entry_cells;
    const uint64_t *picked = &least->picked[at * cells];
    if (at == least->count) {
        offer(least);
        return true;
    }
    if (at <= least->rollups) {
        if (!find_rest(least, at, picked)) return true;
        if (least->found->any && value + least->rest[at] < least->found->value) return true;
    }
    size_t g = least->groups[at];
    for (size_t e = next_best(model, g, SIZE_MAX); e != SIZE_MAX; e = next_best(model, g, e)) {
        int64_t now = value + model->entries[e].value;
        if (clashes(least, picked, e)) continue;
        if (++least->found->steps > TRIES_MOST) return false;
        if (at >= least->rollups && least->found->any && now + least->rest[at + 1] < least->found->value)
            break;
        uint64_t *next = &least->picked[(at + 1) * cells];
        bits_copy(next, picked, cells);
        bits_add(next, e);
        least->pick[g] = e;
        if (!go_through(least, at + 1, now)) return false;
    }
    return true;
}

bool solve_least(struct arena *arena, const struct solve_model *model, struct solve_found *found) {
    struct least least = {.model = model, .found = found};
    *found = (struct solve_found){.finished = true, .bound = INT64_MIN};
    found->pick = arena_array(arena, model->group_count, sizeof *found->pick);
    if (!model->possible) return true;
    least.groups = arena_array(arena, model->group_count, sizeof *least.groups);
    least.rest = arena_array(arena, model->group_count + 1, sizeof *least.rest);
    least.pick = arena_array(arena, model->group_count, sizeof *least.pick);
    least.picked = arena_array(arena, (model->group_count + 1) * model->entry_cells, sizeof *least.picked);
    least.room = arena_array(arena, model->stem_cells + model->entry_cells, sizeof *least.room);
    int64_t settled = 0;
    for (size_t k = 0; k < model->group_count; k++) {
        size_t g = (model->phrase_count + k) % model->group_count, e = model->first[g];
        if (model->first[g + 1] - e > 1) {
            least.rollups += g >= model->phrase_count;
            least.groups[least.count++] = g;
            continue;
        }
        if (clashes(&least, least.picked, e)) return true;
        bits_add(least.picked, e);
        least.pick[g] = e;
        settled += model->entries[e].value;
    }
    if (!go_through(&least, 0, settled)) {
        *found = (struct solve_found){0};
        return false;
    }
    found->bound = found->any ? found->value : INT64_MIN;
    return true;
}
