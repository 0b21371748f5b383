// SPDX-License-Identifier: MIT
// A whole note to records: the order of the readers, several things in one note, what a person wrote beside
// it. Without a word book, as where none is installed.
#include "support.h"

#include "notes/read.h"

struct all_read {
    struct note_read *items;
    size_t count;
};

static struct all_read read_given(struct arena *arena, struct record given) {
    struct note_reader reader = {.rules = support.rules, .phrases = support.phrases, .locale = LOCALE_US};
    reader.scanner = scanner_new(arena, support.rules->finder_count);
    struct notes notes = notes_open(arena, &reader, &given);
    struct all_read all = {arena_array(arena, notes.count, sizeof *all.items), notes.count};
    for (size_t i = 0; i < notes.count; i++) all.items[i] = *notes_read(arena, &reader, &notes, i);
    return all;
}

static void whole_note(struct arena *arena, void *context) {
    (void)context;
    const char *text =
        "Brass lamp, 8 inches tall, 1950s, marked ORRIN 4 on the base. Paid 5 bucks. Set of 2.";
    struct all_read read = read_given(arena, (struct record){.id = "a", .notes = text});
    ck_assert_uint_eq(read.count, 1);
    const struct record *record = &read.items[0].record;
    ck_assert_str_eq(record->id, "a");
    ck_assert_ptr_eq(record->notes, text);
    ck_assert_uint_eq(record->measurement_count, 1);
    ck_assert_double_eq_tol(record->measurements[0].figure.base, 203.2, 0.01);
    ck_assert_uint_eq(record->mark_count, 1);
    ck_assert_str_eq(record->marks[0].text, "ORRIN 4");
    ck_assert_int_eq(record->count, 2);
    ck_assert_int_eq(record->year_from, 1950);
    ck_assert_uint_eq(record->asides->count, 1);
    ck_assert_uint_gt(read.items[0].reading_count, 4);
    for (size_t i = 1; i < read.items[0].reading_count; i++)
        ck_assert_uint_le(read.items[0].readings[i - 1].from, read.items[0].readings[i].from);
}

static void several(struct arena *arena, void *context) {
    (void)context;
    struct all_read read = read_given(
        arena, (struct record){.id = "a", .notes = "Lamp, 8 in tall. Next one: clock, 10 in tall."});
    ck_assert_uint_eq(read.count, 2);
    ck_assert_str_eq(read.items[0].record.id, "a-1");
    ck_assert_str_eq(read.items[1].record.id, "a-2");
    ck_assert_str_eq(read.items[1].record.notes, "clock, 10 in tall.");
    ck_assert_double_eq_tol(read.items[1].record.measurements[0].figure.value, 10, 0.001);
    ck_assert_uint_eq(read.items[1].record.measurements[0].span.from, 7);
}

static void given_keys(struct arena *arena, void *context) {
    (void)context;
    struct measurement mine = {.dimension = "width", .figure = {5, say_unit("in", LOCALE_US), 127, false}};
    struct record given = {.id = "a",
                           .notes = "Set of 4. 8 in tall, circa 1890. Next one: clock.",
                           .count = 3,
                           .year_from = 1931,
                           .year_to = 1932,
                           .measurements = &mine,
                           .measurement_count = 1};
    struct all_read read = read_given(arena, given);
    ck_assert_uint_eq(read.count, 1); // keys speak of one thing
    const struct record *record = &read.items[0].record;
    ck_assert_int_eq(record->count, 3);
    ck_assert_int_eq(record->year_from, 1931);
    ck_assert_uint_eq(record->measurement_count, 2);
    ck_assert_str_eq(record->measurements[0].dimension, "width");
    ck_assert_str_eq(record->measurements[1].dimension, "height");
    struct all_read none = read_given(arena, (struct record){.id = "b"});
    ck_assert_uint_eq(none.count, 1);
    ck_assert_ptr_null(none.items[0].record.unread);
}

#define RUN(name)                                                                                            \
    START_TEST(reads_##name) {                                                                               \
        struct arena *arena = arena_new(NULL);                                                               \
        ck_assert(arena_try(arena, name, NULL));                                                             \
        arena_free(arena);                                                                                   \
    }                                                                                                        \
    END_TEST
RUN(whole_note)
RUN(several)
RUN(given_keys)

int main(void) {
    Suite *suite = suite_create("notes: reading");
    TCase *tests = tcase_create("read");
    tcase_add_test(tests, reads_whole_note);
    tcase_add_test(tests, reads_several);
    tcase_add_test(tests, reads_given_keys);
    suite_add_tcase(suite, tests);
    return support_main(suite);
}
