// SPDX-License-Identifier: MIT
// asfound draft
#include "cli/command.h"
#include "cli/drafting.h"

static void run(struct session *session, const struct settings *settings) {
    struct drafting drafting = {.only = settings->only};
    const char *wrong = !settings->sheet   ? NULL
                        : !settings->today ? "--sheet: give its day with --today; no clock is read"
                        : settings->format == ASFOUND_YAML_OUT || settings->format == ASFOUND_JSON_LINES
                            ? "--sheet: a sheet is text or html"
                            : NULL;
    if (wrong) {
        session_complain(session, CODE_USAGE, NULL, command_hint(session->arena, &command_draft, NULL), "%s",
                         wrong);
        return;
    }
    const char *one = settings->title          ? "title"
                      : settings->answer_count ? "answer"
                      : settings->only         ? "only"
                                               : NULL;
    if (one && settings->operand_count > 1) {
        session_complain(session, CODE_USAGE, NULL, command_hint(session->arena, &command_draft, NULL),
                         "--%s goes with one record; name one FILE", one);
        return;
    }
    if (drafting_inputs(session, settings, &command_draft, &drafting))
        drafting_run(session, settings, &drafting);
}

const struct command command_draft = {
    .name = "draft",
    .summary = "Write a listing for each item record",
    .arguments = "[OPTION...] [FILE...]",
    .text = "Reads item records and writes a listing for each, in the order of the input: the best title "
            "that fits, a "
            "disclosure of every fault, a description to paste, what the title earns, what to look at before "
            "listing, "
            "and cautions.\n\n"
            "A FILE of - is standard input, which is also read where no FILE is given and it is no terminal. "
            "One broken "
            "record does not stop the others.\n\n"
            "A small record:\n\n"
            "    id: lamp-1\n"
            "    type: lamp\n"
            "    family: lighting\n"
            "    attributes: {material: [brass]}\n"
            "    flaws: [{kind: dent-bend, where: on the base}]",
    .options = OPTION_BIT(OPTION_FROM) | OPTION_BIT(OPTION_FORMAT) | OPTION_BIT(OPTION_RULES) |
               OPTION_BIT(OPTION_DICTIONARIES) | OPTION_BIT(OPTION_LIMIT) | OPTION_BIT(OPTION_LOCALE) |
               OPTION_BIT(OPTION_TODAY) | OPTION_BIT(OPTION_SHEET) | OPTION_BIT(OPTION_TITLE) |
               OPTION_BIT(OPTION_ANSWER) | OPTION_BIT(OPTION_ONLY) | OPTION_BIT(OPTION_COLOR) |
               OPTION_BIT(OPTION_STORE) | OPTION_BIT(OPTION_QUIET) | OPTION_BIT(OPTION_HELP),
    .takes_files = true,
    .run = run,
};
