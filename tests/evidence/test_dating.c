// SPDX-License-Identifier: MIT
// Years of marks: every rule by its own examples, the laws of intersection over made-up sets, check digits
// against python3-stdnum, withdrawn names against iso-codes, and marks that are none.
#include "../rules/support.h"

#include <jansson.h>
#include <time.h>

#include "evidence/check_digit.h"
#include "evidence/dating.h"
#include "evidence/diamond.h"
#include "format/write.h"
#include "listing/dates.h"

struct bench {
    struct arena *arena; // of the scanner; the marks of one turn have their own
    struct scanner *scanner;
    const struct ruleset *rules;
    const char **marks;
    size_t mark_count;
    struct dice dice;
};

static const struct dating *date_of(struct arena *arena, const struct bench *b, const char *const *marks,
                                    size_t count) {
    return dating_of_marks(arena, b->scanner, b->rules, marks, count, NULL);
}

static const char *plain(struct arena *arena, const char *hit) {
    struct buf out = buf_start(arena);
    for (; *hit; hit++)
        if (*hit != '[' && *hit != ']') buf_byte(&out, *hit);
    return out.at;
}

static struct bench bench_of(struct arena *arena) {
    const struct ruleset *rules = shipped_once()->rules;
    struct bench b = {.arena = arena, .rules = rules, .dice = {UINT64_C(88172645463325252)}};
    b.scanner = scanner_new(arena, rules->finder_count);
    size_t count = 0;
    for (size_t i = 0; i < rules->bound_count; i++) count += rules->bounds[i]->rule.hits.count;
    b.marks = arena_array(arena, count + 1, sizeof *b.marks);
    for (size_t i = 0; i < rules->bound_count; i++)
        for (size_t k = 0; k < rules->bounds[i]->rule.hits.count; k++)
            b.marks[b.mark_count++] = plain(arena, rules->bounds[i]->rule.hits.at[k]);
    return b;
}

static const struct dated_mark *mark_of(const struct dating *d, const char *id) {
    for (size_t i = 0; i < d->count; i++)
        if (!strcmp(d->marks[i].bound->rule.id, id)) return &d->marks[i];
    return NULL;
}

static const char *tree_text(struct arena *arena, const struct dating *d) {
    struct buf out = buf_start(arena);
    json_write(&out, dates_tree(arena, d, true));
    return out.at;
}

// --- every rule ---

static void check_hits(struct arena *arena, void *context) {
    (void)context;
    struct bench b = bench_of(arena);
    ck_assert_uint_ge(b.rules->bound_count, 100);
    for (size_t i = 0; i < b.rules->bound_count; i++) {
        const struct bound *bound = b.rules->bounds[i];
        ck_assert_msg(bound->rule.hits.count >= 2 && bound->rule.misses.count >= 2, "%s", bound->rule.id);
        for (size_t k = 0; k < bound->rule.hits.count; k++) {
            const char *mark = plain(arena, bound->rule.hits.at[k]);
            const struct dating *d = date_of(arena, &b, &mark, 1);
            const struct dated_mark *m = mark_of(d, bound->rule.id);
            ck_assert_msg(m != NULL, "%s is not found in '%s'", bound->rule.id, mark);
            ck_assert_msg(m->wrong || m->not_before || m->not_after, "%s: no year in '%s'", bound->rule.id,
                          mark);
            ck_assert_msg(m->counts == (!m->wrong && bound->sure != BOUND_MEMORY), "%s", bound->rule.id);
            ck_assert_msg(!m->not_before || !m->not_after || m->not_before <= m->not_after, "%s", mark);
            if (bound->reads == READS_NOTHING)
                ck_assert_msg(m->not_before == bound->not_before && m->not_after == bound->not_after, "%s",
                              mark);
        }
    }
}

START_TEST(every_rule_dates_its_own_examples) {
    within(check_hits, NULL);
}
END_TEST

