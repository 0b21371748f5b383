// SPDX-License-Identifier: MIT
// Plain text for terminals of 80 columns.
#include "cli/help.h"

#include <string.h>

#include "cli/forms.h"

enum { WIDTH = 79, COLUMN = 24 };

const char HELP_TAGLINE[] = "honest listings for one-off secondhand goods, from item records";

const struct topic STATUS_TOPICS[] = {
    {"0", "All is well."},
    {"1", "Done, and a listing holds something that must be settled first."},
    {"2", "The command line was wrong, or asked for what is not there yet."},
    {"3", "A rule pack or a word list is broken."},
    {"4", "An input is broken; what could be read was still done."},
    {"5", "Reading or writing failed, or memory ran out."},
    {NULL, NULL},
};

const struct topic ENVIRONMENT_TOPICS[] = {
    {"ASFOUND_DATA", "The folder that holds 'rules' and 'dict', instead of the one beside the program."},
    {"NO_COLOR", "Where it is set and not empty, nothing is colored unless --color=always says so."},
    {NULL, NULL},
};

const char *help_option_usage(struct arena *arena, const struct option *option) {
    const char *letter = option->letter ? arena_format(arena, "-%s, ", option->letter) : "";
    if (!option->argument) return arena_format(arena, "%s--%s", letter, option->name);
    return arena_format(arena, "%s--%s=%s", letter, option->name, option->argument);
}

const char *help_form_endings(struct arena *arena, size_t form) {
    const char *const *endings = FORM_TABLE[form].endings;
    return endings[1] ? arena_format(arena, "%s %s", endings[0], endings[1]) : endings[0];
}

static void pad(struct buf *out, size_t count) {
    while (count--) buf_byte(out, ' ');
}

// `column` is where the cursor is; further lines begin at `indent`.
static void wrap(struct buf *out, const char *text, size_t column, size_t indent) {
    bool first = true;
    while (*text) {
        size_t word = strcspn(text, " ");
        if (!first && column + 1 + word > WIDTH) {
            buf_byte(out, '\n');
            pad(out, indent);
            column = indent;
        } else if (!first) {
            buf_byte(out, ' ');
            column++;
        }
        buf_add(out, text, word);
        column += word;
        first = false;
        text += word;
        text += strspn(text, " ");
    }
    buf_byte(out, '\n');
}

static void entry(struct buf *out, const char *name, const char *text) {
    size_t used = 2 + strlen(name);
    buf_format(out, "  %s", name);
    if (used + 2 > COLUMN) {
        buf_byte(out, '\n');
        used = 0;
    }
    pad(out, COLUMN - used);
    wrap(out, text, COLUMN, COLUMN);
}

static void topics(struct buf *out, const char *title, const struct topic *topic) {
    buf_format(out, "\n%s:\n", title);
    for (; topic->name; topic++) entry(out, topic->name, topic->text);
}

static void paragraphs(struct buf *out, const char *text) {
    while (*text) {
        const char *end = strchr(text, '\n');
        size_t size = end ? (size_t)(end - text) : strlen(text);
        if (*text == ' ' || !size)
            buf_format(out, "%.*s\n", (int)size, text);
        else
            wrap(out, arena_copy(out->arena, text, size), 0, 0);
        text += size + (end != NULL);
    }
}

void help_overall(struct buf *out) {
    buf_format(out, "usage: asfound COMMAND [OPTION...] [ARGUMENT...]\n\nasfound: %s\n\nCommands:\n",
               HELP_TAGLINE);
    const struct command *command;
    struct buf later = buf_start(out->arena);
    for (size_t i = 0; (command = command_at(i)); i++) {
        if (command->run)
            entry(out, command->name, command->summary);
        else
            buf_format(&later, "%s%s", later.n ? ", " : "", command->name);
    }
    buf_text(out, "\nNot there yet:\n  ");
    wrap(out, later.at, 2, 2);
    buf_text(out, "\nForms of input, by the ending of a file or by --from:\n");
    for (size_t i = 0; i < FORM_TABLE_COUNT; i++)
        entry(out, help_form_endings(out->arena, i), FORM_TABLE[i].holds);
    topics(out, "Exit status, the highest that holds", STATUS_TOPICS);
    topics(out, "Environment", ENVIRONMENT_TOPICS);
    buf_text(out, "\nSee 'asfound COMMAND --help' for the options of a command.\n");
}

void help_command(struct buf *out, const struct command *command) {
    buf_format(out, "usage: asfound %s%s%s\n\n", command->name, *command->arguments ? " " : "",
               command->arguments);
    paragraphs(out, command->text);
    buf_text(out, "\nOptions:\n");
    for (int id = 0; id < OPTION_COUNT; id++) {
        const struct option *option = option_entry((enum option_id)id);
        if (command->options & OPTION_BIT(id))
            entry(out, help_option_usage(out->arena, option), option->help);
    }
}
