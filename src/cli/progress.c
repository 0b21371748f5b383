// SPDX-License-Identifier: MIT
// The only user of a clock in the program: it decides when to tell, never what is drafted.
#include "cli/progress.h"

#include <stdio.h>
#include <unistd.h>

#include "cli/writer.h"

static const double INTERVAL = 0.1;

enum { LINE = 96 };

static double seconds_between(const struct timespec *from, const struct timespec *to) {
    return (double)(to->tv_sec - from->tv_sec) + 1e-9 * (double)(to->tv_nsec - from->tv_nsec);
}

void progress_start(struct progress *progress, bool on) {
    *progress = (struct progress){.on = on};
    if (!on) return;
    clock_gettime(CLOCK_MONOTONIC, &progress->begun);
    progress->last = progress->begun;
}

// Seconds since the start when the line is to be written anew; 0 when it was written a moment ago.
static double is_time(struct progress *progress, size_t done) {
    progress->done = done;
    if (!progress->on) return 0;
    struct timespec now;
    clock_gettime(CLOCK_MONOTONIC, &now);
    if (seconds_between(&progress->last, &now) < INTERVAL) return 0;
    progress->last = now;
    return seconds_between(&progress->begun, &now);
}

static void write_line(struct progress *progress, const char *line, int size) {
    if (size > 0 && size < LINE) write_all(STDERR_FILENO, line, (size_t)size);
    progress->shown = true;
}

void progress_show(struct progress *progress, size_t done) {
    double seconds = is_time(progress, done);
    if (seconds <= 0) return;
    size_t all = progress->earlier + done;
    char line[LINE];
    write_line(
        progress, line,
        snprintf(line, sizeof line, "\r\033[K%zu records done, %.0f a second", all, (double)all / seconds));
}

void progress_show_rows(struct progress *progress, size_t rows, double part) {
    double seconds = is_time(progress, rows);
    if (seconds <= 0) return;
    char line[LINE], left[LINE] = "";
    double rest = part > 0 ? seconds * (1 - part) / part : 0;
    const char *unit = rest < 100 ? "s" : rest < 6000 ? "min" : "h";
    double in_unit = rest < 100 ? rest : rest < 6000 ? rest / 60 : rest / 3600;
    if (part > 0) snprintf(left, sizeof left, ", %.0f %s left", in_unit, unit);
    write_line(
        progress, line,
        snprintf(line, sizeof line, "\r\033[K%zu rows, %.0f a second%s", rows, (double)rows / seconds, left));
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
