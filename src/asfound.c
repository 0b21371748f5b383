// SPDX-License-Identifier: MIT
// The public library: the rooms behind opaque handles. Every entry point opens its own arenas, so an engine
// is never written to after it was made, and memory that runs out ends the call with a status and nothing
// leaked.
#include "asfound.h"

#include <stdint.h>
#include <string.h>

#include "engine.h"
#include "format/stream.h"
#include "format/write.h"
#include "item/write.h"
#include "listing/date_table.h"
#include "listing/sheet.h"
#include "listing/answers.h"
#include "listing/dates.h"
#include "listing/listing.h"
#include "listing/readings.h"
#include "listing/rules_text.h"
#include "listing/spelling.h"
#include "notes/read.h"
#include "rules/folder.h"
#include "text/limits.h"

#define VERSION "0.1.0"

// --- engine ---

struct loading {
    const struct asfound_engine_options *options;
    asfound_engine *engine;
    int status;
};

static void load(struct arena *arena, void *context) {
    struct loading *loading = context;
    const struct asfound_engine_options *options = loading->options;
    struct diags diags = diags_start(arena);
    asfound_engine *engine = arena_alloc(arena, sizeof *engine);
    engine->arena = arena;
    engine->memory = options->memory;
    engine->color = options->color;
    engine->quiet = options->quiet;
    const char **folders = arena_array(arena, options->pack_count + 1, sizeof *folders);
    folders[0] = arena_format(arena, "%s/rules/core", options->data);
    for (size_t i = 0; i < options->pack_count; i++) folders[i + 1] = options->packs[i];
    engine->rules = ruleset_load(arena, folders, options->pack_count + 1, &diags);
    const char *path = arena_format(arena, "%s/dict/us-gb.txt", options->data);
    const struct source *words = folder_read_file(arena, path, LIMIT_RULE_FILE_BYTES, &diags);
    engine->variants = words ? variants_load(arena, words->name, words->text, words->size, &diags) : NULL;
    path = arena_format(arena, "%s/dict/trade.txt", options->data);
    words = folder_read_file(arena, path, LIMIT_RULE_FILE_BYTES, &diags);
    engine->trade = words ? trade_read(arena, words, &diags) : NULL;
    engine->dictionaries = options->dictionaries ? arena_string(arena, options->dictionaries) : NULL;
    engine->book = wordbook_open(arena, arena_format(arena, "%s/wordbook.bin", options->data), &diags);
    if (engine->rules) engine->lists = spelling_lists_new(arena, engine->rules, engine->book);
    struct sink messages = {options->messages, options->messages_context, options->color, options->quiet};
    sink_tell(&messages, arena, &diags);
    loading->status = diags.status;
    if (engine->rules && engine->rules->family_count && engine->variants)
        loading->engine = engine;
    else if (!loading->status)
        loading->status = ASFOUND_BROKEN_RULES;
}

enum asfound_status asfound_engine_new(const struct asfound_engine_options *options,
                                       asfound_engine **engine) {
    *engine = NULL;
    struct arena_memory memory = engine_memory(&options->memory);
    struct sink messages = {options->messages, options->messages_context, options->color, options->quiet};
    struct arena *arena = arena_new(&memory);
    if (!arena) return sink_no_memory(&messages);
    struct loading loading = {options, NULL, 0};
    bool finished = arena_try(arena, load, &loading);
    if (!finished || !loading.engine) arena_free(arena);
    if (!finished) return sink_no_memory(&messages);
    *engine = loading.engine;
    return (enum asfound_status)loading.status;
}

void asfound_engine_free(asfound_engine *engine) {
    if (engine) arena_free(engine->arena);
}

// --- texts about the rules ---

struct task {
    const asfound_engine *engine;
    struct sink out, messages;
    const char *id;
    bool flag;
    int status;
};

static enum asfound_status run_task(const struct asfound_memory *memory, void (*body)(struct arena *, void *),
                                    struct task *task) {
    struct arena_memory from = engine_memory(memory);
    struct arena *arena = arena_new(&from);
    bool finished = arena && arena_try(arena, body, task);
    arena_free(arena);
    return finished ? (enum asfound_status)task->status : sink_no_memory(&task->messages);
}

static void send_task(struct task *task, const struct buf *out) {
    if (!sink_put(&task->out, out->at, out->n)) task->status = ASFOUND_IO;
}

static void frame(struct arena *arena, void *context) {
    struct task *task = context;
    struct buf out = buf_start(arena);
    if (task->flag)
        page_end(&out);
    else
        page_begin(&out);
    send_task(task, &out);
}

enum asfound_status asfound_page_frame(const asfound_engine *engine, bool end, asfound_put *out,
                                       void *out_context) {
    struct task task = {.out = {out, out_context, false, false}, .flag = end};
    return run_task(&engine->memory, frame, &task);
}

