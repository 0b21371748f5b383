// SPDX-License-Identifier: MIT
// Builds the rows. The wider a row, the better the bound: one row over four wordings says more than four rows
// of one. A row that another row implies (same wordings, fewer entries) is left out.
#include "title/solve_rows.h"
#include "title/solve_bits.h"

struct rows {
    struct solve_model *model;
    uint64_t *offer;   // per stem: entries that bring it
    uint64_t *wanted;  // stems that some wording of the want cannot do without
    size_t *stems;     // of the want's rows
    uint64_t *members; // per row of the want: its wordings
    size_t count, member_cells;
    size_t from, to; // wordings of the want
};

static bool comes_with(const struct rows *rows, size_t stem, size_t other) {
    size_t cells = rows->model->entry_cells;
    return bits_within(&rows->offer[stem * cells], &rows->offer[other * cells], cells);
}

static void find_wanted(struct rows *rows) {
    memset(rows->wanted, 0, rows->model->stem_cells * sizeof *rows->wanted);
    for (size_t w = rows->from; w < rows->to; w++)
        bits_join(rows->wanted, rows->model->wordings[w].stem_set, rows->model->stem_cells);
}

static void add_row(struct rows *rows, size_t stem) {
    uint64_t *members = &rows->members[rows->count * rows->member_cells];
    memset(members, 0, rows->member_cells * sizeof *members);
    for (size_t w = rows->from; w < rows->to; w++) {
        const struct solve_wording *wording = &rows->model->wordings[w];
        for (size_t i = 0; i < wording->stem_count; i++) {
            if (!comes_with(rows, wording->stems[i], stem)) continue;
            bits_add(members, w - rows->from);
            break;
        }
    }
    rows->stems[rows->count++] = stem;
}

static bool is_implied(const struct rows *rows, size_t row) {
    const uint64_t *mine = &rows->members[row * rows->member_cells];
    for (size_t other = 0; other < rows->count; other++) {
        if (other == row || !comes_with(rows, rows->stems[other], rows->stems[row])) continue;
        if (!bits_within(mine, &rows->members[other * rows->member_cells], rows->member_cells)) continue;
        if (other < row || !comes_with(rows, rows->stems[row], rows->stems[other])) return true;
    }
    return false;
}

static void keep_rows(struct rows *rows) {
    struct solve_model *model = rows->model;
    for (size_t row = 0; row < rows->count; row++) {
        if (is_implied(rows, row)) continue;
        for (size_t w = rows->from; w < rows->to; w++)
            if (bits_has(&rows->members[row * rows->member_cells], w - rows->from))
                model->wordings[w].rows[model->wordings[w].row_count++] = (uint32_t)model->row_count;
        model->row_stem[model->row_count++] = (uint32_t)rows->stems[row];
    }
}

static size_t want_end(const struct solve_model *model, size_t from) {
    size_t to = from + 1;
    while (to < model->wording_count && model->wordings[to].want == model->wordings[from].want) to++;
    return to;
}

static void size_rows(struct arena *arena, struct rows *rows) {
    struct solve_model *model = rows->model;
    size_t all = 0, widest = 0;
    for (size_t from = 0, to; from < model->wording_count; from = to) {
        size_t most = 0;
        to = want_end(model, from);
        for (size_t w = from; w < to; w++) most += model->wordings[w].stem_count;
        if (most > model->stem_count) most = model->stem_count;
        for (size_t w = from; w < to; w++)
            model->wordings[w].rows = arena_array(arena, most, sizeof(uint32_t));
        all += most;
        if (to - from > widest) widest = to - from;
    }
    rows->member_cells = bits_cells(widest);
    rows->members = arena_array(arena, model->stem_count * rows->member_cells, sizeof(uint64_t));
    rows->stems = arena_array(arena, model->stem_count, sizeof(size_t));
    rows->wanted = arena_array(arena, model->stem_cells, sizeof(uint64_t));
    rows->offer = arena_array(arena, model->stem_count * model->entry_cells, sizeof(uint64_t));
    model->row_stem = arena_array(arena, all, sizeof *model->row_stem);
}

void solve_rows_build(struct arena *arena, struct solve_model *model) {
    struct rows rows = {.model = model};
    size_rows(arena, &rows);
    for (size_t e = 0; e < model->entry_count; e++)
        for (size_t i = 0; i < model->entries[e].stem_count; i++)
            bits_add(&rows.offer[model->entries[e].stems[i] * model->entry_cells], e);
    for (; rows.from < model->wording_count; rows.from = rows.to) {
        rows.to = want_end(model, rows.from);
        rows.count = 0;
        find_wanted(&rows);
        for (size_t stem = 0; stem < model->stem_count; stem++)
            if (bits_has(rows.wanted, stem)) add_row(&rows, stem);
        keep_rows(&rows);
    }
}
