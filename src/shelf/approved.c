// SPDX-License-Identifier: MIT
// The file may have been through a spreadsheet: another delimiter, quotes, line ends, columns added or moved.
// Only the names of the columns have to be there.
#include "shelf/approved.h"

#include <errno.h>
#include <fcntl.h>
#include <string.h>
#include <unistd.h>

#include "text/utf8.h"

enum {
    AT_ID,
    AT_OLD,
    AT_NEW,
    AT_APPROVE,
    AT_NEEDED,
    AT_OLD_EARNED = AT_NEEDED,
    AT_NEW_EARNED,
    AT_BEST,
    AT_COUNT
};
static const char *const NAMES[AT_COUNT] = {"id",         "old_title",  "new_title", "approve",
                                            "old_earned", "new_earned", "best"};

struct reading {
    struct approved *approved;
    const char *name;
    struct sheet *sheet;
    struct diags *diags;
    int file, error;
    int at[AT_COUNT];
    size_t width;
};

static size_t get_bytes(void *context, char *to, size_t room) {
    struct reading *r = context;
    for (;;) {
        ssize_t got = read(r->file, to, room);
        if (got >= 0) return (size_t)got;
        if (errno == EINTR) continue;
        r->error = errno;
        return (size_t)-1;
    }
}

static bool find_columns(struct arena *arena, struct reading *r, const struct sheet_row *header) {
    r->width = header->count;
    for (int k = 0; k < AT_COUNT; k++) {
        r->at[k] = -1;
        for (size_t i = 0; i < header->count; i++) {
            const char *why, *text = cell_text(arena, sheet_dialect(r->sheet), header, i, &why);
            if (text && !strcmp(utf8_fold(arena, text), NAMES[k])) r->at[k] = (int)i;
        }
        if (r->at[k] >= 0 || k >= AT_NEEDED) continue;
        sheet_tell(r->diags, CODE_CSV_HEADER, r->name, header, -1, NULL,
                   arena_format(arena, "these are no proposals: there is no column '%s'", NAMES[k]));
        return false;
    }
    return true;
}

static const char *text_of(struct arena *arena, const struct reading *r, const struct sheet_row *row,
                           int column) {
    const char *why;
    return column < 0 ? NULL : cell_text(arena, sheet_dialect(r->sheet), row, (size_t)column, &why);
}

// "yes" in any letters; spaces around it are a slip of the hand.
static bool says(struct arena *arena, const char *text, const char *word) {
    const char *fold = utf8_fold(arena, text + strspn(text, " "));
    size_t size = strlen(word);
    return !strncmp(fold, word, size) && fold[size + strspn(fold + size, " ")] == '\0';
}

enum answer { ANSWER_NONE, ANSWER_YES, ANSWER_HELD };

static enum answer answer_of(struct arena *arena, const struct reading *r, const struct sheet_row *row) {
    size_t size;
    const char *text;
    if (cell_plain(row, (size_t)r->at[AT_APPROVE], &text, &size)) {
        if (!size) return ANSWER_NONE;
        if (size == 3 && !memcmp(text, "yes", 3)) return ANSWER_YES;
    }
    text = text_of(arena, r, row, r->at[AT_APPROVE]);
    if (!text) return ANSWER_NONE;
    return says(arena, text, "yes") ? ANSWER_YES : says(arena, text, "held") ? ANSWER_HELD : ANSWER_NONE;
}

static void hold(struct arena *arena, struct approved *a, const char *id, const char *title) {
    a->held = arena_grow(arena, a->held, a->held_count, &a->held_room, sizeof *a->held);
    a->held[a->held_count++] = (struct change){.id = id, .old_title = title};
}

static void take_row(struct arena *arena, struct reading *r, const struct sheet_row *row) {
    enum answer answer = answer_of(arena, r, row);
    if (answer == ANSWER_NONE) return;
    bool held = answer == ANSWER_HELD;
    const char *id = text_of(arena, r, row, r->at[AT_ID]), *old = text_of(arena, r, row, r->at[AT_OLD]),
               *new = text_of(arena, r, row, r->at[AT_NEW]);
    if (!id || !*id || !old || (!new && !held) || row->unclosed || row->count != r->width) {
        sheet_tell(r->diags, CODE_VALUE, r->name, row, -1, NULL,
                   "this row is not what was proposed: id and titles cannot be read from it");
        return;
    }
    if (held) {
        hold(arena, r->approved, id, old);
        return;
    }
    struct wanted *w = wanted_add(&r->approved->wanted, id);
    if (w->asked > 1) return;
    w->line = row->line;
    w->change.old_title = old;
    w->change.new_title = new;
    for (int k = 0; k < 3; k++) {
        const char *earned = text_of(arena, r, row, r->at[AT_OLD_EARNED + k]);
        w->change.earned[k] = earned ? earned : "";
    }
}

static bool fail(struct reading *r, enum code code, const char *why) {
    struct source source = {r->name, NULL, 0, 0, 0};
    diags_add(r->diags, code, (struct place){&source, 0, 0}, NULL, "%s", why);
    return false;
}

static bool read_all(struct arena *arena, struct reading *r) {
    r->sheet = sheet_open(arena, get_bytes, r);
    struct sheet_row row;
    const char *refused = sheet_dialect(r->sheet)->refused;
    if (r->error) return fail(r, CODE_READ, strerror(r->error));
    if (refused || !sheet_next(r->sheet, &row))
        return fail(r, CODE_CSV, refused ? refused : "there is no header");
    if (!find_columns(arena, r, &row)) return false;
    for (; sheet_next(r->sheet, &row); r->approved->rows++) take_row(arena, r, &row);
    return !sheet_failed(r->sheet) || fail(r, CODE_READ, strerror(r->error));
}

bool approved_read(struct arena *arena, const char *name, struct approved *approved, struct diags *diags) {
    *approved = (struct approved){.wanted = wanted_start(arena)};
    struct reading r = {.approved = approved, .name = name, .diags = diags};
    r.file = strcmp(name, "-") != 0 ? open(name, O_RDONLY | O_CLOEXEC | O_NOCTTY) : STDIN_FILENO;
    if (r.file < 0) return fail(&r, CODE_OPEN, strerror(errno));
    bool fine = read_all(arena, &r);
    if (r.file != STDIN_FILENO) close(r.file);
    return fine;
}
