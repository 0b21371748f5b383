// SPDX-License-Identifier: MIT
// What makes it fast must not make it different: marks sixteen at a time or one by one, rows in pieces of any
// size, bytes passed on once each, files read ahead and written behind, ids in parts, sums in pieces.
#define _XOPEN_SOURCE 700
#include <check.h>
#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "shelf/ahead.h"
#include "shelf/cell.h"
#include "shelf/ids.h"
#include "shelf/marks.h"
#include "shelf/newfile.h"

static uint64_t state;

static unsigned roll(unsigned sides) {
    state = state * 6364136223846793005u + 1442695040888963407u;
    return (unsigned)(state >> 33) % sides;
}

static void with_arena(void (*body)(struct arena *, void *), void *context) {
    struct arena *arena = arena_new(NULL);
    ck_assert(arena_try(arena, body, context));
    arena_free(arena);
}

START_TEST(test_marks) {
    static const char delimiters[] = ",;\t|";
    state = 5;
    for (int i = 0; i < 20000; i++) {
        char bytes[MARKS_SPAN + 1], delimiter = delimiters[roll(4)];
        for (int k = 0; k <= MARKS_SPAN; k++) bytes[k] = roll(3) ? (char)roll(256) : "\",;\t|\r\n"[roll(7)];
        ck_assert_uint_eq(marks_of(bytes + 1, delimiter), marks_one_by_one(bytes + 1, delimiter));
        uint64_t marks = marks_of(bytes + 1, delimiter);
        if (marks) ck_assert_uint_eq(marks >> marks_lowest(marks) << marks_lowest(marks), marks);
        if (marks) ck_assert_uint_eq(marks >> marks_lowest(marks) & 1, 1);
    }
}
END_TEST

// --- rows ---

struct feed {
    const char *at;
    size_t size, most;
    char *gone;
    size_t gone_size;
};

static size_t get(void *context, char *to, size_t room) {
    struct feed *f = context;
    size_t n = 1 + roll((unsigned)f->most);
    if (n > room) n = room;
    if (n > f->size) n = f->size;
    memcpy(to, f->at, n);
    f->at += n;
    f->size -= n;
    return n;
}

static void take_gone(void *context, const char *bytes, size_t size) {
    struct feed *f = context;
    memcpy(f->gone + f->gone_size, bytes, size);
    f->gone_size += size;
}

// As slow and plain as it can be: cells of the row at `at`, and where the next row begins.
static size_t plain_row(const char *bytes, size_t size, size_t at, char delimiter, size_t *ends,
                        size_t *count, bool *unclosed) {
    *count = 0;
    *unclosed = false;
    if (bytes[at] != '\n' && bytes[at] != '\r')
        for (;; at++) {
            if (at < size && bytes[at] == '"') {
                *unclosed = true;
                for (at++; at < size && *unclosed; at++) {
                    if (bytes[at] != '"') continue;
                    if (at + 1 < size && bytes[at + 1] == '"')
                        at++;
                    else
                        *unclosed = false;
                }
            }
            while (at < size && bytes[at] != delimiter && bytes[at] != '\n' && bytes[at] != '\r') at++;
            ends[(*count)++] = at;
            if (at == size || bytes[at] != delimiter) break;
        }
    if (at < size && bytes[at] == '\r' && at + 1 < size && bytes[at + 1] == '\n') at++;
    return at < size ? at + 1 : size;
}

