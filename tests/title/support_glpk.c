// SPDX-License-Identifier: MIT
#include "support_glpk.h"

#include <glpk.h>
#include <math.h>
#include <stdlib.h>

struct title_program {
    const struct title_problem *problem;
    glp_prob *lp;
    int *spelling; // first column of each phrase
    int *covered;  // column of each phrase that its roll-up covers, 0 for none
    int rollup;    // column of the first roll-up
    int *places;   // the row being built
    double *values;
    int filled;
};

static void put(struct title_program *program, int column, double value) {
    program->filled++;
    program->places[program->filled] = column;
    program->values[program->filled] = value;
}

static void end_row(struct title_program *program, int type, double bound) {
    int row = glp_add_rows(program->lp, 1);
    glp_set_row_bnds(program->lp, row, type, bound, bound);
    glp_set_mat_row(program->lp, row, program->filled, program->places, program->values);
    program->filled = 0;
}

static int add_column(struct title_program *program, double value) {
    int column = glp_add_cols(program->lp, 1);
    glp_set_col_kind(program->lp, column, GLP_BV);
    glp_set_obj_coef(program->lp, column, value);
    return column;
}

static void add_choices(struct title_program *program) {
    const struct title_problem *problem = program->problem;
    for (size_t p = 0; p < problem->phrase_count; p++) {
        const struct title_phrase *phrase = &problem->phrases[p];
        for (size_t i = 0; i < phrase->count; i++) {
            int column = add_column(program, (double)phrase->spellings[i].tells - phrase->spellings[i].cost);
            if (i == 0) program->spelling[p] = column;
        }
        if (phrase->must && phrase->rollup >= 0) program->covered[p] = add_column(program, 0);
    }
    for (size_t r = 0; r < problem->rollup_count; r++) {
        int column = add_column(program, (double)problem->rollups[r].tells - problem->rollups[r].cost);
        if (r == 0) program->rollup = column;
    }
}

static void one_spelling_each(struct title_program *program) {
    const struct title_problem *problem = program->problem;
    for (size_t p = 0; p < problem->phrase_count; p++) {
        const struct title_phrase *phrase = &problem->phrases[p];
        for (size_t i = 0; i < phrase->count; i++) put(program, program->spelling[p] + (int)i, 1);
        if (program->covered[p] != 0) put(program, program->covered[p], 1);
        end_row(program, phrase->must ? GLP_FX : GLP_UP, 1);
    }
}

// A roll-up stands for each must that it covers, and stands only when it covers one.
static void tie_rollups(struct title_program *program) {
    const struct title_problem *problem = program->problem;
    for (size_t r = 0; r < problem->rollup_count; r++) {
        int stands = program->rollup + (int)r;
        for (size_t p = 0; p < problem->phrase_count; p++) {
            if (program->covered[p] == 0 || problem->phrases[p].rollup != (int)r) continue;
            put(program, program->covered[p], 1);
            put(program, stands, -1);
            end_row(program, GLP_UP, 0);
        }
        put(program, stands, 1);
        for (size_t p = 0; p < problem->phrase_count; p++)
            if (program->covered[p] != 0 && problem->phrases[p].rollup == (int)r)
                put(program, program->covered[p], -1);
        end_row(program, GLP_UP, 0);
    }
}

typedef bool (*has_thing)(const struct title_spelling *text, size_t thing);

static bool has_word(const struct title_spelling *text, size_t word) {
    for (size_t i = 0; i < text->word_count; i++)
        if (text->words[i] == word) return true;
    return false;
}

static bool has_stem(const struct title_spelling *text, size_t stem) {
    for (size_t i = 0; i < text->stem_count; i++)
        if (text->stems[i] == stem) return true;
    return false;
}

