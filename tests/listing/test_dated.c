// SPDX-License-Identifier: MIT
// Years of marks inside a draft: the same twice, only findings and `dating` are touched, and words of age
// stand exactly where years bear them out.
#include "../rules/support.h"

#include "asfound.h"
#include "format/write.h"
#include "listing/dated.h"

static const struct listing *drafted(struct arena *arena, const char *yaml, const struct day *today) {
    struct diags diags = diags_start(arena);
    struct drafter drafter = drafter_in(arena, shipped_once());
    drafter.today = today;
    struct record *record = arena_alloc(arena, sizeof *record);
    ck_assert_msg(record_of(arena, drafter.rules, yaml, record, &diags), "%s\n%s", yaml,
                  printed(arena, &diags));
    struct title_options options = {80, COUNT_GRAPHEMES, LOCALE_US, drafter.variants};
    return listing_draft(arena, &drafter, record, &options);
}

static const char *json_of(struct arena *arena, const struct listing *listing) {
    struct buf out = buf_start(arena);
    json_write(&out, listing_tree(arena, listing));
    return out.at;
}

static size_t date_findings(const struct listing *l, const char *code) {
    size_t count = 0;
    for (size_t i = 0; i < l->finding_count; i++) count += !strcmp(l->findings[i].code, code);
    return count;
}

struct turn {
    const struct bound *bound;
    size_t compared; // bounds whose mark came through to the draft
};

// The same mark in a record whose dates lie long before it, inside, and are not given.
static void check_bound(struct arena *arena, void *context) {
    struct turn *turn = context;
    const struct bound *bound = turn->bound;
    struct buf mark = buf_start(arena);
    for (const char *c = bound->rule.hits.at[0]; *c; c++) {
        if (*c == '\'') buf_byte(&mark, '\''); // doubled within quotes of YAML
        if (*c != '[' && *c != ']') buf_byte(&mark, *c);
    }
    static const char form[] = "id: a\nfamily: tools\ntype: lamp\nmarks: [{text: '%s'}]\n%s";
    const char *bare = arena_format(arena, form, mark.at, "");
    const struct listing *first = drafted(arena, bare, NULL), *again = drafted(arena, bare, NULL);
    ck_assert_str_eq(json_of(arena, first), json_of(arena, again));
    ck_assert_msg(!date_findings(first, "dates.question") && !date_findings(first, "dates.future"), "%s",
                  bare);
    const struct dated_mark *m = NULL;
    for (size_t i = 0; i < first->dating->count && !m; i++)
        if (first->dating->marks[i].bound == bound) m = &first->dating->marks[i];
    if (!m || !first->dating->fits) return; // kept back as an address, or two forms in one example
    turn->compared++;
    const char *old = arena_format(arena, form, mark.at, "dates: {from: 1501, to: 1510}\n");
    const struct listing *dated = drafted(arena, old, NULL);
    bool firm = m->counts && m->not_before && bound->sure == BOUND_FIRM;
    ck_assert_msg(!firm || date_findings(dated, "dates.conflict") > 0, "%s: %s", bound->rule.id,
                  json_of(arena, dated));
    bool late = m->counts && m->not_after;
    const char *young = arena_format(arena, form, mark.at, "dates: {from: 2901, to: 2910}\n");
    dated = drafted(arena, young, NULL);
    ck_assert_msg((date_findings(dated, "dates.question") > 0) >= late, "%s", bound->rule.id);
    ck_assert_msg(!date_findings(dated, "dates.conflict"), "%s: a last year only questions", bound->rule.id);
}

START_TEST(first_years_conflict_and_last_years_question) {
    const struct ruleset *rules = shipped_once()->rules;
    ck_assert_uint_ge(rules->bound_count, 100);
    struct turn turn = {NULL, 0};
    for (size_t i = 0; i < rules->bound_count; i++) {
        turn.bound = rules->bounds[i];
        within(check_bound, &turn);
    }
    ck_assert_msg(turn.compared >= 90, "only %zu marks came through", turn.compared);
}
END_TEST

static enum verdict verdict_of(struct arena *arena, const char *word, const char *rest,
                               const struct day *today) {
    const char *yaml =
        arena_format(arena, "id: a\nfamily: tools\ntype: lamp\nattributes: {style: %s}\n%s", word, rest);
    const struct listing *l = drafted(arena, yaml, today);
    ck_assert_uint_eq(l->claims->count, 1);
    bool told = strstr(l->title, "Vintage") || strstr(l->title, "Antique");
    ck_assert_msg(!told || l->claims->items[0].verdict == VERDICT_ALLOW, "%s", l->title);
    return l->claims->items[0].verdict;
}