static void scan_odd(struct arena *arena, void *context) {
    enum { MOST = 4000 };
    static char bytes[MOST], gone[MOST];
    static size_t ends[MOST];
    (void)context;
    size_t size = 1 + roll(MOST);
    for (size_t i = 0; i < size; i++) bytes[i] = roll(3) ? (char)('a' + roll(26)) : "\"\",,,\r\n"[roll(7)];
    if (bytes[0] == '"') bytes[0] = 'x';
    struct feed feed = {bytes, size, 1 + roll(200), gone, 0};
    struct sheet *sheet = sheet_open(arena, get, &feed);
    sheet_pass_on(sheet, take_gone, &feed);
    char delimiter = sheet_dialect(sheet)->delimiter;
    struct sheet_row row;
    size_t at = 0;
    while (sheet_next(sheet, &row)) {
        size_t count;
        bool unclosed;
        size_t next = plain_row(bytes, size, at, delimiter, ends, &count, &unclosed);
        ck_assert_uint_eq(row.at, at);
        ck_assert_uint_eq(row.size, next - at);
        ck_assert_uint_eq(row.count, count);
        ck_assert_int_eq(row.unclosed, unclosed);
        ck_assert_int_eq(memcmp(row.bytes, bytes + at, next - at), 0);
        for (size_t i = 0; i < count; i++) {
            ck_assert_uint_eq(row.cells[i].from, i ? row.cells[i - 1].to + 1 : 0);
            ck_assert_uint_eq(row.cells[i].to, ends[i] - at);
            ck_assert_int_eq(row.cells[i].quoted,
                             bytes[at + row.cells[i].from] == '"' && row.cells[i].from < row.cells[i].to);
        }
        at = next;
    }
    ck_assert_uint_eq(at, size);
    ck_assert_uint_eq(feed.gone_size, size);
    ck_assert_int_eq(memcmp(gone, bytes, size), 0);
}

START_TEST(test_rows) {
    state = (uint64_t)_i;
    for (int i = 0; i < 20; i++) with_arena(scan_odd, NULL);
}
END_TEST

// Rows too long to keep are passed on like all others, and the rows behind them are read.
static void scan_long(struct arena *arena, void *context) {
    enum { LONG = 11 << 20, MOST = LONG + 4096 };
    char *bytes = malloc(MOST), *gone = malloc(MOST);
    (void)context;
    size_t size = (size_t)snprintf(bytes, 100, "id,title\n1,\"");
    memset(bytes + size, 'y', LONG);
    for (size_t i = 1; i < LONG; i += 97) memcpy(bytes + size + i, i % 2 ? "\"\"" : "\n,", 2);
    size += LONG;
    size += (size_t)snprintf(bytes + size, 100, "\"\n2,tin\n3,lamp");
    struct feed feed = {bytes, size, 100000, gone, 0};
    struct sheet *sheet = sheet_open(arena, get, &feed);
    sheet_pass_on(sheet, take_gone, &feed);
    struct sheet_row row;
    size_t counts[5] = {0}, rows = 0;
    while (sheet_next(sheet, &row)) {
        ck_assert_uint_lt(rows, 5);
        ck_assert_int_eq(row.bytes != NULL, rows != 1);
        counts[rows++] = row.count;
    }
    ck_assert_uint_eq(rows, 4);
    ck_assert_uint_eq(counts[1], 0);
    ck_assert_uint_eq(counts[3], 2);
    ck_assert_uint_eq(feed.gone_size, size);
    ck_assert_int_eq(memcmp(gone, bytes, size), 0);
    free(bytes);
    free(gone);
}

START_TEST(test_long_row) {
    state = 3;
    with_arena(scan_long, NULL);
}
END_TEST

// A cell that is told without copying is the one that is told with it.
static void read_cells(struct arena *arena, void *context) {
    static const char *const cells[] = {
        "tin",   "",       "\"tin\"",    "\"a,b\"", "\"say \"\"so\"\"\"", "caf\xC3\xA9",
        "\"\"",  "\"a\"b", "a\"b",       "\x01x",   "\"two\nlines\"",     "\x7F",
        " edge", "\xFF",   "\"tin\"  x", "~ !",     "\"\"\"\"",           "1"};
    size_t plain_ones = 0;
    (void)context;
    for (size_t i = 0; i < sizeof cells / sizeof *cells; i++) {
        const char *bytes = arena_format(arena, "head,next\n%s,z\n", cells[i]);
        struct feed feed = {bytes, strlen(bytes), 5, NULL, 0};
        struct sheet *sheet = sheet_open(arena, get, &feed);
        struct sheet_row row;
        ck_assert(sheet_next(sheet, &row) && sheet_next(sheet, &row));
        const char *plain = NULL, *why, *text = cell_text(arena, sheet_dialect(sheet), &row, 0, &why);
        size_t size = 0;
        if (!cell_plain(&row, 0, &plain, &size)) continue;
        plain_ones++;
        ck_assert_msg(text && strlen(text) == size && !memcmp(text, plain, size), "cell %zu", i);
    }
    ck_assert_uint_eq(plain_ones, 9);
}

