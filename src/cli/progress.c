// SPDX-License-Identifier: MIT
// The only user of a clock in the program: it decides when to tell, never what is drafted.
#include "cli/progress.h"

#include <stdio.h>
#include <unistd.h>

#include "cli/writer.h"

static const double INTERVAL = 0.1;

static double seconds_between(const struct timespec *from, const struct timespec *to) {
    return (double)(to->tv_sec - from->tv_sec) + 1e-9 * (double)(to->tv_nsec - from->tv_nsec);
}

void progress_start(struct progress *progress, bool on) {
    *progress = (struct progress){.on = on};
    if (!on) return;
    clock_gettime(CLOCK_MONOTONIC, &progress->begun);
    progress->last = progress->begun;
}

void progress_show(struct progress *progress, size_t done) {
    progress->done = done;
    if (!progress->on) return;
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    if (seconds_between(&progress->last, &now) < INTERVAL) return;
    progress->last = now;
    size_t all = progress->earlier + done;
    char line[96];
    int size = snprintf(line, sizeof line, "\r\033[K%zu records done, %.0f a second", all,
                        (double)all / seconds_between(&progress->begun, &now));
    if (size > 0 && (size_t)size < sizeof line) write_all(STDERR_FILENO, line, (size_t)size);
    progress->shown = true;
}

void progress_next(struct progress *progress) {
    progress->earlier += progress->done;
    progress->done = 0;
}

void progress_erase(struct progress *progress) {
    static const char erase[] = "\r\033[K";
    if (progress->shown) write_all(STDERR_FILENO, erase, sizeof erase - 1);
    progress->shown = false;
}
