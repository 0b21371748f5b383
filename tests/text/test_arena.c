// SPDX-License-Identifier: MIT
// The arena: what it hands out, how it ends, and what happens when memory runs out at any of its calls.
#include "support.h"

#include <string.h>

#include "text/buf.h"

#if defined(__SANITIZE_ADDRESS__)
#define POISON_SEEN 1
#elif defined(__has_feature)
#if __has_feature(address_sanitizer)
#define POISON_SEEN 1
#endif
#endif
#ifdef POISON_SEEN
#include <sanitizer/asan_interface.h>
#endif

static void take_all_sizes(struct arena *arena, void *context) {
    (void)context;
    for (size_t size = 0; size < 3000; size++) {
        unsigned char *at = arena_alloc(arena, size);
        bool fine = (uintptr_t)at % _Alignof(max_align_t) == 0;
        for (size_t i = 0; i < size; i++) fine = fine && at[i] == 0;
        ck_assert_msg(fine, "a piece of %zu bytes", size);
        memset(at, 0xAB, size);
    }
    unsigned char *large = arena_alloc(arena, (size_t)3 << 20);
    ck_assert_uint_eq(large[((size_t)3 << 20) - 1], 0);
    ck_assert_uint_ge(arena_used(arena), (size_t)3 << 20);
}

START_TEST(memory_is_zeroed_and_aligned) {
    within(take_all_sizes, NULL);
}
END_TEST

static void take_again(struct arena *arena, void *context) {
    unsigned char **before = context;
    unsigned char *at = arena_alloc(arena, 64);
    for (size_t i = 0; i < 64; i++) ck_assert_uint_eq(at[i], 0);
    memset(at, 0xFF, 64);
    *before = at;
}

START_TEST(reset_keeps_the_first_block_and_clears_it) {
    struct ledger ledger = {0};
    struct arena_memory memory = ledger_memory(&ledger);
    struct arena *arena = arena_new(&memory);
    size_t empty = arena_used(arena);
    unsigned char *first = NULL, *second = NULL;
    ck_assert(arena_try(arena, take_again, &first));
    ck_assert_uint_gt(arena_used(arena), empty);
    arena_reset(arena);
    ck_assert_uint_eq(arena_used(arena), empty);
#ifdef POISON_SEEN
    ck_assert(__asan_address_is_poisoned(first));
#endif
    size_t calls = ledger.calls;
    ck_assert(arena_try(arena, take_again, &second));
#ifndef ASFOUND_TEST_TINY
    ck_assert_ptr_eq(first, second);
    ck_assert_uint_eq(ledger.calls, calls);
#else
    ck_assert_uint_ge(ledger.calls, calls);
#endif
    ck_assert_ptr_eq(arena_source(arena)->context, &ledger);
    arena_free(arena);
    arena_free(NULL);
    ck_assert_uint_eq(ledger.live, 0);
}
END_TEST

static char seen[8];

static void note_clean(void *thing) {
    strncat(seen, thing, 1);
}

static void defer_three(struct arena *arena, void *context) {
    (void)context;
    static char names[] = "abc";
    for (size_t i = 0; i < 3; i++) arena_defer(arena, note_clean, names + i);
}

START_TEST(clean_ups_run_last_first_and_once) {
    struct arena *arena = arena_new(NULL);
    seen[0] = '\0';
    ck_assert(arena_try(arena, defer_three, NULL));
    ck_assert_str_eq(seen, "");
    arena_reset(arena);
    ck_assert_str_eq(seen, "cba");
    arena_free(arena);
    ck_assert_str_eq(seen, "cba");
}
END_TEST

struct nest {
    bool inner, after;
};

static void ask_too_much(struct arena *arena, void *context) {
    (void)context;
    arena_array(arena, SIZE_MAX / 2, 3);
    ck_abort_msg("an impossible product was given memory");
}

static void nest_one(struct arena *arena, void *context) {
    struct nest *nest = context;
    nest->inner = arena_try(arena, ask_too_much, NULL);
    nest->after = strcmp(arena_string(arena, "goes on"), "goes on") == 0;
}

