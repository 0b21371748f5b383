// SPDX-License-Identifier: MIT
// Reading of notes on one core, as ratios within one run: the scan for fault words against a floor that only
// lowers and hashes every word; reading alone and reading with drafting, notes a second; how time grows with
// the size of one note; how much memory a large note takes; and what is allocated once everything is warm.
// With "words FILE" it writes the phrases it looks for, and with "notes FILE" its notes, for a peer.
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <time.h>

#include "engine.h"
#include "format/write.h"
#include "listing/listing.h"
#include "notes/read.h"
#include "rules/folder.h"
#include "text/limits.h"

enum { NOTES = 3000, PASSES = 3, NOTE_ROOM = 512 };

static const char *const sentences[] = {
    "Brass ship lantern with a green lens.",
    "Stands 14 inches tall and weighs about 3 lbs 4 oz.",
    "Two small dents on the top and a bit of verdigris at the hinge.",
    "No burner in it, the lens isn't cracked.",
    "Found at the back of the boat house under a heap of sacks.",
    "Oak school desk, lift up lid, inkwell is missing.",
    "I haven't checked it for woodworm and the joints don't wobble.",
    "Stamped 4417 on the base, the maker's name is too worn to read.",
    "Enamel coffee pot, white with a blue rim, three chips near the spout.",
    "Paid 4 dollars for the whole box at a farm sale.",
    "Works on a fresh battery, hums a little when it warms up.",
    "The cord is stiff and somebody put tape round the plug.",
    "Wool blanket, grey with a red stripe, 60 by 80 inches.",
    "Smells faintly of mothballs, no holes that I can find.",
    "Set of 6 tin mugs, one of the six has a dent in the rim.",
    "Leather case is cracked along the fold and the strap has gone.",
    "Field glasses, 8 x 30, some haze in the left lens.",
    "Nothing else wrong apart from light scratches on the bottom.",
    "Map of a county, linen backed, foxing at the edges and a short tear.",
    "My uncle used it for years and it never let him down.",
};

struct bench {
    const char *data, *task, *path;
    const struct ruleset *rules;
    const struct phrases *phrases;
    const struct wordbook *book;
    struct asked *asked;
    struct drafter drafter;
    struct arena *records;
    struct diags diags;
    char (*notes)[NOTE_ROOM];
    size_t sizes[NOTES]; // of the notes
    size_t bytes, allocated;
    uint64_t sum; // what was computed, so that nothing is left out by the compiler
    size_t at;
};

static double now(void) {
    struct timespec at;
    clock_gettime(CLOCK_PROCESS_CPUTIME_ID, &at);
    return (double)at.tv_sec + (double)at.tv_nsec * 1e-9;
}

static void *count_alloc(void *context, size_t size) {
    ++*(size_t *)context;
    return malloc(size);
}

static void count_free(void *context, void *block) {
    (void)context;
    free(block);
}

// Six sentences each, in an order of its own: a little more than the 300 bytes that the limit is for.
static void make_notes(struct bench *b) {
    uint32_t state = 1;
    for (size_t i = 0; i < NOTES; i++) {
        size_t n = 0;
        for (int k = 0; k < 6; k++) {
            state = state * 1664525u + 1013904223u;
            const char *s = sentences[(state >> 16) % (sizeof sentences / sizeof *sentences)];
            size_t size = strlen(s);
            if (n + size + 2 > NOTE_ROOM) break;
            if (n) b->notes[i][n++] = ' ';
            memcpy(b->notes[i] + n, s, size);
            n += size;
        }
        b->notes[i][n] = '\0';
        b->sizes[i] = n;
        b->bytes += n;
    }
}

static void load(struct arena *arena, struct bench *b) {
    b->diags = diags_start(arena);
    const char *folder = arena_format(arena, "%s/rules/core", b->data);
    b->rules = ruleset_load(arena, &folder, 1, &b->diags);
    if (!b->rules) return;
    b->phrases = phrases_new(arena, b->rules);
    b->asked = asked_new(arena);
    b->book = wordbook_open(arena, arena_format(arena, "%s/wordbook.bin", b->data), &b->diags);
    const struct source *words = folder_read_file(arena, arena_format(arena, "%s/dict/us-gb.txt", b->data),
                                                  LIMIT_RULE_FILE_BYTES, &b->diags);
    if (words) b->drafter.variants = variants_load(arena, words->name, words->text, words->size, &b->diags);
    b->drafter.rules = b->rules;
    b->drafter.scanner = scanner_new(arena, b->rules->finder_count);
}

