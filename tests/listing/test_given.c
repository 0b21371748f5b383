// SPDX-License-Identifier: MIT
// What is said of a title that a record carries, word for word, in every output.
#include "../rules/support.h"

#include "format/write.h"

// A flat iron of an invented maker: a must with doubt, a must without, an uncertain material, a mark, two
// words that are one in the singular.
static const char iron[] = "id: iron\n"
                           "type: flat iron\n"
                           "family: tools\n"
                           "notes: from the wash house at the weir, bought of the ferryman\n"
                           "asides: [[32, 57]]\n"
                           "attributes:\n"
                           "  brand: Brassendell & Sons\n"
                           "  material: {value: bronze, sure: likely}\n"
                           "  pattern: oak leaves\n"
                           "  theme: oak leaf\n"
                           "flaws:\n"
                           "  - {kind: not-working}\n"
                           "  - {kind: glued-repair, part: handle, sure: likely}\n"
                           "measurements: [{dimension: length, value: 6.5, unit: in}]\n"
                           "marks: [KORTRAND]\n";

struct work {
    const char *title;
    size_t limit;
    const struct shipped *shipped;
    void (*look)(struct arena *arena, const struct listing *listing);
};

static const struct listing *draft_with(struct arena *arena, const struct work *work) {
    struct diags diags = diags_start(arena);
    struct record *record = arena_alloc(arena, sizeof *record);
    ck_assert_msg(record_of(arena, work->shipped->rules, iron, record, &diags), "%s", printed(arena, &diags));
    record->listing.title = work->title;
    struct title_options options = {work->limit, COUNT_GRAPHEMES, LOCALE_US, work->shipped->drafter.variants};
    struct drafter drafter = drafter_in(arena, work->shipped);
    return listing_draft(arena, &drafter, record, &options);
}

static void look(struct arena *arena, void *context) {
    struct work *work = context;
    work->look(arena, draft_with(arena, work));
}

static void look_at(const char *title, size_t limit,
                    void (*at)(struct arena *arena, const struct listing *listing)) {
    struct work work = {title, limit, shipped_once(), at};
    within(look, &work);
}

static bool has_less(const struct listing *l, const char *text) {
    for (size_t i = 0; i < l->given->less_count; i++)
        if (!strcmp(l->given->less[i], text)) return true;
    return false;
}

static const char *all_less(struct arena *arena, const struct listing *l) {
    struct buf out = buf_start(arena);
    for (size_t i = 0; i < l->given->less_count; i++) buf_format(&out, "%s\n", l->given->less[i]);
    return out.at;
}

#define LESS(l, text) ck_assert_msg(has_less(l, text), "wanted: %s\nthere: %s", text, all_less(arena, l))
#define ONLY(l, text) ck_assert_str_eq(all_less(arena, l), text)

// --- one fault of a title at a time ---

static void is_fine(struct arena *arena, const struct listing *l) {
    ONLY(l, "");
    ck_assert_int_gt(l->given->score.earned, 0);
}

START_TEST(a_title_of_record_words_has_nothing_against_it) {
    look_at("Flat Iron Brassendell & Sons Not Working, Possible Glued Handle", 100, is_fine);
    look_at("Flat Iron from the wash house, Not Working, Possible Glued Handle 6.5in KORTRAND", 100, is_fine);
}
END_TEST

static void is_over(struct arena *arena, const struct listing *l) {
    LESS(l, "35 characters over the limit: only its first 13 count");
    LESS(l, "does not tell what has to be told: Flat Iron, Not Working, Possible Repaired Handle");
    ck_assert_str_eq(l->given->score.at, "Oak Leaf Flat");
}

static void never_fits(struct arena *arena, const struct listing *l) {
    LESS(l, "1 character over the limit: its first word alone does not fit");
    ck_assert_int_eq(l->given->score.earned, 0);
}

START_TEST(what_is_over_the_limit_does_not_count) {
    look_at("Oak Leaf Flat Iron Not Working Possible Glued Handle", 17, is_over);
    look_at("Brassendell", 10, never_fits);
}
END_TEST

static void claims(struct arena *arena, const struct listing *l) {
    LESS(l, "'Antique' is a claim without evidence; write instead: age not known");
    LESS(l, "does not tell what has to be told: Not Working, Possible Glued Handle");
    ck_assert_uint_eq(l->given->less_count, 2); // a claim is not named as a word without account again
}

START_TEST(claims_need_evidence) {
    look_at("Antique Flat Iron", 80, claims);
}
END_TEST

