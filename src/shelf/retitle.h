// SPDX-License-Identifier: MIT
// A stock file to proposals for its stale titles.
#ifndef SHELF_RETITLE_H
#define SHELF_RETITLE_H

#include "shelf/propose.h"
#include "shelf/stale.h"
#include "shelf/sheet.h"

struct retitle_request {
    const char *name, *map;
    sheet_get *get;
    void *get_context;
    struct filters filters;
    unsigned held_hundredths; // hundredths of a percent
    const char *seed;
    bool explain_columns;
    size_t workers;
    struct title_options options;
    const struct day *today; // NULL: not known
    // What a proposer is made of.
    const struct ruleset *rules;
    const struct wordbook *book;
    const struct variants *variants;
    struct spelling *(*speller)(void *context, struct arena *arena, struct diags *diags);
    void *speller_context;
    bool (*put)(void *context, const char *bytes, size_t size);
    void *put_context;
    void (*progress)(void *context, size_t rows);
    void *progress_context;
};

// Inside arena_try() of `arena`. `summary` is for people. False when memory or writing failed.
bool retitle_run(struct arena *arena, const struct retitle_request *request, struct buf *summary,
                 struct diags *diags);

#endif
