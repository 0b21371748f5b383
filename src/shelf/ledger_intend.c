// SPDX-License-Identifier: MIT
// Most of the work of an entry is its changes. Where the ledger is free they are added while the stock is
// read, by a thread of their own, in a transaction that is ended when the new file is complete. Where it is
// not, or where a change was taken back, that transaction is forgotten and all of them are added at the end.
#include <pthread.h>
#include <string.h>

#include "shelf/ledger_private.h"

enum { BATCH = 256 };

static void bind_text(sqlite3_stmt *s, int at, const char *text) {
    sqlite3_bind_text(s, at, text ? text : "", -1, SQLITE_STATIC);
}

static bool add_entry(sqlite3 *db, const struct intention *i) {
    sqlite3_stmt *s = NULL;
    bool fine =
        sqlite3_prepare_v2(db,
                           "INSERT INTO entry(kind,state,at,stock,output,rules,old_hash,new_hash,undoes)"
                           " VALUES(?,'intended',?,?,?,?,?,?,?)",
                           -1, &s, NULL) == SQLITE_OK;
    const char *texts[] = {i->kind, i->when, i->stock, i->output, i->rules, i->old_hash, i->new_hash};
    for (int k = 0; fine && k < 7; k++) bind_text(s, k + 1, texts[k]);
    if (fine && i->undoes) sqlite3_bind_int64(s, 8, i->undoes);
    fine = fine && sqlite3_step(s) == SQLITE_DONE;
    sqlite3_finalize(s);
    return fine;
}

static void bind_bytes(sqlite3_stmt *s, int at, const char *bytes, size_t size, const char *title) {
    if (!bytes || (size == strlen(title) && !memcmp(bytes, title, size))) size = 0;
    sqlite3_bind_blob64(s, at, size ? bytes : "", size, SQLITE_STATIC);
}

static bool add_change(sqlite3_stmt *s, int64_t number, const struct change *c) {
    sqlite3_reset(s);
    sqlite3_bind_int64(s, 1, number);
    bind_text(s, 2, c->id);
    bind_text(s, 3, c->old_title);
    bind_text(s, 4, c->new_title);
    bind_bytes(s, 5, c->old_bytes, c->old_size, c->old_title);
    bind_bytes(s, 6, c->new_bytes, c->new_size, c->new_title);
    for (int k = 0; k < 3; k++) bind_text(s, 7 + k, c->earned[k]);
    return sqlite3_step(s) == SQLITE_DONE;
}

static sqlite3_stmt *changes_start(sqlite3 *db) {
    sqlite3_stmt *s = NULL;
    (void)sqlite3_prepare_v2(db, "INSERT INTO change VALUES(?,?,?,?,?,?,?,?,?)", -1, &s, NULL);
    return s;
}

static bool add_changes(struct ledger *l, const struct intention *i, int64_t number) {
    sqlite3_stmt *s = changes_start(l->db);
    bool fine = s != NULL;
    for (size_t k = 0; fine && k < i->count; k++) fine = add_change(s, number, &i->changes[k]);
    if (!fine) ledger_fail(l);
    sqlite3_finalize(s);
    return fine;
}

static bool add_held(struct ledger *l, const struct intention *i, int64_t number) {
    sqlite3_stmt *s = NULL;
    bool fine = sqlite3_prepare_v2(l->db, "INSERT INTO held VALUES(?,?,?)", -1, &s, NULL) == SQLITE_OK;
    for (size_t k = 0; fine && k < i->held_count; k++) {
        sqlite3_reset(s);
        sqlite3_bind_int64(s, 1, number);
        bind_text(s, 2, i->held[k].id);
        bind_text(s, 3, i->held[k].old_title);
        fine = sqlite3_step(s) == SQLITE_DONE;
    }
    if (!fine) ledger_fail(l);
    sqlite3_finalize(s);
    return fine;
}

// --- while the stock is read ---

struct batch {
    const struct change *changes[BATCH];
    size_t count;
    struct batch *next;
};

struct ledger_ahead {
    struct ledger *ledger;
    struct intention intention; // without hashes
    pthread_t thread;
    pthread_mutex_t lock;
    pthread_cond_t changed;
    struct batch *first, *last, *open; // `open` is not handed over yet
    bool closed, running;
    // Of the thread, until it is joined:
    bool fine;
    int64_t number;
    size_t count;
};

static bool add_batch(struct ledger_ahead *a, sqlite3_stmt *s, const struct batch *batch) {
    for (size_t i = 0; i < batch->count; i++)
        if (!add_change(s, a->number, batch->changes[i])) return false;
    a->count += batch->count;
    return true;
}

static bool add_batches(struct ledger_ahead *a, sqlite3_stmt *s) {
    bool fine = true;
    pthread_mutex_lock(&a->lock);
    while (fine && (a->first || !a->closed)) {
        struct batch *batch = a->first;
        if (!batch) {
            pthread_cond_wait(&a->changed, &a->lock);
            continue;
        }
        a->first = batch->next;
        if (!a->first) a->last = NULL;
        pthread_mutex_unlock(&a->lock);
        fine = add_batch(a, s, batch);
        pthread_mutex_lock(&a->lock);
    }
    pthread_mutex_unlock(&a->lock);
    return fine;
}

