// SPDX-License-Identifier: MIT
// Words that raise a caution only together: the notes of caution_signs.txt, what may not stand beside them
// and how far apart they may be. Each sign is lost in turn, which one of those notes must notice.
#include "lines.h"

#include "evidence/cautions.h"
#include "rules/signs.h"
#include "rules/trigger.h"

enum { LINES_MOST = 1600, SIGNS_LEAST = 250, QUIET_LEAST = 130, LOUD_MOST = 12 };

struct line {
    const char *ids, *notes;
};

static struct lines {
    struct line at[LINES_MOST];
    size_t count;
} lines;

static void read_line(struct arena *arena, char *text) {
    (void)arena;
    ck_assert_uint_lt(lines.count, LINES_MOST);
    char *rest = text;
    struct line *line = &lines.at[lines.count++];
    line->ids = line_field(&rest);
    line->notes = line_field(&rest);
}

static void lines_read(struct arena *arena) {
    lines.count = 0;
    lines_each(arena, "tests/evidence/caution_signs.txt", read_line);
}

static bool names(const char *ids, const char *id) {
    size_t n = strlen(id);
    for (const char *at = ids; at; at = strchr(at, '/')) {
        at += *at == '/';
        if (!strncmp(at, id, n) && (!at[n] || at[n] == '/')) return true;
    }
    return false;
}

// Raised by the notes alone, so that no reading of them helps.
static const struct cautions *raised_by(struct arena *arena, const struct ruleset *rules, const char *notes) {
    struct record record = {.id = "a", .notes = notes};
    return cautions_raise(arena, scanner_new(arena, rules->finder_count), rules, &record);
}

static bool is_raised(struct arena *arena, const struct ruleset *rules, const struct line *line) {
    const struct cautions *cautions = raised_by(arena, rules, line->notes);
    for (size_t i = 0; i < cautions->count; i++)
        if (names(line->ids, cautions->items[i].caution->rule.id)) return true;
    return false;
}

struct tally {
    size_t quiet, loud, missed;
};

static void look_at_all(struct arena *arena, void *context) {
    struct tally *tally = context;
    const struct ruleset *rules = shipped_once()->rules;
    lines_read(arena);
    for (size_t i = 0; i < lines.count; i++) {
        const struct line *line = &lines.at[i];
        if (strcmp(line->ids, "-") != 0) {
            bool raised = is_raised(arena, rules, line);
            tally->missed += !raised;
            if (!raised) fprintf(stderr, "  %s: no %s\n", line->notes, line->ids);
            continue;
        }
        const struct cautions *cautions = raised_by(arena, rules, line->notes);
        tally->quiet++;
        tally->loud += cautions->count > 0;
        if (cautions->count) fprintf(stderr, "  %s: %s\n", line->notes, cautions->items[0].caution->rule.id);
    }
}

START_TEST(what_is_told_by_its_signs_is_raised) {
    struct tally tally = {0};
    within(look_at_all, &tally);
    printf("%zu notes, %zu of %zu harmless ones raise any\n", lines.count, tally.loud, tally.quiet);
    ck_assert_uint_eq(tally.missed, 0);
    ck_assert_uint_ge(tally.quiet, QUIET_LEAST);
    ck_assert_uint_le(tally.loud, LOUD_MOST);
}
END_TEST

// --- one sign less ---

static struct ruleset with_caution(struct arena *arena, const struct caution **caution) {
    struct ruleset rules = *shipped_once()->rules;
    struct triggers *triggers = triggers_new(arena);
    triggers_add(arena, triggers, &(*caution)->finder);
    triggers_add(arena, triggers, &(*caution)->with);
    triggers_close(arena, triggers);
    struct signs *signs = signs_new(arena);
    signs_add(arena, signs, *caution);
    signs_close(arena, signs);
    rules.cautions = caution;
    rules.caution_count = 1;
    rules.caution_triggers = triggers;
    rules.signs = signs;
    return rules;
}

struct look {
    const struct caution *caution;
    size_t sign;
    bool noticed;
};