static void put_all_with(struct title_program *program, has_thing has, size_t thing, double value) {
    const struct title_problem *problem = program->problem;
    for (size_t p = 0; p < problem->phrase_count; p++)
        for (size_t i = 0; i < problem->phrases[p].count; i++)
            if (has(&problem->phrases[p].spellings[i], thing))
                put(program, program->spelling[p] + (int)i, value);
    for (size_t r = 0; r < problem->rollup_count; r++)
        if (has(&problem->rollups[r], thing)) put(program, program->rollup + (int)r, value);
}

static void words_once(struct title_program *program) {
    for (size_t word = 0; word < program->problem->word_count; word++) {
        put_all_with(program, has_word, word, 1);
        if (program->filled > 1) end_row(program, GLP_UP, 1);
        program->filled = 0;
    }
}

static void within_limit(struct title_program *program) {
    const struct title_problem *problem = program->problem;
    for (size_t p = 0; p < problem->phrase_count; p++)
        for (size_t i = 0; i < problem->phrases[p].count; i++)
            put(program, program->spelling[p] + (int)i,
                (double)(problem->phrases[p].spellings[i].length + 1));
    for (size_t r = 0; r < problem->rollup_count; r++)
        put(program, program->rollup + (int)r, (double)(problem->rollups[r].length + 1));
    end_row(program, GLP_UP, (double)(problem->limit + 1));
}

static void add_wants(struct title_program *program) {
    const struct title_problem *problem = program->problem;
    for (size_t k = 0; k < problem->want_count; k++) {
        int first = glp_get_num_cols(program->lp) + 1;
        for (size_t w = 0; w < problem->wants[k].count; w++)
            (void)add_column(program, problem->wants[k].wordings[w].weight);
        for (size_t w = 0; w < problem->wants[k].count; w++) put(program, first + (int)w, 1);
        if (program->filled > 0) end_row(program, GLP_UP, 1);
        for (size_t w = 0; w < problem->wants[k].count; w++) {
            const struct title_wording *wording = &problem->wants[k].wordings[w];
            for (size_t i = 0; i < wording->count; i++) {
                put(program, first + (int)w, 1);
                put_all_with(program, has_stem, wording->stems[i], -1);
                end_row(program, GLP_UP, 0);
            }
        }
    }
}

struct title_program *glpk_program_new(const struct title_problem *problem) {
    struct title_program *program = calloc(1, sizeof *program);
    size_t columns = 1 + 2 * problem->rollup_count;
    for (size_t p = 0; p < problem->phrase_count; p++) columns += problem->phrases[p].count + 1;
    for (size_t k = 0; k < problem->want_count; k++) columns += problem->wants[k].count;
    program->problem = problem;
    program->lp = glp_create_prob();
    program->spelling = calloc(problem->phrase_count + 1, sizeof(int));
    program->covered = calloc(problem->phrase_count + 1, sizeof(int));
    program->places = calloc(columns + 1, sizeof(int));
    program->values = calloc(columns + 1, sizeof(double));
    glp_set_obj_dir(program->lp, GLP_MAX);
    add_choices(program);
    one_spelling_each(program);
    tie_rollups(program);
    words_once(program);
    within_limit(program);
    add_wants(program);
    return program;
}

bool glpk_program_solve(struct title_program *program, bool cuts, int64_t *worth) {
    glp_iocp options;
    glp_init_iocp(&options);
    glp_term_out(GLP_OFF);
    options.presolve = GLP_ON;
    options.msg_lev = GLP_MSG_OFF;
    int on = cuts ? GLP_ON : GLP_OFF;
    options.gmi_cuts = options.mir_cuts = options.cov_cuts = options.clq_cuts = on;
    int failed = glp_intopt(program->lp, &options);
    if (failed != 0 || glp_mip_status(program->lp) != GLP_OPT) return false;
    *worth = (int64_t)llround(glp_mip_obj_val(program->lp));
    return true;
}

void glpk_program_free(struct title_program *program) {
    if (program == NULL) return;
    glp_delete_prob(program->lp);
    free(program->spelling);
    free(program->covered);
    free(program->places);
    free(program->values);
    free(program);
}
