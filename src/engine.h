// SPDX-License-Identifier: MIT
// What is behind the opaque engine; for the files of the public library alone. Never written to after it is
// made.
#ifndef ENGINE_H
#define ENGINE_H

#include "asfound.h"
#include "listing/spelling.h"
#include "text/buf.h"
#include "text/diag.h"

struct asfound_engine {
    struct arena *arena;
    struct asfound_memory memory;
    const struct ruleset *rules;
    const struct variants *variants;
    const struct wordbook *book;
    const struct trade *trade;
    const struct spelling_lists *lists;
    const char *dictionaries;
    bool color, quiet; // of all its messages
};

// Records read before their listings are made. Reading and drafting are each more code and tables than the
// nearer caches of a processor hold: in batches they are fetched once for many.
enum { ENGINE_BATCH = 256 };

struct arena_memory engine_memory(const struct asfound_memory *memory);

// Where a caller wants bytes, and how: results, or messages in color or only errors.
struct sink {
    asfound_put *put; // NULL: nowhere
    void *context;
    bool color, quiet;
};
bool sink_put(const struct sink *sink, const char *bytes, size_t size); // false when it was not taken
void sink_tell(const struct sink *sink, struct arena *arena, struct diags *diags);
// Tells it without any memory; the status to end the call with.
enum asfound_status sink_no_memory(const struct sink *sink);

struct sink engine_messages(const asfound_engine *engine, asfound_put *put, void *context);

#endif