START_TEST(test_plain_cells) {
    with_arena(read_cells, NULL);
}
END_TEST

// --- ids ---

static size_t taken;

static void *take_memory(void *context, size_t size) {
    (void)context;
    size_t *block = malloc(size + sizeof *block);
    *block = size;
    taken += size;
    return block + 1;
}

static void give_memory(void *context, void *block) {
    (void)context;
    size_t *at = (size_t *)block - 1;
    taken -= *at;
    free(at);
}

START_TEST(test_ids) {
    enum { COUNT = 300000 };
    struct arena_memory memory = {take_memory, give_memory, NULL};
    struct id_set set = {.memory = &memory};
    char id[32];
    taken = 0;
    for (int round = 0; round < 2; round++)
        for (int i = 0; i < COUNT; i++) {
            size_t size = (size_t)snprintf(id, sizeof id, i % 2 ? "%d" : "SHED-%07d/x", i);
            ck_assert_int_eq(id_set_add(&set, id_hash(id, size)), round ? ID_KNOWN : ID_NEW);
            if (i > 100000) ck_assert_uint_le(taken, (size_t)16 * (size_t)(round ? COUNT : i));
        }
    id_set_free(&set);
    ck_assert_uint_eq(taken, 0);
    // Ids of one beginning, of one end, of one letter, and of none.
    char run[40] = {0};
    for (size_t n = 0; n < sizeof run; n++) {
        ck_assert_int_eq(id_set_add(&set, id_hash(run, n)), ID_NEW);
        run[n] = 'a';
    }
    id_set_free(&set);
}
END_TEST

// --- files ---

static char folder[] = "/tmp/asfound-XXXXXX";

static const char *path_of(const char *name) {
    static char path[2][64];
    static int which;
    which = !which;
    snprintf(path[which], sizeof path[which], "%s/%s", folder, name);
    return path[which];
}

static int open_new(const char *name) {
    int file = open(path_of(name), O_RDWR | O_CREAT | O_TRUNC, 0600);
    ck_assert_int_ge(file, 0);
    return file;
}

static void hash_pieces(struct arena *arena, void *context) {
    static char bytes[5000];
    (void)context;
    for (size_t i = 0; i < sizeof bytes; i++) bytes[i] = (char)roll(256);
    for (size_t size = 0; size < sizeof bytes; size += 1 + roll(90)) {
        struct file_hash whole, pieces;
        file_hash_start(&whole);
        file_hash_start(&pieces);
        file_hash_add(&whole, bytes, size);
        for (size_t at = 0; at < size;) {
            size_t n = roll(70);
            if (n > size - at) n = size - at;
            file_hash_add(&pieces, bytes + at, n);
            at += n;
        }
        const char *sum = file_hash_text(arena, &whole);
        ck_assert_uint_eq(strlen(sum), 48);
        ck_assert_str_eq(sum, file_hash_text(arena, &pieces));
        if (!size) continue;
        size_t at = roll((unsigned)size);
        bytes[at] ^= (char)(1 << roll(8));
        file_hash_start(&pieces);
        file_hash_add(&pieces, bytes, size);
        ck_assert_str_ne(sum, file_hash_text(arena, &pieces));
        file_hash_start(&pieces); // a zero more at the end
        file_hash_add(&pieces, bytes, size);
        struct file_hash more = pieces;
        file_hash_add(&more, "", 1);
        ck_assert_str_ne(file_hash_text(arena, &pieces), file_hash_text(arena, &more));
    }
}

