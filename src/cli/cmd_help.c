// SPDX-License-Identifier: MIT
// asfound help
#include "cli/help.h"

static void usage(struct session *session, const char *message) {
    session_complain(session, CODE_USAGE, NULL, command_hint(session->arena, &command_help, NULL), "%s",
                     message);
}

static void run(struct session *session, const struct settings *settings) {
    struct buf out = buf_start(session->arena);
    if (settings->operand_count + settings->man + settings->completion > 1) {
        usage(session, "help takes one COMMAND, --man or --completion");
        return;
    }
    if (settings->man) {
        help_man(&out);
    } else if (settings->completion) {
        help_completion(&out);
    } else if (settings->operand_count) {
        const struct command *command = command_find(session, settings->operands[0]);
        if (command && command->run)
            help_command(&out, command);
        else if (command)
            command_not_yet(session, command);
    } else {
        help_overall(&out);
    }
    writer_put(&session->out, out.at, out.n);
}

const struct command command_help = {
    .name = "help",
    .summary = "Say how to use the program or one of its commands",
    .arguments = "[COMMAND | --man | --completion]",
    .text = "Without a COMMAND, says what there is.",
    .options = OPTION_BIT(OPTION_MAN) | OPTION_BIT(OPTION_COMPLETION) | OPTION_BIT(OPTION_HELP),
    .takes_command = true,
    .run = run,
};
