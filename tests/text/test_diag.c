// SPDX-License-Identifier: MIT
// Messages, byte for byte. Expected texts are written out by hand from the form in the header.
#include "support.h"

#include <stdio.h>
#include <string.h>

#include "text/diag.h"

struct shown {
    struct source source;
    size_t from, to;
    enum code code;
    const char *hint, *message, *expected;
};

static void show_one(struct arena *arena, void *context) {
    const struct shown *shown = context;
    struct diags diags = diags_start(arena);
    struct place at = {shown->source.name ? &shown->source : NULL, shown->from, shown->to};
    diags_add(&diags, shown->code, at, shown->hint, "%s", shown->message);
    struct buf out = buf_start(arena);
    diags_print(&diags, &out, false);
    ck_assert_str_eq(out.at, shown->expected);
}

static void expect(const char *text, size_t from, size_t to, const char *expected) {
    struct shown shown = {{.name = "lamp.yaml", .text = text, .size = strlen(text), .first_line = 1},
                          from,
                          to,
                          CODE_TYPE,
                          "a way out",
                          "wrong",
                          expected};
    within(show_one, &shown);
}

START_TEST(a_message_has_place_line_caret_and_hint) {
    expect("id: a1\ntype: lamp\nflaws: crack\n", 13, 17,
           "lamp.yaml:2:7: error: wrong [record.type]\n"
           "    2 |  type: lamp\n"
           "      |        ^^^^ hint: a way out\n");
}
END_TEST

START_TEST(carets_stand_under_what_is_meant) {
    // Tabs take one column, an accent made of two code points too, a wide letter two.
    expect("\tx\ty\n", 3, 4,
           "lamp.yaml:1:4: error: wrong [record.type]\n    1 |   x y\n      |     ^ hint: a way out\n");
    expect("cafe\xCC\x81 tin\n", 7, 10,
           "lamp.yaml:1:7: error: wrong [record.type]\n    1 |  cafe\xCC\x81 tin\n      |       ^^^ hint: a "
           "way out\n");
    expect("\xE6\xBC\xA2\xE5\xAD\x97 x\n", 3, 6,
           "lamp.yaml:1:2: error: wrong [record.type]\n"
           "    1 |  \xE6\xBC\xA2\xE5\xAD\x97 x\n      |    ^^ hint: a way out\n");
}
END_TEST

START_TEST(a_span_over_lines_ends_with_its_first_line) {
    expect("a: |\r\n  one\r\n", 3, 11,
           "lamp.yaml:1:4: error: wrong [record.type]\n    1 |  a: |\n      |     ^ hint: a way out\n");
}
END_TEST

START_TEST(ends_and_empty_texts_have_a_place) {
    expect("a: 1\n", 5, 5,
           "lamp.yaml:2:1: error: wrong [record.type]\n    2 |  \n      |  ^ hint: a way out\n");
    expect("", 0, 0, "lamp.yaml:1:1: error: wrong [record.type]\n    1 |  \n      |  ^ hint: a way out\n");
    expect("a", 99, 120,
           "lamp.yaml:1:2: error: wrong [record.type]\n    1 |  a\n      |   ^ hint: a way out\n");
}
END_TEST

START_TEST(a_byte_order_mark_takes_no_column) {
    expect("\xEF\xBB\xBFid: a\n", 3, 5,
           "lamp.yaml:1:1: error: wrong [record.type]\n    1 |  id: a\n      |  ^^ hint: a way out\n");
}
END_TEST

START_TEST(the_terminal_never_sees_the_users_control_bytes) {
    expect("a\033[31mb\xFFz\xE2\x80\xAE!\n", 8, 9,
           "lamp.yaml:1:9: error: wrong [record.type]\n"
           "    1 |  a\xEF\xBF\xBD[31mb\xEF\xBF\xBDz\xEF\xBF\xBD!\n      |          ^ hint: a way out\n");
    struct shown shown = {{.name = NULL},
                          0,
                          0,
                          CODE_TYPE,
                          NULL,
                          "key `\033[2J`",
                          "asfound: error: key `\xEF\xBF\xBD[2J` [record.type]\n"};
    within(show_one, &shown);
}
END_TEST

