// SPDX-License-Identifier: MIT
// The bound of title/bound.h: prices on missing stems and on words, and the exact best pick by length under
// them. The pick is found group by group over every length, which for titles costs no more than sorting
// would, and unlike a fractional pick it also tells, with a second sweep from the other end, the bound with
// any one entry taken.
#include "title/bound.h"
#include "title/solve_bits.h"

//
// The sweeps work on 32-bit numbers in blocks of a fixed size, which compilers turn into vector code. Values
// that do not fit are rounded up to coarser units, which keeps the bound a bound.
enum { BLOCK = 4, VALUE_BITS = 27 };
static const int32_t NEVER = INT32_MIN / 4;

// Prices are whole numbers held as doubles, which are exact for them, so that they too go in blocks. Adding
// and taking off this number rounds to a whole one.
static const double ROUNDER = 6755399441055744.0; // 3 * 2^51

// Rows of the sweeps: whole blocks, and one more that a shifted block may run into.
static size_t sweep_stride(size_t room) {
    return (room / BLOCK + 2) * BLOCK;
}

static size_t price_room(const struct solve_model *model) {
    return ((model->row_count + model->word_count) / BLOCK + 1) * BLOCK;
}

// Rounded up: prices may be below 0.
static int32_t coarsen(double exact, unsigned shift) {
    if (shift == 0) return (int32_t)exact;
    int64_t price = (int64_t)exact, unit = (int64_t)1 << shift;
    return (int32_t)(price >= 0 ? (price + unit - 1) / unit : -(-price / unit));
}

void bound_work_init(struct arena *arena, const struct solve_model *model, struct bound_work *work) {
    size_t cells = (model->group_count + 1) * sweep_stride(model->room);
    work->model = model;
    work->price_room = price_room(model);
    work->stem_price = arena_array(arena, model->stem_count, sizeof(double));
    work->entry_price = arena_array(arena, model->entry_count, sizeof(double));
    work->value = arena_array(arena, model->entry_count, sizeof(double));
    work->ahead = arena_room(arena, cells * sizeof(int32_t)); // rows are written before they are read
    work->behind = arena_room(arena, cells * sizeof(int32_t));
    work->ahead_row = arena_array(arena, model->group_count + 1, sizeof *work->ahead_row);
    work->behind_row = arena_array(arena, model->group_count + 1, sizeof *work->behind_row);
    work->coarse = arena_array(arena, model->entry_count, sizeof(int32_t));
    work->pick = arena_array(arena, model->group_count, sizeof(size_t));
    work->limit = arena_array(arena, model->entry_count, sizeof(int64_t));
    work->slope = arena_array(arena, work->price_room, sizeof(double));
    work->trend = arena_array(arena, work->price_room, sizeof(double));
    work->open = arena_array(arena, work->price_room, sizeof(double));
    work->best_price = arena_array(arena, work->price_room, sizeof(double));
    work->stems = arena_array(arena, model->stem_cells, sizeof(uint64_t));
    work->chosen = arena_array(arena, model->want_count, sizeof(uint32_t));
    work->brought = arena_array(arena, model->stem_count + model->word_count, sizeof(uint32_t));
    work->word_group = arena_array(arena, model->word_count, sizeof(size_t));
    work->least = arena_array(arena, model->group_count, sizeof(size_t));
    for (size_t e = 0; e < model->entry_count; e++) work->value[e] = (double)model->entries[e].value;
}

void bound_node_init(struct arena *arena, const struct solve_model *model, struct bound_node *node) {
    node->alive = arena_array(arena, model->entry_cells, sizeof(uint64_t));
    node->price = arena_array(arena, price_room(model), sizeof(double));
    node->covered = arena_array(arena, model->stem_cells, sizeof(uint64_t));
    node->groups = arena_array(arena, model->group_count, sizeof(size_t));
    node->entries = arena_array(arena, model->entry_count, sizeof(uint32_t));
    node->entry_end = arena_array(arena, model->group_count, sizeof(uint32_t));
    node->wordings = arena_array(arena, model->wording_count, sizeof(uint32_t));
    node->want_end = arena_array(arena, model->want_count, sizeof(uint32_t));
    node->gain = arena_array(arena, model->wording_count, sizeof(double));
    node->limits = arena_array(arena, model->widest, sizeof(int64_t));
}

