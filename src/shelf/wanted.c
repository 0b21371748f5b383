// SPDX-License-Identifier: MIT
// A title is changed only where exactly one row has its id and that row still holds the title that was
// judged. Whatever is in doubt is refused with its reason, and everything else goes on.
#include "shelf/wanted.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "text/utf8.h"

static uint64_t hash_text(const char *text) {
    uint64_t h = 14695981039346656037u;
    for (; *text; text++) h = (h ^ (unsigned char)*text) * 1099511628211u;
    return h ^ (h >> 32);
}

struct wanted_set wanted_start(struct arena *arena) {
    struct wanted_set set = {.arena = arena, .slot_count = 1024};
    set.slots = arena_array(arena, set.slot_count, sizeof *set.slots);
    return set;
}

static uint32_t *slot_of(const struct wanted_set *set, const char *id) {
    size_t at = (size_t)hash_text(id) & (set->slot_count - 1);
    while (set->items && set->slots[at] && strcmp(set->items[set->slots[at] - 1].change.id, id) != 0)
        at = (at + 1) & (set->slot_count - 1);
    return &set->slots[at];
}

struct wanted *wanted_find(const struct wanted_set *set, const char *id) {
    uint32_t number = *slot_of(set, id);
    return number ? &set->items[number - 1] : NULL;
}

struct wanted *wanted_add(struct wanted_set *set, const char *id) {
    struct wanted *known = wanted_find(set, id);
    if (known) {
        known->asked++;
        return known;
    }
    if (2 * (set->count + 1) > set->slot_count) {
        set->slot_count *= 4;
        set->slots = arena_array(set->arena, set->slot_count, sizeof *set->slots);
        for (size_t i = 0; set->items && i < set->count; i++)
            *slot_of(set, set->items[i].change.id) = (uint32_t)i + 1;
    }
    set->items = arena_grow(set->arena, set->items, set->count, &set->room, sizeof *set->items);
    struct wanted *w = &set->items[set->count];
    *w = (struct wanted){.change.id = arena_string(set->arena, id), .asked = 1};
    *slot_of(set, id) = (uint32_t)++set->count;
    return w;
}

bool id_is_altered(const char *id) {
    // 1.23457E+11 is what is left of a long number in a narrow cell.
    size_t digits = strspn(id, "0123456789.,");
    if (!digits || (id[digits] != 'E' && id[digits] != 'e') || (id[digits + 1] != '+')) return false;
    size_t power = strspn(id + digits + 2, "0123456789");
    return power && !id[digits + 2 + power];
}

// --- walking the stock ---

struct walk {
    struct wanted_set *set;
    struct stock *stock;
    struct diags *diags;
    struct sheet *sheet;
    struct columns columns;
    struct file_hash hash;
    int error;
};

static size_t get_bytes(void *context, char *to, size_t room) {
    struct walk *walk = context;
    for (;;) {
        ssize_t got = read(walk->stock->file, to, room);
        if (got >= 0) {
            file_hash_add(&walk->hash, to, (size_t)got);
            return (size_t)got;
        }
        if (errno == EINTR) continue;
        walk->error = errno;
        return (size_t)-1;
    }
}

static const char *title_problem(const char *new_title) {
    if (!*new_title) return "the new title is empty";
    if (cell_is_formula(new_title)) return "a spreadsheet would run the new title as a formula";
    if (utf8_check(new_title, strlen(new_title)) != strlen(new_title) ||
        utf8_unwanted(new_title, strlen(new_title), false) != strlen(new_title))
        return "the new title holds a character that no title may";
    return NULL;
}

static void settle(struct walk *walk, struct wanted *w, const struct sheet_row *row) {
    struct arena *arena = walk->set->arena;
    const struct dialect *dialect = sheet_dialect(walk->sheet);
    size_t at = (size_t)walk->columns.at[COLUMN_TITLE];
    const char *why = "";
    w->found_line = row->line;
    const char *title = row->unclosed ? NULL : cell_text(arena, dialect, row, at, &why);
    if (!title) {
        w->refused = row->unclosed ? "a quote is open in its row"
                                   : arena_format(arena, "the title in the stock %s", why);
        return;
    }
    const struct sheet_cell *cell = &row->cells[at];
    const char *bytes = row->bytes + cell->from;
    size_t size = cell->to - cell->from;
    struct change *c = &w->change;
    if (strcmp(title, c->old_title) != 0)
        w->refused = "the stock holds another title by now";
    else if (!w->by_bytes && cell_is_formula(title))
        w->refused = "a spreadsheet would run the title in the stock as a formula";
    else if (cell->odd)
        w->refused = "the title in the stock has something behind its closing quote";
    else if (row->count != walk->columns.count)
        w->refused = "its row has another number of cells than the header";
    else if (!w->by_bytes)
        w->refused = title_problem(c->new_title);
    if (w->refused) return;
    bool same = w->by_bytes && size == c->old_size && !memcmp(bytes, c->old_bytes, size);
    if (!same) {
        c->new_bytes = cell_bytes(arena, dialect, c->new_title, cell->quoted, &c->new_size);
        if (!c->new_bytes) {
            w->refused = "the new title holds a letter that Windows-1252 has not";
            return;
        }
    }
    c->old_bytes = arena_copy(arena, bytes, size);
    c->old_size = size;
    w->edit = (struct edit){row->at + cell->from, row->at + cell->to, c->new_bytes, c->new_size};
}

