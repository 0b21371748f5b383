// SPDX-License-Identifier: MIT
// Every rule of marks is lost, shifted by a year, cut by a phrase or a step, and held for more or less sure,
// one change at a time: bounds.txt, which has the years apart from the rules, must notice each.
#include "lines.h"

#include "evidence/dating.h"
#include "rules/trigger.h"

enum { LINES_MOST = 900, RULES_LEAST = 100, CHANGES_LEAST = 900 };

struct line {
    const char *rule, *mark, *words; // `words`: what is read of the mark; NULL: any
    int from, to;
    bool wrong, not_it; // a number that bounds nothing; a mark that the rule leaves alone
    enum bound_sure sure;
};

static struct lines {
    struct line at[LINES_MOST];
    size_t count;
} lines;

static enum bound_sure sure_of(const char *word) {
    for (int sure = BOUND_FIRM; sure <= BOUND_MEMORY; sure++)
        if (!strcmp(bound_sure_name((enum bound_sure)sure), word)) return (enum bound_sure)sure;
    ck_abort_msg("'%s' is no word for how sure", word);
    return BOUND_FIRM;
}

static void read_line(struct arena *arena, char *text) {
    ck_assert_uint_lt(lines.count, LINES_MOST);
    struct line *line = &lines.at[lines.count++];
    *line = (struct line){.not_it = *text == '!'};
    char *rest = text + line->not_it;
    line->rule = line_field(&rest);
    const char *mark = line_field(&rest), *opens = strchr(mark, '['), *closes = strchr(mark, ']');
    struct buf plain = buf_start(arena);
    for (const char *c = mark; *c; c++)
        if (c != opens && c != closes) buf_byte(&plain, *c);
    line->mark = plain.at ? plain.at : "";
    if (opens && closes) line->words = arena_copy(arena, opens + 1, (size_t)(closes - opens - 1));
    if (line->not_it) return;
    const char *from = line_field(&rest);
    line->wrong = !strcmp(from, "wrong");
    line->from = line->wrong ? 0 : atoi(from);
    line->to = atoi(line_field(&rest));
    line->sure = sure_of(line_field(&rest));
}

static void read_lines(struct arena *arena) {
    lines.count = 0;
    lines_each(arena, "tests/evidence/bounds.txt", read_line);
}

// A rule set of that one rule, or of none.
static struct ruleset alone(struct arena *arena, const struct bound *const *bound, size_t count) {
    struct triggers *triggers = triggers_new(arena);
    if (count) triggers_add(arena, triggers, &bound[0]->finder);
    triggers_close(arena, triggers);
    return (struct ruleset){.bounds = (const struct bound **)(uintptr_t)bound,
                            .bound_count = count,
                            .finder_count = 1,
                            .bound_triggers = triggers};
}

static bool table_holds(const struct line *line, const struct bound *bound) {
    return bound && bound->not_before == line->from && bound->not_after == line->to &&
           bound->sure == line->sure;
}

static bool line_holds(struct arena *arena, struct scanner *scanner, const struct ruleset *rules,
                       const struct line *line) {
    if (!*line->mark) return table_holds(line, rules->bound_count ? rules->bounds[0] : NULL);
    const struct dating *d = dating_of_marks(arena, scanner, rules, &line->mark, 1, NULL);
    if (line->not_it) return !d->count;
    if (!d->count) return false;
    const struct dated_mark *m = &d->marks[0];
    if (line->words && strcmp(m->words, line->words) != 0) return false;
    if (line->wrong) return m->wrong && m->bound->sure == line->sure;
    return !m->wrong && m->not_before == line->from && m->not_after == line->to &&
           m->bound->sure == line->sure && m->counts == (line->sure != BOUND_MEMORY);
}

// The first line of the rule that does not hold; NULL: nobody notices.
static const struct line *noticed(struct arena *arena, const struct bound *changed, const char *id) {
    struct bound bound = changed ? *changed : (struct bound){0};
    bound.finder.number = 0;
    const struct bound *list[] = {&bound};
    struct ruleset rules = alone(arena, list, changed != NULL);
    struct scanner *scanner = scanner_new(arena, 1);
    for (size_t i = 0; i < lines.count; i++)
        if (!strcmp(lines.at[i].rule, id) && !line_holds(arena, scanner, &rules, &lines.at[i]))
            return &lines.at[i];
    return NULL;
}

struct tally {
    size_t changes, noticed;
};

static void expect_notice(struct arena *arena, const struct bound *changed, const char *id, const char *what,
                          struct tally *tally) {
    tally->changes++;
    bool seen = noticed(arena, changed, id) != NULL;
    tally->noticed += seen;
    if (!seen) fprintf(stderr, "  %s: %s, and no line of bounds.txt notices\n", id, what);
}

