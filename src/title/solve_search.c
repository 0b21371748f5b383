// SPDX-License-Identifier: MIT
// Depth first, with the price bound (title/bound.h) at every node.
//
// A node is measured a few times while its prices move to where the bound is least; each measure's own pick,
// mended where it breaks a law, is a title to beat. With the best prices, every entry whose bound is below
// the best title goes. What then remains open is split over one group. A node whose bound equals the best
// value can only hold equals. It is kept while an equal that comes first by the tie rule is possible, and is
// split in phrase order, so that the first equal found is the first there is.
#include "title/solve_search.h"
#include "title/bound.h"
#include "title/solve_bits.h"
#include "title/solve_improve.h"
#include "title/solve_reduce.h"

enum {
    ROOT_MEASURES = 50,
    HIGH = 4,
    HIGH_MEASURES = 10,
    NODE_MEASURES = 5,
    OFFER_EVERY = 4,
    FIRST_IMPROVED = 12
};
#define NODE_PACE 1.0

struct search {
    struct arena *arena;
    const struct solve_model *model;
    struct solve_found *found;
    struct bound_work work;
    struct solve_improve improve;
    bool fresh;               // the best title has not been tried to be bettered yet
    struct bound_node *nodes; // by depth
    size_t node_count;
    size_t *mended;
    uint64_t *room, *picked;
    uint64_t budget;
    int64_t unseen; // greatest bound among what the budget left out
};

static void offer(struct search *search, const size_t *pick) {
    const struct solve_model *model = search->model;
    struct solve_found *found = search->found;
    int64_t value;
    if (!solve_model_value(model, pick, search->room, &value) || value < model->least) return;
    if (found->any &&
        (value < found->value || (value == found->value && !solve_model_earlier(model, pick, found->pick))))
        return;
    found->any = true;
    found->value = value;
    memcpy(found->pick, pick, model->group_count * sizeof *pick);
    search->fresh = true;
}

static bool clashes(const struct search *search, size_t entry) {
    size_t cells = search->model->entry_cells;
    return bits_meet(&search->model->clash[entry * cells], search->picked, cells);
}

static void repick(struct search *search, size_t g, size_t entry) {
    bits_drop(search->picked, search->mended[g]);
    bits_add(search->picked, entry);
    search->mended[g] = entry;
}

// Takes the bound's pick, leaves out what clashes, and fills the room that is left with what has a price.
static void mend(struct search *search, const struct bound_node *node) {
    const struct solve_model *model = search->model;
    size_t *pick = search->mended, left = model->room;
    memcpy(pick, search->work.pick, model->group_count * sizeof *pick);
    memset(search->picked, 0, model->entry_cells * sizeof *search->picked);
    for (size_t g = 0; g < model->group_count; g++) bits_add(search->picked, pick[g]);
    for (size_t i = 0; i < node->group_count; i++) {
        size_t g = node->groups[i];
        if (clashes(search, pick[g])) repick(search, g, node->entries[node->entry_end[i] - 1]);
    }
    for (size_t g = 0; g < model->group_count; g++) {
        if (model->entries[pick[g]].length > left) return;
        left -= model->entries[pick[g]].length;
    }
    for (size_t i = 0, slot = 0; i < node->group_count; slot = node->entry_end[i++]) {
        size_t g = node->groups[i];
        if (model->entries[pick[g]].spelling >= 0 || g >= model->phrase_count) continue;
        for (; slot < node->entry_end[i]; slot++) {
            uint32_t e = node->entries[slot];
            if (model->entries[e].spelling < 0 || model->entries[e].length > left) continue;
            if (search->work.entry_price[e] <= 0 || clashes(search, e)) continue;
            left -= model->entries[e].length;
            repick(search, g, e);
            break;
        }
    }
    offer(search, pick);
}

static bool only_equals(const struct search *search, int64_t bound) {
    return search->found->any && bound < search->found->value + search->model->grain;
}

// Nothing betters a title that no bound of the whole tree is above.
static void improve(struct search *search) {
    struct solve_found *found = search->found;
    if (only_equals(search, search->nodes[0].bound)) return;
    while (search->fresh && search->model->wording_count > 0)
        search->fresh = solve_improve_pick(search->model, &search->improve, found->pick, &found->value);
}