static void check_years(struct arena *arena, void *context) {
    (void)context;
    static const struct {
        const char *mark, *years;
    } cases[] = {
        {"Made in Occupied Japan", "1947-1952"},
        {"Made in West Germany", "1949-1990"},
        {"Nippon", "1891-1921"},
        {"Alderbrook 11, Ill.", "1943-1963"},
        {"Pat. No. 999,999", "1900 or later"},
        {"Pat. No. 1,000,000", "1911 or later"},
        {"Pat. No. 2919442", "1935 or later"},
        {"Pat. No. 2919443", "1960 or later"},
        {"Rd No 141272", "1884 or later"},
        {"Rd No 141273", "1889 or later"},
        {"RN 13669", "1952 or later"},
        {"RN 13670", "1959 or later"},
        {"© 1958, 1962 Alder Press", "1962 or later"},
        {"Copyright MCMLXII", "1962 or later"},
        {"Pat. Aug. 4, 1914", "1914 or later"},
        {"diamond mark IV, top S, right 6", "1849-1869"},
        {"diamond mark, top 5, right Y, bottom K", "1879-1899"},
        {"diamond mark", "1842-1903"},
        {"ISBN 0-306-40615-2", "1970-2007"},
        {"ISBN 978-0-306-40615-7", "2007 or later"},
        {"9780306406157", "1977 or later"},
        {"012345678905", "1974 or later"},
        {"SBN 340 01381 8", "1966-1974"},
        {"Сделано в СССР", "1922-1992"},
        {"www.alder.example", "any year"},
        {"Empire Made", "any year"},
        {"Formosa", "any year"},
    };
    struct bench b = bench_of(arena);
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        const struct dating *d = date_of(arena, &b, &cases[i].mark, 1);
        ck_assert_msg(d->count > 0, "%s", cases[i].mark);
        ck_assert_str_eq(dating_years(arena, d->from, d->to), cases[i].years);
    }
}

START_TEST(marks_get_the_years_written_down) {
    within(check_years, NULL);
}
END_TEST

// --- laws ---

static bool is_within(const struct dating *inner, const struct dating *outer) {
    bool from = inner->from >= outer->from;
    bool to = !outer->to || (inner->to && inner->to <= outer->to);
    return from && to && (outer->fits || !inner->fits);
}

static void check_set(struct arena *arena, void *context) {
    struct bench *b = context;
    const char *marks[9], *turned[9];
    size_t count = 1 + dice_roll(&b->dice, 6);
    for (size_t i = 0; i <= count; i++) marks[i] = b->marks[dice_roll(&b->dice, (uint32_t)b->mark_count)];
    for (size_t i = 0; i < count; i++) turned[i] = marks[count - 1 - i];
    const struct dating *d = date_of(arena, b, marks, count), *back = date_of(arena, b, turned, count);
    const char *told = tree_text(arena, d);
    ck_assert_str_eq(told, tree_text(arena, back));
    const struct dating *more = date_of(arena, b, marks, count + 1);
    ck_assert_msg(is_within(more, d), "'%s' widens %s to %s", marks[count], told, tree_text(arena, more));
    int from = 0, to = 0;
    for (size_t i = 0; i < d->count; i++) {
        const struct dated_mark *m = &d->marks[i];
        if (!m->counts) continue;
        if (m->not_before > from) from = m->not_before;
        if (m->not_after && (!to || m->not_after < to)) to = m->not_after;
    }
    ck_assert_msg(d->from == from && d->to == to && d->fits == !(from && to && from > to), "%s", told);
    ck_assert_msg((d->conflict_count > 0) == !d->fits, "%s", told);
    for (size_t i = 0; i < d->conflict_count; i++)
        ck_assert_msg(d->conflicts[i].late->not_before > d->conflicts[i].early->not_after, "%s", told);
    ck_assert_msg(!strstr(told, "made 1") && !strstr(told, "made 2"), "%s", told);
}

static void check_laws(struct arena *arena, void *context) {
    (void)context;
    struct bench b = bench_of(arena);
    struct arena *work = arena_new(NULL);
    ck_assert_ptr_nonnull(work);
    size_t turns = 0;
    for (; turns < 10000; turns++) {
        ck_assert(arena_try(work, check_set, &b));
        arena_reset(work);
    }
    arena_free(work);
    ck_assert_uint_ge(turns, 10000);
}

START_TEST(more_marks_only_narrow_and_their_order_is_nothing) {
    within(check_laws, NULL);
}
END_TEST

static void check_conflict(struct arena *arena, void *context) {
    (void)context;
    struct bench b = bench_of(arena);
    const char *marks[] = {"West Germany", "Made in Occupied Japan", "Alderbrook, MN 55401", "hello"};
    const struct dating *d = date_of(arena, &b, marks, 4);
    ck_assert(!d->fits);
    ck_assert_str_eq(dating_summary(arena, d), "no year fits all these marks");
    ck_assert_uint_ge(d->conflict_count, 1);
    ck_assert_str_eq(
        dating_conflict_text(arena, &d->conflicts[0]),
        "'MN' (two-letter-state) was not used before 1963, and 'Occupied Japan' (occupied-japan) not "
        "after 1952");
    ck_assert_uint_eq(d->silent_count, 1);
    ck_assert_str_eq(d->silent[0], "hello");
    ck_assert(dates_must(d));
    struct day today = {2000, 1, 1};
    const char *book = "ISBN 978-0-306-40615-7";
    d = dating_of_marks(arena, b.scanner, b.rules, &book, 1, &today);
    ck_assert_uint_eq(d->future_count, 1);
    ck_assert(d->fits && dates_must(d));
    today.year = 2007;
    d = dating_of_marks(arena, b.scanner, b.rules, &book, 1, &today);
    ck_assert_uint_eq(d->future_count, 0);
}

