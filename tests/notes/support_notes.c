// SPDX-License-Identifier: MIT
#include "support.h"

struct support support;

static void begin(struct arena *arena, void *context) {
    (void)context;
    const char *source = getenv("ASFOUND_SOURCE");
    const char *folder = arena_format(arena, "%s/rules/core", source ? source : ".");
    struct diags diags = diags_start(arena);
    support.rules = ruleset_load(arena, &folder, 1, &diags);
    if (!support.rules) return;
    support.phrases = phrases_new(arena, support.rules);
}

void support_begin(void) {
    support.arena = arena_new(NULL);
    if (!arena_try(support.arena, begin, NULL) || !support.phrases) {
        fprintf(stderr, "the shipped rules cannot be read\n");
        exit(1);
    }
}

void support_end(void) {
    arena_free(support.arena);
}

struct note *support_note(struct arena *arena, const char *text, enum locale locale) {
    struct note *note = arena_alloc(arena, sizeof *note);
    note->arena = arena;
    note->rules = support.rules;
    note->phrases = support.phrases;
    note->locale = locale;
    note->record = arena_alloc(arena, sizeof *note->record);
    note_start(note, text, strlen(text));
    return note;
}

struct run {
    const struct notes_case *cases;
    size_t count;
    enum locale locale;
    void (*read)(struct note *note);
    const char *(*tell)(const struct note *note);
    int wrong;
};

static void run_cases(struct arena *arena, void *context) {
    struct run *run = context;
    for (size_t i = 0; i < run->count; i++) {
        struct note *note = support_note(arena, run->cases[i].note, run->locale);
        run->read(note);
        const char *told = run->tell(note);
        if (!strcmp(told, run->cases[i].wants)) continue;
        fprintf(stderr, "  %s\n    wanted: %s\n    got:    %s\n", run->cases[i].note, run->cases[i].wants,
                told);
        run->wrong++;
    }
}

void support_cases(const struct notes_case *cases, size_t count, enum locale locale,
                   void (*read)(struct note *note), const char *(*tell)(const struct note *note)) {
    struct run run = {cases, count, locale, read, tell, 0};
    struct arena *arena = arena_new(NULL);
    bool fine = arena_try(arena, run_cases, &run);
    arena_free(arena);
    ck_assert(fine);
    ck_assert_msg(!run.wrong, "%d of %zu notes were read otherwise", run.wrong, count);
}

int support_main(Suite *suite) {
    support_begin();
    SRunner *runner = srunner_create(suite);
    srunner_run_all(runner, CK_NORMAL);
    int failed = srunner_ntests_failed(runner);
    srunner_free(runner);
    support_end();
    return failed ? EXIT_FAILURE : EXIT_SUCCESS;
}
