// SPDX-License-Identifier: MIT
// A title is changed only where exactly one row has its id and that row still holds the title that was
// judged. Whatever is in doubt is refused with its reason, and everything else goes on.
#include "shelf/wanted.h"

#include <errno.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "shelf/ahead.h"
#include "shelf/ids.h"
#include "text/utf8.h"

static bool is_text(const char *text, const char *bytes, size_t size) {
    return !strncmp(text, bytes, size) && !text[size];
}

struct wanted_set wanted_start(struct arena *arena) {
    struct wanted_set set = {.arena = arena, .slot_count = 1024};
    set.slots = arena_array(arena, set.slot_count, sizeof *set.slots);
    return set;
}

struct wanted *wanted_at(const struct wanted_set *set, size_t item) {
    return &set->blocks[item / WANTED_BLOCK][item % WANTED_BLOCK];
}

// Where it is, or the empty slot where it belongs. An item is looked at only where half of the hash is the
// same.
static struct wanted_slot *slot_of(const struct wanted_set *set, uint64_t hash, const char *id, size_t size) {
    uint32_t tag = (uint32_t)(hash >> 32);
    size_t at = (size_t)hash & (set->slot_count - 1);
    for (; set->slots[at].number; at = (at + 1) & (set->slot_count - 1))
        if (set->slots[at].tag == tag &&
            is_text(wanted_at(set, set->slots[at].number - 1)->change.id, id, size))
            break;
    return &set->slots[at];
}

static void put_slot(struct wanted_set *set, size_t item) {
    const struct wanted *w = wanted_at(set, item);
    size_t at = (size_t)w->hash & (set->slot_count - 1);
    while (set->slots[at].number) at = (at + 1) & (set->slot_count - 1);
    set->slots[at] = (struct wanted_slot){(uint32_t)(w->hash >> 32), (uint32_t)item + 1};
}

static struct wanted *find(const struct wanted_set *set, uint64_t hash, const char *id, size_t size) {
    uint32_t number = slot_of(set, hash, id, size)->number;
    return number ? wanted_at(set, number - 1) : NULL;
}

struct wanted *wanted_find(const struct wanted_set *set, const char *id) {
    return find(set, id_hash(id, strlen(id)), id, strlen(id));
}