START_TEST(both_sides_of_a_conflict_are_told) {
    within(check_conflict, NULL);
}
END_TEST

// --- check digits ---

static const char *made_number(struct arena *arena, struct dice *dice, size_t i) {
    static const size_t lengths[] = {10, 13, 8, 12, 13, 14};
    size_t kind = i % 6, count = lengths[kind];
    char digits[16] = "";
    for (size_t k = 0; k < count; k++) digits[k] = (char)('0' + dice_roll(dice, 10));
    if (kind == 1) memcpy(digits, dice_roll(dice, 2) ? "978" : "979", 3);
    digits[count - 1] = kind == 0 ? check_digit_book(digits) : check_digit_bar_code(digits, count);
    // Half of them are spoiled, in one figure or by two that changed places.
    if (dice_roll(dice, 2)) {
        size_t at = dice_roll(dice, (uint32_t)count - 2);
        if (dice_roll(dice, 2))
            digits[at] = (char)('0' + (digits[at] - '0' + 1 + (int)dice_roll(dice, 9)) % 10);
        else {
            char other = digits[at];
            digits[at] = digits[at + 1];
            digits[at + 1] = other;
        }
    }
    return arena_string(arena, digits);
}

static const char script[] = "import sys; from stdnum import isbn, ean\n"
                             "for line in open(sys.argv[1]):\n"
                             "    kind, number = line.split()\n"
                             "    print(int((isbn if kind == \"b\" else ean).is_valid(number)))\n";

static void check_stdnum(struct arena *arena, void *context) {
    (void)context;
    enum { NUMBERS = 3000 };
    struct dice dice = {UINT64_C(20260713)};
    enter_new_folder();
    struct buf list = buf_start(arena);
    const char **numbers = arena_array(arena, NUMBERS, sizeof *numbers);
    for (size_t i = 0; i < NUMBERS; i++) {
        numbers[i] = made_number(arena, &dice, i);
        buf_format(&list, "%c %s\n", i % 6 < 2 ? 'b' : 'e', numbers[i]);
    }
    write_file("numbers", list.at, list.n);
    write_file("script.py", script, sizeof script - 1);
    FILE *answers = popen("/usr/bin/python3 script.py numbers", "r");
    ck_assert_ptr_nonnull(answers);
    size_t valid = 0;
    char line[16];
    for (size_t i = 0; i < NUMBERS; i++) {
        ck_assert_msg(fgets(line, sizeof line, answers) != NULL, "python3-stdnum says nothing of number %zu",
                      i);
        const char *wrong =
            i % 6 < 2 ? check_book_number(arena, numbers[i]) : check_bar_code(arena, numbers[i]);
        ck_assert_msg((line[0] == '1') == !wrong, "%s: %s", numbers[i], wrong ? wrong : "held to be right");
        valid += !wrong;
    }
    ck_assert_int_eq(pclose(answers), 0);
    leave_folder();
    ck_assert(valid > NUMBERS / 3 && valid < 2 * NUMBERS / 3);
}

START_TEST(check_digits_are_those_of_stdnum) {
    within(check_stdnum, NULL);
}
END_TEST

