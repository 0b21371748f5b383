// SPDX-License-Identifier: MIT
// Questions come with what their answers could change, the most first; answers change the record as a person
// would; a record that is written reads back as it was; a picture is found for what it shows.
#include "../rules/records.h"

#include "item/write.h"
#include "listing/answers.h"

enum { RECORDS = 2000 };

static const struct listing *number(struct arena *arena, const struct drafter *drafter, size_t n) {
    struct dice dice = {0x853C49E6748FEA9Bu * (n + 1) | 1};
    for (int i = 0; i < 8; i++) dice_roll(&dice, 2);
    const struct record *record =
        read_made(arena, drafter->rules, random_record(arena, &dice, drafter->rules, n));
    struct title_options options = {80, COUNT_GRAPHEMES, LOCALE_US, drafter->variants};
    return listing_draft(arena, drafter, record, &options);
}

static void check_order(struct arena *arena, void *context) {
    (void)context;
    struct drafter drafter = drafter_in(arena, shipped_once());
    for (size_t n = 0; n < RECORDS / 4; n++) {
        const struct listing *l = number(arena, &drafter, n);
        ck_assert_uint_le(l->questions.count, QUESTIONS_MOST);
        for (size_t i = 0; i < l->questions.count; i++) {
            const struct question *q = &l->questions.items[i];
            ck_assert_ptr_nonnull(q->id);
            ck_assert_ptr_nonnull(q->because);
            if (i) ck_assert_int_le(q->worth, l->questions.items[i - 1].worth);
            for (size_t k = 0; k < i; k++) ck_assert_str_ne(q->ask, l->questions.items[k].ask);
        }
        bool unknown = !l->record->type.value || l->record->type.sure != SURE_STATED;
        if (unknown) ck_assert_str_eq(l->questions.items[0].id, "type");
    }
}

START_TEST(what_changes_most_is_asked_first) {
    within(check_order, NULL);
}
END_TEST

// --- a record written and read again ---

static const char *json_text(struct arena *arena, const struct record *record) {
    struct buf out = buf_start(arena);
    json_write(&out, record_tree(arena, record));
    return out.at;
}

static void check_writing(struct arena *arena, void *context) {
    (void)context;
    const struct ruleset *rules = shipped_once()->rules;
    for (size_t n = 0; n < RECORDS; n++) {
        struct dice dice = {0xDA942042E4DD58B5u * (n + 1) | 1};
        for (int i = 0; i < 8; i++) dice_roll(&dice, 2);
        const struct record *record = read_made(arena, rules, random_record(arena, &dice, rules, n));
        struct node *tree = record_tree(arena, record);
        struct diags diags = diags_start(arena);
        struct record again;
        ck_assert_msg(record_read(arena, rules, tree, LOCALE_US, 1, &again, &diags), "%s\n%s",
                      printed(arena, &diags), json_text(arena, record));
        ck_assert_str_eq(json_text(arena, record), json_text(arena, &again));
        ck_assert_uint_eq(record->flaw_count, again.flaw_count);
        ck_assert_uint_eq(record->attribute_count, again.attribute_count);
        ck_assert_uint_eq(record->measurement_count, again.measurement_count);
        for (size_t i = 0; i < record->flaw_count; i++) {
            const struct item_flaw *a = &record->flaws[i], *b = &again.flaws[i];
            ck_assert(a->kind == b->kind && a->severity == b->severity && a->sure == b->sure &&
                      a->count == b->count && a->of == b->of);
            ck_assert(a->has_size == b->has_size && (!a->has_size || a->size.base == b->size.base));
        }
    }
}

START_TEST(a_record_reads_back_as_it_was_written) {
    within(check_writing, NULL);
}
END_TEST

// --- answers ---

// What the record holds after the answer; `given` in YAML.
static const struct {
    const char *given, *answer, *holds, *lacks;
} answers[] = {
    {"type: jug", "chip=yes", "\"flaws\":[\"chip\"]", "clear"},
    {"type: jug", "chip=no", "\"clear\":[{\"kind\":\"chip\",\"how\":\"none-seen\"}]", "flaws"},
    {"type: jug", "chip=not-looked", "\"unchecked\":[\"chip\"]", "flaws"},
    {"type: jug\nunchecked: [chip, crack]", "chip=no", "\"unchecked\":[\"crack\"]", "flaws"},
    {"type: jug\nclear: [chip]", "chip=yes", "\"flaws\":[\"chip\"]", "clear"},
    {"type: jug\nflaws: [{kind: chip, where: rim}]", "chip=yes", "\"where\":\"rim\"", "clear"},
    {"type: jug\nflaws: [{kind: chip, where: rim}]", "chip=no", "\"where\":\"rim\"", "unchecked"},
};

static bool apply(struct arena *arena, const char *given, const char *const *list, size_t count,
                  struct record *record, struct diags *diags) {
    const struct ruleset *rules = shipped_once()->rules;
    ck_assert(record_of(arena, rules, given, record, diags));
    return answers_apply(arena, rules, record, list, count, diags);
}

static void check_answers(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < sizeof answers / sizeof *answers; i++) {
        struct diags diags = diags_start(arena);
        struct record record;
        ck_assert_msg(apply(arena, answers[i].given, &answers[i].answer, 1, &record, &diags), "%s",
                      printed(arena, &diags));
        const char *json = json_text(arena, &record);
        ck_assert_msg(strstr(json, answers[i].holds), "%s to %s:\n%s", answers[i].answer, answers[i].given,
                      json);
        ck_assert_msg(!strstr(json, answers[i].lacks), "%s to %s:\n%s", answers[i].answer, answers[i].given,
                      json);
    }
}

