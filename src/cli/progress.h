// SPDX-License-Identifier: MIT
// One line on the terminal that says how far a long run is. Never in a file, never beside results on the same
// screen.
#ifndef CLI_PROGRESS_H
#define CLI_PROGRESS_H

#include <stdbool.h>
#include <stddef.h>
#include <time.h>

struct progress {
    bool on;
    bool shown;     // a line stands on the terminal now
    size_t earlier; // records of the inputs that are done
    size_t done;
    struct timespec begun, last;
};

void progress_start(struct progress *progress, bool on);
// `done` counts within the input at hand. Rewrites the line, ten times a second at most.
void progress_show(struct progress *progress, size_t done);
// The same for rows of a file of which the share `part` was read; 0 where that is not known. Says how long it
// will take yet.
void progress_show_rows(struct progress *progress, size_t rows, double part);
// The input at hand is done; the next one counts from 0 again.
void progress_next(struct progress *progress);
// Takes the line away, so that something else can be written.
void progress_erase(struct progress *progress);

#endif