static void check_wrong_numbers(struct arena *arena, void *context) {
    (void)context;
    static const struct {
        const char *mark, *id, *wrong;
    } cases[] = {
        {"ISBN 0-306-40615-3", "isbn-10", "its check digit is 3 and should be 2"},
        {"ISBN 0-8044-2957-0", "isbn-10", "its check digit is 0 and should be X"},
        {"ISBN 978-0-306-40615-8", "isbn-13", "its check digit is 8 and should be 7"},
        {"ISBN 97803064061571", "isbn-odd", "it has 14 figures, and a book number has 10 or 13"},
        {"ISBN 123-0-306-40615-7", "isbn-odd", "thirteen figures of a book begin with 978 or 979"},
        {"SBN 340 01381 9", "sbn", "its check digit is 9 and should be 8"},
        {"6291041500214", "bar-code-number", "its check digit is 4 and should be 3"},
        {"EAN 735135", "bar-code-number", "it has 6 figures, and a bar code has 8, 12, 13 or 14"},
        {"diamond mark, top Q, right Q", "registration-diamond", "no year has that letter"},
        {"diamond mark, top 4, right 6", "registration-diamond",
         "its right corner holds a number and its top a letter, or its right corner a letter"},
    };
    struct bench b = bench_of(arena);
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        const struct dating *d = date_of(arena, &b, &cases[i].mark, 1);
        const struct dated_mark *m = mark_of(d, cases[i].id);
        ck_assert_msg(m != NULL, "%s", cases[i].mark);
        ck_assert_msg(m->wrong && !strcmp(m->wrong, cases[i].wrong), "%s: %s", cases[i].mark,
                      m->wrong ? m->wrong : "nothing");
        ck_assert(!m->counts && !m->not_before && !m->not_after && !d->from && !d->to && d->fits);
        ck_assert(strstr(tree_text(arena, d), "\"code\":\"dates.number\"") != NULL);
    }
}

START_TEST(a_wrong_number_says_so_and_bounds_nothing) {
    within(check_wrong_numbers, NULL);
}
END_TEST

START_TEST(every_letter_of_the_diamond_is_its_year) {
    static const char first[] = "X42 H43 C44 A45 I46 F47 U48 S49 V50 P51 D52 Y53 J54 E55 L56 K57 B58 M59 Z60 "
                                "R61 O62 G63 N64 W65 Q66 T67 ";
    static const char second[] = "X68 H69 C70 A71 I72 F73 U74 S75 V76 P77 D78 Y79 J80 E81 L82 K83 ";
    char text[64];
    for (const char *at = first; *at; at += 4) {
        snprintf(text, sizeof text, "diamond, top %c, right 12, left C", at[0]);
        struct diamond d = diamond_read(text);
        ck_assert_int_eq(d.year, 1800 + atoi(at + 1));
        ck_assert_str_eq(d.month, "January");
    }
    for (const char *at = second; *at; at += 4) {
        snprintf(text, sizeof text, "Right corner: %c; top corner: 7; class III", at[0]);
        struct diamond d = diamond_read(text);
        ck_assert_int_eq(d.year, 1800 + atoi(at + 1));
        ck_assert_str_eq(d.class, "glass");
    }
    ck_assert_int_eq(diamond_read("top 4, right W, bottom G").year, 1878);
    ck_assert_str_eq(diamond_read("top 4, right W, bottom G").month, "March");
    ck_assert_ptr_null(diamond_read("top K, left R, right 4").month);
    ck_assert_int_eq(diamond_read("diamond").year, 0);
    ck_assert_ptr_null(diamond_read("diamond").wrong);
}
END_TEST

// --- withdrawn names ---

static int withdrawn(const json_t *list, const char *code) {
    size_t i;
    json_t *entry;
    json_array_foreach(list, i, entry) {
        const char *alpha = json_string_value(json_object_get(entry, "alpha_4"));
        if (alpha && !strcmp(alpha, code))
            return atoi(json_string_value(json_object_get(entry, "withdrawal_date")));
    }
    return 0;
}

START_TEST(withdrawn_names_end_as_iso_codes_says) {
    static const char *const cases[][2] = {
        {"burma", "BUMM"},
        {"zaire", "ZRCD"},
        {"rhodesia", "RHZW"},
        {"upper-volta", "HVBF"},
        {"dahomey", "DYBJ"},
        {"netherlands-antilles", "ANHH"},
        {"east-timor", "TPTL"},
        {"new-hebrides", "NHVU"},
        {"byelorussia", "BYAA"},
        {"canal-zone", "PZPA"},
        {"gilbert-and-ellice", "GEHH"},
        {"afars-and-issas", "AIDJ"},
        {"south-yemen", "YDYE"},
        {"serbia-and-montenegro", "CSXX"},
        {"north-vietnam", "VDVN"},
        {"sikkim", "SKIN"},
        {"east-germany", "DDDE"},
        {"ussr", "SUHH"},
        {"yugoslavia", "YUCS"},
        {"czechoslovakia", "CSHH"},
    };
    json_error_t error;
    json_t *root = json_load_file("/usr/share/iso-codes/json/iso_3166-3.json", 0, &error);
    ck_assert_msg(root != NULL, "iso-codes: %s", error.text);
    const json_t *list = json_object_get(root, "3166-3");
    const struct ruleset *rules = shipped_once()->rules;
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        const struct bound *bound = NULL;
        for (size_t k = 0; k < rules->bound_count; k++)
            if (!strcmp(rules->bounds[k]->rule.id, cases[i][0])) bound = rules->bounds[k];
        ck_assert_msg(bound != NULL, "%s", cases[i][0]);
        ck_assert_msg(bound->not_after == withdrawn(list, cases[i][1]), "%s: %d, withdrawn in %d",
                      cases[i][0], bound->not_after, withdrawn(list, cases[i][1]));
    }
    json_decref(root);
}
END_TEST

