// SPDX-License-Identifier: MIT
// asfound date
#include <string.h>

#include "cli/command.h"
#include "cli/input.h"
#include "text/buf.h"
#include "text/limits.h"

struct marks {
    const char **at;
    size_t count, room;
};

static void add(struct arena *arena, struct marks *marks, const char *mark) {
    marks->at = arena_grow(arena, (void *)marks->at, marks->count, &marks->room, sizeof *marks->at);
    marks->at[marks->count++] = mark;
}

// A mark a line; empty lines say nothing. A byte that no text holds stays where it is, to be told.
static void add_lines(struct session *session, struct marks *marks) {
    struct input input = {.name = "-", .file = -1};
    struct buf text = buf_start(session->arena);
    char bytes[4096];
    if (!input_open(session, &input)) return;
    for (size_t got; (got = input_get(&input, bytes, sizeof bytes)) > 0;) {
        if (got == (size_t)-1) {
            session_complain(session, CODE_READ, input.name, NULL, "standard input cannot be read");
            return;
        }
        buf_add(&text, bytes, got);
        if (text.n > LIMIT_RECORD_BYTES) {
            session_complain(session, CODE_TOO_LARGE, input.name, NULL, "these are too many marks");
            return;
        }
    }
    for (size_t from = 0, to; from < text.n; from = to + 1) {
        const char *end = memchr(text.at + from, '\n', text.n - from);
        to = end ? (size_t)(end - text.at) : text.n;
        size_t size = to - from;
        if (size && text.at[to - 1] == '\r') size--;
        if (size) add(session->arena, marks, arena_copy(session->arena, text.at + from, size));
    }
}

static void date(struct session *session, const struct settings *settings, const struct marks *marks) {
    asfound_engine *engine = session_engine(session, settings);
    if (!engine) return;
    struct asfound_date_options options = {
        .marks = marks->at,
        .mark_count = marks->count,
        .today = settings->today,
        .output = settings->format,
        .table = settings->table,
        .out = writer_put,
        .messages = session_put_message,
        .out_context = &session->out,
        .messages_context = session,
    };
    session_raise(session, asfound_date(engine, &options));
    asfound_engine_free(engine);
}

static void run(struct session *session, const struct settings *settings) {
    const char *hint = command_hint(session->arena, &command_date, NULL);
    struct marks marks = {NULL, 0, 0};
    if (settings->format == ASFOUND_HTML) {
        session_complain(session, CODE_USAGE, NULL, hint, "--format: there is no html of years");
        return;
    }
    bool lines = false;
    for (size_t i = 0; i < settings->operand_count; i++) {
        const char *mark = settings->operands[i];
        if (strcmp(mark, "-") != 0)
            add(session->arena, &marks, mark);
        else if (!lines)
            add_lines(session, &marks);
        lines |= !strcmp(mark, "-");
    }
    if (session->status) return;
    if (settings->table && marks.count)
        session_complain(session, CODE_USAGE, NULL, hint,
                         "--table: it lists what is known, and takes no marks");
    else if (!marks.count && !settings->table)
        session_complain(session, CODE_USAGE, NULL, hint,
                         "date takes the marks found on a thing, or - for lines");
    else
        date(session, settings, &marks);
}

const struct command command_date = {
    .name = "date",
    .summary = "Tell the years in which marks found on a thing were used, and why",
    .arguments = "[OPTION...] MARK... | - | --table",
    .text =
        "Each MARK is what stands on the thing: words, a number with its label, an address, or a few words "
        "for a sign ('CE mark', 'registration diamond, top S, right 6'). Of each is told in which years such "
        "marks were used, how sure that is and where it comes from; the years that fit all of them come "
        "first. Where none does, both sides are told and nothing is chosen.\n\n"
        "A MARK of - is standard input, a mark a line. A check digit that does not hold is told, and its "
        "number narrows nothing.\n\n"
        "The status is 1 where no year fits, or where a mark is younger than --today.",
    .options = OPTION_BIT(OPTION_FORMAT) | OPTION_BIT(OPTION_RULES) | OPTION_BIT(OPTION_TODAY) |
               OPTION_BIT(OPTION_TABLE) | OPTION_BIT(OPTION_COLOR) | OPTION_BIT(OPTION_QUIET) |
               OPTION_BIT(OPTION_HELP),
    .run = run,
};
