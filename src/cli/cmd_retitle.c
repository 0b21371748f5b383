// SPDX-License-Identifier: MIT
// asfound retitle
#include <sys/stat.h>
#include <unistd.h>

#include "cli/command.h"
#include "cli/input.h"

struct watched {
    struct session *session;
    struct input *input;
    double size, read; // bytes; a size of 0 is not known
};

static size_t get(void *context, char *to, size_t room) {
    struct watched *watched = context;
    size_t got = input_get(watched->input, to, room);
    if (got != (size_t)-1) watched->read += (double)got;
    return got;
}

static void show_progress(void *context, size_t rows) {
    const struct watched *w = context;
    progress_show_rows(&w->session->progress, rows, w->size > 0 ? w->read / w->size : 0);
}

static double size_of(const struct input *input) {
    struct stat about;
    return fstat(input->file, &about) == 0 && S_ISREG(about.st_mode) ? (double)about.st_size : 0;
}

static long given(size_t number) {
    return number ? (long)number - 1 : -1;
}

static size_t jobs_of(const struct settings *s) {
    long processors = s->shelf.jobs ? (long)s->shelf.jobs : sysconf(_SC_NPROCESSORS_ONLN);
    return processors < 1 ? 1 : (size_t)processors;
}

static void retitle(struct session *session, const struct settings *s, asfound_engine *engine,
                    struct input *input) {
    const struct shelf_settings *shelf = &s->shelf;
    struct watched watched = {session, input, size_of(input), 0};
    struct asfound_retitle_options options = {
        .map = shelf->map,
        .explain_columns = shelf->explain_columns,
        .limit = s->limit,
        .unit = s->unit,
        .locale = s->locale,
        .today = s->today,
        .older_than = given(shelf->older_than),
        .views_under = given(shelf->views_under),
        .earned_under = given(shelf->earned_under),
        .category = shelf->category,
        .price_from = shelf->price_given ? shelf->price_from : -1,
        .price_to = shelf->price_given ? shelf->price_to : -1,
        .hold_back = shelf->hold_back ? (unsigned)(shelf->hold_back - 1) * 100 : 0,
        .seed = shelf->seed,
        .workers = jobs_of(s),
        .out = writer_put,
        .messages = session_put_message,
        .out_context = &session->out,
        .messages_context = session,
        .progress = show_progress,
        .progress_context = &watched,
    };
    session_raise(session, asfound_retitle(engine, &options, input->name, get, &watched));
}

static void run(struct session *session, const struct settings *settings) {
    if (settings->operand_count != 1) {
        session_complain(session, CODE_USAGE, NULL, command_hint(session->arena, &command_retitle, NULL),
                         "retitle takes one stock file, or - for standard input");
        return;
    }
    struct input input = {.name = settings->operands[0], .file = -1};
    if (!input_open(session, &input)) return;
    asfound_engine *engine = session_engine(session, settings);
    if (engine) retitle(session, settings, engine, &input);
    asfound_engine_free(engine);
    input_close(&input);
}

const struct command command_retitle = {
    .name = "retitle",
    .summary = "Propose new titles for stale stock",
    .arguments = "[OPTION...] SHELF.csv",
    .text =
        "Reads a stock file of any header and writes a proposal for each stale title, as CSV: what it earns, "
        "a title "
        "that earns more, what that adds and drops, and why. A word that no rule understood, a name, a "
        "number and a "
        "mark of the old title stay in the new one. What is stale is said by the options; all rows are "
        "unless told. "
        "A summary goes to standard error.\n\n"
        "A search that the old title answered all that time without a sale counts less when choosing (its "
        "weight by "
        "180/(180 + days)), so that the new title tries others; it counts in full in what a title earns.\n\n"
        "Look the proposals over, write yes into the column approve where you agree, and go on with 'asfound "
        "apply'.",
    .options = OPTION_BIT(OPTION_MAP) | OPTION_BIT(OPTION_EXPLAIN_COLUMNS) | OPTION_BIT(OPTION_OLDER_THAN) |
               OPTION_BIT(OPTION_VIEWS_UNDER) | OPTION_BIT(OPTION_EARNED_UNDER) |
               OPTION_BIT(OPTION_CATEGORY) | OPTION_BIT(OPTION_PRICE) | OPTION_BIT(OPTION_HOLD_BACK) |
               OPTION_BIT(OPTION_SEED) | OPTION_BIT(OPTION_JOBS) | OPTION_BIT(OPTION_TODAY) |
               OPTION_BIT(OPTION_LIMIT) | OPTION_BIT(OPTION_LOCALE) | OPTION_BIT(OPTION_RULES) |
               OPTION_BIT(OPTION_DICTIONARIES) | OPTION_BIT(OPTION_COLOR) | OPTION_BIT(OPTION_QUIET) |
               OPTION_BIT(OPTION_HELP),
    .takes_files = true,
    .run = run,
};