START_TEST(long_lines_show_a_window) {
    char text[400], expected[512];
    for (size_t i = 0; i < 399; i++) text[i] = (char)('a' + i % 26);
    text[399] = '\0';
    snprintf(expected, sizeof expected,
             "lamp.yaml:1:201: error: wrong [record.type]\n    1 |  \xE2\x80\xA6%.100s\xE2\x80\xA6\n      |  "
             "%61s^^^ hint: a way out\n",
             text + 140, "");
    expect(text, 200, 203, expected);
    snprintf(expected, sizeof expected,
             "lamp.yaml:1:1: error: wrong [record.type]\n    1 |  %.100s\xE2\x80\xA6\n      |  %.100s hint: "
             "a way out\n",
             text,
             "^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^^"
             "^^^^^");
    expect(text, 0, 399, expected);
}
END_TEST

START_TEST(a_piece_knows_where_it_stood) {
    struct shown shown = {
        {.name = "s.json", .text = "{x}\n{y}", .size = 7, .first_line = 41, .columns_before = 10},
        1,
        2,
        CODE_JSON,
        NULL,
        "wrong",
        "s.json:41:12: error: wrong [json.syntax]\n   41 |  \xE2\x80\xA6{x}\n      |    ^\n"};
    within(show_one, &shown);
    shown.from = 5;
    shown.to = 6;
    shown.expected = "s.json:42:2: error: wrong [json.syntax]\n   42 |  {y}\n      |   ^\n";
    within(show_one, &shown);
}
END_TEST

START_TEST(without_a_text_the_name_alone_stands) {
    struct shown shown = {{.name = "gone.csv"},
                          0,
                          0,
                          CODE_OPEN,
                          "is it there?",
                          "cannot be opened",
                          "gone.csv: error: cannot be opened [file.open]\ngone.csv: hint: is it there?\n"};
    within(show_one, &shown);
}
END_TEST

static void many(struct arena *arena, void *context) {
    (void)context;
    struct diags diags = diags_start(arena);
    struct source b = {.name = "b", .text = "1\n2\n3\n", .size = 6, .first_line = 1};
    struct source a = {.name = "a", .text = "xyz\n", .size = 4, .first_line = 7};
    diags_add(&diags, CODE_EMPTY, (struct place){&b, 4, 5}, NULL, "third");
    ck_assert_int_eq(diags.status, 0);
    diags_add(&diags, CODE_TYPE, (struct place){&b, 0, 1}, NULL, "first %s", "one");
    diags_add(&diags, CODE_RULE_HIT, (struct place){&b, 0, 1}, NULL, "first two");
    ck_assert_int_eq(diags.status, 4);
    diags_add(&diags, CODE_VALUE, (struct place){&a, 2, 3}, NULL, "right");
    diags_add(&diags, CODE_VALUE, (struct place){&a, 1, 2}, NULL, "left");
    diags_add(&diags, CODE_MEMORY, (struct place){0}, NULL, "none left");
    ck_assert_int_eq(diags.status, 5);
    struct buf out = buf_start(arena);
    diags_print(&diags, &out, false);
    ck_assert_str_eq(out.at, "asfound: error: none left [memory]\n"
                             "a:7:2: error: left [record.value]\n    7 |  xyz\n      |   ^\n"
                             "a:7:3: error: right [record.value]\n    7 |  xyz\n      |    ^\n"
                             "b:1:1: error: first one [record.type]\n    1 |  1\n      |  ^\n"
                             "b:1:1: error: first two [rule.hit]\n    1 |  1\n      |  ^\n"
                             "b:3:1: warning: third [input.empty]\n    3 |  3\n      |  ^\n");
    for (int i = 0; i < 60; i++) diags_add(&diags, CODE_TYPE, (struct place){&a, 0, 1}, NULL, "again");
    ck_assert_uint_eq(diags.count, DIAGS_MOST);
    ck_assert_uint_eq(diags.dropped, 16);
    buf_clear(&out);
    diags_print(&diags, &out, false);
    ck_assert_ptr_nonnull(strstr(out.at, "asfound: 16 more not shown\n"));
}

START_TEST(messages_are_sorted_capped_and_give_a_status) {
    within(many, NULL);
}
END_TEST

static void colored(struct arena *arena, void *context) {
    (void)context;
    struct diags diags = diags_start(arena);
    diags_add(&diags, CODE_USAGE, (struct place){0}, NULL, "what?");
    diags_add(&diags, CODE_EMPTY, (struct place){0}, NULL, "hm");
    struct buf out = buf_start(arena);
    diags_print(&diags, &out, true);
    ck_assert_str_eq(out.at, "asfound: \033[1;31merror\033[0m: what? [usage]\n"
                             "asfound: \033[1;33mwarning\033[0m: hm [input.empty]\n");
}

START_TEST(color_wraps_the_level_word_only) {
    within(colored, NULL);
}
END_TEST

