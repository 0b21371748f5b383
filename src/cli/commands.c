// SPDX-License-Identifier: MIT
// The table of commands.
#include <string.h>

#include "cli/command.h"
#include "text/hint.h"

enum { TABLE_COUNT = 11 };
static const struct command *const TABLE[TABLE_COUNT] = {
    &command_draft, &command_read,    &command_explain, &command_date, &command_retitle, &command_apply,
    &command_undo,  &command_history, &command_rules,   &command_help, &command_version};

const struct command *command_at(size_t index) {
    if (index < TABLE_COUNT) return TABLE[index];
    return index - TABLE_COUNT < LATER_COUNT ? &LATER_COMMANDS[index - TABLE_COUNT] : NULL;
}

const char *command_hint(struct arena *arena, const struct command *command, const char *meant) {
    const char *see =
        command ? arena_format(arena, "see 'asfound %s --help'", command->name) : "see 'asfound --help'";
    return meant ? arena_format(arena, "did you mean '%s'? %s", meant, see) : see;
}

const struct command *command_find(struct session *session, const char *name) {
    struct nearest nearest = nearest_start(name);
    const struct command *command;
    for (size_t i = 0; (command = command_at(i)); i++) {
        if (strcmp(command->name, name) == 0) return command;
        if (command->run) nearest_offer(&nearest, command->name);
    }
    session_complain(session, CODE_USAGE, NULL, command_hint(session->arena, NULL, nearest.best),
                     "there is no command '%s'", name);
    return NULL;
}

void command_not_yet(struct session *session, const struct command *command) {
    session_complain(session, CODE_NOT_YET, NULL, NULL, "'%s' is not there yet", command->name);
}
