// SPDX-License-Identifier: MIT
// Names promised for later: kept free, so that no script has to change its words when they come.
#include "cli/command.h"

const struct command LATER_COMMANDS[] = {
    {.name = "check", .summary = "Hold a listing against its own record"},
    {.name = "learn", .summary = "Learn from sales what words are worth"},
    {.name = "outcomes", .summary = "Ask whether new titles sold faster"},
    {.name = "serve", .summary = "Show the same as a local web page"},
};
const size_t LATER_COUNT = sizeof LATER_COMMANDS / sizeof *LATER_COMMANDS;
