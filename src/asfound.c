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

static struct arena_memory memory_of(const struct asfound_memory *memory) {
    return (struct arena_memory){memory->alloc, memory->free, memory->context};
}

struct sink {
    asfound_put *put;
    void *context;
};

static bool send(const struct sink *sink, const char *bytes, size_t size) {
    return !sink->put || !size || sink->put(sink->context, bytes, size);
}

static void keep_errors(struct diags *diags) {
    size_t kept = 0;
    for (size_t i = 0; i < diags->count; i++)
        if (code_entry(diags->items[i].code)->level == LEVEL_ERROR) diags->items[kept++] = diags->items[i];
    diags->count = kept;
}

static void send_messages(const asfound_engine *engine, struct arena *arena, struct diags *diags,
                          const struct sink *sink) {
    struct buf out = buf_start(arena);
    if (engine->quiet) keep_errors(diags);
    diags_print(diags, &out, engine->color);
    send(sink, out.at, out.n);
}

static enum asfound_status out_of_memory(const struct sink *messages) {
    static const char text[] = "asfound: error: memory ran out [memory]\n";
    send(messages, text, sizeof text - 1);
    return ASFOUND_IO;
}

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
    struct sink messages = {options->messages, options->messages_context};
    send_messages(engine, arena, &diags, &messages);
    loading->status = diags.status;
    if (engine->rules && engine->rules->family_count && engine->variants)
        loading->engine = engine;
    else if (!loading->status)
        loading->status = ASFOUND_BROKEN_RULES;
}

enum asfound_status asfound_engine_new(const struct asfound_engine_options *options,
                                       asfound_engine **engine) {
    *engine = NULL;
    struct arena_memory memory = memory_of(&options->memory);
    struct sink messages = {options->messages, options->messages_context};
    struct arena *arena = arena_new(&memory);
    if (!arena) return out_of_memory(&messages);
    struct loading loading = {options, NULL, 0};
    bool finished = arena_try(arena, load, &loading);
    if (!finished || !loading.engine) arena_free(arena);
    if (!finished) return out_of_memory(&messages);
    *engine = loading.engine;
    return (enum asfound_status)loading.status;
}

void asfound_engine_free(asfound_engine *engine) {
    if (engine) arena_free(engine->arena);
}

// --- drafting ---

// Ids seen in one input, as 64-bit hashes: eight bytes a record, so that a long input stays small.
struct id_set {
    uint64_t *slots;
    size_t room, count;
};

static uint64_t id_hash(const char *id) {
    uint64_t h = 14695981039346656037u;
    for (; *id; id++) h = (h ^ (unsigned char)*id) * 1099511628211u;
    return h | 1; // 0 marks an empty slot
}

static bool id_put(uint64_t *slots, size_t room, uint64_t hash) {
    size_t at = (size_t)(hash >> 1) & (room - 1);
    for (; slots[at]; at = (at + 1) & (room - 1))
        if (slots[at] == hash) return false;
    slots[at] = hash;
    return true;
}

static void id_set_free(struct id_set *ids, const struct arena_memory *memory) {
    if (ids->slots) memory->free(memory->context, ids->slots);
    ids->slots = NULL;
}

struct run {
    const asfound_engine *engine;
    const struct asfound_draft_options *options;
    struct arena *records; // reset after each record
    struct stream *stream;
    struct diags diags;
    struct drafter drafter;
    struct day today;
    const struct phrases *phrases;
    struct asked *asked; // of the flaws; NULL until a note is read
    struct id_set ids;
    struct sink out;
    struct buf held; // with a title given: the one listing, until it is known to be the only one
    const char *given;
    size_t number, drafted;
    int status;
    bool more, write_failed;
    const struct note_read *reading; // of the note that is drafted now; NULL for a record
};

// False when the id stood already.
static bool new_id(struct run *run, struct arena *arena, const char *id) {
    struct id_set *ids = &run->ids;
    if (8 * (ids->count + 1) > 7 * ids->room) {
        // Not from the arena, which would keep every table that was outgrown.
        const struct arena_memory *memory = arena_source(arena);
        size_t room = ids->room ? 2 * ids->room : 1024;
        uint64_t *slots = memory->alloc(memory->context, room * sizeof *slots);
        if (!slots) arena_give_up(arena);
        memset(slots, 0, room * sizeof *slots);
        for (size_t i = 0; i < ids->room; i++)
            if (ids->slots[i]) id_put(slots, room, ids->slots[i]);
        id_set_free(ids, memory);
        ids->slots = slots;
        ids->room = room;
    }
    if (!id_put(ids->slots, ids->room, id_hash(id))) return false;
    ids->count++;
    return true;
}