static void check_ages(struct arena *arena, void *context) {
    (void)context;
    static const struct {
        const char *rest;
        struct day today;
        bool vintage, antique;
    } cases[] = {
        {"", {2025, 11, 25}, false, false},
        {"dates: {from: 1850}", {2025, 11, 25}, false, false}, // "not before" says nothing of an age
        {"dates: {from: 1920, to: 1924}", {2025, 11, 25}, true, true},
        {"dates: {from: 1920, to: 1925}", {2025, 12, 31}, true, false}, // not exceeding a hundred
        {"dates: {from: 1920, to: 1925}", {2026, 1, 1}, true, true},
        {"dates: {to: 2005}", {2025, 12, 30}, false, false},
        {"dates: {to: 2005}", {2025, 12, 31}, true, false},
        {"dates: {to: 1924}", {0, 0, 0}, false, false},
        {"marks: [{text: Made in Occupied Japan}]", {2025, 11, 25}, true, false},
        {"marks: [{text: Made in Occupied Japan}]", {2060, 1, 1}, true, true},
        {"marks: [{text: Nippon}]", {2025, 11, 25}, false, false},      // copied too often to bear it out
        {"marks: [{text: Empire Made}]", {2125, 11, 25}, false, false}, // only remembered
        {"marks: [{text: ISBN 978-0-306-40615-7}]", {2025, 11, 25}, false, false},
        {"dates: {to: 1924}\nmarks: [{text: West Germany}]", {2025, 11, 25}, false, false},
        {"marks: [{text: CC41}, {text: 'ISBN 978-0-306-40615-7'}]", {2125, 1, 1}, false, false},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        const struct day *today = cases[i].today.year ? &cases[i].today : NULL;
        bool vintage = verdict_of(arena, "vintage", cases[i].rest, today) == VERDICT_ALLOW;
        bool antique = verdict_of(arena, "antique", cases[i].rest, today) == VERDICT_ALLOW;
        ck_assert_msg(vintage == cases[i].vintage && antique == cases[i].antique, "case %zu: %s", i,
                      cases[i].rest);
    }
}

START_TEST(words_of_age_follow_years_and_today) {
    within(check_ages, NULL);
}
END_TEST

static void check_message(struct arena *arena, void *context) {
    (void)context;
    const struct day today = {2000, 1, 1};
    const struct listing *l =
        drafted(arena, "id: a\nfamily: books\ntype: book\nattributes: {isbn: 978-0-306-40615-7}", &today);
    ck_assert_uint_eq(date_findings(l, "dates.future"), 1);
    l = drafted(arena,
                "id: a\nfamily: tools\ntype: lamp\nmarks: [{text: CC41}, {text: BS 1363}, {text: WEEE mark}]",
                NULL);
    ck_assert_uint_eq(date_findings(l, "dates.conflict"), 1);
    ck_assert(!listing_has_must(l));
    for (size_t i = 0; i < l->finding_count; i++)
        if (!strcmp(l->findings[i].code, "dates.conflict"))
            ck_assert_str_eq(l->findings[i].message,
                             "'WEEE mark' (wheeled-bin-bar) was not used before 2005, and "
                             "'CC41' (cc41) not after 1952");
}

START_TEST(findings_name_both_sides) {
    within(check_message, NULL);
}
END_TEST

// --- the library's door ---

static bool keep(void *context, const char *bytes, size_t size) {
    buf_add(context, bytes, size);
    return true;
}

static size_t give_nothing(void *context, char *to, size_t room) {
    (void)context;
    (void)to;
    (void)room;
    return 0;
}

static void check_door(struct arena *arena, void *context) {
    (void)context;
    const char *data = getenv("ASFOUND_BUILT");
    struct asfound_engine_options make = {.data = data ? data : "build-tests/share/asfound"};
    asfound_engine *engine;
    ck_assert_int_eq(asfound_engine_new(&make, &engine), ASFOUND_FINE);
    struct buf out = buf_start(arena), messages = buf_start(arena);
    const char *mark = "CC41";
    struct asfound_date_options date = {.marks = &mark,
                                        .mark_count = 1,
                                        .today = "2023-02-29",
                                        .out = keep,
                                        .out_context = &out,
                                        .messages = keep,
                                        .messages_context = &messages};
    ck_assert_int_eq(asfound_date(engine, &date), ASFOUND_USAGE);
    ck_assert_str_eq(messages.at, "asfound: error: today is no day of the calendar [usage]\n");
    ck_assert_uint_eq(out.n, 0);
    buf_clear(&messages);
    struct asfound_draft_options draft = {.today = "yesterday",
                                          .out = keep,
                                          .out_context = &out,
                                          .messages = keep,
                                          .messages_context = &messages};
    ck_assert_int_eq(asfound_draft(engine, &draft, "in", give_nothing, NULL), ASFOUND_USAGE);
    ck_assert_str_eq(messages.at, "asfound: error: today is no day of the calendar [usage]\n");
    date.today = NULL;
    date.mark_count = 0;
    ck_assert_int_eq(asfound_date(engine, &date), ASFOUND_FINE);
    ck_assert_msg(!strncmp(out.at, "these marks say nothing of a year\n", 34), "%s", out.at);
    asfound_engine_free(engine);
}

START_TEST(a_day_that_is_none_is_refused) {
    within(check_door, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("dated");
    TCase *tests = tcase_create("drafts");
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_add_test(tests, first_years_conflict_and_last_years_question);
    tcase_add_test(tests, words_of_age_follow_years_and_today);
    tcase_add_test(tests, findings_name_both_sides);
    tcase_add_test(tests, a_day_that_is_none_is_refused);
    suite_add_tcase(suite, tests);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