// --- marks that are none, and many ---

static void check_odd(struct arena *arena, void *context) {
    (void)context;
    static const char *const silent[] = {"ISBN ٠٣٠٦٤٠٦١٥٢",
                                         "日本製",
                                         "ISBN",
                                         "",
                                         " ",
                                         "12",
                                         "Pat. 1951",
                                         "Rd",
                                         "diamond pattern",
                                         "①②③④⑤",
                                         "Serial 55401",
                                         "\xF0\x9F\x93\xBB"};
    struct bench b = bench_of(arena);
    for (size_t i = 0; i < sizeof silent / sizeof *silent; i++) {
        const struct dating *d = date_of(arena, &b, &silent[i], 1);
        ck_assert_msg(!d->count && d->silent_count == 1, "'%s' is taken for %s", silent[i],
                      d->count ? d->marks[0].bound->rule.id : "nothing");
    }
    const struct dating *none = date_of(arena, &b, NULL, 0);
    ck_assert(none->fits && !none->from && !none->to && !none->count);
    ck_assert_str_eq(dating_summary(arena, none), "these marks say nothing of a year");
    struct day day;
    ck_assert(day_read("2024-02-29", &day) && day.year == 2024 && day.month == 2 && day.day == 29);
    ck_assert(!day_read("2023-02-29", &day) && !day_read("2023-2-1", &day) && !day_read("0000-01-01", &day));
}

START_TEST(what_is_no_mark_says_nothing) {
    within(check_odd, NULL);
}
END_TEST

static double seconds_for(struct arena *arena, const struct bench *b, size_t count) {
    const char **marks = arena_array(arena, count, sizeof *marks);
    for (size_t i = 0; i < count; i++)
        marks[i] = arena_format(arena, "Alder Works %zu, Pat. No. %zu, Alderbrook, MN %05zu", i, 100000 + i,
                                i % 99999);
    clock_t start = clock();
    const struct dating *d = date_of(arena, b, marks, count);
    double spent = (double)(clock() - start) / CLOCKS_PER_SEC;
    ck_assert_uint_eq(d->count, 3 * count); // number, state and post code
    ck_assert_int_eq(d->from, 1963);
    return spent;
}

static void check_many(struct arena *arena, void *context) {
    (void)context;
    struct bench b = bench_of(arena);
    seconds_for(arena, &b, 10); // the patterns are compiled
    double small = seconds_for(arena, &b, 1250), large = seconds_for(arena, &b, 5000);
    // Four times the marks: a square would take sixteen times as long.
    ck_assert_msg(large < 9 * small + 0.05, "%.3f s and %.3f s", small, large);
}

START_TEST(five_thousand_marks_take_their_number_s_time) {
    within(check_many, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("dating");
    TCase *rules = tcase_create("rules"), *laws = tcase_create("laws"), *numbers = tcase_create("numbers");
    tcase_add_unchecked_fixture(rules, shipped_setup, NULL);
    tcase_add_unchecked_fixture(laws, shipped_setup, NULL);
    tcase_add_unchecked_fixture(numbers, shipped_setup, NULL);
    tcase_add_test(rules, every_rule_dates_its_own_examples);
    tcase_add_test(rules, marks_get_the_years_written_down);
    tcase_add_test(rules, withdrawn_names_end_as_iso_codes_says);
    tcase_add_test(laws, more_marks_only_narrow_and_their_order_is_nothing);
    tcase_add_test(laws, both_sides_of_a_conflict_are_told);
    tcase_add_test(laws, what_is_no_mark_says_nothing);
    tcase_add_test(laws, five_thousand_marks_take_their_number_s_time);
    tcase_add_test(numbers, check_digits_are_those_of_stdnum);
    tcase_add_test(numbers, a_wrong_number_says_so_and_bounds_nothing);
    tcase_add_test(numbers, every_letter_of_the_diamond_is_its_year);
    suite_add_tcase(suite, rules);
    suite_add_tcase(suite, laws);
    suite_add_tcase(suite, numbers);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
