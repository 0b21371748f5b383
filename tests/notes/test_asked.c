// SPDX-License-Identifier: MIT
// What is kept from note to note changes nothing that is read: notes are read by one reader that keeps, by
// one that keeps nothing, and again in another order; and the tables hold to their limits.
#include "support_book.h"

#include "format/write.h"
#include "item/write.h"
#include "notes/asked.h"

enum { LINES_MOST = 400, ROOM = 512 };

struct notes_read_twice {
    struct asked *asked;
    const char *lines[LINES_MOST];
    size_t count;
};

static const char *told(struct arena *arena, const char *note, struct asked *asked) {
    struct buf out = buf_start(arena);
    json_write(&out, record_tree(arena, support_read_keeping(arena, note, asked)));
    return out.at;
}

static void gather(struct arena *arena, struct notes_read_twice *all, const char *name) {
    const char *source = getenv("ASFOUND_SOURCE");
    FILE *file = fopen(arena_format(arena, "%s/tests/notes/phenomena/%s", source ? source : ".", name), "r");
    ck_assert_msg(file != NULL, "%s cannot be opened", name);
    char line[ROOM];
    while (all->count < LINES_MOST && fgets(line, sizeof line, file)) {
        char *end = strchr(line, '|');
        if (*line == '#' || !end) continue;
        *end = '\0';
        all->lines[all->count++] = arena_string(arena, line);
    }
    fclose(file);
}

static void read_twice(struct arena *arena, void *context) {
    struct notes_read_twice *all = context;
    gather(arena, all, "told-breaks.txt");
    gather(arena, all, "denial.txt");
    gather(arena, all, "sound.txt");
    gather(arena, all, "told-degrees.txt");
    gather(arena, all, "told-lists.txt");
    gather(arena, all, "told-severity.txt");
    ck_assert_uint_ge(all->count, 100);
    all->asked = asked_new(arena);
    for (size_t i = 0; i < all->count; i++)
        ck_assert_str_eq(told(arena, all->lines[i], all->asked), told(arena, all->lines[i], NULL));
    for (size_t i = all->count; i-- > 0;)
        ck_assert_str_eq(told(arena, all->lines[i], all->asked), told(arena, all->lines[i], NULL));
    ck_assert_uint_gt(all->asked->word_count, 200);
    ck_assert_uint_gt(all->asked->list_count, 500);
    ck_assert_uint_lt(all->asked->list_count, ASKED_LISTS);
}

START_TEST(what_is_kept_changes_nothing) {
    struct notes_read_twice all = {NULL, {NULL}, 0};
    ck_assert(arena_try(support.arena, read_twice, &all));
}
END_TEST

// "Nobs" is mended to "knobs", which is then its own singular; the seller's "knobs" behind it has another.
static void read_mended(struct arena *arena, void *context) {
    static const char *const notes[] = {
        "Radio, the nobs are lose.", "replaced, finished | Pine chest, knobs replaced, stripped and waxed."};
    struct asked *asked = asked_new(arena);
    (void)context;
    for (size_t i = 0; i < sizeof notes / sizeof *notes; i++)
        ck_assert_str_eq(told(arena, notes[i], asked), told(arena, notes[i], NULL));
}

START_TEST(what_is_kept_of_a_word_is_not_of_a_mended_one) {
    ck_assert(arena_try(support.arena, read_mended, NULL));
}
END_TEST

static uint64_t *word(struct asked *asked, size_t i) {
    char fold[24];
    snprintf(fold, sizeof fold, "word%zu", i);
    return asked_word(asked, (uint64_t)i * 0x9E3779B97F4A7C15u, fold);
}

static void fill_words(struct arena *arena, void *context) {
    (void)context;
    struct asked *asked = asked_new(arena);
    for (size_t i = 0; i < ASKED_WORDS; i++) {
        uint64_t *told = word(asked, i);
        ck_assert_ptr_nonnull(told);
        told[0] = i;
    }
    ck_assert_ptr_null(word(asked, ASKED_WORDS)); // there is no room for one more
    for (size_t i = 0; i < ASKED_WORDS; i++) ck_assert_uint_eq(word(asked, i)[0], i);
    size_t used = arena_used(arena);
    asked_begin(asked); // all are forgotten, and their room is used again
    for (size_t i = 0; i < ASKED_WORDS; i++) ck_assert_uint_eq(word(asked, i)[0], 0);
    ck_assert_uint_eq(arena_used(arena), used);
    ck_assert_ptr_null(asked_word(asked, 1, "a-word-of-more-letters-than-are-ever-kept"));
}

START_TEST(words_are_forgotten) {
    ck_assert(arena_try(support.arena, fill_words, NULL));
}
END_TEST

// Two words of one hash are two words all the same.
static void share_hash(struct arena *arena, void *context) {
    (void)context;
    struct asked *asked = asked_new(arena);
    ck_assert_ptr_ne(asked_word(asked, 7, "rim"), asked_word(asked, 7, "foot"));
    ck_assert_ptr_eq(asked_word(asked, 7, "rim"), asked_word(asked, 7, "rim"));
}

START_TEST(words_are_told_apart) {
    ck_assert(arena_try(support.arena, share_hash, NULL));
}
END_TEST

static void fill_lists(struct arena *arena, void *context) {
    (void)context;
    struct asked *asked = asked_new(arena);
    const char *lists = arena_alloc(arena, ASKED_LISTS + 1);
    for (size_t i = 0; i < ASKED_LISTS; i++) ck_assert_uint_eq(asked_list(asked, lists + i, 3), i);
    ck_assert_uint_eq(asked_list(asked, lists + ASKED_LISTS, 3), ASKED_LISTS);
    ck_assert_uint_eq(asked_list(asked, lists, 4), ASKED_LISTS); // of another length it is another list
    for (size_t i = 0; i < ASKED_LISTS; i++) ck_assert_uint_eq(asked_list(asked, lists + i, 3), i);
}

START_TEST(lists_have_a_limit) {
    ck_assert(arena_try(support.arena, fill_lists, NULL));
}
END_TEST

int main(void) {
    Suite *suite = suite_create("asked");
    TCase *tests = tcase_create("kept");
    tcase_set_timeout(tests, 120);
    tcase_add_test(tests, what_is_kept_changes_nothing);
    tcase_add_test(tests, what_is_kept_of_a_word_is_not_of_a_mended_one);
    tcase_add_test(tests, words_are_forgotten);
    tcase_add_test(tests, words_are_told_apart);
    tcase_add_test(tests, lists_have_a_limit);
    suite_add_tcase(suite, tests);
    return support_main(suite);
}