static void doubts(struct arena *arena, const struct listing *l) {
    ONLY(l, "does not tell what has to be told: Possible Glued Handle\n"
            "stated as a fact, and not certain: 'bronze', 'Glued Handle'\n");
}

static void doubted(struct arena *arena, const struct listing *l) {
    ONLY(l, "");
}

START_TEST(what_is_not_certain_needs_a_word_of_doubt) {
    look_at("Bronze Flat Iron Not Working Glued Handle", 80, doubts);
    look_at("Possibly Bronze Flat Iron Not Working Possible Glued Handle", 80, doubted);
    look_at("Flat Iron bronze? Not Working Possible Glued Handle", 80, doubted);
}
END_TEST

static void twice(struct arena *arena, const struct listing *l) {
    ONLY(l, "said twice: 'iron'\n");
}

START_TEST(a_word_twice_is_told_but_not_of_a_name) {
    look_at("Flat Iron Not Working Possible Glued Handle iron", 80, twice);
    look_at("Flat Iron Kortrand KORTRAND Brassendell & Sons Not Working Possible Glued Handle", 100, is_fine);
}
END_TEST

static void foreign(struct arena *arena, const struct listing *l) {
    ONLY(l, "nothing in the record accounts for: 'whistling', 'ferryman', '7.5in'\n");
}

static void loud(struct arena *arena, const struct listing *l) {
    ONLY(l, "nothing in the record accounts for: 'SWELL'\nwhole capitals: 'SWELL', 'HANDLE'\n");
}

START_TEST(words_without_account_and_capitals_are_named) {
    // What is said only in an aside accounts for nothing.
    look_at("Flat Iron whistling ferryman 7.5in Not Working Possible Glued Handle", 80, foreign);
    look_at("SWELL Flat Iron Not Working Possible Glued HANDLE", 80, loud);
}
END_TEST

static void is_private(struct arena *arena, const struct listing *l) {
    struct buf out = buf_start(arena);
    json_write(&out, listing_tree(arena, l));
    listing_card(arena, l, &out, false);
    listing_page(arena, l, &out);
    ck_assert_ptr_null(strstr(out.at, "555"));
    LESS(l, "holds a telephone number");
    ck_assert_ptr_nonnull(strstr(out.at, "a telephone number in the title given"));
}

START_TEST(what_is_private_in_a_title_is_kept_back) {
    look_at("Flat Iron call (503) 555-0147 Not Working Possible Glued Handle", 100, is_private);
}
END_TEST

// --- how it is read ---

static const char *told_as(const struct listing *l, const char *because) {
    for (size_t i = 0; i < l->plan->count; i++) {
        int spelling = l->given->score.reading.spelling[i];
        if (!strcmp(l->plan->phrases[i].because, because) && spelling >= 0)
            return l->plan->phrases[i].spellings[spelling].text;
    }
    return "";
}

static void as_theme(struct arena *arena, const struct listing *l) {
    (void)arena;
    ck_assert_str_eq(told_as(l, "attribute theme"), "Oak Leaf");
    ck_assert_str_eq(told_as(l, "attribute pattern"), "");
}

static void as_pattern(struct arena *arena, const struct listing *l) {
    (void)arena;
    ck_assert_str_eq(told_as(l, "attribute theme"), "");
    ck_assert_str_eq(told_as(l, "attribute pattern"), "Oak Leaves");
}

START_TEST(letters_as_written_come_before_another_inflection) {
    look_at("Flat Iron Oak Leaf", 80, as_theme);
    look_at("Flat Iron Oak Leaves", 80, as_pattern);
}
END_TEST

static void one_pattern(struct arena *arena, const struct listing *l) {
    (void)arena;
    // Two phrases that share the word "oak" are never both told, as in a drafted title.
    ck_assert_int_ne(*told_as(l, "attribute theme") != '\0', *told_as(l, "attribute pattern") != '\0');
}

START_TEST(a_content_word_tells_one_phrase) {
    look_at("Flat Iron Oak Leaf Oak Leaves", 80, one_pattern);
}
END_TEST

static void joined(struct arena *arena, const struct listing *l) {
    (void)arena;
    ck_assert_str_eq(told_as(l, "attribute brand"), "Brassendell & Sons");
}

static void apart(struct arena *arena, const struct listing *l) {
    (void)arena;
    ck_assert_str_eq(told_as(l, "attribute brand"), "");
}

