// SPDX-License-Identifier: MIT
#include "support_book.h"

// The word book lies beside the command of the same build, as in an installed tree.
static const char *book_path(struct arena *arena) {
    const char *command = getenv("ASFOUND_COMMAND");
    const char *slash = command ? strrchr(command, '/') : NULL;
    if (!slash) return "build-tests/share/asfound/wordbook.bin";
    return arena_format(arena, "%.*s/../share/asfound/wordbook.bin", (int)(slash - command), command);
}

static void open_book(struct arena *arena, void *context) {
    const struct wordbook **opened = context;
    struct diags diags = diags_start(arena);
    *opened = wordbook_open(arena, book_path(arena), &diags);
}

// Mapped once a test: each mapping has its pages to be found again.
static const struct wordbook *book(void) {
    static const struct wordbook *opened;
    if (opened) return opened;
    ck_assert(arena_try(support.arena, open_book, &opened));
    ck_assert_msg(opened != NULL, "the word book of the build cannot be opened");
    return opened;
}

static const struct record *read_by(struct arena *arena, const char *text, struct note_reader reader) {
    reader.rules = support.rules;
    reader.phrases = support.phrases;
    reader.locale = LOCALE_US;
    reader.book = book();
    reader.scanner = scanner_new(arena, support.rules->finder_count);
    struct record given = {.id = "a", .notes = arena_string(arena, text)};
    struct notes notes = notes_open(arena, &reader, &given);
    return &notes_read(arena, &reader, &notes, 0)->record;
}

const struct record *support_read_without(struct arena *arena, const char *text, unsigned off) {
    return read_by(arena, text, (struct note_reader){.off = off});
}

const struct record *support_read_keeping(struct arena *arena, const char *text, struct asked *asked) {
    return read_by(arena, text, (struct note_reader){.asked = asked});
}

const struct record *support_read(struct arena *arena, const char *text) {
    return support_read_without(arena, text, 0);
}