void bound_first_prices(const struct solve_model *model, double *price) {
    for (size_t w = 0; w < model->wording_count; w++) {
        const struct solve_wording *wording = &model->wordings[w];
        for (size_t i = 0; i < wording->row_count; i++) {
            int64_t whole = wording->weight / (int64_t)(2 * wording->row_count - 1);
            double share = (double)whole;
            if (share > price[wording->rows[i]]) price[wording->rows[i]] = share;
        }
    }
}

// Counts the entries left of each group and removes what the only one left bars. False when a group has none.
static bool settle_groups(struct bound_work *work, struct bound_node *node) {
    const struct solve_model *model = work->model;
    for (size_t g = 0; g < model->group_count; g++) {
        size_t count = 0, last = 0, least = SIZE_MAX;
        for (size_t e = model->first[g]; e < model->first[g + 1]; e++) {
            if (!bits_has(node->alive, e)) continue;
            count++;
            last = e;
            if (model->entries[e].length < least) least = model->entries[e].length;
        }
        if (count == 0) return false;
        work->least[g] = least;
        if (count == 1) bits_remove(node->alive, &model->bar[last * model->entry_cells], model->entry_cells);
    }
    return true;
}

// Drops entries that leave too little room for what must stand. False when that does not fit either.
static bool settle_lengths(struct bound_work *work, struct bound_node *node) {
    const struct solve_model *model = work->model;
    size_t total = 0;
    for (size_t g = 0; g < model->group_count; g++) total += work->least[g];
    if (total > model->room) return false;
    for (size_t e = 0; e < model->entry_count; e++) {
        const struct solve_entry *entry = &model->entries[e];
        if (entry->length - work->least[entry->group] > model->room - total && bits_has(node->alive, e))
            bits_drop(node->alive, e);
    }
    return true;
}

static void keep_only(const struct solve_model *model, struct bound_node *node, size_t entry) {
    size_t g = model->entries[entry].group;
    for (size_t e = model->first[g]; e < model->first[g + 1]; e++)
        if (e != entry) bits_drop(node->alive, e);
}

// A roll-up needs a must that it covers.
static void settle_rollups(const struct solve_model *model, struct bound_node *node) {
    for (size_t g = model->phrase_count; g < model->group_count; g++) {
        size_t r = g - model->phrase_count, stand = model->first[g], open = 0, last = 0;
        if (model->entries[stand].spelling < 0 || !bits_has(node->alive, stand)) continue;
        for (size_t i = 0; i < model->cover_count[r]; i++) {
            if (!bits_has(node->alive, model->covers[r][i])) continue;
            open++;
            last = model->covers[r][i];
        }
        if (open == 0) bits_drop(node->alive, stand);
        if (open == 1 && !bits_has(node->alive, model->first[g + 1] - 1)) keep_only(model, node, last);
    }
}

static bool settle(struct bound_work *work, struct bound_node *node) {
    const struct solve_model *model = work->model;
    uint64_t before;
    do {
        before = 0;
        for (size_t c = 0; c < model->entry_cells; c++)
            before += (uint64_t)__builtin_popcountll(node->alive[c]);
        if (!settle_groups(work, node) || !settle_lengths(work, node)) return false;
        settle_rollups(model, node);
        for (size_t c = 0; c < model->entry_cells; c++)
            before -= (uint64_t)__builtin_popcountll(node->alive[c]);
    } while (before != 0);
    return true;
}