static void check(struct arena *arena, void *context) {
    struct task *task = context;
    struct diags diags = diags_start(arena);
    struct drafter drafter = {task->engine->rules, task->engine->variants,
                              scanner_new(arena, task->engine->rules->finder_count), NULL, NULL};
    struct proof_counts counts;
    proof_run(arena, &drafter, &counts, &diags);
    sink_tell(&task->messages, arena, &diags);
    struct buf out = buf_start(arena);
    rules_summary(&out, &counts, diags.status != 0, task->flag);
    task->status = diags.status;
    send_task(task, &out);
}

enum asfound_status asfound_rules_check(const asfound_engine *engine, bool statistics, asfound_put *out,
                                        void *out_context, asfound_put *messages, void *messages_context) {
    struct sink to = {out, out_context, false, false},
                told = engine_messages(engine, messages, messages_context);
    struct task task = {engine, to, told, NULL, statistics, 0};
    return run_task(&engine->memory, check, &task);
}

static void show(struct arena *arena, void *context) {
    struct task *task = context;
    struct buf out = buf_start(arena);
    struct diags diags = diags_start(arena);
    if (!rules_show(arena, task->engine->rules, task->id, &out, &diags)) task->status = ASFOUND_USAGE;
    sink_tell(&task->messages, arena, &diags);
    send_task(task, &out);
}

enum asfound_status asfound_rules_show(const asfound_engine *engine, const char *id, asfound_put *out,
                                       void *out_context, asfound_put *messages, void *messages_context) {
    struct sink to = {out, out_context, false, false},
                told = engine_messages(engine, messages, messages_context);
    struct task task = {engine, to, told, id, false, 0};
    return run_task(&engine->memory, show, &task);
}

struct dating_task {
    struct task task; // first: what run_task() is given
    const struct asfound_date_options *options;
};

// What is given by a caller is checked as what is read.
static const char *take_mark(struct arena *arena, const char *mark, struct diags *diags) {
    size_t size = strlen(mark);
    if (size && utf8_check(mark, size) == size && utf8_unwanted(mark, size, false) == size)
        return utf8_nfc(arena, mark);
    diags_add(diags, CODE_USAGE, (struct place){NULL, 0, 0}, NULL, "a mark %s",
              size ? "holds bytes that are no text" : "is empty");
    return NULL;
}

static void put_dates(struct buf *out, enum asfound_output output, struct node *tree) {
    if (output == ASFOUND_YAML_OUT)
        yaml_write(out->arena, out, tree);
    else
        json_write(out, tree);
    if (!out->n || out->at[out->n - 1] != '\n') buf_byte(out, '\n');
}

static void date_marks(struct arena *arena, void *context) {
    struct dating_task *dating = context;
    struct task *task = &dating->task;
    const struct asfound_date_options *o = dating->options;
    struct diags diags = diags_start(arena);
    const char **marks = arena_array(arena, o->mark_count + 1, sizeof *marks);
    for (size_t i = 0; i < o->mark_count; i++) marks[i] = take_mark(arena, o->marks[i], &diags);
    struct day today = {0, 0, 0};
    if (o->today && !day_read(o->today, &today))
        diags_add(&diags, CODE_USAGE, (struct place){NULL, 0, 0}, NULL, "today is no day of the calendar");
    sink_tell(&task->messages, arena, &diags);
    task->status = diags.status;
    if (task->status) return;
    struct scanner *scanner = scanner_new(arena, task->engine->rules->finder_count);
    const struct ruleset *rules = task->engine->rules;
    const struct dating *found = dating_of_marks(arena, scanner, rules, marks, o->mark_count, &today);
    struct buf out = buf_start(arena);
    if (o->output == ASFOUND_TEXT && o->table)
        date_table_text(&out, rules);
    else if (o->output == ASFOUND_TEXT)
        dates_text(&out, found);
    else
        put_dates(&out, o->output, o->table ? date_table_tree(arena, rules) : dates_tree(arena, found, true));
    task->status = !o->table && dates_must(found) ? ASFOUND_MUST : ASFOUND_FINE;
    send_task(task, &out);
}

enum asfound_status asfound_date(const asfound_engine *engine, const struct asfound_date_options *options) {
    struct sink out = {options->out, options->out_context, false, false};
    struct sink messages = engine_messages(engine, options->messages, options->messages_context);
    struct dating_task dating = {.task = {.engine = engine, .out = out, .messages = messages},
                                 .options = options};
    return run_task(&engine->memory, date_marks, &dating.task);
}

static void describe(struct arena *arena, void *context) {
    struct task *task = context;
    struct buf out = buf_start(arena);
    if (task->flag)
        rules_schema_json(arena, &out);
    else
        rules_describe(arena, &out);
    send_task(task, &out);
}

enum asfound_status asfound_rules_describe(bool json_schema, asfound_put *out, void *out_context) {
    struct asfound_memory memory = {NULL, NULL, NULL};
    struct task task = {.out = {out, out_context, false, false}, .flag = json_schema};
    return run_task(&memory, describe, &task);
}

const char *asfound_version(void) {
    return VERSION;
}
