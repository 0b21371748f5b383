// SPDX-License-Identifier: MIT
// What `draft` and `explain` share: inputs in, listings out.
#ifndef CLI_DRAFTING_H
#define CLI_DRAFTING_H

#include "cli/command.h"
#include "cli/options.h"
#include "cli/session.h"

struct drafting {
    const char *const *names; // inputs
    size_t count;
    bool explain;
    bool read;        // notes to records
    const char *only; // id of the one record wanted, or NULL
};

// Every input is tried, whatever happened to the ones before it; only lost output ends the run early.
void drafting_run(struct session *session, const struct settings *settings, const struct drafting *drafting);

// Standard input where no FILE is given and it is no terminal; false when it is one, and that is told.
bool drafting_inputs(struct session *session, const struct settings *settings, const struct command *command,
                     struct drafting *drafting);

#endif
