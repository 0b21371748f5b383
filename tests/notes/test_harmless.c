// SPDX-License-Identifier: MIT
// How often is a fault told where none is? Every third of the example sentences in the glosses of WordNet 3.0
// (data.noun, data.verb, data.adj, data.adv; Princeton University), which nobody wrote about goods, stands
// behind a heading of plain goods. Some do tell a fault ("a cracked vase"); of all of them that is a known
// share, and it must not grow.
#include "support_book.h"

#include <ctype.h>

enum { STEP = 3, LEAST = 10000, MOST_IN_THOUSAND = 33, SHOWN_MOST = 30, SENTENCE_ROOM = 600 };

static const char *const headings[] = {"Brass lamp.",    "Tweed coat.",       "Oak chair.",
                                       "Stoneware jug.", "Cloth bound book.", "Portable radio."};

struct tally {
    size_t found, read, faulty, faults, shown;
};

struct reading_of {
    const char *note;
    size_t flaws;
    char kind[40];
};

static void count_flaws(struct arena *arena, void *context) {
    struct reading_of *of = context;
    const struct record *record = support_read(arena, of->note);
    of->flaws = record->flaw_count;
    if (of->flaws) snprintf(of->kind, sizeof of->kind, "%s", record->flaws[0].kind->rule.id);
}

static void read_sentence(struct tally *tally, const char *sentence, size_t size) {
    char note[SENTENCE_ROOM + 40];
    const char *heading = headings[tally->found % (sizeof headings / sizeof *headings)];
    if (tally->found++ % STEP) return;
    snprintf(note, sizeof note, "%s %c%.*s.", heading, toupper((unsigned char)sentence[0]), (int)size - 1,
             sentence + 1);
    struct reading_of of = {.note = note};
    struct arena *own = arena_new(NULL);
    ck_assert(arena_try(own, count_flaws, &of));
    arena_free(own);
    tally->read++;
    tally->faults += of.flaws;
    if (!of.flaws) return;
    tally->faulty++;
    if (tally->shown++ < SHOWN_MOST) fprintf(stderr, "  %s: %s\n", of.kind, note);
}

// The quoted parts of what stands behind the bar: '00001740 ... | the definition; "a sentence"; "another"'.
static void read_gloss(struct tally *tally, const char *line) {
    enum { WORDS_LEAST = 2 };
    const char *at = strchr(line, '|');
    while (at && (at = strchr(at, '"')) != NULL) {
        const char *end = strchr(++at, '"');
        if (!end) return;
        size_t size = (size_t)(end - at), words = 1;
        for (size_t i = 0; i < size; i++) words += at[i] == ' ';
        if (words >= WORDS_LEAST && size < SENTENCE_ROOM && at[0] > 0) read_sentence(tally, at, size);
        at = end + 1;
    }
}

static void read_file(struct tally *tally, const char *name) {
    char path[80], line[20000];
    snprintf(path, sizeof path, "/usr/share/wordnet/data.%s", name);
    FILE *file = fopen(path, "rb");
    ck_assert_msg(file != NULL, "%s is missing: package wordnet-base", path);
    while (fgets(line, sizeof line, file)) {
        line[strcspn(line, "\n")] = '\0';
        if (line[0] != ' ') read_gloss(tally, line);
    }
    fclose(file);
}

START_TEST(few_plain_sentences_tell_a_fault) {
    static const char *const names[] = {"noun", "verb", "adj", "adv"};
    struct tally tally = {0, 0, 0, 0, 0};
    for (size_t i = 0; i < sizeof names / sizeof *names; i++) read_file(&tally, names[i]);
    fprintf(stderr, "%zu of %zu sentences tell a fault, %zu faults in all\n", tally.faulty, tally.read,
            tally.faults);
    ck_assert_uint_gt(tally.read, LEAST);
    ck_assert_uint_gt(tally.faulty, 0); // "a cracked vase": the reader is awake
    ck_assert_uint_le(tally.faulty * 1000, tally.read * MOST_IN_THOUSAND);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("notes: harmless");
    TCase *tcase = tcase_create("harmless");
    tcase_set_timeout(tcase, 600);
    tcase_add_test(tcase, few_plain_sentences_tell_a_fault);
    suite_add_tcase(suite, tcase);
    return support_main(suite);
}
