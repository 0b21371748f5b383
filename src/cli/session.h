// SPDX-License-Identifier: MIT
// What one run of the command holds: its output, its messages and the status it will end with.
//
// Owner: main() makes and ends it. Commands run inside arena_try() of `arena`, so nothing here needs a NULL
// check.
#ifndef CLI_SESSION_H
#define CLI_SESSION_H

#include <stdbool.h>
#include <stddef.h>

#include "asfound.h"
#include "cli/progress.h"
#include "cli/writer.h"
#include "text/arena.h"
#include "text/codes.h"

enum color_choice { COLOR_AUTO, COLOR_ALWAYS, COLOR_NEVER };

struct session {
    struct arena *arena;
    const char *program; // argv[0]
    struct writer out;
    struct progress progress;
    bool color_out, color_messages;
    bool quiet;
    enum asfound_status status; // the highest so far
};

void session_start(struct session *session, struct arena *arena, const char *program);
// What the options say about color and quiet, once they are known.
void session_choose(struct session *session, enum color_choice color, bool quiet);
// Writes out what is left; a failure is told, but for a reader that went away.
enum asfound_status session_end(struct session *session);

void session_raise(struct session *session, enum asfound_status status);
// One message, in the form of all messages. `file` is the input that it is about, or NULL; `hint` may be
// NULL.
void session_complain(struct session *session, enum code code, const char *file, const char *hint,
                      const char *format, ...) TEXT_PRINTF(5, 6);
// An asfound_put for messages: `session` is a struct session.
bool session_put_message(void *session, const char *bytes, size_t size);

struct settings;
// The engine, with the packs and dictionaries given; NULL when there is none to be had, which has been told.
asfound_engine *session_engine(struct session *session, const struct settings *settings);

#endif
