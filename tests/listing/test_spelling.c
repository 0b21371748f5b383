// SPDX-License-Identifier: MIT
// Spelling in a draft: words of the seller's that nobody knows are found, with what was meant; names and
// marks are left alone; what the rules print is spelled as dictionaries have it. The dictionaries are those
// of Debian (hunspell-en-us, -gb).
#include "../rules/records.h"

#include "listing/spelling.h"
#include "words/trade.h"

enum { RECORDS = 5000 };

struct desk {
    struct drafter drafter;
    struct diags diags;
};

static void set_desk(struct arena *arena, struct desk *desk, enum locale locale, const char *dictionaries) {
    desk->diags = diags_start(arena);
    desk->drafter = drafter_in(arena, shipped_once());
    const struct source *words = folder_read_file(arena, "dict/trade.txt", 1 << 20, &desk->diags);
    ck_assert_ptr_nonnull(words);
    struct spelling_options options = {locale, dictionaries, trade_read(arena, words, &desk->diags), NULL,
                                       desk->drafter.rules};
    desk->drafter.spelling = spelling_new(arena, &options, &desk->diags);
}

static const struct record *made(struct arena *arena, const struct desk *desk, const char *yaml) {
    struct record *record = arena_alloc(arena, sizeof *record);
    struct diags diags = diags_start(arena);
    ck_assert_msg(record_of(arena, desk->drafter.rules, yaml, record, &diags), "%s", printed(arena, &diags));
    return record;
}

static const struct listing *draft(struct arena *arena, const struct desk *desk, const struct record *record,
                                   enum locale locale) {
    struct title_options options = {80, COUNT_GRAPHEMES, locale, desk->drafter.variants};
    return listing_draft(arena, &desk->drafter, record, &options);
}

static size_t count_findings(const struct listing *l, const char *code) {
    size_t n = 0;
    for (size_t i = 0; i < l->finding_count; i++) n += !strcmp(l->findings[i].code, code);
    return n;
}

static void check_outputs(struct arena *arena, void *context) {
    enum locale locale = *(const enum locale *)context;
    struct desk desk;
    set_desk(arena, &desk, locale, NULL);
    for (size_t number = 0; number < RECORDS; number++) {
        struct dice dice = {0x94D049BB133111EBu * (number + 1) | 1};
        for (int i = 0; i < 8; i++) dice_roll(&dice, 2);
        const struct record *record =
            read_made(arena, desk.drafter.rules, random_record(arena, &dice, desk.drafter.rules, number));
        const struct listing *l = draft(arena, &desk, record, locale);
        for (size_t i = 0; i < l->finding_count; i++)
            ck_assert_msg(strcmp(l->findings[i].code, "spelling.output") != 0, "%s\n%s\n%s",
                          l->findings[i].message, l->title, l->description);
    }
    ck_assert_uint_eq(desk.diags.count, 0);
}

START_TEST(outputs_are_spelled_in_us_english) {
    enum locale locale = LOCALE_US;
    within(check_outputs, &locale);
}
END_TEST

START_TEST(outputs_are_spelled_in_british_english) {
    enum locale locale = LOCALE_GB;
    within(check_outputs, &locale);
}
END_TEST

// Slips as people make them (from memory): the word written, the word meant.
static const char *const slips[][2] = {
    {"handel", "handle"},        {"hinje", "hinge"},    {"spowt", "spout"},      {"knobb", "knob"},
    {"bottem", "bottom"},        {"cornner", "corner"}, {"leathr", "leather"},   {"buckel", "buckle"},
    {"zippper", "zipper"},       {"colar", "collar"},   {"swich", "switch"},     {"bateries", "batteries"},
    {"antena", "antenna"},       {"latern", "lantern"}, {"drawr", "drawer"},     {"surfase", "surface"},
    {"underneth", "underneath"}, {"edgge", "edge"},     {"sholder", "shoulder"}, {"plateform", "platform"},
    {"strapp", "strap"},         {"scew", "screw"},     {"labell", "label"},     {"stoper", "stopper"},
    {"pedestle", "pedestal"},
};

static void check_slips(struct arena *arena, void *context) {
    (void)context;
    struct desk desk;
    set_desk(arena, &desk, LOCALE_US, NULL);
    size_t first = 0, count = sizeof slips / sizeof *slips;
    for (size_t i = 0; i < count; i++) {
        const char *yaml =
            arena_format(arena, "type: jug\nflaws: [{kind: stain, where: near the %s}]\n", slips[i][0]);
        const struct record *record = made(arena, &desk, yaml);
        const struct listing *l = draft(arena, &desk, record, LOCALE_US);
        const char *message = NULL;
        for (size_t k = 0; k < l->finding_count; k++)
            if (!strcmp(l->findings[k].code, "spelling.word")) message = l->findings[k].message;
        ck_assert_msg(message && strstr(message, slips[i][0]), "'%s' was not noticed", slips[i][0]);
        first += strstr(message, arena_format(arena, "meant: '%s'", slips[i][1])) != NULL;
    }
    ck_assert_msg(first * 10 >= count * 8, "%zu of %zu meant words come first", first, count);
}

START_TEST(slips_are_found_and_what_was_meant) {
    within(check_slips, NULL);
}
END_TEST

static void check_names(struct arena *arena, void *context) {
    (void)context;
    struct desk desk;
    set_desk(arena, &desk, LOCALE_US, NULL);
    const struct record *record =
        made(arena, &desk,
             "type: radio\nfamily: electrical\nattributes: {brand: [Naskerby], model: [R-6x], pattern: "
             "[Quillbrand Vane]}\n"
             "marks: [{text: NASKRBY PATNT 2311}]\nfits: [{brand: Zandiver, model: C-20}]\n"
             "flaws: [{kind: crack, part: dial}]\n");
    const struct listing *l = draft(arena, &desk, record, LOCALE_US);
    ck_assert_uint_eq(count_findings(l, "spelling.word") + count_findings(l, "spelling.output"), 0);
}

START_TEST(names_and_marks_are_left_alone) {
    within(check_names, NULL);
}
END_TEST

static void check_missing(struct arena *arena, void *context) {
    (void)context;
    struct desk desk;
    set_desk(arena, &desk, LOCALE_US, "no-such-folder");
    const struct record *record = made(arena, &desk, "type: jugg\nflaws: [chip]\n");
    const struct listing *l = draft(arena, &desk, record, LOCALE_US);
    ck_assert_str_ne(l->title, "");
    ck_assert_uint_eq(count_findings(l, "spelling.word"), 0);
    ck_assert_uint_eq(desk.diags.count, 1); // told, and once
    ck_assert_int_eq(desk.diags.items[0].code, CODE_DICT_MISSING);
    draft(arena, &desk, record, LOCALE_US);
    ck_assert_uint_eq(desk.diags.count, 1);
}

START_TEST(a_missing_dictionary_is_told_once_and_the_listing_is_made) {
    within(check_missing, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("listing.spelling");
    TCase *tests = tcase_create("spelling");
    tcase_set_timeout(tests, 300);
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_add_test(tests, outputs_are_spelled_in_us_english);
    tcase_add_test(tests, outputs_are_spelled_in_british_english);
    tcase_add_test(tests, slips_are_found_and_what_was_meant);
    tcase_add_test(tests, names_and_marks_are_left_alone);
    tcase_add_test(tests, a_missing_dictionary_is_told_once_and_the_listing_is_made);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
