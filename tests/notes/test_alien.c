// SPDX-License-Identifier: MIT
// Texts that are no notes, or hardly: what they are is told, nothing is guessed from them, and what stands
// beside a note (emoji, other scripts, signs of control) hides nothing of it.
#include "support_book.h"

#include "text/limits.h"

#define COUNT(list) (sizeof(list) / sizeof *(list))

enum { LETTERS = 1 << 20, NOTES = 2000 };

static void within(void (*body)(struct arena *arena, void *context)) {
    struct arena *arena = arena_new(NULL);
    bool fine = arena_try(arena, body, NULL);
    arena_free(arena);
    ck_assert(fine);
}

static const struct notes_case aliens[] = {
    {"<html><body><p>Brass lamp, 8 inches</p></body></html>", "page"},
    {"<div>Oak desk</div>\n<div>two drawers gone</div>", "page"},
    {"<!DOCTYPE html>\nTin box", "page"},
    {"thing,color,size\nlamp,green,4\njug,blue,6", "table"},
    {"thing\tcolor\tsize\nlamp\tgreen\t4\njug\tblue\t6", "table"},
    {"thing;color;size\n\nlamp;green;4\njug;blue;6\n", "table"},
    {"Kanne aus Zinn, der Deckel ist lose und ein Griff fehlt", "language"},
    {"Lampe en laiton, le verre est casse et la base avec rayures", "language"},
    {"\xD0\xBB\xD0\xB0\xD0\xBC\xD0\xBF\xD0\xB0 \xD0\xBC\xD0\xB5\xD0\xB4\xD1\x8C", "language"},
    {"\xD7\x9E\xD7\xA0\xD7\x95\xD7\xA8\xD7\x94 \xD7\x99\xD7\xA9\xD7\xA0\xD7\x94", "language"}};

static void alien_notes(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < COUNT(aliens); i++) {
        const struct record *r = support_read(arena, aliens[i].note);
        ck_assert_msg(r->notes_are != NULL, "%s: taken for a note", aliens[i].note);
        ck_assert_str_eq(r->notes_are, aliens[i].wants);
        ck_assert_ptr_null(r->type.value);
        ck_assert_uint_eq(r->attribute_count + r->flaw_count + r->clear_count + r->measurement_count, 0);
        ck_assert_uint_eq(r->unread->count, 1);
    }
}

START_TEST(what_is_no_note_is_told) {
    within(alien_notes);
}
END_TEST

// Notes all the same, with what they are.
static const struct notes_case notes[] = {
    {"\xF0\x9F\x94\xA5 Brass lamp \xF0\x9F\x94\xA5 works \xF0\x9F\x91\x8D", "lamp"},
    {"Brass lamp, marked \xE6\x9D\xB1\xE4\xBA\xAC on the base", "lamp"},
    {"Tin box, lid says \xD7\xA9\xD7\x9C\xD7\x95\xD7\x9D in gold", "tin box"},
    {"Oak desk, label reads \"Fleur de la Roche\", two drawers", "desk"},
    {"a map,a lamp,a jug\nall from one shed\nmap is torn", "map"},
    {"Jug < 8 inches, > 5 inches", "jug"},
    {"Lantern,brass,green\nno chips", "lantern"}};

static void mixed_notes(struct arena *arena, void *context) {
    (void)context;
    for (size_t i = 0; i < COUNT(notes); i++) {
        const struct record *r = support_read(arena, notes[i].note);
        ck_assert_msg(r->notes_are == NULL, "%s: taken for a %s", notes[i].note, r->notes_are);
        ck_assert_msg(r->type.value && !strcmp(r->type.value, notes[i].wants), "%s: %s", notes[i].note,
                      r->type.value ? r->type.value : "nothing");
    }
}

START_TEST(other_scripts_hide_no_note) {
    within(mixed_notes);
}
END_TEST