static void write_tree(struct run *run, struct arena *arena, struct buf *out, const struct node *tree) {
    if (run->options->output == ASFOUND_JSON_LINES) {
        json_write(out, tree);
        buf_byte(out, '\n');
    } else {
        buf_text(out, "---\n");
        yaml_write(arena, out, tree);
    }
}

static void write_out(struct run *run, const struct buf *out) {
    if (!send(&run->out, out->at, out->n)) run->write_failed = true;
}

// A title or answers given go with one record; its listing is held back until no other was found.
static bool is_for_one(const struct run *run) {
    return run->given || run->options->answer_count;
}

// YAML is for people to go on with: the record stands in it, with the answers given, to be cut out and kept.
static const struct node *tree_of(const struct run *run, struct arena *arena, const struct listing *listing,
                                  const struct record *record) {
    if (run->options->explain) {
        struct node *why = listing_explain_tree(arena, listing);
        if (run->reading) node_put(arena, why, "readings", readings_tree(arena, run->reading, listing));
        return why;
    }
    struct node *tree = listing_tree(arena, listing);
    if (run->options->output == ASFOUND_YAML_OUT) node_put(arena, tree, "record", record_tree(arena, record));
    return tree;
}

static void write_listing(struct run *run, struct arena *arena, const struct listing *listing,
                          const struct record *record) {
    const struct asfound_draft_options *o = run->options;
    struct buf out = buf_start(arena);
    if (o->output == ASFOUND_JSON_LINES || o->output == ASFOUND_YAML_OUT)
        write_tree(run, arena, &out, tree_of(run, arena, listing, record));
    else if (o->sheet && o->output == ASFOUND_HTML)
        sheet_page(arena, listing, o->today, &out);
    else if (o->sheet)
        sheet_text(arena, listing, o->today, &out);
    else if (o->output == ASFOUND_HTML)
        listing_page(arena, listing, &out);
    else if (o->explain) {
        listing_explain(arena, listing, &out, o->color);
        if (run->reading) readings_text(arena, run->reading, listing, &out, o->color);
    } else
        listing_card(arena, listing, &out, o->color);
    if (is_for_one(run))
        buf_add(&run->held, out.at, out.n);
    else
        write_out(run, &out);
}

static bool only_notes(const struct record *r) {
    return r->notes && !r->type.value && !r->attribute_count && !r->flaw_count && !r->mark_count;
}

static enum locale locale_of(const struct run *run) {
    return run->options->locale == ASFOUND_EN_GB ? LOCALE_GB : LOCALE_US;
}

// A title or answers are given for one record; a note may hold several things.
static bool is_another(struct run *run, const struct record *record) {
    if (!is_for_one(run) || !run->drafted++) return false;
    buf_clear(&run->held);
    run->more = false;
    if (run->drafted == 2)
        diags_add(&run->diags, CODE_USAGE, record->at, "choose the record with --only ID",
                  "%s given for one record, and this is another",
                  run->given ? "a title was" : "answers were");
    return true;
}

static void draft_record(struct run *run, struct arena *arena, const struct record *record) {
    if (is_another(run, record)) return;
    struct title_options options = {run->options->limit ? run->options->limit : 80,
                                    (enum count_unit)run->options->unit, locale_of(run),
                                    run->engine->variants};
    struct record answered = *record;
    if (!answers_apply(arena, run->engine->rules, &answered, run->options->answers,
                       run->options->answer_count, &run->diags))
        return;
    const struct listing *listing = listing_draft(arena, &run->drafter, &answered, &options);
    if (listing_has_must(listing) && run->status < ASFOUND_MUST) run->status = ASFOUND_MUST;
    write_listing(run, arena, listing, &answered);
}