START_TEST(an_answer_changes_the_record) {
    within(check_answers, NULL);
}
END_TEST

// Every check that says what a yes means, answered each way: the first question of its kind is not asked
// again.
static void check_every_check(struct arena *arena, void *context) {
    (void)context;
    const struct ruleset *rules = shipped_once()->rules;
    size_t tried = 0;
    for (size_t f = 0; f < rules->family_count; f++)
        for (size_t c = 0; c < rules->families[f]->check_count; c++) {
            const struct check *check = &rules->families[f]->checks[c];
            if (check->yes == YES_OPEN) continue;
            const char *clear = check->yes == YES_CLEAR ? "yes" : "no",
                       *list[] = {arena_format(arena, "%s=%s", check->id, clear)};
            struct diags diags = diags_start(arena);
            struct record record;
            const char *yaml = arena_format(arena, "type: thing\nfamily: %s\n", rules->families[f]->rule.id);
            ck_assert_msg(apply(arena, yaml, list, 1, &record, &diags), "%s", printed(arena, &diags));
            ck_assert_uint_eq(record.clear_count, check->flaws.count);
            struct questions q = questions_ask(arena, rules, &record, concerns_words(arena, &record));
            ck_assert_uint_ge(q.answered, 1);
            tried++;
        }
    ck_assert_uint_gt(tried, 100);
}

START_TEST(every_check_with_a_yes_can_be_answered) {
    within(check_every_check, NULL);
}
END_TEST

static const struct {
    const char *list[2];
    size_t count;
    const char *message;
} slips[] = {
    {{"chipp=yes"}, 1, "there is no question 'chipp' about this thing"},
    {{"chip=perhaps"}, 1, "'perhaps' answers nothing"},
    {{"chip"}, 1, "'chip' has no answer"},
    {{"chip=yes", "chip=no"}, 2, "'chip' is answered twice"},
    {{"height=yes"}, 1, "'height' is not answered by yes or no"},
    {{"rim-touch=no", "chip=yes"}, 2, NULL},
};

static void check_slips(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < sizeof slips / sizeof *slips; i++) {
        if (!slips[i].message) continue;
        struct diags diags = diags_start(arena);
        struct record record;
        const char *yaml = "type: goblet\nfamily: glassware\n";
        if (!strncmp(slips[i].list[0], "height", 6)) yaml = "type: goblet\nfamily: glassware\n";
        ck_assert(!apply(arena, yaml, slips[i].list, slips[i].count, &record, &diags));
        const char *told = printed(arena, &diags);
        bool other = strstr(told, slips[i].message) ||
                     (!strncmp(slips[i].list[0], "height", 6) && strstr(told, "no question"));
        ck_assert_msg(other, "%s\nnot: %s", told, slips[i].message);
    }
}

START_TEST(a_slip_in_an_answer_is_told) {
    within(check_slips, NULL);
}
END_TEST

// --- pictures ---

static const char *file_for(struct arena *arena, const char *yaml, const char *because) {
    const struct listing *l = draft_of(arena, shipped_once(), yaml);
    for (size_t i = 0; i < l->photos.count; i++)
        if (!strcmp(l->photos.items[i].because, because))
            return l->photos.items[i].file ? l->photos.items[i].file : "none";
    return "not wanted";
}

static void check_photos(struct arena *arena, void *context) {
    (void)context;
    const char *photos =
        "photos: [{file: a.jpg, shows: the chip on the rim}, {file: b.jpg, shows: whole jug}]\n";
    const char *rim = arena_format(arena, "type: jug\nflaws: [{kind: chip, where: rim}]\n%s", photos);
    ck_assert_str_eq(file_for(arena, rim, "flaw chip"), "a.jpg");
    const char *foot = arena_format(arena, "type: jug\nflaws: [{kind: chip, where: foot}]\n%s", photos);
    ck_assert_str_eq(file_for(arena, foot, "flaw chip"), "none"); // another chip
    const char *vague = arena_format(arena, "type: jug\nflaws: [chip]\n%s", photos);
    ck_assert_str_eq(file_for(arena, vague, "flaw chip"), "a.jpg");
    const char *named = "type: jug\nflaws: [{kind: chip, where: foot, photo: c.jpg}]\n";
    ck_assert_str_eq(file_for(arena, named, "flaw chip"), "c.jpg");
    const struct listing *two = draft_of(
        arena, shipped_once(), "type: jug\nflaws: [{kind: chip, where: foot}, {kind: chip, where: rim}]\n");
    ck_assert_str_eq(two->photos.items[0].where, "foot; rim"); // one picture shows both
    ck_assert_uint_eq(two->photos.unshown, 2);
}

START_TEST(a_picture_is_found_for_what_it_shows) {
    within(check_photos, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("listing.questions");
    TCase *tests = tcase_create("questions");
    tcase_set_timeout(tests, 300);
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_add_test(tests, what_changes_most_is_asked_first);
    tcase_add_test(tests, a_record_reads_back_as_it_was_written);
    tcase_add_test(tests, an_answer_changes_the_record);
    tcase_add_test(tests, every_check_with_a_yes_can_be_answered);
    tcase_add_test(tests, a_slip_in_an_answer_is_told);
    tcase_add_test(tests, a_picture_is_found_for_what_it_shows);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
