// SPDX-License-Identifier: MIT
// What a note says is wrong, not wrong or not known: a file of cases a phenomenon. Each phenomenon is then
// switched off: cases of its own file have to fail, else they test nothing.
//
// A case is a note, a bar, and what should be read: kind, then where it is said ?, @place, /part, #count,
// !severity; -kind is denied, ~kind looked for and not seen, *kind not looked at; !! at
// the end: degrees are compared although none is wanted. An order is not asked for.
// Cases are our own sentences; the phenomena are those of Chapman and others (2001) and Harkema and others
// (2009) for clinical text, and common practice, no source, for the rest.
#include <dirent.h>

#include "support_book.h"

#include "notes/scope.h"

enum { CASES_LEAST = 60 };

struct counted {
    const char *folder, *only;
    unsigned off;
    bool quiet;
    size_t cases, wrong;
};

static int by_text(const void *a, const void *b) {
    return strcmp(*(const char *const *)a, *(const char *const *)b);
}

static const char *flaw_text(struct arena *arena, const struct item_flaw *f) {
    static const char *const degrees[] = {"", "!light", "!moderate", "!heavy"};
    struct buf out = buf_start(arena);
    buf_format(&out, "%s%s", f->kind->rule.id, f->sure == SURE_STATED ? "" : "?");
    if (f->part) buf_format(&out, "/%s", f->part);
    if (f->where) buf_format(&out, "@%s", f->where);
    if (f->count > 1 || f->of) buf_format(&out, "#%d", f->count);
    if (f->of) buf_format(&out, "/%d", f->of);
    buf_text(&out, degrees[f->severity]);
    return out.at;
}

static const char *clear_text(struct arena *arena, const struct item_clear *c) {
    struct buf out = buf_start(arena);
    buf_format(&out, "%s%s", c->none_seen ? "~" : "-", c->kind->rule.id);
    if (c->part) buf_format(&out, "/%s", c->part);
    if (c->where) buf_format(&out, "@%s", c->where);
    return out.at;
}

static const char *joined(struct arena *arena, const char **texts, size_t count) {
    if (count) qsort(texts, count, sizeof *texts, by_text);
    struct buf out = buf_start(arena);
    for (size_t i = 0; i < count; i++) buf_format(&out, "%s%s", i ? " " : "", texts[i]);
    return out.at;
}

static const char *told(struct arena *arena, const struct record *r, bool degrees) {
    const char **texts =
        arena_array(arena, r->flaw_count + r->clear_count + r->unchecked.count + 1, sizeof *texts);
    size_t count = 0;
    for (size_t i = 0; i < r->flaw_count; i++) {
        struct item_flaw flaw = r->flaws[i];
        if (!degrees) flaw.severity = SEVERITY_UNKNOWN;
        texts[count++] = flaw_text(arena, &flaw);
    }
    for (size_t i = 0; i < r->clear_count; i++) texts[count++] = clear_text(arena, &r->clear[i]);
    for (size_t i = 0; i < r->unchecked.count; i++)
        texts[count++] = arena_format(arena, "*%s", r->unchecked.at[i]);
    return joined(arena, texts, count);
}

// A place or part may hold several words: what begins a fact is a kind, a sign before one, or a state.
static const char *wanted(struct arena *arena, const char *text) {
    const char **texts = arena_array(arena, strlen(text) + 1, sizeof *texts);
    size_t count = 0;
    for (const char *at = text; *at;) {
        at += strspn(at, " ");
        size_t n = strcspn(at, " ");
        if (!n) break;
        const char *word = arena_copy(arena, at, n);
        size_t head = strspn(word, "-~*") + strcspn(word + strspn(word, "-~*"), "?@/#!");
        const char *id = arena_copy(arena, word, head) + strspn(word, "-~*");
        if (ruleset_flaw(support.rules, id) || !count)
            texts[count++] = word;
        else
            texts[count - 1] = arena_format(arena, "%s %s", texts[count - 1], word);
        at += n;
    }
    return joined(arena, texts, count);
}

