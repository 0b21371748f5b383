// SPDX-License-Identifier: MIT
// asfound explain
#include <string.h>
#include <sys/stat.h>

#include "cli/command.h"
#include "cli/drafting.h"

static bool is_there(const char *name) {
    struct stat about;
    return strcmp(name, "-") == 0 || stat(name, &about) == 0;
}

// FILE:ID, split at the last colon whose left side is there; a file whose own name holds a colon comes first.
static void split_item(struct arena *arena, const char *item, struct drafting *drafting, const char **name) {
    *name = item;
    for (size_t at = strlen(item); at > 0 && !is_there(item); at--) {
        if (item[at - 1] != ':' || !item[at]) continue;
        const char *left = arena_copy(arena, item, at - 1);
        if (!is_there(left)) continue;
        *name = left;
        drafting->only = item + at;
        return;
    }
}

static void run(struct session *session, const struct settings *settings) {
    const char *hint = command_hint(session->arena, &command_explain, NULL);
    struct drafting drafting = {.count = 1, .explain = true};
    if (!settings->operand_count || settings->operand_count > 2) {
        session_complain(session, CODE_USAGE, NULL, hint, "explain takes one item: FILE, FILE:ID or FILE ID");
        return;
    }
    if (settings->format == ASFOUND_HTML) {
        session_complain(session, CODE_USAGE, NULL, hint, "--format: there is no html of an explanation");
        return;
    }
    const char *name = settings->operands[0];
    if (settings->operand_count == 2)
        drafting.only = settings->operands[1];
    else
        split_item(session->arena, settings->operands[0], &drafting, &name);
    drafting.names = &name;
    drafting_run(session, settings, &drafting);
}

const struct command command_explain = {
    .name = "explain",
    .summary = "Say why each word of a title and each sentence of a disclosure is there",
    .arguments = "[OPTION...] FILE[:ID] | FILE ID",
    .text = "Drafts as 'asfound draft' does and writes, instead of the listing, where each word of the title "
            "and each "
            "sentence of the disclosure comes from, what each word earns, and what did not fit.\n\n"
            "With an ID, only that item of the FILE is explained; without, every item of it. A FILE of - is "
            "standard "
            "input.",
    .options = OPTION_BIT(OPTION_FROM) | OPTION_BIT(OPTION_FORMAT) | OPTION_BIT(OPTION_RULES) |
               OPTION_BIT(OPTION_DICTIONARIES) | OPTION_BIT(OPTION_LIMIT) | OPTION_BIT(OPTION_LOCALE) |
               OPTION_BIT(OPTION_TODAY) | OPTION_BIT(OPTION_COLOR) | OPTION_BIT(OPTION_STORE) |
               OPTION_BIT(OPTION_QUIET) | OPTION_BIT(OPTION_HELP),
    .takes_files = true,
    .run = run,
};