static void take_row(struct walk *walk, const struct sheet_row *row) {
    const char *why;
    struct arena *arena = walk->set->arena;
    struct arena_mark mark = arena_mark(arena);
    const char *id =
        cell_text(arena, sheet_dialect(walk->sheet), row, (size_t)walk->columns.at[COLUMN_ID], &why);
    struct wanted *w = id ? wanted_find(walk->set, id) : NULL;
    if (id && *id == '0') {
        struct wanted *bare = wanted_find(walk->set, id + strspn(id, "0"));
        if (bare) bare->zeros = true;
    }
    arena_release(arena, &mark);
    if (w && !w->seen++) settle(walk, w, row);
}

bool wanted_match(struct wanted_set *set, struct stock *stock, struct diags *diags) {
    struct walk walk = {.set = set, .stock = stock, .diags = diags};
    file_hash_start(&walk.hash);
    walk.sheet = sheet_open(set->arena, get_bytes, &walk);
    struct sheet_row row;
    const char *refused = sheet_dialect(walk.sheet)->refused;
    struct source source = {stock->name, NULL, 0, 0, 0};
    if (refused || !sheet_next(walk.sheet, &row)) {
        diags_add(diags, walk.error ? CODE_READ : CODE_CSV, (struct place){&source, 0, 0}, NULL, "%s",
                  walk.error ? strerror(walk.error)
                  : refused  ? refused
                             : "there is no header");
        return false;
    }
    if (!columns_find(set->arena, sheet_dialect(walk.sheet), &row, stock->map, stock->name, &walk.columns,
                      diags))
        return false;
    for (; sheet_next(walk.sheet, &row); stock->rows++) take_row(&walk, &row);
    if (sheet_failed(walk.sheet)) {
        diags_add(diags, CODE_READ, (struct place){&source, 0, 0}, NULL, "%s", strerror(walk.error));
        return false;
    }
    stock->hash = file_hash_text(set->arena, &walk.hash);
    return true;
}

// --- what can be done ---

static const char *refusal(const struct wanted *w) {
    if (w->refused && !w->seen) return w->refused;
    if (w->asked > 1) return "it is asked for twice";
    if (w->seen > 1) return "the id stands more than once in the stock";
    if (w->zeros)
        return w->seen ? "the stock holds this id with and without zeros before it"
                       : "the stock holds this id with zeros before it: a spreadsheet seems to have taken "
                         "them away";
    if (!w->seen)
        return id_is_altered(w->change.id) ? "a spreadsheet seems to have made this id of a longer one"
                                           : "the stock holds no such id";
    return w->refused;
}

static int by_place(const void *a, const void *b) {
    const struct wanted *const *x = a, *const *y = b;
    return ((*x)->edit.from > (*y)->edit.from) - ((*x)->edit.from < (*y)->edit.from);
}

size_t wanted_edits(struct wanted_set *set, const char *name, struct edit **edits, struct change **changes,
                    struct diags *diags) {
    const struct wanted **kept = arena_array(set->arena, set->count + 1, sizeof *kept);
    size_t count = 0;
    for (size_t i = 0; i < set->count; i++) {
        struct wanted *w = &set->items[i];
        w->refused = refusal(w);
        if (!w->refused) {
            kept[count++] = w;
            continue;
        }
        size_t line = w->line ? w->line : w->found_line;
        const char *id = cell_line(set->arena, w->change.id);
        struct source source = {name, line ? id : NULL, line ? strlen(id) : 0, line, 0};
        diags_add(diags, CODE_VALUE, (struct place){&source, 0, source.size}, NULL,
                  "'%s' is left as it is: %s", cell_line(set->arena, w->change.id), w->refused);
    }
    if (count) qsort(kept, count, sizeof *kept, by_place);
    *edits = arena_array(set->arena, count + 1, sizeof **edits);
    *changes = arena_array(set->arena, count + 1, sizeof **changes);
    for (size_t i = 0; i < count; i++) {
        (*edits)[i] = kept[i]->edit;
        (*changes)[i] = kept[i]->change;
    }
    return count;
}