START_TEST(a_phrase_is_told_where_its_words_stand_together) {
    look_at("flat iron, brassendell and sons", 80, joined);
    look_at("Brassendell flat iron & Sons", 80, apart);
}
END_TEST

static void beats(struct arena *arena, const struct listing *l) {
    const struct given_title *g = &l->given->score;
    ck_assert_int_gt(g->earned, g->best);
    LESS(l, "earns more than the best honest title, but only by leaving out what has to be told");
}

START_TEST(more_than_the_best_is_said_to_be_so) {
    look_at("Brassendell & Sons Flat Iron 6.5 in Long", 40, beats);
}
END_TEST

// --- outputs ---

static void outputs(struct arena *arena, const struct listing *l) {
    struct buf card = buf_start(arena), page = buf_start(arena), json = buf_start(arena);
    listing_card(arena, l, &card, false);
    listing_page(arena, l, &page);
    json_write(&json, listing_tree(arena, l));
    const char *earned = arena_format(arena, "11 of 80 characters; earned %lld of %lld\n",
                                      (long long)l->given->score.earned, (long long)l->worth);
    ck_assert_ptr_nonnull(strstr(card.at, "\nThe title as given\n  <Flat> Iron\n"));
    ck_assert_ptr_nonnull(strstr(card.at, earned));
    ck_assert_ptr_nonnull(
        strstr(card.at, "\n  less: does not tell what has to be told: Not Working, Possible"));
    ck_assert_ptr_nonnull(strstr(page.at, "<p>&lt;Flat&gt; Iron</p>"));
    ck_assert_ptr_nonnull(
        strstr(page.at, "<li>less: does not tell what has to be told: Not Working, Possible"));
    ck_assert_ptr_nonnull(
        strstr(json.at, "\"given\":{\"title\":\"<Flat> Iron\",\"title_length\":11,\"earned\":"));
    ck_assert_ptr_nonnull(
        strstr(json.at, "\"misses\":[{\"kind\":\"must\",\"text\":\"Not Working\",\"worth\":"));
}

static void no_outputs(struct arena *arena, const struct listing *l) {
    struct buf out = buf_start(arena);
    listing_card(arena, l, &out, false);
    listing_page(arena, l, &out);
    json_write(&out, listing_tree(arena, l));
    ck_assert_ptr_null(l->given);
    ck_assert_ptr_null(strstr(out.at, "as given"));
    ck_assert_ptr_null(strstr(out.at, "\"given\""));
}

START_TEST(every_output_has_it_where_a_title_was_given) {
    look_at("<Flat> Iron", 80, outputs);
    look_at(NULL, 80, no_outputs);
}
END_TEST

static void is_bounded(struct arena *arena, const struct listing *l) {
    (void)arena;
    ck_assert_uint_eq(l->given->score.length, 1000000 * 5 - 1);
    ck_assert_uint_le(strlen(l->given->score.reading.text), GIVEN_BYTES_MOST);
}

static void long_title(struct arena *arena, void *context) {
    (void)context;
    char *text = arena_alloc(arena, 1000000 * 5);
    for (size_t i = 0; i < 1000000; i++) memcpy(text + 5 * i, "Iron ", 5);
    text[1000000 * 5 - 1] = '\0';
    look_at(text, 1000, is_bounded);
}

START_TEST(a_title_of_megabytes_is_read_as_far_as_any_title_goes) {
    within(long_title, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("listing.given");
    TCase *tests = tcase_create("given");
    tcase_set_timeout(tests, 60);
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_add_test(tests, a_title_of_record_words_has_nothing_against_it);
    tcase_add_test(tests, what_is_over_the_limit_does_not_count);
    tcase_add_test(tests, claims_need_evidence);
    tcase_add_test(tests, what_is_not_certain_needs_a_word_of_doubt);
    tcase_add_test(tests, a_word_twice_is_told_but_not_of_a_name);
    tcase_add_test(tests, words_without_account_and_capitals_are_named);
    tcase_add_test(tests, what_is_private_in_a_title_is_kept_back);
    tcase_add_test(tests, letters_as_written_come_before_another_inflection);
    tcase_add_test(tests, a_content_word_tells_one_phrase);
    tcase_add_test(tests, a_phrase_is_told_where_its_words_stand_together);
    tcase_add_test(tests, more_than_the_best_is_said_to_be_so);
    tcase_add_test(tests, every_output_has_it_where_a_title_was_given);
    tcase_add_test(tests, a_title_of_megabytes_is_read_as_far_as_any_title_goes);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
