// SPDX-License-Identifier: MIT
// A command is a table row: main() only looks it up, and every text about commands is made from the rows.
#ifndef CLI_COMMAND_H
#define CLI_COMMAND_H

#include <stdbool.h>
#include <stddef.h>
#include <stdint.h>

#include "cli/options.h"
#include "cli/session.h"

struct command {
    const char *name;
    const char *summary;   // one line, no full stop
    const char *arguments; // as the usage line shows them
    const char
        *text; // paragraphs of help, parted by an empty line; a line that begins with a space stays as it is
    const char *const *words; // what may stand first behind the name, NULL-ended; NULL when anything may
    uint64_t options;         // bits of enum option_id
    bool takes_files, takes_command;
    // Results go to the session's output; messages and the status through the session. NULL: promised, not
    // there yet.
    void (*run)(struct session *session, const struct settings *settings);
};

extern const struct command command_draft, command_read, command_explain, command_date, command_retitle,
    command_apply, command_undo, command_history, command_rules, command_help, command_version;
// The promised names, in one array.
extern const struct command LATER_COMMANDS[];
extern const size_t LATER_COUNT;

// All commands in the order of the help, the promised ones last; NULL after the last.
const struct command *command_at(size_t index);
// NULL when there is none of that name, which has been told.
const struct command *command_find(struct session *session, const char *name);
// "see 'asfound draft --help'", after a "did you mean" where there is one. `command` may be NULL.
const char *command_hint(struct arena *arena, const struct command *command, const char *meant);
// 'name' is promised, and not there yet: the message.
void command_not_yet(struct session *session, const struct command *command);

#endif
