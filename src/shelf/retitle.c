// SPDX-License-Identifier: MIT
// One thread reads and sorts out, the workers score and propose, the same thread writes in the order of the
// stock. A row that is not stale is scanned for its marks, asked for its age and its id, and let go: nothing
// of it is copied. Memory: a few batches of rows, and some bytes a row to notice an id that stands twice.
#include "shelf/retitle.h"

#include <stdio.h>
#include <string.h>

#include "shelf/columns.h"
#include "shelf/ids.h"
#include "shelf/pool.h"
#include "shelf/wanted.h"
#include "text/limits.h"
#include "text/utf8.h"

enum { BATCH_ROWS = 64, BATCH_BYTES = 1 << 20, LOOK_ROWS = 4096, BRIEF = 48, WHY_MOST = 160 };
enum { TITLE_MOST = 4 * LIMIT_TITLE_LONGEST }; // bytes
enum { DAYS_MOST = 36525 };                    // older than a century counts as that

struct task {
    struct shelf_row row;
    const char *listed_only; // why it is listed and not proposed; NULL: it is proposed
};

struct counts {
    size_t stale, proposed, best, attention, held, weak[WEAK_COUNT];
    long days[BATCH_ROWS]; // of the stale rows of a batch whose age is known
    size_t days_count;
};

struct batch {
    struct arena *arena;
    struct task tasks[BATCH_ROWS];
    size_t count;
    struct buf out;
    struct counts counts;
    bool failed;
};

struct bench {
    struct arena *arena, *scratch;
    struct proposer proposer;
    struct diags diags;
};

struct retitling {
    struct arena *arena;
    const struct retitle_request *request;
    struct diags *diags;
    struct sheet *sheet;
    struct columns columns;
    struct batch *batches;
    struct bench *benches;
    const struct phrases *phrases; // never written to: of all workers
    size_t batch_count, worker_count;
    struct id_set ids;
    struct counts counts;
    size_t rows, ragged, undated;
    uint32_t *of_age; // how many stale rows are that many days old
    size_t age_known;
    long oldest;
    bool failed;
};

// --- reading ---

static const char *cell(struct arena *arena, const struct retitling *r, const struct sheet_row *row,
                        enum column column) {
    const char *why;
    int at = r->columns.at[column];
    return at < 0 ? NULL : cell_text(arena, sheet_dialect(r->sheet), row, (size_t)at, &why);
}

// A short cell, in `room` where it can be: what every row is asked for takes nothing of the arena.
static const char *brief(struct arena *arena, const struct retitling *r, const struct sheet_row *row,
                         enum column column, char room[BRIEF]) {
    const char *text;
    size_t size;
    int at = r->columns.at[column];
    if (at < 0 || !cell_plain(row, (size_t)at, &text, &size) || size >= BRIEF)
        return cell(arena, r, row, column);
    memcpy(room, text, size);
    room[size] = '\0';
    return room;
}

static long whole(struct arena *arena, const struct retitling *r, const struct sheet_row *row,
                  enum column column) {
    char room[BRIEF];
    const char *text = brief(arena, r, row, column, room);
    long number;
    return text && stale_whole(text, &number) ? number : -1;
}

static long age(struct arena *arena, struct retitling *r, const struct sheet_row *row) {
    const struct filters *f = &r->request->filters;
    char room[BRIEF];
    const char *listed = f->today >= 0 ? brief(arena, r, row, COLUMN_LISTED, room) : NULL;
    long day;
    if (listed && stale_day(listed, f->day_first, &day)) return day <= f->today ? f->today - day : 0;
    long days = whole(arena, r, row, COLUMN_DAYS);
    if (days < 0 && f->older_than >= 0) r->undated++;
    return days;
}

static bool tell_ragged(struct retitling *r, const struct sheet_row *row) {
    char width[WHY_MOST];
    const char *why = NULL;
    if (!row->bytes)
        why = "this row is about 4 MiB or more; it is passed through unread";
    else if (row->unclosed)
        why = "a quote is open to the end of the file; the row is passed through untouched";
    else if (row->count != r->columns.count) {
        snprintf(width, sizeof width,
                 "%zu cells, where the header has %zu; the row is passed through untouched", row->count,
                 r->columns.count);
        why = width;
    }
    if (!why) return false;
    r->ragged++;
    sheet_tell(r->diags, CODE_CSV_WIDTH, r->request->name, row, -1, NULL, why);
    return true;
}