START_TEST(test_hash) {
    state = 9;
    with_arena(hash_pieces, NULL);
}
END_TEST

struct copied {
    char *old, *wanted;
    size_t old_size, wanted_size;
    struct edit edits[200];
    size_t count;
};

static void make_edits(struct copied *c, size_t most) {
    c->old_size = roll((unsigned)most);
    c->old = malloc(c->old_size + 1);
    c->wanted = malloc(c->old_size + 200 * 40 + 1);
    for (size_t i = 0; i < c->old_size; i++) c->old[i] = (char)roll(256);
    size_t at = 0;
    static const char text[] = "what stands there in the new one, or a part of it";
    while (c->count < 200) {
        size_t from = at + roll(c->old_size ? (unsigned)c->old_size / 20 + 1 : 1), to = from + roll(30);
        if (to > c->old_size) break;
        memcpy(c->wanted + c->wanted_size, c->old + at, from - at);
        c->wanted_size += from - at;
        struct edit e = {from, to, text, roll(40)};
        memcpy(c->wanted + c->wanted_size, e.bytes, e.size);
        c->wanted_size += e.size;
        c->edits[c->count++] = e;
        at = to;
    }
    memcpy(c->wanted + c->wanted_size, c->old + at, c->old_size - at);
    c->wanted_size += c->old_size - at;
}

static void check_file(struct arena *arena, const struct newfile *f, const struct copied *c) {
    struct stat about;
    ck_assert_int_eq(stat(f->temporary, &about), 0);
    ck_assert_int_eq((int)about.st_mode & 0777, 0640);
    ck_assert_uint_eq((size_t)about.st_size, c->wanted_size);
    char *there = malloc(c->wanted_size + 1);
    int file = open(f->temporary, O_RDONLY);
    ck_assert_int_eq(read(file, there, c->wanted_size + 1), (ssize_t)c->wanted_size);
    close(file);
    ck_assert_int_eq(memcmp(there, c->wanted, c->wanted_size), 0);
    free(there);
    ck_assert_str_eq(f->hash, file_hash_of(arena, f->temporary));
}

static void copy_twice(struct arena *arena, void *context) {
    struct copied c = {0};
    make_edits(&c, *(size_t *)context);
    int old = open_new("old");
    ck_assert_int_eq(write(old, c.old, c.old_size), (ssize_t)c.old_size);
    ck_assert_int_eq(fchmod(old, 0640), 0);
    const char *hash = file_hash_of(arena, path_of("old"));
    struct newfile f;
    // From bytes that are passed, with each edit as late as it may come.
    ck_assert(newfile_open(arena, &f, path_of("new"), old));
    newfile_start(&f);
    size_t next = 0;
    for (size_t at = 0; at < c.old_size;) {
        size_t n = 1 + roll(3000);
        if (n > c.old_size - at) n = c.old_size - at;
        for (; next < c.count && c.edits[next].from < at + n; next++) newfile_edit(&f, &c.edits[next]);
        newfile_pass(&f, c.old + at, n);
        at += n;
    }
    for (; next < c.count; next++) newfile_edit(&f, &c.edits[next]);
    ck_assert_msg(newfile_end(&f), "%s", f.wrong);
    check_file(arena, &f, &c);
    newfile_drop(&f);
    ck_assert_int_eq(access(path_of("new"), F_OK), -1);
    // From a second reading, after something else was begun.
    ck_assert(newfile_open(arena, &f, path_of("new"), old));
    newfile_start(&f);
    newfile_pass(&f, "nonsense", 8);
    ck_assert_msg(newfile_write(&f, old, hash, c.edits, c.count), "%s", f.wrong);
    check_file(arena, &f, &c);
    newfile_drop(&f);
    // The old file is another by now.
    ck_assert_int_eq(pwrite(old, "other", 5, 0), 5);
    ck_assert(newfile_open(arena, &f, path_of("new"), old));
    ck_assert(!newfile_is_later(&f, old));
    ck_assert(!newfile_write(&f, old, hash, NULL, 0));
    ck_assert_str_eq(f.wrong, "the stock file was changed while it was read");
    newfile_drop(&f);
    close(old);
    unlink(path_of("old"));
    free(c.old);
    free(c.wanted);
}