static void lose_sign(struct arena *arena, void *context) {
    struct look *look = context;
    struct caution changed = *look->caution;
    changed.signs = texts_without(arena, &look->caution->signs, look->sign);
    const struct caution *less = &changed;
    struct ruleset whole = with_caution(arena, &look->caution), cut = with_caution(arena, &less);
    for (size_t i = 0; i < lines.count && !look->noticed; i++)
        look->noticed = names(lines.at[i].ids, changed.rule.id) && is_raised(arena, &whole, &lines.at[i]) &&
                        !is_raised(arena, &cut, &lines.at[i]);
}

static void lose_each(struct arena *arena, void *context) {
    (void)context;
    const struct ruleset *rules = shipped_once()->rules;
    size_t signs = 0, noticed = 0;
    lines_read(arena);
    for (size_t i = 0; i < rules->caution_count; i++)
        for (size_t k = 0; k < rules->cautions[i]->signs.count; k++) {
            struct look look = {rules->cautions[i], k, false};
            within(lose_sign, &look);
            signs++;
            noticed += look.noticed;
            if (!look.noticed)
                fprintf(stderr, "  %s: no note needs \"%s\"\n", look.caution->rule.id,
                        look.caution->signs.at[k]);
        }
    printf("%zu of %zu signs are noticed when they are lost\n", noticed, signs);
    ck_assert_uint_ge(signs, SIGNS_LEAST);
    ck_assert_uint_eq(noticed, signs);
}

START_TEST(each_sign_is_noticed_when_it_is_lost) {
    within(lose_each, NULL);
}
END_TEST

// --- what a sign means ---

struct frame {
    const char *sign, *notes;
    bool raised;
};

static const struct frame FRAMES[] = {
    {"lamp / copper|bare", "Lamp, you see copper by the base.", true},
    {"lamp / copper|bare", "Lamps, bare ends.", true},
    {"lamp / copper|bare", "Lamp. The copper is bare.", false},
    {"lamp / copper|bare", "Lamp, no copper shows.", false},
    {"lamp / copper|bare", "Lamp, color like copper.", false},
    {"lamp / copper|bare",
     "Lamp of oak with a shade in pale green paper and three turned feet below it, copper.", false},
    {"lamp / lamp|copper", "Lamp of copper.", true},
    {"lamp / lamp|copper", "Lamp of oak.", false},
    {"lamp // copper|bare", "Lamp. The copper is bare.", true},
    {"lamp / copper / !toy", "Toy lamp, copper.", false},
    {"lamp / copper / !toy", "Lamp, copper. Not a toy.", true},
    {"lamp / copper // !toy", "Lamp, copper. A toy.", false},
    {"won't sit|don't sit / lid", "The lid wont sit.", true},
    {"won't sit|don't sit / lid", "The lid won\xE2\x80\x99t sit.", true},
    {"won't sit|don't sit / lid", "The lid won't ever sit.", false},
};

static void check_frame(struct arena *arena, void *context) {
    const struct frame *frame = context;
    const char *sign = frame->sign;
    struct caution caution = *shipped_once()->rules->cautions[0];
    caution.rule.id = "a";
    caution.finder = caution.with = caution.benign = (struct finder){.number = 0};
    caution.things = caution.flaws = caution.on = (struct texts){NULL, 0};
    caution.signs = (struct texts){&sign, 1};
    const struct caution *only = &caution;
    struct ruleset rules = with_caution(arena, &only);
    struct line line = {"a", frame->notes};
    ck_assert_msg(is_raised(arena, &rules, &line) == frame->raised, "%s: %s", frame->sign, frame->notes);
}

START_TEST(a_sign_is_read_as_it_is_written) {
    struct frame frame = FRAMES[_i];
    within(check_frame, &frame);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("evidence.caution signs");
    TCase *tests = tcase_create("signs");
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_set_timeout(tests, 300);
    tcase_add_test(tests, what_is_told_by_its_signs_is_raised);
    tcase_add_test(tests, each_sign_is_noticed_when_it_is_lost);
    tcase_add_loop_test(tests, a_sign_is_read_as_it_is_written, 0, sizeof FRAMES / sizeof *FRAMES);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
