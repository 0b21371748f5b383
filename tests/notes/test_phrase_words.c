// SPDX-License-Identifier: MIT
// The words that bytes tell against those that tokens tell: the same, for every line of notes in the files
// beside this, and for texts strung together from the bytes that decide.
#include "support.h"

#include <dirent.h>

#include "notes/phrase_words.h"

enum { STRUNG = 60000, PIECES_MOST = 14, LINE_ROOM = 4096 };

struct tally {
    size_t texts, told, words;
};

static void fail_at(const char *text, size_t i, const char *what) {
    ck_abort_msg("word %zu of \"%s\": not the same %s", i, text, what);
}

static void compare(struct arena *arena, const char *text, struct tally *tally) {
    size_t size = strlen(text);
    struct phrase_words bytes = phrase_words_of_text(arena, text, size);
    tally->texts++;
    if (!bytes.at) return;
    struct tokens cut = tokens_cut(arena, text, size);
    if (cut.altered) return;
    struct phrase_words tokens = phrase_words_of_tokens(arena, &cut);
    tally->told++;
    tally->words += tokens.count;
    for (size_t i = 0; i < bytes.count && i < tokens.count; i++) {
        const struct phrase_word *b = &bytes.at[i], *t = &tokens.at[i];
        if (b->hash != t->hash) fail_at(text, i, "letters");
        if (b->starts != t->starts || b->ends != t->ends) fail_at(text, i, "place in a token");
        if ((b->starts && b->from != t->from) || (b->ends && b->to != t->to)) fail_at(text, i, "bytes");
    }
    ck_assert_msg(bytes.count == tokens.count, "\"%s\": %zu words instead of %zu", text, bytes.count,
                  tokens.count);
}

static void read_file(struct arena *arena, const char *path, struct tally *tally) {
    FILE *file = fopen(path, "r");
    ck_assert_msg(file != NULL, "%s cannot be opened", path);
    char line[LINE_ROOM];
    while (fgets(line, sizeof line, file)) {
        struct arena_mark before = arena_mark(arena);
        for (char *field = strtok(line, "|"); field && line[0] != '#'; field = strtok(NULL, "|"))
            if (strchr(field + 1, ' ')) compare(arena, field, tally);
        arena_release(arena, &before);
    }
    fclose(file);
}

static void read_folder(struct arena *arena, const char *folder, struct tally *tally) {
    DIR *open = opendir(folder);
    ck_assert_msg(open != NULL, "%s cannot be opened", folder);
    for (struct dirent *entry; (entry = readdir(open)) != NULL;)
        if (strstr(entry->d_name, ".txt"))
            read_file(arena, arena_format(arena, "%s/%s", folder, entry->d_name), tally);
    closedir(open);
}

static void all_lines(struct arena *arena, void *context) {
    (void)context;
    const char *source = getenv("ASFOUND_SOURCE");
    struct tally tally = {0, 0, 0};
    static const char *const folders[] = {"", "/phrases", "/phenomena"};
    for (size_t i = 0; i < sizeof folders / sizeof *folders; i++)
        read_folder(arena, arena_format(arena, "%s/tests/notes%s", source ? source : ".", folders[i]),
                    &tally);
    ck_assert_uint_gt(tally.words, 20000);
    ck_assert_msg(tally.told * 4 > tally.texts * 3, "only %zu of %zu lines are told by their bytes",
                  tally.told, tally.texts);
}

static const char *const pieces[] = {
    "lid",   "Rust", "x",   "X",        "a",     "h.m.", "don't", "mother-of-pearl",
    "CB-12", "KR9",  "8",   "14",       "3",     "1/2",  "5x",    "'",
    "\"",    ".",    ",",   ";",        ":",     "!",    "?",     "(",
    ")",     "-",    "--",  " ",        "\n",    "  ",   "...",   "&",
    "/",     "18v",  "50s", "1920's",   "w/o",   "*",    "$",     "#",
    "\t",    "in",   "oz.", "\xC3\xA9", "dogs'", "'n",   "9-",    "-9",
    "0.5",   ".5",   "A",   "_",        "2nd",   "no",   "No.",   "s",
    "-x",    "x9",   "c."};

static void strung(struct arena *arena, void *context) {
    (void)context;
    struct tally tally = {0, 0, 0};
    uint32_t state = 11;
    for (int n = 0; n < STRUNG; n++) {
        struct arena_mark before = arena_mark(arena);
        struct buf text = buf_start(arena);
        state = state * 1664525u + 1013904223u;
        for (size_t left = (state >> 16) % PIECES_MOST; left > 0; left--) {
            state = state * 1664525u + 1013904223u;
            buf_text(&text, pieces[(state >> 16) % (sizeof pieces / sizeof *pieces)]);
            if (state >> 30 > 1) buf_byte(&text, ' ');
        }
        compare(arena, text.at, &tally);
        arena_release(arena, &before);
    }
    ck_assert_uint_gt(tally.told, STRUNG / 20);
}

static void within(void (*body)(struct arena *arena, void *context)) {
    struct arena *arena = arena_new(NULL);
    bool fine = arena_try(arena, body, NULL);
    arena_free(arena);
    ck_assert(fine);
}

START_TEST(lines_of_notes) {
    within(all_lines);
}
END_TEST

START_TEST(strung_texts) {
    within(strung);
}
END_TEST

int main(void) {
    Suite *suite = suite_create("phrase words");
    TCase *cases = tcase_create("bytes and tokens");
    tcase_add_test(cases, lines_of_notes);
    tcase_add_test(cases, strung_texts);
    suite_add_tcase(suite, cases);
    return support_main(suite);
}
