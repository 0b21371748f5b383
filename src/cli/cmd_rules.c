// SPDX-License-Identifier: MIT
// asfound rules
#include <string.h>

#include "cli/command.h"
#include "text/hint.h"

static const char *const TASKS[] = {"check", "show", "describe", NULL};

static void usage(struct session *session, const char *meant, const char *message) {
    session_complain(session, CODE_USAGE, NULL, command_hint(session->arena, &command_rules, meant), "%s",
                     message);
}

static void check(struct session *session, const struct settings *settings) {
    asfound_engine *engine = session_engine(session, settings);
    if (!engine) return;
    session_raise(session, asfound_rules_check(engine, settings->stats, writer_put, &session->out,
                                               session_put_message, session));
    asfound_engine_free(engine);
}

static void show(struct session *session, const struct settings *settings) {
    const char *id = settings->operands[1];
    if (settings->operand_count == 3) id = arena_format(session->arena, "%s %s", id, settings->operands[2]);
    asfound_engine *engine = session_engine(session, settings);
    if (!engine) return;
    session_raise(session,
                  asfound_rules_show(engine, id, writer_put, &session->out, session_put_message, session));
    asfound_engine_free(engine);
}

static void run(struct session *session, const struct settings *settings) {
    size_t count = settings->operand_count;
    const char *task = count ? settings->operands[0] : NULL;
    if (!task) {
        usage(session, NULL, "rules takes one of check, show and describe");
    } else if (strcmp(task, "check") == 0) {
        if (count > 1)
            usage(session, NULL, "rules check takes no more words; a pack is named with --rules");
        else
            check(session, settings);
    } else if (strcmp(task, "show") == 0) {
        if (count < 2 || count > 3)
            usage(session, NULL, "rules show takes one rule: ID, or KIND ID");
        else
            show(session, settings);
    } else if (strcmp(task, "describe") == 0) {
        if (count > 1)
            usage(session, NULL, "rules describe takes no more words");
        else
            session_raise(session, asfound_rules_describe(settings->schema, writer_put, &session->out));
    } else {
        struct nearest nearest = nearest_start(task);
        for (size_t i = 0; TASKS[i]; i++) nearest_offer(&nearest, TASKS[i]);
        usage(session, nearest.best, arena_format(session->arena, "rules does not know '%s'", task));
    }
}

const struct command command_rules = {
    .name = "rules",
    .summary = "Check the rule packs, show a rule, or describe the keys of rule files",
    .arguments = "[OPTION...] check | show [KIND] ID | describe",
    .text =
        "check runs every rule's own examples and says what does not come out as written.\n\n"
        "show writes one rule as it stands in its file, by its id; a KIND (pack, flaw, family, claim, bound, "
        "caution or group) "
        "before the "
        "id tells rules of one id apart.\n\n"
        "describe writes what each key of each kind of rule means.",
    .words = TASKS,
    .options = OPTION_BIT(OPTION_RULES) | OPTION_BIT(OPTION_STATS) | OPTION_BIT(OPTION_SCHEMA) |
               OPTION_BIT(OPTION_COLOR) | OPTION_BIT(OPTION_QUIET) | OPTION_BIT(OPTION_HELP),
    .run = run,
};
