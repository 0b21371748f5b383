// SPDX-License-Identifier: MIT
// asfound history
#include "cli/changing.h"

static void run(struct session *session, const struct settings *settings) {
    const char *hint = command_hint(session->arena, &command_history, NULL);
    if (settings->operand_count > 1) {
        session_complain(session, CODE_USAGE, NULL, hint, "history takes one id, or none");
        return;
    }
    if (settings->format != ASFOUND_TEXT && settings->format != ASFOUND_JSON_LINES) {
        session_complain(session, CODE_USAGE, NULL, hint, "--format: history is text or json");
        return;
    }
    const char *id = settings->operand_count ? settings->operands[0] : NULL;
    session_raise(session, asfound_history(changing_ledger(settings), id,
                                           settings->format == ASFOUND_JSON_LINES, session->color_messages,
                                           writer_put, &session->out, session_put_message, session));
}

const struct command command_history = {
    .name = "history",
    .summary = "Say what was changed, and when",
    .arguments = "[OPTION...] [ID]",
    .text = "Without an ID, the entries of the ledger: when, by which rules, how many titles, and whether "
            "the new file "
            "came to be. With one, every change of that item's title.",
    .options = OPTION_BIT(OPTION_STORE) | OPTION_BIT(OPTION_FORMAT) | OPTION_BIT(OPTION_COLOR) |
               OPTION_BIT(OPTION_QUIET) | OPTION_BIT(OPTION_HELP),
    .run = run,
};
