// SPDX-License-Identifier: MIT
// Numbers. Outside check: the C library's strtod and printf in the "C" locale; then the same in a locale with
// a decimal comma, made on the spot with localedef where the machine has it.
#include "support.h"

#include <locale.h>
#include <math.h>

static bool read_number(const char *text, double *value) {
    struct node node = {.kind = NODE_TEXT, .plain = true, .text = text, .size = strlen(text)};
    return node_number(&node, value);
}

START_TEST(only_json_grammar_is_a_number) {
    static const char *const GOOD[] = {"0",     "-0",  "7",    "-12",    "0.5",
                                       "12.50", "1e3", "1E+3", "2.5e-7", "123456789012345678901234567890"};
    static const char *const BAD[] = {"",    "-",    "+1",    "01",    "1.",    ".5",      "1e",
                                      "1e+", "0x1F", "1,5",   "1_000", "NaN",   "inf",     " 1",
                                      "1 ",  "12in", "1.2.3", "--1",   "1e999", "\xD9\xA1"};
    double value = 0;
    for (size_t i = 0; i < sizeof GOOD / sizeof *GOOD; i++) {
        ck_assert_msg(read_number(GOOD[i], &value), "%s", GOOD[i]);
        ck_assert_msg(memcmp(&value, &(double){strtod(GOOD[i], NULL)}, sizeof value) == 0, "%s", GOOD[i]);
    }
    for (size_t i = 0; i < sizeof BAD / sizeof *BAD; i++)
        ck_assert_msg(!read_number(BAD[i], &value), "%s", BAD[i]);
    struct node quoted = {.kind = NODE_TEXT, .text = "12", .size = 2}, list = {.kind = NODE_LIST};
    ck_assert(!node_number(&quoted, &value));
    ck_assert(!node_number(&list, &value));
}
END_TEST

START_TEST(words_are_true_or_false_where_they_are_plain) {
    static const struct {
        const char *text;
        int value; // 2: none
    } WORDS[] = {{"true", 1}, {"yes", 1}, {"Yes", 1}, {"NO", 0},   {"false", 0},
                 {"y", 2},    {"on", 2},  {"", 2},    {"yess", 2}, {"1", 2}};
    for (size_t i = 0; i < sizeof WORDS / sizeof *WORDS; i++) {
        struct node node = {
            .kind = NODE_TEXT, .plain = true, .text = WORDS[i].text, .size = strlen(WORDS[i].text)};
        bool value = false;
        ck_assert_msg(node_bool(&node, &value) == (WORDS[i].value != 2), "%s", WORDS[i].text);
        if (WORDS[i].value != 2) ck_assert_int_eq(value, WORDS[i].value);
        node.plain = false;
        ck_assert(!node_bool(&node, &value));
    }
}
END_TEST

static double random_double(struct dice *dice) {
    if (dice_roll(dice, 2)) return ((double)dice_roll(dice, 1000000) - 500000) / 100.0;
    uint64_t bits = (uint64_t)dice_roll(dice, 0x7FFFFFFF) << 33 | (uint64_t)dice_roll(dice, 0x7FFFFFFF) << 2 |
                    dice_roll(dice, 4);
    double value = 0;
    memcpy(&value, &bits, sizeof value);
    return isfinite(value) ? value : 1.5;
}

// Digits from the first to the last that is not zero, the exponent aside.
static size_t significant(const char *text) {
    size_t count = 0, last = 0;
    for (; *text && *text != 'e'; text++) {
        if (*text < '0' || *text > '9' || (*text == '0' && !count)) continue;
        count++;
        if (*text != '0') last = count;
    }
    return last;
}

static size_t fewest_digits(double value) {
    for (int precision = 1; precision < 17; precision++) {
        char text[64];
        snprintf(text, sizeof text, "%.*e", precision - 1, value);
        double again = strtod(text, NULL);
        if (!(again < value) && !(again > value)) return significant(text);
    }
    return 17;
}

