// SPDX-License-Identifier: MIT
// asfound apply
#include "cli/changing.h"

static void run(struct session *session, const struct settings *settings) {
    if (settings->operand_count != 2) {
        session_complain(session, CODE_USAGE, NULL, command_hint(session->arena, &command_apply, NULL),
                         "apply takes a stock file and its reviewed proposals");
        return;
    }
    struct asfound_apply_options options = changing_options(session, settings);
    options.proposals = settings->operands[1];
    session_raise(session, asfound_apply(&options));
}

const struct command command_apply = {
    .name = "apply",
    .summary = "Write approved titles into a new stock file",
    .arguments = "[OPTION...] SHELF.csv PROPOSALS.csv",
    .text = "Takes the proposals whose approve is yes, and only where the stock still holds the old title. "
            "Without "
            "--write it says what would be changed, and changes nothing. With it a new file is made, whole "
            "or not at "
            "all, in which every byte but those titles is as it was; the stock file itself is never written "
            "to.\n\n"
            "What is refused is told with its reason, and the rest is done: an id that is not there, stands "
            "twice or was "
            "altered by a spreadsheet, a title that has changed since, a cell that a spreadsheet would run. "
            "The ledger "
            "says what was intended before the new file appears, and that it is done after it.",
    .options = OPTION_BIT(OPTION_WRITE) | OPTION_BIT(OPTION_MAP) | OPTION_BIT(OPTION_STORE) |
               OPTION_BIT(OPTION_TODAY) | OPTION_BIT(OPTION_COLOR) | OPTION_BIT(OPTION_QUIET) |
               OPTION_BIT(OPTION_HELP),
    .takes_files = true,
    .run = run,
};