static void write_read(struct run *run, struct arena *arena, const struct note_read *read) {
    if (!run->options->read) {
        run->reading = read;
        draft_record(run, arena, &read->record);
        run->reading = NULL;
        return;
    }
    struct buf out = buf_start(arena);
    if (run->options->output == ASFOUND_HTML)
        readings_page(arena, read, &out);
    else
        write_tree(run, arena, &out, record_tree(arena, &read->record));
    write_out(run, &out);
}

static void draft_one(struct arena *arena, void *context) {
    struct run *run = context;
    struct node *tree = NULL;
    run->more = stream_next(run->stream, arena, &run->diags, &tree);
    if (!run->more) return;
    run->number++;
    if (!tree) return;
    struct record record;
    enum locale locale = locale_of(run);
    if (!record_read(arena, run->engine->rules, tree, locale, run->number, &record, &run->diags)) return;
    if (run->options->only && strcmp(record.id, run->options->only) != 0) return;
    if (!new_id(run, run->diags.arena, record.id)) {
        diags_add(&run->diags, CODE_SAME_ID, record.at, NULL, "the id '%s' stands twice in this input",
                  record.id);
        return;
    }
    if (run->given) record.listing.title = run->given;
    if (!run->options->read && !only_notes(&record)) {
        draft_record(run, arena, &record);
        return;
    }
    if (!run->phrases) run->phrases = phrases_new(run->diags.arena, run->engine->rules);
    if (!run->asked) run->asked = asked_new(run->diags.arena);
    struct note_reader reader = {.rules = run->engine->rules,
                                 .phrases = run->phrases,
                                 .book = run->engine->book,
                                 .scanner = run->drafter.scanner,
                                 .asked = run->asked,
                                 .locale = locale};
    struct notes notes = notes_open(arena, &reader, &record);
    for (size_t i = 0; i < notes.count; i++) {
        struct arena_mark before = arena_mark(arena);
        struct note_read read = notes_read(arena, &reader, &notes, i);
        write_read(run, arena, &read);
        arena_release(arena, &before);
    }
}

static void write_frame(struct run *run, struct arena *arena, bool end) {
    if (run->options->output != ASFOUND_HTML || run->options->no_frame || run->write_failed) return;
    struct buf out = buf_start(arena);
    if (end)
        page_end(&out);
    else
        page_begin(&out);
    if (!send(&run->out, out.at, out.n)) run->write_failed = true;
}

static bool refuse(struct run *run, struct arena *arena, const char *message) {
    diags_add(&run->diags, CODE_USAGE, (struct place){NULL, 0, 0}, NULL, "%s", message);
    struct sink messages = {run->options->messages, run->options->messages_context};
    send_messages(run->engine, arena, &run->diags, &messages);
    run->status = run->diags.status;
    return false;
}

static bool take_today(struct run *run, struct arena *arena) {
    const struct asfound_draft_options *o = run->options;
    bool written = o->output == ASFOUND_TEXT || o->output == ASFOUND_HTML;
    if (o->sheet && (!o->today || !written || o->read || o->explain))
        return refuse(run, arena, "a sheet is of a draft, dated by today, and text or HTML");
    if (!run->options->today) return true;
    if (!day_read(run->options->today, &run->today))
        return refuse(run, arena, "today is no day of the calendar");
    run->drafter.today = &run->today;
    return true;
}

// What is given by a caller is checked as what is read.
static bool take_given(struct run *run, struct arena *arena) {
    const char *title = run->options->given_title;
    if (!title) return true;
    size_t size = strlen(title);
    if (size && utf8_check(title, size) == size && utf8_unwanted(title, size, false) == size) {
        run->given = utf8_nfc(arena, title);
        return true;
    }
    return refuse(run, arena,
                  size ? "the title given holds bytes that are no text" : "the title given is empty");
}

