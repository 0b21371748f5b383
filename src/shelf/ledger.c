// SPDX-License-Identifier: MIT
// Every statement is prepared where it is used: there are few, and none is run in a hot loop but one.
#include "shelf/ledger.h"

#include <sqlite3.h>
#include <string.h>
#include <sys/stat.h>
#include <errno.h>

#include "shelf/newfile.h"

enum { SCHEMA = 2, APPLICATION = 0x4153464C, WAIT_MS = 10000 };

// Changes of an entry stand together, in the order of their ids, so that a new entry is added at the end and
// an id is found with one look an entry. A cell's bytes are kept only where they are not the title as it is.
static const char TABLES[] =
    "CREATE TABLE entry(number INTEGER PRIMARY KEY AUTOINCREMENT, kind TEXT NOT NULL, state TEXT NOT NULL,"
    " at TEXT NOT NULL, stock TEXT NOT NULL, output TEXT NOT NULL, old_hash TEXT NOT NULL, new_hash TEXT NOT "
    "NULL,"
    " rules TEXT NOT NULL, undoes INTEGER);"
    "CREATE TABLE change(entry INTEGER NOT NULL REFERENCES entry(number), id TEXT NOT NULL, old_title TEXT "
    "NOT NULL,"
    " new_title TEXT NOT NULL, old_bytes BLOB NOT NULL, new_bytes BLOB NOT NULL, old_earned TEXT, new_earned "
    "TEXT,"
    " best TEXT, PRIMARY KEY(entry, id)) WITHOUT ROWID;"
    "CREATE TABLE held(entry INTEGER NOT NULL REFERENCES entry(number), id TEXT NOT NULL, title TEXT NOT "
    "NULL,"
    " PRIMARY KEY(entry, id)) WITHOUT ROWID;";

struct ledger {
    struct arena *arena;
    sqlite3 *db;
    const char *wrong;
};

const char *ledger_wrong(const struct ledger *ledger) {
    return ledger->wrong;
}

void ledger_close(struct ledger *ledger) {
    if (ledger->db) sqlite3_close_v2(ledger->db);
    ledger->db = NULL;
}

static void close_deferred(void *thing) {
    ledger_close(thing);
}

static bool fail(struct ledger *l) {
    l->wrong = arena_string(l->arena, sqlite3_errmsg(l->db));
    return false;
}

static bool run(struct ledger *l, const char *sql) {
    return sqlite3_exec(l->db, sql, NULL, NULL, NULL) == SQLITE_OK || fail(l);
}

static bool number_of(struct ledger *l, const char *sql, int64_t *number) {
    sqlite3_stmt *s = NULL;
    bool fine = sqlite3_prepare_v2(l->db, sql, -1, &s, NULL) == SQLITE_OK && sqlite3_step(s) == SQLITE_ROW;
    if (fine)
        *number = sqlite3_column_int64(s, 0);
    else
        fail(l);
    sqlite3_finalize(s);
    return fine;
}

static bool refuse(struct ledger *l, const char *why) {
    l->wrong = why;
    return false;
}

static bool make_tables(struct ledger *l, enum ledger_use use) {
    int64_t version, application, tables;
    if (!number_of(l, "PRAGMA user_version", &version) ||
        !number_of(l, "PRAGMA application_id", &application) ||
        !number_of(l, "SELECT count(*) FROM sqlite_master", &tables))
        return false;
    if (!version && !tables)
        return run(l, TABLES) &&
               run(l, arena_format(l->arena, "PRAGMA application_id=%d; PRAGMA user_version=%d;", APPLICATION,
                                   SCHEMA));
    if (application != APPLICATION) return refuse(l, "this is another program's file, and no ledger");
    if (version > SCHEMA) return refuse(l, "this ledger was made by a newer version");
    return version == SCHEMA || use == LEDGER_READ ||
           run(l, arena_format(l->arena, "DROP INDEX change_id; PRAGMA user_version=%d;", SCHEMA));
}

static bool start(struct ledger *l, enum ledger_use use) {
    sqlite3_busy_timeout(l->db, WAIT_MS);
    sqlite3_extended_result_codes(l->db, 1);
    int64_t version;
    if (use == LEDGER_READ) return number_of(l, "PRAGMA user_version", &version) && make_tables(l, use);
    // The tables come whole or not at all, and two processes do not make them at one time.
    if (!run(l, "PRAGMA page_size=16384; PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA "
                "cache_size=-16384;") ||
        !run(l, "BEGIN IMMEDIATE"))
        return false;
    if (make_tables(l, use) && run(l, "COMMIT")) return true;
    const char *wrong = l->wrong;
    (void)sqlite3_exec(l->db, "ROLLBACK", NULL, NULL, NULL);
    l->wrong = wrong;
    return false;
}

