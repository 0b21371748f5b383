// SPDX-License-Identifier: MIT
// text_print() against the C library, in every room from none to more than enough.
#include "text/print.h"

#include <check.h>
#include <limits.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "text/attributes.h"

enum { ROOM = 64 };

static void TEXT_PRINTF(1, 2) same(const char *format, ...) {
    for (size_t room = 0; room < ROOM; room++) {
        char ours[ROOM], theirs[ROOM];
        memset(ours, '#', sizeof ours);
        memset(theirs, '#', sizeof theirs);
        va_list first, second;
        va_start(first, format);
        va_copy(second, first);
        int got = text_print(ours, room, format, first), want = vsnprintf(theirs, room, format, second);
        va_end(second);
        va_end(first);
        ck_assert_int_eq(got, want);
        if (room) ck_assert_str_eq(ours, theirs);
        ck_assert_int_eq(ours[room], '#');
    }
}

START_TEST(texts_are_printed_as_the_c_library_prints_them) {
    same("plain");
    same("100 %%");
    same("%s and %s", "lid", "rim");
    same("%s", "");
    same("'%.*s' in %s", 3, "handle", "type");
    same("%.*s|", 9, "short");
    same("%.*s|", 0, "none");
    same("%d %d %d", 0, INT_MAX, INT_MIN);
    same("%zu of %zu", (size_t)0, SIZE_MAX);
    same("%c%c", 'a', '.');
}
END_TEST

START_TEST(other_forms_are_left_to_it) {
    same("%s: %.2f", "value", 1.5);
    same("%04x after %s and %d", 31u, "a text", 7);
    same("%-6s|%6d", "left", 12);
    same("%.3s|", "cut here");
    same("%.*s|", -1, "whole");
    same("%lld", -5LL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("print");
    TCase *tests = tcase_create("print");
    tcase_add_test(tests, texts_are_printed_as_the_c_library_prints_them);
    tcase_add_test(tests, other_forms_are_left_to_it);
    suite_add_tcase(suite, tests);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