// Whether some title of the node may come before the best one by the tie rule.
static bool may_come_first(const struct search *search, const struct bound_node *node) {
    const struct solve_model *model = search->model;
    for (size_t g = 0; g < model->phrase_count; g++) {
        size_t e = model->first[g];
        while (!bits_has(node->alive, e)) e++;
        if (e != search->found->pick[g]) return e < search->found->pick[g];
    }
    return false;
}

// Whether the best title is one of the node's: then its bound never falls below that.
static bool holds_found(const struct search *search, const struct bound_node *node) {
    for (size_t g = 0; g < search->model->group_count; g++)
        if (!bits_has(node->alive, search->found->pick[g])) return false;
    return true;
}

// Whether a node with this bound needs no further look.
static bool is_beaten(const struct search *search, const struct bound_node *node, int64_t bound) {
    if (!search->found->any) return bound < search->model->least;
    return bound < search->found->value || (only_equals(search, bound) && !may_come_first(search, node));
}

static int64_t measure(struct search *search, struct bound_node *node) {
    search->found->steps++;
    int64_t bound = bound_measure(&search->work, node);
    if (search->found->steps % OFFER_EVERY == 0) offer(search, search->work.pick);
    return bound;
}

// Moves the prices to a low bound and leaves the work as measured with the best prices. True when the node is
// beaten.
static bool tighten(struct search *search, struct bound_node *node, size_t measures) {
    struct bound_work *work = &search->work;
    const size_t prices = work->price_room;
    int64_t best = INT64_MAX;
    double pace = measures == ROOT_MEASURES ? 0.6 : NODE_PACE;
    size_t stall = 0;
    bool last = false;
    for (size_t i = 0; i < measures; i++) {
        int64_t bound = measure(search, node);
        if (bound < best) {
            best = bound;
            stall = 0;
            memcpy(work->best_price, node->price, prices * sizeof *node->price);
            if (best < node->bound) node->bound = best;
            if (is_beaten(search, node, node->bound)) return true;
        } else if (++stall == 3) {
            pace *= 0.6;
            stall = 0;
            memcpy(node->price, work->best_price, prices * sizeof *node->price);
        }
        if (i % 3 == 0) mend(search, node);
        if (i == FIRST_IMPROVED) improve(search);
        if (i + 1 == measures || (only_equals(search, best) && holds_found(search, node))) {
            if (bound == best) last = true;
            break;
        }
        int64_t gap = best - (search->found->any ? search->found->value : search->model->least - 1);
        if (gap < 1) gap = 1;
        if (!bound_move_prices(work, node, gap, pace, i == 0)) break;
    }
    if (!last) {
        memcpy(node->price, work->best_price, prices * sizeof *node->price);
        search->found->steps++;
        best = bound_measure(work, node);
    }
    improve(search);
    if (is_beaten(search, node, node->bound)) return true;
    bound_limits(work, node, best);
    return false;
}

// Takes out the entries that no better title holds; true when there were any.
static bool drop_beaten(struct search *search, struct bound_node *node) {
    bool any = false;
    size_t slots = node->entry_end[node->group_count - 1];
    for (size_t slot = 0; slot < slots && search->found->any; slot++) {
        if (search->work.limit[node->entries[slot]] >= search->found->value) continue;
        bits_drop(node->alive, node->entries[slot]);
        any = true;
    }
    return any;
}

static struct bound_node *node_at(struct search *search, size_t depth) {
    while (search->node_count <= depth)
        bound_node_init(search->arena, search->model, &search->nodes[search->node_count++]);
    return &search->nodes[depth];
}

// The group with the dearest stems: whether it stands decides most. Roll-ups first, since musts wait for
// them.
static size_t choose_group(const struct search *search, const struct bound_node *node) {
    const struct solve_model *model = search->model;
    size_t last = node->groups[node->group_count - 1], best = node->groups[0];
    double most = -1;
    if (last >= model->phrase_count) return last;
    for (size_t i = 0; i < node->group_count; i++) {
        size_t g = node->groups[i];
        for (size_t e = model->first[g]; e < model->first[g + 1]; e++) {
            double price = 0;
            if (!bits_has(node->alive, e)) continue;
            for (size_t k = 0; k < model->entries[e].stem_count; k++)
                price += search->work.stem_price[model->entries[e].stems[k]];
            if (price <= most) continue;
            most = price;
            best = g;
        }
    }
    return best;
}