// --- what is measured, one note each ---

static void floor_of(struct arena *arena, struct bench *b, const char *text) {
    (void)arena;
    uint64_t hash = 14695981039346656037u;
    for (; *text; text++) {
        char c = *text;
        if (c >= 'A' && c <= 'Z') c = (char)(c | 0x20);
        if (c == ' ') {
            b->sum += hash;
            hash = 14695981039346656037u;
        } else
            hash = (hash ^ (unsigned char)c) * 1099511628211u;
    }
    b->sum += hash;
}

// Who scans knows the size, which the floor finds on its way.
static void scan_of(struct arena *arena, struct bench *b, const char *text) {
    b->sum += phrases_scan(arena, b->phrases, text, b->sizes[b->at]);
}

static struct note_work *begin_one(struct arena *arena, struct bench *b, const char *text) {
    struct note_reader reader = {.rules = b->rules,
                                 .phrases = b->phrases,
                                 .book = b->book,
                                 .scanner = b->drafter.scanner,
                                 .asked = b->asked,
                                 .locale = LOCALE_US};
    struct record given = {.id = "a", .notes = text};
    struct notes notes = notes_open(arena, &reader, &given);
    return notes_begin(arena, &reader, &notes, 0);
}

static const struct record *read_one(struct arena *arena, struct bench *b, const char *text) {
    asked_begin(b->asked);
    struct note_work *work = begin_one(arena, b, text);
    notes_read_together(&work, 1);
    return &notes_result(work)->record;
}

static void read_of(struct arena *arena, struct bench *b, const char *text) {
    b->sum += read_one(arena, b, text)->flaw_count;
}

static void draft_record(struct arena *arena, struct bench *b, const struct record *record) {
    struct title_options options = {80, COUNT_GRAPHEMES, LOCALE_US, b->drafter.variants};
    const struct listing *listing = listing_draft(arena, &b->drafter, record, &options);
    struct buf out = buf_start(arena);
    json_write(&out, listing_tree(arena, listing));
    b->sum += out.n;
}

static void draft_of(struct arena *arena, struct bench *b, const char *text) {
    draft_record(arena, b, read_one(arena, b, text));
}

// As the library goes about an input of many notes.
static void draft_batch(struct arena *arena, void *context) {
    struct bench *b = context;
    struct note_work *works[ENGINE_BATCH];
    size_t n = 0;
    asked_begin(b->asked);
    for (; n < ENGINE_BATCH && b->at < NOTES; n++) works[n] = begin_one(arena, b, b->notes[b->at++]);
    notes_read_together(works, n);
    for (size_t i = 0; i < n; i++) {
        struct arena_mark before = arena_mark(arena);
        draft_record(arena, b, &notes_result(works[i])->record);
        arena_release(arena, &before);
    }
}

typedef void measured(struct arena *arena, struct bench *b, const char *text);

struct trial {
    struct bench *bench;
    measured *what;
    const char *text;
};

static void try_one(struct arena *arena, void *context) {
    struct trial *t = context;
    t->what(arena, t->bench, t->text);
}

static bool run_one(struct bench *b, measured *what, const char *text) {
    struct trial trial = {b, what, text};
    bool fine = arena_try(b->records, try_one, &trial);
    arena_reset(b->records);
    return fine;
}

// Seconds for all notes: the best of some passes, which is the one least disturbed by others.
static double seconds(struct bench *b, measured *what) {
    double least = 1e9;
    for (int pass = 0; pass <= PASSES; pass++) {
        double at = now();
        for (b->at = 0; b->at < NOTES; b->at++) run_one(b, what, b->notes[b->at]);
        at = now() - at;
        if (pass && at < least) least = at;
    }
    return least;
}

static double seconds_in_batches(struct bench *b) {
    double least = 1e9;
    for (int pass = 0; pass <= PASSES; pass++) {
        double at = now();
        for (b->at = 0; b->at < NOTES;) {
            if (!arena_try(b->records, draft_batch, b)) return least;
            arena_reset(b->records);
        }
        at = now() - at;
        if (pass && at < least) least = at;
    }
    return least;
}

