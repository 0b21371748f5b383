// SPDX-License-Identifier: MIT
// A task, the shipped list of trade words and the files of Debian that tests of spelling read.
#ifndef TEST_WORDS_SUPPORT_H
#define TEST_WORDS_SUPPORT_H

#include "../text/support.h"

#include <stdio.h>
#include <string.h>

#include "words/speller.h"

#ifndef HUNSPELL_FOLDER
#define HUNSPELL_FOLDER "/usr/share/hunspell"
#endif
#ifndef CODESPELL_LIST // Debian's package codespell; under the GPL, so it is read here and never copied
#define CODESPELL_LIST "/usr/lib/python3/dist-packages/codespell_lib/data/dictionary.txt"
#endif

// The whole file, in the arena; fails the test and says what to install when it is not there.
static inline struct source *read_source(struct arena *arena, const char *path, const char *package) {
    FILE *file = fopen(path, "rb");
    ck_assert_msg(file != NULL, "%s is not there; is the package %s installed?", path, package);
    struct buf text = buf_start(arena);
    char bytes[4096];
    for (size_t size; (size = fread(bytes, 1, sizeof bytes, file)) > 0;) buf_add(&text, bytes, size);
    fclose(file);
    struct source *source = arena_alloc(arena, sizeof *source);
    *source =
        (struct source){.name = arena_string(arena, path), .text = text.at, .size = text.n, .first_line = 1};
    return source;
}

static inline const char *project_path(struct arena *arena, const char *name) {
    const char *folder = getenv("ASFOUND_SOURCE");
    return arena_format(arena, "%s/%s", folder ? folder : ".", name);
}

static inline const struct trade *shipped_trade(struct arena *arena) {
    struct diags diags = diags_start(arena);
    const struct trade *trade = trade_read(
        arena, read_source(arena, project_path(arena, "dict/trade.txt"), "none, it is the project's"),
        &diags);
    ck_assert_uint_eq(diags.count, 0);
    return trade;
}

// The next line of a source that is neither empty nor a comment; false at the end. NUL-ended, in the arena.
static inline bool next_line(struct arena *arena, const struct source *source, size_t *at,
                             const char **line) {
    while (*at < source->size) {
        const char *from = source->text + *at, *stop = memchr(from, '\n', source->size - *at);
        size_t size = stop ? (size_t)(stop - from) : source->size - *at;
        *at += size + 1;
        if (!size || *from == '#') continue;
        *line = arena_copy(arena, from, size);
        return true;
    }
    return false;
}

static inline struct misspellings check_text(struct speller *speller, const char *text, struct diags *diags) {
    struct speller_text what = {text, strlen(text), NULL, 0};
    return speller_check(speller, &what, diags);
}

#endif
