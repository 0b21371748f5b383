// SPDX-License-Identifier: MIT
// Evidence and draft against what comes out, a row of the matrix each; and every claim word in `explain`,
// with the evidence that allows it or the wording offered, and its source.
#include "../rules/support.h"

#include "matrix_rows.h"
#include "text/utf8.h"

static const struct day today = {2025, 11, 25};

static const struct listing *drafted(struct arena *arena, const char *yaml) {
    struct diags diags = diags_start(arena);
    struct record *record = arena_alloc(arena, sizeof *record);
    const struct shipped *shipped = shipped_once();
    ck_assert_msg(record_of(arena, shipped->rules, yaml, record, &diags), "%s\n%s", yaml,
                  printed(arena, &diags));
    struct title_options options = {80, COUNT_GRAPHEMES, LOCALE_US, shipped->drafter.variants};
    struct drafter drafter = drafter_in(arena, shipped);
    drafter.today = &today;
    return listing_draft(arena, &drafter, record, &options);
}

static const struct claim_found *claim_of(struct arena *arena, const struct listing *l, const char *word) {
    const char *wanted = utf8_fold(arena, word);
    for (size_t i = 0; i < l->claims->count; i++)
        if (strstr(utf8_fold(arena, l->claims->items[i].word), wanted)) return &l->claims->items[i];
    return NULL;
}

static bool raised(const struct listing *l, const char *id) {
    for (size_t i = 0; i < l->cautions->count; i++)
        if (!strcmp(l->cautions->items[i].caution->rule.id, id)) return true;
    return false;
}

static void check_claim(struct arena *arena, const struct listing *l, size_t row) {
    const struct claim_found *found = claim_of(arena, l, MATRIX[row].word);
    const char *verdict = found ? verdict_name(found->verdict) : "none";
    ck_assert_msg(!strcmp(verdict, MATRIX[row].verdict), "%s: '%s' is %s", MATRIX[row].name, MATRIX[row].word,
                  verdict);
    if (!found) return;
    ck_assert_msg(found->claim->rule.source != NULL, "%s", MATRIX[row].name);
    ck_assert_msg((found->verdict == VERDICT_ALLOW) == (found->evidence != NULL), "%s", MATRIX[row].name);
    const char *offered = MATRIX[row].offered;
    ck_assert_msg(!offered || strstr(found->claim->instead, offered), "%s: offered '%s'", MATRIX[row].name,
                  found->claim->instead);
}

static void check_finding(const struct listing *l, size_t row) {
    const char *told = NULL;
    for (size_t i = 0; i < l->finding_count; i++)
        if (!strcmp(l->findings[i].code, MATRIX[row].finding)) told = l->findings[i].message;
    ck_assert_msg(told && strstr(told, MATRIX[row].tells), "%s: %s", MATRIX[row].name,
                  told ? told : "nothing is told");
}

static void check_row(struct arena *arena, void *context) {
    size_t row = *(const size_t *)context;
    const struct listing *l = drafted(arena, MATRIX[row].record);
    const char *name = MATRIX[row].name;
    if (MATRIX[row].word) check_claim(arena, l, row);
    if (MATRIX[row].finding) check_finding(l, row);
    if (MATRIX[row].years)
        ck_assert_str_eq(dating_years(arena, l->dating->from, l->dating->to), MATRIX[row].years);
    const char *id = MATRIX[row].caution;
    if (id && *id == '!') ck_assert_msg(!raised(l, id + 1), "%s: %s is raised", name, id + 1);
    if (id && *id != '!') ck_assert_msg(raised(l, id), "%s: no %s", name, id);
    ck_assert_msg(l->cautions->stop == MATRIX[row].stop, "%s: stop is %d", name, l->cautions->stop);
    const char *text = utf8_fold(arena, arena_format(arena, "%s\n%s", l->title, l->description));
    ck_assert_msg(!MATRIX[row].present || strstr(text, MATRIX[row].present), "%s: '%s' is not in\n%s", name,
                  MATRIX[row].present, text);
    ck_assert_msg(!MATRIX[row].absent || !strstr(text, MATRIX[row].absent), "%s: '%s' is in\n%s", name,
                  MATRIX[row].absent, text);
    ck_assert_msg(MATRIX[row].source && *MATRIX[row].source, "%s has no source", name);
}