struct wanted *wanted_add(struct wanted_set *set, const char *id) {
    size_t size = strlen(id);
    uint64_t hash = id_hash(id, size);
    struct wanted *known = find(set, hash, id, size);
    if (known) {
        known->asked++;
        return known;
    }
    if (2 * (set->count + 1) > set->slot_count) {
        set->slot_count *= 2;
        set->slots = arena_array(set->arena, set->slot_count, sizeof *set->slots);
        for (size_t i = 0; i < set->count; i++) put_slot(set, i);
    }
    size_t block = set->count / WANTED_BLOCK;
    if (set->count % WANTED_BLOCK == 0) {
        set->blocks = arena_grow(set->arena, set->blocks, block, &set->room, sizeof *set->blocks);
        set->blocks[block] = arena_array(set->arena, WANTED_BLOCK, sizeof **set->blocks);
    }
    struct wanted *w = wanted_at(set, set->count);
    *w = (struct wanted){.change.id = arena_copy(set->arena, id, size), .hash = hash, .asked = 1};
    put_slot(set, set->count++);
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

// One bit of eight for each wanted id: small enough to stay near the processor, and it tells of nearly
// every row that it is not wanted.
struct sieve {
    uint64_t *bits;
    size_t mask;
};

static struct sieve sieve_of(const struct wanted_set *set) {
    size_t words = 64;
    while (words < set->count / 8) words *= 2;
    struct sieve sieve = {arena_array(set->arena, words, sizeof *sieve.bits), words - 1};
    for (size_t i = 0; i < set->count; i++) {
        uint64_t hash = wanted_at(set, i)->hash;
        sieve.bits[hash >> 32 & sieve.mask] |= (uint64_t)1 << (hash >> 26 & 63);
    }
    return sieve;
}

static struct wanted *sift(const struct sieve *sieve, const struct wanted_set *set, const char *id,
                           size_t size) {
    uint64_t hash = id_hash(id, size);
    bool may = sieve->bits[hash >> 32 & sieve->mask] >> (hash >> 26 & 63) & 1;
    return may ? find(set, hash, id, size) : NULL;
}

struct walk {
    struct wanted_set *set;
    struct stock *stock;
    struct diags *diags;
    struct sheet *sheet;
    struct columns columns;
    struct ahead *ahead;
    struct sieve sieve;
};

static size_t get_bytes(void *context, char *to, size_t room) {
    return ahead_get(context, to, room);
}

static void pass_bytes(void *context, const char *bytes, size_t size) {
    newfile_pass(context, bytes, size);
}

static const char *title_problem(const char *new_title) {
    size_t size = strlen(new_title);
    if (!size) return "the new title is empty";
    if (cell_is_formula(new_title)) return "a spreadsheet would run the new title as a formula";
    if (cell_is_printing(new_title, size)) return NULL;
    if (utf8_check(new_title, size) != size || utf8_unwanted(new_title, size, false) != size)
        return "the new title holds a character that no title may";
    return NULL;
}

// Mostly it is the title that is looked for.
static const char *title_of(struct arena *arena, const struct dialect *dialect, const struct sheet_row *row,
                            size_t at, const struct wanted *w, const char **why) {
    const char *text;
    size_t size;
    if (cell_plain(row, at, &text, &size) && is_text(w->change.old_title, text, size))
        return w->change.old_title;
    return row->unclosed ? NULL : cell_text(arena, dialect, row, at, why);
}

static void settle(struct walk *walk, struct wanted *w, const struct sheet_row *row) {
    struct arena *arena = walk->set->arena;
    const struct dialect *dialect = sheet_dialect(walk->sheet);
    size_t at = (size_t)walk->columns.at[COLUMN_TITLE];
    const char *why = "";
    w->found_line = row->line;
    const char *title = title_of(arena, dialect, row, at, w, &why);
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
    // The file may have been saved since with another delimiter or in another encoding.
    bool same = w->by_bytes && size == c->old_size && !memcmp(bytes, c->old_bytes, size) &&
                cell_says(arena, dialect, c->new_bytes, c->new_size, c->new_title);
    if (!same) {
        c->new_bytes = cell_bytes(arena, dialect, c->new_title, cell->quoted, &c->new_size);
        if (!c->new_bytes) {
            w->refused = w->by_bytes ? "the old title holds a letter that Windows-1252 has not"
                                     : "the new title holds a letter that Windows-1252 has not";
            return;
        }
    }
    c->old_bytes = is_text(c->old_title, bytes, size) ? c->old_title : arena_copy(arena, bytes, size);
    c->old_size = size;
    w->edit = (struct edit){row->at + cell->from, row->at + cell->to, c->new_bytes, c->new_size};
    if (!walk->stock->copy || w->asked != 1 || w->zeros) return;
    newfile_edit(walk->stock->copy, &w->edit);
    if (walk->stock->ledger) ledger_add(walk->stock->ledger, c);
}

static void take_row(struct walk *walk, const struct sheet_row *row) {
    size_t at = (size_t)walk->columns.at[COLUMN_ID], size;
    const char *why, *id;
    struct arena_mark mark;
    bool plain = cell_plain(row, at, &id, &size);
    if (!plain) {
        mark = arena_mark(walk->set->arena);
        id = cell_text(walk->set->arena, sheet_dialect(walk->sheet), row, at, &why);
        size = id ? strlen(id) : 0;
    }
    struct wanted *w = id ? sift(&walk->sieve, walk->set, id, size) : NULL;
    if (id && size && *id == '0') {
        size_t zeros = 1;
        while (zeros < size && id[zeros] == '0') zeros++;
        struct wanted *bare = sift(&walk->sieve, walk->set, id + zeros, size - zeros);
        if (bare) bare->zeros = true;
    }
    if (!plain) arena_release(walk->set->arena, &mark);
    if (w && !w->seen++) settle(walk, w, row);
}

bool wanted_match(struct wanted_set *set, struct stock *stock, struct diags *diags) {
    struct walk walk = {.set = set, .stock = stock, .diags = diags, .sieve = sieve_of(set)};
    walk.ahead = ahead_open(set->arena, stock->file);
    walk.sheet = sheet_open(set->arena, get_bytes, walk.ahead);
    if (stock->copy) sheet_pass_on(walk.sheet, pass_bytes, stock->copy);
    struct sheet_row row;
    const char *refused = sheet_dialect(walk.sheet)->refused;
    struct source source = {stock->name, NULL, 0, 0, 0};
    if (refused || !sheet_next(walk.sheet, &row)) {
        diags_add(diags, ahead_error(walk.ahead) ? CODE_READ : CODE_CSV, (struct place){&source, 0, 0}, NULL,
                  "%s",
                  ahead_error(walk.ahead) ? strerror(ahead_error(walk.ahead))
                  : refused               ? refused
                                          : "there is no header");
        return false;
    }
    if (!columns_find(set->arena, sheet_dialect(walk.sheet), &row, stock->map, stock->name, &walk.columns,
                      diags))
        return false;
    for (; sheet_next(walk.sheet, &row); stock->rows++) take_row(&walk, &row);
    if (sheet_failed(walk.sheet)) {
        diags_add(diags, CODE_READ, (struct place){&source, 0, 0}, NULL, "%s",
                  strerror(ahead_error(walk.ahead)));
        return false;
    }
    stock->hash = ahead_hash(walk.ahead);
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
        struct wanted *w = wanted_at(set, i);
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