static void shift_years(struct arena *arena, const struct bound *bound, struct tally *tally) {
    for (int by = -1; by <= 1; by += 2) {
        struct bound changed = *bound;
        changed.not_before += by;
        if (bound->not_before) expect_notice(arena, &changed, bound->rule.id, "first year shifted", tally);
        changed = *bound;
        changed.not_after += by;
        if (bound->not_after) expect_notice(arena, &changed, bound->rule.id, "last year shifted", tally);
    }
    struct bound changed = *bound;
    changed.not_before = changed.not_after = 0;
    if (bound->reads == READS_NOTHING) expect_notice(arena, &changed, bound->rule.id, "years lost", tally);
    for (int sure = BOUND_FIRM; sure <= BOUND_MEMORY; sure++) {
        changed = *bound;
        changed.sure = (enum bound_sure)sure;
        if (changed.sure != bound->sure)
            expect_notice(arena, &changed, bound->rule.id, "another degree of certainty", tally);
    }
}

static void shift_steps(struct arena *arena, const struct bound *bound, struct tally *tally) {
    for (size_t i = 0; i < bound->step_count; i++)
        for (int by = -1; by <= 2; by++) {
            struct bound changed = *bound;
            changed.steps = arena_array(arena, bound->step_count, sizeof *changed.steps);
            memcpy(changed.steps, bound->steps, bound->step_count * sizeof *changed.steps);
            long number = atol(bound->steps[i].text), year = atol(bound->steps[i].means);
            if (by == 2) {
                changed.step_count--;
                memmove(changed.steps + i, bound->steps + i + 1,
                        (bound->step_count - i - 1) * sizeof *changed.steps);
            } else if (by)
                changed.steps[i].text = arena_format(arena, "%ld", number + by);
            else
                changed.steps[i].means = arena_format(arena, "%ld", year + 1);
            // Nothing was given out below the first number.
            if (!i && by == -1) continue;
            expect_notice(arena, &changed, bound->rule.id,
                          arena_format(arena, "step %ld changed (%d)", number, by), tally);
        }
}

static void cut_phrases(struct arena *arena, const struct bound *bound, struct tally *tally) {
    const struct texts *lists[] = {&bound->finder.said, &bound->finder.match, &bound->finder.unless};
    for (size_t which = 0; which < 3; which++)
        for (size_t i = 0; i < lists[which]->count; i++) {
            struct bound changed = *bound;
            struct texts *cut[] = {&changed.finder.said, &changed.finder.match, &changed.finder.unless};
            *cut[which] = texts_without(arena, lists[which], i);
            expect_notice(arena, &changed, bound->rule.id,
                          arena_format(arena, "without '%s'", lists[which]->at[i]), tally);
        }
}

static void change_all(struct arena *arena, void *context) {
    (void)context;
    struct tally tally = {0};
    const struct ruleset *rules = shipped_load(arena).rules;
    read_lines(arena);
    for (size_t i = 0; i < rules->bound_count; i++) {
        const struct bound *bound = rules->bounds[i];
        const struct line *off = noticed(arena, bound, bound->rule.id);
        ck_assert_msg(!off, "%s: its line '%s' does not hold", bound->rule.id, off ? off->mark : "");
        expect_notice(arena, NULL, bound->rule.id, "lost", &tally);
        shift_years(arena, bound, &tally);
        shift_steps(arena, bound, &tally);
        cut_phrases(arena, bound, &tally);
    }
    printf("%zu of %zu changes of %zu rules of marks are noticed by %zu lines\n", tally.noticed,
           tally.changes, rules->bound_count, lines.count);
    ck_assert_uint_ge(rules->bound_count, RULES_LEAST);
    ck_assert_uint_ge(tally.changes, CHANGES_LEAST);
    ck_assert_uint_eq(tally.noticed, tally.changes);
}

START_TEST(every_change_of_a_rule_of_marks_is_noticed) {
    within(change_all, NULL);
}
END_TEST

// Each line names a rule that there is, and holds with all the rules together.
static void check_lines(struct arena *arena, void *context) {
    (void)context;
    const struct ruleset *rules = shipped_load(arena).rules;
    struct scanner *scanner = scanner_new(arena, rules->finder_count);
    read_lines(arena);
    for (size_t i = 0; i < lines.count; i++) {
        const struct line *line = &lines.at[i];
        const struct bound *bound = NULL;
        for (size_t k = 0; k < rules->bound_count; k++)
            if (!strcmp(rules->bounds[k]->rule.id, line->rule)) bound = rules->bounds[k];
        ck_assert_msg(bound != NULL, "'%s' is no rule of marks", line->rule);
        if (!*line->mark) continue;
        const struct dating *d = dating_of_marks(arena, scanner, rules, &line->mark, 1, NULL);
        bool found = false;
        for (size_t k = 0; k < d->count; k++)
            found |= d->marks[k].bound == bound && d->marks[k].not_before == line->from &&
                     d->marks[k].not_after == line->to;
        ck_assert_msg(found != line->not_it, "%s: '%s' is %s", line->rule, line->mark,
                      found ? "found" : "not found so");
    }
}

START_TEST(every_line_holds_among_all_rules) {
    within(check_lines, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("evidence.bound mutation");
    TCase *tests = tcase_create("changed rules");
    tcase_set_timeout(tests, 300);
    tcase_add_test(tests, every_line_holds_among_all_rules);
    tcase_add_test(tests, every_change_of_a_rule_of_marks_is_noticed);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