static const char *no_proposal(struct retitling *r, const struct sheet_row *row, const char *id,
                               const char *title) {
    if (id_is_altered(id)) {
        sheet_tell(r->diags, CODE_VALUE, r->request->name, row, r->columns.at[COLUMN_ID],
                   "give the column the form of text, and export again",
                   "a spreadsheet seems to have made this id of a longer one");
        return "id altered by a spreadsheet";
    }
    if (cell_is_formula(id) || cell_is_formula(title))
        return "a spreadsheet would run this cell as a formula";
    if (utf8_unwanted(title, strlen(title), false) != strlen(title))
        return "the title holds a control character";
    if (!*title) return "there is no title";
    if (strlen(title) > TITLE_MOST) return "too long for a title";
    return NULL;
}

static void keep_task(struct retitling *r, struct batch *b, const struct sheet_row *row,
                      const struct shelf_facts *facts, const char *id, const char *title) {
    struct arena *arena = b->arena;
    struct task *t = &b->tasks[b->count++];
    *t = (struct task){.row = {.id = id,
                               .title = title,
                               .description = cell(arena, r, row, COLUMN_DESCRIPTION),
                               .brand = cell(arena, r, row, COLUMN_BRAND),
                               .model = cell(arena, r, row, COLUMN_MODEL),
                               .material = cell(arena, r, row, COLUMN_MATERIAL),
                               .color = cell(arena, r, row, COLUMN_COLOR),
                               .days = facts->days,
                               .price = facts->price,
                               .photos = whole(arena, r, row, COLUMN_PHOTOS)},
                       .listed_only = no_proposal(r, row, id, title)};
}

static bool is_stale(struct arena *arena, struct retitling *r, const struct sheet_row *row,
                     struct shelf_facts *facts) {
    char room[BRIEF];
    *facts = (struct shelf_facts){NULL, age(arena, r, row), -1, -1};
    if (r->request->filters.older_than >= 0 && facts->days < r->request->filters.older_than) return false;
    const char *price = brief(arena, r, row, COLUMN_PRICE, room);
    if (price && !stale_price(price, &facts->price)) facts->price = -1;
    facts->views = whole(arena, r, row, COLUMN_VIEWS);
    facts->category = cell(arena, r, row, COLUMN_CATEGORY);
    return stale_is(arena, &r->request->filters, facts);
}

static void tell_unreadable(struct retitling *r, const struct sheet_row *row, enum column column,
                            const char *why) {
    char text[WHY_MOST];
    snprintf(text, sizeof text, "the %s %s; the row is passed through untouched", column_name(column), why);
    sheet_tell(r->diags, CODE_VALUE, r->request->name, row, r->columns.at[column], NULL, text);
}

// Is it an id that can be read and that no row had before?
static bool take_id(struct arena *arena, struct retitling *r, const struct sheet_row *row) {
    const char *why = "is empty", *id;
    size_t at = (size_t)r->columns.at[COLUMN_ID], size;
    if (!cell_plain(row, at, &id, &size)) {
        id = cell_text(arena, sheet_dialect(r->sheet), row, at, &why);
        size = id ? strlen(id) : 0;
    }
    if (!size) {
        tell_unreadable(r, row, COLUMN_ID, why);
        return false;
    }
    enum id_added added = id_set_add(&r->ids, id_hash(id, size));
    if (added == ID_NO_MEMORY) r->failed = true;
    if (added == ID_KNOWN)
        sheet_tell(r->diags, CODE_SAME_ID, r->request->name, row, r->columns.at[COLUMN_ID], NULL,
                   "this id stands twice, and is not proposed again");
    return added == ID_NEW;
}

static void take_row(struct retitling *r, struct batch *b, const struct sheet_row *row) {
    if (!row->count && row->bytes) return; // an empty line
    r->rows++;
    if (tell_ragged(r, row)) return;
    struct arena_mark mark = arena_mark(b->arena);
    struct shelf_facts facts;
    if (take_id(b->arena, r, row) && is_stale(b->arena, r, row, &facts)) {
        const char *why = "";
        const char *title =
            cell_text(b->arena, sheet_dialect(r->sheet), row, (size_t)r->columns.at[COLUMN_TITLE], &why);
        if (title) {
            keep_task(r, b, row, &facts, cell(b->arena, r, row, COLUMN_ID), title);
            return;
        }
        tell_unreadable(r, row, COLUMN_TITLE, why);
    }
    arena_release(b->arena, &mark);
}