static void close_group(struct bound_work *work, struct bound_node *node, size_t g, size_t entry) {
    const struct solve_entry *only = &work->model->entries[entry];
    bits_join(node->covered, only->stem_set, work->model->stem_cells);
    node->base += only->value;
    node->room -= only->length;
    work->pick[g] = entry;
}

// Splits the groups into settled and open ones; `stems` becomes all stems that can still be there.
static void sort_groups(struct bound_work *work, struct bound_node *node) {
    const struct solve_model *model = work->model;
    uint32_t count = 0;
    memset(node->covered, 0, model->stem_cells * sizeof *node->covered);
    memset(work->stems, 0, model->stem_cells * sizeof *work->stems);
    node->group_count = 0;
    node->base = 0;
    node->room = model->room;
    for (size_t g = 0; g < model->group_count; g++) {
        uint32_t start = count;
        for (size_t e = model->first[g]; e < model->first[g + 1]; e++) {
            if (!bits_has(node->alive, e)) continue;
            node->entries[count++] = (uint32_t)e;
            bits_join(work->stems, model->entries[e].stem_set, model->stem_cells);
        }
        if (count - start > 1) {
            node->entry_end[node->group_count] = count;
            node->groups[node->group_count++] = g;
        } else {
            count = start;
            close_group(work, node, g, node->entries[start]);
        }
    }
}

static void see_rows(struct bound_work *work, const struct bound_node *node,
                     const struct solve_wording *wording) {
    for (size_t i = 0; i < wording->row_count; i++)
        if (!bits_has(node->covered, work->model->row_stem[wording->rows[i]]))
            work->open[wording->rows[i]] = 1;
}

static void sort_want(struct bound_work *work, struct bound_node *node, size_t from, size_t to) {
    const struct solve_model *model = work->model;
    int64_t got = 0;
    size_t w = from;
    while (w < to && !bits_within(model->wordings[w].stem_set, node->covered, model->stem_cells)) w++;
    if (w < to) got = model->wordings[w].weight;
    node->base += got;
    uint32_t start = node->want_count == 0 ? 0 : node->want_end[node->want_count - 1], count = start;
    for (w = from; w < to && model->wordings[w].weight > got; w++) {
        const struct solve_wording *wording = &model->wordings[w];
        if (!bits_within(wording->stem_set, work->stems, model->stem_cells)) continue;
        node->wordings[count] = (uint32_t)w;
        node->gain[count++] = (double)(wording->weight - got);
        see_rows(work, node, wording);
    }
    if (count > start) node->want_end[node->want_count++] = count;
}

// A word has a price while two open groups could say it.
static void see_words(struct bound_work *work, const struct bound_node *node) {
    const struct solve_model *model = work->model;
    if (model->word_count == 0) return;
    memset(work->word_group, 0, model->word_count * sizeof *work->word_group);
    for (size_t i = 0, slot = 0; i < node->group_count; i++) {
        size_t g = node->groups[i];
        for (; slot < node->entry_end[i]; slot++) {
            const struct solve_entry *entry = &model->entries[node->entries[slot]];
            for (size_t k = 0; k < entry->word_count; k++) {
                uint32_t word = entry->words[k];
                if (work->word_group[word] == 0)
                    work->word_group[word] = g + 1;
                else if (work->word_group[word] != g + 1)
                    work->open[model->row_count + word] = 1;
            }
        }
    }
}

bool bound_open(struct bound_work *work, struct bound_node *node) {
    const struct solve_model *model = work->model;
    if (!settle(work, node)) return false;
    sort_groups(work, node);
    for (size_t r = 0; r < work->price_room; r++) work->open[r] = 0;
    node->want_count = 0;
    for (size_t from = 0, to; from < model->wording_count; from = to) {
        for (to = from + 1; to < model->wording_count; to++)
            if (model->wordings[to].want != model->wordings[from].want) break;
        sort_want(work, node, from, to);
    }
    see_words(work, node);
    for (size_t r = 0; r < work->price_room; r++) node->price[r] *= work->open[r];
    return true;
}

