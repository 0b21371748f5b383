// SPDX-License-Identifier: MIT
// asfound version
#include "cli/command.h"

static void run(struct session *session, const struct settings *settings) {
    if (settings->operand_count) {
        session_complain(session, CODE_USAGE, NULL, command_hint(session->arena, &command_version, NULL),
                         "version takes no more words");
        return;
    }
    writer_text(&session->out, arena_format(session->arena, "asfound %s\n", asfound_version()));
}

const struct command command_version = {
    .name = "version",
    .summary = "Say which version this is",
    .arguments = "",
    .text = "Writes the name and version of the program and its shipped rules.",
    .options = OPTION_BIT(OPTION_HELP),
    .run = run,
};
