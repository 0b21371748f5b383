// SPDX-License-Identifier: MIT
// Texts about the program, all made from the tables of commands, options and forms.
#ifndef CLI_HELP_H
#define CLI_HELP_H

#include "cli/command.h"
#include "text/buf.h"

// A line of a list that stands in the help and in the man page alike.
struct topic {
    const char *name, *text;
};
extern const struct topic STATUS_TOPICS[], ENVIRONMENT_TOPICS[]; // ended by a NULL name

extern const char HELP_TAGLINE[];

void help_overall(struct buf *out);
void help_command(struct buf *out, const struct command *command);
void help_man(struct buf *out);
void help_completion(struct buf *out);

// "--limit=N" and the like, as the user writes it.
const char *help_option_usage(struct arena *arena, const struct option *option);
// ".yaml .yml"
const char *help_form_endings(struct arena *arena, size_t form);

#endif
