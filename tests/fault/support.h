// SPDX-License-Identifier: MIT
// The library as a program would use it, with memory that can be told to run out, input from a text and
// output kept as one.
#ifndef TEST_FAULT_SUPPORT_H
#define TEST_FAULT_SUPPORT_H

#include <check.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <unistd.h>

#include "asfound.h"

// Bytes that came out, kept outside the memory that is made to fail.
struct kept {
    char *at;
    size_t size, room;
    size_t takes; // more takes than this fail; 0 means that none does
    size_t taken;
};

static inline bool kept_put(void *context, const char *bytes, size_t size) {
    struct kept *kept = context;
    if (kept->takes && kept->taken >= kept->takes) return false;
    kept->taken++;
    if (size >= kept->room - kept->size) {
        kept->room = 2 * (kept->size + size) + 64;
        kept->at = realloc(kept->at, kept->room);
        if (!kept->at) abort();
    }
    memcpy(kept->at + kept->size, bytes, size);
    kept->size += size;
    kept->at[kept->size] = '\0';
    return true;
}

static inline const char *kept_text(const struct kept *kept) {
    return kept->at ? kept->at : "";
}

static inline void kept_clear(struct kept *kept) {
    kept->size = kept->taken = 0;
    if (kept->at) kept->at[0] = '\0';
}

static inline void kept_free(struct kept *kept) {
    free(kept->at);
    *kept = (struct kept){0};
}

// Input in pieces of at most `step` bytes; reading fails once `breaks_at` bytes were given (0: never).
struct given {
    const char *text;
    size_t size, at, step, breaks_at;
};

static inline size_t given_get(void *context, char *to, size_t room) {
    struct given *given = context;
    if (given->breaks_at && given->at >= given->breaks_at) return (size_t)-1;
    size_t n = given->size - given->at;
    if (n > room) n = room;
    if (given->step && n > given->step) n = given->step;
    memcpy(to, given->text + given->at, n);
    given->at += n;
    return n;
}

// Memory with a ledger: the `fail_at`-th call (from 1) fails, and unless `once` all calls after it.
struct memory {
    size_t calls, fail_at, live;
    bool once;
};

static inline void *memory_alloc(void *context, size_t size) {
    struct memory *memory = context;
    memory->calls++;
    if (memory->fail_at &&
        (memory->once ? memory->calls == memory->fail_at : memory->calls >= memory->fail_at))
        return NULL;
    void *block = malloc(size);
    if (block) memory->live++;
    return block;
}

static inline void memory_free(void *context, void *block) {
    struct memory *memory = context;
    if (block) memory->live--;
    free(block);
}

static inline const char *data_folder(void) {
    const char *folder = getenv("ASFOUND_BUILT");
    return folder ? folder : "build-tests/share/asfound";
}

static inline const char *source_folder(void) {
    const char *folder = getenv("ASFOUND_SOURCE");
    return folder ? folder : ".";
}

// Dictionaries of a few words, so that opening them takes no time and nearly every word is looked for in
// vain.
static inline const char *const *small_dictionaries(void) {
    static const char *const files[] = {
        "en_US.aff", "SET UTF-8\n", "en_US.dic", "4\nthe\nhandle\nlamp\nwick\n",
        "en_GB.aff", "SET UTF-8\n", "en_GB.dic", "2\nthe\ncolour\n",
        NULL};
    return files;
}

static inline char *dictionaries_folder(void) {
    static char folder[512];
    return folder;
}

// In the parent of all tests.
static inline void dictionaries_make(void) {
    const char *temporary = getenv("TMPDIR");
    char path[600];
    snprintf(dictionaries_folder(), 512, "%s/asfound-words-XXXXXX", temporary ? temporary : "/tmp");
    if (!mkdtemp(dictionaries_folder())) abort();
    for (const char *const *file = small_dictionaries(); *file; file += 2) {
        snprintf(path, sizeof path, "%s/%s", dictionaries_folder(), file[0]);
        FILE *to = fopen(path, "wb");
        if (!to || fputs(file[1], to) < 0 || fclose(to)) abort();
    }
}

static inline void dictionaries_remove(void) {
    char path[600];
    for (const char *const *file = small_dictionaries(); *file; file += 2) {
        snprintf(path, sizeof path, "%s/%s", dictionaries_folder(), file[0]);
        (void)remove(path);
    }
    (void)rmdir(dictionaries_folder());
}

static inline enum asfound_status engine_open(struct memory *memory, struct kept *messages,
                                              asfound_engine **engine) {
    struct asfound_engine_options options = {
        .data = data_folder(),
        .memory = {memory_alloc, memory_free, memory},
        .dictionaries = dictionaries_folder(),
        .messages = kept_put,
        .messages_context = messages,
    };
    return asfound_engine_new(&options, engine);
}

// The whole of a file in the source folder; the caller frees it.
static inline char *file_text(const char *name, size_t *size) {
    char path[4096];
    snprintf(path, sizeof path, "%s/%s", source_folder(), name);
    FILE *file = fopen(path, "rb");
    ck_assert_msg(file != NULL, "%s cannot be opened", path);
    char *text = malloc((size_t)1 << 20);
    *size = fread(text, 1, ((size_t)1 << 20) - 1, file);
    ck_assert_msg(feof(file) && !ferror(file) && *size, "%s is empty or too long for this test", path);
    text[*size] = '\0';
    fclose(file);
    return text;
}

#endif
