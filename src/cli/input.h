// SPDX-License-Identifier: MIT
// One input: a file, or standard input.
#ifndef CLI_INPUT_H
#define CLI_INPUT_H

#include <stdbool.h>
#include <stddef.h>

#include "cli/options.h"
#include "cli/session.h"

struct input {
    const char *name; // "-" is standard input
    enum asfound_input form;
    int file; // -1 when closed
};

// Settles the form of an input, by --from or by its ending. False when there is none that can be read: it has
// been told.
bool input_choose_form(struct session *session, const struct settings *settings, struct input *input);
// False when it cannot be opened or is a folder: it has been told.
bool input_open(struct session *session, struct input *input);
// An asfound_get: `input` is a struct input.
size_t input_get(void *input, char *to, size_t room);
void input_close(struct input *input);

#endif