// The record may be gone before its messages are printed.
static void forget(struct arena *arena, void *context) {
    struct arena *record = context;
    struct diags diags = diags_start(arena);
    char text[] = "kind: crack\n", name[] = "shelf.yaml";
    struct source source = {.name = name, .text = text, .size = strlen(text), .first_line = 3};
    diags_add(&diags, CODE_TYPE, (struct place){&source, 6, 11}, NULL, "wrong");
    memset(text, '#', sizeof text - 1);
    memset(name, '#', sizeof name - 1);
    arena_reset(record);
    struct buf out = buf_start(arena);
    diags_print(&diags, &out, false);
    ck_assert_str_eq(
        out.at, "shelf.yaml:3:7: error: wrong [record.type]\n    3 |  kind: crack\n      |        ^^^^^\n");
}

START_TEST(messages_outlive_their_text) {
    struct arena *record = arena_new(NULL);
    within(forget, record);
    arena_free(record);
}
END_TEST

START_TEST(every_code_has_a_name_and_a_status_of_its_own_class) {
    for (int i = 0; i < CODE_COUNT; i++) {
        const struct code_entry *entry = code_entry((enum code)i);
        ck_assert_uint_gt(strlen(entry->name), 2);
        ck_assert_uint_eq(strspn(entry->name, "abcdefghijklmnopqrstuvwxyz0123456789.-"), strlen(entry->name));
        for (int k = 0; k < i; k++) ck_assert_str_ne(entry->name, code_entry((enum code)k)->name);
        ck_assert_int_eq(entry->status != 0, entry->level == LEVEL_ERROR);
        if (strncmp(entry->name, "rule.", 5) == 0 && entry->level == LEVEL_ERROR)
            ck_assert_int_eq(entry->status, 3);
        if (strncmp(entry->name, "record.", 7) == 0 && entry->level == LEVEL_ERROR)
            ck_assert_int_eq(entry->status, 4);
    }
}
END_TEST

// Against a plain walk over every offset of texts with all kinds of line ends.
START_TEST(places_agree_with_a_plain_walk) {
    struct dice dice = {77};
    static const char *const PARTS[] = {"a", "\n", "\r\n", "\xC3\xA9", "\xF0\x9F\x99\x82", "\t", "\r", "b"};
    for (int round = 0; round < 3000; round++) {
        char text[128] = "";
        for (uint32_t i = dice_roll(&dice, 20); i > 0; i--) strcat(text, PARTS[dice_roll(&dice, 8)]);
        struct source source = {.name = "x", .text = text, .size = strlen(text), .first_line = 5};
        size_t line = 5, column = 1;
        for (size_t at = 0; at <= source.size; at++) {
            bool inside =
                ((unsigned char)text[at] & 0xC0) == 0x80 || (text[at] == '\n' && at && text[at - 1] == '\r');
            struct line_column found = source_locate(&source, at);
            if (!inside) {
                ck_assert_uint_eq(found.line, line);
                ck_assert_uint_eq(found.column, column);
                ck_assert_uint_eq(strcspn(text + found.line_from, "\r\n"), found.line_to - found.line_from);
            }
            bool end = text[at] == '\n' || (text[at] == '\r' && text[at + 1] != '\n');
            if (end) {
                line++;
                column = 1;
            } else if (((unsigned char)text[at + 1] & 0xC0) != 0x80) {
                column++;
            }
        }
    }
}
END_TEST

int main(void) {
    Suite *suite = suite_create("diag");
    TCase *cases = tcase_create("diag");
    tcase_set_timeout(cases, 60);
    tcase_add_test(cases, a_message_has_place_line_caret_and_hint);
    tcase_add_test(cases, carets_stand_under_what_is_meant);
    tcase_add_test(cases, a_span_over_lines_ends_with_its_first_line);
    tcase_add_test(cases, ends_and_empty_texts_have_a_place);
    tcase_add_test(cases, a_byte_order_mark_takes_no_column);
    tcase_add_test(cases, the_terminal_never_sees_the_users_control_bytes);
    tcase_add_test(cases, long_lines_show_a_window);
    tcase_add_test(cases, a_piece_knows_where_it_stood);
    tcase_add_test(cases, without_a_text_the_name_alone_stands);
    tcase_add_test(cases, messages_are_sorted_capped_and_give_a_status);
    tcase_add_test(cases, color_wraps_the_level_word_only);
    tcase_add_test(cases, messages_outlive_their_text);
    tcase_add_test(cases, every_code_has_a_name_and_a_status_of_its_own_class);
    tcase_add_test(cases, places_agree_with_a_plain_walk);
    suite_add_tcase(suite, cases);
    return run_suite(suite);
}
