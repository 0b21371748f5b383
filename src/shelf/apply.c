// SPDX-License-Identifier: MIT
// The order is what makes it safe: the new file is complete and on the disk under another name, then the
// ledger says what is intended, then the file gets its name, then the ledger says that it is done. Whatever
// stops a run, the stock file is as it was, and the new one is whole or not there.
#include "shelf/apply.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "shelf/approved.h"

// So long a stock at most is read with the ledger held: others wait for it.
enum { HELD_MOST = 512 << 20 };

struct applying {
    struct arena *arena;
    const struct apply_request *request;
    struct buf *out;
    struct diags *diags;
    struct stock stock;
    struct stat about; // of the stock when it was opened
    struct newfile file;
    struct ledger *ledger;
    struct intention intention;
    struct edit *edits;
    struct change *changes;
    size_t count;
};

static bool tell(struct applying *a, enum code code, const char *name, const char *why) {
    struct source source = {name, NULL, 0, 0, 0};
    diags_add(a->diags, code, (struct place){&source, 0, 0}, ledger_hint(why), "%s", why);
    return false;
}

static void close_file(void *thing) {
    int *file = thing;
    if (*file >= 0) close(*file);
    *file = -1;
}

static bool open_stock(struct applying *a) {
    const struct apply_request *r = a->request;
    a->stock = (struct stock){.name = r->stock, .map = r->map, .file = -1};
    if (!strcmp(r->stock, "-"))
        return tell(a, CODE_USAGE, NULL, "the stock has to be a file: it is read twice");
    a->stock.file = open(r->stock, O_RDONLY | O_CLOEXEC | O_NOCTTY);
    if (a->stock.file < 0) return tell(a, CODE_OPEN, r->stock, strerror(errno));
    arena_defer(a->arena, close_file, &a->stock.file);
    if (fstat(a->stock.file, &a->about) < 0) return tell(a, CODE_READ, r->stock, strerror(errno));
    return true;
}

static void print_edits(struct applying *a, const struct wanted_set *set) {
    struct buf *out = a->out;
    for (size_t i = 0; i < a->count; i++) {
        const struct change *c = &a->changes[i];
        const struct wanted *w = wanted_find(set, c->id);
        buf_format(out, "%s:%zu: %s\n  - %s\n  + %s\n", a->request->stock, w->found_line,
                   cell_line(a->arena, c->id), cell_line(a->arena, c->old_title),
                   cell_line(a->arena, c->new_title));
    }
}

static void name_and_settle(struct applying *a) {
    struct intention *i = &a->intention;
    struct newfile *file = &a->file;
    const char *path = a->request->ledger;
    int64_t number;
    i->output = newfile_full_path(file);
    i->old_hash = a->stock.hash;
    i->new_hash = file->hash;
    i->changes = a->changes;
    i->count = a->count;
    if (!ledger_intend(a->ledger, i, &number)) {
        tell(a, CODE_WRITE, path, ledger_wrong(a->ledger));
        return;
    }
    bool named = newfile_name(file);
    // A file that got its name but whose folder could not be forced to the disk is there all the same.
    bool there = named || !file->temporary;
    if (!named) tell(a, CODE_WRITE, file->path, file->wrong);
    if (!ledger_finish(a->ledger, number, there)) {
        tell(a, CODE_WRITE, path,
             arena_format(a->arena, "%s; the next run will settle entry %lld", ledger_wrong(a->ledger),
                          (long long)number));
    }
    if (there)
        buf_format(a->out, "%zu title%s changed in %s; entry %lld in %s\n", a->count,
                   a->count == 1 ? "" : "s", file->path, (long long)number, path);
}

static bool open_ledger(struct applying *a) {
    const char *wrong = NULL, *path = a->request->ledger;
    if (a->ledger) return true;
    a->ledger = ledger_open(a->arena, path, LEDGER_WRITE, &wrong);
    if (!a->ledger) return tell(a, CODE_OPEN, path, wrong);
    return ledger_settle(a->ledger, a->arena) || tell(a, CODE_WRITE, path, ledger_wrong(a->ledger));
}

static void drop(void *thing) {
    newfile_drop(thing);
}

// The new file is written while the stock is read. Where the stock was changed just before, its time would
// not tell that it is changed again; then it is read a second time, and its hash tells.
static bool begin_file(struct applying *a) {
    struct newfile *file = &a->file;
    // A ledger that is no ledger is told before anything is written; none is made before there is something
    // for it.
    if (access(a->request->ledger, F_OK) == 0 && !open_ledger(a)) return false;
    file->file = -1;
    arena_defer(a->arena, drop, file);
    if (!newfile_open(a->arena, file, a->request->write, a->stock.file))
        return tell(a, CODE_WRITE, a->request->write, file->wrong);
    if (!newfile_is_later(file, a->stock.file)) return true;
    newfile_start(file);
    a->stock.copy = file;
    a->intention.output = newfile_full_path(file);
    if (!a->ledger || !S_ISREG(a->about.st_mode) || a->about.st_size > HELD_MOST) return true;
    ledger_begin(a->ledger, &a->intention);
    a->stock.ledger = a->ledger;
    return true;
}

