// SPDX-License-Identifier: MIT
// Drafts an NDJSON file several times on one core: drafts a second (the best pass, which is the one least
// disturbed by others), what each step takes of it, and the arena bytes of a draft. Prints lines of "name
// value" for scripts.
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "format/stream.h"
#include "format/write.h"
#include "listing/listing.h"
#include "listing/spelling.h"
#include "rules/folder.h"
#include "text/limits.h"
#include "words/trade.h"

enum { PASSES = 3 };

enum step { STEP_READ, STEP_RECORD, STEP_LISTING, STEP_JSON, STEP_FREE, STEP_COUNT };
static const char *const step_names[] = {"cut and parse", "record", "listing", "JSON", "arena reset"};

// What a listing is made of, each done once more beside the draft.
enum part {
    PART_CLAIMS,
    PART_TITLE,
    PART_DISCLOSURE,
    PART_QUESTIONS,
    PART_PHOTOS,
    PART_DESCRIPTION,
    PART_SPELLING,
    PART_COUNT
};
static const char *const part_names[] = {"claims", "title",       "disclosure", "questions",
                                         "photos", "description", "spelling"};

struct bench {
    const char *data, *path;
    struct drafter drafter;
    struct arena *rules, *records; // the second is reset after each draft
    struct stream *stream;
    struct diags diags;
    size_t *used, count, room;
    double took[STEP_COUNT], parts[PART_COUNT];
    const struct trade *trade;
    const struct wordbook *book;
    bool more, fine;
    size_t written;
};

static double now(void) {
    struct timespec at;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &at);
    return (double)at.tv_sec + (double)at.tv_nsec * 1e-9;
}

static size_t get_file(void *context, char *to, size_t room) {
    FILE *file = context;
    size_t got = fread(to, 1, room, file);
    return !got && ferror(file) ? (size_t)-1 : got;
}

static void load(struct arena *arena, void *context) {
    struct bench *b = context;
    b->diags = diags_start(arena);
    const char *folder = arena_format(arena, "%s/rules/core", b->data);
    b->drafter.rules = ruleset_load(arena, &folder, 1, &b->diags);
    const char *path = arena_format(arena, "%s/dict/us-gb.txt", b->data);
    const struct source *words = folder_read_file(arena, path, LIMIT_RULE_FILE_BYTES, &b->diags);
    if (words) b->drafter.variants = variants_load(arena, words->name, words->text, words->size, &b->diags);
    words = folder_read_file(arena, arena_format(arena, "%s/dict/trade.txt", b->data), LIMIT_RULE_FILE_BYTES,
                             &b->diags);
    if (words) b->trade = trade_read(arena, words, &b->diags);
    b->book = wordbook_open(arena, arena_format(arena, "%s/wordbook.bin", b->data), &b->diags);
    if (!b->drafter.rules) return;
    struct spelling_options spelling = {
        LOCALE_US, NULL, b->trade, spelling_lists_new(arena, b->drafter.rules, b->book), b->drafter.rules};
    b->drafter.spelling = spelling_new(arena, &spelling, &b->diags);
    b->drafter.scanner = scanner_new(arena, b->drafter.rules->finder_count);
}

static void keep_used(struct bench *b, size_t used) {
    if (b->count == b->room) {
        b->room = b->room ? 2 * b->room : 8192;
        b->used = realloc(b->used, b->room * sizeof *b->used);
        if (!b->used) abort();
    }
    b->used[b->count++] = used;
}

static void time_parts(struct arena *arena, struct bench *b, const struct listing *drafted,
                       const struct title_options *options) {
    const struct record *record = drafted->record;
    struct listing copy = {.record = record,
                           .options = *options,
                           .claims = drafted->claims,
                           .disclosure = drafted->disclosure,
                           .grading = drafted->grading};
    double marks[PART_COUNT + 1] = {now()};
    const struct claims *claims = claims_weigh(arena, b->drafter.scanner, b->drafter.rules, record);
    marks[PART_TITLE] = now();
    listing_choose(arena, &copy, title_plan(arena, record, claims, options));
    marks[PART_DISCLOSURE] = now();
    disclosure_write(arena, b->drafter.rules, record, LOCALE_US, b->drafter.variants);
    marks[PART_QUESTIONS] = now();
    const char *words = concerns_words(arena, record);
    questions_ask(arena, b->drafter.rules, record, words);
    marks[PART_PHOTOS] = now();
    photos_wish(arena, record, words);
    marks[PART_DESCRIPTION] = now();
    copy.description = listing_describe(arena, &b->drafter, &copy);
    marks[PART_SPELLING] = now();
    listing_spell(arena, &copy, b->drafter.spelling);
    marks[PART_COUNT] = now();
    for (int part = 0; part < PART_COUNT; part++) b->parts[part] += marks[part + 1] - marks[part];
}

