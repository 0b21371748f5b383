// SPDX-License-Identifier: MIT
// The list of what may be a fault is searched by first letters, so it has to be in order: the first and the
// last beginning of every letter are found, at the beginning of a text and within it.
#include "../rules/records.h"

#include "listing/harm.h"

static const char *const words[] = {
    "a bow in", "awful",    "bad side",  "buzz",  "came away", "cut out",     "damage",    "dull",
    "eaten",    "fade",     "funny",     "gains", "gummy",     "had it",      "hums",      "iffy",
    "issues",   "jammed",   "jumps",     "kaput", "knock",     "lack",        "lost",      "marks",
    "musty",    "needs",    "not right", "odor",  "oxid",      "part isn't",  "pulling",   "rained",
    "rust",     "sagg",     "sunk",      "tarn",  "tumble",    "under water", "used hard", "walkabout",
    "wrong",    "yellowed", "yellowing"};

START_TEST(every_letter_is_found) {
    char text[80];
    for (size_t i = 0; i < sizeof words / sizeof *words; i++) {
        ck_assert_msg(harm_is_told(words[i]), "%s", words[i]);
        snprintf(text, sizeof text, "zinc lid %s", words[i]);
        ck_assert_msg(harm_is_told(text), "%s", text);
    }
}
END_TEST

START_TEST(what_only_holds_a_beginning_is_none) {
    static const char *const others[] = {"",       "zinc lid", "trust",     "oak",
                                         "velvet", "a",        "entrust -", "0 holders"};
    for (size_t i = 0; i < sizeof others / sizeof *others; i++)
        ck_assert_msg(!harm_is_told(others[i]), "%s", others[i]);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("listing.harm");
    TCase *tests = tcase_create("harm");
    tcase_add_test(tests, every_letter_is_found);
    tcase_add_test(tests, what_only_holds_a_beginning_is_none);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