static void draft_all(struct arena *arena, void *context) {
    struct run *run = context;
    run->diags = diags_start(arena);
    run->drafter = (struct drafter){run->engine->rules, run->engine->variants,
                                    scanner_new(arena, run->engine->rules->finder_count), NULL, NULL};
    if (!run->options->read) {
        struct spelling_options spelling = {locale_of(run), run->engine->dictionaries, run->engine->trade,
                                            run->engine->lists, run->engine->rules};
        run->drafter.spelling = spelling_new(arena, &spelling, &run->diags);
    }
    run->held = buf_start(arena);
    if (!take_given(run, arena) || !take_today(run, arena)) return;
    write_frame(run, arena, false);
    for (run->more = true; run->more && !run->write_failed;) {
        bool finished = arena_try(run->records, draft_one, run);
        arena_reset(run->records);
        if (!finished) arena_give_up(arena);
        if (run->options->progress && run->more)
            run->options->progress(run->options->progress_context, run->number);
    }
    if (!send(&run->out, run->held.at, run->held.n)) run->write_failed = true;
    write_frame(run, arena, true);
    struct sink messages = {run->options->messages, run->options->messages_context};
    send_messages(run->engine, arena, &run->diags, &messages);
    if (run->diags.status > run->status) run->status = run->diags.status;
    if (run->write_failed) run->status = ASFOUND_IO;
}

enum asfound_status asfound_draft(const asfound_engine *engine, const struct asfound_draft_options *options,
                                  const char *name, asfound_get *get, void *get_context) {
    struct arena_memory memory = memory_of(&engine->memory);
    struct sink messages = {options->messages, options->messages_context};
    struct stream_source from = {name, get, get_context};
    struct run run = {.engine = engine, .options = options, .out = {options->out, options->out_context}};
    struct arena *work = arena_new(&memory);
    run.records = arena_new(&memory);
    run.stream = stream_open(&from, (enum form)options->input, &memory);
    bool finished = work && run.records && run.stream && arena_try(work, draft_all, &run);
    if (run.stream) stream_close(run.stream);
    if (work) id_set_free(&run.ids, arena_source(work));
    arena_free(run.records);
    arena_free(work);
    return finished ? (enum asfound_status)run.status : out_of_memory(&messages);
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
    struct arena_memory from = memory_of(memory);
    struct arena *arena = arena_new(&from);
    bool finished = arena && arena_try(arena, body, task);
    arena_free(arena);
    return finished ? (enum asfound_status)task->status : out_of_memory(&task->messages);
}

static void send_task(struct task *task, const struct buf *out) {
    if (!send(&task->out, out->at, out->n)) task->status = ASFOUND_IO;
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
    struct task task = {.out = {out, out_context}, .flag = end};
    return run_task(&engine->memory, frame, &task);
}

static void check(struct arena *arena, void *context) {
    struct task *task = context;
    struct diags diags = diags_start(arena);
    struct drafter drafter = {task->engine->rules, task->engine->variants,
                              scanner_new(arena, task->engine->rules->finder_count), NULL, NULL};
    struct proof_counts counts;
    proof_run(arena, &drafter, &counts, &diags);
    send_messages(task->engine, arena, &diags, &task->messages);
    struct buf out = buf_start(arena);
    rules_summary(&out, &counts, diags.status != 0, task->flag);
    task->status = diags.status;
    send_task(task, &out);
}

enum asfound_status asfound_rules_check(const asfound_engine *engine, bool statistics, asfound_put *out,
                                        void *out_context, asfound_put *messages, void *messages_context) {
    struct task task = {engine, {out, out_context}, {messages, messages_context}, NULL, statistics, 0};
    return run_task(&engine->memory, check, &task);
}

static void show(struct arena *arena, void *context) {
    struct task *task = context;
    struct buf out = buf_start(arena);
    struct diags diags = diags_start(arena);
    if (!rules_show(arena, task->engine->rules, task->id, &out, &diags)) task->status = ASFOUND_USAGE;
    send_messages(task->engine, arena, &diags, &task->messages);
    send_task(task, &out);
}

enum asfound_status asfound_rules_show(const asfound_engine *engine, const char *id, asfound_put *out,
                                       void *out_context, asfound_put *messages, void *messages_context) {
    struct task task = {engine, {out, out_context}, {messages, messages_context}, id, false, 0};
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
    send_messages(task->engine, arena, &diags, &task->messages);
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
    struct sink out = {options->out, options->out_context};
    struct sink messages = {options->messages, options->messages_context};
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
    struct task task = {.out = {out, out_context}, .flag = json_schema};
    return run_task(&memory, describe, &task);
}

const char *asfound_version(void) {
    return VERSION;
}
