// SPDX-License-Identifier: MIT
// The public library's part for drafts: an input of records or notes, a listing for each in its order.
#include <stdint.h>
#include <string.h>

#include "engine.h"
#include "format/stream.h"
#include "format/write.h"
#include "item/write.h"
#include "listing/answers.h"
#include "listing/listing.h"
#include "listing/readings.h"
#include "listing/sheet.h"
#include "notes/read.h"

// What reading a batch may take: a few long notes end it early. A byte of a note takes about so many.
static const size_t BATCH_BYTES = (size_t)8 << 20, BYTES_A_BYTE = 80;

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

// A record that was read and waits for its draft.
struct ready {
    struct note_work *work;       // NULL: a record that is no note
    const struct note_read *read; // of a note
    const struct record *record;
    size_t number; // of the piece of the input that it stands in
};

struct run {
    const asfound_engine *engine;
    const struct asfound_draft_options *options;
    struct arena *records; // reset after each batch
    struct stream *stream;
    struct ready *ready;         // ENGINE_BATCH of them
    size_t ready_count, waiting; // and the bytes of their notes
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
    if (!sink_put(&run->out, out->at, out->n)) run->write_failed = true;
}

// A title or answers given go with one record; its listing is held back until no other was found.
static bool is_for_one(const struct run *run) {
    return run->given || run->options->answer_count;
}

// YAML is for people to go on with: the record stands in it, with the answers given, to be cut out and kept.
static const struct node *tree_of(const struct run *run, struct arena *arena, const struct listing *listing,
                                  const struct record *record, const struct note_read *reading) {
    if (run->options->explain) {
        struct node *why = listing_explain_tree(arena, listing);
        if (reading) node_put(arena, why, "readings", readings_tree(arena, reading, listing));
        return why;
    }
    struct node *tree = listing_tree(arena, listing);
    if (run->options->output == ASFOUND_YAML_OUT) node_put(arena, tree, "record", record_tree(arena, record));
    return tree;
}

