// SPDX-License-Identifier: MIT
// The public library's part for stock files.
#include <string.h>

#include "engine.h"
#include "rules/fingerprint.h"
#include "shelf/apply.h"
#include "shelf/history.h"
#include "shelf/pool.h"
#include "shelf/retitle.h"

// --- retitle ---

struct retitling {
    const asfound_engine *engine;
    const struct asfound_retitle_options *options;
    const char *name;
    asfound_get *get;
    void *get_context;
    struct sink messages;
    int status;
};

static struct spelling *make_speller(void *context, struct arena *arena, struct diags *diags) {
    const struct retitling *r = context;
    const asfound_engine *e = r->engine;
    struct spelling_options spelling = {r->options->locale == ASFOUND_EN_GB ? LOCALE_GB : LOCALE_US,
                                        e->dictionaries, e->trade, e->lists, e->rules};
    return spelling_new(arena, &spelling, diags);
}

static struct retitle_request request_of(struct retitling *r, const struct day *today) {
    const struct asfound_retitle_options *o = r->options;
    const asfound_engine *e = r->engine;
    long number = -1;
    if (today && !stale_day(o->today, false, &number)) number = -1;
    size_t workers = o->workers < 1 ? 1 : o->workers > POOL_WORKERS_MOST ? POOL_WORKERS_MOST : o->workers;
    return (struct retitle_request){
        .name = r->name,
        .map = o->map,
        .get = r->get,
        .get_context = r->get_context,
        .filters = {o->older_than, o->views_under, o->earned_under, o->category, o->price_from, o->price_to,
                    number, o->locale == ASFOUND_EN_GB},
        .held_hundredths = o->hold_back,
        .seed = o->seed ? o->seed : "",
        .explain_columns = o->explain_columns,
        .workers = workers,
        .options = {o->limit ? o->limit : 80, (enum count_unit)o->unit,
                    o->locale == ASFOUND_EN_GB ? LOCALE_GB : LOCALE_US, e->variants},
        .today = today,
        .rules = e->rules,
        .book = e->book,
        .variants = e->variants,
        .speller = make_speller,
        .speller_context = r,
        .put = o->out,
        .put_context = o->out_context,
        .progress = o->progress,
        .progress_context = o->progress_context,
    };
}

static void retitle(struct arena *arena, void *context) {
    struct retitling *r = context;
    struct diags diags = diags_start(arena);
    struct buf summary = buf_start(arena);
    struct day today;
    const struct day *known = NULL;
    if (r->options->today) {
        if (day_read(r->options->today, &today))
            known = &today;
        else
            diags_add(&diags, CODE_USAGE, (struct place){NULL, 0, 0}, NULL,
                      "today is no day of the calendar");
    }
    struct retitle_request request = request_of(r, known);
    if (!diags.status && !retitle_run(arena, &request, &summary, &diags)) r->status = ASFOUND_IO;
    sink_tell(&r->messages, arena, &diags);
    if (!r->engine->quiet) sink_put(&r->messages, summary.at, summary.n);
    if (diags.status > r->status) r->status = diags.status;
}

enum asfound_status asfound_retitle(const asfound_engine *engine,
                                    const struct asfound_retitle_options *options, const char *name,
                                    asfound_get *get, void *get_context) {
    struct arena_memory memory = engine_memory(&engine->memory);
    struct retitling r = {
        engine, options,     name,
        get,    get_context, {options->messages, options->messages_context, engine->color, engine->quiet},
        0};
    struct arena *arena = arena_new(&memory);
    bool finished = arena && arena_try(arena, retitle, &r);
    arena_free(arena);
    return finished ? (enum asfound_status)r.status : sink_no_memory(&r.messages);
}

// --- apply, undo, history ---

struct changing {
    const struct asfound_apply_options *options;
    struct sink out, messages;
    const char *ledger, *id;
    void (*run)(struct arena *arena, const struct apply_request *request, struct buf *out,
                struct diags *diags);
    bool json;
    int status;
};

