// SPDX-License-Identifier: MIT
// What is said about broken rules: place, line, caret, hint, code, exactly. The cases stand in messages.txt.
#include "support.h"

enum { CASES_MOST = 160 };

struct packs {
    const char *folders[3];
    size_t count;
};

static void write_files(struct arena *arena, const struct message_case *one, struct packs *packs) {
    for (size_t i = 0; i < one->file_count; i++) {
        write_file(one->files[i].name, one->files[i].text, one->files[i].size);
        const char *folder = arena_copy(arena, one->files[i].name, strcspn(one->files[i].name, "/"));
        if (packs->count && !strcmp(packs->folders[packs->count - 1], folder)) continue;
        ck_assert_uint_lt(packs->count, 3);
        packs->folders[packs->count++] = folder;
    }
}

// The first case holds a pack without fault that lies under all others but those called "alone". Each is
// loaded and proved as `rules check` does it.
static const char *messages_of(struct arena *arena, const struct message_case *base,
                               const struct message_case *one) {
    struct packs packs = {{NULL}, 0};
    if (strncmp(one->title, "alone:", 6) != 0 && one != base) write_files(arena, base, &packs);
    write_files(arena, one, &packs);
    if (!packs.count) packs.folders[packs.count++] = "nowhere";
    struct diags diags = diags_start(arena);
    const struct ruleset *rules = ruleset_load(arena, packs.folders, packs.count, &diags);
    if (rules) {
        struct drafter drafter = {rules, NULL, scanner_new(arena, rules->finder_count), NULL, NULL};
        struct proof_counts counts;
        proof_run(arena, &drafter, &counts, &diags);
    }
    return printed(arena, &diags);
}

static void run_case(struct arena *arena, void *context) {
    const struct message_cases *cases = cases_load(arena, "tests/rules/messages.txt");
    size_t number = *(const size_t *)context;
    if (number >= cases->count) return;
    enter_new_folder();
    const char *got = messages_of(arena, cases->at, &cases->at[number]);
    leave_folder();
    struct buf wrong = buf_start(arena);
    compare_messages(&cases->at[number], got, &wrong);
    ck_assert_msg(!wrong.n, "%s", wrong.at);
}

START_TEST(each_fault_of_a_pack_is_told_exactly) {
    size_t number = (size_t)_i;
    within(run_case, &number);
}
END_TEST

static void count_cases(struct arena *arena, void *context) {
    (void)context;
    const struct message_cases *cases = cases_load(arena, "tests/rules/messages.txt");
    ck_assert_uint_ge(cases->count, 40);
    ck_assert_uint_le(cases->count, CASES_MOST);
}

START_TEST(there_are_cases) {
    within(count_cases, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("rules.messages");
    TCase *tests = tcase_create("packs");
    tcase_set_timeout(tests, 30);
    tcase_add_test(tests, there_are_cases);
    tcase_add_loop_test(tests, each_fault_of_a_pack_is_told_exactly, 0, CASES_MOST);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
