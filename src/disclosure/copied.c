// SPDX-License-Identifier: MIT
// Words are runs of letters and digits in any case; a run of them is kept as one hash. Two different runs
// with one hash would only make a sentence take its second wording.
#include "disclosure/copied.h"

#include <stddef.h>
#include <stdint.h>
#include <string.h>

struct copied_runs {
    uint64_t *slots; // 0 where empty
    size_t slot_count;
};

static bool is_word(char c) {
    unsigned char u = (unsigned char)c;
    return (u >= '0' && u <= '9') || ((u | 32) >= 'a' && (u | 32) <= 'z') || u >= 0x80;
}

// The hash of the next word from `*at`; false at the end.
static bool next_word(const char **at, uint64_t *hash) {
    while (**at && !is_word(**at)) ++*at;
    if (!**at) return false;
    *hash = 14695981039346656037u;
    for (; is_word(**at); ++*at) {
        char c = **at;
        if (c >= 'A' && c <= 'Z') c = (char)(c + ('a' - 'A'));
        *hash = (*hash ^ (unsigned char)c) * 1099511628211u;
    }
    return true;
}

struct window {
    uint64_t words[RUN_WORDS];
    size_t count;
};

// The hash of the last five words once there are as many; 0 before.
static uint64_t window_push(struct window *w, uint64_t word) {
    w->words[w->count++ % RUN_WORDS] = word;
    if (w->count < RUN_WORDS) return 0;
    uint64_t hash = 0;
    for (size_t i = 0; i < RUN_WORDS; i++)
        hash = hash * 0x9E3779B97F4A7C15u + w->words[(w->count + i) % RUN_WORDS];
    return hash | 1;
}

static size_t slot_of(const struct copied_runs *runs, uint64_t hash) {
    size_t at = (size_t)(hash ^ (hash >> 32)) & (runs->slot_count - 1);
    while (runs->slots[at] && runs->slots[at] != hash) at = (at + 1) & (runs->slot_count - 1);
    return at;
}

const struct copied_runs *copied_runs_of(struct arena *arena, const char *notes) {
    struct copied_runs *runs = arena_alloc(arena, sizeof *runs);
    if (!notes) return runs;
    size_t room = strlen(notes); // more than twice the number of words
    runs->slot_count = 16;
    while (runs->slot_count < room) runs->slot_count *= 2;
    runs->slots = arena_array(arena, runs->slot_count, sizeof *runs->slots);
    struct window window = {.count = 0};
    for (uint64_t word; next_word(&notes, &word);) {
        uint64_t hash = window_push(&window, word);
        if (hash) runs->slots[slot_of(runs, hash)] = hash;
    }
    return runs;
}

bool copied_runs_in(const struct copied_runs *runs, const char *text) {
    if (!runs->slot_count) return false;
    struct window window = {.count = 0};
    for (uint64_t word; next_word(&text, &word);) {
        uint64_t hash = window_push(&window, word);
        if (hash && runs->slots[slot_of(runs, hash)]) return true;
    }
    return false;
}
