// SPDX-License-Identifier: MIT
// Reading in pieces of any size gives the same cells; dates and prices as stock files write them.
#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#include "shelf/cell.h"
#include "shelf/stale.h"

struct text {
    const char *at;
    size_t size, piece;
};

static size_t get(void *context, char *to, size_t room) {
    struct text *text = context;
    size_t n = text->size < text->piece ? text->size : text->piece;
    if (n > room) n = room;
    memcpy(to, text->at, n);
    text->at += n;
    text->size -= n;
    return n;
}

struct reading {
    struct text text;
    char *out;
    size_t room;
    size_t rows;
    bool whole; // the rows' bytes, one after the other, are the file
};

static void read_all(struct arena *arena, void *context) {
    struct reading *r = context;
    struct buf out = buf_start(arena);
    const char *all = r->text.at;
    size_t at = 0;
    struct sheet *sheet = sheet_open(arena, get, &r->text);
    struct sheet_row row;
    if (sheet_dialect(sheet)->bom) at = 3;
    r->whole = true;
    while (sheet_next(sheet, &row)) {
        r->rows++;
        r->whole = r->whole && row.at == at && row.bytes && !memcmp(all + at, row.bytes, (size_t)row.size);
        at += (size_t)row.size;
        for (size_t i = 0; i < row.count; i++) {
            const char *why, *text = cell_text(arena, sheet_dialect(sheet), &row, i, &why);
            buf_format(&out, "[%s]", text ? text : "?");
        }
        buf_text(&out, row.unclosed ? "!" : "/");
    }
    snprintf(r->out, r->room, "%s", out.at);
}

static const struct {
    const char *file, *cells;
} FILES[] = {
    {"a,b\nc,d\n", "[a][b]/[c][d]/"},
    {"a,b\r\nc,d", "[a][b]/[c][d]/"},
    {"a,b\rc,d\r", "[a][b]/[c][d]/"},
    {"a,b\n\nc,d\n", "[a][b]//[c][d]/"},
    {"a;b\n\"x;\"\"y\"\"\";\"two\r\nlines\"\n", "[a][b]/[x;\"y\"][two\r\nlines]/"},
    {"a,b\n12\" saw,x\n", "[a][b]/[12\" saw][x]/"},
    {"a,b\n\"x\"y\"z,1\n", "[a][b]/[xy\"z][1]/"},
    {"a,b\n,\n", "[a][b]/[][]/"},
    {"a,b\n1,\"open\n2,3\n", "[a][b]/[1][open\n2,3\n]!"},
    {"\xEF\xBB\xBF"
     "a\tb\nc\td\n",
     "[a][b]/[c][d]/"},
    {"a,b\ncaf\xE9,\x80\n", "[a][b]/[caf\xC3\xA9][\xE2\x82\xAC]/"},
};

START_TEST(test_pieces) {
    for (size_t piece = 1; piece < 40; piece += 3) {
        char out[300];
        struct reading r = {
            .text = {FILES[_i].file, strlen(FILES[_i].file), piece}, .out = out, .room = sizeof out};
        struct arena *arena = arena_new(NULL);
        ck_assert(arena_try(arena, read_all, &r));
        arena_free(arena);
        ck_assert_str_eq(out, FILES[_i].cells);
        ck_assert(r.whole);
    }
}
END_TEST

START_TEST(test_formulas) {
    static const char *const run[] = {"=1", "+1", "-1", "@x", "\tx", " =1", "\xEF\xBC\x9D x"};
    static const char *const plain[] = {"", "tin", "a=b", "1-2", "'"};
    for (size_t i = 0; i < sizeof run / sizeof *run; i++)
        ck_assert_msg(cell_is_formula(run[i]), "%s", run[i]);
    for (size_t i = 0; i < sizeof plain / sizeof *plain; i++)
        ck_assert_msg(!cell_is_formula(plain[i]), "%s", plain[i]);
}
END_TEST

START_TEST(test_days) {
    static const struct {
        const char *text;
        bool day_first;
        long day; // -1: none
    } all[] = {
        {"1970-01-01", false, 0},
        {"2025-11-25", false, 20417},
        {"2025-11-25T10:00:00Z", false, 20417},
        {"11/25/2025", false, 20417},
        {"25/11/2025", false, 20417},
        {"25.11.2025", false, 20417},
        {"05/02/2025", false, 20210},
        {"05/02/2025", true, 20124},
        {"25 Nov 2025", false, 20417},
        {"Nov 25, 2025", false, 20417},
        {"2025-02-29", false, -1},
        {"2024-02-29", false, 19782},
        {"soon", false, -1},
        {"", false, -1},
        {"20251125", false, -1},
    };
    for (size_t i = 0; i < sizeof all / sizeof *all; i++) {
        long day = -1;
        bool fine = stale_day(all[i].text, all[i].day_first, &day);
        ck_assert_msg(fine == (all[i].day >= 0), "'%s'", all[i].text);
        if (fine) ck_assert_msg(day == all[i].day, "'%s': %ld", all[i].text, day);
    }
}
END_TEST

START_TEST(test_prices) {
    static const struct {
        const char *text;
        int cents; // -1: none
    } all[] = {{"12.50", 1250}, {"$1,234.50", 123450}, {"1.234,50 EUR", 123450},
               {"12,5", 1250},  {"1,250", 125000},     {"7", 700},
               {"", -1},        {"free", -1},          {"-3", -1}};
    for (size_t i = 0; i < sizeof all / sizeof *all; i++) {
        double price = 0;
        bool fine = stale_price(all[i].text, &price);
        ck_assert_msg(fine == (all[i].cents >= 0), "'%s'", all[i].text);
        if (fine) ck_assert_msg((int)(price * 100 + 0.5) == all[i].cents, "'%s': %f", all[i].text, price);
    }
}
END_TEST

int main(void) {
    Suite *suite = suite_create("sheet");
    TCase *all = tcase_create("all");
    tcase_add_loop_test(all, test_pieces, 0, (int)(sizeof FILES / sizeof *FILES));
    tcase_add_test(all, test_formulas);
    tcase_add_test(all, test_days);
    tcase_add_test(all, test_prices);
    suite_add_tcase(suite, all);
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_ENV);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
