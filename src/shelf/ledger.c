// SPDX-License-Identifier: MIT
// Every statement is prepared where it is used: there are few, and none is run in a hot loop but one. What is
// not committed stays in memory, as the changes themselves do, so that only a commit writes to the disk.
#include "shelf/ledger.h"

#include <sqlite3.h>
#include <string.h>
#include <sys/stat.h>
#include <errno.h>

#include "shelf/ledger_private.h"
#include "shelf/newfile.h"

enum { SCHEMA = 2, APPLICATION = 0x4153464C };

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

const char *ledger_wrong(const struct ledger *ledger) {
    return ledger->wrong;
}

void ledger_close(struct ledger *ledger) {
    ledger_stop_ahead(ledger);
    if (ledger->db) sqlite3_close_v2(ledger->db);
    ledger->db = NULL;
}

static void close_deferred(void *thing) {
    ledger_close(thing);
}

static const char held[] = "another process holds the ledger",
                  newer[] = "this ledger was made by a newer version",
                  others[] = "this is another program's file, and no ledger",
                  no_ledger[] = "this file is no ledger", damaged[] = "the ledger is damaged";

const char *ledger_hint(const char *wrong) {
    static const struct {
        const char *wrong, *hint;
    } hints[] = {{held, "wait until it has ended, then try again"},
                 {newer, "use that version, or name another ledger with --store"},
                 {others, "name another file with --store"},
                 {no_ledger, "name another file with --store"},
                 {damaged, "keep it for whoever can read it, and name a new one with --store"}};
    for (size_t i = 0; wrong && i < sizeof hints / sizeof *hints; i++)
        if (!strcmp(wrong, hints[i].wrong)) return hints[i].hint;
    return NULL;
}

bool ledger_fail(struct ledger *l) {
    enum { PRIMARY = 0xff };
    switch (sqlite3_errcode(l->db) & PRIMARY) {
    case SQLITE_BUSY:
    case SQLITE_LOCKED:
        l->wrong = held;
        break;
    case SQLITE_NOTADB:
        l->wrong = no_ledger;
        break;
    case SQLITE_CORRUPT:
        l->wrong = damaged;
        break;
    default:
        l->wrong = arena_string(l->arena, sqlite3_errmsg(l->db));
    }
    return false;
}

bool ledger_run(struct ledger *l, const char *sql) {
    return sqlite3_exec(l->db, sql, NULL, NULL, NULL) == SQLITE_OK || ledger_fail(l);
}

static bool number_of(struct ledger *l, const char *sql, int64_t *number) {
    sqlite3_stmt *s = NULL;
    bool fine = sqlite3_prepare_v2(l->db, sql, -1, &s, NULL) == SQLITE_OK && sqlite3_step(s) == SQLITE_ROW;
    if (fine)
        *number = sqlite3_column_int64(s, 0);
    else
        ledger_fail(l);
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
        return ledger_run(l, TABLES) &&
               ledger_run(l, arena_format(l->arena, "PRAGMA application_id=%d; PRAGMA user_version=%d;",
                                          APPLICATION, SCHEMA));
    if (application != APPLICATION) return refuse(l, others);
    if (version > SCHEMA) return refuse(l, newer);
    return version == SCHEMA || use == LEDGER_READ ||
           ledger_run(l, arena_format(l->arena, "DROP INDEX change_id; PRAGMA user_version=%d;", SCHEMA));
}

// While another process turns the new file into one with a write-ahead log, SQLite says at once that it is
// held, whatever it was told to wait.
static bool run_patiently(struct ledger *l, const char *sql) {
    enum { STEP_MS = 20, PRIMARY = 0xff };
    for (int waited = 0; !ledger_run(l, sql); waited += STEP_MS) {
        bool held_now = (sqlite3_errcode(l->db) & PRIMARY) == SQLITE_BUSY;
        if (!held_now || waited >= LEDGER_WAIT_MS) return false;
        sqlite3_sleep(STEP_MS);
    }
    return true;
}

static bool start(struct ledger *l, enum ledger_use use) {
    sqlite3_busy_timeout(l->db, LEDGER_WAIT_MS);
    sqlite3_extended_result_codes(l->db, 1);
    int64_t version;
    if (use == LEDGER_READ) return number_of(l, "PRAGMA user_version", &version) && make_tables(l, use);
    // The tables come whole or not at all, and two processes do not make them at one time.
    if (!run_patiently(l, "PRAGMA page_size=16384; PRAGMA journal_mode=WAL; PRAGMA synchronous=FULL; PRAGMA "
                          "cache_size=-16384;") ||
        !ledger_run(l, "BEGIN IMMEDIATE"))
        return false;
    if (make_tables(l, use) && ledger_run(l, "COMMIT")) return true;
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
    if (!fine) ledger_fail(l);
    if (fine && start(l, use)) return l;
    *wrong = l->wrong;
    ledger_close(l);
    return NULL;
}

// --- settled ---

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
        return ledger_fail(l);
    int step;
    while ((step = sqlite3_step(s)) == SQLITE_ROW) {
        struct open_entry *e = arena_alloc(arena, sizeof *e);
        *e = (struct open_entry){sqlite3_column_int64(s, 0),
                                 arena_string(arena, (const char *)sqlite3_column_text(s, 1)),
                                 arena_string(arena, (const char *)sqlite3_column_text(s, 2)), all};
        all = e;
    }
    if (step != SQLITE_DONE) ledger_fail(l);
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
        return ledger_fail(l);
    int step;
    while ((step = sqlite3_step(s)) == SQLITE_ROW) {
        struct entry e = entry_at(s);
        e.changes = sqlite3_column_int64(s, 7);
        e.held = sqlite3_column_int64(s, 8);
        take(context, &e);
    }
    if (step != SQLITE_DONE) ledger_fail(l);
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
    if (sqlite3_prepare_v2(l->db, sql, -1, &s, NULL) != SQLITE_OK) return ledger_fail(l);
    if (id)
        sqlite3_bind_text(s, 1, id, -1, SQLITE_STATIC);
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
    if (step != SQLITE_DONE) ledger_fail(l);
    sqlite3_finalize(s);
    return step == SQLITE_DONE;
}