// Notes one a line, `size` bytes of them; NULL where there is no memory. The caller frees it.
static char *long_note(const struct bench *b, size_t size) {
    char *text = malloc(size + NOTE_ROOM);
    for (size_t i = 0, n = 0; text && n < size; i++) {
        size_t k = strlen(b->notes[i % NOTES]);
        memcpy(text + n, b->notes[i % NOTES], k);
        n += k;
        text[n++] = '\n';
    }
    if (text) text[size] = '\0';
    return text;
}

// Of notes beyond LIMIT_NOTE_BYTES only the beginning is read.
static void report_memory(struct bench *b, size_t size, const char *name) {
    char *text = long_note(b, size);
    if (!text) return;
    struct trial trial = {b, read_of, text};
    if (arena_try(b->records, try_one, &trial))
        printf("memory-of-a-note-of-%s %.1f times its size\n", name,
               (double)arena_used(b->records) / (double)size);
    arena_reset(b->records);
    free(text);
}

static void report_growth(struct bench *b) {
    double before = 0, worst = 0;
    for (size_t size = 1024; size <= 1024 * 1024; size *= 2) {
        char *text = long_note(b, size);
        if (!text) return;
        double least = 1e9;
        for (int pass = 0; pass < 3; pass++) {
            double at = now();
            run_one(b, read_of, text);
            at = now() - at;
            if (at < least) least = at;
        }
        if (size > 4096 && before > 0 && least / before > worst) worst = least / before;
        before = least;
        free(text);
    }
    printf("worst-doubling %.2f times the time (limit 4)\n", worst);
}

static void report(struct bench *b) {
    double least = seconds(b, floor_of), scan = seconds(b, scan_of), read = seconds(b, read_of),
           draft = seconds(b, draft_of), batches = seconds_in_batches(b);
    size_t before = b->allocated;
    for (size_t i = 0; i < NOTES; i++) run_one(b, read_of, b->notes[i]);
    printf("notes %d of %.0f bytes\n", NOTES, (double)b->bytes / NOTES);
    printf("floor %.2f us a note\nscan %.2f us a note, %.1f times the floor (limit 4)\n", least / NOTES * 1e6,
           scan / NOTES * 1e6, scan / least);
    printf(
        "reads-a-second %.0f\nreads-and-drafts-a-second %.0f (limit 2000, goal 4000), %.0f one at a time\n",
        NOTES / read, NOTES / batches, NOTES / draft);
    printf("allocations-when-warm %zu in %d notes\n", b->allocated - before, NOTES);
    report_growth(b);
    report_memory(b, LIMIT_NOTE_BYTES, "128-KiB (as long as is read)");
    report_memory(b, (size_t)10 << 20, "10-MB (limit 4)");
    printf("checksum %llu\n", (unsigned long long)b->sum);
}

static void write_words(struct bench *b) {
    FILE *file = fopen(b->path, "w");
    if (!file) return;
    if (!strcmp(b->task, "notes"))
        for (size_t i = 0; i < NOTES; i++) fprintf(file, "%s\n", b->notes[i]);
    else
        for (size_t i = 0; i < b->rules->flaw_count; i++)
            for (size_t k = 0; k < b->rules->flaws[i]->finder.said.count; k++)
                fprintf(file, "%s\n", b->rules->flaws[i]->finder.said.at[k]);
    fclose(file);
}

static void measure(struct arena *arena, void *context) {
    struct bench *b = context;
    load(arena, b);
    if (!b->rules || !b->book || !b->drafter.variants) return;
    make_notes(b);
    if (b->task)
        write_words(b);
    else
        report(b);
    b->at = 1;
}

int main(int argc, char **argv) {
    if (argc != 2 && argc != 4) {
        fputs("usage: reads DATA-FOLDER [words|notes FILE]\n", stderr);
        return 2;
    }
    static char notes[NOTES][NOTE_ROOM];
    struct bench b = {.data = argv[1], .notes = notes};
    struct arena_memory memory = {count_alloc, count_free, &b.allocated};
    if (argc == 4) {
        b.task = argv[2];
        b.path = argv[3];
    }
    struct arena *rules = arena_new(NULL);
    b.records = arena_new(&memory);
    bool fine = rules && b.records && arena_try(rules, measure, &b) && b.at;
    if (!fine) fputs("reads: the rules or the word book cannot be read\n", stderr);
    arena_free(b.records);
    arena_free(rules);
    return fine ? 0 : 1;
}
