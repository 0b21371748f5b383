// SPDX-License-Identifier: MIT
// Articles, lists, counts and the first capital.
#include "../text/support.h"

#include <limits.h>
#include <stdio.h>
#include <string.h>

#include "say/say.h"

START_TEST(an_by_sound) {
    static const char *const phrases[] = {
        "old lamp",
        "hour",
        "heirloom",
        "honest mend",
        "umbrella",
        "urn",
        "unidentified maker",
        "unissued book",
        "unused",
        "onyx base",
        "8 in plate",
        "80",
        "8,000",
        "11-inch",
        "18th",
        "18,000",
        "1890s map",
        "LP",
        "LED",
        "SLR",
        "MP3",
        "EPNS fork",
        "NOS part",
        "FM radio",
        "F-hole",
        "L-shaped",
        "x-ray",
        "M6 bolt",
        "A4 sheet",
        "RAF tin",
        "\"Ostrey\" lamp",
        "(old) tin",
        "Inner",
        "\xC3\xA9tag\xC3\xA8re",
        "eight",
        "herb chopper",
        "X",
    };
    for (size_t i = 0; i < sizeof phrases / sizeof *phrases; i++)
        ck_assert_msg(!strcmp(say_article(phrases[i]), "an"), "an %s", phrases[i]);
}
END_TEST

START_TEST(a_by_sound) {
    static const char *const phrases[] = {
        "lamp",      "hammer",
        "honeycomb", "unicorn",
        "uniform",   "used tin",
        "usual",     "utensil",
        "ewer",      "euphonium",
        "one-owner", "once",
        "ouija",     "urinal",
        "180",       "110",
        "1,100",     "180,000",
        "DVD",       "VHS tape",
        "U-bolt",    "T-square",
        "UK",        "USB lead",
        "UHF",       "KR-9",
        "HEPA",      "0.5 in",
        "1/8 in",    "yellow",
        "7",         "",
        "ukulele",   "\303\261and\303\272",
        "Tin",
    };
    for (size_t i = 0; i < sizeof phrases / sizeof *phrases; i++)
        ck_assert_msg(!strcmp(say_article(phrases[i]), "a"), "a %s", phrases[i]);
}
END_TEST

static void lists(struct arena *arena, void *context) {
    (void)context;
    static const char *const plain[] = {"a lid", "a tray", "a cord", "a key"};
    ck_assert_str_eq(say_list(arena, plain, 0, LOCALE_US), "");
    ck_assert_str_eq(say_list(arena, plain, 1, LOCALE_US), "a lid");
    ck_assert_str_eq(say_list(arena, plain, 2, LOCALE_US), "a lid and a tray");
    ck_assert_str_eq(say_list(arena, plain, 2, LOCALE_GB), "a lid and a tray");
    ck_assert_str_eq(say_list(arena, plain, 3, LOCALE_US), "a lid, a tray, and a cord");
    ck_assert_str_eq(say_list(arena, plain, 3, LOCALE_GB), "a lid, a tray and a cord");
    ck_assert_str_eq(say_list(arena, plain, 4, LOCALE_GB), "a lid, a tray, a cord and a key");
    static const char *const ands[] = {"a cup and saucer", "a tray", "a jug"};
    ck_assert_str_eq(say_list(arena, ands, 3, LOCALE_GB), "a cup and saucer, a tray, and a jug");
    static const char *const commas[] = {"a tin, red", "a lid", "a key"};
    ck_assert_str_eq(say_list(arena, commas, 3, LOCALE_US), "a tin, red; a lid; and a key");
    ck_assert_str_eq(say_list(arena, commas, 3, LOCALE_GB), "a tin, red; a lid; and a key");
}

START_TEST(lists_by_locale) {
    within(lists, NULL);
}
END_TEST

static void counts(struct arena *arena, void *context) {
    (void)context;
    static const struct {
        long count;
        const char *text, *title;
    } cases[] = {{0, "zero", "Zero"},
                 {1, "one", "One"},
                 {2, "two", "Two"},
                 {12, "twelve", "Twelve"},
                 {13, "13", "13"},
                 {999, "999", "999"},
                 {1000, "1,000", "1,000"},
                 {1200, "1,200", "1,200"},
                 {1234567, "1,234,567", "1,234,567"},
                 {-3, "-3", "-3"},
                 {-1200, "-1,200", "-1,200"},
                 {100, "100", "100"},
                 {12345, "12,345", "12,345"}};
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        ck_assert_str_eq(say_number(arena, cases[i].count), cases[i].text);
        ck_assert_str_eq(say_number_title(arena, cases[i].count), cases[i].title);
    }
    // the digits of the ends, whatever the width of long
    const char *ends[] = {say_number(arena, LONG_MAX), say_number(arena, LONG_MIN)};
    for (size_t i = 0; i < 2; i++) {
        char digits[40] = "", plain[40];
        snprintf(plain, sizeof plain, "%ld", i ? LONG_MIN : LONG_MAX);
        for (const char *c = ends[i]; *c; c++)
            if (*c != ',') strncat(digits, c, 1);
        ck_assert_str_eq(digits, plain);
    }
}

START_TEST(counts_in_words_and_digits) {
    within(counts, NULL);
}
END_TEST

static void sentences(struct arena *arena, void *context) {
    (void)context;
    static const char *const cases[][2] = {
        {"a lid is missing", "A lid is missing"},
        {"A lid", "A lid"},
        {"\"old\" stamp", "\"Old\" stamp"},
        {"(see photo)", "(See photo)"},
        {"12 cups", "12 cups"},
        {"pH meter", "pH meter"},
        {"ex-Library book", "Ex-Library book"},
        {"", ""},
        {" lid", " Lid"},
        {"\xC3\xA9tag\xC3\xA8re", "\xC3\x89tag\xC3\xA8re"},
        {"x", "X"},
    };
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++)
        ck_assert_str_eq(say_sentence_case(arena, cases[i][0]), cases[i][1]);
    ck_assert_ptr_eq(say_sentence_case(arena, cases[1][0]), cases[1][0]);
}

START_TEST(first_letter_up) {
    within(sentences, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("phrase");
    TCase *cases = tcase_create("phrase");
    tcase_add_test(cases, an_by_sound);
    tcase_add_test(cases, a_by_sound);
    tcase_add_test(cases, lists_by_locale);
    tcase_add_test(cases, counts_in_words_and_digits);
    tcase_add_test(cases, first_letter_up);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
