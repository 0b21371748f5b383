// SPDX-License-Identifier: MIT
// Every rule of cautions is lost, loses its words, a thing, a flaw, what must stand beside it or what means
// something else, and is changed in whether it stops and whether what befell a thing counts:
// caution_rules.txt must notice each.
#include "lines.h"

#include "evidence/cautions.h"
#include "rules/signs.h"
#include "rules/trigger.h"

enum { LINES_MOST = 900, RULES_LEAST = 70, CHANGES_LEAST = 550, SAID_AGAIN_MOST = 45 };

struct line {
    const char *caution, *record;
    bool raised, stops;
};

static struct lines {
    struct line at[LINES_MOST];
    size_t count;
} lines;

static void read_line(struct arena *arena, char *text) {
    ck_assert_uint_lt(lines.count, LINES_MOST);
    char *rest = text;
    struct line *line = &lines.at[lines.count++];
    line->caution = line_field(&rest);
    line->record = arena_format(arena, "%s\n", line_field(&rest));
    const char *outcome = line_field(&rest);
    line->stops = !strcmp(outcome, "stops");
    line->raised = line->stops || !strcmp(outcome, "raised");
    ck_assert_msg(line->raised || !strcmp(outcome, "quiet"), "%s: '%s'", line->record, outcome);
}

static void read_lines(struct arena *arena) {
    lines.count = 0;
    lines_each(arena, "tests/evidence/caution_rules.txt", read_line);
}

// The rules with these cautions in place of theirs.
static struct ruleset with_cautions(struct arena *arena, const struct caution *const *cautions,
                                    size_t count) {
    struct ruleset rules = *shipped_once()->rules;
    struct triggers *triggers = triggers_new(arena);
    struct signs *signs = signs_new(arena);
    for (size_t i = 0; i < count; i++) {
        signs_add(arena, signs, cautions[i]);
        triggers_add(arena, triggers, &cautions[i]->finder);
        triggers_add(arena, triggers, &cautions[i]->with);
    }
    triggers_close(arena, triggers);
    rules.cautions = (const struct caution **)(uintptr_t)cautions;
    rules.caution_count = count;
    rules.caution_triggers = triggers;
    signs_close(arena, signs);
    rules.signs = signs;
    return rules;
}

static bool line_holds(struct arena *arena, struct scanner *scanner, const struct ruleset *rules,
                       const struct line *line) {
    struct diags diags = diags_start(arena);
    struct record *record = arena_alloc(arena, sizeof *record);
    ck_assert_msg(record_of(arena, rules, line->record, record, &diags), "%s\n%s", line->record,
                  printed(arena, &diags));
    const struct cautions *raised = cautions_raise(arena, scanner, rules, record);
    bool found = false;
    for (size_t i = 0; i < raised->count; i++)
        found |= !strcmp(raised->items[i].caution->rule.id, line->caution);
    return found == line->raised && raised->stop == line->stops;
}

struct look {
    const struct caution *changed; // NULL: the rule is lost
    const char *id;
    const struct line *off;
};

static void look_at(struct arena *arena, void *context) {
    struct look *look = context;
    struct ruleset rules = with_cautions(arena, &look->changed, look->changed != NULL);
    struct scanner *scanner = scanner_new(arena, rules.finder_count);
    for (size_t i = 0; i < lines.count && !look->off; i++)
        if (!strcmp(lines.at[i].caution, look->id) && !line_holds(arena, scanner, &rules, &lines.at[i]))
            look->off = &lines.at[i];
}

struct tally {
    size_t changes, noticed, said_again;
};

static void expect_notice(const struct caution *changed, const char *id, const char *what,
                          struct tally *tally) {
    struct look look = {changed, id, NULL};
    within(look_at, &look);
    tally->changes++;
    tally->noticed += look.off != NULL;
    if (!look.off) fprintf(stderr, "  %s: %s, and no line of caution_rules.txt notices\n", id, what);
}

// A thing is often a word as well: both are lost.
static struct texts texts_but(struct arena *arena, const struct texts *texts, const char *text) {
    struct texts left = *texts;
    for (size_t i = left.count; i-- > 0;)
        if (!strcmp(left.at[i], text)) left = texts_without(arena, &left, i);
    return left;
}

