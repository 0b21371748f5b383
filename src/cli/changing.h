// SPDX-License-Identifier: MIT
// What apply, undo and history have in common.
#ifndef CLI_CHANGING_H
#define CLI_CHANGING_H

#include "cli/command.h"

// The ledger that --store names, or the one of this folder.
const char *changing_ledger(const struct settings *settings);
struct asfound_apply_options changing_options(struct session *session, const struct settings *settings);

#endif