static void tell_progress(const struct retitling *r) {
    if (r->request->progress) r->request->progress(r->request->progress_context, r->rows);
}

static void fill_batch(struct arena *arena, void *context) {
    struct retitling *r = ((void **)context)[0];
    struct batch *b = ((void **)context)[1];
    struct sheet_row row;
    (void)arena;
    while (b->count < BATCH_ROWS && arena_used(b->arena) < BATCH_BYTES && !r->failed &&
           sheet_next(r->sheet, &row)) {
        take_row(r, b, &row);
        if (r->rows % LOOK_ROWS == 0) tell_progress(r);
    }
}

// The sheet and the messages take of the outer arena. When that has nothing left the workers are still at
// work, so it is noticed here and not further out.
static void fill_outer(struct arena *arena, void *context) {
    struct retitling *r = ((void **)context)[0];
    struct batch *b = ((void **)context)[1];
    (void)arena;
    if (!arena_try(b->arena, fill_batch, context)) r->failed = true;
}

static bool fill(void *context, size_t at) {
    struct retitling *r = context;
    struct batch *b = &r->batches[at];
    arena_reset(b->arena);
    b->count = 0;
    b->counts = (struct counts){0};
    void *both[] = {r, b};
    if (!arena_try(r->arena, fill_outer, both)) r->failed = true;
    tell_progress(r);
    return b->count && !r->failed;
}

// --- working ---

struct working {
    struct retitling *r;
    struct batch *b;
    struct bench *bench;
    const struct task *task;
};

static void write_row(struct working *w, const struct task *t, const struct proposal *p, bool held) {
    struct buf *out = &w->b->out;
    struct arena *arena = out->arena;
    bool formula = cell_is_formula(t->row.id) || cell_is_formula(t->row.title);
    cell_write(out, cell_is_formula(t->row.id) ? "" : t->row.id, false);
    cell_write(out, t->row.days >= 0 ? arena_format(arena, "%ld", t->row.days) : "", false);
    cell_write(out, formula ? "" : t->row.title, false);
    cell_write(out, p->scored ? arena_format(arena, "%lld", (long long)p->old_earned) : "", false);
    cell_write(out, p->new_title ? p->new_title : "", false);
    cell_write(out, p->new_title ? arena_format(arena, "%lld", (long long)p->new_earned) : "", false);
    cell_write(out, p->scored ? arena_format(arena, "%lld", (long long)p->best) : "", false);
    const char *const texts[] = {p->adds, p->drops, p->why, p->attention};
    for (size_t i = 0; i < 4; i++)
        cell_write(out, cell_is_formula(texts[i]) ? arena_format(arena, "'%s", texts[i]) : texts[i], false);
    cell_write(out, held ? "held" : "", true);
}

static void count_row(struct counts *c, const struct shelf_row *row, const struct proposal *p, bool held) {
    c->stale++;
    if (row->days >= 0) c->days[c->days_count++] = row->days;
    if (held)
        c->held++;
    else if (p->new_title)
        c->proposed++;
    else if (p->scored && !*p->attention)
        c->best++;
    else
        c->attention++;
    for (int k = 0; k < WEAK_COUNT; k++) c->weak[k] += (p->weak >> k) & 1u;
}

static void work_task(struct arena *arena, void *context) {
    struct working *w = context;
    const struct retitle_request *q = w->r->request;
    const struct task *t = w->task;
    struct proposal p = {.adds = "", .drops = "", .why = "", .attention = ""};
    if (t->listed_only)
        p.attention = t->listed_only;
    else
        propose(arena, &w->bench->proposer, &t->row, &p);
    if (q->filters.earned_under >= 0 &&
        (!p.scored || p.old_earned * 100 >= p.best * (int64_t)q->filters.earned_under))
        return;
    bool held = p.new_title && q->held_hundredths && stale_is_held(q->seed, t->row.id, q->held_hundredths);
    if (held)
        p.attention =
            arena_format(arena, "held back, to compare with%s%s", *p.attention ? "; " : "", p.attention);
    write_row(w, t, &p, held);
    count_row(&w->b->counts, &t->row, &p, held);
}