static void finish(struct changing *c, struct arena *arena, const struct buf *out, struct diags *diags) {
    if (diags->status > c->status) c->status = diags->status;
    sink_tell(&c->messages, arena, diags);
    if (!sink_put(&c->out, out->at, out->n)) c->status = ASFOUND_IO;
}

static void change(struct arena *arena, void *context) {
    struct changing *c = context;
    const struct asfound_apply_options *o = c->options;
    struct diags diags = diags_start(arena);
    struct buf out = buf_start(arena);
    struct apply_request request = {
        o->stock, o->map,    o->proposals, (int64_t)o->entry,
        o->write, o->ledger, o->when,      o->rules ? o->rules : asfound_version()};
    c->run(arena, &request, &out, &diags);
    finish(c, arena, &out, &diags);
}

static void history(struct arena *arena, void *context) {
    struct changing *c = context;
    struct diags diags = diags_start(arena);
    struct buf out = buf_start(arena);
    if (!history_write(arena, c->ledger, c->id, c->json, &out, &diags))
        diags_add(&diags, CODE_USAGE, (struct place){NULL, 0, 0}, NULL, "nothing was ever changed of '%s'",
                  c->id);
    finish(c, arena, &out, &diags);
}

static enum asfound_status run(void (*body)(struct arena *, void *), struct changing *c) {
    struct arena *arena = arena_new(NULL);
    bool finished = arena && arena_try(arena, body, c);
    arena_free(arena);
    return finished ? (enum asfound_status)c->status : sink_no_memory(&c->messages);
}

static struct changing changing_of(const struct asfound_apply_options *o) {
    return (struct changing){.options = o,
                             .out = {o->out, o->out_context, false, false},
                             .messages = {o->messages, o->messages_context, o->color, o->quiet}};
}

enum asfound_status asfound_apply(const struct asfound_apply_options *options) {
    struct changing c = changing_of(options);
    c.run = apply_run;
    return run(change, &c);
}

enum asfound_status asfound_undo(const struct asfound_apply_options *options) {
    struct changing c = changing_of(options);
    c.run = undo_run;
    return run(change, &c);
}

enum asfound_status asfound_history(const char *ledger, const char *id, bool json, bool color,
                                    asfound_put *out, void *out_context, asfound_put *messages,
                                    void *messages_context) {
    struct changing c = {.out = {out, out_context, false, false},
                         .messages = {messages, messages_context, color, false},
                         .ledger = ledger,
                         .id = id,
                         .json = json};
    return run(history, &c);
}

// --- which rules ---

struct versioning {
    const struct asfound_engine_options *options;
    struct sink out, messages;
    int status;
};

static void tell_version(struct arena *arena, void *context) {
    struct versioning *v = context;
    const struct asfound_engine_options *o = v->options;
    struct diags diags = diags_start(arena);
    const char **folders = arena_array(arena, o->pack_count + 1, sizeof *folders);
    folders[0] = arena_format(arena, "%s/rules/core", o->data);
    for (size_t i = 0; i < o->pack_count; i++) folders[i + 1] = o->packs[i];
    const char *print = rules_fingerprint(arena, folders, o->pack_count + 1, &diags);
    struct buf text = buf_start(arena);
    buf_text(&text, asfound_version());
    if (print) buf_format(&text, " %s", print);
    v->status = diags.status;
    sink_tell(&v->messages, arena, &diags);
    if (!sink_put(&v->out, text.at, text.n)) v->status = ASFOUND_IO;
}

enum asfound_status asfound_rules_version(const struct asfound_engine_options *options, asfound_put *out,
                                          void *out_context) {
    struct versioning v = {options,
                           {out, out_context, false, false},
                           {options->messages, options->messages_context, options->color, options->quiet},
                           0};
    struct arena_memory memory = {options->memory.alloc, options->memory.free, options->memory.context};
    struct arena *arena = arena_new(&memory);
    bool finished = arena && arena_try(arena, tell_version, &v);
    arena_free(arena);
    return finished ? (enum asfound_status)v.status : sink_no_memory(&v.messages);
}