START_TEST(only_the_innermost_try_is_left) {
    struct arena *arena = arena_new(NULL);
    struct nest nest = {true, false};
    ck_assert(arena_try(arena, nest_one, &nest));
    ck_assert(!nest.inner);
    ck_assert(nest.after);
    ck_assert(!arena_try(arena, ask_too_much, NULL));
    arena_free(arena);
}
END_TEST

static void grow_and_format(struct arena *arena, void *context) {
    (void)context;
    size_t room = 0, count = 0;
    size_t *numbers = NULL;
    for (; count < 1000; count++) {
        numbers = arena_grow(arena, numbers, count, &room, sizeof *numbers);
        numbers[count] = count;
    }
    for (size_t i = 0; i < count; i++) ck_assert_uint_eq(numbers[i], i);
    ck_assert_str_eq(arena_format(arena, "%d %s", 7, "tins"), "7 tins");
    ck_assert_str_eq(arena_copy(arena, "abcdef", 3), "abc");
    ck_assert_str_eq(arena_copy(arena, NULL, 0), "");
    struct buf buf = buf_start(arena);
    ck_assert_str_eq(buf.at, "");
    for (int i = 0; i < 500; i++) buf_format(&buf, "%d,", i);
    buf_byte(&buf, '.');
    buf_add(&buf, "xyz", 2);
    ck_assert_uint_eq(buf.n, strlen(buf.at));
    ck_assert_str_eq(buf.at + buf.n - 7, "499,.xy");
    buf_clear(&buf);
    ck_assert_str_eq(buf.at, "");
    buf_text(&buf, "again");
    ck_assert_str_eq(buf.at, "again");
}

START_TEST(arrays_and_buffers_grow) {
    within(grow_and_format, NULL);
}
END_TEST

struct file {
    size_t opened, closed;
};

static void file_close(void *thing) {
    ((struct file *)thing)->closed++;
}

static void long_task(struct arena *arena, void *context) {
    struct file *file = context;
    for (int i = 0; i < 40; i++) {
        file->opened++;
        arena_defer(arena, file_close, file);
        struct buf buf = buf_start(arena);
        for (int k = 0; k < 200; k++) buf_format(&buf, "line %d of %d\n", k, i);
        arena_alloc(arena, (size_t)100 * (size_t)i);
    }
}

// The allowed number of calls is raised by one until the task succeeds.
START_TEST(every_call_for_memory_may_fail) {
    bool done = false;
    size_t failures = 0;
    for (size_t allowed = 1; !done; allowed++) {
        struct ledger ledger = {.fail_at = allowed};
        struct arena_memory memory = ledger_memory(&ledger);
        struct arena *arena = arena_new(&memory);
        struct file file = {0};
        if (arena) {
            done = arena_try(arena, long_task, &file);
            arena_free(arena);
        }
        ck_assert_uint_eq(file.opened, file.closed);
        ck_assert_uint_eq(ledger.live, 0);
        failures += !done;
    }
    ck_assert_uint_ge(failures, 4);
}
END_TEST

START_TEST(asking_outside_a_try_is_a_programming_error) {
    struct arena *arena = arena_new(NULL);
    arena_alloc(arena, 1);
}
END_TEST

#ifdef POISON_SEEN
static void look_past(struct arena *arena, void *context) {
    (void)context;
    char *at = arena_alloc(arena, 16);
    ck_assert(!__asan_address_is_poisoned(at + 15));
    ck_assert(__asan_address_is_poisoned(at + 16));
}

START_TEST(the_byte_after_a_piece_is_poisoned) {
    within(look_past, NULL);
}
END_TEST
#endif

int main(void) {
    Suite *suite = suite_create("arena");
    TCase *cases = tcase_create("arena");
    tcase_set_timeout(cases, 60);
    tcase_add_test(cases, memory_is_zeroed_and_aligned);
    tcase_add_test(cases, reset_keeps_the_first_block_and_clears_it);
    tcase_add_test(cases, clean_ups_run_last_first_and_once);
    tcase_add_test(cases, only_the_innermost_try_is_left);
    tcase_add_test(cases, arrays_and_buffers_grow);
    tcase_add_test(cases, every_call_for_memory_may_fail);
    tcase_add_test_raise_signal(cases, asking_outside_a_try_is_a_programming_error, 6);
#ifdef POISON_SEEN
    tcase_add_test(cases, the_byte_after_a_piece_is_poisoned);
#endif
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
