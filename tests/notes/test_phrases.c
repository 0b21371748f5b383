// SPDX-License-Identifier: MIT
// Sentences of condition, a file for each phenomenon and one of plain words for each group of kinds, against
// what they must become. A line of tests/notes/phrases/*.txt is "wanted | note": a kind, or with "-" in front
// one that is denied, "^" one that may not be found (or "^-" denied), "?" words that nobody understood or
// that were not looked at; "a/b" is either; nothing wanted means nothing may be found. A third field is the
// number of the phrase that the note says in other words. "!" before a line is a gap: it must still fail, so
// that one that is mended is told. Of each file 93 in 100 lines must hold, and of those with a number 95 in
// 100.
#include "support_book.h"

#include <dirent.h>

enum { ROOM = 512, LEAST = 93 }; // characters of a line; least share of lines that hold, in hundredths

struct tally {
    int lines, held, wrong;
    int numbered, numbered_held; // of those that say a phrase of the list in other words
};

static bool is_kind(const struct flaw *kind, const char *id, size_t size) {
    return strlen(kind->rule.id) == size && !memcmp(kind->rule.id, id, size);
}

static bool is_found(const struct record *record, const char *id, size_t size) {
    for (size_t i = 0; i < record->flaw_count; i++)
        if (is_kind(record->flaws[i].kind, id, size)) return true;
    for (size_t i = 0; i < record->unchecked.count; i++)
        if (strlen(record->unchecked.at[i]) == size && !memcmp(record->unchecked.at[i], id, size))
            return true;
    return false;
}

static bool is_denied(const struct record *record, const char *id, size_t size) {
    for (size_t i = 0; i < record->clear_count; i++)
        if (record->clear[i].kind && is_kind(record->clear[i].kind, id, size)) return true;
    return false;
}

static bool is_asked(const struct record *record) {
    return (record->unread && record->unread->count) || record->unchecked.count ||
           (record->asides && record->asides->count);
}

static bool is_so(const struct record *record, const char *want, size_t size) {
    if (*want == '?') return is_asked(record);
    if (*want == '^') return !is_so(record, want + 1, size - 1);
    return *want == '-' ? is_denied(record, want + 1, size - 1) : is_found(record, want, size);
}

// One of "a/b" or "-a/b" of `size` characters.
static bool has_one(const struct record *record, const char *want, size_t size) {
    bool denied = *want == '-'; // of "-a/b" both
    for (size_t at = 0; at < size;) {
        size_t length = 0;
        while (at + length < size && want[at + length] != '/') length++;
        bool plain = !strchr("-^?", want[at]);
        if (denied && plain ? is_denied(record, want + at, length) : is_so(record, want + at, length))
            return true;
        at += length + 1;
    }
    return false;
}

static bool holds(const struct record *record, const char *wants, size_t size) {
    if (!size) return record->flaw_count == 0;
    for (size_t at = 0; at < size;) {
        size_t length = 0;
        while (at + length < size && wants[at + length] != ',') length++;
        if (!has_one(record, wants + at, length)) return false;
        at += length + 1;
    }
    return true;
}

static void try_line(struct arena *arena, const char *file, const char *line, struct tally *tally) {
    bool gap = *line == '!';
    if (gap) line++;
    const char *bar = strstr(line, "| ");
    ck_assert_msg(bar != NULL, "%s: no bar in '%s'", file, line);
    size_t size = (size_t)(bar - line);
    while (size && line[size - 1] == ' ') size--;
    const char *note = bar + 2, *number = strstr(note, " | F");
    if (number) note = arena_copy(arena, note, (size_t)(number - note));
    bool held = holds(support_read(arena, note), line, size);
    tally->lines++;
    tally->held += held;
    tally->numbered += number != NULL;
    tally->numbered_held += number && held;
    if (held != gap) return;
    fprintf(stderr, "%s: %s: %s\n", file, gap ? "a gap no more" : "not so", line);
    tally->wrong++;
}

static void read_file(struct arena *arena, const char *folder, const char *name, struct tally *all) {
    FILE *file = fopen(arena_format(arena, "%s/%s", folder, name), "r");
    ck_assert_msg(file != NULL, "%s cannot be opened", name);
    struct tally tally = {0, 0, 0, 0, 0};
    char line[ROOM];
    while (fgets(line, sizeof line, file)) {
        line[strcspn(line, "\n")] = '\0';
        if (*line && *line != '#') try_line(arena, name, line, &tally);
    }
    fclose(file);
    ck_assert_msg(tally.lines >= 5, "%s: %d lines", name, tally.lines);
    if (100 * tally.held < LEAST * tally.lines) {
        fprintf(stderr, "%s: %d of %d lines hold\n", name, tally.held, tally.lines);
        tally.wrong++;
    }
    all->lines += tally.lines;
    all->held += tally.held;
    all->wrong += tally.wrong;
    all->numbered += tally.numbered;
    all->numbered_held += tally.numbered_held;
}

static void read_all(struct arena *arena, void *context) {
    (void)context;
    const char *source = getenv("ASFOUND_SOURCE");
    const char *folder = arena_format(arena, "%s/tests/notes/phrases", source ? source : ".");
    DIR *entries = opendir(folder);
    ck_assert_msg(entries != NULL, "%s cannot be opened", folder);
    int files = 0;
    struct tally all = {0, 0, 0, 0, 0};
    for (struct dirent *entry; (entry = readdir(entries)) != NULL;) {
        if (!strstr(entry->d_name, ".txt")) continue;
        read_file(arena, folder, entry->d_name, &all);
        files++;
    }
    closedir(entries);
    ck_assert_int_ge(files, 10);
    printf("%d of %d sentences are read as they say\n", all.held, all.lines);
    printf("%d of %d ways of speaking of condition\n", all.numbered_held, all.numbered);
    ck_assert_int_ge(all.numbered, 200);
    ck_assert_int_ge(100 * all.numbered_held, 95 * all.numbered);
    ck_assert_msg(!all.wrong, "%d lines are not as they say", all.wrong);
}

START_TEST(phrases_are_read) {
    ck_assert(arena_try(support.arena, read_all, NULL));
}
END_TEST

int main(void) {
    Suite *suite = suite_create("phrases");
    TCase *tests = tcase_create("files");
    tcase_set_timeout(tests, 120);
    tcase_add_test(tests, phrases_are_read);
    suite_add_tcase(suite, tests);
    return support_main(suite);
}
