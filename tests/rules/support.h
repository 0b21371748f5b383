// SPDX-License-Identifier: MIT
// The shipped rules in an arena, packs made for one test, and records given as YAML.
#ifndef TEST_RULES_SUPPORT_H
#define TEST_RULES_SUPPORT_H

#include "../text/support.h"

#include <stdio.h>
#include <string.h>
#include <sys/stat.h>
#include <unistd.h>

#include "format/read.h"
#include "listing/listing.h"
#include "rules/folder.h"
#include "rules/ruleset.h"
#include "text/limits.h"

static inline const char *source_folder(void) {
    const char *folder = getenv("ASFOUND_SOURCE");
    return folder ? folder : ".";
}

// Rules, lists and the word book as the program finds them.
static inline const char *data_folder(void) {
    const char *folder = getenv("ASFOUND_BUILT");
    return folder ? folder : "build-tests/share/asfound";
}

static inline const char *printed(struct arena *arena, struct diags *diags) {
    struct buf out = buf_start(arena);
    diags_print(diags, &out, false);
    return out.at;
}

// The shipped pack, which must load without a word, and the US and UK spellings.
struct shipped {
    struct ruleset *rules;
    struct drafter drafter;
};

static inline struct shipped shipped_load(struct arena *arena) {
    struct diags diags = diags_start(arena);
    const char *folders[] = {arena_format(arena, "%s/rules/core", source_folder())};
    struct ruleset *rules = ruleset_load(arena, folders, 1, &diags);
    const char *path = arena_format(arena, "%s/dict/us-gb.txt", source_folder());
    const struct source *words = folder_read_file(arena, path, LIMIT_RULE_FILE_BYTES, &diags);
    ck_assert_ptr_nonnull(words);
    struct variants *variants = variants_load(arena, words->name, words->text, words->size, &diags);
    ck_assert_msg(!diags.count, "the shipped rules do not load:\n%s", printed(arena, &diags));
    return (struct shipped){rules, {rules, variants, scanner_new(arena, rules->finder_count), NULL, NULL}};
}

static inline void load_once(struct arena *arena, void *context) {
    *(struct shipped *)context = shipped_load(arena);
}

// The same, loaded once in the parent of all tests of a program: call it in an unchecked fixture first.
static inline const struct shipped *shipped_once(void) {
    static struct shipped shipped;
    static struct arena *arena;
    if (!arena) {
        arena = arena_new(NULL);
        if (!arena_try(arena, load_once, &shipped)) abort();
    }
    return &shipped;
}

// A scanner compiles into the arena that it came from, so each task has its own.
static inline struct drafter drafter_in(struct arena *arena, const struct shipped *shipped) {
    struct drafter drafter = shipped->drafter;
    drafter.scanner = scanner_new(arena, shipped->rules->finder_count);
    return drafter;
}

static inline void shipped_setup(void) {
    shipped_once();
}

static inline struct source *source_of(struct arena *arena, const char *name, const char *text) {
    struct source *source = arena_alloc(arena, sizeof *source);
    *source = (struct source){
        .name = name, .text = arena_string(arena, text), .size = strlen(text), .first_line = 1};
    return source;
}

// The record of one YAML document; faults go to `diags`, and the record is then not to be used.
static inline bool record_of(struct arena *arena, const struct ruleset *rules, const char *yaml,
                             struct record *record, struct diags *diags) {
    const struct node *tree = yaml_read(arena, source_of(arena, "record.yaml", yaml), diags);
    return tree && record_read(arena, rules, tree, LOCALE_US, 1, record, diags);
}

static inline const struct listing *draft_of(struct arena *arena, const struct shipped *shipped,
                                             const char *yaml) {
    struct diags diags = diags_start(arena);
    struct record *record = arena_alloc(arena, sizeof *record);
    ck_assert_msg(record_of(arena, shipped->rules, yaml, record, &diags), "%s\n%s", yaml,
                  printed(arena, &diags));
    struct title_options options = {80, COUNT_GRAPHEMES, LOCALE_US, shipped->drafter.variants};
    struct drafter drafter = drafter_in(arena, shipped);
    return listing_draft(arena, &drafter, record, &options);
}