static void *add_ahead(void *thing) {
    struct ledger_ahead *a = thing;
    sqlite3 *db = a->ledger->db;
    if (sqlite3_exec(db, "BEGIN IMMEDIATE", NULL, NULL, NULL) != SQLITE_OK) return NULL;
    sqlite3_stmt *s = add_entry(db, &a->intention) ? changes_start(db) : NULL;
    a->number = sqlite3_last_insert_rowid(db);
    a->fine = s && add_batches(a, s);
    sqlite3_finalize(s);
    return NULL;
}

static void hand_over(struct ledger_ahead *a) {
    if (!a->open) return;
    pthread_mutex_lock(&a->lock);
    if (a->last)
        a->last->next = a->open;
    else
        a->first = a->open;
    a->last = a->open;
    pthread_cond_signal(&a->changed);
    pthread_mutex_unlock(&a->lock);
    a->open = NULL;
}

void ledger_stop_ahead(struct ledger *l) {
    struct ledger_ahead *a = l->ahead;
    if (!a || !a->running) return;
    hand_over(a);
    pthread_mutex_lock(&a->lock);
    a->closed = true;
    pthread_cond_signal(&a->changed);
    pthread_mutex_unlock(&a->lock);
    pthread_join(a->thread, NULL);
    a->running = false;
    sqlite3_busy_timeout(l->db, LEDGER_WAIT_MS);
}

// This clean-up comes before that of the ledger itself.
static void destroy(void *thing) {
    struct ledger_ahead *a = thing;
    ledger_stop_ahead(a->ledger);
    pthread_cond_destroy(&a->changed);
    pthread_mutex_destroy(&a->lock);
}

void ledger_begin(struct ledger *l, const struct intention *intention) {
    struct ledger_ahead *a = arena_alloc(l->arena, sizeof *a);
    *a = (struct ledger_ahead){.ledger = l, .intention = *intention};
    a->intention.old_hash = a->intention.new_hash = "";
    pthread_mutex_init(&a->lock, NULL);
    pthread_cond_init(&a->changed, NULL);
    arena_defer(l->arena, destroy, a);
    sqlite3_busy_timeout(l->db, 0);
    a->running = pthread_create(&a->thread, NULL, add_ahead, a) == 0;
    if (a->running)
        l->ahead = a;
    else
        sqlite3_busy_timeout(l->db, LEDGER_WAIT_MS);
}

void ledger_add(struct ledger *l, const struct change *change) {
    struct ledger_ahead *a = l->ahead;
    if (!a) return;
    if (!a->open) a->open = arena_alloc(l->arena, sizeof *a->open);
    a->open->changes[a->open->count++] = change;
    if (a->open->count == BATCH) hand_over(a);
}

// --- when the new file is complete ---

static void forget(struct ledger *l) {
    const char *wrong = l->wrong;
    if (!sqlite3_get_autocommit(l->db)) (void)sqlite3_exec(l->db, "ROLLBACK", NULL, NULL, NULL);
    l->wrong = wrong;
}

// What was added ahead, where it is all and nothing else. False without a reason when it is not.
static bool was_added(struct ledger *l, const struct intention *i, int64_t *number) {
    struct ledger_ahead *a = l->ahead;
    if (!a) return false;
    ledger_stop_ahead(l);
    *number = a->number;
    l->ahead = NULL;
    if (a->fine && a->count == i->count) return true;
    forget(l);
    return false;
}

static bool tell_hashes(struct ledger *l, const struct intention *i, int64_t number) {
    sqlite3_stmt *s = NULL;
    bool fine = sqlite3_prepare_v2(l->db, "UPDATE entry SET old_hash=?,new_hash=? WHERE number=?", -1, &s,
                                   NULL) == SQLITE_OK;
    if (fine) {
        bind_text(s, 1, i->old_hash);
        bind_text(s, 2, i->new_hash);
        sqlite3_bind_int64(s, 3, number);
        fine = sqlite3_step(s) == SQLITE_DONE;
    }
    if (!fine) ledger_fail(l);
    sqlite3_finalize(s);
    return fine;
}

static bool add_all(struct ledger *l, const struct intention *i, int64_t *number) {
    if (!ledger_run(l, "BEGIN IMMEDIATE")) return false;
    if (!add_entry(l->db, i)) return ledger_fail(l);
    *number = sqlite3_last_insert_rowid(l->db);
    return add_changes(l, i, *number);
}

bool ledger_intend(struct ledger *l, const struct intention *intention, int64_t *number) {
    bool fine =
        was_added(l, intention, number) ? tell_hashes(l, intention, *number) : add_all(l, intention, number);
    if (fine && add_held(l, intention, *number) && ledger_run(l, "COMMIT")) return true;
    forget(l);
    return false;
}

bool ledger_finish(struct ledger *l, int64_t number, bool done) {
    return ledger_run(l, arena_format(l->arena, "UPDATE entry SET state='%s' WHERE number=%lld",
                                      done ? "done" : "abandoned", (long long)number));
}
