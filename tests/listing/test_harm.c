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
        ck_assert_msg(harm_is_told(words[i], 0), "%s", words[i]);
        snprintf(text, sizeof text, "zinc lid %s", words[i]);
        ck_assert_msg(harm_is_told(text, 0), "%s", text);
    }
}
END_TEST

START_TEST(what_only_holds_a_beginning_is_none) {
    static const char *const others[] = {"",       "zinc lid", "trust",     "oak",
                                         "velvet", "a",        "entrust -", "0 holders"};
    for (size_t i = 0; i < sizeof others / sizeof *others; i++)
        ck_assert_msg(!harm_is_told(others[i], 0), "%s", others[i]);
}
END_TEST

START_TEST(what_is_denied_is_no_harm) {
    static const char *const none[] = {"doesn't leak",      "not frayed",       "no other marks",
                                       "no nails sticking", "hasn't come away", "nothing missing",
                                       "not gone hard",     "drip tray",        "tap hole",
                                       "mother of pearl",   "wheel runs true",  "never had a crack",
                                       "no sign of mildew", "8 power"};
    static const char *const harms[] = {
        "doesn't work",     "not working",          "none leak bar the small one",
        "not all cracked",  "no lid, cracked",      "never stops leaking",
        "doesn't charge",   "won't sit flat",       "no power",
        "power went",       "not frayed but split", "can't hold water",
        "doesn't sit level"};
    for (size_t i = 0; i < sizeof none / sizeof *none; i++)
        ck_assert_msg(!harm_is_told(none[i], 0), "%s", none[i]);
    for (size_t i = 0; i < sizeof harms / sizeof *harms; i++)
        ck_assert_msg(harm_is_told(harms[i], 0), "%s", harms[i]);
}
END_TEST

START_TEST(what_was_read_before_denies_and_tells_nothing) {
    static const struct {
        const char *before, *text;
        bool told;
    } cases[] = {{"but no ", "crack from it", false}, {"wasn't ", "cracked", false},
                 {"has a ", "crack in it", true},     {"rust and no ", "dents", false},
                 {"not ", "dents but a crack", true}, {"", "rust", true}};
    char text[80];
    for (size_t i = 0; i < sizeof cases / sizeof *cases; i++) {
        snprintf(text, sizeof text, "%s%s", cases[i].before, cases[i].text);
        ck_assert_msg(harm_is_told(text, strlen(cases[i].before)) == cases[i].told, "%s", text);
    }
}
END_TEST

int main(void) {
    Suite *suite = suite_create("listing.harm");
    TCase *tests = tcase_create("harm");
    tcase_add_test(tests, every_letter_is_found);
    tcase_add_test(tests, what_only_holds_a_beginning_is_none);
    tcase_add_test(tests, what_is_denied_is_no_harm);
    tcase_add_test(tests, what_was_read_before_denies_and_tells_nothing);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
