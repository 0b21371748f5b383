// SPDX-License-Identifier: MIT
// Looks the command up and lets it run.
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <string.h>
#include <unistd.h>

#include "cli/help.h"
#include "cli/parse.h"

struct call {
    struct session session;
    int count;
    const char *const *words; // behind the program's name
};

static void give_help(struct session *session, const struct command *command) {
    struct buf out = buf_start(session->arena);
    if (command)
        help_command(&out, command);
    else
        help_overall(&out);
    writer_put(&session->out, out.at, out.n);
}

static void run_command(struct call *call, const struct command *command) {
    struct session *session = &call->session;
    struct settings settings = {0};
    if (!command->run) {
        command_not_yet(session, command);
        return;
    }
    if (!parse_arguments(session, command, call->count - 1, call->words + 1, &settings)) return;
    session_choose(session, settings.color, settings.quiet);
    bool watched = isatty(STDERR_FILENO) == 1 && isatty(STDOUT_FILENO) != 1;
    progress_start(&session->progress, watched && !settings.quiet);
    if (settings.help)
        give_help(session, command);
    else
        command->run(session, &settings);
}

static void run(struct arena *arena, void *context) {
    struct call *call = context;
    struct session *session = &call->session;
    (void)arena;
    const char *word = call->count ? call->words[0] : NULL;
    if (!word) {
        session_complain(session, CODE_USAGE, NULL, command_hint(arena, NULL, NULL), "a command is wanted");
    } else if (strcmp(word, "--help") == 0 || strcmp(word, "-h") == 0) {
        give_help(session, NULL);
    } else if (strcmp(word, "--version") == 0) {
        command_version.run(session, &(struct settings){0});
    } else if (word[0] == '-') {
        session_complain(session, CODE_USAGE, NULL, command_hint(arena, NULL, NULL),
                         "a command stands before the options, and '%s' is none", word);
    } else {
        const struct command *command = command_find(session, word);
        if (command) run_command(call, command);
    }
}

// A closed standard stream must not be handed to the next file that is opened; the stand-in fails when it is
// used.
static void occupy_standard_streams(void) {
    for (int file = STDIN_FILENO; file <= STDERR_FILENO; file++)
        if (fcntl(file, F_GETFD) < 0 && errno == EBADF)
            (void)open("/dev/null", file == STDIN_FILENO ? O_WRONLY : O_RDONLY);
}

int main(int argc, char **argv) {
    static const char no_memory[] = "asfound: error: memory ran out [memory]\n";
    struct call call = {.count = argc > 0 ? argc - 1 : 0, .words = (const char *const *)argv + 1};
    occupy_standard_streams();
    signal(SIGPIPE, SIG_IGN);
    struct arena *arena = arena_new(NULL);
    enum asfound_status status = ASFOUND_IO;
    if (arena) {
        session_start(&call.session, arena, argc > 0 ? argv[0] : "asfound");
        if (!arena_try(arena, run, &call)) {
            session_raise(&call.session, ASFOUND_IO);
            session_put_message(&call.session, no_memory, sizeof no_memory - 1);
        }
        status = session_end(&call.session);
    } else {
        write_all(STDERR_FILENO, no_memory, sizeof no_memory - 1);
    }
    arena_free(arena);
    return (int)status;
}
