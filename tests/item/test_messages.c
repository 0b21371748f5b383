// SPDX-License-Identifier: MIT
// What is said about each bad value of a record: line, column, caret, hint and code, exactly. The cases stand
// in messages.txt.
#include "support.h"

enum { CASES_MOST = 160 };

static void run_case(struct arena *arena, void *context) {
    const struct message_cases *cases = cases_load(arena, "tests/item/messages.txt");
    ck_assert(cases->count >= 100 && cases->count <= CASES_MOST);
    size_t number = *(const size_t *)context;
    if (number >= cases->count) return;
    const struct message_case *one = &cases->at[number];
    struct diags diags = diags_start(arena);
    struct record record;
    bool fine = record_of(arena, shipped_once()->rules, one->files[0].text, &record, &diags);
    struct buf wrong = buf_start(arena);
    compare_messages(one, printed(arena, &diags), &wrong);
    ck_assert_msg(!wrong.n, "%s", wrong.at);
    ck_assert_msg(!fine && diags.status == 4, "%s: read %d, status %d", one->title, fine, diags.status);
}

START_TEST(each_bad_value_is_told_exactly) {
    size_t number = (size_t)_i;
    within(run_case, &number);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("item.messages");
    TCase *tests = tcase_create("records");
    tcase_set_timeout(tests, 60);
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_add_loop_test(tests, each_bad_value_is_told_exactly, 0, CASES_MOST);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