START_TEST(test_newfile) {
    size_t most = _i ? 6 << 20 : 3000;
    state = (uint64_t)_i + 11;
    ck_assert_ptr_nonnull(mkdtemp(folder));
    for (int i = 0; i < (_i ? 2 : 30); i++) with_arena(copy_twice, &most);
    rmdir(folder);
}
END_TEST

static void read_ahead(struct arena *arena, void *context) {
    enum { SIZE = 3 << 20 };
    (void)context;
    char *bytes = malloc(SIZE), *there = malloc(SIZE + 300000);
    for (size_t i = 0; i < SIZE; i++) bytes[i] = (char)roll(256);
    int file = open_new("read");
    ck_assert_int_eq(write(file, bytes, SIZE), SIZE);
    ck_assert_int_eq(lseek(file, 0, SEEK_SET), 0);
    struct ahead *ahead = ahead_open(arena, file);
    size_t size = 0, got;
    while ((got = ahead_get(ahead, there + size, 1 + roll(300000)))) size += got;
    ck_assert_uint_eq(size, SIZE);
    ck_assert_uint_eq(ahead_get(ahead, there, 1), 0);
    ck_assert_int_eq(memcmp(bytes, there, SIZE), 0);
    ck_assert_str_eq(ahead_hash(ahead), file_hash_of(arena, path_of("read")));
    // One that is let go while it is read, and a folder, which opens and cannot be read.
    ck_assert_int_eq(lseek(file, 0, SEEK_SET), 0);
    ck_assert_ptr_nonnull(ahead_next(ahead_open(arena, file), &size));
    int dir = open(folder, O_RDONLY);
    ahead = ahead_open(arena, dir);
    ck_assert_uint_eq(ahead_get(ahead, there, 10), (size_t)-1);
    ck_assert_int_eq(ahead_error(ahead), EISDIR);
    free(bytes);
    free(there);
    unlink(path_of("read"));
}

START_TEST(test_ahead) {
    state = 21;
    ck_assert_ptr_nonnull(mkdtemp(folder));
    with_arena(read_ahead, NULL);
    rmdir(folder);
}
END_TEST

// A full disk shows at the end, however much was written behind.
static void fill_disk(struct arena *arena, void *context) {
    (void)context;
    int full = open("/dev/full", O_WRONLY);
    ck_assert_int_ge(full, 0);
    struct newfile f = {.arena = arena, .path = "x", .file = full};
    static char bytes[1 << 20];
    newfile_start(&f);
    for (int i = 0; i < 4; i++) newfile_pass(&f, bytes, sizeof bytes);
    ck_assert(!newfile_end(&f));
    ck_assert_str_eq(f.wrong, "cannot be written: No space left on device");
    newfile_drop(&f);
}

START_TEST(test_full_disk) {
    with_arena(fill_disk, NULL);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("streams");
    TCase *all = tcase_create("all");
    tcase_add_test(all, test_marks);
    tcase_add_loop_test(all, test_rows, 0, 20);
    tcase_add_test(all, test_long_row);
    tcase_add_test(all, test_plain_cells);
    tcase_add_test(all, test_ids);
    tcase_add_test(all, test_hash);
    tcase_add_loop_test(all, test_newfile, 0, 2);
    tcase_add_test(all, test_ahead);
    tcase_add_test(all, test_full_disk);
    suite_add_tcase(suite, all);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
