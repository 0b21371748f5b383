// SPDX-License-Identifier: MIT
// Every message code stands in the expected text of some test: a new one without a case fails here.
#include "../rules/support.h"

static void check_codes(struct arena *arena, void *context) {
    (void)context;
    static const char *const endings[] = {".c", ".txt", ".case", ".sh"};
    const char *tests = arena_format(arena, "%s/tests", source_folder()),
               *own = arena_format(arena, "%s/errors/test_codes.c", tests);
    bool shown[CODE_COUNT] = {false};
    size_t files = 0;
    for (size_t e = 0; e < sizeof endings / sizeof *endings; e++) {
        size_t count;
        struct diags diags = diags_start(arena);
        const char **paths = folder_list(arena, tests, endings[e], &count, &diags);
        for (size_t i = 0; i < count; i++) {
            if (!strcmp(paths[i], own)) continue;
            const struct source *source = folder_read_file(arena, paths[i], LIMIT_RULE_FILE_BYTES, &diags);
            ck_assert_msg(source != NULL, "%s", printed(arena, &diags));
            files++;
            for (int c = 0; c < CODE_COUNT; c++)
                shown[c] |=
                    strstr(source->text, arena_format(arena, "[%s]", code_entry((enum code)c)->name)) != NULL;
        }
    }
    ck_assert_uint_ge(files, 20);
    struct buf missing = buf_start(arena);
    for (int c = 0; c < CODE_COUNT; c++)
        if (!shown[c]) buf_format(&missing, " %s", code_entry((enum code)c)->name);
    ck_assert_msg(!missing.n, "no test shows the message of:%s", missing.at);
}

START_TEST(every_code_is_shown_by_a_test) {
    within(check_codes, NULL);
}
END_TEST

// A status goes with its family of codes, and warnings end nothing.
START_TEST(codes_lead_to_their_status) {
    for (int c = 0; c < CODE_COUNT; c++) {
        const struct code_entry *entry = code_entry((enum code)c);
        ck_assert_msg(entry->level != LEVEL_ERROR || entry->status >= 2, "%s", entry->name);
        ck_assert_msg(entry->level == LEVEL_ERROR || entry->status == 0, "%s", entry->name);
        if (!strncmp(entry->name, "record.", 7) && entry->level == LEVEL_ERROR)
            ck_assert_int_eq(entry->status, 4);
        if (!strncmp(entry->name, "rule.", 5) && entry->level == LEVEL_ERROR)
            ck_assert_int_eq(entry->status, 3);
        if (!strncmp(entry->name, "file.", 5)) ck_assert_int_eq(entry->status, 5);
        for (int d = 0; d < c; d++) ck_assert_str_ne(entry->name, code_entry((enum code)d)->name);
    }
}
END_TEST

int main(void) {
    Suite *suite = suite_create("errors.codes");
    TCase *tests = tcase_create("codes");
    tcase_add_test(tests, every_code_is_shown_by_a_test);
    tcase_add_test(tests, codes_lead_to_their_status);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
