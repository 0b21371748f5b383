// SPDX-License-Identifier: MIT
// The same for the same files wherever they lie; another for any other byte, name, order or number of packs.
#define _XOPEN_SOURCE 700
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "rules/fingerprint.h"

static char work[] = "/tmp/asfound-XXXXXX";

static const char *path_of(struct arena *arena, const char *name) {
    return arena_format(arena, "%s/%s", work, name);
}

static void put(struct arena *arena, const char *name, const char *text) {
    FILE *file = fopen(path_of(arena, name), "w");
    ck_assert_ptr_nonnull(file);
    fputs(text, file);
    ck_assert_int_eq(fclose(file), 0);
}

static const char *print_of(struct arena *arena, const char *one, const char *other) {
    const char *folders[] = {path_of(arena, one), other ? path_of(arena, other) : NULL};
    struct diags diags = diags_start(arena);
    const char *print = rules_fingerprint(arena, folders, other ? 2 : 1, &diags);
    ck_assert_ptr_nonnull(print);
    ck_assert_uint_eq(diags.count, 0);
    ck_assert_uint_eq(strspn(print, "0123456789abcdef"), 12);
    ck_assert_uint_eq(strlen(print), 12);
    return print;
}

static void compare(struct arena *arena, void *context) {
    (void)context;
    static const char *const folders[] = {"a", "a/deep", "b", "b/deep"};
    for (int i = 0; i < 4; i++) ck_assert_int_eq(mkdir(path_of(arena, folders[i]), 0700), 0);
    put(arena, "a/one.yaml", "- flaw: crack\n");
    put(arena, "a/deep/two.yaml", "- flaw: chip\n");
    put(arena, "b/deep/two.yaml", "- flaw: chip\n");
    put(arena, "b/one.yaml", "- flaw: crack\n");
    const char *first = print_of(arena, "a", NULL);
    ck_assert_str_eq(first, print_of(arena, "b", NULL));
    put(arena, "b/note.txt", "no rule");
    ck_assert_str_eq(first, print_of(arena, "b", NULL));
    put(arena, "b/one.yaml", "- flaw: crack \n");
    const char *second = print_of(arena, "b", NULL);
    ck_assert_str_ne(first, second);
    put(arena, "b/one.yaml", "- flaw: crack\n");
    ck_assert_int_eq(rename(path_of(arena, "b/one.yaml"), path_of(arena, "b/uno.yaml")), 0);
    ck_assert_str_ne(first, print_of(arena, "b", NULL));
    ck_assert_str_ne(first, print_of(arena, "a", "b"));
    ck_assert_str_ne(print_of(arena, "b", "a"), print_of(arena, "a", "b"));
}

static void miss(struct arena *arena, void *context) {
    (void)context;
    const char *folders[] = {path_of(arena, "nowhere")};
    struct diags diags = diags_start(arena);
    ck_assert_ptr_null(rules_fingerprint(arena, folders, 1, &diags));
    ck_assert_uint_eq(diags.count, 1);
}

START_TEST(test_fingerprint) {
    ck_assert_ptr_nonnull(mkdtemp(work));
    struct arena *arena = arena_new(NULL);
    ck_assert(arena_try(arena, miss, NULL));
    ck_assert(arena_try(arena, compare, NULL));
    static const char *const made[] = {"a/one.yaml", "a/deep/two.yaml", "a/deep",     "a", "b/deep/two.yaml",
                                       "b/deep",     "b/note.txt",      "b/uno.yaml", "b", ""};
    for (size_t i = 0; i < sizeof made / sizeof *made; i++) {
        char path[64];
        snprintf(path, sizeof path, "%s/%s", work, made[i]);
        ck_assert_int_eq(remove(path), 0);
    }
    arena_free(arena);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("fingerprint");
    TCase *all = tcase_create("all");
    tcase_add_test(all, test_fingerprint);
    suite_add_tcase(suite, all);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
