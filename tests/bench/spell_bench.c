// SPDX-License-Identifier: MIT
// Times of spelling, as ratios within one run: suggestions made here against hunspell's own on the same
// words, a check with and without a slip, and what the first call of each kind costs.
#include <hunspell/hunspell.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "text/arena.h"
#include "words/speller.h"

#ifndef HUNSPELL_FOLDER
#define HUNSPELL_FOLDER "/usr/share/hunspell"
#endif

enum { CALLS = 2000 };

static const char *const slips[] = {
    "handel",   "craked", "chiped",   "recieve",   "seperate",  "enamal",    "barometr",   "vernish",
    "tarnishd", "hindge", "escuchon", "ferrul",    "laquer",    "teapotlid", "blankit",    "brokn",
    "missng",   "workd",  "leathr",   "porcelan",  "definatly", "occured",   "accomodate", "gramaphone",
    "telescop", "compas", "lantren",  "spokshave", "picturs",   "condtion",
};
enum { SLIPS = sizeof slips / sizeof *slips };

static double milliseconds(void) {
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    return (double)now.tv_sec * 1e3 + (double)now.tv_nsec / 1e6;
}

static int compare(const void *a, const void *b) {
    double x = *(const double *)a, y = *(const double *)b;
    return (x > y) - (x < y);
}

static double median(double *times, size_t count) {
    qsort(times, count, sizeof *times, compare);
    return times[count / 2];
}

static double hunspell_median(void) {
    Hunhandle *handle = Hunspell_create(HUNSPELL_FOLDER "/en_US.aff", HUNSPELL_FOLDER "/en_US.dic");
    double times[SLIPS];
    for (size_t i = 0; i < SLIPS; i++) {
        char **list = NULL;
        double start = milliseconds();
        int count = Hunspell_suggest(handle, &list, slips[i]);
        times[i] = milliseconds() - start;
        Hunspell_free_list(handle, &list, count);
    }
    Hunspell_destroy(handle);
    return median(times, SLIPS);
}

static double check_time(struct speller *speller, const char *text, struct diags *diags) {
    struct speller_text what = {text, strlen(text), NULL, 0};
    double start = milliseconds();
    for (int i = 0; i < CALLS; i++) (void)speller_check(speller, &what, diags);
    return (milliseconds() - start) / CALLS;
}

static void run(struct arena *arena, void *context) {
    (void)context;
    struct diags diags = diags_start(arena);
    for (int both = 0; both < 2; both++) {
        struct speller_options options = {.both = both};
        struct speller *speller = speller_new(NULL, &options);
        double start = milliseconds();
        (void)speller_knows(speller, "lamp", 4, &diags);
        double open = milliseconds() - start;
        start = milliseconds();
        (void)speller_knows(speller, "handel", 6, &diags);
        double other = milliseconds() - start;
        start = milliseconds();
        (void)speller_suggest(speller, "handel", 6, 5, &diags);
        double lay_out = milliseconds() - start;
        double times[SLIPS];
        for (size_t i = 0; i < SLIPS; i++) {
            start = milliseconds();
            (void)speller_suggest(speller, slips[i], strlen(slips[i]), 5, &diags);
            times[i] = milliseconds() - start;
        }
        double ours = median(times, SLIPS), theirs = hunspell_median();
        printf("%s: first check %.1f ms, first unknown word %.1f ms more, first suggestion %.1f ms\n",
               both ? "both Englishes" : "US English", open, other, lay_out);
        printf("  a suggestion, median: %.3f ms here, %.3f ms by hunspell: 1 to %.0f\n", ours, theirs,
               theirs / ours);
        double right =
            check_time(speller, "Brass lamp with a cracked chimney and a dent to the base.", &diags);
        double wrong =
            check_time(speller, "Brass lamp with a craked chimney and a dent to the base.", &diags);
        printf("  a sentence of 11 words: %.4f ms; with one slip: 1 to %.2f\n", right, wrong / right);
        speller_free(speller);
    }
}

int main(void) {
    struct arena *arena = arena_new(NULL);
    bool done = arena && arena_try(arena, run, NULL);
    arena_free(arena);
    return done ? EXIT_SUCCESS : EXIT_FAILURE;
}
