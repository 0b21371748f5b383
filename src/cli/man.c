// SPDX-License-Identifier: MIT
// The man page, in the macros of man(7). It bears no date: the same program writes the same page on any day.
#include <string.h>

#include "cli/forms.h"
#include "cli/help.h"

// Dashes are typed characters here, quotes are straight, and no line may begin with a control character.
static void roff(struct buf *out, const char *text) {
    bool fresh = !out->n || out->at[out->n - 1] == '\n';
    for (; *text; text++) {
        if (fresh && (*text == '.' || *text == '\'')) buf_text(out, "\\&");
        fresh = *text == '\n';
        if (*text == '-')
            buf_text(out, "\\-");
        else if (*text == '\\')
            buf_text(out, "\\e");
        else if (*text == '\'')
            buf_text(out, "\\(aq");
        else
            buf_byte(out, *text);
    }
}

static void bold(struct buf *out, const char *text) {
    buf_text(out, "\\fB");
    roff(out, text);
    buf_text(out, "\\fR");
}

static void tagged(struct buf *out, const char *name, const char *text) {
    buf_text(out, ".TP\n");
    bold(out, name);
    buf_byte(out, '\n');
    roff(out, text);
    buf_byte(out, '\n');
}

static void topics(struct buf *out, const char *title, const struct topic *topic) {
    buf_format(out, ".SH %s\n", title);
    for (; topic->name; topic++) tagged(out, topic->name, topic->text);
}

// Lines that begin with a space are an example; an empty line begins a paragraph.
static void paragraphs(struct buf *out, const char *text) {
    bool example = false;
    while (*text) {
        const char *end = strchr(text, '\n');
        size_t size = end ? (size_t)(end - text) : strlen(text);
        if (size && (*text == ' ') != example) {
            example = !example;
            buf_text(out, example ? ".PP\n.EX\n" : ".EE\n");
        } else if (size && !example) {
            buf_text(out, ".PP\n");
        }
        if (size) {
            roff(out, arena_copy(out->arena, text, size));
            buf_byte(out, '\n');
        }
        text += size + (end != NULL);
    }
    if (example) buf_text(out, ".EE\n");
}

static void options_of(struct buf *out, const struct command *command) {
    const char *joint = "";
    buf_text(out, ".PP\nOptions: ");
    for (int id = 0; id < OPTION_COUNT; id++) {
        if (!(command->options & OPTION_BIT(id))) continue;
        buf_text(out, joint);
        bold(out, arena_format(out->arena, "--%s", option_entry((enum option_id)id)->name));
        joint = ", ";
    }
    buf_text(out, ".\n");
}

static void commands(struct buf *out) {
    struct buf later = buf_start(out->arena);
    const struct command *command;
    buf_text(out, ".SH COMMANDS\n");
    for (size_t i = 0; (command = command_at(i)); i++) {
        if (!command->run) {
            buf_format(&later, "%s%s", later.n ? ", " : "", command->name);
            continue;
        }
        buf_text(out, ".SS ");
        roff(out, arena_format(out->arena, "asfound %s %s", command->name, command->arguments));
        buf_byte(out, '\n');
        roff(out, command->summary);
        buf_text(out, ".\n");
        paragraphs(out, command->text);
        options_of(out, command);
    }
    buf_text(out, ".SS Not there yet\n");
    roff(out, later.at);
    buf_byte(out, '\n');
}

void help_man(struct buf *out) {
    buf_format(out, ".\\\" Made by asfound help --man\n.TH ASFOUND 1 \"\" \"asfound %s\" \"User Commands\"\n",
               asfound_version());
    buf_text(out, ".SH NAME\nasfound \\- ");
    roff(out, HELP_TAGLINE);
    buf_text(out,
             "\n.SH SYNOPSIS\n\\fBasfound\\fR \\fICOMMAND\\fR [\\fIOPTION\\fR...] [\\fIARGUMENT\\fR...]\n"
             ".SH DESCRIPTION\nResults go to standard output, messages and progress to standard error.\n");
    commands(out);
    buf_text(out, ".SH OPTIONS\n");
    for (int id = 0; id < OPTION_COUNT; id++) {
        const struct option *option = option_entry((enum option_id)id);
        tagged(out, help_option_usage(out->arena, option), option->help);
    }
    buf_text(out, ".PP\nThe value of an option may also be the next word.\n\\fB\\-\\-\\fR ends the options.\n"
                  ".SH FORMS OF INPUT\nBy the ending of a file, or by \\fB\\-\\-from\\fR:\n");
    for (size_t i = 0; i < FORM_TABLE_COUNT; i++)
        tagged(out, help_form_endings(out->arena, i), FORM_TABLE[i].holds);
    topics(out, "EXIT STATUS", STATUS_TOPICS);
    buf_text(out, ".PP\nWhere several hold, the highest.\n");
    topics(out, "ENVIRONMENT", ENVIRONMENT_TOPICS);
}
