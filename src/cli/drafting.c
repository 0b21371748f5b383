// SPDX-License-Identifier: MIT
// Forms are settled for all inputs before the rules are loaded: a slip of the keyboard is told at once.
#include "cli/drafting.h"

#include <unistd.h>

#include "cli/input.h"

struct run {
    struct session *session;
    const struct settings *settings;
    const struct drafting *drafting;
    asfound_engine *engine;
    bool page_begun;
};

static void show_progress(void *context, size_t done) {
    struct session *session = context;
    progress_show(&session->progress, done);
}

static struct asfound_draft_options draft_options(const struct run *run, const struct input *input) {
    const struct settings *s = run->settings;
    struct session *session = run->session;
    return (struct asfound_draft_options){
        .limit = s->limit,
        .unit = s->unit,
        .locale = s->locale,
        .input = input->form,
        .output = s->format,
        .color = session->color_out,
        .sheet = s->sheet,
        .explain = run->drafting->explain,
        .read = run->drafting->read,
        .only = run->drafting->only,
        .given_title = s->title,
        .today = s->today,
        .answers = s->answers,
        .answer_count = s->answer_count,
        .no_frame = true,
        .out = writer_put,
        .messages = session_put_message,
        .out_context = &session->out,
        .messages_context = session,
        .progress = show_progress,
        .progress_context = session,
    };
}

static void frame_page(struct run *run, bool end) {
    if (run->settings->format != ASFOUND_HTML || run->page_begun != end) return;
    run->page_begun = true;
    struct session *session = run->session;
    enum asfound_status status = asfound_page_frame(run->engine, end, writer_put, &session->out);
    session_raise(session, status);
    // The call has no place for messages; a write that failed is told at the end.
    if (status == ASFOUND_IO && !session->out.error)
        session_complain(session, CODE_MEMORY, NULL, NULL, "memory ran out");
}

static void draft_input(struct run *run, struct input *input) {
    struct session *session = run->session;
    if (!input_open(session, input)) return;
    frame_page(run, false);
    size_t before = session->out.total;
    struct asfound_draft_options options = draft_options(run, input);
    enum asfound_status status = asfound_draft(run->engine, &options, input->name, input_get, input);
    session_raise(session, status);
    input_close(input);
    progress_next(&session->progress);
    if (options.only && session->out.total == before && status != ASFOUND_IO)
        session_complain(session, CODE_USAGE, input->name, NULL, "there is no item '%s' to be read in it",
                         options.only);
}

bool drafting_inputs(struct session *session, const struct settings *settings, const struct command *command,
                     struct drafting *drafting) {
    static const char *const standard_input[] = {"-"};
    drafting->names = settings->operands;
    drafting->count = settings->operand_count;
    if (drafting->count) return true;
    if (isatty(STDIN_FILENO) == 1) {
        session_complain(session, CODE_USAGE, NULL, command_hint(session->arena, command, NULL),
                         "there is no FILE to read, and standard input is a terminal");
        return false;
    }
    drafting->names = standard_input;
    drafting->count = 1;
    return true;
}

void drafting_run(struct session *session, const struct settings *settings, const struct drafting *drafting) {
    struct input *inputs = arena_array(session->arena, drafting->count + 1, sizeof *inputs);
    size_t count = 0;
    for (size_t i = 0; i < drafting->count; i++) {
        inputs[count] = (struct input){.name = drafting->names[i], .file = -1};
        if (input_choose_form(session, settings, &inputs[count])) count++;
    }
    if (!count) return;
    struct run run = {.session = session, .settings = settings, .drafting = drafting};
    run.engine = session_engine(session, settings);
    if (!run.engine) return;
    for (size_t i = 0; i < count && !session->out.error; i++) draft_input(&run, &inputs[i]);
    frame_page(&run, true);
    asfound_engine_free(run.engine);
}
