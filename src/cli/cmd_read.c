// SPDX-License-Identifier: MIT
// asfound read
#include "cli/command.h"
#include "cli/drafting.h"

static void run(struct session *session, const struct settings *settings) {
    struct drafting drafting = {.read = true};
    if (drafting_inputs(session, settings, &command_read, &drafting))
        drafting_run(session, settings, &drafting);
}

const struct command command_read = {
    .name = "read",
    .summary = "Turn plain notes into item records",
    .arguments = "[OPTION...] [FILE...]",
    .text = "Reads notes as they were scribbled or dictated and writes an item record for each thing: what "
            "it is, its facts and "
            "figures, what is wrong with it, and what could not be understood. Look the records over, "
            "correct them, and give "
            "them to 'asfound draft'.\n\n"
            "A FILE that ends in .txt holds notes, where a line of only --- parts one item from the next. "
            "Records that have a key "
            "'notes' are read too: what they say under other keys stands.",
    .options = OPTION_BIT(OPTION_FROM) | OPTION_BIT(OPTION_FORMAT) | OPTION_BIT(OPTION_RULES) |
               OPTION_BIT(OPTION_LOCALE) | OPTION_BIT(OPTION_TODAY) | OPTION_BIT(OPTION_COLOR) |
               OPTION_BIT(OPTION_STORE) | OPTION_BIT(OPTION_QUIET) | OPTION_BIT(OPTION_HELP),
    .takes_files = true,
    .run = run,
};