static void draft(struct arena *arena, void *context) {
    struct bench *b = context;
    double marks[STEP_JSON + 2] = {now()};
    struct node *tree = NULL;
    b->more = stream_next(b->stream, arena, &b->diags, &tree);
    if (!b->more || !tree) return;
    marks[STEP_RECORD] = now();
    struct record record;
    if (!record_read(arena, b->drafter.rules, tree, LOCALE_US, b->count, &record, &b->diags)) return;
    marks[STEP_LISTING] = now();
    struct title_options options = {80, COUNT_GRAPHEMES, LOCALE_US, b->drafter.variants};
    const struct listing *listing = listing_draft(arena, &b->drafter, &record, &options);
    marks[STEP_JSON] = now();
    struct buf out = buf_start(arena);
    json_write(&out, listing_tree(arena, listing));
    b->written += out.n;
    marks[STEP_JSON + 1] = now();
    for (int step = 0; step <= STEP_JSON; step++) b->took[step] += marks[step + 1] - marks[step];
    keep_used(b, arena_used(arena));
    time_parts(arena, b, listing, &options);
}

static bool pass(struct bench *b) {
    FILE *file = fopen(b->path, "rb");
    if (!file) return false;
    struct stream_source from = {b->path, get_file, file};
    b->stream = stream_open(&from, FORM_NDJSON, NULL);
    b->count = 0;
    memset(b->took, 0, sizeof b->took);
    memset(b->parts, 0, sizeof b->parts);
    bool fine = b->stream != NULL;
    for (b->more = true; b->more && fine;) {
        fine = arena_try(b->records, draft, b);
        double at = now();
        arena_reset(b->records);
        b->took[STEP_FREE] += now() - at;
    }
    if (b->stream) stream_close(b->stream);
    fclose(file);
    return fine && b->count;
}

static int by_size(const void *a, const void *b) {
    size_t x = *(const size_t *)a, y = *(const size_t *)b;
    return (x > y) - (x < y);
}

static void report(const struct bench *b, const double *took, size_t messages) {
    double all = 0;
    for (int step = 0; step < STEP_COUNT; step++) all += took[step];
    printf("drafts %zu\nmessages %zu\ndrafts-a-second %.0f\n", b->count, messages, (double)b->count / all);
    for (int step = 0; step < STEP_COUNT; step++)
        printf("  %-14s %6.1f us a draft, %4.1f %%\n", step_names[step], took[step] / (double)b->count * 1e6,
               100 * took[step] / all);
    double each = all / (double)b->count;
    for (int part = 0; part < PART_COUNT; part++) {
        double own = b->parts[part] / (double)b->count;
        printf("  without %-12s %6.1f us less a draft, %.0f drafts a second\n", part_names[part], own * 1e6,
               1 / (each - own));
    }
    qsort(b->used, b->count, sizeof *b->used, by_size);
    static const double at[] = {0.5, 0.9, 0.99, 0.999};
    static const char *const names[] = {"p50", "p90", "p99", "p99.9"};
    for (size_t i = 0; i < sizeof at / sizeof *at; i++)
        printf("arena-%s %zu\n", names[i], b->used[(size_t)(at[i] * (double)(b->count - 1))]);
    printf("arena-most %zu\n", b->used[b->count - 1]);
}

// Messages and patterns met on the way live in the rules' arena, so all passes run inside its trial.
static void measure(struct arena *arena, void *context) {
    struct bench *b = context;
    double best[STEP_COUNT] = {0}, least = 1e9;
    load(arena, b);
    b->fine = b->drafter.rules && b->drafter.variants;
    // The first pass compiles the patterns that are met and is not counted.
    for (int i = 0; b->fine && i <= PASSES; i++) {
        b->fine = pass(b);
        double all = 0;
        for (int step = 0; step < STEP_COUNT; step++) all += b->took[step];
        if (i == 0 || all > least) continue;
        least = all;
        memcpy(best, b->took, sizeof best);
    }
    if (b->fine) report(b, best, b->diags.count);
}

int main(int argc, char **argv) {
    if (argc != 3) {
        fputs("usage: drafts DATA-FOLDER RECORDS.ndjson\n", stderr);
        return 2;
    }
    struct bench b = {.data = argv[1], .path = argv[2], .rules = arena_new(NULL), .records = arena_new(NULL)};
    bool fine = b.rules && b.records && arena_try(b.rules, measure, &b) && b.fine;
    if (!fine) fputs("drafts: the rules or the records cannot be read\n", stderr);
    arena_free(b.records);
    arena_free(b.rules);
    free(b.used);
    return fine ? 0 : 1;
}
