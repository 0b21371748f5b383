// SPDX-License-Identifier: MIT
// What `draft` and `explain` share: inputs in, listings out.
#ifndef CLI_DRAFTING_H
#define CLI_DRAFTING_H

#include "cli/options.h"
#include "cli/session.h"

struct drafting {
    const char *const *names; // inputs
    size_t count;
    bool explain;
    const char *only; // id of the one record wanted, or NULL
};

// Every input is tried, whatever happened to the ones before it; only lost output ends the run early.
void drafting_run(struct session *session, const struct settings *settings, const struct drafting *drafting);

#endif