static void check_line(struct arena *arena, struct counted *c, char *line) {
    char *bar = strchr(line, '|');
    if (line[0] == '#' || !bar) return;
    *bar = '\0';
    c->cases++;
    char *none = strstr(bar + 1, "!!");
    if (none) *none = '\0';
    const char *wants = wanted(arena, bar + 1);
    const struct record *record = support_read_without(arena, line, c->off);
    const char *got = told(arena, record, none || strchr(wants, '!') != NULL);
    if (!strcmp(got, wants)) return;
    c->wrong++;
    if (!c->quiet) fprintf(stderr, "  %s\n    wanted: %s\n    got:    %s\n", line, wants, got);
}

static void check_file(struct arena *arena, struct counted *c, const char *path) {
    FILE *file = fopen(path, "r");
    ck_assert_msg(file != NULL, "%s cannot be opened", path);
    char line[400];
    while (fgets(line, sizeof line, file)) {
        line[strcspn(line, "\n")] = '\0';
        check_line(arena, c, line);
    }
    fclose(file);
}

static void check_folder(struct arena *arena, void *context) {
    struct counted *c = context;
    DIR *folder = opendir(c->folder);
    ck_assert_msg(folder != NULL, "%s cannot be opened", c->folder);
    for (const struct dirent *entry; (entry = readdir(folder)) != NULL;)
        if (entry->d_name[0] != '.' && (!c->only || !strcmp(entry->d_name, c->only)))
            check_file(arena, c, arena_format(arena, "%s/%s", c->folder, entry->d_name));
    closedir(folder);
}

static void count(struct counted *c) {
    char folder[600];
    const char *source = getenv("ASFOUND_SOURCE");
    snprintf(folder, sizeof folder, "%s/tests/notes/phenomena", source ? source : ".");
    c->folder = folder;
    struct arena *arena = arena_new(NULL);
    bool fine = arena_try(arena, check_folder, c);
    arena_free(arena);
    ck_assert(fine);
}

START_TEST(each_phenomenon_is_read) {
    struct counted all = {0};
    count(&all);
    ck_assert_uint_ge(all.cases, CASES_LEAST);
    ck_assert_msg(!all.wrong, "%zu of %zu notes were read otherwise", all.wrong, all.cases);
}
END_TEST

static const struct {
    const char *file;
    enum phenomenon which;
} phenomena[] = {{"denial.txt", SCOPE_DENIAL},         {"exception.txt", SCOPE_EXCEPTION},
                 {"limited.txt", SCOPE_LIMITED},       {"past.txt", SCOPE_PAST},
                 {"doubt.txt", SCOPE_DOUBT},           {"unknown.txt", SCOPE_UNKNOWN},
                 {"correction.txt", SCOPE_CORRECTION}, {"packing.txt", SCOPE_PACKING},
                 {"intended.txt", SCOPE_INTENDED},     {"heard.txt", SCOPE_HEARD}};

START_TEST(each_phenomenon_is_missed_when_off) {
    struct counted c = {.only = phenomena[_i].file, .off = phenomena[_i].which, .quiet = true};
    count(&c);
    printf("without %s: %zu of %zu of its cases fail\n", phenomena[_i].file, c.wrong, c.cases);
    ck_assert_msg(c.wrong >= 2, "%s: %zu of %zu cases fail without it", phenomena[_i].file, c.wrong, c.cases);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("notes: phenomena");
    TCase *cases = tcase_create("phenomena");
    tcase_set_timeout(cases, 120);
    tcase_add_test(cases, each_phenomenon_is_read);
    tcase_add_loop_test(cases, each_phenomenon_is_missed_when_off, 0,
                        (int)(sizeof phenomena / sizeof *phenomena));
    suite_add_tcase(suite, cases);
    return support_main(suite);
}