static size_t first_group(const struct search *search, const struct bound_node *node) {
    return node->groups[0] < search->model->phrase_count ? node->groups[0] : choose_group(search, node);
}

static void search_node(struct search *search, size_t depth);

static void split(struct search *search, size_t depth) {
    const struct solve_model *model = search->model;
    struct bound_node *node = &search->nodes[depth], *child = node_at(search, depth + 1);
    bool equals = only_equals(search, node->bound);
    size_t g = equals ? first_group(search, node) : choose_group(search, node);
    size_t from = model->first[g], count = model->first[g + 1] - from;
    int64_t *limits = node->limits;
    memcpy(limits, &search->work.limit[from], count * sizeof *limits);
    for (;;) {
        size_t best = SIZE_MAX;
        for (size_t i = 0; i < count; i++) {
            if (!bits_has(node->alive, from + i)) continue;
            if (best == SIZE_MAX || (!equals && limits[i] > limits[best])) best = i;
        }
        if (best == SIZE_MAX) return;
        bits_drop(node->alive, from + best);
        if (search->found->any && limits[best] < search->found->value) continue;
        bits_copy(child->alive, node->alive, model->entry_cells);
        for (size_t i = 0; i < count; i++) bits_drop(child->alive, from + i);
        bits_add(child->alive, from + best);
        memcpy(child->price, node->price, search->work.price_room * sizeof *child->price);
        child->bound = limits[best] < node->bound ? limits[best] : node->bound;
        search_node(search, depth + 1);
    }
}

static void search_node(struct search *search, size_t depth) {
    struct bound_node *node = &search->nodes[depth];
    if (search->found->steps >= search->budget) {
        if (search->found->any && node->bound < search->found->value) return;
        if (node->bound > search->unseen) search->unseen = node->bound;
        search->found->finished = false;
        return;
    }
    for (size_t round = 0;; round++) {
        if (!bound_open(&search->work, node)) return;
        if (node->group_count == 0) {
            offer(search, search->work.pick);
            return;
        }
        if (is_beaten(search, node, node->bound)) return;
        if (tighten(search, node,
                    round > 0      ? 1
                    : depth == 0   ? ROOT_MEASURES
                    : depth < HIGH ? HIGH_MEASURES
                                   : NODE_MEASURES))
            return;
        if (!drop_beaten(search, node)) break;
    }
    split(search, depth);
}

void solve_search(struct arena *arena, const struct solve_model *model, const size_t *start, uint64_t budget,
                  struct solve_found *found) {
    struct search search = {
        .arena = arena, .model = model, .found = found, .budget = budget, .unseen = INT64_MIN};
    *found = (struct solve_found){.finished = true, .bound = INT64_MIN};
    found->pick = arena_array(arena, model->group_count, sizeof *found->pick);
    if (!model->possible) return;
    search.nodes = arena_array(arena, model->group_count + 2, sizeof *search.nodes);
    search.mended = arena_array(arena, model->group_count, sizeof *search.mended);
    search.room = arena_array(arena, model->stem_cells + model->entry_cells, sizeof *search.room);
    search.picked = arena_array(arena, model->entry_cells, sizeof *search.picked);
    bound_work_init(arena, model, &search.work);
    solve_improve_init(arena, model, &search.improve);
    if (start != NULL) offer(&search, start);
    struct bound_node *root = node_at(&search, 0);
    for (size_t e = 0; e < model->entry_count; e++) bits_add(root->alive, e);
    solve_reduce_above(model, model->least, root->alive);
    bound_first_prices(model, root->price);
    root->bound = INT64_MAX;
    search_node(&search, 0);
    found->bound = found->any ? found->value : INT64_MIN;
    if (search.unseen > found->bound) found->bound = search.unseen;
}