struct ledger *ledger_open(struct arena *arena, const char *path, enum ledger_use use, const char **wrong) {
    struct ledger *l = arena_alloc(arena, sizeof *l);
    l->arena = arena;
    struct stat about;
    if (use == LEDGER_READ && stat(path, &about) < 0) {
        *wrong = strerror(errno);
        return NULL;
    }
    arena_defer(arena, close_deferred, l);
    int flags = SQLITE_OPEN_READWRITE | SQLITE_OPEN_NOMUTEX | (use == LEDGER_WRITE ? SQLITE_OPEN_CREATE : 0);
    bool fine = sqlite3_open_v2(path, &l->db, flags, NULL) == SQLITE_OK;
    if (!l->db) arena_give_up(arena);
    if (!fine) fail(l);
    if (fine && start(l, use)) return l;
    *wrong = l->wrong;
    ledger_close(l);
    return NULL;
}

static void bind_text(sqlite3_stmt *s, int at, const char *text) {
    sqlite3_bind_text(s, at, text ? text : "", -1, SQLITE_STATIC);
}

// --- intended, then settled ---

static bool add_entry(struct ledger *l, const struct intention *i) {
    sqlite3_stmt *s = NULL;
    bool fine =
        sqlite3_prepare_v2(l->db,
                           "INSERT INTO entry(kind,state,at,stock,output,rules,old_hash,new_hash,undoes)"
                           " VALUES(?,'intended',?,?,?,?,?,?,?)",
                           -1, &s, NULL) == SQLITE_OK;
    const char *texts[] = {i->kind, i->when, i->stock, i->output, i->rules, i->old_hash, i->new_hash};
    for (int k = 0; fine && k < 7; k++) bind_text(s, k + 1, texts[k]);
    if (fine && i->undoes) sqlite3_bind_int64(s, 8, i->undoes);
    fine = fine && sqlite3_step(s) == SQLITE_DONE;
    if (!fine) fail(l);
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

static bool add_changes(struct ledger *l, const struct intention *i, int64_t number) {
    sqlite3_stmt *s = NULL;
    bool fine =
        sqlite3_prepare_v2(l->db, "INSERT INTO change VALUES(?,?,?,?,?,?,?,?,?)", -1, &s, NULL) == SQLITE_OK;
    for (size_t k = 0; fine && k < i->count; k++) fine = add_change(s, number, &i->changes[k]);
    if (!fine) fail(l);
    sqlite3_finalize(s);
    s = NULL;
    if (!fine) return false;
    fine = sqlite3_prepare_v2(l->db, "INSERT INTO held VALUES(?,?,?)", -1, &s, NULL) == SQLITE_OK;
    for (size_t k = 0; fine && k < i->held_count; k++) {
        sqlite3_reset(s);
        sqlite3_bind_int64(s, 1, number);
        bind_text(s, 2, i->held[k].id);
        bind_text(s, 3, i->held[k].old_title);
        fine = sqlite3_step(s) == SQLITE_DONE;
    }
    if (!fine) fail(l);
    sqlite3_finalize(s);
    return fine;
}

bool ledger_intend(struct ledger *l, const struct intention *intention, int64_t *number) {
    if (!run(l, "BEGIN IMMEDIATE")) return false;
    bool fine = add_entry(l, intention);
    *number = sqlite3_last_insert_rowid(l->db);
    if (fine && add_changes(l, intention, *number) && run(l, "COMMIT")) return true;
    (void)sqlite3_exec(l->db, "ROLLBACK", NULL, NULL, NULL);
    return false;
}

bool ledger_finish(struct ledger *l, int64_t number, bool done) {
    return run(l, arena_format(l->arena, "UPDATE entry SET state='%s' WHERE number=%lld",
                               done ? "done" : "abandoned", (long long)number));
}

struct open_entry {
    int64_t number;
    const char *output, *hash;
    struct open_entry *next;
};

bool ledger_settle(struct ledger *l, struct arena *arena) {
    sqlite3_stmt *s = NULL;
    struct open_entry *all = NULL;
    if (sqlite3_prepare_v2(l->db, "SELECT number,output,new_hash FROM entry WHERE state='intended'", -1, &s,
                           NULL) != SQLITE_OK)
        return fail(l);
    int step;
    while ((step = sqlite3_step(s)) == SQLITE_ROW) {
        struct open_entry *e = arena_alloc(arena, sizeof *e);
        *e = (struct open_entry){sqlite3_column_int64(s, 0),
                                 arena_string(arena, (const char *)sqlite3_column_text(s, 1)),
                                 arena_string(arena, (const char *)sqlite3_column_text(s, 2)), all};
        all = e;
    }
    if (step != SQLITE_DONE) fail(l);
    sqlite3_finalize(s);
    bool fine = step == SQLITE_DONE;
    for (; fine && all; all = all->next) {
        const char *hash = file_hash_of(arena, all->output);
        fine = ledger_finish(l, all->number, hash && !strcmp(hash, all->hash));
    }
    return fine;
}

// --- reading ---

static const char *text_at(sqlite3_stmt *s, int at) {
    const unsigned char *text = sqlite3_column_text(s, at);
    return text ? (const char *)text : "";
}

static const char *bytes_at(sqlite3_stmt *s, int at, const char *title, size_t *size) {
    const char *bytes = sqlite3_column_blob(s, at);
    *size = bytes ? (size_t)sqlite3_column_bytes(s, at) : strlen(title);
    return bytes ? bytes : title;
}

static struct entry entry_at(sqlite3_stmt *s) {
    return (struct entry){sqlite3_column_int64(s, 0),
                          text_at(s, 1),
                          text_at(s, 2),
                          text_at(s, 3),
                          text_at(s, 4),
                          text_at(s, 5),
                          text_at(s, 6),
                          0,
                          0};
}

#define ENTRY_COLUMNS "e.number,e.kind,e.state,e.at,e.stock,e.output,e.rules"

bool ledger_entries(struct ledger *l, ledger_take_entry *take, void *context) {
    sqlite3_stmt *s = NULL;
    if (sqlite3_prepare_v2(
            l->db,
            "SELECT " ENTRY_COLUMNS ",(SELECT count(*) FROM change c WHERE c.entry=e.number),"
            "(SELECT count(*) FROM held h WHERE h.entry=e.number) FROM entry e ORDER BY e.number",
            -1, &s, NULL) != SQLITE_OK)
        return fail(l);
    int step;
    while ((step = sqlite3_step(s)) == SQLITE_ROW) {
        struct entry e = entry_at(s);
        e.changes = sqlite3_column_int64(s, 7);
        e.held = sqlite3_column_int64(s, 8);
        take(context, &e);
    }
    if (step != SQLITE_DONE) fail(l);
    sqlite3_finalize(s);
    return step == SQLITE_DONE;
}

bool ledger_changes(struct ledger *l, int64_t number, const char *id, ledger_take_change *take,
                    void *context) {
    sqlite3_stmt *s = NULL;
    const char *sql =
        id ? "SELECT " ENTRY_COLUMNS ",c.id,c.old_title,c.new_title,c.old_bytes,c.new_bytes,c.old_earned,"
             "c.new_earned,c.best FROM entry e CROSS JOIN change c ON c.entry=e.number AND c.id=?"
             " ORDER BY e.number"
           : "SELECT " ENTRY_COLUMNS ",c.id,c.old_title,c.new_title,c.old_bytes,c.new_bytes,c.old_earned,"
             "c.new_earned,c.best FROM change c JOIN entry e ON e.number=c.entry WHERE e.number=?"
             " ORDER BY c.id";
    if (sqlite3_prepare_v2(l->db, sql, -1, &s, NULL) != SQLITE_OK) return fail(l);
    if (id)
        bind_text(s, 1, id);
    else
        sqlite3_bind_int64(s, 1, number);
    int step;
    while ((step = sqlite3_step(s)) == SQLITE_ROW) {
        struct entry e = entry_at(s);
        struct change c = {.id = text_at(s, 7), .old_title = text_at(s, 8), .new_title = text_at(s, 9)};
        c.old_bytes = bytes_at(s, 10, c.old_title, &c.old_size);
        c.new_bytes = bytes_at(s, 11, c.new_title, &c.new_size);
        for (int k = 0; k < 3; k++) c.earned[k] = text_at(s, 12 + k);
        take(context, &e, &c);
    }
    if (step != SQLITE_DONE) fail(l);
    sqlite3_finalize(s);
    return step == SQLITE_DONE;
}