static void write_listing(struct run *run, struct arena *arena, const struct listing *listing,
                          const struct record *record, const struct note_read *reading) {
    const struct asfound_draft_options *o = run->options;
    struct buf out = buf_start(arena);
    if (o->output == ASFOUND_JSON_LINES || o->output == ASFOUND_YAML_OUT)
        write_tree(run, arena, &out, tree_of(run, arena, listing, record, reading));
    else if (o->sheet && o->output == ASFOUND_HTML)
        sheet_page(arena, listing, o->today, &out);
    else if (o->sheet)
        sheet_text(arena, listing, o->today, &out);
    else if (o->output == ASFOUND_HTML)
        listing_page(arena, listing, &out);
    else if (o->explain) {
        listing_explain(arena, listing, &out, o->color);
        if (reading) readings_text(arena, reading, listing, &out, o->color);
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

static void draft_record(struct run *run, struct arena *arena, const struct record *record,
                         const struct note_read *reading) {
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
    write_listing(run, arena, listing, &answered, reading);
}

static void write_record(struct run *run, struct arena *arena, const struct note_read *read) {
    struct buf out = buf_start(arena);
    if (run->options->output == ASFOUND_HTML)
        readings_page(arena, read, &out);
    else
        write_tree(run, arena, &out, record_tree(arena, &read->record));
    write_out(run, &out);
}

static void show_progress(const struct run *run, size_t done) {
    if (run->options->progress) run->options->progress(run->options->progress_context, done);
}

// Reads what is ready to the end; then drafts and writes it, each in memory that is given back at once.
static void draft_ready(struct run *run, struct arena *arena) {
    struct note_work *works[ENGINE_BATCH];
    size_t count = 0;
    for (size_t i = 0; i < run->ready_count; i++)
        if (run->ready[i].work) works[count++] = run->ready[i].work;
    notes_read_together(works, count);
    for (size_t i = 0; i < run->ready_count; i++) {
        struct ready *ready = &run->ready[i];
        if (!ready->work) continue;
        ready->read = notes_result(ready->work);
        ready->record = &ready->read->record;
    }
    for (size_t i = 0; i < run->ready_count && !run->write_failed; i++) {
        struct arena_mark before = arena_mark(arena);
        const struct ready *ready = &run->ready[i];
        if (run->options->read)
            write_record(run, arena, ready->read);
        else
            draft_record(run, arena, ready->record, ready->read);
        arena_release(arena, &before);
        if (run->more) show_progress(run, ready->number);
    }
    run->ready_count = run->waiting = 0;
}

static bool is_full(const struct run *run, const struct arena *arena) {
    return run->ready_count == ENGINE_BATCH || arena_used(arena) + run->waiting * BYTES_A_BYTE > BATCH_BYTES;
}

static void read_notes(struct run *run, struct arena *arena, const struct record *given) {
    if (!run->phrases) run->phrases = phrases_new(run->diags.arena, run->engine->rules);
    if (!run->asked) run->asked = asked_new(run->diags.arena);
    struct note_reader reader = {.rules = run->engine->rules,
                                 .phrases = run->phrases,
                                 .book = run->engine->book,
                                 .scanner = run->drafter.scanner,
                                 .asked = run->asked,
                                 .locale = locale_of(run)};
    struct notes notes = notes_open(arena, &reader, given);
    struct arena_mark before = arena_mark(arena);
    for (size_t i = 0; i < notes.count; i++) {
        if (i && is_full(run, arena)) {
            draft_ready(run, arena);
            arena_release(arena, &before);
            asked_begin(run->asked);
        }
        run->ready[run->ready_count++] =
            (struct ready){.work = notes_begin(arena, &reader, &notes, i), .number = run->number};
        run->waiting += notes_size(&notes, i);
    }
}

static void take_one(struct run *run, struct arena *arena) {
    struct node *tree = NULL;
    run->more = stream_next(run->stream, arena, &run->diags, &tree);
    if (!run->more) return;
    run->number++;
    if (!tree) return;
    struct record *record = arena_alloc(arena, sizeof *record);
    if (!record_read(arena, run->engine->rules, tree, locale_of(run), run->number, record, &run->diags))
        return;
    if (run->options->only && strcmp(record->id, run->options->only) != 0) return;
    if (!new_id(run, run->diags.arena, record->id)) {
        diags_add(&run->diags, CODE_SAME_ID, record->at, NULL, "the id '%s' stands twice in this input",
                  record->id);
        return;
    }
    if (run->given) record->listing.title = run->given;
    if (run->options->read || only_notes(record))
        read_notes(run, arena, record);
    else
        run->ready[run->ready_count++] = (struct ready){.record = record, .number = run->number};
}

// A batch ends where the next record would have to be waited for: who feeds a pipe a record at a time gets a
// listing for each.
static void draft_batch(struct arena *arena, void *context) {
    struct run *run = context;
    run->ready_count = run->waiting = 0;
    do take_one(run, arena);
    while (run->more && !is_full(run, arena) && stream_at_hand(run->stream));
    draft_ready(run, arena);
    if (run->more) show_progress(run, run->number);
}

static void write_frame(struct run *run, struct arena *arena, bool end) {
    if (run->options->output != ASFOUND_HTML || run->options->no_frame || run->write_failed) return;
    struct buf out = buf_start(arena);
    if (end)
        page_end(&out);
    else
        page_begin(&out);
    if (!sink_put(&run->out, out.at, out.n)) run->write_failed = true;
}

static bool refuse(struct run *run, struct arena *arena, const char *message) {
    diags_add(&run->diags, CODE_USAGE, (struct place){NULL, 0, 0}, NULL, "%s", message);
    struct sink messages =
        engine_messages(run->engine, run->options->messages, run->options->messages_context);
    sink_tell(&messages, arena, &run->diags);
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
    run->ready = arena_array(arena, ENGINE_BATCH, sizeof *run->ready);
    for (run->more = true; run->more && !run->write_failed;) {
        bool finished = arena_try(run->records, draft_batch, run);
        arena_reset(run->records);
        if (!finished) arena_give_up(arena);
    }
    if (!sink_put(&run->out, run->held.at, run->held.n)) run->write_failed = true;
    write_frame(run, arena, true);
    struct sink messages =
        engine_messages(run->engine, run->options->messages, run->options->messages_context);
    sink_tell(&messages, arena, &run->diags);
    if (run->diags.status > run->status) run->status = run->diags.status;
    if (run->write_failed) run->status = ASFOUND_IO;
}

enum asfound_status asfound_draft(const asfound_engine *engine, const struct asfound_draft_options *options,
                                  const char *name, asfound_get *get, void *get_context) {
    struct arena_memory memory = engine_memory(&engine->memory);
    struct sink messages = engine_messages(engine, options->messages, options->messages_context);
    struct stream_source from = {name, get, get_context};
    struct run run = {
        .engine = engine, .options = options, .out = {options->out, options->out_context, false, false}};
    struct arena *work = arena_new(&memory);
    run.records = arena_new(&memory);
    run.stream = stream_open(&from, (enum form)options->input, &memory);
    bool finished = work && run.records && run.stream && arena_try(work, draft_all, &run);
    if (run.stream) stream_close(run.stream);
    if (work) id_set_free(&run.ids, arena_source(work));
    arena_free(run.records);
    arena_free(work);
    return finished ? (enum asfound_status)run.status : sink_no_memory(&messages);
}
