// SPDX-License-Identifier: MIT
// Notes of cautions.txt, in the words of many sellers: the share that raises its subject, the share of
// harmless ones that raise nothing, and none of those that stops.
#include "../rules/phrases_once.h"

#include "evidence/cautions.h"
#include "notes/read.h"

enum { RAISING_LEAST = 770, QUIET_LEAST = 400, SHARE_LEAST = 95, SUBJECTS_LEAST = 62 };

struct tally {
    size_t raising, raised, quiet, loud;
};

struct line {
    const char *ids, *notes;
    struct tally *tally;
};

static bool names(const char *ids, const char *id) {
    size_t n = strlen(id);
    for (const char *at = ids; at; at = strchr(at, '/')) {
        at += *at == '/';
        if (!strncmp(at, id, n) && (!at[n] || at[n] == '/')) return true;
    }
    return false;
}

static const struct cautions *cautions_of(struct arena *arena, const char *text) {
    struct drafter drafter = drafter_in(arena, shipped_once());
    struct note_reader reader = {
        .rules = drafter.rules, .phrases = phrases_once(), .scanner = drafter.scanner, .locale = LOCALE_US};
    struct record given = {.id = "a", .notes = text};
    struct notes notes = notes_open(arena, &reader, &given);
    const struct note_read *read = notes_read(arena, &reader, &notes, 0);
    static const struct title_options usual = {80, COUNT_GRAPHEMES, LOCALE_US, NULL};
    return listing_draft(arena, &drafter, &read->record, &usual)->cautions;
}

static void check_line(struct arena *arena, void *context) {
    const struct line *line = context;
    const struct cautions *cautions = cautions_of(arena, line->notes);
    bool harmless = !strcmp(line->ids, "-"), found = false;
    for (size_t i = 0; i < cautions->count; i++)
        found |= names(line->ids, cautions->items[i].caution->rule.id);
    if (harmless) {
        ck_assert_msg(!cautions->stop, "%s: stopped by %s", line->notes, cautions->items[0].caution->rule.id);
        line->tally->quiet++;
        line->tally->loud += cautions->count > 0;
        if (cautions->count) fprintf(stderr, "  %s: %s\n", line->notes, cautions->items[0].caution->rule.id);
        return;
    }
    line->tally->raising++;
    line->tally->raised += found;
    if (!found) fprintf(stderr, "  %s: no %s\n", line->notes, line->ids);
}

// Every subject has notes of its own.
static void check_subjects(const char *text) {
    const struct ruleset *rules = shipped_once()->rules;
    size_t subjects = 0;
    for (size_t i = 0; i < rules->caution_count; i++) {
        const char *id = rules->cautions[i]->rule.id;
        size_t n = strlen(id), notes = 0;
        for (const char *at = text; (at = strstr(at, id)); at += n)
            notes += (at == text || at[-1] == '\n' || at[-1] == '/') && (at[n] == ' ' || at[n] == '/');
        subjects += notes >= 2;
    }
    ck_assert_msg(subjects >= SUBJECTS_LEAST, "%zu subjects of %zu", subjects, rules->caution_count);
}

static void check_all(struct arena *arena, void *context) {
    struct tally *tally = context;
    struct diags diags = diags_start(arena);
    const char *path = arena_format(arena, "%s/tests/evidence/cautions.txt", source_folder());
    const struct source *source = folder_read_file(arena, path, LIMIT_RULE_FILE_BYTES, &diags);
    ck_assert_ptr_nonnull(source);
    check_subjects(source->text);
    char *text = arena_copy(arena, source->text, source->size), *rest;
    for (char *at = strtok_r(text, "\n", &rest); at; at = strtok_r(NULL, "\n", &rest)) {
        if (*at == '#') continue;
        char *bar = strstr(at, " | ");
        ck_assert_msg(bar != NULL, "%s", at);
        *bar = '\0';
        struct line line = {at, bar + 3, tally};
        within(check_line, &line);
    }
}

START_TEST(subjects_are_raised_and_harmless_words_are_not) {
    struct tally tally = {0};
    within(check_all, &tally);
    printf("%zu of %zu notes raise their subject, %zu of %zu harmless ones raise any\n", tally.raised,
           tally.raising, tally.loud, tally.quiet);
    ck_assert_uint_ge(tally.raising, RAISING_LEAST);
    ck_assert_uint_ge(tally.quiet, QUIET_LEAST);
    ck_assert_uint_ge(tally.raised * 100, tally.raising * SHARE_LEAST);
    ck_assert_uint_le(tally.loud * 50, tally.quiet);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("evidence.caution words");
    TCase *tests = tcase_create("words");
    tcase_add_unchecked_fixture(tests, shipped_setup, NULL);
    tcase_set_timeout(tests, 300);
    tcase_add_test(tests, subjects_are_raised_and_harmless_words_are_not);
    suite_add_tcase(suite, tests);
    return run_suite(suite);
}
