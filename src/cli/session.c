// SPDX-License-Identifier: MIT
// Results and messages share a screen: before a message is written, results so far go out and the progress
// line goes away.
#include "cli/session.h"

#include <errno.h>
#include <stdarg.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "cli/data.h"
#include "cli/options.h"
#include "text/diag.h"

// Color that a person asked for by silence: never where the terminal or the environment says no.
static bool wants_color(enum color_choice choice, int file) {
    const char *no = getenv("NO_COLOR"), *term = getenv("TERM");
    if (choice != COLOR_AUTO) return choice == COLOR_ALWAYS;
    if ((no && *no) || (term && strcmp(term, "dumb") == 0)) return false;
    return isatty(file) == 1;
}

void session_start(struct session *session, struct arena *arena, const char *program) {
    session->arena = arena;
    session->program = program;
    session->status = ASFOUND_FINE;
    writer_start(&session->out, STDOUT_FILENO, isatty(STDOUT_FILENO) == 1);
    progress_start(&session->progress, false);
    session_choose(session, COLOR_AUTO, false);
}

void session_choose(struct session *session, enum color_choice color, bool quiet) {
    session->color_out = wants_color(color, STDOUT_FILENO);
    session->color_messages = wants_color(color, STDERR_FILENO);
    session->quiet = quiet;
}

void session_raise(struct session *session, enum asfound_status status) {
    if (status > session->status) session->status = status;
}

bool session_put_message(void *context, const char *bytes, size_t size) {
    struct session *session = context;
    writer_flush(&session->out);
    progress_erase(&session->progress);
    return write_all(STDERR_FILENO, bytes, size) == 0;
}

void session_complain(struct session *session, enum code code, const char *file, const char *hint,
                      const char *format, ...) {
    struct buf message = buf_start(session->arena);
    va_list arguments;
    va_start(arguments, format);
    buf_vformat(&message, format, arguments);
    va_end(arguments);
    struct diags diags = diags_start(session->arena);
    struct source source = {.name = file};
    struct place at = {file ? &source : NULL, 0, 0};
    diags_add(&diags, code, at, hint, "%s", message.at);
    session_raise(session, (enum asfound_status)diags.status);
    if (session->quiet && code_entry(code)->level != LEVEL_ERROR) return;
    struct buf out = buf_start(session->arena);
    diags_print(&diags, &out, session->color_messages);
    session_put_message(session, out.at, out.n);
}

static void tell_lost_output(struct arena *arena, void *context) {
    struct session *session = context;
    (void)arena;
    session_complain(session, CODE_WRITE, NULL, NULL, "standard output: %s", strerror(session->out.error));
}

enum asfound_status session_end(struct session *session) {
    progress_erase(&session->progress);
    if (writer_close(&session->out)) return session->status;
    session_raise(session, ASFOUND_IO);
    if (session->out.error != EPIPE) (void)arena_try(session->arena, tell_lost_output, session);
    return session->status;
}

asfound_engine *session_engine(struct session *session, const struct settings *settings) {
    const char *data = data_folder(session);
    if (!data) return NULL;
    struct asfound_engine_options options = {.data = data,
                                             .packs = settings->packs,
                                             .pack_count = settings->pack_count,
                                             .dictionaries = settings->dictionaries,
                                             .messages = session_put_message,
                                             .messages_context = session,
                                             .color = session->color_messages,
                                             .quiet = session->quiet};
    asfound_engine *engine = NULL;
    session_raise(session, asfound_engine_new(&options, &engine));
    return engine;
}
