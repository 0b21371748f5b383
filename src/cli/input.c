// SPDX-License-Identifier: MIT
// A folder can be opened like a file and fails only when it is read; so it is looked at first, to say what is
// wrong.
#include "cli/input.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "cli/forms.h"

static bool is_standard_input(const struct input *input) {
    return strcmp(input->name, "-") == 0;
}

bool input_choose_form(struct session *session, const struct settings *settings, struct input *input) {
    static const char see[] = "say its form with --from: yaml, json, ndjson, csv or txt";
    struct stat about;
    if (settings->from_given) {
        input->form = settings->from;
    } else if (is_standard_input(input)) {
        session_complain(session, CODE_USAGE, input->name, see,
                         "standard input has no ending to tell its form by");
        return false;
    } else if (!form_of_file(input->name, &input->form)) {
        // A folder or a file that is not there has a worse fault than its ending, which opening it will tell.
        if (stat(input->name, &about) < 0 || S_ISDIR(about.st_mode)) return true;
        session_complain(session, CODE_USAGE, input->name, see, "its ending tells no form");
        return false;
    }
    return true;
}

static bool open_failed(struct session *session, struct input *input, const char *hint, const char *why) {
    session_complain(session, CODE_OPEN, input->name, hint, "%s", why);
    input_close(input);
    return false;
}

bool input_open(struct session *session, struct input *input) {
    input->file =
        is_standard_input(input) ? STDIN_FILENO : open(input->name, O_RDONLY | O_CLOEXEC | O_NOCTTY);
    struct stat about;
    if (input->file < 0 || fstat(input->file, &about) < 0)
        return open_failed(session, input, NULL, strerror(errno));
    if (S_ISDIR(about.st_mode))
        return open_failed(session, input, "name the files in it", "this is a folder, not a file");
    return true;
}

size_t input_get(void *context, char *to, size_t room) {
    struct input *input = context;
    for (;;) {
        ssize_t got = read(input->file, to, room);
        if (got >= 0) return (size_t)got;
        if (errno != EINTR) return (size_t)-1;
    }
}

void input_close(struct input *input) {
    if (input->file > STDIN_FILENO) close(input->file);
    input->file = -1;
}