static bool is_untouched(const struct applying *a) {
    struct stat now;
    const struct stat *then = &a->about;
    return fstat(a->stock.file, &now) == 0 && now.st_size == then->st_size &&
           now.st_mtim.tv_sec == then->st_mtim.tv_sec && now.st_mtim.tv_nsec == then->st_mtim.tv_nsec &&
           now.st_ctim.tv_sec == then->st_ctim.tv_sec && now.st_ctim.tv_nsec == then->st_ctim.tv_nsec;
}

// True when the file is complete. One reading was enough where nothing had to be taken back.
static bool complete_file(struct applying *a) {
    struct newfile *file = &a->file;
    bool enough = a->stock.copy && file->count == a->count && is_untouched(a);
    bool fine =
        enough ? newfile_end(file) : newfile_write(file, a->stock.file, a->stock.hash, a->edits, a->count);
    return fine || tell(a, CODE_WRITE, a->request->write, file->wrong);
}

static void finish_dry(struct applying *a, const struct wanted_set *set) {
    print_edits(a, set);
    buf_format(a->out, "%zu title%s would be changed, %zu refused; nothing was written\n", a->count,
               a->count == 1 ? "" : "s", set->count - a->count);
}

// The same list is printed or written.
static void finish(struct applying *a, struct wanted_set *set, const char *asked_in) {
    bool write = a->request->write;
    if (write && !begin_file(a)) return;
    if (wanted_match(set, &a->stock, a->diags)) {
        a->count = wanted_edits(set, asked_in, &a->edits, &a->changes, a->diags);
        if (!write)
            finish_dry(a, set);
        else if (!a->count && !a->intention.held_count)
            buf_format(a->out, "no title is to be changed; nothing was written\n");
        else if (complete_file(a) && open_ledger(a))
            name_and_settle(a);
    }
    if (write) newfile_drop(&a->file);
}

static struct applying start(struct arena *arena, const struct apply_request *request, struct buf *out,
                             struct diags *diags, const char *kind) {
    return (struct applying){.arena = arena,
                             .request = request,
                             .out = out,
                             .diags = diags,
                             .intention = {.kind = kind,
                                           .when = request->when,
                                           .stock = request->stock,
                                           .rules = request->rules,
                                           .undoes = request->entry}};
}

void apply_run(struct arena *arena, const struct apply_request *request, struct buf *out,
               struct diags *diags) {
    struct applying *a = arena_alloc(arena, sizeof *a);
    struct approved *approved = arena_alloc(arena, sizeof *approved);
    *a = start(arena, request, out, diags, "apply");
    if (!open_stock(a) || !approved_read(arena, request->proposals, approved, diags)) return;
    a->intention.held = approved->held;
    a->intention.held_count = approved->held_count;
    finish(a, &approved->wanted, request->proposals);
}

// --- undo ---

struct undoing {
    struct applying applying;
    struct wanted_set wanted;
    bool done;
};

static void take_change(void *context, const struct entry *entry, const struct change *c) {
    struct undoing *u = context;
    struct arena *arena = u->applying.arena;
    u->done = !strcmp(entry->state, "done");
    struct wanted *w = wanted_add(&u->wanted, c->id);
    struct change *back = &w->change;
    back->old_title = arena_string(arena, c->new_title);
    back->new_title = arena_string(arena, c->old_title);
    back->old_bytes = arena_copy(arena, c->new_bytes, c->new_size);
    back->old_size = c->new_size;
    back->new_bytes = arena_copy(arena, c->old_bytes, c->old_size);
    back->new_size = c->old_size;
    back->earned[0] = arena_string(arena, c->earned[1]);
    back->earned[1] = arena_string(arena, c->earned[0]);
    back->earned[2] = arena_string(arena, c->earned[2]);
    w->by_bytes = true;
}

void undo_run(struct arena *arena, const struct apply_request *request, struct buf *out,
              struct diags *diags) {
    struct undoing *u = arena_alloc(arena, sizeof *u);
    u->applying = start(arena, request, out, diags, "undo");
    struct applying *a = &u->applying;
    u->wanted = wanted_start(arena);
    if (!open_stock(a)) return;
    if (access(request->ledger, F_OK) < 0) {
        tell(a, CODE_OPEN, request->ledger, strerror(errno));
        return;
    }
    if (!open_ledger(a)) return;
    if (!ledger_changes(a->ledger, request->entry, NULL, take_change, u)) {
        tell(a, CODE_READ, request->ledger, ledger_wrong(a->ledger));
        return;
    }
    if (!u->wanted.count || !u->done) {
        tell(a, CODE_USAGE, request->ledger,
             arena_format(arena,
                          u->wanted.count ? "entry %lld was never done"
                                          : "there is no entry %lld that changed a title",
                          (long long)request->entry));
        return;
    }
    finish(a, &u->wanted, request->stock);
}