// What the wants have left over after paying, and which wordings they pay for.
static double measure_wants(struct bound_work *work, const struct bound_node *node) {
    const struct solve_model *model = work->model;
    const double *price = node->price;
    double sum = 0;
    work->chosen_count = 0;
    for (size_t k = 0, i = 0; k < node->want_count; i = node->want_end[k++]) {
        double most = 0;
        uint32_t best = UINT32_MAX;
        for (; i < node->want_end[k] && node->gain[i] > most; i++) {
            const struct solve_wording *wording = &model->wordings[node->wordings[i]];
            double left = node->gain[i];
            for (size_t r = 0; r < wording->row_count; r++) left -= price[wording->rows[r]];
            best = left > most ? node->wordings[i] : best;
            most = left > most ? left : most;
        }
        if (best != UINT32_MAX) work->chosen[work->chosen_count++] = best;
        sum += most;
    }
    return sum;
}

// Prices every stem; returns what the words give back.
static double price_stems(struct bound_work *work, const struct bound_node *node) {
    const struct solve_model *model = work->model;
    double back = 0;
    memset(work->stem_price, 0, model->stem_count * sizeof *work->stem_price);
    for (size_t r = 0; r < model->row_count; r++) work->stem_price[model->row_stem[r]] += node->price[r];
    for (size_t w = 0; w < model->word_count; w++) back += node->price[model->row_count + w];
    return back;
}

static double price_entry(const struct bound_work *work, const struct bound_node *node, uint32_t e) {
    const struct solve_entry *entry = &work->model->entries[e];
    const double *word_price = node->price + work->model->row_count;
    double price = work->value[e];
    for (size_t k = 0; k < entry->stem_count; k++) price += work->stem_price[entry->stems[k]];
    for (size_t k = 0; k < entry->word_count; k++) price -= word_price[entry->words[k]];
    return price;
}

static void price_entries(struct bound_work *work, const struct bound_node *node) {
    double total = 0;
    for (size_t i = 0, slot = 0; i < node->group_count; i++) {
        double most = 0;
        for (; slot < node->entry_end[i]; slot++) {
            double price = price_entry(work, node, node->entries[slot]), size = price < 0 ? -price : price;
            work->entry_price[node->entries[slot]] = price;
            most = size > most ? size : most;
        }
        total += most;
    }
    for (work->shift = 0; total >= (double)((int64_t)1 << (VALUE_BITS + work->shift));) work->shift++;
    for (size_t slot = 0; node->group_count > 0 && slot < node->entry_end[node->group_count - 1]; slot++)
        work->coarse[node->entries[slot]] = coarsen(work->entry_price[node->entries[slot]], work->shift);
}

// The sweeps are where a title's time goes: a processor that can take longer steps is given code of its own.
#if defined(__x86_64__) && defined(__GNUC__) && !defined(__clang__) && !defined(__SANITIZE_ADDRESS__)
#define LONG_STEPS __attribute__((target_clones("avx2", "default")))
#define PART_OF_STEPS inline __attribute__((always_inline))
#else
#define LONG_STEPS
#define PART_OF_STEPS
#endif

// What lies beyond the room is worked out too, and never read.
static PART_OF_STEPS void sweep(int32_t *restrict out, const int32_t *restrict in, int32_t price,
                                size_t count) {
    for (size_t c = 0; c < count; c += BLOCK)
        for (size_t i = 0; i < BLOCK; i++) {
            int32_t value = in[c + i] + price;
            out[c + i] = value > out[c + i] ? value : out[c + i];
        }
}