START_TEST(evidence_and_draft_come_out_as_written_down) {
    size_t row = (size_t)_i;
    within(check_row, &row);
}
END_TEST

// Each word of each claim without evidence, and each that some mark allows, as `explain` has them.
static void check_explained(struct arena *arena, void *context) {
    (void)context;
    const struct ruleset *rules = shipped_once()->rules;
    for (size_t i = 0; i < rules->claim_count; i++) {
        const struct claim *claim = rules->claims[i];
        ck_assert_msg(claim->instead && claim->rule.source, "%s", claim->rule.id);
        const struct listing *l =
            drafted(arena, arena_format(arena, "type: lamp\nfamily: lighting\nattributes: {style: \"%s\"}\n",
                                        claim->finder.said.at[0]));
        struct buf out = buf_start(arena);
        listing_explain(arena, l, &out, false);
        ck_assert_msg(strstr(out.at, "\nClaim words\n") != NULL, "%s\n%s", claim->rule.id, out.at);
        const struct claim_found *found = claim_of(arena, l, claim->finder.said.at[0]);
        const char *line =
            found && found->written
                ? arena_format(arena, "%s; written as: %s (%s)\n", verdict_name(claim->verdict),
                               found->written, claim->rule.source)
                : arena_format(arena, "%s; write instead: %s (%s)\n", verdict_name(claim->verdict),
                               claim->instead, claim->rule.source);
        ck_assert_msg(strstr(out.at, line) != NULL, "%s: '%s' is not in\n%s", claim->rule.id, line, out.at);
    }
    const struct listing *l = drafted(
        arena, "type: ring\nfamily: jewelry\nattributes: {material: sterling silver}\nmarks: ['925']\n");
    struct buf out = buf_start(arena);
    listing_explain(arena, l, &out, false);
    ck_assert_msg(strstr(out.at, "sterling silver: allow, shown by the mark \"925\" (16 CFR 23.5(b)(2))\n") !=
                      NULL,
                  "%s", out.at);
    const char *lines[][2] = {
        {"type: tray\nfamily: metalware\nattributes: {material: silver}\nmarks: [EPNS]\n",
         "silver: qualify; written as: silver plated, for the mark \"EPNS\" (16 CFR 23.5(b)(1))\n"},
        {"type: desk\nfamily: furniture\nattributes: {style: Edwardian}\ndates: {from: 1902, to: 1905}\n",
         "Edwardian: allow, shown by its years (1902-1905) (reign dates"},
        {"type: lamp\nfamily: lighting\nattributes: {style: vintage}\ndates: {from: 1960, to: 1969}\n",
         "vintage: allow, shown by its years (of 1969 at the latest) (common practice)\n"},
    };
    for (size_t i = 0; i < sizeof lines / sizeof *lines; i++) {
        out = buf_start(arena);
        listing_explain(arena, drafted(arena, lines[i][0]), &out, false);
        ck_assert_msg(strstr(out.at, lines[i][1]) != NULL, "'%s' is not in\n%s", lines[i][1], out.at);
    }
}

START_TEST(explain_has_evidence_and_source_of_every_claim) {
    within(check_explained, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("evidence.matrix");
    TCase *tests = tcase_create("matrix");
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_set_timeout(tests, 60);
    tcase_add_loop_test(tests, evidence_and_draft_come_out_as_written_down, 0,
                        sizeof MATRIX / sizeof *MATRIX);
    tcase_add_test(tests, explain_has_evidence_and_source_of_every_claim);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
