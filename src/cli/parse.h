// SPDX-License-Identifier: MIT
// The words after a command's name.
#ifndef CLI_PARSE_H
#define CLI_PARSE_H

#include "cli/command.h"

// False when something was wrong: all of it has been told. The operands keep their order; options may stand
// among them,
// `--` ends the options; a lone `-` is an operand, and so is `-:ID`.
bool parse_arguments(struct session *session, const struct command *command, int count,
                     const char *const *words, struct settings *settings);

#endif