static void write_many(struct arena *arena, void *context) {
    struct dice *dice = context;
    bool c_locale = strcmp(localeconv()->decimal_point, ".") == 0;
    for (int i = 0; i < 50000; i++) {
        double value = random_double(dice), again = 0;
        const struct node *node = node_real(arena, value);
        bool fine = strspn(node->text, "0123456789-+e.") == node->size && node_number(node, &again);
        fine = fine && !(again < value) && !(again > value);
        if (!fine) ck_abort_msg("%.17g became %s", value, node->text);
        if (!c_locale) continue;
        double read = strtod(node->text, NULL);
        if (read < value || read > value) ck_abort_msg("strtod reads %s otherwise", node->text);
        if (significant(node->text) != fewest_digits(value)) ck_abort_msg("%s could be shorter", node->text);
    }
}

START_TEST(reals_come_back) {
    struct dice dice = {8};
    within(write_many, &dice);
}
END_TEST

static void write_some(struct arena *arena, void *context) {
    (void)context;
    static const struct {
        double value;
        const char *text;
    } REALS[] = {{0, "0"},
                 {0.1, "0.1"},
                 {12.5, "12.5"},
                 {-3, "-3"},
                 {100, "100"},
                 {1e20, "100000000000000000000"},
                 {1e21, "1e+21"},
                 {0.000001, "0.000001"},
                 {1e-7, "1e-7"},
                 {1.0 / 3, "0.3333333333333333"},
                 {1234.5e-9, "0.0000012345"},
                 {5e-324, "5e-324"},
                 {1.7976931348623157e308, "1.7976931348623157e+308"}};
    for (size_t i = 0; i < sizeof REALS / sizeof *REALS; i++)
        ck_assert_str_eq(node_real(arena, REALS[i].value)->text, REALS[i].text);
    ck_assert_int_eq(node_real(arena, (double)INFINITY)->kind, NODE_NULL);
    ck_assert_int_eq(node_real(arena, (double)NAN)->kind, NODE_NULL);
    ck_assert_str_eq(node_whole(arena, -9007199254740993)->text, "-9007199254740993");
    ck_assert_str_eq(node_bool_new(arena, false)->text, "false");
}

START_TEST(reals_are_written_as_people_write_them) {
    within(write_some, NULL);
}
END_TEST

static bool comma_locale(char *folder) {
    char command[256];
    if (!mkdtemp(folder)) return false;
    snprintf(command, sizeof command, "localedef -i de_DE -f UTF-8 '%s/de_DE.UTF-8' >/dev/null 2>&1", folder);
    bool made = system(command) != -1 && setenv("LOCPATH", folder, 1) == 0;
    return made && setlocale(LC_ALL, "de_DE.UTF-8") && strcmp(localeconv()->decimal_point, ",") == 0;
}

START_TEST(a_decimal_comma_changes_nothing) {
    char folder[] = "/tmp/asfound-locale-XXXXXX", command[128];
    bool made = comma_locale(folder);
    snprintf(command, sizeof command, "rm -r '%s'", folder);
    if (system(command) != 0) fprintf(stderr, "%s is left behind\n", folder);
    if (!made) {
        fprintf(stderr, "no locale with a decimal comma on this machine: that case is not tested\n");
        return;
    }
    char sample[16];
    snprintf(sample, sizeof sample, "%.1f", 0.5);
    ck_assert_str_eq(sample, "0,5"); // so the locale is really in force
    struct dice dice = {8};
    within(write_some, NULL);
    within(write_many, &dice);
    double value = 0;
    ck_assert(read_number("0.1234567890123456789", &value) && value > 0.1234 && value < 0.1235);
    ck_assert(!read_number("0,5", &value));
}
END_TEST

int main(void) {
    Suite *suite = suite_create("number");
    TCase *cases = tcase_create("number");
    tcase_set_timeout(cases, 120);
    tcase_add_test(cases, only_json_grammar_is_a_number);
    tcase_add_test(cases, words_are_true_or_false_where_they_are_plain);
    tcase_add_test(cases, reals_come_back);
    tcase_add_test(cases, reals_are_written_as_people_write_them);
    tcase_add_test(cases, a_decimal_comma_changes_nothing);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
