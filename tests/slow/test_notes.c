// SPDX-License-Identifier: MIT
// Reading a note takes time in proportion to its length, whatever stands in it: with twice as much, the time
// must not come near to four times as much. Only the ratio of two times of processor is looked at.
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "notes/measures.h"
#include "notes/rest.h"
#include "rules/ruleset.h"
#include "text/diag.h"

static const double MOST = 3.2;
static const double LEAST_SECONDS = 0.03;
enum { TRIES = 3, MEGABYTE = 1 << 20, START = 1 << 14, LONGEST = 1 << 22 };

// What is said over and over; a lone letter is one word as long as the note.
static const char *const repeated[] = {"a",
                                       "A ",
                                       "8 ",
                                       "8 in tall ",
                                       "8 x ",
                                       "chip ",
                                       "no chip on the rim ",
                                       "about ",
                                       "about 8 ",
                                       "no sorry ",
                                       "8 no sorry ",
                                       "\" ",
                                       "\"a\" ",
                                       "'",
                                       "a-",
                                       "1-",
                                       "1,",
                                       "1/",
                                       "in. ",
                                       "9 in. ",
                                       "my uncle ",
                                       "paid 5 ",
                                       "marked A ",
                                       "marked ",
                                       "Aa ",
                                       "says B on ",
                                       "the ",
                                       "of the ",
                                       "\n",
                                       "- lamp\n",
                                       "period ",
                                       "comma ",
                                       "1950s ",
                                       "early ",
                                       "mid to ",
                                       "set of 4 ",
                                       "six lamps ",
                                       "pair ",
                                       "\xF0\x9F\x99\x82\xE2\x80\x8D",
                                       "\xCC\x81",
                                       "\xC2\xBD",
                                       "!?.,;:",
                                       "H x W ",
                                       "size ",
                                       "a half ",
                                       "twenty ",
                                       "5' 6 ",
                                       "3 lb 4 ",
                                       "like a "};

struct work {
    const struct ruleset *rules;
    const struct phrases *phrases;
    const char *text;
    size_t size;
};

static bool is_small(const struct note *note, size_t i) {
    return rest_is_small(note, i);
}

static void read_note(struct arena *arena, void *context) {
    const struct work *work = context;
    struct note note = {.arena = arena, .rules = work->rules, .phrases = work->phrases};
    note.record = arena_alloc(arena, sizeof *note.record);
    note_start(&note, work->text, work->size);
    read_writing(&note);
    read_asides(&note);
    read_dates(&note);
    read_measures(&note);
    read_counts(&note);
    settle_measures(&note);
    note_rest(&note, is_small);
}

static double seconds_of(const struct work *work) {
    struct arena *arena = arena_new(NULL);
    clock_t start = clock();
    ck_assert(arena_try(arena, read_note, (void *)(uintptr_t)work));
    double seconds = (double)(clock() - start) / CLOCKS_PER_SEC;
    arena_free(arena);
    return seconds;
}

static char *repeat(const char *what, size_t size) {
    size_t n = strlen(what), times = size / n;
    char *text = malloc(times * n + 1);
    if (!text) abort();
    for (size_t i = 0; i < times; i++) memcpy(text + i * n, what, n);
    text[times * n] = '\0';
    return text;
}

static double time_of(struct work work, const char *what, size_t size) {
    char *text = repeat(what, size);
    work.text = text;
    work.size = strlen(text);
    double seconds = seconds_of(&work);
    free(text);
    return seconds;
}

static void load(struct arena *arena, void *context) {
    struct work *work = context;
    const char *source = getenv("ASFOUND_SOURCE");
    const char *folder = arena_format(arena, "%s/rules/core", source ? source : ".");
    struct diags diags = diags_start(arena);
    work->rules = ruleset_load(arena, &folder, 1, &diags);
    work->phrases = work->rules ? phrases_new(arena, work->rules) : NULL;
}

START_TEST(grows_with_its_length) {
    struct work work = {0};
    struct arena *arena = arena_new(NULL);
    ck_assert(arena_try(arena, load, &work) && work.phrases);
    const char *what = repeated[_i];
    size_t size = START;
    while (size < LONGEST && time_of(work, what, size) < LEAST_SECONDS) size *= 2;
    double ratio = MOST + 1;
    for (int i = 0; i < TRIES && ratio > MOST; i++) {
        double once = time_of(work, what, size), twice = time_of(work, what, size * 2);
        ratio = twice / (once > 1e-6 ? once : 1e-6);
    }
    ck_assert_msg(ratio <= MOST, "twice as much of '%s' takes %.1f times as long", what, ratio);
    arena_free(arena);
}
END_TEST

// One megabyte of one letter is one token, and costs next to nothing.
START_TEST(one_letter) {
    struct work work = {0};
    struct arena *arena = arena_new(NULL);
    ck_assert(arena_try(arena, load, &work) && work.phrases);
    double seconds = time_of(work, "a", MEGABYTE);
    printf("a note of one megabyte of one letter: %.3f s\n", seconds);
    ck_assert_double_lt(seconds, 5);
    arena_free(arena);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("slow: notes");
    TCase *tests = tcase_create("notes");
    tcase_set_timeout(tests, 240);
    tcase_add_loop_test(tests, grows_with_its_length, 0, (int)(sizeof repeated / sizeof *repeated));
    tcase_add_test(tests, one_letter);
    suite_add_tcase(suite, tests);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