// The same for the first entry, which meets what leaving the group out gives.
static PART_OF_STEPS void sweep_first(int32_t *restrict out, const int32_t *restrict in, int32_t floor,
                                      int32_t price, size_t length, size_t stride) {
    size_t c = 0;
    for (size_t k = 0; k < length; k++) out[k] = in[k] + floor;
    for (; c + length + BLOCK <= stride; c += BLOCK)
        for (size_t i = 0; i < BLOCK; i++) {
            int32_t with = in[c + i] + price, without = in[c + length + i] + floor;
            out[c + length + i] = with > without ? with : without;
        }
    for (; c + length < stride; c++) out[c + length] = in[c + length] + floor;
}

static void sweep_never(int32_t *out, size_t stride) {
    for (size_t c = 0; c < stride; c++) out[c] = NEVER;
}

static size_t first_slot(const struct bound_node *node, size_t i) {
    return i == 0 ? 0 : node->entry_end[i - 1];
}

// Best values by length with the i-th open group: `out` from `in`. Returns `in` when the group is best left
// out.
LONG_STEPS static const int32_t *add_group(const struct bound_work *work, const struct bound_node *node,
                                           size_t i, const int32_t *in, int32_t *out) {
    const struct solve_model *model = work->model;
    const size_t stride = sweep_stride(node->room), end = node->entry_end[i];
    const uint32_t last = node->entries[end - 1];
    const bool may_skip = model->entries[last].length == 0;
    const int32_t floor = may_skip ? work->coarse[last] : NEVER;
    bool begun = false;
    if (!may_skip) {
        sweep_never(out, stride);
        begun = true;
    }
    for (size_t slot = first_slot(node, i); slot < end; slot++) {
        const uint32_t e = node->entries[slot];
        const size_t length = model->entries[e].length;
        if (work->coarse[e] <= floor || length > node->room) continue;
        if (begun)
            sweep(out + length, in, work->coarse[e], node->room - length + 1);
        else
            sweep_first(out, in, floor, work->coarse[e], length, stride);
        begun = true;
    }
    if (begun) return out;
    if (floor == 0) return in;
    for (size_t c = 0; c < stride; c++) out[c] = in[c] + floor;
    return out;
}

static void read_pick(struct bound_work *work, const struct bound_node *node) {
    const struct solve_model *model = work->model;
    size_t left = node->room;
    for (size_t i = node->group_count; i-- > 0;) {
        size_t slot = node->entry_end[i] - 1;
        const int32_t *in = work->ahead_row[i];
        int32_t value = work->ahead_row[i + 1][left];
        for (; slot > first_slot(node, i); slot--) {
            uint32_t e = node->entries[slot];
            size_t length = model->entries[e].length;
            if (length <= left && in[left - length] + work->coarse[e] == value) break;
        }
        work->pick[node->groups[i]] = node->entries[slot];
        left -= model->entries[node->entries[slot]].length;
    }
}

static void count_brought(struct bound_work *work, const struct bound_node *node) {
    const struct solve_model *model = work->model;
    memset(work->brought, 0, (model->stem_count + model->word_count) * sizeof *work->brought);
    for (size_t i = 0; i < node->group_count; i++) {
        const struct solve_entry *entry = &model->entries[work->pick[node->groups[i]]];
        for (size_t k = 0; k < entry->stem_count; k++) work->brought[entry->stems[k]]++;
        for (size_t k = 0; k < entry->word_count; k++) work->brought[model->stem_count + entry->words[k]]++;
    }
}

static void find_slopes(struct bound_work *work, const struct bound_node *node) {
    const struct solve_model *model = work->model;
    count_brought(work, node);
    for (size_t r = 0; r < model->row_count; r++) work->slope[r] = -(double)work->brought[model->row_stem[r]];
    for (size_t w = 0; w < model->word_count; w++)
        work->slope[model->row_count + w] = (double)work->brought[model->stem_count + w] - 1;
    for (size_t i = 0; i < work->chosen_count; i++) {
        const struct solve_wording *wording = &model->wordings[work->chosen[i]];
        for (size_t k = 0; k < wording->row_count; k++) work->slope[wording->rows[k]] += 1;
    }
}