static void work_batch(struct arena *arena, void *context) {
    struct working *w = context;
    w->b->out = buf_start(arena);
    for (size_t i = 0; i < w->b->count; i++) {
        w->task = &w->b->tasks[i];
        bool fine = arena_try(w->bench->scratch, work_task, w);
        arena_reset(w->bench->scratch);
        if (!fine) arena_give_up(arena);
    }
}

// The speller keeps what it learns in the arena of its bench, so that too has to be open.
static void work_bench(struct arena *arena, void *context) {
    struct working *w = context;
    (void)arena;
    w->b->failed = !arena_try(w->b->arena, work_batch, w);
}

static void work(void *context, size_t worker, size_t at) {
    struct retitling *r = context;
    struct working w = {r, &r->batches[at], &r->benches[worker], NULL};
    if (!arena_try(w.bench->arena, work_bench, &w)) w.b->failed = true;
}

static bool drain(void *context, size_t at) {
    struct retitling *r = context;
    struct batch *b = &r->batches[at];
    if (b->failed || (b->out.n && !r->request->put(r->request->put_context, b->out.at, b->out.n)))
        r->failed = true;
    struct counts *to = &r->counts;
    const struct counts *c = &b->counts;
    to->stale += c->stale;
    to->proposed += c->proposed;
    to->best += c->best;
    to->attention += c->attention;
    to->held += c->held;
    for (int k = 0; k < WEAK_COUNT; k++) to->weak[k] += c->weak[k];
    for (size_t i = 0; i < c->days_count; i++) {
        r->of_age[c->days[i] < DAYS_MOST ? c->days[i] : DAYS_MOST]++;
        if (c->days[i] > r->oldest) r->oldest = c->days[i];
    }
    r->age_known += c->days_count;
    return !r->failed;
}

// --- the run ---

static void make_bench(struct arena *arena, void *context) {
    struct bench *b = ((void **)context)[0];
    const struct retitling *r = ((void **)context)[1];
    const struct retitle_request *q = r->request;
    b->diags = diags_start(arena);
    b->proposer = (struct proposer){.rules = q->rules,
                                    .book = q->book,
                                    .phrases = r->phrases,
                                    .asked = asked_new(arena),
                                    .options = q->options};
    b->proposer.drafter = (struct drafter){q->rules, q->variants, scanner_new(arena, q->rules->finder_count),
                                           q->speller(q->speller_context, arena, &b->diags), q->today};
}

// Runs when the arena goes: the request is gone by then.
static void free_all(void *thing) {
    struct retitling *r = thing;
    for (size_t i = 0; r->batches && i < r->batch_count; i++) arena_free(r->batches[i].arena);
    for (size_t i = 0; r->benches && i < r->worker_count; i++) {
        arena_free(r->benches[i].arena);
        arena_free(r->benches[i].scratch);
    }
    id_set_free(&r->ids);
}

static bool make_all(struct retitling *r) {
    const struct arena_memory *memory = arena_source(r->arena);
    r->phrases = phrases_new(r->arena, r->request->rules);
    for (size_t i = 0; i < r->batch_count; i++)
        if (!(r->batches[i].arena = arena_new(memory))) return false;
    for (size_t i = 0; i < r->request->workers; i++) {
        struct bench *b = &r->benches[i];
        b->arena = arena_new(memory);
        b->scratch = arena_new(memory);
        void *both[] = {b, r};
        if (!b->arena || !b->scratch || !arena_try(b->arena, make_bench, both)) return false;
    }
    return true;
}

// Half of them are as old or older. The middle says more than the mean of a few that lay for years.
static long median_age(const struct retitling *r) {
    long days = 0;
    for (size_t seen = r->of_age[0]; days < DAYS_MOST && 2 * seen < r->age_known; seen += r->of_age[days])
        days++;
    return days;
}

static void write_summary(const struct retitling *r, struct buf *out) {
    const struct counts *c = &r->counts;
    buf_format(out, "%zu of %zu rows are stale", c->stale, r->rows);
    if (r->age_known)
        buf_format(out, ", half of them listed for %ld days or less, the oldest for %ld", median_age(r),
                   r->oldest);
    buf_format(out, ": %zu proposed, %zu held back, %zu best as they are, %zu to look at by hand\n",
               c->proposed, c->held, c->best, c->attention);
    for (int k = 0; k < WEAK_COUNT; k++)
        if (c->weak[k]) buf_format(out, "%8zu  %s\n", c->weak[k], weakness_name((enum weakness)k));
    if (r->ragged) buf_format(out, "%zu rows of another width were passed over\n", r->ragged);
    if (r->undated)
        buf_format(out, "%zu rows have no date that can be read, and are left alone\n", r->undated);
}

