// SPDX-License-Identifier: MIT
// What tests of several rooms need: a task in an arena, memory that runs out on demand, repeatable random
// numbers.
#ifndef TEST_TEXT_SUPPORT_H
#define TEST_TEXT_SUPPORT_H

#include <check.h>
#include <stdint.h>
#include <stdlib.h>

#include "text/arena.h"

// Counts blocks that are out; the `fail_at`-th call for memory (from 1) and all after it fail.
struct ledger {
    size_t calls, fail_at, live;
};

static inline void *ledger_alloc(void *context, size_t size) {
    struct ledger *ledger = context;
    if (++ledger->calls >= ledger->fail_at && ledger->fail_at) return NULL;
    void *block = malloc(size);
    if (block) ledger->live++;
    return block;
}

static inline void ledger_free(void *context, void *block) {
    struct ledger *ledger = context;
    if (block) ledger->live--;
    free(block);
}

static inline struct arena_memory ledger_memory(struct ledger *ledger) {
    struct arena_memory memory = {ledger_alloc, ledger_free, ledger};
    return memory;
}

// Runs `body` in an arena of its own, which must have enough memory and leave none out.
static inline void within(void (*body)(struct arena *arena, void *context), void *context) {
    struct ledger ledger = {0};
    struct arena_memory memory = ledger_memory(&ledger);
    struct arena *arena = arena_new(&memory);
    ck_assert_ptr_nonnull(arena);
    ck_assert(arena_try(arena, body, context));
    arena_free(arena);
    ck_assert_uint_eq(ledger.live, 0);
}

// xorshift64*: the same on every machine.
struct dice {
    uint64_t state;
};

static inline uint32_t dice_roll(struct dice *dice, uint32_t sides) {
    uint64_t x = dice->state;
    x ^= x >> 12;
    x ^= x << 25;
    x ^= x >> 27;
    dice->state = x;
    return (uint32_t)((x * UINT64_C(2685821657736338717)) >> 33) % sides;
}

static inline int run_suite(Suite *suite) {
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}

#endif