// --- files of one test ---

// A new empty folder becomes the working folder, so that messages name files by short paths.
static inline void enter_new_folder(void) {
    char name[512];
    const char *temporary = getenv("TMPDIR");
    snprintf(name, sizeof name, "%s/asfound-test-XXXXXX", temporary ? temporary : "/tmp");
    ck_assert_ptr_nonnull(mkdtemp(name));
    ck_assert_int_eq(chdir(name), 0);
}

static inline void write_file(const char *path, const char *text, size_t size) {
    char folder[512];
    for (const char *slash = path; (slash = strchr(slash, '/')); slash++) {
        snprintf(folder, sizeof folder, "%.*s", (int)(slash - path), path);
        mkdir(folder, 0777);
    }
    FILE *file = fopen(path, "wb");
    ck_assert_msg(file != NULL, "%s", path);
    ck_assert_uint_eq(fwrite(text, 1, size, file), size);
    ck_assert_int_eq(fclose(file), 0);
}

static inline void leave_folder(void) {
    char path[4096];
    ck_assert_ptr_nonnull(getcwd(path, sizeof path));
    const char *name = strrchr(path, '/') + 1;
    ck_assert_int_eq(strncmp(name, "asfound-test-", 13), 0);
    char command[128];
    ck_assert_int_eq(chdir(".."), 0);
    snprintf(command, sizeof command, "rm -r %s", name);
    ck_assert_int_eq(system(command), 0);
}

// --- cases kept as text: "=== title", "--- file NAME" with its text, "--- messages" with the exact text
// expected ---

struct message_case {
    const char *title, *expected;
    struct {
        const char *name, *text;
        size_t size;
    } files[6];
    size_t file_count;
};

struct message_cases {
    struct message_case at[160];
    size_t count;
};

// Splits the file in place: each text ends where the next line of "===" or "---" begins.
static inline struct message_cases *cases_load(struct arena *arena, const char *path) {
    struct diags diags = diags_start(arena);
    const struct source *source = folder_read_file(arena, arena_format(arena, "%s/%s", source_folder(), path),
                                                   LIMIT_RULE_FILE_BYTES, &diags);
    ck_assert_msg(source != NULL, "%s", printed(arena, &diags));
    struct message_cases *cases = arena_alloc(arena, sizeof *cases);
    for (const char *line = source->text; *line;) {
        const char *end = strchr(line, '\n'), *body = end + 1, *next = body;
        while (*next && strncmp(next, "=== ", 4) != 0 && strncmp(next, "--- ", 4) != 0)
            next = strchr(next, '\n') + 1;
        char *head = arena_copy(arena, line, (size_t)(end - line)),
             *text = arena_copy(arena, body, (size_t)(next - body));
        struct message_case *now = cases->count ? &cases->at[cases->count - 1] : cases->at;
        if (!strncmp(head, "=== ", 4)) {
            ck_assert_uint_lt(cases->count, sizeof cases->at / sizeof *cases->at);
            cases->at[cases->count++].title = head + 4;
        } else if (!strncmp(head, "--- file ", 9)) {
            ck_assert_uint_lt(now->file_count, 6);
            now->files[now->file_count].name = head + 9;
            now->files[now->file_count].size = strlen(text);
            now->files[now->file_count++].text = text;
        } else if (!strcmp(head, "--- messages"))
            now->expected = text;
        else
            ck_assert_msg(*head == '#', "%s: not a line of a case: %s", path, head);
        line = next;
    }
    return cases;
}

// Adds to `wrong` where they differ.
static inline void compare_messages(const struct message_case *one, const char *got, struct buf *wrong) {
    const char *expected = one->expected ? one->expected : "(nothing given)\n";
    if (strcmp(expected, got) != 0)
        buf_format(wrong, "%s\n--- expected\n%s--- got\n%s--- end\n", one->title, expected, got);
}

#endif