// Of "infant car seat" and "car seat" the first is told by the second: such a change changes nothing.
static bool still_named(struct arena *arena, const struct caution *changed, const char *thing) {
    const char *begins = arena_format(arena, "{type: %s", thing);
    size_t at = 0, n = strlen(begins);
    while (at < lines.count &&
           (strcmp(lines.at[at].caution, changed->rule.id) != 0 ||
            strncmp(lines.at[at].record, begins, n) != 0 || !strchr(",}", lines.at[at].record[n])))
        at++;
    ck_assert_msg(at < lines.count, "%s: no line has a %s", changed->rule.id, thing);
    struct ruleset rules = with_cautions(arena, &changed, 1);
    return line_holds(arena, scanner_new(arena, rules.finder_count), &rules, &lines.at[at]);
}

static void change_things(struct arena *arena, const struct caution *caution, struct tally *tally) {
    for (size_t i = 0; i < caution->things.count; i++) {
        const char *thing = caution->things.at[i];
        struct caution changed = *caution;
        changed.things = texts_without(arena, &caution->things, i);
        changed.finder.said = texts_but(arena, &caution->finder.said, thing);
        if (still_named(arena, &changed, thing))
            tally->said_again++;
        else
            expect_notice(&changed, caution->rule.id, thing, tally);
    }
}

// Does any phrase have another sense, and not only deny, which every rule knows?
static bool means_else(struct arena *arena, const struct texts *unless) {
    static const char *const denials[] = {" no ",   " not ", " without ", " never ",
                                          " free ", " for ", "n't ",      " clean "};
    size_t denied = 0;
    for (size_t i = 0; i < unless->count; i++) {
        const char *phrase = arena_format(arena, " %s ", unless->at[i]);
        size_t k = 0, count = sizeof denials / sizeof *denials;
        while (k < count && !strstr(phrase, denials[k])) k++;
        denied += k < count;
    }
    return denied < unless->count;
}

static void change_lists(struct arena *arena, const struct caution *caution, struct tally *tally) {
    static const struct texts none = {NULL, 0};
    const char *id = caution->rule.id;
    struct caution changed = *caution;
    changed.finder.said = changed.finder.match = changed.signs = none;
    expect_notice(&changed, id, "its words lost", tally);
    changed = *caution;
    changed.with.said = none;
    if (caution->with.said.count) expect_notice(&changed, id, "needs nothing beside it", tally);
    changed = *caution;
    changed.finder.unless = changed.benign.said = none;
    if (means_else(arena, &caution->finder.unless)) expect_notice(&changed, id, "no other senses", tally);
    changed = *caution;
    changed.on = none;
    if (caution->on.count) expect_notice(&changed, id, "on every family", tally);
    change_things(arena, caution, tally);
    for (size_t i = 0; i < caution->flaws.count; i++) {
        changed = *caution;
        changed.flaws = texts_without(arena, &caution->flaws, i);
        expect_notice(&changed, id, caution->flaws.at[i], tally);
    }
}

static void change_all(struct arena *arena, void *context) {
    (void)context;
    struct tally tally = {0};
    const struct ruleset *rules = shipped_once()->rules;
    read_lines(arena);
    for (size_t i = 0; i < rules->caution_count; i++) {
        const struct caution *caution = rules->cautions[i];
        struct look look = {caution, caution->rule.id, NULL};
        within(look_at, &look);
        ck_assert_msg(!look.off, "%s: %s does not hold", look.id, look.off ? look.off->record : "");
        expect_notice(NULL, look.id, "lost", &tally);
        struct caution changed = *caution;
        changed.stop = !caution->stop;
        expect_notice(&changed, look.id, caution->stop ? "stops no more" : "stops", &tally);
        changed = *caution;
        changed.history = !caution->history;
        expect_notice(&changed, look.id, "what befell it", &tally);
        changed = *caution;
        changed.shown = false;
        if (caution->shown) expect_notice(&changed, look.id, "a picture of it", &tally);
        changed = *caution;
        changed.residue = false;
        if (caution->residue) expect_notice(&changed, look.id, "what was kept in it", &tally);
        change_lists(arena, caution, &tally);
    }
    printf("%zu of %zu changes of %zu rules of cautions are noticed by %zu lines\n", tally.noticed,
           tally.changes, rules->caution_count, lines.count);
    ck_assert_uint_ge(rules->caution_count, RULES_LEAST);
    ck_assert_uint_le(tally.said_again, SAID_AGAIN_MOST);
    ck_assert_uint_ge(tally.changes, CHANGES_LEAST);
    ck_assert_uint_eq(tally.noticed, tally.changes);
}

START_TEST(every_change_of_a_rule_of_cautions_is_noticed) {
    within(change_all, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("evidence.caution mutation");
    TCase *tests = tcase_create("changed rules");
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_set_timeout(tests, 600);
    tcase_add_test(tests, every_change_of_a_rule_of_cautions_is_noticed);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
