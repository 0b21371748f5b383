// SPDX-License-Identifier: MIT
// asfound undo
#include <string.h>

#include "cli/changing.h"

static bool take_entry(const char *text, long long *entry) {
    size_t digits = strspn(text, "0123456789");
    *entry = 0;
    for (size_t i = 0; i < digits && digits < 16; i++) *entry = 10 * *entry + (text[i] - '0');
    return digits && digits < 16 && !text[digits];
}

static void run(struct session *session, const struct settings *settings) {
    const char *hint = command_hint(session->arena, &command_undo, NULL);
    long long entry;
    if (settings->operand_count != 2) {
        session_complain(session, CODE_USAGE, NULL, hint,
                         "undo takes the number of an entry and a stock file");
        return;
    }
    if (!take_entry(settings->operands[0], &entry)) {
        session_complain(session, CODE_USAGE, NULL, "see 'asfound history'", "'%s' is no number of an entry",
                         settings->operands[0]);
        return;
    }
    struct asfound_apply_options options = changing_options(session, settings);
    options.stock = settings->operands[1];
    options.entry = entry;
    session_raise(session, asfound_undo(&options));
}

const struct command command_undo = {
    .name = "undo",
    .summary = "Put old titles back into a new stock file",
    .arguments = "[OPTION...] ENTRY SHELF.csv",
    .text = "Puts the titles that an entry of the ledger changed back to what they were, byte for byte, "
            "wherever the new "
            "title still stands; whatever else has changed in the file since then stays. Without --write it "
            "says what "
            "would be changed, and changes nothing. An undo is an entry itself, and can be undone.",
    .options = OPTION_BIT(OPTION_WRITE) | OPTION_BIT(OPTION_MAP) | OPTION_BIT(OPTION_STORE) |
               OPTION_BIT(OPTION_TODAY) | OPTION_BIT(OPTION_COLOR) | OPTION_BIT(OPTION_QUIET) |
               OPTION_BIT(OPTION_HELP),
    .takes_files = true,
    .run = run,
};