static bool fail(struct retitling *r, enum code code, const char *why) {
    struct source source = {r->request->name, NULL, 0, 0, 0};
    diags_add(r->diags, code, (struct place){&source, 0, 0}, NULL, "%s", why);
    return true;
}

static bool can_filter(struct retitling *r) {
    const struct filters *f = &r->request->filters;
    const struct columns *c = &r->columns;
    const char *lacks = f->older_than >= 0 && c->at[COLUMN_LISTED] < 0 && c->at[COLUMN_DAYS] < 0 ? "listed"
                        : f->views_under >= 0 && c->at[COLUMN_VIEWS] < 0                         ? "views"
                        : (f->price_from >= 0 || f->price_to >= 0) && c->at[COLUMN_PRICE] < 0    ? "price"
                        : f->category && c->at[COLUMN_CATEGORY] < 0                              ? "category"
                                                                                                 : NULL;
    if (lacks)
        fail(
            r, CODE_CSV_HEADER,
            arena_format(
                r->arena,
                "no column of this header is known to hold what is asked for; say which with --map %s=HEADER",
                lacks));
    else if (f->older_than >= 0 && f->today < 0 && c->at[COLUMN_DAYS] < 0) {
        fail(r, CODE_USAGE, "--older-than needs --today: no clock is read");
        return false;
    }
    return !lacks;
}

// What one speller lacks all lack.
static void tell_dictionaries(struct retitling *r) {
    for (size_t i = 0; i < r->request->workers; i++) {
        const struct diags *own = &r->benches[i].diags;
        for (size_t k = 0; k < own->count; k++)
            diags_add(r->diags, own->items[k].code, (struct place){NULL, 0, 0}, own->items[k].hint, "%s",
                      own->items[k].message);
        if (own->count) return;
    }
}

bool retitle_run(struct arena *arena, const struct retitle_request *q, struct buf *summary,
                 struct diags *diags) {
    struct retitling *r = arena_alloc(arena, sizeof *r);
    *r = (struct retitling){.arena = arena,
                            .request = q,
                            .diags = diags,
                            .worker_count = q->workers,
                            .batch_count = q->workers * 3 + 1};
    r->ids.memory = arena_source(arena);
    r->batches = arena_array(arena, r->batch_count, sizeof *r->batches);
    r->of_age = arena_array(arena, DAYS_MOST + 1, sizeof *r->of_age);
    r->benches = arena_array(arena, q->workers, sizeof *r->benches);
    arena_defer(arena, free_all, r);
    r->sheet = sheet_open(arena, q->get, q->get_context);
    const char *refused = sheet_dialect(r->sheet)->refused;
    struct sheet_row header;
    if (refused) return fail(r, CODE_CSV, refused);
    if (!sheet_next(r->sheet, &header))
        return fail(r, sheet_failed(r->sheet) ? CODE_READ : CODE_CSV_HEADER,
                    sheet_failed(r->sheet) ? "cannot be read" : "there is no header");
    if (!columns_find(arena, sheet_dialect(r->sheet), &header, q->map, q->name, &r->columns, diags))
        return true;
    if (q->explain_columns) {
        struct buf out = buf_start(arena);
        columns_explain(&out, sheet_dialect(r->sheet), &r->columns);
        return q->put(q->put_context, out.at, out.n);
    }
    if (!can_filter(r)) return true;
    if (!make_all(r)) arena_give_up(arena);
    static const char HEADER[] =
        "id,days_listed,old_title,old_earned,new_title,new_earned,best,adds,drops,why,attention,approve\n";
    if (!q->put(q->put_context, HEADER, sizeof HEADER - 1)) return false;
    struct pool pool = {q->workers, r->batch_count, r, fill, drain, work};
    if (!pool_run(&pool)) r->failed = true;
    if (sheet_failed(r->sheet)) fail(r, CODE_READ, "cannot be read to its end");
    tell_dictionaries(r);
    write_summary(r, summary);
    return !r->failed;
}
