// SPDX-License-Identifier: MIT
// Words of age of periods.txt against the years that custom gives them: alone, and in three notes around
// them. The share within ten years has a floor; a style, a guess and what is no age at all never date.
#include "support_book.h"

#include "notes/age.h"

enum { TOLERANCE = 10, CASES_LEAST = 360, SHARE_LEAST = 97, FIELDS = 5 };

struct period_case {
    char *text, *sure;
    int from, to;
    bool undated;
};

struct tally {
    size_t cases, close, notes, notes_close, undated, dated;
};

static bool is_near(int year, int wanted) {
    if (!year || !wanted) return year == wanted;
    return year - wanted <= TOLERANCE && wanted - year <= TOLERANCE;
}

static bool read_case(char *line, struct period_case *c) {
    char *fields[FIELDS];
    size_t n = 0;
    if (line[0] == '#' || !line[0]) return false;
    for (char *at = line; at && n < FIELDS; n++) {
        fields[n] = at;
        at = strstr(at, " | ");
        if (at) *at = '\0', at += 3;
    }
    ck_assert_msg(n == FIELDS && *fields[4], "%s: text, years, how sure and whose custom", line);
    *c = (struct period_case){.text = fields[0], .sure = fields[3]};
    c->undated = !strcmp(fields[1], "style") || !strcmp(fields[1], "none");
    c->from = atoi(fields[1]);
    c->to = atoi(fields[2]);
    return true;
}

static void check_words(struct arena *arena, const struct period_case *c, struct tally *tally) {
    struct date_words words = {0, 0, NULL};
    date_words(arena, c->text, &words);
    if (c->undated) {
        ck_assert_msg(!words.from && !words.to, "%s: %d-%d", c->text, words.from, words.to);
        tally->undated++;
        return;
    }
    bool close = is_near(words.from, c->from) && is_near(words.to, c->to);
    tally->cases++;
    tally->close += close;
    if (!close) fprintf(stderr, "  %s: %d-%d, got %d-%d\n", c->text, c->from, c->to, words.from, words.to);
}

static void check_note(struct arena *arena, const struct period_case *c, const char *note,
                       struct tally *tally) {
    const struct record *r = support_read(arena, note);
    bool era = !strcmp(c->sure, "era");
    if (c->undated || !strcmp(c->sure, "guess") || !strcmp(c->sure, "word")) {
        ck_assert_msg(!r->year_from && !r->year_to, "%s: %d-%d", note, r->year_from, r->year_to);
        return;
    }
    bool close = is_near(r->year_from, c->from) && is_near(r->year_to, c->to);
    tally->notes++;
    tally->notes_close += close;
    if (!close) fprintf(stderr, "  %s: %d-%d, got %d-%d\n", note, c->from, c->to, r->year_from, r->year_to);
    if (!r->year_because) return;
    tally->dated++;
    ck_assert_msg(record_years_are_era(r) == era, "%s: %s", note, r->year_because);
}

static void check_file(struct arena *arena, void *context) {
    struct tally *tally = context;
    const char *source = getenv("ASFOUND_SOURCE");
    FILE *file = fopen(arena_format(arena, "%s/tests/notes/periods.txt", source ? source : "."), "r");
    ck_assert_msg(file != NULL, "periods.txt cannot be opened");
    char line[400];
    while (fgets(line, sizeof line, file)) {
        struct period_case c;
        line[strcspn(line, "\n")] = '\0';
        if (!read_case(line, &c)) continue;
        check_words(arena, &c, tally);
        const char *stop = c.text[strlen(c.text) - 1] == '.' ? "" : ".";
        check_note(arena, &c, arena_format(arena, "Tin lantern with a wire bail, %s%s", c.text, stop), tally);
        check_note(arena, &c, arena_format(arena, "Lantern (%s), tin and glass", c.text), tally);
        check_note(arena, &c, arena_format(arena, "Oak stool, pegged legs. %s%s Worn seat.", c.text, stop),
                   tally);
    }
    fclose(file);
}

static void check_share(const char *what, size_t close, size_t all) {
    printf("%zu of %zu %s within %d years\n", close, all, what, TOLERANCE);
    ck_assert_uint_ge(all, CASES_LEAST - 20);
    ck_assert_msg(close * 100 >= all * SHARE_LEAST, "%zu of %zu %s", close, all, what);
}

START_TEST(words_of_age_have_the_years_of_custom) {
    struct tally tally = {0};
    struct arena *arena = arena_new(NULL);
    bool fine = arena_try(arena, check_file, &tally);
    arena_free(arena);
    ck_assert(fine);
    check_share("words of age", tally.close, tally.cases);
    check_share("notes with them", tally.notes_close, tally.notes);
    ck_assert_uint_ge(tally.undated, 8);
    ck_assert_uint_ge(tally.dated, 300);
    ck_assert_uint_ge(tally.cases + tally.undated, CASES_LEAST);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("notes: periods");
    TCase *tests = tcase_create("periods");
    tcase_add_test(tests, words_of_age_have_the_years_of_custom);
    suite_add_tcase(suite, tests);
    return support_main(suite);
}