static void bare_notes(struct arena *arena, void *context) {
    (void)context;
    static const char *const empty[] = {"", " \n\t ", "...", "\x01\x02\x1B",
                                        "paid 5 bucks. moving so it must go."};
    for (size_t i = 0; i < COUNT(empty); i++) {
        const struct record *r = support_read(arena, empty[i]);
        ck_assert_ptr_null(r->type.value);
        ck_assert_ptr_null(r->notes_are);
        ck_assert_uint_eq(r->attribute_count + r->flaw_count + r->measurement_count, 0);
    }
    ck_assert_ptr_nonnull(support_read(arena, empty[COUNT(empty) - 1])->asides);
}

START_TEST(empty_notes_say_nothing) {
    within(bare_notes);
}
END_TEST

static void one_letter(struct arena *arena, void *context) {
    (void)context;
    char *text = arena_array(arena, LETTERS + 1, 1);
    memset(text, 'a', LETTERS);
    const struct record *r = support_read(arena, text);
    ck_assert_ptr_null(r->type.value);
    ck_assert_uint_eq(r->unread->count, 2); // what was read, and the rest
    ck_assert_uint_eq(r->notes_read, LIMIT_NOTE_BYTES);
}

START_TEST(a_megabyte_of_one_letter) {
    within(one_letter);
}
END_TEST

// What lies behind the limit is unread, and nothing before it is lost.
static void far_note(struct arena *arena, void *context) {
    (void)context;
    struct buf text = buf_start(arena);
    buf_format(&text, "Tin jug, the lid is missing.");
    while (text.n < LIMIT_NOTE_BYTES - 40) buf_format(&text, " Height is 9 in.");
    size_t last = text.n;
    while (text.n < 2 * LIMIT_NOTE_BYTES) buf_format(&text, " The handle is bent.");
    const struct record *r = support_read(arena, text.at);
    ck_assert_str_eq(r->type.value, "jug");
    ck_assert_uint_eq(r->flaw_count, 2); // the lid, and the one handle that still ends within
    ck_assert_uint_ge(r->notes_read, last);
    ck_assert_uint_le(r->notes_read, LIMIT_NOTE_BYTES);
    ck_assert_str_eq(text.at + r->notes_read - 2, strstr(text.at + r->notes_read - 2, ". The handle"));
    const struct node *rest = r->unread->members[r->unread->count - 1].value;
    double from = 0, to = 0;
    ck_assert(node_number(rest->members[0].value, &from) && node_number(rest->members[1].value, &to));
    ck_assert_double_eq(from, (double)r->notes_read);
    ck_assert_double_eq(to, (double)text.n);
}

START_TEST(notes_beyond_the_limit_are_left_unread) {
    within(far_note);
}
END_TEST

static void many_notes(struct arena *arena, void *context) {
    (void)context;
    struct buf text = buf_start(arena);
    buf_format(&text, "Tin jug.");
    for (int i = 1; i < NOTES; i++) buf_format(&text, " Next one: tin jug.");
    struct note_reader reader = {.rules = support.rules, .phrases = support.phrases, .locale = LOCALE_US};
    reader.scanner = scanner_new(arena, support.rules->finder_count);
    struct record given = {.id = "a", .notes = text.at};
    ck_assert_uint_eq(notes_open(arena, &reader, &given).count, NOTES);
}

START_TEST(many_notes_in_one) {
    within(many_notes);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("notes: aliens");
    TCase *cases = tcase_create("aliens");
    tcase_set_timeout(cases, 120);
    tcase_add_test(cases, what_is_no_note_is_told);
    tcase_add_test(cases, other_scripts_hide_no_note);
    tcase_add_test(cases, empty_notes_say_nothing);
    tcase_add_test(cases, a_megabyte_of_one_letter);
    tcase_add_test(cases, notes_beyond_the_limit_are_left_unread);
    tcase_add_test(cases, many_notes_in_one);
    suite_add_tcase(suite, cases);
    return support_main(suite);
}