int64_t bound_measure(struct bound_work *work, const struct bound_node *node) {
    size_t stride = sweep_stride(node->room);
    int64_t sum = node->base + (int64_t)(measure_wants(work, node) + price_stems(work, node));
    price_entries(work, node);
    memset(work->ahead, 0, stride * sizeof *work->ahead);
    work->ahead_row[0] = work->ahead;
    for (size_t i = 0; i < node->group_count; i++)
        work->ahead_row[i + 1] = add_group(work, node, i, work->ahead_row[i], work->ahead + (i + 1) * stride);
    sum += (int64_t)work->ahead_row[node->group_count][node->room] * ((int64_t)1 << work->shift);
    read_pick(work, node);
    find_slopes(work, node);
    return sum;
}

// Half of where the slopes point now, half of where they pointed before; nothing below a price of 0.
static double follow_slopes(struct bound_work *work, const double *restrict price, double old_part) {
    const double *restrict slope = work->slope, *restrict open = work->open;
    double *restrict trend = work->trend;
    double norms[BLOCK] = {0}, norm = 0;
    const double new_part = 1 - old_part;
    for (size_t r = 0; r < work->price_room; r += BLOCK)
        for (size_t i = 0; i < BLOCK; i++) {
            double before = trend[r + i] * old_part, now = slope[r + i] * new_part;
            double sum = (before + now) * open[r + i], up = sum > 0 ? sum : 0;
            sum = price[r + i] > 0 ? sum : up;
            double square = sum * sum;
            norms[i] += square;
            trend[r + i] = sum;
        }
    for (size_t i = 0; i < BLOCK; i++) norm += norms[i];
    return norm;
}

bool bound_move_prices(struct bound_work *work, struct bound_node *node, int64_t gap, double pace,
                       bool fresh) {
    double norm = follow_slopes(work, node->price, fresh ? 0 : 0.5);
    if (norm <= 0) return false;
    const double step = pace * (double)gap / norm, span = (double)work->model->span;
    const double *restrict trend = work->trend;
    double *restrict price = node->price;
    for (size_t r = 0; r < work->price_room; r += BLOCK)
        for (size_t i = 0; i < BLOCK; i++) {
            double change = step * trend[r + i];
            double moved = price[r + i] + change;
            moved = moved > 0 ? moved : 0;
            moved = moved < span ? moved : span;
            double raised = moved + ROUNDER;
            price[r + i] = raised - ROUNDER;
        }
    return true;
}

static int32_t best_with(const int32_t *restrict ahead, const int32_t *restrict behind, size_t room) {
    int32_t most = NEVER;
    for (size_t c = 0; c <= room; c++) {
        int32_t value = ahead[c] + behind[room - c];
        most = value > most ? value : most;
    }
    return most;
}

void bound_limits(struct bound_work *work, const struct bound_node *node, int64_t bound) {
    const struct solve_model *model = work->model;
    size_t stride = sweep_stride(node->room), n = node->group_count;
    memset(work->behind + n * stride, 0, stride * sizeof *work->behind);
    work->behind_row[n] = work->behind + n * stride;
    for (size_t i = n; i-- > 0;)
        work->behind_row[i] = add_group(work, node, i, work->behind_row[i + 1], work->behind + i * stride);
    int32_t all = work->ahead_row[n][node->room];
    for (size_t i = 0; i < n; i++) {
        const int32_t *ahead = work->ahead_row[i], *behind = work->behind_row[i + 1];
        for (size_t slot = first_slot(node, i); slot < node->entry_end[i]; slot++) {
            uint32_t e = node->entries[slot];
            size_t length = model->entries[e].length;
            int64_t loss = INT32_MAX;
            if (length <= node->room)
                loss = (int64_t)all - best_with(ahead, behind, node->room - length) - work->coarse[e];
            work->limit[e] = bound - loss * ((int64_t)1 << work->shift);
        }
    }
}
