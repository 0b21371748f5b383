// SPDX-License-Identifier: MIT
// The index against a search from the first to the last of what was put in.
#include "text/index.h"

#include <check.h>
#include <stdlib.h>
#include <string.h>

#include "text/arena.h"

enum { TEXTS = 3000, MOST_SIZE = 9 };

static struct arena *memory;

static void setup(void) {
    memory = arena_new(NULL);
}

static void teardown(void) {
    arena_free(memory);
}

// Few letters, so that many texts come twice.
static char *some_text(struct arena *arena, uint32_t *state) {
    char *text = arena_alloc(arena, MOST_SIZE + 1);
    *state = *state * 1664525u + 1013904223u;
    size_t size = (*state >> 16) % (MOST_SIZE + 1);
    for (size_t i = 0; i < size; i++) {
        *state = *state * 1664525u + 1013904223u;
        text[i] = (char)('a' + (*state >> 16) % 3);
    }
    text[size] = '\0';
    return text;
}

static uint32_t first_of(char *const texts[], size_t count, const char *text) {
    for (size_t i = 0; i < count; i++)
        if (!strcmp(texts[i], text)) return (uint32_t)i;
    return INDEX_NONE;
}

static void fill_and_find(struct arena *arena, void *unused) {
    (void)unused;
    char *texts[TEXTS];
    uint32_t state = 7;
    struct index *index = index_new(arena, TEXTS);
    for (size_t i = 0; i < TEXTS; i++) {
        texts[i] = some_text(arena, &state);
        index_add(index, texts[i], strlen(texts[i]), i);
    }
    size_t found = 0, missed = 0;
    for (size_t i = 0; i < TEXTS * 2; i++) {
        const char *text = some_text(arena, &state);
        uint32_t should = first_of(texts, TEXTS, text), is = index_find(index, text, strlen(text));
        ck_assert_msg(is == should, "\"%s\": %u instead of %u", text, is, should);
        if (is == INDEX_NONE)
            missed++;
        else
            found++;
    }
    ck_assert_uint_gt(found, 1000);
    ck_assert_uint_gt(missed, 1000);
}

static void ask_for_longer(struct arena *arena, void *unused) {
    (void)unused;
    struct index *index = index_new(arena, 2);
    index_add(index, "lamp", 4, 1);
    ck_assert_uint_eq(index_find(index, "lamp", 4), 1);
    ck_assert_uint_eq(index_find(index, "lamps", 5), INDEX_NONE);
    index_add(index, "lamps", 5, 2);
    ck_assert_uint_eq(index_find(index, "lamps", 5), 2);
    ck_assert_uint_eq(index_find(NULL, "lamp", 4), INDEX_NONE);
}

START_TEST(what_is_there_is_found_under_its_first_number) {
    ck_assert(arena_try(memory, fill_and_find, NULL));
}
END_TEST

START_TEST(a_text_longer_than_all_is_not_there) {
    ck_assert(arena_try(memory, ask_for_longer, NULL));
}
END_TEST

int main(void) {
    Suite *suite = suite_create("index");
    TCase *tests = tcase_create("find");
    tcase_add_checked_fixture(tests, setup, teardown);
    tcase_add_test(tests, what_is_there_is_found_under_its_first_number);
    tcase_add_test(tests, a_text_longer_than_all_is_not_there);
    suite_add_tcase(suite, tests);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
